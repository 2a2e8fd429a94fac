package haywright.app.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.Compute;
import haywright.app.compute.WholeRanch;
import haywright.app.compute.topic.Topics;
import haywright.app.document.BentBucket;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.app.exchange.InputFile;
import haywright.app.exchange.weather.WeatherFile;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** JSON in, JSON out. */
@Command(
        name = "compute",
        mixinStandardHelpOptions = true,
        description = "Answers one question as JSON. Without a topic: lists the topics.")
final class ComputeCommand implements Callable<Integer>, Compute.Heard {
    private static final String STATION_FILE = "station_file";

    @Parameters(index = "0", arity = "0..1", paramLabel = "TOPIC")
    private @Nullable String topic;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "FILE",
            description = "JSON, an object or an array of them. Without it standard input is read.")
    private @Nullable Path file;

    @Option(
            names = "--demo",
            description =
                    "Asks about the demo ranch, which is invented. Of test-worth a lot can be named: {\"lot\":\"Oat hay\"}.")
    private boolean demo;

    @Option(
            names = "--short",
            description =
                    "With --demo of winter-book or match: the invented ranch that is short of hay after a dry summer.")
    private boolean isShort;

    @Option(
            names = "--seconds",
            defaultValue = "60",
            description = "Of winter-book: after so many seconds no other winter is begun. Default: ${DEFAULT-VALUE}.")
    private double seconds;

    @Option(
            names = "--seed",
            defaultValue = "1",
            description = "Of winter-book: the same seed draws the same winters. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--mps",
            paramLabel = "FILE",
            description = "Of winter-book: writes today's plan as MPS, for any other solver.")
    private @Nullable Path mps;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    private final Clock clock;
    private final Faults faults;
    private @Nullable Throwable firstFailure;
    /** Said after the answer: in a terminal they would get into its last line. */
    private final List<String> refused = new ArrayList<>();

    ComputeCommand(Clock clock, Faults faults) {
        this.clock = clock;
        this.faults = faults;
    }

    @Override
    public Integer call() throws IOException {
        var out = spec.commandLine().getOut();
        if (topic == null) {
            Topics.ALL.forEach(t -> out.printf("%-22s %s%n", t.name(), t.words()));
            WholeRanch.WORDS.forEach(out::println);
            return Compute.DONE;
        }
        refuseUnused(topic);
        if (WholeRanch.isTopic(topic)) {
            return wholeRanch(topic);
        }
        var compute = new Compute(Topics.ALL, clock);
        if (demo) {
            var outcome = demo(compute, topic);
            out.println(outcome.body().toPrettyString());
            outcome.errors().forEach(spec.commandLine().getErr()::println);
            return outcome.exit();
        }
        var asked = compute.topic(topic);
        if (file != null) {
            InputFile.check(file);
        }
        if (file == null && Terminal.isThere()) {
            spec.commandLine()
                    .getErr()
                    .printf("%s needs JSON, from a file or piped in. For instance:%n%s%n", topic, asked.example());
            return Compute.REFUSED;
        }
        try (var in = file == null ? System.in : Files.newInputStream(file)) {
            var to = Compute.generator(new Output.Checked(out)).useDefaultPrettyPrinter();
            int exit;
            try {
                exit = compute.run(topic, in, to, this, ComputeCommand::withFile);
                out.println();
                out.flush();
            } finally {
                refused.forEach(spec.commandLine().getErr()::println);
            }
            if (firstFailure != null) {
                spec.commandLine().getErr().println(faults.kept(firstFailure));
            }
            return exit;
        }
    }

    /** What was typed and would not be looked at is said, and not dropped. */
    private void refuseUnused(String name) {
        var typed = spec.commandLine().getParseResult();
        for (var option : List.of("--seconds", "--seed", "--mps")) {
            if (typed.hasMatchedOption(option) && !WholeRanch.isBook(name)) {
                throw new Refused(option, name, "only winter-book takes it", "Leave it out.");
            }
        }
        if (isShort && !(demo && WholeRanch.isTopic(name))) {
            throw new Refused(
                    "--short",
                    demo ? name : name + " without --demo",
                    "the ranch that is short of hay is a demo of winter-book and match",
                    "Leave it out, or ask: compute winter-book --demo --short.");
        }
    }

    /** Of a ranch's document or a demo; how far it is goes to standard error. */
    private int wholeRanch(String name) throws IOException {
        var err = spec.commandLine().getErr();
        if (file == null && !demo && Terminal.isThere()) {
            err.printf("%s needs a ranch: --demo, or a file that `ranch export` wrote.%n", name);
            return Compute.REFUSED;
        }
        try {
            var ranch = demo ? isShort ? BentBucket.ranch() : TinLantern.ranch() : read();
            var threads = Runtime.getRuntime().availableProcessors();
            var outcome = WholeRanch.of(name, ranch, wanted().or(seconds, seed, threads, this::tell), clock);
            spec.commandLine().getOut().println(outcome.body().toPrettyString());
            outcome.errors().forEach(err::println);
            if (mps != null && outcome.exit() == Compute.DONE) {
                Files.writeString(mps, WholeRanch.mps(ranch, clock));
            }
            return outcome.exit();
        } catch (Refused refused) {
            refused.problems().forEach(p -> err.printf("%s: %s: %s. %s%n", p.field(), p.value(), p.rule(), p.fix()));
            return Compute.REFUSED;
        }
    }

    /** Beside a demo a file or what is piped in may say how; nothing waits for input. */
    private WholeRanch.Wanted wanted() throws IOException {
        boolean isSaid = demo && (file != null || System.in.available() > 0);
        if (isSaid && file != null) {
            InputFile.check(file);
        }
        try (var in = !isSaid ? InputStream.nullInputStream() : file == null ? System.in : Files.newInputStream(file)) {
            return WholeRanch.wanted(in);
        }
    }

    private void tell(String words) {
        var err = spec.commandLine().getErr();
        err.println(words);
        err.flush();
    }

    private Ranch read() throws IOException {
        if (file != null) {
            InputFile.check(file);
        }
        try (var in = file == null ? System.in : Files.newInputStream(file)) {
            return new RanchDocument().read(in.readAllBytes());
        }
    }

    /** Where a lot can be named: by the file, or by what is piped in already. Nothing waits for input. */
    private Compute.Outcome demo(Compute compute, String name) throws IOException {
        if (!Compute.demoAsks(name) || file == null && System.in.available() == 0) {
            return compute.demo(name);
        }
        if (file != null) {
            InputFile.check(file);
        }
        try (var in = file == null ? System.in : Files.newInputStream(file)) {
            return compute.demo(name, in);
        }
    }

    /** The text of the station's file in place of its name: over HTTP nobody's files are read. */
    private static JsonNode withFile(JsonNode question) {
        var name = question.path(STATION_FILE).asText();
        if (question instanceof ObjectNode object
                && !name.isBlank()
                && name.lines().count() == 1
                && isFile(name)) {
            try (var in = Files.newInputStream(Path.of(name))) {
                object.put(STATION_FILE, WeatherFile.text(in));
            } catch (IOException e) {
                throw new Refused(STATION_FILE, name, "this file cannot be read: " + Output.why(e), "Check its name.");
            }
        }
        return question;
    }

    private static boolean isFile(String name) {
        try {
            return Files.isRegularFile(Path.of(name));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    @Override
    public void refused(String line) {
        refused.add(line);
    }

    @Override
    public void failed(Throwable failure) {
        firstFailure = firstFailure == null ? failure : firstFailure;
    }
}
