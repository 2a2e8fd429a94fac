package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.diet.DietRow.Kind;
import haywright.diet.DietRow.Sense;
import haywright.diet.Law.Counted;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Limits of good practice, from {@code practice_limits.csv}. On by default: without them the cheapest diet is straw and
 * ten pounds of barley.
 */
final class PracticeLimits {
    private static final PublishedTable TABLE = PublishedTable.read(PracticeLimits.class, "practice_limits.csv");

    private static final Map<String, Double> VALUES = new ConcurrentHashMap<>();

    /** A lot above this is refused however it is diluted: the strictest published do-not-feed class, ppm NO3-N. */
    static final double NITRATE_DO_NOT_FEED = value("L11c");

    /** Grams that are one percent of a kilogram. */
    private static final double GRAMS_IN_A_PERCENT = 10;

    /** Mcal of NEm in a kg of forage of 56 % TDN (judgment). */
    private static final double USUAL_NEM = 1.2;

    private final List<Feed> feeds;
    private final Need need;
    private final Rows row;
    private final DietOptions options;

    PracticeLimits(List<Feed> feeds, Need need, DietOptions options) {
        this.feeds = feeds;
        this.need = need;
        this.options = options;
        row = new Rows(feeds, need);
    }

    List<DietRow> rows() {
        var rows = new ArrayList<DietRow>();
        boolean growing = need.animals() == AnimalClass.GROWING;
        rows.add(bodyWeightLimit("straw", "straw", strawId(), strawPercent(), f -> f == FeedClass.STRAW));
        if (options.isCareful() && options.isOn("straw")) {
            rows.add(strawShare());
        }
        // The published limit is for one feeding; an outfit that grains twice a day may give it twice.
        var grain = growing ? "L03" : "L02";
        double grainADay = growing
                ? Math.min(value(grain) * options.grainFeedingsADay(), value("L03d"))
                : GrainFed.percentADay(options.grainFeedingsADay());
        rows.add(
                bodyWeightLimit("grain", "grain", grain, grainADay / options.grainPutOut(), f -> f == FeedClass.GRAIN));
        if (feeds.stream().anyMatch(Feed::isFastStarch)) {
            rows.add(fastStarch(growing ? "L22b" : "L22"));
        }
        if (!growing && options.isCareful() && options.way() != WayOfFeeding.LIMIT_FED) {
            rows.add(bodyWeightLimit(
                    "grain_careful",
                    "grain beside forage",
                    "L02b",
                    value("L02b") / options.grainPutOut(),
                    f -> f == FeedClass.GRAIN));
        }
        if (options.way() != WayOfFeeding.LIMIT_FED && !options.shortOfHay()) {
            rows.add(share(
                    "forage",
                    "forage in the ration",
                    Sense.AT_LEAST,
                    growing ? "L05" : "L04",
                    f -> f.feedClass().isForage() ? 100 : 0));
        }
        // A feed whose fat nobody has measured neither helps nor hurts this limit.
        rows.add(share(
                "fat",
                "fat in the ration",
                Sense.AT_MOST,
                "L06",
                f -> f.composition().most(Analyte.FAT).orElse(value("L06"))));
        var distillers = growing ? "L13b" : "L13";
        rows.add(share(
                "distillers",
                "distillers grains in the ration",
                Sense.AT_MOST,
                distillers,
                f -> f.feedClass() == FeedClass.DISTILLERS_GRAINS ? 100 : 0));
        if (feeds.stream().anyMatch(Feed::isLooseMineral)) {
            rows.add(mineral());
        }
        rows.removeIf(row -> !options.isOn(row.id()));
        rows.addAll(dangers()); // these cannot be switched off
        return rows;
    }

