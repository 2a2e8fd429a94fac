package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Standing;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a sheet takes back is never kept: a void row, a rejected figure, a report that another one has replaced. What a
 * rule of the house says of samples at large takes nothing back.
 */
class TakenBackTest {
    private static String kept(Understood found) {
        return WhoseFiguresTest.figures(found);
    }

    private static String listed(Understood found) {
        return String.join("\n", found.notTaken());
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "void",
                "VOID - sample mixed up",
                "do not use, sample mixed up",
                "Rejected",
                "cancelled",
                "Canceled by client",
                "not valid",
                "Withdrawn 9/12",
                "sample switched in the mail",
                "QC failed",
                "superseded",
                "preliminary"
            })
    void aRowThatIsTakenBackIsListed(String words) {
        for (var heading : List.of("Remark", "Status", "Lab comment", "QQ")) {
            for (var sign : List.of("\t", ";", " | ")) {
                var sheet = """
                        Lot~DM %~CP % DM~NDF % DM~@
                        NORTH MEADOW~88.4~9.5~61.7~ok
                        SCHOOL SECTION~90.2~6.1~65.5~#
                        """.replace("@", heading).replace("#", words).replace("~", sign);
                var found = NothingIsLostTest.read(sheet);
                assertThat(kept(found)).as(sheet).isEqualTo("NORTH MEADOW: DM 88.4, CP dm 9.5, NDF dm 61.7");
                assertThat(listed(found)).contains("65.5", words);
            }
        }
    }

    @Test
    void voidAndFinalOfOneLotAreNotBothKept() {
        var found = NothingIsLostTest.read("""
                Sample,Field mark,DM,CP,Status
                ,,%,g/kg DM,
                T-202,SCHOOL SECTION,90.2,29,VOID - sample mixed up
                T-202R,SCHOOL SECTION,90.6,71,final (rerun of T-202)
                """);
        assertThat(kept(found)).isEqualTo("T-202R: DM 90.6, CP dm 71");
    }

    @Test
    void aStatusAcrossTheTopOrInBlanksIsOfItsSampleAlone() {
        var across = """
                Test                     A-1        A-2        A-3
                Status                   final      VOID       final
                Dry matter, %            88.4       90.2       87.0
                Crude protein, % DM      9.5        6.1        8.8
                """;
        var csv = "Test;A-1;A-2;A-3\nStatus;final;VOID;final\nDry matter, %;88.4;90.2;87.0\n"
                + "Crude protein, % DM;9.5;6.1;8.8\n";
        var lines = """
                Lot               DM %     CP % DM   NDF % DM
                A-1               88.4     9.5       61.7
                A-2               90.2     6.1       65.5     rejected
                A-3               87.0     8.8       60.1
                """;
        for (var sheet : List.of(across, csv, lines)) {
            var found = NothingIsLostTest.read(sheet);
            assertThat(kept(found))
                    .as(sheet)
                    .contains("A-1: DM 88.4", "A-3: DM 87.0")
                    .doesNotContain("6.1", "90.2");
            assertThat(listed(found)).contains("6.1", "90.2");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Sodium 0.05 % VOID",
                "Sodium 0.05 %  rejected: blank contaminated",
                "Sodium 0.05 % - do not use",
                "Sodium (void) 0.05 %",
                "Sodium 0.05 % (invalid)",
                "Sodium, %    0.05    canceled"
            })
    void aFigureThatIsTakenBackIsListed(String line) {
        var found = NothingIsLostTest.read(
                "Sample: North\nOn dry matter.\nDry matter 88.4 %\n" + line + "\nCalcium 0.42 %\n");
        assertThat(kept(found)).as(line).isEqualTo("North: DM 88.4, CA dm 0.42");
        assertThat(listed(found)).contains("0.05");
    }

    @Test
    void aMarkThatTakesBackDoesSoInEveryLayout() {
        var text = """
                Sample: North
                Constituent        Dry     As is
                Crude protein      10.8    9.7
                Sodium             0.05(5) 0.05(5)
                (5) Rejected: blank contaminated. Do not use.
                """;
        var csv = "Sample,North\nTest,Result,Unit,Basis\nCrude protein,10.8,%,dry\nSodium*,0.05,%,dry\n* void\n";
        for (var sheet : List.of(text, csv)) {
            var found = NothingIsLostTest.read(sheet);
            assertThat(kept(found)).as(sheet).contains("CP dm 10.8").doesNotContain("NA ");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "THIS REPORT IS VOID. See report 8814.",
                "VOID",
                "*** CANCELLED ***",
                "This certificate has been withdrawn",
                "Do not use these results",
                "Superseded by report 8814",
                "Status: rejected",
                "Remarks: do not use, sample mixed up"
            })
    void aReportThatIsTakenBackIsRefusedInItsOwnWords(String title) {
        for (var sheet : List.of(
                "Dust Creek Lab\nSample: NORTH MEADOW\nAll results on dry matter basis.\nDry matter 88.4 %\n" + title
                        + "\nCrude protein 9.5 %\n",
                "Dust Creek Lab\n" + title
                        + "\nSample: NORTH MEADOW\nAll on dry matter.\nDry matter 88.4 %\nCrude protein 9.5 %\n",
                "Dust Creek Lab\nSample: NORTH MEADOW\nAll on dry matter.\n\nDry matter   88.4 %\nCrude protein   9.5 %\n\n"
                        + title + "\n")) {
            assertThatThrownBy(() -> NothingIsLostTest.read(sheet))
                    .as(sheet)
                    .isInstanceOfSatisfying(
                            Refused.class,
                            e -> assertThat(e.problems().get(0).toString())
                                    .contains(title.replaceAll("^\\W+|\\W+$", "")));
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "This report is void if altered or copied in part.",
                "Samples may be rejected without notice.",
                "Samples are discarded after 30 days.",
                "No sample was rejected.",
                "This report replaces report 8812, which was void.",
                "Please ignore the earlier report.",
                "Not valid unless signed.",
                "This report must not be used for advertising.",
                "This report is valid for the sample as it came.",
                "Feed for draft horses and bulls.",
                "Acids do not count towards the total of the dry matter."
            })
    void aRuleOrAWordOfAnotherReportTakesNothingBack(String line) {
        var found = NothingIsLostTest.read(
                "Dust Creek Lab\nSample: North\nAll on dry matter.\nDry matter 88.4 %\nCrude protein 9.5 %\n\n" + line
                        + "\n");
        assertThat(kept(found)).isEqualTo("North: DM 88.4, CP dm 9.5");
    }

    @Test
    void ofTwoSamplesOnlyTheOneThatIsNamedIsTakenBack() {
        for (var title : List.of("T-2 is void", "Void: bag T-2 was lost", "Sample T-2: do not use")) {
            var found = NothingIsLostTest.read(
                    "On dry matter.\nSample: T-1\nDry matter 88.4 %\nCrude protein 9.5 %\n\nSample: T-2\n"
                            + "Dry matter 90.2 %\nCrude protein 6.1 %\n\n" + title + "\n");
            assertThat(kept(found)).as(title).isEqualTo("T-1: DM 88.4, CP dm 9.5");
        }
    }

    @ParameterizedTest(name = "{0} over {1}")
    @CsvSource({
        "'Report 12, revision 1', 'Report 12, revision 0 (superseded)'",
        "'Report 12, revision 1', 'Report 12, revision 0'",
        "'Report no. 12 rev. 2', 'Report no. 12 rev. 1'",
        "'Revision 1', 'Revision 0'",
        "'Certificate 26-4 version 2', 'Certificate 26-4 version 1'",
        "'Corrected report', 'Original report'",
        "'Report 12 (amended)', 'Report 12'",
        "'Final report 12', 'Preliminary report 12'",
        "'Report 14', 'Report 12 - VOID'",
        "'Revised results', 'Results superseded by the above'"
    })
    void anEarlierReportFillsNoGapOfALaterOne(String later, String earlier) {
        var one = "Sample: NORTH MEADOW\nReported 18 Sep 2026\nOn dry matter\nCrude protein 9.5 %\n";
        var other = "Sample: NORTH MEADOW\nReported 11 Sep 2026\nOn dry matter\nCrude protein 8.1 %\nCalcium 0.40 %\n";
        for (var sheet : List.of(
                "Dust Creek Lab\n" + later + "\n" + one + earlier + "\n" + other,
                "Dust Creek Lab\n" + earlier + "\n" + other + "\n" + later + "\n" + one)) {
            var found = NothingIsLostTest.read(sheet);
            assertThat(kept(found)).as(sheet).isEqualTo("NORTH MEADOW: CP dm 9.5");
            assertThat(listed(found)).contains("8.1", "0.40");
            assertThat(found.samples().get(0).reported()).isEqualTo("18 Sep 2026");
        }
    }

    @Test
    void twoReportsOfTwoLotsBothStand() {
        var found = NothingIsLostTest.read("""
                Report of analysis no. SF-1
                Submitted by: Bent Gate Ranch
                Lot identification: NORTH MEADOW
                Dry matter 90.3 % as sampled
                Crude protein 9.1 % dry
                Report of analysis no. SF-2
                Submitted by: Bent Gate Ranch
                Lot identification: CREEK BOTTOM
                Dry matter 88.3 % as sampled
                Crude protein 10.1 % dry
                """);
        assertThat(found.samples()).hasSize(2);
        assertThat(kept(found)).contains("DM 90.3, CP dm 9.1", "DM 88.3, CP dm 10.1");
    }

    @Test
    void whatCallsItselfPreliminaryIsAskedAndAnAnswerHolds() {
        var sheet =
                "Dust Creek Lab\nPRELIMINARY\nSample: North\nOn dry matter\nDry matter 88.4 %\nCrude protein 9.5 %\n";
        var found = NothingIsLostTest.read(sheet);
        assertThat(found.samples()).isEmpty();
        assertThat(found.columns()).extracting(Understood.Column::written).containsExactly("report PRELIMINARY");
        var said = new Vocabulary(Map.of(), Map.of("report preliminary", ColumnIs.RESULT));
        assertThat(kept(NothingIsLostTest.read(sheet, said))).isEqualTo("North: DM 88.4, CP dm 9.5");
    }

    @Test
    void aNameOfAnotherKindSaysNothing() {
        assertThat(Standing.of("final")).isEqualTo(Standing.STANDS);
        assertThat(Standing.of("Avoid overfeeding")).isEqualTo(Standing.STANDS);
        assertThat(Standing.of("do not use. Call us")).isEqualTo(Standing.VOID);
        assertThat(Standing.of("final (rerun of T-202)")).isEqualTo(Standing.AGAIN);
    }
}
