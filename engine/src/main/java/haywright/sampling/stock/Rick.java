package haywright.sampling.stock;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;
import java.util.Optional;

/**
 * A rick of hay with straight sides and a gable.
 *
 * <pre>
 * V = L·W·(eaves + top/3)
 * </pre>
 *
 * The printed rule takes a third of the gable; a gable of straight slopes is a half, which is the upper end of the range.
 *
 * @param eaves from the ground to the eaves
 * @param top from the eaves to the ridge
 * @see "Salt, Rule for ascertaining the weight of hay stacks, 1846"
 */
public record Rick(Quantity length, Quantity width, Quantity eaves, Quantity top) implements Stock {
    private static final Source RULE = Source.read("Salt, Rule for ascertaining the weight of hay stacks, 1846");

    public Rick {
        Sizes.lengths(List.of("length", "width", "eaves", "top"), List.of(length, width, eaves, top));
    }

    /** m³ */
    public double volume() {
        return volume(3);
    }

    private double volume(double gable) {
        return length.base() * width.base() * (eaves.base() + top.base() / gable);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "V",
                        "L·W·(eaves + top/3)",
                        volume(),
                        Unit.CUBIC_METER,
                        RULE,
                        Sizes.typed("L", length, Unit.METER),
                        Sizes.typed("W", width, Unit.METER),
                        Sizes.typed("eaves", eaves, Unit.METER),
                        Sizes.typed("top", top, Unit.METER)),
                SettledHay.mass(volume()));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(SettledHay.range(
                volume(), volume(2), "400 to 500 cubic feet per ton, and a third to half of the gable."));
    }
}
