package haywright.lp;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Why a program has no answer. The {@link ElasticProgram} gives a first conflict; then the deletion filter leaves out
 * one limit after another, rows before bounds and the bound 0 last, and keeps out those without which the rest still
 * conflicts. What stays is irreducible.
 *
 * @see "Chinneck 2008, Feasibility and Infeasibility in Optimization: elastic and deletion filters"
 */
final class ConflictSearch {
    private final LinearProgram program;

    ConflictSearch(LinearProgram program) {
        this.program = program;
    }

    Infeasible answer() {
        List<Side> all = Side.all(program);
        for (Side s : all) {
            if (s.lower()
                    && LinearProgram.crossed(s.bound(program), s.opposite().bound(program))) {
                return new Infeasible(named(List.of(s, s.opposite())), Map.of());
            }
        }
        ElasticProgram elastic = new ElasticProgram(program);
        List<Side> conflict = elastic.priced();
        try (LpSession session = only(conflict).open()) {
            if (!session.infeasible()) {
                conflict = all;
            }
        }
        return new Infeasible(named(filtered(conflict)), elastic.shortfalls());
    }

    /** The program without costs and with only these limits. */
    private LinearProgram only(List<Side> sides) {
        List<Column> columns = new ArrayList<>();
        for (Column c : program.columns()) {
            columns.add(new Column(c.name(), 0, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        }
        List<Row> rows = new ArrayList<>();
        for (Row r : program.rows()) {
            rows.add(r.within(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY));
        }
        for (Side s : sides) {
            double b = s.bound(program);
            if (s.onRow()) {
                Row r = rows.get(s.index());
                rows.set(s.index(), r.within(s.lower() ? b : r.lower(), s.lower() ? r.upper() : b));
            } else {
                Column c = columns.get(s.index());
                columns.set(s.index(), new Column(c.name(), 0, s.lower() ? b : c.lower(), s.lower() ? c.upper() : b));
            }
        }
        return new LinearProgram(false, 0, columns, rows);
    }

    private List<Side> filtered(List<Side> conflict) {
        Predicate<Side> atZero = s -> !s.onRow() && s.bound(program) == 0;
        List<Side> order =
                new ArrayList<>(conflict.stream().filter(atZero.negate()).toList());
        order.addAll(conflict.stream().filter(atZero).toList());
        // Every "at least 0" holds while the rest is filtered, so that no row stays that they would make needless.
        List<Side> start = new ArrayList<>(order);
        Side.all(program).stream().filter(atZero.and(s -> !order.contains(s))).forEach(s -> {
            start.add(s);
            order.add(s);
        });
        List<Side> kept = new ArrayList<>();
        try (LpSession session = only(start).open()) {
            for (Side side : order) {
                session.limit(side, side.lower() ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY);
                if (!session.infeasible()) {
                    session.limit(side, side.bound(program));
                    kept.add(side);
                }
            }
        }
        return kept;
    }

    private List<Limit> named(List<Side> sides) {
        return sides.stream().map(this::named).toList();
    }

    private Limit named(Side s) {
        String subject = s.onRow()
                ? program.rows().get(s.index()).name()
                : program.columns().get(s.index()).name();
        double bound = s.bound(program);
        double opposite = s.opposite().bound(program);
        boolean nameIsEnough = s.onRow() && (!Double.isFinite(opposite) || opposite == bound);
        String plain = BigDecimal.valueOf(bound).stripTrailingZeros().toPlainString();
        String name = nameIsEnough ? subject : subject + (s.lower() ? " at least " : " at most ") + plain;
        return new Limit(s.onRow(), s.index(), subject, s.lower(), bound, name, givesAlone(s));
    }

    /** How far the row or column stays from this limit at the nearest, when this limit alone is left out. */
    private double givesAlone(Side side) {
        List<Side> others = new ArrayList<>(Side.all(program));
        others.remove(side);
        LinearProgram rest = only(others);
        List<Column> columns = new ArrayList<>(rest.columns());
        int[] index = {side.index()};
        double[] cost = {1};
        if (side.onRow()) {
            index = program.rows().get(side.index()).columns();
            cost = program.rows().get(side.index()).coefficients();
        }
        for (int k = 0; k < index.length; k++) {
            Column c = columns.get(index[k]);
            columns.set(index[k], new Column(c.name(), cost[k], c.lower(), c.upper()));
        }
        try (LpSession session = new LinearProgram(side.lower(), 0, columns, rest.rows()).open()) {
            Optimum nearest = session.optimumOrNull();
            return nearest == null ? Double.POSITIVE_INFINITY : Math.abs(side.bound(program) - nearest.objective());
        }
    }
}
