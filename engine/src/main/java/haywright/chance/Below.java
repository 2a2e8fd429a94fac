package haywright.chance;

/**
 * Gaussian values of which nothing is known but that each lies below a bound, held as if each had been seen with an error:
 * the seen value and its variance are those that give every value the first two moments it has when it is cut off at its
 * bound and all others stay as they are. That is a fixed point, so the order of the bounds does not matter, and what
 * follows is Gaussian again.
 *
 * <pre>
 * cut off at b:  α = (b − m)/s,  λ = φ(α)/Φ(α),  mean m − s·λ,  variance s²·(1 − λ·(λ + α))
 * </pre>
 *
 * @see "Minka, Expectation propagation for approximate Bayesian inference, 2001: matching of moments to a fixed point"
 */
public final class Below {
    private static final double SAME = 1e-12;
    private static final int MOST_ROUNDS = 500;
    /** Below this share of what was known before, a bound says nothing. */
    private static final double NOTHING = 1e-12;

    private final double[] precision;
    private final double[] shift;

    /**
     * @param before what is known of the values without the bounds
     * @param bounds one for each value
     * @throws IllegalArgumentException if there are not as many bounds as values
     */
    public Below(Gaussian before, double[] bounds) {
        int n = bounds.length;
        if (before.size() != n) {
            throw new IllegalArgumentException("%d bounds for %d values".formatted(n, before.size()));
        }
        precision = new double[n];
        shift = new double[n];
        var prior = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                prior[i][j] = before.covariance(i, j);
            }
        }
        var inverse = new Cholesky(prior).inverse();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double most = 0;
            for (int k = 0; k < n; k++) {
                most = Math.max(most, match(k, before, inverse, bounds[k]));
            }
            if (most < SAME) {
                return;
            }
        }
    }

    /** @return by how much the value's own spread moved, as a share */
    private double match(int k, Gaussian before, double[][] inverse, double bound) {
        int n = precision.length;
        var with = new double[n][n];
        var pull = new double[n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                with[i][j] = inverse[i][j] + (i == j && i != k ? precision[i] : 0);
                pull[i] += inverse[i][j] * before.mean(j);
            }
            pull[i] += i == k ? 0 : shift[i];
        }
        var rest = new Cholesky(with).inverse();
        double m = 0;
        for (int j = 0; j < n; j++) {
            m += rest[k][j] * pull[j];
        }
        double v = rest[k][k];
        double s = Math.sqrt(v);
        double a = (bound - m) / s;
        double l = mills(a);
        double cut = v * Math.max(NOTHING, 1 - l * (l + a));
        double newPrecision = Math.max(NOTHING / v, 1 / cut - 1 / v);
        double newShift = newPrecision <= NOTHING / v ? newPrecision * m : (m - s * l) / cut - m / v;
        double moved = Math.max(
                Math.abs(newPrecision - precision[k]) / newPrecision,
                Math.abs(newShift - shift[k]) / (newPrecision * s));
        precision[k] = newPrecision;
        shift[k] = newShift;
        return newPrecision <= NOTHING / v ? 0 : moved;
    }

    /** φ/Φ, without running out of digits far below. */
    static double mills(double a) {
        if (a > -6) {
            return StrictMath.exp(-a * a / 2) / Math.sqrt(2 * Math.PI) / Normal.cumulative(a);
        }
        double x = -a; // Laplace's continued fraction of the tail
        double fraction = x;
        for (int i = 60; i >= 1; i--) {
            fraction = x + i / fraction;
        }
        return fraction;
    }

    /** The value as if seen. */
    public double value(int k) {
        return shift[k] / precision[k];
    }

    /** Of the error it was as if seen with. */
    public double variance(int k) {
        return 1 / precision[k];
    }
}
