package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.Sureness;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.lp.Optimum;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Of many feeds those worth a look. Thirty stacks of one kind differ by little, nobody feeds more than a few of them on one
 * day, and each doubles the sets there are to look through. Of each kind those stay that cost least to bring in, and beside
 * them those of whose protein most is known, so that a good test keeps its place before a guess. What was wished stays.
 */
final class Shortlist {
    /** Forages up to which each is looked at by itself. */
    private static final int FEW = 20;

    private static final int OF_A_KIND = 3;

    private Shortlist() {}

    /**
     * @param allowed indices of those that may be used
     * @param few up to which all are looked at
     * @param ofAKind how many of each kind there may be of either sort, besides what the cheapest ration is made of
     * @return indices, of these; all of them where they make no ration
     */
    static Set<Integer> of(Diet diet, List<PricedFeed> feeds, Set<Integer> allowed, int few, int ofAKind) {
        if (allowed.size() <= few) {
            return allowed;
        }
        try (var program = RationProgram.of(diet, feeds, Sureness.EXPECTED, allowed)) {
            if (!(program.solve() instanceof Optimum optimum)) {
                return allowed;
            }
            var kg = program.amounts(optimum);
            var list = ofEachKind(feeds, allowed, Comparator.comparingDouble(optimum::reducedCost), ofAKind);
            list.addAll(surest(feeds, allowed, ofAKind));
            allowed.stream().filter(i -> kg[i] > Portions.NOTHING).forEach(list::add);
            list.addAll(wished(diet, feeds, allowed));
            return list;
        }
    }

    /** Forages that are looked at each by itself. @param least what a ration with it alone comes to as it is expected */
    static Set<Integer> alone(Diet diet, List<PricedFeed> feeds, ToDoubleFunction<Integer> least) {
        var forages = IntStream.range(0, feeds.size())
                .filter(i -> feeds.get(i).feed().feedClass().isForage())
                .boxed()
                .collect(Collectors.toCollection(TreeSet::new));
        if (forages.size() <= FEW) {
            return forages;
        }
        var costs = forages.stream().collect(Collectors.toMap(i -> i, least::applyAsDouble));
        var list = ofEachKind(feeds, forages, Comparator.comparingDouble(costs::get), OF_A_KIND);
        list.addAll(surest(feeds, forages, OF_A_KIND));
        list.addAll(wished(diet, feeds, forages));
        return list;
    }

    /** The first so many of each kind, in an order that leaves no two equal. */
    private static Set<Integer> ofEachKind(
            List<PricedFeed> feeds, Set<Integer> allowed, Comparator<Integer> order, int most) {
        var seen = new EnumMap<FeedClass, Integer>(FeedClass.class);
        return allowed.stream()
                .sorted(order.thenComparing(Comparator.naturalOrder()))
                .filter(i -> seen.merge(feeds.get(i).feed().feedClass(), 1, Integer::sum) <= most)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<Integer> surest(List<PricedFeed> feeds, Set<Integer> allowed, int most) {
        return ofEachKind(feeds, allowed, Comparator.comparingDouble(i -> doubt(feeds.get(i))), most);
    }

    private static Set<Integer> wished(Diet diet, List<PricedFeed> feeds, Set<Integer> allowed) {
        return allowed.stream()
                .filter(i -> isWished(feeds.get(i), diet.options()))
                .collect(Collectors.toSet());
    }

    static boolean isWished(PricedFeed feed, DietOptions options) {
        return options.feedLimits().stream()
                .anyMatch(limit -> limit.feed().equals(feed.feed().id()));
    }

    /** Of protein, standard deviation, % of dry matter. */
    private static double doubt(PricedFeed feed) {
        return feed.feed().spread(made -> made.value(Analyte.CP).orElse(0)).sd();
    }
}
