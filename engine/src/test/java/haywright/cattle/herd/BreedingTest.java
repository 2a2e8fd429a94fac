package haywright.cattle.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.herd.Group.CalvingWeek;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BreedingTest {
    private static final LocalDate JUNE_5 = LocalDate.of(2026, 6, 5);

    private static List<CalvingWeek> calving(int days, int inCalf, Integer... byCycle) {
        return new Breeding(JUNE_5, JUNE_5.plusDays(days - 1), inCalf, List.of(byCycle)).calving();
    }

    private static int head(List<CalvingWeek> weeks, int from, int to) {
        return weeks.subList(from, to).stream().mapToInt(CalvingWeek::head).sum();
    }

    /** Merck Veterinary Manual: 283 days. June 5 and 283 days are March 15. */
    @Test
    void theFirstWeekBeginsTwoHundredAndEightyThreeDaysAfterTheBullsWentIn() {
        assertThat(calving(63, 225).get(0).begins()).isEqualTo(LocalDate.of(2027, 3, 15));
    }

    /** Six in ten, then six in ten of the rest: 60, 24 and 9.6 of 93.6 that settle in nine weeks. */
    @Test
    void cowsSettleSixInTenEachThreeWeeks() {
        var weeks = calving(63, 936);
        assertThat(weeks).hasSize(9);
        assertThat(head(weeks, 0, 3)).isCloseTo(600, within(2));
        assertThat(head(weeks, 3, 6)).isCloseTo(240, within(2));
        assertThat(head(weeks, 6, 9)).isCloseTo(96, within(2));
        assertThat(head(weeks, 0, 9)).isEqualTo(936);
    }

    @Test
    void whatTheCheckFoundWins() {
        var weeks = calving(45, 200, 90, 80, 30);
        assertThat(head(weeks, 0, 3)).isEqualTo(90);
        assertThat(head(weeks, 3, 6)).isEqualTo(80);
        assertThat(weeks.get(6)).isEqualTo(new CalvingWeek(LocalDate.of(2027, 4, 26), 30));
    }

    /** Their week counts from its middle day, which is the day they are due. */
    @Test
    void oneInseminationIsOneWeekAboutItsDay() {
        assertThat(calving(1, 40)).containsExactly(new CalvingWeek(LocalDate.of(2027, 3, 12), 40));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "7, 3", "20, 11", "63, 5", "63, 1", "80, 237", "200, 404"})
    void nobodyIsLostInRounding(int days, int inCalf) {
        var weeks = calving(days, inCalf);
        assertThat(head(weeks, 0, weeks.size())).isEqualTo(inCalf);
        assertThat(weeks).allSatisfy(week -> assertThat(week.head()).isPositive());
    }

    @Test
    void aLeapDayIsADayLikeAnother() {
        var leap = new Breeding(LocalDate.of(2027, 5, 23), LocalDate.of(2027, 5, 23), 10, List.of()).calving();
        assertThat(leap.get(0).begins().plusDays(3))
                .isEqualTo(LocalDate.of(2028, 2, 29).plusDays(1));
    }

    @Test
    void whatCannotBeIsRefusedInWords() {
        assertThatThrownBy(() -> new Breeding(JUNE_5, JUNE_5.minusDays(3), 10, List.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Jun 2, 2026")
                .hasMessageContaining("come out after they went in, Jun 5, 2026");
        assertThatThrownBy(() -> new Breeding(JUNE_5, JUNE_5.plusYears(1), 10, List.of()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Breeding(JUNE_5, JUNE_5.plusDays(60), 0, List.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("inCalf");
        assertThatThrownBy(() -> new Breeding(JUNE_5, JUNE_5.plusDays(60), 10, List.of(6, 5)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("add up to the 10 bred head");
        assertThatThrownBy(() -> new Breeding(JUNE_5, JUNE_5.plusDays(20), 10, List.of(6, 4)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("21 days with the bull");
    }
}
