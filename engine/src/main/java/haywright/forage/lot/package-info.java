/**
 * What one lot holds: its kind's usual composition, moved by its reports as far as sampling and laboratory allow.
 *
 * <p>Start at {@link haywright.forage.lot.LotComposition}; {@link haywright.forage.lot.LotEstimate} says how far to trust it.
 */
@NullMarked
package haywright.forage.lot;

import org.jspecify.annotations.NullMarked;
