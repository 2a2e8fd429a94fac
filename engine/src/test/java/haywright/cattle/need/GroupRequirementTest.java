package haywright.cattle.need;

import static haywright.cattle.RequirementSystem.NASEM_2016;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static haywright.quantity.Unit.KILOGRAM;
import static haywright.quantity.Unit.KILOGRAM_A_DAY;
import static haywright.quantity.Unit.POUND;
import static haywright.quantity.Unit.POUND_A_DAY;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.Published;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.intake.GrowingIntake1996;
import haywright.cattle.intake.GrowingIntake2016;
import haywright.cattle.need.GroupRequirement.Member;
import haywright.quantity.Quantity;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

public class GroupRequirementTest {
    private static final LocalDate MARCH_15 = LocalDate.of(2027, 3, 15);
    private static final LocalDate WEIGHED = LocalDate.of(2026, 11, 10);
    private static final List<CalvingWeek> SEASON = List.of(
            new CalvingWeek(MARCH_15, 60),
            new CalvingWeek(MARCH_15.plusDays(7), 90),
            new CalvingWeek(MARCH_15.plusDays(14), 50),
            new CalvingWeek(MARCH_15.plusDays(42), 25));

    /** A group to be altered field by field; every test says what it changes. */
    public static final class Herd {
        public AnimalClass animals = AnimalClass.MATURE_COW;
        public int head = 240;
        public Quantity weight = Quantity.of(1300, POUND);
        Quantity mature = Quantity.of(1300, POUND);
        public double score = 5;
        public String breed = "Angus x Hereford";
        public List<CalvingWeek> calving = SEASON;
        public Quantity birth = null;
        public Quantity milk = null;
        public LocalDate weaning = LocalDate.of(2027, 10, 10);
        public Quantity gain = Quantity.of(0, POUND_A_DAY);
        Group.Weights weights = null;
        Group.Scores scores = null;

        public Group build() {
            return new Group(
                    new UUID(1, 1),
                    "the cows",
                    animals,
                    head,
                    weight,
                    false,
                    WEIGHED,
                    mature,
                    score,
                    breed,
                    calving,
                    birth,
                    milk,
                    weaning,
                    gain,
                    null,
                    weights,
                    scores,
                    null,
                    List.of());
        }
    }

    public static Herd cows() {
        return new Herd();
    }