    private List<DietRow> dangers() {
        var rows = new ArrayList<DietRow>();
        var nitrate = nitrateLimitId(need);
        rows.add(ratio(
                "nitrate",
                Kind.DANGER,
                options.water().nitrate() > 0
                        ? "nitrate (as NO3-N) in the ration and its water"
                        : "nitrate (as NO3-N) in the ration",
                Sense.AT_MOST,
                nitrate,
                Unit.PPM,
                // a mineral is eaten in ounces: pounds of it would thin the nitrate on paper alone
                f -> f.isLooseMineral()
                        ? value(nitrate)
                        : NitrateFed.of(f, need, options).counted(),
                options.water()::nitrateADay,
                Counted.UPPER_90));
        if (feeds.stream().anyMatch(f -> isSecond(f, need, options))) {
            rows.add(ratio(
                    "nitrate_second",
                    Kind.DANGER,
                    "feed that is high in nitrate and not mixed",
                    Sense.AT_MOST,
                    "L11f",
                    Unit.PERCENT,
                    f -> isSecond(f, need, options) ? 100 : 0,
                    asked -> 0,
                    Counted.MEAN));
        }
        if (options.water().sulfate() > 0 || feeds.stream().anyMatch(PracticeLimits::isHighInSulfur)) {
            rows.add(sulfur());
        }
        rows.addAll(new Toxins(feeds, need).rows());
        return rows;
    }

    private static boolean isHighInSulfur(Feed feed) {
        return feed.composition().most(Analyte.S).orElse(0) > value("L07b");
    }

    /** Of feed and water together, as {@link SulfurEaten} has it: cattle cannot tell them apart. */
    private DietRow sulfur() {
        var limit = "L07";
        return row.of(
                "s",
                Kind.DANGER,
                "sulfur in the ration and its water",
                Sense.AT_MOST,
                Unit.PERCENT,
                new Law(
                        asked -> value(limit),
                        (f, made) -> made.value(Analyte.S).orElse(value("L25")),
                        (f, made) -> 1,
                        asked -> SulfurEaten.fromWater(
                                        asked.water(), options.water().sulfate())
                                / GRAMS_IN_A_PERCENT,
                        Counted.SURE),
                source(limit));
    }

    /** Wheat, rye and triticale ferment fastest; other grain may be fed besides. */
    private DietRow fastStarch(String limit) {
        return row.of(
                "fast_starch",
                Kind.PRACTICE,
                "wheat, rye and triticale",
                Sense.AT_MOST,
                Unit.KILOGRAM_A_DAY,
                Law.absolute(
                        asked -> Unit.POUND.toBase(value(limit)),
                        (f, made) -> f.isFastStarch() ? options.grainPutOut() * 100 / f.dryMatterPercent() : 0,
                        Counted.MEAN),
                source(limit));
    }

    /**
     * Energy where grain is given in two feedings: beyond what one feeding holds it counts less.
     * <pre>
     * Σ NEm·x − (1 − 0.85)·2.0·max(0, grain − one feeding) ≥ NEm needed
     * </pre>
     * Below one feeding the row gives more than the plain one, and says nothing.
     */
    DietRow energyInTwoFeedings() {
        double lost = (1 - value("L27") / 100) * value("L27b");
        double one = value("L02") / 100;
        return row.of(
                "nem_two_feedings",
                Kind.NEED,
                "energy (NEm), grain in two feedings",
                Sense.AT_LEAST,
                Unit.MEGACALORIE,
                new Law(
                        Need::nem,
                        (f, made) -> Diet.value(f, made, Analyte.NEM) - (f.feedClass() == FeedClass.GRAIN ? lost : 0),
                        null,
                        asked -> lost * one * asked.bodyWeight(),
                        Counted.SURE),
                source("L27"));
    }

    /** A pound of any mineral of which they are meant to eat ounces. */
    private DietRow mineral() {
        return row.of(
                "mineral",
                Kind.PRACTICE,
                "mineral",
                Sense.AT_LEAST,
                Unit.GRAM_A_DAY,
                Law.absolute(
                        asked -> 1000 * Unit.OUNCE.toBase(value("L23")),
                        (f, made) -> f.isLooseMineral() ? 1000 : 0,
                        Counted.MEAN),
                source("L23"));
    }

    /** Whether it may only come after other feed, for want of a mixer. */
    static boolean isSecond(Feed feed, Need need, DietOptions options) {
        return NitrateFed.of(feed, need, options).how() == NitrateFed.How.SECOND;
    }

