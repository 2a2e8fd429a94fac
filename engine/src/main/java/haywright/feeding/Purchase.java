package haywright.feeding;

import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ration.PricedFeed;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * What buying so much of a feed at a price would change, before it is bought.
 *
 * @param feed as it would be offered
 * @param before the group's ration as things are; empty where there is none
 * @param after its ration with the feed bought; empty where there is none even so
 * @param kgADay as fed, that all groups would take of it a day; 0 where none would
 * @param worthBelow dollars a kg as fed that its first pounds are worth to all groups until grass; empty where no grass is
 *     said
 * @param savesToGrass dollars that the plan of the winter comes to less than without any of it, bought as far as it pays; empty
 *     where no grass is said
 * @param kgToGrass as fed, of it that the plan buys until grass
 * @param missingBefore tons as fed of hay that the plan lacks, with all that is on hand and for sale
 * @param missingAfter the same with it
 * @param besideHay what it is worth where hay is not short; empty for hay, or where no grass is said
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
        double missingAfter,
        Optional<BesideHay> besideHay) {
    /**
     * What so much of a feed is worth where as much hay can be bought as is wanted: no more than what hay in its place would
     * cost.
     *
     * @param hay the cheapest that is listed for sale by its dry matter, or any at a usual price, without an end
     * @param worth dollars a kg as fed at which so much of the feed would save nothing then
     * @param found dollars a kg as fed that hay counts where it is short, and has to be found
     */
    public record BesideHay(PricedFeed hay, double worth, double found) {}

    private static final Quantity GIVEN = Quantity.of(0.01, Unit.DOLLAR_PER_TON);

    /** @param now the group's offers as things are */
    public static Purchase of(Offers now, FeedForSale sale, Quantity tons, Quantity price) {
        var group = now.group();
        var before = new Rations(
                now.rations().ranch().withoutFeedForSale(sale.id()),
                now.rations().day());
        var with = new Offers(rations(now.rations(), sale, tons, price), group);
        var after = with.rations();
        var id = sale.id().toString();
        var feed = after.yard().feeds().stream()
                .filter(f -> f.feed().id().equals(id))
                .findFirst()
                .orElseThrow();
        var plan = after.plan().filter(p -> Season.lacking(before.yard()).isEmpty());
        // what hay costs that has to be found is the same in all that is compared
        var without = plan.map(p -> p.beside(before.yard()));
        // a kilogram for next to nothing: the plan takes it, and what is left of it at turnout is worth nothing either
        var first = rations(now.rations(), sale, Quantity.of(1, Unit.KILOGRAM), GIVEN);
        return new Purchase(
                feed,
                now.sure(),
                with.sure(),
                after.kgADay(id),
                plan.map(p -> p.beside(first.yard()).worth(id)).orElse(OptionalDouble.empty()),
                without.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(
                                without.get().plan().cost() - plan.get().plan().cost()),
                plan.map(p -> p.buys(id)).orElse(0.0),
                missing(without),
                missing(plan),
                plan.flatMap(p -> besideHay(p, before, after, feed)));
    }

    private static Optional<BesideHay> besideHay(WinterPlan plan, Rations before, Rations after, PricedFeed feed) {
        if (feed.feed().feedClass().isHay()) {
            return Optional.empty();
        }
        var sale = hayWithoutEnd(before);
        var yard = endless(before, sale);
        var hay = yard.feeds().stream()
                .filter(one -> one.feed().id().equals(sale.id().toString()))
                .findFirst()
                .orElseThrow();
        var id = feed.feed().id();
        var with = plan.beside(endless(after, sale));
        double kg = with.buys(id);
        double saves = plan.beside(yard).plan().cost() - with.plan().cost();
        return Optional.of(new BesideHay(
                hay,
                kg > 1
                        ? feed.pricePerKgAsFed() + saves / kg
                        : Math.min(feed.pricePerKgAsFed(), with.worth(id).orElse(0)),
                plan.season().emergencyPrice()));
    }

    private static Yard endless(Rations rations, FeedForSale hay) {
        return new Yard(rations.ranch().with(hay), rations.day());
    }

    private static FeedForSale hayWithoutEnd(Rations rations) {
        var listed = rations.yard().feeds().stream()
                .filter(feed -> !feed.own() && feed.feed().feedClass().isHay())
                .min(Comparator.comparingDouble(feed -> feed.pricePerKgAsFed() / feed.dryMatterPercent()))
                .map(feed -> rations.ranch()
                        .feedsForSale()
                        .get(UUID.fromString(feed.feed().id())));
        return listed.map(sale -> new FeedForSale(
                        sale.id(),
                        sale.name(),
                        sale.feedClass(),
                        sale.bookRow(),
                        sale.tag(),
                        sale.price(),
                        null,
                        sale.delivery(),
                        sale.load(),
                        sale.freight(),
                        sale.terms()))
                .orElseGet(() -> new FeedForSale(
                        new UUID(0, 0),
                        "Grass hay at a usual price",
                        FeedClass.GRASS_HAY,
                        "",
                        List.of(),
                        Quantity.of(HayFacts.value("hay_price"), Unit.DOLLAR_PER_TON),
                        null,
                        ""));
    }

    private static Rations rations(Rations rations, FeedForSale sale, Quantity tons, Quantity price) {
        var bought = new FeedForSale(
                sale.id(), sale.name(), sale.feedClass(), sale.bookRow(), sale.tag(), price, tons, sale.delivery());
        return new Rations(rations.ranch().with(bought), rations.day());
    }

    private static double missing(Optional<WinterPlan> plan) {
        return Unit.TON.fromBase(plan.map(p -> p.plan().emergencyKg()).orElse(0.0));
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
