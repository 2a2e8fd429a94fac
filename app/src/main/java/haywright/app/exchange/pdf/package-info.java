/** The text of a PDF, laid out as it stands on the page. */
@NullMarked
package haywright.app.exchange.pdf;

import org.jspecify.annotations.NullMarked;
