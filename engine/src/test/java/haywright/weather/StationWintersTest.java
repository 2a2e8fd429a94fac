package haywright.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What a ranch keeps of a record, held against the record itself. */
class StationWintersTest {
    private static final Station STATION = StationTest.STATION;
    private static final Normals NORMALS = Normals.of(STATION);
    private static final StationWinters KEPT = StationWinters.of(STATION);

    @Test
    void theLatestThirtyWintersAreKeptDayByDay() {
        assertThat(KEPT.drawn()).isFalse();
        assertThat(KEPT.winters().stream().map(KeptWinter::year))
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1970, 1999).boxed().toList());
        var begins = LocalDate.of(2027, 1, 5);
        var week = KEPT.winters().get(29).weeks(List.of(begins), NORMALS).get(0);
        var real = STATION.winters().get(98);
        for (int day = 0; day < 7; day++) {
            assertThat(week.means().get(day))
                    .isCloseTo(real.day(LocalDate.of(1999, 1, 5 + day)).mean(), within(0.0500001));
        }
        double before = IntStream.rangeClosed(1, 30)
                .mapToDouble(
                        day -> real.day(LocalDate.of(1999, 1, 5).minusDays(day)).mean())
                .average()
                .orElseThrow();
        assertThat(week.monthBefore()).isCloseTo(before, within(0.0500001));
        assertThat(week.winds()).isEmpty();
    }

    @Test
    void februaryTwentyNinthStandsForAsTheDayBefore() {
        var winter = KEPT.winters().get(0);
        var leap = winter.weeks(List.of(LocalDate.of(2028, 2, 28)), NORMALS).get(0);
        assertThat(leap.means().get(1)).isEqualTo(leap.means().get(0));
        var plain = winter.weeks(List.of(LocalDate.of(2027, 2, 28)), NORMALS).get(0);
        assertThat(leap.means().get(2)).isEqualTo(plain.means().get(1));
        assertThat(KeptWinter.covers(LocalDate.of(2027, 5, 31))).isTrue();
        assertThat(KeptWinter.covers(LocalDate.of(2027, 6, 1))).isFalse();
    }

    /** Every day of a leap winter is kept, so that how hard it was is how hard it was; a week of another year has no leap day. */
    @Test
    void aLeapWinterKeepsItsTwentyNinthOfFebruary() {
        for (var kept : KEPT.winters()) {
            var real = STATION.winters().stream()
                    .filter(winter -> winter.year() == kept.year())
                    .findFirst()
                    .orElseThrow();
            var means = kept.asMeans().means();
            assertThat(means).hasSameSizeAs(real.means().means());
            for (int day = 0; day < means.size(); day++) {
                assertThat(means.get(day)).isCloseTo(real.means().means().get(day), within(0.0500001));
            }
            var march = kept.weeks(List.of(LocalDate.of(2027, 3, 1)), NORMALS).get(0);
            assertThat(march.means().get(0))
                    .isCloseTo(real.day(LocalDate.of(kept.year(), 3, 1)).mean(), within(0.0500001));
        }
    }

    /** Means and spread of a usual week against the days themselves, month by month. */
    @Test
    void usualWeeksHaveTheMeansAndTheSpreadOfTheRecord() {
        for (int month = 1; month <= 12; month++) {
            int of = month;
            var days = STATION.days().stream()
                    .filter(d -> d.date().getYear() >= 1970 && d.date().getMonthValue() == of)
                    .mapToDouble(DailyWeather::mean)
                    .toArray();
            double mean = java.util.Arrays.stream(days).average().orElseThrow();
            double spread = Math.sqrt(java.util.Arrays.stream(days)
                    .map(d -> (d - mean) * (d - mean))
                    .average()
                    .orElseThrow());
            assertThat(NORMALS.monthly().get(month - 1)).isCloseTo(mean, within(0.0500001));
            var departures = NORMALS.departures().get(month - 1);
            assertThat(departures).isSorted();
            assertThat(departures.stream().mapToDouble(d -> d).sum()).isCloseTo(0, within(0.35));
            double sevenths = Math.sqrt(
                    departures.stream().mapToDouble(d -> d * d).average().orElseThrow());
            // means of sevenths hide what lies within a seventh, and the month's own rise or fall is not in them
            assertThat(sevenths).isBetween(0.8 * spread, spread);
        }
        var january = NORMALS.departures().get(0);
        assertThat(-january.get(0)).as("the cold side is the longer").isGreaterThan(january.get(6));
    }

    @Test
    void aShortRecordIsDrawnOnAndAShorterOneStands() {
        var nine = STATION.between(LocalDate.of(1989, 11, 1), LocalDate.of(1999, 12, 31));
        var drawn = StationWinters.of(nine);
        assertThat(drawn.drawn()).isTrue();
        assertThat(drawn.winters()).hasSize(30);
        var three = StationWinters.of(STATION.between(LocalDate.of(1996, 1, 1), LocalDate.of(1999, 12, 31)));
        assertThat(three.drawn()).isFalse();
        assertThat(three.winters()).hasSize(3);
    }

    @Test
    void tenWholeWintersAreUsedAsTheyAre() {
        var ten = StationWinters.of(STATION.between(LocalDate.of(1989, 10, 1), LocalDate.of(1999, 12, 31)));
        assertThat(ten.drawn()).isFalse();
        assertThat(ten.winters().stream().map(KeptWinter::year))
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1990, 1999).boxed().toList());
        var real = STATION.winters().get(98);
        var kept = ten.winters().get(9).asMeans();
        assertThat(kept.words()).isEqualTo("1998-99");
        assertThat(kept.degreeDaysUnder(-8)).isCloseTo(real.degreeDaysUnder(-8), within(151 * 0.05));
        assertThat(kept.coldestWeek()).isCloseTo(real.coldestWeek(), within(0.0500001));
    }

    @Test
    void aStationWithoutARainGaugeCanBeDrawnFrom() {
        var dry = new Station(
                "dry",
                STATION.between(LocalDate.of(1989, 11, 1), LocalDate.of(1999, 12, 31)).days().stream()
                        .map(d -> new DailyWeather(
                                d.date(), d.high(), d.low(), OptionalDouble.empty(), OptionalDouble.of(12)))
                        .toList());
        var kept = StationWinters.of(dry);
        assertThat(kept.drawn()).isTrue();
        assertThat(kept.winters().get(0).winds()).isEmpty();
        var real = KeptWinter.of(dry.winters().get(0));
        assertThat(real.weeks(List.of(LocalDate.of(2027, 1, 5)), NORMALS).get(0).winds())
                .containsOnly(12.0);
    }

    @Test
    void whatCannotBeIsRefused() {
        var summer = STATION.between(LocalDate.of(1998, 5, 1), LocalDate.of(1998, 9, 30));
        assertThatThrownBy(() -> Normals.of(summer))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("0 days in January")
                .hasMessageContaining("0 days in December");
        assertThatThrownBy(() -> new KeptWinter(1999, "1 2 3", ""))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("3 days");
        var cold = String.join(" ", Collections.nCopies(243, "-900"));
        assertThatThrownBy(() -> new KeptWinter(1999, cold, ""))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("-90.0 °C");
        var mild = String.join(" ", Collections.nCopies(243, "10"));
        assertThatThrownBy(() -> new KeptWinter(1999, mild, mild.replace("10", "300")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("300.0 km/h");
        assertThatThrownBy(() -> WeatherGenerator.fit(new Station(
                        "no January",
                        STATION.days().stream()
                                .filter(d -> d.date().getMonthValue() != 1)
                                .toList())))
                .isInstanceOf(Refused.class);
    }
}
