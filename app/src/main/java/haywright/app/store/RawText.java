package haywright.app.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The document of one row, byte for byte and part by part: it may be larger than memory. */
final class RawText {
    /** Bytes. */
    private static final int PART = OneRow.MOST;

    private static final int CONTINUES = 0b1000_0000;
    private static final int OF_TWO_BITS = 0b1100_0000;

    private RawText() {}

    private interface Sink {
        void take(byte[] part) throws IOException;
    }

    /**
     * As a file that goes with the stream: whoever takes it slowly holds up no database.
     *
     * @param where the table and which of its rows
     */
    static InputStream of(Jdbi jdbi, String where, Map<String, String> which) {
        var spool = Temporary.file(".json");
        try {
            try (OutputStream out = Files.newOutputStream(spool)) {
                jdbi.useTransaction(h -> {
                    if (!isSqlite(h)) {
                        h.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ"); // no other's save in between
                    }
                    parts(h, where, which, out::write);
                });
            } catch (IOException | RuntimeException e) {
                Files.deleteIfExists(spool);
                throw e;
            }
            return Files.newInputStream(spool, StandardOpenOption.DELETE_ON_CLOSE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Into a ranch that is there with an empty document. */
    static void copy(Handle from, Handle to, String id) throws IOException {
        var append = isSqlite(to)
                ? "UPDATE ranch SET doc = CAST(CAST(doc AS BLOB) || ? AS TEXT) WHERE id = ?"
                : "UPDATE ranch SET doc = doc || convert_from(?, 'UTF8') WHERE id = ?";
        var whole = new WholeLetters();
        parts(from, "ranch WHERE id = :id", Map.of("id", id), part -> to.execute(append, whole.of(part), id));
    }

    private static void parts(Handle h, String where, Map<String, String> which, Sink sink) throws IOException {
        var bytes = isSqlite(h) ? "CAST(doc AS BLOB)" : "convert_to(doc, 'UTF8')";
        int at = 1;
        for (int length = PART; length == PART; at += length) {
            var part = h.createQuery("SELECT substr(" + bytes + ", :at, :most) FROM " + where)
                    .bind("at", at)
                    .bind("most", PART)
                    .bindMap(which)
                    .map((row, context) -> {
                        var found = row.getBytes(1);
                        return found == null ? new byte[0] : found;
                    })
                    .findFirst()
                    .orElse(new byte[0]);
            length = part.length;
            sink.take(part);
        }
    }

    /** A letter of several bytes that a part ends in goes with the next one. */
    private static final class WholeLetters {
        private byte[] rest = {};

        private byte[] of(byte[] part) {
            var all = new byte[rest.length + part.length];
            System.arraycopy(rest, 0, all, 0, rest.length);
            System.arraycopy(part, 0, all, rest.length, part.length);
            int end = all.length;
            if (part.length == PART) {
                while (end > 0 && (all[end - 1] & OF_TWO_BITS) == CONTINUES) {
                    end--;
                }
                end = end > 0 && (all[end - 1] & CONTINUES) != 0 ? end - 1 : all.length;
            }
            rest = Arrays.copyOfRange(all, end, all.length);
            return Arrays.copyOf(all, end);
        }
    }

    private static boolean isSqlite(Handle h) {
        try {
            return h.getConnection().getMetaData().getURL().startsWith("jdbc:sqlite");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
