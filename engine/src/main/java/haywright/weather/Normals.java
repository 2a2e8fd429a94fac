package haywright.weather;

import haywright.chance.Normal;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Twelve monthly mean temperatures, where there is no daily record.
 * <pre>
 * mean of a day = straight from the middle of one month to the middle of the next
 * </pre>
 * Days are not all alike: the seven days of a week stand at the seven middles of a normal spread about the mean, so that
 * its cold days count. Cold that is not symmetric, and winters harder than usual, come on top.
 *
 * @param monthly mean of January to December, °C
 * @param spread of the daily means about it, °C, as standard deviation
 */
public record Normals(List<Double> monthly, double spread) {
    /** Fort Collins, Colorado, November to March: 5.9 °C (computed from its record). */
    public static final double USUAL_SPREAD = 5.9;

    private static final int MONTHS = 12;
    private static final double COLDEST = -50;
    private static final double HOTTEST = 40;
    private static final int DAYS_A_WEEK = 7;
    private static final int DAYS_BEFORE = 30;

    public Normals {
        monthly = List.copyOf(monthly);
        if (monthly.size() != MONTHS) {
            throw new Refused(
                    "monthly", monthly.size() + " months", "a year has twelve", "Put in January to December.");
        }
        for (int i = 0; i < MONTHS; i++) {
            double mean = monthly.get(i);
            if (!(mean >= COLDEST && mean <= HOTTEST)) {
                throw new Refused(
                        "monthly",
                        String.format(
                                Locale.ROOT,
                                "%.1f °C for %s",
                                mean,
                                Month.of(i + 1).getDisplayName(TextStyle.FULL, Locale.ENGLISH)),
                        "the mean of a month lies from -50 to 40 °C (-58 to 104 °F)",
                        "Is it in °F or in °C?");
            }
        }
    }

    /** °C. */
    public double mean(LocalDate date) {
        var middle = date.withDayOfMonth(15);
        var from = date.isBefore(middle) ? middle.minusMonths(1) : middle;
        var to = from.plusMonths(1);
        double way = ChronoUnit.DAYS.between(from, date) / (double) ChronoUnit.DAYS.between(from, to);
        double first = monthly.get(YearMonth.from(from).getMonthValue() - 1);
        return first + (monthly.get(YearMonth.from(to).getMonthValue() - 1) - first) * way;
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
        return IntStream.range(0, DAYS_A_WEEK)
                .mapToObj(day -> mean + spread * Normal.quantile((day + 0.5) / DAYS_A_WEEK))
                .toList();
    }
}
