/** The eight steps of the trail, and what is done and what waits at each, told from the ranch document alone. */
@NullMarked
package haywright.app.web.trail;

import org.jspecify.annotations.NullMarked;
