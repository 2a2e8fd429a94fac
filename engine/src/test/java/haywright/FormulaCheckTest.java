package haywright;

import static haywright.FormulaCheck.evaluate;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class FormulaCheckTest {
    @Test
    void readsTheFormsThatPapersUse() {
        assertThat(evaluate("88.9 − 0.779·ADF", Map.of("ADF", 28.0))).isEqualTo(88.9 - 0.779 * 28);
        assertThat(evaluate("0.077·SBW^0.75", Map.of("SBW", 500.0))).isEqualTo(0.077 * Math.pow(500, 0.75));
        assertThat(evaluate("−2^2 + 3", Map.of())).isEqualTo(-1);
        assertThat(evaluate("CP·exp(−1.2·ADICP/CP)", Map.of("CP", 10.0, "ADICP", 1.0)))
                .isEqualTo(10 * Math.exp(-1.2 * 1.0 / 10));
        assertThat(evaluate("max(0, A − B)", Map.of("A", 1.0, "B", 2.0))).isZero();
    }

    @Test
    void aFormulaThatDriftedIsCaught() {
        Worked drifted = () -> List.of(Line.of(
                "DDM",
                "88.9 − 0.797·ADF",
                67.088,
                Unit.PERCENT,
                Source.ARITHMETIC,
                Input.typed("ADF", 28, Unit.PERCENT)));
        assertThatThrownBy(() -> FormulaCheck.reEvaluates(drifted)).isInstanceOf(AssertionError.class);
    }

    @Test
    void aSymbolThatIsNotShownIsCaught() {
        assertThatThrownBy(() -> evaluate("A + B", Map.of("A", 1.0))).hasMessageContaining("\"B\"");
    }
}
