package haywright.feeding;

import haywright.ration.HandMix;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.DoubleSupplier;

/** One way to feed a group. */
public final class Offer {
    private final HandMix mix;
    private final Map<PricedFeed, LocalDate> gone;
    private final DoubleSupplier holds;
    private double percent = Double.NaN;

    /** @param holds is asked once, when somebody asks: it takes thousands of draws */
    Offer(HandMix mix, Map<PricedFeed, LocalDate> gone, DoubleSupplier holds) {
        this.mix = mix;
        this.gone = Collections.unmodifiableMap(new LinkedHashMap<>(gone));
        this.holds = holds;
    }

    /** In amounts that can be weighed out. */
    public HandMix mix() {
        return mix;
    }

    /** Feeds that do not reach to grass if all groups are fed on like today, and the day before which each is gone. */
    public Map<PricedFeed, LocalDate> gone() {
        return gone;
    }

    /** Percent of the ways that its feeds may be made, in which it meets every need and keeps every danger. */
    public synchronized double holdsPercent() {
        if (Double.isNaN(percent)) {
            percent = holds.getAsDouble();
        }
        return percent;
    }

    /**
     * What decides, dollars a head and day to the cent: each feed at its price, or at what it is worth to all groups until
     * grass where that is more. Of two ways to feed a group the one that counts less is better for the ranch.
     */
    public double counted() {
        return mix.counted();
    }

    /** Dollars a head and day, to the cent as it is printed: what is multiplied comes out with a pencil. */
    public double cents() {
        return Math.rint(100 * mix.cost()) / 100;
    }
}
