package haywright.app.exchange.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.workings.Refused;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is kept of a picture: upright, of a size, and with nothing in it that was not on the film. */
class PhotoTest {
    private static byte[] kept(byte[] sent) throws IOException {
        return Photo.of("file", "stack.jpg", new ByteArrayInputStream(sent));
    }

    private static BufferedImage read(byte[] bytes) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(bytes));
    }

    private static boolean isRed(BufferedImage image, int x, int y) {
        var color = new Color(image.getRGB(x, y));
        return color.getRed() > 200 && color.getGreen() < 80;
    }

    /** Orientation 6 turns right by a quarter: what lay on the left stands on top. */
    @Test
    void aPhonesPictureStandsUprightAndSaysNeitherWhereNorWhoTookIt() throws IOException {
        var sent = Pictures.fromPhone(600, 400);
        assertThat(new String(sent, StandardCharsets.ISO_8859_1)).contains("Exif", "42.87 N");
        var kept = kept(sent);
        assertThat(new String(kept, StandardCharsets.ISO_8859_1)).doesNotContain("Exif", "42.87", "MM\0*");
        var image = read(kept);
        assertThat(image.getWidth()).isEqualTo(400);
        assertThat(image.getHeight()).isEqualTo(600);
        assertThat(isRed(image, 200, 100)).isTrue();
        assertThat(isRed(image, 200, 500)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpg", "png"})
    void aLargeOneIsMadeSmallerInItsOwnShape(String format) throws IOException {
        var image = read(kept(Pictures.plain(format, 9000, 3000)));
        assertThat(image.getWidth()).isEqualTo(2000);
        assertThat(image.getHeight()).isBetween(666, 667);
        assertThat(isRed(image, 500, 300)).isTrue();
        assertThat(isRed(image, 1500, 300)).isFalse();
    }

    /** In a program of its own: what runs out of memory here must not end the tests. */
    @Test
    void theLargestThatIsTakenFitsIntoHalfTheMemoryThatTheProgramHas(@TempDir Path folder) throws Exception {
        var file = folder.resolve("large.png");
        Files.write(file, Pictures.gradient(7740, 7740));
        var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        var path = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        var run = new ProcessBuilder(
                        java,
                        "-Xmx128m",
                        "-Djava.awt.headless=true",
                        "-cp",
                        path,
                        InLittleMemory.class.getName(),
                        file.toString())
                .redirectErrorStream(true)
                .start();
        var said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(run.waitFor()).as(said).isZero();
    }

    /** Draws one picture. */
    static final class InLittleMemory {
        private InLittleMemory() {}

        public static void main(String... file) throws IOException {
            try (var in = Files.newInputStream(Path.of(file[0]))) {
                Photo.of("file", "large.png", in);
            }
        }
    }

    @Test
    void aSmallOneStaysAsLargeAsItIs() throws IOException {
        var image = read(kept(Pictures.plain("png", 90, 60)));
        assertThat(image.getWidth()).isEqualTo(90);
        assertThat(image.getHeight()).isEqualTo(60);
    }

    @ParameterizedTest
    @ValueSource(strings = {"gif", "bmp"})
    void otherKindsAreRefusedInWords(String format) {
        assertThatThrownBy(() -> kept(Pictures.plain(format, 40, 40)))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems().get(0).field()).isEqualTo("file"));
    }

    @Test
    void whatIsNoPictureOrBreaksOffIsRefused() {
        var picture = Pictures.plain("jpg", 400, 300);
        assertThatThrownBy(() -> kept(new byte[0])).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> kept("<svg onload=alert(1)>".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> kept(Arrays.copyOf(picture, 100))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> kept(Arrays.copyOf(picture, picture.length * 2 / 3)))
                .isInstanceOf(Refused.class);
    }

    /** Forty bytes that say they are 10 billion points: it is refused by what it says, before any are drawn. */
    @Test
    void onePretendingToBeHugeIsRefusedBeforeItIsDrawn() {
        var png = Pictures.plain("png", 4, 4);
        var header = ByteBuffer.wrap(png);
        header.putInt(16, 100_000).putInt(20, 100_000);
        var crc = new CRC32();
        crc.update(png, 12, 17);
        header.putInt(29, (int) crc.getValue());
        assertThatThrownBy(() -> kept(png)).isInstanceOf(Refused.class).hasMessageContaining("60 million");
    }
}
