package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.Law;
import haywright.diet.RowId;
import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * No ration keeps every row.
 *
 * @param conflicts a smallest set of rows that cannot be kept together: leave out any one and, but for what is in {@code
 *     also}, the rest can be. Of several such sets the one of a single need, where there is one
 * @param also needs that these feeds cannot meet either, each by itself
 * @param lifts single changes of one limit that would let a ration exist, what the ranch may choose before needs that
 *     are missed, the cheapest ration first; never of a danger
 * @param tests feeds that are left out until they are tested, and with which, found safe, a ration would exist
 */
public record NoRation(Diet diet, List<Conflict> conflicts, List<Conflict> also, List<Lift> lifts, List<Test> tests)
        implements RationAnswer {
    private static final Set<String> BEYOND = Set.of("fill", "intake", "appetite", "eaten_most");

    public NoRation {
        conflicts = List.copyOf(conflicts);
        also = List.copyOf(also);
        lifts = lifts.stream()
                .sorted(Comparator.comparing(Lift::misses).thenComparingDouble(Lift::cost))
                .toList();
        tests = List.copyOf(tests);
    }

    /** With nothing else that is short, and nothing that a test would let in. */
    public NoRation(Diet diet, List<Conflict> conflicts, List<Lift> lifts) {
        this(diet, conflicts, List.of(), lifts, List.of());
    }

    NoRation with(List<Test> others) {
        return new NoRation(diet, conflicts, also, lifts, others);
    }

    /** @param others the same changes, priced otherwise */
    public NoRation withLifts(List<Lift> others) {
        return new NoRation(diet, conflicts, also, others, tests);
    }

    /** What a limit on a feed of which there is only so much says: kg of dry matter eaten a head and day. */
    static DietRow most(PricedFeed feed) {
        return new DietRow(
                new RowId.OnHand(feed.feed().id()),
                DietRow.Kind.CHOICE,
                feed.feed().name(),
                DietRow.Sense.AT_MOST,
                feed.mostEaten(),
                Unit.KILOGRAM_A_DAY,
                new Law(need -> feed.mostEaten(), (f, made) -> f.equals(feed.feed()) ? 1 : 0, null, Law.Counted.MEAN),
                List.of(),
                List.of(),
                0,
                Source.judgment("what lies on the ranch or can be had"));
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
    public record Lift(DietRow row, double to, double cost) {
        /** Whether anybody can do it: nobody can make cattle hold, or want, more. */
        public boolean isPossible() {
            return !BEYOND.contains(row.id());
        }

        /** Whether it leaves a need unmet; a slower gain does not. */
        boolean misses() {
            return row.kind() == DietRow.Kind.NEED && !row.id().equals(GrowthRow.ID);
        }
    }

    /** @param cost dollars a head and day of the cheapest ration, if the test finds nothing */
    public record Test(Feed feed, double cost) {}
}
