/**
 * What to do where hay does not reach grass: how many tons are short, the day it is gone, and steps in the order in which
 * they hurt least, each with what it brings.
 *
 * <p>Start at {@link haywright.feeding.hay.ShortOfHay}. Knows the rations and what is below them; they do not know it.
 */
@NullMarked
package haywright.feeding.hay;

import org.jspecify.annotations.NullMarked;
