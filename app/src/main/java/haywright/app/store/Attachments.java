package haywright.app.store;

import haywright.app.document.Fingerprint;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/** Files kept under the hash of their bytes, each once however many ranches speak of it. */
public final class Attachments {
    private static final Duration FORGOTTEN = Duration.ofDays(1);

    private final Jdbi jdbi;

    Attachments(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** @param type media type: {@code application/pdf} */
    @SuppressWarnings("ArrayRecordComponent") // carried from a form to the table and back; never compared
    public record Body(String type, byte[] bytes) {}

    /** @return the SHA-256 that it is kept under */
    public String keep(Body body) {
        var sha256 = Fingerprint.sha256(body.bytes());
        jdbi.useHandle(h -> h.execute(
                "INSERT INTO attachment (sha256, type, body) VALUES (?, ?, ?) ON CONFLICT (sha256) DO UPDATE SET forgotten = NULL",
                sha256,
                body.type(),
                body.bytes()));
        return sha256;
    }

    public Optional<Body> get(String sha256) {
        return jdbi.withHandle(h -> h.createQuery("SELECT type, body FROM attachment WHERE sha256 = :sha256")
                .bind("sha256", sha256)
                .map((row, context) -> new Body(row.getString("type"), row.getBytes("body")))
                .findOne());
    }

    /** Whether it is kept. */
    public boolean isHere(String sha256) {
        return jdbi.withHandle(h -> h.createQuery("SELECT count(*) FROM attachment WHERE sha256 = :sha256")
                        .bind("sha256", sha256)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /**
     * Drops what no ranch speaks of, nor its history, nor a form that somebody left unfinished, and did not a day ago
     * either: a file is kept before the ranch that speaks of it, and another program may be between the two.
     */
    void dropForgotten(Instant now) {
        var unspoken = jdbi.withHandle(h -> h.createQuery("SELECT sha256 FROM attachment WHERE NOT EXISTS"
                        + " (SELECT 1 FROM ranch WHERE doc LIKE '%' || sha256 || '%') AND NOT EXISTS"
                        + " (SELECT 1 FROM edit WHERE inverse_patch LIKE '%' || sha256 || '%') AND NOT EXISTS"
                        + " (SELECT 1 FROM draft WHERE fields LIKE '%' || sha256 || '%') AND NOT EXISTS"
                        + " (SELECT 1 FROM set_aside WHERE doc LIKE '%' || sha256 || '%')")
                .mapTo(String.class)
                .list());
        for (var sha256 : unspoken) {
            // each decides by the row as it is then: whoever keeps it again has it for another day
            jdbi.useHandle(h -> h.execute(
                    "DELETE FROM attachment WHERE sha256 = ? AND forgotten < ?",
                    sha256,
                    now.minus(FORGOTTEN).toEpochMilli()));
            jdbi.useHandle(h -> h.execute(
                    "UPDATE attachment SET forgotten = ? WHERE sha256 = ? AND forgotten IS NULL",
                    now.toEpochMilli(),
                    sha256));
        }
    }
}
