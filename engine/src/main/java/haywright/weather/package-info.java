/**
 * A station's days, its winters whole, and days drawn like them.
 *
 * <p>Start at {@link haywright.weather.Station}: it says which days are missing and which winters are whole.
 * {@link haywright.weather.Winter} is one of them, {@link haywright.weather.WeatherGenerator} draws as many more as are
 * wanted, and {@link haywright.weather.Normals} are the usual days of the year, from a record or from twelve monthly
 * means. A ranch keeps {@link haywright.weather.StationWinters}. Files are read elsewhere; here a day is
 * {@link haywright.weather.DailyWeather}.
 *
 * <p>°C, mm, km/h. Knows {@code chance}, {@code workings} and {@code quantity}; knows nothing of cattle.
 */
@NullMarked
package haywright.weather;

import org.jspecify.annotations.NullMarked;
