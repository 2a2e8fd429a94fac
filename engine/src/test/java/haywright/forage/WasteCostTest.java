package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WasteCostTest {
    // Wells and Lalman (Oklahoma State), Noble Ag News and Views, October 2011: bales of 1,200 lb at $70, dollars lost
    // a
    // bale by feeder, half of the last digit printed
    @ParameterizedTest(name = "{0} % lost costs ${1} a bale")
    @CsvSource({"5.3, 3.71", "13.0, 9.10", "20.5, 14.35", "21.0, 14.70"})
    void agreesWithTheTableOfFeeders(double loss, double printed) {
        assertThat(1200 * new WasteCost(70.0 / 1200, loss).lost()).isCloseTo(printed, within(0.005));
    }

    // Schmitz (University of Missouri) in Wyoming Livestock Roundup 2023: a bale of 1,200 lb at $75 of which a quarter
    // is
    // lost costs $167 a ton eaten
    @Test
    void whatIsEatenCarriesWhatIsLost() {
        assertThat(2000 * new WasteCost(75.0 / 1200, 25).eaten()).isCloseTo(167, within(0.5));
    }

    @Test
    void allOfItCannotBeWasted() {
        assertThatThrownBy(() -> new WasteCost(0.1, 100)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new WasteCost(0, 10)).isInstanceOf(Refused.class);
    }
}
