package haywright.weather;

import haywright.workings.PublishedTable;
import java.text.Normalizer;
import java.util.OptionalDouble;

/**
 * A town, a county or a weather station by its name.
 *
 * @param kind which of them
 * @param name without its state: {@code Valentine}, {@code Cherry County}
 * @param state postal letters of the state or province
 * @param county FIPS code of the county that a town lies in or that this is; empty for a station
 * @param latitude degrees north
 * @param longitude degrees, west is negative
 * @param height meters above the sea; known of stations only
 */
public record Place(
        Kind kind, String name, String state, String county, double latitude, double longitude, OptionalDouble height) {
    private static final double EARTH_KM = 6371;

    /** What a name can be of; towns come before counties, and counties before stations, where they share one. */
    public enum Kind {
        TOWN,
        COUNTY,
        STATION
    }

    static Place town(PublishedTable.Row row) {
        return of(Kind.TOWN, row, row.text("town").replace(" (balance)", ""), row.text("county_fips"));
    }

    static Place county(PublishedTable.Row row) {
        var kind = row.text("state").equals("AK") ? " Borough" : " County";
        return of(Kind.COUNTY, row, row.text("name") + kind, row.text("id"));
    }

    static Place station(PublishedTable.Row row) {
        return of(Kind.STATION, row, row.text("name"), "");
    }

    private static Place of(Kind kind, PublishedTable.Row row, String name, String county) {
        return new Place(
                kind,
                Normalizer.normalize(name, Normalizer.Form.NFC),
                row.text("state"),
                county,
                Double.parseDouble(row.text("lat")),
                Double.parseDouble(row.text("lon")),
                row.cells().containsKey("elev_m") ? row.number("elev_m") : OptionalDouble.empty());
    }

    /** {@code Valentine, NE}. */
    public String words() {
        return name + ", " + state;
    }

    /** Along the great circle, km. */
    public double distance(Place other) {
        double north = Math.toRadians(other.latitude - latitude) / 2;
        double east = Math.toRadians(other.longitude - longitude) / 2;
        double half = Math.sin(north) * Math.sin(north)
                + Math.cos(Math.toRadians(latitude))
                        * Math.cos(Math.toRadians(other.latitude))
                        * Math.sin(east)
                        * Math.sin(east);
        return 2 * EARTH_KM * Math.asin(Math.sqrt(half));
    }
}
