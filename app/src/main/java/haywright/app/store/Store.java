package haywright.app.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import haywright.app.document.RanchDocument;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jdbi.v3.core.Jdbi;

/** The open database. One per process; close it when the process ends. */
public final class Store implements AutoCloseable {
    private final HikariDataSource pool;
    private final boolean sqlite;
    private final Jdbi jdbi;
    private final Clock clock;
    private final RanchDocument documents;

    private Store(String url, Clock clock, RanchDocument documents) {
        this.clock = clock;
        this.documents = documents;
        sqlite = url.startsWith("jdbc:sqlite:");
        var config = new HikariConfig();
        config.setJdbcUrl(url);
        if (sqlite) {
            // SQLite has one writer; FULL keeps a save through a power cut, WAL lets readers go on meanwhile
            config.setMaximumPoolSize(1);
            config.addDataSourceProperty("journal_mode", "WAL");
            config.addDataSourceProperty("synchronous", "FULL");
            config.addDataSourceProperty("foreign_keys", "true");
            config.addDataSourceProperty("busy_timeout", "10000");
            // a transaction that reads before it writes must not find the database changed in between
            config.addDataSourceProperty("transaction_mode", "IMMEDIATE");
        }
        pool = pool(config);
        try {
            migrate();
        } catch (RuntimeException e) {
            pool.close();
            throw e;
        }
        jdbi = Jdbi.create(pool);
    }

    /** The user's own: {@code haywright.db} in a data folder, which is made if it is not there. */
    public static Store inFolder(Path folder, Clock clock) {
        make(folder);
        return at("jdbc:sqlite:" + folder.resolve("haywright.db"), clock);
    }

    /** @param jdbcUrl of SQLite or PostgreSQL, with user and password in it where needed */
    public static Store at(String jdbcUrl, Clock clock) {
        return new Store(jdbcUrl, clock, new RanchDocument());
    }

    private static HikariDataSource pool(HikariConfig config) {
        try {
            return new HikariDataSource(config);
        } catch (HikariPool.PoolInitializationException e) {
            throw cannotBeOpened(config.getJdbcUrl(), e);
        }
    }

    private static Refused cannotBeOpened(String url, RuntimeException e) {
        return new Refused(
                "data",
                withoutPassword(url),
                "this database cannot be opened: "
                        + String.valueOf(e.getMessage()).lines().findFirst().orElse(""),
                "Is the server running, and is it Haywright's own?");
    }

    private static String withoutPassword(String url) {
        return url.replaceAll("[?].*", "");
    }

    private void migrate() {
        try {
            Flyway.configure(Store.class.getClassLoader())
                    .dataSource(pool)
                    .locations("classpath:haywright/app/store")
                    .placeholders(Map.of("bytes", sqlite ? "BLOB" : "BYTEA"))
                    // a database that a newer Haywright wrote is refused, not half understood
                    .ignoreMigrationPatterns("")
                    .load()
                    .migrate();
        } catch (FlywayValidateException e) {
            throw new Refused(
                    "data",
                    withoutPassword(pool.getJdbcUrl()),
                    "these data were written by a newer Haywright",
                    "Use the newer one; nothing has been changed.");
        } catch (FlywayException e) {
            throw cannotBeOpened(pool.getJdbcUrl(), e);
        }
    }

    public Ranches ranches() {
        return new Ranches(jdbi, documents, clock);
    }

    public Drafts drafts() {
        return new Drafts(jdbi);
    }

    public LaboratoryNames laboratoryNames() {
        return new LaboratoryNames(jdbi);
    }

    public Attachments attachments() {
        return new Attachments(jdbi);
    }

    public RanchFiles files() {
        return new RanchFiles(ranches(), attachments(), documents);
    }

    /**
     * The whole database as it is now, with its history and drafts, copied into a folder once a day. To go back, restore
     * it ({@link RanchFiles#restore}) or put it in the place of {@code haywright.db}. Files that nothing speaks of any
     * more are dropped first.
     *
     * @return today's copy, made now or earlier; empty for PostgreSQL, which the office copies in its own way
     */
    public Optional<Path> dailyCopy(Path folder) {
        if (!sqlite) {
            attachments().dropForgotten();
            return Optional.empty();
        }
        var copy = folder.resolve("haywright-" + LocalDate.now(clock) + ".db");
        if (!Files.exists(copy)) {
            attachments().dropForgotten();
            make(folder);
            // under another name until it is whole: half a copy must not pass for today's
            var beside = folder.resolve(copy.getFileName() + ".part");
            try {
                Files.deleteIfExists(beside);
                jdbi.useHandle(h -> h.execute("VACUUM INTO ?", beside.toString()));
                Files.move(beside, copy);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return Optional.of(copy);
    }

    /** For tests: what SQLite says it does. */
    String pragma(String name) {
        return jdbi.withHandle(
                h -> h.createQuery("PRAGMA " + name).mapTo(String.class).one());
    }

    private static void make(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refused(
                    "data", folder.toString(), "this folder cannot be made: " + e.getMessage(), "Choose another one.");
        }
    }

    @Override
    public void close() {
        pool.close();
    }
}
