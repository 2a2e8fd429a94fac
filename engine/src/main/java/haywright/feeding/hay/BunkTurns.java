package haywright.feeding.hay;

import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import haywright.quantity.Unit;

/**
 * Turns in which cattle that fight for their feed go to the bunk, all of a turn at once.
 *
 * @see "High Grain Rations, National Drought Mitigation Center, University of Nebraska: 24 to 36 inches a cow (read)"
 */
public final class BunkTurns {
    /** Inches a cow. */
    private static final double EACH = 24;

    /** Nobody keeps more of them off the feed (judgment). */
    private static final int MOST = 3;

    private BunkTurns() {}

    /** Feet that so many head need to eat all at once. */
    public static double feet(int head) {
        return Math.ceil(head * EACH / 12);
    }

    /** Empty of feet: 0. */
    public static int of(int head, double feet) {
        return feet == 0 ? 0 : (int) Math.ceil(head / Math.floor(feet * head / feet(head)));
    }

    public static boolean areTooMany(int turns) {
        return turns > MOST;
    }

    /** Whether a bunk is entered that mature cows in good condition cannot be fed grain at. */
    static boolean isBunkTooShort(Yard yard) {
        var bunk = yard.ranch().outfit().bunk();
        return bunk != null
                && bunk.value() > 0
                && yard.ranch().groups().values().stream()
                        .filter(HayFacts::isSturdy)
                        .anyMatch(cows -> areTooMany(of(cows.head(), bunk.in(Unit.FOOT))));
    }
}
