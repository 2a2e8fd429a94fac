package haywright.app.exchange;

import haywright.workings.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file that somebody named. A folder has no end of file, a device none at all, and a named pipe may wait for ever. */
public final class InputFile {
    private InputFile() {}

    /** @throws Refused when it is there and no regular file, or a link to none */
    public static void check(Path file) {
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new Refused(
                    "file",
                    file.toString(),
                    Files.isDirectory(file) ? "this is a folder" : "this is a device or a pipe, not a file",
                    Files.isDirectory(file) ? "Name the file in it." : "Save what comes out of it to a file first.");
        }
    }

    /**
     * Everything in it.
     *
     * @param most bytes
     * @throws Refused when there is more, or no regular file
     */
    public static byte[] read(Path file, long most) throws IOException {
        check(file);
        try (var in = new Bounded(
                Files.newInputStream(file),
                most,
                () -> new Refused(
                        "file",
                        file.toString(),
                        "it holds more than %d MB, which is more than can be read at once"
                                .formatted(most / 1024 / 1024),
                        "Is it the right file?"))) {
            return in.readAllBytes();
        }
    }
}
