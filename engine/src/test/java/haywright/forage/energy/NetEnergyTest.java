package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.FormulaCheck;
import haywright.workings.Caution;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The published rows are in {@code worked_examples.csv}; here is what always holds. */
class NetEnergyTest {
    @Test
    void moreTdnIsMoreOfEachEnergyInTheirOrder() {
        for (double tdn = 39; tdn <= 95; tdn++) {
            var energy = new NetEnergy(tdn);
            assertThat(energy.nem()).isGreaterThan(new NetEnergy(tdn - 1).nem());
            assertThat(energy.neg()).isLessThan(energy.nem());
            assertThat(energy.nem()).isLessThan(energy.me());
            assertThat(energy.me()).isLessThan(energy.de());
            FormulaCheck.reEvaluates(energy);
        }
    }

    @Test
    void gainEnergyBelowNothingIsNothingAndSaysSo() {
        var straw = new NetEnergy(36);
        assertThat(straw.neg()).isZero();
        assertThat(straw.cautions())
                .extracting(Caution::words)
                .anyMatch(w -> w.contains("0 is taken"))
                .anyMatch(w -> w.contains("below 40 %"));
        FormulaCheck.reEvaluates(straw);
        assertThat(new NetEnergy(58).cautions()).isEmpty();
        assertThat(new NetEnergy(39).cautions()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource({"NaN", "0.58", "-3", "111", "Infinity"})
    void whatIsNoTdnIsRefused(double tdn) {
        assertThatThrownBy(() -> new NetEnergy(tdn))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("TDN of a feed is from 20 to 110 % of dry matter");
    }

    @Test
    void aFractionIsNamed() {
        assertThatThrownBy(() -> new NetEnergy(0.58)).hasMessageContaining("Was it typed as a fraction?");
    }
}
