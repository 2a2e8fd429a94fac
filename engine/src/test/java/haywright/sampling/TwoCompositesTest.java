package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

class TwoCompositesTest {
    // Student's t, one degree of freedom, as every printed table has it: 6.314 at 90 %, 12.706 at 95 %, two-sided.
    @Test
    void oneDegreeOfFreedomIsWide() {
        assertThat(new TwoComposites(11, 13, 90).halfWidth()).isCloseTo(6.314, within(0.0005));
        assertThat(new TwoComposites(13, 11, 95).halfWidth()).isCloseTo(12.706, within(0.0005));
        assertThat(new TwoComposites(11, 13, 95).mean()).isEqualTo(12);
        assertThat(new TwoComposites(12, 12, 95).halfWidth()).isZero();
        FormulaCheck.reEvaluates(new TwoComposites(11.25, 12.5, 90));
    }

    @Test
    void whatIsNoResultIsRefused() {
        assertThatThrownBy(() -> new TwoComposites(-1, 12, 90)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new TwoComposites(Double.NaN, 12, 90)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new TwoComposites(11, 12, 100)).hasMessageContaining("confidence");
    }

    @Test
    void aPlanInTwoHalvesTheMassAndAsksTwiceTheLaboratory() {
        var stack = Subject.of(Material.LARGE_SQUARE_BALE, 120);
        var one = SamplingPlan.of(stack, Aim.USUAL);
        var two = SamplingPlan.of(stack, Aim.USUAL.inTwo());
        assertThat(two.used().design().units()).isEqualTo(one.used().design().units());
        assertThat(two.used().design().analyses()).isEqualTo(2);
        assertThat(two.grams()).isCloseTo(one.grams() / 2, within(1e-9));
        assertThat(two.massInWords()).startsWith("In each of the two: ");
        assertThat(two.used().costUsd()).isGreaterThan(one.used().costUsd());
        assertThat(two.used().halfWidth()).isLessThan(one.used().halfWidth());
        assertThatThrownBy(() -> SamplingPlan.of(Subject.of(Material.LARGE_SQUARE_BALE, 1), Aim.USUAL.inTwo()))
                .hasMessageContaining("at least two bales");
        assertThatThrownBy(() -> SamplingPlan.of(
                        Subject.of(Material.STOCK_WATER, 0),
                        Aim.USUAL.with(Purpose.WATER).inTwo()))
                .isInstanceOf(Refused.class);
    }
}
