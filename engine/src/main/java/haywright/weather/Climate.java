package haywright.weather;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How cold it usually gets in the northern states and Canada, from a place's name alone.
 * <pre>
 * day = station(m) + (division(y, m) − division(m)) + s·(day of the sampled station − its mean of that month)
 * s   = spread of days at the listed station / at the sampled one, where both are known, else 1
 * </pre>
 * The level is that of the nearest listed station (distance + 0.15 km for each meter that it stands higher or lower, where
 * the place's height is known); which months of which year were colder is the climate division's; the days in a month are those of the
 * nearest sampled station in the same month and year, so that cold spells stay whole. Where no division is known, as in
 * Canada, the sampled station's own months say how the year was, up to 800 km away; beyond that there are no winters.
 *
 * <p>These are estimates, and {@link Doubt} says how far they lie off. They replace no station's own record.
 */
public final class Climate {
    /** Springs of the winters that can be worked out. */
    static final int FIRST = 1991;

    static final int LAST = 2018;

    public static final List<Source> SOURCES = List.of(
            Source.read("NOAA NCEI, GHCN-Daily, 42 stations, September to May 1990 to 2018: daily highs and lows"),
            Source.read("NOAA NCEI, nClimDiv climdiv-tmpcdv: temperature of the climate divisions, by month"),
            Source.read("U.S. Census Bureau, Gazetteer: where towns are"),
            Source.read("federalgovernmentzipcodes.us, public list of ZIP codes: where post offices are"));

    private static final double KM_A_METER = 0.15;
    private static final double FARTHEST_DIVISION_KM = 150;
    private static final double FARTHEST_SAMPLE_KM = 800;
    private static final int MONTHS = 12;

    private final List<ListedStation> stations;
    private final List<SampledStation> sampled;
    private final Map<String, List<Double>> countyMeans;
    private final List<Place> counties;
    private final Map<String, String> divisions;
    private final Map<String, List<Double>> divisionNormals;
    private final Map<String, Map<Integer, List<Double>>> divisionYears;

    private Climate(Climate whole, String without) {
        this.stations =
                whole.stations.stream().filter(s -> !s.id().equals(without)).toList();
        this.sampled = whole.sampled.stream()
                .filter(s -> !s.listed().id().equals(without))
                .toList();
        this.countyMeans = whole.countyMeans;
        this.counties = whole.counties;
        this.divisions = whole.divisions;
        this.divisionNormals = whole.divisionNormals;
        this.divisionYears = whole.divisionYears;
    }

    private Climate() {
        var places = read("climate_places.csv.gz");
        stations = places.stream()
                .filter(row -> row.text("kind").equals("station"))
                .map(ListedStation::of)
                .toList();
        var countyRows =
                places.stream().filter(row -> row.text("kind").equals("county")).toList();
        counties = countyRows.stream().map(Place::county).toList();
        countyMeans = countyRows.stream()
                .collect(Collectors.toMap(row -> row.text("id"), row -> ListedStation.monthly(row, "mean_")));
        divisions = read("county_division.csv").stream()
                .collect(Collectors.toMap(row -> row.text("county_fips"), row -> row.text("division_id")));
        divisionNormals = read("division_normals.csv").stream()
                .collect(Collectors.toMap(row -> row.text("division_id"), row -> ListedStation.monthly(row, "")));
        divisionYears = new HashMap<>();
        for (var row : read("division_years.csv.gz")) {
            int year = Integer.parseInt(row.text("year"));
            if (year < LAST + 1) {
                divisionYears
                        .computeIfAbsent(row.text("division_id"), d -> new HashMap<>())
                        .put(year, ListedStation.monthly(row, ""));
            }
        }
        var days = read("daily_sample.csv.gz").stream().collect(Collectors.groupingBy(row -> row.text("station_id")));
        sampled = stations.stream()
                .filter(station -> days.containsKey(station.id()))
                .map(station -> SampledStation.of(station, days.getOrDefault(station.id(), List.of())))
                .toList();
    }

    private static List<PublishedTable.Row> read(String resource) {
        return PublishedTable.read(Climate.class, resource).rows();
    }

    private static final class Holder {
        static final Climate WHOLE = new Climate();
    }

    /** Read once, when it is first asked for. */
    public static Climate known() {
        return Holder.WHOLE;
    }

    /** As if one station were not known. */
    Climate without(String station) {
        return new Climate(this, station);
    }

    List<SampledStation> sampled() {
        return sampled;
    }

    List<ListedStation> stations() {
        return stations;
    }

    List<Place> counties() {
        return counties;
    }

    /**
     * @param height of the place above the sea, m, where it is known; a station's own comes first
     * @param warmer how much milder the place is than the station, all year, °C; negative where it is colder
     */
    public PlaceWeather at(Place place, OptionalDouble height, double warmer) {
        var known = place.height().isPresent() ? place.height() : height;
        return new PlaceWeather(this, place, station(place, known), warmer);
    }

    private ListedStation station(Place place, OptionalDouble height) {
        return stations.stream()
                .min(Comparator.comparingDouble(station -> place.distance(station.place())
                        + (height.isEmpty()
                                ? 0
                                : KM_A_METER
                                        * Math.abs(height.getAsDouble()
                                                - station.place().height().orElse(height.getAsDouble())))))
                .orElseThrow();
    }

    /** January to December of the county that a place lies in, °C. */
    Optional<List<Double>> county(Place place) {
        return Optional.ofNullable(countyMeans.get(place.county()));
    }

    /** The division of the place's own county, or of the nearest one that has one. */
    Optional<String> division(Place place) {
        var own = divisions.get(place.county());
        return own != null
                ? Optional.of(own)
                : counties.stream()
                        .filter(county -> divisions.containsKey(county.county()))
                        .min(Comparator.comparingDouble(place::distance))
                        .filter(county -> place.distance(county) < FARTHEST_DIVISION_KM)
                        .map(county -> divisions.get(county.county()));
    }

    /** The nearest first. */
    List<SampledStation> shapes(Place place) {
        return sampled.stream()
                .filter(station -> place.distance(station.listed().place()) < FARTHEST_SAMPLE_KM)
                .sorted(Comparator.comparingDouble(
                        station -> place.distance(station.listed().place())))
                .toList();
    }

    /** Factor on the departures of a sampled station's days to be those of another station's. */
    private static double scale(ListedStation to, ListedStation from, int month) {
        var own = to.spread().get(month - 1);
        var other = from.spread().get(month - 1);
        return own.isPresent() && other.isPresent() ? own.getAsDouble() / other.getAsDouble() : 1;
    }

    /** Of the seven days of a usual week, by month, °C. */
    List<List<Double>> departures(PlaceWeather at) {
        var shapes = shapes(at.place());
        return IntStream.rangeClosed(1, MONTHS)
                .mapToObj(month -> shapes.stream()
                        .findFirst()
                        .flatMap(shape -> shape.departures()
                                .get(month - 1)
                                .map(week -> week.stream()
                                        .map(day -> day * scale(at.station(), shape.listed(), month))
                                        .toList()))
                        .orElseGet(() -> Normals.evenly(
                                at.station().spread().get(month - 1).orElse(Normals.USUAL_SPREAD))))
                .toList();
    }

    /** The latest last; none where no sampled station is near enough. */
    List<MeanWinter> winters(PlaceWeather at) {
        var shapes = shapes(at.place());
        var division = division(at.place());
        var winters = new ArrayList<MeanWinter>();
        for (int year = FIRST; year <= LAST; year++) {
            var means = new ArrayList<Double>();
            var last = YearMonth.of(year, 5);
            boolean whole = true;
            for (var month = YearMonth.of(year - 1, 10); !month.isAfter(last); month = month.plusMonths(1)) {
                var days = month(at, month, shapes, division);
                days.ifPresent(means::addAll);
                whole &= days.isPresent();
            }
            if (whole) {
                winters.add(new MeanWinter(year, means));
            }
        }
        return List.copyOf(winters);
    }

    private Optional<List<Double>> month(
            PlaceWeather at, YearMonth month, List<SampledStation> shapes, Optional<String> division) {
        for (var shape : shapes) {
            var days = shape.months().get(month);
            if (days != null) {
                int m = month.getMonthValue();
                double mean = days.stream().mapToDouble(day -> day).average().orElseThrow();
                double departs = division.flatMap(of -> departs(of, month))
                        .orElse(mean - shape.listed().monthly().get(m - 1));
                double level = at.monthly().get(m - 1) + departs;
                double scale = scale(at.station(), shape.listed(), m);
                return Optional.of(
                        days.stream().map(day -> level + scale * (day - mean)).toList());
            }
        }
        return Optional.empty();
    }

    /** By how much one month of one year was milder in a division than it usually is, °C. */
    private Optional<Double> departs(String division, YearMonth month) {
        var years = divisionYears.get(division);
        var normals = divisionNormals.get(division);
        int m = month.getMonthValue() - 1;
        return years == null || normals == null || !years.containsKey(month.getYear())
                ? Optional.empty()
                : Optional.of(years.get(month.getYear()).get(m) - normals.get(m));
    }
}
