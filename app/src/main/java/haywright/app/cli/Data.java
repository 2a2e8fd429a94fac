package haywright.app.cli;

import haywright.app.store.Store;
import java.nio.file.Path;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** Where the ranches are kept: one option of every command. */
final class Data {
    @Option(
            names = "--data",
            scope = ScopeType.INHERIT,
            paramLabel = "DIR",
            description = "Where the ranches are kept: a folder, or the jdbc: address of a PostgreSQL database."
                    + " Without it $HAYWRIGHT_HOME, or .haywright in your home folder.")
    private @Nullable String place;

    Store open(Clock clock) {
        return place != null && place.startsWith("jdbc:") ? Store.at(place, clock) : Store.inFolder(folder(), clock);
    }

    /** The demo has a folder of its own, so that playing with it touches nobody's ranch. */
    Store openDemo(Clock clock) {
        return place != null ? open(clock) : Store.inFolder(demoFolder(), clock);
    }

    /** Where the daily copies of the ranches go. */
    Path copies() {
        return place != null && place.startsWith("jdbc:") ? Path.of("") : folder().resolve("copies");
    }

    /** Where the demo's papers go: beside its data, or here when those are in a database elsewhere. */
    Path demoFolder() {
        if (place == null) {
            return folder().resolve("demo");
        }
        return place.startsWith("jdbc:") ? Path.of("") : folder();
    }

    private Path folder() {
        if (place != null) {
            return Path.of(place);
        }
        var home = System.getenv("HAYWRIGHT_HOME");
        return home != null && !home.isBlank() ? Path.of(home) : Path.of(System.getProperty("user.home"), ".haywright");
    }
}
