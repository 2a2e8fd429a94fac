package haywright.app.web.ranch;

import haywright.app.exchange.weather.GhcnDaily;
import haywright.app.web.Ask;
import haywright.app.web.Option;
import haywright.cattle.cold.ColdSystem;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.RanchWeather;
import haywright.weather.DailyWeather;
import haywright.weather.Normals;
import haywright.weather.Station;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The form that takes in a station's file, and what a record says of the ranch's weather. */
public final class RecordForm {
    public static final Ask FILE = Ask.text(
            "file",
            "The station’s file",
            "Daily highs and lows as GHCN-Daily publishes them: .dly or CSV. At most 32 MB.");
    public static final Ask CALLED = Ask.text("called", "Station name", "Empty: as in the file.");
    public static final Ask UNITS = Ask.choice(
            "units",
            "A CSV with a heading is in",
            "Other layouts set their own units. Not sure? The hottest day of a year tells.");

    private RecordForm() {}

    static List<Option> units() {
        return Option.of(GhcnDaily.Units.class, units -> switch (units) {
            case TENTHS -> "tenths of °C";
            case METRIC -> "°C, mm, m/s";
            case STANDARD -> "°F, inches, mph";
        });
    }

    /** @param before what was said of wind, coat and shelter; where nothing was, it is left open */
    static RanchWeather weather(Station station, @Nullable RanchWeather before) {
        var normals = Normals.of(station);
        var monthly = normals.monthly().stream()
                .map(mean -> Quantity.of(Math.round(10 * Unit.FAHRENHEIT.fromBase(mean)) / 10.0, Unit.FAHRENHEIT))
                .toList();
        return before == null
                ? new RanchWeather(
                        station.name(),
                        monthly,
                        wind(station),
                        null,
                        null,
                        ColdSystem.USUAL,
                        null,
                        normals.departures(),
                        null)
                : new RanchWeather(
                        station.name(),
                        monthly,
                        before.wind() == null ? wind(station) : before.wind(),
                        before.coat(),
                        before.windbreak(),
                        before.coldSystem(),
                        before.hide(),
                        normals.departures(),
                        null);
    }

    /** Of the record, where it has it. */
    private static @Nullable Quantity wind(Station station) {
        return station.days().stream()
                .filter(day -> day.date().getMonthValue() >= 11 || day.date().getMonthValue() <= 3)
                .map(DailyWeather::wind)
                .filter(wind -> wind.isPresent())
                .mapToDouble(wind -> wind.orElseThrow())
                .average()
                .stream()
                .mapToObj(kmh -> Quantity.of(Math.round(Unit.MILE_AN_HOUR.fromBase(kmh)), Unit.MILE_AN_HOUR))
                .findFirst()
                .orElse(null);
    }
}
