package haywright.app.cli;

import haywright.app.document.TinLantern;
import haywright.ranch.Yard;
import java.time.Clock;
import java.time.LocalDate;
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
    public Integer call() throws InterruptedException {
        var out = spec.commandLine().getOut();
        var store = data.openDemo(clock);
        var demo = TinLantern.ranch();
        if (store.ranches().list().stream().noneMatch(r -> r.id().equals(demo.id()))) {
            store.ranches().create(demo);
        }
        var ranch = store.ranches().open(demo.id()).ranch();
        new DemoChain(new Yard(ranch, ranch.settings().today(LocalDate.now(clock))), out).print();
        out.println();
        if (noServe) {
            store.close();
        } else {
            serving.serve(store, clock, "/ranch/" + ranch.id(), out);
        }
        return 0;
    }
}
