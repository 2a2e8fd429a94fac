package haywright.app.exchange.weather;

import haywright.quantity.Unit;
import haywright.weather.DailyWeather;
import haywright.weather.Station;
import haywright.workings.Refused;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a station's daily record in one of the three public layouts of GHCN-Daily: {@code .dly} (fixed columns, a line a
 * month), the CSV without a heading (a line a value) and the CSV with one (a line a day). The layout is seen from the text.
 *
 * <p>{@code .dly} and the CSV without a heading hold tenths of °C, tenths of mm and tenths of m/s. The CSV with a heading
 * comes in several units and does not say which: {@link Units} is told, and what cannot be in it is refused with a question;
 * untold, the hottest day of a year says it.
 * Such a CSV needs no station, and its headings may be in words (Date, High, Low).
 * A value with a quality flag is left out. A day counts where it has a high and a low; where its low is above its high, or
 * it stands beyond anything on earth, it is left out and counted in {@link Read#leftOut()}.
 *
 * @see "NOAA, GHCN-Daily readme: the columns of .dly (from memory); field list of the CSV (read in a public repository)"
 */
public final class GhcnDaily {
    private static final int MISSING = -9999;
    /** To the value of the 31st, which every month has; blank flags behind it may be gone. */
    private static final int DLY_LEAST = 21 + 30 * 8 + 5;

    /** Two hundred years: no station has measured longer. */
    private static final int MOST_DAYS = 73_050;

    private static final double TENTH = 0.1;

    /** Days that may be left out, in a hundred; where there are more, the file is refused. */
    private static final int MOST_LEFT_OUT = 2;

    private static final int LONGEST_NAME = 200;

    private static final List<String> WANTED = List.of("TMAX", "TMIN", "PRCP", "AWND");

    private static final Map<String, Set<String>> SAID = Map.of(
            "TMAX", Set.of("MAX", "MAXT", "MAX_TEMP", "MAX_TEMPERATURE", "MAXIMUM_TEMPERATURE", "HIGH", "HIGH_TEMP"),
            "TMIN", Set.of("MIN", "MINT", "MIN_TEMP", "MIN_TEMPERATURE", "MINIMUM_TEMPERATURE", "LOW", "LOW_TEMP"),
            "PRCP", Set.of("PRECIP", "PRECIPITATION", "PCPN", "RAIN"),
            "DATE", Set.of("DAY"));

    /** Marks of a day that was not measured, and of rain too little to measure. */
    private static final Set<String> NOT_MEASURED = Set.of("M", "NA", "-9999", "-");

    private static final String TRACE = "T";
    private static final Pattern UNIT_SAID = Pattern.compile("(?:_|\\(|°|deg ?)([FC])\\)?$", Pattern.CASE_INSENSITIVE);
    private static final DateTimeFormatter SLASHES = DateTimeFormatter.ofPattern("M/d/uuuu", Locale.US);

    /** What the CSV with a heading holds. */
    public enum Units {
        /** Tenths of °C, of mm and of m/s, as the bulk files have them. */
        TENTHS,
        /** °C, mm and m/s. */
        METRIC,
        /** °F, inches and miles an hour. */
        STANDARD;

        double temperature(double value) {
            return this == STANDARD ? Unit.FAHRENHEIT.toBase(value) : this == TENTHS ? TENTH * value : value;
        }

        double millimeters(double value) {
            return this == STANDARD ? 1000 * Unit.INCH.toBase(value) : this == TENTHS ? TENTH * value : value;
        }

        double wind(double value) {
            return this == STANDARD
                    ? Unit.MILE_AN_HOUR.toBase(value)
                    : Unit.METER_A_SECOND.toBase(this == TENTHS ? TENTH * value : value);
        }
    }

    /** @param leftOut days whose figures cannot be */
    public record Read(Station station, int leftOut) {}

    private @Nullable Units told;
    private final Map<LocalDate, Map<String, Double>> days = new TreeMap<>();
    private @Nullable String id;
    private @Nullable String name;

    private GhcnDaily(@Nullable Units told) {
        this.told = told;
    }

    /**
     * @param units of a CSV with a heading, null where nobody knows; the other layouts have theirs
     * @throws Refused with the line and what to do about it
     */
    public static Read read(Stream<String> text, @Nullable Units units) {
        var lines = text.filter(line -> !line.isBlank()).iterator();
        if (!lines.hasNext()) {
            throw new Refused("file", "nothing", "a weather file has lines", "Is it the right file?");
        }
        var first = lines.next().replace("\ufeff", "");
        if (first.contains(",")
                && cells(first).stream().anyMatch(cell -> heading(cell).equals("DATE"))) {
            return new GhcnDaily(units).wide(first, lines);
        }
        var reading = new GhcnDaily(Units.TENTHS);
        int n = 0;
        for (var line = first; line != null; line = lines.hasNext() ? lines.next() : null, n++) {
            if (first.contains(",")) {
                reading.tall(n, line);
            } else {
                reading.dly(n, line);
            }
        }
        return reading.read();
    }

    private void dly(int n, String line) {
        if (line.length() < DLY_LEAST) {
            throw wrong(
                    n,
                    line,
                    "a line of .dly has a station, a month, an element and 31 days in fixed columns, and this one ends too soon");
        }
        var element = line.substring(17, 21);
        if (!WANTED.contains(element)) {
            return;
        }
        var month = month(n, line);
        one(n, line.substring(0, 11));
        for (int day = 1; day <= month.lengthOfMonth(); day++) {
            int at = 21 + 8 * (day - 1);
            boolean doubted = at + 6 < line.length() && line.charAt(at + 6) != ' ';
            double value = number(n, line.substring(at, at + 5).strip());
            if (value != MISSING && !doubted) {
                put(month.atDay(day), element, value);
            }
        }
    }

    private static YearMonth month(int n, String line) {
        try {
            return YearMonth.of(Integer.parseInt(line.substring(11, 15)), Integer.parseInt(line.substring(15, 17)));
        } catch (NumberFormatException | DateTimeException e) {
            throw wrong(n, line, "columns 12 to 17 of .dly are a year and a month");
        }
    }

    private void tall(int n, String line) {
        var cells = line.split(",", -1);
        if (cells.length < 6) {
            throw wrong(n, line, "a line has station, date, element, value and three flags");
        }
        if (WANTED.contains(cells[2])) {
            one(n, cells[0]);
            double value = number(n, cells[3]);
            if (value != MISSING && cells[5].isBlank()) {
                put(date(n, cells[1]), cells[2], value);
            }
        }
    }

    private Read wide(String heading, Iterator<String> lines) {
        var columns = new HashMap<String, Integer>();
        var headings = cells(heading);
        for (int i = 0; i < headings.size(); i++) {
            columns.putIfAbsent(heading(headings.get(i)), i);
        }
        if (!columns.keySet().containsAll(List.of("DATE", "TMAX", "TMIN"))) {
            throw wrong(0, heading, "the heading names DATE, TMAX and TMIN");
        }
        var station = columns.get("STATION");
        told = told == null ? units(headings.get(columns.getOrDefault("TMAX", 0))) : told;
        for (int n = 1; lines.hasNext(); n++) {
            var line = lines.next();
            var cells = cells(line);
            if (cells.size() != headings.size()) {
                throw wrong(n, line, "%d fields stand under %d headings".formatted(cells.size(), headings.size()));
            }
            one(n, station == null ? "" : cells.get(station));
            name = columns.containsKey("NAME") ? cells.get(columns.get("NAME")).strip() : name;
            var date = date(n, cells.get(columns.getOrDefault("DATE", 0)));
            for (var element : WANTED) {
                var at = columns.get(element);
                var value = at == null ? "" : cells.get(at).strip();
                var flags = columns.get(element + "_ATTRIBUTES");
                if (!value.isEmpty()
                        && !NOT_MEASURED.contains(value)
                        && !doubted(flags == null ? "" : cells.get(flags))) {
                    put(date, element, value.equals(TRACE) ? 0 : number(n, value));
                }
            }
        }
        return read();
    }

    /** What a heading says of its unit: {@code tmax_f}, {@code High (°C)}. */
    private static @Nullable Units units(String heading) {
        var unit = UNIT_SAID.matcher(heading.strip());
        return !unit.find() ? null : unit.group(1).equalsIgnoreCase("F") ? Units.STANDARD : Units.METRIC;
    }

    /** As GHCN-Daily names it, where a table made by hand or by another service says it in words. */
    private static String heading(String cell) {
        var plain = cell.toUpperCase(Locale.ROOT)
                .replaceAll("\\(.*?\\)|°[CF]?", " ")
                .strip()
                .replaceAll("[ _]+", "_")
                .replaceAll("_(DEG_?)?(F|C|IN|MM)$", "");
        return SAID.entrySet().stream()
                .filter(said -> said.getValue().contains(plain))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(plain);
    }

    /** Measurement, quality and source flag, with commas between. */
    private static boolean doubted(String flags) {
        var parts = flags.split(",", -1);
        return parts.length > 1 && !parts[1].isBlank();
    }

    private static List<String> cells(String line) {
        var cells = new ArrayList<String>();
        var cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    private void one(int n, String station) {
        var name = station.strip();
        if (id == null) {
            id = name;
        } else if (!id.equals(name)) {
            throw wrong(n, name, "the file holds one station, and began with " + id);
        }
    }

    private void put(LocalDate date, String element, double value) {
        days.computeIfAbsent(date, d -> new HashMap<>(8)).put(element, value);
        if (days.size() > MOST_DAYS) {
            throw new Refused(
                    "file",
                    "more than %d days".formatted(MOST_DAYS),
                    "no station has measured for 200 years",
                    "Is it the file of one station?");
        }
    }

    private Read read() {
        boolean hasDays = days.values().stream().anyMatch(day -> day.keySet().containsAll(List.of("TMAX", "TMIN")));
        var units = hasDays ? units() : Units.METRIC; // of no days, no unit is asked
        var whole = new ArrayList<DailyWeather>();
        int measured = 0;
        Refused why = null;
        for (var day : days.entrySet()) {
            var values = day.getValue();
            var high = values.get("TMAX");
            var low = values.get("TMIN");
            if (high != null && low != null) {
                measured++;
                try {
                    whole.add(new DailyWeather(
                            day.getKey(),
                            units.temperature(high),
                            units.temperature(low),
                            maybe(values.get("PRCP"), units::millimeters),
                            maybe(values.get("AWND"), units::wind)));
                } catch (Refused impossible) {
                    why = impossible;
                }
            }
        }
        if (why != null && 100 * (measured - whole.size()) > MOST_LEFT_OUT * measured) {
            throw why;
        }
        var station = name == null || name.isBlank() ? id : name;
        if (station != null && station.length() > LONGEST_NAME) {
            throw wrong(0, station, "a station has a name of at most %d letters".formatted(LONGEST_NAME));
        }
        return new Read(new Station(station == null ? "" : station, whole), measured - whole.size());
    }

    private static OptionalDouble maybe(@Nullable Double value, DoubleUnaryOperator convert) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(convert.applyAsDouble(value));
    }

    /** A record spans a summer or not; either way its own numbers say when the unit told cannot be right. */
    private Units units() {
        double hottest = days.values().stream()
                .mapToDouble(day -> day.getOrDefault("TMAX", Double.NEGATIVE_INFINITY))
                .max()
                .orElse(0);
        boolean tenths = hottest > 140;
        boolean fahrenheit = hottest > 57 && !tenths;
        if (told == null && days.size() <= 300) {
            throw new Refused(
                    "units",
                    days.size() == 1 ? "1 day" : days.size() + " days",
                    "less than a year does not show whether it is °F, °C or tenths of °C",
                    "Say the units and read it again.");
        }
        var units = told == null ? tenths ? Units.TENTHS : fahrenheit ? Units.STANDARD : Units.METRIC : told;
        if (units == Units.METRIC && fahrenheit) {
            throw asked(hottest, "°C", "hotter than it has been anywhere", "Are they °F?");
        } else if (units != Units.TENTHS && tenths) {
            throw asked(hottest, units == Units.METRIC ? "°C" : "°F", "hotter than any air", "Are they tenths of °C?");
        } else if (units == Units.TENTHS && hottest < 140 && days.size() > 300) {
            throw asked(hottest, "tenths of °C", "a year with no warmer day", "Are they °C or °F?");
        } else if (units == Units.STANDARD && hottest < 55 && days.size() > 300) {
            throw asked(hottest, "°F", "a year with no warmer day", "Are they °C?");
        }
        return units;
    }

    private static Refused asked(double hottest, String unit, String rule, String fix) {
        return new Refused(
                "units",
                String.format(Locale.ROOT, "highs up to %.1f %s", hottest, unit),
                "that would be " + rule,
                fix + " Say the units and read it again.");
    }

    private static LocalDate date(int n, String text) {
        try {
            return text.contains("/")
                    ? LocalDate.parse(text, SLASHES)
                    : text.contains("-")
                            ? LocalDate.parse(text)
                            : LocalDate.parse(text, DateTimeFormatter.BASIC_ISO_DATE);
        } catch (DateTimeException e) {
            throw wrong(n, text, "a date is written 2026-11-25, 20261125 or 11/25/2026");
        }
    }

    private static double number(int n, String text) {
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw wrong(n, text, "a value is a number");
    }

    private static Refused wrong(int n, String text, String rule) {
        var shown = text.length() <= 40 ? text : text.substring(0, 40) + "…";
        return new Refused("line " + (n + 1), shown, rule, "Is it a daily file of GHCN-Daily, as downloaded?");
    }
}
