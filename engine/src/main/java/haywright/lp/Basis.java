package haywright.lp;

import java.util.Arrays;
import java.util.List;

/**
 * Where a session stood: which columns and rows sit at a limit, and the cuts taken by then. A value, which any session
 * of the same form may start from, on any thread: {@link Session#start}.
 */
public final class Basis {
    /** Nothing solved yet, no cut taken. */
    public static final Basis NONE = new Basis(new int[0], new int[0], List.of());

    final int[] column;
    final int[] row;
    final List<LinearProgram.Taken> cuts;

    /** The arrays are kept, not copied; {@code row} covers the cuts, which come last. */
    Basis(int[] column, int[] row, List<LinearProgram.Taken> cuts) {
        this.column = column;
        this.row = row;
        this.cuts = cuts;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Basis b
                && Arrays.equals(column, b.column)
                && Arrays.equals(row, b.row)
                && cuts.equals(b.cuts);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(column) + Arrays.hashCode(row);
    }
}
