package haywright.sampling.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.List;
import java.util.UUID;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class StockKindsTest {
    private static final Quantity DENSE = Quantity.of(14, Unit.LB_PER_FT3);

    private static Quantity feet(double value) {
        return Quantity.of(value, Unit.FOOT);
    }

    private static double tons(Stock stock) {
        return Unit.TON.fromBase(stock.asFedKg().orElseThrow());
    }

    // The documented examples: 98.1748 ft³ and 11.2045 lb/ft³ for a 5 × 5 ft bale of 1,100 lb.
    @Test
    void theDocumentedBaleHolds() {
        var bale = new BaleSize.Round(Unit.FOOT.toBase(5), Unit.FOOT.toBase(5));
        assertThat(Unit.CUBIC_FOOT.fromBase(bale.volume())).isCloseTo(98.1748, within(0.00005));
        assertThat(Unit.LB_PER_FT3.fromBase(bale.density(Unit.POUND.toBase(1100))))
                .isCloseTo(11.2045, within(0.00005));
        FormulaCheck.reEvaluates(bale);
        FormulaCheck.reEvaluates(new BaleSize.Square(2.4, 0.9, 1.2));
    }

    // Iowa State C6-82: a tower of 20 × 60 ft holds 160 tons of dry matter of corn silage.
    @Test
    void aTowerHoldsWhatTheTableSays() {
        var silo = new UprightSilo(UprightSilo.Filling.CORN_SILAGE, feet(20), feet(60), feet(0), 35);
        assertThat(Unit.TON.fromBase(silo.dryMatterKg())).isCloseTo(160, within(0.5));
        FormulaCheck.reEvaluates(silo);
        var opened = new UprightSilo(UprightSilo.Filling.HAYLAGE, feet(20), feet(60), feet(25), 45);
        assertThat(tons(opened))
                .isLessThan(tons(new UprightSilo(UprightSilo.Filling.HAYLAGE, feet(20), feet(60), feet(0), 45)));
        FormulaCheck.reEvaluates(opened);
        assertThatThrownBy(() -> new UprightSilo(UprightSilo.Filling.HAYLAGE, feet(20), feet(60), feet(61), 45))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("more fed than there was");
    }

    // Iowa State C6-82: bushels = 0.628·D²·depth.
    @Test
    void aBinHoldsWhatTheShortRuleSays() {
        var bin = new Bin(feet(24), feet(18), feet(6), Quantity.of(56, Unit.POUND));
        assertThat(bin.bushels() / (0.628 * 24 * 24 * 20)).isCloseTo(1, within(0.0008)); // 0.628 is rounded
        FormulaCheck.reEvaluates(bin);
    }

    @Test
    void aPileIsABoxWhenItsSidesAreUprightAndAPyramidWhenTheyMeet() {
        var box = new Pile(feet(100), feet(40), feet(10), 0, DENSE, 35);
        assertThat(Unit.CUBIC_FOOT.fromBase(box.volume())).isCloseTo(40_000, within(1e-6));
        var roof = new Pile(feet(60), feet(60), feet(10), 3, DENSE, 35);
        assertThat(Unit.CUBIC_FOOT.fromBase(roof.volume())).isCloseTo(60 * 60 * 10 / 3.0, within(1e-6));
        FormulaCheck.reEvaluates(box);
        FormulaCheck.reEvaluates(new Pile(feet(120), feet(70), feet(10), 3, DENSE, 35));
        assertThatThrownBy(() -> new Pile(feet(60), feet(50), feet(10), 3, DENSE, 35))
                .hasMessageContaining("slope");
    }

    // USDA rules, worked by hand: (0.52·40 − 0.44·20)·20·50 = 12,000 ft³, at 450 ft³ a ton 26.7 tons.
    @Test
    void aLooseStackByTheTapeThrownOver() {
        var stack = new LooseStack(LooseStack.Shape.LOW_ROUND_TOPPED, feet(50), feet(20), feet(40));
        assertThat(Unit.CUBIC_FOOT.fromBase(stack.volume())).isCloseTo(12_000, within(1e-6));
        assertThat(tons(stack)).isCloseTo(26.667, within(0.0005));
        for (var shape : LooseStack.Shape.values()) {
            FormulaCheck.reEvaluates(new LooseStack(shape, feet(50), feet(20), feet(40)));
        }
        assertThatThrownBy(() -> new LooseStack(LooseStack.Shape.LOW_ROUND_TOPPED, feet(50), feet(20), feet(19)))
                .hasMessageContaining("swapped");
    }

    @Test
    void everyKindSaysTheLeastAndTheMost() {
        var bale = Quantity.of(1250, Unit.POUND);
        var kinds = List.of(
                new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 100, bale, null, null, null),
                new Stock.Bunker(feet(80), feet(24), feet(8), DENSE, 33),
                new Stock.Bag(feet(8), feet(184), Quantity.of(13, Unit.LB_PER_FT3), 35),
                new Stock.Weighed(Quantity.of(42, Unit.TON)),
                new RoundPyramid(60, bale, 3, 3, 10),
                new LooseStack(LooseStack.Shape.SQUARE_FLAT_TOPPED, feet(50), feet(20), feet(40)),
                new Pile(feet(120), feet(70), feet(10), 3, DENSE, 35),
                new UprightSilo(UprightSilo.Filling.CORN_SILAGE, feet(20), feet(60), feet(0), 35),
                new Bin(feet(24), feet(18), feet(0), Quantity.of(48, Unit.POUND)));
        for (Stock stock : kinds) {
            double kg = stock.asFedKg().orElseThrow();
            var range = stock.range().orElseThrow();
            assertThat(range.lowKg()).isLessThan(kg);
            assertThat(range.highKg()).isGreaterThan(kg);
            assertThat(range.words()).isNotBlank();
            FormulaCheck.reEvaluates(stock);
        }
        // 100 bales missed by 100 lb each are 5 tons either way.
        var round = kinds.get(0).range().orElseThrow();
        assertThat(Unit.TON.fromBase(round.highKg() - round.lowKg())).isCloseTo(10, within(1e-9));
        assertThat(new Stock.Standing(UUID.randomUUID(), null).range()).isEmpty();
    }

    // Eight bales worked by hand: mean 1,200 lb, spread 40 lb, of 100: H = 100·t(7)·40·sqrt((1 − 8/100)/8).
    @Test
    void weighedBalesGiveARangeOfTheLot() {
        var pounds = List.of(1150.0, 1160.0, 1180.0, 1200.0, 1200.0, 1220.0, 1240.0, 1250.0);
        var weighing = new Weighing(pounds.stream().map(Unit.POUND::toBase).toList(), 100, 90);
        assertThat(Unit.POUND.fromBase(weighing.totalKg())).isCloseTo(120_000, within(1e-6));
        double spread = Math.sqrt((2500 + 1600 + 400 + 400 + 1600 + 2500) / 7.0);
        double t = new TDistribution(7).inverseCumulativeProbability(0.95);
        assertThat(Unit.POUND.fromBase(weighing.halfWidthKg()))
                .isCloseTo(100 * t * spread * Math.sqrt(0.92 / 8), within(1e-4));
        FormulaCheck.reEvaluates(weighing);
        assertThatThrownBy(() -> new Weighing(List.of(500.0, 510.0), 1, 90)).hasMessageContaining("2 weighed of 1");
    }
}
