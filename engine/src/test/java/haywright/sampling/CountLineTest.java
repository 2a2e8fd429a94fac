package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class CountLineTest {
    private static final CountLine LINE =
            new CountLine("W4K2QX", LocalDate.of(2026, 11, 25), List.of(1080, 1100, 1095, 1120, 1130));

    @Test
    void comesBackAsItWent() {
        assertThat(LINE.text()).startsWith("W4K2QX-261125-1080-1100-1095-1120-1130-");
        assertThat(CountLine.read("  " + LINE.text().toLowerCase(java.util.Locale.ROOT) + "\n"))
                .isEqualTo(LINE);
    }

    @Test
    void everyChangedDigitAndEverySwapOfNeighborsShows() {
        var text = LINE.text();
        for (int i = 0; i < text.length(); i++) {
            for (char other : "0123456789ABCXYZ-".toCharArray()) {
                if (other != text.charAt(i)) {
                    var wrong = text.substring(0, i) + other + text.substring(i + 1);
                    assertThatThrownBy(() -> CountLine.read(wrong)).isInstanceOf(Refused.class);
                }
            }
            if (i > 0 && text.charAt(i) != text.charAt(i - 1)) {
                var swapped = text.substring(0, i - 1) + text.charAt(i) + text.charAt(i - 1) + text.substring(i + 1);
                assertThatThrownBy(() -> CountLine.read(swapped)).isInstanceOf(Refused.class);
            }
        }
    }

    @Test
    void aWholeLineOfAnotherKindIsSaidToBeOne() {
        assertThatThrownBy(() -> CountLine.read(CheckLetter.add("S4K2QX-1")))
                .hasMessageContaining("not a line from a weight");
        assertThatThrownBy(() -> CountLine.read(CheckLetter.add("W4K2QX-261325-1100-")))
                .hasMessageContaining("not a line from a weight");
        assertThatThrownBy(() -> CountLine.read(CheckLetter.add("W4K2QX-261125-")))
                .hasMessageContaining("1 to 400 numbers");
    }
}
