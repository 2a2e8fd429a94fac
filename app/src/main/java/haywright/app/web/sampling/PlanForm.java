package haywright.app.web.sampling;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.sampling.Aim;
import haywright.sampling.Crop;
import haywright.sampling.Material;
import haywright.sampling.Probe;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What a plan is asked for: the aim, what of the stack can be reached, and whether it is one lot. */
public final class PlanForm {
    public static final Ask WHAT = Ask.text("what", "What you sample", "As it should read on the sheet.");
    public static final Ask RULE = Ask.choice("rule", "Rule for how many", "");
    public static final Ask PURPOSE = Ask.choice("purpose", "Test for", "");
    public static final Ask ANALYTE = Ask.choice("analyte", "Accuracy in", "");
    public static final Ask HALF_WIDTH = Ask.number(
            "halfWidth",
            "Accuracy, plus or minus",
            "In points: 0.5 of protein is usual. Minerals and nitrate: % of the value.");
    public static final Ask CONFIDENCE =
            Ask.amount("confidencePercent", "Sureness", Unit.PERCENT, "95: right 19 times in 20.");
    public static final Ask SEED = Ask.number("seed", "Pick set", "Another number picks other bales.");
    public static final Ask OWN = Ask.text(
            "results",
            "Your own single cores",
            "Results of at least three cores of this lot, each tested alone, with spaces between. They replace the"
                    + " book’s spread.");
    public static final Ask REACH =
            Ask.number("reach", "Tiers you can core from the ground", "No ladder against a stack.");
    public static final Ask NO_RIGHT = Ask.choice("noRight", "Can’t reach the right side", "");
    public static final Ask NO_BACK = Ask.choice("noBack", "Can’t reach the back", "");
    public static final Ask NO_LEFT = Ask.choice("noLeft", "Can’t reach the left side", "");
    public static final Ask BORE =
            Ask.amount("bore", "Probe, inside diameter", Unit.INCH, "5/8 in is 0.625. Empty: the usual one.");
    public static final Ask DEPTH = Ask.amount("depth", "Probe depth", Unit.INCH, "12 to 24 is usual.");
    public static final Ask BALE_DEPTH =
            Ask.amount("baleDepth", "Bale thickness there", Unit.INCH, "From where the probe goes in to the far side.");

    private static final double LEAST_SURE = 50;
    private static final int FEWEST_CORES = 3;

    static final List<Ask> ALL = List.of(
            WHAT,
            RULE,
            PURPOSE,
            ANALYTE,
            HALF_WIDTH,
            CONFIDENCE,
            SEED,
            OWN,
            BORE,
            DEPTH,
            BALE_DEPTH,
            REACH,
            NO_RIGHT,
            NO_BACK,
            NO_LEFT);

    private PlanForm() {}

    /** @param danger whether its nitrate is a danger until it is tested */
    static Map<String, String> usual(Subject subject, boolean danger) {
        var usual = new LinkedHashMap<String, String>();
        var material = subject.material();
        var aim = Aim.usual(subject, danger);
        usual.put(PURPOSE.name(), Form.id(aim.purpose()));
        usual.put(WHAT.name(), material.words());
        usual.put(ANALYTE.name(), aim.analyte());
        usual.put(HALF_WIDTH.name(), Show.significant(aim.halfWidth(), 4));
        usual.put(CONFIDENCE.name(), Show.significant(aim.confidencePercent(), 4));
        usual.put(SEED.name(), "1");
        if (subject.layout() instanceof Layout.Block block) {
            usual.put(REACH.name(), String.valueOf(Math.min(block.reachTiers(), block.tiers())));
        } else if (subject.layout() instanceof Layout.Pyramid pyramid) {
            usual.put(REACH.name(), String.valueOf(pyramid.reachTiers()));
        }
        return usual;
    }

    /** The plan, or nothing if anything asked for is wrong; then the form says what. */
    static Optional<SamplingPlan> read(Form form, Subject whole) {
        var purpose = form.choice(PURPOSE, Purpose.class, "Choose one.");
        var rule = form.isEmpty(RULE) ? null : form.choice(RULE, Rule.class, "Choose one, or leave the default.");
        var analyte = form.text(ANALYTE, "Protein is usual.");
        double halfWidth = form.number(HALF_WIDTH, "0.5 of protein is usual.");
        double confidence = form.number(CONFIDENCE, "95 is usual.");
        if (form.problem(CONFIDENCE).isEmpty() && confidence < LEAST_SURE) {
            form.refuse(
                    CONFIDENCE.name(),
                    form.value(CONFIDENCE).strip(),
                    "at 50 or less the answer is a coin toss",
                    confidence * 100 >= LEAST_SURE && confidence < 1
                            ? "Did you mean %s?".formatted(Show.significant(confidence * 100, 4))
                            : "95 is usual.");
        }
        var crop = whole.cropOrUsual();
        if (form.problem(HALF_WIDTH).isEmpty()
                && whole.material() != Material.STOCK_WATER
                && halfWidth > 0
                && halfWidth < 1
                && isOfValue(crop, analyte)) {
            form.refuse(
                    HALF_WIDTH.name(),
                    form.value(HALF_WIDTH).strip(),
                    "this is in % of the value, and no laboratory repeats to under 1",
                    "10 is usual: plus or minus a tenth.");
        }
        if (!fits(whole.material(), purpose)) {
            form.refuse(
                    PURPOSE.name(),
                    purpose.words(),
                    "it is not sampled from " + whole.material().words(),
                    purpose == Purpose.PRUSSIC_ACID
                            ? "The poison leaves plants as they dry or ferment: take it fresh, uncut."
                            : "Choose one from the list.");
        }
        int seed = form.count(SEED, "1 will do.");
        var reach = form.maybeCount(REACH);
        var bore = form.maybeQuantity(BORE);
        var depth = form.maybeQuantity(DEPTH);
        var baleDepth = form.maybeQuantity(BALE_DEPTH);
        if ((bore == null) != (depth == null)) {
            form.refuse(
                    (bore == null ? BORE : DEPTH).name(),
                    "",
                    "a probe needs a diameter and a depth",
                    "Enter both, or clear both.");
        }
        var probe = bore == null || depth == null ? null : new Probe(bore.base(), depth.base());
        var own = form.isEmpty(OWN) ? Optional.<List<Double>>empty() : Optional.of(own(form, analyte));
        return form.build(() -> SamplingPlan.of(
                subject(whole, form, reach, probe, baleDepth == null ? 0 : baleDepth.base()),
                new Aim(
                        rule,
                        analyte,
                        halfWidth,
                        confidence,
                        purpose,
                        seed,
                        own.map(results -> Spread.ofOwnCores(results, Spread.ofBook(whole.cropOrUsual(), analyte)))
                                .orElse(null))));
    }

