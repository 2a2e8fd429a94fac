package haywright.sampling;

import haywright.chance.Student;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What two composites drawn apart from one lot say of it by themselves, without any book.
 *
 * <pre>
 * mean = (A + B)/2
 * SE   = |A − B|/2
 * H    = t·SE, Student's t with one degree of freedom
 * </pre>
 *
 * The two differ by how the lot scatters and by the laboratory's own repeats, and one difference is all that is known of
 * that: the range is wide because it is honest. A split of one composite says nothing of the lot and is not this.
 *
 * @param a result of composite A, in the analyte's unit
 * @param b result of composite B
 * @param confidencePercent two-sided, above 0 and below 100
 */
public record TwoComposites(double a, double b, double confidencePercent) implements Worked {
    private static final Source FORMULA = new Source("mean and standard error of two values", Source.Known.ARITHMETIC);

    public TwoComposites {
        if (!(a >= 0 && b >= 0 && Double.isFinite(a) && Double.isFinite(b))) {
            throw new Refused("results", a + " and " + b, "a result is 0 or more", "Is it typed right?");
        }
        if (!(confidencePercent > 0 && confidencePercent < 100)) {
            throw new Refused(
                    "confidencePercent",
                    confidencePercent + " %",
                    "confidence lies above 0 and below 100 %",
                    "90 is usual: right 9 times in 10.");
        }
    }

    public double mean() {
        return (a + b) / 2;
    }

    public double standardError() {
        return Math.abs(a - b) / 2;
    }

    /** Of the range that holds so often; 0 where the two agree to the last digit, which two results may by chance. */
    public double halfWidth() {
        return quantile() * standardError();
    }

    private double quantile() {
        return new Student(1).quantile(0.5 + confidencePercent / 200);
    }

    @Override
    public List<Line> lines() {
        var first = Input.typed("A", a, Unit.NONE);
        var second = Input.typed("B", b, Unit.NONE);
        return List.of(
                Line.of("mean", "(A + B)/2", mean(), Unit.NONE, FORMULA, first, second),
                Line.of("SE", "abs(A − B)/2", standardError(), Unit.NONE, FORMULA, first, second),
                Line.of(
                        "H",
                        "t·SE",
                        halfWidth(),
                        Unit.NONE,
                        FORMULA,
                        Input.published(
                                "t",
                                quantile(),
                                Unit.NONE,
                                Source.judgement(
                                        "Student's t, 1 degree of freedom, %s %%".formatted(confidencePercent)))));
    }
}
