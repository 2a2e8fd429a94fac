package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

class SulfurEatenTest {
    /** By hand: 40 L of 1,500 mg sulfate bring 60 g of sulfate, a third of it sulfur: 20 g, which is 0.2 % of 10 kg. */
    @Test
    void waterAndFeedAddUp() {
        var sulfur = new SulfurEaten(0.2, 10, 40, 1500);
        assertThat(sulfur.fromWater()).isCloseTo(20, within(1e-12));
        assertThat(sulfur.percent()).isCloseTo(0.4, within(1e-12));
        FormulaCheck.reEvaluates(sulfur);
    }

    // National Research Council 2005: at most 0.50 % on forage, 0.30 % on much grain.
    @Test
    void theLimitsAreThePublishedOnes() {
        assertThat(SulfurEaten.most()).isEqualTo(0.50);
        assertThat(SulfurEaten.mostOnGrain()).isEqualTo(0.30);
        assertThat(SulfurEaten.watchAbove()).isLessThan(SulfurEaten.most());
    }

    @Test
    void nothingEatenIsRefused() {
        assertThatThrownBy(() -> new SulfurEaten(0.2, 0, 40, 1500))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("eat more than nothing");
    }
}
