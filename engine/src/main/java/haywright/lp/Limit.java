package haywright.lp;

/**
 * One side of one limit: a row's or a column's lower or upper bound.
 *
 * @param onRow true for a row, false for the bound of a column
 * @param index of the row or the column in its program
 * @param subject name of the row or column
 * @param lower true for "at least", false for "at most"
 * @param bound the limit itself
 * @param name how it is called in {@link Infeasible#conflict()}: a row with one limit by its own name, otherwise the
 *     subject with the side and the number, as in "hay at most 5"
 * @param givesAlone by how much this limit alone would have to give way for the whole program to have an answer, every
 *     other limit kept; infinite if that alone is never enough
 */
public record Limit(
        boolean onRow, int index, String subject, boolean lower, double bound, String name, double givesAlone) {}
