package haywright.app.store;

import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jdbi.v3.core.Jdbi;

/**
 * Winter books, which take minutes to make, kept beside the ranches: by the hash of what each was made from. Of every ranch
 * the newest {@value #KEPT} are kept, so that a book can be compared with the one before it; older ones are dropped.
 */
public final class WinterBooks {
    /** Of each ranch. */
    public static final int KEPT = 3;

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
        return jdbi.withHandle(h -> h.createQuery(
                        "SELECT hash, rev, at, doc FROM winter_book WHERE ranch_id = :ranch ORDER BY rev DESC, at DESC")
                .bind("ranch", ranch.toString())
                .map((row, context) ->
                        new Kept(row.getString("hash"), row.getLong("rev"), row.getString("at"), row.getString("doc")))
                .list());
    }

    /** When the newest was kept and what of; empty where there is none. */
    public String newest(UUID ranch) {
        return jdbi.withHandle(h -> h.createQuery("SELECT at || ' ' || hash FROM winter_book WHERE ranch_id = :ranch"
                        + " ORDER BY rev DESC, at DESC LIMIT 1")
                .bind("ranch", ranch.toString())
                .mapTo(String.class)
                .findOne()
                .orElse(""));
    }

    /** The same of every ranch that has one. */
    public Map<UUID, String> newest() {
        var all = new HashMap<UUID, String>();
        jdbi.useHandle(h -> h.createQuery(
                        "SELECT ranch_id, at || ' ' || hash AS newest FROM winter_book ORDER BY rev DESC, at DESC")
                .map((row, context) -> all.putIfAbsent(RowId.of(row.getString("ranch_id")), row.getString("newest")))
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
            var hashes = h.createQuery(
                            "SELECT hash FROM winter_book WHERE ranch_id = :ranch ORDER BY rev DESC, at DESC")
                    .bind("ranch", ranch.toString())
                    .mapTo(String.class)
                    .list();
            for (var old : hashes.subList(Math.min(KEPT, hashes.size()), hashes.size())) {
                h.execute("DELETE FROM winter_book WHERE ranch_id = ? AND hash = ?", ranch.toString(), old);
            }
        });
    }
}
