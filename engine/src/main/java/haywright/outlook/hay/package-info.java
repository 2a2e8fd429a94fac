/**
 * What to do where hay does not reach grass: how many tons are short, the day it is gone, and steps in the order in which
 * they hurt least, each with what it brings.
 *
 * <p>Start at {@link haywright.outlook.hay.ShortOfHay}. Knows the yard and what is below it; the yard does not know it.
 */
@NullMarked
package haywright.outlook.hay;

import org.jspecify.annotations.NullMarked;
