package haywright.chance;

/**
 * What is known of a Gaussian vector x after some of its values were seen, each with an error: y = Hx + e, e ~ N(0, R),
 * where H picks one value of x for each seen one, the same as often as it was seen.
 *
 * <pre>
 * S = H·Σ·Hᵀ + R,   K = Σ·Hᵀ·S⁻¹
 * mean = μ + K·(y − Hμ)
 * Σ' = (I − KH)·Σ·(I − KH)ᵀ + K·R·Kᵀ      the second part from the errors, the first from what x itself still may be
 * D² = (y − Hμ)ᵀ·S⁻¹·(y − Hμ)
 * </pre>
 *
 * Σ' is written as a sum of squares, so that it stays positive definite and can be parted into where it comes from.
 */
public final class Conditional {
    private final Gaussian prior;
    private final int[] which;
    private final double[][] noise;
    private final double[] surprise;
    private final double[][] inverse;
    private final double[][] gain;

    /**
     * @param which for each seen value, the index of the one it was seen of
     * @param values as seen
     * @param noise covariance of the errors, R; positive definite
     * @throws IllegalArgumentException if the sizes differ, or prior and noise together are not positive definite
     */
    public Conditional(Gaussian prior, int[] which, double[] values, double[][] noise) {
        int n = which.length;
        if (values.length != n || noise.length != n) {
            throw new IllegalArgumentException("%d places, %d values and %d rows of noise are not one size"
                    .formatted(n, values.length, noise.length));
        }
        this.prior = prior;
        this.which = which.clone();
        this.noise = noise.clone();
        surprise = new double[n];
        var predictive = new double[n][n];
        for (int k = 0; k < n; k++) {
            surprise[k] = values[k] - prior.mean(which[k]);
            for (int l = 0; l < n; l++) {
                predictive[k][l] = prior.covariance(which[k], which[l]) + noise[k][l];
            }
        }
        inverse = new Cholesky(predictive).inverse();
        gain = new double[prior.size()][n];
        for (int i = 0; i < prior.size(); i++) {
            for (int k = 0; k < n; k++) {
                for (int l = 0; l < n; l++) {
                    gain[i][k] += prior.covariance(i, which[l]) * inverse[l][k];
                }
            }
        }
    }

    /** How many values there are, seen or not. */
    public int size() {
        return prior.size();
    }

    /** How far value i moves for one unit of the k-th seen value, K. */
    public double gain(int i, int k) {
        return gain[i][k];
    }

    public double mean(int i) {
        double mean = prior.mean(i);
        for (int k = 0; k < which.length; k++) {
            mean += gain[i][k] * surprise[k];
        }
        return mean;
    }

    /** Of the covariance of values i and j, what comes from an error with this covariance: (K·E·Kᵀ)ij. */
    public double fromError(int i, int j, double[][] error) {
        double sum = 0;
        for (int k = 0; k < which.length; k++) {
            for (int l = 0; l < which.length; l++) {
                sum += gain[i][k] * error[k][l] * gain[j][l];
            }
        }
        return sum;
    }

    /** Of the covariance of values i and j, what comes from not knowing x itself. */
    public double fromItself(int i, int j) {
        double sum = prior.covariance(i, j);
        for (int k = 0; k < which.length; k++) {
            sum -= gain[i][k] * prior.covariance(which[k], j) + gain[j][k] * prior.covariance(which[k], i);
            for (int l = 0; l < which.length; l++) {
                sum += gain[i][k] * prior.covariance(which[k], which[l]) * gain[j][l];
            }
        }
        return sum;
    }

    public Gaussian posterior() {
        return posterior(noise);
    }

    /** The same as far as this part of the errors goes: what is left out of it is no spread of the answer. */
    public Gaussian posterior(double[][] error) {
        int m = prior.size();
        var mean = new double[m];
        var covariance = new double[m][m];
        for (int i = 0; i < m; i++) {
            mean[i] = mean(i);
            for (int j = 0; j <= i; j++) {
                covariance[i][j] = fromItself(i, j) + fromError(i, j, error);
            }
        }
        return new Gaussian(mean, covariance);
    }

    /** Squared Mahalanobis distance of what was seen from what was to be expected; χ² with as many degrees. */
    public double squaredDistance() {
        double sum = 0;
        for (int k = 0; k < which.length; k++) {
            sum += surprise[k] * weighed(k);
        }
        return sum;
    }

    /** By how much the squared distance falls when the k-th seen value is left out. */
    public double sharedBy(int k) {
        double weighed = weighed(k);
        return weighed * weighed / inverse[k][k];
    }

    private double weighed(int k) {
        double sum = 0;
        for (int l = 0; l < which.length; l++) {
            sum += inverse[k][l] * surprise[l];
        }
        return sum;
    }
}
