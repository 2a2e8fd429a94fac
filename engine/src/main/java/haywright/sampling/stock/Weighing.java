package haywright.sampling.stock;

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
 * Five to ten bales of a lot weighed, and what the lot weighs by them.
 *
 * <pre>
 * total = N·mean
 * H     = N·t·s·sqrt((1 − m/N)/m)      Student's t, m − 1 degrees
 * </pre>
 *
 * Weight matters as much as content: a lot a tenth lighter than thought is a tenth of the winter.
 *
 * @param kilograms of each bale weighed, as fed
 * @param bales in the lot, N
 */
public record Weighing(List<Double> kilograms, int bales, double confidencePercent) implements Worked {
    private static final Source FORMULA = new Source("total from a simple random sample", Source.Known.ARITHMETIC);

    public Weighing {
        var problems = new ArrayList<Problem>();
        if (kilograms.size() < 2) {
            problems.add(new Problem(
                    "kilograms",
                    kilograms.size() + (kilograms.size() == 1 ? " bale weighed" : " bales weighed"),
                    "a range needs at least two",
                    "Weigh five to ten."));
        }
        if (kilograms.size() > bales) {
            problems.add(new Problem(
                    "kilograms",
                    kilograms.size() + " weighed of " + bales,
                    "no more bales can be weighed than there are",
                    "How many are in the lot?"));
        }
        for (var mass : kilograms) {
            if (!(mass > 0 && Double.isFinite(mass))) {
                problems.add(new Problem("kilograms", mass + " kg", "a bale weighs something", "Weigh it again."));
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
        kilograms = List.copyOf(kilograms);
    }

    public double meanKg() {
        return kilograms.stream().mapToDouble(k -> k).sum() / kilograms.size();
    }

    /** From bale to bale, kg. */
    public double spreadKg() {
        double mean = meanKg();
        return Math.sqrt(
                kilograms.stream().mapToDouble(k -> (k - mean) * (k - mean)).sum() / (kilograms.size() - 1));
    }

    public double totalKg() {
        return bales * meanKg();
    }

    double t() {
        return new Student(kilograms.size() - 1).quantile(0.5 + confidencePercent / 200);
    }

    /** Of the total, kg. */
    public double halfWidthKg() {
        double m = kilograms.size();
        return bales * t() * spreadKg() * Math.sqrt((1 - m / bales) / m);
    }

    public MassRange range() {
        return new MassRange(
                Math.max(0, totalKg() - halfWidthKg()),
                totalKg() + halfWidthKg(),
                kilograms.size() + " of " + bales + " bales weighed.",
                FORMULA);
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "total",
                        "N·mean",
                        totalKg(),
                        Unit.KILOGRAM,
                        FORMULA,
                        Input.typed("N", bales, Unit.NONE),
                        Input.typed("mean", meanKg(), Unit.KILOGRAM)),
                Line.of(
                        "H",
                        "N·t·s·sqrt((1 − m/N)/m)",
                        halfWidthKg(),
                        Unit.KILOGRAM,
                        FORMULA,
                        Input.typed("N", bales, Unit.NONE),
                        Input.published(
                                "t",
                                t(),
                                Unit.NONE,
                                Source.judgement("Student's t, %d degrees".formatted(kilograms.size() - 1))),
                        Input.typed("s", spreadKg(), Unit.KILOGRAM),
                        Input.typed("m", kilograms.size(), Unit.NONE)));
    }
}
