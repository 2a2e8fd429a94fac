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

    /** What a composite may have where nothing mixes, ppm NO3-N: alone, and as the day's second feed. */
    public static double[] unmixedLimits(Need need) {
        return new double[] {PracticeLimits.nitrateLimit(need), PracticeLimits.secondFeedLimit(need)};
    }
}
