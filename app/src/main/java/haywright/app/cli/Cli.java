package haywright.app.cli;

import haywright.app.compute.Version;
import haywright.workings.Refused;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command line: {@code haywright COMMAND …}, or none for the user's own round. */
public final class Cli {
    static final int REFUSED = 2;

    private final CommandLine line;

    public Cli(Clock clock, PrintWriter out, PrintWriter err) {
        var data = new Data();
        line = new CommandLine(new Haywright(clock, data))
                .addSubcommand(new DemoCommand(clock, data))
                .addSubcommand(new ComputeCommand())
                .addSubcommand(new RanchCommand(clock, data))
                .addSubcommand(new PrintCommand(clock, data))
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .registerConverter(Path.class, Cli::path)
                .setExecutionExceptionHandler(Cli::failed);
        sayVersion(line);
    }

    /** {@code --version} says the same after every command. */
    private static void sayVersion(CommandLine command) {
        command.getCommandSpec().versionProvider(new HaywrightVersion());
        command.getSubcommands().values().forEach(Cli::sayVersion);
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
        } else if (e instanceof InvalidPathException unreadable) {
            command.getErr().println(noName(unreadable));
        } else {
            throw e;
        }
        return REFUSED;
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new CommandLine.TypeConversionException(noName(e));
        }
    }

    /** Java reads names of files by the locale, and the locale C has only the letters of English. */
    private static String noName(InvalidPathException e) {
        return "%s: this name has letters that the encoding of this terminal (%s) has not. Set LC_ALL=C.UTF-8 and try again."
                .formatted(e.getInput(), System.getProperty("sun.jnu.encoding"));
    }

    @Command(
            name = "haywright",
            mixinStandardHelpOptions = true,
            description = {
                "From the haystack to the feed bunk: sampling, analyses, needs, rations and the feed letter.",
                "Without a command: opens your own round."
            })
    private static final class Haywright implements Callable<Integer> {
        @Mixin
        private final Data data;

        @Mixin
        private final Serving serving = new Serving();

        @Spec
        @SuppressWarnings("NullAway.Init") // picocli sets it
        private CommandSpec spec;

        private final Clock clock;

        Haywright(Clock clock, Data data) {
            this.clock = clock;
            this.data = data;
        }

        @Override
        public Integer call() throws InterruptedException {
            serving.serve(
                    data.open(clock),
                    data.copies(),
                    clock,
                    "/",
                    spec.commandLine().getOut());
            return 0;
        }
    }

    private static final class HaywrightVersion implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"Haywright " + Version.TEXT};
        }
    }
}
