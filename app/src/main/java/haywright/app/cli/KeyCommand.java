package haywright.app.cli;

import haywright.app.store.Home;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The key to the pages, for a script that asks them. */
@Command(
        name = "key",
        mixinStandardHelpOptions = true,
        description = {
            "Prints the key to the pages. A browser needs it once, in the address that Haywright prints when it starts;",
            "a script sends it each time: Authorization: Bearer KEY. Delete the file \"key\" in the data folder and start",
            "again for a new one: every browser must then be let in again."
        })
final class KeyCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    private final Data data;

    KeyCommand(Data data) {
        this.data = data;
    }

    @Override
    public Integer call() {
        spec.commandLine().getOut().println(Home.keyIn(data.home()));
        return 0;
    }
}
