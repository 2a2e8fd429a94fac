package haywright.weather;

import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;

/**
 * The daily record of one station. Days may be missing: {@link #gaps()} says which.
 *
 * <p>A winter runs from October 1 to May 31. It counts where at least 148 of the 151 days from November to March were
 * measured and no gap is longer than a week; what is missing in such a winter is drawn straight from the day before to the
 * day after, without rain. Other winters are left out, and {@link #leftOut()} says which.
 *
 * @param days with a high and a low, in order of their dates, each date once
 */
public record Station(String name, List<DailyWeather> days) {
    private static final int DAYS_NEEDED = 148;
    private static final int LONGEST_GAP = 7;
    private static final int LONGEST_RUN = 10;

    /** @param days missing in a row from {@code from} on */
    public record Gap(LocalDate from, long days) {}

    /** @throws Refused where days are out of order or twice, or where one day stands again and again */
    public Station {
        days = List.copyOf(days);
        if (days.isEmpty()) {
            throw new Refused("days", "none", "no day has both a high and a low", "Check that it is the right file.");
        }
        int run = 1;
        for (int i = 1; i < days.size(); i++) {
            var day = days.get(i);
            var before = days.get(i - 1);
            if (!day.date().isAfter(before.date())) {
                throw new Refused(
                        "date",
                        day.date().toString(),
                        "days go in order, each once; this one follows " + before.date(),
                        "Check for two stations in one file.");
            }
            run = day.high() == before.high() && day.low() == before.low() ? run + 1 : 1;
            if (run > LONGEST_RUN) {
                throw new Refused(
                        "days",
                        "%d days to %s with the same high and low".formatted(run, day.date()),
                        "weather never holds that steady: the instrument stuck",
                        "Delete these days from the file.");
            }
        }
    }

    /**
     * Fort Collins, Colorado, 1900 to 1999: high, dry and inland. A town station, milder than the open range near it.
     *
     * @see "Colorado Climate Center and NOAA, public record"
     */
    public static Station fortCollins() {
        var days = new ArrayList<DailyWeather>();
        try (var in = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Objects.requireNonNull(Station.class.getResourceAsStream("fort_collins.csv.gz"))),
                StandardCharsets.US_ASCII))) {
            in.readLine();
            var date = LocalDate.of(1900, 1, 1);
            for (var line = in.readLine(); line != null; line = in.readLine()) {
                var cells = line.split(",", -1);
                double inches = cells[2].equals("T") ? 0 : Double.parseDouble(cells[2]);
                days.add(new DailyWeather(
                        date,
                        Unit.FAHRENHEIT.toBase(Double.parseDouble(cells[0])),
                        Unit.FAHRENHEIT.toBase(Double.parseDouble(cells[1])),
                        OptionalDouble.of(1000 * Unit.INCH.toBase(inches)),
                        OptionalDouble.empty()));
                date = date.plusDays(1);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Station("Fort Collins, Colorado", days);
    }

    public LocalDate first() {
        return days.get(0).date();
    }

    public LocalDate last() {
        return days.get(days.size() - 1).date();
    }

    public List<Gap> gaps() {
        var gaps = new ArrayList<Gap>();
        for (int i = 1; i < days.size(); i++) {
            var next = days.get(i - 1).date().plusDays(1);
            long missing = ChronoUnit.DAYS.between(next, days.get(i).date());
            if (missing > 0) {
                gaps.add(new Gap(next, missing));
            }
        }
        return gaps;
    }

    /** A part of the record, both dates in it. */
    public Station between(LocalDate from, LocalDate to) {
        return new Station(
                name,
                days.stream()
                        .filter(day -> !day.date().isBefore(from) && !day.date().isAfter(to))
                        .toList());
    }

    /** Every whole winter, oldest first. */
    public List<Winter> winters() {
        var byDate = byDate();
        var winters = new ArrayList<Winter>();
        for (int year = first().getYear() + 1; year <= last().getYear(); year++) {
            if (whole(year, byDate)) {
                winters.add(winter(year, byDate));
            }
        }
        return List.copyOf(winters);
    }

    /** The years whose winter, named for its spring, the record begins but that are not whole. */
    public List<Integer> leftOut() {
        var byDate = byDate();
        var years = new ArrayList<Integer>();
        for (int year = first().getYear() + 1; year <= last().getYear(); year++) {
            if (!whole(year, byDate)) {
                years.add(year);
            }
        }
        return List.copyOf(years);
    }

    private NavigableMap<LocalDate, DailyWeather> byDate() {
        var map = new TreeMap<LocalDate, DailyWeather>();
        days.forEach(day -> map.put(day.date(), day));
        return map;
    }

    private static boolean whole(int year, NavigableMap<LocalDate, DailyWeather> byDate) {
        int measured =
                byDate.subMap(Winter.november(year), LocalDate.of(year, 4, 1)).size();
        int missing = 0;
        int longest = 0;
        for (var date = Winter.begins(year); !date.isAfter(Winter.ends(year)); date = date.plusDays(1)) {
            missing = byDate.containsKey(date) ? 0 : missing + 1;
            longest = Math.max(longest, missing);
        }
        boolean borders = byDate.floorKey(Winter.begins(year)) != null && byDate.ceilingKey(Winter.ends(year)) != null;
        return borders && longest <= LONGEST_GAP && measured >= DAYS_NEEDED;
    }

    private static Winter winter(int year, NavigableMap<LocalDate, DailyWeather> byDate) {
        var days = new ArrayList<DailyWeather>();
        int drawn = 0;
        for (var date = Winter.begins(year); !date.isAfter(Winter.ends(year)); date = date.plusDays(1)) {
            var day = byDate.get(date);
            drawn += day == null ? 1 : 0;
            days.add(day == null ? between(date, byDate) : day);
        }
        return new Winter(year, days, drawn);
    }

    /** Straight from the day before the gap to the day after it. */
    private static DailyWeather between(LocalDate date, NavigableMap<LocalDate, DailyWeather> byDate) {
        var before = byDate.lowerEntry(date).getValue();
        var after = byDate.higherEntry(date).getValue();
        double way = ChronoUnit.DAYS.between(before.date(), date)
                / (double) ChronoUnit.DAYS.between(before.date(), after.date());
        return new DailyWeather(
                date,
                before.high() + (after.high() - before.high()) * way,
                before.low() + (after.low() - before.low()) * way,
                OptionalDouble.empty(),
                OptionalDouble.empty());
    }
}
