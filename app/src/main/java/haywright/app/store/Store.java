package haywright.app.store;

import haywright.app.document.RanchDocument;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.SqlStatements;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.core.statement.StatementCustomizer;
import org.jspecify.annotations.Nullable;

/** The open database. One per process; close it when the process ends. */
public final class Store implements AutoCloseable {
    /** Statements that go on when nothing may be written any more: what is still in hand can be looked at and exported. */
    private static final Pattern READS = Pattern.compile("\\s*(SELECT|PRAGMA|VACUUM INTO)\\b");

    private final Database database;
    private final Jdbi jdbi;
    private final Clock clock;
    private final RanchDocument documents;
    private final @Nullable DataFolder folder;
    private final @Nullable InUse inUse;
    private final ReadOnce read = new ReadOnce();
    /** The state of the database that the day's copy has. */
    private String copied = "";

    private @Nullable OpenedFile opened;
    private @Nullable OpenedFile journal;

    private Store(
            String url, Clock clock, RanchDocument documents, @Nullable DataFolder folder, @Nullable InUse inUse) {
        this.folder = folder;
        this.inUse = inUse;
        this.clock = clock;
        this.documents = documents;
        database = new Database(url, folder);
        jdbi = database.jdbi();
        if (folder != null) {
            opened = opened(folder.database());
            journal = opened(folder.journal());
            jdbi.getConfig(SqlStatements.class).addCustomizer(new StatementCustomizer() {
                @Override
                public void beforeExecution(PreparedStatement statement, StatementContext context) throws SQLException {
                    if (!READS.matcher(context.getRenderedSql()).lookingAt() && isReplaced()) {
                        throw new OpenedFile.Replaced();
                    }
                }
            });
        }
    }

    private static @Nullable OpenedFile opened(Path file) {
        try {
            return OpenedFile.of(file);
        } catch (IOException e) {
            return null;
        }
    }

    /** Whether another file than the one that was opened, or none, stands under the name of the database. */
    private boolean isReplaced() {
        boolean replaced = folder != null && (opened == null || !opened.isThere());
        if (replaced && folder != null && journal != null && journal.isThere()) {
            folder.setAsideJournal();
        }
        return replaced;
    }

    /** The user's own: {@code haywright.db} in a data folder, which is made if it is not there. */
    public static Store inFolder(Path folder, Clock clock) {
        make(folder);
        var data = new DataFolder(folder, clock);
        var inUse = InUse.shared(folder);
        try {
            refuseUnopenable(data.database());
            data.refuseEmpty();
            ownerOnly(data.database());
            var store = new Store("jdbc:sqlite:" + data.database(), clock, new RanchDocument(), data, inUse);
            store.refuseEmptied(data);
            return store;
        } catch (RuntimeException e) {
            inUse.close();
            throw Trouble.of(e).filter(Trouble.DAMAGED::equals).isPresent()
                    ? new BadDatabase(data, false, "this database cannot be opened: it is damaged", e)
                    : e;
        }
    }

    /** What SQLite itself would only call "unable to open". */
    private static void refuseUnopenable(Path database) {
        String rule;
        if (!Files.exists(database)) {
            if (Files.isWritable(database.getParent())) {
                return;
            }
            rule = "its folder cannot be written to: no permission, or a disk that is read-only";
        } else if (!Files.isRegularFile(database)) {
            rule = "a folder or a device is in its place";
        } else if (!Files.isReadable(database)) {
            rule = "you have no permission to read it";
        } else if (!Files.isWritable(database) || !Files.isWritable(database.getParent())) {
            rule = "it or its folder cannot be written to: no permission, or a disk that is read-only";
        } else {
            return;
        }
        throw new Refused(
                "data",
                database.toString(),
                "this database cannot be opened: " + rule,
                "Put that right, or choose another folder. Nothing was changed.");
    }

    /** What SQLite puts beside it has the rights of this one. */
    private static void ownerOnly(Path database) {
        try {
            OwnerOnly.file(database);
        } catch (IOException e) {
            // a folder that cannot be written: the database says so itself, or is here and can be read
        }
    }

    /** A file with tables and nothing in them is no reason to begin anew where the copies hold ranches. */
    private void refuseEmptied(DataFolder data) {
        if (isBare() && data.newestGood().filter(copy -> copy.ranches() > 0).isPresent()) {
            database.close();
            throw new BadDatabase(data, true, "this database is empty, and its daily copies are not", null);
        }
    }

    /** @param jdbcUrl of SQLite or PostgreSQL, with user and password in it where needed */
    public static Store at(String jdbcUrl, Clock clock) {
        return new Store(jdbcUrl, clock, new RanchDocument(), null, null);
    }

