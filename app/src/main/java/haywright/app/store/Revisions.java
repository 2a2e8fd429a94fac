package haywright.app.store;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** How revisions of a ranch are counted, also where another program left something else in their place. */
final class Revisions {
    /** Nobody saves so often: anything above was not counted here. */
    private static final long MOST = 1L << 53;

    private Revisions() {}

    /**
     * @param kept what stands in the row
     * @param newest of the history; a ranch is never behind it
     */
    static long of(Object kept, long newest) {
        boolean isCounted = kept instanceof Number number && number.longValue() < MOST;
        return Math.max(Math.max(1, newest), isCounted ? ((Number) kept).longValue() : 1);
    }

    /** In SQL: what a column has of a revision, and 0 for anything that was not counted here. */
    static String counted(String column) {
        return "CASE WHEN %1$s BETWEEN 1 AND %2$d THEN %1$s ELSE 0 END".formatted(column, MOST - 1);
    }

    /** The last one counted in a table; 0 where there is none. */
    static long newest(Handle h, String table, UUID id) {
        return h.createQuery("SELECT coalesce(max(rev), 0) FROM " + table
                        + " WHERE ranch_id = :id AND rev BETWEEN 1 AND " + (MOST - 1))
                .bind("id", id.toString())
                .mapTo(Long.class)
                .one();
    }

    /** Null where what stands there is no time. */
    static @Nullable Instant time(String at) {
        try {
            return Instant.parse(at);
        } catch (DateTimeException e) {
            return null;
        }
    }
}
