package haywright.app.store;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.time.Clock;
import java.time.Instant;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;

/** Every ranch that the adviser looks after: opened, saved, undone, put away and brought back. */
public final class Ranches {
    /**
     * Differs wherever the document may: a revision has one moment of saving, and what came from a copy of the database
     * under the same revision has another.
     */
    private static final String VERSION = "(rev || ' ' || coalesce(octet_length(doc), 0) || ' ' || coalesce("
            + "(SELECT at FROM edit WHERE edit.ranch_id = ranch.id AND edit.rev = ranch.rev), '')) AS version";

    /** So often somebody else may be quicker. */
    static final int MOST_TRIES = 1000;

    private final Jdbi jdbi;
    private final RanchDocument documents;
    private final ReadOnce read;
    private final Clock clock;

    Ranches(Jdbi jdbi, RanchDocument documents, ReadOnce read, Clock clock) {
        this.jdbi = jdbi;
        this.documents = documents;
        this.read = read;
        this.clock = clock;
    }

    /**
     * A ranch in the list.
     *
     * @param version as long as it is the same, so is the ranch
     */
    public record Listed(UUID id, String name, long rev, String version) {}

    /** A ranch as it stands at a revision. */
    public record Opened(Ranch ranch, long rev) {}

    /** By name. */
    public List<Listed> list() {
        return listed("deleted_at IS NULL");
    }

    /** Those that were deleted and can be restored. */
    public List<Listed> deleted() {
        return listed("deleted_at IS NOT NULL");
    }

    private List<Listed> listed(String which) {
        jdbi.useHandle(RowId::nameTheNameless); // another program may have put one in meanwhile
        return jdbi.withHandle(h -> h.createQuery("SELECT id, " + OneRow.line("name") + ", rev, " + VERSION
                        + " FROM ranch WHERE " + which + " ORDER BY lower(substr(ranch.name, 1, 200)), id")
                .map((row, context) -> new Listed(
                        RowId.of(row.getString("id")),
                        row.getString("name"),
                        row.getLong("rev"),
                        row.getString("version")))
                .list());
    }

    /** @throws Refused when there is no such ranch, or it was deleted */
    public Opened open(UUID id) {
        return jdbi.withHandle(h -> {
            var version = h.createQuery("SELECT " + VERSION + " FROM ranch WHERE id = :id AND deleted_at IS NULL")
                    .bind("id", id.toString())
                    .mapTo(String.class)
                    .findOne();
            return version.flatMap(v -> read.get(id, v)).orElseGet(() -> readAgain(h, id));
        });
    }

    /** As it stood at an earlier revision; empty where what was saved since can't be taken back. */
    public Optional<Ranch> at(UUID id, long rev) {
        return jdbi.withHandle(h -> {
            try {
                return Optional.of(documents.ranch(asItStood(h, id, kept(h, id), rev)));
            } catch (Refused e) {
                return Optional.empty();
            }
        });
    }

    private Opened readAgain(Handle h, UUID id) {
        var kept = kept(h, id);
        var opened = new Opened(documents.ranch(kept.tree()), kept.rev());
        read.put(id, kept.version(), opened, kept.length());
        return opened;
    }

