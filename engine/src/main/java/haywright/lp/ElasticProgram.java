package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The program in which every row may miss its limits, at a price of 1 for a miss as large as the limit itself (where
 * that is 0, as its largest coefficient). Bounds of columns stay hard. It always has a plan of least total miss, and the
 * limits that plan's duals price cannot be kept together: a Farkas certificate.
 */
final class ElasticProgram {
    private static final double NO_PRICE = 1e-9;

    /** A limit this near 0 is 0 to the solver, and a price of one over it is more than the solver holds. */
    private static final double NEGLIGIBLE = 1e-9;

    private final LinearProgram program;
    private final double[] size;
    /** For each row the columns of its misses, at most one below and one above. */
    private final List<List<Integer>> misses = new ArrayList<>();

    private final Optimum best;

    ElasticProgram(LinearProgram program) {
        this.program = program;
        size = program.rows().stream().mapToDouble(ElasticProgram::size).toArray();
        List<Column> columns = new ArrayList<>();
        program.columns().forEach(c -> columns.add(new Column(c.name(), 0, c.lower(), c.upper())));
        List<Row> rows = new ArrayList<>();
        for (Row r : program.rows()) {
            List<Integer> missing = new ArrayList<>();
            double[] value = r.coefficients();
            for (boolean lower : new boolean[] {true, false}) {
                if (Double.isFinite(lower ? r.lower() : r.upper())) {
                    missing.add(columns.size());
                    value = Arrays.copyOf(value, value.length + 1);
                    value[value.length - 1] = lower ? 1 : -1;
                    columns.add(
                            new Column("miss " + columns.size(), 1 / size[rows.size()], 0, Double.POSITIVE_INFINITY));
                }
            }
            int[] index = Arrays.copyOf(r.columns(), value.length);
            for (int k = 0; k < missing.size(); k++) {
                index[value.length - missing.size() + k] = missing.get(k);
            }
            misses.add(missing);
            rows.add(new Row(r.name(), r.lower(), r.upper(), index, value));
        }
        best = (Optimum) new LinearProgram(false, 0, columns, rows).solve();
    }

    private static double size(Row r) {
        double limit = Math.max(finiteOrZero(r.lower()), finiteOrZero(r.upper()));
        double largest = Arrays.stream(r.coefficients()).map(Math::abs).max().orElse(0);
        double chosen = limit > NEGLIGIBLE ? limit : largest;
        return chosen > NEGLIGIBLE ? chosen : 1;
    }

    private static double finiteOrZero(double limit) {
        return Double.isFinite(limit) ? Math.abs(limit) : 0;
    }

    /** The limits that have a price: a conflict, though seldom the smallest. */
    List<Side> priced() {
        List<Side> priced = new ArrayList<>();
        for (int i = 0; i < size.length; i++) {
            double price = best.dual(i) * size[i];
            if (Math.abs(price) > NO_PRICE) {
                priced.add(new Side(true, i, price > 0));
            }
        }
        for (int j = 0; j < program.columns().size(); j++) {
            if (best.reducedCost(j) != 0) {
                priced.add(new Side(false, j, best.reducedCost(j) > 0));
            }
        }
        priced.removeIf(s -> !Double.isFinite(s.bound(program)));
        return priced;
    }

    Map<String, Double> shortfalls() {
        Map<String, Double> shortfalls = new HashMap<>();
        for (int i = 0; i < size.length; i++) {
            double miss = misses.get(i).stream().mapToDouble(best::value).sum();
            if (miss > NO_PRICE * size[i]) {
                shortfalls.put(program.rows().get(i).name(), miss);
            }
        }
        return shortfalls;
    }
}
