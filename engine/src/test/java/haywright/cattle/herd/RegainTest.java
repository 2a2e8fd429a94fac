package haywright.cattle.herd;

import static haywright.FormulaCheck.reEvaluates;
import static haywright.cattle.RequirementSystem.NRC_1996;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Requirement;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RegainTest {
    private static final LocalDate SCORED = LocalDate.of(2026, 12, 1);
    private static final LocalDate CALVING = SCORED.plusDays(100);

    private static Group thin(double score, @Nullable Double wanted) {
        return new Group(
                        new UUID(0, 1),
                        "Thin cows",
                        AnimalClass.MATURE_COW,
                        40,
                        Quantity.of(1020, Unit.POUND),
                        true,
                        SCORED,
                        Quantity.of(1100, Unit.POUND),
                        score,
                        "",
                        List.of(new Group.CalvingWeek(CALVING, 40)),
                        null,
                        null,
                        null,
                        Quantity.of(0, Unit.KILOGRAM_A_DAY),
                        null,
                        null,
                        null,
                        null,
                        List.of())
                .wanting(wanted);
    }

    /** University of Nebraska, Using BCS to Manage the Nutritional Program: 207 Mcal from score 4 to 5 at 1,100 lb. */
    @Test
    void bringsThemToTheWantedScoreByTheFirstCalving() {
        double plain = Requirement.of(thin(4, 4.0), SCORED, NRC_1996).nem();
        var need = Requirement.of(thin(4, 5.0), SCORED, NRC_1996);
        assertThat(100 * need.nemRegain()).isCloseTo(207, within(0.5));
        assertThat(need.nem() - plain).isCloseTo(need.nemRegain(), within(1e-9));
        assertThat(Requirement.of(thin(4, 5.0), SCORED.plusDays(30), NRC_1996).nemRegain())
                .isEqualTo(need.nemRegain());
        reEvaluates(Regain.of(thin(4, 5.0), SCORED).orElseThrow());
    }

    @Test
    void addsNothingOnceTheFirstHasCalvedOrTheScoreIsThere() {
        assertThat(Requirement.of(thin(4, 5.0), CALVING, NRC_1996).nemRegain()).isZero();
        assertThat(Requirement.of(thin(5, 5.0), SCORED, NRC_1996).nemRegain()).isZero();
        assertThat(Requirement.of(thin(5.5, 5.0), SCORED, NRC_1996).nemRegain()).isZero();
        assertThat(Requirement.of(thin(4, 4.0), SCORED, NRC_1996).nemRegain()).isZero();
        assertThat(Requirement.of(thin(5.5, null), SCORED, NRC_1996).nemRegain())
                .isZero();
    }

    /** University of Nebraska: 5 at calving. Half a score in 30 days is the most: 1.6 in 100 days. */
    @Test
    void bringsThinCowsToTheUsualScoreWhereNobodyEnteredAnother() {
        assertThat(Regain.planned(thin(4, null))).isEqualTo(5);
        assertThat(Regain.planned(thin(3, null))).isEqualTo(4.6);
        assertThat(Regain.planned(thin(4.5, 4.0))).isEqualTo(4.5);
        assertThat(Regain.planned(thin(4, null).holding())).isEqualTo(4);
        assertThat(Regain.of(thin(3, null), SCORED).orElseThrow().isFast()).isFalse();
        assertThat(Requirement.of(thin(4, null), SCORED, NRC_1996).nemRegain())
                .isEqualTo(Requirement.of(thin(4, 5.0), SCORED, NRC_1996).nemRegain());
        // too late to gain a tenth
        var late = thin(4, null).dated(List.of(new Group.CalvingWeek(SCORED.plusDays(5), 40)), null, null);
        assertThat(Regain.planned(late)).isEqualTo(4);
    }

    /** Bulls and open cattle calve nothing: their score is theirs. */
    @Test
    void leavesCattleThatDoNotCalve() {
        assertThat(Regain.planned(thin(4, null).dated(List.of(), null, null))).isEqualTo(4);
        assertThat(Regain.of(thin(4, null).dated(List.of(), null, null), SCORED))
                .isEmpty();
    }

    /** Half a score in 30 days is the most; a score in 100 is slower, two are faster. */
    @Test
    void saysWhenItIsFast() {
        assertThat(Regain.of(thin(4, 5.0), SCORED).orElseThrow().isFast()).isFalse();
        assertThat(Regain.of(thin(3, 5.0), SCORED).orElseThrow().isFast()).isTrue();
    }
}
