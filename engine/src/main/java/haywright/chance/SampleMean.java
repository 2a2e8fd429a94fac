package haywright.chance;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Problem;
import haywright.workings.Source;
import java.util.List;

/**
 * The mean of a simple random sample, and how far the mean of all may lie from it.
 *
 * <pre>
 * H = t·s·sqrt((1 − n/N)/n)      Student's t, n − 1 degrees
 * </pre>
 *
 * @param values of those that were drawn, at least two
 * @param confidencePercent above 0 and below 100
 */
public record SampleMean(List<Double> values, double confidencePercent) {
    public SampleMean {
        values = List.copyOf(values);
    }

    /** What no confidence can be. @param usual in words: "90 is usual." */
    public static void checkConfidence(double percent, String usual, List<Problem> problems) {
        if (!(percent > 0 && percent < 100)) {
            problems.add(
                    new Problem("confidencePercent", percent + " %", "confidence lies above 0 and below 100 %", usual));
        }
    }

    public double sum() {
        return values.stream().mapToDouble(v -> v).sum();
    }

    public double mean() {
        return sum() / values.size();
    }

    /** From one to the next: the standard deviation, with n − 1. */
    public double spread() {
        double mean = mean();
        return Math.sqrt(
                values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum() / (values.size() - 1));
    }

    /** Of Student, two-sided. */
    public double t() {
        return new Student(values.size() - 1).quantile(0.5 + confidencePercent / 200);
    }

    /** Of the mean. @param of how many there are in all, N; no fewer than were drawn */
    public double halfWidth(int of) {
        double n = values.size();
        return t() * spread() * Math.sqrt((1 - n / of) / n);
    }

    /** {@link #t} as a line of workings has it. */
    public Input tInput() {
        return Input.published(
                "t", t(), Unit.NONE, Source.judgment("Student's t, %d degrees".formatted(values.size() - 1)));
    }
}
