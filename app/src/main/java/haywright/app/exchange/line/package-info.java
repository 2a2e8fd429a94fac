/** A line of a report: its words, and the rows of names and figures that it comes apart into. */
@NullMarked
package haywright.app.exchange.line;

import org.jspecify.annotations.NullMarked;
