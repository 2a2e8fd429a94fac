/** A laboratory's report as lines of text: pasted, or out of a PDF. */
@NullMarked
package haywright.app.exchange.text;

import org.jspecify.annotations.NullMarked;
