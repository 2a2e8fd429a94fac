package haywright.app.web.winter;

import haywright.app.report.StackLine;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.season.WinterBook;
import haywright.season.given.Season;
import haywright.season.play.Plan;
import haywright.workings.Problem;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Whether the feed lasts to grass. The page answers at once; winters come in as they are played. */
public final class WinterPages {
    private static final Books BOOKS = new Books();
    private static final int FEWEST = 3;

    private WinterPages() {}

    public static void routes(Routes on) {
        on.get("winter", WinterPages::show);
        on.post("winter", WinterPages::again);
        on.post("winter/stop", WinterPages::stop);
    }

    /**
     * @param book null while it is made
     * @param plan null until there is one
     * @param season null until it is worked out
     * @param stack null until a few winters are played
     * @param refused why there can be no book of this ranch yet
     * @param isOlder whether the ranch was changed after it was begun
     */
    public record View(
            @Nullable WinterBook book,
            @Nullable Plan plan,
            @Nullable Season season,
            @Nullable StackLine stack,
            List<Problem> refused,
            boolean isMaking,
            boolean failed,
            boolean isOlder,
            int done,
            int of) {}

    private static void show(Page page) {
        var making = BOOKS.of(page.ranch().id()).orElseGet(() -> BOOKS.begin(page));
        page.show("haywright/app/web/winter/winter.jte", view(making, page));
    }

    private static View view(Making making, Page page) {
        var now = making.now();
        return new View(
                now.book(),
                now.book() == null ? now.plan() : now.book().plan(),
                now.season(),
                stack(now),
                now.refused(),
                now.isMaking(),
                now.failed(),
                making.rev() != page.rev() || !making.day().equals(page.today()),
                now.done(),
                now.of());
    }

    private static @Nullable StackLine stack(Making.Now now) {
        var season = now.season();
        if (season == null || now.lines().size() < FEWEST) {
            return null;
        }
        var begins = IntStream.rangeClosed(0, season.weeks() - 1)
                .mapToObj(season::begins)
                .toList();
        return new StackLine(
                begins,
                now.lines().stream()
                        .map(line -> new StackLine.Winter(line.lasted(), line.tons()))
                        .toList(),
                season.grass());
    }

    private static void again(Page page) {
        BOOKS.begin(page);
        Page.leave(page.http(), page.at("winter"));
    }

    private static void stop(Page page) {
        BOOKS.of(page.ranch().id()).ifPresent(Making::stop);
        Page.leave(page.http(), page.at("winter"));
    }
}
