package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.diet.DietRow.Kind;
import haywright.diet.DietRow.Sense;
import haywright.diet.Law.Counted;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How much they can, will and must eat, by how they are fed. Every floor counts each feed by the less of the floor and
 * nine tenths of what they could eat of it alone, so that no floor can ask for more than they hold:
 * <pre>
 * Σ x / min(floor, 0.90·capacity) ≥ 1        beside        Σ x / capacity ≤ 1
 * </pre>
 */
final class IntakeRows {
    /** Of what they could eat of a feed alone, that a floor may ask for (judgment). */
    private static final double ROOM = 0.90;

    /** Forage that a pound of cereal stands in for in the floor, pounds: half a percent of cereal takes 0.4 off it. */
    private static final double CEREAL_FOR_FORAGE = 0.8;

    private static final Source INTAKE = Source.read(
            "National Research Council 1996, Nutrient Requirements of Beef Cattle: predicted dry matter intake, with its"
                    + " factor for the cold");

    private final Need need;
    private final Rows row;
    private final DietOptions options;
    private final double weight;

    IntakeRows(List<Feed> feeds, Need need, DietOptions options) {
        this.need = need;
        this.options = options;
        weight = need.bodyWeight();
        row = new Rows(feeds, need);
    }

    List<DietRow> rows() {
        var rows = new ArrayList<DietRow>();
        switch (options.way()) {
            case FREE_CHOICE -> {
                rows.add(eaten("eaten_least", Sense.AT_LEAST));
                rows.add(eaten("eaten_most", Sense.AT_MOST));
            }
            case PUT_OUT_DAILY, BUNK -> {
                rows.add(fill());
                if (!options.shortOfHay()) {
                    var floor = floorId();
                    rows.add(forage("forage_floor", floor(), CEREAL_FOR_FORAGE, floor));
                    rows.add(forage("forage_least", percent("L19"), 0, "L19"));
                    rows.add(band());
                }
            }
            case LIMIT_FED -> {
                rows.add(fill());
                rows.add(forage("forage_least", percent(need.nemCold() > 0 ? "L21c" : "L21b"), 0, "L21b"));
                double least = percent("L21");
                rows.add(share(
                        "intake", "feed in all", Kind.PRACTICE, f -> isMineral(f) ? 0 : 100 / held(least, f), "L21"));
            }
        }
        if (options.leastHarm()) {
            rows.add(appetite());
        }
        if (options.leastHarm() || options.shortOfHay()) {
            rows.add(hay());
        }
        rows.removeIf(row -> !options.isOn(row.id()));
        return rows;
    }

    /** Each feed fills by what an animal could eat of it alone: together they may fill her once. */
    private DietRow fill() {
        return inPercent(
                "fill",
                "what they can hold",
                Kind.NEED,
                Sense.AT_MOST,
                asked -> 100,
                f -> 100 / FillCapacity.kilograms(f, need),
                FillCapacity.SOURCE);
    }

    /**
     * What they eat free choice of each forage alone, for as much of the day as it lies before them: all of the day. The
     * cold moves the day, not the amounts. What is fed beside it keeps them from eating some of it.
     */
    private DietRow eaten(String id, Sense sense) {
        double beside = PracticeLimits.value("L26") / PracticeLimits.usualIntake(need, 1);
        return inPercent(
                id,
                "what they eat free choice",
                Kind.NEED,
                sense,
                asked -> 100 * asked.intakeFactor(),
                f -> f.feedClass().isForage() ? 100 / freeChoice(f) : isMineral(f) ? 0 : 100 * beside,
                INTAKE);
    }

    /** kg of dry matter a day in mild weather, and never more than they could hold. */
    private double freeChoice(Feed feed) {
        double nem = feed.composition().value(Analyte.NEM).orElseThrow();
        return Math.min(need.intakes(1).apply(nem).kilograms(), FillCapacity.kilograms(feed, need));
    }

    /**
     * A little more than they are expected to eat of each feed alone; grain and cake count as a usual hay, so that they
     * never make room:
     * <pre>
     * Σ x / I(NEm of the feed) ≤ 1.05
     * </pre>
     */
    private DietRow appetite() {
        return inPercent(
                "appetite",
                "what they would eat",
                Kind.NEED,
                Sense.AT_MOST,
                asked -> PracticeLimits.value("L29"),
                f -> isMineral(f) ? 0 : 100 / expected(f),
                PracticeLimits.source("L29"));
    }

    /** kg of dry matter a day in the weather of the time. */
    private double expected(Feed feed) {
        return feed.feedClass().isForage()
                ? need.intake(feed.composition().value(Analyte.NEM).orElseThrow())
                        .kilograms()
                : PracticeLimits.usualIntake(need);
    }

    /** Straw fills and keeps no rumen going by itself: hay or silage alone counts. */
    private DietRow hay() {
        double least = percent("L21c");
        return share(
                "hay_least",
                "hay or silage",
                Kind.PRACTICE,
                f -> isHayOrSilage(f.feedClass()) ? 100 / held(least, f) : 0,
                "L21c");
    }

    private static boolean isHayOrSilage(FeedClass kind) {
        return kind.isForage() && kind != FeedClass.STRAW && kind != FeedClass.CROP_RESIDUE;
    }

    private DietRow band() {
        double least = PracticeLimits.value("L20") / 100 * PracticeLimits.usualIntake(need, 1);
        return share("intake", "feed in all", Kind.NEED, f -> isMineral(f) ? 0 : 100 / held(least, f), "L20");
    }

    private DietRow forage(String id, double least, double cereal, String source) {
        return share(
                id,
                "hay, silage or straw",
                Kind.PRACTICE,
                f -> f.feedClass().isForage()
                        ? 100 / held(least, f)
                        : f.feedClass() == FeedClass.GRAIN ? 100 * cereal / least : 0,
                source);
    }

    /** @param least kg of dry matter a day */
    private double held(double least, Feed feed) {
        return Math.min(least, ROOM * FillCapacity.kilograms(feed, need));
    }

    private static boolean isMineral(Feed feed) {
        return feed.feedClass() == FeedClass.MINERAL || feed.feedClass() == FeedClass.NPN;
    }

    /** kg of dry matter a day; of a group that has partly calved the mean of both. */
    private double floor() {
        double milking = need.animals() == AnimalClass.GROWING ? 0 : need.milkingShare();
        return percent(floorId()) * (1 - milking) + percent("L18d") * milking;
    }

    private String floorId() {
        return switch (need.animals()) {
            case MATURE_COW -> "L18";
            case BULL -> "L18b";
            case BRED_HEIFER, FIRST_CALF_HEIFER -> "L18c";
            case GROWING -> "L18e";
        };
    }

    private double percent(String limit) {
        return PracticeLimits.value(limit) / 100 * weight;
    }

    private DietRow share(String id, String name, Kind kind, ToDoubleFunction<Feed> percent, String source) {
        return inPercent(id, name, kind, Sense.AT_LEAST, asked -> 100, percent, PracticeLimits.source(source));
    }

    /** A row in percent of what it asks. */
    private DietRow inPercent(
            String id,
            String name,
            Kind kind,
            Sense sense,
            ToDoubleFunction<Need> asks,
            ToDoubleFunction<Feed> percent,
            Source source) {
        return row.of(
                id,
                kind,
                name,
                sense,
                Unit.PERCENT,
                Law.absolute(asks, (f, made) -> percent.applyAsDouble(f), Counted.MEAN),
                source);
    }
}
