package haywright.season.given;

import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lot.LotComposition;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Hay that has to be found: usual grass hay, and no better than the hay that the ranch has most of. Better hay would stand in
 * for energy and protein that no hay here brings, and count as tons short what is short of a grain.
 */
final class EmergencyHay {
    /** The less of these, the poorer. */
    private static final Set<Analyte> RICH = Set.of(Analyte.NEM, Analyte.NEG, Analyte.TDN, Analyte.CP);

    private EmergencyHay() {}

    /** @param price dollars a kg as fed; what the ranch entered or the usual, by the dearest hay that is known, where it is empty */
    static PricedFeed of(Yard yard, OptionalDouble price) {
        var feed = new Feed(Emergency.ID, "Emergency hay", FeedClass.GRASS_HAY, made(yard), false);
        return new PricedFeed(
                feed,
                price.orElseGet(() -> price(yard)),
                PricedFeed.dryMatterOf(feed),
                yard.ranch().settings().hayLossPercent());
    }

    private static Composition made(Yard yard) {
        var row = FeedBook.published().usual(FeedClass.GRASS_HAY);
        var usual = LotComposition.of(FeedClass.GRASS_HAY, row, List.of()).composition();
        return own(yard).map(own -> poorer(usual, own)).orElse(usual);
    }

    private static Optional<Composition> own(Yard yard) {
        return yard.feeds().stream()
                .filter(feed -> feed.own() && feed.feed().feedClass().isHay())
                .max(Comparator.comparingDouble(PricedFeed::kgAtHand))
                .map(feed -> feed.feed().composition());
    }

    private static Composition poorer(Composition usual, Composition own) {
        var values = new EnumMap<>(usual.values());
        own.values().forEach((analyte, known) -> {
            boolean isPoorer = RICH.contains(analyte)
                            && known.value() < usual.value(analyte).orElse(0)
                    || analyte == Analyte.NDF
                            && known.value() > usual.value(analyte).orElse(known.value());
            if (isPoorer) {
                values.put(analyte, known);
            }
        });
        return new Composition(values, usual.expected());
    }

    private static double price(Yard yard) {
        double dearest = yard.feeds().stream()
                .filter(feed -> feed.feed().feedClass().isHay())
                .mapToDouble(PricedFeed::pricePerKgAsFed)
                .max()
                .orElse(0);
        // hay that has to be found is never cheaper than what the ranch's own would bring, or a plan would trade with
        // it
        for (var lot : yard.ranch().lots().values()) {
            var sells = lot.use() == null ? null : lot.use().sells();
            dearest = sells == null ? dearest : Math.max(dearest, sells.in(Unit.DOLLAR_PER_KG));
        }
        var entered = yard.ranch().settings().findPrice();
        if (entered != null) {
            return Math.max(entered.in(Unit.DOLLAR_PER_KG), dearest);
        }
        double least = Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, Facts.value("emergency_price"));
        return Math.max(least, Facts.value("emergency_times") * dearest);
    }
}
