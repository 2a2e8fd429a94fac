package haywright.sampling.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.chance.Draws;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class PlotYieldTest {
    private static PlotYield plots(Double... grams) {
        return new PlotYield(List.of(grams), 0.25, 100, 80, 20, 50);
    }

    // Published conversions: kg/ha = g/m² · 10; lb/acre = g per square foot · 96.03.
    @Test
    void gramsOnAPlotBecomeYieldAsPublished() {
        assertThat(new PlotYield(List.of(100.0, 100.0), 1, 100, 80, 20, 50).kgPerHa())
                .isCloseTo(1000, within(1e-9));
        double perSquareFoot =
                new PlotYield(List.of(10.0, 10.0), Unit.SQUARE_FOOT.toBase(1), 100, 80, 20, 50).kgPerHa();
        assertThat(Unit.KG_PER_HA.to(Unit.LB_PER_ACRE, perSquareFoot) / 10).isCloseTo(96.03, within(0.005));
    }

    // Five plots worked by hand: mean 50 g, spread sqrt(250/4) = 7.9057 g; t(0.90, 4) from a reference library.
    @Test
    void fivePlotsWorkedByHand() {
        var yield = plots(40.0, 45.0, 50.0, 55.0, 60.0);
        double t = new TDistribution(4).inverseCumulativeProbability(0.9);
        assertThat(yield.kgPerHa()).isCloseTo(2000, within(1e-9));
        assertThat(yield.spread()).isCloseTo(7.905694 / 0.25 * 10, within(1e-4));
        assertThat(yield.halfWidth()).isCloseTo(t * 316.2278 / Math.sqrt(5), within(0.01));
        assertThat(yield.plotsNeeded()).isEqualTo(Math.max(5, (int) Math.ceil(Math.pow(t * 316.2278 / 400, 2))));
        assertThat(yield.usableKgPerHa()).isCloseTo(1000, within(1e-9));
        FormulaCheck.reEvaluates(yield);
    }

    /**
     * Stein's two-stage sample holds its promise over many fields; stopping as soon as the interval looks narrow enough
     * does not. The promise is 80 %.
     */
    @Test
    void fixingTheNumberOnceCoversAndStoppingEarlyDoesNot() {
        var draws = new Draws(1945);
        int trials = 4000;
        int twoStage = 0;
        int stopping = 0;
        for (int trial = 0; trial < trials; trial++) {
            var plots = new ArrayList<Double>();
            for (int i = 0; i < 5; i++) {
                plots.add(100 + 35 * draws.normal());
            }
            double d = 20;
            double t = new TDistribution(4).inverseCumulativeProbability(0.9);
            int n = (int) Math.max(5, Math.ceil(Math.pow(t * spread(plots) / d, 2)));
            var all = new ArrayList<>(plots);
            while (all.size() < n) {
                all.add(100 + 35 * draws.normal());
            }
            twoStage += Math.abs(mean(all) - 100) <= d ? 1 : 0;
            var early = new ArrayList<>(plots.subList(0, 3));
            while (new PlotYield(positive(early), 1, 100, 80, 100 * d / Math.max(1, mean(early)), 50).plotsNeeded()
                            > early.size()
                    && early.size() < 200) {
                early.add(100 + 35 * draws.normal());
            }
            stopping += Math.abs(mean(early) - 100) <= d ? 1 : 0;
        }
        assertThat((double) twoStage / trials).isGreaterThan(0.8);
        assertThat(stopping).isLessThan(twoStage);
    }

    private static List<Double> positive(List<Double> plots) {
        return plots.stream().map(p -> Math.max(0, p)).toList();
    }

    private static double mean(List<Double> plots) {
        return plots.stream().mapToDouble(p -> p).average().orElseThrow();
    }

    private static double spread(List<Double> plots) {
        double mean = mean(plots);
        return Math.sqrt(
                plots.stream().mapToDouble(p -> (p - mean) * (p - mean)).sum() / (plots.size() - 1));
    }

    @Test
    void anEmptyFieldYieldsNothingAndBarePlotsCount() {
        assertThat(plots(0.0, 0.0, 0.0).kgPerHa()).isZero();
        assertThat(plots(0.0, 0.0, 0.0).plotsNeeded()).isEqualTo(3);
        FormulaCheck.reEvaluates(plots(0.0, 0.0, 0.0));
        assertThat(plots(0.0, 80.0, 10.0).low()).isZero();
    }

    @Test
    void badPlotsAreRefused() {
        assertThatThrownBy(() -> plots(12.0)).isInstanceOf(Refused.class).hasMessageContaining("two plots");
        assertThatThrownBy(() -> plots(12.0, -1.0)).hasMessageContaining("A bare plot counts");
        assertThatThrownBy(() -> new PlotYield(List.of(1.0, 2.0), 0, 100, 80, 20, 50))
                .hasMessageContaining("frame");
        assertThatThrownBy(() -> new PlotYield(List.of(1.0, 2.0), 1, 101, 80, 20, 50))
                .hasMessageContaining("dry matter");
    }
}
