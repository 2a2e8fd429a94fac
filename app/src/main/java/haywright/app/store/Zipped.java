package haywright.app.store;

import haywright.app.exchange.Bounded;
import haywright.workings.Refused;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import java.util.zip.ZipInputStream;

/** The documents in a zip, one at a time. What a zip says of its own sizes is not believed. */
final class Zipped {
    private static final int MOST_ENTRIES = 10_000;
    /** A document with its pictures. */
    private static final int MOST_OF_ONE = 64 * 1024 * 1024;
    /** Documents pack to a tenth or twentieth; nothing that is meant as a backup packs to less than a hundredth. */
    private static final long MOST_PACKED = 100;

    private static final long ALWAYS = 1024 * 1024;

    private Zipped() {}

    /** @throws Refused when there are more or larger entries than a backup has */
    static <T> List<T> read(Path zip, Function<byte[], T> each) throws IOException {
        var found = new ArrayList<T>();
        // all of them are read before any is kept
        long most = Math.min(
                ALWAYS + MOST_PACKED * Files.size(zip), Runtime.getRuntime().maxMemory() / 2);
        try (var in = new ZipInputStream(Files.newInputStream(zip))) {
            refuseCutShort(zip);
            for (var entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (entry.isDirectory()) {
                    continue;
                }
                if (found.size() == MOST_ENTRIES) {
                    throw refused(zip, "a backup holds at most %,d ranches".formatted(MOST_ENTRIES));
                }
                long left = most;
                var document = new Bounded(in, Math.min(MOST_OF_ONE, left), () -> burst(zip, left)).readAllBytes();
                most -= document.length;
                found.add(each.apply(document));
            }
        } catch (ZipException | EOFException e) {
            throw Backup.cutShort(zip);
        } catch (IllegalArgumentException e) {
            throw new IOException("a name in it is not UTF-8", e);
        }
        return found;
    }

    /** The list of what is in a zip comes last: one that ends between two entries would look whole without it. */
    private static void refuseCutShort(Path zip) throws IOException {
        try (var start = Files.newInputStream(zip)) {
            if (Arrays.equals(start.readNBytes(2), new byte[] {'P', 'K'})) {
                new ZipFile(zip.toFile()).close();
            }
        }
    }

    private static Refused burst(Path zip, long left) {
        return refused(
                zip,
                left < MOST_OF_ONE
                        ? "it unpacks to far more than a backup does, or than there is memory for"
                        : "one ranch in it takes more than %d MB".formatted(MOST_OF_ONE / 1024 / 1024));
    }

    private static Refused refused(Path zip, String rule) {
        return new Refused(
                "file", String.valueOf(zip.getFileName()), rule, "Is it another file? Nothing was kept of it.");
    }
}
