package haywright.lp;

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

    /** How far each column moves, or null if there is no such direction. */
    static double @Nullable [] along(LinearProgram program) {
        LinearProgram flat = program.flat();
        LinearProgram moves = flat.asking(flat.maximizing(), flat.cost)
                .withBounds(still(flat.lower, -1), still(flat.upper, 1))
                .withLimits(
                        still(flat.rowLower, Double.NEGATIVE_INFINITY), still(flat.rowUpper, Double.POSITIVE_INFINITY));
        Optimum best = (Optimum) moves.solve();
        double gain = program.maximizing() ? best.objective() : -best.objective();
        double[] along = new double[flat.cost.length];
        for (int j = 0; j < along.length; j++) {
            along[j] = best.value(j);
        }
        return gain > STILL ? along : null;
    }

    private static double[] still(double[] limits, double otherwise) {
        double[] still = new double[limits.length];
        for (int i = 0; i < still.length; i++) {
            still[i] = Double.isFinite(limits[i]) ? 0 : otherwise;
        }
        return still;
    }

    static @Nullable Unbounded of(LinearProgram program) {
        double[] along = along(program);
        if (along == null) {
            return null;
        }
        int fastest = 0;
        for (int j = 1; j < along.length; j++) {
            if (Math.abs(along[j]) > Math.abs(along[fastest]) + STILL) {
                fastest = j;
            }
        }
        Map<String, Double> direction = new TreeMap<>();
        for (int j = 0; j < along.length; j++) {
            if (Math.abs(along[j]) > STILL) {
                direction.put(program.matrix.columnNames().get(j), along[j] / Math.abs(along[fastest]));
            }
        }
        return new Unbounded(program.matrix.columnNames().get(fastest), direction);
    }
}
