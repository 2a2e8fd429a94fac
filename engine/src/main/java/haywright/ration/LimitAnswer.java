package haywright.ration;

import haywright.diet.DietRow;

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

    public double margin() {
        double over = supplied - row.limit();
        return row.sense() == DietRow.Sense.AT_LEAST ? over : -over;
    }

    public boolean isMet() {
        return margin() >= -MET * Math.max(1, Math.abs(row.limit()));
    }

    public boolean isTight() {
        return Math.abs(price) > 1e-9;
    }
}
