package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Basis;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet that says line by line, or column by column, which basis its figures are on. */
class BasisOfRowsTest {
    private static final String BOTH = "East: CP ar 7.7, ADF ar 33.3, CP dm 8.8, ADF dm 38.0";
    private static final String TWO_LOTS = "East: CP ar 7.7, ADF ar 33.3; West: CP dm 16.8, ADF dm 33.6";

    private static String said(Understood found) {
        return found.samples().stream()
                .map(sample -> (sample.code().isEmpty() ? sample.lot() : sample.code()) + ": "
                        + sample.cells().stream()
                                .map(cell -> cell.analyte()
                                        + (cell.basis() == Basis.DRY_MATTER ? " dm " : " ar ")
                                        + cell.text())
                                .collect(Collectors.joining(", ")))
                .collect(Collectors.joining("; "));
    }

    private static String lines(String sheet) {
        return sheet.replace("; ", "\n");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Sample,Basis,CP %,ADF %; East,AF,7.7,33.3; East,DM,8.8,38.0",
                "Sample,Reporting basis,CP %,ADF %; East,As fed,7.7,33.3; East,Dry,8.8,38.0",
                "Sample,Type,CP %,ADF %; East,AF,7.7,33.3; East,DM,8.8,38.0",
                "Sample,CP %,ADF %; East (as fed),7.7,33.3; East (dry),8.8,38.0",
                "Sample,CP %,ADF %; East AF,7.7,33.3; East DM,8.8,38.0",
                "| Sample | Basis | CP % | ADF % |; | East | AF | 7.7 | 33.3 |; | East | DM | 8.8 | 38.0 |",
                "Sample   Basis    CP    ADF; East     AF       7.7   33.3; East     DM       8.8   38.0"
            })
    void eachLineIsOnItsOwnBasis(String sheet) {
        assertThat(said(NothingIsLostTest.read(lines(sheet)))).isEqualTo(BOTH);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Lot\tEast\tWest; Basis\tAF\tDM; CP %\t7.7\t16.8; ADF %\t33.3\t33.6",
                "Lot,East,West; Basis,AF,DM; CP %,7.7,16.8; ADF %,33.3,33.6",
                "Test,East,West; Basis,AF,DM; CP %,7.7,16.8; ADF %,33.3,33.6",
                "Lot,East,West; CP %,7.7,16.8; ADF %,33.3,33.6; Basis,AF,DM",
                "Sample,East,West; Unit,%,%; Basis,AF,DM; CP,7.7,16.8; ADF,33.3,33.6",
                "Lot       East    West; Basis     AF      DM; CP %      7.7     16.8; ADF %     33.3    33.6",
                "Test      Unit   East    West; Basis            AF      DM; CP        %      7.7     16.8; ADF       %      33.3    33.6"
            })
    void twoLotsStayTwo(String sheet) {
        assertThat(said(NothingIsLostTest.read(lines(sheet)))).isEqualTo(TWO_LOTS);
    }

    @Test
    void aListOfOneAnalyteWithABasisForEachLine() {
        assertThat(said(NothingIsLostTest.read("Sample,Basis,Nitrate-N ppm\nEast,AF,1776\nWest,DM,2010\n")))
                .isEqualTo("East: NO3N ar 1776; West: NO3N dm 2010");
    }

    @Test
    void twoLotsOnTwoBasesEach() {
        assertThat(said(NothingIsLostTest.read(
                        "Lot\tEast\tEast\tWest\tWest\nBasis\tAF\tDM\tAF\tDM\nCP %\t7.7\t8.8\t15.0\t16.8\n")))
                .isEqualTo("East: CP ar 7.7, CP dm 8.8; West: CP ar 15.0, CP dm 16.8");
    }

    /** A word that is no basis is asked for its own line; the other lines are read. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Sample,Basis,CP %,ADF %; East,Q2,7.7,33.3; West,DM,16.8,33.6",
                "Sample   Basis    CP     ADF; East     Q2       7.7    33.3; West     DM       16.8   33.6"
            })
    void anUnknownWordIsAskedForItsLine(String sheet) {
        var found = NothingIsLostTest.read(lines(sheet));
        assertThat(said(found)).isEqualTo("West: CP dm 16.8, ADF dm 33.6");
        assertThat(found.columns()).singleElement().satisfies(asked -> {
            assertThat(asked.written()).isEqualTo("mark Q2");
            assertThat(asked.said()).isNull();
        });
        var words = new Vocabulary(Map.of(), Map.of("mark q2", ColumnIs.AS_RECEIVED));
        assertThat(said(NothingIsLostTest.read(lines(sheet), words))).isEqualTo(TWO_LOTS);
    }

    @Test
    void aLineThatContradictsItsHeadingIsListed() {
        var found = NothingIsLostTest.read("Sample,Basis,CP % DM,ADF % DM\nEast,AF,7.7,33.3\nEast,DM,8.8,38.0\n");
        assertThat(said(found)).isEqualTo("East: CP dm 8.8, ADF dm 38.0");
        assertThat(found.notTaken())
                .filteredOn(line -> line.contains("7.7") || line.contains("33.3"))
                .hasSize(2);
    }
}
