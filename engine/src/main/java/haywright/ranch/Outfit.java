package haywright.ranch;

import haywright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What this outfit can feed with.
 *
 * @param mixer whether there is a mixer wagon; without one nothing is diluted and meal is fed by hand
 * @param mixerHolds what one load holds, as fed
 * @param processor whether bales can be chopped
 * @param scale whether the wagon weighs
 * @param bunk length of feed bunk
 * @param timesADay how often feed is put out
 */
public record Outfit(
        boolean mixer,
        @Nullable Quantity mixerHolds,
        boolean processor,
        boolean scale,
        @Nullable Quantity bunk,
        int timesADay) {
    public static final Outfit NOT_SAID = new Outfit(false, null, false, false, null, 1);
}
