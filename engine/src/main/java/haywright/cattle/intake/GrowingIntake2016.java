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
 * Free-choice intake of growing cattle in the edition of 2016.
 * <pre>
 * DMI = SBW·(1.2425 + 1.9218·NEm − 0.7259·NEm^2) / 100·k        kg of dry matter a day
 * </pre>
 *
 * @param dietNem NEm of the diet, Mcal/kg of dry matter
 * @param factor k for temperature and mud; 1 for none
 * @see "NASEM, Nutrient Requirements of Beef Cattle, 8th edition, 2016 (from memory)"
 */
public record GrowingIntake2016(double shrunkWeight, double dietNem, double factor) implements ExpectedIntake {
    private static final Source EQUATION = Source.memory("NASEM 2016, intake of growing cattle");

    public GrowingIntake2016 {
        Limits.of("diet_nem").check("dietNem", dietNem, MCAL_PER_KG).refuse();
    }

    @Override
    public double kilograms() {
        return shrunkWeight * (1.2425 + 1.9218 * dietNem - 0.7259 * dietNem * dietNem) / 100 * factor;
    }

    @Override
    public List<Line> lines() {
        return List.of(Line.of(
                "DMI",
                "SBW·(1.2425 + 1.9218·NEm − 0.7259·NEm^2) / 100·k",
                kilograms(),
                KILOGRAM_A_DAY,
                EQUATION,
                Input.typed("SBW", shrunkWeight, KILOGRAM),
                Input.typed("NEm", dietNem, MCAL_PER_KG),
                Input.typed("k", factor, NONE)));
    }
}
