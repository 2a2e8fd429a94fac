package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.store.Store;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.LabReport;
import haywright.forage.NotMeasured;
import haywright.forage.NotMeasured.Why;
import haywright.forage.Tested;
import haywright.quantity.Unit;
import java.nio.file.Path;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A report typed on a new ranch, without scripts: erring, confirming, changing, two reports, and files brought in. */
class ReportPagesTest {
    private Store store;
    private Server server;
    private RawClient client;
    private String ranch;
    private String lot;
    private String form;

    @BeforeEach
    void start(@TempDir Path folder) {
        store = Store.inFolder(folder, Clock.systemUTC());
        server = Server.start(PagesTest.desk(store), "127.0.0.1", 0, routes -> {});
        client = new RawClient(server.port());
        ranch = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"))
                .header("Location");
        lot = lot("Ditch-side stack", "grass_hay");
        form = "reports/new/" + lot;
    }

    @AfterEach
    void stop() {
        server.close();
        store.close();
    }

    private String lot(String name, String feedClass) {
        var hay = Map.of(
                "name", name, "feedClass", feedClass, "mass", "120", "storage", "tarped", "replacementPrice", "150");
        assertThat(send("lots/new/weighed", hay).status()).isEqualTo(303);
        return store.ranches().open(UUID.fromString(ranch.split("/")[2])).ranch().lots().values().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow()
                .id()
                .toString();
    }

    private RawClient.Answer send(String path, Map<String, String> fields) {
        return client.submit(
                client.get(ranch + path.replaceAll("(?<=bring)/[a-z]+$|/forget$", "")), ranch + path, fields);
    }

    private LabReport report() {
        return store.ranches()
                .open(UUID.fromString(ranch.split("/")[2]))
                .ranch()
                .reports()
                .values()
                .iterator()
                .next();
    }

    private static Map<String, String> sheet() {
        var sheet = new LinkedHashMap<String, String>();
        sheet.put("laboratory", "Tin Valley");
        sheet.put("sampleCode", "NS-1");
        sheet.put("sampled", "Oct 6, 2026");
        sheet.put("reported", "10/14/2026");
        sheet.put("howSampled", "plan");
        sheet.put("one-dm", "90");
        sheet.put("left-cp", "9");
        sheet.put("dry-cp", "10");
        sheet.put("dry-adf", "38");
        sheet.put("dry-ndf", "58");
        sheet.put("dry-nem", "0.55");
        sheet.put("unit-nem", "mcal_per_lb");
        sheet.put("dry-no3n", "240");
        sheet.put("unit-no3n", "ppm");
        return sheet;
    }

    private static Map<String, String> sheetBut(String... fields) {
        var sheet = sheet();
        for (int i = 0; i < fields.length; i += 2) {
            sheet.put(fields[i], fields[i + 1]);
        }
        return sheet;
    }

    @Test
    void aReportIsKeptAsPrintedAndTheLotIsMadeOfIt() {
        var saved = send(form, sheet());
        assertThat(saved.status()).isEqualTo(303);
        var page = client.get(saved.header("Location")).body();
        assertThat(page)
                .contains("CP\u00a010.0\u00a0%", "How far to trust it", "report of Oct 14, 2026, Tin Valley")
                .contains("Report added: Ditch-side stack", "Called safe by every source");
        var readings = report().readings();
        assertThat(readings).hasSize(7);
        assertThat(readings.stream().filter(r -> r.unit() == Unit.MCAL_PER_LB))
                .singleElement()
                .satisfies(r -> assertThat(r.value()).isEqualTo(0.55));
        assertThat(client.get(ranch + "reports/" + report().id()).body())
                .contains("name=\"left-cp\"", "value=\"9\"", "value=\"0.55\"", "value=\"mcal_per_lb\" selected");
    }

    /** The three forms by their molar masses: N 14.007, NO3 62.005, KNO3 101.10 g per mol. */
    @Test
    void nitrateIsShownInItsThreeFormsAndByEverySource() {
        var page = client.get(send(form, sheetBut("dry-no3n", "2100")).header("Location"))
                .body();
        assertThat(page).contains("2,100 ppm NO3-N", "9,296 ppm NO3 (0.93 %)", "15,157 ppm KNO3 (1.52 %)");
        assertThat(page).contains("The strictest source says: do not feed as it is");
        assertThat(page.indexOf("Manitoba")).isPositive().isLessThan(page.indexOf("Clemson"));
        assertThat(page.indexOf("Clemson")).isLessThan(page.indexOf("Nebraska"));
        assertThat(client.get(ranch + "reports").body()).contains("state danger");
    }

