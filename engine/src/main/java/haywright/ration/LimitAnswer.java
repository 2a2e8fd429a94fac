package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * How one row came out.
 *
 * @param supplied in the row's unit
 * @param price dollars a head and day for one unit more of the limit (less, for an at-most row); zero where there is
 *     room to spare
 */
public record LimitAnswer(DietRow row, double supplied, double price) {
    /** A row within this share of its limit counts as met; the solver works to about 1e-7. */
    private static final double MET = 1e-6;

    /** What amounts come to in every row of a diet, growth last; of nothing eaten no ratio. @param kg in the diet's order */
    static List<LimitAnswer> of(Diet diet, double[] kg) {
        double eaten = DoubleStream.of(kg).sum();
        var limits = new ArrayList<LimitAnswer>();
        for (var row : diet.rows()) {
            if (!row.isRatio() || eaten > 0) {
                limits.add(new LimitAnswer(row, row.supplied(kg), 0));
            }
        }
        diet.growth().ifPresent(energy -> limits.add(new LimitAnswer(GrowthRow.of(energy), energy.leftForGain(kg), 0)));
        return limits;
    }

    public double margin() {
        double over = supplied - row.limit();
        return row.sense() == DietRow.Sense.AT_LEAST ? over : -over;
    }

    /** {@link #margin} as a share of the limit: what misses most comes first. */
    double share() {
        return margin() / Math.max(1e-9, Math.abs(row.limit()));
    }

    public boolean isMet() {
        return margin() >= -MET * Math.max(1, Math.abs(row.limit()));
    }

    public boolean isTight() {
        return Math.abs(price) > 1e-9;
    }
}
