package haywright.diet;

import haywright.cattle.need.Need;

/** How a feed of a diet goes out for its nitrate, as {@link Diet}'s rows hold it. */
public enum HowNitrateIsFed {
    FREE,
    /** Only mixed into the rest. */
    MIXED,
    /** After other feed, as at most half of the day. */
    SECOND,
    /** Not at all, by this outfit. */
    OUT;

    public static HowNitrateIsFed of(Feed feed, Diet diet) {
        return switch (NitrateFed.of(feed, diet.need(), diet.options()).how()) {
            case FREE -> FREE;
            case MIXED -> MIXED;
            case SECOND -> SECOND;
            case NEEDS_A_MIXER, OUT, UNKNOWN -> OUT;
        };
    }

    /** ppm NO3-N of the composite, with what the water adds: what decides how it goes out. */
    public static double found(Feed feed, Diet diet) {
        return NitrateFed.of(feed, diet.need(), diet.options()).found();
    }

    /** ppm NO3-N that the day's feed is counted with of it: above the line, what the lot has less of nine times in ten. */
    public static double counted(Feed feed, Diet diet) {
        return NitrateFed.of(feed, diet.need(), diet.options()).counted();
    }

    /** What a composite may have where nothing mixes, ppm NO3-N: alone, and as the day's second feed. */
    public static double[] unmixedLimits(Need need) {
        return new double[] {PracticeLimits.nitrateLimit(need), PracticeLimits.secondFeedLimit(need)};
    }
}
