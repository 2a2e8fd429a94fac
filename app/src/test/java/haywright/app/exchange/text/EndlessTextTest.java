package haywright.app.exchange.text;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Vocabulary;
import haywright.workings.Refused;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A megabyte of lines that look like many things at once: turned away before any of them is read. */
class EndlessTextTest {
    @ParameterizedTest
    @ValueSource(strings = {"results is ", "1.1,"})
    void isGivenUp(String piece) {
        var text = (piece.repeat(4000 / piece.length()) + "\n").repeat(230);
        assertThatThrownBy(() -> ReportText.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("longer lines than reports have");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1,000,", ",000", "a", "1.000."})
    void aCellOfAMegabyteIsGivenUp(String piece) {
        var text = "Sample;CP\nA;\"" + piece.repeat(900_000 / piece.length()) + "\"\n";
        for (var decimals : Decimals.values()) {
            assertThatThrownBy(() -> ReportCsv.read(text, decimals, null, Vocabulary.HOUSE))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("a cell has at most");
        }
    }
}
