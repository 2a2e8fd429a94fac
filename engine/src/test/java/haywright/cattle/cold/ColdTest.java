package haywright.cattle.cold;

import static haywright.FormulaCheck.reEvaluates;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.Maintenance;
import haywright.cattle.Pregnancy;
import haywright.cattle.intake.HayNeed;
import haywright.cattle.intake.IntakeTemperature;
import haywright.cattle.need.GroupRequirementTest;
import haywright.cattle.need.NeedByWeek;
import haywright.cattle.need.Requirement;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The cold, by both systems: what an independent script gives, and what must hold of any day. */
class ColdTest {
    /** 600 kg, MEI 18, nothing retained, −20 °C: figures of an independent script, to the digits it printed. */
    @ParameterizedTest
    @CsvSource({
        "5, 2.0, 5, 1.0, 9.0, 10.980, 19.980, -7.739, 4.013, 2.312",
        "5, 2.0, 30, 1.0, 9.0, 3.580, 12.580, 9.571, 15.374, 8.856",
        "5, 2.0, 5, 0.5, 9.0, 5.490, 14.490, 5.103, 11.331, 6.527",
        "3, 2.0, 5, 1.0, 7.5, 10.980, 18.480, -4.230, 5.581, 3.215",
        "5, 0.6, 5, 0.2, 9.0, 1.482, 10.482, 14.479, 21.514, 12.392"
    })
    void heatBalanceAgrees(
            double score,
            double hair,
            double wind,
            double mud,
            double ti,
            double ei,
            double in,
            double lct,
            double mec,
            double nem) {
        var balance = new HeatBalance(600, score, true, hair, wind, mud, -20, 18, 0);
        var half = within(0.0005);
        assertThat(balance.surface()).isCloseTo(6.540, half);
        assertThat(balance.heat()).isCloseTo(2.752, half);
        assertThat(balance.tissue()).isCloseTo(ti, half);
        assertThat(balance.coat()).isCloseTo(ei, half);
        assertThat(balance.insulation()).isCloseTo(in, half);
        assertThat(balance.lowerCritical()).isCloseTo(lct, half);
        assertThat(balance.metabolizableEnergy()).isCloseTo(mec, half);
        assertThat(0.576 * balance.metabolizableEnergy()).isCloseTo(nem, half);
        reEvaluates(balance);
        reEvaluates(new HeatBalance(300, score, false, hair, wind, mud, -20, 12, 1));
    }

    /** Where going round and round with the ration's own energy ends is where the division ends. */
    @Test
    void aRationThatCarriesTheColdIsFoundByGoingRound() {
        double ration = 18;
        double carries = 0;
        for (int round = 0; round < 200; round++) {
            var balance = new HeatBalance(600, 5, true, 2, 5, 0.5, -20, ration + carries, 0);
            double change = balance.metabolizableEnergy() - carries;
            carries += change;
            if (Math.abs(change) < 0.001 * carries) {
                break;
            }
        }
        assertThat(new HeatBalance(600, 5, true, 2, 5, 0.5, -20, ration, 0).carried())
                .isCloseTo(carries, within(0.001 * carries));
    }

    record Day(double weight, double score, double temperature, double wind, Coat coat, Hide hide, boolean windbreak) {
        Exposure in(ColdSystem system) {
            return new Exposure(temperature, wind, coat, hide, windbreak, system);
        }

        Day colder(double by) {
            return new Day(weight, score, temperature - by, wind, coat, hide, windbreak);
        }

        Day windier(double by) {
            return new Day(weight, score, temperature, wind + by, coat, hide, windbreak);
        }

        Day under(Hide other) {
            return new Day(weight, score, temperature, wind, coat, other, windbreak);
        }

        Animal cow(double previous) {
            return new Animal(
                    AnimalClass.MATURE_COW,
                    Breed.AVERAGE,
                    LiveWeight.full(weight),
                    score,
                    new Pregnancy(38, 200),
                    null,
                    0,
                    600,
                    previous);
        }

        double need(ColdSystem system) {
            return need(system, Animal.NO_ACCLIMATIZATION);
        }

        double need(ColdSystem system, double previous) {
            return new Requirement(cow(previous), NRC_1996, List.of(in(system))).nem();
        }
    }

