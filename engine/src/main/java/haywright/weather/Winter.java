package haywright.weather;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;

/**
 * One whole winter, October 1 to May 31.
 *
 * @param year of its spring
 * @param days every day
 * @param drawn how many of them were missing and drawn straight
 */
public record Winter(int year, List<DailyWeather> days, int drawn) {
    public Winter {
        days = List.copyOf(days);
    }

    Winter numbered(int number) {
        return new Winter(number, days, drawn);
    }

    static LocalDate begins(int year) {
        return LocalDate.of(year - 1, 10, 1);
    }

    static LocalDate november(int year) {
        return LocalDate.of(year - 1, 11, 1);
    }

    static LocalDate ends(int year) {
        return LocalDate.of(year, 5, 31);
    }

    /**
     * The same weather in another winter, day by day of the calendar. Where only that one has a February 29, February 28
     * stands twice; where only this one has it, it is left out.
     */
    public Winter inYear(int other) {
        var moved = begins(other)
                .datesUntil(ends(other).plusDays(1))
                .map(date -> day(date.withYear(year - (other - date.getYear()))).on(date))
                .toList();
        return new Winter(other, moved, drawn);
    }

    /** @param date from October 1 to May 31 of this winter */
    public DailyWeather day(LocalDate date) {
        return days.get((int) ChronoUnit.DAYS.between(begins(year), date));
    }

    private Stream<DailyWeather> novemberToMarch() {
        return days.stream()
                .filter(day -> day.date().getMonthValue() >= 11 || day.date().getMonthValue() <= 3);
    }

    /** November to March, °C. */
    public double mean() {
        return novemberToMarch().mapToDouble(DailyWeather::mean).average().orElseThrow();
    }

    /** November to March, °C. */
    public double lowest() {
        return novemberToMarch().mapToDouble(DailyWeather::low).min().orElseThrow();
    }

    /** Days from November to March whose low is under {@code celsius}. */
    public long daysWithLowUnder(double celsius) {
        return novemberToMarch().filter(day -> day.low() < celsius).count();
    }

    /** The means of its days alone. */
    public MeanWinter means() {
        return new MeanWinter(year, days.stream().map(DailyWeather::mean).toList());
    }

    /** @see MeanWinter#degreeDaysUnder */
    public double degreeDaysUnder(double base) {
        return means().degreeDaysUnder(base);
    }

    /** @see MeanWinter#coldestWeek */
    public double coldestWeek() {
        return means().coldestWeek();
    }
}
