package haywright.lp;

import java.util.List;
import java.util.Map;

/**
 * No answer keeps every limit.
 *
 * @param limits an irreducible set: no answer keeps all of these together, and leaving out any single one lets the rest
 *     be kept. Rows are few at the price of bounds. Other such sets may exist. Where the
 *     solver cannot decide whether a limit is needed (very badly scaled programs) it stays in.
 * @param shortfalls with every column inside its bounds, the rows that miss in the plan of least total miss (each miss
 *     counted as a share of its row's size), by row name: how far below its lower or above its upper limit. Empty if a
 *     limit contradicts itself (lower above upper).
 */
public record Infeasible(List<Limit> limits, Map<String, Double> shortfalls) implements Outcome {
    public Infeasible {
        limits = List.copyOf(limits);
        shortfalls = Map.copyOf(shortfalls);
    }

    /** Names of {@link #limits()}, without "at least 0": that an amount is not negative is no news to anybody. */
    public List<String> conflict() {
        return limits.stream()
                .filter(l -> l.onRow() || !l.lower() || l.bound() != 0)
                .map(Limit::name)
                .toList();
    }
}
