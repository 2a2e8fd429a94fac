package haywright.lp;

import com.sun.jna.Pointer;
import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A program kept open in the solver: changed and solved again from where it stood. Belongs to the thread that opened
 * it, because the solver's handle does; any other gets an {@link IllegalStateException}, and so does one that uses it
 * closed. What is wrong throws {@link IllegalArgumentException} as in {@link LinearProgram}, and the program stays as
 * it was.
 */
public final class LpSession implements AutoCloseable {
    /** Up to this many rows and columns, presolving costs more than it saves. */
    private static final int SMALL = 5_000;

    private final Thread owner = Thread.currentThread();
    private final boolean maximising;
    /** The solver always minimises: −1 turns costs and duals of a maximisation. */
    private final double sign;

    private final double offset;
    private final List<Column> columns;
    private final List<Row> rows;
    private final Set<String> rowNames = new HashSet<>();
    private @Nullable LinearProgram snapshot;
    private @Nullable Pointer highs;

    LpSession(LinearProgram program) {
        maximising = program.maximising();
        sign = maximising ? -1 : 1;
        offset = program.offset();
        columns = new ArrayList<>(program.columns());
        rows = new ArrayList<>(program.rows());
        rows.forEach(r -> rowNames.add(r.name()));
        snapshot = program;
        String presolve = columns.size() + rows.size() <= SMALL ? "off" : "choose";
        Pointer handle = Highs.open();
        highs = handle;
        try {
            done(Highs.setBoolOptionValue(handle, "output_flag", 0), "be silent");
            done(Highs.setIntOptionValue(handle, "threads", 1), "use one thread");
            done(Highs.setDoubleOptionValue(handle, "small_matrix_value", LinearProgram.NOTHING), "keep coefficients");
            done(Highs.setStringOptionValue(handle, "presolve", presolve), "presolve");
            pass(handle);
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    private void pass(Pointer handle) {
        int n = columns.size();
        int m = rows.size();
        double[] cost = new double[n];
        double[] lower = new double[n];
        double[] upper = new double[n];
        for (int j = 0; j < n; j++) {
            Column c = columns.get(j);
            cost[j] = sign * c.cost();
            lower[j] = Math.min(c.lower(), c.upper());
            upper[j] = c.upper();
        }
        double[] rowLower = new double[m];
        double[] rowUpper = new double[m];
        int[] start = new int[m + 1];
        for (int i = 0; i < m; i++) {
            Row r = rows.get(i);
            rowLower[i] = Math.min(r.lower(), r.upper());
            rowUpper[i] = r.upper();
            start[i + 1] = start[i] + r.columns().length;
        }
        int[] index = new int[start[m]];
        double[] value = new double[start[m]];
        for (int i = 0; i < m; i++) {
            System.arraycopy(rows.get(i).columns(), 0, index, start[i], start[i + 1] - start[i]);
            System.arraycopy(rows.get(i).coefficients(), 0, value, start[i], start[i + 1] - start[i]);
        }
        done(
                Highs.passLp(
                        handle,
                        n,
                        m,
                        start[m],
                        Highs.ROW_WISE,
                        Highs.MINIMISE,
                        sign * offset,
                        cost,
                        lower,
                        upper,
                        rowLower,
                        rowUpper,
                        start,
                        index,
                        value),
                "take the program");
    }

    /** Solves from where it stood. */
    public Outcome solve() {
        int status = status();
        if (status == Highs.OPTIMAL) {
            return optimum();
        }
        if (undecided(status)) {
            throw new IllegalStateException("The solver stopped without an answer (status " + status
                    + "). The program may mix very large and very small numbers: write it with toMps() and look.");
        }
        Unbounded direction = status == Highs.INFEASIBLE ? null : ImprovingDirection.of(program());
        return direction != null ? direction : new ConflictSearch(program()).answer();
    }

    /** A best plan, or null where there is none; spares the search for the reason. */
    @Nullable
    Optimum optimumOrNull() {
        return status() == Highs.OPTIMAL ? optimum() : null;
    }

    /** Whether it is proved that no plan keeps every limit. */
    boolean infeasible() {
        return status() == Highs.INFEASIBLE;
    }

    private int status() {
        Pointer handle = mine();
        if (crossed()) {
            return Highs.INFEASIBLE;
        }
        int status = run(handle);
        if (undecided(status)) {
            // What the dual simplex leaves open, the primal one proves or, failing that, the interior point method
            // (netlib's klein1 needs both).
            status = runBy(handle, Highs.PRIMAL, "simplex");
            if (undecided(status)) {
                status = runBy(handle, Highs.DUAL, "ipm");
            }
            done(Highs.setIntOptionValue(handle, "simplex_strategy", Highs.DUAL), "take the dual method");
            done(Highs.setStringOptionValue(handle, "solver", "choose"), "choose its method");
        }
        return status;
    }

    private static boolean undecided(int status) {
        return status < Highs.OPTIMAL || status > Highs.UNBOUNDED;
    }

    private static int runBy(Pointer handle, int strategy, String solver) {
        done(Highs.clearSolver(handle), "start afresh");
        done(Highs.setIntOptionValue(handle, "simplex_strategy", strategy), "take a strategy");
        done(Highs.setStringOptionValue(handle, "solver", solver), "take a method");
        return run(handle);
    }

    private static int run(Pointer handle) {
        Highs.run(handle);
        return Highs.getModelStatus(handle);
    }

    private boolean crossed() {
        return columns.stream().anyMatch(c -> LinearProgram.crossed(c.lower(), c.upper()))
                || rows.stream().anyMatch(r -> LinearProgram.crossed(r.lower(), r.upper()));
    }

    private Optimum optimum() {
        Pointer handle = mine();
        double[] values = new double[columns.size()];
        double[] reducedCosts = new double[columns.size()];
        double[] activities = new double[rows.size()];
        double[] duals = new double[rows.size()];
        int[] columnBasis = new int[columns.size()];
        int[] rowBasis = new int[rows.size()];
        done(Highs.getSolution(handle, values, reducedCosts, activities, duals), "give its plan");
        done(Highs.getBasis(handle, columnBasis, rowBasis), "give its basis");
        turn(reducedCosts);
        turn(duals);
        double objective = sign * Highs.getObjectiveValue(handle);
        return new Optimum(program(), objective, values, reducedCosts, activities, duals, columnBasis, rowBasis);
    }

    /** Also makes −0 a plain 0. */
    private void turn(double[] numbers) {
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = sign * numbers[i] + 0.0;
        }
    }

    Optimum.Ranging ranging(int[] columnBasis, int[] rowBasis) {
        Pointer handle = mine();
        done(Highs.setBasis(handle, columnBasis, rowBasis), "take the basis");
        run(handle);
        double[] costUp = new double[columns.size()];
        double[] costDown = new double[columns.size()];
        double[] boundUp = new double[rows.size()];
        double[] boundDown = new double[rows.size()];
        done(Highs.ranging(handle, costUp, costDown, boundUp, boundDown), "give the ranges");
        turn(costUp);
        turn(costDown);
        return new Optimum.Ranging(maximising ? costUp : costDown, maximising ? costDown : costUp, boundDown, boundUp);
    }

    /** The program as it stands now, with every change. */
    public LinearProgram program() {
        LinearProgram now = snapshot;
        if (now == null) {
            now = new LinearProgram(maximising, offset, columns, rows);
            snapshot = now;
        }
        return now;
    }

    /** Sets the cost of one unit of a column. */
    public void cost(int column, double cost) {
        Pointer handle = mine();
        Column was = columns.get(column);
        columns.set(column, new Column(was.name(), cost, was.lower(), was.upper()));
        snapshot = null;
        done(Highs.changeColCost(handle, column, sign * cost), "change a cost");
    }

    /** Sets the bounds of a column. */
    public void columnBounds(int column, double lower, double upper) {
        Pointer handle = mine();
        Column was = columns.get(column);
        columns.set(column, new Column(was.name(), was.cost(), lower, upper));
        snapshot = null;
        done(Highs.changeColBounds(handle, column, Math.min(lower, upper), upper), "change bounds");
    }

    /** Sets the limits of a row. */
    public void rowBounds(int row, double lower, double upper) {
        Pointer handle = mine();
        rows.set(row, rows.get(row).within(lower, upper));
        snapshot = null;
        done(Highs.changeRowBounds(handle, row, Math.min(lower, upper), upper), "change limits");
    }

    void limit(Side side, double bound) {
        if (side.onRow()) {
            Row r = rows.get(side.index());
            rowBounds(side.index(), side.lower() ? bound : r.lower(), side.lower() ? r.upper() : bound);
        } else {
            Column c = columns.get(side.index());
            columnBounds(side.index(), side.lower() ? bound : c.lower(), side.lower() ? c.upper() : bound);
        }
    }

    /** Adds a row over the existing columns and returns its index. */
    public int addRow(String name, double lower, double upper, int[] columnsOfRow, double[] coefficients) {
        Pointer handle = mine();
        Row row = new Row(name, lower, upper, columnsOfRow, coefficients);
        row.checkColumns(columns.size());
        LinearProgram.Builder.fresh(rowNames, name, "row");
        rows.add(row);
        snapshot = null;
        done(
                Highs.addRow(
                        handle, Math.min(lower, upper), upper, row.columns().length, row.columns(), row.coefficients()),
                "add a row");
        return rows.size() - 1;
    }

    /** Frees the solver's memory. */
    @Override
    public void close() {
        if (highs != null) {
            Highs.destroy(mine());
            highs = null;
        }
    }

    private Pointer mine() {
        if (Thread.currentThread() != owner) {
            throw new IllegalStateException("This program was opened by thread " + owner.getName()
                    + " and belongs to it: open one for each thread.");
        }
        if (highs == null) {
            throw new IllegalStateException("This program has been closed.");
        }
        return highs;
    }

    private static void done(int status, String what) {
        if (status < 0) {
            throw new IllegalStateException(
                    "The solver would not " + what + ": a fault in Haywright, not in the data.");
        }
    }
}
