package haywright.feeding;

import haywright.ration.SurenessCurve;
import java.util.List;
import java.util.Optional;

/**
 * What being surer takes: ways to feed a group, each in amounts that can be weighed out.
 *
 * @param ways upward, both in how often they hold and in what they count
 * @param kink index of the way after which being surer begins to cost more; -1 where the way is as good as straight
 */
public record CostOfSureness(List<Offer> ways, int kink) {
    public CostOfSureness {
        ways = List.copyOf(ways);
    }

    static Optional<CostOfSureness> of(List<Offer> ways) {
        return ways.size() < 2
                ? Optional.empty()
                : Optional.of(new CostOfSureness(
                        ways,
                        SurenessCurve.kink(
                                ways.stream().mapToDouble(Offer::holdsPercent).toArray(),
                                ways.stream().mapToDouble(Offer::counted).toArray())));
    }

    /** What a way costs over the cheapest, as it counts for the ranch: dollars a head and day, whole cents. */
    public double over(Offer way) {
        return way.counted() - ways.get(0).counted();
    }

    /** The cheapest that holds so often; empty where none does. */
    public Optional<Offer> holding(double percent) {
        return ways.stream().filter(way -> way.holdsPercent() >= percent).findFirst();
    }
}
