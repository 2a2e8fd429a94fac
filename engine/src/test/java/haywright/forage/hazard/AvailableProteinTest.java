package haywright.forage.hazard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules are from memory; their figures are worked by hand from the rule's words. */
class AvailableProteinTest {
    @ParameterizedTest(name = "CP {0} with ADICP {1} by rule {2} leaves {3}")
    @CsvSource({
        "20, 2.8, A, 20", // 14 %: still whole
        "20, 3.2, A, 18.2", // 16 %: (16 − 7) = 9 % off
        "20, 4.0, A, 17.4", // 20 %: 13 % off
        "20, 5.0, A, 15", // 25 %: all of it off
        "20, 2.0, B, 20", // 10 %: still whole
        "20, 3.2, B, 18.8", // 16 %: the 6 above 10 off
        "20, 5.0, B, 17" // 25 %: the 15 above 10 off
    })
    void eachRuleTakesOffWhatItSays(double cp, double adicp, AvailableProtein.Rule rule, double left) {
        var protein = new AvailableProtein(cp, adicp, rule);
        assertThat(protein.percent()).isCloseTo(left, within(1e-9));
        FormulaCheck.reEvaluates(protein);
    }

    @Test
    void whatIsLeftLiesBetweenNothingBoundAndAllBound() {
        for (double adicp = 0; adicp <= 10; adicp += 0.1) {
            for (var rule : AvailableProtein.Rule.values()) {
                var protein = new AvailableProtein(10, adicp, rule);
                assertThat(protein.percent()).isBetween(10 - adicp - 1e-9, 10.0);
                FormulaCheck.reEvaluates(protein);
            }
        }
    }

    @Test
    void moreBoundThanThereIsIsRefused() {
        assertThatThrownBy(() -> new AvailableProtein(12, 13, AvailableProtein.Rule.A))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("ADICP 13 % beside CP 12 %: bound protein is part of crude protein");
        assertThatThrownBy(() -> new AvailableProtein(0, 0, AvailableProtein.Rule.A))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new AvailableProtein(Double.NaN, -1, AvailableProtein.Rule.A))
                .isInstanceOfSatisfying(
                        Refused.class, r -> assertThat(r.problems()).hasSize(2));
    }
}
