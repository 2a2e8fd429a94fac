package haywright.cattle;

import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.MCAL_PER_KG;
import static haywright.quantity.Unit.NONE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import java.util.List;

/**
 * Free-choice intake of cows and of heifers that calve.
 * <pre>
 * c   = 0.04631·(1 − g) + 0.03840·g
 * DMI = (SBW^0.75·(0.04997·NEm^2 + c)/NEm + 0.2·Y)·k        kg of dry matter a day
 * </pre>
 * Kept in the edition of 2016. Its data are of 1979 to 1993 and likely low. Below NEm 0.9 Mcal/kg (about 48 % TDN) it
 * rises as the diet gets poorer, which cattle do not do: what they can hold decides there.
 *
 * @param lateShare g, share of the cows past the first third of gestation, 0 to 1
 * @param milk Y, kg a day
 * @param dietNem NEm of the diet, Mcal/kg of dry matter
 * @param factor k for temperature and mud; 1 for none
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, chapter 7 (from memory)"
 */
public record CowIntake1996(double shrunkWeight, double lateShare, double milk, double dietNem, double factor)
        implements ExpectedIntake {
    private static final Source EQUATION = Source.memory("NRC 1996/2000 ch. 7; kept in 2016");

    public CowIntake1996 {
        Limits.of("diet_nem").check("dietNem", dietNem, MCAL_PER_KG).refuse();
    }

    private double stage() {
        return 0.04631 * (1 - lateShare) + 0.03840 * lateShare;
    }

    @Override
    public double kilograms() {
        return (Math.pow(shrunkWeight, 0.75) * (0.04997 * dietNem * dietNem + stage()) / dietNem + 0.2 * milk) * factor;
    }

    @Override
    public List<Line> lines() {
        return List.of(
                Line.of("c", "0.04631·(1 − g) + 0.03840·g", stage(), NONE, EQUATION, Input.typed("g", lateShare, NONE)),
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
