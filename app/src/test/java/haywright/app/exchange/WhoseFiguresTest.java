package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Whose;
import haywright.forage.Basis;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures of another year, of an average, of a typical feed or of a goal stand beside those of the sample, in any order,
 * over one column or over a pair of bases: they are listed and never taken. Where nothing tells which is this sample's,
 * it is asked.
 */
class WhoseFiguresTest {
    static String figures(Understood found) {
        return found.samples().stream()
                .map(sample -> (sample.code().isEmpty() ? sample.lot() : sample.code()) + ": "
                        + sample.cells().stream()
                                .map(cell -> cell.analyte()
                                        + (cell.basis() == null ? "" : cell.basis() == Basis.DRY_MATTER ? " dm" : " ar")
                                        + " " + cell.text())
                                .collect(Collectors.joining(", ")))
                .collect(Collectors.joining("; "));
    }

    private static final String OWN = "Creek Meadow: DM 89.6, CP ar 7.7, CP dm 8.6, NO3N ar 1900, NO3N dm 2120";

    /** Two labels, one over each pair of bases; the second is the sample's. */
    @ParameterizedTest(name = "{0} beside {1}")
    @CsvSource(
            quoteCharacter = '`',
            value = {
                "2025, 2026",
                "Last year, This year",
                "Previous, Current",
                "Prior, Current",
                "Typical hay, Your sample",
                "Average, Result",
                "County avg, Your hay",
                "Nebraska average, This sample",
                "5-yr avg, 2026",
                "'25, '26",
                "FY25, FY26",
                "Crop 2025, Crop 2026",
                "2025 crop, 2026 crop",
                "2025 avg, 2026",
                "2024-25, 2025-26",
                "Oct-25, Oct-26",
                "10/14/2025, 10/12/2026",
                "Fall 2025, Fall 2026",
                "A year ago, Now",
                "Book value, Your result",
                "Goal, This cutting",
                "Last cutting, This cutting",
                "Normal, Result"
            })
    void ofTwoBesideEachOtherOnlyTheSamplesIsTaken(String other, String own) {
        for (boolean isOwnLast : List.of(true, false)) {
            var left = isOwnLast ? other : own;
            var right = isOwnLast ? own : other;
            var rows = isOwnLast
                    ? List.of("88.5;100.0;89.6;100.0", "10.0;11.3;7.7;8.6", "128;145;1900;2120")
                    : List.of("89.6;100.0;88.5;100.0", "7.7;8.6;10.0;11.3", "1900;2120;128;145");
            var names = List.of("Dry matter, %", "Crude protein, %", "Nitrate-N, ppm");
            var text = new StringBuilder("Sample: Creek Meadow\n");
            text.append("%-20s %-18s %-18s%n".formatted("", left, right));
            text.append("%-20s %8s %8s %9s %8s%n".formatted("Test", "AsRec", "Dry", "AsRec", "Dry"));
            var csv = new StringBuilder(
                    "Sample;Creek Meadow;;;\n;" + left + ";;" + right + ";\nTest;AsRec;Dry;AsRec;Dry\n");
            var strokes = new StringBuilder("Sample: Creek Meadow\n| | " + left + " | | " + right + " | |\n"
                    + "| Test | AsRec | Dry | AsRec | Dry |\n");
            for (int i = 0; i < names.size(); i++) {
                var cells = rows.get(i).split(";");
                text.append("%-20s %8s %8s %9s %8s%n".formatted(names.get(i), cells[0], cells[1], cells[2], cells[3]));
                csv.append(names.get(i)).append(';').append(rows.get(i)).append('\n');
                strokes.append("| " + names.get(i) + " | " + String.join(" | ", cells) + " |\n");
            }
            for (var sheet : List.of(text.toString(), csv.toString(), strokes.toString())) {
                var found = NothingIsLostTest.read(sheet);
                assertThat(figures(found)).as(sheet).isEqualTo(OWN);
                assertThat(String.join("\n", found.notTaken())).contains("88.5", "10.0", "11.3", "128", "145");
                assertThat(found.columns()).isEmpty();
            }
        }
    }

    /** One column each, the basis said once on the line of the sample. */
    @ParameterizedTest(name = "{0} beside {1}")
    @CsvSource(
            quoteCharacter = '`',
            value = {
                "2025, 2026",
                "Oct-25, Oct-26",
                "Last crop, This crop",
                "'25, '26",
                "Prior, Result",
                "Area average, Sample",
                "Typical, Found",
                "2025 results, 2026 results"
            })
    void aBasisOnTheLineOfTheSampleIsOfAllAndTheNameStays(String other, String own) {
        for (boolean isOwnLast : List.of(true, false)) {
            for (var first : List.of(
                    "Sample: Creek Meadow      Dry matter basis",
                    "Dry matter basis      Sample: Creek Meadow",
                    "Sample: Creek Meadow      Lab no. 5512      (dry basis)")) {
                var text = first + "\n"
                        + "%-18s %12s %14s%n".formatted("Test, %", isOwnLast ? other : own, isOwnLast ? own : other)
                        + "%-18s %12s %14s%n"
                                .formatted("Dry matter", isOwnLast ? "88.5" : "89.6", isOwnLast ? "89.6" : "88.5")
                        + "%-18s %12s %14s%n"
                                .formatted("Crude protein", isOwnLast ? "11.3" : "8.6", isOwnLast ? "8.6" : "11.3");
                var found = NothingIsLostTest.read(text);
                assertThat(figures(found)).as(text).isEqualTo("Creek Meadow: DM 89.6, CP dm 8.6");
                assertThat(String.join("\n", found.notTaken())).contains("88.5", "11.3");
            }
        }
    }

