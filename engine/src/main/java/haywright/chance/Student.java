package haywright.chance;

/** Student's t distribution. @param degrees degrees of freedom, above 0 */
public record Student(double degrees) {
    public Student {
        if (!(degrees > 0)) {
            throw new IllegalArgumentException("Student's t needs degrees of freedom above 0, not " + degrees);
        }
    }

    /** The t that a value is below with probability {@code p}, 0 &lt; p &lt; 1. */
    public double quantile(double p) {
        if (!(p > 0 && p < 1)) {
            throw new IllegalArgumentException("a probability for a quantile lies between 0 and 1, not " + p);
        }
        double tail = Math.min(p, 1 - p);
        double t = tail == 0.5 ? 0 : Incomplete.whereTailIs(tail, this::above);
        return p < 0.5 ? -t : t;
    }

    /** The probability of a value below {@code t}. */
    public double cumulative(double t) {
        return t > 0 ? 1 - above(t) : above(-t);
    }

    /** For t of 0 or more. */
    private double above(double t) {
        return Incomplete.beta(degrees / (degrees + t * t), degrees / 2, 0.5) / 2;
    }
}
