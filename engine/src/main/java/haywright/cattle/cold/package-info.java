/**
 * What cold costs: coat, wet, mud and wind, by the rule of degrees and by the balance of heat.
 *
 * <p>Start at {@link haywright.cattle.cold.Exposure}.
 */
@NullMarked
package haywright.cattle.cold;

import org.jspecify.annotations.NullMarked;