    private DietRow bodyWeightLimit(String id, String name, String limit, double percent, Predicate<FeedClass> counts) {
        return row.of(
                id,
                Kind.PRACTICE,
                name,
                Sense.AT_MOST,
                Unit.KILOGRAM_A_DAY,
                Law.absolute(
                        asked -> percent / 100 * asked.bodyWeight(),
                        (f, made) -> counts.test(f.feedClass()) ? 1 : 0,
                        Counted.MEAN),
                source(limit));
    }

    private DietRow share(String id, String name, Sense sense, String limit, ToDoubleFunction<Feed> percent) {
        return ratio(id, Kind.PRACTICE, name, sense, limit, Unit.PERCENT, percent, asked -> 0, Counted.MEAN);
    }

    private DietRow ratio(
            String id,
            Kind kind,
            String name,
            Sense sense,
            String limit,
            Unit unit,
            ToDoubleFunction<Feed> top,
            ToDoubleFunction<Need> beside,
            Counted counted) {
        return row.of(
                id,
                kind,
                name,
                sense,
                unit,
                new Law(asked -> value(limit), (f, made) -> top.applyAsDouble(f), (f, made) -> 1, beside, counted),
                source(limit));
    }

    /** Straw for dry grown cattle; none from calving on, so a group part calved gets the share that has not. */
    private double strawPercent() {
        return value(strawId()) * (1 - need.milkingShare());
    }

    /** The same of what they eat: those that have calved have no share that straw of the others could be counted to. */
    private DietRow strawShare() {
        return row.of(
                "straw_share",
                Kind.PRACTICE,
                "straw in the ration",
                Sense.AT_MOST,
                Unit.PERCENT,
                new Law(
                        asked -> value("L01e") * (1 - asked.milkingShare()),
                        (f, made) -> f.feedClass() == FeedClass.STRAW ? 100 : 0,
                        (f, made) -> 1,
                        asked -> 0,
                        Counted.MEAN),
                source("L01e"));
    }

    private String strawId() {
        return switch (need.animals()) {
            case MATURE_COW -> "L01";
            case BULL -> "L01d";
            case BRED_HEIFER, FIRST_CALF_HEIFER -> "L01b";
            case GROWING -> "L01c";
        };
    }

    private static String nitrateLimitId(Need need) {
        return need.pregnantShare() > 0 ? "L11" : "L11b";
    }

    /** Of a composite, ppm NO3-N, up to which it may be the day's second feed where nothing mixes. */
    static double secondFeedLimit(Need need) {
        return value(need.pregnantShare() > 0 ? "L11d" : "L11e");
    }

    /** kg of dry matter a day on a usual winter forage: what water is set beside. */
    static double usualIntake(Need need) {
        return usualIntake(need, need.intakeFactor());
    }

    /** @param factor of the weather; 1 in mild weather */
    static double usualIntake(Need need, double factor) {
        return need.intakes(factor).apply(USUAL_NEM).kilograms();
    }

    /** ppm NO3-N of what is eaten. */
    static double nitrateLimit(Need need) {
        return value(nitrateLimitId(need));
    }

    /** Dry matter of grain a day above which cattle on forage should be watched, kg; no limit, a warning. */
    static double grainToWatch(Need need) {
        return value("L02b") / 100 * need.bodyWeight();
    }

    static double value(String id) {
        return VALUES.computeIfAbsent(
                id, one -> TABLE.row("id", one).number("value").orElseThrow());
    }

    static Source source(String id) {
        var row = TABLE.row("id", id);
        var cite = row.text("source");
        if (cite.startsWith("common practice")) {
            return Source.practice("practice limit " + id + ": " + row.text("reason"));
        }
        return switch (row.text("tier")) {
            case "read" -> Source.read(cite);
            case "judgment" -> Source.judgment(row.text("reason") + " (" + cite + ")");
            default -> Source.memory(cite);
        };
    }

    /** The two ends of the calcium to phosphorus range. */
    static double[] calciumToPhosphorus() {
        var ends = TABLE.row("id", "L12").text("value").split(" and ");
        return new double[] {Double.parseDouble(ends[0]), Double.parseDouble(ends[1])};
    }
}
