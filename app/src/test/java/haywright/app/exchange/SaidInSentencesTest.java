package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a sheet says of its figures in a sentence, and not at a figure or over a column. */
class SaidInSentencesTest {
    private static String figures(Understood found) {
        return found.samples().stream()
                .flatMap(sample -> sample.cells().stream())
                .map(cell -> cell.analyte()
                        + (cell.basis() == null ? " " : cell.basis() == Basis.DRY_MATTER ? " dm " : " ar ")
                        + cell.text())
                .collect(Collectors.joining(", "));
    }

    private static String figures(String sheet) {
        return figures(NothingIsLostTest.read(sheet.replace("; ", "\n")));
    }

    /** What was dried in air still holds water: its figures are neither as received nor on dry matter. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Air-dry basis",
                "Air dry basis",
                "Lab-dry basis",
                "Air-dried basis",
                "Partially dry basis",
                "Dry-ashed",
                "Results are not on a dry basis",
                "Results are not corrected to dry matter.",
                "All results are reported on an air-dry basis.",
                "Figures are on the freeze-dried sample"
            })
    void aWordWithDryInItIsNoDryMatter(String said) {
        assertThatThrownBy(() -> ReportText.read(
                        said + "\nCrude protein 8.2 %\nADF 35.5 %\n", Decimals.BY_SHEET, null, Vocabulary.HOUSE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems().get(0).field()).isEqualTo("basis"));
    }

    @Test
    void airDryOverAColumnOrBehindANameIsNone() {
        assertThatThrownBy(() -> ReportText.read(
                        "Test   Unit  Air-dry\nCP     %     8.2\nADF    %     35.5\n",
                        Decimals.BY_SHEET, null, Vocabulary.HOUSE))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> ReportCsv.read(
                                "Test,Unit,Air dry\nCP,%,8.2\nADF,%,35.5\n", Decimals.BY_SHEET, null, Vocabulary.HOUSE)
                        .samples()
                        .get(0))
                .isInstanceOfAny(Refused.class, IndexOutOfBoundsException.class);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "All results on a dry matter basis.; ADF 35.5 % | ADF dm 35.5",
                "Oven-dry basis; ADF 35.5 % | ADF dm 35.5",
                "Results are as received, not on dry matter; ADF 35.5 % | ADF ar 35.5",
                "Results are not as received but on dry matter; ADF 35.5 % | ADF dm 35.5"
            })
    void whatSaysABasisStillDoes(String sheet, String says) {
        assertThat(figures(sheet)).isEqualTo(says);
    }

    /** 8.6 % of 61.3 % NDF is 5.27 %; 8.6 % of 8.8 % protein is 0.757 %. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Lignin 8.6 %; Lignin is given as percent of NDF. | LIGNIN dm 5.27",
                "Lignin 8.6 %; Lignin is expressed on NDF. | LIGNIN dm 5.27",
                "Lignin 8.6 %; Note: lignin as a percent of the NDF. | LIGNIN dm 5.27",
                "Lignin 8.6 %; The lignin figure is a share of NDF. | LIGNIN dm 5.27",
                "Lignin (on NDF) 8.6 % | LIGNIN dm 5.27",
                "ADICP 8.6 %; ADICP is reported as % of CP. | ADICP dm 0.757"
            })
    void aShareSaidOfOneAnalyte(String lines, String says) {
        assertThat(figures("Dry basis; Crude protein 8.8 %; NDF 61.3 %; " + lines))
                .isEqualTo("CP dm 8.8, NDF dm 61.3, " + says);
    }

    @Test
    void aShareSaidUnderATable() {
        assertThat(figures("Sample,CP % DM,NDF % DM,Lignin %\nEast,8.8,61.3,8.6\nLignin is given as percent of NDF"))
                .isEqualTo("CP dm 8.8, NDF dm 61.3, LIGNIN dm 5.27");
        assertThat(figures("Sample   CP     NDF    Lignin\nEast     8.8    61.3   8.6\nWest     8.8    61.3   8.6\n"
                        + "All results on dry matter.\nLignin is given as percent of NDF.\n"))
                .isEqualTo("CP dm 8.8, NDF dm 61.3, LIGNIN dm 5.27, CP dm 8.8, NDF dm 61.3, LIGNIN dm 5.27");
        assertThat(figures("NDF % DM 61.3\nLignin % DM 8.6\nLignin is given as percent of NDF."))
                .isEqualTo("NDF dm 61.3");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Basis: dry matter unless marked * (as fed); Crude protein 8.8 %; Nitrate-N* 310 ppm",
                "Basis: dry matter unless marked (*) as fed; Crude protein 8.8 %; Nitrate-N* 310 ppm",
                "Dry matter basis. Starred tests are as fed.; Crude protein 8.8 %; Nitrate-N* 310 ppm",
                "Dry matter basis; Crude protein 8.8 %; Nitrate-N* 310 ppm; An asterisk means as received",
                "Basis: dry matter; Crude protein 8.8 %; Nitrate-N* 310 ppm; * (as received)",
                "All results on dry matter except those marked (*), which are as received; Crude protein 8.8 %; Nitrate-N (*) 310 ppm",
                "Test,Unit,Result; CP,%,8.8; Nitrate-N*,ppm,310; Basis: dry matter unless marked * (as fed)"
            })
    void aMarkSaidInASentence(String sheet) {
        assertThat(figures(sheet)).isEqualTo("CP dm 8.8, NO3N ar 310");
    }

    /** What nobody understands of a mark is asked, where a sentence says that marks tell the basis. */
    @Test
    void aMarkThatIsNotUnderstoodIsAsked() {
        var sheet = "Dry matter basis\nCrude protein 8.8 %\nNitrate-N† 310 ppm\nDaggers mark as-fed results\n";
        var found = NothingIsLostTest.read(sheet);
        assertThat(figures(found)).isEqualTo("CP dm 8.8");
        assertThat(found.columns())
                .singleElement()
                .satisfies(asked -> assertThat(asked.written()).isEqualTo("mark †"));
        assertThat(figures(NothingIsLostTest.read(
                        sheet, new Vocabulary(Map.of(), Map.of("mark †", ColumnIs.AS_RECEIVED)))))
                .isEqualTo("CP dm 8.8, NO3N ar 310");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Crude protein 10.5 percent is what a milking cow needs.",
                "Sulfur 0.4 percent is the most.",
                "Calcium 0.30 percent is plenty.",
                "Calcium 0.30 % minimum",
                "Phosphorus 0.20 % or more",
                "Sulfur 0.4 % for a milking cow",
                "Zinc 21 ppm would carry a dry cow",
                "RFV 150 is what the dairy wants."
            })
    void aNeedIsNoFigureOfTheHay(String line) {
        var found = NothingIsLostTest.read("Dry basis\nADF 38 percent.\n" + line);
        assertThat(figures(found)).isEqualTo("ADF dm 38");
        assertThat(found.notTaken()).anyMatch(listed -> listed.startsWith("Line 3") && listed.endsWith(line));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Crude protein 8.8 percent is low. | CP dm 8.8",
                "Crude protein 8.8 percent, good for grass hay. | CP dm 8.8",
                "Magnesium 0.2 %, which is less than a cow needs. | MG dm 0.2",
                "Potassium 1.5 % was found. | K dm 1.5",
                "Crude protein 8.8 % (cow needs 7) | CP dm 8.8"
            })
    void aRemarkLeavesTheFigure(String line, String says) {
        assertThat(figures("Dry basis; ADF 38 percent.; " + line)).isEqualTo("ADF dm 38, " + says);
    }
}
