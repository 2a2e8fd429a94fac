package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.sheet.SheetFile;
import haywright.sampling.Taken;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class SheetFileTest {
    private static final Taken TAKEN = new Taken(
            LocalDate.of(2026, 11, 25),
            "JB",
            List.of(1, 1, 0, 2),
            "number 3 frozen in: 9 instead",
            List.of("a.jpg", "b.jpg"));

    @Test
    void theFileBringsEverythingBack() {
        var text = SheetFile.write("S4K2QX", TAKEN);
        var back = SheetFile.read("\ufeff" + text.replace("\n", "\r\n"));
        assertThat(back.sheet()).isEqualTo("S4K2QX");
        assertThat(back.taken()).isEqualTo(TAKEN);
        assertThat(SheetFile.read(TAKEN.line("S4K2QX")).taken().cores()).isEqualTo(TAKEN.cores());
    }

    @Test
    void whatAMessagePutsIntoALineCarriesNothing() {
        var line = TAKEN.line("S4K2QX");
        var broken = " " + line.substring(0, 9) + "\r\n " + line.substring(9, 14) + "\u00a0\u200b" + line.substring(14);
        assertThat(SheetFile.read(broken).taken().cores()).isEqualTo(TAKEN.cores());
        assertThat(SheetFile.read(line.replace("-", "\u2013")).sheet()).isEqualTo("S4K2QX");
        assertThatThrownBy(() -> SheetFile.read("S4K2QX-\ud83d\ude00")).hasMessageContaining("\"\ud83d\ude00\"");
    }

    @Test
    void nothingToSayIsNothing() {
        var plain = new Taken(LocalDate.of(2026, 11, 25), "JB", List.of(1), "", List.of());
        assertThat(SheetFile.read(SheetFile.write("S4K2QX", plain)).taken()).isEqualTo(plain);
    }

    @Test
    void everyChangedCharacterIsCaught() {
        var text = SheetFile.write("S4K2QX", TAKEN).strip();
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) == '\n') {
                continue;
            }
            char wrong = text.charAt(i) == 'x' ? 'y' : 'x';
            var changed = text.substring(0, i) + wrong + text.substring(i + 1);
            assertThat(isRefused(changed)).as(changed).isTrue();
        }
    }

    private static boolean isRefused(String text) {
        try {
            SheetFile.read(text);
            return false;
        } catch (Refused e) {
            return true;
        }
    }

    @Test
    void somethingElseIsRefusedInWords() {
        assertThatThrownBy(() -> SheetFile.read("<html>\n</html>"))
                .hasMessageContaining("neither the line nor the file");
        assertThatThrownBy(() -> SheetFile.read("")).isInstanceOf(Refused.class);
    }
}
