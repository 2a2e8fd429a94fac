package haywright.app.cli;

import haywright.app.compute.Version;
import haywright.workings.Refused;
import java.io.PrintWriter;
import java.nio.file.NoSuchFileException;
import java.time.Clock;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command line: {@code haywright COMMAND …}. */
public final class Cli {
    static final int REFUSED = 2;

    private final CommandLine line;

    public Cli(Clock clock, PrintWriter out, PrintWriter err) {
        line = new CommandLine(new Haywright())
                .addSubcommand(new ComputeCommand())
                .addSubcommand(new RanchCommand(clock))
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setExecutionExceptionHandler(Cli::failed);
    }

    /** @return the exit status */
    public int run(String... arguments) {
        return line.execute(arguments);
    }

    /** What a person can mend is said in a line; anything else is a mistake of the program and keeps its trace. */
    private static int failed(Exception e, CommandLine command, CommandLine.ParseResult parsed) throws Exception {
        if (e instanceof Refused refused) {
            refused.problems().forEach(p -> command.getErr().println(p.field() + ": " + p.sentence()));
        } else if (e instanceof NoSuchFileException missing) {
            command.getErr().println(missing.getFile() + ": there is no such file. Is its name right?");
        } else {
            throw e;
        }
        return REFUSED;
    }

    @Command(
            name = "haywright",
            mixinStandardHelpOptions = true,
            versionProvider = HaywrightVersion.class,
            description = "From the haystack to the feed bunk: sampling, analyses, needs, rations and the feed letter.")
    private static final class Haywright implements Runnable {
        @Spec
        @SuppressWarnings("NullAway.Init") // picocli sets it
        private CommandSpec spec;

        @Override
        public void run() {
            spec.commandLine().usage(spec.commandLine().getOut());
        }
    }

    private static final class HaywrightVersion implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"Haywright " + Version.TEXT};
        }
    }
}
