package haywright.app.cli;

import haywright.app.exchange.csv.ReportsOut;
import haywright.app.store.BadDatabase;
import haywright.app.store.RanchFiles;
import haywright.app.store.Ranches;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import haywright.app.words.Letters;
import haywright.app.words.Show;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
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

    private static final String INVENTED = " (invented)";

    private final Clock clock;
    private final Data data;

    RanchCommand(Clock clock, Data data) {
        this.clock = clock;
        this.data = data;
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "What to do: list, import, export, reports, check, backup, restore.");
    }

    @Command(description = "Names every ranch, with its id.", mixinStandardHelpOptions = true)
    void list() {
        try (var store = data.openKept(clock)) {
            for (var ranch : store.ranches().list()) {
                out().printf("%s  %s%n", ranch.id(), Letters.inOneLine(ranch.name()));
                store.recovery()
                        .wrong(ranch.id())
                        .ifPresent(wrong -> err().printf(
                                        "%s: cannot be read: %s%n", Letters.inOneLine(ranch.name()), sentence(wrong)));
            }
        }
    }

    @Command(name = "import", description = "Takes a ranch from a file.", mixinStandardHelpOptions = true)
    void importFile(
            @Parameters(paramLabel = "FILE") Path file,
            @Option(names = "--replace", description = "Put it in the place of the ranch that is here already.")
                    boolean replace) {
        try (var store = data.openOrBegin(clock, out())) {
            var taken = store.files().importFile(file, Desk.WHO, replace);
            say(taken);
            sayMissing(store, taken.id(), taken.name());
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
        try (var store = data.openKept(clock)) {
            var ranch = named(store, name);
            store.recovery()
                    .wrong(ranch.id())
                    .ifPresent(wrong -> err().printf(
                                    "%s: cannot be read and goes out exactly as it is kept: %s%n",
                                    Letters.inOneLine(ranch.name()), sentence(wrong)));
            if (file == null) {
                try (var document = new InputStreamReader(store.files().exported(ranch.id()), StandardCharsets.UTF_8)) {
                    document.transferTo(out());
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
                out().flush(); // it does so by itself only at the end of a line
            } else {
                var replaced = Output.replaced(file);
                Output.to(file, () -> store.files().exportTo(ranch.id(), file));
                out().printf("%s: written to %s%s%n", Letters.inOneLine(ranch.name()), file, replaced);
            }
            sayMissing(store, ranch.id(), ranch.name());
        }
    }

    @Command(
            description = "Writes every figure of a ranch's reports as CSV to standard output.",
            mixinStandardHelpOptions = true)
    void reports(@Parameters(paramLabel = "NAME", description = "Its name or its id.") String name) {
        try (var store = data.openKept(clock)) {
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

    @Command(
            description = "Writes everything into one file: ranches with their history, also those put away, forms left"
                    + " unfinished, and files.",
            mixinStandardHelpOptions = true)
    void backup(@Parameters(paramLabel = "FILE") Path file) {
        try (var store = data.openKept(clock)) {
            var replaced = Output.replaced(file);
            Output.to(file, () -> store.files().backup(file));
            var all = new ArrayList<>(store.ranches().list());
            all.addAll(store.ranches().deleted());
            for (var ranch : all) {
                store.recovery()
                        .wrong(ranch.id())
                        .ifPresent(wrong -> err().printf(
                                        "%s: cannot be read and is in the backup exactly as it is kept: %s%n",
                                        Letters.inOneLine(ranch.name()), sentence(wrong)));
                sayMissing(store, ranch.id(), ranch.name());
            }
            out().printf("%s written to %s%s%n", WayBack.ranches(all.size()), file, replaced);
        }
    }

    @Command(
            description = "Takes every ranch from a backup, or from a daily copy of the data.",
            mixinStandardHelpOptions = true)
    int restore(
            @Parameters(paramLabel = "FILE", arity = "0..1") @Nullable Path file,
            @Option(
                            names = "--newest",
                            description = "The newest daily copy that can be read, in place of FILE. A database that"
                                    + " cannot be read makes room for it and is renamed, not deleted.")
                    boolean newest) {
        if (newest == (file != null)) {
            throw new ParameterException(spec.commandLine(), "Name a FILE, or say --newest.");
        }
        try (var store = newest ? openOrPutInPlace() : data.openOrBegin(clock, out())) {
            if (file == null) {
                return 0;
            }
            var all = store.files().restore(file, Desk.WHO);
            all.forEach(this::say);
            return all.stream().allMatch(ranch -> ranch.wrong().isEmpty()) ? 0 : Cli.REFUSED;
        }
    }

    /** With the newest daily copy taken in, or in the place of a database that cannot be used. */
    private Store openOrPutInPlace() {
        var folder = data.dataFolder(clock);
        folder.refuseMissing();
        folder.dayToCome()
                .ifPresent(day -> err().printf(
                                "By this machine's clock some copies are of days to come, the last of %s, and they are taken last."
                                        + " If the clock is wrong, name the copy instead; they are in %s%n",
                                Show.date(day), folder.copies()));
        Store store;
        try {
            store = data.open(clock);
        } catch (BadDatabase bad) {
            var restored = folder.restoreNewest();
            out().printf(
                            "The copy of %s is in place, with %s.%n",
                            Show.date(restored.copy().day()),
                            WayBack.ranches(restored.copy().ranches()));
            restored.aside()
                    .ifPresent(aside ->
                            out().printf("What was there is kept as %s. It alone has what was saved since.%n", aside));
            return data.open(clock);
        }
        var copy = folder.newestGood()
                .orElseThrow(() -> new Refused(
                        "data", folder.copies().toString(), "there is no daily copy that can be read", "Name a file."));
        store.files().restore(copy.file(), Desk.WHO).forEach(this::say);
        return store;
    }

    /** Of each file that a ranch speaks of and nobody has: whoever copies it should not learn that later. */
    private void sayMissing(Store store, UUID ranch, String name) {
        store.files()
                .missing(ranch)
                .forEach(file -> err().printf(
                                "%s: the file “%s” is not here any more; only its name is.%n",
                                Letters.inOneLine(name), Letters.inOneLine(file)));
    }

    private static String sentence(Refused wrong) {
        return Letters.inOneLine(wrong.problems().get(0).sentence());
    }

    private void say(RanchFiles.Imported imported) {
        out().printf(
                        "%s: %s%n",
                        Letters.inOneLine(imported.name()),
                        switch (imported.became()) {
                            case NEW ->
                                imported.wrong().isEmpty()
                                        ? "taken in"
                                        : "cannot be read, and is here exactly as the file has it; its page has the ways back";
                            case CHANGED -> "was here already; saved as a change that can be undone";
                            case MENDED ->
                                "was here and could not be read; the file is in its place. That cannot be undone; what was there is kept, and its History page has it";
                            case SAME -> "is here already, and the same; nothing was changed";
                            case LEFT_DELETED -> "is put away in the file; left here as it is";
                            case LEFT_UNREADABLE -> "cannot be read in the file; left here as it is";
                        });
        if (!imported.wrong().isEmpty()) {
            err().printf("%s: %s%n", Letters.inOneLine(imported.name()), Letters.inOneLine(imported.wrong()));
        }
    }

    /** @throws Refused when none or several have that name */
    static Ranches.Listed named(Store store, String name) {
        var all = store.ranches().list();
        List<Ranches.Listed> found = all.stream()
                .filter(r -> r.name().equalsIgnoreCase(name)
                        || r.name().equalsIgnoreCase(name + INVENTED) // as the pages show an invented one
                        || r.id().toString().equals(name))
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

    private PrintWriter err() {
        return spec.commandLine().getErr();
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
