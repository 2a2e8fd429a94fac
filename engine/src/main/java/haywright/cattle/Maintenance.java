package haywright.cattle;

import static haywright.quantity.Unit.CELSIUS;
import static haywright.quantity.Unit.GRAM_A_DAY;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.MEGACALORIE;
import static haywright.quantity.Unit.NONE;

import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.List;

/**
 * What it takes for maintenance, without weather and without walking.
 * <pre>
 * COMP = 0.8 + 0.05·(CS − 1)                              what she was fed before
 * a2   = 0.0007·(20 − Tp)                                 what last month's cold has taught her body
 * NEma = SBW^0.75·a2                                     Mcal a day, for the cold of the month before
 * NEmm = SBW^0.75·(0.077·BE·L·SEX·COMP + a2)              Mcal a day
 * MPm  = 3.8·SBW^0.75                                     g a day
 * </pre>
 * BE is the breed's; L is 1.2 in milk and 1 dry; SEX is 1.15 for bulls. One table of 2018 has L 1.25 for first-calf
 * heifers; both editions' 1.2 stands here. Published cow tables are at condition 5, where COMP is 1, and at 20 °C. Holds
 * for cows of 400 to 800 kg.
 *
 * @see "NRC, Nutrient Requirements of Beef Cattle, 1996/2000; 0.077 also in Journal of Animal Science 86:2680 (read)"
 */
public record Maintenance(Animal animal) implements Worked {
    private static final double BULLS = 1.15;
    private static final double IN_MILK = 1.2;
    private static final Source CONDITION =
            Source.memory("NRC 1996/2000: previous nutrition, breed, sex, acclimatization");
    private static final Source ENERGY = Source.reproduces("NRC 1996/2000; Univ. Nebraska, Using BCS, Table 2");
    private static final Source PROTEIN = Source.reproduces("NRC 1996/2000; The Cattleman, Feb 2015, Chart 1");

    /** kg^0.75 of shrunk weight. */
    public double metabolicWeight() {
        return Math.pow(animal.weight().shrunk(), 0.75);
    }

    /** COMP, no unit. */
    public double previousNutrition() {
        return 0.8 + 0.05 * (animal.conditionScore() - 1);
    }

    /** a2, Mcal/kg^0.75. Do not count a month-long cold again as cold stress. */
    public double acclimatization() {
        return 0.0007 * (20 - animal.previousTemperature());
    }

    /** The part of {@link #nem()} that last month's cold added, Mcal a day; below zero after a month above 20 °C. */
    public double nemAcclimatization() {
        return metabolicWeight() * acclimatization();
    }

    /** Mcal a day. */
    public double nem() {
        return metabolicWeight()
                * (0.077 * animal.breed().effect() * lactating() * sex() * previousNutrition() + acclimatization());
    }

    /** g a day. */
    public double metabolizableProtein() {
        return 3.8 * metabolicWeight();
    }

    private double lactating() {
        return animal.lactation() == null ? 1 : IN_MILK;
    }

    private double sex() {
        return animal.animals() == AnimalClass.BULL ? BULLS : 1;
    }

    @Override
    public List<Line> lines() {
        var weight = Input.computed("SBW", animal.weight().shrunk(), KILOGRAM, animal.weight());
        return List.of(
                Line.of("MPm", "3.8·SBW^0.75", metabolizableProtein(), GRAM_A_DAY, PROTEIN, weight),
                Line.of(
                        "COMP",
                        "0.8 + 0.05·(CS − 1)",
                        previousNutrition(),
                        NONE,
                        CONDITION,
                        Input.typed("CS", animal.conditionScore(), NONE)),
                Line.of(
                        "a2",
                        "0.0007·(20 − Tp)",
                        acclimatization(),
                        NONE,
                        CONDITION,
                        Input.typed("Tp", animal.previousTemperature(), CELSIUS)),
                Line.of("NEma", "SBW^0.75·a2", nemAcclimatization(), MEGACALORIE, CONDITION, weight),
                Line.of(
                        "NEmm",
                        "SBW^0.75·(0.077·BE·L·SEX·COMP + a2)",
                        nem(),
                        MEGACALORIE,
                        ENERGY,
                        weight,
                        Input.published(
                                "BE",
                                animal.breed().effect(),
                                NONE,
                                animal.breed().source()),
                        Input.published("L", lactating(), NONE, ENERGY),
                        Input.published("SEX", sex(), NONE, CONDITION)));
    }
}
