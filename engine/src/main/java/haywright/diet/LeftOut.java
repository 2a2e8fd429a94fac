package haywright.diet;

import haywright.forage.Analyte;
import java.util.Optional;

/**
 * A feed that may not be in this diet.
 *
 * @param danger whether it stays out because it could hurt the cattle, not because something is unknown
 * @param why in the rancher's words
 * @param fix what would let it in
 */
public record LeftOut(Feed feed, boolean danger, String why, String fix) {
    /** Whether practice alone keeps it out: all is known of it that a ration asks, and it hurts nobody. */
    public boolean isByPractice() {
        return !danger && Admission.hasEnergyAndProtein(feed);
    }

    /** Whether only a test of its nitrate keeps it out; what a clean test would leave of it. */
    public Optional<Feed> ifFoundSafe() {
        return danger && feed.nitrateDanger() && !feed.composition().knows(Analyte.NO3N)
                ? Optional.of(new Feed(feed.id(), feed.name(), feed.feedClass(), feed.composition(), false, feed.lot()))
                : Optional.empty();
    }
}
