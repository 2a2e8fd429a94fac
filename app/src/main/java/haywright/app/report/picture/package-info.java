/**
 * The pictures and the drawings of stacks and fields: SVG that a page and a paper show alike.
 *
 * <p>Start at {@link haywright.app.report.picture.NeedPicture}.
 */
@NullMarked
package haywright.app.report.picture;

import org.jspecify.annotations.NullMarked;
