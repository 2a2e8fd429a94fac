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
 * Free-choice intake of growing cattle, and of bulls, in the edition of 1996.
 * <pre>
 * DMI = SBW^0.75·(0.2435·NEm − 0.0466·NEm^2 − c) / NEm·k        kg of dry matter a day
 * </pre>
 * c is 0.1128 for calves and 0.0869 for yearlings, over about 11 to 12 months. The source divides by 0.95 where NEm is
 * below it; the published row of a grown bull on such a diet does not, and neither does this.
 *
 * @param dietNem NEm of the diet, Mcal/kg of dry matter
 * @param factor k for temperature and mud; 1 for none
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000, chapter 7"
 */
public record GrowingIntake1996(double shrunkWeight, boolean yearling, double dietNem, double factor)
        implements ExpectedIntake {
    private static final double CALVES = 0.1128;
    private static final double YEARLINGS = 0.0869;
    private static final Source EQUATION = Source.reproduces("NRC 1996/2000 ch. 7; The Cattleman, Feb 2015, Chart 1");

    public GrowingIntake1996 {
        Limits.of("diet_nem").check("dietNem", dietNem, MCAL_PER_KG).refuse();
    }

    private double age() {
        return yearling ? YEARLINGS : CALVES;
    }

    @Override
    public double kilograms() {
        return Math.pow(shrunkWeight, 0.75)
                * (0.2435 * dietNem - 0.0466 * dietNem * dietNem - age())
                / dietNem
                * factor;
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "DMI",
                "SBW^0.75·(0.2435·NEm − 0.0466·NEm^2 − c) / NEm·k",
                kilograms(),
                KILOGRAM_A_DAY,
                EQUATION,
                Input.typed("SBW", shrunkWeight, KILOGRAM),
                Input.typed("NEm", dietNem, MCAL_PER_KG),
                Input.published("c", age(), NONE, EQUATION),
                Input.typed("k", factor, NONE)));
    }
}
