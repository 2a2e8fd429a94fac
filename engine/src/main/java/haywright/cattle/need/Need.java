package haywright.cattle.need;

import haywright.cattle.AnimalClass;
import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Regain;
import haywright.cattle.intake.CowIntake1996;
import haywright.cattle.intake.ExpectedIntake;
import haywright.cattle.intake.GrowingIntake1996;
import haywright.cattle.intake.GrowingIntake2016;
import haywright.cattle.intake.IntakeTemperature;
import haywright.workings.Worked;
import java.util.function.DoubleFunction;

/**
 * What one head needs on a day: of one animal, or the mean of a group over its calving dates. Everything that balances
 * a ration stands on this.
 */
public interface Need extends Worked {
    AnimalClass animals();

    RequirementSystem system();

    /** Full live weight without the conceptus, kg: what limits "percent of body weight" mean. */
    double bodyWeight();

    /** The same after shrink, kg: what equations mean. */
    double shrunkWeight();

    /** Share of the group with a calf in them, 0 to 1. */
    double pregnantShare();

    /** Mean day of gestation of those with a calf in them; 0 where none has. */
    double daysPregnant();

    /** Share of the group in milk, 0 to 1. */
    double milkingShare();

    /** Milk, kg a day; the mean over the whole group. */
    double milk();

    /** Mcal a day. */
    double nemMaintenance();

    /** Mcal a day, in terms of NEm. */
    double nemPregnancy();

    /** Mcal a day, in terms of NEm. */
    double nemLactation();

    /** Mcal a day, in terms of NEm; zero where no weather is said. */
    double nemCold();

    /** Mcal a day, to regain condition; zero where no score is wanted: {@link Regain}. */
    double nemRegain();

    /** Mcal a day: the part of {@link #nemMaintenance()} that last month's cold added. */
    double nemAcclimatization();

    /** Mcal a day: the sum of the five parts. Growth is {@link #neg()} and is never added to it. */
    default double nem() {
        return nemMaintenance() + nemPregnancy() + nemLactation() + nemCold() + nemRegain();
    }

    /** Mcal of NEg a day for the wanted gain; zero for cattle that hold. */
    double neg();

    /** Wanted gain, kg a day of shrunk weight. */
    double gain();

    /**
     * The gain that other energy would carry, kg a day.
     *
     * @param otherNeg Mcal of NEg a day, in place of {@link #neg()}
     */
    double gainOn(double otherNeg);

    /** The same cattle gaining on another energy for gain, with all else that goes by it. @param neg Mcal a day */
    Need gaining(double neg);

    /** Metabolizable protein, g a day. */
    double metabolizableProtein();

    /** Crude protein, kg a day, by the shortcut CP = MP / 0.67, before the floor of the diet. */
    double crudeProtein();

    /** The least share of protein in what they eat, whatever {@link #crudeProtein()} comes to. */
    default ProteinFloor proteinFloor() {
        return ProteinFloor.of(this);
    }

    /** g a day. */
    double calcium();

    /** g a day. */
    double phosphorus();

    /** L a day, what the feed brings included; as at 40 °F where no weather is said: {@link Water}. */
    double water();

    /** What all they eat must hold of a mineral or a vitamin. */
    default DietaryNeed dietary(Nutrient nutrient) {
        return DietaryNeed.of(nutrient, this);
    }

    /** What the weather makes of intake: 1 in mild weather or where none is said, more in the cold. */
    double intakeFactor();

    /**
     * What they are expected to eat of a diet when there is always some left.
     *
     * @param dietNem NEm of the whole diet, Mcal/kg of dry matter
     */
    default ExpectedIntake intake(double dietNem) {
        return intakes(intakeFactor()).apply(dietNem);
    }

    /**
     * The same for diet after diet: the need is asked once. Cows and heifers that calve: the cow equation, the same in both
     * editions. Growing cattle: the edition's own, as calves under a year in the older one. Bulls: the yearling equation
     * of 1996 in both, since the one of 2016 is made for cattle that grow and gives mature bulls a fifth too much.
     *
     * @param factor for temperature and mud: {@link IntakeTemperature}
     */
    default DoubleFunction<ExpectedIntake> intakes(double factor) {
        double weight = shrunkWeight();
        if (animals().calves()) {
            double pregnant = pregnantShare();
            double milk = milk();
            return dietNem -> new CowIntake1996(weight, pregnant, milk, dietNem, factor);
        }
        if (animals() == AnimalClass.BULL) {
            return dietNem -> new GrowingIntake1996(weight, true, dietNem, factor);
        }
        return system() == RequirementSystem.NASEM_2016
                ? dietNem -> new GrowingIntake2016(weight, dietNem, factor)
                : dietNem -> new GrowingIntake1996(weight, false, dietNem, factor);
    }
}
