/**
 * How a lot is stacked or stored, what it weighs with its range, and where in it each unit lies.
 *
 * <p>Start at {@link haywright.sampling.stock.Stock}; {@link haywright.sampling.stock.Picks} says which units to take.
 */
@NullMarked
package haywright.sampling.stock;

import org.jspecify.annotations.NullMarked;