    @ParameterizedTest(name = "{0} “{1}” is refused: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "howSampled | '' | nothing is written here",
                "reported | Oct 1, 2026 | a report is not older than its sample",
                "reported | Feb 30, 2026 | there is no such day",
                "one-dm | 0 | dry matter is above 0",
                "one-dm | '' | cannot be carried to dry matter",
                "one-dm | 60 | as received at 60 % dry matter",
                "dry-cp | 400 | it lies from 0 to 100 %",
                "dry-cp | NaN | this is not a number",
                "dry-cp | 12,5 | the comma can mean two things",
                "dry-cp | 8 | as received is never the higher",
                "dry-adf | 60 | cannot be above Neutral detergent fibre",
                "dry-adf | 38 Mcal | is not a unit of what is asked here",
                "dry-nem | 62 | Is the unit Mcal/cwt?",
                "unit-nem | '' | Which unit does the sheet print?",
                "unit-no3n | acre | it is not measured in this unit",
                "dry-ca | =1+1 | this is not a number",
                "dry-ca | < | this is not a number",
                "dry-ca | <0 | a limit of detection is above zero",
                "dry-ca | <-0.01 | this is not a number",
                "dry-no3n | <9000000 | it lies from",
                "method | guess | this is none of the choices"
            })
    void badInputIsNamedBesideItsFieldAndNothingTypedIsLost(String field, String value, String words) {
        var refused = send(form, sheetBut(field, value, "unit-ca", "percent"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .containsIgnoringCase(words)
                .contains("<title>Error: ", "<b>Error:</b>", "value=\"NS-1\"");
        assertThat(client.get(ranch + form).body()).contains("You left this unfinished", "value=\"NS-1\"");
        assertThat(client.get(ranch + "reports").body()).contains("Not tested");
    }

    @Test
    void aSlipOfThePointIsAskedAboutOnceAndRecordedWhenItIsRight() {
        var odd = sheetBut("left-cp", "0.9", "dry-cp", "1");
        var asked = send(form, odd);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Is this right?", "a tenth of what grass hay usually has", "Is it 10 %?");
        odd.put("confirm", "slip-cp");
        var saved = send(form, odd);
        assertThat(saved.status()).isEqualTo(303);
        assertThat(report().confirmed()).containsExactly("slip-cp");
        assertThat(client.get(saved.header("Location")).body()).contains("1 unusual figure confirmed as right");

        odd.remove("confirm");
        odd.put("sampleCode", "NS-2");
        assertThat(send("reports/" + report().id(), odd).status()).isEqualTo(303);
        assertThat(report().confirmed()).containsExactly("slip-cp");
        odd.put("dry-cp", "0.95");
        odd.put("left-cp", "");
        assertThat(send("reports/" + report().id(), odd).body()).contains("Is this right?");
    }

    @Test
    void aTypedUnitIsUnderstoodAndKept() {
        assertThat(send(form, sheetBut("left-cp", "", "dry-cp", "100 g/kg")).status())
                .isEqualTo(303);
        assertThat(client.get(ranch + "reports/lot/" + lot).body()).contains("CP\u00a010.0\u00a0%");
        assertThat(client.get(ranch + "reports/" + report().id()).body()).contains("value=\"100 g/kg\"");
    }

    @Test
    void lessThanNotDetectedAndNotTestedAreThreeThingsAndNoneIsAFigure() {
        var typed = sheetBut(
                "dry-no3n",
                "<50",
                "left-ca",
                "<0.01 ppm",
                "unit-ca",
                "percent",
                "dry-s",
                "ND",
                "unit-s",
                "percent",
                "dry-k",
                "Not tested",
                "dry-aflatoxin",
                "nd (<5)",
                "method",
                "nir");
        var saved = send(form, typed);
        assertThat(saved.status()).isEqualTo(303);
        var report = report();
        assertThat(report.method()).isEqualTo(Tested.Method.NIR);
        assertThat(report.readings()).hasSize(6);
        assertThat(report.notMeasured())
                .containsExactlyInAnyOrder(
                        new NotMeasured(Analyte.NO3N, Why.LESS_THAN, 50.0, Unit.PPM, Basis.DRY_MATTER),
                        new NotMeasured(Analyte.CA, Why.LESS_THAN, 0.01, Unit.PPM, Basis.AS_RECEIVED),
                        new NotMeasured(Analyte.S, Why.NOT_DETECTED, null, null, null),
                        new NotMeasured(Analyte.K, Why.NOT_TESTED, null, null, null),
                        new NotMeasured(Analyte.AFLATOXIN, Why.NOT_DETECTED, 5.0, Unit.PPB, Basis.DRY_MATTER));
        var page = client.get(saved.header("Location")).body();
        assertThat(page)
                .contains("50 ppm NO3-N", "less than 50 ppm on dry matter. Nobody knows how much less")
                .contains("less than 0.01 ppm as received (as fed, as is). That is a bound and no figure")
                .contains("by near infrared (NIR)");
        assertThat(client.get(ranch + "reports/" + report.id()).body())
                .contains("value=\"&lt;50\"", "value=\"&lt;0.01\"", "value=\"ND\"", "value=\"not tested\"")
                .contains("value=\"ND (&lt;5)\"", "value=\"nir\" selected");
        var again = new LinkedHashMap<>(typed);
        again.put("left-ca", "<0.02 ppm");
        assertThat(send("reports/" + report.id(), again).status()).isEqualTo(303);
        assertThat(report().notMeasured())
                .hasSize(5)
                .contains(new NotMeasured(Analyte.CA, Why.LESS_THAN, 0.02, Unit.PPM, Basis.AS_RECEIVED));
    }

    @Test
    void ofTwoReportsBothCountAsFarAsTheyCanBeTrusted() {
        send(form, sheet());
        var newer = new LinkedHashMap<String, String>();
        newer.put("laboratory", "Second opinion");
        newer.put("reported", "Nov 3, 2026");
        newer.put("howSampled", "grab");
        newer.put("dry-cp", "8");
        var page = client.get(send(form, newer).header("Location")).body();
        assertThat(page)
                .contains("report of Nov 3, 2026, Second opinion says 8 %; weighed with 1 more and its kind")
                .contains("report of Oct 14, 2026, Tin Valley", "Of two figures for the same thing both count");
        // A cored composite of Oct 14 says 10.0, a grab of one place 8: the lot lies between, nearer the composite.
        var protein = Pattern.compile("CP\u00a0([0-9.]+)\u00a0%").matcher(page);
        assertThat(protein.find()).isTrue();
        assertThat(Double.parseDouble(protein.group(1))).isBetween(9.0, 10.0);
        assertThat(client.get(ranch + "reports").body()).contains("2 reports", "newest: Nov 3, 2026, Second opinion");
    }

    @Test
    void aReportTakenAwayCanBeTakenBack() {
        send(form, sheet());
        var path = "reports/" + report().id() + "/delete";
        assertThat(client.get(ranch + path).body()).contains("Oct 14, 2026, on Ditch-side stack");
        var gone = send(path, Map.of());
        assertThat(client.get(gone.header("Location")).body()).contains("Not tested:");
        var rev = gone.header("Location").replaceAll(".*saved=", "");
        assertThat(client.submit(client.get(ranch + "history"), ranch + "undo/" + rev, Map.of())
                        .status())
                .isEqualTo(303);
        assertThat(client.get(ranch + "reports/lot/" + lot).body()).contains("CP\u00a010.0\u00a0%");
    }

    @Test
    void ninetyPercentIsABasisOfItsOwn() {
        send(form, sheetBut("ninety", "yes", "left-adf", "36", "dry-adf", "", "left-cp", "9"));
        var page = client.get(ranch + "reports/lot/" + lot).body();
        assertThat(page).contains("says 40 %; moved"); // 36 / 0.90
        assertThat(client.get(ranch + "reports/" + report().id()).body()).contains("At 90 %");
    }

    @Test
    void aReportFarFromItsKindAsksWhetherFeedColumnOrLotIsWrong() {
        var page = client.get(send(form, sheetBut("left-cp", "", "dry-cp", "27", "confirm", "cp"))
                        .header("Location"))
                .body();
        assertThat(page)
                .contains("Does this report belong here?")
                .contains("27 %", "Is it another feed, the other column of the report, or the bag of another lot?");
    }

    @Test
    void anUntestedLotShowsHowWideItIs() {
        var page = client.get(ranch + "reports/lot/" + lot).body();
        assertThat(page)
                .contains("Not tested:", "How far to trust it", "Before any report")
                .doesNotContain("Does this report belong here?")
                .doesNotContain("not judged");
        assertThat(client.get(ranch + "reports").body()).contains("protein likely");
    }

    @Test
    void whatElseCanBeWrongStandsWithItsSourcesTheStricterFirst() {
        var sheet = sheetBut("dry-aflatoxin", "150", "dry-adicp", "1.6", "confirm", "C34-adicp");
        var sent = send(form, sheet);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        var page = client.get(sent.header("Location")).body();
        assertThat(page).contains("Aflatoxin: 150 ppb", "Protein bound by heat: 16 % of the protein");
        assertThat(page.indexOf("For breeding cattle: above the action level"))
                .isPositive()
                .isLessThan(page.indexOf("For finishing beef cattle: under the action level"));
        // 16 % bound: rule B leaves 10 − 1.6 + 1 = 9.4, rule A 10·(100 − 9)/100 = 9.1.
        assertThat(page.indexOf("Rule A leaves")).isPositive().isLessThan(page.indexOf("Rule B leaves"));
    }

    @Test
    void theRanchsOwnBookGrowsFromItsReportsBesideThePublishedRows() {
        var before = client.get(ranch + "reports/book").body();
        assertThat(before)
                .contains("It grows from this ranch’s own reports", "What each feed costs", "A lb of protein");
        send(form, sheet());
        var after = client.get(ranch + "reports/book").body();
        assertThat(after).contains("1 lot, the last report of Oct 14, 2026", "10.0 (one lot)");
        assertThat(client.get(ranch + "lots/new/bales").body()).contains("Look in the feed book");
    }

    @Test
    void waterIsPutInJudgedChangedAndTakenAway() {
        var form = "reports/water/new";
        assertThat(client.get(ranch + "reports").body()).contains("Stock water");
        var wrong = send(form, Map.of("name", "", "solids", "900", "sulfate", "a lot"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.body()).contains("Nothing is written here", "value=\"a lot\"");
        var swapped = send(form, Map.of("name", "Dugout", "solids", "900", "sulfate", "2400"));
        assertThat(swapped.body()).contains("sulfate is part of the dissolved solids");
        var kept = send(
                form,
                Map.of("name", "Dugout", "solids", "3600", "sulfate", "2400", "nitrate", "10", "asNitrogen", "yes"));
        assertThat(kept.status()).isEqualTo(303);
        var page = client.get(ranch + "reports/water").body();
        assertThat(page)
                .contains(
                        "Dugout", "Sulfate: 2,400\u00a0mg/L", "polio", "Ask your veterinarian before cattle drink here")
                .contains("Nitrate as NO3: 44\u00a0mg/L");
        var id = page.replaceAll("(?s).*reports/water/([0-9a-f-]{36})\".*", "$1");
        assertThat(client.get(ranch + "reports/water/" + id).body()).contains("value=\"2,400\"", "checked");
        assertThat(send("reports/water/" + id + "/delete", Map.of()).status()).isEqualTo(303);
        assertThat(client.get(ranch + "reports/water").body()).contains("No water is put in yet");
    }

    @Test
    void untestedFeedThatCanHoldNitrateIsADanger() {
        var oats = lot("Oat stack", "cereal_hay");
        assertThat(client.get(ranch + "reports").body()).contains("Nitrate not known: it stays out of every ration");
        assertThat(client.get(ranch + "reports/lot/" + oats).body()).contains("<b>Nitrate not known.</b>");
    }

    @Test
    void aCsvIsShownThenLookedOverAndKeptOnlyWhenSaved() {
        var csv = Map.of(
                "text",
                "Sample,Sparkle,DM,CP,<b>ADF</b> % DM,ADF % DM\nNS-9,4,90,10,7,38\n",
                "decimal",
                "point",
                "basis",
                "");
        assertThat(send("reports/bring", csv).body()).contains("does not say whether these are as received");
        assertThat(client.get(ranch + "reports/bring").body()).contains("This is what you brought in last", "NS-9");
        var told = new LinkedHashMap<>(csv);
        told.put("basis", "dry_matter");
        var read = send("reports/bring", told).body();
        assertThat(read)
                .contains("1 sample understood. Nothing is kept yet.", "one line a sample, columns parted by commas")
                .contains("Column “Sparkle”: no analyte of this name is known", "&lt;b&gt;ADF&lt;/b&gt;")
                .doesNotContain("<b>ADF</b>");
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", "")).body())
                .contains("say which", "href=\"#f-lot-0\"");
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.status()).isEqualTo(200);
        assertThat(form.body()).contains("Type a report on Ditch-side stack", "value=\"NS-9\"", "value=\"10\"");
        assertThat(client.get(ranch + "reports").body()).contains("Not tested");
        var saved = client.submit(
                form,
                ranch + this.form,
                Map.of("sampleCode", "NS-9", "dry-cp", "10", "one-dm", "90", "howSampled", "grab"));
        assertThat(saved.status()).isEqualTo(303);
        assertThat(report().sampleCode()).isEqualTo("NS-9");
    }

    private static final String TWO = """
            Éclat Laboratory
            Sample: Ditch-side stack
            Analysis          As received   Dry matter
            Dry matter            88.0         100.0
            Protéine brute         9.0          10.2
            Calcium               <0.01        <0.01
            Starch                              ND
            Nitrate               0.05         0.06
            Sample: N-77
            Analysis          As received   Dry matter
            Dry matter            86.0         100.0
            ADF                   33.0          38.4
            """;

    private static Map<String, String> bring(String text, String... more) {
        var typed = new LinkedHashMap<>(Map.of("text", text, "decimal", "point", "basis", "", "laboratory", ""));
        for (int i = 0; i < more.length; i += 2) {
            typed.put(more[i], more[i + 1]);
        }
        return typed;
    }

    @Test
    void reportsThatWerePastedFindTheirLotsAndTheirNamesAreRemembered() {
        var read = send("reports/bring", bring(TWO)).body();
        assertThat(read)
                .contains(
                        "2 samples understood. Nothing is kept yet.",
                        "no analyte of this name is known: Protéine brute")
                .contains("Matched: it is the lot’s name.", "Its code says no lot of this ranch.")
                .contains("0.05, unit not said: asked in the form");
        var number = read.replaceAll("(?s).*name=\"name-written-([0-9]+)\" value=\"Protéine brute\".*", "$1");
        var told = bring(
                TWO,
                "name-written-" + number,
                "Protéine brute",
                "name-analyte-" + number,
                "cp",
                "name-unit-" + number,
                "percent",
                "name-basis-" + number,
                "");
        assertThat(send("reports/bring", told).body()).doesNotContain("no analyte of this name is known: Protéine");
        assertThat(client.get(ranch + "reports/names").body()).contains("Nothing is remembered yet");

        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.body())
                .contains(
                        "value=\"10.2\"",
                        "value=\"&lt;0.01\"",
                        "value=\"ND\"",
                        "name=\"from\" value=\"reports/bring\"");
        assertThat(client.get(ranch + "reports/names").body())
                .contains("éclat laboratory", "is Crude protein (CP), in %");
        var sheet = new LinkedHashMap<>(
                Map.of("from", "reports/bring", "laboratory", "Éclat Laboratory", "sampleCode", "Ditch-side stack"));
        sheet.putAll(Map.of("one-dm", "88", "dry-cp", "10.2", "howSampled", "grab"));
        assertThat(client.submit(form, ranch + this.form, sheet).header("Location"))
                .contains("reports/bring");
        assertThat(client.get(ranch + "reports/bring").body()).contains("1 still to be kept", "Kept, on <a");

        // another ranch's sheet of the same laboratory
        client.get(ranch + "reports/bring?afresh");
        assertThat(send("reports/bring", bring(TWO.replace("10.2", "11.1"))).body())
                .doesNotContain("no analyte of this name is known: Protéine");
        assertThat(send("reports/names/forget", Map.of("laboratory", "éclat laboratory"))
                        .status())
                .isEqualTo(303);
        assertThat(send("reports/bring", bring(TWO)).body()).contains("no analyte of this name is known: Protéine");
    }

    @Test
    void whatRaisesNoQuestionIsKeptAtOnceAndTheRestStays() {
        lot("Creek stack", "grass_hay");
        var three = """
                Sample: Ditch-side stack
                Analysis          Dry matter
                Crude protein        10.2
                Sample: Creek stack
                Analysis          Dry matter
                Crude protein         1.0
                Sample: Nobody
                Analysis          Dry matter
                Crude protein         9.0
                """;
        assertThat(send("reports/bring", bring(three, "laboratory", "Tin Valley"))
                        .body())
                .contains("The lots of 2 samples");
        assertThat(send("reports/bring/all", Map.of()).body())
                .contains("nobody has said how the samples were taken".replaceFirst("n", "N"));
        var kept = send("reports/bring/all", Map.of("howSampled", "grab"));
        assertThat(client.get(kept.header("Location")).body()).contains("Reports added: 1", "2 still to be kept");
        assertThat(report().sampleCode()).isEqualTo("Ditch-side stack"); // 1.0 % protein is asked about
        assertThat(report().laboratory()).isEqualTo("Tin Valley");
    }

    @Test
    void theFeedBookIsSearched() {
        assertThat(client.get(ranch + "reports/book?q=C158").body())
                .contains("1 row,", "Barley hay", "from memory, not re-read");
        assertThat(client.get(ranch + "reports/book?q=%3Cscript%3E").body())
                .contains("No row of the book")
                .doesNotContain("<script>");
        assertThat(client.get(ranch + "reports/book?class=mineral").body()).doesNotContain("Barley hay");
    }
}
