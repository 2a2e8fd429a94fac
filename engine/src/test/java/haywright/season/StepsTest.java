package haywright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import haywright.season.given.Season;
import haywright.season.play.Invented;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What can be done on which day, and its dollars beside feed. Prices are the judgments of season.csv, worked out by pencil. */
class StepsTest {
    private static List<Steps.Step> steps(Ranch ranch, LocalDate day) {
        var s = ranch.settings();
        var grass = day.plusDays(150);
        var dated = ranch.with(
                new Settings(true, day, s.system(), "", s.feedingLossPercent(), grass, s.weather(), null, null, null));
        var yard = new Yard(dated, day);
        return new Steps(yard, Season.of(yard)).all();
    }

    private static Optional<Steps.Step> named(String id, Ranch ranch, LocalDate day) {
        return steps(ranch, day).stream().filter(step -> step.id().equals(id)).findFirst();
    }

    private static Ranch calving(LocalDate begins, int due) {
        var cows = Invented.cows(100);
        return Invented.ranch(100, 0).with(cows.dated(List.of(new Group.CalvingWeek(begins, due)), null, null));
    }

    /** 500 lb at $3.20 are $1,600; 600 lb at 8 cents less are $1,872. */
    @Test
    void aHeavierCalfBringsLessAPound() {
        assertThat(HerdSteps.calfUsd(500)).isCloseTo(1600, within(1e-9));
        assertThat(HerdSteps.calfUsd(600)).isCloseTo(1872, within(1e-9));
    }

    /** 30 head of 600 lb that gain a pound a day, 150 days: 750 lb at $3.00 are $2,250 less $1,872, and $0.25 a day saved. */
    @Test
    void calvesSoldNowBringWhatTheyBringLessWhatTheyWouldHaveBrought() {
        var day = LocalDate.of(2026, 12, 1);
        var step = named("sell-calves", calving(LocalDate.of(2027, 3, 29), 100), day)
                .orElseThrow();
        double aHead = 1872 - 750 * (3.2 - 0.08 * 2.5) + 150 * 0.25;
        assertThat(step.beside().applyAsDouble(Invented.ranch(100, 0))).isCloseTo(30 * aHead, within(1e-6));
        assertThat(step.ranch().apply(Invented.ranch(100, 0)).groups()).hasSize(1);
    }

    /** 92 of 100 are down to calve: 8 are open. On Jan 14, 60 days of 120 from the low, one brings $1,225, and $1,350 in March. */
    @Test
    void openCowsThatAreKnownAreSoldWithoutACheckAtThePriceOfTheSeason() {
        var ranch = calving(LocalDate.of(2027, 3, 29), 92);
        var step = named("open", ranch, LocalDate.of(2027, 1, 14)).orElseThrow();
        assertThat(step.beside().applyAsDouble(ranch)).isCloseTo(8 * (1225 - 1350), within(1e-6));
        var left = step.ranch().apply(ranch).groups().get(Invented.COWS);
        assertThat(left.head()).isEqualTo(92);
    }

    /** Where all are down to calve, 7 in 100 are taken to be open, and $8 a head are the check. */
    @Test
    void whereNobodySaysACheckIsPaidForAndNotCloseToCalving() {
        var ranch = calving(LocalDate.of(2027, 3, 29), 100);
        var step = named("open", ranch, LocalDate.of(2027, 1, 14)).orElseThrow();
        assertThat(step.beside().applyAsDouble(ranch)).isCloseTo(7 * (1225 - 1350) - 800, within(1e-6));
        assertThat(named("open", ranch, LocalDate.of(2027, 2, 10))).isEmpty();
    }

    /** Calved in April; on Aug 20 weaning by Aug 27 in place of Oct 23, 57 days at 1.8 lb and $1.50 for 100 calves. */
    @Test
    void earlyWeaningIsThereInAugustAndSeptemberAloneAndOnlyWithCalvesAtFoot() {
        var ranch = calving(LocalDate.of(2026, 4, 1), 100);
        var step = named("wean", ranch, LocalDate.of(2026, 8, 20)).orElseThrow();
        assertThat(step.decideBy()).isEqualTo(LocalDate.of(2026, 9, 30));
        assertThat(step.beside().applyAsDouble(ranch)).isCloseTo(-100 * 57 * 1.8 * 1.5, within(1e-6));
        assertThat(named("wean", ranch, LocalDate.of(2026, 7, 20))).isEmpty();
        assertThat(named("wean", ranch, LocalDate.of(2026, 10, 2))).isEmpty();
        assertThat(named("wean", calving(LocalDate.of(2027, 3, 29), 100), LocalDate.of(2026, 8, 20)))
                .isEmpty();
    }

    /** Ten weeks of 100 cows at $2.60 a day and $15 for the haul. */
    @Test
    void cowsFedElsewhereCostTheirDaysAndTheHaul() {
        var ranch = calving(LocalDate.of(2027, 3, 29), 100);
        var step = named("custom", ranch, LocalDate.of(2026, 11, 1)).orElseThrow();
        assertThat(step.away()).isEqualTo(10);
        assertThat(step.beside().applyAsDouble(ranch)).isCloseTo(-100 * (70 * 2.6 + 15), within(1e-6));
        assertThat(named("custom", ranch, LocalDate.of(2027, 1, 20))).isEmpty();
    }

    @Test
    void aByProductIsContractedWhereNoneIsListed() {
        var ranch = calving(LocalDate.of(2027, 3, 29), 100);
        var day = LocalDate.of(2026, 11, 1);
        assertThat(named("by-product", ranch, day)).isPresent();
        var listed = named("by-product", ranch, day).orElseThrow().ranch().apply(ranch);
        assertThat(named("by-product", listed, day)).isEmpty();
    }

    @Test
    void everyStepHasADayThatIsNotPastAndSaysWhatIsNotCounted() {
        for (var day : List.of(LocalDate.of(2026, 8, 20), LocalDate.of(2026, 11, 1), LocalDate.of(2027, 1, 14))) {
            assertThat(steps(calving(LocalDate.of(2027, 3, 29), 95), day)).allSatisfy(step -> {
                assertThat(step.decideBy()).isAfterOrEqualTo(day);
                assertThat(step.ask()).isNotBlank();
            });
        }
    }
}
