package haywright.cattle.herd;

import haywright.chance.Normal;
import haywright.chance.SampleMean;
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
 * Body condition scores of some of a group, and what they say of all of it.
 *
 * <pre>
 * H = t·s·sqrt((1 − n/N)/n)      Student's t, n − 1 degrees
 * </pre>
 *
 * @param scores 1 to 9, halves allowed; as they walk by, not the thin ones picked out
 * @param head in the group, N
 */
public record ConditionScores(List<Double> scores, int head, double confidencePercent) implements Worked {
    private static final Source FORMULA = new Source("mean of a simple random sample", Source.Known.ARITHMETIC);

    /** From animal to animal within a group; judged, until the group's own scores say otherwise. */
    private static final double USUAL_SPREAD = 0.7;

    public ConditionScores {
        var problems = new ArrayList<Problem>();
        if (scores.size() < 2) {
            problems.add(new Problem(
                    "scores", scores.size() + " scores", "a spread needs at least two", "Score ten or more."));
        }
        if (scores.size() > head) {
            problems.add(new Problem(
                    "scores",
                    scores.size() + " scores of " + head + " head",
                    "more scores than head",
                    "Check for one entered twice, or a larger group."));
        }
        for (var score : scores) {
            if (!(score >= 1 && score <= 9)) {
                problems.add(new Problem("scores", String.valueOf(score), "scores run from 1 to 9", "5 is average."));
            }
        }
        SampleMean.checkConfidence(confidencePercent, "90 is usual.", problems);
        Refused.unlessEmpty(problems);
        scores = List.copyOf(scores);
    }

    /** How many to score for the mean to be known to a quarter of a score, 9 times in 10. */
    public static int toScore(int head) {
        double enough = Math.pow(Normal.quantile(0.95) * USUAL_SPREAD / 0.25, 2);
        return Math.min(head, (int) Math.ceil(enough / (1 + enough / head)));
    }

    private SampleMean sample() {
        return new SampleMean(scores, confidencePercent);
    }

    public double mean() {
        return sample().mean();
    }

    /** From animal to animal. */
    public double spread() {
        return sample().spread();
    }

    public double halfWidth() {
        return sample().halfWidth(head);
    }

    /** Of those scored, how many are below a score. */
    public int below(double score) {
        return (int) scores.stream().filter(s -> s < score).count();
    }

    @Override
    public List<Line> lines() {
        var sample = sample();
        return List.of(
                Line.of(
                        "mean",
                        "sum/n",
                        mean(),
                        Unit.NONE,
                        FORMULA,
                        Input.typed("sum", sample.sum(), Unit.NONE),
                        Input.typed("n", scores.size(), Unit.NONE)),
                Line.of(
                        "H",
                        "t·s·sqrt((1 − n/N)/n)",
                        halfWidth(),
                        Unit.NONE,
                        FORMULA,
                        sample.tInput(),
                        Input.typed("s", sample.spread(), Unit.NONE),
                        Input.typed("n", scores.size(), Unit.NONE),
                        Input.typed("N", head, Unit.NONE)));
    }
}
