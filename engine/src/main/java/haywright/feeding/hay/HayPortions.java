package haywright.feeding.hay;

import haywright.diet.DietOptions.FeedLimit;
import haywright.diet.DietRow;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

/**
 * Portions that somebody can put out: of a feed none, or enough that each animal gets its own. What comes out smaller is left
 * out or made up to that, whichever leaves no more missing; where neither does it stays.
 */
final class HayPortions {
    private static final double HAY_POUNDS = 2;
    private static final double GRAIN_POUNDS = 1;

    /** Strung out on the ground every cow has to get some (judgment). */
    private static final double CAKE_POUNDS = 2;

    /** kg that one way may leave missing beyond another and still be as good: what no one weighs. */
    private static final double AS_GOOD = 4;

    private static final double HAIR = 1e-6;

    private HayPortions() {}

    private record Small(String eater, int stretch, PricedFeed feed) {}

    /** Small portions that are tried by themselves where all at once would leave more missing. */
    private static final int ONE_BY_ONE = 20;

    /** The same with portions that can be put out. */
    static Allotment of(List<Allotment.Eater> eaters, Allotment fed) {
        var now = new Tried(eaters, fed);
        now = tried(now, small(now.fed()), false, fed);
        now = tried(now, small(now.fed()), true, fed);
        // what one change leaves of another portion is seen to as well
        var stays = new HashSet<Small>();
        for (int tries = 0; tries < ONE_BY_ONE; tries++) {
            var next = small(now.fed()).stream()
                    .filter(one -> !stays.contains(one))
                    .findFirst();
            if (next.isEmpty()) {
                break;
            }
            var one = next.get();
            var was = now;
            now = tried(now, List.of(one), false, fed);
            if (now.equals(was)) {
                now = tried(now, List.of(one), true, fed);
            }
            if (now.equals(was)) {
                stays.add(one);
            }
        }
        return now.fed();
    }

    private record Tried(List<Allotment.Eater> eaters, Allotment fed) {}

    private static Tried tried(Tried now, List<Small> small, boolean more, Allotment first) {
        if (small.isEmpty()) {
            return now;
        }
        var other = now.eaters();
        for (var one : small) {
            other = change(other, one, more);
        }
        var eaters = other;
        return Allotment.leastMissing(other)
                .filter(then -> isAsGood(then, first))
                .map(then -> new Tried(eaters, then))
                .orElse(now);
    }

    private static boolean isAsGood(Allotment then, Allotment before) {
        return kg(then.missing()) <= kg(before.missing()) + AS_GOOD && unmet(then) <= unmet(before);
    }

    private static double kg(Map<String, Double> missing) {
        return missing.values().stream().mapToDouble(kg -> kg).sum();
    }

    private static long unmet(Allotment fed) {
        return fed.eaten().stream().mapToLong(eaten -> eaten.unmet().size()).sum();
    }

    private static List<Small> small(Allotment fed) {
        return fed.eaten().stream()
                .flatMap(eaten -> eaten.feeds().entrySet().stream()
                        .filter(e -> e.getValue() / eaten.headDays() < least(e.getKey()) * (1 - HAIR))
                        .map(e -> new Small(eaten.eater(), eaten.stretch(), e.getKey())))
                .toList();
    }

    /** kg as fed a head and day; 0 for what may be put out in any amount. */
    private static double least(PricedFeed feed) {
        double pounds = feed.feed().feedClass() == FeedClass.MINERAL
                ? 0
                : feed.isHayOrSilage() || feed.isStraw()
                        ? HAY_POUNDS
                        : HayEaters.isCake(feed) ? CAKE_POUNDS : GRAIN_POUNDS;
        return Unit.POUND.toBase(pounds);
    }

    private static List<Allotment.Eater> change(List<Allotment.Eater> eaters, Small small, boolean more) {
        return eaters.stream()
                .map(eater -> eater.id().equals(small.eater()) ? change(eater, small, more) : eater)
                .toList();
    }

    private static Allotment.Eater change(Allotment.Eater eater, Small small, boolean more) {
        var stretches = new ArrayList<>(eater.stretches());
        var was = stretches.get(small.stretch());
        var question = was.question();
        var options = question.options();
        if (more) {
            var limits = new ArrayList<>(options.feedLimits());
            limits.add(new FeedLimit(
                    small.feed().feed().id(),
                    DietRow.Sense.AT_LEAST,
                    FeedLimit.Per.KG_PUT_OUT,
                    least(small.feed()),
                    small.feed().putOut(1)));
            options = options.with(limits);
        }
        var offered = more
                ? question.offered()
                : question.offered().stream()
                        .filter(feed ->
                                !feed.feed().id().equals(small.feed().feed().id()))
                        .toList();
        stretches.set(
                small.stretch(),
                new Allotment.Stretch(
                        was.days(),
                        HayQuestions.asked(question, offered, options),
                        was.share(),
                        was.held(),
                        was.wished()));
        return new Allotment.Eater(eater.id(), eater.head(), stretches);
    }
}
