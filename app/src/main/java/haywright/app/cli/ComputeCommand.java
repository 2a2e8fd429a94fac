package haywright.app.cli;

import haywright.app.compute.Compute;
import haywright.app.compute.Topics;
import haywright.app.exchange.InputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
final class ComputeCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..1", paramLabel = "TOPIC")
    private @Nullable String topic;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "FILE",
            description = "JSON, an object or an array of them. Without it standard input is read.")
    private @Nullable Path file;

    @Option(names = "--demo", description = "Asks about the demo ranch, which is invented; reads nothing.")
    private boolean demo;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        var out = spec.commandLine().getOut();
        if (topic == null) {
            Topics.ALL.forEach(t -> out.printf("%-22s %s%n", t.name(), t.words()));
            return Compute.DONE;
        }
        var compute = new Compute(Topics.ALL);
        var asked = compute.topic(topic);
        if (file != null) {
            InputFile.check(file);
        }
        if (demo) {
            return say(compute.demo(topic));
        }
        if (file == null && Terminal.isThere()) {
            spec.commandLine()
                    .getErr()
                    .printf("%s needs JSON, from a file or piped in. For instance:%n%s%n", topic, asked.example());
            return Compute.REFUSED;
        }
        byte[] json = file == null ? System.in.readAllBytes() : Files.readAllBytes(file);
        return say(compute.run(topic, new String(json, StandardCharsets.UTF_8)));
    }

    private int say(Compute.Outcome outcome) {
        spec.commandLine().getOut().println(outcome.body().toPrettyString());
        outcome.errors().forEach(spec.commandLine().getErr()::println);
        return outcome.exit();
    }
}
