package haywright.ration;

import haywright.lp.Range;

/** Makes portions out of amounts. */
final class Portions {
    /** Below a hundredth of a gram a day nothing is fed. */
    static final double NOTHING = 1e-8;

    /** Where a curved row is tight no range means anything. */
    static final Range NO_RANGE = new Range(Double.NaN, Double.NaN);

    private Portions() {}

    static Portion of(PricedFeed feed, double kg, Range priceRange) {
        return new Portion(feed, kg, feed.putOut(kg), kg * feed.costPerKgEaten(), priceRange);
    }
}
