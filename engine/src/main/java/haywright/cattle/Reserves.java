package haywright.cattle;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Energy on the back of a mature cow between two condition scores. Her ash stays the same, so that the score alone gives
 * her empty body.
 * <pre>
 * AA  = 0.078982 − 0.00438·CS                              ash, share of the empty body
 * EBW = 0.851·SBW5·AA(5) / AA(CS)                          empty body, kg
 * TE  = (9.4·0.037683·CS + 5.7·(0.200886 − 0.0066762·CS))·EBW      fat and protein, Mcal
 * ER  = TE(to) − TE(from)                                  Mcal; below zero when she loses
 * dW  = (EBW(to) − EBW(from)) / 0.851                      shrunk weight, kg
 * </pre>
 * Outside scores 3 to 7 it extrapolates. When she loses, 1 Mcal of reserve replaces 0.80 Mcal of NEm in the diet; when she
 * gains, 1 Mcal of NEm over her need becomes 1 Mcal of reserve.
 *
 * @param weightAtFive SBW5, kg: her shrunk weight at score 5
 * @see "NRC, Nutrient Requirements of Beef Cattle, 2000; Limousin Today, June 2018, Table 4: Mcal by score (read)"
 */
public record Reserves(double weightAtFive, double from, double to) implements Worked {
    private static final Source MODEL = Source.reproduces("NRC 2000, energy reserves; Limousin Today 2018, Table 4");
    private static final double MIDDLE = 5;

    public Reserves {
        Findings.of(
                        Limits.of("weight_mature").check("bodyWeight", weightAtFive, KILOGRAM),
                        Limits.of("condition_score").check("conditionScore", from, NONE),
                        Limits.of("condition_score").check("toConditionScore", to, NONE))
                .refuse();
    }

    /** Fat in the empty body at a score, %. */
    public static double fatPercent(double score) {
        return 100 * fat(score);
    }

    /** Shrunk weight at a score as a share of that at score 5. */
    public static double weightRatio(double score) {
        return ash(MIDDLE) / ash(score);
    }

    /** Mcal gained from one score to the other; below zero when she loses. */
    public double energy() {
        return energyAt(to) - energyAt(from);
    }

    /** Shrunk weight gained, kg. */
    public double weightChange() {
        return (emptyBody(to) - emptyBody(from)) / 0.851;
    }

    private static double fat(double score) {
        return 0.037683 * score;
    }

    private static double ash(double score) {
        return 0.078982 - 0.00438 * score;
    }

    private double emptyBody(double score) {
        return 0.851 * weightAtFive * ash(MIDDLE) / ash(score);
    }

    private double energyAt(double score) {
        return (9.4 * fat(score) + 5.7 * (0.200886 - 0.0066762 * score)) * emptyBody(score);
    }

    @Override
    public List<Line> lines() {
        var weight = Input.typed("SBW5", weightAtFive, KILOGRAM);
        var first = Input.typed("CS1", from, NONE);
        var second = Input.typed("CS2", to, NONE);
        var body = "0.851·SBW5·(0.078982 − 0.00438·5) / (0.078982 − 0.00438·%s)";
        var energy = "(9.4·0.037683·%s + 5.7·(0.200886 − 0.0066762·%<s))·%s";
        return List.of(
                Line.of("EBW1", body.formatted("CS1"), emptyBody(from), KILOGRAM, MODEL, weight, first),
                Line.of("EBW2", body.formatted("CS2"), emptyBody(to), KILOGRAM, MODEL, weight, second),
                Line.of("dW", "(EBW2 − EBW1) / 0.851", weightChange(), KILOGRAM, MODEL),
                Line.of("TE1", energy.formatted("CS1", "EBW1"), energyAt(from), MEGACALORIE, MODEL, first),
                Line.of("TE2", energy.formatted("CS2", "EBW2"), energyAt(to), MEGACALORIE, MODEL, second),
                Line.of("ER", "TE2 − TE1", energy(), MEGACALORIE, MODEL));
    }
}
