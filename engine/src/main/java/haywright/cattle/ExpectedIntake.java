package haywright.cattle;

import haywright.workings.Worked;
import java.util.function.DoubleFunction;

/**
 * Free-choice intake, kg of dry matter a head and day: what the equations expect, right to 8 to 15 %. It is not what an
 * animal can hold ({@link ForageCapacity}), and never a ceiling for a ration: for a cow late in pregnancy on plain hay it
 * lies below what she needs and does eat.
 */
public sealed interface ExpectedIntake extends Worked permits CowIntake1996, GrowingIntake1996, GrowingIntake2016 {
    /** Changes nothing: no factor for temperature or mud. */
    double NO_FACTOR = 1;

    /** kg of dry matter a head and day. */
    double kilograms();

    /**
     * Cows and heifers that calve: the cow equation, the same in both editions. Growing cattle: the edition's own, as
     * calves under a year in the older one. Bulls: the yearling equation of 1996 in both, since the one of 2016 is made
     * for cattle that grow and gives grown bulls a fifth too much.
     *
     * @param dietNem NEm of the whole diet, Mcal/kg of dry matter
     */
    static ExpectedIntake of(Need need, double dietNem) {
        return of(need, dietNem, need.intakeFactor());
    }

    /** @param factor for temperature and mud: {@link IntakeTemperature} */
    static ExpectedIntake of(Need need, double dietNem, double factor) {
        return by(need, factor).apply(dietNem);
    }

    /** The same for diet after diet: the need is asked once. */
    static DoubleFunction<ExpectedIntake> by(Need need) {
        return by(need, need.intakeFactor());
    }

    private static DoubleFunction<ExpectedIntake> by(Need need, double factor) {
        double weight = need.shrunkWeight();
        if (need.animals().calves()) {
            double pregnant = need.pregnantShare();
            double milk = need.milk();
            return dietNem -> new CowIntake1996(weight, pregnant, milk, dietNem, factor);
        }
        if (need.animals() == AnimalClass.BULL) {
            return dietNem -> new GrowingIntake1996(weight, true, dietNem, factor);
        }
        return need.system() == RequirementSystem.NASEM_2016
                ? dietNem -> new GrowingIntake2016(weight, dietNem, factor)
                : dietNem -> new GrowingIntake1996(weight, false, dietNem, factor);
    }
}
