package haywright.diet;

import haywright.cattle.need.Need;
import haywright.forage.Analyte;
import haywright.forage.Composition;

/**
 * How a feed may be fed for its nitrate, by the published classes of a composite sample. All figures are ppm NO3-N of dry
 * matter, with what the water adds to each kilogram eaten.
 *
 * <p>At or below the strictest line that is safe for these cattle it is free: it counts as it was found, and never stands in
 * the way alone. Above it the lot counts at what it has less of nine times in ten. A feed that nobody tested and that is
 * no risk is taken for the usual one of its kind by the same rule, so that no result below that can make it less usable.
 *
 * @param found of the composite, or what is usual where nobody tested; with the water's
 * @param counted what a row of the whole diet counts of it; the water stands beside
 * @param safe the line below which these cattle may have it alone
 */
record NitrateFed(How how, boolean tested, double found, double counted, double safe, double water) {
    enum How {
        FREE,
        /** Only mixed into the rest. */
        MIXED,
        /** Where nothing mixes: after other feed, as at most half of the day. */
        SECOND,
        /** Where nothing mixes: not at all. */
        NEEDS_A_MIXER,
        /** In a class that is not to be fed, however it is diluted. */
        OUT,
        /** A crop that stores nitrate, and no result. */
        UNKNOWN
    }

    static NitrateFed of(Feed feed, Need need, DietOptions options) {
        var known = feed.composition().value(Analyte.NO3N);
        double safe = PracticeLimits.nitrateLimit(need);
        double adds = options.water().nitrateADay(need);
        double water = adds == 0 ? 0 : adds / PracticeLimits.usualIntake(need);
        if (known.isEmpty() && feed.nitrateDanger()) {
            return new NitrateFed(How.UNKNOWN, false, Double.NaN, Double.NaN, safe, water);
        }
        var usual = feed.composition().expected().get(Analyte.NO3N);
        double found = known.orElse(usual == null ? 0 : usual.mean());
        double upper = known.isPresent()
                ? feed.composition().upper(Analyte.NO3N).orElseThrow()
                : usual == null ? 0 : Math.max(usual.mean(), usual.quantile(Composition.UPPER));
        var how = how(water + found, safe, need, options.mixing());
        return new NitrateFed(how, known.isPresent(), water + found, how == How.FREE ? found : upper, safe, water);
    }

    private static How how(double found, double safe, Need need, Mixing mixing) {
        if (found > PracticeLimits.NITRATE_DO_NOT_FEED) {
            return How.OUT;
        }
        if (found <= safe) {
            return How.FREE;
        }
        if (mixing.mixes()) {
            return How.MIXED;
        }
        return found <= PracticeLimits.secondFeedLimit(need) ? How.SECOND : How.NEEDS_A_MIXER;
    }
}
