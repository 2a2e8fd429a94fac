package haywright.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.analysis.integration.UnivariateIntegrator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against moments integrated by Hipparchus, an unrelated library, and against what order must not do. */
class BelowTest {
    /** Mean and variance after the value is as if seen: precision adds. */
    private static double[] after(double mean, double variance, Below below, int k) {
        double v = 1 / (1 / variance + 1 / below.variance(k));
        return new double[] {v * (mean / variance + below.value(k) / below.variance(k)), v};
    }

    @ParameterizedTest
    @CsvSource({"10, 2, 9", "10, 2, 13", "10, 2, 4", "-1, 0.3, -1.5", "0, 1, -7"})
    void oneValueHasTheMomentsOfWhatIsCutOff(double mean, double sd, double bound) {
        var normal = new NormalDistribution(mean, sd);
        UnivariateIntegrator by = new IterativeLegendreGaussIntegrator(20, 1e-13, 1e-15);
        double from = Math.min(mean, bound) - 14 * sd;
        double whole = by.integrate(2_000_000, normal::density, from, bound);
        double first = by.integrate(2_000_000, x -> x * normal.density(x), from, bound) / whole;
        double second =
                by.integrate(2_000_000, x -> (x - first) * (x - first) * normal.density(x), from, bound) / whole;
        var below = new Below(new Gaussian(new double[] {mean}, new double[][] {{sd * sd}}), new double[] {bound});
        var after = after(mean, sd * sd, below, 0);
        assertThat(after[0]).isCloseTo(first, within(1e-7 * sd));
        assertThat(after[1]).isCloseTo(second, within(1e-6 * sd * sd));
    }

    @Test
    void aBoundFarAboveSaysNothing() {
        var below = new Below(new Gaussian(new double[] {10}, new double[][] {{4}}), new double[] {60});
        var after = after(10, 4, below, 0);
        assertThat(after[0]).isCloseTo(10, within(1e-9));
        assertThat(after[1]).isCloseTo(4, within(1e-9));
    }

    @Test
    void theOrderOfTheBoundsDoesNotMatter() {
        double[][] covariance = {{1, 0.6, -0.3}, {0.6, 2, 0.2}, {-0.3, 0.2, 0.5}};
        double[] mean = {0, 1, -1};
        double[] bound = {-0.5, 2, -1.2};
        int[] other = {2, 0, 1};
        var turned = new double[3][3];
        var turnedMean = new double[3];
        var turnedBound = new double[3];
        for (int i = 0; i < 3; i++) {
            turnedMean[i] = mean[other[i]];
            turnedBound[i] = bound[other[i]];
            for (int j = 0; j < 3; j++) {
                turned[i][j] = covariance[other[i]][other[j]];
            }
        }
        var one = new Below(new Gaussian(mean, covariance), bound);
        var two = new Below(new Gaussian(turnedMean, turned), turnedBound);
        for (int i = 0; i < 3; i++) {
            assertThat(two.value(i)).isCloseTo(one.value(other[i]), within(1e-8));
            assertThat(two.variance(i)).isCloseTo(one.variance(other[i]), within(1e-8 * one.variance(other[i])));
        }
    }

    @Test
    void asManyBoundsAsValues() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Below(new Gaussian(new double[] {1}, new double[][] {{1}}), new double[2]));
    }
}
