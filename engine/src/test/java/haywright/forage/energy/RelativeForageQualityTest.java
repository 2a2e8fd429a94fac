package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.energy.RelativeForageQuality.Stand;
import haywright.workings.Refused;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** No worked example was found in print: the answers were worked by hand from the published equations. */
class RelativeForageQualityTest {
    @Test
    void legume() {
        var hay = new RelativeForageQuality(
                Stand.LEGUME, OptionalDouble.empty(), 42, OptionalDouble.of(2.5), 19, 2.2, 9.5, 46);
        assertThat(hay.tdn()).isCloseTo(60.663, within(0.0005));
        assertThat(hay.intake()).isCloseTo(2.88485, within(0.000005));
        assertThat(hay.index()).isCloseTo(142.279, within(0.0005));
        FormulaCheck.reEvaluates(hay);
    }

    @Test
    void grass() {
        var hay =
                new RelativeForageQuality(Stand.GRASS, OptionalDouble.of(37), 60, OptionalDouble.of(3), 11, 2.4, 8, 52);
        assertThat(hay.tdn()).isCloseTo(56.4135, within(0.00005));
        assertThat(hay.intake()).isCloseTo(2.49280, within(0.000005));
        assertThat(hay.index()).isCloseTo(114.331, within(0.0005));
        assertThat(hay.inRange()).isTrue();
        FormulaCheck.reEvaluates(hay);
    }

    /** Made to have the level of relative feed value: full-bloom alfalfa, 41 ADF and 53 NDF, is about 100 by both. */
    @Test
    void fullBloomAlfalfaIsAboutAHundred() {
        var hay = new RelativeForageQuality(
                Stand.LEGUME, OptionalDouble.empty(), 53, OptionalDouble.empty(), 17, 2, 9, 45);
        assertThat(hay.index()).isCloseTo(100, within(5.0));
        FormulaCheck.reEvaluates(hay);
    }

    @Test
    void whatCannotBeOneSampleIsRefused() {
        assertThatThrownBy(() -> new RelativeForageQuality(
                        Stand.GRASS, OptionalDouble.empty(), 60, OptionalDouble.empty(), 11, 2, 8, 52))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("ADF");
        assertThatThrownBy(() -> new RelativeForageQuality(
                        Stand.LEGUME, OptionalDouble.empty(), 60, OptionalDouble.of(3), 40, 2, 8, 52))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at most 100");
    }
}
