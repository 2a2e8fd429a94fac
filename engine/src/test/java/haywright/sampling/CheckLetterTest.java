package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.chance.Draws;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CheckLetterTest {
    private static final String SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-";

    private static List<String> codes() {
        var codes = new ArrayList<String>();
        for (char a : SIGNS.substring(0, 36).toCharArray()) {
            codes.add(String.valueOf(a));
            for (char b : SIGNS.toCharArray()) {
                codes.add("" + a + b);
            }
        }
        var draws = new Draws(5);
        for (int i = 0; i < 300; i++) {
            var code = new StringBuilder("S");
            int length = 3 + draws.below(60);
            for (int k = 0; k < length; k++) {
                code.append(SIGNS.charAt(draws.below(SIGNS.length())));
            }
            codes.add(code.toString());
        }
        return codes;
    }

    @Test
    void itIsAlwaysALetterAndReadsBack() {
        for (var code : codes()) {
            var checked = CheckLetter.add(code);
            assertThat(checked).matches(".*[0-9][A-HJ-NP-Z]").hasSize(code.length() + 2);
            assertThat(CheckLetter.read(checked)).isEqualTo(code);
            assertThat(CheckLetter.read(" " + checked.toLowerCase(java.util.Locale.ROOT) + "\n"))
                    .isEqualTo(code);
        }
    }

    @Test
    void everySingleWrongCharacterIsCaught() {
        for (var code : codes()) {
            var checked = CheckLetter.add(code);
            for (int i = 0; i < checked.length(); i++) {
                for (char wrong : (SIGNS + " .,äßı*").toCharArray()) {
                    if (wrong != checked.charAt(i)) {
                        var changed = checked.substring(0, i) + wrong + checked.substring(i + 1);
                        assertThat(isRefused(changed))
                                .as("%s for %s", changed, checked)
                                .isTrue();
                    }
                }
            }
        }
    }

    @Test
    void everySwapOfNeighborsIsCaught() {
        for (var code : codes()) {
            var checked = CheckLetter.add(code);
            for (int i = 0; i + 1 < checked.length(); i++) {
                if (checked.charAt(i) != checked.charAt(i + 1)) {
                    var swapped = checked.substring(0, i)
                            + checked.charAt(i + 1)
                            + checked.charAt(i)
                            + checked.substring(i + 2);
                    assertThat(isRefused(swapped))
                            .as("%s for %s", swapped, checked)
                            .isTrue();
                }
            }
        }
    }

    @Test
    void theReasonIsSaid() {
        assertThatThrownBy(() -> CheckLetter.read(CheckLetter.add("A1-S07").replace('7', '8')))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("changed or two were swapped");
        assertThatThrownBy(() -> CheckLetter.add("-A1")).hasMessageContaining("begins with a letter or a digit");
        assertThatThrownBy(() -> CheckLetter.add("A_1")).hasMessageContaining("\"_\" is none");
    }

    private static boolean isRefused(String code) {
        try {
            CheckLetter.read(code);
            return false;
        } catch (Refused e) {
            return true;
        }
    }
}