    static Stream<Day> days() {
        var random = new SplittableRandom(7);
        return Stream.generate(() -> new Day(
                        random.nextDouble(450, 720),
                        random.nextDouble(3, 7),
                        random.nextDouble(-35, 20),
                        random.nextDouble(0, 60),
                        Coat.values()[random.nextInt(4)],
                        Hide.values()[random.nextInt(4)],
                        random.nextBoolean()))
                .limit(300);
    }

    @ParameterizedTest
    @MethodSource("days")
    void colderWindierAndWetterNeverNeedLess(Day day) {
        for (var system : ColdSystem.values()) {
            double now = day.need(system);
            assertThat(day.colder(3).need(system)).isGreaterThanOrEqualTo(now - 1e-9);
            assertThat(day.windier(4).need(system)).isGreaterThanOrEqualTo(now - 1e-9);
            for (var hide : Hide.values()) {
                if (hide.ordinal() > day.hide.ordinal()) {
                    assertThat(day.under(hide).need(system)).isGreaterThanOrEqualTo(now - 1e-9);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("days")
    void aColderMonthBeforeNeverNeedsLessAndTheSameColdIsCountedOnce(Day day) {
        for (var system : ColdSystem.values()) {
            assertThat(day.need(system, -10)).isGreaterThanOrEqualTo(day.need(system, 5) - 1e-9);
        }
        double mild = new Requirement(day.cow(20), NRC_1996).nem();
        double month = new Requirement(day.cow(-10), NRC_1996).nem() - mild;
        double acute = day.need(ColdSystem.RULE_OF_THUMB) - mild;
        assertThat(day.need(ColdSystem.RULE_OF_THUMB, -10) - mild).isCloseTo(Math.max(month, acute), within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("days")
    void aThinnerAnimalIsNeverWarmer(Day day) {
        assertThat(new LowerCritical(day.coat, day.hide.wet(), day.score - 1).celsius())
                .isGreaterThanOrEqualTo(new LowerCritical(day.coat, day.hide.wet(), day.score).celsius());
        assertThat(balance(day, day.score - 1).metabolizableEnergy())
                .isGreaterThanOrEqualTo(balance(day, day.score).metabolizableEnergy());
    }

    private static HeatBalance balance(Day day, double score) {
        return new HeatBalance(
                day.weight, score, true, day.coat.hair(), day.wind, day.hide.left(), day.temperature, 18, 0);
    }

    @ParameterizedTest
    @MethodSource("days")
    void theWordsGiveTheNumbers(Day day) {
        for (var system : ColdSystem.values()) {
            reEvaluates(new Requirement(day.cow(-3), NRC_1996, List.of(day.in(system))));
        }
        reEvaluates(new Nws2001WindChill(day.temperature, day.wind));
        reEvaluates(new HayNeed(day.weight, 120, 88, 15, 8));
        reEvaluates(new IntakeTemperature(day.temperature));
    }

    /**
     * Three tenths of 20 mph are 6. From the printed cells of the wind chill table at 10 °F, columns 5, 10 and 20 mph: 3,
     * −1 and −10 °F, so that 6 mph feel like 3 − 4/5 = 2.2: the windbreak spares 12.2 degrees, of 42 below 32 °F in the open.
     */
    @Test
    void aWindbreakTakesTheWindsPartAndNoMore() {
        double wind = Unit.MILE_AN_HOUR.toBase(20);
        double air = Unit.FAHRENHEIT.toBase(10);
        var open = new Day(600, 5, air, wind, Coat.WINTER, Hide.DRY, false);
        var sheltered = new Day(600, 5, air, wind, Coat.WINTER, Hide.DRY, true);
        double mild = new Maintenance(open.cow(20)).nem();
        double spared = open.need(ColdSystem.RULE_OF_THUMB) - sheltered.need(ColdSystem.RULE_OF_THUMB);
        assertThat(spared).isCloseTo(0.122 * mild, within(1e-9));
        var calmer = new Day(600, 5, air, 0.3 * wind, Coat.WINTER, Hide.DRY, false);
        for (var system : ColdSystem.values()) {
            assertThat(sheltered.need(system)).as(system.id()).isCloseTo(calmer.need(system), within(1e-9));
        }
    }

    /** Without wind there is nothing that a windbreak could take. */
    @Test
    void aWindbreakTakesNothingOfAStillFrost() {
        for (double fahrenheit : new double[] {20, 0, -20, -40}) {
            double air = Unit.FAHRENHEIT.toBase(fahrenheit);
            var open = new Day(600, 5, air, 0, Coat.WINTER, Hide.DRY, false);
            var sheltered = new Day(600, 5, air, 0, Coat.WINTER, Hide.DRY, true);
            assertThat(sheltered.need(ColdSystem.RULE_OF_THUMB)).isEqualTo(open.need(ColdSystem.RULE_OF_THUMB));
        }
    }

    /** Every printed cell of the table, and no wind: the temperature itself. */
    @Test
    void windChillRunsThroughThePrintedCells() {
        assertThat(chill(17, 0)).isCloseTo(17, within(1e-9));
        assertThat(chill(-10, 40)).isCloseTo(-78, within(1e-9));
        assertThat(chill(10, 30)).isCloseTo(-26, within(1e-9));
        assertThat(chill(30, 20)).isCloseTo(9, within(1e-9));
        assertThat(chill(15, 5)).isCloseTo(8, within(1e-9));
        assertThat(chill(0, 60)).isEqualTo(chill(0, 40)); // nothing is extrapolated
    }

    private static double chill(double air, double mph) {
        return Unit.FAHRENHEIT.fromBase(
                new CattleWindChill(Unit.FAHRENHEIT.toBase(air), Unit.MILE_AN_HOUR.toBase(mph)).celsius());
    }

    @Test
    void eatingMoreInTheColdByClass() {
        // Ohio State University, 2021
        var factors = IntStream.of(-20, -10, 0, 10)
                .mapToDouble(t -> new IntakeTemperature(t).factor())
                .boxed()
                .collect(Collectors.toList());
        assertThat(factors).containsExactly(1.16, 1.07, 1.05, 1.03);
    }

    /** A week is the mean of its days, and not that of its mean day: one cold day among mild ones still costs. */
    @Test
    void aWeekIsTheMeanOfItsDays() {
        var group = GroupRequirementTest.cows().build();
        var begins = LocalDate.of(2027, 1, 10);
        var days = Stream.of(5.0, 4.0, 3.0, -25.0, 4.0, 5.0, 6.0)
                .map(t -> new Exposure(t, 10, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL))
                .toList();
        var week = NeedByWeek.of(group, begins, 1, NRC_1996).in(0, new NeedByWeek.Weather(2, days));
        double sum = 0;
        for (int day = 0; day < 7; day++) {
            sum += Requirement.of(group, begins.plusDays(day), NRC_1996, 2, List.of(days.get(day)))
                    .nem();
        }
        assertThat(week.nem()).isCloseTo(sum / 7, within(1e-9));
        var needs = week.members().stream().mapToDouble(m -> m.need().nem()).toArray();
        assertThat(week.nem())
                .isBetween(
                        Arrays.stream(needs).min().orElseThrow(),
                        Arrays.stream(needs).max().orElseThrow());
        assertThat(week.nemCold()).isPositive();
        reEvaluates(week);
    }

    /** Days that are equally likely cost the mean of what each would: more than the mean day, and never less. */
    @ParameterizedTest
    @MethodSource("days")
    void weatherByChanceCostsTheMeanOfItsDays(Day day) {
        for (var system : ColdSystem.values()) {
            var three = List.of(
                    day.colder(8).in(system), day.in(system), day.colder(-8).in(system));
            var chance = new Requirement(day.cow(3), NRC_1996, three);
            double mean = three.stream()
                    .mapToDouble(one -> new Requirement(day.cow(3), NRC_1996, List.of(one)).nemCold())
                    .average()
                    .orElseThrow();
            assertThat(chance.nemCold()).isCloseTo(mean, within(1e-9));
            if (system == ColdSystem.HEAT_BALANCE) {
                assertThat(mean + 1e-9)
                        .isGreaterThanOrEqualTo(
                                new Requirement(day.cow(3), NRC_1996, List.of(day.in(system))).nemCold());
            }
            reEvaluates(chance);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-80, 60, Double.NaN})
    void aTemperatureThatCannotBeIsRefused(double celsius) {
        assertThatThrownBy(() -> new Exposure(celsius, 5, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("temperature")
                .hasMessageContaining("°C");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, 300})
    void aWindThatCannotBeIsRefused(double wind) {
        assertThatThrownBy(() -> new CattleWindChill(-5, wind))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("wind");
    }
}
