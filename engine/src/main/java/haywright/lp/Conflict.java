package haywright.lp;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Limits that no plan keeps together. Safe to keep after its session has changed or closed. */
public final class Conflict {
    private final LinearProgram program;
    private final List<Side> sides;
    private final List<Limit> limits;
    private final Map<String, Double> shortfalls;
    private final boolean irreducible;
    private double @Nullable [] alone;

    Conflict(LinearProgram program, List<Side> sides, Map<String, Double> shortfalls, boolean irreducible) {
        this.program = program;
        this.sides = sides;
        limits = sides.stream().map(s -> s.limit(program)).toList();
        this.shortfalls = Map.copyOf(shortfalls);
        this.irreducible = irreducible;
    }

    /**
     * No answer keeps all of these together, and leaving out any single one lets the rest be kept. Rows are few at the
     * price of bounds. Other such sets may exist. Where the solver cannot decide whether a limit is needed (very badly
     * scaled programs) it stays in. Where only whole numbers stand in the way, bounds of whole columns are taken for
     * granted.
     */
    public List<Limit> limits() {
        return limits;
    }

    /** False where the budget was spent before every limit had been left out once. */
    public boolean irreducible() {
        return irreducible;
    }

    /**
     * With every column inside its bounds, the rows that miss in the plan of least total miss (each miss counted as a
     * share of its row's size), by row name: how far below its lower or above its upper limit. Empty if a limit
     * contradicts itself (lower above upper), or if only whole numbers stand in the way.
     */
    public Map<String, Double> shortfalls() {
        return shortfalls;
    }

    /** Names of {@link #limits()}, without "at least 0": that an amount is not negative is no news to anybody. */
    public List<String> names() {
        return limits.stream()
                .filter(l -> l.on() != Limit.On.COLUMN || !l.lower() || l.bound() != 0)
                .map(Limit::name)
                .toList();
    }

    /**
     * By how much a limit alone would have to give way for the whole program to have an answer, every other limit kept;
     * infinite if that alone is never enough. Found when first asked, for every limit at once.
     *
     * @param limit of {@link #limits()}; NaN for a curved row
     */
    public synchronized double givesAlone(Limit limit) {
        if (alone == null) {
            alone = givesAlone();
        }
        return alone[limits.indexOf(limit)];
    }

    /** How far each row or column stays from its limit at the nearest, when this limit alone is left out. */
    private double[] givesAlone() {
        double[] gives = new double[sides.size()];
        double[] nothing = new double[program.cost.length];
        for (boolean lower : new boolean[] {true, false}) {
            try (Session session = program.asking(lower, nothing).open()) {
                for (int s = 0; s < gives.length; s++) {
                    if (sides.get(s).lower() == lower) {
                        gives[s] = gives(session, sides.get(s));
                    }
                }
            }
        }
        return gives;
    }

    private double gives(Session session, Side side) {
        if (side.on() == Limit.On.CURVE) {
            return Double.NaN;
        }
        double[] cost = new double[program.cost.length];
        if (side.on() == Limit.On.COLUMN) {
            cost[side.index()] = 1;
        } else {
            for (int k = program.matrix.start()[side.index()];
                    k < program.matrix.start()[side.index() + 1];
                    k++) {
                cost[program.matrix.index()[k]] = program.matrix.value()[k];
            }
        }
        session.hold(side, false);
        session.costs(0, cost);
        Outcome nearest = session.solve();
        session.hold(side, true);
        return nearest instanceof Plan plan ? Math.abs(side.bound() - plan.objective()) : Double.POSITIVE_INFINITY;
    }
}
