package haywright.sampling;

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
 * What the cores weigh together.
 *
 * <pre>
 * core = π/4 · bore² · depth · density        kg
 * mass = cores · core
 * </pre>
 *
 * @param boreMeters inside diameter of the probe's tip
 * @param depthMeters how deep it goes into the feed
 * @param densityKgPerM3 as fed
 * @param cores how many go into the bucket
 * @param needKg what the laboratory needs
 * @param bucketKg what one mixing bucket holds
 */
public record CompositeMass(
        double boreMeters, double depthMeters, double densityKgPerM3, int cores, double needKg, double bucketKg)
        implements Worked {
    private static final Source FORMULA = new Source("volume of a cylinder times density", Source.Known.ARITHMETIC);

    /** Above this the laboratory must part the sample, so it is ground whole first. */
    static final double BAG_PER_BUCKET = 1.0 / 5;

    public CompositeMass {
        var problems = new ArrayList<Problem>();
        if (!(boreMeters >= 0.005 && boreMeters <= 0.1)) {
            problems.add(new Problem(
                    "bore",
                    "%.1f mm".formatted(boreMeters * 1000),
                    "a hay probe is 5 to 100 mm (1/4 to 4 in) inside",
                    "Check the unit. Most are 3/8 to 3/4 in."));
        }
        if (!(depthMeters > 0 && depthMeters <= 3)) {
            problems.add(new Problem(
                    "depth",
                    "%.2f m".formatted(depthMeters),
                    "a probe goes in above 0 and at most 3 m",
                    "Check the unit. 12 to 24 in is usual."));
        }
        if (!(densityKgPerM3 >= 20 && densityKgPerM3 <= 1500)) {
            problems.add(new Problem(
                    "density",
                    "%.0f kg/m³".formatted(densityKgPerM3),
                    "feed weighs 20 to 1,500 kg/m³ (1 to 94 lb/ft³)",
                    "Check the bale's size and weight."));
        }
        if (cores < 1) {
            problems.add(new Problem("cores", String.valueOf(cores), "at least one core is taken", "Enter how many."));
        }
        Refused.unlessEmpty(problems);
    }

    public double coreKg() {
        return Math.PI / 4 * boreMeters * boreMeters * depthMeters * densityKgPerM3;
    }

    public double kg() {
        return cores * coreKg();
    }

    public boolean isEnough() {
        return kg() >= needKg;
    }

    public boolean isTooMuch() {
        return kg() > bucketKg * BAG_PER_BUCKET;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "core",
                        "pi/4·bore^2·depth·density",
                        coreKg(),
                        Unit.KILOGRAM,
                        FORMULA,
                        Input.published("pi", Math.PI, Unit.NONE, Source.ARITHMETIC),
                        Input.typed("bore", boreMeters, Unit.METER),
                        Input.typed("depth", depthMeters, Unit.METER),
                        Input.typed("density", densityKgPerM3, Unit.KG_PER_M3)),
                Line.of("mass", "cores·core", kg(), Unit.KILOGRAM, FORMULA, Input.typed("cores", cores, Unit.NONE)));
    }
}
