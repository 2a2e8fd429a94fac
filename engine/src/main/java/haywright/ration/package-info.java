/**
 * Least-cost rations: which feeds, how much of each, what every limit costs, and what stands in the way when there is
 * none.
 *
 * <p>Start at {@link haywright.ration.LeastCostRation}. In: priced feeds and the rows of a {@link haywright.diet.Diet}.
 * Out: a {@link haywright.ration.Ration}, or a {@link haywright.ration.NoRation} that names the limits no ration can
 * keep together. {@link haywright.ration.HandMix} judges amounts that somebody typed by the same rows.
 *
 * <p>Amounts are kg of dry matter eaten a head and day; dollars a head and day. Pounds, as-fed weights and bales exist
 * only outside the engine. Knows {@code diet} and what lies below it, and {@code lp}.
 */
@NullMarked
package haywright.ration;

import org.jspecify.annotations.NullMarked;
