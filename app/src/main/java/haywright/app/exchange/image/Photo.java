package haywright.app.exchange.image;

import haywright.app.exchange.Bounded;
import haywright.workings.Refused;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.ReentrantLock;
import java.util.regex.Pattern;
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

    /** What is held of one at once: with what it is drawn into, a quarter of the memory that the program has. */
    private static final long MOST_HELD = 32_000_000;

    /** Segments beside the picture come first, and each has at most 64 kB. */
    private static final int HEAD_BYTES = 256 * 1024;

    /** What a reader says of a file that ends too soon, and goes on with gray. */
    private static final Pattern CUT = Pattern.compile("premature|truncated|corrupt|missing", Pattern.CASE_INSENSITIVE);

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
        ONE.lock();
        var kept = Files.createTempFile("photo", null); // and not in memory: a few at once would fill it
        try (var bounded = new Bounded(file, MOST_BYTES, () -> tooLarge(field, name))) {
            Files.copy(bounded, kept, StandardCopyOption.REPLACE_EXISTING);
            return read(field, name, kept.toFile());
        } finally {
            ONE.unlock();
            Files.delete(kept);
        }
    }

    private static byte[] read(String field, String name, File file) {
        try (var in = ImageIO.createImageInputStream(file);
                var head = new FileInputStream(file)) {
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
                return drawn(field, name, reader, Turned.of(head.readNBytes(HEAD_BYTES)));
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            if (e instanceof Refused refused) {
                throw refused;
            }
            throw unreadable(field, name); // what breaks off or lies about itself is found while it is read
        }
    }

    private static byte[] drawn(String field, String name, ImageReader reader, Orientation turned) throws IOException {
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
            throw tooLarge(field, name);
        }
        var part = reader.getDefaultReadParam();
        int every = every(reader, (long) width * height);
        part.setSourceSubsampling(every, every, 0, 0);
        var cut = new AtomicBoolean();
        reader.addIIOReadWarningListener((source, warning) ->
                cut.compareAndSet(false, CUT.matcher(warning).find()));
        var image = reader.read(0, part);
        if (cut.get()) {
            throw new Refused(field, name, "a picture that ends too soon", "Copy it from the phone again.");
        }
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

    /** Every first, second, third … point, so that what is held of it fits. */
    private static int every(ImageReader reader, long pixels) throws IOException {
        var type = reader.getRawImageType(0);
        int bytes = type == null ? 4 : Math.max(3, type.getColorModel().getPixelSize() / 8);
        return (int) Math.ceil(Math.sqrt((double) pixels * bytes / MOST_HELD));
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
