package haywright.sampling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class TakenTest {
    private static final Taken TAKEN = new Taken(
            LocalDate.of(2026, 11, 25), "J. B.", List.of(1, 1, 2, 0, 12, 1), "bale 4 was frozen in", List.of());

    @Test
    void theLineBringsEverythingBackButTheWords() {
        var line = TAKEN.line("S4K2QX");
        assertThat(line).matches("S4K2QX-261125-JB-1120C1[0-9][A-Z]");
        var back = Taken.read("  " + line.toLowerCase(java.util.Locale.ROOT) + "\n");
        assertThat(back.sheet()).isEqualTo("S4K2QX");
        assertThat(back.taken().on()).isEqualTo(TAKEN.on());
        assertThat(back.taken().by()).isEqualTo("JB");
        assertThat(back.taken().cores()).isEqualTo(TAKEN.cores());
    }

    @Test
    void whatWasTakenIsADesignThatClaimsNoMoreThanItIs() {
        var design = TAKEN.design(1); // 17 cores from 5 bales, 12 of them from one: (Σc)²/Σc² = 289/151
        assertThat(design.units()).isEqualTo(5);
        assertThat(design.cores()).isEqualTo(17);
        assertThat(design.evenUnits()).isCloseTo(289.0 / 151, org.assertj.core.api.Assertions.within(1e-12));
    }

    @Test
    void aChangedLineIsRefusedAndSoIsOneThatIsNone() {
        var line = TAKEN.line("S4K2QX");
        for (int i = 0; i < line.length(); i++) {
            for (char wrong : "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-".toCharArray()) {
                if (wrong != line.charAt(i)) {
                    var changed = line.substring(0, i) + wrong + line.substring(i + 1);
                    assertThatThrownBy(() -> Taken.read(changed)).isInstanceOf(Refused.class);
                }
            }
        }
        assertThatThrownBy(() -> Taken.read(CheckLetter.add("S4K2QX-1"))).hasMessageContaining("bag code");
        assertThatThrownBy(() -> Taken.read(CheckLetter.add("S4K2QX-269925-JB-11")))
                .hasMessageContaining("not a line");
        assertThatThrownBy(() -> new Taken(LocalDate.of(2026, 1, 1), " ", List.of(0), "", List.of()))
                .hasMessageContaining("initials")
                .hasMessageContaining("at least one core");
    }
}
