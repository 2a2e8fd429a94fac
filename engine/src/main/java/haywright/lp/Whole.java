package haywright.lp;

/**
 * A plan whose whole columns are whole. It has no duals: branch and bound gives none; {@link Session#held} solves again
 * with the whole columns where they are, and that has.
 */
public final class Whole implements Plan, Outcome {
    private final LinearProgram program;
    private final double objective;
    private final double bound;
    private final double[] values;

    /** The array is kept, not copied. */
    Whole(LinearProgram program, double objective, double bound, double[] values) {
        this.program = program;
        this.objective = objective;
        this.bound = bound;
        this.values = values;
    }

    @Override
    public LinearProgram program() {
        return program;
    }

    @Override
    public double objective() {
        return objective;
    }

    /** No plan can be better than this; the objective itself where the search went to its end. */
    public double bound() {
        return bound;
    }

    double[] values() {
        return values;
    }

    @Override
    public double value(int column) {
        return values[column];
    }
}
