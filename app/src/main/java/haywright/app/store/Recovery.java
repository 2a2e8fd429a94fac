package haywright.app.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;

/**
 * The ways back for one ranch whose document cannot be read: its history taken back edit by edit, or the newest daily
 * copy that has it. Whatever is taken, the document that could not be read is kept beside, exactly as it was.
 */
public final class Recovery {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final Jdbi jdbi;
    private final RanchDocument documents;
    private final Clock clock;
    private final @Nullable DataFolder folder;

    Recovery(Jdbi jdbi, RanchDocument documents, Clock clock, @Nullable DataFolder folder) {
        this.jdbi = jdbi;
        this.documents = documents;
        this.clock = clock;
        this.folder = folder;
    }

    /** A revision that can be read, and when it was saved. */
    public record Revision(Ranch ranch, long rev, @Nullable Instant savedAt) {}

    /** The ranch as a daily copy has it. */
    public record Copied(Ranch ranch, LocalDate day) {}

    /**
     * What could not be read, exactly as it is kept.
     *
     * @param bytes of its document
     * @param kept null where that is more than is read at once
     */
    public record Raw(
            String name, long rev, long bytes, @Nullable String kept) {
        /** @throws Refused where it is too large to be handed out */
        public String doc() {
            if (kept == null) {
                throw OneRow.tooLarge(bytes);
            }
            return kept;
        }
    }

    /** @throws Refused when there is no such ranch */
    public Raw raw(UUID id) {
        return jdbi.withHandle(h -> h.createQuery(
                                "SELECT " + OneRow.line("name") + ", rev, octet_length(doc) AS bytes, "
                                        + OneRow.text("doc") + " AS doc FROM ranch WHERE id = :id")
                        .bind("id", RowId.kept(h, id))
                        .map((row, context) -> new Raw(
                                row.getString("name"),
                                Revisions.of(row.getObject("rev"), Revisions.newest(h, "edit", id)),
                                row.getLong("bytes"),
                                row.getString("doc")))
                        .findOne())
                .orElseThrow(
                        () -> new Refused("id", id.toString(), "there is no such ranch here", "Open the start page."));
    }

    /**
     * A document that could not be read, kept when another took its place.
     *
     * @param key names it among those of its ranch
     * @param at when the other took its place; null where that is no time
     */
    public record Aside(String key, @Nullable Instant at, int characters) {}

    /** The newest first. */
    public List<Aside> setAside(UUID id) {
        return jdbi.withHandle(h -> h.createQuery("SELECT CAST(rev AS TEXT) AS key, at, length(doc) AS size"
                        + " FROM set_aside WHERE ranch_id = :id ORDER BY rev DESC")
                .bind("id", id.toString())
                .map((row, context) ->
                        new Aside(row.getString("key"), Revisions.time(row.getString("at")), row.getInt("size")))
                .list());
    }

    /** Exactly as it was; empty where there is none of this key. */
    public Optional<InputStream> setAside(UUID id, String key) {
        return setAside(id).stream().anyMatch(aside -> aside.key().equals(key))
                ? Optional.of(RawText.of(
                        jdbi,
                        "set_aside WHERE ranch_id = :id AND CAST(rev AS TEXT) = :key",
                        Map.of("id", id.toString(), "key", key)))
                : Optional.empty();
    }

    /** What could not be read, exactly as it is kept, however large. */
    public InputStream whole(UUID id) {
        return RawText.of(jdbi, "ranch WHERE id = :id", Map.of("id", jdbi.withHandle(h -> RowId.kept(h, id))));
    }

    /** Why the document cannot be read; empty when it can. */
    public Optional<Refused> wrong(UUID id) {
        var raw = raw(id);
        return RowId.wrong(jdbi.withHandle(h -> RowId.kept(h, id))).or(() -> wrong(id, raw));
    }

    private Optional<Refused> wrong(UUID id, Raw raw) {
        try {
            read(id, raw.doc());
            return Optional.empty();
        } catch (Refused e) {
            return Optional.of(e);
        }
    }

    private Ranch read(UUID id, String doc) {
        var ranch = documents.ranch(documents.kept(doc));
        if (!ranch.id().equals(id)) {
            throw new Refused("id", ranch.id().toString(), "this document is of another ranch", "Export it and look.");
        }
        return ranch;
    }