    @Test
    void yearsInTheMarginOrOverLinesTellThemApart() {
        var margin = """
                Sample: Creek Meadow
                Year   Test                As rec'd   Dry
                2025   Dry matter %         88.5       100
                       Crude protein %      10.0       11.3
                2026   Dry matter %         89.6       100
                       Crude protein %      7.7        8.6
                """;
        var over = """
                Sample: Creek Meadow
                                    As rec'd   Dry
                2026
                Dry matter %         89.6       100
                Crude protein %      7.7        8.6

                2025
                Dry matter %         88.5       100
                Crude protein %      10.0       11.3
                """;
        var csv = """
                Sample,Creek Meadow
                Year,Test,As received,Dry
                2025,Dry matter %,88.5,100
                ,Crude protein %,10.0,11.3
                2026,Dry matter %,89.6,100
                ,Crude protein %,7.7,8.6
                """;
        for (var sheet : List.of(margin, over, csv)) {
            assertThat(figures(NothingIsLostTest.read(sheet)))
                    .as(sheet)
                    .isEqualTo("Creek Meadow: DM 89.6, CP ar 7.7, CP dm 8.6");
        }
    }

    private static final String MONTHS = """
            Sample: Creek Meadow
                                  April             October
            Test               AsRec   Dry       AsRec   Dry
            Dry matter, %       88.5  100.0       89.6  100.0
            Crude protein, %    10.0   11.3       7.7    8.6
            """;

    @Test
    void whatCannotBeToldIsAskedAndAnAnswerHolds() {
        var asked = NothingIsLostTest.read(MONTHS);
        assertThat(asked.samples()).isEmpty();
        assertThat(asked.columns())
                .extracting(Understood.Column::written)
                .containsExactlyInAnyOrder("April AsRec", "April Dry", "October AsRec", "October Dry");
        var said = new Vocabulary(
                Map.of(),
                Map.of(
                        "april asrec", ColumnIs.LEFT_OUT,
                        "april dry", ColumnIs.LEFT_OUT,
                        "october asrec", ColumnIs.AS_RECEIVED,
                        "october dry", ColumnIs.DRY_MATTER));
        assertThat(figures(NothingIsLostTest.read(MONTHS, said)))
                .isEqualTo("Creek Meadow: DM 89.6, CP ar 7.7, CP dm 8.6");
    }

    /** Names of their own, or one season: samples, each under its name. */
    @ParameterizedTest(name = "{0} beside {1}")
    @CsvSource({
        "North Stack, South Stack",
        "A-101, A-102",
        "North 2026, South 2026",
        "1st cutting, 2nd cutting",
        "Old hay, New hay"
    })
    void samplesBesideEachOtherStaySamples(String left, String right) {
        var found = NothingIsLostTest.read("%-20s %-18s %-18s%n".formatted("", left, right) + """
                Test                    AsRec     Dry       AsRec     Dry
                Dry matter, %            88.5   100.0        89.6   100.0
                Crude protein, %         10.0    11.3         7.7     8.6
                """);
        assertThat(figures(found))
                .isEqualTo(left + ": DM 88.5, CP ar 10.0, CP dm 11.3; " + right + ": DM 89.6, CP ar 7.7, CP dm 8.6");
    }

    @Test
    void aSentenceThatSaysTheBasisFirstKeepsItsFiguresAndAQuotedNameIsTheSamples() {
        var found = NothingIsLostTest.read("""
                Your core sample "North Stack" came in Oct 6.
                On a dry matter basis it ran crude protein 9.2 %, ADF 38.1 %. Dry matter was 88.2 %.
                """);
        assertThat(figures(found)).isEqualTo("North Stack: CP dm 9.2, ADF dm 38.1, DM 88.2");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "Nitrate 0.44 %",
        "Nitrate 4.4 g/kg",
        "Nitrate 8.8 lb/ton",
        "Nitrate 4400 ppm",
        "Nitrate 4400 mg/kg",
        "Nitrate 0.44"
    })
    void nitrateWithoutItsFormIsAskedInEveryUnit(String line) {
        var found = NothingIsLostTest.read("Dry matter basis\nCrude protein 9.2 %\n" + line + "\n");
        assertThat(figures(found)).isEqualTo(": CP dm 9.2");
        assertThat(found.names()).anyMatch(name -> name.written().equals("Nitrate") && name.taken() == null);
    }

    @Test
    void theNewestOfSeveralYearsIsTheSamples() {
        assertThat(Whose.of(List.of("2024", "2026", "2025"))).containsExactly(Whose.OTHERS, Whose.OWN, Whose.OTHERS);
        assertThat(Whose.of(List.of("North 2025", "South 2026"))).containsOnly(Whose.ASKED);
        assertThat(Whose.of(List.of("Oct 2026", "Apr 2026", "Oct 2025")))
                .containsExactly(Whose.ASKED, Whose.ASKED, Whose.OTHERS);
        assertThat(Whose.of(List.of("2026", "Elsewhere"))).containsOnly(Whose.ASKED);
        assertThat(Whose.of(List.of("", "", "2025"))).containsExactly(Whose.UNSAID, Whose.UNSAID, Whose.ASKED);
    }
}