    private static GroupRequirement on(Herd herd, LocalDate date) {
        return (GroupRequirement) Requirement.of(herd.build(), date, NRC_1996);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-11-25", "2027-02-10", "2027-03-30", "2027-05-01", "2027-11-01"})
    void everyMeanLiesBetweenItsMembers(String date) {
        var need = on(cows(), LocalDate.parse(date));
        List<ToDoubleFunction<Need>> facts = List.of(
                Need::nem,
                Need::neg,
                Need::metabolizableProtein,
                Need::crudeProtein,
                Need::calcium,
                Need::phosphorus,
                Need::milk,
                Need::bodyWeight);
        for (var fact : facts) {
            var values = need.members().stream().map(Member::need).mapToDouble(fact::applyAsDouble);
            var range = values.summaryStatistics();
            assertThat(fact.applyAsDouble(need)).isBetween(range.getMin() - 1e-9, range.getMax() + 1e-9);
        }
    }

    @Test
    void theMeanIsWeightedByHeadAndTheOpenOnesCount() {
        var need = on(cows(), LocalDate.of(2026, 11, 25));
        assertThat(need.members().stream().mapToInt(Member::head).sum()).isEqualTo(240);
        assertThat(need.pregnantShare()).isCloseTo(225 / 240.0, within(1e-12));
        double byHand = need.members().stream()
                        .mapToDouble(m -> m.head() * m.need().nem())
                        .sum()
                / 240;
        assertThat(need.nem()).isCloseTo(byHand, within(1e-12));
    }

    /** The week's middle day counts: 18 March is day 283, and the day after she is in her first week of milk. */
    @Test
    void aWeekTurnsFromPregnantToMilkingOnItsMiddleDay() {
        var herd = cows();
        herd.calving = List.of(new CalvingWeek(MARCH_15, 240));
        var calvingDay = MARCH_15.plusDays(3);
        var before = on(herd, calvingDay).members().get(0).need().animal();
        assertThat(before.pregnancy()).isNotNull();
        assertThat(before.pregnancy().day()).isEqualTo(283);
        var after = on(herd, calvingDay.plusDays(7)).members().get(0).need().animal();
        assertThat(after.pregnancy()).isNull();
        assertThat(after.lactation()).isNotNull();
        assertThat(after.lactation().weeks()).isEqualTo(1);
        assertThat(on(herd, calvingDay.minusDays(283)).pregnantShare()).isZero();
    }

    @Test
    void milkEndsAtWeaningAndWithoutOneAfterThirtyWeeks() {
        var herd = cows();
        assertThat(on(herd, LocalDate.of(2027, 10, 9)).milkingShare()).isGreaterThan(0.9);
        assertThat(on(herd, LocalDate.of(2027, 10, 10)).milkingShare()).isZero();
        herd.weaning = null;
        herd.calving = List.of(new CalvingWeek(MARCH_15, 240));
        assertThat(on(herd, MARCH_15.plusDays(3 + 210)).milkingShare()).isEqualTo(1);
        assertThat(on(herd, MARCH_15.plusDays(3 + 211)).milkingShare()).isZero();
    }

    @Test
    void heifersGrowTooAndTakeLighterCalvesAndLessMilk() {
        var herd = cows();
        herd.animals = AnimalClass.BRED_HEIFER;
        herd.weight = Quantity.of(950, POUND);
        herd.gain = Quantity.of(0.8, POUND_A_DAY);
        herd.calving = List.of(new CalvingWeek(MARCH_15, 240));
        var winter = on(herd, LocalDate.of(2026, 12, 10));
        assertThat(winter.neg()).isPositive();
        assertThat(winter.bodyWeight()).isCloseTo((950 + 0.8 * 30) * Published.LB, within(1e-9));
        var breed = Breed.named(herd.breed);
        var heavy = winter.members().get(0).need().animal().pregnancy();
        assertThat(heavy).isNotNull();
        assertThat(heavy.birthWeight()).isCloseTo(0.92 * breed.birthWeight(), within(1e-9));
        var spring = on(herd, LocalDate.of(2027, 4, 20)).members().get(0).need().animal();
        assertThat(spring.animals()).isEqualTo(AnimalClass.FIRST_CALF_HEIFER);
        assertThat(spring.lactation()).isNotNull();
        assertThat(spring.lactation().peak()).isCloseTo(0.74 * breed.peakMilk(), within(1e-9));
    }

    @Test
    void whatTheRanchTypedWinsOverTheBreed() {
        var herd = cows();
        herd.birth = Quantity.of(90, POUND);
        herd.milk = Quantity.of(10, KILOGRAM_A_DAY);
        var pregnant = on(herd, LocalDate.of(2027, 1, 1))
                .members()
                .get(0)
                .need()
                .animal()
                .pregnancy();
        assertThat(pregnant).isNotNull();
        assertThat(pregnant.birthWeight()).isEqualTo(Quantity.of(90, POUND).base());
        var milking = on(herd, LocalDate.of(2027, 6, 1))
                .members()
                .get(0)
                .need()
                .animal()
                .lactation();
        assertThat(milking).isNotNull();
        assertThat(milking.peak()).isEqualTo(10);
    }

    @Test
    void calvesWeighMoreEachDayAndStopAtTheirGrownWeight() {
        var herd = cows();
        herd.animals = AnimalClass.GROWING;
        herd.calving = List.of();
        herd.weaning = null;
        herd.weight = Quantity.of(240, KILOGRAM);
        herd.mature = Quantity.of(580, KILOGRAM);
        herd.gain = Quantity.of(0.6, KILOGRAM_A_DAY);
        assertThat(on(herd, WEIGHED.plusDays(100)).bodyWeight()).isCloseTo(300, within(1e-9));
        assertThat(on(herd, WEIGHED.plusYears(3)).bodyWeight()).isCloseTo(580, within(1e-9));
    }

    @Test
    void intakeOfAGroupIsTheMeanOfItsMembers() {
        var need = on(cows(), LocalDate.of(2027, 3, 30));
        double byHand = need.members().stream()
                        .mapToDouble(m -> m.head() * m.need().intake(1.2).kilograms())
                        .sum()
                / 240;
        assertThat(need.intake(1.2).kilograms()).isCloseTo(byHand, within(1e-9));
    }

    @Test
    void onlyTheIntakeOfGrowingCattleDiffersBetweenTheEditions() {
        var calf = Published.growing(250, 550, 0.7);
        assertThat(new Requirement(calf, NRC_1996).intake(1.4)).isInstanceOf(GrowingIntake1996.class);
        assertThat(new Requirement(calf, NASEM_2016).intake(1.4)).isInstanceOf(GrowingIntake2016.class);
        assertThat(new Requirement(calf, NASEM_2016).neg()).isEqualTo(new Requirement(calf, NRC_1996).neg());
    }

    @Test
    void whatCannotBeIsRefusedInWordsBesideItsField() {
        var herd = cows();
        herd.weight = Quantity.of(250, POUND);
        herd.head = 0;
        assertThatThrownBy(() -> on(herd, WEIGHED))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems())
                                .extracting("field", "value")
                                .contains(
                                        org.assertj.core.groups.Tuple.tuple("weight", "250 lb"),
                                        org.assertj.core.groups.Tuple.tuple("head", "0")));
    }
}
