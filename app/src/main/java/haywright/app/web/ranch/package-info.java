/** A ranch as a whole: its home, what waits on it, and the settings that hold for every step. */
@NullMarked
package haywright.app.web.ranch;

import org.jspecify.annotations.NullMarked;
