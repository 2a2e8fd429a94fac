/**
 * A lot as it lies there: how it is stacked or stored, and what it weighs.
 *
 * <p>Start at {@link haywright.sampling.Stock}. Masses in kg as fed, lengths in metres. Knows {@code chance},
 * {@code workings} and {@code quantity} only.
 */
@NullMarked
package haywright.sampling;

import org.jspecify.annotations.NullMarked;
