package haywright.lp;

/** Amounts that keep every limit, and what they come to. Safe to keep after its session has changed or closed. */
public sealed interface Plan permits Optimum, Whole {
    /** The program this plan answers; cuts taken for its curved rows stand as rows after its own. */
    LinearProgram program();

    /** Value of the objective, its constant included. */
    double objective();

    /** Amount chosen of a column. */
    double value(int column);

    /** Amount chosen of the column of that name. */
    default double value(String column) {
        return value(program().column(column));
    }
}
