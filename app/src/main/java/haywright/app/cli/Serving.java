package haywright.app.cli;

import haywright.app.compute.ComputeHttp;
import haywright.app.document.TinLantern;
import haywright.app.server.Rescue;
import haywright.app.server.Server;
import haywright.app.store.BadDatabase;
import haywright.app.store.Home;
import haywright.app.store.OwnerOnly;
import haywright.app.store.Store;
import haywright.app.store.Trouble;
import haywright.app.web.Desk;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import picocli.CommandLine.Option;

/** The pages, from the moment they are asked for until the process is told to end. */
final class Serving {
    /** Nobody else on the network can reach it. */
    private static final String LOOPBACK = "127.0.0.1";

    private static final int LAST_PORT = 65_535;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            description = "Where the pages are; without it the first free one from 8470.")
    private @Nullable Integer port;

    @Option(
            names = "--open-to-this-machine",
            description = "Lets everybody who uses this machine see and change these ranches, without the key.")
    private boolean open;

    /** Does not come back: the process ends by a signal, and closes pages and data then. */
    void serve(Store store, Path folder, Clock clock, String path, PrintWriter out) throws InterruptedException {
        if (port != null && (port < 0 || port > LAST_PORT)) {
            throw new Refused(
                    "port",
                    port.toString(),
                    "a port is a whole number up to " + LAST_PORT,
                    "Leave it out: the first free one from 8470 is taken.");
        }
        var desk = new Desk(store, clock, TinLantern::ranch);
        var home = home(folder);
        var server = Server.start(
                desk,
                home,
                LOOPBACK,
                port == null ? Server.freePort(LOOPBACK) : port,
                new ComputeHttp(clock, home::log)::register);
        endWithLauncher();
        atEnd(() -> {
            server.close();
            copied(store);
            store.close();
        });
        var address = address(home, server.port(), path);
        copyDaily(store);
        if (open) {
            out.println("Everybody who uses this machine can see and change these ranches.");
        }
        out.println("Open " + address + " (ends with Ctrl-C)");
        openBrowser(open ? address : beside(folder, address));
        Thread.currentThread().join();
    }

    private Home home(Path folder) {
        var kept = Home.in(folder);
        return open ? kept.open() : kept;
    }

    private String address(Home home, int at, String path) {
        return "http://" + LOOPBACK + ":" + at + path + (open ? "" : "?key=" + home.key());
    }

    /** Opens the data; where the database cannot be used, a page with the way back comes first. */
    Store opened(Supplier<Store> opening, Path folder, PrintWriter out) throws InterruptedException {
        while (true) {
            try {
                return opening.get();
            } catch (BadDatabase bad) {
                WayBack.lines(bad).forEach(out::println);
                var home = home(folder);
                try (var rescue = Rescue.start(bad, home, LOOPBACK, port == null ? Server.freePort(LOOPBACK) : port)) {
                    var address = address(home, rescue.port(), "/");
                    out.println("Or open " + address + " and press the button (ends with Ctrl-C)");
                    openBrowser(open ? address : beside(folder, address));
                    rescue.await();
                }
            }
        }
    }

    /** Looked at each hour, so that the copy has what was typed since, and each day has its own. */
    private static void copyDaily(Store store) {
        Executors.newSingleThreadScheduledExecutor(work -> {
                    var thread = new Thread(work, "daily copy");
                    thread.setDaemon(true);
                    return thread;
                })
                .scheduleWithFixedDelay(() -> copied(store), 0, 1, TimeUnit.HOURS);
    }

    private static void copied(Store store) {
        try {
            store.dailyCopy();
        } catch (RuntimeException e) {
            LoggerFactory.getLogger(Serving.class)
                    .warn(
                            "The daily copy could not be made: {}",
                            Trouble.of(e).map(Trouble::cause).orElse(String.valueOf(e.getMessage())));
        }
    }

    /** Also where the end has begun before the pages were there. */
    private static void atEnd(Runnable close) {
        try {
            Runtime.getRuntime().addShutdownHook(new Thread(close));
        } catch (IllegalStateException ending) {
            close.run();
        }
    }

    /** The launcher waits for the pages to end; when it was killed, nobody could end them any more. */
    private static void endWithLauncher() {
        var launcher = Long.getLong("haywright.launcher");
        if (launcher != null) {
            ProcessHandle.of(launcher)
                    .map(ProcessHandle::onExit)
                    .orElse(CompletableFuture.completedFuture(null))
                    .thenRun(() -> System.exit(0));
        }
    }

    /**
     * A file that leads on to an address: other users of the machine can read with which words a browser was started, and
     * must not learn the key from them.
     */
    private static String beside(Path folder, String address) {
        var file = folder.resolve("open.html");
        try {
            OwnerOnly.file(file);
            Files.writeString(file, """
                    <!doctype html>
                    <meta charset="utf-8">
                    <meta http-equiv="refresh" content="0;url=%1$s">
                    <title>Haywright</title>
                    <p><a href="%1$s">Open Haywright</a></p>
                    """.formatted(address));
            return file.toUri().toString();
        } catch (IOException e) {
            return ""; // the address stands in the terminal
        }
    }

    /** Only where somebody sits at the terminal and there is a screen; the address has been said in any case. */
    private static void openBrowser(String address) {
        boolean again = Boolean.getBoolean("haywright.again"); // the page is open already
        if (again || address.isEmpty() || !Terminal.isThere()) {
            return;
        }
        var system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        boolean screen = System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null;
        var command = system.contains("mac")
                ? List.of("open", address)
                : system.contains("win")
                        ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                        : screen ? List.of("xdg-open", address) : List.<String>of();
        if (!command.isEmpty()) {
            try {
                new ProcessBuilder(command)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
            } catch (IOException e) {
                // There is no browser to open; the address stands in the terminal.
            }
        }
    }
}
