package haywright.app.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import haywright.app.document.RanchDocument;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;
import org.flywaydb.core.Flyway;
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
        pool = new HikariDataSource(config);
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
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refused(
                    "data", folder.toString(), "this folder cannot be made: " + e.getMessage(), "Choose another one.");
        }
        return at("jdbc:sqlite:" + folder.resolve("haywright.db"), clock);
    }

    /** @param jdbcUrl of SQLite or PostgreSQL, with user and password in it where needed */
    public static Store at(String jdbcUrl, Clock clock) {
        return new Store(jdbcUrl, clock, new RanchDocument());
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
                    pool.getJdbcUrl(),
                    "these data were written by a newer Haywright",
                    "Use the newer one; nothing has been changed.");
        }
    }

    public Ranches ranches() {
        return new Ranches(jdbi, documents, clock);
    }

    public Drafts drafts() {
        return new Drafts(jdbi);
    }

    public Attachments attachments() {
        return new Attachments(jdbi);
    }

    public RanchFiles files() {
        return new RanchFiles(ranches(), attachments(), documents);
    }

    /**
     * The whole database as it is now, copied beside it once a day with its history and drafts; to go back, restore it
     * or put it in the place of {@code haywright.db}. For PostgreSQL the office's own copies stand in.
     *
     * @return the copy of today, made now or before
     */
    public Path dailyCopy(Path folder) {
        var copy = folder.resolve("haywright-" + LocalDate.now(clock) + ".db");
        if (sqlite && !Files.exists(copy)) {
            try {
                Files.createDirectories(folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            jdbi.useHandle(h -> h.execute("VACUUM INTO ?", copy.toString()));
        }
        return copy;
    }

    @Override
    public void close() {
        pool.close();
    }
}
