package haywright.season.week;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.sampling.CheckLetter;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class WeekLineTest {
    private static final WeekLine LINE = new WeekLine(
            "F12ABC",
            LocalDate.of(2026, 12, 1),
            List.of(OptionalInt.of(71_000), OptionalInt.empty(), OptionalInt.of(0), OptionalInt.of(55)));

    @Test
    void everyFigureComesBackInItsBoxAndAnEmptyBoxIsNotZero() {
        assertThat(LINE.text()).startsWith("F12ABC-261201-71000--0-55-");
        assertThat(WeekLine.read(LINE.text())).isEqualTo(LINE);
        assertThat(WeekLine.read(" " + LINE.text().toLowerCase(java.util.Locale.ROOT) + "\n"))
                .isEqualTo(LINE);
    }

    @Test
    void aChangedFigureIsSeen() {
        assertThatThrownBy(() -> WeekLine.read(LINE.text().replace("71000", "17000")))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> WeekLine.read(LINE.text().replace("--", "-"))).isInstanceOf(Refused.class);
    }

    @Test
    void whatIsCompleteAndNoWeekIsRefused() {
        for (var other : List.of(
                "F12ABC-", "F12ABC-261301-5-", "F12ABC-261201-5X-", "F12ABC-261201-99999999999-", "F12ABC-261201--")) {
            var line = CheckLetter.add(other);
            assertThatThrownBy(() -> WeekLine.read(line)).as(line).isInstanceOf(Refused.class);
        }
    }
}
