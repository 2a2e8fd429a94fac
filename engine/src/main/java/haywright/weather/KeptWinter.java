package haywright.weather;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * One winter, October 1 to May 31, as a ranch keeps it: the mean of every day. Asked for in another year, February 29 is as
 * the day before it.
 *
 * @param year of its spring; of a drawn one, its number
 * @param means of the 243 days, or 244 with February 29, whole tenths of °C with spaces between
 * @param winds mean of the 243 days without February 29, whole km/h; empty where the station has none
 */
public record KeptWinter(int year, String means, String winds) {
    static final int DAYS = 243;
    private static final double TENTHS = 10;

    /** Days of the months from October on, without February 29. */
    private static final List<Integer> MONTHS = List.of(31, 30, 31, 31, 28, 31, 30, 31);

    private static final int OCTOBER = 10;
    private static final int MAY = 5;
    private static final int MONTHS_A_YEAR = 12;
    private static final int LEAP_DAY = 29;

    /** Of February 29 from October 1 on, where it is kept. */
    private static final int LEAP_INDEX = index(LocalDate.of(2000, 2, LEAP_DAY)) + 1;

    /** @throws Refused where it is not 243 days that can be */
    public KeptWinter {
        for (double mean : temperatures(means)) {
            if (!(mean > DailyWeather.COLDEST && mean < DailyWeather.HOTTEST)) {
                throw new Refused(
                        "means", mean + " °C", "a day is between -80 and 60 °C", "Import the station’s file again.");
            }
        }
        if (!winds.isEmpty()) {
            for (double wind : numbers("winds", winds)) {
                if (!(wind >= 0 && wind <= DailyWeather.STRONGEST)) {
                    throw new Refused(
                            "winds",
                            wind + " km/h",
                            "a day’s mean wind is 0 to 200 km/h",
                            "Import the station’s file again.");
                }
            }
        }
    }

    /** Wind is kept only where every day has it. */
    static KeptWinter of(Winter winter) {
        var days = winter.days().stream().filter(day -> !isLeapDay(day.date())).toList();
        boolean wind = days.stream().allMatch(day -> day.wind().isPresent());
        return new KeptWinter(
                winter.year(),
                tenths(winter.days().stream().map(DailyWeather::mean).toList()),
                wind
                        ? days.stream()
                                .map(day -> Long.toString(Math.round(day.wind().orElseThrow())))
                                .collect(Collectors.joining(" "))
                        : "");
    }

    /** Without wind. */
    static KeptWinter of(MeanWinter winter) {
        return new KeptWinter(winter.year(), tenths(winter.means()), "");
    }

    /** A half goes to the even tenth, so that the sum of a winter is not moved one way. */
    private static String tenths(List<Double> means) {
        return means.stream()
                .map(mean -> Long.toString((long) Math.rint(TENTHS * mean)))
                .collect(Collectors.joining(" "));
    }

    /** How cold it was; a February 29 that is not kept is as the day before it. Drawn winters have none. */
    public MeanWinter asMeans() {
        var all = new ArrayList<>(Arrays.stream(temperatures(means)).boxed().toList());
        if (all.size() == DAYS && year > StationWinters.MOST && Year.isLeap(year)) {
            all.add(LEAP_INDEX, all.get(LEAP_INDEX - 1));
        }
        return new MeanWinter(year, all);
    }

    /** Of every day but February 29. */
    private double[] everyYear() {
        var all = temperatures(means);
        return all.length == DAYS
                ? all
                : IntStream.range(0, all.length)
                        .filter(day -> day != LEAP_INDEX)
                        .mapToDouble(day -> all[day])
                        .toArray();
    }

    private static boolean isLeapDay(LocalDate date) {
        return date.getMonthValue() == 2 && date.getDayOfMonth() == LEAP_DAY;
    }

    /** Whether a date stands between October 1 and May 31 of some winter. */
    public static boolean covers(LocalDate date) {
        return date.getMonthValue() >= OCTOBER || date.getMonthValue() <= MAY;
    }

    private static int index(LocalDate date) {
        int month = (date.getMonthValue() - OCTOBER + MONTHS_A_YEAR) % MONTHS_A_YEAR;
        int before =
                MONTHS.subList(0, month).stream().mapToInt(Integer::intValue).sum();
        return before + (isLeapDay(date) ? LEAP_DAY - 1 : date.getDayOfMonth()) - 1;
    }

    private static double[] temperatures(String means) {
        return Arrays.stream(numbers("means", means))
                .map(tenth -> tenth / TENTHS)
                .toArray();
    }

    private static double[] numbers(String field, String text) {
        try {
            var numbers = Arrays.stream(text.split(" "))
                    .mapToDouble(Integer::parseInt)
                    .toArray();
            if (numbers.length == DAYS || numbers.length == DAYS + 1 && field.equals("means")) {
                return numbers;
            }
            throw new Refused(
                    field,
                    numbers.length + " days",
                    "a kept winter has 243 days, 244 with February 29",
                    "Import the station’s file again.");
        } catch (NumberFormatException e) {
            throw new Refused(field, "a word", "whole numbers belong here", "Import the station’s file again.");
        }
    }

    /**
     * One week of this winter, whatever the year that it is asked for.
     *
     * @param means of the seven days, °C
     * @param winds of the same days, km/h; empty where the station has none
     * @param monthBefore mean of the thirty days before, °C
     */
    public record Week(List<Double> means, List<Double> winds, double monthBefore) {}

    /**
     * The weeks that begin on some dates.
     *
     * @param begins each between October 1 and May 25
     * @param usual for the days before October 1
     */
    public List<Week> weeks(List<LocalDate> begins, Normals usual) {
        var temperatures = everyYear();
        var wind = winds.isEmpty() ? new double[0] : numbers("winds", winds);
        var weeks = new ArrayList<Week>();
        for (var begin : begins) {
            var dates = IntStream.range(0, Normals.DAYS_A_WEEK)
                    .mapToObj(begin::plusDays)
                    .toList();
            weeks.add(new Week(
                    dates.stream().map(date -> temperatures[index(date)]).toList(),
                    wind.length == 0
                            ? List.of()
                            : dates.stream().map(date -> wind[index(date)]).toList(),
                    IntStream.rangeClosed(1, Normals.DAYS_BEFORE)
                            .mapToObj(begin::minusDays)
                            .mapToDouble(date -> covers(date) ? temperatures[index(date)] : usual.mean(date))
                            .average()
                            .orElseThrow()));
        }
        return List.copyOf(weeks);
    }
}
