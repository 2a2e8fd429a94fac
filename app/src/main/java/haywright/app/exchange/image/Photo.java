package haywright.app.exchange.image;

import haywright.app.exchange.Bounded;
import haywright.workings.Refused;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import net.coobird.thumbnailator.Thumbnails;
import net.coobird.thumbnailator.util.exif.ExifFilterUtils;
import net.coobird.thumbnailator.util.exif.Orientation;

/**
 * A picture as it is kept: drawn anew, upright, at most {@value #LONG_SIDE} pixels long, and without anything the camera
 * wrote beside it. A phone writes where it stood and when, and a ranch that is handed to somebody would tell them.
 */
public final class Photo {
    /** The media type of what is kept. */
    public static final String TYPE = "image/jpeg";

    /** Small print of a laboratory's sheet can still be read at this. */
    static final int LONG_SIDE = 2000;

    static final int MOST_BYTES = 30_000_000;

    /** The largest cameras of phones have 50 million; a picture that claims more is made to fill the memory. */
    static final long MOST_PIXELS = 60_000_000;

    private static final double QUALITY = 0.8;

    private static final Set<String> READ = Set.of("jpeg", "png");

    /** A large picture takes as much memory as ten pages: one after another. */
    private static final ReentrantLock ONE = new ReentrantLock();

    private Photo() {}

    /**
     * @param field that a problem stands beside
     * @param name of the file
     * @return a JPEG
     * @throws Refused where it is no picture that can be read here, or too large
     */
    public static byte[] of(String field, String name, InputStream file) throws IOException {
        var bytes = new Bounded(file, MOST_BYTES, () -> tooLarge(field, name)).readAllBytes();
        ONE.lock();
        try (var in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            var readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw unreadable(field, name);
            }
            var reader = readers.next();
            try {
                reader.setInput(in);
                if (!READ.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
                    throw unreadable(field, name);
                }
                return drawn(field, name, reader, Turned.of(bytes));
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            if (e instanceof Refused refused) {
                throw refused;
            }
            throw unreadable(field, name); // what breaks off or lies about itself is found while it is read
        } finally {
            ONE.unlock();
        }
    }

    private static byte[] drawn(String field, String name, ImageReader reader, Orientation turned) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
            throw tooLarge(field, name);
        }
        var part = reader.getDefaultReadParam();
        int every =
                Math.max(1, Math.max(width, height) / (2 * LONG_SIDE)); // twice the points needed, and no more memory
        part.setSourceSubsampling(every, every, 0, 0);
        var image = reader.read(0, part);
        var all = Thumbnails.of(image)
                .addFilter(ExifFilterUtils.getFilterForOrientation(turned))
                .imageType(BufferedImage.TYPE_INT_RGB)
                .outputFormat("jpg")
                .outputQuality(QUALITY);
        boolean isLong = Math.max(image.getWidth(), image.getHeight()) > LONG_SIDE;
        var out = new ByteArrayOutputStream();
        (isLong ? all.size(LONG_SIDE, LONG_SIDE) : all.scale(1)).toOutputStream(out);
        return out.toByteArray();
    }

    private static Refused unreadable(String field, String name) {
        return new Refused(
                field,
                name,
                "no picture that can be read here: JPEG and PNG can",
                "Set the phone’s camera to JPEG, or mail the picture to yourself, which makes a JPEG of it.");
    }

    private static Refused tooLarge(String field, String name) {
        return new Refused(
                field,
                name,
                "more than %d MB or %d million points".formatted(MOST_BYTES / 1_000_000, MOST_PIXELS / 1_000_000),
                "Send a smaller one.");
    }
}
