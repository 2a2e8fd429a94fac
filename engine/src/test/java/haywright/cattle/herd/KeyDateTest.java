package haywright.cattle.herd;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.cattle.herd.KeyDate.What;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** The days of a calendar, counted by hand. */
class KeyDateTest {
    private static Group group(List<CalvingWeek> calving) {
        return new Group(
                new UUID(1, 1),
                "Cows",
                AnimalClass.MATURE_COW,
                30,
                Quantity.of(1300, Unit.POUND),
                false,
                LocalDate.of(2026, 11, 1),
                Quantity.of(1300, Unit.POUND),
                5,
                "",
                calving,
                null,
                null,
                LocalDate.of(2027, 10, 10),
                Quantity.of(0, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    @Test
    void inTheOrderOfTheYear() {
        var calving = List.of(
                new CalvingWeek(LocalDate.of(2027, 3, 15), 20),
                new CalvingWeek(LocalDate.of(2027, 4, 5), 10),
                new CalvingWeek(LocalDate.of(2027, 3, 1), 0));
        assertThat(KeyDate.of(group(calving), LocalDate.of(2027, 5, 10)))
                .containsExactly(
                        // mean of Mar 18 twice and Apr 8 once is Mar 25; 141 or 142 days before
                        new KeyDate(What.MID_GESTATION, LocalDate.of(2026, 11, 4)),
                        new KeyDate(What.BEFORE_CALVING, LocalDate.of(2027, 3, 1)),
                        new KeyDate(What.CALVING, LocalDate.of(2027, 3, 15)),
                        new KeyDate(What.TURNOUT, LocalDate.of(2027, 5, 10)),
                        // 283 days before Mar 15, 2028
                        new KeyDate(What.BREEDING, LocalDate.of(2027, 6, 5)),
                        new KeyDate(What.WEANING, LocalDate.of(2027, 10, 10)));
    }

    @Test
    void nothingOfCattleThatDoNotCalve() {
        assertThat(KeyDate.of(group(List.of()), null)).extracting(KeyDate::what).containsExactly(What.WEANING);
    }
}
