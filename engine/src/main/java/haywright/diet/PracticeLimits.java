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
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Limits of good practice, from {@code practice_limits.csv}. On by default: without them the cheapest diet is straw and
 * ten pounds of barley.
 */
final class PracticeLimits {
    private static final PublishedTable TABLE = PublishedTable.read(PracticeLimits.class, "practice_limits.csv");

    /** A lot above this is refused however it is diluted: the strictest published do-not-feed class, ppm NO3-N. */
    static final double NITRATE_DO_NOT_FEED = value("L11c");

    /** Mcal of NEm in a kg of forage of 56 % TDN (judgment). */
    private static final double USUAL_NEM = 1.2;

    private final List<Feed> feeds;
    private final Need need;
    private final DietOptions options;

    PracticeLimits(List<Feed> feeds, Need need, DietOptions options) {
        this.feeds = feeds;
        this.need = need;
        this.options = options;
    }

    List<DietRow> rows() {
        var rows = new ArrayList<DietRow>();
        boolean growing = need.animals() == AnimalClass.GROWING;
        rows.add(bodyWeightLimit("straw", "straw", strawId(), strawPercent(), f -> f == FeedClass.STRAW));
        // The published limit is for one feeding; an outfit that grains twice a day may give it twice.
        var grain = growing ? "L03" : "L02";
        rows.add(bodyWeightLimit(
                "grain", "grain", grain, value(grain) * options.grainFeedingsADay(), f -> f == FeedClass.GRAIN));
        var forage = growing ? "L05" : "L04";
        rows.add(share(
                "forage",
                "forage in the ration",
                Sense.AT_LEAST,
                forage,
                f -> f.feedClass().isForage() ? 100 : 0));
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
        rows.removeIf(row -> options.limitsOff().contains(row.id()));
        rows.addAll(dangers()); // these cannot be switched off
        return rows;
    }

    private List<DietRow> dangers() {
        var rows = new ArrayList<DietRow>();
        var nitrate = nitrateLimitId(need);
        rows.add(ratio(
                "nitrate",
                Kind.DANGER,
                options.waterNitrate() > 0
                        ? "nitrate (as NO3-N) in the ration and its water"
                        : "nitrate (as NO3-N) in the ration",
                Sense.AT_MOST,
                nitrate,
                Unit.PPM,
                f -> NitrateFed.of(f, need, options).counted(),
                asked -> options.waterNitrate() * asked.water(),
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
        rows.addAll(new Toxins(feeds, need).rows());
        return rows;
    }

    /** Whether it may only come after other feed, for want of a mixer. */
    static boolean isSecond(Feed feed, Need need, DietOptions options) {
        return NitrateFed.of(feed, need, options).how() == NitrateFed.How.SECOND;
    }

    private DietRow bodyWeightLimit(String id, String name, String limit, double percent, Predicate<FeedClass> counts) {
        return DietRow.of(
                new RowId.Nutrient(id),
                Kind.PRACTICE,
                name,
                Sense.AT_MOST,
                need,
                Unit.KILOGRAM_A_DAY,
                Law.absolute(
                        asked -> percent / 100 * asked.bodyWeight(),
                        (f, made) -> counts.test(f.feedClass()) ? 1 : 0,
                        Counted.MEAN),
                feeds,
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
        return DietRow.of(
                new RowId.Nutrient(id),
                kind,
                name,
                sense,
                need,
                unit,
                new Law(asked -> value(limit), (f, made) -> top.applyAsDouble(f), (f, made) -> 1, beside, counted),
                feeds,
                source(limit));
    }

    /** Straw for dry grown cattle; none from calving on, so a group part calved gets the share that has not. */
    private double strawPercent() {
        return value(strawId()) * (1 - need.milkingShare());
    }

    private String strawId() {
        return switch (need.animals()) {
            case MATURE_COW, BULL -> "L01";
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
        return need.intake(USUAL_NEM).kilograms();
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
        return TABLE.row("id", id).number("value").orElseThrow();
    }

    static Source source(String id) {
        var row = TABLE.row("id", id);
        var cite = row.text("source");
        if (cite.startsWith("common practice")) {
            return Source.practice("practice limit " + id + ": " + row.text("reason"));
        }
        return row.text("tier").equals("read") ? Source.read(cite) : Source.memory(cite);
    }

    /** The two ends of the calcium to phosphorus range. */
    static double[] calciumToPhosphorus() {
        var ends = TABLE.row("id", "L12").text("value").split(" and ");
        return new double[] {Double.parseDouble(ends[0]), Double.parseDouble(ends[1])};
    }
}
