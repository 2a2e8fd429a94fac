package haywright.weather;

import static haywright.quantity.Unit.FAHRENHEIT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.PublishedTable;
import haywright.workings.PublishedTable.Row;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** The record that ships, against figures another program made of the same days, and what a bad record says. */
class StationTest {
    static final Station STATION = Station.fortCollins();

    private static double number(Row row, String column) {
        return row.number(column).orElseThrow();
    }

    /** Half of the last printed digit. */
    @Test
    void everyWinterAgreesWithItsPublishedSummary() {
        var rows = PublishedTable.read(StationTest.class, "fort_collins_winters.csv")
                .rows();
        var winters = STATION.winters();
        assertThat(winters.stream().map(Winter::year))
                .containsExactlyElementsOf(rows.stream()
                        .map(row -> (int) number(row, "winter_ending"))
                        .toList());
        for (int i = 0; i < rows.size(); i++) {
            var row = rows.get(i);
            var winter = winters.get(i);
            assertThat(FAHRENHEIT.fromBase(winter.mean())).isCloseTo(number(row, "mean_temp_f"), within(0.005000001));
            assertThat(FAHRENHEIT.fromBase(winter.lowest())).isCloseTo(number(row, "min_temp_f"), within(1e-6));
            assertThat(winter.daysWithLowUnder(FAHRENHEIT.toBase(0) - 1e-9))
                    .isEqualTo((long) number(row, "days_tmin_below_0"));
            assertThat(1.8 * winter.degreeDaysUnder(FAHRENHEIT.toBase(18)))
                    .isCloseTo(number(row, "degree_days_below_18f"), within(0.05));
            assertThat(1.8 * winter.degreeDaysUnder(FAHRENHEIT.toBase(32)))
                    .isCloseTo(number(row, "degree_days_below_32f"), within(0.05));
            assertThat(FAHRENHEIT.fromBase(winter.coldestWeek()))
                    .isCloseTo(number(row, "coldest_7day_mean_f"), within(0.005000001));
        }
        assertThat(STATION.gaps()).isEmpty();
    }

    private static DailyWeather day(LocalDate date, double high) {
        return new DailyWeather(date, high, high - 10, OptionalDouble.of(0), OptionalDouble.empty());
    }

    /** Days whose high rises a tenth of a degree each day from October 1, with some left out. */
    private static Station without(LocalDate... missing) {
        var days = new ArrayList<DailyWeather>();
        var from = LocalDate.of(1998, 9, 30);
        for (int i = 0; i < 260; i++) {
            if (!List.of(missing).contains(from.plusDays(i))) {
                days.add(day(from.plusDays(i), i / 10.0 - 15));
            }
        }
        return new Station("invented", days);
    }

    @Test
    void aShortGapIsSaidAndDrawnStraight() {
        var first = LocalDate.of(1999, 1, 5);
        var station = without(first, first.plusDays(1));
        assertThat(station.gaps()).containsExactly(new Station.Gap(first, 2));
        var winter = station.winters().get(0);
        assertThat(winter.drawn()).isEqualTo(2);
        assertThat(winter.day(first).high())
                .isCloseTo(without().winters().get(0).day(first).high(), within(1e-9));
    }

    @Test
    void aWinterWithMoreThanThreeDaysMissingIsLeftOut() {
        var first = LocalDate.of(1999, 1, 5);
        var station = without(first, first.plusDays(9), first.plusDays(20), first.plusDays(30));
        assertThat(station.winters()).isEmpty();
        assertThat(station.leftOut()).containsExactly(1999);
    }

    @Test
    void theTwentyNinthOfFebruary() {
        var plain = STATION.winters().get(0); // 1901
        var leap = plain.inYear(1904);
        assertThat(leap.day(LocalDate.of(1904, 2, 29)).high())
                .isEqualTo(plain.day(LocalDate.of(1901, 2, 28)).high());
        var back = leap.inYear(1901);
        assertThat(back.days()).isEqualTo(plain.days());
    }

    @Test
    void impossibleDaysAreRefused() {
        var date = LocalDate.of(2020, 1, 1);
        assertThatThrownBy(() -> day(date, 102))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("102.0 °C")
                .hasMessageContaining("°F");
        assertThatThrownBy(() -> day(date, -75)).isInstanceOf(Refused.class).hasMessageContaining("-85.0");
        assertThatThrownBy(() -> new DailyWeather(date, -5, 5, OptionalDouble.empty(), OptionalDouble.empty()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("swapped");
        assertThatThrownBy(() -> new DailyWeather(date, 5, -5, OptionalDouble.empty(), OptionalDouble.of(300)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("300.0 km/h");
    }

    @Test
    void aRecordThatStandsStillOrIsOutOfOrderIsRefused() {
        var from = LocalDate.of(2020, 1, 1);
        var still = new ArrayList<DailyWeather>();
        for (int i = 0; i < 11; i++) {
            still.add(day(from.plusDays(i), 4));
        }
        assertThatThrownBy(() -> new Station("invented", still))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("11 days");
        var twice = List.of(day(from, 3), day(from, 4));
        assertThatThrownBy(() -> new Station("invented", twice))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("two stations");
        assertThatThrownBy(() -> new Station("invented", List.of())).isInstanceOf(Refused.class);
    }

    @Test
    void normalsPassThroughTheMonthsAndTheirWeeksHaveColdDays() {
        var normals = new Normals(
                List.of(-6.0, -4.0, 1.0, 7.0, 12.0, 17.0, 20.0, 19.0, 14.0, 7.0, 0.0, -5.0), Normals.USUAL_SPREAD);
        assertThat(normals.mean(LocalDate.of(2027, 1, 15))).isEqualTo(-6);
        assertThat(normals.mean(LocalDate.of(2027, 12, 15))).isEqualTo(-5);
        assertThat(normals.mean(LocalDate.of(2027, 1, 1))).isBetween(-6.0, -5.0);
        var week = normals.week(LocalDate.of(2027, 1, 12));
        assertThat(week).hasSize(7).isSorted();
        assertThat(week.stream().mapToDouble(Double::doubleValue).average().orElseThrow())
                .isCloseTo(normals.mean(LocalDate.of(2027, 1, 15)), within(0.2));
        assertThat(normals.monthBefore(LocalDate.of(2027, 1, 31))).isBetween(-6.0, -5.5);
    }

    /** What stands in Normals as the usual spread is what the record has, from one day of a month to another. */
    @Test
    void theUsualSpreadIsThatOfTheRecord() {
        double sum = 0;
        int n = 0;
        for (int month : new int[] {11, 12, 1, 2, 3}) {
            var means = STATION.days().stream()
                    .filter(d -> d.date().getMonthValue() == month)
                    .mapToDouble(DailyWeather::mean)
                    .toArray();
            double mean = java.util.Arrays.stream(means).average().orElseThrow();
            for (double m : means) {
                sum += (m - mean) * (m - mean);
                n++;
            }
        }
        assertThat(Math.sqrt(sum / n)).isCloseTo(Normals.USUAL_SPREAD, within(0.05));
    }

    @Test
    void normalsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> new Normals(Collections.nCopies(11, 0.0), 6))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("11 months");
        assertThatThrownBy(() -> new Normals(Collections.nCopies(12, 60.0), 6))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("January");
    }
}
