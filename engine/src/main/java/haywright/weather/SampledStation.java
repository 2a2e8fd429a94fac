package haywright.weather;

import haywright.workings.PublishedTable;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A station whose days are here, September to May of 1990 to 2018: the shape that the days of its surroundings take.
 *
 * @param listed the same station with its normals
 * @param months the mean of every day of a month, °C; a month that misses more than three days is not there
 * @param departures of the seven days of a usual week, by month; empty for months without days
 */
record SampledStation(
        ListedStation listed, Map<YearMonth, List<Double>> months, List<Optional<List<Double>>> departures) {
    private static final int MOST_MISSING = 3;
    private static final int MONTHS = 12;

    /** The table has the day's high plus its low in tenths of °C. */
    private static final double TWENTIETHS = 20;

    private static final String MISSING = "-";

    static SampledStation of(ListedStation listed, List<PublishedTable.Row> rows) {
        var months = new HashMap<YearMonth, List<Double>>();
        for (var row : rows) {
            var month = YearMonth.of(Integer.parseInt(row.text("year")), Integer.parseInt(row.text("month")));
            whole(row.text("high_plus_low_tenths_c").split(" ")).ifPresent(days -> months.put(month, days));
        }
        return new SampledStation(listed, Map.copyOf(months), departures(listed, months));
    }

    /** Days that are missing are drawn straight from the day before to the day after. */
    private static Optional<List<Double>> whole(String[] cells) {
        var measured = IntStream.range(0, cells.length)
                .filter(i -> !cells[i].equals(MISSING))
                .toArray();
        if (measured.length < cells.length - MOST_MISSING) {
            return Optional.empty();
        }
        var days = new ArrayList<Double>();
        int next = 0;
        for (int i = 0; i < cells.length; i++) {
            while (next < measured.length - 1 && measured[next] < i) {
                next++;
            }
            int after = measured[next];
            int before = measured[Math.max(0, after > i ? next - 1 : next)];
            double way = after > before && i > before ? (i - before) / (double) (after - before) : 0;
            double from = Integer.parseInt(cells[before]) / TWENTIETHS;
            days.add(from + way * (Integer.parseInt(cells[after]) / TWENTIETHS - from));
        }
        return Optional.of(List.copyOf(days));
    }

    private static List<Optional<List<Double>>> departures(ListedStation listed, Map<YearMonth, List<Double>> months) {
        var normals = new Normals(listed.monthly(), Normals.USUAL_SPREAD);
        var usual = YearMonth.of(2001, 1)
                .atDay(1)
                .datesUntil(YearMonth.of(2002, 1).atDay(1))
                .map(normals::mean)
                .toList();
        return IntStream.rangeClosed(1, MONTHS)
                .mapToObj(month -> {
                    int first = YearMonth.of(2001, month).atDay(1).getDayOfYear() - 1;
                    int length = YearMonth.of(2001, month).lengthOfMonth();
                    var of = months.entrySet().stream()
                            .filter(entry -> entry.getKey().getMonthValue() == month)
                            .flatMapToDouble(entry -> IntStream.range(0, length)
                                    .mapToDouble(day -> entry.getValue().get(day) - usual.get(first + day)))
                            .toArray();
                    return of.length == 0 ? Optional.<List<Double>>empty() : Optional.of(Normals.sevenths(of));
                })
                .toList();
    }
}
