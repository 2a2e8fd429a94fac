package haywright.app.exchange.image;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import net.coobird.thumbnailator.util.exif.Orientation;

/**
 * How a camera was held, by the tag 0x0112 of Exif 2.3. Read from the bytes: the reader of the platform refuses all that
 * is written beside a picture where Exif stands before the JFIF header, as some phones write it.
 */
final class Turned {
    private static final int EXIF = 0xFFE1;
    private static final int PICTURE = 0xFFDA;
    private static final int TAG = 0x0112;
    private static final int ENTRY_BYTES = 12;
    private static final String BEGINS = "Exif\0\0";

    private Turned() {}

    /** Upright where nothing is said, or nothing that can be read. */
    static Orientation of(byte[] picture) {
        try {
            var jpeg = ByteBuffer.wrap(picture);
            jpeg.getShort();
            for (int marker = next(jpeg); marker != PICTURE; marker = next(jpeg)) {
                int length = Short.toUnsignedInt(jpeg.getShort()) - 2;
                var segment = jpeg.slice(jpeg.position(), length);
                if (marker == EXIF && isExif(segment)) {
                    return ofTiff(segment.slice(BEGINS.length(), length - BEGINS.length()));
                }
                jpeg.position(jpeg.position() + length);
            }
        } catch (BufferUnderflowException | IndexOutOfBoundsException | IllegalArgumentException e) {
            return Orientation.TOP_LEFT; // it breaks off, or is no JPEG
        }
        return Orientation.TOP_LEFT;
    }

    private static int next(ByteBuffer jpeg) {
        return Short.toUnsignedInt(jpeg.getShort());
    }

    private static boolean isExif(ByteBuffer segment) {
        var begins = new byte[Math.min(BEGINS.length(), segment.remaining())];
        segment.get(0, begins);
        return new String(begins, StandardCharsets.ISO_8859_1).equals(BEGINS);
    }

    private static Orientation ofTiff(ByteBuffer tiff) {
        tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int directory = tiff.getInt(4);
        int entries = Short.toUnsignedInt(tiff.getShort(directory));
        for (int i = 0; i < entries; i++) {
            int at = directory + 2 + i * ENTRY_BYTES;
            int value = Short.toUnsignedInt(tiff.getShort(at + 8));
            if (Short.toUnsignedInt(tiff.getShort(at)) == TAG && value >= 1 && value <= Orientation.values().length) {
                return Orientation.typeOf(value);
            }
        }
        return Orientation.TOP_LEFT;
    }
}
