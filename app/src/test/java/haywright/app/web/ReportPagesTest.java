package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.NotMeasured.Why;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A report typed on a new ranch, without scripts: erring, confirming, changing, and two reports. */
class ReportPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String lot;
    private String form;

    @BeforeEach
    void start() {
        lot = ranch.weighedLot("Ditch-side stack", "grass_hay");
        form = "reports/new/" + lot;
    }

    private LabReport report() {
        return ranch.kept().reports().values().iterator().next();
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
        var saved = ranch.send(form, sheet());
        assertThat(saved.status()).isEqualTo(303);
        var page = ranch.after(saved).body();
        assertThat(page)
                .contains(
                        "CP 10.0 %",
                        "How far to trust these ranges", "report of Oct 14, 2026, Tin Valley", "before any report")
                .contains("Report added: Ditch-side stack", "Called safe by every source");
        var readings = report().readings();
        assertThat(readings).hasSize(7);
        assertThat(readings.stream().filter(r -> r.unit() == Unit.MCAL_PER_LB))
                .singleElement()
                .satisfies(r -> assertThat(r.value()).isEqualTo(0.55));
        assertThat(ranch.get("reports/" + report().id()).body())
                .contains("name=\"left-cp\"", "value=\"9\"", "value=\"0.55\"", "value=\"mcal_per_lb\" selected");
    }

    /** The three forms by their molar masses: N 14.007, NO3 62.005, KNO3 101.10 g per mol. */
    @Test
    void nitrateIsShownInItsThreeFormsAndByEverySource() {
        var page = ranch.after(ranch.send(form, sheetBut("dry-no3n", "2100"))).body();
        assertThat(page).contains("2,100 ppm NO3-N", "9,296 ppm NO3 (0.93 %)", "15,157 ppm KNO3 (1.52 %)");
        assertThat(page).contains("The strictest source says: do not feed as it is");
        assertThat(page.indexOf("Manitoba")).isPositive().isLessThan(page.indexOf("Clemson"));
        assertThat(page.indexOf("Clemson")).isLessThan(page.indexOf("Nebraska"));
        assertThat(ranch.get("reports").body()).contains("state danger");
    }

    @ParameterizedTest(name = "{0} “{1}” is refused: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "howSampled | '' | nothing entered",
                "reported | Oct 1, 2026 | a report is not older than its sample",
                "reported | Feb 30, 2026 | there is no such day",
                "one-dm | 0 | dry matter is above 0",
                "one-dm | '' | cannot be carried to dry matter",
                "one-dm | 60 | as received at 60 % dry matter",
                "dry-cp | 400 | it is from 0 to 100 %",
                "dry-cp | NaN | this is not a number",
                "dry-cp | 12,5 | the comma can mean two things",
                "dry-cp | 8 | as received is never the higher",
                "dry-adf | 60 | cannot be above Neutral detergent fiber",
                "dry-adf | 38 Mcal | is not a unit of what is asked here",
                "dry-nem | 62 | Is the unit Mcal/cwt?",
                "unit-nem | '' | Which unit does the sheet print?",
                "unit-no3n | acre | it is not measured in this unit",
                "dry-ca | =1+1 | this is not a number",
                "dry-ca | < | this is not a number",
                "dry-ca | <0 | a limit of detection is above zero",
                "dry-ca | <-0.01 | this is not a number",
                "dry-no3n | <9000000 | it is from",
                "method | guess | not one of the choices"
            })
    void badInputIsNamedBesideItsFieldAndNothingTypedIsLost(String field, String value, String words) {
        var refused = ranch.send(form, sheetBut(field, value, "unit-ca", "percent"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .containsIgnoringCase(words)
                .contains("<title>Error: ", "<b>Error:</b>", "value=\"NS-1\"");
        assertThat(ranch.get(form).body()).contains("You left this unfinished", "value=\"NS-1\"");
        assertThat(ranch.get("reports").body()).contains("Not tested");
    }

    @Test
    void aSlipOfThePointIsAskedAboutOnceAndRecordedWhenItIsRight() {
        var odd = sheetBut("left-cp", "0.9", "dry-cp", "1");
        var asked = ranch.send(form, odd);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Is this right?", "a tenth of what grass hay usually has", "Is it 10 %?");
        odd.put("confirm", "slip-cp");
        var saved = ranch.send(form, odd);
        assertThat(saved.status()).isEqualTo(303);
        assertThat(report().confirmed()).containsExactly("slip-cp");
        assertThat(ranch.after(saved).body()).contains("1 unusual figure confirmed as right");

        odd.remove("confirm");
        odd.put("sampleCode", "NS-2");
        assertThat(ranch.send("reports/" + report().id(), odd).status()).isEqualTo(303);
        assertThat(report().confirmed()).containsExactly("slip-cp");
        odd.put("dry-cp", "0.95");
        odd.put("left-cp", "");
        assertThat(ranch.send("reports/" + report().id(), odd).body()).contains("Is this right?");
    }

    @Test
    void aTypedUnitIsUnderstoodAndKept() {
        assertThat(ranch.send(form, sheetBut("left-cp", "", "dry-cp", "100 g/kg"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get("reports/lot/" + lot).body()).contains("CP 10.0 %");
        assertThat(ranch.get("reports/" + report().id()).body()).contains("value=\"100 g/kg\"");
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
        var saved = ranch.send(form, typed);
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
        var page = ranch.after(saved).body();
        assertThat(page)
                .contains("50 ppm", "clears nothing: it takes chemistry", "less than 50 ppm on dry matter")
                .contains("less than 0.01 ppm as received (as fed, as is). That is a bound and no figure")
                .contains("by near infrared (NIR)");
        assertThat(ranch.get("reports/" + report.id()).body())
                .contains("value=\"&lt;50\"", "value=\"&lt;0.01\"", "value=\"ND\"", "value=\"not tested\"")
                .contains("value=\"ND (&lt;5)\"", "value=\"nir\" selected");
        var again = new LinkedHashMap<>(typed);
        again.put("left-ca", "<0.02 ppm");
        assertThat(ranch.send("reports/" + report.id(), again).status()).isEqualTo(303);
        assertThat(report().notMeasured())
                .hasSize(5)
                .contains(new NotMeasured(Analyte.CA, Why.LESS_THAN, 0.02, Unit.PPM, Basis.AS_RECEIVED));
    }

    @Test
    void aSheetCanNameAMethodForSingleFigures() {
        var typed = sheetBut("dry-no3n", "50", "dry-s", "<0.1", "unit-s", "percent", "method", "nir");
        typed.put("wetFigures", "minerals, NO3N");
        assertThat(ranch.send(form, typed).status()).isEqualTo(303);
        var report = report();
        assertThat(report.method()).isEqualTo(Tested.Method.NIR);
        assertThat(report.readings())
                .allSatisfy(r -> assertThat(r.method())
                        .isEqualTo(
                                r.analyte().isMeasured()
                                                && (r.analyte() == Analyte.NO3N
                                                        || r.analyte() == Analyte.CA
                                                        || r.analyte() == Analyte.P)
                                        ? Tested.Method.WET
                                        : null));
        assertThat(report.notMeasured())
                .singleElement()
                .satisfies(none -> assertThat(none.method()).isEqualTo(Tested.Method.WET));
        var path = "reports/" + report.id();
        assertThat(ranch.get(path).body()).contains("NO3N").contains("wetFigures");
        var both = new LinkedHashMap<>(typed);
        both.put("nirFigures", "CP, no3n");
        assertThat(ranch.send(path, both).status()).isEqualTo(422);
        var unknown = new LinkedHashMap<>(typed);
        unknown.put("nirFigures", "leaves");
        assertThat(ranch.send(path, unknown).status()).isEqualTo(422);
        for (var much : List.of("x".repeat(500_000), "Ca, ".repeat(100_000), "leaves, ".repeat(100_000))) {
            unknown.put("nirFigures", much);
            assertThat(ranch.send(path, unknown).status()).isEqualTo(422);
        }
        assertThat(report().readings()).isEqualTo(report.readings());
    }

    /** As printed, book and used are three columns; a figure named by its method says so. */
    @Test
    void whatIsPrintedStandsBesideTheBookAndWhatIsUsed() {
        var typed = sheetBut("dry-s", "<0.1", "unit-s", "percent", "method", "nir", "wetFigures", "S, ADF");
        var page = ranch.after(ranch.send(form, typed)).body();
        assertThat(page)
                .contains("data-is=\"printed\"", "data-is=\"book, before any report\"", "data-is=\"used\"")
                .contains("10 %, NIR", "38 %, wet chemistry", "58 %, NIR");
    }

    /**
     * $150 a ton as fed at 90 % dry matter is $166.67 a ton of it; Ca 0.5 and P 0.2 % are 2.5 to 1. The rest of the
     * arithmetic is that of NutrientPrice and MineralBalance, which have tests of their own.
     */
    @Test
    void costsAndRatiosAreNumbersAndLotsStandSideBySide() {
        ranch.send(form, sheet());
        var page = ranch.get("reports/lot/" + lot).body();
        assertThat(page).contains("A ton of dry matter", "A pound of protein", "Tetany ratio", " to 1</b>");
        var other = ranch.weighedLot("Oat stack", "cereal_hay");
        var beside = ranch.get("reports/beside").body();
        assertThat(beside).contains("Oat stack</a>", "Ditch-side stack</a>", "Ca:P", "A ton of dry matter");
        var one = ranch.get("reports/beside?lot=" + other).body();
        assertThat(one).contains("Oat stack</a>").doesNotContain("Ditch-side stack</a>");
        assertThat(ranch.get("reports/beside?lot=nonsense").status()).isEqualTo(200);
    }

    /** Its lines are a hundred times the figure: each figure has them on a page of its own, and a source is said once. */
    @Test
    void everyFigureOpensToItsWorkOnAPageOfItsOwn() {
        ranch.send(form, sheet());
        var page = ranch.get("reports/lot/" + lot).body();
        assertThat(page).doesNotContain("cp_report_1").contains("/reports/lot/" + lot + "/figure/cp\"");
        var figure = ranch.get("reports/lot/" + lot + "/figure/cp").body();
        assertThat(figure).contains("cp_report_1 = 10 %", "class=\"lines\"");
        var cites =
                Pattern.compile("<cite>(.*?)</cite>").matcher(figure).results().map(found -> found.group(1));
        assertThat(cites.toList()).isNotEmpty().doesNotHaveDuplicates();
        assertThat(ranch.get("reports/lot/" + lot + "/figure/nothing").status()).isEqualTo(404);
    }

    @Test
    void ofTwoReportsBothCountAsFarAsTheyCanBeTrusted() {
        ranch.send(form, sheet());
        var newer = new LinkedHashMap<String, String>();
        newer.put("laboratory", "Second opinion");
        newer.put("reported", "Nov 3, 2026");
        newer.put("howSampled", "grab");
        newer.put("dry-cp", "8");
        var page = ranch.after(ranch.send(form, newer)).body();
        assertThat(page)
                .contains("report of Nov 3, 2026, Second opinion says 8 %; weighed with 1 more and its kind")
                .contains("report of Oct 14, 2026, Tin Valley", "Of two figures for the same thing both count");
        // A cored composite of Oct 14 says 10.0, a grab of one place 8: the lot lies between, nearer the composite.
        var protein = Pattern.compile("CP ([0-9.]+) %").matcher(page);
        assertThat(protein.find()).isTrue();
        assertThat(Double.parseDouble(protein.group(1))).isBetween(9.0, 10.0);
        assertThat(ranch.get("reports").body()).contains("2 reports", "newest: Nov 3, 2026, Second opinion");
    }

    /** The list, the lot and the bench say one thing of nitrate that was looked for and not found. */
    @Test
    void nitrateThatWasNotDetectedIsTestedEverywhere() {
        ranch.send(form, sheetBut("dry-no3n", "ND", "unit-no3n", ""));
        assertThat(report().notMeasured()).hasSize(1);
        assertThat(ranch.get("reports").body())
                .contains("nitrate less than 100")
                .doesNotContain("Nitrate not known");
        assertThat(ranch.get("reports/lot/" + lot).body())
                .contains("Nitrate was not detected", "less than 100")
                .doesNotContain("Nitrate not known");
    }

    @Test
    void aReportTakenAwayCanBeTakenBack() {
        ranch.send(form, sheet());
        var path = "reports/" + report().id() + "/delete";
        assertThat(ranch.get(path).body()).contains("Oct 14, 2026, on Ditch-side stack");
        var gone = ranch.send(path, Map.of());
        assertThat(ranch.after(gone).body()).contains("Not tested:");
        var rev = gone.header("Location").replaceAll(".*saved=", "");
        assertThat(ranch.submit(ranch.get("history"), "undo/" + rev, Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.get("reports/lot/" + lot).body()).contains("CP 10.0 %");
    }

    @Test
    void ninetyPercentIsABasisOfItsOwn() {
        ranch.send(form, sheetBut("ninety", "yes", "left-adf", "36", "dry-adf", "", "left-cp", "9"));
        var page = ranch.get("reports/lot/" + lot).body();
        assertThat(page).contains("says 40 %; moved"); // 36 / 0.90
        assertThat(ranch.get("reports/" + report().id()).body()).contains("At 90 %");
    }

    @Test
    void aReportFarFromItsKindAsksWhetherFeedColumnOrLotIsWrong() {
        var page = ranch.after(ranch.send(form, sheetBut("left-cp", "", "dry-cp", "27", "confirm", "cp")))
                .body();
        assertThat(page)
                .contains("Does this report belong here?")
                .contains("27 %", "Is it another feed, the other column of the report, or the bag of another lot?");
    }

    @Test
    void anUntestedLotShowsHowWideItIs() {
        var page = ranch.get("reports/lot/" + lot).body();
        assertThat(page)
                .contains("Not tested:", "How far to trust these ranges", "data-is=\"used\"")
                .doesNotContain("data-is=\"printed\"")
                .doesNotContain("Does this report belong here?")
                .doesNotContain("not judged");
        assertThat(ranch.get("reports").body()).contains("protein likely");
    }

    @Test
    void whatElseCanBeWrongStandsWithItsSourcesTheStricterFirst() {
        var sheet = sheetBut("dry-aflatoxin", "150", "dry-adicp", "1.6", "confirm", "C34-adicp");
        var sent = ranch.send(form, sheet);
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        var page = ranch.after(sent).body();
        assertThat(page).contains("Aflatoxin: 150 ppb", "Protein bound by heat: 16 % of the protein");
        assertThat(page.indexOf("For breeding cattle: above the action level"))
                .isPositive()
                .isLessThan(page.indexOf("For finishing beef cattle: under the action level"));
        // 16 % bound: rule B leaves 10 − 1.6 + 1 = 9.4, rule A 10·(100 − 9)/100 = 9.1.
        assertThat(page.indexOf("Rule A leaves")).isPositive().isLessThan(page.indexOf("Rule B leaves"));
    }

    /** Its kind usually has less sulfur and more magnesium, and the lot is taken for something between. */
    @Test
    void aDangerGoesByWhatWasFoundAndNotByWhatIsUsual() {
        var sent = ranch.send(
                form, sheetBut("dry-s", "0.31", "unit-s", "percent", "dry-mg", "0.12", "unit-mg", "percent"));
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        assertThat(ranch.get("reports/lot/" + lot).body())
                .contains(
                        "Sulfur 0.31 %, above 0.3 %", "Magnesium 0.12 %, below 0.20 %", "needs a veterinarian at once");
    }

    @Test
    void theListOfLotsNamesEveryDangerAndWhatIsToBeWatched() {
        var sent = ranch.send(form, sheetBut("dry-aflatoxin", "350", "dry-adicp", "1.6", "confirm", "C34-adicp"));
        assertThat(sent.status()).as(sent.body()).isEqualTo(303);
        assertThat(ranch.get("reports").body())
                .contains("<span class=\"state danger\">Aflatoxin: 350 ppb</span>")
                .contains("also to watch: Protein bound by heat: 16 % of the protein");
    }

    @Test
    void theRanchsOwnBookGrowsFromItsReportsBesideThePublishedRows() {
        var before = ranch.get("reports/book").body();
        assertThat(before)
                .contains("It grows from this ranch’s own reports", "What each feed costs", "A lb of protein");
        ranch.send(form, sheet());
        var after = ranch.get("reports/book").body();
        assertThat(after).contains("1 lot, the last report of Oct 14, 2026", "10.0 (one lot)");
        assertThat(ranch.get("lots/new/bales").body()).contains("Look in the feed book");
    }

    @Test
    void waterIsPutInJudgedChangedAndTakenAway() {
        var form = "reports/water/new";
        assertThat(ranch.get("reports").body()).contains("Stock water");
        var wrong = ranch.send(form, Map.of("name", "", "solids", "900", "sulfate", "a lot"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.body()).contains("Nothing entered", "value=\"a lot\"");
        var swapped = ranch.send(form, Map.of("name", "Dugout", "solids", "900", "sulfate", "2400"));
        assertThat(swapped.body()).contains("sulfate is part of the dissolved solids");
        var kept = ranch.send(
                form,
                Map.of("name", "Dugout", "solids", "3600", "sulfate", "2400", "nitrate", "10", "asNitrogen", "yes"));
        assertThat(kept.status()).isEqualTo(303);
        var page = ranch.get("reports/water").body();
        assertThat(page)
                .contains("Dugout", "Sulfate: 2,400 mg/L", "polio", "Ask your veterinarian before cattle drink here")
                .contains("Nitrate as NO3: 44 mg/L");
        var id = page.replaceAll("(?s).*reports/water/([0-9a-f-]{36})\".*", "$1");
        assertThat(ranch.get("reports/water/" + id).body()).contains("value=\"2,400\"", "checked");
        assertThat(ranch.send("reports/water/" + id + "/delete", Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.get("reports/water").body()).doesNotContain("Dugout", id);
        assertThat(ranch.kept().waters()).isEmpty();
    }

    /** 402 mg/L of sulfur in sulfate is 1,204 of sulfate (SO4 96.06, S 32.06); a limit is no figure, and the box says so. */
    @Test
    void waterIsReadAsLaboratoriesPrintIt() {
        var form = "reports/water/new";
        var limit = ranch.send(form, Map.of("name", "Tank", "nitrate", "<0.2"));
        assertThat(limit.status()).isEqualTo(422);
        assertThat(limit.body()).contains("value=\"&lt;0.2\"", "Type 0.2").doesNotContain("not a number");
        var kept = ranch.send(
                form,
                Map.of(
                        "name",
                        "Tank",
                        "solids",
                        "2.41 g/L",
                        "conductivity",
                        "3.25 mmhos/cm",
                        "sulfate",
                        "402",
                        "asSulfur",
                        "yes"));
        assertThat(kept.status()).isEqualTo(303);
        assertThat(ranch.get("reports/water").body()).contains("Sulfate: 1,204 mg/L", "2,410 mg/L");
    }

    @Test
    void untestedFeedThatCanHoldNitrateIsADanger() {
        var oats = ranch.weighedLot("Oat stack", "cereal_hay");
        assertThat(ranch.get("reports").body()).contains("Nitrate not known: it stays out of every ration");
        assertThat(ranch.get("reports/lot/" + oats).body()).contains("<b>Nitrate not known.</b>");
    }

    @Test
    void theFeedBookIsSearched() {
        assertThat(ranch.get("reports/book?q=C158").body())
                .contains("Barley hay", "from memory, not re-read")
                .doesNotContain("Barley straw");
        assertThat(ranch.get("reports/book?q=%3Cscript%3E").body())
                .doesNotContain("Barley hay")
                .doesNotContain("<script>");
        // CP of the five rows of barley: 12.8, 12, 12.5, 12.4 and 12; TDN of those that print it: 82.7 to 84.1
        assertThat(ranch.get("reports/book?q=barley+grain").body())
                .containsOnlyOnce("scope=\"rowgroup\"")
                .contains("12.0 to 12.8", "82.7 to 84.1", "5 sources");
        assertThat(ranch.get("reports/book?class=mineral").body()).doesNotContain("Barley hay");
        assertThat(ranch.get("reports/book").body())
                .contains("reports/book?class=cereal_hay\">cereal hay</a>")
                .doesNotContain("Barley hay");
    }
}
