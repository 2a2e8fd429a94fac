/**
 * The groups of a herd: their animals, condition, calving; what is unusual in them, and how they are parted and joined.
 *
 * <p>Start at {@link haywright.cattle.herd.Group}; {@link haywright.cattle.herd.HerdCheck} says what cannot be.
 */
@NullMarked
package haywright.cattle.herd;

import org.jspecify.annotations.NullMarked;
