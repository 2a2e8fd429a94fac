package haywright.chance;

/**
 * The incomplete gamma and beta functions, regularized: what the quantiles of this room stand on. Series and continued
 * fractions by the modified Lentz method; relative error below 1e-13 in the ranges used.
 */
final class Incomplete {
    private static final double TINY = 1e-300;
    private static final double ENOUGH = 1e-16;
    private static final int MOST_TERMS = 100_000;

    /** Lanczos coefficients, g = 607/128 (Godfrey). */
    private static final double[] LANCZOS = {
        0.99999999999999709182,
        57.156235665862923517,
        -59.597960355475491248,
        14.136097974741747174,
        -0.49191381609762019978,
        .33994649984811888699e-4,
        .46523628927048575665e-4,
        -.98374475304879564677e-4,
        .15808870322491248884e-3,
        -.21026444172410488319e-3,
        .21743961811521264320e-3,
        -.16431810653676389022e-3,
        .84418223983852743293e-4,
        -.26190838401581408670e-4,
        .36899182659531622704e-5
    };

    private Incomplete() {}

    static double logGamma(double x) {
        double sum = LANCZOS[0];
        for (int i = 1; i < LANCZOS.length; i++) {
            sum += LANCZOS[i] / (x + i);
        }
        double t = x + 607.0 / 128 + 0.5;
        return (x + 0.5) * StrictMath.log(t) - t + StrictMath.log(StrictMath.sqrt(2 * Math.PI) / x * sum);
    }

    /** Q(a, x), the share of the gamma distribution above {@code x}. */
    static double gammaUpper(double a, double x) {
        if (x <= 0) {
            return 1;
        }
        double front = StrictMath.exp(a * StrictMath.log(x) - x - logGamma(a));
        if (x < a + 1) {
            double term = 1 / a;
            double sum = term;
            for (int n = 1; n < MOST_TERMS && term > sum * ENOUGH; n++) {
                term *= x / (a + n);
                sum += term;
            }
            return 1 - front * sum;
        }
        double b = x + 1 - a;
        double c = 1 / TINY;
        double d = 1 / b;
        double h = d;
        for (int n = 1; n < MOST_TERMS; n++) {
            double an = -n * (n - a);
            b += 2;
            d = 1 / kept(an * d + b);
            c = kept(b + an / c);
            double step = d * c;
            h *= step;
            if (Math.abs(step - 1) < ENOUGH) {
                break;
            }
        }
        return front * h;
    }

    /** I(x; a, b), the share of the beta distribution below {@code x}. */
    static double beta(double x, double a, double b) {
        if (x <= 0 || x >= 1) {
            return x <= 0 ? 0 : 1;
        }
        double front = StrictMath.exp(
                logGamma(a + b) - logGamma(a) - logGamma(b) + a * StrictMath.log(x) + b * StrictMath.log1p(-x));
        return x < (a + 1) / (a + b + 2)
                ? front * betaFraction(x, a, b) / a
                : 1 - front * betaFraction(1 - x, b, a) / b;
    }

    private static double betaFraction(double x, double a, double b) {
        double c = 1;
        double d = 1 / kept(1 - (a + b) * x / (a + 1));
        double h = d;
        for (int m = 1; m < MOST_TERMS; m++) {
            double even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
            d = 1 / kept(1 + even * d);
            c = kept(1 + even / c);
            h *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
            d = 1 / kept(1 + odd * d);
            c = kept(1 + odd / c);
            double step = d * c;
            h *= step;
            if (Math.abs(step - 1) < ENOUGH) {
                break;
            }
        }
        return h;
    }

    private static double kept(double x) {
        return Math.abs(x) < TINY ? TINY : x;
    }

    /**
     * The x ≥ 0 at which a falling tail probability reaches {@code tail}: doubling to bracket it, then halving. Halving
     * always ends, which Newton's method does not promise far out in the tails.
     */
    static double whereTailIs(double tail, java.util.function.DoubleUnaryOperator above) {
        double low = 0;
        double high = 1;
        while (above.applyAsDouble(high) > tail) {
            low = high;
            high *= 2;
        }
        for (int i = 0; i < 200 && high - low > 1e-15 * high; i++) {
            double middle = (low + high) / 2;
            if (above.applyAsDouble(middle) > tail) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}
