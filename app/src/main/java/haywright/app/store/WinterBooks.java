package haywright.app.store;

import haywright.app.document.BookDocument;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Winter books, which take minutes to make, kept beside the ranches: by the hash of what each was made from. Of every ranch
 * the newest {@value #KEPT} are kept, so that a book can be compared with the one before it; older ones are dropped. What
 * cannot be read counts apart, so that it pushes no book out.
 */
public final class WinterBooks {
    /** Of each ranch. */
    public static final int KEPT = 3;

    private static final String NEWEST_FIRST = " ORDER BY " + Revisions.counted("rev") + " DESC, at DESC";
    private static final String STATE = "SELECT ranch_id, at || ' ' || hash AS state FROM winter_book";

    private final Jdbi jdbi;
    private final Clock clock;

    WinterBooks(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /**
     * @param hash of what it was made from
     * @param rev the revision of the ranch that was looked at
     * @param at when it was kept
     * @param doc as it was given
     */
    public record Kept(String hash, long rev, String at, String doc) {}

    /** Newest first. */
    public List<Kept> of(UUID ranch) {
        return jdbi.withHandle(h -> of(h, ranch));
    }

    private static List<Kept> of(Handle h, UUID ranch) {
        return h.createQuery("SELECT hash, " + Revisions.counted("rev") + " AS rev, at, coalesce(" + OneRow.text("doc")
                        + ", '') AS doc FROM winter_book" + " WHERE ranch_id = :ranch" + NEWEST_FIRST)
                .bind("ranch", ranch.toString())
                .map((row, context) ->
                        new Kept(row.getString("hash"), row.getLong("rev"), row.getString("at"), row.getString("doc")))
                .list();
    }

    /** Another whenever a book is kept, made again or gone; empty where there is none. */
    public String state(UUID ranch) {
        return jdbi.withHandle(h -> String.join(
                "\n",
                h.createQuery(STATE + " WHERE ranch_id = :ranch" + NEWEST_FIRST)
                        .bind("ranch", ranch.toString())
                        .map((row, context) -> row.getString("state"))
                        .list()));
    }

    /** The same of every ranch that has one. */
    public Map<UUID, String> states() {
        var all = new HashMap<UUID, String>();
        jdbi.useHandle(h -> h.createQuery(STATE + NEWEST_FIRST)
                .map((row, context) -> all.merge(
                        RowId.of(row.getString("ranch_id")), row.getString("state"), (one, next) -> one + "\n" + next))
                .list());
        return all;
    }

    /** One made from the same is replaced. */
    public void keep(UUID ranch, String hash, long rev, String doc) {
        jdbi.useTransaction(h -> {
            h.execute(
                    "INSERT INTO winter_book (ranch_id, hash, rev, at, doc) VALUES (?, ?, ?, ?, ?)"
                            + " ON CONFLICT (ranch_id, hash) DO UPDATE SET"
                            + " rev = excluded.rev, at = excluded.at, doc = excluded.doc",
                    ranch.toString(),
                    hash,
                    rev,
                    Instant.now(clock).toString(),
                    doc);
            prune(h, ranch, hash);
        });
    }

    /** The one that was just kept stays, whatever others say of themselves. */
    private static void prune(Handle h, UUID ranch, String kept) {
        int read = 0;
        int unread = 0;
        for (var book : of(h, ranch)) {
            boolean isOver = BookDocument.read(book.doc()).isPresent() ? ++read > KEPT : ++unread > KEPT;
            if (isOver && !book.hash().equals(kept)) {
                h.execute("DELETE FROM winter_book WHERE ranch_id = ? AND hash = ?", ranch.toString(), book.hash());
            }
        }
    }
}
