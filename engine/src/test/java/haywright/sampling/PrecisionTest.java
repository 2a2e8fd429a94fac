package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.chance.Draws;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PrecisionTest {
    // The documented example: 20 units, V_b 0.64, V_l 0.25: SE = sqrt(0.64/20 + 0.25) = 0.531037.
    @Test
    void theDocumentedExampleHolds() {
        var precision = new Precision(Spread.of(0.64, 0, 0.25), Design.of(20, 1, 1), 0, 95);
        assertThat(precision.standardError()).isCloseTo(0.531037, within(0.0000005));
        assertThat(precision.halfWidth()).isCloseTo(1.959964 * 0.531037, within(0.000002));
        FormulaCheck.reEvaluates(precision);
    }

    /** Draws whole lots and samples of them: the formula must be the spread of the composites about the lot's own mean. */
    @ParameterizedTest
    @CsvSource({"40, 8, 1", "40, 8, 3", "12, 12, 2", "25, 1, 4"})
    void theVarianceIsThatOfSimulatedComposites(int lot, int units, int cores) {
        double between = 0.5;
        double within = 0.3;
        double laboratory = 0.1;
        var draws = new Draws(11);
        var errors = new StreamingStatistics();
        for (int trial = 0; trial < 20_000; trial++) {
            var bales = new double[lot];
            double mean = 0;
            for (int i = 0; i < lot; i++) {
                bales[i] = Math.sqrt(between) * draws.normal();
                mean += bales[i] / lot;
            }
            double sample = 0;
            for (int i = 0; i < units; i++) {
                int j = i + draws.below(lot - i);
                double swapped = bales[j];
                bales[j] = bales[i];
                bales[i] = swapped;
                sample += swapped / units;
                for (int k = 0; k < cores; k++) {
                    sample += Math.sqrt(within) * draws.normal() / (units * cores);
                }
            }
            errors.addValue(sample + Math.sqrt(laboratory) * draws.normal() - mean);
        }
        double formula =
                new Precision(Spread.of(between, within, laboratory), Design.of(units, cores, 1), lot, 95).variance();
        assertThat(errors.getVariance() / formula).isCloseTo(1, within(4 * Math.sqrt(2.0 / 20_000)));
    }

    @Test
    void ownCoresTakeThePlaceOfTheBook() {
        var own = Spread.ofOwnCores(List.of(11.8, 12.9, 12.1, 13.4, 12.6), Spread.of(0.4, 0.4, 0.0625));
        assertThat(own.between() + own.within()).isCloseTo(0.403 - 0.0625, within(1e-9)); // variance of the five: 0.403
        var precision = new Precision(own, Design.of(10, 1, 1), 0, 95);
        FormulaCheck.reEvaluates(precision);
    }

    @Test
    void everyBaleCoredLeavesOnlyWhatIsInsideThem() {
        var precision = new Precision(Spread.of(0.8, 0.2, 0), Design.of(10, 2, 1), 10, 95);
        assertThat(precision.variance()).isCloseTo(0.2 / 20, within(1e-12));
        FormulaCheck.reEvaluates(precision);
    }

    @ParameterizedTest
    @CsvSource({
        "0.3, 0.5, 0.0625, 100",
        "0.4, 0.4, 0, 0",
        "0.05, 1.2, 0.1, 60",
        "1.5, 0.01, 0.05, 0",
        "0.4, 0.4, 0.0625, 7"
    })
    void theCheapestIsCheaperThanEveryOtherThatReachesTheHalfWidth(
            double between, double within, double laboratory, int lot) {
        var costs = new Costs(1.3, 0.6, 28, Source.ARITHMETIC);
        var size =
                new SampleSize(Material.LARGE_ROUND_BALE, lot, Spread.of(between, within, laboratory), 0.5, 95, costs);
        var found = size.of(Rule.CHEAPEST);
        double best = Double.MAX_VALUE;
        for (int n = Math.min(6, lot == 0 ? 6 : lot); n <= (lot == 0 ? 200 : lot); n++) {
            for (int c = 1; c <= 20; c++) {
                for (int k = 1; k <= 8; k++) {
                    var design = Design.of(n, c, k);
                    if (new Precision(size.spread(), design, lot, 95).halfWidth() <= 0.5) {
                        best = Math.min(best, costs.of(design));
                    }
                }
            }
        }
        assertThat(found.reached()).isTrue();
        assertThat(found.costUsd()).isCloseTo(best, within(1e-9));
    }

    @Test
    void theWorkingsReckonAgainWithABookOfAnySize() {
        FormulaCheck.reEvaluates(size(Spread.of(0.405, 0.405, 0.0625), 100, 0.8));
        FormulaCheck.reEvaluates(size(Spread.of(0.405, 0.405, 0), 0, 0.4));
    }

    // Three cores that agree to the last digit say nothing of a lot of a thousand bales.
    @Test
    void coresThatAgreeByChanceLeaveTheLotItsSpread() {
        var book = Spread.ofBook(Crop.GRASS_HAY, "cp");
        for (var results : List.of(List.of(12.0, 12.0, 12.0), List.of(12.0, 12.1, 12.0, 11.9))) {
            var own = Spread.ofOwnCores(results, book);
            assertThat(own.between() + own.within()).isCloseTo((book.between() + book.within()) / 4, within(1e-12));
            var size = size(own, 1000, 2.5);
            assertThat(size.of(Rule.CHEAPEST).design().units()).isGreaterThanOrEqualTo(6);
            FormulaCheck.reEvaluates(size);
        }
        assertThat(size(book, 4, 50).of(Rule.CHEAPEST).design().units()).isEqualTo(4);
    }

    // H² = t²·0.3405/10 + z²·0.0625: the laboratory's repeats were not estimated from the five.
    @Test
    void studentWidensOnlyWhatWasEstimated() {
        var own = Spread.ofOwnCores(List.of(11.8, 12.9, 12.1, 13.4, 12.6), Spread.of(0.4, 0.4, 0.0625));
        double t = new TDistribution(4).inverseCumulativeProbability(0.975);
        assertThat(new Precision(own, Design.of(10, 1, 1), 0, 95).halfWidth())
                .isCloseTo(Math.sqrt(t * t * 0.03405 + 1.959964 * 1.959964 * 0.0625), within(1e-5));
    }

    // A bale that gave seven cores is seven tenths of the composite: 0.7² + 3·0.1² = 0.52, not a quarter.
    @Test
    void aBaleWithMoreCoresWeighsMore() {
        var uneven = Design.of(List.of(7, 1, 0, 1, 1), 1);
        assertThat(new Precision(Spread.of(0.8, 0, 0), uneven, 0, 95).variance())
                .isCloseTo(0.8 * 0.52, within(1e-12));
        assertThat(new Precision(Spread.of(0, 0.8, 0), uneven, 0, 95).variance())
                .isCloseTo(0.08, within(1e-12));
        assertThat(Design.of(List.of(2, 2, 2), 1)).isEqualTo(Design.of(3, 2, 1));
        FormulaCheck.reEvaluates(new Precision(Spread.of(0.8, 0.3, 0.1), uneven, 40, 95));
    }

    // One bale: no bale is left to add. (0.5/1.96)² = 0.0651; two analyses leave 0.0338 of it, and 0.405/12 is within
    // that.
    @Test
    void whereBalesRunOutTheRuleTakesMoreFromEach() {
        var size = size(Spread.of(0.405, 0.405, 0.0625), 1, 0.5);
        var found = size.of(Rule.CHEAPEST);
        assertThat(found.reached()).isTrue();
        assertThat(found.design()).isEqualTo(Design.of(1, 12, 2));
        FormulaCheck.reEvaluates(size);
    }

    @Test
    void whatCannotBeReachedIsSaid() {
        var found = size(Spread.of(0.4, 0.4, 9), 100, 0.5).of(Rule.CHEAPEST);
        assertThat(found.reached()).isFalse();
        assertThat(found.why()).contains("Ask for a wider plus");
    }

    @Test
    void rulesStandSideBySideAndAreNotAveraged() {
        var all = size(Spread.of(0.405, 0.405, 0.0625), 300, 0.6).sideBySide();
        assertThat(all).extracting(Choice::rule).containsExactly(Rule.TWENTY_CORES, Rule.TEN_PERCENT, Rule.CHEAPEST);
        assertThat(all).extracting(c -> c.design().units()).startsWith(20, 30);
        assertThat(all)
                .allMatch(c -> c.costUsd() > 0
                        && c.halfWidth() > 0
                        && !c.source().cite().isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 1", "9, 9, 9", "10, 10, 10", "11, 10, 11", "100, 10, 20", "101, 11, 20", "100000, 10000, 20"})
    void theFloorOfTheTenPercentRuleAndTheTwentyCores(int lot, int tenPercent, int twenty) {
        var size = size(Spread.of(0.4, 0.4, 0), lot, 0.5);
        assertThat(size.of(Rule.TEN_PERCENT).design().units()).isEqualTo(tenPercent);
        var cores = size.of(Rule.TWENTY_CORES).design();
        assertThat(cores.units()).isEqualTo(twenty);
        assertThat(cores.cores()).isGreaterThanOrEqualTo(20);
    }

    @Test
    void badNumbersAreRefusedInWords() {
        assertThatThrownBy(() -> new Precision(Spread.of(1, 0, 0), Design.of(11, 1, 1), 10, 95))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("11 of 10");
        assertThatThrownBy(() -> new Precision(Spread.of(1, 0, 0), Design.of(1, 1, 1), 0, 100))
                .hasMessageContaining("100");
        assertThatThrownBy(() -> Spread.of(-1, 0, 0)).hasMessageContaining("0 or more");
        assertThatThrownBy(() -> Spread.of(Double.NaN, 0, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Design.of(0, 1, 1)).hasMessageContaining("at least 1");
        assertThatThrownBy(() -> size(Spread.of(1, 0, 0), 10, 0)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> Spread.ofBook(Crop.GRASS_HAY, "zinc")).hasMessageContaining("cp");
        assertThatThrownBy(() -> Spread.ofOwnCores(List.of(12.0), Spread.of(1, 1, 0)))
                .hasMessageContaining("two");
        assertThatThrownBy(() -> size(Spread.of(1, 1, 0), 0, 1).of(Rule.TEN_PERCENT))
                .hasMessageContaining("how many bales");
    }

    @Test
    void everySpreadOfTheBookIsRead() {
        var spreads = new ArrayList<Spread>();
        for (var crop : Crop.values()) {
            for (var analyte : Spread.analytes(crop).split(", ")) {
                spreads.add(Spread.ofBook(crop, analyte));
            }
        }
        assertThat(spreads).hasSizeGreaterThan(80).allMatch(s -> s.between() > 0 && s.within() > 0);
    }

    private static SampleSize size(Spread spread, int lot, double halfWidth) {
        return new SampleSize(
                Material.LARGE_ROUND_BALE, lot, spread, halfWidth, 95, Costs.usual(Material.LARGE_ROUND_BALE));
    }
}
