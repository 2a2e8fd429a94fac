package haywright.ration;

import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;

/**
 * A feed and what it costs.
 *
 * @param pricePerKgAsFed dollars a kg as fed, delivered, or what it would cost to replace; above zero, because a ration
 *     that counts hay as free gives it away
 * @param dryMatterPercent of the feed as it is fed
 * @param feedingLossPercent share of what is put out that nobody eats
 * @param handlingPerKgAsFed dollars a kg as fed to load, haul and put it out
 * @param own whether it lies on the ranch
 * @param kgAtHand as fed: what lies there, or the most that can be had; infinite for no limit
 * @param scarcityPerKgAsFed dollars a kg as fed that it is worth beside its price, to other groups or later, because it
 *     does not reach for all; decides with the price, and is no cost
 * @param mostEaten kg of dry matter that one head may have of it a day; infinite for no limit
 */
public record PricedFeed(
        Feed feed,
        double pricePerKgAsFed,
        double dryMatterPercent,
        double feedingLossPercent,
        double handlingPerKgAsFed,
        boolean own,
        double kgAtHand,
        double scarcityPerKgAsFed,
        double mostEaten) {
    /** That can be bought without limit, at no cost beside its price. */
    public PricedFeed(Feed feed, double pricePerKgAsFed, double dryMatterPercent, double feedingLossPercent) {
        this(
                feed,
                pricePerKgAsFed,
                dryMatterPercent,
                feedingLossPercent,
                0,
                false,
                Double.POSITIVE_INFINITY,
                0,
                Double.POSITIVE_INFINITY);
    }

    /** The same feed, shared with others. @param scarcity dollars a kg as fed. @param kgEaten that one head may have a day */
    public PricedFeed shared(double scarcity, double kgEaten) {
        return new PricedFeed(
                feed,
                pricePerKgAsFed,
                dryMatterPercent,
                feedingLossPercent,
                handlingPerKgAsFed,
                own,
                kgAtHand,
                scarcity,
                kgEaten);
    }

    /** The same at the same cost, made of something else. */
    public PricedFeed madeOf(Feed other) {
        return new PricedFeed(
                other,
                pricePerKgAsFed,
                dryMatterPercent,
                feedingLossPercent,
                handlingPerKgAsFed,
                own,
                kgAtHand,
                scarcityPerKgAsFed,
                mostEaten);
    }

    /** Dollars for a kg of dry matter eaten. Costs above have no meaning, and far above the solver cannot hold them. */
    private static final double MOST = 1e6;

    public PricedFeed {
        var problems = new ArrayList<Problem>();
        if (!(pricePerKgAsFed > 0) || !Double.isFinite(pricePerKgAsFed)) {
            problems.add(new Problem(
                    "price",
                    feed.name() + " at " + pricePerKgAsFed + " a kg",
                    "every feed needs a price above zero, also hay of your own",
                    "What would it cost to replace, delivered?"));
        }
        if (!(dryMatterPercent > 0 && dryMatterPercent <= 100)) {
            problems.add(new Problem(
                    "dm",
                    feed.name() + " with " + dryMatterPercent + " % dry matter",
                    "dry matter is above 0 and at most 100 %",
                    "Hay is near 88, silage near 35. Was moisture put in instead?"));
        }
        if (!(feedingLossPercent >= 0 && feedingLossPercent < 100)) {
            problems.add(new Problem(
                    "feedingLoss",
                    feedingLossPercent + " %",
                    "what is lost in feeding is 0 or more and less than all of it",
                    "Hay in a ring loses about 5 %, on the ground 15 to 30 %."));
        }
        if (!(handlingPerKgAsFed >= 0) || !Double.isFinite(handlingPerKgAsFed)) {
            problems.add(new Problem(
                    "handling",
                    handlingPerKgAsFed + " dollars a kg",
                    "handling costs nothing or more",
                    "What does it cost you to load and haul?"));
        }
        if (!(kgAtHand >= 0)) {
            problems.add(new Problem(
                    "onHand", kgAtHand + " kg", "there is nothing or more of a feed", "Leave it out for no limit."));
        }
        Refused.unlessEmpty(problems);
        mostEaten = kgAtHand == 0 ? 0 : mostEaten;
        double cost = (pricePerKgAsFed + handlingPerKgAsFed) / kept(dryMatterPercent, feedingLossPercent);
        if (!(cost < MOST)) {
            throw new Refused(
                    "price",
                    "%s at %s dollars for a kg of dry matter eaten".formatted(feed.name(), cost),
                    "no feed costs a million dollars a kg",
                    "Is its price too high, its dry matter too low, or nearly all of it lost?");
        }
    }

    /** With another share lost in feeding. */
    public PricedFeed losing(double percent) {
        return new PricedFeed(
                feed,
                pricePerKgAsFed,
                dryMatterPercent,
                percent,
                handlingPerKgAsFed,
                own,
                kgAtHand,
                scarcityPerKgAsFed,
                mostEaten);
    }

    /** With so much of it there. @param kg as fed */
    public PricedFeed atHand(double kg) {
        return new PricedFeed(
                feed,
                pricePerKgAsFed,
                dryMatterPercent,
                feedingLossPercent,
                handlingPerKgAsFed,
                own,
                kg,
                scarcityPerKgAsFed,
                mostEaten);
    }

    /** Forage that can be the whole of what they eat; straw and stalks cannot. */
    public boolean isHayOrSilage() {
        return feed.feedClass().isForage() && !isStraw();
    }

    /** Straw or stalks. */
    public boolean isStraw() {
        return feed.feedClass() == FeedClass.STRAW || feed.feedClass() == FeedClass.CROP_RESIDUE;
    }

    /** Dry matter of the feed, or the usual of its kind where nothing says it. */
    public static double dryMatterOf(Feed feed) {
        return feed.composition().value(Analyte.DM).orElse(feed.feedClass().usualDryMatterPercent());
    }

    /** Dollars for a kg of dry matter that is eaten. */
    public double costPerKgEaten() {
        return (pricePerKgAsFed + handlingPerKgAsFed) / kept();
    }

    /** Dollars that decide on a kg of dry matter eaten: its cost, and what it is worth to others. */
    public double weighedPerKgEaten() {
        return costPerKgEaten() + scarcityPerKgAsFed / kept();
    }

    /** Kilograms as fed to put out for so many kg of dry matter eaten. */
    public double putOut(double kgDryMatterEaten) {
        return kgDryMatterEaten / kept();
    }

    /** Kilograms of dry matter eaten of so many kg as fed put out. */
    public double eaten(double kgAsFedPutOut) {
        return kgAsFedPutOut * kept();
    }

    /** Dry matter that ends in the animal, of a kg as fed put out. */
    private double kept() {
        return kept(dryMatterPercent, feedingLossPercent);
    }

    private static double kept(double dryMatterPercent, double feedingLossPercent) {
        return dryMatterPercent / 100 * (1 - feedingLossPercent / 100);
    }

    /** The price a kg as fed at which a kg of dry matter eaten weighs so much. */
    double priceAtCost(double perKgEaten) {
        return perKgEaten * kept() - handlingPerKgAsFed - scarcityPerKgAsFed;
    }
}
