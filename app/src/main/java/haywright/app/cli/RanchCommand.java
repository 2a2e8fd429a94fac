package haywright.app.cli;

import haywright.app.exchange.csv.ReportsOut;
import haywright.app.store.RanchFiles;
import haywright.app.store.Ranches;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import haywright.workings.Refused;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Ranches in and out of the house as files. */
@Command(name = "ranch", mixinStandardHelpOptions = true, description = "Ranches as files.")
final class RanchCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    private final Clock clock;
    private final Data data;

    RanchCommand(Clock clock, Data data) {
        this.clock = clock;
        this.data = data;
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "Say what to do: list, import, export, reports, check, backup, restore.");
    }

    @Command(description = "Names every ranch, with its id.", mixinStandardHelpOptions = true)
    void list() {
        try (var store = data.open(clock)) {
            store.ranches().list().forEach(r -> out().printf("%s  %s%n", r.id(), r.name()));
        }
    }

    @Command(name = "import", description = "Takes a ranch from a file.", mixinStandardHelpOptions = true)
    void importFile(
            @Parameters(paramLabel = "FILE") Path file,
            @Option(names = "--replace", description = "Put it in the place of the ranch that is here already.")
                    boolean replace) {
        try (var store = data.open(clock)) {
            say(store.files().importFile(file, Desk.WHO, replace));
        }
    }

    @Command(description = "Writes a ranch as a file.", mixinStandardHelpOptions = true)
    void export(
            @Parameters(paramLabel = "NAME", description = "Its name or its id.") String name,
            @Parameters(
                            paramLabel = "FILE",
                            arity = "0..1",
                            description = "Without it the document goes to standard output.")
                    @Nullable
                    Path file) {
        try (var store = data.open(clock)) {
            var ranch = named(store, name);
            if (file == null) {
                out().print(store.files().export(ranch.id()));
                out().flush(); // it does so by itself only at the end of a line
            } else {
                Output.to(file, () -> store.files().exportTo(ranch.id(), file));
                out().printf("%s: written to %s%n", ranch.name(), file);
            }
        }
    }

    @Command(
            description = "Writes every figure of a ranch's reports as CSV to standard output.",
            mixinStandardHelpOptions = true)
    void reports(@Parameters(paramLabel = "NAME", description = "Its name or its id.") String name) {
        try (var store = data.open(clock)) {
            out().print(ReportsOut.reports(
                    store.ranches().open(named(store, name).id()).ranch()));
            out().flush();
        }
    }

    @Command(description = "Says what is wrong with a file, and keeps nothing.", mixinStandardHelpOptions = true)
    void check(@Parameters(paramLabel = "FILE") Path file) {
        try (var store = Store.at("jdbc:sqlite::memory:", clock)) {
            Refused.unlessEmpty(store.files().check(file));
            out().printf("%s: nothing is wrong with it%n", file);
        }
    }

    @Command(description = "Writes every ranch into one file.", mixinStandardHelpOptions = true)
    void backup(@Parameters(paramLabel = "FILE") Path file) {
        try (var store = data.open(clock)) {
            Output.to(file, () -> store.files().backup(file));
            out().printf("%d written to %s%n", store.ranches().list().size(), file);
        }
    }

    @Command(
            description = "Takes every ranch from a backup, or from a daily copy of the data.",
            mixinStandardHelpOptions = true)
    void restore(@Parameters(paramLabel = "FILE") Path file) {
        try (var store = data.open(clock)) {
            store.files().restore(file, Desk.WHO).forEach(this::say);
        }
    }

    private void say(RanchFiles.Imported imported) {
        out().printf(
                        "%s: %s%n",
                        imported.name(),
                        imported.isNew() ? "taken in" : "was here already; saved as a change that can be undone");
    }

    /** @throws Refused when none or several have that name */
    static Ranches.Listed named(Store store, String name) {
        var all = store.ranches().list();
        List<Ranches.Listed> found = all.stream()
                .filter(r ->
                        r.name().equalsIgnoreCase(name) || r.id().toString().equals(name))
                .toList();
        if (found.size() == 1) {
            return found.get(0);
        }
        throw found.isEmpty()
                ? new Refused(
                        "name",
                        name,
                        "there is no ranch of this name here",
                        all.isEmpty()
                                ? "Import one first."
                                : "There is "
                                        + String.join(
                                                ", ",
                                                all.stream()
                                                        .map(Ranches.Listed::name)
                                                        .toList()) + ".")
                : new Refused(
                        "name",
                        name,
                        found.size() + " ranches have this name",
                        "Say which by its id; ranch list shows them.");
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
