package haywright.app.store;

import haywright.app.document.RanchDocument;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;

/**
 * Everything that is kept, as one SQLite database: what a daily copy is, also from PostgreSQL. Ranches with their
 * history, also those put away and those that cannot be read; drafts; files; what was said of laboratories' names; winter books.
 */
final class Backup {
    /** In the order in which they can be filled. */
    static final Map<String, List<String>> TABLES = tables();

    private static final String ROW = "row";

    private final Jdbi jdbi;
    private final boolean sqlite;

    Backup(Jdbi jdbi, boolean sqlite) {
        this.jdbi = jdbi;
        this.sqlite = sqlite;
    }

    private static Map<String, List<String>> tables() {
        var tables = new LinkedHashMap<String, List<String>>();
        tables.put("ranch", List.of("id", "name", "rev", "format", "doc", "deleted_at"));
        tables.put("edit", List.of("ranch_id", "rev", "at", "who", "words", "inverse_patch", "sent"));
        tables.put("draft", List.of("ranch_id", "form", "fields"));
        tables.put("attachment", List.of("sha256", "type", "body"));
        tables.put("laboratory_name", List.of("laboratory", "name", "analyte", "unit", "basis"));
        tables.put("set_aside", List.of("ranch_id", "rev", "at", "doc"));
        tables.put("winter_book", List.of("ranch_id", "hash", "rev", "at", "doc"));
        return Collections.unmodifiableMap(tables);
    }

    /** Into a file that is not there yet, or is empty. */
    void write(Path file) {
        if (sqlite) {
            jdbi.useHandle(h -> h.execute("VACUUM INTO ?", file.toString()));
            return;
        }
        try (var store = Store.at("jdbc:sqlite:" + file, Clock.systemUTC())) {
            // one look at everything, whoever saves meanwhile
            jdbi.useTransaction(
                    TransactionIsolationLevel.REPEATABLE_READ,
                    from -> store.jdbi()
                            .useTransaction(to -> TABLES.keySet().forEach(table -> copy(from, to, table, "", null))));
            // nobody works with a backup: it is one file, without a journal
            store.jdbi()
                    .useHandle(h -> h.createQuery("PRAGMA journal_mode = DELETE")
                            .mapTo(String.class)
                            .one());
        }
    }

    /** Rows that are there already stay as they are. One that this database does not take stays in the other, and is said. */
    private static void copy(Handle from, Handle to, String table, String which, @Nullable String ranch) {
        var columns = Objects.requireNonNull(TABLES.get(table));
        var into = "INSERT INTO " + table + " (" + String.join(", ", columns) + ") VALUES ("
                + String.join(", ", Collections.nCopies(columns.size(), "?")) + ") ON CONFLICT DO NOTHING";
        var selected = columns.stream()
                .map(column -> isDocument(table, column)
                        ? "CASE WHEN octet_length(doc) > " + OneRow.MOST + " THEN '' ELSE doc END"
                        : column)
                .collect(Collectors.joining(", "));
        var query = from.createQuery("SELECT " + selected + " FROM " + table + " " + which)
                .setFetchSize(20); // rows can be as large as a file is
        if (ranch != null) {
            query.bind("ranch", ranch);
        }
        try (var rows = query
                .map((row, context) -> {
                    var values = new Object[columns.size()];
                    for (int i = 0; i < values.length; i++) {
                        values[i] = value(row, table, columns.get(i), i + 1);
                    }
                    return values;
                })
                .stream()) {
            long left = rows.filter(values -> !isTaken(to, into, values)).count();
            if (table.equals("ranch")) {
                large(from, which, ranch).forEach(id -> fill(from, to, id));
            }
            if (left > 0) {
                LoggerFactory.getLogger(Backup.class)
                        .warn(
                                "{} of {} cannot be kept in this database: damaged. They stay in the backup.",
                                left,
                                table);
            }
        }
    }

    private static boolean isDocument(String table, String column) {
        return table.equals("ranch") && column.equals("doc");
    }

    /** Ids of the ranches whose documents are more than is held at once. */
    private static List<String> large(Handle from, String which, @Nullable String ranch) {
        var query = from.createQuery(
                "SELECT id FROM (SELECT * FROM ranch " + which + ") AS asked WHERE octet_length(doc) > " + OneRow.MOST);
        if (ranch != null) {
            query.bind("ranch", ranch);
        }
        return query.mapTo(String.class).list();
    }

