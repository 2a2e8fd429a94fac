/**
 * Linear programs: the one room that knows the solver.
 *
 * <p>Start at {@link haywright.lp.LinearProgram}: named columns (amounts to choose, each with a cost and bounds, some of
 * them whole numbers) and named rows (sums of them with limits), collected by a {@link haywright.lp.ProgramBuilder}, and
 * curved rows ({@link haywright.lp.ConvexRow}) that linear cuts hold. {@code solve()} answers once; {@code open()} gives a
 * {@link haywright.lp.Session} that is solved again quickly after a bound, a cost or a need has changed, from where it
 * stood or from a {@link haywright.lp.Basis} that was kept, within a {@link haywright.lp.Budget}. The answer is an {@link
 * haywright.lp.Optimum}, or a {@link haywright.lp.Whole} in whole numbers, or an {@link haywright.lp.Infeasible} that on
 * request names limits no answer can keep together, or an {@link haywright.lp.Unbounded}, or a {@link
 * haywright.lp.Stopped} where the budget was spent. That no answer exists is an answer, not an exception. NaN and
 * infinite coefficients are mistakes of the caller and are refused here, because the solver lets them pass in silence.
 *
 * <p>Numbers carry no unit here: the rooms above give them one. Knows nothing of feeds, cattle or files, except that it
 * unpacks the solver's native library into a cache folder.
 */
@NullMarked
package haywright.lp;

import org.jspecify.annotations.NullMarked;
