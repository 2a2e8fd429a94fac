package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.lab.LabReport;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reports brought to a new ranch from files and pasted, without scripts: looked over, named, and kept. */
class BringPagesTest {
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

    private RawClient.Answer send(String path, Map<String, String> fields) {
        return ranch.send(path.replaceAll("(?<=bring)/[a-z]+$|/forget$", ""), path, fields);
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
        assertThat(ranch.get("reports/bring").body()).contains("NS-9", "?afresh");
        var told = new LinkedHashMap<>(csv);
        told.put("basis", "dry_matter");
        var read = send("reports/bring", told).body();
        assertThat(read)
                .contains("1 sample understood. Nothing is kept yet.", "one line a sample, columns separated by commas")
                .contains("Column “Sparkle”: no analyte of this name is known", "&lt;b&gt;ADF&lt;/b&gt;")
                .doesNotContain("<b>ADF</b>");
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", "")).body())
                .contains("href=\"#f-lot-0\"");
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.status()).isEqualTo(200);
        assertThat(form.body()).contains("Type a report on Ditch-side stack", "value=\"NS-9\"", "value=\"10\"");
        assertThat(ranch.get("reports").body()).contains("Not tested");
        var saved = ranch.submit(
                form, this.form, Map.of("sampleCode", "NS-9", "dry-cp", "10", "one-dm", "90", "howSampled", "grab"));
        assertThat(saved.status()).isEqualTo(303);
        assertThat(report().sampleCode()).isEqualTo("NS-9");
    }

    /** With what the page carries of a draft, as a browser sends it. */
    private RawClient.Answer inWindow(RawClient.Answer page, String path, Map<String, String> fields) {
        var all = new LinkedHashMap<>(fields);
        var carried = Pattern.compile("<input type=\"hidden\" name=\"(draft|left)\" value=\"([^\"]*)\">")
                .matcher(page.body());
        while (carried.find()) {
            all.putIfAbsent(carried.group(1), carried.group(2));
        }
        return ranch.submit(page, path, all);
    }

    /** What the other one read stays, and can be opened beside it. */
    @Test
    void twoWindowsEachBringASheet() {
        var one = Map.of("text", "Sample,DM,CP\nNS-1,90,10\n", "decimal", "point", "basis", "dry_matter");
        var other = Map.of("text", "Sample,DM,CP\nNS-2,91,11\n", "decimal", "point", "basis", "dry_matter");
        var first = ranch.get("reports/bring");
        var second = ranch.get("reports/bring");
        var read = inWindow(first, "reports/bring", one);
        assertThat(read.body()).contains("NS-1");
        assertThat(inWindow(second, "reports/bring", other).body()).contains("NS-2");
        assertThat(ranch.get("reports/bring").body()).contains("NS-2").doesNotContain("NS-1");
        var left = ranch.store().drafts().waiting(ranch.id()).stream()
                .filter(key -> key.contains("?left="))
                .findFirst()
                .orElseThrow();
        var opened = ranch.get(left);
        assertThat(opened.body()).contains("NS-1").doesNotContain("NS-2");
        var form = inWindow(opened, "reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.body()).contains("value=\"NS-1\"");
        // the same window reads its sheet again: no second one is left
        var again = new LinkedHashMap<>(one);
        again.put("text", "Sample,DM,CP\nNS-1,90,12\n");
        inWindow(opened, "reports/bring", again);
        assertThat(ranch.store().drafts().waiting(ranch.id()).stream().filter(key -> key.startsWith("reports/bring")))
                .hasSize(2);
    }

    private static final String TWO = """
            Éclat Laboratory
            Sample: Ditch-side stack
            Analysis          As received   Dry matter
            Dry matter            88.0         100.0
            Protéine brute         9.0          10.2
            Calcium               <0.01        <0.01
            Starch                              ND
            Nitrate NO3           0.05         0.06
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
                        "no analyte of this name is known (did you mean protein, crude?): Protéine brute")
                .contains("Matched: it is the lot’s name.", "No lot here goes by this name or code.")
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
        assertThat(send("reports/bring", told).body())
                .doesNotContain("no analyte of this name is known (did you mean protein, crude?): Protéine");
        assertThat(ranch.get("reports/names").body()).contains("Nothing is remembered yet");

        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.body())
                .contains(
                        "value=\"10.2\"",
                        "value=\"&lt;0.01\"",
                        "value=\"ND\"",
                        "name=\"from\" value=\"reports/bring\"");
        assertThat(ranch.get("reports/names").body()).contains("Nothing is remembered yet");
        var sheet = new LinkedHashMap<>(
                Map.of("from", "reports/bring", "laboratory", "Éclat Laboratory", "sampleCode", "Ditch-side stack"));
        sheet.putAll(Map.of("one-dm", "88", "dry-cp", "10.2", "howSampled", "grab"));
        // somebody left figures out in the form; that it came out of this file tells that it is the same report
        sheet.putAll(hidden(form));
        assertThat(ranch.submit(form, this.form, sheet).header("Location")).contains("reports/bring");
        assertThat(ranch.get("reports/names").body()).contains("éclat laboratory", "is Crude protein (CP), in %");
        assertThat(ranch.get("reports/bring").body()).contains("1 still to be kept", "Kept, on <a");

        // another ranch's sheet of the same laboratory
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring(TWO.replace("10.2", "11.1"))).body())
                .doesNotContain("no analyte of this name is known (did you mean protein, crude?): Protéine");
        assertThat(send("reports/names/forget", Map.of("laboratory", "éclat laboratory"))
                        .status())
                .isEqualTo(303);
        assertThat(send("reports/bring", bring(TWO)).body())
                .contains("no analyte of this name is known (did you mean protein, crude?): Protéine");
    }

    /** What the form of a report carries from the sheet that it came from. */
    private static Map<String, String> hidden(RawClient.Answer form) {
        var carried = new LinkedHashMap<String, String>();
        for (var name : List.of("original", "names-of")) {
            var field =
                    Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(form.body());
            if (field.find()) {
                carried.put(name, field.group(1));
            }
        }
        return carried;
    }

    /** Takes the first sample to its form and keeps it. */
    private void keep(String... more) {
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        var sheet = new LinkedHashMap<>(Map.of("sampleCode", "K-1", "dry-cp", "10", "howSampled", "grab"));
        sheet.putAll(hidden(form));
        for (int i = 0; i < more.length; i += 2) {
            sheet.put(more[i], more[i + 1]);
        }
        assertThat(ranch.submit(form, this.form, sheet).status()).isEqualTo(303);
    }

    /** Says of one name on a sheet of the Tin Valley laboratory that it is to be left out. */
    private String leaveOut(String text, String name) {
        var read = send("reports/bring", bring(text, "laboratory", "Tin Valley", "basis", "dry_matter"))
                .body();
        var number = read.replaceAll("(?s).*name=\"name-written-([0-9]+)\" value=\"" + name + "\".*", "$1");
        var told = bring(text, "laboratory", "Tin Valley", "basis", "dry_matter");
        told.putAll(Map.of("name-written-" + number, name, "name-analyte-" + number, "leave-out"));
        return send("reports/bring", told).body();
    }

    /** A name that the house knows is left out of the sheet it was said of, and of no other, kept or not. */
    @ParameterizedTest
    @CsvSource({"Protein, true", "Protein, false", "Crude protein, true", "TDN, true"})
    void aKnownNameIsLeftOutOfOneSheetAlone(String name, boolean isKept) {
        var sheet = "Sample: A\nADF 38 %%\n%s %s %%\n";
        assertThat(leaveOut(sheet.formatted(name, "9.8"), name)).contains("left out: " + name + " 9.8 %");
        if (isKept) {
            keep();
        }
        ranch.afresh("reports/bring");
        var next = bring(sheet.formatted(name, "11.4"), "laboratory", "Tin Valley", "basis", "dry_matter");
        assertThat(send("reports/bring", next).body())
                .doesNotContain("left out")
                .contains("2 figures understood");
    }

    /** An answer about a name that nobody knows is remembered with the report, shown on the next sheet, and taken back. */
    @Test
    void whatAnEarlierAnswerLeavesOutIsShownAndTakenByOneClick() {
        var sheet = "Sample: A\nADF 38 %%\nSparkle %s %%\n";
        leaveOut(sheet.formatted("4"), "Sparkle");
        assertThat(ranch.get("reports/names").body()).contains("Nothing is remembered yet");
        keep();
        assertThat(ranch.get("reports/names").body()).contains("“sparkle” is left out");
        ranch.afresh("reports/bring");
        var next = bring(sheet.formatted("5"), "laboratory", "Tin Valley", "basis", "dry_matter");
        var read = send("reports/bring", next).body();
        assertThat(read).contains("an earlier sheet", "left out: Sparkle 5 %", "name=\"take-name\" value=\"Sparkle\"");
        var number = read.replaceAll("(?s).*name=\"name-written-([0-9]+)\" value=\"Sparkle\".*", "$1");
        next.putAll(Map.of("name-written-" + number, "Sparkle", "name-analyte-" + number, "", "take-name", "Sparkle"));
        assertThat(send("reports/bring", next).body()).contains("no analyte of this name is known");
        keep("sampleCode", "K-2", "sameHay", "yes", "dry-cp", "10.1");
        assertThat(ranch.get("reports/names").body()).contains("Nothing is remembered yet");
    }

    @Test
    void whatRaisesNoQuestionIsKeptAtOnceAndTheRestStays() {
        ranch.weighedLot("Creek stack", "grass_hay");
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
                .contains("The lots of 2 of 3 samples");
        assertThat(send("reports/bring/all", Map.of()).body()).contains("href=\"#f-howSampled");
        assertThat(ranch.kept().reports()).isEmpty();
        var kept = send("reports/bring/all", Map.of("howSampled", "grab"));
        assertThat(ranch.after(kept).body()).contains("Reports added: 1", "2 still to be kept");
        assertThat(report().sampleCode()).isEqualTo("Ditch-side stack"); // 1.0 % protein is asked about
        assertThat(report().laboratory()).isEqualTo("Tin Valley");
    }

    @Test
    void whatItCameInIsKeptWithEachReportAndGoesWithIt() {
        var text = TWO.replace("N-77", "Creek stack");
        ranch.weighedLot("Creek stack", "grass_hay");
        assertThat(send("reports/bring", bring(text)).body()).contains("Pasted text is kept with each report");
        // a heading written over the columns by hand is no other report
        assertThat(send("reports/bring", bring(text + "\nBy hand")).body()).contains("Pasted text is kept");
        assertThat(send("reports/bring/all", Map.of("howSampled", "grab")).status())
                .isEqualTo(303);
        var kept = ranch.kept();
        assertThat(kept.attachments().values())
                .hasSameSizeAs(kept.reports().values())
                .allMatch(file -> kept.reports().containsKey(file.about()));
        var report = report();
        var original = ranch.get("reports/" + report.id() + "/original");
        assertThat(original.body())
                .contains("Acid detergent", "Creek stack", "Save the file itself", "&lt;0.01")
                .doesNotContain("By hand");
        var file = ranch.get("reports/" + report.id() + "/original/file");
        assertThat(file.body()).isEqualToNormalizingNewlines(text);
        assertThat(file.header("Content-Disposition")).startsWith("attachment");
        assertThat(send("reports/" + report.id() + "/delete", Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.get("reports/" + report.id() + "/original").status()).isEqualTo(404);
        assertThat(ranch.kept().attachments().values())
                .noneMatch(one -> one.about().equals(report.id()));
    }

    @Test
    void theSameReportBroughtInTwiceIsNotKeptAtOnce() {
        ranch.weighedLot("Creek stack", "grass_hay");
        var two = """
                Sample: Ditch-side stack
                Analysis          Dry matter
                Crude protein        10.2
                Sample: Creek stack
                Analysis          Dry matter
                Crude protein         9.7
                """;
        send("reports/bring", bring(two, "laboratory", "Tin Valley"));
        send("reports/bring/all", Map.of("howSampled", "grab"));
        assertThat(ranch.kept().reports()).hasSize(2);
        ranch.afresh("reports/bring");
        // under another laboratory's name it is no report that is known to be kept, yet the same figures
        send("reports/bring", bring(two, "laboratory", "Tin Valley Labs"));
        assertThat(send("reports/bring/all", Map.of("howSampled", "grab")).body())
                .contains("ach of them raises a question");
        assertThat(ranch.kept().reports()).hasSize(2);
    }

    @Test
    void theLotsOfManySamplesAreChosenTogetherAndKeptAtOnce() {
        var down = "Test,Units,901,902\nCP,% DM,9.1,10.4\nADF,% DM,38,36\n";
        send("reports/bring", bring(down, "laboratory", "Tin Valley"));
        var kept = send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot, "lot-1", ""));
        assertThat(kept.status()).isEqualTo(303);
        assertThat(ranch.kept().reports().values())
                .extracting(LabReport::sampleCode)
                .containsExactly("901");
    }

    private static final String YEARLY = """
            Tin Valley Laboratory
            Sample: Ditch-side stack
            Sampled: %s
            Analysis          Dry matter
            Crude protein        %s
            ADF                  38.0
            """;

    private String bringAndKeep(String sampled, String protein) {
        ranch.afresh("reports/bring");
        send("reports/bring", bring(YEARLY.formatted(sampled, protein)));
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        ranch.submit(
                form,
                this.form,
                Map.of(
                        "laboratory", "Tin Valley Laboratory",
                        "sampleCode", "Ditch-side stack",
                        "sampled", sampled,
                        "dry-cp", protein,
                        "dry-adf", "38.0",
                        "sameHay", "no",
                        "howSampled", "grab"));
        return form.body();
    }

    @Test
    void aSheetOfOneSampleWhoseLotIsKnownIsKeptInOneStep() {
        var sheet = """
                Sample: %s
                Analysis          As received   Dry matter
                Dry matter            88.0         100.0
                Crude protein          9.0          10.2
                """;
        assertThat(send("reports/bring", bring(sheet.formatted("Somebody else")))
                        .body())
                .contains("Choose its lot.", "reports/bring/all");
        assertThat(send("reports/bring", bring(sheet.formatted("Ditch-side stack")))
                        .body())
                .contains("reports/bring/all");
        assertThat(send("reports/bring/all", Map.of("howSampled", "plan")).status())
                .isEqualTo(303);
        assertThat(report().howSampled()).isEqualTo(LabReport.HowSampled.PLAN);
    }

    /** A sheet without day or code is told from the one kept before by its figures alone: other ones are never "kept". */
    @Test
    void otherFiguresWithoutADayAreNeverCalledKept() {
        var sheet = """
                Lab: Hill
                Sample: Ditch-side stack
                                 As received   Dry matter
                Dry matter, %%      90.0
                Crude protein, %%    %s
                """;
        send("reports/bring", bring(sheet.formatted(" 7.2    8.0")));
        assertThat(send("reports/bring/all", Map.of("howSampled", "plan")).status())
                .isEqualTo(303);
        assertThat(send("reports/bring", bring(sheet.formatted(" 9.9   11.0"))).body())
                .doesNotContain("Kept, on <a")
                .contains("name=\"replaces-0\"");
        assertThat(send("reports/bring", bring(sheet.formatted(" 7.2    8.0"))).body())
                .contains("Kept, on <a");
    }

    @Test
    void aSheetPastedBeforeItsLotWasAddedIsKeptOnThatLot() {
        var sheet = """
                Sample: Late stack
                Analysis          As received   Dry matter
                Dry matter            88.0         100.0
                Crude protein          9.0          10.2
                """;
        send("reports/bring", bring(sheet));
        var late = ranch.weighedLot("Late stack", "grass_hay");
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", late));
        var typed = Map.of("sampleCode", "Late stack", "dry-cp", "10.2", "one-dm", "88", "howSampled", "plan");
        assertThat(ranch.submit(form, "reports/new/" + late, typed).status()).isEqualTo(303);

        var two = sheet.replace("Late stack", "Later stack") + sheet.replace("Late stack", "Latest stack");
        send("reports/bring", bring(two));
        ranch.weighedLot("Later stack", "grass_hay");
        assertThat(send("reports/bring/all", Map.of("howSampled", "plan")).status())
                .isEqualTo(303);
        assertThat(ranch.kept().reports()).hasSize(2);
    }

    @Test
    void theSameCodeOnAnotherDayIsAnotherReport() {
        bringAndKeep("Sep 12, 2025", "10.2");
        assertThat(ranch.kept().reports()).hasSize(1);
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring(YEARLY.formatted("Sep 12, 2025", "10.2")))
                        .body())
                .contains("Kept, on <a");
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring(YEARLY.formatted("Sep 14, 2026", "8.1")))
                        .body())
                .doesNotContain("Kept, on <a")
                .doesNotContain("replaces-0");
        bringAndKeep("Sep 14, 2026", "8.1");
        assertThat(ranch.kept().reports()).hasSize(2);
    }

    /** Every figure agrees and only the day differs: a wrong date, as likely as another sample. */
    @Test
    void theSameFiguresOfAnotherDayAreAskedAbout() {
        bringAndKeep("Sep 12, 2026", "10.2");
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring(YEARLY.formatted("Sep 19, 2026", "10.2")))
                        .body())
                .doesNotContain("Kept, on <a")
                .contains("name=\"replaces-0\"");
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).status())
                .isEqualTo(422);
        typed("Sep 19, 2026", "10.2", Map.of());
        assertThat(ranch.kept().reports()).as("typed by hand it is asked too").hasSize(1);
    }

    @Test
    void whatWasAnsweredIsNotAskedAgainOnTheNextPage() {
        bringAndKeep("Sep 12, 2026", "10.2");
        ranch.afresh("reports/bring");
        send("reports/bring", bring(YEARLY.formatted("Sep 12, 2026", "11.4")));
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot, "replaces-0", "new"));
        var asked = Pattern.compile("name=\"asked\" value=\"([^\"]+)\"").matcher(form.body());
        assertThat(asked.find()).isTrue();
        typed("Sep 12, 2026", "11.4", Map.of("asked", asked.group(1)));
        assertThat(ranch.kept().reports()).hasSize(2);
    }

    private RawClient.Answer typed(String sampled, String protein, Map<String, String> more) {
        var fields = new LinkedHashMap<>(Map.of(
                "laboratory", "Tin Valley Laboratory",
                "sampleCode", "Ditch-side stack",
                "sampled", sampled,
                "dry-cp", protein,
                "dry-adf", "38.0",
                "howSampled", "grab"));
        fields.putAll(more);
        return ranch.send(form, fields);
    }

    /** Hay of another year is another lot, unless somebody says that it is still the same. */
    @Test
    void aReportOfLastYearIsAskedAboutAndCountsOnlyIfItIsTheSameHay() {
        typed("Sep 12, 2025", "8", Map.of());
        var alone = protein();
        assertThat(typed("Sep 14, 2026", "14", Map.of()).status()).isEqualTo(422);
        typed("Sep 14, 2026", "14", Map.of("sameHay", "no"));
        var page = ranch.get("reports/lot/" + lot).body();
        var newest = protein();
        assertThat(page).contains("Not counted:");
        assertThat(ranch.kept().reports()).hasSize(2);
        var latest = ranch.kept().reports().values().stream()
                .filter(r -> String.valueOf(r.sampled()).startsWith("2026"))
                .findFirst()
                .orElseThrow();
        ranch.send(
                "reports/" + latest.id(),
                Map.of(
                        "sampleCode", "Ditch-side stack",
                        "sampled", "Sep 14, 2026",
                        "dry-cp", "14",
                        "dry-adf", "38.0",
                        "sameHay", "yes",
                        "howSampled", "grab"));
        assertThat(ranch.get("reports/lot/" + lot).body()).doesNotContain("Not counted:");
        assertThat(protein()).as("both count").isGreaterThan(alone).isLessThan(newest);
    }

    @Test
    void whetherItIsTheSameHayIsAskedBeforeTheFirstSave() {
        typed("Sep 12, 2025", "8", Map.of());
        assertThat(broughtOn("Oct 2, 2025")).doesNotContain("name=\"sameHay\"");
        assertThat(broughtOn("Sep 14, 2026")).contains("name=\"sameHay\"");
    }

    private String broughtOn(String sampled) {
        ranch.afresh("reports/bring");
        send("reports/bring", bring(YEARLY.formatted(sampled, "14")));
        return send("reports/bring/take", Map.of("sample", "0", "lot", lot)).body();
    }

    private double protein() {
        var protein = Pattern.compile("CP ([0-9.]+) %")
                .matcher(ranch.get("reports/lot/" + lot).body());
        assertThat(protein.find()).isTrue();
        return Double.parseDouble(protein.group(1));
    }

    @Test
    void otherFiguresOfTheSameDayAreAskedAboutAndMayReplaceTheOnesThere() {
        bringAndKeep("Sep 12, 2026", "10.2");
        var id = report().id();
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring(YEARLY.formatted("Sep 12, 2026", "11.4")))
                        .body())
                .doesNotContain("Kept, on <a")
                .contains("name=\"replaces-0\"");
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).status())
                .isEqualTo(422);
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot, "replaces-0", "replace"));
        assertThat(form.status()).isEqualTo(200);
        var saved = ranch.submit(
                form,
                "reports/" + id,
                Map.of(
                        "laboratory", "Tin Valley Laboratory",
                        "sampleCode", "Ditch-side stack",
                        "sampled", "Sep 12, 2026",
                        "dry-cp", "11.4",
                        "dry-adf", "38.0",
                        "howSampled", "grab"));
        assertThat(saved.status()).isEqualTo(303);
        assertThat(ranch.kept().reports()).hasSize(1);
        assertThat(report().readings()).anyMatch(r -> r.value() == 11.4);
    }

    @Test
    void aDayThatCouldBeTwoIsAskedAboutUnlessTheSheetTells() {
        send("reports/bring", bring(YEARLY.formatted("8/9/26", "10.2")));
        assertThat(ranch.get("reports/bring").body()).containsOnlyOnce("id=\"f-days\"");
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).status())
                .isEqualTo(422);
        // answered where it is kept, and it holds where one is looked over after that
        assertThat(send("reports/bring/all", Map.of("howSampled", "", "days", "day_first"))
                        .status())
                .isEqualTo(422);
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).body())
                .contains("value=\"Sep 8, 2026\"");
        send("reports/bring", bring(YEARLY.formatted("8/9/26", "10.2"), "days", "month_first"));
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).body())
                .contains("value=\"Aug 9, 2026\"");
        ranch.afresh("reports/bring");
        send("reports/bring", bring(YEARLY.formatted("8/9/26", "10.2") + "Received 14/9/26\n"));
        assertThat(send("reports/bring/take", Map.of("sample", "0", "lot", lot)).body())
                .contains("value=\"Sep 8, 2026\"");
    }

    @Test
    void swappedColumnsNegativeFiguresAndFormulasComeToTheFormAndNoFurther() {
        var bad = Map.of(
                "Dry matter   88.0  100.0\nCrude protein   10.2   9.0", "Are the two columns swapped?",
                "Crude protein   -9.0   -10.2", "Are the two columns swapped?",
                "Crude protein   9.0   10.2\nADF   338   384", "One thing to fix");
        bad.keySet().forEach(lines -> {
            ranch.afresh("reports/bring");
            var text = "Sample: Ditch-side stack\nAnalysis   As received   Dry matter\n" + lines;
            assertThat(send("reports/bring", bring(text)).status()).isEqualTo(200);
            send("reports/bring/all", Map.of("howSampled", "grab"));
            assertThat(ranch.kept().reports()).as(lines).isEmpty();
        });
        ranch.afresh("reports/bring");
        send("reports/bring", bring("Sample,DM,CP DM,ADF DM\n=cmd|' /C calc'!A0,=88,=1+1,38\n"));
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(form.body()).contains("value=\"=1+1\"");
        var typed = Map.of("one-dm", "=88", "dry-cp", "=1+1", "howSampled", "grab");
        assertThat(ranch.submit(form, this.form, typed).status()).isEqualTo(422);
        assertThat(ranch.kept().reports()).isEmpty();
    }

    @Test
    void whatAColumnStandsForIsRememberedOfTheLaboratoryToo() {
        var csv = "Sample,DM,Roheiweiss,ADF % DM\nDitch-side stack,90,102,38\n";
        var read = send("reports/bring", bring(csv, "laboratory", "Tin Valley")).body();
        assertThat(read).contains("Column “Roheiweiss”: no analyte of this name is known");
        var number = read.replaceAll("(?s).*name=\"name-written-([0-9]+)\" value=\"Roheiweiss\".*", "$1");
        var field = "name-%s-" + number;
        var told = bring(csv, "laboratory", "Tin Valley", field.formatted("written"), "Roheiweiss");
        told.putAll(Map.of(field.formatted("analyte"), "cp", field.formatted("unit"), "gram_per_kg"));
        told.put(field.formatted("basis"), "dry_matter");
        assertThat(send("reports/bring", told).body()).containsPattern("102\\p{Z}g/kg");
        keep();
        ranch.afresh("reports/bring");
        var next = "Sample,DM,Roheiweiss,ADF % DM\nX-1,90,98,38\n";
        assertThat(send("reports/bring", bring(next, "laboratory", "Tin Valley"))
                        .body())
                .containsPattern("98\\p{Z}g/kg")
                .doesNotContain("no analyte of this name is known");
    }

    /** The second sheet comes while the page still shows what was answered of the first. */
    @Test
    void whatWasAnsweredOfOneSheetIsAskedAnewOfTheNext() {
        var told = bring("Sample: A\nCrude protein 9.8 %\n", "basis", "dry_matter", "laboratory", "Tin Valley");
        assertThat(send("reports/bring", told).body()).contains("1 sample understood");
        var next = new LinkedHashMap<>(told);
        next.put("text", "Sample: B\nCrude protein 11.2 %\nADF 37.0 %\n");
        assertThat(send("reports/bring", next).body())
                .contains("does not say whether these are as received")
                .doesNotContain("value=\"Tin Valley\"");
        next.put("basis", "as_received");
        assertThat(send("reports/bring", next).body()).contains("1 sample understood");
    }

    @Test
    void whereNoneIsKeptEachSampleSaysItsQuestionAndThePicksStay() {
        var down = "Test,Units,901,902\nCP,% DM,1.0,1.1\nADF,% DM,38,36\n";
        send("reports/bring", bring(down, "laboratory", "Tin Valley"));
        var answer = send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot, "lot-1", ""));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body())
                .containsPattern("id=\"q-lot-0\"[^\n]*901: ")
                .containsPattern("id=\"q-lot-1\"[^\n]*902: No lot was chosen")
                .containsPattern("(?s)name=\"lot-0\">\\s*<option value=\"\"></option>\\s*<option value=\"" + lot
                        + "\" selected");
    }

    @Test
    void aTestOfWaterIsSentToItsPage() {
        assertThat(send(
                                "reports/bring",
                                bring("Test,Unit,Well,Dugout\nConductivity,mS/cm,4.1,1.6\nE. coli,,Absent,Present\n"))
                        .body())
                .contains("Stock water");
        // pH alone would be that of silage
        assertThat(send("reports/bring", bring("pH      8.1\nTotal dissolved solids (180 C)    2,940   mg/L\n"))
                        .body())
                .contains("Stock water")
                .doesNotContain("reports/bring/take");
    }

    /** Two columns that nobody knows have an answer each, and the page says where it is given. */
    /** Of whichever units and names: a test of water is typed on its own page, and nothing of it is taken as feed. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Water analysis\nSample: Stock dam\nNitrate-N 12 ppm\nSodium 210 ppm\nCalcium 90 ppm\npH 8.1\n",
                "Sample type: livestock water\nResults, as received\nSulfate   820\nCalcium   90 ppm\nMagnesium   44 ppm\n",
                "Sample,Matrix,Calcium ppm,Sodium ppm,Nitrate-N ppm,Hardness\nDam,Water,90,210,12,310\n"
            })
    void aTestOfWaterIsSentToItsPageInAnyUnit(String sheet) {
        assertThat(send("reports/bring", bring(sheet)).body()).contains("it looks like a test of water");
    }

    /** Where a page comes back with a question, what was picked on it stays picked. */
    @Test
    void howItWasSampledStaysWhereAQuestionComesBack() {
        var two = "Sample,DM,CP % DM,ADF % DM\nN-1,90,98,38\nN-2,90,99,36\n";
        send("reports/bring", bring(two));
        var back = send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot, "lot-1", lot));
        assertThat(back.status()).isEqualTo(422);
        assertThat(back.body())
                .containsPattern("value=\"grab\"[^>]*checked|checked[^>]*value=\"grab\"")
                .contains("value=\"" + lot + "\" selected");
    }

    @Test
    void whatAColumnHoldsIsAskedColumnByColumn() {
        var sheet = """
                Merkmal;Frisch;Trocken;Einheit
                Calcium;0,38;0,42;%
                Magnesium;0,13;0,14;%
                NDF;54,2;59,9;%
                """;
        var asked = send("reports/bring", bring(sheet, "decimal", "sheet")).body();
        assertThat(asked)
                .contains("href=\"#columns\"", "id=\"f-name-column-is-0\"", "id=\"f-name-column-is-1\"")
                .contains("0 samples understood");
        var told = send(
                        "reports/bring",
                        bring(
                                sheet,
                                "decimal",
                                "sheet",
                                "name-column-written-0",
                                "Frisch",
                                "name-column-is-0",
                                "as_received",
                                "name-column-written-1",
                                "Trocken",
                                "name-column-is-1",
                                "dry_matter"))
                .body();
        assertThat(told).contains("1 sample understood").doesNotContain("href=\"#columns\"");
        assertThat(told).contains("54.2 %").contains("59.9 %");
    }

    /** The basis is asked after a name was explained, and the answer to the name stays on the page. */
    @Test
    void whatWasSaidOfANameStaysWhereTheBasisIsAskedNext() {
        var sheet = "Sample,DM %,Xylum g/kg,Brum mg/kg\nNS-9,90,0.9,21\n";
        var told = bring(
                sheet, "name-written-0", "Xylum g/kg", "name-analyte-0", "na", "name-unit-0", "", "name-basis-0", "");
        var asked = send("reports/bring", told);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body())
                .contains("name=\"name-written-0\" value=\"xylum g/kg\"")
                .contains("value=\"na\" selected");
        told.put("basis", "dry_matter");
        assertThat(send("reports/bring", told).body()).containsPattern("0\\.9[  ]g/kg");
    }

    /** Two reports without code and laboratory have nothing in common. */
    @Test
    void nothingIsNoCode() {
        var sheet = "Analysis          Dry matter\nCrude protein        %s\nADF                  38.0\n";
        ranch.weighedLot("Creek stack", "grass_hay");
        send("reports/bring", bring(sheet.formatted("10.2")));
        send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot));
        var form = send("reports/bring/take", Map.of("sample", "0", "lot", lot));
        ranch.submit(form, this.form, Map.of("dry-cp", "10.2", "dry-adf", "38.0", "howSampled", "grab"));
        assertThat(ranch.kept().reports()).hasSize(1);
        ranch.afresh("reports/bring");
        assertThat(send("reports/bring", bring("Somewhere else\n" + sheet.formatted("7.7")))
                        .body())
                .contains("No lot here goes by this name or code.")
                .doesNotContain("under this code");
    }

    /** A report in which single figures have a method of their own is the same one when it is looked at again. */
    @Test
    void aKeptReportWithTwoMethodsIsKnownAgain() {
        var sheet = """
                Lab;Bench 2
                Sample;S2
                Sample id;ZZ-2
                Date;2026-02-24

                Parameter;Unit;In fresh;In dry matter;Method
                Dry matter;g/kg;882;;NIR
                Crude protein;g/kg DM;;112;NIR
                NDF;g/kg DM;;588;wet chem 21
                """;
        send("reports/bring", bring(sheet));
        assertThat(send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.kept().reports()).hasSize(1);
        assertThat(ranch.get("reports/bring").body())
                .contains("all of them kept")
                .doesNotContain("replaces-0");
    }

    /** What is said of the unit counts although the name itself was understood, and stays on the page. */
    @Test
    void aUnitSaidBesideAnUnderstoodNameCounts() {
        var sheet = "Results on dry matter\nCrude protein 9.8 %\nNEm 0.55\nCalcium 118 widgets\n";
        assertThat(send("reports/bring", bring(sheet)).body()).contains("0.55, unit not said");
        var said = new LinkedHashMap<>(bring(sheet));
        said.putAll(Map.of("name-written-1", "NEm", "name-analyte-1", "", "name-unit-1", "mcal_per_lb"));
        said.putAll(Map.of("name-written-2", "Calcium", "name-unit-2", "ppm", "name-basis-2", ""));
        assertThat(send("reports/bring", said).body())
                .contains("0.55 Mcal/lb", "118 ppm")
                .doesNotContain("unit not said")
                .containsPattern("value=\"mcal_per_lb\" selected");
    }

    /** Of two samples one is kept; the other says at once why it is not, and keeps the lot that was chosen. */
    @Test
    void whatIsLeftSaysWhyAndKeepsItsLot() {
        var down = "Test,Units,901,902\nCP,% DM,9.1,1.0\nADF,% DM,38,36\n";
        send("reports/bring", bring(down, "laboratory", "Tin Valley"));
        var other = ranch.weighedLot("Creek stack", "grass_hay");
        var kept = send("reports/bring/all", Map.of("howSampled", "grab", "lot-0", lot, "lot-1", other));
        assertThat(kept.status()).isEqualTo(303);
        assertThat(ranch.kept().reports()).hasSize(1);
        assertThat(ranch.after(kept).body())
                .contains("id=\"q-lot-1\"")
                .containsPattern("value=\"" + other + "\" selected");
        // another lot chosen afterwards counts
        assertThat(send("reports/bring/all", Map.of("howSampled", "grab", "lot-1", lot))
                        .body())
                .containsPattern("(?s)id=\"a-lot-1\".*value=\"" + lot + "\" selected");
    }

    /** Two windows: what one shows is never kept out of what the other brought in since. */
    @Test
    void aFormOfAnotherSheetThanTheOneThatLiesHereKeepsNothing() {
        var straw = "Lab Two\nSample: Wheat straw\nOn dry matter\nDry matter 90.0 %\nCrude protein 3.9 %\n";
        var hay = "Lab One\nSample: Draw hay\nOn dry matter\nDry matter 88.0 %\nCrude protein 9.4 %\n";
        send("reports/bring", bring(hay));
        var first = ranch.get("reports/bring");
        ranch.afresh("reports/bring");
        send("reports/bring", bring(straw));
        var kept = ranch.submit(first, "reports/bring/all", Map.of("lot-0", lot, "howSampled", "grab"));
        assertThat(kept.status()).isEqualTo(409);
        assertThat(kept.body()).contains("was of another sheet", "Wheat straw");
        var looked = ranch.submit(first, "reports/bring/take", Map.of("sample", "0", "lot", lot));
        assertThat(looked.status()).isEqualTo(409);
        assertThat(looked.body()).doesNotContain("value=\"3.9\"");
        assertThat(ranch.kept().reports()).isEmpty();
        // the page that was shown goes on with the sheet that lies there
        var own = ranch.submit(kept, "reports/bring/all", Map.of("lot-0", lot, "howSampled", "grab"));
        assertThat(own.status()).isEqualTo(303);
        assertThat(report().sampleCode()).isEqualTo("Wheat straw");
    }
}
