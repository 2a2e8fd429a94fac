package haywright.ration;

import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Source;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A loose mineral as it is usually bought, offered wherever the ranch names none of its own: without one a ration would
 * buy hay for its phosphorus. Three parts of calcium to one of phosphorus, for hay, straw and grain of grasses and cereals.
 */
public final class UsualMineral {
    /** As feeds are known by. */
    public static final UUID ID = UUID.nameUUIDFromBytes("usual loose mineral".getBytes(StandardCharsets.UTF_8));

    private static final Source TAG = Source.judgment("a usual loose mineral, 3 parts of calcium to 1 of phosphorus"
            + " (Yaremcio, Changing feeding programs: 3:1 or 4:1 on cereal or grass) with a fifth of salt");
    private static final double DRY_MATTER = 98;
    private static final Map<Analyte, Double> PERCENT =
            Map.of(Analyte.DM, DRY_MATTER, Analyte.CA, 18.0, Analyte.P, 6.0, Analyte.MG, 2.0, Analyte.NA, 8.0);
    /** Delivered, judgment. */
    private static final double DOLLARS_A_TON = 1100;

    private static final double LOSS_PERCENT = 3;

    private UsualMineral() {}

    /** The same feeds, with it at the end where none of them is a loose mineral; by itself it feeds nobody. */
    public static List<PricedFeed> beside(List<PricedFeed> feeds) {
        if (feeds.isEmpty() || feeds.stream().anyMatch(f -> f.feed().isLooseMineral())) {
            return feeds;
        }
        var all = new ArrayList<>(feeds);
        all.add(priced());
        return all;
    }

    public static boolean is(PricedFeed feed) {
        return feed.feed().id().equals(ID.toString());
    }

    private static PricedFeed priced() {
        var known = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        PERCENT.forEach(
                (analyte, value) -> known.put(analyte, new Composition.Known(value, new Origin.Published(TAG))));
        var feed = new Feed(ID.toString(), "Usual loose mineral", FeedClass.MINERAL, new Composition(known), false);
        return new PricedFeed(
                feed, Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, DOLLARS_A_TON), DRY_MATTER, LOSS_PERCENT);
    }
}
