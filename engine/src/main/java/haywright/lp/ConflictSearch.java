package haywright.lp;

import haywright.lp.Limit.On;
import haywright.lp.LinearProgram.Matrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Why a program has no answer. The {@link Elastic} program gives a first conflict; then the deletion filter leaves out
 * limits by batches, rows before bounds and the bound 0 last, and keeps out those without which the rest still
 * conflicts. A batch that was needed is halved until one limit is, a batch that was not is doubled. What stays is
 * irreducible.
 *
 * @see "Chinneck 2008, Feasibility and Infeasibility in Optimization: elastic and deletion filters"
 */
final class ConflictSearch {
    private final LinearProgram program;
    private final Budget budget;
    private final long started = System.nanoTime();
    private boolean toTheEnd = true;

    ConflictSearch(LinearProgram program, Budget budget) {
        this.program = program;
        this.budget = budget;
    }

    Conflict answer() {
        List<Side> all = Side.all(program);
        for (int i = 1; i < all.size(); i++) {
            Side low = all.get(i - 1);
            Side high = all.get(i);
            boolean sameSubject = low.on() == high.on() && low.index() == high.index() && low.lower();
            if (sameSubject && LinearProgram.crossed(low.bound(), high.bound())) {
                return new Conflict(program, List.of(low, high), Map.of(), true);
            }
        }
        Elastic elastic = new Elastic(program);
        LinearProgram continuous = program.continuous();
        List<Side> priced = elastic.priced();
        if (inConflict(continuous, priced)) {
            return conflict(continuous, priced, elastic.shortfalls());
        }
        if (!program.hasWhole() || inConflict(continuous, all)) {
            return conflict(continuous, all, elastic.shortfalls());
        }
        return conflict(program, all, Map.of());
    }

    private Conflict conflict(LinearProgram of, List<Side> first, Map<String, Double> shortfalls) {
        return new Conflict(program, filtered(of, first), shortfalls, toTheEnd);
    }

    private boolean inConflict(LinearProgram of, List<Side> sides) {
        try (Session session = only(of, sides)) {
            return session.infeasible(budget.since(started));
        }
    }

    /** The program without costs and with only these limits; of other rows not even the terms are left. */
    private Session only(LinearProgram of, List<Side> sides) {
        int n = of.cost.length;
        int m = of.rowLower.length;
        double[] lower = filled(n, Double.NEGATIVE_INFINITY);
        double[] upper = filled(n, Double.POSITIVE_INFINITY);
        double[] rowLower = filled(m, Double.NEGATIVE_INFINITY);
        double[] rowUpper = filled(m, Double.POSITIVE_INFINITY);
        boolean[] curved = new boolean[of.curves.size()];
        for (Side s : sides) {
            switch (s.on()) {
                case ROW -> (s.lower() ? rowLower : rowUpper)[s.index()] = s.bound();
                case COLUMN -> (s.lower() ? lower : upper)[s.index()] = s.bound();
                case CURVE -> curved[s.index()] = true;
            }
        }
        for (int j = 0; j < n; j++) {
            if (of.matrix.whole()[j]) {
                lower[j] = of.lower[j];
                upper[j] = of.upper[j];
            }
        }
        int[] start = new int[m + 1];
        int[] index = new int[of.matrix.index().length];
        double[] value = new double[index.length];
        for (int i = 0; i < m; i++) {
            int count = 0;
            if (Double.isFinite(rowLower[i]) || Double.isFinite(rowUpper[i])) {
                int from = of.matrix.start()[i];
                count = of.matrix.start()[i + 1] - from;
                System.arraycopy(of.matrix.index(), from, index, start[i], count);
                System.arraycopy(of.matrix.value(), from, value, start[i], count);
            }
            start[i + 1] = start[i] + count;
        }
        Matrix matrix = new Matrix(
                of.matrix.columnNames(),
                of.matrix.rowNames(),
                of.matrix.whole(),
                start,
                Arrays.copyOf(index, start[m]),
                Arrays.copyOf(value, start[m]));
        Session session = new LinearProgram(
                        false, 0, matrix, new double[n], lower, upper, rowLower, rowUpper, of.curves, List.of())
                .open();
        for (int c = 0; c < curved.length; c++) {
            if (!curved[c]) {
                session.hold(Side.curve(c), false);
            }
        }
        return session;
    }

    private static double[] filled(int size, double with) {
        double[] filled = new double[size];
        Arrays.fill(filled, with);
        return filled;
    }

    private List<Side> filtered(LinearProgram of, List<Side> conflict) {
        List<Side> members = new ArrayList<>(conflict);
        members.removeIf(s -> s.isZero() || (s.on() == On.COLUMN && of.matrix.whole()[s.index()]));
        // Every "at least 0" holds while the rest is filtered, so that no row stays that they would make needless.
        List<Side> zeros = Side.all(of).stream()
                .filter(s -> s.isZero() && !of.matrix.whole()[s.index()])
                .toList();
        List<Side> kept = new ArrayList<>();
        List<Side> start = new ArrayList<>(members);
        start.addAll(zeros);
        try (Session session = only(of, start)) {
            sift(session, members, 1, kept);
        }
        boolean[] touched = touched(of, kept);
        List<Side> near = zeros.stream().filter(s -> touched[s.index()]).toList();
        start = new ArrayList<>(kept);
        start.addAll(near);
        try (Session session = only(of, start)) {
            sift(session, near, near.size(), kept);
        }
        return kept;
    }

    /** The columns that stand in these rows. */
    private static boolean[] touched(LinearProgram of, List<Side> rows) {
        boolean[] touched = new boolean[of.cost.length];
        for (Side s : rows) {
            int[] columns = switch (s.on()) {
                case ROW -> of.rows().get(s.index()).columns();
                case COLUMN -> new int[] {s.index()};
                case CURVE -> of.curves.get(s.index()).columns();
            };
            for (int j : columns) {
                touched[j] = true;
            }
        }
        return touched;
    }

    /** Adds to {@code kept} those of the limits that are needed, and leaves the others out of the session. */
    private void sift(Session session, List<Side> limits, int firstBatch, List<Side> kept) {
        int batch = firstBatch;
        int next = 0;
        while (next < limits.size()) {
            Budget left = budget.since(started);
            if (left.isSpent()) {
                toTheEnd = false;
                kept.addAll(limits.subList(next, limits.size()));
                return;
            }
            List<Side> tried = limits.subList(next, Math.min(next + batch, limits.size()));
            tried.forEach(s -> session.hold(s, false));
            if (session.infeasible(left)) {
                next += tried.size();
                batch = 2 * tried.size();
                continue;
            }
            tried.forEach(s -> session.hold(s, true));
            if (tried.size() == 1) {
                kept.add(tried.get(0));
                next++;
            }
            batch = Math.max(1, tried.size() / 2);
        }
    }
}
