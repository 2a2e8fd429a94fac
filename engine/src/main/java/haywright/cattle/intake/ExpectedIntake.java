package haywright.cattle.intake;

import haywright.workings.Worked;

/**
 * Free-choice intake, kg of dry matter per head per day: what the equations expect, right to 8 to 15 %. It is not what an
 * animal can hold ({@link ForageCapacity}), and never a ceiling for a ration: for a cow late in pregnancy on plain hay it
 * lies below what she needs and does eat.
 */
public sealed interface ExpectedIntake extends Worked permits CowIntake1996, GrowingIntake1996, GrowingIntake2016 {
    /** Changes nothing: no factor for temperature or mud. */
    double NO_FACTOR = 1;

    /** kg of dry matter per head per day. */
    double kilograms();
}
