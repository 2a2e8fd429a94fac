package haywright.forage;

import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * A weight, a concentration or a price carried from one basis to another.
 *
 * <pre>
 * concentration, price: X to = X from · s to / s from
 * weight:               W to = W from · s from / s to
 * s is the dry matter in one part: DM/100 as received, 1 on dry matter, 0.90 at 90 % dry matter
 * </pre>
 *
 * @param unit any unit; it is the same before and after
 * @param dryMatter percent of the feed as received, above 0 and at most 100; 88.0 means 88 %
 * @see "University of Nevada SP-09-19 and Oregon State University ANS 312: the formulas"
 */
public record BasisConversion(Of of, double value, Unit unit, Basis from, Basis to, double dryMatter)
        implements Worked {
    private static final Source SOURCE = Source.read("Oregon State University ANS 312; University of Nevada SP-09-19");
    private static final Source NINETY =
            Source.reproduces("USDA AMS hay classes as reprinted: 62 / 55.9, 60.5 / 54.5, 58 / 52.5");

    /** What is carried over. */
    public enum Of {
        WEIGHT,
        CONCENTRATION,
        PRICE
    }

    public BasisConversion {
        if (!Double.isFinite(value)) {
            throw new Refused("value", String.valueOf(value), "a value is a number", "Enter a number.");
        }
        refuseDryMatter("dryMatter", dryMatter);
    }

    static void refuseDryMatter(String field, double percent) {
        if (!(percent > 0 && percent <= 100)) {
            throw new Refused(
                    field,
                    percent + " % dry matter",
                    "dry matter is above 0 and at most 100 % of the feed as received",
                    percent == 0
                            ? "Was moisture left out, or entered in its place?"
                            : "Is this the moisture, or in another unit?");
        }
    }

    /** A concentration on dry matter, from the basis it was printed in. */
    public static double onDryMatter(double value, Basis from, double dryMatter) {
        return value / share(from, dryMatter);
    }

    public double result() {
        double there = share(to, dryMatter);
        double here = share(from, dryMatter);
        return of == Of.WEIGHT ? value * here / there : value * there / here;
    }

    private static double share(Basis basis, double dryMatter) {
        return switch (basis) {
            case AS_RECEIVED -> dryMatter / 100;
            case DRY_MATTER -> 1;
            case NINETY_PCT -> 0.90;
        };
    }

    @Override
    public List<Line> lines() {
        boolean weight = of == Of.WEIGHT;
        var formula = from == to ? "X" : "X" + words(weight ? from : to, "·") + words(weight ? to : from, " / ");
        boolean ninety = from == Basis.NINETY_PCT || to == Basis.NINETY_PCT;
        var x = Input.typed("X", value, unit);
        return List.of(
                formula.contains("DM")
                        ? Line.of(
                                "result",
                                formula,
                                result(),
                                unit,
                                ninety ? NINETY : SOURCE,
                                x,
                                Input.typed("DM", dryMatter, Unit.PERCENT))
                        : Line.of("result", formula, result(), unit, ninety ? NINETY : SOURCE, x));
    }

    private static String words(Basis basis, String operator) {
        return switch (basis) {
            case AS_RECEIVED -> operator + "(DM / 100)";
            case DRY_MATTER -> "";
            case NINETY_PCT -> operator + "0.90";
        };
    }
}
