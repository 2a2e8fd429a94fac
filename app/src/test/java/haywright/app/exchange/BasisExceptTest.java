package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sentence may take figures out of the basis of the others: each is read on its own basis or asked, never with the rest. */
class BasisExceptTest {
    private static final String BODY = """
            Dry matter 88.4 %
            Crude protein 7.6 %
            ADF 36.2 %
            Calcium 0.38 %
            Nitrate-N 371 ppm
            """;

    private static String letters(Understood found) {
        var text = new StringBuilder();
        for (var analyte : new Analyte[] {Analyte.CP, Analyte.ADF, Analyte.CA, Analyte.NO3N}) {
            text.append(found.samples().get(0).cells().stream()
                    .filter(cell -> cell.analyte() == analyte)
                    .map(cell -> cell.basis() == Basis.DRY_MATTER ? "d" : "r")
                    .findFirst()
                    .orElse("-"));
        }
        return text.toString();
    }

    /** Protein, fiber, calcium and nitrate: d on dry matter, r as received, - asked; where all are asked they are said as received. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "All figures as received except fiber, which is on dry matter.|rdrr",
                "All results as received except ADF (dry matter).|rdrr",
                "Results are as received. Minerals are on dry matter.|rrdr",
                "Figures are as fed unless noted. ADF is dry.|rdrr",
                "Results on dry matter basis, protein as fed.|rddd",
                "Reported as received unless otherwise stated. Calcium: dry matter.|rrdr",
                "Results on an as received basis; fiber on a dry matter basis.|rdrr",
                "As received; nitrate on dry matter.|rrrd",
                "All on dry matter but minerals.|dd-d",
                "Results on a dry matter basis, except protein.|-ddd",
                "Everything as received, except minerals which are on a dry matter basis|rrdr",
                "All results on a dry matter basis except moisture and pH.|dddd",
                "Results on dry matter. Some values may be as received.|rrrr",
                "All results on dry matter basis unless otherwise noted.|dddd"
            })
    void eachFigureIsOnItsOwnBasisOrAsked(String sentence, String bases) {
        for (var sheet :
                new String[] {"Lab\nSample: X\n" + sentence + "\n" + BODY, "Lab\nSample: X\n" + BODY + sentence + "\n"
                }) {
            assertThat(letters(NothingIsLostTest.read(sheet, Basis.AS_RECEIVED)))
                    .as(sheet)
                    .isEqualTo(bases);
        }
    }

    @Test
    void whatIsTakenOutIsAskedAndTheAnswerHolds() {
        var sheet = "Results on a dry matter basis, except protein.\n" + BODY;
        var asked = NothingIsLostTest.read(sheet);
        assertThat(asked.names()).anyMatch(name -> name.written().equals("Crude protein") && name.taken() == null);
        assertThat(String.join("\n", asked.notTaken())).contains("7.6");
        var said = new Vocabulary(Map.of("crude protein", new Vocabulary.Meaning(Analyte.CP, null, Basis.AS_RECEIVED)));
        assertThat(letters(NothingIsLostTest.read(sheet, said))).isEqualTo("rddd");
    }

    @Test
    void aTableInCellsKeepsToTheSentenceToo() {
        var csv =
                "All results as received. Minerals are on dry matter.\nSample,DM %,CP %,ADF %,Calcium %,NO3-N ppm\nNS-9,88,9,36,0.38,371\n";
        assertThat(letters(ReportCsv.read(csv, Decimals.POINT, null, Vocabulary.HOUSE)))
                .isEqualTo("rrdr");
        var wide =
                "All results as received. Minerals are on dry matter.\n\nSample    DM %   CP %   ADF %   Calcium %   NO3-N ppm\nNS-9      88.0   9.1    36.2    0.38        371\n";
        assertThat(letters(ReportText.read(wide, Decimals.POINT, null, Vocabulary.HOUSE)))
                .isEqualTo("rrdr");
    }
}
