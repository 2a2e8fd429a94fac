package haywright.cattle.need;

import static haywright.FormulaCheck.reEvaluates;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class NeedByWeekTest {
    private static final LocalDate FROM = LocalDate.of(2026, 11, 15);
    private static final int WEEKS = 30;

    private static Exposure day(double celsius) {
        return new Exposure(celsius, 12, Coat.WINTER, Hide.DRY, true, ColdSystem.USUAL);
    }

    /** Each week is what its seven days are, each asked for on its own. */
    @Test
    void aWeekIsTheMeanOfItsSevenDays() {
        var group = GroupRequirementTest.cows().build();
        var random = new SplittableRandom(4);
        var winter = Stream.generate(() -> new NeedByWeek.Weather(
                        random.nextDouble(-15, 15),
                        Stream.generate(() -> day(random.nextDouble(-30, 10)))
                                .limit(7)
                                .toList()))
                .limit(WEEKS)
                .toList();
        var needs = NeedByWeek.of(group, FROM, WEEKS, NRC_1996).in(winter);
        for (int week = 0; week < WEEKS; week++) {
            double nem = 0;
            double protein = 0;
            for (int day = 0; day < 7; day++) {
                var one = Requirement.of(
                        group,
                        FROM.plusWeeks(week).plusDays(day),
                        NRC_1996,
                        winter.get(week).previousTemperature(),
                        List.of(winter.get(week).days().get(day)));
                nem += one.nem() / 7;
                protein += one.crudeProtein() / 7;
            }
            assertThat(needs.get(week).nem()).isCloseTo(nem, within(1e-9));
            assertThat(needs.get(week).crudeProtein()).isCloseTo(protein, within(1e-9));
        }
        reEvaluates(needs.get(20));
    }

    /** Thin cattle that are to regain condition need it in a week as on a day. */
    @Test
    void aWeekHasTheRegainOfItsDays() {
        var herd = GroupRequirementTest.cows();
        herd.score = 4;
        var group = herd.build().wanting(5.0);
        var cold = new NeedByWeek.Weather(-5, List.of(day(-20)));
        var week = NeedByWeek.of(group, FROM, 1, NRC_1996).in(0, cold);
        var one = Requirement.of(group, FROM, NRC_1996, -5, List.of(day(-20)));
        assertThat(one.nemRegain()).isPositive();
        assertThat(week.nemRegain()).isCloseTo(one.nemRegain(), within(1e-9));
        assertThat(week.spread(Need::nemRegain).high()).isCloseTo(one.nemRegain(), within(1e-9));
    }

    /** Through calving the mean of the days is not the need of the middle day. */
    @Test
    void mildWeeksAreMeansOfDaysToo() {
        var weeks = NeedByWeek.of(GroupRequirementTest.cows().build(), FROM, WEEKS, NRC_1996);
        assertThat(weeks.begins()).hasSize(WEEKS).startsWith(FROM, FROM.plusDays(7));
        var apart = new ArrayList<Double>();
        for (int week = 0; week < WEEKS; week++) {
            var middle = FROM.plusWeeks(week).plusDays(3);
            double onDay = Requirement.of(GroupRequirementTest.cows().build(), middle, NRC_1996)
                    .nem();
            apart.add(Math.abs(weeks.mild().get(week).nem() - onDay));
        }
        assertThat(apart.stream().mapToDouble(d -> d).max().orElseThrow()).isGreaterThan(0.02);
        assertThat(weeks.mild().get(0).nemCold()).isZero();
    }

    @Test
    void oneDayOfWeatherStandsForAllSeven() {
        var weeks = NeedByWeek.of(GroupRequirementTest.cows().build(), FROM, 1, NRC_1996);
        var seven = new NeedByWeek.Weather(
                3, Stream.generate(() -> day(-20)).limit(7).toList());
        var one = new NeedByWeek.Weather(3, List.of(day(-20)));
        assertThat(weeks.in(0, one).nem()).isCloseTo(weeks.in(0, seven).nem(), within(1e-12));
    }

    @Test
    void aWeekOfFiveDaysAndAGroupThatCannotBeAreRefused() {
        var five = Stream.generate(() -> day(0)).limit(5).toList();
        assertThatThrownBy(() -> new NeedByWeek.Weather(3, five))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("seven days");
        var herd = GroupRequirementTest.cows();
        herd.score = 12;
        var group = herd.build();
        assertThatThrownBy(() -> NeedByWeek.of(group, FROM, 2, NRC_1996))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("conditionScore");
    }
}
