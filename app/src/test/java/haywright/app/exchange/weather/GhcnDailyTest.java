package haywright.app.exchange.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.app.exchange.weather.GhcnDaily.Units;
import haywright.quantity.Unit;
import haywright.weather.DailyWeather;
import haywright.weather.Station;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GhcnDailyTest {
    private static final LocalDate FIRST = LocalDate.of(1990, 1, 1);
    private static final Station PART = Station.fortCollins().between(FIRST, LocalDate.of(1993, 12, 31));

    private static GhcnDaily.Read read(String text, Units units) {
        return GhcnDaily.read(text.lines(), units);
    }

    /** A line of .dly: values of days 1 to 31, tenths, with their flags as typed. */
    private static String dly(String month, String element, String... days) {
        var line = new StringBuilder("USC00053005" + month + element);
        for (int day = 0; day < 31; day++) {
            line.append(day < days.length ? days[day] : "-9999   ");
        }
        return line + "\n";
    }

    @Test
    void fixedColumns() {
        var read = read(
                dly("199001", "TMAX", "   39  0", "  106  0", "  -56  0", "  250 X0")
                        + dly("199001", "TMIN", " -122  0", "  -61  0", " -167  0", " -100  0")
                        + dly("199001", "SNOW", "   25  0")
                        + dly("199001", "PRCP", "    0T 0", "   13  0", "-9999   "),
                Units.TENTHS);
        var days = read.station().days();
        assertThat(days).hasSize(3); // the fourth has a quality flag
        assertThat(days.get(0).high()).isCloseTo(3.9, within(1e-9));
        assertThat(days.get(0).low()).isCloseTo(-12.2, within(1e-9));
        assertThat(days.get(1).precipitation()).hasValue(1.3);
        assertThat(days.get(1).wet()).isTrue();
        assertThat(days.get(2).precipitation()).isEmpty();
        assertThat(days.get(2).high()).isCloseTo(-5.6, within(1e-9));
        assertThat(read.station().name()).isEqualTo("USC00053005");
    }

    @Test
    void aLineThatIsCutShortIsNamed() {
        var line = dly("199001", "TMAX", "   39  0", "  106  0").strip();
        for (int length = 1; length < line.length(); length++) {
            var cut = line + "\n" + line.substring(0, length);
            try {
                read(cut, Units.TENTHS);
                assertThat(line.substring(length))
                        .as("only blank flags of the 31st are cut")
                        .isBlank();
            } catch (Refused refused) {
                assertThat(refused.problems().get(0).field()).isEqualTo("line 2");
            }
        }
    }

    @Test
    void whatIsNoNumberAndDaysWithoutEndAreRefused() {
        for (var value : new String[] {"NaN", "Infinity", "1e999", "0x1p3q"}) {
            assertThatThrownBy(() -> read("S,19900101,TMAX," + value + ",,,0,\n", Units.TENTHS))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("a value is a number");
        }
        var days = new StringBuilder();
        for (var day = LocalDate.of(1500, 1, 1); day.getYear() < 1900; day = day.plusDays(1)) {
            days.append("S,").append(day).append(",TMAX,1,,,0\n");
        }
        assertThatThrownBy(() -> read(days.toString(), Units.TENTHS))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("200 years");
    }

    @Test
    void csvWithoutAHeading() {
        var read = read("""
                USC00053005,19900101,TMAX,39,,,0,1900
                USC00053005,19900101,TMIN,-122,,,0,1900
                USC00053005,19900101,AWND,45,,,W,
                USC00053005,19900102,TMAX,106,,G,0,1900
                USC00053005,19900102,TMIN,-61,,,0,1900
                USC00053005,19900104,TMAX,106,,,0,1900
                USC00053005,19900104,TMIN,-61,,,0,1900
                """, Units.TENTHS);
        assertThat(read.station().days()).hasSize(2);
        assertThat(read.station().days().get(0).wind().orElseThrow()).isCloseTo(16.2, within(1e-9)); // 4.5 m/s
        assertThat(read.station().gaps()).containsExactly(new Station.Gap(LocalDate.of(1990, 1, 2), 2));
    }

    private static String wide(Function<DailyWeather, String> values) {
        return "\"STATION\",\"DATE\",\"NAME\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\"\n"
                + PART.days().stream()
                        .map(d -> "\"USC00053005\",\"%s\",\"FORT COLLINS, CO US\",%s\n"
                                .formatted(d.date(), values.apply(d)))
                        .collect(Collectors.joining());
    }

    private static String fahrenheit(DailyWeather day) {
        return String.format(Locale.ROOT, "%.0f,\",,0,1900\",%.0f", 32 + 1.8 * day.high(), 32 + 1.8 * day.low());
    }

    private static String celsius(DailyWeather day) {
        return String.format(Locale.ROOT, "%.1f,\",,0\",%.1f", day.high(), day.low());
    }

    private static String tenths(DailyWeather day) {
        return String.format(Locale.ROOT, "%.0f,\",,0\",%.0f", 10 * day.high(), 10 * day.low());
    }

    @Test
    void csvWithAHeadingInEachUnit() {
        assertThat(read(wide(GhcnDailyTest::fahrenheit), Units.STANDARD)
                        .station()
                        .winters())
                .hasSize(3);
        for (var read : new GhcnDaily.Read[] {
            read(wide(GhcnDailyTest::fahrenheit), Units.STANDARD),
            read(wide(GhcnDailyTest::celsius), Units.METRIC),
            read(wide(GhcnDailyTest::tenths), Units.TENTHS)
        }) {
            assertThat(read.leftOut()).isZero();
            assertThat(read.station().days()).hasSameSizeAs(PART.days());
            assertThat(read.station().winters().get(0).mean())
                    .isCloseTo(PART.winters().get(0).mean(), within(0.03));
        }
    }

    /** One's own table has no station, and often its own words and dates. */
    @Test
    void csvWithoutAStationColumn() {
        var plain = wide(GhcnDailyTest::fahrenheit);
        var bare = PART.days().stream()
                .map(d -> "%s,%.0f,%.0f"
                        .formatted(d.date(), Unit.FAHRENHEIT.fromBase(d.high()), Unit.FAHRENHEIT.fromBase(d.low())))
                .collect(Collectors.joining("\n"));
        var read = read("DATE,TMAX,TMIN\n" + bare, null);
        var whole = read(plain, null);
        assertThat(read.station().name()).isEmpty();
        assertThat(read.station().days()).hasSameSizeAs(whole.station().days());
        assertThat(read.station().days().get(100).low())
                .isEqualTo(whole.station().days().get(100).low());
        var worded = PART.days().stream()
                .map(d -> "%d/%d/%d,%.0f,%.0f,T"
                        .formatted(
                                d.date().getMonthValue(),
                                d.date().getDayOfMonth(),
                                d.date().getYear(),
                                Unit.FAHRENHEIT.fromBase(d.low()),
                                Unit.FAHRENHEIT.fromBase(d.high())))
                .collect(Collectors.joining("\n"));
        assertThat(read("Date,Low (°F),Max Temp,Precip\n" + worded + "\n1/1/1994,M,M,M\n", null)
                        .station()
                        .days())
                .isEqualTo(PART.days().stream()
                        .map(d -> new DailyWeather(
                                d.date(),
                                Unit.FAHRENHEIT.toBase(Math.round(Unit.FAHRENHEIT.fromBase(d.high()))),
                                Unit.FAHRENHEIT.toBase(Math.round(Unit.FAHRENHEIT.fromBase(d.low()))),
                                OptionalDouble.of(0),
                                OptionalDouble.empty()))
                        .toList());
    }

    /** A heading that names its unit answers what less than a year cannot show. */
    @ParameterizedTest
    @CsvSource({"tmax_f,tmin_f,10", "High (°F),Low (°F),10", "TMAX_C,TMIN_C,50", "Max Temp (C),Min Temp (C),50"})
    void headingsMaySayTheirUnit(String high, String low, double celsiusOf50) {
        var read = read("date,%s,%s%n2026-01-01,50,40%n".formatted(high, low), null);
        assertThat(read.station().days().get(0).high()).isCloseTo(celsiusOf50, within(1e-9));
    }

    @Test
    void unitsThatCannotBeAreAskedFor() {
        assertThatThrownBy(() -> read(wide(GhcnDailyTest::fahrenheit), Units.METRIC))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Are they °F?");
        assertThatThrownBy(() -> read(wide(GhcnDailyTest::tenths), Units.METRIC))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("tenths");
        assertThatThrownBy(() -> read(wide(GhcnDailyTest::celsius), Units.STANDARD))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Are they °C?");
        assertThatThrownBy(() -> read(wide(GhcnDailyTest::celsius), Units.TENTHS))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aYearOfMissingWeatherIsSaidAndItsWintersLeftOut() {
        var text = wide(GhcnDailyTest::celsius)
                .lines()
                .filter(line -> !line.contains("\"1991-"))
                .collect(Collectors.joining("\n"));
        var station = read(text, Units.METRIC).station();
        assertThat(station.gaps()).containsExactly(new Station.Gap(LocalDate.of(1991, 1, 1), 365));
        assertThat(station.winters().stream().map(w -> w.year())).containsExactly(1993);
        assertThat(station.leftOut()).containsExactly(1991, 1992);
    }

    @Test
    void aFewDaysWithTheirLowAboveTheirHighAreLeftOutAndManyAreRefused() {
        Function<DailyWeather, String> swappedIn1990 = day -> day.date().equals(FIRST) ? "5.0,,9.0" : celsius(day);
        var read = read(wide(swappedIn1990), Units.METRIC);
        assertThat(read.leftOut()).isEqualTo(1);
        assertThatThrownBy(() -> read(
                        wide(day -> String.format(Locale.ROOT, "%.1f,,%.1f", day.low(), day.high())), Units.METRIC))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("swapped");
    }

    @Test
    void otherFilesAreRefusedWithTheirLine() {
        assertThatThrownBy(() -> read("", Units.TENTHS)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> read("hello\n", Units.TENTHS))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("line 1");
        assertThatThrownBy(() -> read("date,hay\n2020-01-01,5\n", Units.METRIC))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("TMAX");
        assertThatThrownBy(() -> read("A,19900101,TMAX,39,,,0\nB,19900101,TMAX,39,,,0\n", Units.TENTHS))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("one station");
        assertThatThrownBy(() -> read("A,19900230,TMAX,39,,,0\n", Units.TENTHS))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("19900230");
    }
}
