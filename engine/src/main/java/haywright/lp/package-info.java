/**
 * Linear programs: the one room that knows the solver.
 *
 * <p>Start at {@link haywright.lp.LinearProgram}: named columns (amounts to choose, each with a cost and bounds) and
 * named rows (sums of them with limits). {@code solve()} answers once; {@code open()} gives a {@link
 * haywright.lp.LpSession} that is solved again quickly after a bound, a cost or a row has changed. The answer is an
 * {@link haywright.lp.Optimum}, or an {@link haywright.lp.Infeasible} that names limits no answer can keep together, or
 * an {@link haywright.lp.Unbounded}. That no answer exists is an answer, not an exception. NaN and infinite
 * coefficients are mistakes of the caller and are refused here, because the solver lets them pass in silence.
 *
 * <p>Numbers carry no unit here: the rooms above give them one. Knows nothing of feeds, cattle or files, except that it
 * unpacks the solver's native library into a cache folder.
 */
@NullMarked
package haywright.lp;

import org.jspecify.annotations.NullMarked;
