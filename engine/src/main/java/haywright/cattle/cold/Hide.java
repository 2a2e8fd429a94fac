package haywright.cattle.cold;

import java.util.Locale;

/** What lies on the coat and takes its warmth. */
public enum Hide {
    /** Dry and clean. */
    DRY(1.0),
    /** Some mud, low on the body. */
    SOME_MUD(0.8),
    /** Wet, or matted with mud. */
    WET(0.5),
    /** Covered with wet snow or mud. */
    COVERED(0.2);

    private final double left;

    Hide(double left) {
        this.left = left;
    }

    /** MUD of the heat balance: the share of the coat's insulation that is left (NRC 1996/2000, from memory). */
    public double left() {
        return left;
    }

    /** As the rule of thumb counts it: a little mud low down is still a dry coat. */
    public boolean wet() {
        return this == WET || this == COVERED;
    }

    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
