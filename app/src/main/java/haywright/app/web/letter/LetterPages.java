package haywright.app.web.letter;

import haywright.app.report.FeedLetter;
import haywright.app.report.FeedLetter.Part;
import haywright.app.report.Paper;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.cattle.herd.Group;
import haywright.quantity.Unit;
import haywright.ranch.SignedLetter;
import haywright.workings.Problem;
import haywright.workings.Refused;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The feed letters of a ranch: the list, one letter with its words, and its print. */
public final class LetterPages {
    private LetterPages() {}

    public static void routes(Routes on) {
        on.get("letter", LetterPages::list);
        on.get("letter/{group}", LetterPages::letter);
        on.post("letter/{group}", LetterPages::keep);
        on.post("letter/{group}/anew", LetterPages::anew);
        on.get("letter/{group}/print/{size}", LetterPages::print);
        on.get("letter/{group}/phone/letter.html", LetterPages::phone);
        CardPages.routes(on);
        SignPages.routes(on);
    }

    /** How a group's letter stands. */
    public enum State {
        NONE,
        KEPT,
        STALE;

        static State of(FeedLetter letter) {
            return !letter.isKept() ? NONE : letter.isStale() ? STALE : KEPT;
        }
    }

    /** @param made the day of its figures; empty where none is kept */
    public record Row(Group group, State state, String made) {}

    /** @param problems why nothing could be worked out */
    public record Cannot(Group group, List<Problem> problems) {}

    public record View(FeedLetter letter, State state, Form form, List<SignedLetter> signed) {
        /** The box of a part, as tall as what stands in it. */
        public Ask ask(Part part) {
            return LetterPages.ask(part, letter);
        }

        /** Letters that are printed as their numbers. */
        public String lacking() {
            return letter.paper(Paper.Size.LETTER).lacking();
        }

        public int rows(Part part) {
            return Math.max(2, (int) form.value(part.id()).lines().count() + 1);
        }
    }

    private static Ask ask(Part part, FeedLetter letter) {
        var hint = switch (part) {
            case OWN -> "Gates, water, which tractor: whatever the page should say besides.";
            case WHAT_TO_DO ->
                "One sentence a line. A line that begins with “Do not”, “Never” or “Stop” is set in bold.";
            default -> "";
        };
        return new Ask(part.id(), letter.title(part), Unit.NONE, hint, 60);
    }

    private static Group group(Page page) {
        return page.find(page.ranch().groups(), "group");
    }

    private static String key(Group group) {
        return "letter/" + group.id();
    }

    private static FeedLetter letter(Page page, Group group) {
        return FeedLetter.of(page.offers(group));
    }

    private static void list(Page page) {
        var rows = new ArrayList<Row>();
        for (var group : page.ranch().groups().values()) {
            var kept = page.ranch().letters().get(group.id());
            if (kept == null) {
                rows.add(new Row(group, State.NONE, ""));
            } else {
                var letter = new FeedLetter(page.ranch(), group, kept);
                rows.add(new Row(group, State.of(letter), letter.day()));
            }
        }
        page.show("haywright/app/web/letter/letters.jte", rows);
    }

    private static void letter(Page page) {
        var group = group(page);
        try {
            var letter = letter(page, group);
            var form = page.form(key(group), () -> known(letter));
            page.show(
                    "haywright/app/web/letter/letter.jte",
                    new View(letter, State.of(letter), form, SignPages.of(page.ranch(), group)));
        } catch (Refused refused) {
            page.show("haywright/app/web/letter/cannot.jte", new Cannot(group, refused.problems()));
        }
    }

    private static Map<String, String> known(FeedLetter letter) {
        var known = new LinkedHashMap<String, String>();
        for (var part : Part.values()) {
            known.put(part.id(), letter.words(part));
        }
        return known;
    }

    /** Keeps the letter with the words as they were sent. */
    private static void keep(Page page) {
        var group = group(page);
        var form = page.posted(key(group));
        var letter = letter(page, group);
        for (var part : Part.values()) {
            letter = letter.with(part, form.text(ask(part, letter)));
        }
        var kept = letter.letter();
        page.save(form, "Letter kept: " + group.name(), ranch -> ranch.with(kept), key(group));
    }

    /** Figures of today; what somebody wrote stays. */
    private static void anew(Page page) {
        var group = group(page);
        var anew = FeedLetter.workedOut(page.offers(group)).letter();
        page.save(
                page.posted(key(group) + "/anew"),
                "Letter worked out anew: " + group.name(),
                ranch -> ranch.with(anew),
                key(group));
    }

    private static void print(Page page) {
        var letter = letter(page, group(page));
        var size = size(page.http().pathParam("size"));
        page.http()
                .contentType("application/pdf")
                .header("Content-Disposition", "inline; filename=\"%s\"".formatted(letter.fileName(size)))
                .result(letter.paper(size).pdf());
    }

    /** One file that a phone opens; sent as a file, so that it is saved and not only looked at. */
    private static void phone(Page page) {
        var letter = letter(page, group(page));
        page.http()
                .contentType("text/html; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"%s\"".formatted(letter.phoneName()))
                .result(letter.phonePage());
    }

    static Paper.Size size(String asked) {
        return Paper.Size.of(asked).orElseThrow(NotFoundResponse::new);
    }
}
