package haywright.chance;

/** The χ² distribution. @param degrees degrees of freedom, above 0 */
public record ChiSquare(double degrees) {
    public ChiSquare {
        if (!(degrees > 0)) {
            throw new IllegalArgumentException("χ² needs degrees of freedom above 0, not " + degrees);
        }
    }

    /** The value that χ² is below with probability {@code p}, 0 &lt; p &lt; 1. */
    public double quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability for a quantile lies between 0 and 1, not " + p);
        }
        return Incomplete.whereTailIs(1 - p, x -> 1 - cumulative(x));
    }

    /** The probability of a value below {@code x}. */
    public double cumulative(double x) {
        return 1 - Incomplete.gammaUpper(degrees / 2, x / 2);
    }
}
