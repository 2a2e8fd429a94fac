/**
 * Photos of lots, and of the sheets that reports came on.
 *
 * <p>Start at {@link haywright.app.web.photo.PhotoPages}.
 */
@NullMarked
package haywright.app.web.photo;

import org.jspecify.annotations.NullMarked;
