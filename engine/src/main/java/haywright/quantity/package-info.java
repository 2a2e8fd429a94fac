/**
 * Units and their factors, in the one place that knows them.
 *
 * <p>Start at {@link Unit}. Inside the engine everything is kilograms, megacalories, degrees Celsius and meters, on dry
 * matter; a {@link Quantity} keeps a value as somebody typed it, with the unit it was typed in.
 *
 * <p>Knows nothing else in the house.
 */
@NullMarked
package haywright.quantity;

import org.jspecify.annotations.NullMarked;
