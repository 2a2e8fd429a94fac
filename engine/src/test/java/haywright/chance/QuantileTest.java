package haywright.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against Hipparchus, an unrelated library, and against two-sided points that every table of t prints. */
class QuantileTest {
    private static final double[] PROBABILITIES = {
        1e-6, 1e-4, 0.001, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.4, 0.5, 0.6, 0.74, 0.75, 0.9, 0.925, 0.95, 0.975,
        0.99, 0.995, 0.999, 0.9999
    };

    /** The reference solves for its quantiles; this is what it is asked for. */
    private static final double SOLVED_TO = 1e-12;

    @Test
    void normalQuantilesAgree() {
        var reference = new NormalDistribution(0, 1);
        for (double p : PROBABILITIES) {
            assertThat(Normal.quantile(p))
                    .as("p %s", p)
                    .isCloseTo(reference.inverseCumulativeProbability(p), within(1e-10));
        }
    }

    @Test
    void normalProbabilitiesAgree() {
        var reference = new NormalDistribution(0, 1);
        for (double z = -8; z <= 8; z += 0.25) {
            double expected = reference.cumulativeProbability(z);
            assertThat(Normal.cumulative(z))
                    .as("z %s", z)
                    .isCloseTo(expected, within(1e-12 * Math.max(expected, 1e-3)));
        }
    }

    @Test
    void quantileTurnsProbabilityBack() {
        for (double z = -7.5; z <= 5; z += 0.125) {
            assertThat(Normal.quantile(Normal.cumulative(z))).isCloseTo(z, within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3, 4, 5, 7, 9, 14, 19, 29, 60, 120, 999})
    void studentQuantilesAgree(double degrees) {
        var reference = new TDistribution(degrees, SOLVED_TO);
        for (double p : PROBABILITIES) {
            double expected = reference.inverseCumulativeProbability(p);
            assertThat(new Student(degrees).quantile(p))
                    .as("df %s p %s", degrees, p)
                    .isCloseTo(expected, within(1e-10 * Math.max(1, Math.abs(expected))));
        }
    }

    // Any printed table of Student's t, two-sided 5 % and 20 %.
    @ParameterizedTest
    @CsvSource({"1, 0.975, 12.706", "4, 0.975, 2.776", "9, 0.975, 2.262", "19, 0.975, 2.093", "9, 0.9, 1.383"})
    void agreesWithThePrintedTable(double degrees, double p, double printed) {
        assertThat(new Student(degrees).quantile(p)).isCloseTo(printed, within(0.0005));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3, 5, 8, 14, 30, 99})
    void chiSquareQuantilesAgree(double degrees) {
        var reference = new ChiSquaredDistribution(degrees, SOLVED_TO);
        for (double p : PROBABILITIES) {
            double expected = reference.inverseCumulativeProbability(p);
            assertThat(new ChiSquare(degrees).quantile(p))
                    .as("df %s p %s", degrees, p)
                    .isCloseTo(expected, within(1e-10 * Math.max(1, expected)));
        }
    }

    @Test
    void drawsAreTheSameForTheSameSeedAndSpreadAsANormalShould() {
        var one = new Draws(7);
        var two = new Draws(7);
        double sum = 0;
        double squares = 0;
        int n = 100_000;
        for (int i = 0; i < n; i++) {
            double z = one.normal();
            assertThat(two.normal()).isEqualTo(z);
            sum += z;
            squares += z * z;
        }
        assertThat(sum / n).isCloseTo(0, within(4 / Math.sqrt(n)));
        assertThat(squares / n).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
    }

    @Test
    void wholeNumbersAreEquallyLikely() {
        var draws = new Draws(3);
        int[] seen = new int[7];
        for (int i = 0; i < 70_000; i++) {
            seen[draws.below(7)]++;
        }
        double chiSquare = 0;
        for (int count : seen) {
            chiSquare += Math.pow(count - 10_000, 2) / 10_000;
        }
        assertThat(chiSquare).isLessThan(new ChiSquaredDistribution(6).inverseCumulativeProbability(0.999));
    }
}
