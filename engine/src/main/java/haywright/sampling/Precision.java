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
 * S   = (1/m − 1/N)·Vb + Vw/C          of the sampling; m = (Σc)²/Σc², which is n where every unit gave the same
 * Var = S + Vl/k
 * SE  = sqrt(Var)
 * H   = sqrt(t²·S + z²·Vl/k)
 * </pre>
 *
 * z is the two-sided normal quantile. t is z too when V_b and V_w come from the book, and Student's with j − 1 degrees when
 * they were estimated from j cores of this ranch: the laboratory's repeats are known either way. The correction for a
 * finite lot stands on the units alone: a bale that was cored is known no better inside for the lot being small. A lot of
 * unknown size (N = 0) has no correction.
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
                    "sureness is above 0 and below 100 %",
                    "95 is usual: right 19 times in 20.");
        }
        if (lotUnits != 0 && design.units() > lotUnits) {
            throw new Refused(
                    "units",
                    design.units() + " of " + lotUnits,
                    "more units than the lot has",
                    "Take several cores from each instead.");
        }
    }

    public double variance() {
        return compositeVariance() + laboratoryVariance();
    }

    /** Of the composite alone, before any laboratory: what its analysis would scatter by if it were exact. */
    public double compositeVariance() {
        double finite = lotUnits == 0 ? 0 : 1.0 / lotUnits;
        return Math.max(0, 1 / design.evenUnits() - finite) * spread.between() + spread.within() / design.cores();
    }

    private double laboratoryVariance() {
        return spread.laboratory() / design.analyses();
    }

    public double standardError() {
        return Math.sqrt(variance());
    }

    public double halfWidth() {
        return Math.sqrt(squaredHalfWidth());
    }

    private double squaredHalfWidth() {
        return Math.pow(estimated(), 2) * compositeVariance() + Math.pow(normal(), 2) * laboratoryVariance();
    }

    /** As {@link #halfWidth} with what this laboratory's results share added: how far from the truth, not from its own. */
    public double halfWidthAcrossLaboratories() {
        return Math.sqrt(squaredHalfWidth() + Math.pow(normal(), 2) * spread.laboratoryBias());
    }

    /** Of the variance, the share that more cores would bring down, 0 to 1. */
    public double samplingShare() {
        return variance() == 0 ? 0 : compositeVariance() / variance();
    }

    private double estimated() {
        return estimated(spread, confidencePercent);
    }

    private double normal() {
        return normal(confidencePercent);
    }

    /** t */
    static double estimated(Spread spread, double confidencePercent) {
        return spread.cores() > 0
                ? new Student(spread.cores() - 1).quantile(0.5 + confidencePercent / 200)
                : normal(confidencePercent);
    }

    /** z */
    static double normal(double confidencePercent) {
        return Normal.quantile(0.5 + confidencePercent / 200);
    }

    @Override
    public List<Line> lines() {
        var from = new Origin.Published(spread.source());
        var between = new Input("Vb", spread.between(), Unit.NONE, from);
        var within = new Input("Vw", spread.within(), Unit.NONE, from);
        var even = Input.typed("m", design.evenUnits(), Unit.NONE);
        var cores = Input.typed("C", design.cores(), Unit.NONE);
        var laboratory = new Input("Vl", spread.laboratory(), Unit.NONE, from);
        var k = Input.typed("k", design.analyses(), Unit.NONE);
        var sampling = lotUnits == 0
                ? Line.of("S", "Vb/m + Vw/C", compositeVariance(), Unit.NONE, FORMULA, between, even, within, cores)
                : Line.of(
                        "S",
                        "(1/m − 1/N)·Vb + Vw/C",
                        compositeVariance(),
                        Unit.NONE,
                        FORMULA,
                        between,
                        even,
                        Input.typed("N", lotUnits, Unit.NONE),
                        within,
                        cores);
        var normal = Source.judgment("normal quantile, %s %%".formatted(confidencePercent));
        var estimated = spread.cores() > 0
                ? Source.judgment(
                        "Student's t, %d degrees of freedom, %s %%".formatted(spread.cores() - 1, confidencePercent))
                : normal;
        return List.of(
                sampling,
                Line.of("Var", "S + Vl/k", variance(), Unit.NONE, FORMULA, laboratory, k),
                Line.of("SE", "sqrt(Var)", standardError(), Unit.NONE, FORMULA),
                Line.of(
                        "H",
                        "sqrt(t^2·S + z^2·Vl/k)",
                        halfWidth(),
                        Unit.NONE,
                        FORMULA,
                        Input.published("t", estimated(), Unit.NONE, estimated),
                        Input.published("z", normal(), Unit.NONE, normal),
                        laboratory,
                        k));
    }
}
