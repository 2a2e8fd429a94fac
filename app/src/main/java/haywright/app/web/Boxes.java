package haywright.app.web;

import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a form's page shows in its boxes of a ranch at one revision: the page is made for it and thrown away, so that each
 * box is called, and its value written, as a person sees it there.
 */
record Boxes(Map<String, String> values, Map<String, Shown> shown) {
    private static final String LOOKING = "looking";
    private static final String PAGES = "pages-of-the-form";

    /** A box as its page has it. */
    record Shown(Ask ask, List<Option> options) {
        /** What stands in it, as a person reads it. */
        String words(String value) {
            for (var option : options) {
                if (option.value().equals(value) && !option.words().isBlank()) {
                    return option.words();
                }
            }
            if (value.isBlank()) {
                return "empty";
            }
            try {
                return ask.unit() == Unit.NONE ? value : Show.quantity(Parse.quantity("", value, ask.unit()));
            } catch (Refused asTyped) {
                return value;
            }
        }
    }

    /** The page that is being made is asked for the boxes of one form alone. */
    private static final class Looking {
        private final String key;
        private @Nullable Form form;
        private Map<String, String> values = Map.of();

        private Looking(String key) {
            this.key = key;
        }
    }

    /** What is sent belongs to a form on one of these pages, the likeliest first. */
    static void on(Context http, List<Routes.Answer> pages) {
        http.attribute(PAGES, pages);
    }

    /** Empty where no page has such a form, or not of this ranch. */
    static Optional<Boxes> of(Page page, String key) {
        var http = page.http();
        List<Routes.Answer> pages = http.attribute(PAGES);
        int status = http.statusCode();
        var looking = new Looking(key);
        http.attribute(LOOKING, looking);
        try {
            for (var one : pages == null ? List.<Routes.Answer>of() : pages) {
                try {
                    one.to(page);
                } catch (Exception e) {
                    continue; // it has no such page: the lot was not there yet, or is gone
                }
                if (looking.form != null) {
                    return Optional.of(new Boxes(looking.values, looking.form.shown()));
                }
            }
            return Optional.empty();
        } finally {
            http.attribute(LOOKING, null);
            http.status(status);
        }
    }

    static boolean areLookedAt(Context http) {
        return http.attribute(LOOKING) != null;
    }

    /** The form for a page that is only looked at. */
    static Form form(Context http, String key, Map<String, String> known) {
        var form = Form.of(key, known);
        Looking looking = http.attribute(LOOKING);
        if (looking != null && looking.key.equals(key)) {
            looking.form = form;
            looking.values = known;
        }
        return form;
    }

    String value(String name) {
        return values.getOrDefault(name, "").strip();
    }
}
