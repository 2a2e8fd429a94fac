package haywright.cattle.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class ConditionScoresTest {
    // Worked by hand: mean 5, squares 2.5 over four degrees, spread 0.790569; of 50 head.
    @Test
    void fiveScoresWorkedByHand() {
        var scores = new ConditionScores(List.of(4.0, 4.5, 5.0, 5.5, 6.0), 50, 90);
        double t = new TDistribution(4).inverseCumulativeProbability(0.95);
        assertThat(scores.mean()).isCloseTo(5, within(1e-12));
        assertThat(scores.spread()).isCloseTo(0.790569, within(5e-7));
        assertThat(scores.halfWidth()).isCloseTo(t * 0.790569 * Math.sqrt(0.9 / 5), within(1e-6));
        assertThat(scores.below(5)).isEqualTo(2);
        FormulaCheck.reEvaluates(scores);
    }

    @Test
    void aWholeGroupScoredIsKnown() {
        assertThat(new ConditionScores(List.of(4.0, 6.0), 2, 90).halfWidth()).isZero();
    }

    // (1.644854·0.7/0.25)² = 21.2: 22 of a very large group, fewer of a small one, all of a handful.
    @Test
    void howManyToScore() {
        assertThat(ConditionScores.toScore(100_000)).isEqualTo(22);
        assertThat(ConditionScores.toScore(240)).isEqualTo(20);
        assertThat(ConditionScores.toScore(9)).isEqualTo(7);
        assertThat(ConditionScores.toScore(1)).isEqualTo(1);
    }

    @Test
    void badScoresAreRefused() {
        assertThatThrownBy(() -> new ConditionScores(List.of(5.0, 52.0), 50, 90))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1 to 9");
        assertThatThrownBy(() -> new ConditionScores(List.of(5.0, 5.0, 5.0), 2, 90))
                .hasMessageContaining("3 scores of 2");
        assertThatThrownBy(() -> new ConditionScores(List.of(5.0), 50, 90)).hasMessageContaining("at least two");
    }
}
