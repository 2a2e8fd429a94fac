package haywright.app.exchange.image;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;

/** Pictures as cameras write them, made for tests. */
public final class Pictures {
    private Pictures() {}

    /** Red on the left half and white on the right. */
    public static byte[] plain(String format, int width, int height) {
        var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        var pen = image.createGraphics();
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.RED);
        pen.fillRect(0, 0, width / 2, height);
        pen.dispose();
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, format, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** A PNG of red, green and blue, written row by row: it takes hardly any memory to make. */
    public static byte[] gradient(int width, int height) {
        var out = new ByteArrayOutputStream();
        out.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
        chunk(
                out,
                "IHDR",
                ByteBuffer.allocate(13)
                        .putInt(width)
                        .putInt(height)
                        .put((byte) 8)
                        .put((byte) 2)
                        .array());
        var packed = new ByteArrayOutputStream();
        try (var deflater = new DeflaterOutputStream(packed)) {
            var row = new byte[1 + 3 * width];
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    row[1 + 3 * x] = (byte) (x >> 5);
                    row[2 + 3 * x] = (byte) (y >> 5);
                }
                deflater.write(row);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        chunk(out, "IDAT", packed.toByteArray());
        chunk(out, "IEND", new byte[0]);
        return out.toByteArray();
    }

    private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
        var named = ByteBuffer.allocate(4 + data.length)
                .put(type.getBytes(StandardCharsets.ISO_8859_1))
                .put(data)
                .array();
        var crc = new CRC32();
        crc.update(named);
        out.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
        out.writeBytes(named);
        out.writeBytes(ByteBuffer.allocate(4).putInt((int) crc.getValue()).array());
    }

    /**
     * A JPEG in which the camera says, by Exif 2.3, that it lay on its side (orientation 6: turn it right by a quarter)
     * and that it stood north of the equator, with a maker's note beside it.
     */
    public static byte[] fromPhone(int width, int height) {
        var jpeg = plain("jpg", width, height);
        var tiff = ByteBuffer.allocate(64);
        tiff.put("MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(8);
        tiff.putShort((short) 2); // entries of the first directory
        tiff.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) 6)
                .putShort((short) 0);
        tiff.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(38); // where the place stands
        tiff.putInt(0);
        tiff.putShort((short) 1);
        tiff.putShort((short) 1).putShort((short) 2).putInt(2).put("N\0\0\0".getBytes(StandardCharsets.ISO_8859_1));
        tiff.putInt(0);
        var exif = ByteBuffer.allocate(10 + tiff.capacity());
        exif.putShort((short) 0xFFE1).putShort((short) (8 + tiff.capacity()));
        exif.put("Exif\0\0".getBytes(StandardCharsets.ISO_8859_1)).put(tiff.array());
        var note = "by hand at 42.87 N 100.55 W".getBytes(StandardCharsets.ISO_8859_1);
        var comment = ByteBuffer.allocate(4 + note.length);
        comment.putShort((short) 0xFFFE).putShort((short) (2 + note.length)).put(note);
        var out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.writeBytes(exif.array());
        out.writeBytes(comment.array());
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }
}
