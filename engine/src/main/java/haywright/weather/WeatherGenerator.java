package haywright.weather;

import haywright.chance.Draws;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Draws days like those of a station.
 * <pre>
 * wet or dry: a chain of two states, by month
 * x(t) = A·x(t − 1) + B·e(t)           high and low less their mean, over their spread; e standard normal
 * A = M1·M0^-1,  B·B' = M0 − M1·M0^-1·M1'
 * value = mean(month) + spread(month)·x
 * </pre>
 * Highs and lows are drawn apart from rain: split by wet and dry, they lose a sixth of the persistence that the record has.
 * So here a wet day is no colder than a dry one, though on the record its high is about 7 °C lower. Crossed highs and lows are swapped. Real winters are skewed to the cold, and this is not: means and spreads of drawn
 * winters agree with the record, but its hardest winters come too seldom. So plans that must hold are tried on
 * {@link Station#winters()}, the real ones.
 *
 * @param months January to December
 * @param a rows of A
 * @param b rows of B, whose upper right is 0
 * @see "Richardson 1981; Richardson and Wright 1984, WGEN: the form (read), fitted to the station's own record"
 */
public record WeatherGenerator(List<MonthFit> months, List<List<Double>> a, List<List<Double>> b) {
    private static final int FEWEST_DAYS = 3650;
    private static final int FEWEST_DAYS_OF_A_MONTH = 100;
    private static final int DAYS_TO_SETTLE = 30;

    /** °C. */
    record Spread(double highMean, double highSpread, double lowMean, double lowSpread) {
        static Spread of(List<DailyWeather> days) {
            double high = mean(days, DailyWeather::high);
            double low = mean(days, DailyWeather::low);
            return new Spread(
                    high,
                    Math.sqrt(mean(days, d -> (d.high() - high) * (d.high() - high))),
                    low,
                    Math.sqrt(mean(days, d -> (d.low() - low) * (d.low() - low))));
        }

        double high(DailyWeather day) {
            return (day.high() - highMean) / highSpread;
        }

        double low(DailyWeather day) {
            return (day.low() - lowMean) / lowSpread;
        }
    }

    /**
     * One month.
     *
     * @param wetAfterWet chance that a day is wet after a wet one
     * @param wetAfterDry and after a dry one
     * @param rain mean of a wet day, mm
     */
    record MonthFit(double wetAfterWet, double wetAfterDry, Spread spread, double rain) {}

    /** Whether the record has ten years of days, and every month of the year is well among them. */
    static boolean canFit(Station station) {
        return station.days().size() >= FEWEST_DAYS
                && IntStream.rangeClosed(1, 12)
                        .allMatch(month -> station.days().stream()
                                        .filter(day -> day.date().getMonthValue() == month)
                                        .count()
                                >= FEWEST_DAYS_OF_A_MONTH);
    }

    /** @throws Refused where the record is shorter than ten years of days, or a month is all but missing */
    public static WeatherGenerator fit(Station station) {
        var days = station.days();
        if (!canFit(station)) {
            throw new Refused(
                    "days",
                    days.size() + " days",
                    "it takes ten years of days, every month among them, to simulate others",
                    "Use the record’s own winters.");
        }
        var months = IntStream.rangeClosed(1, 12)
                .mapToObj(month -> month(month, days))
                .toList();
        var m0 = new double[3];
        var m1 = new double[4];
        int pairs = 0;
        for (int i = 1; i < days.size(); i++) {
            var day = days.get(i);
            var before = days.get(i - 1);
            int month = day.date().getMonthValue();
            if (before.date().plusDays(1).equals(day.date()) && (month >= 11 || month <= 3)) {
                double h = months.get(month - 1).spread.high(day);
                double l = months.get(month - 1).spread.low(day);
                var then = months.get(before.date().getMonthValue() - 1).spread;
                m0[0] += h * h;
                m0[1] += h * l;
                m0[2] += l * l;
                m1[0] += h * then.high(before);
                m1[1] += h * then.low(before);
                m1[2] += l * then.high(before);
                m1[3] += l * then.low(before);
                pairs++;
            }
        }
        for (int i = 0; i < 4; i++) {
            m1[i] /= pairs;
        }
        return solved(months, m0[0] / pairs, m0[1] / pairs, m0[2] / pairs, m1);
    }

    /** @param hh variances and {@code hl} covariance of high and low */
    private static WeatherGenerator solved(List<MonthFit> months, double hh, double hl, double ll, double[] m1) {
        double det = hh * ll - hl * hl;
        double a11 = (m1[0] * ll - m1[1] * hl) / det;
        double a12 = (m1[1] * hh - m1[0] * hl) / det;
        double a21 = (m1[2] * ll - m1[3] * hl) / det;
        double a22 = (m1[3] * hh - m1[2] * hl) / det;
        double b11 = Math.sqrt(hh - a11 * m1[0] - a12 * m1[1]);
        double b21 = (hl - a21 * m1[0] - a22 * m1[1]) / b11;
        double b22 = Math.sqrt(ll - a21 * m1[2] - a22 * m1[3] - b21 * b21);
        return new WeatherGenerator(
                months, List.of(List.of(a11, a12), List.of(a21, a22)), List.of(List.of(b11, 0.0), List.of(b21, b22)));
    }

    private static MonthFit month(int month, List<DailyWeather> days) {
        var wet = new ArrayList<DailyWeather>();
        var all = new ArrayList<DailyWeather>();
        var after = new double[2][2]; // before, now: 1 is wet
        for (int i = 0; i < days.size(); i++) {
            var day = days.get(i);
            if (day.date().getMonthValue() == month) {
                all.add(day);
                if (day.wet()) {
                    wet.add(day);
                }
                if (i > 0) {
                    after[days.get(i - 1).wet() ? 1 : 0][day.wet() ? 1 : 0]++;
                }
            }
        }
        return new MonthFit(
                share(after[1]),
                share(after[0]),
                Spread.of(all),
                wet.isEmpty() ? 0 : mean(wet, day -> day.precipitation().orElse(0)));
    }

    /** Nothing where it never was so: a station without a rain gauge is dry. */
    private static double share(double[] dryWet) {
        double all = dryWet[0] + dryWet[1];
        return all == 0 ? 0 : dryWet[1] / all;
    }

    private static double mean(List<DailyWeather> days, ToDoubleFunction<DailyWeather> of) {
        return days.stream().mapToDouble(of).average().orElseThrow();
    }

    /** @param year of its spring */
    public Winter winter(int year, Draws draws) {
        var days = new ArrayList<DailyWeather>();
        double high = 0;
        double low = 0;
        boolean wet = false;
        for (var date = Winter.begins(year).minusDays(DAYS_TO_SETTLE);
                !date.isAfter(Winter.ends(year));
                date = date.plusDays(1)) {
            var month = months.get(date.getMonthValue() - 1);
            wet = draws.uniform() < (wet ? month.wetAfterWet : month.wetAfterDry);
            double e1 = draws.normal();
            double e2 = draws.normal();
            double nextHigh =
                    a.get(0).get(0) * high + a.get(0).get(1) * low + b.get(0).get(0) * e1;
            low = a.get(1).get(0) * high
                    + a.get(1).get(1) * low
                    + b.get(1).get(0) * e1
                    + b.get(1).get(1) * e2;
            high = nextHigh;
            if (!date.isBefore(Winter.begins(year))) {
                days.add(day(date, month.spread, high, low, wet ? month.rain : 0));
            }
        }
        return new Winter(year, days, 0);
    }

    private static DailyWeather day(LocalDate date, Spread spread, double high, double low, double rain) {
        double h = spread.highMean + spread.highSpread * high;
        double l = spread.lowMean + spread.lowSpread * low;
        return new DailyWeather(date, Math.max(h, l), Math.min(h, l), OptionalDouble.of(rain), OptionalDouble.empty());
    }
}
