package haywright.sampling.stock;

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
                    "it takes at least two",
                    "Weigh 5 to 10."));
        }
        if (kilograms.size() > bales) {
            problems.add(new Problem(
                    "kilograms",
                    kilograms.size() + " weighed of " + bales,
                    "more bales weighed than there are",
                    "Check how many are in the lot."));
        }
        for (var mass : kilograms) {
            if (!(mass > 0 && Double.isFinite(mass))) {
                problems.add(new Problem("kilograms", mass + " kg", "a bale weighs more than 0", "Weigh it again."));
            }
        }
        SampleMean.checkConfidence(confidencePercent, "90 is usual.", problems);
        Refused.unlessEmpty(problems);
        kilograms = List.copyOf(kilograms);
    }

    private SampleMean sample() {
        return new SampleMean(kilograms, confidencePercent);
    }

    public double meanKg() {
        return sample().mean();
    }

    public double totalKg() {
        return bales * meanKg();
    }

    /** Of the total, kg. */
    public double halfWidthKg() {
        return bales * sample().halfWidth(bales);
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
        var sample = sample();
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
                        sample.tInput(),
                        Input.typed("s", sample.spread(), Unit.KILOGRAM),
                        Input.typed("m", kilograms.size(), Unit.NONE)));
    }
}
