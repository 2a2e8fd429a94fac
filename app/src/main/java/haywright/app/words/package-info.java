/**
 * The one place where numbers, units and dates are read from a person and written for one, and where figures are
 * rounded.
 *
 * <p>Start at {@link haywright.app.words.Parse} (text in, a {@link haywright.quantity.Quantity} out, or a sentence that
 * says what was wrong) and {@link haywright.app.words.Show} (a figure in, text out), in the units of
 * {@link haywright.app.words.Measures}. The engine keeps kilograms, °C and dry matter unrounded; pounds, tons, °F and
 * dollars exist only here. 1 ton is 2,000 lb, 1 tonne 1,000 kg.
 *
 * <p>Knows the engine.
 */
@NullMarked
package haywright.app.words;

import org.jspecify.annotations.NullMarked;
