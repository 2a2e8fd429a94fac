package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnergyLineTest {
    // By hand from the published coefficients: 60 % TDN, 10 % ADF of corn, 40 % ADF of forage.
    @ParameterizedTest(name = "{0} of {1} is {2}")
    @CsvSource({
        "nel-nfta, 60, 0.6144",
        "nel-nrc-1989, 60, 1.35",
        "nel-shelled-corn, 10, 0.879",
        "nel-ear-corn, 10, 0.833",
        "nem-straight, 60, 0.66",
        "neg-straight, 60, 0.333",
        "nel-penn-state-legume, 40, 0.568",
        "nel-penn-state-mixed, 40, 0.52",
        "nel-penn-state-grass, 40, 0.485",
        "nel-penn-state-corn-silage, 40, 0.548"
    })
    void eachPublishedLineIsItsOwn(String id, double x, double byHand) {
        var energy = new LinearNetEnergy(named(id), x);
        assertThat(energy.asPrinted()).isCloseTo(byHand, within(1e-12));
        FormulaCheck.reEvaluates(energy);
    }

    private static EnergyLine named(String id) {
        return EnergyLine.published().stream()
                .filter(line -> line.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    // The two editions print one line in two units: 0.01114 Mcal/lb is 0.02456 Mcal/kg, printed 0.0245.
    @Test
    void netEnergyOfMilkInPoundsAndInKilogramsIsOneLine() {
        for (double tdn = 45; tdn <= 75; tdn += 5) {
            assertThat(new LinearNetEnergy(named("nel-nfta"), tdn).mcalPerKg())
                    .isCloseTo(new LinearNetEnergy(named("nel-nrc-1989"), tdn).mcalPerKg(), within(0.006));
        }
    }

    // At 58 % TDN the straight lines print 0.63 and 0.31 Mcal/lb; the cubics give 0.56 and 0.31.
    @Test
    void theStraightLinesPartFromTheCubicsInMaintenance() {
        var cubic = new NetEnergy(58);
        assertThat(new LinearNetEnergy(named("nem-straight"), 58).asPrinted()).isCloseTo(0.63, within(0.005));
        assertThat(new LinearNetEnergy(named("neg-straight"), 58).asPrinted()).isCloseTo(0.31, within(0.005));
        assertThat(Unit.MCAL_PER_KG.to(Unit.MCAL_PER_LB, cubic.nem())).isCloseTo(0.56, within(0.005));
        assertThat(Unit.MCAL_PER_KG.to(Unit.MCAL_PER_LB, cubic.neg())).isCloseTo(0.31, within(0.005));
    }

    @Test
    void anImpossibleTdnOrFiberIsRefused() {
        assertThatThrownBy(() -> new LinearNetEnergy(named("nel-nfta"), 0.6)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new LinearNetEnergy(named("nel-ear-corn"), -1)).isInstanceOf(Refused.class);
    }

    // By hand, from the parts of a wheat straw: tdNFC 14.308, tdCP 3.55593, tdFA 0.6, tdNDF 35.3304.
    @Test
    void digestibleEnergyCountsEachFractionForWhatItHolds() {
        var straw = new SummativeTdn(new Fractions(73, 1.6, 8.8, 4.8, 1.2, 1.6, 7.6), SummativeTdn.Kind.FORAGE, 1);
        var energy = new DigestibleEnergy(straw);
        assertThat(energy.mcalPerKg()).isCloseTo(2.04034, within(1e-4));
        FormulaCheck.reEvaluates(energy);
    }

    // 71.4 % fiber free of protein, 40 % of it digested in 48 hours.
    @Test
    void theFibersOwnDigestibilityStandsInForLignin() {
        var parts = new Fractions(73, 1.6, 8.8, 4.8, 1.2, 1.6, 7.6);
        var straw = new SummativeTdn(parts, SummativeTdn.Kind.FORAGE, 1, OptionalDouble.of(40));
        assertThat(straw.fiber()).isCloseTo(28.56, within(1e-9));
        assertThat(straw.percent())
                .isCloseTo(
                        new SummativeTdn(parts, SummativeTdn.Kind.FORAGE, 1).percent() - 35.3304 + 28.56, within(1e-3));
        FormulaCheck.reEvaluates(straw);
        assertThatThrownBy(() -> new SummativeTdn(parts, SummativeTdn.Kind.FORAGE, 1, OptionalDouble.of(140)))
                .isInstanceOf(Refused.class);
    }
}
