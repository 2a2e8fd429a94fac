package haywright.outlook.bench;

import haywright.ration.HandMix;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * One way to feed a group.
 *
 * @param mix in amounts that can be weighed out
 * @param holdsPercent of the ways that its feeds may be made, in which it meets every need and keeps every danger
 * @param gone feeds that do not reach to grass if all groups are fed on like today, and the day before which each is gone
 */
public record Offer(HandMix mix, double holdsPercent, Map<PricedFeed, LocalDate> gone) {
    public Offer {
        gone = Collections.unmodifiableMap(new LinkedHashMap<>(gone));
    }

    /** Dollars a head and day, to the cent as it is printed: what is multiplied comes out with a pencil. */
    public double cents() {
        return Math.rint(100 * mix.cost()) / 100;
    }
}
