package haywright.feeding.hay;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One thing to do where hay is short, after those before it.
 *
 * @param by the day to do it, from which its tons are figured; of {@code LIMIT_HAY} and {@code STRAW} the day to begin: they
 *     are figured from when cattle are used to it
 * @param before tons short without it
 * @param after tons short with it; the same where it saves nothing, or nothing is short any more
 * @param head how many are sold or sent away; 0 for other steps, or where nobody said
 * @param tonsAHead tons that each of them saves, on average; where nobody said how many, what one would; 0 for other steps
 * @param dollarsACow cash it takes for each cow kept, below 0 where it brings some; null where it is not known
 * @param score mean condition score of the mature cows at calving once it is done; null where none are due before grass
 */
public record HayStep(
        What what,
        LocalDate by,
        double before,
        double after,
        int head,
        double tonsAHead,
        @Nullable Double dollarsACow,
        @Nullable Double score) {
    /** In their order. */
    public enum What {
        /** Lots that only a test keeps out; nothing is counted of them, so it saves nothing until they are tested. */
        TEST,
        /** Nobody said what could be bought: asked first, and saves nothing until it is. */
        BUY_HAY,
        FEED_TO_NEED,
        CUT_WASTE,
        /** As much as the ranch lists for sale. */
        BUY_LISTED,
        SELL_OPEN,
        STRAW,
        LIMIT_HAY,
        ELSEWHERE,
        SELL_BRED;

        /** Whether it changes what those that stay are fed: a test, rings, hay in the yard and fewer head do not. */
        boolean isFeeding() {
            return this == FEED_TO_NEED || this == STRAW || this == LIMIT_HAY;
        }
    }

    /** Tons of hay. */
    public double saves() {
        return before - after;
    }
}
