package haywright.app.store;

import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;

/**
 * What a file that is written may take the place of: an earlier one of the same kind, or an empty one. Never anything in
 * a data folder, and never a database that somebody works with.
 */
public final class MayReplace {
    /** Of the header of an SQLite file: its name, and the two bytes that are 2 where a journal stands beside it. */
    private static final String SQLITE = "SQLite format 3\0";

    /** So much of a paper's beginning says of which kind it is. */
    private static final int SAME = 4;

    private static final int WRITES = 18;
    private static final int READS = 19;

    private MayReplace() {}

    private interface Kind {
        boolean is(byte[] begins) throws IOException;
    }

    /** @throws Refused where anything else than an earlier backup stands there */
    static void backup(Path file) {
        check(file, begins -> isBackup(begins) && !isInDataFolder(file), "no backup that Haywright wrote");
    }

    /** @throws Refused where anything else than a ranch that was exported stands there */
    static void export(Path file) {
        check(
                file,
                begins -> new String(begins, StandardCharsets.UTF_8).matches("(?s)\\s*\\{\\s*\"haywright\"\\s*:.*")
                        && !isInDataFolder(file),
                "no ranch that Haywright exported");
    }

    /** @throws Refused where a file of another kind than the paper stands there, by how the two begin */
    public static void paper(Path file, byte[] paper) {
        check(
                file,
                begins -> Arrays.mismatch(begins, paper) < 0 || Arrays.mismatch(begins, paper) >= SAME,
                "no such paper");
    }

    private static void check(Path file, Kind kind, String rule) {
        if (!Files.isRegularFile(file)) {
            return;
        }
        try (InputStream in = Files.newInputStream(file)) {
            var begins = in.readNBytes(200);
            if (begins.length > 0 && !kind.is(begins)) {
                throw new Refused(
                        "file",
                        file.toString(),
                        "there is a file of this name already, and it is " + rule + ", so it stays as it is",
                        "Choose another name, or move that file away first.");
            }
        } catch (IOException e) {
            throw RanchFiles.unreadable(file, e);
        }
    }

    /** A backup has no journal; whatever somebody works with has one, whether it is open now or not. */
    private static boolean isBackup(byte[] begins) {
        return begins.length > READS
                && new String(begins, 0, SQLITE.length(), StandardCharsets.US_ASCII).equals(SQLITE)
                && begins[WRITES] == 1
                && begins[READS] == 1;
    }

    private static boolean isInDataFolder(Path file) throws IOException {
        return Stream.iterate(file.toRealPath().getParent(), folder -> folder != null, Path::getParent)
                .limit(2) // the folder, and its copies
                .anyMatch(DataFolder::isOne);
    }
}
