package haywright.app.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

/** The contract on PostgreSQL: the one that TEST_PG_URL names, or one started for the test. */
class PostgresStoreIT extends StoreDamageContract {
    private static EmbeddedPostgres postgres;
    private static String url;

    @BeforeAll
    static void startServer() throws IOException {
        var given = System.getenv("TEST_PG_URL");
        if (given == null || given.isBlank()) {
            postgres = EmbeddedPostgres.builder().start();
            url = postgres.getJdbcUrl("postgres", "postgres");
        } else {
            url = given;
        }
    }

    @AfterAll
    static void stopServer() throws IOException {
        if (postgres != null) {
            postgres.close();
        }
    }

    /** A fresh test instance begins with an empty database. */
    private boolean emptied;

    @Override
    Store openAt(Clock clock) {
        if (!emptied) {
            empty();
            emptied = true;
        }
        return Store.at(url, clock);
    }

    @Override
    void allowNull(String table, String column) {
        store.jdbi().useHandle(h -> h.execute("ALTER TABLE " + table + " ALTER " + column + " DROP NOT NULL"));
    }

    private static void empty() {
        try (var connection = DriverManager.getConnection(url);
                var statement = connection.createStatement()) {
            statement.execute("DROP SCHEMA public CASCADE; CREATE SCHEMA public");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
