package haywright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.Main;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever goes wrong, a person reads one sentence and a script gets the status that belongs to it. */
class OneSentenceTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC);

    private static final String ID = TinLantern.ranch().id().toString();

    /** As standard output on a full disk is. */
    private static final class Full extends Writer {
        @Override
        public void write(char[] text, int from, int length) throws IOException {
            throw new IOException("No space left on device");
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    }

    @TempDir
    Path folder;

    private final StringWriter err = new StringWriter();

    @BeforeEach
    void aRanchIsThere() throws IOException {
        var file = folder.resolve("tin.json");
        Files.writeString(file, new RanchDocument().write(TinLantern.ranch()));
        Files.writeString(folder.resolve("hay.json"), "[{\"tdn_pct_dm\":60},{\"tdn_pct_dm\":61}]");
        assertThat(run(new StringWriter(), "ranch import " + file)).isZero();
    }

    /** @param line with # for a blank inside of a word */
    private int run(Writer out, String line) {
        var words = Stream.of((line + " --data HERE/data").split(" "))
                .map(word -> word.replace('#', ' ')
                        .replace("HERE", folder.toString())
                        .replace("ID", ID))
                .toArray(String[]::new);
        return new Cli(CLOCK, new PrintWriter(out, true), new PrintWriter(err, true)).run(words);
    }

    private void saidInOneSentence() {
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(err.toString()).doesNotContain("Exception:", "java.", "\tat ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--help",
                "--version",
                "compute",
                "compute net-energy HERE/hay.json",
                "compute ration --demo",
                "demo --no-serve",
                "ranch list",
                "ranch export ID",
                "ranch export ID HERE/out.json",
                "ranch reports ID",
                "ranch check HERE/tin.json",
                "ranch backup HERE/all.zip",
                "print letter HERE/l.html --group Bulls --ranch ID"
            })
    void outputThatCannotBeWrittenEndsWithThree(String line) {
        int exit = run(new Full(), line);
        assertThat(err.toString()).contains("could not be written");
        saidInOneSentence();
        assertThat(exit).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "ranch export ID HERE/no/out.json",
                "ranch backup HERE/no/all.zip",
                "print letter HERE/no/l.html --group Bulls --ranch ID",
                "print letter HERE/no/l.pdf --group Bulls --ranch ID",
                "print sheet HERE/no/s.html --lot Meadow#hay --ranch ID",
                "print walk HERE/no/w.gpx --ranch ID --field North#pivot"
            })
    void aFileThatCannotBeWrittenEndsWithThree(String line) {
        int exit = run(new StringWriter(), line);
        assertThat(err.toString()).contains(folder.resolve("no").toString(), "could not be written", "no such folder");
        saidInOneSentence();
        assertThat(exit).isEqualTo(3);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--port=99999",
                "--port=-1",
                "--port=70000000000",
                "--port=hay",
                "--port",
                "demo --port=99999",
                "--surenes 95",
                "demo --no-serv",
                "compute basis HERE/none.json",
                "compute basis HERE",
                "compute basis HERE/hay.json more",
                "compute bases",
                "ranch",
                "ranch exprt",
                "ranch export",
                "ranch import HERE/none.json",
                "ranch import HERE",
                "print",
                "print letter HERE/l.pdf --size a5",
                "print letter HERE/l.pdf --demo --ranch foo",
                "print walk HERE/w.gpx --seed 99999999999",
                "compute winter-book --demo --seconds=soon",
                "compute winter-book --demo --seed=hay",
                "compute match --demo --mps HERE/p.mps",
                "compute match --demo --seconds=5",
                "compute basis HERE/hay.json --seed=3",
                "compute rations --demo --short",
                "compute winter-book HERE/tin.json --short"
            })
    void whatWasTypedWrongEndsWithTwo(String line) {
        assertThat(run(new StringWriter(), line)).isEqualTo(2);
        assertThat(err.toString()).doesNotContain(" a double", " a long");
        saidInOneSentence();
    }

    @ParameterizedTest
    @ValueSource(strings = {"--data=", "--data=a\u0000b"})
    void aPlaceThatCannotBeIsRefused(String place) {
        var cli = new Cli(CLOCK, new PrintWriter(new StringWriter(), true), new PrintWriter(err, true));
        assertThat(cli.run("ranch", "list", place)).isEqualTo(2);
        saidInOneSentence();
    }

    @Test
    void aPortThatIsTakenIsSaid() throws IOException {
        try (var taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            assertThat(run(new StringWriter(), "--port=" + taken.getLocalPort()))
                    .isEqualTo(2);
        }
        assertThat(err.toString()).contains("listens there");
        saidInOneSentence();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a5"})
    void wordsOfTheLibraryReachNobody(String typed) {
        var cli = new Cli(CLOCK, new PrintWriter(new StringWriter()), new PrintWriter(err, true));
        assertThat(cli.run(
                        typed.isEmpty()
                                ? new String[] {"compute", "basis", ""}
                                : new String[] {"print", "letter", "--size=" + typed, "l.pdf"}))
                .isEqualTo(2);
        assertThat(err.toString()).doesNotContain("haywright.workings", "case-insensitive", "LETTER");
        saidInOneSentence();
    }

    @Test
    void aRanchIsFoundByTheNameOnItsPage() throws IOException {
        assertThat(run(new StringWriter(), "ranch export Tin#Lantern#Ranch HERE/out.json"))
                .isZero();
        assertThat(folder.resolve("out.json")).exists();
    }

    @Test
    void aPaperIsItsOwnersAndLeavesNothingBeside() throws IOException {
        assertThat(run(new StringWriter(), "print walk HERE/w.gpx --ranch ID --field North#pivot"))
                .isZero();
        assumeThat(Files.getFileStore(folder).supportsFileAttributeView("posix"))
                .isTrue();
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("w.gpx"))))
                .isEqualTo("rw-------");
        try (var held = Files.list(folder)) {
            assertThat(held).noneMatch(file -> file.toString().endsWith(".part"));
        }
    }

    @Test
    void anOptionThatIsNearlyOneIsNamed() {
        run(new StringWriter(), "demo --no-serv");
        assertThat(err.toString()).contains("--no-serve");
    }

    /** A fault of the program's own: the clock fails. */
    @Test
    void aFaultInsideIsKeptInAFileAndSaidInOneSentence() throws IOException {
        var broken = new Clock() {
            private int asked;

            @Override
            public Instant instant() {
                if (asked++ == 0) {
                    throw new ArithmeticException("secret of the house");
                }
                return CLOCK.instant();
            }

            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(java.time.ZoneId zone) {
                return this;
            }
        };
        var out = new StringWriter();
        var cli = new Cli(broken, new PrintWriter(out, true), new PrintWriter(err, true));
        var data = folder.resolve("data");
        assertThat(cli.run("compute", "net-energy", folder.resolve("hay.json").toString(), "--data=" + data))
                .isEqualTo(3);
        saidInOneSentence();
        assertThat(err.toString()).contains(data.resolve("errors.log").toString());
        assertThat(Files.readString(data.resolve("errors.log"))).contains("secret of the house", "\tat ");
    }

    /** A limit on the size of files stands for the disk: what SQLite and the system say is as true. */
    @Test
    void aDiskThatFillsUpWhileARanchIsTakenInIsNamed() throws IOException, InterruptedException {
        var ranch = (ObjectNode) new RanchDocument().tree(TinLantern.ranch());
        ((ObjectNode) ranch.path("lots").elements().next()).put("notes", "word ".repeat(800_000));
        var large = folder.resolve("large.json");
        Files.writeString(large, ranch.toString());
        var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        var command = "ulimit -f 3000; exec \"$0\" \"$@\"";
        var process = new ProcessBuilder(
                        "bash",
                        "-c",
                        command,
                        java,
                        "-XX:-UsePerfData",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "ranch",
                        "import",
                        large.toString(),
                        "--data=" + folder.resolve("small"))
                .start();
        var said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isEqualTo(3);
        assertThat(said).contains("disk").doesNotContain("Exception", "fault");
        assertThat(said.lines()).hasSize(1);
    }

    /** Through the true standard output, which keeps its failures to itself. */
    @Test
    void aFullDeviceBehindTheTrueOutputEndsWithThree() throws IOException, InterruptedException {
        var full = new File("/dev/full");
        assumeThat(full).exists();
        var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        var process = new ProcessBuilder(
                        List.of(java, "-cp", System.getProperty("java.class.path"), Main.class.getName(), "compute"))
                .redirectOutput(full)
                .start();
        var said = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isEqualTo(3);
        assertThat(said.lines()).hasSize(1);
        assertThat(said).contains("could not be written");
    }
}
