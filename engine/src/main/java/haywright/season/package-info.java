/**
 * Whether the feed lasts to grass, and what to do about it: a plan from today to turnout, made again each week with what is
 * then known, and judged on whole winters that it was not made from.
 *
 * <p>Start at {@link haywright.season.BookMaker}. What is given of a winter is in {@code given}, plans and winters played in
 * {@code play}: what decides there is told what is known and never what is true; only the judge has both.
 */
@NullMarked
package haywright.season;

import org.jspecify.annotations.NullMarked;
