package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.UsualPrices;
import haywright.ration.LeastCostRation;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What to buy for a group that no mix of the feeds on the ranch carries: of feeds that can be had everywhere, at their usual
 * price and with the feed book's figures, the one that carries it for the least, or where no single one does, the two.
 *
 * @param bought as the cheapest ration has them, the most of it first
 * @param dollars a head and day of all that is fed
 */
public record WouldCarry(List<Bought> bought, double dollars) {
    /** What is sold everywhere; hay, since it may be hay that is short. */
    private static final List<FeedClass> SOLD = List.of(
            FeedClass.GRAIN, FeedClass.DISTILLERS_GRAINS, FeedClass.CAKE, FeedClass.LEGUME_HAY, FeedClass.GRASS_HAY);

    /** % lost of what is fed in a bunk or on clean sod, as of hay where it is hay. */
    private static final double LOST = 5;

    /** kg a head and day below which a feed is none. */
    private static final double NOTHING = 0.02;

    /**
     * @param kind what to ask for
     * @param kgADay a head, as fed, waste included
     * @param kgToGrass all head from today; empty where no day of grass is said
     * @param dollarsAKg as fed and delivered, usual
     */
    public record Bought(FeedClass kind, double kgADay, OptionalDouble kgToGrass, double dollarsAKg) {}

    /** Empty where no two of them carry the group either. */
    public static Optional<WouldCarry> of(Rations rations, Group group, OptionalInt days) {
        var alone = rations.yard().alone(rations.planned(group));
        var usual = SOLD.stream()
                .map(kind -> UsualPrices.feed(
                        "Bought " + kind.words(),
                        kind,
                        kind == FeedClass.LEGUME_HAY || kind == FeedClass.GRASS_HAY
                                ? rations.ranch().settings().hayLossPercent()
                                : LOST))
                .toList();
        var one = usual.stream().map(feed -> solved(alone, List.of(feed))).flatMap(Optional::stream);
        var best = one.min(Comparator.comparingDouble(Ration::cost)).or(() -> {
            var two = new ArrayList<Ration>();
            for (int i = 0; i < usual.size(); i++) {
                for (int j = i + 1; j < usual.size(); j++) {
                    solved(alone, List.of(usual.get(i), usual.get(j))).ifPresent(two::add);
                }
            }
            return two.stream().min(Comparator.comparingDouble(Ration::cost));
        });
        return best.map(ration -> new WouldCarry(
                ration.portions().stream()
                        .filter(p -> usual.contains(p.feed()) && p.kgPutOut() > NOTHING)
                        .sorted(Comparator.comparingDouble(Portion::kgPutOut).reversed())
                        .map(p -> new Bought(
                                p.feed().feed().feedClass(),
                                p.kgPutOut(),
                                days.isEmpty()
                                        ? OptionalDouble.empty()
                                        : OptionalDouble.of(p.kgPutOut() * group.head() * days.getAsInt()),
                                p.feed().pricePerKgAsFed()))
                        .toList(),
                ration.cost()));
    }

    private static Optional<Ration> solved(LeastCostRation alone, List<PricedFeed> more) {
        var feeds = new ArrayList<>(alone.offered());
        feeds.addAll(more);
        return new LeastCostRation(feeds, alone.need(), alone.options(), alone.sureness(), alone.amounts()).solve()
                        instanceof Ration ration
                ? Optional.of(ration)
                : Optional.empty();
    }
}
