package haywright.app.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import haywright.app.web.bench.BenchPages;
import haywright.app.web.herd.GroupPages;
import haywright.app.web.herd.NeedPages;
import haywright.app.web.lab.BookPages;
import haywright.app.web.lab.BringPages;
import haywright.app.web.lab.EnergyPages;
import haywright.app.web.lab.ReportPages;
import haywright.app.web.lab.WaterPages;
import haywright.app.web.letter.LetterPages;
import haywright.app.web.lots.FeedPages;
import haywright.app.web.lots.LotPages;
import haywright.app.web.ranch.RanchPages;
import haywright.app.web.round.RoundPages;
import haywright.app.web.sampling.TakePages;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.Key;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;

/** The pages on loopback. Start it, ask its port, close it. */
public final class Server implements AutoCloseable {
    private static final int FIRST_PORT = 8470;
    private static final int LAST_PORT = 8499;
    private static final Key<Home> HOME = new Key<>("home");
    private static final Key<Assets> ASSETS = new Key<>("assets");
    private static final Key<TemplateEngine> TEMPLATES = new Key<>("templates");

    private final Javalin javalin;

    private Server(Javalin javalin) {
        this.javalin = javalin;
    }

    /**
     * @param home whose key opens the pages
     * @param host address to listen on; anything but loopback is the caller's explicit wish
     * @param port 0 for any free one
     * @param more routes of rooms that are no pages, such as the API
     * @throws Refused when the port is taken
     */
    public static Server start(Desk desk, Home home, String host, int port, Consumer<RoutesConfig> more) {
        return start(desk, home, host, port, Deadline.Patience.USUAL, more);
    }

    static Server start(
            Desk desk, Home home, String host, int port, Deadline.Patience patience, Consumer<RoutesConfig> more) {
        var javalin = Javalin.create(config -> {
            setUp(config, desk, home, new Gate(host, home), patience);
            more.accept(config.routes);
        });
        listen(javalin, host, port);
        return new Server(javalin);
    }

    static void listen(Javalin javalin, String host, int port) {
        try {
            javalin.start(host, port);
        } catch (JavalinBindException e) {
            throw new Refused(
                    "port",
                    String.valueOf(port),
                    "something else on this machine listens there, perhaps Haywright itself",
                    "Look for its page, or leave the port out: the first free one is taken.");
        }
    }

    /** The first free port from 8470, so that the address stays the same from day to day. */
    public static int freePort(String host) {
        for (int port = FIRST_PORT; port <= LAST_PORT; port++) {
            try (var socket = new ServerSocket(port, 1, InetAddress.getByName(host))) {
                return socket.getLocalPort();
            } catch (IOException e) {
                // taken: the next one
            }
        }
        return 0;
    }

    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        javalin.stop();
    }

    private static void setUp(JavalinConfig config, Desk desk, Home home, Gate gate, Deadline.Patience patience) {
        foundation(config, home, gate, patience);
        config.routes.after(http -> desk.store().settle());
        config.routes.get("/echo/{unit}/{name}", Server::echo);
        RoundPages.routes(config.routes, desk);
        DamagedRanch.routes(config.routes, desk);
        steps(config.routes, desk);
        Errors.routes(config.routes);
    }

    /** What every page stands on. */
    static void foundation(JavalinConfig config, Home home, Gate gate, Deadline.Patience patience) {
        Limits.set(config, patience);
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.appData(HOME, home);
        config.appData(ASSETS, new Assets());
        config.appData(
                TEMPLATES,
                TemplateEngine.createPrecompiled(
                        null, ContentType.Html, Server.class.getClassLoader(), "haywright.app.pages"));
        config.routes.before(gate::before);
        sayServed(config.routes);
        config.routes.get("/static/{name}", http -> assets(http).serve(http));
    }

    /** For the launcher, which keeps the classes that a run loaded only where it showed a page: an empty file says so. */
    private static void sayServed(RoutesConfig routes) {
        var served = System.getProperty("haywright.served");
        if (served == null) {
            return;
        }
        var said = new AtomicBoolean();
        routes.after(http -> {
            boolean page = http.statusCode() == 200
                    && String.valueOf(http.res().getContentType()).startsWith("text/html");
            if (page && said.compareAndSet(false, true)) {
                try {
                    Files.write(Path.of(served), new byte[0]);
                } catch (IOException e) {
                    // the next start is slower; no page may fail for that
                }
            }
        });
    }

    /** Every step of the trail and the class that answers for it. */
    private static void steps(RoutesConfig to, Desk desk) {
        RanchPages.routes(new Routes(to, desk, null));
        History.routes(new Routes(to, desk, null));
        LotPages.routes(new Routes(to, desk, Step.LOTS));
        FeedPages.routes(new Routes(to, desk, Step.LOTS));
        TakePages.routes(new Routes(to, desk, Step.TAKE_IT));
        BringPages.routes(new Routes(to, desk, Step.READ_IT));
        BookPages.routes(new Routes(to, desk, Step.READ_IT));
        EnergyPages.routes(new Routes(to, desk, Step.READ_IT));
        WaterPages.routes(new Routes(to, desk, Step.READ_IT));
        ReportPages.routes(new Routes(to, desk, Step.READ_IT));
        GroupPages.routes(new Routes(to, desk, Step.HERD));
        NeedPages.routes(new Routes(to, desk, Step.HERD));
        BenchPages.routes(new Routes(to, desk, Step.BENCH));
        LetterPages.routes(new Routes(to, desk, Step.LETTER));
        for (var step : Step.values()) {
            if (!step.isBuilt()) {
                new Routes(to, desk, step).get(step.path(), page -> page.show("haywright/app/web/notBuilt.jte", step));
            }
        }
    }

    /** What was typed into one box, in a second unit, while the rest is still being filled in. */
    private static void echo(Context http) {
        var typed = http.queryParam(http.pathParam("name"));
        try {
            var unit = Unit.valueOf(http.pathParam("unit"));
            http.result(Form.echo(typed == null ? "" : typed, unit));
        } catch (IllegalArgumentException e) {
            throw new Refused("unit", http.pathParam("unit"), "there is no such unit", "");
        }
    }

    static Assets assets(Context http) {
        return http.appData(ASSETS);
    }

    /** @param template path from the source folder */
    public static void render(Context http, String template, Map<String, Object> with) {
        var html = new StringOutput(16 * 1024);
        http.appData(TEMPLATES).render(template, with, html);
        var body = html.toString().getBytes(StandardCharsets.UTF_8);
        http.contentType("text/html; charset=utf-8");
        if (http.method() == HandlerType.GET && http.statusCode() == 200) {
            // of the page as it came out: it changes with whatever the page changes with, and with nothing else
            var tag = '"' + Assets.version(body) + '"';
            http.header("ETag", tag);
            if (tag.equals(http.header("If-None-Match"))) {
                http.status(304);
                return;
            }
        }
        http.result(body);
    }

    /** @return where what failed can be found, as a sentence */
    public static String log(Context http, Throwable e) {
        return http.appData(HOME).log(http.method() + " " + http.path(), e);
    }
}
