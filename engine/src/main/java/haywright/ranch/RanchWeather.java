package haywright.ranch;

import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.HairCoat;
import haywright.cattle.cold.Hide;
import haywright.cattle.cold.WindChill;
import haywright.quantity.Kind;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.weather.Normals;
import haywright.workings.Refused;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The usual temperatures of this place, and how the cattle stand in them.
 *
 * @param place whose temperatures these are: the ranch's own, or the nearest station's
 * @param monthly mean temperature of January to December; empty where the place was found by its name
 * @param wind mean of the winter's days, in the open; null until it is said: {@link #USUAL_WIND} is taken, and the
 *     headline says so
 * @param coat of all the cattle in midwinter; null until it is said: each has the {@link HairCoat#usual} one of the day
 * @param windbreak whether they can stand behind one; null until it is said: none is taken, and the headline says so
 * @param coldSystem how the cold is counted
 * @param hide what usually lies on their coats; null until it is said, which counts as dry
 * @param departures of the days of a usual week from the mean, by month, where a station's record has them
 *     ({@link Normals}); empty where the means were typed
 * @param found where the ranch lies, in place of means and record; null where it was not found by its name
 */
public record RanchWeather(
        String place,
        List<Quantity> monthly,
        @Nullable Quantity wind,
        @Nullable Coat coat,
        @Nullable Boolean windbreak,
        ColdSystem coldSystem,
        @Nullable Hide hide,
        List<List<Double>> departures,
        @Nullable FoundPlace found) {
    /** Where is not entered and no record has it: judgment, usual behind hills. */
    public static final Quantity USUAL_WIND = Quantity.of(8, Unit.MILE_AN_HOUR);

    public RanchWeather {
        monthly = List.copyOf(monthly);
        departures = departures.stream().map(List::copyOf).toList();
        monthly.forEach(mean -> Refused.unlessOfKind(Kind.TEMPERATURE, "monthly", mean));
        if (wind != null) {
            Refused.unlessOfKind(Kind.SPEED, "wind", wind);
        }
        if (found != null && !(monthly.isEmpty() && departures.isEmpty())) {
            throw new Refused(
                    "monthly",
                    monthly.size() + " months",
                    "a place found by name has its own months",
                    "Leave out one of them.");
        }
        var normals = normals(monthly, departures, found);
        WindChill.check(normals.monthly().get(0), (wind == null ? USUAL_WIND : wind).base());
    }

    /** Of a place found by its name, before anything is said of wind, coats and shelter. */
    public static RanchWeather of(FoundPlace found) {
        return new RanchWeather(found.place(), List.of(), null, null, null, ColdSystem.USUAL, null, List.of(), found);
    }

    /** The same where nothing breaks the wind. */
    public RanchWeather inTheOpen() {
        return new RanchWeather(place, monthly, wind, coat, false, coldSystem, hide, departures, found);
    }

    /** The same behind a windbreak. */
    public RanchWeather sheltered() {
        return new RanchWeather(place, monthly, wind, coat, true, coldSystem, hide, departures, found);
    }

    /** The same cattle and shelter in the weather of a place found by its name. */
    public RanchWeather at(FoundPlace other) {
        return new RanchWeather(other.place(), List.of(), wind, coat, windbreak, coldSystem, hide, List.of(), other);
    }

    /** The same, with the cold counted the other way. */
    public RanchWeather counted(ColdSystem system) {
        return new RanchWeather(place, monthly, wind, coat, windbreak, system, hide, departures, found);
    }

    public Normals normals() {
        return normals(monthly, departures, found);
    }

    /** {@link #USUAL_WIND} where nothing is said. */
    public Quantity blows() {
        return wind == null ? USUAL_WIND : wind;
    }

    /** None where nothing is said. */
    public boolean isSheltered() {
        return windbreak != null && windbreak;
    }

    /** Dry where nothing is said. */
    public Hide coats() {
        return hide == null ? Hide.DRY : hide;
    }

    private static Normals normals(List<Quantity> monthly, List<List<Double>> departures, @Nullable FoundPlace found) {
        if (found != null) {
            return found.weather().normals();
        }
        var means = monthly.stream().map(Quantity::base).toList();
        return departures.isEmpty() ? new Normals(means, Normals.USUAL_SPREAD) : new Normals(means, departures);
    }
}
