package haywright.sampling.stock;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Silage in a tower, settled; what was taken from the top is capacity of that depth less.
 *
 * <pre>
 * density = 8.0 + 0.15·depth      lb of dry matter a cubic foot, corn silage, depth in feet
 * density = 5.90 + 0.1·depth      haylage
 * dry matter = π/4·D²·depth·density, of the settled depth less that of the depth fed
 * </pre>
 *
 * @param depth of settled silage when full
 * @param fed depth already taken from the top; 0 when none
 * @see "Iowa State University, Ag Decision Maker C6-82 (prints tons for the density: pounds are meant)"
 */
public record UprightSilo(Filling filling, Quantity diameter, Quantity depth, Quantity fed, double dryMatterPercent)
        implements Stock {
    public enum Filling {
        CORN_SILAGE(8.0, 0.15),
        HAYLAGE(5.90, 0.1);

        private final double atTop;
        private final double perFoot;

        Filling(double atTop, double perFoot) {
            this.atTop = atTop;
            this.perFoot = perFoot;
        }
    }

    private static final Source RULE = Source.read("Iowa State University, Ag Decision Maker C6-82");
    private static final double DOUBT = 0.15;

    public UprightSilo {
        Sizes.lengths(List.of("diameter", "depth"), List.of(diameter, depth));
        Refused.unlessOfKind(Kind.LENGTH, "fed", fed);
        var problems = new ArrayList<Problem>();
        if (!(fed.base() >= 0 && fed.base() <= depth.base())) {
            problems.add(new Problem(
                    "fed", fed.asTyped(), "more fed than there was", "Measure down from the old level; 0 if none."));
        }
        Sizes.dryMatter(dryMatterPercent, problems);
        Refused.unlessEmpty(problems);
    }

    /** kg of dry matter in a tower of this diameter filled so many feet deep. */
    private double dryMatterKg(double feet) {
        double d = diameter.in(Unit.FOOT);
        return Unit.POUND.toBase(Math.PI / 4 * d * d * feet * (filling.atTop + filling.perFoot * feet));
    }

    public double dryMatterKg() {
        return dryMatterKg(depth.in(Unit.FOOT)) - dryMatterKg(fed.in(Unit.FOOT));
    }

    @Override
    public OptionalDouble dryMatter() {
        return OptionalDouble.of(dryMatterPercent);
    }

    @Override
    public List<Line> lines() {
        var whole = capacity("full", depth);
        var gone = capacity("gone", fed);
        return List.of(
                whole,
                gone,
                Line.of(
                        "mass",
                        "(full − gone)·100/dm",
                        dryMatterKg() * 100 / dryMatterPercent,
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        Input.typed("dm", dryMatterPercent, Unit.PERCENT)));
    }

    private Line capacity(String symbol, Quantity deep) {
        double feet = deep.in(Unit.FOOT);
        return Line.of(
                symbol,
                "pi/4·D^2·depth·(top + more·depth)·lb",
                dryMatterKg(feet),
                Unit.KILOGRAM,
                RULE,
                Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                Input.typed("D", diameter.in(Unit.FOOT), Unit.FOOT),
                new Input("depth", feet, Unit.FOOT, Origin.TYPED),
                Input.published("top", filling.atTop, Unit.LB_PER_FT3, RULE),
                Input.published("more", filling.perFoot, Unit.NONE, RULE),
                Input.published("lb", Unit.POUND.toBase(1), Unit.KILOGRAM, Source.ARITHMETIC));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(
                MassRange.judged(asFedKg().orElseThrow(), DOUBT, "Tower tables are right to about 15 in 100."));
    }
}
