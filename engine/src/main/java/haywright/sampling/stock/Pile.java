package haywright.sampling.stock;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A drive-over silage pile with a flat top: a prismatoid.
 *
 * <pre>
 * w = W − 2·slope·H,  l = L − 2·slope·H
 * V = H/6·(W·L + w·l + (W + w)·(L + l))
 * </pre>
 *
 * @param length, width on the ground
 * @param slope run of the sides to one of rise; 3 is the safe slope to drive on
 * @param densityDryMatter of dry matter
 * @param dryMatterPercent of the feed as it lies
 */
public record Pile(
        Quantity length,
        Quantity width,
        Quantity height,
        double slope,
        Quantity densityDryMatter,
        double dryMatterPercent)
        implements Stock {
    public Pile {
        Sizes.lengths(List.of("length", "width", "height"), List.of(length, width, height));
        Refused.unlessOfKind(Kind.BULK_DENSITY, "densityDryMatter", densityDryMatter);
        var problems = new ArrayList<Problem>();
        Sizes.silage(densityDryMatter, dryMatterPercent, problems);
        if (!(slope >= 0)) {
            problems.add(new Problem(
                    "slope", slope + " to 1", "sides slope outward, 0 or more to one up", "3 is safe to drive on."));
        } else if (2 * slope * height.base() > Math.min(width.base(), length.base())) {
            problems.add(new Problem(
                    "slope",
                    slope + " to 1",
                    "with those sides the pile would peak below its height",
                    "Check height, width and slope."));
        }
        Refused.unlessEmpty(problems);
    }

    /** m³ */
    public double volume() {
        double h = height.base();
        double top = width.base() - 2 * slope * h;
        double along = length.base() - 2 * slope * h;
        return h / 6 * (width.base() * length.base() + top * along + (width.base() + top) * (length.base() + along));
    }

    @Override
    public OptionalDouble alongFace() {
        return OptionalDouble.of(length.base());
    }

    @Override
    public OptionalDouble dryMatter() {
        return OptionalDouble.of(dryMatterPercent);
    }

    @Override
    public List<Line> lines() {
        double inward = 2 * slope * height.base();
        var lines = new ArrayList<Line>();
        lines.add(Line.of(
                "w",
                "W − 2·slope·H",
                width.base() - inward,
                Unit.METER,
                Source.ARITHMETIC,
                Sizes.typed("W", width, Unit.METER),
                Input.typed("slope", slope, Unit.NONE),
                Sizes.typed("H", height, Unit.METER)));
        lines.add(Line.of(
                "l",
                "L − 2·slope·H",
                length.base() - inward,
                Unit.METER,
                Source.ARITHMETIC,
                Sizes.typed("L", length, Unit.METER),
                Input.typed("slope", slope, Unit.NONE),
                Sizes.typed("H", height, Unit.METER)));
        lines.addAll(Sizes.packed(
                Line.of(
                        "volume",
                        "H/6·(W·L + w·l + (W + w)·(L + l))",
                        volume(),
                        Unit.CUBIC_METER,
                        Source.ARITHMETIC,
                        Sizes.typed("H", height, Unit.METER),
                        Sizes.typed("W", width, Unit.METER),
                        Sizes.typed("L", length, Unit.METER)),
                densityDryMatter,
                dryMatterPercent));
        return List.copyOf(lines);
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(MassRange.ofDensity("BUNKER_OR_PILE", asFedKg().orElseThrow(), densityDryMatter));
    }
}
