package haywright.cattle.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

/** The printed classes themselves are checked row by row in PublishedRequirementsTest. */
class ForageCapacityTest {
    @Test
    void itRisesWithoutAStep() {
        double last = ForageCapacity.percentOfBodyWeight(30, 0.3);
        for (double tdn = 30.1; tdn < 80; tdn += 0.1) {
            double now = ForageCapacity.percentOfBodyWeight(tdn, 0.3);
            assertThat(now).isBetween(last, last + 0.01);
            last = now;
        }
    }

    @Test
    void cattleInMilkHoldMore() {
        assertThat(ForageCapacity.percentOfBodyWeight(54, 1)).isGreaterThan(ForageCapacity.percentOfBodyWeight(54, 0));
    }

    /** Alberta Agriculture: 1.25 % of body weight for a mature cow. */
    @Test
    void strawIsForCattleThatHaveNotCalved() {
        assertThat(ForageCapacity.strawPercentOfBodyWeight(AnimalClass.MATURE_COW, 0))
                .isEqualTo(1.25);
        assertThat(ForageCapacity.strawPercentOfBodyWeight(AnimalClass.MATURE_COW, 1))
                .isZero();
        assertThat(ForageCapacity.strawPercentOfBodyWeight(AnimalClass.BRED_HEIFER, 0))
                .isEqualTo(0.5);
        assertThat(ForageCapacity.strawPercentOfBodyWeight(AnimalClass.GROWING, 0))
                .isZero();
        assertThat(ForageCapacity.strawPercentOfBodyWeight(AnimalClass.MATURE_COW, 0.2))
                .isCloseTo(1.0, within(1e-12));
    }

    @Test
    void everyClassHasItsStraw() {
        for (var animals : AnimalClass.values()) {
            assertThat(ForageCapacity.strawPercentOfBodyWeight(animals, 0)).isNotNegative();
        }
    }

    @Test
    void aShareThatIsNoneIsRefused() {
        assertThatThrownBy(() -> new ForageCapacity(55, 25)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new ForageCapacity(Double.NaN, 0)).isInstanceOf(Refused.class);
    }
}
