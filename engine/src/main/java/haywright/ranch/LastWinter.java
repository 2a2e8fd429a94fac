package haywright.ranch;

import haywright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Last winter as the ranch remembers it; checked against what the equations say it needed before advice is given.
 *
 * @param head cattle fed
 * @param days days fed
 * @param fed everything fed, as tons of hay as fed
 * @param scoreBefore mean condition score of the cows in autumn
 * @param scoreAfter and in spring
 */
public record LastWinter(
        @Nullable Integer head,
        @Nullable Integer days,
        @Nullable Quantity fed,
        @Nullable Double scoreBefore,
        @Nullable Double scoreAfter) {
    public static final LastWinter NOT_SAID = new LastWinter(null, null, null, null, null);
}
