package haywright.app.cli;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter;
import haywright.app.report.Paper;
import haywright.app.store.Store;
import haywright.feeding.Rations;
import haywright.ranch.Ranch;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The invented ranch: its chain in the terminal, then its pages. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description =
                "Shows Tin Lantern Ranch, which is invented, from its stacks to its rations, and opens its pages.")
final class DemoCommand implements Callable<Integer> {
    @Mixin
    private final Serving serving = new Serving();

    @Option(names = "--no-serve", description = "Ends after the answers instead of opening the pages.")
    private boolean noServe;

    @Option(
            names = "--short",
            description = "Shows Bent Bucket Ranch instead, invented too, which is short of hay after a dry summer.")
    private boolean isShort;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    private final Clock clock;
    private final Data data;

    DemoCommand(Clock clock, Data data) {
        this.clock = clock;
        this.data = data;
    }

    @Override
    public Integer call() throws InterruptedException, IOException {
        var out = spec.commandLine().getOut();
        var store = noServe ? data.openDemo(clock) : serving.opened(() -> data.openDemo(clock), data.home(), out);
        var ranch = ranch(store, isShort ? BentBucket.ranch() : TinLantern.ranch());
        var today = ranch.settings().today(LocalDate.now(clock));
        var rations = new Rations(ranch, today);
        new DemoChain(rations, out).print();
        if (isShort) {
            DemoLadder.print(rations, out);
        }
        letter(ranch, today, out);
        if (noServe) {
            store.close();
        } else {
            serving.serve(store, data.home(), clock, "/ranch/" + ranch.id() + (isShort ? "/bench/short" : ""), out);
        }
        return 0;
    }

    /** The demo as it was left, or as it ships. */
    static Ranch ranch(Store store) {
        return ranch(store, TinLantern.ranch());
    }

    private static Ranch ranch(Store store, Ranch demo) {
        if (store.ranches().list().stream().noneMatch(r -> r.id().equals(demo.id()))) {
            store.ranches().create(demo);
        }
        return store.ranches().open(demo.id()).ranch();
    }

    /** The first group's, as PDF beside the data. */
    private void letter(Ranch ranch, LocalDate today, PrintWriter out) throws IOException {
        var group = ranch.groups().values().iterator().next();
        var name = isShort ? "feed-letter-short.pdf" : "feed-letter.pdf";
        var file = data.demoFolder().resolve(name).toAbsolutePath();
        PrintCommand.write(FeedLetter.of(ranch, group, today).paper(Paper.Size.LETTER), file);
        out.printf("%nThe feed letter of the %s: %s%n%n", group.name().toLowerCase(Locale.ROOT), file);
    }
}
