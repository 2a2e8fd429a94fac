package haywright.cattle.herd;

import haywright.chance.Normal;
import haywright.chance.Student;
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
                    "no more can be scored than there are",
                    "Is one typed twice, or is the group larger?"));
        }
        for (var score : scores) {
            if (!(score >= 1 && score <= 9)) {
                problems.add(new Problem("scores", String.valueOf(score), "scores run from 1 to 9", "5 is average."));
            }
        }
        if (!(confidencePercent > 0 && confidencePercent < 100)) {
            problems.add(new Problem(
                    "confidencePercent",
                    confidencePercent + " %",
                    "confidence lies above 0 and below 100 %",
                    "90 is usual."));
        }
        Refused.unlessEmpty(problems);
        scores = List.copyOf(scores);
    }

    /** How many to score for the mean to be known to a quarter of a score, 9 times in 10. */
    public static int toScore(int head) {
        double enough = Math.pow(Normal.quantile(0.95) * USUAL_SPREAD / 0.25, 2);
        return Math.min(head, (int) Math.ceil(enough / (1 + enough / head)));
    }

    public double mean() {
        return scores.stream().mapToDouble(s -> s).sum() / scores.size();
    }

    public double spread() {
        double mean = mean();
        return Math.sqrt(
                scores.stream().mapToDouble(s -> (s - mean) * (s - mean)).sum() / (scores.size() - 1));
    }

    double t() {
        return new Student(scores.size() - 1).quantile(0.5 + confidencePercent / 200);
    }

    public double halfWidth() {
        double n = scores.size();
        return t() * spread() * Math.sqrt((1 - n / head) / n);
    }

    /** Of those scored, how many are below a score. */
    public int below(double score) {
        return (int) scores.stream().filter(s -> s < score).count();
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "mean",
                        "sum/n",
                        mean(),
                        Unit.NONE,
                        FORMULA,
                        Input.typed("sum", scores.stream().mapToDouble(s -> s).sum(), Unit.NONE),
                        Input.typed("n", scores.size(), Unit.NONE)),
                Line.of(
                        "H",
                        "t·s·sqrt((1 − n/N)/n)",
                        halfWidth(),
                        Unit.NONE,
                        FORMULA,
                        Input.published(
                                "t",
                                t(),
                                Unit.NONE,
                                Source.judgement("Student's t, %d degrees".formatted(scores.size() - 1))),
                        Input.typed("s", spread(), Unit.NONE),
                        Input.typed("n", scores.size(), Unit.NONE),
                        Input.typed("N", head, Unit.NONE)));
    }
}
