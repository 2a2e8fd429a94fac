package haywright.cattle;

import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.WEEK;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What her milk takes.
 * <pre>
 * Y    = PKYD·(n/T)·exp(1 − n/T)                      milk, kg a day
 * E    = 0.092·fat + 0.049·SNF − 0.0569               Mcal NE/kg of milk
 * NEml = Y·E                                          Mcal a day, as NEm
 * MPl  = Y·protein·10 / 0.65                          g a day
 * </pre>
 * With milk of 4.0 % fat, 8.3 % solids not fat and 3.4 % protein. The curve is for 30 weeks and peaks to about 15 kg a
 * day.
 *
 * @param weeks n, weeks since calving, above 0
 * @param peak PKYD, kg a day
 * @param peakWeek T, week of the peak; measured peaks lie between day 34 and day 80
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, p. 45: the curve and week 8.5 (read)"
 */
public record Lactation(double weeks, double peak, double peakWeek) implements Worked {
    /** Where the tables have the peak. */
    public static final double USUAL_PEAK_WEEK = 8.5;

    /** As long as the curve is meant to run: 210 days, to the usual weaning. */
    public static final double CURVE_ENDS = 30;

    private static final double FAT = 4.0;
    private static final double SOLIDS_NOT_FAT = 8.3;
    private static final double PROTEIN = 3.4;

    private static final Source CURVE = Source.read("NRC 1996/2000 p. 45");
    private static final Source ENERGY = Source.reproduces("NRC 1996/2000 ch. 4");
    private static final Source MILK = Source.memory("NRC 1996/2000 ch. 4");

    public Lactation {
        check(weeks, peak, peakWeek).refuse();
    }

    Findings findings() {
        return check(weeks, peak, peakWeek);
    }

    private static Findings check(double weeks, double peak, double peakWeek) {
        return Findings.of(
                Limits.of("weeks_in_milk").check("weeksInMilk", weeks, WEEK),
                Limits.of("peak_milk").check("peakMilk", peak, KILOGRAM_A_DAY),
                Limits.of("peak_week").check("peakWeek", peakWeek, WEEK));
    }

    /** kg a day. */
    public double milk() {
        return peak * (weeks / peakWeek) * Math.exp(1 - weeks / peakWeek);
    }

    /** Mcal of net energy in a kg of milk. */
    public double energyOfMilk() {
        return 0.092 * FAT + 0.049 * SOLIDS_NOT_FAT - 0.0569;
    }

    /** Mcal a day, in terms of NEm. */
    public double nem() {
        return milk() * energyOfMilk();
    }

    /** g a day. */
    public double metabolizableProtein() {
        return milk() * PROTEIN * 10 / 0.65;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "Y",
                        "PKYD·(n/T)·exp(1 − n/T)",
                        milk(),
                        KILOGRAM_A_DAY,
                        CURVE,
                        Input.typed("PKYD", peak, KILOGRAM_A_DAY),
                        Input.typed("n", weeks, WEEK),
                        Input.typed("T", peakWeek, WEEK)),
                Line.of("E", "0.092·4.0 + 0.049·8.3 − 0.0569", energyOfMilk(), MCAL_PER_KG, ENERGY),
                Line.of("NEml", "Y·E", nem(), MEGACALORIE, ENERGY),
                Line.of("MPl", "Y·3.4·10 / 0.65", metabolizableProtein(), GRAM_A_DAY, MILK));
    }
}
