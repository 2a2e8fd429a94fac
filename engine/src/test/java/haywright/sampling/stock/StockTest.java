package haywright.sampling.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import org.junit.jupiter.api.Test;

class StockTest {
    private static Quantity feet(double value) {
        return Quantity.of(value, Unit.FOOT);
    }

    private static final Quantity DENSE = Quantity.of(14, Unit.LB_PER_FT3);

    @Test
    void workingsGiveTheMassAgain() {
        var bunker = new Stock.Bunker(feet(80), feet(24), feet(8), DENSE, 33);
        var bag = new Stock.Bag(feet(9), feet(150), Quantity.of(13, Unit.LB_PER_FT3), 35);
        var bales = new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 210, Quantity.of(1250, Unit.POUND), 30, 7, 1);
        var weighed = new Stock.Weighed(Quantity.of(42, Unit.TON));
        for (Stock stock : new Stock[] {bunker, bag, bales, weighed}) {
            FormulaCheck.reEvaluates(stock);
            var lines = stock.lines();
            assertThat(stock.asFedKg().orElseThrow())
                    .isCloseTo(lines.get(lines.size() - 1).value(), within(1e-6));
        }
    }

    // 80 · 24 · 8 ft at 14 lb of dry matter a cubic foot are 215,040 lb of dry matter; at 33 % that is 325.8 tons.
    @Test
    void aBunkerIsWeighedByItsDryMatter() {
        var bunker = new Stock.Bunker(feet(80), feet(24), feet(8), DENSE, 33);
        assertThat(Unit.TON.fromBase(bunker.asFedKg().orElseThrow())).isCloseTo(325.818, within(0.0005));
    }

    @Test
    void aWrongFigureIsRefusedByName() {
        assertThatThrownBy(() -> new Stock.Bunker(feet(0), feet(24), feet(-1), DENSE, 0))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("length")
                .hasMessageContaining("height")
                .hasMessageContaining("dryMatterPercent");
        assertThatThrownBy(() ->
                        new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 0, Quantity.of(0, Unit.POUND), null, null, null))
                .hasMessageContaining("at least one bale")
                .hasMessageContaining("weighs more than 0");
        assertThatThrownBy(() -> new Stock.Weighed(feet(3))).isInstanceOf(Refused.class);
    }
}
