package haywright.weather;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * One day.
 *
 * @param high °C
 * @param low °C
 * @param precipitation mm; empty where it was not measured
 * @param wind mean of the day, km/h; empty where it was not measured
 */
public record DailyWeather(LocalDate date, double high, double low, OptionalDouble precipitation, OptionalDouble wind) {
    static final double COLDEST = -80;
    static final double HOTTEST = 60;
    static final double STRONGEST = 200;

    /** 0.01 in. */
    private static final double WET = 0.25;

    /** @throws Refused for what no day on earth has been */
    public DailyWeather {
        if (!(low > COLDEST && high < HOTTEST)) {
            throw new Refused(
                    "temperature",
                    said(low) + " to " + said(high) + " °C on " + date,
                    "a day is between -80 and 60 °C",
                    "Check whether the column is °F or tenths of °C.");
        }
        if (low > high) {
            throw new Refused(
                    "low",
                    said(low) + " °C on " + date,
                    "the low of a day is not above its high of " + said(high) + " °C",
                    "Check whether the two columns are swapped.");
        }
        if (precipitation.orElse(0) < 0) {
            throw new Refused(
                    "precipitation",
                    said(precipitation.orElseThrow()) + " mm on " + date,
                    "rain and snow are 0 or more",
                    "It may mark a missing value.");
        }
        if (!(wind.orElse(0) >= 0 && wind.orElse(0) <= STRONGEST)) {
            throw new Refused(
                    "wind",
                    said(wind.orElseThrow()) + " km/h on " + date,
                    "a day’s mean wind is 0 to 200 km/h",
                    "Check that it is the daily mean, in the right unit.");
        }
    }

    /** Halfway between high and low, °C. */
    public double mean() {
        return (high + low) / 2;
    }

    /** 0.01 in or more. Where nothing was measured, dry. */
    public boolean wet() {
        return precipitation.orElse(0) >= WET;
    }

    DailyWeather on(LocalDate other) {
        return new DailyWeather(other, high, low, precipitation, wind);
    }

    private static String said(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
