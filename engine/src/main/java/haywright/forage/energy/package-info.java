/**
 * The published ways from what was measured to TDN, net energy and the relative feed values, each a record of its inputs.
 *
 * <p>Start at {@link haywright.forage.energy.WaysToTdn} and {@link haywright.forage.energy.NetEnergy}.
 */
@NullMarked
package haywright.forage.energy;

import org.jspecify.annotations.NullMarked;
