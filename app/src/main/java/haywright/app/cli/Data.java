package haywright.app.cli;

import haywright.app.store.DataFolder;
import haywright.app.store.Store;
import haywright.workings.Refused;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** Where the ranches are kept: one option of every command. */
final class Data {
    private static final String SQLITE = "jdbc:sqlite:";

    @Option(
            names = "--data",
            scope = ScopeType.INHERIT,
            paramLabel = "DIR",
            description = "Where the ranches are kept: a folder, or the jdbc: address of a PostgreSQL database"
                    + " (its password better in ~/.pgpass, or a file that $PGPASSFILE names, than in the address)."
                    + " Without it $HAYWRIGHT_HOME, or .haywright in your home folder.")
    private @Nullable String place;

    private boolean isDatabase() {
        if (place == null || !place.strip().toLowerCase(Locale.ROOT).startsWith("jdbc:")) {
            return false;
        }
        if (!place.startsWith("jdbc:postgresql:") && !place.startsWith("jdbc:sqlite:")) {
            throw new Refused(
                    "--data",
                    place.replaceAll("[?].*", ""),
                    "only jdbc:postgresql: and jdbc:sqlite: are known, in small letters and with no blank before them",
                    "Name a folder, or one of these.");
        }
        return true;
    }

    Store open(Clock clock) {
        return isDatabase() ? Store.at(String.valueOf(place), clock) : Store.inFolder(folder(), clock);
    }

    /** For whatever only looks at what is kept: a place that was mistyped is said, and not made. */
    Store openKept(Clock clock) {
        if (!isDatabase()) {
            new DataFolder(folder(), clock).refuseMissing();
        } else if (place != null && place.startsWith(SQLITE)) {
            var file =
                    place.substring(SQLITE.length()).replaceFirst("^file:", "").replaceFirst("[?].*", "");
            if (!file.startsWith(":memory:") && !file.isEmpty() && !Files.exists(path(file))) {
                throw new Refused("--data", place, "there is no such database", "Is the name right?");
            }
        }
        return open(clock);
    }

    /** Where a file is taken in, which may be a place that begins with it. */
    Store openOrBegin(Clock clock, PrintWriter out) {
        boolean begins = !isDatabase() && !Files.exists(folder());
        var store = open(clock);
        if (begins) {
            out.printf("A new place for data was made: %s%n", folder().toAbsolutePath());
        }
        return store;
    }

    /** The demo has a folder of its own, so that playing with it touches nobody's ranch. */
    Store openDemo(Clock clock) {
        if (place != null) {
            return open(clock);
        }
        Store.make(folder()); // whichever command comes first
        return Store.inFolder(demoFolder(), clock);
    }

    /** The user's own folder as it is seen without opening its database. */
    DataFolder dataFolder(Clock clock) {
        if (isDatabase()) {
            throw new Refused(
                    "--data",
                    String.valueOf(place).replaceAll("[?].*", ""),
                    "a database server keeps no daily copies here",
                    "Restore the copy that its keeper made, or a backup with: ranch restore FILE.");
        }
        return new DataFolder(folder(), clock);
    }

    /** Where the demo's papers go: beside its data, or here when those are in a database elsewhere. */
    Path demoFolder() {
        if (place == null) {
            return folder().resolve("demo");
        }
        return isDatabase() ? Path.of("") : folder();
    }

    /** What is kept beside the ranches: their folder, or the usual one when they are in a database elsewhere. */
    Path home() {
        return isDatabase() ? usual() : folder();
    }

    private Path folder() {
        return place != null ? path(place) : usual();
    }

    private static Path usual() {
        var home = System.getenv("HAYWRIGHT_HOME");
        return home != null && !home.isBlank()
                ? path(home)
                : path(System.getProperty("user.home")).resolve(".haywright");
    }

    /** @throws Refused where no file can have this name */
    static Path path(String typed) {
        try {
            if (typed.startsWith("~/") || typed.equals("~")) {
                throw new Refused(
                        "file",
                        typed,
                        "between quotation marks ~ is no home folder but a letter",
                        "Leave the marks out, or write $HOME in the place of ~.");
            }
            if (!typed.isBlank()) {
                return Path.of(typed);
            }
        } catch (InvalidPathException e) {
            throw new Refused(
                    "file",
                    typed,
                    "this system cannot take it for the name of a file or folder",
                    "Are its letters outside of the terminal's character set? Start again with LC_ALL=C.UTF-8.");
        }
        throw new Refused(
                "file", "nothing", "the name of a file or folder is needed", "Type one, or leave the option out.");
    }
}
