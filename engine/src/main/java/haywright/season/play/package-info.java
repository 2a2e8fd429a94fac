/**
 * Plans of a winter, and winters played: what is known, what is decided, what is true, and the judge who alone has both.
 */
@NullMarked
package haywright.season.play;

import org.jspecify.annotations.NullMarked;
