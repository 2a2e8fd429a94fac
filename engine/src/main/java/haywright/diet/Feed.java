package haywright.diet;

import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.lot.LotDistribution;
import java.util.Optional;

/**
 * A feed as a diet sees it.
 *
 * @param id the lot's or bought feed's id, unique in a diet
 * @param composition as it is expected
 * @param nitrateDanger a class or a year in which nitrate is a danger until it is tested
 * @param lot all that it may be made of; empty where its figures were given as they stand
 */
public record Feed(
        String id,
        String name,
        FeedClass feedClass,
        Composition composition,
        boolean nitrateDanger,
        Optional<LotDistribution> lot) {
    /** Whose figures were given as they stand. */
    public Feed(String id, String name, FeedClass feedClass, Composition composition, boolean nitrateDanger) {
        this(id, name, feedClass, composition, nitrateDanger, Optional.empty());
    }
}
