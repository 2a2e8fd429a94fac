package haywright.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class NextWinterTest {
    private static final UUID NEW = new UUID(0, 2);
    private static final LocalDate WEIGHED = LocalDate.of(2025, 11, 1);

    private static Group cows(LocalDate first, LocalDate last, LocalDate weaning) {
        return new Group(
                new UUID(1, 1),
                "Cows",
                AnimalClass.MATURE_COW,
                100,
                Quantity.of(1300, Unit.POUND),
                false,
                WEIGHED,
                Quantity.of(1300, Unit.POUND),
                5,
                "",
                List.of(new CalvingWeek(first, 60), new CalvingWeek(last, 30)),
                null,
                null,
                weaning,
                Quantity.of(0, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of(new Group.Past(WEIGHED, "10 head joined")));
    }

    private static Ranch last(Group group) {
        return Ranch.empty(new UUID(0, 1), "Cold Spring, 2025-26").with(group);
    }

    @Test
    void datesMoveByWholeYearsUntilTheyAreAheadAndTheSeasonStaysWhole() {
        var last = last(cows(LocalDate.of(2026, 2, 23), LocalDate.of(2026, 3, 23), LocalDate.of(2026, 10, 1)));
        var next = NextWinter.of(last, NEW, "Cold Spring, 2026-27", LocalDate.of(2026, 11, 29));
        var cows = next.groups().get(new UUID(1, 1));
        assertThat(cows.calving())
                .containsExactly(
                        new CalvingWeek(LocalDate.of(2027, 2, 23), 60), new CalvingWeek(LocalDate.of(2027, 3, 23), 30));
        assertThat(cows.weaning()).isEqualTo(LocalDate.of(2027, 10, 1));
        assertThat(cows.weighedOn()).isEqualTo(WEIGHED);
        assertThat(cows.past()).isEmpty();
        assertThat(next.lots()).isEmpty();
        assertThat(next.id()).isEqualTo(NEW);
    }

    @Test
    void phonesAndPensGoAlong() {
        var contacts = new Contacts("555-0100", "Dr. Vale (invented)", "555-0101");
        var pen = new Pen(new UUID(1, 1), "north gate", "blue", "2");
        var last = last(cows(LocalDate.of(2026, 2, 23), LocalDate.of(2026, 3, 23), LocalDate.of(2026, 10, 1)))
                .with(contacts)
                .with(pen);
        var next = NextWinter.of(last, NEW, "x", LocalDate.of(2026, 11, 29));
        assertThat(next.contacts()).isEqualTo(contacts);
        assertThat(next.pen(new UUID(1, 1))).isEqualTo(pen);
    }

    /** In the middle of calving the weeks that are over do not jump past those that are ahead. */
    @Test
    void aSeasonThatIsNotOverStays() {
        var last = last(cows(LocalDate.of(2026, 2, 23), LocalDate.of(2026, 3, 23), LocalDate.of(2026, 10, 1)));
        var next = NextWinter.of(last, NEW, "x", LocalDate.of(2026, 3, 10));
        assertThat(next.groups().get(new UUID(1, 1)).calving())
                .isEqualTo(last.groups().get(new UUID(1, 1)).calving());
    }

    @Test
    void leapDayMovesToTheEndOfFebruary() {
        var last = last(cows(LocalDate.of(2024, 2, 29), LocalDate.of(2024, 2, 29), LocalDate.of(2024, 10, 1)));
        var next = NextWinter.of(last, NEW, "x", LocalDate.of(2024, 11, 29));
        assertThat(next.groups().get(new UUID(1, 1)).calving().get(0).begins()).isEqualTo(LocalDate.of(2025, 2, 28));
    }
}
