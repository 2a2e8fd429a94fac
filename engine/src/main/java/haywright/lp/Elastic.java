package haywright.lp;

import haywright.lp.Limit.On;
import haywright.lp.LinearProgram.Matrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The program in which every row may miss its limits, at a price of 1 for a miss as large as the limit itself (where
 * that is 0, as its largest coefficient). Bounds of columns stay hard. It always has a plan of least total miss, and the
 * limits that plan's duals price cannot be kept together: a Farkas certificate.
 */
final class Elastic {
    private static final double NO_PRICE = 1e-9;

    /** A limit this near 0 is 0 to the solver, and a price of one over it is more than the solver holds. */
    private static final double NEGLIGIBLE = 1e-9;

    private final LinearProgram program;
    private final LinearProgram flat;
    private final double[] size;
    private final Optimum best;

    Elastic(LinearProgram program) {
        this.program = program;
        flat = program.flat();
        int n = flat.cost.length;
        int m = flat.rowLower.length;
        size = IntStream.range(0, m).mapToDouble(this::size).toArray();
        // Of each row a miss below and one above; one that has no limit is held at 0.
        int terms = flat.matrix.value().length;
        int[] start = new int[m + 1];
        int[] index = new int[terms + 2 * m];
        double[] value = new double[terms + 2 * m];
        double[] cost = new double[n + 2 * m];
        double[] lower = Arrays.copyOf(flat.lower, n + 2 * m);
        double[] upper = Arrays.copyOf(flat.upper, n + 2 * m);
        for (int i = 0; i < m; i++) {
            int from = flat.matrix.start()[i];
            int count = flat.matrix.start()[i + 1] - from;
            int to = start[i];
            System.arraycopy(flat.matrix.index(), from, index, to, count);
            System.arraycopy(flat.matrix.value(), from, value, to, count);
            for (int above = 0; above < 2; above++) {
                int column = n + 2 * i + above;
                index[to + count + above] = column;
                value[to + count + above] = above == 0 ? 1 : -1;
                cost[column] = 1 / size[i];
                boolean limited = Double.isFinite(above == 0 ? flat.rowLower[i] : flat.rowUpper[i]);
                upper[column] = limited ? Double.POSITIVE_INFINITY : 0;
            }
            start[i + 1] = to + count + 2;
        }
        Matrix matrix = new Matrix(List.of(), List.of(), new boolean[n + 2 * m], start, index, value);
        best = (Optimum) new LinearProgram(
                        false, 0, matrix, cost, lower, upper, flat.rowLower, flat.rowUpper, List.of(), List.of())
                .solve();
    }

    private double size(int row) {
        double limit = Math.max(finiteOrZero(flat.rowLower[row]), finiteOrZero(flat.rowUpper[row]));
        double largest = IntStream.range(flat.matrix.start()[row], flat.matrix.start()[row + 1])
                .mapToDouble(k -> Math.abs(flat.matrix.value()[k]))
                .max()
                .orElse(0);
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
                boolean lower = price > 0;
                priced.add(
                        i < program.rowLower.length
                                ? new Side(On.ROW, i, lower, (lower ? flat.rowLower : flat.rowUpper)[i])
                                : Side.curve(program.cuts
                                        .get(i - program.rowLower.length)
                                        .curve()));
            }
        }
        for (int j = 0; j < flat.cost.length; j++) {
            boolean lower = best.reducedCost(j) > 0;
            if (best.reducedCost(j) != 0) {
                priced.add(new Side(On.COLUMN, j, lower, (lower ? flat.lower : flat.upper)[j]));
            }
        }
        priced.removeIf(s -> Double.isInfinite(s.bound()));
        return priced.stream().distinct().toList();
    }

    /** By row name how far the plan of least total miss is below a row's lower or above its upper limit. */
    Map<String, Double> shortfalls() {
        Map<String, Double> shortfalls = new HashMap<>();
        for (int i = 0; i < program.rowLower.length; i++) {
            int first = flat.cost.length + 2 * i;
            double miss = best.value(first) + best.value(first + 1);
            if (miss > NO_PRICE * size[i]) {
                shortfalls.put(program.matrix.rowNames().get(i), miss);
            }
        }
        return shortfalls;
    }
}
