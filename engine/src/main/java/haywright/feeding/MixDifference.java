package haywright.feeding;

import haywright.ration.HandMix;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;

/**
 * Why one mix costs more or less than another, feed by feed.
 * <pre>
 * dollars = Σ (kg put out of the one − kg of the other) · dollars a kg
 * </pre>
 *
 * @param dollars a head and day that the first costs more; below zero where it costs less
 * @param parts the largest first; feeds of which both have the same are not among them
 */
public record MixDifference(double dollars, List<Part> parts) {
    private static final double SAME = 1e-6;

    public MixDifference {
        parts = List.copyOf(parts);
    }

    /** @param kg as fed that the first has more, a head and day; below zero where it has less */
    public record Part(PricedFeed feed, double kg, double dollars) {}

    public static MixDifference of(HandMix one, HandMix other) {
        var kg = new LinkedHashMap<PricedFeed, Double>();
        one.portions().forEach(p -> kg.merge(p.feed(), p.kgPutOut(), Double::sum));
        other.portions().forEach(p -> kg.merge(p.feed(), -p.kgPutOut(), Double::sum));
        var parts = new ArrayList<Part>();
        kg.forEach((feed, more) -> {
            if (Math.abs(more) > SAME) {
                parts.add(new Part(feed, more, more * perKg(feed, one, other)));
            }
        });
        parts.sort(Comparator.comparingDouble((Part part) -> Math.abs(part.dollars()))
                .reversed());
        return new MixDifference(one.cost() - other.cost(), parts);
    }

    /** Dollars a kg as fed, as its portions are counted. */
    private static double perKg(PricedFeed feed, HandMix one, HandMix other) {
        return java.util.stream.Stream.concat(one.portions().stream(), other.portions().stream())
                .filter(p -> p.feed().equals(feed))
                .mapToDouble((Portion p) -> p.cost() / p.kgPutOut())
                .findFirst()
                .orElseThrow();
    }
}
