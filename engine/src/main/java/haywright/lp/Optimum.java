package haywright.lp;

import org.jspecify.annotations.Nullable;

/**
 * A best plan. Safe to keep after its session has changed or closed. Where several plans are equally good this is one
 * of them; where several sets of duals are right (a degenerate plan) these are one of them.
 */
public final class Optimum implements Outcome {
    private final LinearProgram program;
    private final double objective;
    private final double[] values;
    private final double[] reducedCosts;
    private final double[] activities;
    private final double[] duals;
    private final int[] columnBasis;
    private final int[] rowBasis;
    private volatile @Nullable Ranging ranging;

    /** The arrays are kept, not copied. */
    Optimum(
            LinearProgram program,
            double objective,
            double[] values,
            double[] reducedCosts,
            double[] activities,
            double[] duals,
            int[] columnBasis,
            int[] rowBasis) {
        this.program = program;
        this.objective = objective;
        this.values = values;
        this.reducedCosts = reducedCosts;
        this.activities = activities;
        this.duals = duals;
        this.columnBasis = columnBasis;
        this.rowBasis = rowBasis;
    }

    /** The program this plan answers. */
    public LinearProgram program() {
        return program;
    }

    /** Value of the objective, its constant included. */
    public double objective() {
        return objective;
    }

    /** Amount chosen of a column. */
    public double value(int column) {
        return values[column];
    }

    /** Amount chosen of the column of that name. */
    public double value(String column) {
        return value(program.column(column));
    }

    /**
     * Change of the objective for each unit more of this column than the plan has. When minimising, an unused column
     * comes in once its cost has fallen by this much: cost − reduced cost is the price below which it is worth buying.
     */
    public double reducedCost(int column) {
        return reducedCosts[column];
    }

    /** The row's sum in this plan. */
    public double activity(int row) {
        return activities[row];
    }

    /** Change of the objective per unit increase of the row's binding limit; 0 if none binds. */
    public double dual(int row) {
        return duals[row];
    }

    /** Costs of this column between which these amounts stay best, every other cost as it is. */
    public Range costRange(int column) {
        return ranging().cost(column);
    }

    /**
     * Values of the row's binding limit between which {@link #dual} holds, every other limit as it is. Where no limit
     * binds, the values that the limit (of two, the nearer one) may take without binding.
     */
    public Range boundRange(int row) {
        if (rowBasis[row] != Highs.BASIC) {
            return ranging().bound(row);
        }
        LinearProgram.Row limits = program.rows().get(row);
        double spareBelow = activities[row] - limits.lower();
        double spareAbove = limits.upper() - activities[row];
        return spareBelow <= spareAbove
                ? new Range(Double.NEGATIVE_INFINITY, activities[row])
                : new Range(activities[row], Double.POSITIVE_INFINITY);
    }

    private Ranging ranging() {
        Ranging known = ranging;
        if (known == null) {
            try (LpSession session = program.open()) {
                known = session.ranging(columnBasis, rowBasis);
            }
            ranging = known;
        }
        return known;
    }

    /** Where the basis changes. */
    record Ranging(double[] costDown, double[] costUp, double[] boundDown, double[] boundUp) {
        Range cost(int column) {
            return new Range(costDown[column], costUp[column]);
        }

        Range bound(int row) {
            return new Range(boundDown[row], boundUp[row]);
        }
    }
}
