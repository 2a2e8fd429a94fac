package haywright.chance;

import java.util.Arrays;

/** Normal values that hang together: a mean for each and a covariance for each pair. Nothing in it changes. */
public final class Gaussian {
    private final double[] mean;
    private final double[][] covariance;
    private final Cholesky factor;

    /**
     * @param covariance symmetric; only its lower half is read
     * @throws IllegalArgumentException if the sizes differ or the covariance is not positive definite
     */
    public Gaussian(double[] mean, double[][] covariance) {
        if (mean.length != covariance.length) {
            throw new IllegalArgumentException(
                    "%d means stand beside %d rows of covariance".formatted(mean.length, covariance.length));
        }
        this.mean = mean.clone();
        this.covariance = new double[mean.length][];
        for (int i = 0; i < mean.length; i++) {
            this.covariance[i] = covariance[i].clone();
            for (int j = 0; j < i; j++) {
                this.covariance[j][i] = covariance[i][j];
            }
        }
        factor = new Cholesky(this.covariance);
    }

    public int size() {
        return mean.length;
    }

    public double mean(int i) {
        return mean[i];
    }

    public double covariance(int i, int j) {
        return covariance[i][j];
    }

    public double sd(int i) {
        return Math.sqrt(covariance[i][i]);
    }

    /** Some of the values, in the order asked for, the rest let go. */
    public Gaussian of(int... which) {
        var some = new double[which.length];
        var between = new double[which.length][which.length];
        for (int i = 0; i < which.length; i++) {
            some[i] = mean[which[i]];
            for (int j = 0; j < which.length; j++) {
                between[i][j] = covariance[which[i]][which[j]];
            }
        }
        return new Gaussian(some, between);
    }

    /**
     * The values that standard normal ones stand for: mean + L·z. Draw z for one draw, and take −z for its antithetic
     * fellow.
     */
    public double[] at(double[] z) {
        var values = factor.times(z);
        Arrays.setAll(values, i -> values[i] + mean[i]);
        return values;
    }
}
