package haywright.app.report;

import haywright.app.words.Feeding;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.diet.Diet;
import haywright.diet.Feed;
import haywright.diet.HowNitrateIsFed;
import haywright.feeding.Offers;
import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ration.Portion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A day's feed of a group in the order in which it goes into the wagon, with what the scale reads after each: even loads,
 * as many as the wagon needs. Where nothing mixes it is the order in which the feeds go out one after another: forage, then
 * what is high in nitrate, then grain. Loose minerals are put out free choice and are in no load.
 *
 * @param count of loads a day, all alike
 * @see "Proper mixer use and load sequencing (agproud.com): long hay first, then dry grain and premix, then silages, wet
 *     by-products, liquids last; mix 3 to 5 minutes after the last"
 */
public record Loads(int count, List<Step> steps) {
    /** Said once on whatever shows {@link Step#reading}: pounds of a feed with all before it. */
    static final String NOT_ZEROED = "Do not zero the scale between feeds.";

    public Loads {
        steps = List.copyOf(steps);
    }

    /**
     * @param pounds of it in one load
     * @param reading of the scale when it is in
     */
    public record Step(Portion portion, double pounds, double reading) {
        public String reads() {
            return Show.number(reading, 0) + " lb";
        }
    }

    /** Of what is to be put out. */
    static Loads of(Offers offers) {
        var yard = offers.yard();
        var group = offers.group();
        var diet = offers.rations().question(group).diet();
        var loaded = new PutOut(offers)
                .portions().stream()
                        .filter(p -> !p.feed().feed().isLooseMineral())
                        .sorted(Comparator.comparingInt(p -> isMixed(yard)
                                ? place(p.feed().feed().feedClass())
                                : turn(p.feed().feed(), diet)))
                        .toList();
        double all = loaded.stream().mapToDouble(p -> pounds(yard, group, p)).sum();
        var holds = yard.ranch().outfit().mixerHolds();
        int count = holds == null || !(holds.base() > 0) || !isMixed(yard)
                ? 1
                : (int) Math.max(1, Math.ceil(all / holds.in(Unit.POUND) - 1e-9));
        var steps = new ArrayList<Step>();
        double reading = 0;
        for (var portion : loaded) {
            double pounds = pounds(yard, group, portion) / count;
            reading += pounds;
            steps.add(new Step(portion, pounds, reading));
        }
        return new Loads(count, steps);
    }

    /** Whether a wagon mixes it over a scale. */
    static boolean isWeighed(Yard yard) {
        return isMixed(yard) && yard.ranch().outfit().scale();
    }

    static boolean isMixed(Yard yard) {
        return yard.ranch().outfit().mixing().mixes();
    }

    private static double pounds(Yard yard, Group group, Portion portion) {
        return new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion)).groupPounds();
    }

    /** Where nothing mixes. */
    private static int turn(Feed feed, Diet diet) {
        return !feed.feedClass().isForage() ? 2 : HowNitrateIsFed.of(feed, diet) == HowNitrateIsFed.FREE ? 0 : 1;
    }

    private static int place(FeedClass kind) {
        if (kind.isForage()) {
            return switch (kind) {
                case CORN_SILAGE, LEGUME_SILAGE, CEREAL_SILAGE -> 2;
                default -> 0;
            };
        }
        return kind == FeedClass.MINERAL || kind == FeedClass.NPN ? 1 : kind == FeedClass.TUB ? 3 : 1;
    }

    /** {@code Two even loads.}; counts in words, so that the page has fewer figures. */
    String words() {
        return switch (count) {
            case 2 -> "Two even loads.";
            case 3 -> "Three even loads.";
            default -> "Even loads.";
        };
    }
}
