package haywright.app.exchange.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.workings.Refused;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;

/** Files as they lie in a folder of downloads: packed, cut off, far too large, of another kind. */
class WeatherFileTest {
    private static final byte[] DAYS = """
            USC00053005,19900101,TMAX,39,,,0,1900
            USC00053005,19900101,TMIN,-122,,,0,1900
            """.getBytes(StandardCharsets.UTF_8);

    private static GhcnDaily.Read read(byte[] file) throws IOException {
        return WeatherFile.read(new ByteArrayInputStream(file), null);
    }

    private static byte[] packed(byte[] file) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var out = new GZIPOutputStream(bytes)) {
            out.write(file);
        }
        return bytes.toByteArray();
    }

    @Test
    void packedOrPlainItIsTheSame() throws IOException {
        assertThat(read(packed(DAYS))).isEqualTo(read(DAYS));
        var marked = ("\ufeff" + new String(DAYS, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
        assertThat(read(marked)).isEqualTo(read(DAYS));
    }

    @Test
    void whatIsNoFileOfDaysIsRefusedInWords() throws IOException {
        var whole = packed(DAYS);
        assertThatThrownBy(() -> read(Arrays.copyOf(whole, whole.length - 12)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("ends in the middle");
        assertThatThrownBy(() -> read(new byte[] {0x1f, (byte) 0x8b, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not a text of days");
        assertThatThrownBy(() -> read(new byte[] {'P', 'K', 3, 4, 0, 0}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not a text of days");
        assertThatThrownBy(() -> read(new byte[0])).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> read(new byte[5000]))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not a text of days");
        var blank = new byte[40 * 1024 * 1024];
        Arrays.fill(blank, (byte) '\n');
        var bomb = packed(blank);
        assertThatThrownBy(() -> read(bomb)).isInstanceOf(Refused.class).hasMessageContaining("over 32 MB");
    }

    /** Thirty kilobytes packed, thirty million bytes of one line: its cells would take more memory than there is. */
    @Test
    void aLineWithoutEndIsRefusedBeforeItIsSplit() throws IOException {
        var cells = new byte[30_000_000];
        Arrays.fill(cells, (byte) ',');
        var bomb = packed(cells);
        assertThatThrownBy(() -> read(bomb)).isInstanceOf(Refused.class).hasMessageContaining("a line of days");
        assertThatThrownBy(() -> WeatherFile.text(new ByteArrayInputStream(bomb)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a line of days");
    }
}
