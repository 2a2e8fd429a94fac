package haywright.sampling.stock;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A loose stack of hay, measured with a tape thrown over it.
 *
 * <pre>
 * square, flat-topped   V = (0.56·O − 0.55·W)·W·L
 * high, round-topped    V = (0.52·O − 0.46·W)·W·L
 * low, round-topped     V = (0.52·O − 0.44·W)·W·L
 * </pre>
 *
 * Rules differ by tens of percent among themselves, so the range is wide: 15 % of volume either way, and the published
 * 400 to 500 ft³ a ton.
 *
 * @param over from the ground on one side over the top to the ground on the other, O
 */
public record LooseStack(Shape shape, Quantity length, Quantity width, Quantity over) implements Stock {
    /** @see "USDA stack measuring rules (from memory)" */
    public enum Shape {
        SQUARE_FLAT_TOPPED(0.56, 0.55),
        HIGH_ROUND_TOPPED(0.52, 0.46),
        LOW_ROUND_TOPPED(0.52, 0.44);

        private final double ofOver;
        private final double ofWidth;

        Shape(double ofOver, double ofWidth) {
            this.ofOver = ofOver;
            this.ofWidth = ofWidth;
        }
    }

    private static final Source RULE = Source.memory("USDA stack measuring rules");
    private static final double VOLUME_DOUBT = 0.15;

    public LooseStack {
        Sizes.lengths(List.of("length", "width", "over"), List.of(length, width, over));
        if (over.base() < width.base()) {
            throw new Refused(
                    "over",
                    over.asTyped(),
                    "a tape over the top is longer than the stack is wide",
                    "Check whether the two are swapped.");
        }
    }

    /** m³ */
    public double volume() {
        return (shape.ofOver * over.base() - shape.ofWidth * width.base()) * width.base() * length.base();
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "V",
                        String.format(Locale.ROOT, "(%.2f·O − %.2f·W)·W·L", shape.ofOver, shape.ofWidth),
                        volume(),
                        Unit.CUBIC_METER,
                        RULE,
                        Sizes.typed("O", over, Unit.METER),
                        Sizes.typed("W", width, Unit.METER),
                        Sizes.typed("L", length, Unit.METER)),
                SettledHay.mass(volume()));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(SettledHay.range(
                volume() * (1 - VOLUME_DOUBT),
                volume() * (1 + VOLUME_DOUBT),
                "400 to 500 cubic feet per ton, and 15 % either way in volume: stack rules differ that much."));
    }
}
