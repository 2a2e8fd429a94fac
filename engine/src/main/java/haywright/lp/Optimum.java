package haywright.lp;

import org.jspecify.annotations.Nullable;

/**
 * A best plan, with what its limits cost. Where several plans are equally good this is one of them; where several sets
 * of duals are right (a degenerate plan) these are one of them.
 */
public final class Optimum implements Plan, Outcome {
    private final LinearProgram program;
    private final double objective;
    private final Solver.Solution solution;
    private final Basis basis;
    private volatile @Nullable Ranging ranging;

    Optimum(LinearProgram program, double objective, Solver.Solution solution, Basis basis) {
        this.program = program;
        this.objective = objective;
        this.solution = solution;
        this.basis = basis;
    }

    @Override
    public LinearProgram program() {
        return program;
    }

    @Override
    public double objective() {
        return objective;
    }

    @Override
    public double value(int column) {
        return solution.values()[column];
    }

    /**
     * Change of the objective for each unit more of this column than the plan has. When minimizing, an unused column
     * comes in once its cost has fallen by this much: cost − reduced cost is the price below which it is worth buying.
     */
    public double reducedCost(int column) {
        return solution.reducedCosts()[column];
    }

    /** The row's sum in this plan. */
    public double activity(int row) {
        return solution.activities()[row];
    }

    /** Change of the objective per unit increase of the row's binding limit; 0 if none binds. */
    public double dual(int row) {
        return solution.duals()[row];
    }

    /**
     * Change of the objective per unit more of a curved row's limit as a reader sees it; 0 if it does not bind. Where one
     * binds, ranges of costs and limits are of the cuts, not of the curve, and too narrow to mean anything.
     */
    public double price(int curve) {
        double price = 0;
        for (int k = 0; k < program.cuts.size(); k++) {
            LinearProgram.Taken taken = program.cuts.get(k);
            if (taken.curve() == curve) {
                double perUnit = program.curves.get(curve).row().perUnit(taken.cut());
                price += dual(program.rowLower.length + k) * taken.scale() * perUnit;
            }
        }
        return price;
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
        if (basis.row[row] != Highs.BASIC) {
            return ranging().bound(row);
        }
        LinearProgram.Row limits = program.rows().get(row);
        double at = activity(row);
        return at - limits.lower() <= limits.upper() - at
                ? new Range(Double.NEGATIVE_INFINITY, at)
                : new Range(at, Double.POSITIVE_INFINITY);
    }

    private Ranging ranging() {
        Ranging known = ranging;
        if (known == null) {
            try (Solver solver = new Solver(program)) {
                solver.start(basis);
                solver.run();
                known = solver.ranging(program.maximizing());
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
