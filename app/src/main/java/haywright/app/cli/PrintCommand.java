package haywright.app.cli;

import haywright.app.report.FeedLetter;
import haywright.app.report.FieldSheet;
import haywright.app.report.Paper;
import haywright.app.report.ScoreSheet;
import haywright.app.report.WeighSheet;
import haywright.app.store.MayReplace;
import haywright.app.store.Store;
import haywright.app.store.WholeFile;
import haywright.app.words.Measures;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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

    /** Which ranch's paper, and where it goes. */
    @SuppressWarnings("NullAway.Init") // picocli sets it
    static final class Of {
        @Parameters(paramLabel = "FILE")
        private Path file;

        @Option(names = "--ranch", paramLabel = "NAME", description = "Its name or id; not needed for the only one.")
        private @Nullable String ranch;

        private String replaced = "";

        @Option(names = "--demo", description = "Of the demo ranch, which is invented.")
        private boolean demo;
    }

    static final class OfLot {
        @Option(names = "--lot", paramLabel = "NAME", description = "Its name; not needed for the only one.")
        private @Nullable String name;
    }

    static final class OfGroup {
        @Option(names = "--group", paramLabel = "NAME", description = "Its name; not needed for the only one.")
        private @Nullable String name;
    }

    /** What it is printed on. */
    static final class On {
        @Option(names = "--size", paramLabel = "SIZE", description = "letter (when not said) or a4.")
        private Paper.@Nullable Size size;

        Paper.Size size() {
            return size == null ? Paper.Size.LETTER : size;
        }
    }

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "Say which paper: letter, sheet, labels, weighing, scores or walk.");
    }

    @Command(
            description = "The one page for the person who feeds a group, as PDF or HTML by the file's ending.",
            mixinStandardHelpOptions = true)
    void letter(@Mixin Of of, @Mixin OfGroup group, @Mixin On on) throws IOException {
        try (var store = open(of)) {
            var ranch = ranch(store, of);
            var letter = FeedLetter.of(
                    ranch, Sheets.group(ranch, group.name), ranch.settings().today(LocalDate.now(clock)));
            print(letter.paper(on.size()), of);
            if (letter.isStale()) {
                spec.commandLine()
                        .getErr()
                        .printf(
                                "Its figures are of %s, and what they rest on has changed since: work it out anew on its page.%n",
                                letter.day());
            }
        }
    }

    @Command(
            description =
                    "The newest field sheet of a lot, or a new one by the usual plan: PDF to print, HTML for a phone.",
            mixinStandardHelpOptions = true)
    void sheet(@Mixin Of of, @Mixin OfLot lot, @Mixin On on) throws IOException {
        try (var store = open(of)) {
            var sheet = Sheets.newest(store, ranch(store, of), lot.name, clock);
            if (String.valueOf(of.file.getFileName()).endsWith(".html")) {
                write(sheet.phonePage(), of.file);
            } else {
                var paper = sheet.paper(on.size());
                write(paper, of.file);
                lacking(paper, of.file);
            }
            written(of, sheet);
        }
    }

    @Command(description = "Bag labels of a lot's newest field sheet, as PDF.", mixinStandardHelpOptions = true)
    void labels(@Mixin Of of, @Mixin OfLot lot, @Mixin On on) throws IOException {
        try (var store = open(of)) {
            var sheet = Sheets.newest(store, ranch(store, of), lot.name, clock);
            var paper = sheet.labelsPaper(on.size());
            write(paper, of.file);
            lacking(paper, of.file);
            written(of, sheet);
        }
    }

    private void print(Paper paper, Of of) throws IOException {
        write(paper, of.file);
        lacking(paper, of.file);
        written(of);
    }

    private void lacking(Paper paper, Path file) {
        if (file.toString().endsWith(".pdf") && !paper.lacking().isEmpty()) {
            spec.commandLine()
                    .getErr()
                    .printf(
                            "These letters cannot be printed, and the name of each is in brackets in its place: %s%n",
                            paper.lacking());
        }
    }

    private void written(Of of) {
        spec.commandLine().getOut().printf("Written to %s%s%n", of.file, of.replaced);
    }

    private void written(Of of, FieldSheet sheet) {
        spec.commandLine()
                .getOut()
                .printf("Sheet %s written to %s%s%n", sheet.sampling().code(), of.file, of.replaced);
    }

    @Command(
            description = "Which bales of a lot to weigh, with boxes for a pencil, as PDF or HTML.",
            mixinStandardHelpOptions = true)
    void weighing(@Mixin Of of, @Mixin OfLot lot, @Mixin On on) throws IOException {
        try (var store = open(of)) {
            var ranch = ranch(store, of);
            var sheet = new WeighSheet(
                    ranch, Sheets.lot(ranch, lot.name), ranch.settings().today(LocalDate.now(clock)));
            print(sheet.paper(on.size()), of);
        }
    }

    @Command(
            description = "How many of a group to score for condition, with boxes for a pencil, as PDF or HTML.",
            mixinStandardHelpOptions = true)
    void scores(@Mixin Of of, @Mixin OfGroup group, @Mixin On on) throws IOException {
        try (var store = open(of)) {
            var ranch = ranch(store, of);
            var sheet = new ScoreSheet(
                    ranch, Sheets.group(ranch, group.name), ranch.settings().today(LocalDate.now(clock)));
            print(sheet.paper(on.size()), of);
        }
    }

    @Command(description = "The walk across a field, as GPX.", mixinStandardHelpOptions = true)
    void walk(
            @Mixin Of of,
            @Option(names = "--field", paramLabel = "NAME", description = "Its name; not needed for the only one.")
                    @Nullable
                    String fieldName,
            @Option(names = "--seed", paramLabel = "N", description = "Where the walk begins; 1 when not said.")
                    @Nullable
                    Integer seed)
            throws IOException {
        try (var store = open(of)) {
            var field = Sheets.field(ranch(store, of), fieldName);
            var gpx = Sheets.gpx(field, seed == null ? 1 : seed);
            write(gpx, of.file);
            written(of);
        }
    }

    static void write(Paper paper, Path file) throws IOException {
        var name = String.valueOf(file.getFileName());
        if (name.endsWith(".html")) {
            write(paper.xhtml(), file);
        } else if (name.endsWith(".pdf")) {
            write(paper.pdf(), file);
        } else {
            throw new Refused(
                    "file", name, "a paper is written as PDF or as HTML", "Let the name end in .pdf or .html.");
        }
    }

    private static void write(String text, Path file) {
        write(text.getBytes(StandardCharsets.UTF_8), file);
    }

    private static void write(byte[] paper, Path file) {
        MayReplace.paper(file, paper);
        Output.to(file, () -> WholeFile.write(file, beside -> Files.write(beside, paper)));
    }

    private Store open(Of of) {
        if (of.demo && of.ranch != null) {
            throw new Refused(
                    "--ranch", of.ranch, "--demo is a ranch of its own, so both cannot hold", "Leave one of them out.");
        }
        of.replaced = Output.replaced(of.file);
        return of.demo ? data.openDemo(clock) : data.openKept(clock);
    }

    private static Ranch ranch(Store store, Of of) {
        if (of.demo) {
            return DemoCommand.ranch(store);
        }
        var all = store.ranches().list();
        var listed = of.ranch == null && all.size() == 1
                ? all.get(0)
                : RanchCommand.named(store, of.ranch == null ? "no name" : of.ranch);
        var ranch = store.ranches().open(listed.id()).ranch();
        Measures.of(ranch);
        return ranch;
    }
}
