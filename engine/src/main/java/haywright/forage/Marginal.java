package haywright.forage;

import haywright.chance.Normal;

/**
 * What is known of one analyte: a bell, on the analyte's own scale or on that of its logarithm.
 *
 * @param center the value as likely too high as too low, in the analyte's unit
 * @param sd standard deviation; of the natural logarithm where {@code log}
 * @param log whether the bell stands on the logarithm, as for minerals and nitrate, which are never below 0
 */
public record Marginal(double center, double sd, boolean log) {
    /** The expected value. Of a bell on the logarithm it lies above the center. */
    public double mean() {
        return log ? center * StrictMath.exp(sd * sd / 2) : center;
    }

    /** In the analyte's unit. */
    public double standardDeviation() {
        return log ? mean() * StrictMath.sqrt(StrictMath.expm1(sd * sd)) : sd;
    }

    /** The value that the truth is below with probability {@code p}. */
    public double quantile(double p) {
        double far = sd * Normal.quantile(p);
        return log ? center * StrictMath.exp(far) : center + far;
    }

    /** The truth lies between {@code low90} and {@code high90} nine times in ten. */
    public double low90() {
        return quantile(0.05);
    }

    public double high90() {
        return quantile(0.95);
    }

    /** A value on the scale of the bell. */
    public double onScale(double value) {
        return log ? StrictMath.log(value) : value;
    }

    /** Where on its scale a bell as wide as this one stands whose mean is {@code mean}. */
    public double withMean(double mean) {
        return log ? StrictMath.log(mean) - sd * sd / 2 : mean;
    }

    /** A bell given on its own scale. */
    public static Marginal ofScale(double mean, double sd, boolean log) {
        return new Marginal(log ? StrictMath.exp(mean) : mean, sd, log);
    }
}
