package haywright.cattle.cold;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.FormulaCheck;
import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Requirement;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Laws of the coat of the season: no day of the calendar is an event. */
class HairCoatTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 7, 1);

    /** Monthly means of a hard continental winter, °F, January to December: invented, for laws only. */
    private static final double[] MEANS = {6, 11, 24, 41, 55, 64, 69, 67, 58, 44, 26, 12};

    /** Of a day, straight from the middle of one month to that of the next, °F. */
    private static double mean(LocalDate day) {
        var last = (day.getDayOfMonth() < 15 ? day.minusMonths(1) : day).withDayOfMonth(15);
        double way = ChronoUnit.DAYS.between(last, day) / (double) ChronoUnit.DAYS.between(last, last.plusMonths(1));
        double from = MEANS[last.getMonthValue() - 1];
        return from + (MEANS[last.plusMonths(1).getMonthValue() - 1] - from) * way;
    }

    private static Animal cow(double score) {
        return new Animal(
                AnimalClass.MATURE_COW,
                Breed.named(""),
                new LiveWeight(560, true),
                score,
                null,
                null,
                0,
                560,
                Animal.NO_ACCLIMATIZATION);
    }

    private static double cold(ColdSystem system, double score, LocalDate day, double fahrenheit) {
        var exposure = new Exposure(Unit.FAHRENHEIT.toBase(fahrenheit), 12, Coat.WINTER, Hide.DRY, false, system)
                .in(HairCoat.usual(day));
        return new Requirement(cow(score), RequirementSystem.NRC_1996, List.of(exposure)).nemCold();
    }

    /** A coat takes a month from one class to the next: at one temperature a day moves the cold by a tenth of a Mcal at most. */
    @ParameterizedTest
    @CsvSource({"RULE_OF_THUMB, 4", "RULE_OF_THUMB, 5.5", "HEAT_BALANCE, 4", "HEAT_BALANCE, 5.5"})
    void noDayOfTheCalendarJumps(ColdSystem system, double score) {
        for (var day = FIRST; day.isBefore(FIRST.plusYears(1)); day = day.plusDays(1)) {
            for (double fahrenheit : new double[] {-20, 10, 30, 50}) {
                assertThat(Math.abs(cold(system, score, day, fahrenheit)
                                - cold(system, score, day.plusDays(1), fahrenheit)))
                        .as("%s at %s °F", day, fahrenheit)
                        .isLessThan(0.1);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"RULE_OF_THUMB, 4", "RULE_OF_THUMB, 5.5", "HEAT_BALANCE, 4", "HEAT_BALANCE, 5.5"})
    void aColderDayNeverCostsLess(ColdSystem system, double score) {
        for (var day = FIRST; day.isBefore(FIRST.plusYears(1)); day = day.plusDays(10)) {
            for (double fahrenheit = 60; fahrenheit > -40; fahrenheit -= 5) {
                assertThat(cold(system, score, day, fahrenheit - 5))
                        .isGreaterThanOrEqualTo(cold(system, score, day, fahrenheit));
            }
        }
    }

    /** The coldest month costs the most, thin or not: a coat that is shed makes no peak of May. */
    @ParameterizedTest
    @CsvSource({"RULE_OF_THUMB, 4", "RULE_OF_THUMB, 5.5", "HEAT_BALANCE, 4", "HEAT_BALANCE, 5.5"})
    void theColdestMonthIsThePeak(ColdSystem system, double score) {
        double january = cold(system, score, LocalDate.of(2027, 1, 15), MEANS[0]);
        assertThat(january).isPositive();
        for (var day = FIRST; day.isBefore(FIRST.plusYears(1)); day = day.plusDays(1)) {
            assertThat(cold(system, score, day, mean(day))).as("%s", day).isLessThanOrEqualTo(january);
        }
    }

    @ParameterizedTest
    @CsvSource({"4", "4.5", "5", "6"})
    void workingsOfACoatOnTheWay(double score) {
        var critical = new LowerCritical(HairCoat.usual(LocalDate.of(2026, 11, 30)), false, score);
        FormulaCheck.reEvaluates(critical);
        assertThat(critical.celsius())
                .isBetween(
                        new LowerCritical(Coat.HEAVY_WINTER, false, score).celsius(),
                        new LowerCritical(Coat.WINTER, false, score).celsius());
    }

    @ParameterizedTest
    @CsvSource({
        "2027-01-15, HEAVY_WINTER", "2027-03-15, HEAVY_WINTER", "2027-04-15, WINTER", "2027-05-15, FALL",
        "2027-07-04, SUMMER", "2027-10-15, FALL", "2027-11-15, WINTER", "2027-12-15, HEAVY_WINTER"
    })
    void aClassOnItsDay(LocalDate day, Coat coat) {
        assertThat(HairCoat.usual(day)).isEqualTo(HairCoat.of(coat));
    }
}
