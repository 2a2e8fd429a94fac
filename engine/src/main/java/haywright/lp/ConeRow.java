package haywright.lp;

/**
 * A sum that must be large enough with its doubt taken off: Σ mean·x less z standard deviations of it is at least a
 * limit. Its variance is Σ (own·x)² and, for each doubt that coefficients share, (Σ shared·x)². What is left is concave
 * in x and grows in proportion with it, so that its gradient anywhere makes a cut, whatever the limit.
 *
 * @param mean of each coefficient; where a sum must be small enough, the negative of each, and of the limit
 * @param own standard deviation of each coefficient that it shares with no other, 0 or more
 * @param shared for each doubt that is shared, what one standard deviation of it adds to each coefficient
 * @param z 0 or more: below, the row would not be convex
 * @param limit at least so much
 * @see "Charnes and Cooper 1959, Management Science 6:73; van de Panne and Popp 1963, Management Science 9:405"
 */
@SuppressWarnings("ArrayRecordComponent")
public record ConeRow(double[] mean, double[] own, double[][] shared, double z, double limit) implements ConvexRow {
    private static final double[] NO_MARK = {};

    public ConeRow {
        if (!(z >= 0)) {
            throw new IllegalArgumentException("z is " + z + ": below 0, less sure than even odds, nothing is convex.");
        }
    }

    /** A sum of coefficients that are certain, at least 0. */
    public static ConeRow certain(double[] mean) {
        return new ConeRow(mean, new double[mean.length], new double[0][], 0, 0);
    }

    /** The row with another limit; cuts of this one hold for it. */
    public ConeRow withLimit(double other) {
        return new ConeRow(mean, own, shared, z, other);
    }

    /** The sum as it is expected. */
    public double mean(double[] x) {
        return dot(mean, x);
    }

    /** What is left of the sum with its doubt taken off. */
    public double left(double[] x) {
        return dot(gradient(x), x);
    }

    @Override
    public double broken(double[] x) {
        double missing = limit - left(x);
        double size = Math.abs(limit);
        for (int j = 0; j < x.length && limit == 0; j++) {
            size += Math.abs(mean[j] * x[j]);
        }
        return missing <= 0 ? missing : missing / size;
    }

    @Override
    public Cut cutAt(double[] x) {
        return new Cut(gradient(x), NO_MARK);
    }

    /** Of {@link #left}, which is this times x; where there is no doubt, of nothing or of what is certain, the means. */
    public double[] gradient(double[] x) {
        double variance = 0;
        double[] weighted = new double[x.length];
        for (int j = 0; j < x.length; j++) {
            variance += Math.pow(own[j] * x[j], 2);
            weighted[j] = own[j] * own[j] * x[j];
        }
        for (double[] doubt : shared) {
            double together = dot(doubt, x);
            variance += together * together;
            for (int j = 0; j < x.length; j++) {
                weighted[j] += doubt[j] * together;
            }
        }
        double[] gradient = mean.clone();
        for (int j = 0; j < x.length && variance > 0; j++) {
            gradient[j] -= z * weighted[j] / Math.sqrt(variance);
        }
        return gradient;
    }

    @Override
    public double atLeast(Cut cut) {
        return limit;
    }

    @Override
    public double perUnit(Cut cut) {
        return 1;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int j = 0; j < a.length; j++) {
            sum += a[j] * b[j];
        }
        return sum;
    }
}
