package haywright.weather;

import java.util.List;

/**
 * The mean of every day of one winter, October 1 to May 31.
 *
 * @param year of its spring; of a drawn one, its number
 * @param means 243 or, with February 29, 244 days, °C
 */
public record MeanWinter(int year, List<Double> means) {
    private static final int DAYS_OF_COLDEST_SPELL = 7;
    private static final int DAYS_OF_OCTOBER = 31;
    private static final int DAYS_OF_APRIL_AND_MAY = 61;

    public MeanWinter {
        means = List.copyOf(means);
    }

    /** {@code 1996-97}. */
    public String words() {
        return "%d-%02d".formatted(year - 1, year % 100);
    }

    List<Double> novemberToMarch() {
        return means.subList(DAYS_OF_OCTOBER, means.size() - DAYS_OF_APRIL_AND_MAY);
    }

    /** Sum of what the daily means from November to March are below {@code base}, °C and days: how hard the winter is. */
    public double degreeDaysUnder(double base) {
        return novemberToMarch().stream()
                .mapToDouble(mean -> Math.max(0, base - mean))
                .sum();
    }

    /** Mean of the coldest seven days in a row from November to March, °C. */
    public double coldestWeek() {
        var days = novemberToMarch();
        double sum = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < days.size(); i++) {
            sum += days.get(i);
            if (i >= DAYS_OF_COLDEST_SPELL) {
                sum -= days.get(i - DAYS_OF_COLDEST_SPELL);
            }
            if (i >= DAYS_OF_COLDEST_SPELL - 1) {
                least = Math.min(least, sum);
            }
        }
        return least / DAYS_OF_COLDEST_SPELL;
    }
}
