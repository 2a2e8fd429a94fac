package haywright.app.store;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.sql.SQLException;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The file that was opened, told from any other that stands under its name later. Who has a file open goes on writing
 * into it when it was removed or replaced, and nobody finds again what was written.
 */
final class OpenedFile {
    private final Path path;
    private final @Nullable Object key;
    private final @Nullable FileTime made;

    private OpenedFile(Path path, @Nullable Object key, @Nullable FileTime made) {
        this.path = path;
        this.key = key;
        this.made = made;
    }

    /** @throws IOException when it is not there */
    static OpenedFile of(Path path) throws IOException {
        var now = Files.readAttributes(path, BasicFileAttributes.class);
        return new OpenedFile(path, now.fileKey(), now.creationTime());
    }

    /** Device and number of the file; where the system has none, when it was made. */
    boolean isThere() {
        try {
            var now = of(path);
            return key != null ? key.equals(now.key) : Objects.equals(made, now.made);
        } catch (NoSuchFileException | NotDirectoryException e) {
            return false;
        } catch (FileSystemException e) {
            return Files.exists(path.toAbsolutePath().getParent()); // it cannot be looked at: the database says why
        } catch (IOException e) {
            return true;
        }
    }

    /** Nothing more may be written. */
    static final class Replaced extends SQLException {
        private static final long serialVersionUID = 1;
    }
}
