package haywright.lp;

/**
 * A program kept open in the solver: changed and solved again from where it stood. Belongs to the thread that opened
 * it, because the solver's handle does; any other gets an {@link IllegalStateException}. What is wrong throws {@link
 * IllegalArgumentException} as in {@link LinearProgram}, and the program stays as it was.
 */
public final class LpSession implements AutoCloseable {
    LpSession(LinearProgram program) {
        throw new UnsupportedOperationException();
    }

    public Outcome solve() {
        throw new UnsupportedOperationException();
    }

    /** The program as it stands now, with every change. */
    public LinearProgram program() {
        throw new UnsupportedOperationException();
    }

    public void cost(int column, double cost) {
        throw new UnsupportedOperationException();
    }

    public void columnBounds(int column, double lower, double upper) {
        throw new UnsupportedOperationException();
    }

    public void rowBounds(int row, double lower, double upper) {
        throw new UnsupportedOperationException();
    }

    /** Adds a row over the existing columns and returns its index. */
    public int addRow(String name, double lower, double upper, int[] columns, double[] coefficients) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void close() {}
}
