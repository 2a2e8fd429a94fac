package haywright.app.web;

import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.app.store.Ranches;
import haywright.app.store.SaveAnswer;
import haywright.app.web.trail.Step;
import haywright.app.words.Measures;
import haywright.cattle.herd.Group;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import haywright.season.kept.KeptBook;
import haywright.workings.Refused;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * One request about one ranch.
 *
 * @param rev the revision that {@code ranch} is
 * @param here the step of the trail it is on; null for settings, history and the like
 */
public record Page(
        Context http,
        Desk desk,
        Ranch ranch,
        long rev,
        @Nullable Step here) {
    private static final Yards YARDS = new Yards();

    /** Sent by the button that saves and goes on to another of the kind. */
    public static final String MORE = "more";
    /** Hidden in every form: the revision it was made from. */
    static final String REV = "rev";

    /** Hidden in a form that somebody left unfinished: the revision that stands beside its boxes. */
    static final String SEEN = "seen";

    // What a request remembers for when it fails
    private static final String SENT = "sent";
    private static final String FAILURE = "failure";
    private static final String FILLED = "filled";
    static final String MADE_FROM = "made-from";
    private static final String MADE_UPON = "made-upon";
    private static final String TOGETHER = "together";

    static Page of(Context http, Desk desk, @Nullable Step here) {
        try {
            var opened = desk.store().ranches().open(id(http, "ranch"));
            Measures.of(opened.ranch());
            return new Page(http, desk, opened.ranch(), opened.rev(), here);
        } catch (Refused e) {
            if (desk.store().ranches().isHere(id(http, "ranch"))) {
                throw http.method() == HandlerType.GET ? new DamagedRanch.Met(id(http, "ranch"), e) : e;
            }
            throw Gone.ranch(http, desk, id(http, "ranch"));
        }
    }

    /** The day the ranch is looked at: the real one, or the demo's own. */
    public LocalDate today() {
        return ranch.settings().today(desk.today());
    }

    /** The ranch on that day. */
    public Yard yard() {
        return YARDS.of(ranch, today());
    }

    /** What its groups are to be fed. */
    public Rations rations() {
        return YARDS.rations(http, ranch, today());
    }

    /** When a request is answered, others may be at the figures. */
    static void leaveFigures(Context http) {
        YARDS.leave(http);
    }

    /** What can be said of one of its groups at a glance. */
    public Offers offers(Group group) {
        return YARDS.offers(http, ranch, today(), group);
    }

    /** Its lots against its groups. */
    public CarryChart chart() {
        return YARDS.chart(http, ranch, today());
    }

    /** Its newest winter book, where nothing that moves it has changed since; none is ever made for a page that asks. */
    public Optional<KeptBook> book() {
        return KeptBooks.current(desk, ranch);
    }

    /** Its newest winter book, where it was made before something that moves it changed. */
    public Optional<KeptBook> olderBook() {
        return KeptBooks.newest(desk, ranch).filter(kept -> !kept.isCurrent()).map(KeptBooks.Kept::book);
    }

    /** Those of {@link #offers}, where an earlier page had them worked out. */
    public Optional<Offers> offersAtHand(Group group) {
        return YARDS.atHand(ranch, today(), group);
    }

    /** The hidden token of every form. */
    public String token() {
        return Gate.token(http);
    }

    /** An address on this ranch: {@code at("lots/new")}. */
    public String at(String path) {
        return "/ranch/" + ranch.id() + "/" + path;
    }

    public Frame frame(String title) {
        return Frame.of(this, title, false);
    }

    public Frame frame(String title, Form form) {
        return Frame.of(this, title, form.hasProblems());
    }

    /** The id in a path; a page that does not exist if it is none. */
    public UUID id(String name) {
        return id(http, name);
    }

    private static UUID id(Context http, String name) {
        try {
            return UUID.fromString(http.pathParam(name));
        } catch (IllegalArgumentException e) {
            throw new NotFoundResponse();
        }
    }

    /** The entity that a path names; where it is gone, or never was, a page that says so. */
    public <T> T find(Map<UUID, T> among, String name) {
        var found = among.get(id(name));
        if (found == null) {
            throw Gone.row(this, id(name));
        }
        return found;
    }

    // Forms

    /**
     * The form to show: what somebody left unfinished, or else what is known.
     *
     * @param key where the form stands on the ranch, {@code lots/new/bales}: a draft is found again under it
     */
    public Form form(String key, Supplier<Map<String, String>> known) {
        if (Boxes.areLookedAt(http)) {
            return Boxes.form(http, key, known.get());
        }
        Form failed = http.attribute(SENT);
        if (http.attribute(FAILURE) != null && failed != null && failed.key().equals(key)) {
            http.attribute(FILLED, true);
            boolean isOfRanch = http.formParam(REV) == null || revision(http.formParams(REV)) != null;
            // without what was found wrong with it: the cause comes first
            return isOfRanch ? Form.posted(key, failed.typed()) : Form.posted(key, failed.typed(), known.get());
        }
        return unfinished().form(key, known);
    }

    /** What was typed into its forms and is not saved yet. */
    public Unfinished unfinished() {
        return new Unfinished(this);
    }

    /** The boxes of the form as they were sent, with what of another window was chosen; more may be put in. */
    public Map<String, List<String>> typed() {
        return TwoVersions.chosen(http);
    }

    /** The form as it was sent. */
    public Form posted(String key) {
        return posted(key, typed());
    }

    /** The same of what was not sent as a form. @param typed by the names of the boxes; it may still be filled in */
    public Form posted(String key, Map<String, List<String>> typed) {
        Measures.of(opened()); // a bare number is in the unit that stood beside its box
        Map<String, List<String>> together = http.attribute(TOGETHER);
        var form = sent(Form.posted(key, together == null ? typed : new LinkedHashMap<>(together)));
        if (http.method() == HandlerType.POST && http.attribute(MADE_UPON) == null) {
            Made.check(this, REV); // before anything is said of what was typed
        }
        return form;
    }

    /** Remembered, so that it can be shown again whatever fails from here on. */
    private Form sent(Form form) {
        http.attribute(SENT, form);
        return form;
    }

    /** The revision that stands beside the boxes of a draft; null where none does. */
    public @Nullable Long seen() {
        return http.formParam(SEEN) == null
                ? http.attribute(MADE_FROM) == null ? null : (Long) rev
                : revision(http.formParams(SEEN));
    }

    /** The same, as a form carries it. */
    public @Nullable String seenMark() {
        var seen = seen();
        return seen == null ? null : mark(seen, SEEN);
    }

    /** The revision of the ranch as it stands, as a form carries it. */
    public String mark() {
        return Made.mark(ranch, rev);
    }

    /** {@link #formRev}, as a form carries it. */
    public String formMark() {
        return mark(formRev(), REV);
    }

    private String mark(long of, String box) {
        if (of == rev) {
            return mark();
        }
        return http.formParam(box) != null
                ? String.valueOf(http.formParam(box))
                : desk.store()
                        .ranches()
                        .at(ranch.id(), of)
                        .map(then -> Made.mark(then, of))
                        .orElse(Long.toString(of));
    }

    /**
     * The revision that the form on this page was made from, and not the one that stands by now: otherwise a form that
     * comes back would silently overwrite what another window saved meanwhile.
     */
    public long formRev() {
        Long upon = http.attribute(MADE_UPON);
        if (upon != null) {
            return upon;
        }
        Long made = http.formParam(REV) == null ? http.attribute(MADE_FROM) : revision(http.formParams(REV));
        return made == null ? rev : made;
    }

    /** The ranch that the form on this page was made from; the one that stands, where that cannot be told any more. */
    public Ranch opened() {
        long made = formRev();
        return made == rev ? ranch : desk.store().ranches().at(ranch.id(), made).orElse(ranch);
    }

    /**
     * What follows is made from the ranch as it stands, and not from the older one that the form sent was made from: a
     * sheet pasted before its lot was added is of the lot that is there now.
     */
    public void anew() {
        http.attribute(MADE_UPON, rev);
    }

    /** Null for what is no revision of this ranch. */
    @Nullable
    Long revision(List<String> typed) {
        var made = Made.of(typed);
        return made == null || !made.isOf(this) ? null : (Long) made.rev();
    }

    /**
     * After a save that failed: the page of the form again, as it was sent, under the cause.
     *
     * @return false when that page cannot be shown, or has no such form on it
     */
    boolean showsAgain(Routes.Answer page, Errors.Failure failure) {
        Form form = http.attribute(SENT);
        if (form == null) {
            return false;
        }
        boolean kept = unfinished().isKept();
        if (!kept && (failure.status() == 422 || failure.status() == 500)) { // the database itself is well
            try {
                keep(form);
                kept = true;
            } catch (RuntimeException e) {
                Pages.log(http, e);
            }
        }
        http.attribute(FAILURE, new Frame.Unsaved(failure.lines(), kept));
        try {
            page.to(this);
        } catch (Exception e) {
            http.attribute(FAILURE, null);
            return false;
        }
        http.status(failure.status());
        boolean filled = Boolean.TRUE.equals(http.attribute(FILLED));
        if (!filled) {
            http.attribute(FAILURE, null);
        }
        return filled;
    }

    Frame.@Nullable Unsaved unsaved() {
        return http.attribute(FAILURE);
    }

    // Answers

    /** @param template path from the source folder; it has {@code @param Page page} and {@code @param … view} */
    public void show(String template, Object view) {
        Pages.render(http, template, Map.of("page", this, "view", view));
    }

    /** Keeps what was typed until it is saved, as {@link Unfinished} says. */
    public void keep(Form form) {
        unfinished().keep(sent(form));
    }

    /** Shows the form again with its problems, and keeps what was typed. */
    public void reject(Form form, String template, Object view) {
        if (http.isJson()) {
            http.status(422).json(Map.of("errors", form.problems()));
            return;
        }
        keep(form);
        http.status(422);
        show(template, view);
    }

    /**
     * Keeps a change and goes on to another page, where it can be taken back. Somebody who saved something else in
     * between loses nothing; where both changed the same, both versions are shown.
     *
     * @param words for the history and the notice: "Lot changed: north stack"
     * @param then where to go, from the ranch: {@code lots}
     */
    public void save(Form form, String words, UnaryOperator<Ranch> change, String then) {
        keep(form);
        var documents = new RanchDocument();
        var now = documents.tree(ranch);
        var patch = Patch.between(now, documents.tree(change.apply(ranch)));
        var mine = TwoVersions.isGivenUp(http) ? new Patch(patch.format(), Map.of()) : patch;
        var sent = Sent.print(http).map(print -> new Ranches.Form(print, then)).orElse(null);
        var answer = desk.store().ranches().save(ranch.id(), baseRev(), Desk.WHO, words, mine, sent);
        if (answer instanceof SaveAnswer.Conflict conflict) {
            settle(form, words, conflict, then);
            return;
        }
        unfinished().clear(form);
        var saved = (SaveAnswer.Saved) answer;
        if (mine.changes().isEmpty()) {
            leave(at(then) + (then.contains("?") ? "&" : "?") + "same");
        } else if (saved.rev() == rev) {
            leave(at(then));
        } else {
            leaveSaved(then, saved.rev());
        }
    }

    private void leaveSaved(String then, long saved) {
        leave(at(then) + (then.contains("?") ? "&" : "?") + "saved=" + saved);
    }

    /** Whether just this was sent before and stands: its button was pressed twice, and is answered as it was then. */
    boolean isAnswered() {
        var made = Made.of(http.formParams(REV));
        var print = Sent.print(http);
        if (made == null || made.rev() == rev || print.isEmpty()) {
            return false;
        }
        var before = desk.store().ranches().answered(ranch.id(), made.rev(), print.get());
        before.ifPresent(one -> {
            Form form = http.attribute(SENT);
            if (form != null) {
                unfinished().clear(form);
            }
            leaveSaved(one.then(), one.rev());
        });
        return before.isPresent();
    }

    /** Upon what another window saved meanwhile: once more with both, or with the question which one stands. */
    private void settle(Form form, String words, SaveAnswer.Conflict conflict, String then) {
        if (conflict.rev() != rev) {
            throw new Again(); // saved between our reading and our writing
        }
        var both = TwoVersions.of(this, baseRev(), form, words, conflict, then);
        if (both.choices().isEmpty()) {
            http.attribute(TOGETHER, both.typed());
            http.attribute(MADE_UPON, rev);
            throw new Again();
        }
        http.status(409);
        Pages.render(http, "haywright/app/web/twoVersions.jte", Map.of("page", this, "view", both));
    }

    /** What was sent has to be answered once more, by the ranch as it stands by now. */
    static final class Again extends RuntimeException {
        private static final long serialVersionUID = 1;

        Again() {
            super(null, null, false, false);
        }
    }

    /** The revision a form was made from; once somebody chose between two versions, the one that was chosen upon. */
    private long baseRev() {
        Long upon = http.attribute(MADE_UPON);
        if (upon != null) {
            return upon;
        }
        var box = TwoVersions.isChosen(http) ? TwoVersions.UPON : REV;
        Made.check(this, box);
        var made = Made.of(http.formParams(box));
        return made == null ? rev : made.rev();
    }

    /** Whether the button was pressed that saves and goes on to another of the kind. */
    public boolean wantsMore() {
        return http.formParam(MORE) != null;
    }

    /** A table to save. @param name of the file, without its ending */
    public void csv(String name, String table) {
        http.header("Content-Disposition", "attachment; filename=\"%s.csv\"".formatted(name))
                .contentType("text/csv; charset=utf-8")
                .result(table);
    }

    /** One HTML file to save, for a phone. @param name of the file, without its ending */
    public void phoneFile(String name, String html) {
        http.contentType("text/html; charset=utf-8")
                .header("Content-Disposition", "attachment; filename=\"%s.html\"".formatted(name))
                .result(html);
    }

    /** Goes on to another page after something was done. */
    void leave(String url) {
        leave(http, url);
    }

    public static void leave(Context http, String url) {
        if (http.header("HX-Request") != null) {
            http.header("HX-Redirect", url);
        } else {
            http.redirect(url, io.javalin.http.HttpStatus.SEE_OTHER);
        }
    }

    /** What was saved just now, if this page is the one shown after it. */
    Frame.@Nullable Notice notice() {
        if (http.queryParam("same") != null) {
            return new Frame.Notice("Nothing changed: it was like this already.", 0, http.path(), "");
        }
        var saved = http.queryParam("saved");
        if (saved == null || !saved.matches("[0-9]{1,15}")) {
            return null;
        }
        long asked = Long.parseLong(saved);
        return desk.store().ranches().history(ranch.id()).stream()
                .filter(edit -> edit.rev() == asked)
                .map(edit -> new Frame.Notice(edit.words(), edit.rev(), http.path(), mark()))
                .findFirst()
                .orElse(null);
    }
}