    /** The last revision that can be read, by taking back edit after edit; empty when none of them helps. */
    public Optional<Revision> lastRevision(UUID id) {
        var raw = raw(id);
        ObjectNode tree;
        try {
            if (raw.kept() == null || !(MAPPER.readTree(raw.doc()) instanceof ObjectNode object)) {
                return Optional.empty();
            }
            tree = object;
        } catch (JsonProcessingException e) {
            return Optional.empty(); // nothing that an edit could be taken back from
        }
        record Step(long rev, String inverse) {}
        var steps = jdbi.withHandle(
                h -> h.createQuery("SELECT rev, inverse_patch FROM edit WHERE ranch_id = :id ORDER BY rev DESC")
                        .bind("id", id.toString())
                        .map((row, context) -> new Step(row.getLong("rev"), row.getString("inverse_patch")))
                        .list());
        for (var step : steps) {
            try {
                tree = Patch.of(step.inverse()).apply(tree);
            } catch (RuntimeException e) {
                return Optional.empty(); // the history is damaged from here on, or of another format
            }
            try {
                var ranch = read(id, tree.toString());
                return Optional.of(new Revision(ranch, step.rev() - 1, savedAt(id, step.rev() - 1)));
            } catch (Refused e) {
                // neither could this one be read: one further back
            }
        }
        return Optional.empty();
    }

    private @Nullable Instant savedAt(UUID id, long rev) {
        return jdbi.withHandle(h -> h.createQuery("SELECT at FROM edit WHERE ranch_id = :id AND rev = :rev")
                .bind("id", id.toString())
                .bind("rev", rev)
                .mapTo(String.class)
                .findOne()
                .map(Revisions::time)
                .orElse(null));
    }

    /** From the newest daily copy that has the ranch and can be read. */
    public Optional<Copied> newestCopy(UUID id) {
        if (folder == null) {
            return Optional.empty();
        }
        for (var held : folder.holding(id)) {
            try {
                return Optional.of(new Copied(read(id, held.doc()), held.day()));
            } catch (RuntimeException e) {
                // damaged there already: an older copy may have it whole
            }
        }
        return Optional.empty();
    }

    boolean isGoodIn(Path copy, UUID id) {
        return DataFolder.held(copy, id)
                .filter(held -> wrong(id, new Raw("", 1, 0, held.doc())).isEmpty())
                .isPresent();
    }

    /**
     * Puts a ranch that can be read in the place of the document that cannot, as one more edit.
     *
     * @return the revision it is now
     * @throws Refused when the document can be read after all
     */
    public long putInPlace(Ranch good, String who, String words) {
        var id = good.id();
        return jdbi.inTransaction(h -> {
            var now = raw(id);
            if (wrong(id, now).isEmpty()) {
                throw new Refused("id", good.name(), "this ranch can be read as it is", "To go back, use its history.");
            }
            var at = Instant.now(clock).toString();
            long next = now.rev() + 1;
            long aside = Math.max(now.rev(), Revisions.newest(h, "set_aside", id) + 1);
            // within the database: it may be larger than memory
            h.execute(
                    "INSERT INTO set_aside (ranch_id, rev, at, doc) SELECT id, CAST(? AS BIGINT), ?, coalesce(doc, '') FROM ranch WHERE id = ?",
                    aside,
                    at,
                    id.toString());
            int put = h.execute(
                    "UPDATE ranch SET name = ?, rev = ?, format = ?, doc = ? WHERE id = ?"
                            + " AND coalesce(doc, '') = (SELECT doc FROM set_aside WHERE ranch_id = ? AND rev = ?)",
                    good.name(),
                    next,
                    documents.format(),
                    OneRow.fitting(documents.tree(good).toString()),
                    id.toString(),
                    id.toString(),
                    aside);
            if (put == 0) {
                throw Ranches.neverStill(id);
            }
            // nothing to take back: what stood there before cannot be read
            h.execute(
                    "INSERT INTO edit (ranch_id, rev, at, who, words, inverse_patch) VALUES (?, ?, ?, ?, ?, ?)",
                    id.toString(),
                    next,
                    at,
                    who,
                    words,
                    new Patch(documents.format(), Map.of()).json());
            return next;
        });
    }
}