    private static void fill(Handle from, Handle to, String id) {
        try {
            RawText.copy(from, to, id);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What cannot be kept of one row keeps no other out. */
    private static boolean isTaken(Handle to, String into, Object... values) {
        to.savepoint(ROW);
        try {
            to.execute(into, values);
            to.releaseSavepoint(ROW);
            return true;
        } catch (UnableToExecuteStatementException e) {
            if (Trouble.of(e).isPresent()) {
                throw e;
            }
            to.rollbackToSavepoint(ROW);
            return false;
        }
    }

    /** A revision that the table forbids is one: the history says which comes next. */
    private static @Nullable Object value(ResultSet row, String table, String column, int at) throws SQLException {
        if (column.equals("body")) {
            return row.getBytes(at);
        }
        var value = row.getObject(at);
        return table.equals("ranch") && column.equals("rev") ? Revisions.of(value, 0) : value;
    }

    /** A ranch in a backup, and what its row has for an id. */
    private record Kept(String key, String name, long bytes, boolean isDeleted) {
        UUID id() {
            return RowId.of(key);
        }
    }

    /**
     * Takes in what a backup holds and says of each ranch what became of it.
     *
     * @param replace puts a ranch in the place of one that is here, which can be taken back
     */
    List<RanchFiles.Imported> takeIn(Path file, RanchDocument documents, Function<Ranch, RanchFiles.Imported> replace) {
        // looked at in a copy: opening a database may bring its tables up to date
        var copy = Temporary.file(".db");
        try {
            Files.copy(file, copy, StandardCopyOption.REPLACE_EXISTING);
            if (!DataFolder.isWhole(copy)) {
                throw cutShort(file);
            }
            try (var store = opened(copy, file)) {
                return takeIn(store.jdbi(), documents, replace);
            }
        } catch (IOException e) {
            throw RanchFiles.unreadable(file, e);
        } finally {
            delete(copy);
        }
    }

    /** What is wrong is wrong with the file that was named, not with the copy that is looked at. */
    private static Store opened(Path copy, Path file) {
        try {
            return Store.at("jdbc:sqlite:" + copy, Clock.systemUTC());
        } catch (Refused e) {
            var wrong = e.problems().get(0);
            throw new Refused("file", file.toString(), wrong.rule(), wrong.fix());
        }
    }

    static Refused cutShort(Path file) {
        return new Refused(
                "file",
                String.valueOf(file.getFileName()),
                "this backup is cut short or damaged",
                "Nothing was taken in. Take another.");
    }

    private List<RanchFiles.Imported> takeIn(
            Jdbi from, RanchDocument documents, Function<Ranch, RanchFiles.Imported> replace) {
        var all = from.withHandle(h -> h.createQuery("SELECT id, " + OneRow.line("name")
                        + ", octet_length(doc) AS bytes, deleted_at FROM ranch ORDER BY substr(ranch.name, 1, 200), id")
                .map((row, context) -> new Kept(
                        row.getString("id"),
                        row.getString("name"),
                        row.getLong("bytes"),
                        row.getString("deleted_at") != null))
                .list());
        shared(from);
        var told = new ArrayList<RanchFiles.Imported>();
        for (var kept : all) {
            if (takeNew(from, kept.key())) {
                told.add(new RanchFiles.Imported(
                        kept.id(),
                        kept.name(),
                        isHere(kept.key()) ? RanchFiles.Became.NEW : RanchFiles.Became.LEFT_UNREADABLE,
                        wrong(from, kept, documents)));
            } else if (kept.isDeleted()) {
                told.add(new RanchFiles.Imported(kept.id(), kept.name(), RanchFiles.Became.LEFT_DELETED));
            } else {
                told.add(replaced(from, kept, documents, replace));
            }
        }
        return told;
    }

    private static RanchFiles.Imported replaced(
            Jdbi from, Kept kept, RanchDocument documents, Function<Ranch, RanchFiles.Imported> replace) {
        Ranch ranch;
        try {
            ranch = read(from, kept, documents);
        } catch (Refused e) {
            return new RanchFiles.Imported(
                    kept.id(), kept.name(), RanchFiles.Became.LEFT_UNREADABLE, wrong(from, kept, documents));
        }
        return replace.apply(ranch);
    }

    private static String wrong(Jdbi from, Kept kept, RanchDocument documents) {
        try {
            read(from, kept, documents);
            return "";
        } catch (Refused e) {
            return e.problems().get(0).sentence();
        }
    }

    private static Ranch read(Jdbi from, Kept kept, RanchDocument documents) {
        RowId.wrong(kept.key()).ifPresent(wrong -> {
            throw wrong;
        });
        if (kept.bytes() > OneRow.MOST) {
            throw OneRow.tooLarge(kept.bytes());
        }
        return documents.read(doc(from, kept).getBytes(StandardCharsets.UTF_8));
    }

    private static String doc(Jdbi from, Kept kept) {
        return from.withHandle(h -> h.createQuery("SELECT doc FROM ranch WHERE id = :id")
                .bind("id", kept.key())
                .mapTo(String.class)
                .one());
    }

    /** What belongs to no ranch, or to whichever has it. */
    private void shared(Jdbi from) {
        from.useHandle(old -> jdbi.useTransaction(to -> {
            copy(old, to, "attachment", "", null);
            copy(old, to, "laboratory_name", "", null);
            copy(old, to, "draft", "", null);
        }));
    }

    /** With its history, exactly as the backup has it; false when it is here. */
    private boolean takeNew(Jdbi from, String id) {
        return from.withHandle(old -> jdbi.inTransaction(to -> {
            boolean here = isHere(to, id);
            if (!here) {
                copy(old, to, "ranch", "WHERE id = :ranch", id);
                copy(old, to, "edit", "WHERE ranch_id = :ranch", id);
                copy(old, to, "set_aside", "WHERE ranch_id = :ranch", id);
                copy(old, to, "winter_book", "WHERE ranch_id = :ranch", id);
            }
            return !here;
        }));
    }

    private boolean isHere(String id) {
        return jdbi.withHandle(h -> isHere(h, id));
    }

    private static boolean isHere(Handle h, String id) {
        return h.createQuery("SELECT count(*) FROM ranch WHERE id = :id")
                        .bind("id", id)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    private static void delete(Path file) {
        try {
            for (var end : List.of("", "-wal", "-shm")) {
                Files.deleteIfExists(Path.of(file + end));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