    /** Single cores as they were typed; a lone comma may be a point or a blank, so it is asked about. */
    private static List<Double> own(Form form, String analyte) {
        for (var word : form.text(OWN).split("[\\s;]+")) {
            if (word.matches("[0-9]{1,6},[0-9]{1,6}")) {
                form.refuse(
                        OWN.name(),
                        word,
                        "the comma could be a decimal point or between two numbers",
                        "Write %s for one number, or put a space between two.".formatted(word.replace(',', '.')));
                return List.of();
            }
        }
        var results = Numbers.read(form, OWN, "Enter at least three results.");
        if (form.problem(OWN).isEmpty()) {
            if (results.size() < FEWEST_CORES) {
                form.refuse(
                        OWN.name(),
                        Show.count(results.size(), "core"),
                        "it takes three single cores to see how a lot spreads",
                        "Enter at least three, or leave it empty for the book’s spread.");
            }
            // nitrate may be entered parts per million
            results.stream()
                    .filter(r -> r > 100 && !analyte.equals("no3n"))
                    .findFirst()
                    .ifPresent(r -> form.refuse(
                            OWN.name(),
                            Show.significant(r, 6),
                            "nothing is more than 100 %",
                            "Check the decimal point."));
        }
        return results;
    }

    /** Whether the book has its spread in percent of the value; what the book does not have is refused elsewhere. */
    static boolean isOfValue(Crop crop, String analyte) {
        return List.of(Spread.analytes(crop).split(", ")).contains(analyte)
                && Spread.ofBook(crop, analyte).ofValue();
    }

    /**
     * What was asked for, with what follows from its purpose: one that is about nitrate or dry matter is counted for that,
     * whatever the other boxes were left at.
     */
    static Map<String, List<String>> fitted(Map<String, List<String>> query, Subject subject) {
        var fitted = new LinkedHashMap<>(query);
        var purpose = query.getOrDefault(PURPOSE.name(), List.of("")).get(0);
        var analyte = query.getOrDefault(ANALYTE.name(), List.of("")).get(0);
        var known = List.of(Spread.analytes(subject.cropOrUsual()).split(", "));
        if (purpose.equals(Purpose.NITRATE.id()) && !analyte.equals("no3n") && known.contains("no3n")) {
            fitted.put(ANALYTE.name(), List.of("no3n"));
            fitted.put(HALF_WIDTH.name(), List.of("20"));
        } else if (purpose.equals(Purpose.SILAGE_DRY_MATTER.id()) && !analyte.equals("dm") && known.contains("dm")) {
            fitted.put(ANALYTE.name(), List.of("dm"));
            fitted.put(HALF_WIDTH.name(), List.of("1"));
        }
        return fitted;
    }

    private static Subject subject(
            Subject whole, Form form, @Nullable Integer reach, @Nullable Probe probe, double baleDepth) {
        var layout = whole.layout();
        if (layout instanceof Layout.Block b) {
            var open = EnumSet.of(Place.Side.FRONT, Place.Side.RIGHT, Place.Side.BACK, Place.Side.LEFT);
            if (form.isTicked(NO_RIGHT)) {
                open.remove(Place.Side.RIGHT);
            }
            if (form.isTicked(NO_BACK)) {
                open.remove(Place.Side.BACK);
            }
            if (form.isTicked(NO_LEFT)) {
                open.remove(Place.Side.LEFT);
            }
            layout = new Layout.Block(
                    b.rows(), b.columns(), b.tiers(), b.count(), reach == null ? b.reachTiers() : reach, open);
        } else if (layout instanceof Layout.Pyramid p && reach != null) {
            layout = new Layout.Pyramid(p.base(), p.tiers(), p.length(), p.count(), reach);
        }
        return new Subject(
                whole.material(),
                whole.units(),
                layout,
                whole.crop(),
                whole.densityKgPerM3(),
                baleDepth,
                probe,
                whole.facts());
    }

    /** What can be asked of a material: water is tested as water alone. */
    static boolean fits(Material material, Purpose purpose) {
        if (material == Material.STOCK_WATER) {
            return purpose == Purpose.WATER;
        }
        return switch (purpose) {
            case WATER -> false;
            case PRUSSIC_ACID ->
                material == Material.STANDING_FORAGE
                        || material == Material.GRAZED_PASTURE
                        || material == Material.CHOPPER_WAGON;
            case SILAGE_DRY_MATTER ->
                material == Material.BUNKER_OR_PILE
                        || material == Material.SILAGE_BAG
                        || material == Material.UPRIGHT_SILO
                        || material == Material.BALEAGE;
            default -> true;
        };
    }
}
