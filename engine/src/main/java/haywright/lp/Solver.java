package haywright.lp;

import com.sun.jna.Pointer;
import haywright.lp.LinearProgram.Row;
import haywright.lp.LinearProgram.Taken;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;

/**
 * One handle of the solver and the program in it, in the solver's own terms: it always minimizes, and its rows are the
 * program's and then the cuts. Belongs to the thread that opened it.
 */
final class Solver implements AutoCloseable {
    /** Up to this many rows and columns, presolving a linear program costs more than it saves. */
    private static final int SMALL = 5_000;

    /** How near to whole; by default a portion could be a hair too small. */
    private static final double WHOLE = 1e-7;

    /** For programs of this size they cost several times what they save, and the first can end in an error. */
    private static final List<String> NO_HEURISTICS = List.of(
            "mip_heuristic_run_feasibility_jump",
            "mip_heuristic_run_rins",
            "mip_heuristic_run_rens",
            "mip_heuristic_run_root_reduced_cost");

    /** A curved row may be broken by 1e-7 of its size, so its cuts must hold better. */
    private static final double CUTS_HOLD = 1e-9;

    private final Thread owner = Thread.currentThread();
    private final double sign;
    private final int columns;
    private final String presolve;
    private int rows;
    private @Nullable Pointer highs;

    private Budget budget = Budget.UNLIMITED;
    private @Nullable Throwable thrown;
    private boolean stopped;

    /** Kept here because the solver holds only its address. */
    private final Highs.Asked asked = (type, message, state, answer, nothing) -> {
        if (canceled()) {
            answer.setInt(0, 1);
        }
    };

