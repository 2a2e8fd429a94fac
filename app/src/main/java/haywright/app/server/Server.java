package haywright.app.server;

import haywright.app.store.Home;
import haywright.app.web.DamagedRanch;
import haywright.app.web.Deadline;
import haywright.app.web.Desk;
import haywright.app.web.Errors;
import haywright.app.web.Form;
import haywright.app.web.Gate;
import haywright.app.web.History;
import haywright.app.web.Pages;
import haywright.app.web.Routes;
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
import haywright.app.web.match.MatchPages;
import haywright.app.web.photo.PhotoPages;
import haywright.app.web.ranch.RanchPages;
import haywright.app.web.round.RoundPages;
import haywright.app.web.sampling.TakePages;
import haywright.app.web.tools.ToolPages;
import haywright.app.web.trail.Step;
import haywright.app.web.winter.WinterPages;
import haywright.app.words.Measures;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.function.Consumer;

/** The pages on loopback. Start it, ask its port, close it. */
public final class Server implements AutoCloseable {
    private static final int FIRST_PORT = 8470;
    private static final int LAST_PORT = 8499;

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

    public static Server start(
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
        Pages.foundation(config, home, gate, patience);
        config.routes.before(http -> Measures.usual());
        config.routes.after(http -> desk.store().settle());
        config.routes.get("/echo/{unit}/{name}", Server::echo);
        RoundPages.routes(config.routes, desk);
        DamagedRanch.routes(config.routes, desk);
        steps(config.routes, desk);
        Errors.routes(config.routes);
    }

    /** Every step of the trail and the class that answers for it. */
    private static void steps(RoutesConfig to, Desk desk) {
        RanchPages.routes(new Routes(to, desk, null));
        History.routes(new Routes(to, desk, null));
        LotPages.routes(new Routes(to, desk, Step.LOTS));
        FeedPages.routes(new Routes(to, desk, Step.LOTS));
        PhotoPages.routes(new Routes(to, desk, Step.LOTS));
        TakePages.routes(new Routes(to, desk, Step.TAKE_IT));
        BringPages.routes(new Routes(to, desk, Step.READ_IT));
        BookPages.routes(new Routes(to, desk, Step.READ_IT));
        EnergyPages.routes(new Routes(to, desk, Step.READ_IT));
        WaterPages.routes(new Routes(to, desk, Step.READ_IT));
        ReportPages.routes(new Routes(to, desk, Step.READ_IT));
        GroupPages.routes(new Routes(to, desk, Step.HERD));
        NeedPages.routes(new Routes(to, desk, Step.HERD));
        BenchPages.routes(new Routes(to, desk, Step.BENCH));
        ToolPages.routes(new Routes(to, desk, Step.BENCH));
        MatchPages.routes(new Routes(to, desk, Step.MATCH));
        WinterPages.routes(new Routes(to, desk, Step.WINTER_BOOK));
        LetterPages.routes(new Routes(to, desk, Step.LETTER));
    }

    /** What was typed into one box, in a second unit, while the rest is still being filled in. */
    private static void echo(Context http) {
        var typed = http.queryParam(http.pathParam("name"));
        try {
            var unit = Unit.valueOf(http.pathParam("unit"));
            http.result(Measures.in(unit, () -> Form.echo(typed == null ? "" : typed, unit)));
        } catch (IllegalArgumentException e) {
            throw new Refused("unit", http.pathParam("unit"), "there is no such unit", "");
        }
    }
}
