package haywright.diet;

import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Made;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.Spread;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

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
    /** How far one of its figures may lie; not at all where its figures were given as they stand. */
    Spread spread(ToDoubleFunction<Made> figure) {
        return lot.map(all -> all.of(figure)).orElseGet(() -> Spread.certain(figure.applyAsDouble(composition)));
    }

    /** Whose figures were given as they stand. */
    public Feed(String id, String name, FeedClass feedClass, Composition composition, boolean nitrateDanger) {
        this(id, name, feedClass, composition, nitrateDanger, Optional.empty());
    }
}
