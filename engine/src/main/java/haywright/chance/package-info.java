/**
 * Quantiles, seeded draws, and normal values that hang together.
 *
 * <p>Start at {@link haywright.chance.Draws} for numbers by chance that are the same for the same seed, and at {@link
 * haywright.chance.Normal}, {@link haywright.chance.Student} and {@link haywright.chance.ChiSquare} for quantiles.
 * {@link haywright.chance.Gaussian} holds values that hang together, and {@link haywright.chance.Conditional} what is known
 * of them after some were seen. Everything is computed with {@code StrictMath}, so that a printed answer can be had again byte for byte.
 *
 * <p>Probabilities are fractions here, 0 to 1. Knows {@code quantity} and {@code workings} only.
 */
@NullMarked
package haywright.chance;

import org.jspecify.annotations.NullMarked;
