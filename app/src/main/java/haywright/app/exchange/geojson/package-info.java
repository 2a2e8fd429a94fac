/**
 * GeoJSON (RFC 7946): fields and zones in, walks out.
 *
 * <p>Start at {@link haywright.app.exchange.geojson.GeoJson}.
 */
@NullMarked
package haywright.app.exchange.geojson;

import org.jspecify.annotations.NullMarked;
