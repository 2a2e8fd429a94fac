package haywright.app.cli;

import haywright.app.store.BadDatabase;
import haywright.app.store.Trouble;
import haywright.app.words.Letters;
import haywright.app.words.Version;
import haywright.lp.SolverMissing;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command line: {@code haywright COMMAND …}, or none for the user's own round. */
public final class Cli {
    static final int REFUSED = 2;

    /** What the library says of a word that is none of a few. */
    private static final Pattern CHOICES =
            Pattern.compile("expected one of \\[(.*)] \\(case-(?:in)?sensitive\\) but was (.*)");

    private final CommandLine line;
    private final Faults faults;

    public Cli(Clock clock, PrintWriter out, PrintWriter err) {
        this(clock, out, err, folder -> {});
    }

    /** @param prepares is given the data folder before a command begins */
    public Cli(Clock clock, PrintWriter out, PrintWriter err, Consumer<Path> prepares) {
        var data = new Data();
        faults = new Faults(data);
        line = new CommandLine(new Haywright(clock, data))
                .addSubcommand(new DemoCommand(clock, data))
                .addSubcommand(new ComputeCommand(clock, faults))
                .addSubcommand(new RanchCommand(clock, data))
                .addSubcommand(new PrintCommand(clock, data))
                .addSubcommand(new KeyCommand(data))
                .setOut(out)
                .setErr(err)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .registerConverter(Path.class, Data::path)
                .registerConverter(Integer.class, typed -> number(typed, Integer::valueOf, "whole number"))
                .registerConverter(long.class, typed -> number(typed, Long::valueOf, "whole number"))
                .registerConverter(double.class, typed -> number(typed, Double::valueOf, "number"))
                .setParameterExceptionHandler(Cli::mistyped)
                .setExecutionExceptionHandler((e, command, parsed) -> failed(e))
                .setExecutionStrategy(parsed -> {
                    prepare(data, prepares);
                    return new CommandLine.RunLast().execute(parsed);
                });
        sayVersion(line);
    }

    private static void prepare(Data data, Consumer<Path> prepares) {
        try {
            prepares.accept(data.home());
        } catch (Refused e) {
            // a place that cannot be is said by whatever opens it
        }
    }

    /** {@code --version} says the same after every command. */
    private static void sayVersion(CommandLine command) {
        command.getCommandSpec().versionProvider(new HaywrightVersion());
        command.getSubcommands().values().forEach(Cli::sayVersion);
    }

    private static <T> T number(String typed, Function<String, T> read, String what) {
        try {
            return read.apply(typed);
        } catch (NumberFormatException e) {
            throw new CommandLine.TypeConversionException("'%s' is no %s, or too large".formatted(typed, what));
        }
    }

    /** @return the exit status */
    public int run(String... arguments) {
        int status;
        try {
            status = line.execute(arguments);
        } catch (Error e) {
            status = failed(e);
        }
        // here alone, for every command: a print writer throws nothing
        return status != Faults.FAILED && line.getOut().checkError() ? failed(Output.closed()) : status;
    }

    /** What a person can fix is said in a line; anything else is a fault of the program, kept where it can be sent from. */
    private int failed(Throwable e) {
        var err = line.getErr();
        var trouble = Trouble.of(e);
        if (e instanceof Refused refused) {
            refused.problems().forEach(p -> err.println(Letters.inOneLine(p.field() + ": " + p.sentence())));
        } else if (e instanceof BadDatabase bad) {
            WayBack.lines(bad).forEach(err::println);
        } else if (e instanceof Output.Unwritten unwritten) {
            err.println(unwritten.getMessage());
            return Faults.FAILED;
        } else if (e instanceof SolverMissing missing) {
            err.println(missing.getMessage());
            return Faults.FAILED;
        } else if (trouble.isPresent()) {
            err.println(trouble.get().cause() + " " + trouble.get().fix());
            return Faults.FAILED;
        } else if (e instanceof NoSuchFileException missing) {
            err.println(missing.getFile() + ": there is no such file. Is its name right?");
        } else if (e instanceof IOException unread) {
            err.println("This cannot be read: %s. Is it the right file?".formatted(Output.why(unread)));
        } else if (e instanceof UncheckedIOException && e.getCause() instanceof IOException cause) {
            return failed(cause);
        } else {
            err.println(faults.kept(e));
            return Faults.FAILED;
        }
        return REFUSED;
    }

    /** One line, without the whole of the usage. */
    private static int mistyped(CommandLine.ParameterException e, String[] arguments) {
        var command = e.getCommandLine();
        for (Throwable cause = e.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof Refused refused) {
                refused.problems()
                        .forEach(p -> command.getErr().println(Letters.inOneLine(p.field() + ": " + p.sentence())));
                return REFUSED;
            }
        }
        var meant = e instanceof CommandLine.UnmatchedArgumentException unknown
                ? unknown.getSuggestions().stream()
                        .findFirst()
                        .map(" Did you mean %s?"::formatted)
                        .orElse("")
                : "";
        var message = CHOICES.matcher(String.valueOf(e.getMessage()).strip())
                .replaceFirst(found -> "it is %s, not %s"
                        .formatted(
                                found.group(1).toLowerCase(Locale.ROOT).replace(", ", " or "),
                                Matcher.quoteReplacement(found.group(2))));
        command.getErr()
                .printf(
                        "%s%s%s %s --help shows what can be typed.%n",
                        message,
                        message.endsWith(".") ? "" : ".",
                        meant,
                        command.getCommandSpec().qualifiedName());
        return REFUSED;
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
            var out = spec.commandLine().getOut();
            serving.serve(serving.opened(() -> data.open(clock), data.home(), out), data.home(), clock, "/", out);
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
