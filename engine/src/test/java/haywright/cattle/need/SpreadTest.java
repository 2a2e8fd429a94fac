package haywright.cattle.need;

import static haywright.cattle.RequirementSystem.NRC_1996;
import static haywright.quantity.Unit.POUND;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.herd.HerdCheck;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Note;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadTest {
    private static final List<ToDoubleFunction<Need>> FACTS =
            List.of(Need::nem, Need::crudeProtein, need -> need.intake(1.2).kilograms());

    private static Group.Weights weights(double from, double to) {
        return new Group.Weights(Quantity.of(from, POUND), Quantity.of(to, POUND));
    }

    private static GroupRequirementTest.Herd spreadOut() {
        var herd = GroupRequirementTest.cows();
        herd.weights = weights(1130, 1470);
        herd.scores = new Group.Scores(4, 6);
        return herd;
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-11-25", "2027-02-10", "2027-03-30", "2027-05-01", "2027-11-01"})
    void theMeanLiesInTheBandAndMoreVarietyNeverNarrowsIt(String date) {
        var day = LocalDate.parse(date);
        var alike = Requirement.of(GroupRequirementTest.cows().build(), day, NRC_1996);
        var apart = Requirement.of(spreadOut().build(), day, NRC_1996);
        for (var fact : FACTS) {
            var narrow = alike.spread(fact);
            var wide = apart.spread(fact);
            assertThat(wide.mean()).isEqualTo(narrow.mean()).isCloseTo(fact.applyAsDouble(alike), within(1e-9));
            assertThat(narrow.mean()).isBetween(narrow.low(), narrow.high());
            assertThat(wide.mean()).isBetween(wide.low(), wide.high());
            assertThat(wide.high() - wide.low()).isGreaterThan(narrow.high() - narrow.low());
        }
    }

    /** Cows of one calving week, all alike: no spread. With weights: the need of the light and of the heavy ones. */
    @Test
    void theBandOfWeightsIsTheNeedOfTheLightAndTheHeavy() {
        var herd = GroupRequirementTest.cows();
        herd.calving = List.of(new CalvingWeek(LocalDate.of(2027, 3, 15), 240));
        var day = LocalDate.of(2027, 1, 20);
        var alike = Requirement.of(herd.build(), day, NRC_1996).spread(Need::nem);
        assertThat(alike.low()).isEqualTo(alike.high());
        herd.weights = weights(1130, 1470);
        var apart = Requirement.of(herd.build(), day, NRC_1996).spread(Need::nem);
        for (var end : List.of(1130.0, 1470.0)) {
            herd.weights = null;
            herd.weight = Quantity.of(end, POUND);
            herd.mature = herd.weight;
            double need = Requirement.of(herd.build(), day, NRC_1996).nem();
            assertThat(end < 1300 ? apart.low() : apart.high()).isCloseTo(need, within(0.01 * need));
        }
    }

    /** Nine in ten of many animals drawn one by one, weight and score apart from each other, lie in the band. */
    @Test
    void nineInTenOfDrawnAnimalsLieInTheBand() {
        var herd = spreadOut();
        var need = Requirement.of(herd.build(), LocalDate.of(2027, 2, 10), NRC_1996);
        var band = need.spread(Need::nem);
        var random = new java.util.Random(5);
        double deviation = 170 / 1300.0 / 1.6448536;
        var drawn = DoubleStream.generate(() -> {
                    int pick = random.nextInt(240);
                    for (var member : need.members()) {
                        pick -= member.head();
                        if (pick < 0) {
                            var one = member.need()
                                    .animal()
                                    .varied(1 + deviation * random.nextGaussian(), random.nextGaussian() / 1.6448536);
                            return new Requirement(one, NRC_1996).nem();
                        }
                    }
                    throw new IllegalStateException();
                })
                .limit(20_000)
                .toArray();
        double inside = Arrays.stream(drawn)
                        .filter(v -> v >= band.low() && v <= band.high())
                        .count()
                / 20_000.0;
        assertThat(inside).isBetween(0.88, 0.92);
        assertThat(Arrays.stream(drawn).average().orElseThrow()).isCloseTo(band.mean(), within(0.003 * band.mean()));
    }

    /** Where days differ, so do the needs; by equally likely days or by days in a row. */
    @Test
    void coldDaysWidenTheBand() {
        var group = GroupRequirementTest.cows().build();
        var day = LocalDate.of(2027, 1, 20);
        var weather = Stream.of(-25.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0)
                .map(t -> new Exposure(t, 10, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL))
                .toList();
        var mild = Requirement.of(group, day, NRC_1996).spread(Need::nem);
        var likely = Requirement.of(group, day, NRC_1996, 20, weather).spread(Need::nem);
        var inARow = NeedByWeek.of(group, day, 1, NRC_1996)
                .in(0, new NeedByWeek.Weather(20, weather))
                .spread(Need::nem);
        assertThat(likely.high()).isGreaterThan(mild.high() + 1);
        assertThat(inARow.high()).isGreaterThan(mild.high() + 1);
        assertThat(likely.mean()).isBetween(likely.low(), likely.high());
    }

    static Stream<GroupRequirementTest.Herd> drawn() {
        var random = new SplittableRandom(3);
        return Stream.generate(() -> {
                    var herd = GroupRequirementTest.cows();
                    double weight = random.nextDouble(1000, 1600);
                    herd.weight = Quantity.of(weight, POUND);
                    herd.mature = herd.weight;
                    herd.weights = weights(weight - random.nextDouble(10, 250), weight + random.nextDouble(10, 250));
                    herd.score = random.nextDouble(3, 7);
                    herd.scores =
                            new Group.Scores(herd.score - random.nextDouble(2), herd.score + random.nextDouble(2));
                    herd.calving = Stream.iterate(0, i -> i + 7)
                            .limit(9)
                            .map(i -> new CalvingWeek(LocalDate.of(2027, 3, 1).plusDays(i), random.nextInt(25)))
                            .toList();
                    return herd;
                })
                .limit(60);
    }

    @ParameterizedTest
    @MethodSource("drawn")
    void ofAnyGroupTheMeanLiesInTheBandAndBetweenMembers(GroupRequirementTest.Herd herd) {
        var group = herd.build();
        for (var day = LocalDate.of(2026, 11, 1); day.isBefore(LocalDate.of(2027, 6, 1)); day = day.plusDays(23)) {
            var need = Requirement.of(group, day, NRC_1996);
            for (var fact : FACTS) {
                var spread = need.spread(fact);
                assertThat(spread.mean()).isBetween(spread.low(), spread.high());
                var members = need.members().stream()
                        .mapToDouble(m -> fact.applyAsDouble(m.need()))
                        .summaryStatistics();
                assertThat(spread.mean()).isBetween(members.getMin() - 1e-9, members.getMax() + 1e-9);
            }
        }
    }

    /** Eleven scores about 5 with deviation 0.7: most lie from 4 to 6. */
    @Test
    void scoresOfASampleBecomeTheSpread() {
        assertThat(Group.Scores.of(5.1, 0.7)).isEqualTo(new Group.Scores(4, 6.5));
        assertThat(Group.Scores.of(8.5, 1)).isEqualTo(new Group.Scores(7, 9));
    }

    @Test
    void aSpreadThatCannotBeIsRefusedBesideItsField() {
        assertThatThrownBy(() -> weights(1400, 1200))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("heaviest")
                .hasMessageContaining("are swapped");
        assertThatThrownBy(() -> new Group.Weights(Quantity.of(1, Unit.FOOT), Quantity.of(2, POUND)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Group.Scores(0, 5)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Group.Scores(6, 5)).isInstanceOf(Refused.class);
        var herd = spreadOut();
        herd.weights = weights(1320, 1500);
        assertThat(rules(herd)).contains("weights_of_most");
        herd.weights = weights(300, 2300);
        assertThat(rules(herd)).contains("weight_mature_cow");
        herd.weights = null;
        herd.scores = new Group.Scores(5.5, 7);
        assertThat(rules(herd)).contains("scores_of_most");
    }

    private static List<String> rules(GroupRequirementTest.Herd herd) {
        return HerdCheck.of(herd.build(), LocalDate.of(2026, 11, 25)).stream()
                .map(Note::rule)
                .toList();
    }
}
