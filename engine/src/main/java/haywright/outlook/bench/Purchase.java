package haywright.outlook.bench;

import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ration.Allotment;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What buying so much of a feed at a price would change, before it is bought.
 *
 * @param feed as it would be offered
 * @param before the group's ration as things are; empty where there is none
 * @param after its ration with the feed bought; empty where there is none even so
 * @param kgADay as fed, that all groups would take of it a day; 0 where none would
 * @param worthBelow dollars a kg as fed that its first pounds are worth in the group's ration; empty where nothing
 * @param savesToGrass dollars of feed that all groups together would cost less until grass, the purchase counted as far as
 *     it is fed; empty where no grass is said
 * @param kgToGrass as fed, of it that all groups take until grass
 * @param missingBefore tons as fed of feeds on hand that are missing until grass
 * @param missingAfter the same with it
 */
public record Purchase(
        PricedFeed feed,
        Optional<Offer> before,
        Optional<Offer> after,
        double kgADay,
        OptionalDouble worthBelow,
        OptionalDouble savesToGrass,
        double kgToGrass,
        double missingBefore,
        double missingAfter) {
    /** Times a price at which nobody buys, to learn what it would be worth. */
    private static final double NOBODY = 20;

    /** @param now the group's offers as things are */
    public static Purchase of(Offers now, FeedForSale sale, Quantity tons, Quantity price) {
        var yard = now.yard();
        var group = now.group();
        var with = new Offers(yard(yard, sale, tons, price), group);
        var id = sale.id().toString();
        var feed = with.yard().feeds().stream()
                .filter(f -> f.feed().id().equals(id))
                .findFirst()
                .orElseThrow();
        double aDay = yard.ranch().groups().values().stream()
                .mapToDouble(other -> other.head() * fed(with.yard(), other, id))
                .sum();
        var allBefore = yard.allotment();
        var allAfter = with.yard().allotment();
        return new Purchase(
                feed,
                now.sure(),
                with.sure(),
                aDay,
                worthBelow(yard, group, sale, tons, price),
                allBefore.isEmpty() || allAfter.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(dollars(allBefore.get()) - dollars(allAfter.get())),
                allAfter.map(all -> taken(all, id)).orElse(0.0),
                missing(allBefore),
                missing(allAfter));
    }

    private static Yard yard(Yard yard, FeedForSale sale, Quantity tons, Quantity price) {
        var bought = new FeedForSale(
                sale.id(), sale.name(), sale.feedClass(), sale.bookRow(), sale.tag(), price, tons, sale.delivery());
        return new Yard(yard.ranch().with(bought), yard.day());
    }

    private static double fed(Yard yard, Group group, String feed) {
        return yard.toFeed(group).stream()
                .filter(p -> p.feed().feed().id().equals(feed))
                .mapToDouble(Portion::kgPutOut)
                .sum();
    }

    private static OptionalDouble worthBelow(Yard yard, Group group, FeedForSale sale, Quantity tons, Quantity price) {
        var dear = yard(yard, sale, tons, Quantity.of(NOBODY * price.value(), price.unit()));
        return dear.ration(group) instanceof Ration ration
                ? ration.notUsed().stream()
                        .filter(not ->
                                not.feed().feed().id().equals(sale.id().toString()) && not.worthBuyingBelow() > 0)
                        .mapToDouble(not -> not.worthBuyingBelow())
                        .findFirst()
                : OptionalDouble.empty();
    }

    private static double dollars(Allotment all) {
        return all.eaten().stream()
                .flatMap(eaten -> eaten.feeds().entrySet().stream())
                .mapToDouble(e -> e.getKey().pricePerKgAsFed() * e.getValue())
                .sum();
    }

    private static double taken(Allotment all, String feed) {
        return all.eaten().stream()
                .flatMap(eaten -> eaten.feeds().entrySet().stream())
                .filter(e -> e.getKey().feed().id().equals(feed))
                .mapToDouble(e -> e.getValue())
                .sum();
    }

    private static double missing(Optional<Allotment> all) {
        return Unit.TON.fromBase(all.stream()
                .flatMap(a -> a.missing().values().stream())
                .mapToDouble(Double::doubleValue)
                .sum());
    }

    /** Whether the group's ration would have some of it. */
    public boolean isFed() {
        return after.isPresent()
                && after.get().mix().portions().stream()
                        .anyMatch(p -> p.feed().feed().id().equals(feed.feed().id()));
    }

    /**
     * Dollars a kg as fed at which so much of it would save nothing: what it saves spread over what is fed of it. Empty
     * where none of it is, or no grass is said.
     */
    public OptionalDouble breakEven() {
        return savesToGrass.isPresent() && kgToGrass > 1
                ? OptionalDouble.of(feed.pricePerKgAsFed() + savesToGrass.getAsDouble() / kgToGrass)
                : OptionalDouble.empty();
    }

    /** Days that it lasts, fed so to all groups; empty where nobody takes any. */
    public OptionalDouble days() {
        return kgADay > 0 ? OptionalDouble.of(feed.kgAtHand() / kgADay) : OptionalDouble.empty();
    }
}
