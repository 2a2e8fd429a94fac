package haywright.lp;

import haywright.lp.Limit.On;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * One side of the limits of one row or column, or a curved row.
 *
 * @param bound finite; NaN for a curved row
 */
record Side(On on, int index, boolean lower, double bound) {
    /** Every finite limit: rows, curved rows, then columns. */
    static List<Side> all(LinearProgram program) {
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < program.rowLower.length; i++) {
            sides.add(new Side(On.ROW, i, true, program.rowLower[i]));
            sides.add(new Side(On.ROW, i, false, program.rowUpper[i]));
        }
        for (int c = 0; c < program.curves.size(); c++) {
            sides.add(curve(c));
        }
        for (int j = 0; j < program.lower.length; j++) {
            sides.add(new Side(On.COLUMN, j, true, program.lower[j]));
            sides.add(new Side(On.COLUMN, j, false, program.upper[j]));
        }
        sides.removeIf(s -> Double.isInfinite(s.bound));
        return sides;
    }

    static Side curve(int index) {
        return new Side(On.CURVE, index, true, Double.NaN);
    }

    /** Whether it says only that an amount is not below, or not above, nothing. */
    boolean isZero() {
        return on == On.COLUMN && bound == 0;
    }

    Limit limit(LinearProgram program) {
        String subject = switch (on) {
            case ROW -> program.matrix.rowNames().get(index);
            case COLUMN -> program.matrix.columnNames().get(index);
            case CURVE -> program.curves.get(index).name();
        };
        double opposite = on == On.ROW ? (lower ? program.rowUpper : program.rowLower)[index] : Double.NaN;
        boolean nameIsEnough = on == On.CURVE || (on == On.ROW && (!Double.isFinite(opposite) || opposite == bound));
        String name = nameIsEnough
                ? subject
                : subject
                        + (lower ? " at least " : " at most ")
                        + BigDecimal.valueOf(bound).stripTrailingZeros().toPlainString();
        return new Limit(on, index, subject, lower, bound, name);
    }
}
