package haywright.sampling;

import haywright.chance.Normal;
import haywright.chance.Student;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * How far the mean of one composite may lie from the lot's own.
 *
 * <pre>
 * Var = (1 − n/N)·Vb/n + Vw/(n·c) + Vs/s + Vl/k
 * SE  = sqrt(Var)
 * H   = q·SE
 * </pre>
 *
 * q is the two-sided normal quantile when V_b comes from the book, and Student's with m − 1 degrees when it was
 * estimated from m cores of this ranch. The correction for a finite lot stands on the units alone: a bale that was
 * cored is known no better inside for the lot being small. A lot of unknown size (N = 0) has no correction.
 *
 * @param lotUnits units in the lot, N; 0 where they cannot be counted
 * @param confidencePercent two-sided, above 0 and below 100
 */
public record Precision(Spread spread, Design design, int lotUnits, double confidencePercent) implements Worked {
    private static final Source FORMULA =
            new Source("variance of a mean in two-stage sampling, finite correction on units", Source.Known.ARITHMETIC);

    public Precision {
        if (!(confidencePercent > 0 && confidencePercent < 100)) {
            throw new Refused(
                    "confidencePercent",
                    confidencePercent + " %",
                    "confidence lies above 0 and below 100 %",
                    "95 is usual: right 19 times in 20.");
        }
        if (lotUnits != 0 && design.units() > lotUnits) {
            throw new Refused(
                    "units",
                    design.units() + " of " + lotUnits,
                    "no more units can be taken from than the lot has",
                    "Take several cores from each instead.");
        }
    }

    public double variance() {
        return compositeVariance() + spread.laboratory() / design.analyses();
    }

    /** Of the composite alone, before any laboratory: what its analysis would scatter by if it were exact. */
    public double compositeVariance() {
        double n = design.units();
        double finite = lotUnits == 0 ? 1 : 1 - n / lotUnits;
        return finite * spread.between() / n
                + spread.within() / (n * design.increments())
                + spread.split() / design.splits();
    }

    public double standardError() {
        return Math.sqrt(variance());
    }

    public double halfWidth() {
        return quantile() * standardError();
    }

    /** As {@link #halfWidth} with what this laboratory's results share added: how far from the truth, not from its own. */
    public double halfWidthAcrossLaboratories() {
        return quantile() * Math.sqrt(variance() + spread.laboratoryBias());
    }

    /** Of the variance, the share that more cores would bring down, 0 to 1. */
    public double samplingShare() {
        double n = design.units();
        double finite = lotUnits == 0 ? 1 : 1 - n / lotUnits;
        double sampling = finite * spread.between() / n + spread.within() / (n * design.increments());
        return variance() == 0 ? 0 : sampling / variance();
    }

    double quantile() {
        return quantile(spread, confidencePercent);
    }

    static double quantile(Spread spread, double confidencePercent) {
        double p = 0.5 + confidencePercent / 200;
        return spread.cores() > 0 ? new Student(spread.cores() - 1).quantile(p) : Normal.quantile(p);
    }

    @Override
    public List<Line> lines() {
        var n = Input.typed("n", design.units(), Unit.NONE);
        var from = new Origin.Published(spread.source());
        var between = new Input("Vb", spread.between(), Unit.NONE, from);
        var within = new Input("Vw", spread.within(), Unit.NONE, from);
        var c = Input.typed("c", design.increments(), Unit.NONE);
        var split = new Input("Vs", spread.split(), Unit.NONE, from);
        var s = Input.typed("s", design.splits(), Unit.NONE);
        var laboratory = new Input("Vl", spread.laboratory(), Unit.NONE, from);
        var k = Input.typed("k", design.analyses(), Unit.NONE);
        var rest = "Vw/(n·c) + Vs/s + Vl/k";
        var variance = lotUnits == 0
                ? Line.of(
                        "Var",
                        "Vb/n + " + rest,
                        variance(),
                        Unit.NONE,
                        FORMULA,
                        n,
                        between,
                        within,
                        c,
                        split,
                        s,
                        laboratory,
                        k)
                : Line.of(
                        "Var",
                        "(1 − n/N)·Vb/n + " + rest,
                        variance(),
                        Unit.NONE,
                        FORMULA,
                        n,
                        Input.typed("N", lotUnits, Unit.NONE),
                        between,
                        within,
                        c,
                        split,
                        s,
                        laboratory,
                        k);
        var quantile = spread.cores() > 0
                ? Source.judgement(
                        "Student's t, %d degrees of freedom, %s %%".formatted(spread.cores() - 1, confidencePercent))
                : Source.judgement("normal quantile, %s %%".formatted(confidencePercent));
        return List.of(
                variance,
                Line.of("SE", "sqrt(Var)", standardError(), Unit.NONE, FORMULA),
                Line.of(
                        "H",
                        "q·SE",
                        halfWidth(),
                        Unit.NONE,
                        FORMULA,
                        Input.published("q", quantile(), Unit.NONE, quantile)));
    }
}
