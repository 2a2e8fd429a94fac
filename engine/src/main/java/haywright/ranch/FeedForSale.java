package haywright.ranch;

import haywright.forage.FeedClass;
import haywright.forage.lab.Reading;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.util.List;
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
 */
public record FeedForSale(
        UUID id,
        String name,
        FeedClass feedClass,
        String bookRow,
        List<Reading> tag,
        Quantity price,
        @Nullable Quantity atMost,
        String delivery) {
    public FeedForSale {
        tag = List.copyOf(tag);
        Names.require("name", name, "a feed");
        Refused.unlessOfKind(Kind.PRICE, "price", price);
        if (!(price.value() > 0)) {
            throw new Refused("price", "$" + price.value(), "a feed that is bought has a price", "What does it cost?");
        }
        if (atMost != null) {
            Refused.unlessOfKind(Kind.MASS, "atMost", atMost);
            if (atMost.value() < 0) {
                throw new Refused(
                        "atMost",
                        atMost.asTyped(),
                        "nobody delivers less than nothing",
                        "Leave it empty if there is no limit.");
            }
        }
    }
}
