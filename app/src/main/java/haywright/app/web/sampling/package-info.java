/**
 * Take it: which bales, scoops or plots a sample takes, how sure it makes the answer, and what came back from the field.
 *
 * <p>Start at {@link haywright.app.web.sampling.TakePages}; sheets that were made are {@link
 * haywright.app.web.sampling.SheetPages}, fields {@link haywright.app.web.sampling.WalkPages}.
 */
@NullMarked
package haywright.app.web.sampling;

import org.jspecify.annotations.NullMarked;
