package haywright.ration;

import haywright.lp.Range;

/**
 * One feed in a ration.
 *
 * @param kg dry matter eaten a head and day
 * @param kgPutOut as fed, a head and day, feeding loss included
 * @param cost dollars a head and day
 * @param priceRange dollars a kg as fed between which the mix stays as it is, all else equal; NaN where no
 *     range means anything
 */
public record Portion(PricedFeed feed, double kg, double kgPutOut, double cost, Range priceRange) {
    /** Dollars that decide, a head and day: its cost, and what it is worth to other groups or later. */
    public double weighed() {
        return kg * feed.weighedPerKgEaten();
    }
}
