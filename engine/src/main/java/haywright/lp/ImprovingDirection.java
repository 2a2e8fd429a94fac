package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A direction along which the objective improves and every finite limit stays kept, however far one goes. It is found
 * as a linear program of its own: the same costs and rows, every finite limit 0, no column moving by more than 1.
 */
final class ImprovingDirection {
    private static final double STILL = 1e-9;

    private ImprovingDirection() {}

    static @Nullable Unbounded of(LinearProgram program) {
        List<Column> columns = new ArrayList<>();
        for (Column c : program.columns()) {
            columns.add(new Column(
                    c.name(), c.cost(), Double.isFinite(c.lower()) ? 0 : -1, Double.isFinite(c.upper()) ? 0 : 1));
        }
        List<Row> rows = new ArrayList<>();
        for (Row r : program.rows()) {
            rows.add(r.within(
                    Double.isFinite(r.lower()) ? 0 : Double.NEGATIVE_INFINITY,
                    Double.isFinite(r.upper()) ? 0 : Double.POSITIVE_INFINITY));
        }
        var best = (Optimum) new LinearProgram(program.maximising(), 0, columns, rows).solve();
        double gain = program.maximising() ? best.objective() : -best.objective();
        if (gain <= STILL) {
            return null;
        }
        int fastest = 0;
        for (int j = 1; j < columns.size(); j++) {
            if (Math.abs(best.value(j)) > Math.abs(best.value(fastest)) + STILL) {
                fastest = j;
            }
        }
        Map<String, Double> direction = new TreeMap<>();
        for (int j = 0; j < columns.size(); j++) {
            if (Math.abs(best.value(j)) > STILL) {
                direction.put(columns.get(j).name(), best.value(j) / Math.abs(best.value(fastest)));
            }
        }
        return new Unbounded(columns.get(fastest).name(), direction);
    }
}