    Solver(LinearProgram program) {
        sign = program.maximizing() ? -1 : 1;
        columns = program.cost.length;
        presolve = columns + program.rowLower.length <= SMALL ? "off" : "choose";
        Pointer handle = Highs.open();
        highs = handle;
        try {
            done(Highs.setBoolOptionValue(handle, "output_flag", 0), "be silent");
            done(Highs.setIntOptionValue(handle, "threads", 1), "use one thread");
            done(Highs.setDoubleOptionValue(handle, "small_matrix_value", LinearProgram.NOTHING), "keep coefficients");
            done(Highs.setStringOptionValue(handle, "presolve", presolve), "presolve");
            if (!program.curves.isEmpty()) {
                done(Highs.setDoubleOptionValue(handle, "primal_feasibility_tolerance", CUTS_HOLD), "keep cuts");
            }
            if (program.hasWhole()) {
                done(Highs.setDoubleOptionValue(handle, "mip_feasibility_tolerance", WHOLE), "be whole");
                done(Highs.setDoubleOptionValue(handle, "mip_rel_gap", 0), "search to the end");
                done(Highs.setDoubleOptionValue(handle, "mip_abs_gap", 0), "search to the end");
                for (String heuristic : NO_HEURISTICS) {
                    done(Highs.setBoolOptionValue(handle, heuristic, 0), "search without " + heuristic);
                }
            }
            pass(handle, program);
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    private void pass(Pointer handle, LinearProgram p) {
        int m = p.rowLower.length;
        done(
                Highs.passLp(
                        handle,
                        columns,
                        m,
                        p.matrix.value().length,
                        Highs.ROW_WISE,
                        Highs.MINIMIZE,
                        sign * p.offset(),
                        turned(p.cost),
                        below(p.lower, p.upper),
                        p.upper,
                        below(p.rowLower, p.rowUpper),
                        p.rowUpper,
                        p.matrix.start(),
                        p.matrix.index(),
                        p.matrix.value()),
                "take the program");
        rows = m;
        for (Row cut : p.rows().subList(m, m + p.cuts.size())) {
            add(cut);
        }
    }

    /** Costs as the solver minimizes them, and back. Makes −0 a plain 0. */
    private double[] turned(double[] numbers) {
        double[] turned = new double[numbers.length];
        for (int i = 0; i < turned.length; i++) {
            turned[i] = sign * numbers[i] + 0.0;
        }
        return turned;
    }

    /** Lower limits never above upper ones: what contradicts itself is answered before the solver is asked. */
    private static double[] below(double[] lower, double[] upper) {
        double[] below = new double[lower.length];
        for (int i = 0; i < below.length; i++) {
            below[i] = Math.min(lower[i], upper[i]);
        }
        return below;
    }

    void costs(int from, double[] cost) {
        done(Highs.changeColsCostByRange(mine(), from, from + cost.length - 1, turned(cost)), "change costs");
    }

    void columns(int from, double[] lower, double[] upper) {
        int to = from + lower.length - 1;
        done(Highs.changeColsBoundsByRange(mine(), from, to, below(lower, upper), upper), "change bounds");
    }

    void rows(int from, double[] lower, double[] upper) {
        int to = from + lower.length - 1;
        done(Highs.changeRowsBoundsByRange(mine(), from, to, below(lower, upper), upper), "change limits");
    }

    void add(Row row) {
        int count = row.columns().length;
        double lower = Math.min(row.lower(), row.upper());
        done(Highs.addRow(mine(), lower, row.upper(), count, row.columns(), row.coefficients()), "add a row");
        rows++;
    }

    /** @param gone 1 for each row that goes; a basis does not survive it */
    void delete(int[] gone) {
        int left = rows;
        for (int g : gone) {
            left -= g;
        }
        done(Highs.deleteRowsByMask(mine(), gone.clone()), "leave out rows");
        rows = left;
    }

    /** From here to {@link #end} the solver keeps to the budget. */
    void begin(Budget allowed) {
        Pointer handle = mine();
        budget = allowed;
        stopped = false;
        if (Double.isFinite(allowed.seconds())) {
            done(Highs.zeroAllClocks(handle), "start its clock");
            done(Highs.setDoubleOptionValue(handle, "time_limit", allowed.seconds()), "keep to a time");
        }
        if (allowed.asks()) {
            done(Highs.setCallback(handle, asked, null), "ask on its way");
            for (int type : Highs.INTERRUPTS) {
                done(Highs.startCallback(handle, type), "ask on its way");
            }
        }
    }

    void end() {
        Pointer handle = mine();
        if (Double.isFinite(budget.seconds())) {
            done(Highs.setDoubleOptionValue(handle, "time_limit", Double.POSITIVE_INFINITY), "forget the time");
        }
        if (budget.asks()) {
            for (int type : Highs.INTERRUPTS) {
                done(Highs.stopCallback(handle, type), "ask no more");
            }
        }
        budget = Budget.UNLIMITED;
        Throwable t = thrown;
        thrown = null;
        if (t instanceof RuntimeException e) {
            throw e;
        }
        if (t instanceof Error e) {
            throw e;
        }
    }

    private boolean canceled() {
        try {
            stopped |= budget.canceled().getAsBoolean();
        } catch (RuntimeException | Error e) {
            thrown = e;
            stopped = true;
        }
        return stopped;
    }

    /** Solves the linear program from where it stood: optimal, infeasible, unbounded, or a status that is stopped. */
    int run() {
        Pointer handle = mine();
        if (budget.asks() && canceled()) {
            return Highs.INTERRUPTED;
        }
        int status = runOnce(handle);
        if (status == Highs.UNBOUNDED_OR_INFEASIBLE) {
            done(Highs.setStringOptionValue(handle, "presolve", "off"), "not presolve");
            status = runBy(handle, Highs.DUAL, "choose");
            done(Highs.setStringOptionValue(handle, "presolve", presolve), "presolve");
        }
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

    static boolean stopped(int status) {
        return status == Highs.TIME_LIMIT || status == Highs.SOLUTION_LIMIT || status == Highs.INTERRUPTED;
    }

    static boolean undecided(int status) {
        return (status < Highs.OPTIMAL || status > Highs.UNBOUNDED) && !stopped(status);
    }

    private static int runBy(Pointer handle, int strategy, String solver) {
        done(Highs.clearSolver(handle), "start afresh");
        done(Highs.setIntOptionValue(handle, "simplex_strategy", strategy), "take a strategy");
        done(Highs.setStringOptionValue(handle, "solver", solver), "take a method");
        return runOnce(handle);
    }

    /** Nobody waits for the answer of an interrupted thread: the flag stays up, for whoever stops the rest. */
    private static int runOnce(Pointer handle) {
        if (Thread.currentThread().isInterrupted()) {
            throw new CancellationException("interrupted");
        }
        Highs.run(handle);
        return Highs.getModelStatus(handle);
    }

    /** Branch and bound, always from nothing: only then does the same program give the same bytes. */
    int runWhole(boolean[] whole) {
        Pointer handle = mine();
        int[] kinds = new int[columns];
        for (int j = 0; j < columns; j++) {
            kinds[j] = whole[j] ? 1 : 0;
        }
        done(Highs.clearSolver(handle), "start afresh");
        done(Highs.setIntOptionValue(handle, "mip_max_nodes", budget.nodes()), "count nodes");
        done(Highs.changeColsIntegralityByRange(handle, 0, columns - 1, kinds), "take whole columns");
        return runOnce(handle);
    }

    /** Back from branch and bound, whose answer is gone with this. */
    void runWholeNoMore() {
        done(Highs.clearIntegrality(mine()), "forget whole columns");
    }

    /** @param share of the cost by which a plan in whole numbers may be off the best */
    void near(double share) {
        done(Highs.setDoubleOptionValue(mine(), "mip_rel_gap", share), "take a gap");
    }

    boolean isBetter(double one, double other) {
        return sign * one < sign * other;
    }

    double sign() {
        return sign;
    }

    boolean hasPlan() {
        int[] status = new int[1];
        done(Highs.getIntInfoValue(mine(), "primal_solution_status", status), "tell what it has");
        return status[0] == Highs.FEASIBLE;
    }

    /** No plan in whole numbers can be better. */
    double wholeBound() {
        double[] bound = new double[1];
        done(Highs.getDoubleInfoValue(mine(), "mip_dual_bound", bound), "give its bound");
        return sign * bound[0];
    }

    double objective() {
        return sign * Highs.getObjectiveValue(mine());
    }

    /** @param reducedCosts as the program has them, like the duals; both 0 after branch and bound */
    record Solution(double[] values, double[] reducedCosts, double[] activities, double[] duals) {}

    Solution solution() {
        double[] values = new double[columns];
        double[] reducedCosts = new double[columns];
        double[] activities = new double[rows];
        double[] duals = new double[rows];
        done(Highs.getSolution(mine(), values, reducedCosts, activities, duals), "give its plan");
        return new Solution(values, turned(reducedCosts), activities, turned(duals));
    }

    Basis basis(List<Taken> cuts) {
        int[] column = new int[columns];
        int[] row = new int[rows];
        done(Highs.getBasis(mine(), column, row), "give its basis");
        return new Basis(column, row, cuts);
    }

    /** Forgets where it stood. */
    void clear() {
        done(Highs.clearSolver(mine()), "start afresh");
    }

    void start(Basis basis) {
        done(Highs.setBasis(mine(), basis.column, basis.row), "take the basis");
    }

    /** The costs and limits at which the basis changes. */
    Optimum.Ranging ranging(boolean maximizing) {
        double[] costUp = new double[columns];
        double[] costDown = new double[columns];
        double[] limitUp = new double[rows];
        double[] limitDown = new double[rows];
        done(Highs.ranging(mine(), costUp, costDown, limitUp, limitDown), "give the ranges");
        double[] down = turned(maximizing ? costUp : costDown);
        double[] up = turned(maximizing ? costDown : costUp);
        return new Optimum.Ranging(down, up, limitDown, limitUp);
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
