package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.compute.shape.Nearest;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.book.FeedBook;
import haywright.forage.hazard.NitrateRisk;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.LotDistribution;
import haywright.quantity.Unit;
import haywright.ration.PricedFeed;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Feeds as a ration's request gives them, and limits on them. */
final class RationFeeds {
    private static final SortedMap<String, Analyte> SPREAD = new TreeMap<>(Map.of(
            "cp", Analyte.CP,
            "adf", Analyte.ADF,
            "ndf", Analyte.NDF,
            "tdn", Analyte.TDN,
            "fat", Analyte.FAT,
            "ca", Analyte.CA,
            "p", Analyte.P));

    private RationFeeds() {}

    /** Of a feed, the one that gives the figure; of figures that contradict together, its name. */
    private static String component(@Nullable Analyte analyte) {
        if (analyte == Analyte.DM) {
            return "dryMatter";
        }
        if (analyte == Analyte.NO3N) {
            return "nitrate";
        }
        return SPREAD.entrySet().stream()
                .filter(one -> one.getValue() == analyte)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse("name");
    }

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

            @Key(value = Unit.DOLLAR_PER_KG, words = "To load, haul and put it out, as fed; 0 when not said.")
            OptionalDouble handling,

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
            OptionalDouble nitrate,

            @Key(words = "Tons of 2,000 lb as fed; without it there is no end of it.")
            OptionalDouble onHandTons,

            @Key(value = Unit.KILOGRAM, name = "bale", words = "One bale, as fed.")
            OptionalDouble bale,

            @Key(
                    words =
                            "Standard deviations by figure, in the figure's own unit: cp, adf, ndf, tdn, fat, ca, p. What is not in it varies as loads of its kind do; 0 for certain.")
            @Nullable
            Map<String, Double> sd) {
        FeedIn {
            if (!(bale.orElse(1) > 0)) {
                throw new Refused(
                        "bale", bale.getAsDouble() + " kg", "a bale weighs something", "What does one weigh?");
            }
        }

        PricedFeed priced() {
            var kind = FeedKind.named("feedClass", feedClass);
            var row = bookRow == null ? kind.row() : FeedBook.published().rowFor(bookRow, kind.feedClass());
            var readings = readings();
            kind.sound(RationFeeds::component, name + ": ", readings);
            var certain = said().entrySet().stream()
                    .filter(one -> one.getValue() == 0)
                    .map(Map.Entry::getKey)
                    .collect(Collectors.toSet());
            var composition = LotComposition.ofTag(kind.feedClass(), row, "the request", readings)
                    .spread(said());
            boolean risk = nitrateRisk == null ? NitrateRisk.isRisk(kind.feedClass(), row) : nitrateRisk;
            var feed = new Feed(
                    name,
                    name,
                    kind.feedClass(),
                    composition.composition(),
                    risk,
                    Optional.of(LotDistribution.of(composition, certain)));
            return new PricedFeed(
                    feed,
                    price,
                    PricedFeed.dryMatterOf(feed),
                    feedingLoss.orElse(0),
                    handling.orElse(0),
                    onHandTons.isPresent(),
                    Unit.TON.toBase(onHandTons.orElse(Double.POSITIVE_INFINITY)),
                    0,
                    Double.POSITIVE_INFINITY);
        }

        private Map<Analyte, Double> said() {
            var said = new EnumMap<Analyte, Double>(Analyte.class);
            for (var one : (sd == null ? Map.<String, Double>of() : sd).entrySet()) {
                var analyte = SPREAD.get(one.getKey());
                if (analyte == null) {
                    throw new Refused(
                            "sd",
                            one.getKey(),
                            "a standard deviation is said of a figure of the feed",
                            Nearest.to(one.getKey(), SPREAD.keySet())
                                    .map("Did you mean %s?"::formatted)
                                    .orElse("One of " + String.join(", ", SPREAD.keySet()) + "."));
                }
                if (!(one.getValue() >= 0) || !Double.isFinite(one.getValue())) {
                    throw new Refused(
                            "sd",
                            one.getKey() + " " + one.getValue(),
                            "a standard deviation is 0 or more",
                            "How far do two loads of it differ?");
                }
                said.put(analyte, one.getValue());
            }
            return said;
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