    /** Whether it is in the list, whatever its document is like. */
    public boolean isHere(UUID id) {
        return jdbi.withHandle(h -> h.createQuery("SELECT count(*) FROM ranch WHERE id = :id AND deleted_at IS NULL")
                        .bind("id", RowId.kept(h, id))
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /** @throws Refused when its id is taken */
    public Opened create(Ranch ranch) {
        var tree = documents.tree(ranch);
        int made = jdbi.withHandle(h -> h.createUpdate(
                        "INSERT INTO ranch (id, name, rev, format, doc) VALUES (:id, :name, 1, :format, :doc)"
                                + " ON CONFLICT (id) DO NOTHING")
                .bind("id", ranch.id().toString())
                .bind("name", ranch.name())
                .bind("format", documents.format())
                .bind("doc", OneRow.fitting(tree.toString()))
                .execute());
        if (made == 0) {
            throw new Refused(
                    "id",
                    ranch.id().toString(),
                    "a ranch of this id is here already, perhaps among the deleted ones",
                    "Restore or change that one.");
        }
        return new Opened(ranch, 1);
    }

    /** The same of a ranch whose id is made from the form that asks for it: sent twice, it is made once. */
    public void createOnce(Ranch ranch) {
        if (!isHere(ranch.id())) {
            try {
                create(ranch);
            } catch (Refused e) {
                if (!isHere(ranch.id())) {
                    throw e;
                }
            }
        }
    }

    /**
     * Saves a ranch that was opened at {@code baseRev} and changed.
     *
     * @param words what was done, for the history: "Oat hay: nitrate typed in"
     */
    public SaveAnswer save(UUID id, long baseRev, String who, String words, Ranch mine) {
        if (!mine.id().equals(id)) {
            throw new Refused("id", mine.id().toString(), "this is another ranch", "Import it as another ranch.");
        }
        var after = documents.tree(mine);
        return write(id, baseRev, who, words, base -> Patch.between(base, after), null);
    }

    /** Saves a change made to what was opened at {@code baseRev}. */
    public SaveAnswer save(UUID id, long baseRev, String who, String words, Patch patch) {
        return write(id, baseRev, who, words, base -> patch, null);
    }

    /** The same of what a form sent: pressed twice it is saved once, and the revision is the first one's. */
    public SaveAnswer save(UUID id, long baseRev, String who, String words, Patch patch, @Nullable Form form) {
        return write(id, baseRev, who, words, base -> patch, form);
    }

    /**
     * What a form sent.
     *
     * @param print of all of it, with the revision that it was made from
     * @param then where it leads once it is saved
     */
    public record Form(String print, String then) {}

    /** A form that was saved. */
    public record Answered(long rev, String then) {}

    /**
     * What became of a form that was sent before; empty where it was not, or what it changed has been changed since.
     *
     * @param after the revision that it was made from
     */
    public Optional<Answered> answered(UUID id, long after, String print) {
        return jdbi.withHandle(h -> answered(h, id, after, print));
    }

    private static Optional<Answered> answered(Handle h, UUID id, long after, String print) {
        record Since(long rev, String sent, Set<String> paths) {}
        var since = h.createQuery("SELECT rev, coalesce(sent, '') AS sent, inverse_patch FROM edit"
                        + " WHERE ranch_id = :id AND rev > :after ORDER BY rev DESC")
                .bind("id", id.toString())
                .bind("after", after)
                .map((row, context) -> new Since(
                        row.getLong("rev"), row.getString("sent"), Set.copyOf(paths(row.getString("inverse_patch")))))
                .list();
        var changed = new HashSet<String>();
        for (var edit : since) {
            if (edit.sent().startsWith(print + " ")) {
                return Collections.disjoint(changed, edit.paths())
                        ? Optional.of(new Answered(edit.rev(), edit.sent().substring(print.length() + 1)))
                        : Optional.empty();
            }
            changed.addAll(edit.paths());
        }
        return Optional.empty();
    }

    private interface Change {
        Patch to(ObjectNode base);
    }

    private SaveAnswer write(UUID id, long baseRev, String who, String words, Change change, @Nullable Form form) {
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            var answer = jdbi.inTransaction(h -> tryOnce(h, id, baseRev, who, words, change, form));
            if (answer.isPresent()) {
                return answer.get();
            }
            // somebody else was quicker between our reading and our writing: look again
        }
        throw neverStill(id);
    }

    static Refused neverStill(UUID id) {
        return new Refused(
                "id",
                id.toString(),
                "another program changes this ranch all the time, so that nothing can be saved on it",
                "End the other program, then send this again.");
    }

    private Optional<SaveAnswer> tryOnce(
            Handle h, UUID id, long baseRev, String who, String words, Change change, @Nullable Form form) {
        var now = kept(h, id);
        if (form != null) {
            var before = answered(h, id, baseRev, form.print());
            if (before.isPresent()) {
                return Optional.of(new SaveAnswer.Saved(
                        documents.ranch(now.tree()), before.get().rev()));
            }
        }
        var base = asItStood(h, id, now, baseRev);
        var patch = change.to(base);
        var mine = patch.apply(base);
        var both = patch.differing(base, now.tree()).stream()
                .filter(path -> !Patch.at(mine, path).equals(Patch.at(now.tree(), path)))
                .toList();
        var checked = documents.ranch(mine);
        if (!both.isEmpty()) {
            return Optional.of(new SaveAnswer.Conflict(checked, documents.ranch(now.tree()), now.rev(), both));
        }
        var merged = patch.apply(now.tree());
        Ranch ranch;
        try {
            ranch = documents.ranch(merged);
        } catch (Refused e) {
            // each change is sound and the two together are not: one took away what the other speaks of
            return Optional.of(new SaveAnswer.Conflict(
                    checked, documents.ranch(now.tree()), now.rev(), List.copyOf(patch.paths())));
        }
        if (Patch.between(now.tree(), merged).isEmpty()) {
            return Optional.of(new SaveAnswer.Saved(ranch, now.rev()));
        }
        int updated = h.createUpdate(
                        "UPDATE ranch SET name = :name, rev = :next, format = :format, doc = :doc WHERE id = :id AND rev = :rev")
                .bind("name", ranch.name())
                .bind("next", now.rev() + 1)
                .bind("format", documents.format())
                .bind("doc", OneRow.fitting(merged.toString()))
                .bind("id", id.toString())
                .bind("rev", now.asKept())
                .execute();
        if (updated == 0) {
            return Optional.empty();
        }
        h.execute(
                "INSERT INTO edit (ranch_id, rev, at, who, words, inverse_patch, sent) VALUES (?, ?, ?, ?, ?, ?, ?)",
                id.toString(),
                now.rev() + 1,
                Instant.now(clock).toString(),
                who,
                words,
                patch.inverse(now.tree()).json(),
                form == null ? null : form.print() + " " + form.then());
        return Optional.of(new SaveAnswer.Saved(ranch, now.rev() + 1));
    }

    /** @param asKept the revision as it stands in the row */
    private record Kept(long rev, Object asKept, String version, int length, ObjectNode tree) {}

    private Kept kept(Handle h, UUID id) {
        long newest = Revisions.newest(h, "edit", id);
        return h.createQuery("SELECT rev, octet_length(doc) AS bytes, " + OneRow.text("doc") + " AS doc, " + VERSION
                        + " FROM ranch WHERE id = :id AND deleted_at IS NULL")
                .bind("id", id.toString())
                .map((row, context) -> {
                    var doc = row.getString("doc");
                    if (doc == null) {
                        throw OneRow.tooLarge(row.getLong("bytes"));
                    }
                    var rev = row.getObject("rev");
                    return new Kept(Revisions.of(rev, newest), rev, row.getString("version"), doc.length(), tree(doc));
                })
                .findOne()
                .orElseThrow(() -> RowId.wrong(RowId.kept(h, id))
                        .orElseGet(() -> new Refused(
                                "id", id.toString(), "there is no such ranch here", "Is it among the deleted ones?")));
    }

    private ObjectNode tree(String json) {
        return documents.kept(json);
    }

    private ObjectNode asItStood(Handle h, UUID id, Kept now, long rev) {
        if (rev > now.rev() || rev < 1) {
            throw new Refused(
                    "rev", Long.toString(rev), "this ranch is at revision " + now.rev(), "Open it again, then save.");
        }
        var tree = now.tree();
        for (var patch : inverses(h, id, rev)) {
            tree = patch.apply(tree);
        }
        return tree;
    }

    /** What takes back every edit after a revision, newest first. */
    private List<Patch> inverses(Handle h, UUID id, long after) {
        return h.createQuery("SELECT inverse_patch FROM edit WHERE ranch_id = :id AND rev > :rev ORDER BY rev DESC")
                .bind("id", id.toString())
                .bind("rev", after)
                .map((row, context) -> Patch.of(row.getString("inverse_patch")))
                .list();
    }

    /** Newest first. */
    public List<Edit> history(UUID id) {
        return jdbi.withHandle(h -> h.createQuery("SELECT rev, at, who, " + OneRow.line("words")
                        + ", inverse_patch FROM edit WHERE ranch_id = :id ORDER BY rev DESC")
                .bind("id", id.toString())
                .map((row, context) -> new Edit(
                        row.getLong("rev"),
                        Revisions.time(row.getString("at")),
                        row.getString("who"),
                        row.getString("words"),
                        paths(row.getString("inverse_patch"))))
                .list());
    }

    /** None where the patch itself is damaged: the line of history stands all the same. */
    private static List<String> paths(String inverse) {
        try {
            return List.copyOf(Patch.of(inverse).paths());
        } catch (Refused e) {
            return List.of();
        }
    }

    /**
     * Takes one edit back, as a new edit that can itself be taken back.
     *
     * @throws Refused when something it touched has changed since
     */
    public SaveAnswer.Saved undo(UUID id, long rev, String who) {
        var undone = jdbi.withHandle(h -> h.createQuery("SELECT " + OneRow.line("words")
                                + ", inverse_patch FROM edit WHERE ranch_id = :id AND rev = :rev")
                        .bind("id", id.toString())
                        .bind("rev", rev)
                        .map((row, context) ->
                                new Undoing(row.getString("words"), Patch.of(row.getString("inverse_patch"))))
                        .findOne())
                .orElseThrow(() -> new Refused(
                        "rev", Long.toString(rev), "there is no such edit on this ranch", "Open its history again."));
        if (undone.inverse().isEmpty()) {
            throw new Refused(
                    "rev",
                    "“" + undone.words() + "”",
                    "this cannot be taken back, because what stood there before could not be read",
                    "It is kept exactly as it was; get it at the end of the ranch's History page.");
        }
        // taking back is a save on what the edit left behind: whoever changed the same since stands in its way
        var answer = save(id, rev, who, "Took back: " + undone.words(), undone.inverse());
        if (answer instanceof SaveAnswer.Conflict conflict) {
            throw changedSince(id, rev, undone, conflict);
        }
        return (SaveAnswer.Saved) answer;
    }

    /**
     * What is not on a ranch any more.
     *
     * @param name it had; empty where it had none
     * @param words what deleted it, for the history
     * @param back puts it there again, with what was deleted along with it that speaks of it
     */
    public record Deleted(String name, String words, Patch back) {}

    /** Empty where nothing of this id was ever deleted, or it is here. */
    public Optional<Deleted> deleted(UUID id, UUID entity) {
        return jdbi.withHandle(h -> {
            var now = kept(h, id).tree();
            return h
                    .createQuery("SELECT " + OneRow.line("words")
                            + ", inverse_patch FROM edit WHERE ranch_id = :id AND inverse_patch LIKE :speaks"
                            + " ORDER BY rev DESC")
                    .bind("id", id.toString())
                    .bind("speaks", "%" + entity + "%")
                    .map((row, context) ->
                            new Undoing(row.getString("words"), Patch.of(row.getString("inverse_patch"))))
                    .list()
                    .stream()
                    .flatMap(edit -> edit.inverse().paths().stream()
                            .filter(path -> path.endsWith("/" + entity))
                            .map(path -> deleted(now, edit, path)))
                    .findFirst()
                    .filter(gone -> !gone.back().isEmpty());
        });
    }

    private static Deleted deleted(ObjectNode now, Undoing edit, String path) {
        var before = edit.inverse().changes();
        var own = Objects.requireNonNull(before.get(path));
        var back = new LinkedHashMap<>(before);
        back.entrySet()
                .removeIf(one -> one.getValue().isNull()
                        || !Patch.at(now, one.getKey()).isNull()
                        || !one.getKey().equals(path)
                                && !one.getValue().toString().contains(path.substring(path.indexOf('/') + 1)));
        boolean isGone = back.containsKey(path);
        return new Deleted(
                own.path("name").asText(),
                edit.words(),
                new Patch(edit.inverse().format(), isGone ? back : Map.of()));
    }

    /** What was deleted is put there again, as an edit; nothing happens where it is here. */
    public void bringBack(UUID id, UUID entity, String who) {
        for (int tries = 0; tries < MOST_TRIES; tries++) {
            var gone = deleted(id, entity);
            if (gone.isEmpty()) {
                return;
            }
            var words = "Brought back: "
                    + (gone.get().name().isEmpty()
                            ? gone.get().words()
                            : gone.get().name());
            long rev = open(id).rev();
            if (save(id, rev, who, words, gone.get().back()) instanceof SaveAnswer.Saved) {
                return;
            }
        }
        throw neverStill(id);
    }

    private record Undoing(String words, Patch inverse) {}

    private Refused changedSince(UUID id, long rev, Undoing undone, SaveAnswer.Conflict conflict) {
        var path = conflict.paths().get(0);
        var entity = Patch.at(documents.tree(conflict.theirs()), path);
        var name = entity.path("name").asText(path.replaceAll("/.*", "").replace('_', ' '));
        var since = history(id).stream()
                .filter(edit -> edit.rev() > rev && edit.paths().contains(path))
                .findFirst()
                .map(edit -> ": %s (%s)".formatted(edit.words(), edit.who()))
                .orElse("");
        return new Refused(
                path,
                "“" + undone.words() + "”",
                "this cannot be taken back, because “" + name + "” has been changed since" + since,
                "Take that back first, or change it by hand.");
    }

    /** It leaves the list and can be restored. */
    public void delete(UUID id) {
        mark(id, Instant.now(clock).toString());
    }

    public void restore(UUID id) {
        mark(id, null);
    }

    private void mark(UUID id, @Nullable String deletedAt) {
        int marked = jdbi.withHandle(h -> h.createUpdate("UPDATE ranch SET deleted_at = :at WHERE id = :id")
                .bind("at", deletedAt)
                .bind("id", RowId.kept(h, id))
                .execute());
        if (marked == 0) {
            throw new Refused("id", id.toString(), "there is no such ranch here", "Open the list again.");
        }
    }
}
