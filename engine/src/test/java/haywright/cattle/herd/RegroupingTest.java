package haywright.cattle.herd;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.cattle.RequirementSystem;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.herd.Regrouping.Who;
import haywright.cattle.need.Requirement;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** One group made two and two made one: by hand, and nothing lost on the way. */
class RegroupingTest {
    private static final LocalDate ON = LocalDate.of(2026, 12, 5);
    private static final LocalDate FIRST = LocalDate.of(2027, 3, 1);

    private static Group group(
            int id,
            String name,
            AnimalClass animals,
            int head,
            double pounds,
            boolean shrunk,
            double score,
            double gain,
            CalvingWeek... weeks) {
        return new Group(
                new UUID(1, id),
                name,
                animals,
                head,
                Quantity.of(pounds, Unit.POUND),
                shrunk,
                LocalDate.of(2026, 11, 25),
                Quantity.of(1300, Unit.POUND),
                score,
                "Angus",
                List.of(weeks),
                null,
                null,
                null,
                Quantity.of(gain, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    private static CalvingWeek week(int after, int head) {
        return new CalvingWeek(FIRST.plusWeeks(after), head);
    }

    private static final Group COWS =
            group(1, "Cows", AnimalClass.MATURE_COW, 100, 1300, false, 5, 0, week(0, 33), week(1, 40), week(2, 17));

    private static int due(Group group) {
        return group.calving().stream().mapToInt(CalvingWeek::head).sum();
    }

    @ParameterizedTest
    @EnumSource(Who.class)
    void nobodyIsLostInASplit(Who who) {
        for (int head = 1; head < 100; head++) {
            var split = Regrouping.split(COWS, new UUID(1, 2), "Thin cows", head, who, ON);
            assertThat(split.goes().head()).isEqualTo(head);
            assertThat(split.stays().head()).isEqualTo(100 - head);
            assertThat(due(split.goes()) + due(split.stays())).isEqualTo(90);
            assertThat(due(split.goes())).isBetween(0, head);
            assertThat(due(split.stays())).isBetween(0, 100 - head);
            assertThat(split.goes().calving()).allMatch(week -> week.head() > 0);
            // and together again they need what they needed
            var again = Regrouping.join(split.stays(), split.goes(), ON);
            assertThat(again.calving()).isEqualTo(COWS.calving());
            var before = Requirement.of(COWS, ON, RequirementSystem.NRC_1996);
            var after = Requirement.of(again, ON, RequirementSystem.NRC_1996);
            assertThat(after.nem()).isCloseTo(before.nem(), within(1e-9));
        }
    }

    @Test
    void whoGoesIsWhoWasMeant() {
        var early = Regrouping.split(COWS, new UUID(1, 2), "Early", 40, Who.EARLY, ON);
        assertThat(early.goes().calving()).containsExactly(week(0, 33), week(1, 7));
        assertThat(early.stays().calving()).containsExactly(week(1, 33), week(2, 17));
        var late = Regrouping.split(COWS, new UUID(1, 2), "Late", 20, Who.LATE, ON);
        assertThat(late.goes().calving()).containsExactly(week(1, 3), week(2, 17));
        // half of 33, 40, 17 and of 10 open: 16.5, 20, 8.5, 5
        var half = Regrouping.split(COWS, new UUID(1, 2), "Half", 50, Who.ALIKE, ON);
        assertThat(half.goes().calving()).containsExactly(week(0, 17), week(1, 20), week(2, 8));
    }

    @Test
    void bothRememberWhereFrom() {
        var split = Regrouping.split(COWS, new UUID(1, 2), "Thin cows", 30, Who.ALIKE, ON);
        assertThat(split.stays().id()).isEqualTo(COWS.id());
        assertThat(split.stays().past()).containsExactly(new Group.Past(ON, "30 head split off as Thin cows"));
        assertThat(split.goes().past()).containsExactly(new Group.Past(ON, "30 head split from Cows"));
        assertThat(Regrouping.join(split.stays(), split.goes(), ON.plusDays(9)).past())
                .extracting(Group.Past::words)
                .containsExactly(
                        "30 head split off as Thin cows",
                        "30 head split from Cows",
                        "30 head of Thin cows joined 70 head");
    }

    @Test
    void joinedTheyAreTheMeanByHead() {
        // 60 of 500 lb full and 20 of 480 lb shrunk (500 full), ten days apart at 1 and 2 lb a day
        var calves = group(1, "Calves", AnimalClass.GROWING, 60, 500, false, 5, 1);
        var late = new Group(
                new UUID(1, 3),
                "Late calves",
                AnimalClass.GROWING,
                20,
                Quantity.of(480, Unit.POUND),
                true,
                LocalDate.of(2026, 11, 15),
                Quantity.of(1248, Unit.POUND),
                4.2,
                "Hereford",
                List.of(),
                null,
                null,
                null,
                Quantity.of(2, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
        var joined = Regrouping.join(calves, late, ON);
        assertThat(joined.head()).isEqualTo(80);
        assertThat(joined.weight().value()).isCloseTo((60 * 500 + 20 * 520) / 80.0, within(0.005));
        assertThat(joined.weighedOn()).isEqualTo(LocalDate.of(2026, 11, 25));
        assertThat(joined.matureWeight().value()).isCloseTo(1300, within(0.005));
        assertThat(joined.conditionScore()).isCloseTo(4.8, within(1e-9));
        assertThat(joined.gain().value()).isCloseTo(1.25, within(1e-9));
        assertThat(joined.breed()).isEqualTo("Angus");
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> Regrouping.split(COWS, new UUID(1, 2), "All", 100, Who.ALIKE, ON))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("100 head");
        assertThatThrownBy(() -> Regrouping.split(COWS, new UUID(1, 2), "None", 0, Who.ALIKE, ON))
                .isInstanceOf(Refused.class);
        var bulls = group(4, "Bulls", AnimalClass.BULL, 9, 1850, false, 5, 0);
        assertThatThrownBy(() -> Regrouping.join(COWS, bulls, ON))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("bulls");
    }
}
