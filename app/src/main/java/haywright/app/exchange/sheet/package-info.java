/**
 * What a phone gives back of a field sheet: a short text file, or its first line alone.
 *
 * <p>Start at {@link haywright.app.exchange.sheet.SheetFile}.
 */
@NullMarked
package haywright.app.exchange.sheet;

import org.jspecify.annotations.NullMarked;
