package haywright.lp;

/**
 * One side of one limit: a row's or a column's lower or upper bound, or a curved row.
 *
 * @param index of the row, the column or the curved row in its program
 * @param subject its name
 * @param lower true for "at least", false for "at most"; true for a curved row
 * @param bound the limit itself; NaN for a curved row, which has none that is a number of its own
 * @param name how it is called in {@link Conflict#names()}: a row with one limit by its own name, otherwise the subject
 *     with the side and the number, as in "hay at most 5"
 */
public record Limit(On on, int index, String subject, boolean lower, double bound, String name) {
    public enum On {
        ROW,
        COLUMN,
        CURVE
    }

    public boolean onRow() {
        return on == On.ROW;
    }
}
