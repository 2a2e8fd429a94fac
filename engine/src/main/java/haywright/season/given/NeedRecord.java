package haywright.season.given;

import haywright.cattle.need.NeedByWeek;
import haywright.outlook.HerdWeather;
import haywright.ranch.Settings;
import haywright.weather.KeptWinter;
import haywright.weather.MeanWinter;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What every group would have needed in each week of every winter that is known, and when grass came.
 *
 * @param winters in the order of the record
 * @param needs by winter, group and week; of weeks that no winter covers, the usual ones
 * @param late days after the said day on which grass came, by winter: where the warmth from March on reached what half of
 *     all winters had by that day; never before it, because cattle turned out early were fed longer before
 */
@SuppressWarnings("ArrayRecordComponent")
public record NeedRecord(List<MeanWinter> winters, Week[][][] needs, int[] late) {
    private static final int MARCH = 3;
    private static final int OCTOBER = 10;
    private static final int MIDDLE = 2;

    /** @param nem Mcal a head and day. @param factor on free-choice intake */
    public record Week(double nem, double factor) {}

    public int size() {
        return winters.size();
    }

    public Week need(int winter, int eater, int week) {
        return needs[winter][eater][week];
    }

    public static NeedRecord of(Season.Setting setting, List<KeptWinter> known, List<Season.Herd> herd) {
        var settings = setting.ranch().settings();
        var begins = setting.begins();
        var needs = new Week[known.size()][herd.size()][];
        var covered = new ArrayList<Integer>();
        for (int week = 0; week < begins.size(); week++) {
            if (HerdWeather.covers(begins.get(week))) {
                covered.add(week);
            }
        }
        var dates = covered.stream().map(begins::get).toList();
        var weather = known.stream()
                .parallel()
                .map(winter -> new HerdWeather(settings).in(winter, dates))
                .toList();
        IntStream.range(0, known.size() * herd.size()).parallel().forEach(i -> {
            int winter = i / herd.size();
            int eater = i % herd.size();
            needs[winter][eater] = weeks(herd.get(eater), covered, weather.get(winter), begins.size());
        });
        var winters = known.stream().map(KeptWinter::asMeans).toList();
        return new NeedRecord(winters, needs, late(winters, settings));
    }

    private static Week[] weeks(Season.Herd herd, List<Integer> covered, List<NeedByWeek.Weather> weather, int weeks) {
        var all = new Week[weeks];
        for (int i = 0; i < covered.size(); i++) {
            var need = herd.needs().in(covered.get(i), weather.get(i));
            all[covered.get(i)] = new Week(need.nem(), need.intakeFactor());
        }
        for (int week = 0; week < weeks; week++) {
            if (all[week] == null) {
                all[week] = herd.usual().get(week);
            }
        }
        return all;
    }

    private static int[] late(List<MeanWinter> winters, Settings settings) {
        var late = new int[winters.size()];
        var said = settings.turnout();
        if (said == null || said.getMonthValue() < MARCH || said.getMonthValue() >= OCTOBER || late.length < MIDDLE) {
            return late;
        }
        int march = days(LocalDate.of(said.getYear(), MARCH, 1));
        int by = days(said);
        var warmth =
                winters.stream().mapToDouble(w -> warmth(w, march, by)).sorted().toArray();
        double needed = warmth[warmth.length / MIDDLE];
        int most = (int) Facts.value("latest_days");
        for (int w = 0; w < late.length; w++) {
            int days = 0;
            while (days < most && warmth(winters.get(w), march, by + days) < needed) {
                days++;
            }
            late[w] = days;
        }
        return late;
    }

    /** Days from October 1, without February 29. */
    private static int days(LocalDate date) {
        return (int) ChronoUnit.DAYS.between(LocalDate.of(2000, OCTOBER, 1), date.withYear(2001));
    }

    private static double warmth(MeanWinter winter, int from, int to) {
        double base = Facts.value("grass_base");
        double sum = 0;
        for (int day = from; day < Math.min(to, winter.means().size()); day++) {
            sum += Math.max(0, winter.means().get(day) - base);
        }
        return sum;
    }

    /** Days late on average, and their spread, without one winter. */
    public double[] lateness(int without) {
        var others = IntStream.range(0, late.length)
                .filter(w -> w != without)
                .map(w -> late[w])
                .toArray();
        double mean = Arrays.stream(others).average().orElse(0);
        double squares = Arrays.stream(others)
                .mapToDouble(d -> (d - mean) * (d - mean))
                .average()
                .orElse(0);
        return new double[] {mean, Math.sqrt(squares)};
    }
}
