package haywright.app.web.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.TinLantern;
import haywright.app.report.picture.HerdPicture;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.herd.Group;
import haywright.cattle.need.Requirement;
import haywright.diet.PoorestDiet;
import haywright.outlook.HerdWeather;
import haywright.outlook.WeeksOfNeed;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.weather.DailyWeather;
import haywright.weather.Normals;
import haywright.weather.Station;
import haywright.weather.StationWinters;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The demo's cows in the winters of the station that ships, each week against the days of the record itself. */
class WeeksOfNeedTest {
    private static final Station STATION = Station.fortCollins();
    private static final LocalDate FROM = LocalDate.of(2026, 12, 1);
    private static final Ranch RANCH = ranch(StationWinters.of(STATION));
    private static final Group COWS = RANCH.groups().values().iterator().next();
    private static final WeeksOfNeed WEEKS = WeeksOfNeed.of(RANCH, COWS, FROM, 30);

    private static Ranch ranch(StationWinters winters) {
        var normals = Normals.of(STATION);
        var weather = new RanchWeather(
                STATION.name(),
                normals.monthly().stream()
                        .map(mean -> Quantity.of(mean, Unit.CELSIUS))
                        .toList(),
                Quantity.of(8, Unit.MILE_AN_HOUR),
                Coat.WINTER,
                false,
                ColdSystem.RULE_OF_THUMB,
                null,
                normals.departures(),
                null);
        return TinLantern.ranch().withWeather(weather, winters);
    }

    /** One winter's week by hand: seven real days, the real month before, the mean over the calving weeks. */
    @Test
    void aWeekIsTheMeanOfItsRealDays() {
        var weather = new HerdWeather(RANCH.settings());
        int week = 6; // January 12
        var begins = FROM.plusWeeks(week);
        var needs = STATION.winters().stream()
                .filter(winter -> winter.year() >= 1970)
                .mapToDouble(winter -> {
                    double before = IntStream.rangeClosed(1, 30)
                            .mapToDouble(day -> winter.inYear(2027)
                                    .day(begins.minusDays(day))
                                    .mean())
                            .average()
                            .orElseThrow();
                    return IntStream.range(0, 7)
                            .mapToDouble(day -> Requirement.of(
                                            COWS,
                                            begins.plusDays(day),
                                            RANCH.settings().system(),
                                            before,
                                            List.of(weather.day(
                                                    begins.plusDays(day),
                                                    winter.inYear(2027)
                                                            .day(begins.plusDays(day))
                                                            .mean())))
                                    .nem())
                            .average()
                            .orElseThrow();
                })
                .sorted()
                .toArray();
        assertThat(needs).hasSize(30);
        // a twentieth of a degree of rounding in each day costs at most 0.1 % of maintenance
        for (int i = 0; i < needs.length; i++) {
            assertThat(WEEKS.winters().get(week).get(i)).isCloseTo(needs[i], within(0.02));
        }
        assertThat(WEEKS.mild(week)).hasValue(WEEKS.winters().get(week).get(3));
        assertThat(WEEKS.hard(week)).hasValue(WEEKS.winters().get(week).get(26));
        double mean = Arrays.stream(needs).average().orElseThrow();
        assertThat(WEEKS.usual().get(week).nem())
                .as("the usual week is the mean of the winters")
                .isCloseTo(mean, within(0.02 * mean));
    }

    @Test
    void theBandHoldsTheUsualAndLiesOverTheMildDay() {
        for (int week = 0; week < 26; week++) {
            double usual = WEEKS.usual().get(week).nem();
            assertThat(WEEKS.mild(week).orElseThrow()).isLessThan(usual);
            assertThat(WEEKS.hard(week).orElseThrow()).isGreaterThan(usual);
            assertThat(WEEKS.mild().get(week).nem()).isLessThan(usual);
        }
        assertThat(WEEKS.hard(26)).as("June is in no winter").isEmpty();
    }

    @Test
    void whereNothingIsKeptThereIsNoBand() {
        var typed = RANCH.withWeather(RANCH.settings().weather(), null);
        assertThat(WeeksOfNeed.of(typed, COWS, FROM, 3).hard(0)).isEmpty();
        var few = ranch(StationWinters.of(STATION.between(LocalDate.of(1994, 1, 1), LocalDate.of(1999, 12, 31))));
        assertThat(WeeksOfNeed.of(few, COWS, FROM, 3).hard(0)).isEmpty();
        var mild = WeeksOfNeed.of(TinLantern.ranch().withWeather(null, null), COWS, FROM, 3);
        assertThat(mild.usual()).isEqualTo(mild.mild());
    }

