package haywright.weather;

import java.util.List;
import java.util.Optional;

/**
 * The weather of a place, worked out from public tables by {@link Climate}.
 *
 * @param climate the tables
 * @param place as it was found
 * @param station the listed station that gives the level
 * @param warmer how much milder the place is than the station, all year, °C; negative where it is colder
 */
public record PlaceWeather(Climate climate, Place place, ListedStation station, double warmer) {
    /** From the place to the station, km. */
    public double distance() {
        return place.distance(station.place());
    }

    /** Mean of January to December at the place, °C. */
    public List<Double> monthly() {
        return station.monthly().stream().map(mean -> mean + warmer).toList();
    }

    /** Mean of January over the whole county, °C, where the place lies in one whose mean is known. */
    public Optional<Double> countyJanuary() {
        return climate.county(place).map(monthly -> monthly.get(0));
    }

    public Normals normals() {
        return new Normals(monthly(), climate.departures(this));
    }

    /** The station whose days give the shape of a winter; none where none is near enough. */
    public Optional<ListedStation> shape() {
        return climate.shapes(place).stream().map(SampledStation::listed).findFirst();
    }

    /** October 1990 to May 2018, the latest last: estimates, each day of it. */
    public List<MeanWinter> winters() {
        return climate.winters(this);
    }

    /** The same as a ranch counts with them. */
    public List<KeptWinter> keptWinters() {
        return winters().stream().map(KeptWinter::of).toList();
    }
}
