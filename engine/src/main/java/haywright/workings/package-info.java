/**
 * How a number came to be, and what was refused and why.
 *
 * <p>Start at {@link haywright.workings.Worked}. Every equation of the engine is a record that implements it, so the
 * object graph is the tree of workings; nothing is built until {@code lines()} is asked, so that drawing an equation
 * thousands of times stays fast. {@link haywright.workings.Refused} carries what came in, which rule it broke and what
 * to do, for a message beside the field. {@link haywright.workings.PublishedTable} reads the tables of published
 * numbers that ship with the engine, each row with its source.
 *
 * <p>Knows {@code quantity} only.
 */
@NullMarked
package haywright.workings;

import org.jspecify.annotations.NullMarked;
