package haywright.app.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementExceptions;
import org.jspecify.annotations.Nullable;
import org.sqlite.NativeLibraryNotFoundException;

/** SQLite or PostgreSQL, connected, found sound and with its tables up to date. */
final class Database implements AutoCloseable {
    /** The newest of the migrations. */
    static final int TABLES_VERSION = 6;
    /** How long one waits for another program's write. */
    private static final String PATIENCE = "4000";

    /** What it has to say of an address is said in a sentence of our own. Held here, or the setting is forgotten. */
    private static final Logger DRIVER = Logger.getLogger("org.postgresql");

    static {
        DRIVER.setLevel(Level.OFF);
    }

    /** Half of what a server may be silent for: a row that somebody holds is said to be held, and not that it is away. */
    private static final String WAIT_FOR_LOCKS = "SET lock_timeout = '5s'";

    private final HikariDataSource pool;
    /** What a connection to a server is made with. */
    private final Properties knock = new Properties();

    private final boolean sqlite;
    private final Jdbi jdbi;
    private final @Nullable Path journal;

    /**
     * @param folder it stands in; null where it is a server's, or a file by itself
     * @throws BadDatabase when that of the folder is damaged or lacks a table
     * @throws Refused when it cannot be opened, or a newer Haywright wrote it
     */
    Database(String url, @Nullable DataFolder folder) {
        journal = folder == null ? null : folder.journal();
        sqlite = url.startsWith("jdbc:sqlite:");
        var config = new HikariConfig();
        config.setJdbcUrl(url);
        if (sqlite) {
            // SQLite has one writer; FULL keeps a save through a power cut, WAL lets readers go on meanwhile
            config.setMaximumPoolSize(1);
            config.setMaxLifetime(0); // opened once: by its name another file may be found later
            config.addDataSourceProperty("journal_mode", "WAL");
            config.addDataSourceProperty("synchronous", "FULL");
            config.addDataSourceProperty("foreign_keys", "true");
            config.addDataSourceProperty("busy_timeout", PATIENCE);
            // a transaction that reads before it writes must not find the database changed in between
            config.addDataSourceProperty("transaction_mode", "IMMEDIATE");
        } else {
            refuseNoAddress(url);
            // a server that is away is said to be within two seconds: half a second for the pool, one for a knock
            System.setProperty("com.zaxxer.hikari.aliveBypassWindowMs", "0"); // no connection is used unlooked at
            config.setConnectionTimeout(500);
            config.setValidationTimeout(400);
            config.setMinimumIdle(0);
            config.setConnectionInitSql(WAIT_FOR_LOCKS);
            knock.setProperty("connectTimeout", "1");
            knock.setProperty("loginTimeout", "1");
            knock.setProperty("socketTimeout", "10");
            knock.setProperty("tcpKeepAlive", "true");
            config.setDataSourceProperties(knock);
        }
        pool = pool(config);
        try {
            if (folder != null) {
                refuseDamaged(folder);
            }
            migrate();
            if (folder != null) {
                refuseIncomplete(folder);
            }
        } catch (RuntimeException e) {
            pool.close();
            throw e;
        }
        jdbi = Jdbi.create(this::connect);
        // what a statement was filled in with is what somebody typed, and belongs in no message
        jdbi.getConfig(StatementExceptions.class).setMessageRendering(StatementExceptions.MessageRendering.NONE);
        jdbi.useHandle(RowId::nameTheNameless);
        foldJournal(); // what an end that nobody wished for left in it
    }

    Jdbi jdbi() {
        return jdbi;
    }

    boolean isSqlite() {
        return sqlite;
    }

    /**
     * What was saved goes from the journal into the database itself: SQLite would let it wait for a thousand pages, and
     * take the journal that a power cut left for that of whatever file stands beside it by then. Where another program is
     * reading it stays in the journal, which is as safe, until the next time.
     */
    void foldJournal() {
        try {
            if (journal == null || !Files.exists(journal) || Files.size(journal) == 0) {
                return;
            }
            try (var connection = connect();
                    var statement = connection.createStatement()) {
                statement.execute("PRAGMA busy_timeout = 0");
                try {
                    statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
                } finally {
                    statement.execute("PRAGMA busy_timeout = " + PATIENCE);
                }
            }
        } catch (SQLException | IOException e) {
            // saved it is, in the journal; a disk that is full or gone says so at the next save
        }
    }

