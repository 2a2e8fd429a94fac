/**
 * What still stands in a field: its shape, the walk through it and what it yields.
 *
 * <p>Start at {@link haywright.sampling.field.FieldWalk} and {@link haywright.sampling.field.PlotYield}.
 */
@NullMarked
package haywright.sampling.field;

import org.jspecify.annotations.NullMarked;