    /** A wind of its own stands with its day. */
    @Test
    void theWindOfTheRecordIsTaken() {
        var windy = new Station(
                "windy",
                STATION.between(LocalDate.of(1970, 1, 1), LocalDate.of(1999, 12, 31)).days().stream()
                        .map(d -> new DailyWeather(
                                d.date(), d.high(), d.low(), d.precipitation(), java.util.OptionalDouble.of(40)))
                        .toList());
        var blown = WeeksOfNeed.of(ranch(StationWinters.of(windy)), COWS, FROM, 8);
        assertThat(blown.hard(6).orElseThrow()).isGreaterThan(WEEKS.hard(6).orElseThrow() + 0.5);
        assertThat(blown.usual().get(6).nem()).isEqualTo(WEEKS.usual().get(6).nem());
    }

    @Test
    void thePictureSaysItInWordsAndMarksTheDays() {
        var weeks = List.of(
                new HerdPicture.Week(FROM, 20, 22, Optional.of(21.0), Optional.of(23.0)),
                new HerdPicture.Week(FROM.plusWeeks(4), 22, 26.2, Optional.of(25.0), Optional.of(29.2)),
                new HerdPicture.Week(FROM.plusWeeks(8), 30, 31, Optional.empty(), Optional.empty()));
        var picture = new HerdPicture(
                "lb of hay",
                weeks,
                List.of(
                        new HerdPicture.Mark(FROM.plusDays(20), "calving starts"),
                        new HerdPicture.Mark(FROM.plusYears(1), "calves weaned")));
        assertThat(picture.words())
                .isEqualTo("22 lb of hay per head per day now, 31 at most, in the week of Jan 26."
                        + " In the week of Dec 29, 2 winters in 20 take over 3.0 lb more");
        assertThat(picture.svg())
                .contains("calving starts Dec 21", "22 lb now", "31 lb")
                .doesNotContain("weaned");
    }

    /** Straw-like hay of 0.9 Mcal: no calf eats what 1.5 lb of gain takes of it. Good hay carries a dry cow. */
    @Test
    void hayBeyondTheirAppetiteIsSaid() {
        var calves = RANCH.groups().values().stream()
                .filter(group -> group.animals() == haywright.cattle.AnimalClass.GROWING)
                .findFirst()
                .orElseThrow();
        var poor = new haywright.outlook.HayMeasure("", "poor hay", 0.95, 0.2, 1.3);
        var good = new haywright.outlook.HayMeasure("", "good hay", 1.4, 0.8, 1.3);
        assertThat(tooMuch(calves, poor)).contains("poor hay");
        assertThat(tooMuch(COWS, good)).isEmpty();
    }

    private static String tooMuch(Group group, haywright.outlook.HayMeasure hay) {
        var need = new HerdWeather(RANCH.settings()).need(group, LocalDate.of(2027, 1, 20));
        return WeeksAhead.tooMuch(List.of(FROM), List.of(need), List.of(PoorestDiet.of(need)), hay);
    }

    /** Of hay after hay that is poorer: it is said only where the pounds shown are above the most that is shown. */
    @Test
    void moreThanTheyEatIsMoreInTheFiguresShown() {
        for (var group : RANCH.groups().values()) {
            for (double nem = 1.5; nem > 0.7; nem -= 0.01) {
                var said = tooMuch(group, new haywright.outlook.HayMeasure("", "hay", nem, nem / 2, 1));
                if (!said.isEmpty()) {
                    var numbers = java.util.regex.Pattern.compile(
                                    "([0-9]+) lb of dry.* about ([0-9]+) lb .[0-9]+ to ([0-9]+).")
                            .matcher(said);
                    assertThat(numbers.find()).as(said).isTrue();
                    assertThat(Integer.parseInt(numbers.group(1))).isGreaterThan(Integer.parseInt(numbers.group(3)));
                }
            }
        }
    }

    /** Heifers in score 4.5 that are to calve: no loss from 60 days before; cows in 5 are where they should be. */
    @Test
    void thinCattleAreNotToLoseInTheLastSixtyDays() {
        var day = LocalDate.of(2026, 12, 1);
        assertThat(Thin.noLoss(COWS.scored(4.5, null), day)).contains("60 days", "Jan 14, 2027");
        assertThat(Thin.noLoss(COWS.scored(5, null), day)).isEmpty();
    }
}
