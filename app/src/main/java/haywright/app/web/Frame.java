package haywright.app.web;

import haywright.app.web.trail.Step;
import haywright.app.web.trail.Trail;
import haywright.app.words.Show;
import haywright.ranch.Ranch;
import io.javalin.http.Context;
import java.util.List;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * What stands around a page: head, header, trail.
 *
 * @param title of the page; {@code Error:} is put before it where the form on it has problems
 * @param ranch null on the pages above the ranches
 * @param notice what was just saved, or null
 * @param unsaved why what was just sent could not be saved, or null
 * @param lostDraft whether what somebody left unfinished in the form on it is kept and cannot be read
 */
public record Frame(
        String title,
        boolean hasProblems,
        String token,
        UnaryOperator<String> asset,
        @Nullable OnRanch ranch,
        @Nullable Notice notice,
        @Nullable Unsaved unsaved,
        boolean lostDraft) {
    /** @param here null on a page that is no step of the trail */
    public record OnRanch(
            UUID id,
            String name,
            boolean invented,
            String today,
            List<Trail.Stop> trail,
            @Nullable Step here) {
        public String at(String path) {
            return "/ranch/" + id + "/" + path;
        }
    }

    /**
     * @param rev the edit that Undo takes back; 0 where nothing changed
     * @param back the page it is shown on, to come back to
     * @param mark of the ranch as the page shows it
     */
    public record Notice(String words, long rev, String back, String mark) {}

    /**
     * @param causes a line for the cause, then what to do
     * @param kept whether what was typed is kept as a draft too
     */
    public record Unsaved(List<String> causes, boolean kept) {}

    /** For a page that belongs to no ranch. */
    public static Frame plain(Context http, String title) {
        return new Frame(title, false, Gate.token(http), Pages.assets(http)::url, null, null, null, false);
    }

    /** Without a bracket that only says what the stamp beside it says. */
    public static String name(Ranch ranch) {
        return ranch.settings().invented() ? ranch.name().replace(" (invented)", "") : ranch.name();
    }

    public Frame withProblems(boolean has) {
        return new Frame(title, has, token, asset, ranch, notice, unsaved, lostDraft);
    }

    static Frame of(Page page, String title, boolean hasProblems) {
        var ranch = page.ranch();
        var around = new OnRanch(
                ranch.id(),
                name(ranch),
                ranch.settings().invented(),
                Show.date(page.today()),
                Trail.of(ranch, page.book().isPresent()),
                page.here());
        var unsaved = page.unsaved();
        return new Frame(
                title,
                hasProblems || unsaved != null,
                Gate.token(page.http()),
                Pages.assets(page.http())::url,
                around,
                page.notice(),
                unsaved,
                page.unfinished().isLost());
    }

    /** For the head: the page, the ranch, the program. */
    public String fullTitle() {
        return (hasProblems ? "Error: " : "") + title + (ranch == null ? "" : ", " + ranch.name()) + " · Haywright";
    }

    public String url(String asset) {
        return this.asset.apply(asset);
    }
}
