/**
 * What a feed does for an animal, as rows: how much of each need a kilogram supplies, how much is needed, and why.
 *
 * <p>Start at {@link haywright.diet.Diet}. In: feeds of known composition and one {@link haywright.cattle.need.Need}. Out: a
 * row for every need and every limit of practice, the feeds that had to stay out and why. Rations, the match of lots to
 * groups and the winter all stand on the same rows.
 *
 * <p>Amounts are kg of dry matter eaten a head and day. Knows {@code forage} and {@code cattle}; knows nothing of
 * prices, solvers or pages.
 */
@NullMarked
package haywright.diet;

import org.jspecify.annotations.NullMarked;
