package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.words.MassWords;
import haywright.app.words.SamplingWords;
import haywright.app.words.SplitWords;
import haywright.quantity.Unit;
import haywright.sampling.Aim;
import haywright.sampling.Choice;
import haywright.sampling.Crop;
import haywright.sampling.Design;
import haywright.sampling.LotFacts;
import haywright.sampling.Material;
import haywright.sampling.Precision;
import haywright.sampling.Probe;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.field.PlotYield;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What to sample, how much of it, and how sure that makes the answer. */
final class SamplingTopics {
    private static final int USUAL_REACH = 2;

    private static final Map<String, String> SPREAD = Map.of(
            "between", "betweenVariance",
            "within", "withinVariance",
            "laboratory", "laboratoryVariance",
            "confidencePercent", "confidence");

    private SamplingTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "sampling-plan",
                    "How many, which ones, with what, how sure and how safely, for one lot.",
                    PlanIn.class,
                    PlanOut.class,
                    """
                    {"material":"large_round_bale","units":100,"rule":"ten_percent","analyte":"cp","half_width":0.5,\
                    "confidence_pct":95,"seed":7}""",
                    SamplingTopics::plan),
            new Topic<>(
                    "sample-precision",
                    "How far a composite's result may lie from the lot's own value.",
                    PrecisionIn.class,
                    PrecisionOut.class,
                    """
                    {"between_variance":0.64,"within_variance":0,"units":20,"lot_units":0,"increments":1,\
                    "laboratory_variance":0.25,"analyses":1,"confidence_pct":95}""",
                    SamplingTopics::precision),
            new Topic<>(
                    "plot-yield",
                    "What a field yields by clipped plots, with its interval and the plots needed.",
                    YieldIn.class,
                    YieldOut.class,
                    """
                    {"masses_g":[40,45,50,55,60],"area_m2":0.25,"dm_pct":35,"confidence_pct":80,"wanted_pct":20,\
                    "usable_pct":50}""",
                    SamplingTopics::yield));

    /** What is known of how the lot came about. */
    record LotIn(
            OptionalDouble tons,
            @Nullable Integer cuttings,
            @Nullable Integer fields,
            OptionalDouble balingHours,
            @Nullable Boolean partRained,
            @Nullable Boolean storedApart,
            @Nullable Boolean tornWrap,
            @Nullable Integer species) {
        LotFacts facts() {
            return new LotFacts(
                    tons.orElse(0),
                    or(cuttings, 1),
                    or(fields, 1),
                    balingHours.orElse(0),
                    Boolean.TRUE.equals(partRained),
                    Boolean.TRUE.equals(storedApart),
                    Boolean.TRUE.equals(tornWrap),
                    or(species, 1));
        }
    }

    record PlanIn(
            Material material,

            @Key(words = "Bales in the lot; left out where nothing can be counted.") @Nullable
            Integer units,

            @Key(words = "Left out, the material's own default.") @Nullable
            Rule rule,

            @Nullable String analyte,

            @Key(words = "Wanted, in the analyte's unit; percent of its value for minerals and nitrate.")
            OptionalDouble halfWidth,

            @Key(value = Unit.PERCENT) OptionalDouble confidence,

            @Nullable Integer seed,

            @Nullable Purpose purpose,

            @Key(words = "What it is made of; decides the book's spread.") @Nullable
            Crop crop,

            @Nullable Integer rows,
            @Nullable Integer columns,
            @Nullable Integer tiers,

            @Key(words = "Tiers that can be cored from the ground.") @Nullable
            Integer reachTiers,

            @Key(
                    value = Unit.INCH,
                    words = "Inside diameter of the probe; with probe_depth, in place of the usual one.")
            OptionalDouble probeBore,

            @Key(value = Unit.INCH, words = "How deep the probe goes in.")
            OptionalDouble probeDepth,

            @Key(words = "Variance from unit to unit; in place of the book's.")
            OptionalDouble betweenVariance,

            OptionalDouble withinVariance,
            OptionalDouble laboratoryVariance,
            @Nullable LotIn lot) {
        PlanIn {
            boolean some = rows != null || columns != null || tiers != null;
            if (some && (rows == null || columns == null || tiers == null)) {
                throw new Refused(
                        "rows",
                        "only some of rows, columns and tiers",
                        "a stack is drawn by all three",
                        "Add the others, or leave all out for loose bales.");
            }
        }

        @Nullable
        Probe probe() {
            return probeBore.isEmpty() || probeDepth.isEmpty()
                    ? null
                    : new Probe(Unit.INCH.toBase(probeBore.getAsDouble()), Unit.INCH.toBase(probeDepth.getAsDouble()));
        }

        Subject subject() {
            int count = or(units, 0);
            var layout = rows == null || columns == null || tiers == null
                    ? null
                    : Layout.Block.open(rows, columns, tiers, count, or(reachTiers, USUAL_REACH));
            return new Subject(
                    material, count, layout, crop, 0, 0, probe(), lot == null ? LotFacts.PLAIN : lot.facts());
        }

        Aim aim() {
            var own = betweenVariance.isPresent()
                    ? Spread.of(betweenVariance.getAsDouble(), withinVariance.orElse(0), laboratoryVariance.orElse(0))
                    : null;
            var usual = material == Material.STOCK_WATER ? Purpose.WATER : Purpose.NUTRIENTS;
            return new Aim(
                    rule,
                    analyte == null ? Aim.USUAL.analyte() : analyte,
                    halfWidth.orElse(Aim.USUAL.halfWidth()),
                    confidence.orElse(Aim.USUAL.confidencePercent()),
                    purpose == null ? usual : purpose,
                    or(seed, 1),
                    own);
        }
    }

    record Pick(int number, int row, int column, int tier, Place.Side side, String words) {}

    record RuleOut(
            Rule rule,
            int units,
            int increments,
            int analyses,
            double halfWidth,
            @Key(Unit.DOLLAR) double cost,
            boolean reached,
            String why,
            String source) {
        static RuleOut of(Choice c) {
            return new RuleOut(
                    c.rule(),
                    c.design().units(),
                    c.design().increments(),
                    c.design().analyses(),
                    c.halfWidth(),
                    c.costUsd(),
                    c.reached(),
                    c.why(),
                    c.source().cite());
        }
    }

    record Warned(String split, String cost) {}

    record PlanOut(
            Rule rule,
            int units,
            int increments,
            int analyses,
            List<Pick> picks,
            @Key(Unit.GRAM) double mass,
            @Key(Unit.GRAM) double need,
            String massWords,
            double halfWidth,
            double halfWidthAcrossLaboratories,

            @Key(words = "True when half-widths are percent of the value.")
            boolean ofValue,

            int unreachable,
            String limits,
            int minutes,
            int batteries,
            List<String> kit,
            List<RuleOut> choices,
            List<Warned> splitTheLot,
            List<String> leftOut,
            List<String> cautions,
            int seed) {}

    private static Answer<PlanOut> plan(PlanIn in) {
        var plan = Sent.as(SPREAD, () -> SamplingPlan.of(in.subject(), in.aim()));
        var used = plan.used();
        var picks = plan.picks();
        var cautions = SamplingWords.cautions(plan);
        var out = new PlanOut(
                used.rule(),
                used.design().units(),
                used.design().increments(),
                used.design().analyses(),
                picks.stream()
                        .flatMap(p -> p.inWalkingOrder().stream())
                        .map(p -> new Pick(
                                p.number(),
                                p.row(),
                                p.column(),
                                p.tier(),
                                p.side(),
                                plan.subject().where(p)))
                        .toList(),
                plan.grams(),
                plan.needGrams(),
                MassWords.of(plan),
                used.halfWidth(),
                used.precision().halfWidthAcrossLaboratories(),
                used.precision().spread().ofValue(),
                picks.map(p -> p.unreachable()).orElse(0),
                picks.map(p -> p.limits()).orElse(""),
                plan.outing().minutes(),
                plan.outing().batteries(),
                SamplingWords.kit(plan),
                plan.choices().stream().map(RuleOut::of).toList(),
                plan.lot().warnings().stream()
                        .map(w -> new Warned(SplitWords.by(w), SplitWords.cost(w)))
                        .toList(),
                plan.left(),
                cautions.stream().map(Caution::words).toList(),
                or(in.seed, 1));
        var workings = new ArrayList<Worked>();
        workings.add(used.precision());
        plan.mass().ifPresent(workings::add);
        return new Answer<>(out, used.reached() || !isOfHalfWidth(used.rule()), workings, cautions);
    }

    /** Only this rule promises a half-width, so only it can fail to reach it. */
    private static boolean isOfHalfWidth(Rule rule) {
        return rule == Rule.CHEAPEST;
    }

    record PrecisionIn(
            double betweenVariance,
            OptionalDouble withinVariance,
            int units,

            @Key(words = "Units in the lot; 0 or left out, no finite correction.") @Nullable
            Integer lotUnits,

            @Nullable Integer increments,
            OptionalDouble laboratoryVariance,
            @Nullable Integer analyses,

            @Key(words = "Separate analyses that between_variance was estimated from; 0 when it comes from a book.")
            @Nullable
            Integer cores,

            @Key(value = Unit.PERCENT) OptionalDouble confidence) {
        Precision precision() {
            var spread = new Spread(
                    betweenVariance,
                    withinVariance.orElse(0),
                    laboratoryVariance.orElse(0),
                    0,
                    false,
                    or(cores, 0),
                    Source.ARITHMETIC);
            var design = Design.of(units, or(increments, 1), or(analyses, 1));
            return new Precision(spread, design, or(lotUnits, 0), confidence.orElse(95));
        }
    }

    record PrecisionOut(double standardError, double halfWidth, double samplingShare) {}

    private static Answer<PrecisionOut> precision(PrecisionIn in) {
        var precision = Sent.as(SPREAD, in::precision);
        return Answer.of(
                new PrecisionOut(precision.standardError(), precision.halfWidth(), precision.samplingShare()),
                precision);
    }

    record YieldIn(
            @Key(value = Unit.GRAM, words = "Each plot as cut.")
            List<Double> masses,

            @Key(value = Unit.SQUARE_METER, words = "Of one frame.")
            double area,

            @Key(value = Unit.PERCENT, name = "dm") OptionalDouble dryMatter,
            @Key(value = Unit.PERCENT) OptionalDouble confidence,

            @Key(value = Unit.PERCENT, words = "Half-width wanted, of the mean.")
            OptionalDouble wanted,

            @Key(value = Unit.PERCENT, words = "Harvest efficiency: the share that is got.")
            OptionalDouble usable) {}

    record YieldOut(
            @Key(name = "kg_dm_per_ha") double mean,
            @Key(name = "low_kg_dm_per_ha") double low,
            @Key(name = "high_kg_dm_per_ha") double high,
            @Key(name = "lb_dm_per_acre") double pounds,
            @Key(name = "usable_kg_dm_per_ha") double usable,
            int plots,
            int plotsNeeded) {}

    private static Answer<YieldOut> yield(YieldIn in) {
        var yield = Sent.as(
                Map.of(
                        "grams", "masses",
                        "areaM2", "area",
                        "dryMatterPercent", "dryMatter",
                        "confidencePercent", "confidence",
                        "wantedPercent", "wanted",
                        "usablePercent", "usable"),
                () -> new PlotYield(
                        in.masses,
                        in.area,
                        in.dryMatter.orElse(100),
                        in.confidence.orElse(80),
                        in.wanted.orElse(20),
                        in.usable.orElse(100)));
        var out = new YieldOut(
                yield.kgPerHa(),
                yield.low(),
                yield.high(),
                Unit.KG_PER_HA.to(Unit.LB_PER_ACRE, yield.kgPerHa()),
                yield.usableKgPerHa(),
                yield.plots(),
                yield.plotsNeeded());
        return new Answer<>(
                out,
                true,
                List.of(yield),
                List.of(new Caution(
                        "Clipping counts standing feed. Cattle choose better than the frame does.",
                        Source.practice("common practice, no source"))));
    }

    private static int or(@Nullable Integer value, int other) {
        return value == null ? other : value;
    }
}
