package haywright.app.store;

import haywright.workings.Refused;
import java.nio.charset.StandardCharsets;

/**
 * How much of one row is brought in at once. Another program may have left more in it than there is memory for, and the
 * database says how long a text is before it hands it out.
 */
final class OneRow {
    /** Bytes: many times the largest ranch, a small part of a heap of 256 MB. */
    static final int MOST = 16 * 1024 * 1024;

    /** Letters. */
    static final int LINE = 2000;

    private static final int MB = 1024 * 1024;

    private OneRow() {}

    /** In SQL: a text column, null where it is too large. */
    static String text(String column) {
        return "CASE WHEN octet_length(%1$s) <= %2$d THEN %1$s END".formatted(column, MOST);
    }

    /** In SQL: the beginning of a column that holds a name or a line; nobody writes more. */
    static String line(String column) {
        return "substr(%1$s, 1, %2$d) AS %1$s".formatted(column, LINE);
    }

    /** What is kept can be opened again. */
    static String fitting(String document) {
        boolean fits = document.length() <= MOST / 3 || document.getBytes(StandardCharsets.UTF_8).length <= MOST;
        if (!fits) {
            throw tooLarge(document.length());
        }
        return document;
    }

    static Refused tooLarge(long bytes) {
        return new Refused(
                "document",
                "%,d MB".formatted(Math.max(1, bytes / MB)),
                "this is larger than %d MB, the most that is read here of one ranch; another program may have changed it"
                        .formatted(MOST / MB),
                "It stays in the database as it is; an export and a backup have it whole.");
    }
}
