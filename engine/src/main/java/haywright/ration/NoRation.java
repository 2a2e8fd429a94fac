package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import java.util.List;

/**
 * No ration keeps every row.
 *
 * @param conflicts a smallest set of rows that cannot be kept together: leave out any one and the rest can be
 * @param lifts single changes of one limit that would let a ration exist, the cheapest ration first; never of a danger
 */
public record NoRation(Diet diet, List<Conflict> conflicts, List<Lift> lifts) implements RationAnswer {
    public NoRation {
        conflicts = List.copyOf(conflicts);
        lifts = List.copyOf(lifts);
    }

    /**
     * @param missing how far the row misses in the ration that misses least in all, in the row's unit; zero when that
     *     ration keeps it
     */
    public record Conflict(DietRow row, double missing) {}

    /**
     * @param to the limit, in the row's unit, at which a ration begins to exist, every other limit kept
     * @param cost dollars a head and day of the cheapest ration with it
     */
    public record Lift(DietRow row, double to, double cost) {}
}
