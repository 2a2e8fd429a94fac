package haywright.forage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BasisConversionTest {
    @Test
    void everyWayThereAndBackIsTheSameFigureAndItsFormulaAgrees() {
        for (var of : BasisConversion.Of.values()) {
            for (var from : Basis.values()) {
                for (var to : Basis.values()) {
                    var there = new BasisConversion(of, 17.3, Unit.PERCENT, from, to, 86.5);
                    var back = new BasisConversion(of, there.result(), Unit.PERCENT, to, from, 86.5);
                    assertThat(back.result()).isCloseTo(17.3, within(1e-12));
                    FormulaCheck.reEvaluates(there);
                }
            }
        }
    }

    @Test
    void aWeightGrowsWithWaterWhereAConcentrationShrinks() {
        assertThat(fromDry(BasisConversion.Of.WEIGHT)).isCloseTo(25 / 0.9, within(1e-12));
        assertThat(fromDry(BasisConversion.Of.CONCENTRATION)).isCloseTo(22.5, within(1e-12));
        assertThat(fromDry(BasisConversion.Of.PRICE)).isCloseTo(22.5, within(1e-12));
    }

    private static double fromDry(BasisConversion.Of of) {
        return new BasisConversion(of, 25, Unit.POUND, Basis.DRY_MATTER, Basis.AS_RECEIVED, 90).result();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -5, 100.5, Double.NaN})
    void dryMatterThatCannotBeIsRefused(double dryMatter) {
        assertThatThrownBy(() -> new BasisConversion(
                        BasisConversion.Of.PRICE,
                        1,
                        Unit.DOLLAR_PER_TON,
                        Basis.AS_RECEIVED,
                        Basis.DRY_MATTER,
                        dryMatter))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("dry matter is above 0 and at most 100 % of the feed as received");
    }

    @Test
    void aValueThatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> new BasisConversion(
                        BasisConversion.Of.WEIGHT, Double.NaN, Unit.POUND, Basis.AS_RECEIVED, Basis.DRY_MATTER, 90))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a value is a number");
    }
}
