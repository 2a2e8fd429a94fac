package haywright.app.web;

import haywright.app.store.Drafts;
import haywright.app.words.Measures;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What was typed into the forms of one page and is not saved yet: it is kept, and is in its form again afterwards. */
public final class Unfinished {
    /** Hidden in a form: what was left unfinished of it when it was shown, by its print; empty where nothing was. */
    static final String DRAFT = "draft";

    /** In the address of a form, and hidden in it: which of several that were left unfinished it is. */
    static final String LEFT = "left";

    private static final String AFRESH = "afresh";

    // What a request remembers
    private static final String KEPT = "kept";
    private static final String LOST = "lost-draft";

    private final Page page;
    private final Context http;
    private final Drafts drafts;

    Unfinished(Page page) {
        this.page = page;
        http = page.http();
        drafts = page.desk().store().drafts();
    }

    /** As it was typed; empty where nothing was. @param key of the form */
    public Map<String, List<String>> of(String key) {
        return drafts.get(page.ranch().id(), key(http, key));
    }

    /** The form with what was left unfinished of it, or else with what is known. */
    Form form(String key, Supplier<Map<String, String>> known) {
        var ranch = page.ranch().id();
        var at = key(http, key);
        var left = of(key);
        // the very one that the link stood beside: opened again later, the address takes nothing that was typed since
        if (Drafts.print(left).equals(http.queryParam(AFRESH))) {
            drafts.clear(ranch, at);
            left = Map.of();
        }
        http.attribute(LOST, drafts.isUnreadable(ranch, at));
        var made = page.revision(left.getOrDefault(Page.REV, List.of()));
        http.attribute(Page.MADE_FROM, made);
        if (!left.isEmpty()) {
            Measures.of(page.opened()); // as it is when it is sent
        }
        shown(key, left);
        return left.isEmpty() ? Form.of(key, known.get()) : Form.draft(key, upToDate(key, left, made), known.get());
    }

    /** A draft in which what nobody typed is as it is now, and not as it was when the form was opened. */
    private Map<String, List<String>> upToDate(String key, Map<String, List<String>> left, @Nullable Long made) {
        if (made == null || made == page.rev()) {
            return left;
        }
        var then = page.desk().store().ranches().at(page.ranch().id(), made);
        var before = then.flatMap(old -> Boxes.of(new Page(http, page.desk(), old, made, page.here()), key));
        var now = Boxes.of(page, key);
        var apart = new Apart(Form.posted(key, left), before.orElse(null), now.orElse(null), null);
        return apart.isOfBoxes() ? apart.together() : left;
    }

    /** Where what is typed into a form is kept until it is saved. */
    static String key(Context http, String key) {
        var left = http.formParam(LEFT) == null ? http.queryParam(LEFT) : http.formParam(LEFT);
        return left != null && left.matches("[0-9a-f]{8}") ? key + Drafts.BESIDE + left : key;
    }

    /** Which of several that were left unfinished the form on this page is; null where it is the only one. */
    public @Nullable String left() {
        var key = key(http, "");
        return key.isEmpty() ? null : key.substring(key.indexOf('=') + 1);
    }

    /**
     * The print of what is left unfinished of a form on this page. Where it was filled in from something else, as a phone's
     * line, it is of none, so that what was typed earlier makes room and does not give way.
     */
    public String print(Form form) {
        String looked = http.attribute(DRAFT + "/" + form.key());
        var sent = http.formParam(DRAFT);
        return looked != null ? looked : sent != null ? sent : "";
    }

    private void shown(String key, Map<String, List<String>> fields) {
        http.attribute(DRAFT + "/" + key, Drafts.print(fields));
    }

    /** The address that throws away what was left unfinished of a form, and shows the form without it. */
    public String startOver(Form form) {
        var left = left();
        return "?" + AFRESH + "=" + print(form) + (left == null ? "" : "&" + LEFT + "=" + left);
    }

    /** Whether the draft of the form on this page is there and cannot be read. */
    boolean isLost() {
        return Boolean.TRUE.equals(http.attribute(LOST));
    }

    /**
     * Keeps what was typed for when somebody comes back to it. What another window left unfinished of the same form makes
     * room, and can be opened beside this one; a script that does not say what it saw takes the place of what is there.
     */
    void keep(Form form) {
        var fields = new LinkedHashMap<>(form.typed());
        if (fields.isEmpty()) {
            return; // a button alone; what somebody typed into the form of this name earlier stays
        }
        fields.put(Page.REV, List.of(page.formMark()));
        var at = key(http, form.key());
        if (http.formParam(DRAFT) == null) {
            drafts.put(page.ranch().id(), at, fields);
        } else {
            drafts.put(page.ranch().id(), at, fields, isOwn(http));
        }
        shown(form.key(), fields);
        http.attribute(KEPT, new Kept(at, fields));
        http.attribute(DRAFT, Drafts.print(fields));
    }

    /** Whether this request kept what it sent. */
    boolean isKept() {
        return http.attribute(KEPT) != null;
    }

    /** Of a draft: whether the form was shown with it, or this request kept it. */
    static Predicate<Map<String, List<String>>> isOwn(Context http) {
        var shown = http.formParam(DRAFT);
        String kept = http.attribute(DRAFT);
        return there -> {
            var print = Drafts.print(there);
            return print.equals(shown) || print.equals(kept);
        };
    }

    /** What this request kept of its form, until it is saved. */
    private record Kept(String at, Map<String, List<String>> fields) {}

    /** It is saved: a draft that stays on is no reason to say otherwise. */
    void clear(Form form) {
        Kept kept = http.attribute(KEPT);
        try {
            var at = key(http, form.key());
            if (kept != null && kept.at().equals(at)) { // and not what was kept of another form on the way
                drafts.clear(page.ranch().id(), at, kept.fields());
            }
        } catch (RuntimeException e) {
            Pages.log(http, e);
        }
    }
}
