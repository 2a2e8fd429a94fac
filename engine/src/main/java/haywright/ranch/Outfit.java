package haywright.ranch;

import haywright.diet.Mixing;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import org.jspecify.annotations.Nullable;

/**
 * What this outfit can feed with.
 *
 * @param mixer whether there is a mixer wagon; without one nothing is diluted and meal is fed by hand; null where nobody
 *     said, which is never taken for a yes
 * @param mixerHolds what one load holds, as fed
 * @param processor whether bales can be chopped
 * @param scale whether the wagon weighs
 * @param bunk length of feed bunk
 * @param timesADay how often feed is put out
 * @param handling dollars to load, haul and put out a ton as fed; null where nobody said, and counted as nothing
 */
public record Outfit(
        @Nullable Boolean mixer,
        @Nullable Quantity mixerHolds,
        boolean processor,
        boolean scale,
        @Nullable Quantity bunk,
        int timesADay,
        @Nullable Quantity handling) {
    /** Whose handling nobody said. */
    public Outfit(
            @Nullable Boolean mixer,
            @Nullable Quantity mixerHolds,
            boolean processor,
            boolean scale,
            @Nullable Quantity bunk,
            int timesADay) {
        this(mixer, mixerHolds, processor, scale, bunk, timesADay, null);
    }

    public Outfit {
        if (mixerHolds != null) {
            Refused.unlessOfKind(Kind.MASS, "mixerHolds", mixerHolds);
        }
        if (bunk != null) {
            Refused.unlessOfKind(Kind.LENGTH, "bunk", bunk);
        }
        if (handling != null) {
            Refused.unlessOfKind(Kind.PRICE, "handling", handling);
            if (handling.value() < 0) {
                throw new Refused(
                        "handling",
                        "$" + handling.value(),
                        "handling costs nothing or more",
                        "Leave it empty for none.");
            }
        }
        if (timesADay < 1 || timesADay > 6) {
            throw new Refused(
                    "timesADay", timesADay + " times", "feedings are 1 to 6 a day", "Enter feedings per day.");
        }
    }

    public static final Outfit NOT_SAID = new Outfit(null, null, false, false, null, 1);

    /** Whether grain and cake go into something; on the ground more of it is lost. */
    public boolean feedsInBunks() {
        return mixing().mixes() || bunk != null && bunk.base() > 0;
    }

    /** Dollars a kg as fed put out. */
    public double handlingPerKg() {
        return handling == null ? 0 : handling.in(Unit.DOLLAR_PER_KG);
    }

    public Mixing mixing() {
        return mixer == null ? Mixing.NOT_SAID : mixer ? Mixing.MIXES : Mixing.NO_MIXER;
    }
}
