package haywright.cattle.intake;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.NONE;

import haywright.cattle.Limits;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * Free-choice intake of cows and of heifers that calve.
 * <pre>
 * c   = 0.03840·(1 − p) + 0.04631·p
 * DMI = (SBW^0.75·(0.04997·NEm^2 + c)/NEm + 0.2·Y)·k        kg of dry matter a day
 * </pre>
 * Kept in the edition of 2016. Which of the two intercepts is of pregnant cows is from memory; this way round all 24
 * intakes of two recalled month tables come out, the other way round they miss by up to 2.4 lb. Cows fed in pens since
 * 2002 ate more than it says: {@link #ATE_MORE}. Below NEm 0.9 Mcal/kg (about 48 % TDN) it
 * rises as the diet gets poorer, which cattle do not do: what they can hold decides there.
 *
 * @param pregnantShare p, share of the cows with a calf in them, 0 to 1
 * @param milk Y, kg a day
 * @param dietNem NEm of the diet, Mcal/kg of dry matter
 * @param factor k for temperature and mud; 1 for none
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, chapter 7 (from memory)"
 */
public record CowIntake1996(double shrunkWeight, double pregnantShare, double milk, double dietNem, double factor)
        implements ExpectedIntake {
    /** By how much of itself the equation was found low in 48 means of dry cows, %. */
    public static final double ATE_MORE_DRY = 13.9;

    /** The same in 29 means of cows in milk, %. */
    public static final double ATE_MORE_IN_MILK = 16.6;

    /** Where {@link #ATE_MORE_DRY} and {@link #ATE_MORE_IN_MILK} are printed. */
    public static final Source ATE_MORE =
            Source.read("Gross, Oklahoma State University thesis, abstract: cows fed in pens since 2002");

    private static final Source EQUATION = Source.memory("NRC 1996/2000 ch. 7; kept in 2016");

    public CowIntake1996 {
        Limits.of("diet_nem").check("dietNem", dietNem, MCAL_PER_KG).refuse();
    }

    private double stage() {
        return 0.03840 * (1 - pregnantShare) + 0.04631 * pregnantShare;
    }

    @Override
    public double kilograms() {
        return (Math.pow(shrunkWeight, 0.75) * (0.04997 * dietNem * dietNem + stage()) / dietNem + 0.2 * milk) * factor;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of(
                        "c",
                        "0.03840·(1 − p) + 0.04631·p",
                        stage(),
                        NONE,
                        EQUATION,
                        Input.typed("p", pregnantShare, NONE)),
                Line.of(
                        "DMI",
                        "(SBW^0.75·(0.04997·NEm^2 + c)/NEm + 0.2·Y)·k",
                        kilograms(),
                        KILOGRAM_A_DAY,
                        EQUATION,
                        Input.typed("SBW", shrunkWeight, KILOGRAM),
                        Input.typed("NEm", dietNem, MCAL_PER_KG),
                        Input.typed("Y", milk, KILOGRAM_A_DAY),
                        Input.typed("k", factor, NONE)));
    }
}
