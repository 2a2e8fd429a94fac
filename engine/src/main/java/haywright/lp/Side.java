package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.List;

/** One side of the limits of one row or column. */
record Side(boolean onRow, int index, boolean lower) {
    double bound(LinearProgram program) {
        if (onRow) {
            Row r = program.rows().get(index);
            return lower ? r.lower() : r.upper();
        }
        Column c = program.columns().get(index);
        return lower ? c.lower() : c.upper();
    }

    Side opposite() {
        return new Side(onRow, index, !lower);
    }

    /** Every finite limit, rows first. */
    static List<Side> all(LinearProgram program) {
        List<Side> sides = new ArrayList<>();
        for (int i = 0; i < program.rows().size(); i++) {
            sides.add(new Side(true, i, true));
            sides.add(new Side(true, i, false));
        }
        for (int j = 0; j < program.columns().size(); j++) {
            sides.add(new Side(false, j, true));
            sides.add(new Side(false, j, false));
        }
        sides.removeIf(s -> !Double.isFinite(s.bound(program)));
        return sides;
    }
}
