package haywright.chance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against closed forms, and against the textbook formula in Hipparchus, an unrelated library, by another decomposition. */
class ConditionalTest {
    private static final double SAME = 1e-9;

    /** Precision adds: 1/v' = 1/v + 1/r, and the mean is weighed by precision. */
    @Test
    void oneValueSeenOnce() {
        var prior = new Gaussian(new double[] {10}, new double[][] {{4}});
        var told = new Conditional(prior, new int[] {0}, new double[] {13}, new double[][] {{2}});
        assertThat(told.posterior().covariance(0, 0)).isCloseTo(1 / (1 / 4.0 + 1 / 2.0), within(SAME));
        assertThat(told.mean(0)).isCloseTo((10 / 4.0 + 13 / 2.0) / (1 / 4.0 + 1 / 2.0), within(SAME));
        assertThat(told.squaredDistance()).isCloseTo(9 / 6.0, within(SAME));
    }

    /** Of two that go together by ρ, seeing one without error leaves (1 − ρ²) of the other's variance. */
    @Test
    void regressionOfOneOnTheOther() {
        double rho = -0.6;
        var prior = new Gaussian(new double[] {5, 50}, new double[][] {{4, rho * 2 * 3}, {rho * 2 * 3, 9}});
        var told = new Conditional(prior, new int[] {0}, new double[] {7}, new double[][] {{1e-13}});
        assertThat(told.mean(1)).isCloseTo(50 + rho * 3 / 2 * 2, within(SAME));
        assertThat(told.posterior().covariance(1, 1)).isCloseTo(9 * (1 - rho * rho), within(SAME));
    }

    @Test
    void nothingSeenLeavesThePrior() {
        var prior = new Gaussian(new double[] {5, 50}, new double[][] {{4, 1}, {1, 9}});
        var told = new Conditional(prior, new int[0], new double[0], new double[0][]);
        assertThat(told.posterior().mean(1)).isEqualTo(50);
        assertThat(told.posterior().covariance(0, 1)).isEqualTo(1);
        assertThat(told.squaredDistance()).isZero();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void agreesWithAReferenceLibrary(long seed) {
        var random = new Random(seed);
        int m = 3 + random.nextInt(12);
        int n = 1 + random.nextInt(30);
        var sigma = positive(random, m);
        var noise = positive(random, n);
        var mean = random.doubles(m, -5, 50).toArray();
        var which = random.ints(n, 0, m).toArray();
        var values = random.doubles(n, -5, 50).toArray();

        var h = new Array2DRowRealMatrix(n, m);
        for (int k = 0; k < n; k++) {
            h.setEntry(k, which[k], 1);
        }
        var r = new Array2DRowRealMatrix(noise);
        RealMatrix prior = new Array2DRowRealMatrix(sigma);
        var s = h.multiply(prior).multiply(h.transpose()).add(r);
        var inverse = new LUDecomposition(s).getSolver().getInverse();
        var gain = prior.multiply(h.transpose()).multiply(inverse);
        var off = new ArrayRealVector(values).subtract(h.operate(new ArrayRealVector(mean)));
        var expected = new ArrayRealVector(mean).add(gain.operate(off));
        var left = MatrixUtils.createRealIdentityMatrix(m)
                .subtract(gain.multiply(h))
                .multiply(prior);

        var told = new Conditional(new Gaussian(mean, sigma), which, values, noise);
        var posterior = told.posterior();
        double scale = prior.getNorm1();
        for (int i = 0; i < m; i++) {
            assertThat(posterior.mean(i)).isCloseTo(expected.getEntry(i), within(SAME * scale));
            for (int j = 0; j < m; j++) {
                assertThat(posterior.covariance(i, j)).isCloseTo(left.getEntry(i, j), within(SAME * scale));
            }
        }
        double squared = off.dotProduct(inverse.operate(off));
        assertThat(told.squaredDistance()).isCloseTo(squared, within(SAME * squared));
        if (n > 1) {
            assertThat(told.sharedBy(n - 1)).isCloseTo(squared - withoutTheLast(s, off), within(1e-6 * squared));
        }
    }

    private static double withoutTheLast(RealMatrix s, org.hipparchus.linear.RealVector off) {
        int n = off.getDimension() - 1;
        var less = off.getSubVector(0, n);
        return less.dotProduct(new LUDecomposition(s.getSubMatrix(0, n - 1, 0, n - 1))
                .getSolver()
                .solve(less));
    }

    /** Drawn values have the mean and covariance they were drawn by, and a draw and its mirror lie around the mean. */
    @Test
    void drawsScatterAsTheyShould() {
        var gaussian = new Gaussian(new double[] {1, -2}, new double[][] {{2, 0.9}, {0.9, 1}});
        var draws = new Draws(5);
        int n = 200_000;
        double product = 0;
        for (int i = 0; i < n; i++) {
            double[] z = {draws.normal(), draws.normal()};
            var x = gaussian.at(z);
            var mirror = gaussian.at(new double[] {-z[0], -z[1]});
            assertThat(x[0] + mirror[0]).isCloseTo(2, within(1e-12));
            product += (x[0] - 1) * (x[1] + 2) / n;
        }
        // The standard error of a covariance is sqrt((v1·v2 + c²)/n).
        assertThat(product).isCloseTo(0.9, within(4 * Math.sqrt((2 + 0.81) / n)));
    }

    @Test
    void whatIsNoCovarianceIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Gaussian(new double[] {0, 0}, new double[][] {{1, 2}, {2, 1}}))
                .withMessageContaining("not positive definite");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Gaussian(new double[] {0}, new double[][] {{Double.NaN}}));
    }

    private static double[][] positive(Random random, int n) {
        var a = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a.setEntry(i, j, random.nextGaussian());
            }
        }
        return a.multiply(a.transpose())
                .add(MatrixUtils.createRealIdentityMatrix(n).scalarMultiply(0.5))
                .getData();
    }
}
