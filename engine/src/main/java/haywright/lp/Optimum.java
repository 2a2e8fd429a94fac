package haywright.lp;

/** A best plan. Safe to keep after its session has changed or closed. */
public final class Optimum implements Outcome {
    private final LinearProgram program;

    Optimum(LinearProgram program) {
        this.program = program;
    }

    /** Value of the objective, its constant included. */
    public double objective() {
        throw new UnsupportedOperationException();
    }

    /** Amount chosen of a column. */
    public double value(int column) {
        throw new UnsupportedOperationException();
    }

    public double value(String column) {
        return value(program.column(column));
    }

    /**
     * Change of the objective for each unit of this column beyond what the plan has of it. A column at 0 whose cost
     * falls by this much (when minimising) comes into the plan: cost − reduced cost is the price below which it is
     * worth buying.
     */
    public double reducedCost(int column) {
        throw new UnsupportedOperationException();
    }

    /** The row's sum in this plan. */
    public double activity(int row) {
        throw new UnsupportedOperationException();
    }

    /** Change of the objective per unit increase of the row's binding limit; 0 if none binds. */
    public double dual(int row) {
        throw new UnsupportedOperationException();
    }

    /** Costs of this column between which this plan (its amounts) stays best, every other cost as it is. */
    public Range costRange(int column) {
        throw new UnsupportedOperationException();
    }

    /**
     * Values of the row's binding limit between which {@link #dual} holds, every other limit as it is. Where no limit
     * binds, the range over which the limit (of two, the nearer one) may move before it does.
     */
    public Range boundRange(int row) {
        throw new UnsupportedOperationException();
    }
}
