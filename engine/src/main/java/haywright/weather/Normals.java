package haywright.weather;

import haywright.chance.Normal;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The usual temperatures of a place through the year.
 * <pre>
 * mean of a day = straight from the middle of one month to the middle of the next
 * </pre>
 * Days are not all alike: the seven days of a week stand apart as the days of that time of year do, so that its cold days
 * count. With a station's record they are the means of its days' seven sevenths, the coldest first, and lean to the cold as
 * those do. With monthly means alone they are the seven middles of a normal spread, which is even, and winters harder than
 * usual come on top.
 *
 * @param monthly mean of January to December, °C
 * @param departures for January to December, by how much the seven days of a usual week lie above or under the mean, the
 *     coldest first, °C
 */
public record Normals(List<Double> monthly, List<List<Double>> departures) {
    /** Fort Collins, Colorado, November to March: 5.9 °C (computed from its record). */
    public static final double USUAL_SPREAD = 5.9;

    static final int DAYS_A_WEEK = 7;
    static final int DAYS_BEFORE = 30;

    private static final int MONTHS = 12;
    private static final double COLDEST = -50;
    private static final double HOTTEST = 40;
    private static final double FARTHEST = 60;

    /** Days of each month, at least: a year of them. */
    private static final int FEWEST_DAYS = 28;

    private static final int YEARS = 30;

    public Normals {
        monthly = List.copyOf(monthly);
        departures = departures.stream().map(List::copyOf).toList();
        if (monthly.size() != MONTHS) {
            throw new Refused("monthly", monthly.size() + " months", "a year has twelve", "Enter January to December.");
        }
        var problems = new ArrayList<Problem>();
        for (int i = 0; i < MONTHS; i++) {
            double mean = monthly.get(i);
            if (!(mean >= COLDEST && mean <= HOTTEST)) {
                problems.add(new Problem(
                        name(i + 1).toLowerCase(Locale.ROOT),
                        String.format(Locale.ROOT, "%.1f °C for %s", mean, name(i + 1)),
                        "a monthly mean is -50 to 40 °C (-58 to 104 °F)",
                        "Check °F or °C."));
            }
        }
        Refused.unlessEmpty(problems);
        if (departures.size() != MONTHS
                || departures.stream()
                        .anyMatch(week -> week.size() != DAYS_A_WEEK
                                || week.stream().anyMatch(day -> !(Math.abs(day) <= FARTHEST)))) {
            throw new Refused(
                    "departures",
                    departures.size() + " months",
                    "each of the twelve has seven days, within 60 °C of its mean",
                    "Import the station’s file again.");
        }
    }

    /** @param spread of the daily means about the monthly ones, °C, as standard deviation */
    public Normals(List<Double> monthly, double spread) {
        this(monthly, Collections.nCopies(MONTHS, evenly(spread)));
    }

    /** The seven middles of a normal spread, the coldest first. */
    static List<Double> evenly(double spread) {
        return IntStream.range(0, DAYS_A_WEEK)
                .mapToObj(day -> spread * Normal.quantile((day + 0.5) / DAYS_A_WEEK))
                .toList();
    }

    /**
     * Of the latest thirty years of a record, to a tenth of a degree.
     *
     * @throws Refused where the record has less than a year of days
     */
    public static Normals of(Station station) {
        var days = station.days().stream()
                .filter(day -> day.date().isAfter(station.last().minusYears(YEARS)))
                .toList();
        var problems = new ArrayList<Problem>();
        var monthly = new ArrayList<Double>();
        for (int month = 1; month <= MONTHS; month++) {
            var of = of(days, month);
            if (of.size() < FEWEST_DAYS) {
                problems.add(new Problem(
                        "file",
                        of.size() + " days in " + name(month),
                        "each month of the year has 28 days or more with a high and a low",
                        "Get a longer record, or enter the monthly means."));
            }
            monthly.add(tenth(mean(of, DailyWeather::mean)));
        }
        Refused.unlessEmpty(problems);
        var means = new Normals(monthly, USUAL_SPREAD);
        return new Normals(
                monthly,
                IntStream.rangeClosed(1, MONTHS)
                        .mapToObj(month -> sevenths(of(days, month), means))
                        .toList());
    }

    private static List<DailyWeather> of(List<DailyWeather> days, int month) {
        return days.stream().filter(day -> day.date().getMonthValue() == month).toList();
    }

    private static double mean(List<DailyWeather> days, ToDoubleFunction<DailyWeather> of) {
        return days.stream().mapToDouble(of).average().orElse(0);
    }

    private static List<Double> sevenths(List<DailyWeather> days, Normals means) {
        return sevenths(days.stream()
                .mapToDouble(day -> day.mean() - means.mean(day.date()))
                .toArray());
    }

    /**
     * Of days in order from the coldest, less their mean: the mean of each seventh, to a tenth of a degree.
     *
     * @param departures of the days of one month from what is usual on their dates, °C; at least seven
     */
    static List<Double> sevenths(double[] departures) {
        var sorted = departures.clone();
        Arrays.sort(sorted);
        double mean = Arrays.stream(sorted).average().orElse(0);
        return IntStream.range(0, DAYS_A_WEEK)
                .mapToObj(day -> tenth(Arrays.stream(
                                        sorted,
                                        day * sorted.length / DAYS_A_WEEK,
                                        (day + 1) * sorted.length / DAYS_A_WEEK)
                                .average()
                                .orElse(0)
                        - mean))
                .toList();
    }

    private static double tenth(double value) {
        return Math.round(10 * value) / 10.0;
    }

    private static String name(int month) {
        return Month.of(month).getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private static double between(LocalDate date, ToDoubleFunction<Integer> ofMonth) {
        var middle = date.withDayOfMonth(15);
        var from = date.isBefore(middle) ? middle.minusMonths(1) : middle;
        var to = from.plusMonths(1);
        double way = ChronoUnit.DAYS.between(from, date) / (double) ChronoUnit.DAYS.between(from, to);
        double first = ofMonth.applyAsDouble(YearMonth.from(from).getMonthValue() - 1);
        return first + (ofMonth.applyAsDouble(YearMonth.from(to).getMonthValue() - 1) - first) * way;
    }

    /** °C. */
    public double mean(LocalDate date) {
        return between(date, monthly::get);
    }

    /** Mean of the thirty days before, °C. */
    public double monthBefore(LocalDate date) {
        return IntStream.rangeClosed(1, DAYS_BEFORE)
                .mapToDouble(day -> mean(date.minusDays(day)))
                .average()
                .orElseThrow();
    }

    /** Daily means of the week that begins on a date, the coldest first, °C. */
    public List<Double> week(LocalDate begins) {
        double mean = IntStream.range(0, DAYS_A_WEEK)
                .mapToDouble(day -> mean(begins.plusDays(day)))
                .average()
                .orElseThrow();
        var middle = begins.plusDays(DAYS_A_WEEK / 2);
        return IntStream.range(0, DAYS_A_WEEK)
                .mapToObj(day ->
                        mean + between(middle, month -> departures.get(month).get(day)))
                .toList();
    }
}
