/** Lots against groups: which lot carries which cattle alone, for how long, and where one falls short or is a danger. */
@NullMarked
package haywright.app.web.match;

import org.jspecify.annotations.NullMarked;
