/**
 * What in a feed or in water can hurt cattle, and what damage costs: nitrate, minerals that tie each other up, soil,
 * heat, poor fermentation. Every limit stands with its source; a veterinarian and local rules come first.
 *
 * <p>Start at {@link haywright.forage.hazard.HazardClass} and {@link haywright.forage.hazard.NitrateClass}.
 */
@NullMarked
package haywright.forage.hazard;

import org.jspecify.annotations.NullMarked;
