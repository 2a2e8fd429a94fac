package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Words of a sheet that speak of one thing and were taken for another: of a mark, of a laboratory, of an older message. */
class WordsOfASheetTest {
    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "(a) as fed basis",
                "(a) = as fed",
                "(a): as received",
                "[a] as fed basis",
                "a = as fed",
                "a: as fed basis",
                "a) as fed basis",
                "* as fed basis",
                "† = as received",
                "(1) on as fed basis",
                "(A) as fed basis"
            })
    void whatAMarkMeansChangesNoFigureWithoutIt(String legend) {
        for (var place : List.of("over", "under")) {
            for (var said :
                    List.of("All results on dry basis unless marked (a).", "All results on dry matter basis.")) {
                var sheet = "Dust Creek Lab\nSample: North\nReported 18 Sep 2026\n" + said + "\n"
                        + (place.equals("over") ? legend + "\n" : "")
                        + "Dry matter, %   88.4\nCrude protein, %   9.5\n"
                        + (place.equals("under") ? legend + "\n" : "");
                assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet)))
                        .as(sheet)
                        .isEqualTo("North: DM 88.4, CP dm 9.5");
            }
        }
    }

    @Test
    void aMarkStillHoldsForItsFigure() {
        var sheet = """
                Sample: North
                All results on dry basis unless marked (a).
                (a) as fed basis
                Dry matter, %   88.4
                Crude protein, % (a)   8.4
                NDF, %   61.7
                """;
        assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet)))
                .isEqualTo("North: DM 88.4, CP ar 8.4, NDF dm 61.7");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "-----Original Message-----\nFrom: Ardis\nSent: 24 Sep 2026",
                "-----Original Message-----\nFrom: Ardis\nSent: 24 Sep 2026\nReported: 24 Sep 2026",
                "From: Ardis\nSent: 24 Sep 2026\nTo: Wade",
                "On 24 Sep 2026 Ardis wrote:",
                "On Thu, 24 Sep 2026 at 9:14 Ardis wrote:\nReported 24 Sep 2026",
                "> On 24 Sep 2026 Ardis wrote:\n> Reported 24 Sep 2026"
            })
    void theDayOfAQuotedMessageIsOfItsOwnFigures(String head) {
        var quote = head.startsWith(">") ? "> " : "";
        var sheet = "Sample: CREEK BOTTOM\nAll on dry matter basis.\nCrude protein 9.9 %\n\n" + head + "\n" + quote
                + "Sample: CREEK BOTTOM\n" + quote + "Crude protein 9.3 %\n";
        var found = NothingIsLostTest.read(sheet);
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("CREEK BOTTOM: CP dm 9.9");
        assertThat(found.samples().get(0).reported()).isEmpty();
        assertThat(found.samples().get(0).sampled()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"1,460 ppm", "1,460 mg/kg", "12,400 ppm", "3,100 ppb"})
    void aThousandOnASheetOfCommasIsAsked(String figure) {
        var sheet =
                "Sample: North\nOn dry matter.\nCrude protein 9,5 %\nPhosphorus 0,125 %\nNitrate-N " + figure + "\n";
        assertThatThrownBy(() -> ReportText.read(sheet, Decimals.BY_SHEET, Basis.DRY_MATTER, Vocabulary.HOUSE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems().get(0).field()).isEqualTo("decimal"));
        var thousand = ReportText.read(sheet, Decimals.POINT, Basis.DRY_MATTER, Vocabulary.HOUSE);
        assertThat(WhoseFiguresTest.figures(thousand))
                .isEqualTo("North: CP dm 9.5, P dm 0.125, NO3N dm " + figure.replaceAll("[^0-9]", ""));
        var comma = ReportText.read(sheet, Decimals.COMMA, Basis.DRY_MATTER, Vocabulary.HOUSE);
        assertThat(WhoseFiguresTest.figures(comma))
                .contains("NO3N dm " + figure.replaceAll(" .*", "").replace(',', '.'));
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "TALLGRASS REFERENCE LAB",
                "Standard Analytical Laboratories",
                "Ideal Forage Testing",
                "OLD MILL LABORATORY",
                "Best Feed Lab",
                "Control Point Labs",
                "Safe Harbor Analytical",
                "Typical Creek Lab",
                "GOOD EARTH FORAGE SERVICE",
                "Past & Present Hay Testing"
            })
    void theNameOfALaboratorySpeaksOfNoOthers(String laboratory) {
        for (var figures : List.of(
                "Dry Matter   90.9 %\nCrude Protein  9.1 %\n",
                "Dry matter 90.9 %\nCrude protein 9.1 %\n",
                "Test            Result   Units\nDry Matter      90.9     %\nCrude Protein   9.1      %\n")) {
            var sheet = laboratory + "\nSample: NORTH MEADOW\nOn dry matter.\n" + figures;
            assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet)))
                    .as(sheet)
                    .isEqualTo("NORTH MEADOW: DM 90.9, CP dm 9.1");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Sulfate 0.33 %\nSulfate-S 0.11 %",
                "Redwater 0.33 %",
                "Prussic score 12.5 %",
                "Blue dye uptake   0.40   %",
                "Silica (soil) 2.1 %"
            })
    void aNameThatNobodyKnowsClosesNothing(String line) {
        var sheet =
                "Dust Creek Lab\nSample: North\nOn dry matter.\nDry matter 88.4 %\n" + line + "\nMagnesium 0.15 %\n";
        assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet))).contains("North: DM 88.4", "MG dm 0.15");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Dust Creek Lab - customer history",
                "Blue Draw Testing - customer history, Bent Gate Ranch",
                "Customer history",
                "Test history 2025-2026",
                "Historical results, Bent Gate Ranch"
            })
    void aTitleOverAWholeTableIsNoHeading(String title) {
        for (var sign : List.of("\t", ",", ";")) {
            var sheet = (title.replace(",", "") + "~~Lot~DM %~CP % DM\n")
                            .replace("~~", "\n\n")
                            .replace("~", sign)
                    + "NORTH MEADOW~88.4~9.5\nCREEK BOTTOM~87.1~8.8\n".replace("~", sign);
            assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet)))
                    .as(sheet)
                    .isEqualTo("NORTH MEADOW: DM 88.4, CP dm 9.5; CREEK BOTTOM: DM 87.1, CP dm 8.8");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "insufficient",
                "insufficient sample",
                "QNS",
                "see note",
                "no sample",
                "not enough",
                "lost",
                "n/d",
                "spilled"
            })
    void aWordInPlaceOfAFigureIsOfItsOwnColumn(String word) {
        var sheet = """
                All results on dry basis.
                Sample                   NORTH MEADOW     CREEK BOTTOM           HOME PLACE
                Dry matter, %%           89.0             88.1                   83.7
                Copper, ppm              5                %-20s   8
                Crude protein, %%        9.2              10.1                   18.8
                """.formatted(word);
        var found = NothingIsLostTest.read(sheet);
        assertThat(WhoseFiguresTest.figures(found))
                .as(sheet)
                .contains("NORTH MEADOW: DM 89.0, CU dm 5", "CREEK BOTTOM: DM 88.1", "CP dm 10.1", "CU dm 8");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "As fed, Dry matter, 2025",
        "As received, Dry, 2025",
        "As fed, Dry, 2025",
        "As is, Dry matter, 2024",
        "As sampled, Dry basis, 2025"
    })
    void aYearOverAColumnIsAHeading(String one, String other, String year) {
        var sheet = "Sample: North\n%-20s %12s %12s %8s%n%-20s %12s %12s %8s%n%-20s %12s %12s %8s%n"
                .formatted(
                        "Test",
                        one,
                        other,
                        year,
                        "Dry matter, %",
                        "88.4",
                        "100.0",
                        "90.1",
                        "Crude protein, %",
                        "8.4",
                        "9.5",
                        "10.7");
        var found = NothingIsLostTest.read(sheet);
        assertThat(WhoseFiguresTest.figures(found)).as(sheet).isEqualTo("North: DM 88.4, CP ar 8.4, CP dm 9.5");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "TDN, ADF method 58.0 %\nCrude protein, combustion 9.5 %",
                "TDN, summative equation 58.0 %\nCrude protein, Dumas method 9.5 %",
                "TDN, NRC 2001 58.0 %\nCrude protein, AOAC 990.03 9.5 %"
            })
    void aCommaInTheNameOfAMethodPartsNoColumns(String lines) {
        assertThat(WhoseFiguresTest.figures(
                        NothingIsLostTest.read("Sample: North\nAll on dry matter.\n" + lines + "\n")))
                .isEqualTo("North: TDN dm 58.0, CP dm 9.5");
    }

    @Test
    void aYearInTheColumnOfMethodsIsNoFigure() {
        var sheet = """
                TALLGRASS REFERENCE LAB
                Sample: North
                Results are on 100 % dry matter. Dry matter is as received.

                Test                                      Method                 Result   Units
                Dry Matter, 3 h 105 C                     NFTA 2.1.4 (2006)      90.9     %
                Crude Protein (N x 6.25)                  AOAC 990.03            9.1      %
                aNDFom 2002.04                            Mertens 2002           60.2     %
                ADF                                       Van Soest 1991, mod.   39.6     %
                TDN                                       OARDC 1992             56.9     %
                Calcium                                   ICP 985.01             0.43     %
                """;
        assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet)))
                .isEqualTo("North: DM 90.9, CP dm 9.1, NDF dm 60.2, ADF dm 39.6, TDN dm 56.9, CA dm 0.43");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "All in percent.",
                "All figures in percent.",
                "Values in %.",
                "(all results in percent)",
                "Units: percent"
            })
    void aUnitAtTheFootIsOfAllFigures(String foot) {
        var sheet =
                "Sample: OAT HAY WEST\nAll on dry matter basis.\nNitrate-N 0.19\nCrude protein 10.8\n\n" + foot + "\n";
        var found = NothingIsLostTest.read(sheet);
        assertThat(found.samples().get(0).cells())
                .allSatisfy(cell -> assertThat(cell.unit()).isEqualTo(Unit.PERCENT));
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "NORTH MEADOW: DM 88.4, CP 9.5, NDF 61.7 (dry)",
                "NORTH MEADOW: DM 88.4, CP 9.5, NDF 61.7, all on dry matter",
                "NORTH MEADOW: DM 88.4, CP 9.5, NDF 61.7 (dry matter basis)"
            })
    void aBasisAtTheEndOfALineIsOfItsFigures(String line) {
        var found = NothingIsLostTest.read(line + "\n", Basis.AS_RECEIVED);
        assertThat(WhoseFiguresTest.figures(found)).endsWith("DM 88.4, CP dm 9.5, NDF dm 61.7");
    }
}
