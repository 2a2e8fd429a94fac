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
 * Feed in bags: cubes, pellets, grain or a supplement.
 *
 * @param bags at least 1
 * @param bagWeight as printed on one
 */
public record Sacks(int bags, Quantity bagWeight) implements Stock {
    public Sacks {
        var problems = new ArrayList<Problem>();
        if (bags < 1) {
            problems.add(new Problem("bags", bags + " bags", "bagged feed is at least one bag", "Enter how many."));
        }
        if (bags > Layout.MOST_BALES) {
            problems.add(new Problem(
                    "bags", bags + " bags", "no yard has more than " + Layout.MOST_BALES, "Check for an extra digit."));
        }
        Refused.unlessOfKind(Kind.MASS, "bagWeight", bagWeight);
        Sizes.positive("bagWeight", bagWeight, "a bag weighs more than 0", "It is printed on it.", problems);
        Refused.unlessEmpty(problems);
    }

    @Override
    public List<Line> lines() {
        return List.of(Sizes.counted(bags, Sizes.typed("w", bagWeight, Unit.KILOGRAM)));
    }

    @Override
    public Optional<MassRange> range() {
        return Optional.of(MassRange.ofScale(asFedKg().orElseThrow()));
    }
}
