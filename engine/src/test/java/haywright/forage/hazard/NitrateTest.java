package haywright.forage.hazard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NitrateTest {
    // 4.43 as crop file 5.03.011 prints it; the others by hand from N 14.007, NO3 62.005, KNO3 101.10.
    @ParameterizedTest(name = "1 {0} is {3} {1}")
    @CsvSource({
        "NO3_N, NO3, 0.005, 4.43",
        "NO3_N, KNO3, 0.005, 7.22",
        "NO3, NO3_N, 0.0005, 0.226",
        "NO3, KNO3, 0.005, 1.63",
        "KNO3, NO3_N, 0.0005, 0.139",
        "KNO3, NO3, 0.0005, 0.613"
    })
    void formsConvertByTheirMolarMasses(Nitrate.Form from, Nitrate.Form to, double asPrinted, double factor) {
        var nitrate = new Nitrate(1, from, Unit.PPM);
        assertThat(nitrate.ppm(to)).isCloseTo(factor, within(asPrinted));
        FormulaCheck.reEvaluates(nitrate);
    }

    // Manitoba Agriculture prints its limits as % NO3; the table of classes has them as whole ppm of NO3-N.
    @ParameterizedTest(name = "{0} % NO3 is {1} ppm NO3-N")
    @CsvSource({"0.3, 678", "0.6, 1355"})
    void manitobasLowerLimitsAreConvertedByMolarMasses(double printed, double no3n) {
        var nitrate = new Nitrate(printed, Nitrate.Form.NO3, Unit.PERCENT);
        assertThat(nitrate.no3n()).isCloseTo(no3n, within(0.5));
        FormulaCheck.reEvaluates(nitrate);
    }

    // The two upper figures were converted by the printed factor 4.43, which is a ppm stricter than the molar masses.
    @ParameterizedTest(name = "{0} % NO3 is {1} ppm NO3-N")
    @CsvSource({"0.9, 2032", "0.5, 1129"})
    void manitobasUpperLimitsAreConvertedByThePrintedFactor(double printed, double no3n) {
        assertThat(10_000 * printed / 4.43).isCloseTo(no3n, within(0.5));
        assertThat(new Nitrate(printed, Nitrate.Form.NO3, Unit.PERCENT).no3n()).isGreaterThanOrEqualTo(no3n);
    }

    @Test
    void everySourceAlwaysHasExactlyOneClass() {
        for (double ppm = 0; ppm <= 25_000; ppm += 0.5) {
            assertThat(new Nitrate(ppm, Nitrate.Form.NO3_N, Unit.PPM).classes())
                    .as("%s ppm", ppm)
                    .hasSize(5)
                    .extracting(NitrateClass::source)
                    .doesNotHaveDuplicates();
        }
    }

    @Test
    void theStrictestLimitsAreStrictestAndSayWhose() {
        assertThat(NitrateClass.safeForPregnant().upper()).isEqualTo(678);
        assertThat(NitrateClass.safeForOthers().upper()).isEqualTo(1000);
        assertThat(NitrateClass.doNotFeed().lower()).isEqualTo(2032);
        assertThat(NitrateClass.doNotFeed().source().cite()).contains("Manitoba");
        for (var row : NitrateClass.published()) {
            if (row.name().equals("safe")) {
                assertThat(row.upper()).isGreaterThanOrEqualTo(678);
            }
            if (row.name().equals("do not feed")) {
                assertThat(row.lower()).isGreaterThanOrEqualTo(2032);
            }
        }
    }

    @Test
    void sourcesThatDisagreeAreShownTogether() {
        assertThat(new Nitrate(1200, Nitrate.Form.NO3_N, Unit.PPM).classes())
                .extracting(NitrateClass::name)
                .containsExactly("caution", "caution", "caution", "caution", "safe");
    }

    @Test
    void dangerIsSaidInWordsThatSendOneToAVeterinarian() {
        assertThat(new Nitrate(600, Nitrate.Form.NO3_N, Unit.PPM).cautions()).isEmpty();
        assertThat(new Nitrate(678, Nitrate.Form.NO3_N, Unit.PPM).cautions()).isEmpty();
        assertThat(new Nitrate(679, Nitrate.Form.NO3_N, Unit.PPM).cautions())
                .singleElement()
                .extracting(Caution::words)
                .asString()
                .contains("veterinarian", "local advice");
        assertThat(new Nitrate(1.5, Nitrate.Form.KNO3, Unit.PERCENT).cautions())
                .singleElement()
                .extracting(Caution::words)
                .asString()
                .contains("within hours", "Do not feed it", "veterinarian");
    }

    @ParameterizedTest
    @CsvSource({"-1, NO3, PPM", "NaN, NO3, PPM", "50, NO3, PERCENT", "3000, NO3_N, PERCENT"})
    void impossibleNitrateIsRefused(double value, Nitrate.Form form, Unit unit) {
        assertThatThrownBy(() -> new Nitrate(value, form, unit))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nitrate is a number from 0 to 25000 ppm NO3-N");
    }

    @Test
    void nitrateInEnergyUnitsIsRefused() {
        assertThatThrownBy(() -> new Nitrate(1, Nitrate.Form.NO3, Unit.MCAL_PER_KG))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Is it % or ppm?");
    }

    // By where each stops calling it safe: 678, 700, 1,000, 1,000 and 1,500 ppm NO3-N.
    @Test
    void theStricterSourceComesFirst() {
        assertThat(new Nitrate(1200, Nitrate.Form.NO3_N, Unit.PPM).classes())
                .extracting(c -> c.source().cite().split(" ")[0])
                .containsExactly("Manitoba", "Regional", "Clemson", "New", "University");
    }
}
