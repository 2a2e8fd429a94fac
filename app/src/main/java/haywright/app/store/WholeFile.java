package haywright.app.store;

import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;

/** A file that is there whole or not at all, and its owner's alone where the file system knows such rights. */
public final class WholeFile {
    private WholeFile() {}

    static Refused notRegular(Path file) {
        return new Refused("file", file.toString(), "this is no file but a folder or a device", "Name a file.");
    }

    /** What goes into it. */
    public interface Writing {
        void to(Path beside) throws IOException;
    }

    /**
     * Written beside, safe on the disk, then renamed: whatever happens, there is the old file or the new one.
     *
     * @throws UncheckedIOException with the cause, where it cannot be written
     */
    public static void write(Path file, Writing writing) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw notRegular(file);
        }
        Path beside = null;
        try {
            var place = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
            beside = Files.createTempFile(place.getParent(), place.getFileName() + ".", ".part");
            writing.to(beside);
            try (var written = FileChannel.open(beside, StandardOpenOption.WRITE)) {
                written.force(true);
            }
            Files.move(beside, place, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (JdbiException e) {
            var cause = Trouble.of(e).map(Trouble::cause).orElse(String.valueOf(e.getMessage()));
            throw new UncheckedIOException(new IOException(cause, e));
        } finally {
            drop(beside);
        }
    }

    private static void drop(@Nullable Path beside) {
        try {
            if (beside != null) {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            // it lies beside under a name that says it is no whole file
        }
    }
}
