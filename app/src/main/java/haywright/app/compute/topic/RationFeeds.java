package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.book.FeedBook;
import haywright.forage.hazard.NitrateRisk;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotComposition;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Feeds as a ration's request gives them, and limits on them. */
final class RationFeeds {
    private RationFeeds() {}

    record FeedIn(
            String name,

            @Key(words = "A class of feed, or a feed of the book: grass_hay, alfalfa_hay.")
            String feedClass,

            @Key(words = "Row of the feed book for what is not given; the usual one when not said.") @Nullable
            String bookRow,

            @Key(value = Unit.DOLLAR_PER_KG, words = "As fed, delivered; what it would cost to replace.")
            double price,

            @Key(value = Unit.PERCENT, words = "Of what is put out; 0 when not said.")
            OptionalDouble feedingLoss,

            @Key(words = "Drought, frost, shade or much nitrogen: a danger until it is tested.") @Nullable
            Boolean nitrateRisk,

            @Key(value = Unit.PERCENT, name = "dm", words = "Of the feed as fed.")
            OptionalDouble dryMatter,

            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble cp,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble adf,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble ndf,

            @Key(value = Unit.PERCENT, of = "dm", words = "Stands where adf is not given.")
            OptionalDouble tdn,

            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble fat,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble ca,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble p,

            @Key(value = Unit.PPM, of = "dm", name = "no3_n")
            OptionalDouble nitrate) {
        PricedFeed priced() {
            var kind = FeedKind.named("feedClass", feedClass);
            var row = bookRow == null ? kind.row() : FeedBook.published().rowFor(bookRow, kind.feedClass());
            var readings = readings();
            kind.sound("feeds", name + ": ", readings);
            var composition = LotComposition.ofTag(kind.feedClass(), row, "the request", readings);
            boolean risk = nitrateRisk == null ? NitrateRisk.isRisk(kind.feedClass(), row) : nitrateRisk;
            var feed = new Feed(name, name, kind.feedClass(), composition.composition(), risk);
            return new PricedFeed(feed, price, PricedFeed.dryMatterOf(feed), feedingLoss.orElse(0));
        }

        private List<Reading> readings() {
            var readings = new ArrayList<Reading>();
            dryMatter.ifPresent(v -> readings.add(new Reading(Analyte.DM, v, Unit.PERCENT, Basis.AS_RECEIVED)));
            read(readings, Analyte.CP, cp);
            read(readings, Analyte.ADF, adf);
            read(readings, Analyte.NDF, ndf);
            read(readings, Analyte.TDN, tdn);
            read(readings, Analyte.FAT, fat);
            read(readings, Analyte.CA, ca);
            read(readings, Analyte.P, p);
            read(readings, Analyte.NO3N, nitrate);
            return readings;
        }

        private static void read(List<Reading> readings, Analyte analyte, OptionalDouble value) {
            value.ifPresent(v -> readings.add(new Reading(analyte, v, analyte.unit(), Basis.DRY_MATTER)));
        }
    }

    record FeedLimit(
            String feed,
            @Key(value = Unit.KILOGRAM, of = "dm") OptionalDouble atLeast,
            @Key(value = Unit.KILOGRAM, of = "dm") OptionalDouble atMost,
            @Key(Unit.PERCENT) OptionalDouble atLeastShare,
            @Key(Unit.PERCENT) OptionalDouble atMostShare,

            @Key(value = Unit.PERCENT, name = "at_least", of = "bw")
            OptionalDouble atLeastOfWeight,

            @Key(value = Unit.PERCENT, name = "at_most", of = "bw")
            OptionalDouble atMostOfWeight) {
        List<DietOptions.FeedLimit> limits() {
            var limits = new ArrayList<DietOptions.FeedLimit>();
            add(limits, DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, atLeast);
            add(limits, DietRow.Sense.AT_MOST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, atMost);
            add(limits, DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.SHARE_PCT, atLeastShare);
            add(limits, DietRow.Sense.AT_MOST, DietOptions.FeedLimit.Per.SHARE_PCT, atMostShare);
            add(limits, DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.BODY_WEIGHT_PCT, atLeastOfWeight);
            add(limits, DietRow.Sense.AT_MOST, DietOptions.FeedLimit.Per.BODY_WEIGHT_PCT, atMostOfWeight);
            return limits;
        }

        private void add(
                List<DietOptions.FeedLimit> limits,
                DietRow.Sense sense,
                DietOptions.FeedLimit.Per per,
                OptionalDouble amount) {
            amount.ifPresent(a -> limits.add(new DietOptions.FeedLimit(feed, sense, per, a)));
        }
    }
}
