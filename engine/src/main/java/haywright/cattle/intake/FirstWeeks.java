package haywright.cattle.intake;

import static haywright.quantity.Unit.DAY;
import static haywright.quantity.Unit.IU_PER_KG;
import static haywright.quantity.Unit.IU_PER_LB;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.PERCENT;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * Calves in the four weeks after weaning, or on a place that is new to them: they eat little, and need more in it.
 * <pre>
 * eats = p·BW / 100      kg of dry matter a day; p is 1.55 % in the first week and 2·1.90 − 1.55 in the second
 * A    = 2250 IU/lb      vitamin A, of dry matter
 * </pre>
 * From the third week on they eat as the equations expect, or more. 1.55 % over a week and 1.90 % over two are of healthy
 * calves that had been shipped; those weaned at home do better, sick ones eat hardly half.
 *
 * @param day since weaning or arrival, 0 to 27
 * @param bodyWeight full, kg
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000: intake of newly arrived calves (from memory)"
 */
public record FirstWeeks(long day, double bodyWeight) implements Worked {
    private static final int WEEK = 7;
    private static final int LAST_OF_LITTLE = 14;
    private static final int LAST = 28;
    private static final Source INTAKE = Source.memory(
            "NRC 1996/2000: dry matter intake of newly arrived healthy calves, 1.55 % and 1.90 % of weight");
    private static final Source VITAMIN =
            Source.read("Oklahoma State Extension, Supplementing Vitamin A, Table 1: stressed steers and heifers");

    /** Whether a day lies in these weeks. */
    public static boolean holds(long day) {
        return day >= 0 && day < LAST;
    }

    /** Whether they still eat less than the equations expect. */
    public boolean eatsLittle() {
        return day < LAST_OF_LITTLE;
    }

    /** Percent of body weight as dry matter; meant for the first two weeks. */
    public double percent() {
        return day < WEEK ? 1.55 : 2 * 1.90 - 1.55;
    }

    /** kg of dry matter a day; meant for the first two weeks. */
    public double kilograms() {
        return percent() * bodyWeight / 100;
    }

    /** IU in a kg of the dry matter of all they eat. */
    public double vitaminA() {
        return IU_PER_LB.toBase(2250);
    }

    @Override
    public List<Line> lines() {
        var weight = Input.typed("BW", bodyWeight, KILOGRAM);
        var vitamin = Line.of("A", "2250 / 0.45359237", vitaminA(), IU_PER_KG, VITAMIN);
        return eatsLittle()
                ? List.of(
                        Line.of(
                                "p",
                                day < WEEK ? "1.55" : "2·1.90 − 1.55",
                                percent(),
                                PERCENT,
                                INTAKE,
                                Input.typed("day", day, DAY)),
                        Line.of("eats", "p·BW / 100", kilograms(), KILOGRAM_A_DAY, INTAKE, weight),
                        vitamin)
                : List.of(vitamin);
    }
}
