/**
 * Pictures that people took, made fit to be kept.
 *
 * <p>Start at {@link haywright.app.exchange.image.Photo}.
 */
@NullMarked
package haywright.app.exchange.image;

import org.jspecify.annotations.NullMarked;