    public Ranches ranches() {
        return new Ranches(jdbi, documents, read, clock);
    }

    public Recovery recovery() {
        return new Recovery(jdbi, documents, clock, folder);
    }

    public Drafts drafts() {
        return new Drafts(jdbi);
    }

    public LaboratoryNames laboratoryNames() {
        return new LaboratoryNames(jdbi);
    }

    public WinterBooks winterBooks() {
        return new WinterBooks(jdbi, clock);
    }

    public Attachments attachments() {
        return new Attachments(jdbi);
    }

    public RanchFiles files() {
        return new RanchFiles(ranches(), attachments(), documents, recovery(), new Backup(jdbi, database.isSqlite()));
    }

    /**
     * After something was done: the file of the database has by itself all that was saved. Until then it is as safe, but in
     * two files that belong together.
     */
    public void settle() {
        database.foldJournal();
    }

    /**
     * The whole database as it is now, with its history and drafts, copied into the data folder: one copy a day, made
     * anew when something has changed since; how many are kept, {@link DataFolder} says. Once a day, files that nothing
     * speaks of any more are dropped first. A database without ranches takes the place of no copy that has some, and one
     * with a ranch that cannot be read of none that could bring it back.
     *
     * @return today's copy, made now or earlier; empty for PostgreSQL, which the office copies in its own way
     */
    public synchronized Optional<Path> dailyCopy() {
        if (folder == null) {
            dropForgotten();
            return Optional.empty();
        }
        var copy = folder.copyOf(LocalDate.now(clock));
        boolean isFirst = !Files.exists(copy);
        if (!isFirst
                && (state().equals(copied)
                        || isBare()
                                && folder.newestGood()
                                        .filter(c -> c.ranches() > 0)
                                        .isPresent()
                        || bringsBack(copy))) {
            return Optional.of(copy);
        }
        if (isReplaced()) {
            throw new IllegalStateException(new OpenedFile.Replaced());
        }
        if (isFirst) {
            dropForgotten();
        }
        var state = state();
        make(folder.copies());
        WholeFile.write(copy, new Backup(jdbi, database.isSqlite())::write);
        copied = state;
        settle();
        try {
            folder.prune(copy);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Optional.of(copy);
    }

    /** Another after every change, whoever made it: rows that we changed, and what SQLite counts of the others. */
    private String state() {
        return pragma("data_version")
                + "/"
                + jdbi.withHandle(h -> h.createQuery("SELECT total_changes()")
                        .mapTo(String.class)
                        .one());
    }

    private boolean isBare() {
        return jdbi.withHandle(h -> h.createQuery("SELECT count(*) FROM ranch")
                        .mapTo(Integer.class)
                        .one())
                == 0;
    }

    /** Whether a copy has a ranch that can be read there and no longer here. */
    private boolean bringsBack(Path copy) {
        return ranches().list().stream()
                .filter(ranch -> recovery().wrong(ranch.id()).isPresent())
                .anyMatch(ranch -> recovery().isGoodIn(copy, ranch.id()));
    }

    /** Not while a ranch cannot be read: its files are spoken of by what it is to be brought back from. */
    private void dropForgotten() {
        var all = Stream.concat(ranches().list().stream(), ranches().deleted().stream());
        if (all.allMatch(ranch -> recovery().wrong(ranch.id()).isEmpty())) {
            attachments().dropForgotten(clock.instant());
        }
    }

    Jdbi jdbi() {
        return jdbi;
    }

    /** What SQLite says it does, and how it stands. */
    String pragma(String name) {
        return jdbi.withHandle(
                h -> h.createQuery("PRAGMA " + name).mapTo(String.class).one());
    }

    /** For tests: what a copy of another day, or another program, leaves behind. */
    void overwrite(String sql) {
        jdbi.useHandle(h -> h.execute(sql));
    }

    /**
     * A place that only its owner may open, made or narrowed.
     *
     * @throws Refused where it can't be made
     */
    public static void make(Path folder) {
        try {
            OwnerOnly.folder(folder);
        } catch (IOException e) {
            throw new Refused(
                    "data", folder.toString(), "this folder cannot be made: " + e.getMessage(), "Choose another one.");
        }
    }

    @Override
    public void close() {
        isReplaced(); // its journal goes out of the way; SQLite itself writes nothing into the other file
        database.close();
        if (inUse != null) {
            inUse.close();
        }
    }

    /** Whether the program is closing: what still runs beside it has nowhere to keep anything. */
    public boolean isClosed() {
        return database.isClosed();
    }
}
