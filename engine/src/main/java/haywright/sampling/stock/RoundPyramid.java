package haywright.sampling.stock;

import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Line;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Large round bales stacked as a pyramid, each tier one bale narrower.
 *
 * @param base bales across on the ground
 * @param length bales along the pile
 */
public record RoundPyramid(int count, Quantity baleWeight, int base, int tiers, int length) implements Stock {
    public RoundPyramid {
        Refused.unlessOfKind(Kind.MASS, "baleWeight", baleWeight);
        var problems = new ArrayList<Problem>();
        Sizes.positive("baleWeight", baleWeight, "a bale weighs more than 0", "Weigh 5 to 10.", problems);
        Refused.unlessEmpty(problems);
        Layout.Pyramid.check(base, tiers, length, count);
    }

    @Override
    public int bales() {
        return count;
    }

    @Override
    public List<Line> lines() {
        return List.of(Sizes.counted(count, Sizes.typed("w", baleWeight, Unit.KILOGRAM)));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(MassRange.ofGuessedBales(BaleKind.LARGE_ROUND, count, baleWeight));
    }
}
