/**
 * Daily weather as others publish it: the GHCN-Daily layouts.
 *
 * <p>Start at {@link haywright.app.exchange.weather.GhcnDaily}. Out: a {@link haywright.weather.Station}. Knows the engine's
 * {@code weather}; knows nothing of ranches or pages.
 */
@NullMarked
package haywright.app.exchange.weather;

import org.jspecify.annotations.NullMarked;
