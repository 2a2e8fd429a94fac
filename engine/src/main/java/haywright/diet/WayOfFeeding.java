package haywright.diet;

/** How a group is fed: it decides what is a choice at all. */
public enum WayOfFeeding {
    /** The cattle decide: each eats what it wants of the forage in front of it, and a blend does not exist. */
    FREE_CHOICE,
    /** Rolled out or processed, and eaten up by the next time. */
    PUT_OUT_DAILY,
    /** Measured, with room for all at once. */
    BUNK,
    /** Less than they would eat, of richer feed: a program of its own, on request. */
    LIMIT_FED
}
