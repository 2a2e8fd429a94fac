package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RelativeFeedValueTest {
    /** Half of the last digit printed: these sources print whole numbers. */
    private static final double AS_PRINTED = 0.5;

    // Oklahoma State University, "Forage quality testing (RFV)", calculated RFV, row ADF 20.
    @ParameterizedTest(name = "ADF 20 and NDF {0} score {1}")
    @CsvSource({"30, 227", "32, 213", "40, 171", "46, 148", "50, 136", "54, 126"})
    void agreesWithTheOklahomaTable(double ndf, double printed) {
        assertThat(new RelativeFeedValue(new Fiber(20, ndf)).index()).isCloseTo(printed, within(AS_PRINTED));
    }

    // Boman, Utah State University Extension, worked example: 28 % ADF, 35 % NDF.
    @Test
    void everyStepOfTheUtahWorkedExampleAgrees() {
        var hay = new RelativeFeedValue(new Fiber(28, 35));
        assertThat(hay.digestibleDryMatter()).isCloseTo(67.1, within(0.05));
        assertThat(hay.intake()).isCloseTo(3.43, within(0.005));
        assertThat(hay.index()).isCloseTo(178, within(AS_PRINTED));
    }

    @Test
    void moreFiberNeverScoresHigher() {
        for (double ndf = 31; ndf <= 75; ndf++) {
            assertThat(new RelativeFeedValue(new Fiber(30, ndf)).index())
                    .isLessThan(new RelativeFeedValue(new Fiber(30, ndf - 1)).index());
            assertThat(new RelativeFeedValue(new Fiber(30, ndf)).index())
                    .isLessThan(new RelativeFeedValue(new Fiber(29, ndf)).index());
        }
    }

    @Test
    void itsFormulasGiveItsNumbers() {
        FormulaCheck.reEvaluates(new RelativeFeedValue(new Fiber(38.6, 61.2)));
    }

    @Test
    void swappedFibersAreRefusedBeforeTheyGiveANumber() {
        assertThatThrownBy(() -> new Fiber(53, 41))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "adf: ADF 53 % and NDF 41 % of dry matter: they cannot both be right: ADF is part of NDF, and "
                                + "NDF is above 0 and at most 100. Are the two swapped?");
    }

    @ParameterizedTest
    @CsvSource({"NaN, 40", "30, NaN", "-1, 40", "0, 0", "30, 101", "30, Infinity"})
    void whatIsNoPairOfFibersIsRefused(double adf, double ndf) {
        assertThatThrownBy(() -> new Fiber(adf, ndf))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("NDF is above 0");
    }
}
