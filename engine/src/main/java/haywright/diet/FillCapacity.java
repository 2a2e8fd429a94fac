package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.intake.ForageCapacity;
import haywright.cattle.need.Need;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.workings.Source;

/**
 * How much of one feed alone an animal could eat, kg of dry matter a day. Used as a share: a diet obeys
 * {@code Σ x / capacity ≤ 1}. A prediction of free-choice intake is never used as this limit: it makes every hay-only
 * ration of a cow in late gestation impossible.
 */
final class FillCapacity {
    static final Source SOURCE =
            Source.read("Hibberd and Thrift 1992 as reprinted by Oklahoma State University: forage a"
                    + " cow can eat by its digestibility, interpolated between the classes");

    /** Concentrates fill little; nothing eats more of its body weight a day than this (judgment). */
    private static final double CONCENTRATE_PERCENT = 3.5;

    private FillCapacity() {}

    static double kilograms(Feed feed, Need need) {
        return percentOfBodyWeight(feed, need) / 100 * need.bodyWeight();
    }

    private static double percentOfBodyWeight(Feed feed, Need need) {
        if (feed.feedClass() == FeedClass.STRAW) {
            return PracticeLimits.value("L17");
        }
        if (!feed.feedClass().isForage()) {
            return CONCENTRATE_PERCENT;
        }
        // The table has dry and milking cows; young growing cattle eat for their size at least as much as milking ones.
        double milking = need.animals() == AnimalClass.GROWING ? 1 : need.milkingShare();
        return ForageCapacity.percentOfBodyWeight(
                feed.composition().value(Analyte.TDN).orElseThrow(), milking);
    }
}
