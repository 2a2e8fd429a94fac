package haywright.app.cli;

import haywright.app.report.FeedLetter;
import haywright.app.report.Paper;
import haywright.app.store.Store;
import haywright.cattle.Group;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Papers to files. */
@Command(name = "print", mixinStandardHelpOptions = true, description = "Papers to files.")
final class PrintCommand implements Runnable {
    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    private final Clock clock;
    private final Data data;

    PrintCommand(Clock clock, Data data) {
        this.clock = clock;
        this.data = data;
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "Say which paper: letter.");
    }

    @Command(
            description = "The one page for the person who feeds a group, as PDF or HTML by the file's ending.",
            mixinStandardHelpOptions = true)
    void letter(
            @Parameters(paramLabel = "FILE") Path file,
            @Option(
                            names = "--ranch",
                            paramLabel = "NAME",
                            description = "Its name or id; not needed for the only one.")
                    @Nullable
                    String ranchName,
            @Option(names = "--group", paramLabel = "NAME", description = "Its name; not needed for the only one.")
                    @Nullable
                    String groupName,
            @Option(names = "--size", paramLabel = "SIZE", description = "letter (when not said) or a4.")
                    Paper.@Nullable Size size,
            @Option(names = "--demo", description = "Of the demo ranch, which is invented.") boolean demo)
            throws IOException {
        try (var store = demo ? data.openDemo(clock) : data.open(clock)) {
            var ranch = demo ? DemoCommand.ranch(store) : ranch(store, ranchName);
            var letter = FeedLetter.of(
                    ranch, group(ranch, groupName), ranch.settings().today(LocalDate.now(clock)));
            write(letter.paper(size == null ? Paper.Size.LETTER : size), file);
            spec.commandLine().getOut().printf("Written to %s%n", file);
            if (letter.isStale()) {
                spec.commandLine()
                        .getErr()
                        .printf(
                                "Its figures are of %s, and what they rest on has changed since: work it out anew on its page.%n",
                                letter.day());
            }
        }
    }

    static void write(Paper paper, Path file) throws IOException {
        var name = String.valueOf(file.getFileName());
        if (name.endsWith(".html")) {
            Files.writeString(file, paper.xhtml(), StandardCharsets.UTF_8);
        } else if (name.endsWith(".pdf")) {
            Files.write(file, paper.pdf());
        } else {
            throw new Refused(
                    "file", name, "a letter is written as PDF or as HTML", "Let the name end in .pdf or .html.");
        }
    }

    private static Ranch ranch(Store store, @Nullable String name) {
        var all = store.ranches().list();
        var listed = name == null && all.size() == 1
                ? all.get(0)
                : RanchCommand.named(store, name == null ? "no name" : name);
        return store.ranches().open(listed.id()).ranch();
    }

    private static Group group(Ranch ranch, @Nullable String name) {
        var groups = ranch.groups().values();
        if (name == null && groups.size() == 1) {
            return groups.iterator().next();
        }
        return groups.stream()
                .filter(g -> g.name().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new Refused(
                        "group",
                        name == null ? "no name" : name,
                        ranch.name() + " has no group of this name",
                        "Its groups: " + groups.stream().map(Group::name).collect(Collectors.joining(", ")) + "."));
    }
}