    /**
     * From the pool; or, where that has none, made by itself: the longer a server was away, the longer the pool waits
     * between its tries, and whoever asks first after it came back would be told that it is away.
     */
    private Connection connect() throws SQLException {
        try {
            return pool.getConnection();
        } catch (SQLTransientConnectionException e) {
            if (sqlite) {
                throw e;
            }
            var connection = DriverManager.getConnection(pool.getJdbcUrl(), knock);
            try (var statement = connection.createStatement()) {
                statement.execute(WAIT_FOR_LOCKS);
            }
            return connection;
        }
    }

    /**
     * What a rule of a table forbids in a row, and another program left there, is that ranch's fault and is counted on
     * from the history: it closes nothing.
     */
    private void refuseDamaged(DataFolder data) {
        try (var connection = pool.getConnection();
                var statement = connection.createStatement()) {
            statement.execute("PRAGMA ignore_check_constraints = true");
            try (var said = statement.executeQuery("PRAGMA quick_check(1)")) {
                if (said.next() && !said.getString(1).equals("ok")) {
                    throw new BadDatabase(data, false, "this database is damaged: " + said.getString(1), null);
                }
            } finally {
                statement.execute("PRAGMA ignore_check_constraints = false");
            }
        } catch (SQLException e) {
            throw cannotBeOpened(pool.getJdbcUrl(), new IllegalStateException(e));
        }
    }

    /** The list of migrations may say that a table was made which another program has dropped since. */
    private void refuseIncomplete(DataFolder data) {
        try (var connection = pool.getConnection();
                var asked = connection.prepareStatement(
                        "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = ?")) {
            for (var table : Backup.TABLES.keySet()) {
                asked.setString(1, table);
                try (var found = asked.executeQuery()) {
                    if (found.getInt(1) == 0) {
                        throw new BadDatabase(data, false, "a table is missing in this database: " + table, null);
                    }
                }
            }
        } catch (SQLException e) {
            throw cannotBeOpened(pool.getJdbcUrl(), new IllegalStateException(e));
        }
    }

    private static HikariDataSource pool(HikariConfig config) {
        try {
            return new HikariDataSource(config);
        } catch (HikariPool.PoolInitializationException e) {
            if (Stream.iterate((Throwable) e, each -> each != null, Throwable::getCause)
                    .anyMatch(NativeLibraryNotFoundException.class::isInstance)) {
                throw new Refused(
                        "data",
                        withoutPassword(config.getJdbcUrl()),
                        "the library of the database cannot be loaded: " + Temporary.why(),
                        "Make room there, or allow it; or name a data folder on another disk with --data.");
            }
            throw cannotBeOpened(config.getJdbcUrl(), e);
        }
    }

    private static void refuseNoAddress(String url) {
        try {
            DriverManager.getDriver(url);
        } catch (SQLException | RuntimeException e) {
            throw new Refused(
                    "data",
                    withoutPassword(url),
                    "this cannot be read as the address of a PostgreSQL database",
                    "It looks like jdbc:postgresql://server:5432/database?user=name; a percent sign in a password is %25.");
        }
    }

    /** What the driver finds wrong with a setting in the address, which it calls a failed connection like any other. */
    private static Optional<String> wrongSetting(@Nullable Throwable e) {
        return Stream.iterate(e, each -> each != null, Throwable::getCause)
                .map(each -> String.valueOf(each.getMessage()))
                .filter(words -> words.matches("(?s)Invalid \\w+ value: .*"))
                .findFirst();
    }

    private static RuntimeException cannotBeOpened(String url, RuntimeException e) {
        var setting = wrongSetting(e);
        if (setting.isPresent()) {
            return new Refused(
                    "data",
                    withoutPassword(url),
                    "a setting in this address is wrong: " + setting.get(),
                    "Put it right after the question mark, or leave it out.");
        }
        var trouble = Trouble.of(e);
        if (trouble.filter(Trouble.DAMAGED::equals).isPresent()) {
            return e; // the folder knows a way back
        }
        return new Refused(
                "data",
                withoutPassword(url),
                "this database cannot be opened: "
                        + trouble.filter(t -> t != Trouble.NEWER)
                                .map(Trouble::cause)
                                .orElse(String.valueOf(e.getMessage())
                                        .lines()
                                        .findFirst()
                                        .orElse(""))
                                .replaceAll("[.]+$", ""),
                trouble.map(Trouble::fix).orElse("Is the server running, and is it Haywright's own?"));
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
            if (String.valueOf(e.getMessage()).contains("schema history table")) {
                throw new Refused(
                        "data",
                        withoutPassword(pool.getJdbcUrl()),
                        "there are tables in this database, and they are not Haywright's",
                        "Is it the right one? Nothing was changed.");
            }
            throw cannotBeOpened(pool.getJdbcUrl(), e);
        }
    }

    @Override
    public void close() {
        pool.close();
    }

    boolean isClosed() {
        return pool.isClosed();
    }
}
