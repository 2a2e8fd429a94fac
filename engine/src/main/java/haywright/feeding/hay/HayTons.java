package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.PricedFeed;
import java.util.List;
import java.util.stream.Stream;

/**
 * Hay and silage in tons of a ranch's hay as fed: dry matter put out over the mean dry matter of the hay that lies there. A ton
 * of silage is as much hay as has its dry matter.
 *
 * @param hay that some group may have
 * @param dryMatter mean share of the hay in it, silage aside
 */
record HayTons(List<PricedFeed> hay, double dryMatter) {
    private static final double USUAL_DRY_MATTER = 0.88;

    /** Tons below which nothing is short: less than a bale. */
    static final double NOTHING = 0.25;

    static HayTons of(List<PricedFeed> hay) {
        var baled = hay.stream().filter(feed -> feed.feed().feedClass().isHay()).toList();
        double kg = baled.stream().mapToDouble(PricedFeed::kgAtHand).sum();
        return new HayTons(hay, kg > 0 ? dry(baled.stream()) / kg : USUAL_DRY_MATTER);
    }

    static double dry(PricedFeed feed, double kgAsFed) {
        return feed.dryMatterPercent() / 100 * kgAsFed;
    }

    static double dry(Stream<PricedFeed> feeds) {
        return feeds.mapToDouble(feed -> dry(feed, feed.kgAtHand())).sum();
    }

    /** @param dry kg of dry matter put out */
    double tons(double dry) {
        return Unit.TON.fromBase(dry / dryMatter);
    }

    /** kg of dry matter of hay a head and day of one stretch, dry and in milk; 0 where there is none. */
    static double hayADay(Allotment of, Group group, int stretch) {
        var eats = of.eaten().stream()
                .filter(e -> e.eater().startsWith(group.id().toString()) && e.stretch() == stretch)
                .toList();
        double headDays = eats.stream().mapToDouble(Allotment.Eaten::headDays).sum();
        return headDays == 0 ? 0 : eats.stream().mapToDouble(HayTons::eaten).sum() / headDays;
    }

    private static double eaten(Allotment.Eaten eaten) {
        return eaten.feeds().entrySet().stream()
                .filter(e -> e.getKey().isHayOrSilage())
                .mapToDouble(e -> dry(e.getKey(), e.getValue()))
                .sum();
    }

    /** Tons of hay that an allotment has everybody take. */
    double taken(Allotment of) {
        return tons(of.eaten().stream().mapToDouble(HayTons::eaten).sum());
    }

    /** Tons below which nothing is missing: pounds rounded down for the paper spare more. */
    private static final double NONE_MISSING = 0.005;

    /** Tons that an allotment leaves missing. */
    double missing(Allotment of) {
        double tons = tons(hay.stream()
                .mapToDouble(
                        feed -> dry(feed, of.missing().getOrDefault(feed.feed().id(), 0.0)))
                .sum());
        return tons < NONE_MISSING ? 0 : tons;
    }
}
