package haywright.ranch;

import haywright.forage.FeedClass;
import haywright.forage.lab.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
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
        @Nullable Quantity freight) {
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
                throw new Refused("load", load.asTyped(), "a load holds something", "How many tons come in one?");
            }
        }
        if (freight != null) {
            Refused.unlessOfKind(Kind.MONEY, "freight", freight);
            if (!(freight.value() >= 0)) {
                throw new Refused(
                        "freight", "$" + freight.value(), "freight costs nothing or more", "Leave it empty for none.");
            }
            if (load == null) {
                throw new Refused(
                        "load", "nothing", "freight is counted a load", "Enter how many tons come in one load.");
            }
        }
    }

    /** Dollars a kg as fed in the yard: its price, and its share of the freight of a full load. */
    public double deliveredPerKg() {
        return price.in(Unit.DOLLAR_PER_KG) + (freight == null || load == null ? 0 : freight.base() / load.base());
    }

    /** Full loads that bring so many kg as fed; empty where nobody said what a load holds. */
    public OptionalInt loads(double kg) {
        return load == null ? OptionalInt.empty() : OptionalInt.of((int) Math.ceil(kg / load.base() - 1e-9));
    }
}
