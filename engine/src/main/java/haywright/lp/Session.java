package haywright.lp;

import haywright.lp.ConvexRow.Cut;
import haywright.lp.LinearProgram.Curve;
import haywright.lp.LinearProgram.Row;
import haywright.lp.LinearProgram.Taken;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A program kept open in the solver: changed and solved again from where it stood. Belongs to the thread that opened
 * it, because the solver's handle does; any other gets an {@link IllegalStateException}, and so does one that uses it
 * closed. What is wrong throws {@link IllegalArgumentException} as in {@link ProgramBuilder}, and the program stays as
 * it was.
 *
 * <p>Where several plans are equally good, which one comes out depends on where the session stood. What must come out
 * the same bytes again, on any thread, starts from {@link Basis#NONE} or from a basis that was kept.
 */
public final class Session implements AutoCloseable {
    /** A curved row may be broken by this share of its size. */
    private static final double BROKEN = 1e-7;

    /** Cuts that hold nothing are left out once there are so many to a curved row. */
    private static final int MANY_CUTS = 40;

    /** Several times what a plan ever took; past it the numbers are at fault, or amounts without bounds run away. */
    private static final int MOST_ROUNDS = 500;

    /** The same of whole plans, each of which takes a branch and bound. */
    private static final int MOST_PLANS = 100;

    /** How far along a direction of improvement the curved rows are asked. */
    private static final double FAR = 1e6;

    private final Solver solver;
    private LinearProgram now;
    /** Curved rows that are left aside, for the search of a conflict. */
    private final boolean[] aside;

    /** Share of the cost by which a plan in whole numbers may be off the best. */
    private double gap;

    private int mostPlans = MOST_PLANS;

    private Solver.@Nullable Solution reached;
    /** At the last best plan: what the solver itself says of a basis that it does not have is not to be read. */
    private Basis stood = Basis.NONE;

    Session(LinearProgram program) {
        now = program;
        aside = new boolean[program.curves.size()];
        solver = new Solver(program);
    }

    /** Solves from where it stood, in whole numbers where the program has whole columns. */
    public Outcome solve() {
        return solve(Budget.UNLIMITED);
    }

    public Outcome solve(Budget budget) {
        return within(budget, true);
    }

    /**
     * Ends a search in whole numbers sooner.
     *
     * @param share of the cost, near the best
     * @param plans cut off for breaking a curved row, after which the best found so far will do
     */
    public void sooner(double share, int plans) {
        gap = share;
        mostPlans = plans;
        solver.near(share);
    }

    /** Solves as if no column had to be whole: the least that whole numbers can cost, with duals. */
    public Outcome relaxed(Budget budget) {
        return within(budget, false);
    }

    /** Solves with every whole column where that plan has it: what the rest costs, with duals. */
    public Outcome held(Whole plan, Budget budget) {
        LinearProgram before = now;
        columns(0, wholeAt(plan, now.lower), wholeAt(plan, now.upper));
        try {
            return relaxed(budget);
        } finally {
            columns(0, before.lower, before.upper);
        }
    }

    /** Bounds of columns, with every whole column where that plan has it. */
    private double[] wholeAt(Whole plan, double[] bounds) {
        double[] at = bounds.clone();
        for (int j = 0; j < at.length; j++) {
            if (now.matrix.whole()[j]) {
                at[j] = plan.value(j);
            }
        }
        return at;
    }

    private Outcome within(Budget budget, boolean inWhole) {
        if (now.crossed()) {
            return new Infeasible(now);
        }
        leaveOutSlackCuts();
        solver.begin(budget);
        try {
            int status = cutToTheEnd();
            return inWhole && status == Highs.OPTIMAL && now.hasWhole() ? whole() : answer(status);
        } finally {
            solver.end();
        }
    }

    /** Whether it is proved that no plan keeps every limit, in whole numbers where the program has them. */
    boolean infeasible(Budget budget) {
        if (now.hasWhole()) {
            try {
                return solve(budget) instanceof Infeasible;
            } catch (Undecided undecided) {
                return false;
            }
        }
        if (now.crossed()) {
            return true;
        }
        solver.begin(budget);
        try {
            return cutToTheEnd() == Highs.INFEASIBLE;
        } finally {
            solver.end();
        }
    }

    private int cutToTheEnd() {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            int status = solver.run();
            if (status == Highs.OPTIMAL) {
                reached = solver.solution();
                if (!cut(reached.values())) {
                    return status;
                }
            } else if (status != Highs.UNBOUNDED || !cutFarAway()) {
                return status;
            }
        }
        return Highs.UNKNOWN;
    }

    /** Cuts until then may leave open what the curved rows do not. */
    private boolean cutFarAway() {
        double[] along = now.curves.isEmpty() ? null : ImprovingDirection.along(now);
        return along != null && cut(Arrays.stream(along).map(d -> d * FAR).toArray());
    }

    /** Cuts off this point for every curved row that it breaks; false if it breaks none. */
    private boolean cut(double[] values) {
        List<Taken> added = new ArrayList<>();
        for (int c = 0; c < aside.length; c++) {
            Curve curve = now.curves.get(c);
            double[] x = curve.of(values);
            if (!aside[c] && curve.row().broken(x) > BROKEN) {
                added.add(taken(c, curve, curve.row().cutAt(x), x));
            }
        }
        addCuts(added);
        return !added.isEmpty();
    }

    private Taken taken(int c, Curve curve, Cut cut, double[] x) {
        double size = Math.abs(curve.row().atLeast(cut));
        double terms = 0;
        for (int k = 0; k < x.length; k++) {
            terms += Math.abs(cut.coefficients()[k] * x[k]);
        }
        size = Math.max(size, terms);
        double scale = size > 0 && size < LinearProgram.LARGE ? Math.scalb(1.0, -Math.getExponent(size)) : 1;
        double[] scaled = Arrays.stream(cut.coefficients()).map(v -> v * scale).toArray();
        Row row = ProgramBuilder.terms(
                curve.name(),
                scale * curve.row().atLeast(cut),
                Double.POSITIVE_INFINITY,
                curve.columns(),
                scaled,
                now.cost.length);
        return new Taken(c, cut, scale, row.columns(), row.coefficients());
    }

    private void addCuts(List<Taken> added) {
        if (!added.isEmpty()) {
            int before = now.rows().size();
            List<Taken> cuts = new ArrayList<>(now.cuts);
            cuts.addAll(added);
            now = now.withCurves(now.curves, List.copyOf(cuts));
            List<Row> rows = now.rows();
            rows.subList(before, rows.size()).forEach(solver::add);
        }
    }

    private void dropCuts() {
        if (!now.cuts.isEmpty()) {
            keepRows(new boolean[now.cuts.size()]);
        }
    }

    /** Of the cuts these. */
    private void keepRows(boolean[] kept) {
        int own = now.rowLower.length;
        int[] gone = new int[own + kept.length];
        List<Taken> left = new ArrayList<>();
        for (int k = 0; k < kept.length; k++) {
            if (kept[k]) {
                left.add(now.cuts.get(k));
            } else {
                gone[own + k] = 1;
            }
        }
        solver.delete(gone);
        now = now.withCurves(now.curves, List.copyOf(left));
    }

    private void leaveOutSlackCuts() {
        if (now.cuts.size() <= MANY_CUTS * aside.length || stood.column.length == 0) {
            return;
        }
        int own = now.rowLower.length;
        stood = extended(stood);
        boolean[] kept = new boolean[now.cuts.size()];
        int[] row = new int[stood.row.length];
        int count = 0;
        for (int i = 0; i < row.length; i++) {
            boolean stays = i < own || stood.row[i] != Highs.BASIC;
            if (i >= own) {
                kept[i - own] = stays;
            }
            if (stays) {
                row[count++] = stood.row[i];
            }
        }
        keepRows(kept);
        stood = new Basis(stood.column, Arrays.copyOf(row, count), now.cuts);
        solver.start(stood);
    }

    private Outcome answer(int status) {
        if (status == Highs.OPTIMAL) {
            stood = solver.basis(now.cuts);
            return new Optimum(now, solver.objective(), solution(), stood);
        }
        if (Solver.stopped(status)) {
            return new Stopped(Optional.empty());
        }
        if (Solver.undecided(status)) {
            throw new Undecided("The solver stopped without an answer (status " + status
                    + "). The program may mix very large and very small numbers: write it with toMps() and look.");
        }
        Unbounded direction = status == Highs.INFEASIBLE ? null : ImprovingDirection.of(now);
        return direction != null ? direction : new Infeasible(now);
    }

    private Solver.Solution solution() {
        if (reached == null) {
            throw new IllegalStateException("An optimum without a solution.");
        }
        return reached;
    }

    /**
     * Branch and bound, cut again at its plans and at the best beside their whole numbers, from the cuts and the basis of
     * the continuous answer: outer approximation, Duran, Grossmann (1986), Math. Program. 36, 307. It ends where a plan of
     * branch and bound keeps the curved rows, or where no plan can be better than one that does by more than the gap.
     */
    private Outcome whole() {
        Basis root = solver.basis(now.cuts);
        Whole best = null;
        try {
            for (int round = 0; round < mostPlans; round++) {
                int status = solver.runWhole(now.matrix.whole());
                if (status == Highs.INFEASIBLE || status == Highs.UNBOUNDED_OR_INFEASIBLE) {
                    return best == null ? new Infeasible(now) : best;
                }
                double bound = solver.wholeBound();
                Whole plan = solver.hasPlan() ? rounded(solver.solution().values(), bound) : null;
                if (status != Highs.OPTIMAL && !Solver.stopped(status)) {
                    return answer(Highs.UNKNOWN);
                }
                if (plan == null || !cut(plan.values())) {
                    return status == Highs.OPTIMAL && plan != null
                            ? plan
                            : new Stopped(Optional.ofNullable(plan == null ? best : plan));
                }
                if (status != Highs.OPTIMAL) {
                    return new Stopped(Optional.ofNullable(best));
                }
                Whole beside = beside(plan, bound);
                best = beside != null && (best == null || solver.isBetter(beside.objective(), best.objective()))
                        ? beside
                        : best;
                if (best != null
                        && !solver.isBetter(
                                bound, best.objective() - gap * Math.abs(best.objective()) * solver.sign())) {
                    return best;
                }
            }
        } finally {
            solver.runWholeNoMore();
            solver.clear();
            stood = extended(root);
            solver.start(stood);
        }
        // cut again and again at plans that differ by nothing
        return new Stopped(Optional.ofNullable(best));
    }

    /**
     * The best that the rest can do beside the whole numbers of a plan, cut to the end: one branch and bound then settles
     * them, where each cut at a plan alone would take another. Null where it can do nothing.
     */
    private @Nullable Whole beside(Whole plan, double bound) {
        double[] lower = now.lower;
        double[] upper = now.upper;
        solver.runWholeNoMore();
        solver.clear();
        solver.columns(0, wholeAt(plan, lower), wholeAt(plan, upper));
        try {
            return cutToTheEnd() == Highs.OPTIMAL ? rounded(solution().values(), bound) : null;
        } finally {
            solver.columns(0, lower, upper);
        }
    }

    private Whole rounded(double[] values, double bound) {
        double objective = now.offset();
        for (int j = 0; j < values.length; j++) {
            values[j] = now.matrix.whole()[j] ? Math.rint(values[j]) + 0.0 : values[j];
            objective += now.cost[j] * values[j];
        }
        return new Whole(now, objective, bound, values);
    }

    /** To cuts taken since: they hold nothing yet. */
    private Basis extended(Basis basis) {
        int[] row = Arrays.copyOf(basis.row, now.rowLower.length + now.cuts.size());
        Arrays.fill(row, basis.row.length, row.length, Highs.BASIC);
        return new Basis(basis.column, row, now.cuts);
    }

    /** Where it stood at its last best plan, whole numbers left aside, and the cuts it had by then. */
    public Basis basis() {
        return stood;
    }

    /**
     * Starts from there and nothing else: whatever was solved or cut before is forgotten. Costs and limits stay.
     *
     * @param basis of a session with the same columns and rows, or {@link Basis#NONE}
     */
    public void start(Basis basis) {
        boolean none = basis.column.length == 0;
        int own = now.rowLower.length;
        if (!none && (basis.column.length != now.cost.length || basis.row.length != own + basis.cuts.size())) {
            throw new IllegalArgumentException("This basis is of a program with " + basis.column.length
                    + " columns and "
                    + (basis.row.length - basis.cuts.size()) + " rows; here are " + now.cost.length + " and " + own
                    + ".");
        }
        dropCuts();
        addCuts(basis.cuts);
        solver.clear();
        stood = basis;
        if (!none) {
            solver.start(basis);
        }
    }

    /** The program as it stands now, with every change and every cut. */
    public LinearProgram program() {
        return now;
    }

    /** Sets the costs of one unit of columns, from that one on. */
    public void costs(int from, double[] cost) {
        double[] all = now.cost.clone();
        for (int k = 0; k < cost.length; k++) {
            all[from + k] = ProgramBuilder.finite(
                    cost[k],
                    LinearProgram.HUGE,
                    "The cost of “" + now.matrix.columnNames().get(from + k) + "”");
        }
        solver.costs(from, cost);
        now = now.withCost(all);
    }

    /** Sets the bounds of columns, from that one on. */
    public void columns(int from, double[] lower, double[] upper) {
        checked(now.matrix.columnNames(), from, lower, upper);
        solver.columns(from, lower, upper);
        now = now.withBounds(set(now.lower, from, lower), set(now.upper, from, upper));
    }

    /** Sets the limits of rows, from that one on. */
    public void rows(int from, double[] lower, double[] upper) {
        checked(now.matrix.rowNames(), from, lower, upper);
        solver.rows(from, lower, upper);
        now = now.withLimits(set(now.rowLower, from, lower), set(now.rowUpper, from, upper));
    }

    private static void checked(List<String> names, int from, double[] lower, double[] upper) {
        for (int k = 0; k < Math.max(lower.length, upper.length); k++) {
            ProgramBuilder.limits(lower[k], upper[k], names.get(from + k));
        }
    }

    private static double[] set(double[] old, int from, double[] values) {
        double[] all = old.clone();
        System.arraycopy(values, 0, all, from, values.length);
        return all;
    }

    /** Sets the cost of one unit of a column. */
    public void cost(int column, double cost) {
        costs(column, new double[] {cost});
    }

    /** Sets the bounds of a column. */
    public void columnBounds(int column, double lower, double upper) {
        columns(column, new double[] {lower}, new double[] {upper});
    }

    /** Sets the limits of a row. */
    public void rowBounds(int row, double lower, double upper) {
        rows(row, new double[] {lower}, new double[] {upper});
    }

    /** Puts another need in a curved row's place. It is of the same form, so that the cuts taken serve it too. */
    public void convex(int curve, ConvexRow row) {
        List<Curve> curves = new ArrayList<>(now.curves);
        Curve was = curves.get(curve);
        curves.set(curve, new Curve(was.name(), was.columns(), row));
        now = now.withCurves(List.copyOf(curves), now.cuts);
        moveCuts(curve);
    }

    private void moveCuts(int curve) {
        for (int k = 0; k < now.cuts.size(); k++) {
            Taken taken = now.cuts.get(k);
            if (taken.curve() == curve) {
                double lower = aside[curve] ? Double.NEGATIVE_INFINITY : now.asks(taken);
                solver.rows(now.rowLower.length + k, new double[] {lower}, new double[] {Double.POSITIVE_INFINITY});
            }
        }
    }

    /** Leaves a limit aside, or takes it back. */
    void hold(Side side, boolean held) {
        double open = side.lower() ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
        double bound = held ? side.bound() : open;
        int i = side.index();
        switch (side.on()) {
            case ROW -> rowBounds(i, side.lower() ? bound : now.rowLower[i], side.lower() ? now.rowUpper[i] : bound);
            case COLUMN -> columnBounds(i, side.lower() ? bound : now.lower[i], side.lower() ? now.upper[i] : bound);
            case CURVE -> {
                aside[i] = !held;
                moveCuts(i);
            }
        }
    }

    /** Adds a row over the existing columns and returns its index. Cuts taken so far are forgotten. */
    public int addRow(String name, double lower, double upper, int[] columnsOfRow, double[] coefficients) {
        Row row = ProgramBuilder.terms(name, lower, upper, columnsOfRow, coefficients, now.cost.length);
        ProgramBuilder.fresh(new HashSet<>(now.matrix.rowNames()), name, "row");
        dropCuts();
        stood = Basis.NONE;
        solver.add(row);
        now = now.withRow(row);
        return now.rowLower.length - 1;
    }

    /** Frees the solver's memory. */
    @Override
    public void close() {
        solver.close();
    }
}
