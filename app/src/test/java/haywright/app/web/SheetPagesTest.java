package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.sheet.SheetFile;
import haywright.ranch.Sampling;
import haywright.sampling.Taken;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From a stack to a sheet, back again, and on to the laboratory's report: on a new ranch, erring on the way. */
class SheetPagesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String stack(String name, String count) {
        var hay = OneRanch.hay(count, "1,250 lb");
        hay.put("name", name);
        hay.put("bale", "large_square");
        hay.put("confirm", "count-unusual");
        assertThat(ranch.send("lots/new/bales", hay).status()).isEqualTo(303);
        return ranch.lot(name);
    }

    private static Map<String, String> aim(String... more) {
        var aim = new LinkedHashMap<String, String>();
        aim.put("purpose", "nutrients");
        aim.put("analyte", "cp");
        aim.put("halfWidth", "0.5");
        aim.put("confidencePercent", "95");
        aim.put("seed", "7");
        for (int i = 0; i < more.length; i += 2) {
            aim.put(more[i], more[i + 1]);
        }
        return aim;
    }

    private Sampling sheet(String lot, String... more) {
        var before = ranch.kept().samplings().keySet();
        assertThat(ranch.send("take/lots/" + lot, "take/lots/" + lot + "/sheet", aim(more))
                        .status())
                .isEqualTo(303);
        return ranch.kept().samplings().values().stream()
                .filter(s -> !before.contains(s.id()))
                .findFirst()
                .orElseThrow();
    }

    private String line(Sampling sheet, int cores) {
        return new Taken(DAY, "JR", Collections.nCopies(sheet.picks().size(), cores), "", List.of()).line(sheet.code());
    }

    private RawClient.Answer comesBack(String line) {
        return ranch.send("take", "take/line", Map.of("line", line));
    }

    private static Map<String, String> report(String code, String protein) {
        return Map.of(
                "laboratory", "Tin Valley",
                "sampleCode", code,
                "reported", "Nov 25, 2026",
                "howSampled", "plan",
                "one-dm", "90",
                "dry-cp", protein);
    }

    @ParameterizedTest(name = "{0} bales: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | Take 1 bale, 20 cores each.",
                "7 | Take 7 bales, 3 cores each.",
                "100000 | Take 20 bales, one core each."
            })
    void aStackOfAnySizeHasAPlan(String count, String words) {
        var lot = stack("Creek stack", count);
        assertThat(ranch.get("take/lots/" + lot).body()).contains(words);
    }

    @ParameterizedTest(name = "{0} “{1}”: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "halfWidth | half | this is not a number",
                "halfWidth | 0 | above 0",
                "confidencePercent | 100 | below 100",
                "seed | 1.5 | whole number",
                "analyte | gold | no spread within",
                "baleDepth | 10 | the far side of a"
            })
    void anAimThatCannotBeIsRefusedBesideItsField(String field, String value, String words) {
        var lot = stack("Creek stack", "96");
        var refused = ranch.send(
                "take/lots/" + lot, "take/lots/" + lot + "/sheet", aim(field, value, "bore", "0.625", "depth", "18"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).containsIgnoringCase(words).contains("<title>Error: ");
        assertThat(ranch.kept().samplings()).isEmpty();
    }

    @Test
    void theSheetThatCameBackSpeaksForItsReport() {
        var lot = stack("Creek stack", "96");
        var sheet = sheet(lot);
        var bag = sheet.bag(1);
        var form = "reports/new/" + lot;

        // not back yet: it is said, and a link leads there
        assertThat(ranch.get(form + "?bag=" + bag).body())
                .contains("value=\"" + bag + "\"", "that sheet has not come back", "take/sheets/" + sheet.id());

        assertThat(comesBack(line(sheet, 1)).status()).isEqualTo(303);
        var sheetPage = ranch.get("take/sheets/" + sheet.id()).body();
        assertThat(sheetPage).contains("reports/new/" + lot + "?bag=" + bag);
        assertThat(ranch.get(form + "?bag=" + bag).body())
                .contains("Taken by the sheet of Nov 25, 2026: 20 of 20 bales, by JR; crude protein", "known to ± ")
                .contains("value=\"plan\" checked", "value=\"Nov 24, 2026\"");

        var saved = ranch.send(form, report(bag, "10"));
        assertThat(saved.status()).isEqualTo(303);
        assertThat(ranch.after(saved).body()).contains("20 of 20 bales, by JR");
        assertThat(ranch.get("take/sheets/" + sheet.id()).body()).contains("Tin Valley, Nov 25, 2026");
    }

    @Test
    void aCodeThatCannotBeRightIsAskedAboutAndKeptIfItIs() {
        var creek = stack("Creek stack", "96");
        var road = stack("Road stack", "60");
        var sheet = sheet(creek);
        comesBack(line(sheet, 1));
        var form = "reports/new/" + road;
        var other = ranch.send(form, report(sheet.bag(1), "10"));
        assertThat(other.status()).isEqualTo(422);
        assertThat(other.body()).contains("from Creek stack, not from Road stack", "Yes, this is right");

        var bag = sheet.bag(1);
        var wrong = bag.substring(0, bag.length() - 1) + (bag.endsWith("A") ? "B" : "A");
        form = "reports/new/" + creek;
        var miscopied = ranch.send(form, report(wrong, "10"));
        assertThat(miscopied.status()).isEqualTo(422);
        assertThat(miscopied.body()).contains("its last letter does not fit", "Does the bag say " + bag);
        var sure = new LinkedHashMap<>(report(wrong, "10"));
        sure.put("confirm", "sample-code");
        assertThat(ranch.send(form, sure).status()).isEqualTo(303);
        // changed in another place it is not asked about again
        var kept = ranch.kept().reports().values().iterator().next();
        assertThat(ranch.send("reports/" + kept.id(), report(wrong, "11")).status())
                .isEqualTo(303);

        // the sheet taken away: its bag is still known for one
        ranch.send("take/sheets/" + sheet.id(), "take/sheets/" + sheet.id() + "/delete", Map.of());
        assertThat(ranch.send(form, report(bag, "10")).body()).contains("a sheet that is not on this ranch");
        // a laboratory's own number says nothing
        assertThat(ranch.send(form, report("24-7731", "10")).status()).isEqualTo(303);
    }

    @Test
    void aLineThatIsRefusedSaysWhyAtTheTopAndNeverEchoesItWhole() {
        var sheet = sheet(stack("Creek stack", "96"));
        var whole = comesBack("A".repeat(200_000));
        assertThat(whole.status()).isEqualTo(422);
        assertThat(whole.body()).contains("… (200,000 characters)").doesNotContain("“" + "A".repeat(100));
        assertThat(whole.body().indexOf("id=\"problems\""))
                .isLessThan(whole.body().indexOf("id=\"back\""));
        assertThat(whole.body().split("id=\"problems\"", -1)).hasSize(2);

        var picks = sheet.picks().size();
        var future = new Taken(LocalDate.of(2031, 1, 1), "JR", Collections.nCopies(picks, 1), "", List.of());
        assertThat(comesBack(future.line(sheet.code())).body()).contains("a sample can’t be in the future");
        var early = new Taken(LocalDate.of(2025, 1, 1), "JR", Collections.nCopies(picks, 1), "", List.of());
        assertThat(comesBack(early.line(sheet.code())).body()).contains("before the sheet was made", "Is this right?");
        assertThat(ranch.kept().samplings().get(sheet.id()).taken()).isNull();

        var broken = line(sheet, 1);
        assertThat(comesBack(broken.substring(0, 10) + "\r\n " + broken.substring(10))
                        .status())
                .isEqualTo(303);
        var other = comesBack(line(sheet, 2));
        assertThat(other.body())
                .contains("number 1 had 1 and has 2 here", "17 more differ", "take/sheets/" + sheet.id())
                .contains("Open that sheet");
    }

    @Test
    void aSheetAsksAboutADayBeforeItAndRefusesADayToCome() {
        var sheet = sheet(stack("Creek stack", "96"));
        var at = "take/sheets/" + sheet.id();
        var typed = new LinkedHashMap<String, String>();
        typed.put("by", "J".repeat(5000));
        typed.put("on", "Jan 1, 2030");
        for (int i = 1; i <= sheet.picks().size(); i++) {
            typed.put("cores-" + i, "1");
        }
        var future = ranch.send(at, typed);
        assertThat(future.status()).isEqualTo(422);
        assertThat(future.body()).contains("a sample can’t be in the future", "at most 60 letters");
        typed.put("by", "JR");
        typed.put("on", "Jan 1, 1950");
        assertThat(ranch.send(at, typed).body()).contains("before the sheet was made");
        typed.put("confirm", "before-made");
        assertThat(ranch.send(at, typed).status()).isEqualTo(303);
    }

    @Test
    void whatComesBackWrongIsRefusedAndTheSameTwiceChangesNothing() {
        var lot = stack("Creek stack", "96");
        var sheet = sheet(lot);
        var line = line(sheet, 1);
        var changed = comesBack(line.replace("-JR-", "-JB-"));
        assertThat(changed.status()).isEqualTo(422);
        assertThat(changed.body())
                .contains("a character was changed or two were swapped", line.replace("-JR-", "-JB-"));
        assertThat(ranch.get("").body()).contains("Left unfinished");
        assertThat(comesBack("").status()).isEqualTo(422);
        assertThat(comesBack("HAYWRIGHT SHEET 1\n" + line + "\nDiffered: \nPhotos: \nCheck: 00000000\n")
                        .body())
                .contains("something in it was changed");
        assertThat(comesBack(line).status()).isEqualTo(303);
        assertThat(ranch.get("").body()).doesNotContain("Left unfinished");
        long edits = ranch.get("history").body().split("Sample taken", -1).length;
        assertThat(comesBack(line).status()).isEqualTo(303);
        assertThat(ranch.get("history").body().split("Sample taken", -1)).hasSize((int) edits);
        assertThat(comesBack(line(sheet, 2)).body()).contains("came back on Nov 24, 2026");
        var strange = new Taken(DAY, "JR", Collections.nCopies(20, 1), "", List.of()).line("S00000");
        assertThat(comesBack(strange).body()).contains("no sheet with this code");
        var short1 = new Taken(DAY, "JR", List.of(1), "", List.of()).line(sheet.code());
        assertThat(comesBack(short1).body()).contains("sheet " + sheet.code() + " has 20");
    }

    /** A line holds no words: the file that follows it brings them, and takes nothing that was written down meanwhile. */
    @Test
    void whatTheFileSaysBesideItsLineIsAdded() {
        var sheet = sheet(stack("Creek stack", "96"));
        assertThat(comesBack(line(sheet, 1)).status()).isEqualTo(303);
        var cores = Collections.nCopies(sheet.picks().size(), 1);
        for (var said : List.of("Bales weighed, lb: 1310 1288", "bale 4 frozen in", "bale 4 frozen in")) {
            var file = SheetFile.write(sheet.code(), new Taken(DAY, "JR", cores, said, List.of("a.jpg")));
            assertThat(comesBack(file).status()).isEqualTo(303);
        }
        var taken = ranch.kept().samplings().get(sheet.id()).taken();
        assertThat(taken).isNotNull();
        assertThat(taken.differed()).isEqualTo("Bales weighed, lb: 1310 1288; bale 4 frozen in");
        assertThat(taken.photos()).containsExactly("a.jpg");
    }

    @Test
    void aSheetOutlivesItsLot() {
        var lot = stack("Creek stack", "96");
        var sheet = sheet(lot);
        ranch.send("lots/" + lot + "/delete", Map.of());
        assertThat(ranch.kept().lots()).isEmpty();
        assertThat(comesBack(line(sheet, 1)).status()).isEqualTo(303);
        var page = ranch.get("take/sheets/" + sheet.id()).body();
        assertThat(page).contains("no longer on this ranch").doesNotContain("reports/new/" + lot);
        assertThat(ranch.get("take").body()).contains("Creek stack: sheet " + sheet.code());
        assertThat(ranch.get("take/sheets/" + sheet.id() + "/sheet/letter.pdf").status())
                .isEqualTo(200);
    }
}
