package haywright.sampling.stock;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.List;

/**
 * The size of a bale and what that makes of its weight.
 *
 * <pre>
 * round     V = π/4·D²·W
 * square    V = L·W·H
 * density = weight/V
 * </pre>
 *
 * "5 × 6" is width by diameter here; it is often said the other way, so ask.
 *
 * @see "Banta, Texas A and M AgriLife Extension, E-319, Bale weight: how important is it?"
 */
public sealed interface BaleSize extends Worked {
    /** m³ */
    double volume();

    /** kg/m³ of a bale of this size that weighs so much. */
    default double density(double kilograms) {
        if (!(kilograms > 0 && Double.isFinite(kilograms))) {
            throw new Refused("weight", kilograms + " kg", "a bale weighs more than 0", "Weigh 5 to 10.");
        }
        return kilograms / volume();
    }

    /** kg of a bale of this size at the density of another. */
    default double kilogramsAt(double densityKgPerM3) {
        return volume() * densityKgPerM3;
    }

    record Round(double widthMeters, double diameterMeters) implements BaleSize {
        public Round {
            check(List.of("width", "diameter"), List.of(widthMeters, diameterMeters));
        }

        @Override
        public double volume() {
            return Math.PI / 4 * diameterMeters * diameterMeters * widthMeters;
        }

        @Override
        public List<Line> lines() {
            return List.of(Line.of(
                    "V",
                    "pi/4·D^2·W",
                    volume(),
                    Unit.CUBIC_METER,
                    Source.ARITHMETIC,
                    Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                    Input.typed("D", diameterMeters, Unit.METER),
                    Input.typed("W", widthMeters, Unit.METER)));
        }
    }

    record Square(double lengthMeters, double widthMeters, double heightMeters) implements BaleSize {
        public Square {
            check(List.of("length", "width", "height"), List.of(lengthMeters, widthMeters, heightMeters));
        }

        @Override
        public double volume() {
            return lengthMeters * widthMeters * heightMeters;
        }

        @Override
        public List<Line> lines() {
            return List.of(Line.of(
                    "V",
                    "L·W·H",
                    volume(),
                    Unit.CUBIC_METER,
                    Source.ARITHMETIC,
                    Input.typed("L", lengthMeters, Unit.METER),
                    Input.typed("W", widthMeters, Unit.METER),
                    Input.typed("H", heightMeters, Unit.METER)));
        }
    }

    /** Of a round bale, the share of the volume that lies in an outer shell so deep: 0 to 1. */
    static double outerShare(double diameter, double depth) {
        if (!(depth >= 0 && 2 * depth <= diameter)) {
            throw new Refused(
                    "depth",
                    String.valueOf(depth),
                    "the weathered layer is at most half the bale, " + diameter / 2,
                    "Check that both are in the same unit.");
        }
        return 1 - Math.pow((diameter - 2 * depth) / diameter, 2);
    }

    private static void check(List<String> fields, List<Double> sizes) {
        var problems = new ArrayList<Problem>();
        for (int i = 0; i < fields.size(); i++) {
            double size = sizes.get(i);
            if (!(size > 0.1 && size < 5)) {
                problems.add(new Problem(
                        fields.get(i),
                        "%.2f m (%.1f ft)".formatted(size, Unit.METER.to(Unit.FOOT, size)),
                        "a bale is between 0.1 and 5 m (4 in and 16 ft) each way",
                        "Check the unit."));
            }
        }
        Refused.unlessEmpty(problems);
    }
}
