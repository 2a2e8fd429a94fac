package haywright.outlook;

import haywright.diet.Feed;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lot.LotComposition;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ration.PricedFeed;
import haywright.workings.PublishedTable;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;

/** What a ton of a feed as fed usually costs delivered, taken where nobody said a price and said wherever it is used. */
public final class UsualPrices {
    private static final PublishedTable TABLE = PublishedTable.read(UsualPrices.class, "usual_prices.csv");

    private UsualPrices() {}

    /** Dollars a ton as fed, delivered. */
    public static Quantity of(FeedClass kind) {
        var row = TABLE.row("id", kind.name().toLowerCase(Locale.ROOT));
        return Quantity.of(row.number("value").orElseThrow(), Unit.DOLLAR_PER_TON);
    }

    /** What replaces a ton of a lot: as it was entered, otherwise the usual price of its kind. */
    public static Quantity of(Lot lot) {
        return Objects.requireNonNullElseGet(lot.replacementPrice(), () -> of(lot.feedClass()));
    }

    /** A feed that a ranch does not list, with the feed book's figures. @param lossPercent of what is put out */
    public static PricedFeed feed(String name, FeedClass kind, double lossPercent) {
        var made = LotComposition.of(kind, FeedBook.published().usual(kind), List.of());
        var id = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
        var feed = new Feed(id, name, kind, made.composition(), false);
        return new PricedFeed(feed, of(kind).in(Unit.DOLLAR_PER_KG), PricedFeed.dryMatterOf(feed), lossPercent);
    }
}
