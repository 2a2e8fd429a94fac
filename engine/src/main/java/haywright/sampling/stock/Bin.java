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

/**
 * Grain or pellets in a round bin, measured from outside or through the hatch.
 *
 * <pre>
 * depth = wall + cone/3
 * bushels = 0.8·π/4·D²·depth       D and depth in feet
 * </pre>
 *
 * @param wall depth at the wall
 * @param cone height of the heap above the wall's level; 0 where it is level
 * @param bushelWeight what a bushel weighs: corn 56 lb, barley 48
 * @see "Iowa State University, Ag Decision Maker C6-82"
 */
public record Bin(Quantity diameter, Quantity wall, Quantity cone, Quantity bushelWeight) implements Stock {
    private static final Source RULE = Source.read("Iowa State University, Ag Decision Maker C6-82: 0.8 bushel a ft³");
    private static final double DOUBT = 0.05;

    public Bin {
        Sizes.lengths(List.of("diameter", "wall"), List.of(diameter, wall));
        Refused.unlessOfKind(Kind.LENGTH, "cone", cone);
        Refused.unlessOfKind(Kind.MASS, "bushelWeight", bushelWeight);
        var problems = new ArrayList<Problem>();
        Sizes.positive("bushelWeight", bushelWeight, "a bushel weighs more than 0", "Corn is 56 lb.", problems);
        if (!(cone.base() >= 0)) {
            problems.add(new Problem("cone", cone.asTyped(), "a heap is 0 or more high", "0 where it is level."));
        }
        Refused.unlessEmpty(problems);
    }

    public double bushels() {
        double d = diameter.in(Unit.FOOT);
        return 0.8 * Math.PI / 4 * d * d * (wall.in(Unit.FOOT) + cone.in(Unit.FOOT) / 3);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "bushels",
                        "0.8·pi/4·D^2·(wall + cone/3)",
                        bushels(),
                        Unit.NONE,
                        RULE,
                        Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                        Input.typed("D", diameter.in(Unit.FOOT), Unit.FOOT),
                        Input.typed("wall", wall.in(Unit.FOOT), Unit.FOOT),
                        Input.typed("cone", cone.in(Unit.FOOT), Unit.FOOT)),
                Line.of(
                        "mass",
                        "bushels·w",
                        bushels() * bushelWeight.base(),
                        Unit.KILOGRAM,
                        Source.ARITHMETIC,
                        Sizes.typed("w", bushelWeight, Unit.KILOGRAM)));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(MassRange.judged(
                asFedKg().orElseThrow(), DOUBT, "Settling and fines change a bin's weight about 5 in 100."));
    }
}
