package haywright.ration;

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
 * How two feeds are mixed to hit one target.
 *
 * <pre>
 * share of A = 100·(t − b) / (a − b)
 * share of B = 100 − share of A
 * </pre>
 *
 * @param target wanted content of the mix, percent
 * @param a content of the first feed, percent, on the same basis
 * @param b content of the second feed, percent
 * @param batch how much is mixed, in any unit of weight; zero when only shares are asked for
 */
public record PearsonSquare(double target, double a, double b, double batch) implements Worked {
    private static final Source SOURCE = new Source("Pearson square", Source.Known.ARITHMETIC);

    public PearsonSquare {
        var problems = new ArrayList<Problem>();
        for (var content : new double[][] {{a, 0}, {b, 1}}) {
            if (!(content[0] >= 0 && content[0] <= 100)) {
                problems.add(new Problem(
                        content[1] == 0 ? "a" : "b",
                        content[0] + " %",
                        "what is in a feed is 0 to 100 % of it",
                        "What does its report say?"));
            }
        }
        if (problems.isEmpty() && !(target >= Math.min(a, b) && target <= Math.max(a, b) && a != b)) {
            problems.add(new Problem(
                    "target",
                    "%s %% from feeds of %s %% and %s %%".formatted(target, a, b),
                    "a mix of two feeds lies between the two",
                    "Choose a target between them, or another feed."));
        }
        if (!(batch >= 0) || !Double.isFinite(batch)) {
            problems.add(new Problem("batch", String.valueOf(batch), "a batch is zero or more", "How much is mixed?"));
        }
        Refused.unlessEmpty(problems);
    }

    /** Percent of the mix. */
    public double shareOfA() {
        return 100 * (target - b) / (a - b);
    }

    /** Percent of the mix. */
    public double shareOfB() {
        return 100 - shareOfA();
    }

    public double amountOfA() {
        return batch * shareOfA() / 100;
    }

    public double amountOfB() {
        return batch * shareOfB() / 100;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "A",
                        "100·(t − b) / (a − b)",
                        shareOfA(),
                        Unit.PERCENT,
                        SOURCE,
                        Input.typed("t", target, Unit.PERCENT),
                        Input.typed("a", a, Unit.PERCENT),
                        Input.typed("b", b, Unit.PERCENT)),
                Line.of("B", "100 − A", shareOfB(), Unit.PERCENT, SOURCE));
    }
}
