/** The program around the engine: {@link haywright.app.Main} joins its rooms by hand. */
@NullMarked
package haywright.app;

import org.jspecify.annotations.NullMarked;
