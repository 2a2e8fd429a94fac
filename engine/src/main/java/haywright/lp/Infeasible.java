package haywright.lp;

/** No answer keeps every limit. Why is found only when asked: it takes several times as long as the answer. */
public final class Infeasible implements Outcome {
    private final LinearProgram program;

    Infeasible(LinearProgram program) {
        this.program = program;
    }

    /** The limits that stand in each other's way. */
    public Conflict why() {
        return why(Budget.UNLIMITED);
    }

    /** The same; if the budget is spent before the end, limits stay in that need not. */
    public Conflict why(Budget budget) {
        return new ConflictSearch(program, budget).answer();
    }
}
