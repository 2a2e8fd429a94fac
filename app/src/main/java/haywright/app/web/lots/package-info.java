/**
 * Lots: what is in the yard, what it weighs and how that was worked out, and the feeds that can be bought beside it.
 *
 * <p>Start at {@link haywright.app.web.lots.LotPages}. The pattern for every page of the trail: a class of handlers, a
 * class that knows one form, a template for each page beside them.
 */
@NullMarked
package haywright.app.web.lots;

import org.jspecify.annotations.NullMarked;
