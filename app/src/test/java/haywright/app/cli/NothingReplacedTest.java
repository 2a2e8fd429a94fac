package haywright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
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

/** A command that writes a file, or was told of a wrong place, costs nobody what is there. */
class NothingReplacedTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path folder;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... words) {
        out.getBuffer().setLength(0);
        err.getBuffer().setLength(0);
        return new Cli(CLOCK, new PrintWriter(out, true), new PrintWriter(err, true)).run(words);
    }

    private int at(String data, String... words) {
        return run(Stream.concat(Stream.of(words), Stream.of("--data=" + folder.resolve(data)))
                .toArray(String[]::new));
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    @BeforeEach
    void aRanchIsThere() throws IOException {
        Files.writeString(folder.resolve("tin.json"), new RanchDocument().write(TinLantern.ranch()));
        assertThat(at("data", "ranch", "import", file("tin.json"))).isZero();
        assertThat(at("data", "ranch", "backup", file("good.db"))).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"backup", "list", "export", "reports", "letter", "newest"})
    void aMistypedPlaceIsSaidAndNotMade(String what) throws IOException {
        var before = Files.readAllBytes(folder.resolve("good.db"));
        int exit = switch (what) {
            case "backup" -> at("typo", "ranch", "backup", file("good.db"));
            case "list" -> at("typo", "ranch", "list");
            case "letter" -> at("typo", "print", "letter", file("l.pdf"));
            case "newest" -> at("typo", "ranch", "restore", "--newest");
            default -> at("typo", "ranch", what, "Tin Lantern Ranch");
        };
        assertThat(exit).isEqualTo(2);
        assertThat(err.toString()).contains(file("typo"));
        assertThat(folder.resolve("typo")).doesNotExist();
        assertThat(Files.readAllBytes(folder.resolve("good.db"))).isEqualTo(before);
    }

    @Test
    void aKeyIsPrintedWhereOneIsKeptAndNotMade() throws IOException {
        assertThat(at("data", "key")).isEqualTo(2);
        assertThat(folder.resolve("data/key")).doesNotExist();
        var key = haywright.app.store.Home.in(folder.resolve("data")).key();
        assertThat(at("data", "key")).isZero();
        assertThat(out.toString().strip()).isEqualTo(key);
        Files.write(folder.resolve("data/key"), new byte[] {(byte) 0xff, (byte) 0xfe});
        assertThat(at("data", "key")).isEqualTo(2);
        assertThat(haywright.app.store.Home.in(folder.resolve("data")).key()).hasSize(43);
        Files.delete(folder.resolve("data/key"));
        Files.createDirectory(folder.resolve("data/key"));
        assertThat(at("data", "key")).isEqualTo(2);
    }

    @Test
    void whatIsWrongWithABackupIsSaidOfTheFileThatWasNamed() throws Exception {
        for (var sql : List.of(
                "DROP TABLE flyway_schema_history",
                "UPDATE flyway_schema_history SET version = '99' WHERE version = '3'")) {
            var file = folder.resolve("odd.db");
            Files.copy(folder.resolve("good.db"), file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
            try (var connection = java.sql.DriverManager.getConnection("jdbc:sqlite:" + file);
                    var statement = connection.createStatement()) {
                statement.execute(sql);
            }
            assertThat(at("data", "ranch", "restore", file.toString())).isEqualTo(2);
            assertThat(err.toString()).contains(file.toString()).doesNotContain("aseline", "jdbc:");
        }
    }

    @Test
    void aRanchLeftOutIsNoSuccess() throws Exception {
        try (var connection = java.sql.DriverManager.getConnection("jdbc:sqlite:" + file("good.db"));
                var statement = connection.createStatement()) {
            statement.execute("UPDATE ranch SET doc = '{{'");
        }
        assertThat(at("data", "ranch", "restore", file("good.db"))).isEqualTo(2);
        assertThat(out.toString()).contains("left here as it is");
        assertThat(err.toString()).as("why").isNotEmpty();
        assertThat(at("fresh", "ranch", "restore", file("good.db"))).isEqualTo(2);
        assertThat(out.toString()).contains("cannot be read").doesNotContain("taken in");
        assertThat(err.toString()).as("why").isNotEmpty();
    }

    @Test
    void whatIsGoneIsNotSaidToBeRenamed() throws IOException {
        Files.createDirectories(folder.resolve("lost/copies"));
        Files.copy(folder.resolve("good.db"), folder.resolve("lost/copies/haywright-2026-11-20.db"));
        assertThat(at("lost", "ranch", "list")).isEqualTo(2);
        assertThat(err.toString()).contains("restore --newest").doesNotContain("renamed");
        Files.writeString(folder.resolve("lost/haywright.db"), "damaged");
        assertThat(at("lost", "ranch", "list")).isEqualTo(2);
        assertThat(err.toString()).contains("restore --newest", "renamed");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:postgresql://127.0.0.1:99999999/x",
                "jdbc:postgresql://127.0.0.1:port/x",
                "jdbc:postgresql://127.0.0.1:1/x%zz",
                "jdbc:postgresql://127.0.0.1:1/x?sslmode=bogus"
            })
    void anAddressThatCannotBeReadIsSaidToBe(String place) {
        assertThat(run("ranch", "list", "--data=" + place)).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(err.toString()).contains("address").doesNotContain("Exception", "org.", "java.", "Start it");
    }

    @Test
    void copiesOfDaysToComeAreSpokenOf() throws IOException {
        Files.createDirectories(folder.resolve("data/copies"));
        Files.copy(folder.resolve("good.db"), folder.resolve("data/copies/haywright-2026-11-20.db"));
        assertThat(at("data", "ranch", "restore", "--newest")).isZero();
        assertThat(err.toString()).isEmpty();
        Files.copy(folder.resolve("good.db"), folder.resolve("data/copies/haywright-2027-03-20.db"));
        assertThat(at("data", "ranch", "restore", "--newest")).isZero();
        assertThat(err.toString()).contains("2027", file("data/copies"));
    }

    @Test
    void aNameGivesTheTerminalNoOrders() throws IOException {
        var ranch = haywright.ranch.Ranch.empty(new java.util.UUID(7, 7), "Odd \u001b[31m ranch");
        Files.writeString(folder.resolve("odd.json"), new RanchDocument().write(ranch));
        assertThat(at("data", "ranch", "import", file("odd.json"))).isZero();
        assertThat(out.toString()).doesNotContain("\u001b");
        assertThat(at("data", "ranch", "list")).isZero();
        assertThat(out.toString()).contains("Odd").doesNotContain("\u001b");
    }

    @Test
    void aPlaceThatBeginsWithAFileIsSaid() {
        assertThat(at("new", "ranch", "restore", file("good.db"))).isZero();
        assertThat(out.toString()).contains(file("new"));
        assertThat(at("new", "ranch", "restore", file("good.db"))).isZero();
        assertThat(out.toString()).doesNotContain(file("new"));
    }

    @Test
    void aBackupOfNoRanchTakesThePlaceOfNothing() throws IOException {
        Files.writeString(folder.resolve("bad.json"), "{}");
        assertThat(at("empty", "ranch", "import", file("bad.json"))).isEqualTo(2);
        var before = Files.readAllBytes(folder.resolve("good.db"));
        assertThat(at("empty", "ranch", "backup", file("good.db"))).isEqualTo(2);
        assertThat(Files.readAllBytes(folder.resolve("good.db"))).isEqualTo(before);
        assertThat(at("empty", "ranch", "backup", file("new.db"))).isZero();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {" jdbc:sqlite:x.db", "JDBC:sqlite:x.db", "Jdbc:postgresql://h/d", "~/x", "jdbc:sqlite:/no/x.db"})
    void anAddressThatIsNoneIsNoFolder(String place) {
        assertThat(run("ranch", "list", "--data=" + place)).isEqualTo(2);
        assertThat(err.toString().lines()).hasSize(1);
        assertThat(Path.of(place)).doesNotExist();
    }

    @Test
    void liveDataAndWhatIsNotOursStay() throws IOException {
        assertThat(at("other", "ranch", "import", file("tin.json"))).isZero();
        Files.createDirectories(folder.resolve("data/copies"));
        Files.copy(folder.resolve("good.db"), folder.resolve("data/copies/haywright-2026-11-20.db"));
        Files.copy(folder.resolve("tin.json"), folder.resolve("data/tin.json"));
        Files.copy(folder.resolve("data/haywright.db"), folder.resolve("alone.db"));
        Files.writeString(folder.resolve("data/key"), "k");
        Files.writeString(folder.resolve("notes.txt"), "call the vet");
        Files.writeString(folder.resolve("notes.json"), "{\"to do\":[]}");
        for (var name : List.of(
                "data/haywright.db",
                "data/copies/haywright-2026-11-20.db",
                "data/key",
                "data/tin.json",
                "other/haywright.db",
                "alone.db",
                "notes.txt",
                "notes.json")) {
            var before = Files.readAllBytes(folder.resolve(name));
            for (var command : List.of(
                    new String[] {"ranch", "backup", file(name)},
                    new String[] {"ranch", "export", "Tin Lantern Ranch", file(name)},
                    new String[] {"print", "walk", "--field", "North pivot", file(name)})) {
                assertThat(at("data", command)).as("%s %s", command[1], name).isEqualTo(2);
                assertThat(err.toString().lines()).hasSize(1);
                assertThat(Files.readAllBytes(folder.resolve(name))).isEqualTo(before);
            }
        }
    }

    @Test
    void anEarlierOneOfTheSameKindGivesWayAndThatIsSaid() throws IOException {
        for (var command : List.of(
                new String[] {"ranch", "backup", file("good.db")},
                new String[] {"ranch", "export", "Tin Lantern Ranch", file("tin.json")},
                new String[] {"print", "letter", "--group", "Bulls", file("l.pdf")},
                new String[] {"print", "walk", "--field", "North pivot", file("w.gpx")})) {
            at("data", command);
            assertThat(at("data", command)).as(err.toString()).isZero();
            assertThat(out.toString()).contains("in the place of");
        }
        assertThat(at("data", "ranch", "export", "Tin Lantern Ranch", file("good.db")))
                .isEqualTo(2);
        assertThat(at("data", "ranch", "backup", file("tin.json"))).isEqualTo(2);
        Files.createFile(folder.resolve("made"));
        assertThat(at("data", "ranch", "backup", file("made"))).isZero();
    }
}
