package haywright.ranch;

import haywright.forage.FeedClass;
import haywright.forage.lab.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Names;
import haywright.workings.Refused;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A feed that can be bought.
 *
 * @param bookRow row of the feed book that its values come from; {@code tag} wins where both say something
 * @param tag figures off the feed tag or the seller's analysis
 * @param price as fed, delivered
 * @param atMost tons that can be had in the time, if there is a limit
 * @param delivery in words: "a semi load of 25 tons, five days' notice"
 * @param load what comes in one load, as fed; null where nobody said
 * @param freight dollars a load on top of the price; null for none
 * @param terms how it is hauled and what waiting costs; null where nobody said any of it
 */
public record FeedForSale(
        UUID id,
        String name,
        FeedClass feedClass,
        String bookRow,
        List<Reading> tag,
        Quantity price,
        @Nullable Quantity atMost,
        String delivery,
        @Nullable Quantity load,
        @Nullable Quantity freight,
        @Nullable Terms terms) {
    /**
     * How it is hauled and what waiting costs, as far as somebody said.
     *
     * @param miles that a load is hauled, the loaded way alone
     * @param perMile dollars for each of them
     * @param aWeek most that can be delivered in a week, as fed
     * @param later price as fed in mid-March, without the freight that {@code price} leaves out
     * @param hardPercent that it costs more in a hard winter, one in six
     */
    public record Terms(
            @Nullable Quantity miles,
            @Nullable Quantity perMile,
            @Nullable Quantity aWeek,
            @Nullable Quantity later,
            @Nullable Double hardPercent) {
        private static final double MOST_PERCENT = 200;

        public Terms {
            if (miles != null) {
                Refused.unlessOfKind(Kind.LENGTH, "miles", miles);
                Refused.ifBelowNothing("miles", miles, "a haul is 0 miles or more");
            }
            if (perMile != null) {
                Refused.unlessOfKind(Kind.MONEY, "perMile", perMile);
                Refused.ifBelowNothing("perMile", perMile, "a mile costs nothing or more");
            }
            if (miles == null && perMile != null) {
                throw new Refused(
                        "miles",
                        "nothing",
                        "freight by the mile needs the miles",
                        "Enter the miles of one loaded haul.");
            }
            if (perMile == null && miles != null) {
                throw new Refused(
                        "perMile",
                        "nothing",
                        "freight by the mile needs what a mile costs",
                        "Enter dollars a loaded mile, or leave the miles empty.");
            }
            if (aWeek != null) {
                Refused.unlessOfKind(Kind.MASS, "aWeek", aWeek);
                if (!(aWeek.value() > 0)) {
                    throw new Refused(
                            "aWeek", aWeek.asTyped(), "a week brings something", "Leave it empty for no limit.");
                }
            }
            if (later != null) {
                Refused.unlessOfKind(Kind.PRICE, "later", later);
                if (!(later.value() > 0)) {
                    throw new Refused(
                            "later", "$" + later.value(), "a feed to buy needs a price", "Enter what it will cost.");
                }
            }
            if (hardPercent != null && !(hardPercent >= 0 && hardPercent <= MOST_PERCENT)) {
                throw new Refused(
                        "hardPercent",
                        hardPercent + " %",
                        "a hard winter makes feed 0 to 200 % dearer",
                        "Enter percent of the price.");
            }
        }

        boolean isNothing() {
            return miles == null && aWeek == null && later == null && hardPercent == null;
        }
    }

    /** Of which nobody said how it is hauled. */
    public FeedForSale(
            UUID id,
            String name,
            FeedClass feedClass,
            String bookRow,
            List<Reading> tag,
            Quantity price,
            @Nullable Quantity atMost,
            String delivery,
            @Nullable Quantity load,
            @Nullable Quantity freight) {
        this(id, name, feedClass, bookRow, tag, price, atMost, delivery, load, freight, null);
    }

    /** Whose price has the freight in it. */
    public FeedForSale(
            UUID id,
            String name,
            FeedClass feedClass,
            String bookRow,
            List<Reading> tag,
            Quantity price,
            @Nullable Quantity atMost,
            String delivery) {
        this(id, name, feedClass, bookRow, tag, price, atMost, delivery, null, null);
    }

    public FeedForSale {
        tag = List.copyOf(tag);
        Names.require("name", name, "a feed");
        Refused.unlessOfKind(Kind.PRICE, "price", price);
        if (!(price.value() > 0)) {
            throw new Refused("price", "$" + price.value(), "a feed to buy needs a price", "Enter what it costs.");
        }
        if (atMost != null) {
            Refused.unlessOfKind(Kind.MASS, "atMost", atMost);
            if (atMost.value() < 0) {
                throw new Refused("atMost", atMost.asTyped(), "an amount is 0 or more", "Leave it empty for no limit.");
            }
        }
        if (load != null) {
            Refused.unlessOfKind(Kind.MASS, "load", load);
            if (!(load.value() > 0)) {
                throw new Refused("load", load.asTyped(), "a load holds something", "How much comes in one?");
            }
        }
        if (freight != null) {
            Refused.unlessOfKind(Kind.MONEY, "freight", freight);
            if (!(freight.value() >= 0)) {
                throw new Refused(
                        "freight", "$" + freight.value(), "freight costs nothing or more", "Leave it empty for none.");
            }
            if (load == null) {
                throw new Refused("load", "nothing", "freight is counted a load", "Enter how much comes in one load.");
            }
        }
        terms = terms == null || terms.isNothing() ? null : terms;
        if (terms != null && terms.miles != null) {
            if (freight != null) {
                throw new Refused(
                        "freight",
                        "$" + freight.value(),
                        "freight is entered a load or by the mile, not both",
                        "Leave one of them empty.");
            }
            if (load == null) {
                throw new Refused("load", "nothing", "freight is counted a load", "Enter how much comes in one load.");
            }
        }
        if (terms != null && terms.aWeek != null && load != null && terms.aWeek.base() < load.base()) {
            throw new Refused(
                    "aWeek",
                    terms.aWeek.asTyped(),
                    "a week that brings any brings a whole load",
                    "Enter as much as a load or more.");
        }
    }

    /** Dollars that the haul of one load costs on top of the price. */
    public double freightALoad() {
        return freight != null
                ? freight.base()
                : terms == null || terms.miles == null || terms.perMile == null
                        ? 0
                        : terms.miles.in(Unit.MILE) * terms.perMile.base();
    }

    /** Dollars a kg as fed in the yard: its price, and its share of the freight of a full load. */
    public double deliveredPerKg() {
        return price.in(Unit.DOLLAR_PER_KG) + (load == null ? 0 : freightALoad() / load.base());
    }

    /** Full loads that bring so many kg as fed; empty where nobody said what a load holds. */
    public OptionalInt loads(double kg) {
        return load == null ? OptionalInt.empty() : OptionalInt.of((int) Math.ceil(kg / load.base() - 1e-9));
    }
}
