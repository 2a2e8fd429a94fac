package haywright.app.server;

import haywright.app.store.BadDatabase;
import haywright.app.store.DataFolder;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.Deadline;
import haywright.app.web.Errors;
import haywright.app.web.Frame;
import haywright.app.web.Gate;
import haywright.app.web.Pages;
import haywright.app.words.Show;
import haywright.workings.Refused;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;

/** The one page there is while the database cannot be used: what is wrong with it, and the way back. */
public final class Rescue implements AutoCloseable {
    private final BadDatabase bad;
    private volatile List<String> done = List.of();
    private final CountDownLatch mended = new CountDownLatch(1);
    private final Javalin javalin;

    private Rescue(BadDatabase bad, Home home, String host, int port, Deadline.Patience patience) {
        this.bad = bad;
        javalin = Javalin.create(config -> {
            Pages.foundation(config, home, new Gate(host, home), patience);
            config.routes.post("/restore-newest", this::restoreNewest);
            config.routes.post("/begin-anew", this::beginAnew);
            config.routes.get("/<any>", http -> show(http, null));
            config.routes.get("/", http -> show(http, null));
            config.routes.exception(Refused.class, (e, http) -> show(http, e));
            Errors.routes(config.routes);
        });
        Server.listen(javalin, host, port);
    }

    /** @throws Refused when the port is taken */
    public static Rescue start(BadDatabase bad, Home home, String host, int port) {
        return start(bad, home, host, port, Deadline.Patience.USUAL);
    }

    public static Rescue start(BadDatabase bad, Home home, String host, int port, Deadline.Patience patience) {
        return new Rescue(bad, home, host, port, patience);
    }

    public int port() {
        return javalin.port();
    }

    /** Comes back once somebody chose a way and the database is in place. */
    public void await() throws InterruptedException {
        mended.await();
        Thread.sleep(300); // the answer is on its way
    }

    @Override
    public void close() {
        javalin.stop();
    }

    /**
     * @param day of the newest good copy; empty when there is none
     * @param done what was done, a line each; empty before
     * @param problem why it could not be done
     */
    public record View(
            String wrong,
            String token,
            String database,
            String copies,
            String day,
            int ranches,
            boolean isEmpty,
            boolean isThere,
            List<String> done,
            @Nullable String problem) {}

    private void show(Context http, @Nullable Refused problem) {
        http.status(503);
        if (!done.isEmpty()) {
            http.header("Refresh", "1; url=/"); // the pages themselves open in a moment
        }
        render(http, done, problem == null ? null : problem.problems().get(0).sentence());
    }

    private void render(Context http, List<String> done, @Nullable String problem) {
        var folder = bad.folder();
        var newest = bad.newest();
        var frame = Frame.plain(http, "The database cannot be used");
        var view = new View(
                bad.line(),
                frame.token(),
                folder.database().toString(),
                folder.copies().toString(),
                newest.map(copy -> Show.date(copy.day())).orElse(""),
                newest.map(DataFolder.Copy::ranches).orElse(0),
                bad.isEmpty(),
                Files.exists(folder.database()),
                done,
                problem);
        Pages.render(http, "haywright/app/web/rescue.jte", Map.of("frame", frame, "view", view));
    }

    private void restoreNewest(Context http) {
        if (opensNow()) {
            finish(http, List.of("The database can be opened again; nothing had to be done."));
            return;
        }
        var restored = bad.folder().restoreNewest();
        finish(
                http,
                List.of(
                        "The copy of " + Show.date(restored.copy().day()) + " is in place.",
                        restored.aside()
                                .map(Path::toString)
                                .map(aside -> "What was there is kept as " + aside
                                        + ". It alone has what was saved since that copy.")
                                .orElse("")));
    }

    private void beginAnew(Context http) {
        if (bad.isEmpty() && !opensNow()) {
            bad.folder().beginAnew();
        }
        finish(http, List.of("A new database is begun. The copies are kept in a folder with today’s date beside it."));
    }

    /** Somebody may have mended it at the terminal meanwhile. */
    private boolean opensNow() {
        var folder = bad.folder().path();
        try (var store = Store.inFolder(folder, Clock.systemDefaultZone())) {
            return true;
        } catch (BadDatabase | Refused e) {
            return false;
        }
    }

    private void finish(Context http, List<String> done) {
        this.done = done.stream().filter(line -> !line.isEmpty()).toList();
        render(http, this.done, null);
        mended.countDown();
    }
}
