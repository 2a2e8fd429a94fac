package haywright.weather;

import haywright.workings.PublishedTable;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * A station with the usual temperatures of its months.
 *
 * @param id of its network
 * @param place where it stands, with its height
 * @param monthly mean of January to December, °C
 * @param spread of daily means by month, as standard deviation, °C; empty where it is not published
 * @param source with the years that the means are of
 */
public record ListedStation(String id, Place place, List<Double> monthly, List<OptionalDouble> spread, String source) {
    private static final List<String> MONTHS = IntStream.rangeClosed(1, 12)
            .mapToObj(month -> java.time.Month.of(month).name().substring(0, 3).toLowerCase(Locale.ROOT))
            .toList();

    public ListedStation {
        monthly = List.copyOf(monthly);
        spread = List.copyOf(spread);
    }

    static ListedStation of(PublishedTable.Row row) {
        return new ListedStation(
                row.text("id"),
                Place.station(row),
                monthly(row, "mean_"),
                MONTHS.stream().map(month -> row.number("daysd_" + month)).toList(),
                row.text("source").contains(row.text("period"))
                        ? row.text("source")
                        : row.text("source") + ", " + row.text("period"));
    }

    /** January to December of the columns that begin so. */
    static List<Double> monthly(PublishedTable.Row row, String begins) {
        return MONTHS.stream()
                .map(month -> Double.parseDouble(row.text(begins + month)))
                .toList();
    }
}
