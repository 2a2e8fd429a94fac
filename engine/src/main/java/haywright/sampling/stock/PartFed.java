package haywright.sampling.stock;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is left of a stock that is being fed. What was counted or measured stays as it was entered, with its doubt; a record of
 * a week moves the share.
 *
 * @param before as it was entered
 * @param share of it that is left, 0 to 1 or somewhat more where more was counted; 0 once it is used up
 * @param on the day that is true of
 */
public record PartFed(Stock before, double share, LocalDate on) implements Stock {
    /** More was counted than was entered: beyond this nobody miscounts. */
    private static final double MOST = 10;

    public PartFed {
        if (before instanceof PartFed || before instanceof Stock.Standing) {
            throw new Refused(
                    "before", "a stock of another kind", "only what was put up can be fed", "Enter what was put up.");
        }
        if (!(share >= 0 && share <= MOST)) {
            Refused.unlessEmpty(List.of(new Problem(
                    "share",
                    Double.toString(share),
                    "what is left is 0 to 10 times what was entered",
                    "Count again.")));
        }
    }

    @Override
    public int bales() {
        return share == 0 || before.bales() == 0 ? 0 : (int) Math.max(1, Math.round(share * before.bales()));
    }

    @Override
    public OptionalDouble alongFace() {
        var whole = before.alongFace();
        return whole.isPresent() ? OptionalDouble.of(share * whole.getAsDouble()) : whole;
    }

    @Override
    public OptionalDouble dryMatter() {
        return before.dryMatter();
    }

    @Override
    public Optional<MassRange> range() {
        return before.range()
                .map(range ->
                        new MassRange(share * range.lowKg(), share * range.highKg(), range.words(), range.source()));
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<>(before.lines());
        if (!lines.isEmpty()) {
            double kg = lines.get(lines.size() - 1).value();
            lines.add(Line.of(
                    "left",
                    "whole·share",
                    share * kg,
                    Unit.KILOGRAM,
                    Source.ARITHMETIC,
                    Input.computed("whole", kg, Unit.KILOGRAM, before),
                    Input.typed("share", share, Unit.NONE)));
        }
        return lines;
    }
}
