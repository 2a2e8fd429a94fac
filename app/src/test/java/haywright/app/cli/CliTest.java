package haywright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.document.BentBucket;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.app.words.HerdWords;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CliTest {
    @TempDir
    Path folder;

    private record Ran(int exit, String out, String err) {}

    private Ran run(String... arguments) {
        var out = new StringWriter();
        var err = new StringWriter();
        var clock = Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC);
        int exit = new Cli(clock, new PrintWriter(out, true), new PrintWriter(err, true)).run(arguments);
        return new Ran(exit, out.toString(), err.toString());
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    @Test
    void computeReadsAFileAndExitsWithZero() throws IOException {
        var ran = run("compute", "relative-feed-value", file("in.json", "{\"adf_pct_dm\":28,\"ndf_pct_dm\":35}"));
        assertThat(ran.exit()).isZero();
        assertThat(ran.out()).contains("\"rfv\" : 178.30697674418604");
        assertThat(ran.err()).isEmpty();
    }

    @Test
    void aRefusedInputExitsWithTwoAndOneLineAnError() throws IOException {
        var ran = run("compute", "relative-feed-value", file("in.json", "{\"adf\":28}"));
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.out()).contains("\"errors\"");
        assertThat(ran.err().lines())
                .hasSize(3)
                .first()
                .isEqualTo("adf: 28: there is no key of this name here. Did you mean adf_pct_dm?");
    }

    @Test
    void anArrayExitsWithItsWorst() throws IOException {
        var ran = run("compute", "net-energy", file("in.json", "[{\"tdn_pct_dm\":60},{\"tdn_pct_dm\":\"60\"}]"));
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).startsWith("[1] tdn_pct_dm: \"60\": a number is needed here");
    }

    @Test
    void anAnswerThatIsNoExitsWithOne() throws IOException {
        var ran = run(
                "compute",
                "mix",
                file(
                        "in.json",
                        "{\"feeds\":[{\"name\":\"a\",\"price\":1,\"values\":{\"protein\":12}}],"
                                + "\"limits\":[{\"value\":\"protein\",\"at_least\":21}]}"));
        assertThat(ran.exit()).isEqualTo(1);
        assertThat(ran.out()).contains("stands_in_the_way");
    }

    @Test
    void aFolderADeviceOrALinkToNoFileIsSaidInASentence() throws IOException {
        var link = Files.createSymbolicLink(folder.resolve("link.json"), folder);
        var good = Files.writeString(folder.resolve("good.json"), "{\"adf_pct_dm\":28,\"ndf_pct_dm\":35}");
        var linked = Files.createSymbolicLink(folder.resolve("linked.json"), good);
        assertThat(run("compute", "relative-feed-value", linked.toString()).exit())
                .isZero();
        for (var no : new String[] {folder.toString(), link.toString(), "/dev/zero", "/dev/null"}) {
            for (var command : new String[][] {
                {"compute", "relative-feed-value", no},
                {"ranch", "import", no, "--data", folder.toString()},
                {"ranch", "check", no},
                {"ranch", "restore", no, "--data", folder.toString()}
            }) {
                var ran = run(command);
                assertThat(ran.exit()).as(String.join(" ", command)).isEqualTo(2);
                assertThat(ran.err().lines()).as(String.join(" ", command)).hasSize(1);
                assertThat(ran.err()).contains(no).doesNotContain("Exception");
            }
        }
    }

    /** The shell writes the é, so that this test does not hang on the locale it runs in itself. */
    @Test
    void aHomeThatTheLocaleCannotNameIsSaidInASentence() throws IOException, InterruptedException {
        var script =
                "LC_ALL=C HAYWRIGHT_HOME=\"$0/$(printf 'caf\\303\\251')\" exec \"$1\" -cp \"$2\" haywright.app.Main ranch list";
        var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        var process = new ProcessBuilder(
                        "sh", "-c", script, folder.toString(), java, System.getProperty("java.class.path"))
                .redirectErrorStream(true)
                .start();
        var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        int exit = process.waitFor();
        assertThat(said).doesNotContain("Exception");
        if (exit != 0) { // macOS reads every name
            assertThat(exit).isEqualTo(2);
            assertThat(said.lines()).hasSize(1).first().asString().contains("LC_ALL=C.UTF-8");
        }
    }

    /** As somebody starts it who never did, on a machine where others may read what is made. */
    @ParameterizedTest
    @ValueSource(strings = {"demo --no-serve", "ranch list", "compute basis --demo", "key"})
    @DisabledOnOs(OS.WINDOWS)
    void theHomeIsTheOwnersAloneWhicheverCommandMakesIt(String command) throws IOException, InterruptedException {
        var home = folder.resolve("home");
        for (int start = 0; start < 2; start++) {
            var script = "umask 022; HAYWRIGHT_HOME=\"$0\" exec \"$1\" -cp \"$2\" haywright.app.Main " + command;
            var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
            new ProcessBuilder("sh", "-c", script, home.toString(), java, System.getProperty("java.class.path"))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start()
                    .waitFor();
            if (!Files.exists(home)) {
                return; // it keeps nothing
            }
            try (var held = Files.walk(home)) {
                for (var path : held.toList()) {
                    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                            .as(path.toString())
                            .matches(Files.isDirectory(path) ? "rwx------" : "rw.------");
                }
            }
            // as an earlier one left it
            Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    @Test
    void computeWithoutATopicListsThem() {
        assertThat(run("compute").out()).contains("relative-feed-value").contains("ration");
    }

    @Test
    void theDemoRanchIsAskedGroupByGroup() throws IOException {
        var ran = run("compute", "ration", "--demo");
        var bodies = new ObjectMapper().readTree(ran.out());
        var groups = TinLantern.ranch().groups().values();
        assertThat(bodies).hasSameSizeAs(groups);
        assertThat(bodies.get(0).get("of").asText())
                .isEqualTo(groups.iterator().next().name());
        boolean everyGroupHasOne = StreamSupport.stream(bodies.spliterator(), false)
                .allMatch(body -> body.get("answer").has("ration"));
        assertThat(ran.exit()).isEqualTo(everyGroupHasOne ? 0 : 1);
        assertThat(run("compute", "requirement", "--demo").out()).contains("nem_maintenance_mcal");
        assertThat(run("compute", "report-check", "--demo").exit()).isZero();
        assertThat(run("compute", "basis", "--demo").exit()).isEqualTo(2);
    }

    @Test
    void theDemoSaysWhatASampleOfANamedLotIsWorth() throws IOException {
        var ran = run("compute", "test-worth", "--demo", file("lot.json", "{\"lot\":\"Oat hay\"}"));
        assertThat(ran.exit()).isZero();
        var answer = new ObjectMapper().readTree(ran.out()).get("answer");
        assertThat(answer.get("worth_usd").asDouble())
                .isBetween(
                        answer.get("low_usd").asDouble(), answer.get("high_usd").asDouble());
        assertThat(answer.get("price_usd").asDouble()).isPositive();
        var unknown = run("compute", "test-worth", "--demo", file("lot.json", "{\"lot\":\"Oats\"}"));
        assertThat(unknown.exit()).isEqualTo(2);
        assertThat(unknown.err().lines()).hasSize(1).first().asString().contains("lot: Oats", "Oat hay");
        assertThat(run("compute", "test-worth", "--demo", file("lot.json", "{\"lots\":\"Oat hay\"}"))
                        .exit())
                .isEqualTo(2);
        assertThat(run("compute", "test-worth", "--demo", file("lot.json", "{")).exit())
                .isEqualTo(2);
    }

    @Test
    void aRanchAsItIsExportedIsAskedAsTheDemoIs() throws IOException {
        var document = file("ranch.json", new RanchDocument().write(TinLantern.ranch()));
        var json = new ObjectMapper();
        var asked = run("compute", "rations", document);
        var demo = run("compute", "rations", "--demo");
        assertThat(asked.exit()).isEqualTo(demo.exit());
        assertThat(json.readTree(asked.out()).get("answer"))
                .isEqualTo(json.readTree(demo.out()).get("answer"));
        var named = file(
                "worth.json", "{\"lot\":\"oat hay\",\"ranch\":" + new RanchDocument().write(TinLantern.ranch()) + "}");
        assertThat(json.readTree(run("compute", "test-worth", named).out()).at("/answer/worth_usd"))
                .isEqualTo(
                        json.readTree(run("compute", "test-worth", "--demo", file("lot.json", "{\"lot\":\"Oat hay\"}"))
                                        .out())
                                .at("/answer/worth_usd"));
    }

    @Test
    void aRanchThatIsNoneIsRefusedAndNamed() throws IOException {
        assertThat(run("compute", "rations", file("none.json", "{\"haywright\":\"ranch\"}"))
                        .err())
                .startsWith("format: nothing");
        assertThat(run("compute", "rations", file("none.json", "{\"ranch\":[]}"))
                        .err())
                .startsWith("ranch: ");
        assertThat(run("compute", "rations", file("none.json", "{\"ranch\":{}}"))
                        .err())
                .startsWith("haywright: ");
        assertThat(run("compute", "rations", file("none.json", "{}")).err()).startsWith("ranch: nothing");
        var document = new RanchDocument().write(TinLantern.ranch());
        var bent = run("compute", "rations", file("bent.json", document.replace("\"head\" : 240", "\"head\" : -3")));
        assertThat(bent.exit()).isEqualTo(2);
        assertThat(bent.err()).contains("head").doesNotContain("Exception");
        var lot = run("compute", "test-worth", file("lot.json", "{\"lot\":\"Oats\",\"ranch\":" + document + "}"));
        assertThat(lot.exit()).isEqualTo(2);
        assertThat(lot.err()).contains("lot: Oats", "Oat hay");
    }

    @Test
    void theWinterBookOfADemoSaysItsPlanAtOnceAndHowFarItIsOnStandardError() throws IOException {
        for (var which : List.of(new String[] {"--demo"}, new String[] {"--demo", "--short"})) {
            var asked = new ArrayList<>(List.of("compute", "winter-book", "--seconds", "0.001"));
            asked.addAll(List.of(which));
            var mps = folder.resolve("plan.mps");
            asked.addAll(List.of("--mps", mps.toString()));
            var ran = run(asked.toArray(String[]::new));
            assertThat(ran.exit()).as(ran.err()).isZero();
            var body = new ObjectMapper().readTree(ran.out());
            assertThat(body.at("/answer/do_now")).isNotEmpty();
            assertThat(body.at("/answer/hash").asText()).hasSize(64);
            assertThat(body.at("/answer/complete").asBoolean()).isFalse();
            assertThat(body.get("seed").asLong()).isEqualTo(1);
            assertThat(ran.err()).isNotBlank();
            assertThat(mps).content().contains("ROWS", "ENDATA");
        }
    }

    @Test
    void theDemosLotsStandBesideItsGroups() throws IOException {
        var ran = run("compute", "match", "--demo");
        assertThat(ran.exit()).as(ran.err()).isZero();
        var cells = new ObjectMapper().readTree(ran.out()).at("/answer/cells");
        assertThat(cells)
                .anyMatch(cell -> cell.has("days") && cell.get("sure_pct").asDouble() > 0);
        assertThat(cells)
                .anyMatch(cell -> cell.has("danger") && cell.get("lot").asText().equals("Oat hay"));
        assertThat(cells)
                .anyMatch(
                        cell -> cell.has("short_of") && cell.get("short_by_pct").asDouble() > 0);
    }

    @Test
    void aWinterBookOfNoRanchOrNoTimeIsRefused() throws IOException {
        assertThat(run("compute", "winter-book", "--demo", "--seconds", "0").exit())
                .isEqualTo(2);
        var said = file("said.json", "{\"seconds\":0.001,\"seed\":5,\"period_weeks\":2}");
        var ran = run("compute", "winter-book", "--demo", said);
        assertThat(ran.exit()).as(ran.err()).isZero();
        assertThat(new ObjectMapper().readTree(ran.out()).get("seed").asLong()).isEqualTo(5);
        for (var wrong : List.of("{\"second\":1}", "{\"period_weeks\":0}", "{\"seconds\":-1}", "{")) {
            assertThat(run("compute", "winter-book", "--demo", file("wrong.json", wrong))
                            .exit())
                    .isEqualTo(2);
        }
        var none = run("compute", "winter-book", file("none.json", "{}"));
        assertThat(none.exit()).isEqualTo(2);
        assertThat(none.err()).isNotBlank().doesNotContain("Exception");
    }

    @Test
    void aMissingFileAndAnUnknownTopicAreSaid() {
        assertThat(run("compute", "basis", folder.resolve("none.json").toString())
                        .err())
                .contains("there is no such file");
        var ran = run("compute", "base");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("Did you mean basis?");
    }

    @Test
    void theDemoShowsEveryLotAndGroupAndSaysItIsInvented() {
        var ran = run("demo", "--no-serve", "--data", folder.toString());
        // the terminal's needs and rations stand under the same headline as the pages'
        var tin = TinLantern.ranch();
        var day = LocalDate.of(2026, 12, 1);
        for (boolean putOut : new boolean[] {false, true}) {
            assertThat(ran.out())
                    .contains(HerdWords.figured(tin.settings(), tin.groups().values(), day, day, putOut) + "\n");
        }
        assertThat(ran.exit()).as(ran.err()).isZero();
        var ranch = TinLantern.ranch();
        ranch.lots().values().forEach(lot -> assertThat(ran.out()).contains(lot.name()));
        ranch.groups().values().forEach(group -> assertThat(ran.out()).contains(group.name()));
        assertThat(ran.out()).contains("invented").contains("Rule of thumb").doesNotContain("NaN");
        assertThat(folder.resolve("feed-letter.pdf")).isNotEmptyFile();
        assertThat(ran.out()).contains(folder.resolve("feed-letter.pdf").toString());
    }

    @Test
    void theDroughtDemoShowsTheLadderAndLeavesTheOtherDemoAlone() {
        var ran = run("demo", "--short", "--no-serve", "--data", folder.toString());
        assertThat(ran.exit()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(BentBucket.ranch().name(), "invented", "tons of hay short", "In this order")
                .doesNotContain("NaN", TinLantern.ranch().name());
        BentBucket.ranch()
                .groups()
                .values()
                .forEach(group -> assertThat(ran.out()).contains(group.name()));
        var steps = ran.out().lines().filter(line -> line.matches(" {2}[1-9]\\. .*, (now|by [A-Z].*)"));
        assertThat(steps).hasSize(7);
        assertThat(folder.resolve("feed-letter-short.pdf")).isNotEmptyFile();
        assertThat(run("ranch", "list", "--data", folder.toString()).out().lines())
                .hasSize(1);
    }

    @Test
    void theDemoRunsAgainOnWhatWasKept() {
        var first = run("demo", "--no-serve", "--data", folder.toString());
        assertThat(run("demo", "--no-serve", "--data", folder.toString()).out()).isEqualTo(first.out());
        assertThat(run("ranch", "list", "--data", folder.toString()).out().lines())
                .hasSize(1);
    }

    @Test
    void aRanchGoesOutAndComesBack() throws IOException {
        var data = folder.resolve("data").toString();
        var document = file("tin.json", new RanchDocument().write(TinLantern.ranch()));
        assertThat(run("ranch", "--data", data, "import", document).out()).contains("taken in");
        assertThat(run("ranch", "--data", data, "import", document).out()).contains("the same");
        var name = TinLantern.ranch().name();
        assertThat(run("ranch", "--data", data, "export", name).out()).isEqualTo(Files.readString(Path.of(document)));
        var backup = folder.resolve("all.zip").toString();
        assertThat(run("ranch", "--data", data, "backup", backup).exit()).isZero();
        for (var what : new String[][] {{"backup"}, {"export", name}}) {
            var again = new ArrayList<>(List.of("ranch", "--data", data));
            again.addAll(List.of(what));
            again.add(folder.resolve("again").toString());
            assertThat(run(again.toArray(String[]::new)).out()).doesNotContain("in the place of");
            assertThat(run(again.toArray(String[]::new)).out()).contains("in the place of");
            Files.delete(folder.resolve("again"));
        }
        var other = folder.resolve("other").toString();
        assertThat(run("ranch", "--data", other, "restore", backup).out()).contains(name);
        assertThat(run("ranch", "--data", other, "list").out()).contains(name);
    }

    @Test
    void aFileThatIsNoRanchIsRefusedAndNothingIsKept() throws IOException {
        var data = folder.resolve("data").toString();
        var ran = run("ranch", "--data", data, "import", file("bad.json", "{\"haywright\":\"ranch\",\"format\":99}"));
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("made by a newer Haywright");
        assertThat(run("ranch", "--data", data, "list").out()).isEmpty();
        assertThat(run("ranch", "check", folder.resolve("bad.json").toString()).exit())
                .isEqualTo(2);
    }

    @Test
    void anUnknownRanchIsSaid() {
        var data = folder.resolve("data").toString();
        run("ranch", "--data", data, "import", folder.resolve("none.json").toString());
        var ran = run("ranch", "--data", data, "export", "Nowhere");
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("there is no ranch of this name here");
    }

    @Test
    void aLetterIsWrittenAsTheFilesEndingSays() throws IOException {
        var data = folder.resolve("data").toString();
        run("ranch", "--data", data, "import", file("tin.json", new RanchDocument().write(TinLantern.ranch())));
        var html = folder.resolve("letter.html");
        assertThat(run("print", "letter", html.toString(), "--group", "mature cows", "--data", data)
                        .exit())
                .isZero();
        assertThat(html).content().contains("Mature cows");
        var pdf = folder.resolve("letter.pdf");
        run("print", "letter", pdf.toString(), "--group", "Bulls", "--size", "a4", "--data", data);
        assertThat(Files.readAllBytes(pdf)).startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
        var ran = run("print", "letter", folder.resolve("letter.doc").toString(), "--group", "Bulls", "--data", data);
        assertThat(ran.exit()).isEqualTo(2);
        assertThat(ran.err()).contains("Let the name end in .pdf or .html.");
        assertThat(run("print", "letter", html.toString(), "--data", data).err())
                .contains("Its groups: Mature cows");
    }

    @Test
    void aFieldSheetIsKeptWithTheRanchWhenItIsPrinted() throws IOException {
        var data = folder.resolve("data").toString();
        run("ranch", "--data", data, "import", file("tin.json", new RanchDocument().write(TinLantern.ranch())));
        var pdf = folder.resolve("sheet.pdf");
        var first = run("print", "sheet", pdf.toString(), "--lot", "meadow hay", "--data", data);
        assertThat(first.out()).startsWith("Sheet S");
        assertThat(Files.readAllBytes(pdf)).startsWith("%PDF-".getBytes(StandardCharsets.US_ASCII));
        var phone = folder.resolve("sheet.html");
        var code = first.out().split(" ")[1];
        assertThat(run("print", "sheet", phone.toString(), "--lot", "Meadow hay", "--data", data)
                        .out())
                .contains(code);
        assertThat(phone).content().contains("data-code=\"" + code + "\"");
        assertThat(run("print", "labels", folder.resolve("l.pdf").toString(), "--lot", "Meadow hay", "--data", data)
                        .exit())
                .isZero();
        assertThat(run("print", "weighing", folder.resolve("w.pdf").toString(), "--lot", "Meadow hay", "--data", data)
                        .exit())
                .isZero();
        assertThat(run("print", "weighing", folder.resolve("w.pdf").toString(), "--lot", "Corn silage", "--data", data)
                        .err())
                .contains("is not baled");
        var scores = folder.resolve("scores.html");
        run("print", "scores", scores.toString(), "--group", "mature cows", "--data", data);
        assertThat(scores).content().contains("Score 20 of 240");
        var gpx = folder.resolve("walk.gpx");
        run("print", "walk", gpx.toString(), "--field", "North pivot", "--data", data);
        assertThat(gpx).content().contains("<name>S01</name>");
        assertThat(run("print", "sheet", pdf.toString(), "--lot", "Nowhere", "--data", data)
                        .err())
                .contains("Oat-pea silage");
    }

    @Test
    void theDemoHasLettersAndEveryCommandAVersion() {
        var html = folder.resolve("demo.html");
        var data = folder.resolve("data").toString();
        assertThat(run("print", "letter", html.toString(), "--demo", "--group", "bulls", "--data", data)
                        .exit())
                .isZero();
        assertThat(html).content().contains("Bulls").contains("nvented");
        assertThat(run("print", "letter", "--version").out()).startsWith("Haywright ");
    }

    @Test
    void anUnknownOptionExitsWithTwo() {
        assertThat(run("demo", "--sureness", "95").exit()).isEqualTo(2);
    }
}
