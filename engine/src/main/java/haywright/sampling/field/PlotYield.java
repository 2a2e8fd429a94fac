package haywright.sampling.field;

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
 * What a field yields, from plots clipped and weighed.
 *
 * <pre>
 * mean  = sum of masses / m            g a plot, as cut
 * Y     = mean/area · DM/100 · 10      kg of dry matter per ha
 * s     = spread of the plots, per ha the same way
 * H     = t·s/sqrt(m)                  Student's t, m − 1 degrees
 * n     = (t·s/d)², rounded up         plots needed in all, fixed once after these m
 * </pre>
 *
 * The number of plots is decided once, after the pilot plots; deciding anew at each stop ends too early too often and
 * promises more than it holds. Clipping counts what stands, not what cattle choose.
 *
 * @param grams each plot's mass as cut
 * @param areaM2 of one frame
 * @param dryMatterPercent of what was cut
 * @param confidencePercent two-sided
 * @param wantedPercent half-width wanted, percent of the mean
 * @param usablePercent harvest efficiency: the share of what stands that cattle or the mower get
 * @see "Stein, A two-sample test for a linear hypothesis whose power is independent of the variance, Annals of
 *     Mathematical Statistics 16, 1945 (from memory)"
 */
public record PlotYield(
        List<Double> grams,
        double areaM2,
        double dryMatterPercent,
        double confidencePercent,
        double wantedPercent,
        double usablePercent)
        implements Worked {
    private static final Source MEAN = new Source("mean of the plots, per area", Source.Known.ARITHMETIC);
    private static final Source STEIN =
            Source.memory("Stein 1945: two-stage sample of fixed width, n fixed once after the pilot plots");

    public PlotYield {
        var problems = new ArrayList<Problem>();
        if (grams.size() < 2) {
            problems.add(new Problem(
                    "grams",
                    grams.size() == 1 ? "1 plot" : "no plots",
                    "it takes at least two plots",
                    "Clip five first."));
        }
        for (var mass : grams) {
            if (!(mass >= 0 && Double.isFinite(mass))) {
                problems.add(
                        new Problem("grams", mass + " g", "a plot weighs 0 g or more", "A bare plot counts: enter 0."));
            }
        }
        between(problems, "areaM2", areaM2, 0, 1000, "m² a frame");
        between(problems, "dryMatterPercent", dryMatterPercent, 0, 100, "% dry matter");
        between(problems, "wantedPercent", wantedPercent, 0, 200, "% of the mean");
        between(problems, "usablePercent", usablePercent, 0, 100, "% usable");
        SampleMean.checkConfidence(confidencePercent, "80 is usual.", problems);
        Refused.unlessEmpty(problems);
        grams = List.copyOf(grams);
    }

    private static void between(
            List<Problem> problems, String field, double value, double above, double most, String words) {
        if (!(value > above && value <= most)) {
            problems.add(new Problem(
                    field,
                    value + " " + words,
                    "it is above %.0f and at most %,.0f".formatted(above, most),
                    "Check the unit."));
        }
    }

    public int plots() {
        return grams.size();
    }

    private SampleMean sample() {
        return new SampleMean(grams, confidencePercent);
    }

    /** Mean as cut, g a plot. */
    public double meanGrams() {
        return sample().mean();
    }

    /** kg of dry matter per ha. */
    public double kgPerHa() {
        return perHa(meanGrams());
    }

    private double perHa(double gramsAsCut) {
        return gramsAsCut / areaM2 * dryMatterPercent / 100 * 10;
    }

    /** Spread of the plots, kg of dry matter per ha. */
    public double spread() {
        return perHa(sample().spread());
    }

    double t() {
        return sample().t();
    }

    public double halfWidth() {
        return t() * spread() / Math.sqrt(plots());
    }

    public double low() {
        return Math.max(0, kgPerHa() - halfWidth());
    }

    public double high() {
        return kgPerHa() + halfWidth();
    }

    /** Before rounding up. */
    double needed() {
        return Math.pow(t() * spread() / (kgPerHa() * wantedPercent / 100), 2);
    }

    /** Plots needed in all for the wanted half-width; never fewer than were clipped. Empty plots everywhere need no more. */
    public int plotsNeeded() {
        return kgPerHa() == 0 ? plots() : (int) Math.max(plots(), Math.min(1_000_000, Math.ceil(needed())));
    }

    public double usableKgPerHa() {
        return kgPerHa() * usablePercent / 100;
    }

    @Override
    public List<Line> lines() {
        var lines = new ArrayList<Line>();
        lines.add(Line.of(
                "mean",
                "sum/m",
                meanGrams(),
                Unit.GRAM,
                MEAN,
                Input.typed("sum", sample().sum(), Unit.GRAM),
                Input.typed("m", plots(), Unit.NONE)));
        lines.add(Line.of(
                "Y",
                "mean/area·DM/100·10",
                kgPerHa(),
                Unit.KG_PER_HA,
                MEAN,
                Input.typed("area", areaM2, Unit.SQUARE_METER),
                Input.typed("DM", dryMatterPercent, Unit.PERCENT)));
        lines.add(Line.of(
                "H",
                "t·s/sqrt(m)",
                halfWidth(),
                Unit.KG_PER_HA,
                STEIN,
                sample().tInput(),
                Input.typed("s", spread(), Unit.KG_PER_HA),
                Input.typed("m", plots(), Unit.NONE)));
        if (kgPerHa() > 0) {
            lines.add(Line.of(
                    "n0",
                    "(t·s/(Y·want/100))^2",
                    needed(),
                    Unit.NONE,
                    STEIN,
                    Input.typed("want", wantedPercent, Unit.PERCENT),
                    Input.typed("t", t(), Unit.NONE),
                    Input.typed("s", spread(), Unit.KG_PER_HA)));
        }
        lines.add(Line.of(
                "usable",
                "Y·share/100",
                usableKgPerHa(),
                Unit.KG_PER_HA,
                MEAN,
                Input.typed("share", usablePercent, Unit.PERCENT)));
        return List.copyOf(lines);
    }
}
