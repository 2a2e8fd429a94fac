/**
 * GPX 1.1: a walk with its stops, for a phone or a hand-held receiver.
 *
 * <p>Start at {@link haywright.app.exchange.gpx.Gpx}.
 */
@NullMarked
package haywright.app.exchange.gpx;

import org.jspecify.annotations.NullMarked;
