package haywright.sampling;

import haywright.quantity.Unit;
import haywright.sampling.stock.Layout;
import haywright.sampling.stock.MassRange;
import haywright.sampling.stock.Picks;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The plan for one lot: how many, which ones, with what, how long, how sure, how safely.
 *
 * @param used the choice the plan follows; its rule is printed
 * @param choices every rule's answer beside it, that of its own rule as it is taken; empty with {@code used} for water, which is one bottle a source
 * @param picks which bales; empty where bales are not counted
 * @param mass of the cores of one composite; empty where nothing is cored, and then {@link #grams} holds the grabs
 * @param left what a published source offers and this plan does not, and why
 */
public record SamplingPlan(
        Subject subject,
        Aim aim,
        Choice used,
        List<Choice> choices,
        Optional<Picks> picks,
        Optional<CompositeMass> mass,
        double grams,
        double needGrams,
        Outing outing,
        LotCheck lot,
        List<String> left) {
    private static final PublishedTable DENSITIES = PublishedTable.read(MassRange.class, "densities.csv");
    private static final double BUCKET_M3 = Unit.GALLON.toBase(5);

    public SamplingPlan {
        choices = List.copyOf(choices);
        left = List.copyOf(left);
    }

    public static SamplingPlan of(Subject subject, Aim aim) {
        return of(subject, aim, null);
    }

    /** The plan of a sheet that was made: so many units and increments, whatever a rule would say today. */
    public static SamplingPlan made(Subject subject, Aim aim, Design design) {
        return of(subject, aim, design);
    }

    private static SamplingPlan of(Subject subject, Aim wanted, @Nullable Design made) {
        var aim = wanted.fitted(subject);
        var material = subject.material();
        fits(material, aim.purpose());
        var size = new SampleSize(
                material,
                material.isDrawn() ? subject.units() : 0,
                aim.own() != null && aim.purpose().hasSpread() ? aim.own() : spread(subject, aim),
                aim.halfWidth(),
                aim.confidencePercent(),
                Costs.usual(material));
        var choices = new ArrayList<>(size.sideBySide());
        boolean forNitrate = aim.purpose() == Purpose.NITRATE && material.isCounted();
        if (forNitrate) {
            choices.add(0, size.of(Rule.NITRATE_SHARE));
        }
        double need = aim.purpose().needGrams().orElse(material.take("need_g"));
        var asked = aim.rule() == null || !aim.purpose().hasSpread() ? choices.get(0) : size.of(aim.rule());
        if (forNitrate && asked.design().units() < choices.get(0).design().units()) {
            asked = choices.get(0); // never fewer bales than the published share, whatever was asked for
        }
        var enough = aim.purpose().needGrams().isPresent() ? forMass(subject, size, asked, need) : asked;
        var chosen = made != null ? as(size, asked, made, "") : enough;
        var picks = material.isDrawn() && subject.units() > 0
                ? Optional.of(Picks.of(layout(subject), chosen.design().units(), aim.seed()))
                : Optional.<Picks>empty();
        var used = picks.map(p -> reached(size, chosen, p)).orElse(chosen);
        var mass = material.way() == Material.Way.CORED
                ? Optional.of(composite(subject, used.design().cores(), need))
                : Optional.<CompositeMass>empty();
        return new SamplingPlan(
                subject,
                aim,
                used,
                choices.stream().map(c -> c.rule() == used.rule() ? used : c).toList(),
                picks,
                mass,
                mass.map(m -> m.kg() * 1000).orElseGet(() -> used.design().cores() * material.take("increment_g")),
                need,
                Outing.of(material, used.design()),
                LotCheck.of(material, subject.facts(), aim.purpose()),
                left(material));
    }

    /** A purpose that takes a mass of its own takes as many cores or grabs from each as make it up. */
    private static Choice forMass(Subject subject, SampleSize size, Choice one, double grams) {
        double each = subject.material().way() == Material.Way.CORED
                ? composite(subject, 1, grams).coreKg() * 1000
                : subject.material().take("increment_g");
        var design = one.design();
        int increments = (int) Math.ceil(grams / each / design.units());
        return increments <= design.increments()
                ? one
                : as(
                        size,
                        one,
                        Design.of(design.units(), increments, design.analyses()),
                        " That many each, for the weight the laboratory needs.");
    }

    private static Choice as(SampleSize size, Choice one, Design changed, String why) {
        var precision = new Precision(size.spread(), changed, size.lotUnits(), size.confidencePercent());
        return new Choice(
                one.rule(),
                changed,
                precision,
                size.costs().of(changed),
                precision.halfWidth() <= size.halfWidth(),
                one.why() + why,
                one.source());
    }

    /** When more cannot be reached than can be drawn, the cores are made up in the bales that can. */
    private static Choice reached(SampleSize size, Choice chosen, Picks picks) {
        int drawn = picks.inWalkingOrder().size();
        if (drawn == 0) {
            throw new Refused(
                    "layout",
                    "no bale in reach",
                    "a plan needs at least one bale you can core from the ground",
                    "Open the stack, or sample it as you feed it.");
        }
        var design = chosen.design();
        if (drawn == design.units()) {
            return chosen;
        }
        int increments = (design.cores() + drawn - 1) / drawn;
        return as(
                size,
                chosen,
                Design.of(drawn, increments, design.analyses()),
                " Only " + drawn + " bales can be reached, so " + increments + " cores come from each.");
    }

    private static Spread spread(Subject subject, Aim aim) {
        if (subject.material() == Material.STOCK_WATER) {
            return new Spread(0, 0, 0, 0, false, 0, Source.judgment("one source of water counts as mixed"));
        }
        return !aim.purpose().hasSpread()
                ? new Spread(0, 0, 0, 0, false, 0, Source.judgment("spread within a lot is not published"))
                : Spread.ofBook(subject.cropOrUsual(), aim.analyte());
    }

    private static Layout layout(Subject subject) {
        var layout = subject.layout();
        return layout != null ? layout : new Layout.Loose(subject.units());
    }

    private static CompositeMass composite(Subject subject, int cores, double needGrams) {
        var material = subject.material();
        var own = subject.probe();
        var probe = own != null
                ? own
                : new Probe(Unit.INCH.toBase(material.take("bore_in")), Unit.INCH.toBase(material.take("depth_in")));
        double depth = probe.depthMeters();
        double room = subject.baleDepthMeters();
        if (room > 0 && depth >= room) {
            throw new Refused(
                    "depth",
                    "%.0f in".formatted(Unit.METER.to(Unit.INCH, depth)),
                    "the probe would come out the far side of a %.0f in bale".formatted(Unit.METER.to(Unit.INCH, room)),
                    "Use a shorter probe, or core from the end.");
        }
        return new CompositeMass(
                probe.boreMeters(),
                depth,
                subject.densityKgPerM3() > 0 ? subject.densityKgPerM3() : density(material.name()),
                cores,
                needGrams / 1000,
                BUCKET_M3 * density("CUT_HAY_IN_A_BUCKET"));
    }

    private static double density(String what) {
        return Unit.LB_PER_FT3.toBase(
                DENSITIES.row("what", what).number("central").orElseThrow());
    }

    private static void fits(Material material, Purpose purpose) {
        boolean water = material == Material.STOCK_WATER;
        boolean silage = material == Material.UPRIGHT_SILO
                || material == Material.BUNKER_OR_PILE
                || material == Material.SILAGE_BAG
                || material == Material.BALEAGE;
        if (water != (purpose == Purpose.WATER)) {
            throw new Refused(
                    "purpose",
                    purpose.words() + " of " + material.words(),
                    "water is tested as water, and feed as feed",
                    "Choose the purpose that goes with " + material.words() + ".");
        }
        if (purpose == Purpose.SILAGE_DRY_MATTER && !silage) {
            throw new Refused(
                    "purpose",
                    purpose.words() + " of " + material.words(),
                    "it is for silage and baleage that is being fed",
                    "Choose nutrients: dry matter comes with them.");
        }
    }

    private static List<String> left(Material material) {
        var left = new ArrayList<String>();
        if (!material.method().leftOut().isEmpty()) {
            left.add(material.method().leftOut());
        }
        for (var rule : PublishedRule.of(material)) {
            if (!rule.isOffered()) {
                left.add("%s, %s: %s.".formatted(rule.item(), rule.range(), rule.leftOut()));
            }
        }
        return left;
    }
}
