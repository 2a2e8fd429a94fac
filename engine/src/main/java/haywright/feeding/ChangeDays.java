package haywright.feeding;

import haywright.outlook.HayFacts;

/**
 * How long cattle take from one ration to the next: a quarter of the change at a time, so that the rumen keeps up. A quarter
 * stands three days, and longer where it has so much grain that a pound more would come before four days are over: ten days
 * for little grain, three weeks for the most.
 *
 * @see "Yaremcio, Changing feeding programs: steps of 3 to 4 days; University of Missouri (Olson): 14 days onto grain"
 */
public final class ChangeDays {
    public static final int QUARTERS = 4;

    /** Pounds of grain more that are a change although the grain is none that is new to them. */
    public static final double MORE_GRAIN = 1;

    private static final int LEAST_DAYS = 3;

    private ChangeDays() {}

    /** Days of a quarter. @param grain pounds a head more than before */
    public static int each(double grain) {
        return Math.max(LEAST_DAYS, (int) Math.ceil(grain / QUARTERS * HayFacts.days("grain_step")));
    }

    /** Days until the first on which all of it is fed, that one counted. @param each of a quarter */
    public static int all(int each) {
        return (QUARTERS - 1) * each + 1;
    }
}
