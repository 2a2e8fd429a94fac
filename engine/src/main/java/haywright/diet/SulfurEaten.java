package haywright.diet;

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
 * Sulfur of feed and water together, as a share of the dry matter eaten: cattle cannot tell them apart.
 *
 * <pre>
 * S_water = liters·sulfate / 3000         g a day; a third of sulfate is sulfur (mg to g: 1000)
 * S       = feed + S_water / (10·eaten)   percent of dry matter
 * </pre>
 *
 * @param feed sulfur of the ration, percent of dry matter
 * @param eaten dry matter, kg a day, above 0
 * @param liters drunk a day
 * @param sulfate of the water, mg a liter
 */
public record SulfurEaten(double feed, double eaten, double liters, double sulfate) implements Worked {
    private static final Source THIRD =
            new Source("molar masses: S 32.06 in SO4 96.06, a third", Source.Known.ARITHMETIC);

    public SulfurEaten {
        var problems = new ArrayList<Problem>();
        check(problems, "feed", feed >= 0 && feed <= 100, feed, "a share of sulfur lies from 0 to 100 %");
        check(problems, "eaten", eaten > 0 && Double.isFinite(eaten), eaten, "cattle eat more than nothing");
        check(problems, "liters", liters >= 0 && Double.isFinite(liters), liters, "a volume is 0 or more");
        check(problems, "sulfate", sulfate >= 0 && Double.isFinite(sulfate), sulfate, "sulfate is 0 mg/L or more");
        Refused.unlessEmpty(problems);
    }

    private static void check(List<Problem> problems, String field, boolean holds, double value, String rule) {
        if (!holds) {
            problems.add(new Problem(field, String.valueOf(value), rule, "Is it typed right?"));
        }
    }

    /** Grams a day from the water. */
    public double fromWater() {
        return fromWater(liters, sulfate);
    }

    static double fromWater(double liters, double sulfate) {
        return liters * sulfate / 3000;
    }

    /** Percent of dry matter, the water's with it. */
    public double percent() {
        return feed + fromWater() / (10 * eaten);
    }

    /** What forage cattle tolerate at most, percent of dry matter. */
    public static double most() {
        return PracticeLimits.value("L07");
    }

    /** Where trouble begins, percent of dry matter. */
    public static double watchAbove() {
        return PracticeLimits.value("L07b");
    }

    /** What cattle on much grain tolerate at most, percent of dry matter. */
    public static double mostOnGrain() {
        return PracticeLimits.value("L08");
    }

    public static Source source() {
        return PracticeLimits.source("L07");
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "S_water",
                        "liters·sulfate / 3000",
                        fromWater(),
                        Unit.GRAM_A_DAY,
                        THIRD,
                        Input.typed("liters", liters, Unit.NONE),
                        Input.typed("sulfate", sulfate, Unit.MILLIGRAM_PER_LITER)),
                Line.of(
                        "S",
                        "feed + S_water / (10·eaten)",
                        percent(),
                        Unit.PERCENT,
                        Source.ARITHMETIC,
                        Input.typed("feed", feed, Unit.PERCENT),
                        Input.typed("eaten", eaten, Unit.KILOGRAM_A_DAY)));
    }
}
