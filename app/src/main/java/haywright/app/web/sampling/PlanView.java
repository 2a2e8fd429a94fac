package haywright.app.web.sampling;

import haywright.app.report.picture.StackDrawing;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.words.Orders;
import haywright.app.words.SamplingWords;
import haywright.app.words.Show;
import haywright.outlook.LotSubject;
import haywright.ranch.Lot;
import haywright.sampling.Choice;
import haywright.sampling.Material;
import haywright.sampling.PublishedRule;
import haywright.sampling.Purpose;
import haywright.sampling.Rule;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Spread;
import haywright.sampling.Subject;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.Place;
import haywright.sampling.stock.Stock;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The plan of a lot, or of what is no lot, as its page shows it.
 *
 * @param what its name
 * @param at path of the page
 * @param plan null while something asked for is wrong
 * @param standingIn the field it stands in; null for what is stacked or stored
 */
public record PlanView(
        Form form,
        String what,
        Subject subject,
        boolean isLot,
        String at,
        @Nullable SamplingPlan plan,
        @Nullable UUID standingIn) {
    private static final List<String> HOW_MANY = List.of("units", "percent", "units_per_25_to_30", "units_per_400");

    /** @param used whether the plan follows this rule */
    public record Row(Choice choice, boolean used, String take, String sure, String cost) {}

    static PlanView ofLot(Form form, Lot lot, String at, Optional<SamplingPlan> plan) {
        return new PlanView(
                form,
                lot.name(),
                LotSubject.of(lot),
                true,
                at,
                plan.orElse(null),
                lot.stock() instanceof Stock.Standing s ? s.field() : null);
    }

    static PlanView ofOther(Form form, Subject subject, String at, Optional<SamplingPlan> plan) {
        return new PlanView(form, subject.material().words(), subject, false, at, plan.orElse(null), null);
    }

    public Material material() {
        return subject.material();
    }

    public String title() {
        return Show.capital(what);
    }

    /** "Take 20 bales, one core each." */
    public String headline(SamplingPlan plan) {
        if (material() == Material.STOCK_WATER) {
            return "Fill one bottle at each place cattle drink.";
        }
        var design = plan.used().design();
        var say = "Take %s.".formatted(Orders.of(plan).amount(material(), design.units(), design.increments()));
        return design.analyses() == 1 ? say : say + " Have %d analyses made.".formatted(design.analyses());
    }

    public List<Row> rows(SamplingPlan plan) {
        return plan.choices().stream()
                .map(c -> new Row(
                        c,
                        c.rule() == plan.used().rule(),
                        "%,d × %d%s"
                                .formatted(
                                        c.design().units(),
                                        c.design().increments(),
                                        c.design().analyses() == 1
                                                ? ""
                                                : ", " + c.design().analyses() + " analyses"),
                        sure(c),
                        Show.dollars(c.costUsd())))
                .toList();
    }

    /** "± 0.62 points", or percent of the value. */
    public String sure(Choice choice) {
        return off(choice.halfWidth(), choice);
    }

    private static String off(double halfWidth, Choice choice) {
        var figure = Show.significant(halfWidth, 2);
        var unit = choice.precision().spread().ofValue()
                ? " % of the value"
                : figure.equals("1") || figure.equals("1.0") ? " point" : " points";
        return "± " + figure + unit;
    }

    /** What the one rule that promises a half-width was asked for; the others promise none. */
    public String askedFor(SamplingPlan plan) {
        return "The last aims for %s, %s; the others are fixed counts."
                .formatted(off(plan.aim().halfWidth(), plan.used()), howOften(plan));
    }

    public boolean isOutOfReach(Choice choice) {
        return choice.rule() == Rule.CHEAPEST && !choice.reached();
    }

    /** Results of single cores as they were read; empty where the book's spread is used. */
    public String own(SamplingPlan plan) {
        var spread = plan.aim().own();
        return spread == null
                ? ""
                : "Your own %s (%s) replace the book’s spread."
                        .formatted(
                                Show.count(spread.cores(), "core"),
                                Numbers.read(form, PlanForm.OWN, "").stream()
                                        .map(r -> Show.significant(r, 6))
                                        .collect(Collectors.joining(", ")));
    }

    public String acrossLaboratories(SamplingPlan plan) {
        return off(plan.used().precision().halfWidthAcrossLaboratories(), plan.used());
    }

    /** In counts of 20 where it comes out even: "19 times in 20". */
    public String howOften(SamplingPlan plan) {
        double twentieths = plan.aim().confidencePercent() / 5;
        return twentieths == Math.rint(twentieths)
                ? "%.0f times in 20".formatted(twentieths)
                : Show.significant(plan.aim().confidencePercent(), 4) + " times in 100";
    }

    public String analyte(SamplingPlan plan) {
        return name(plan.aim().analyte());
    }

    static String name(String analyte) {
        return switch (analyte) {
            case "dm" -> "dry matter";
            case "cp" -> "crude protein";
            case "ash" -> "ash";
            case "ca" -> "calcium";
            case "p" -> "phosphorus";
            case "mg" -> "magnesium";
            case "k" -> "potassium";
            case "s" -> "sulfur";
            case "no3n" -> "nitrate";
            default -> analyte.toUpperCase(Locale.ROOT);
        };
    }

    public String whyDefault(SamplingPlan plan) {
        return SamplingWords.whyRule(material(), plan.aim().rule());
    }

    /** A picture of the stack; empty where nothing is stacked or it would be too small to read. */
    public String drawing(SamplingPlan plan) {
        var layout = layout(plan.subject());
        return layout.map(l -> new StackDrawing(l, numbers(plan)).svg()).orElse("");
    }

    private static Optional<Layout> layout(Subject subject) {
        return Optional.ofNullable(subject.layout());
    }

    private static List<Integer> numbers(SamplingPlan plan) {
        return plan.picks()
                .map(p -> p.inWalkingOrder().stream().map(Place::number).toList())
                .orElse(List.of());
    }

    /** Published numbers on how many, other than the one used: conflicts stay in sight. */
    public List<PublishedRule> published() {
        return published(true);
    }

    /** Published numbers on tool, depth, mass and time; where sources differ, each stands. */
    public List<PublishedRule> publishedOtherwise() {
        return published(false);
    }

    private List<PublishedRule> published(boolean howMany) {
        return PublishedRule.of(material()).stream()
                .filter(r -> r.isOffered() && HOW_MANY.contains(r.key()) == howMany)
                .toList();
    }

    public List<Option> rules() {
        return Arrays.stream(Rule.values())
                .filter(r -> switch (r) {
                    case TEN_PERCENT, TWENTY_CORES -> material().isCounted();
                    case NITRATE_SHARE -> false; // it comes with the purpose, not by choice
                    case PUBLISHED -> !material().isCounted();
                    default -> true;
                })
                .map(r -> new Option(Form.id(r), r.words()))
                .toList();
    }

    public List<Option> purposes() {
        return Arrays.stream(Purpose.values())
                .filter(p -> PlanForm.fits(material(), p))
                .map(p -> new Option(Form.id(p), p.words()))
                .toList();
    }

    public List<Option> analytes() {
        return Arrays.stream(Spread.analytes(subject.cropOrUsual()).split(", "))
                .map(a -> new Option(a, name(a)))
                .toList();
    }

    /** Everything asked for, so that the sheet is made of this very plan. */
    public Map<String, String> asked() {
        var asked = new LinkedHashMap<String, String>();
        for (var ask : PlanForm.ALL) {
            if (!form.value(ask).isBlank()) {
                asked.put(ask.name(), form.value(ask));
            }
        }
        return asked;
    }

    /** Where a lot is described. */
    public String lotAt() {
        return at.substring(at.indexOf("lots/"));
    }

    /** The walk whose stops are the plots, from the ranch; empty for what stands in no field. */
    public String walk(SamplingPlan plan) {
        return standingIn == null
                ? ""
                : "take/fields/%s?stops=%d&seed=%d"
                        .formatted(
                                standingIn,
                                plan.used().design().units(),
                                plan.aim().seed());
    }

    public boolean canBeWeighed() {
        return isLot && material() != Material.STANDING_FORAGE;
    }

    public boolean isStacked() {
        return subject.layout() instanceof Layout.Block;
    }
}
