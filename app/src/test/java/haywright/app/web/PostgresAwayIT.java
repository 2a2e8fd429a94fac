package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A PostgreSQL server that goes away under open pages and comes back. */
class PostgresAwayIT {
    @TempDir
    Path folder;

    private EmbeddedPostgres start(int port) throws IOException {
        return EmbeddedPostgres.builder()
                .setDataDirectory(folder.resolve("postgres"))
                .setCleanDataDirectory(false)
                .setPort(port)
                .start();
    }

    /** As another session of the office's database may do, and go to lunch. */
    @Test
    void aRowThatSomebodyHoldsIsSaidToBeHeldAndNoOtherRanchWaits() throws Exception {
        var postgres = start(0);
        try (var store = Store.at(postgres.getJdbcUrl("postgres", "postgres"), Clock.systemUTC());
                var server = Server.start(
                        OneRanch.desk(store), Home.in(folder.resolve("home")), "127.0.0.1", 0, routes -> {});
                var other = postgres.getPostgresDatabase().getConnection()) {
            var client = new RawClient(server.port(), Home.in(folder.resolve("home")));
            var held = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"))
                    .header("Location");
            var free = client.submit(client.get("/"), "/ranches", Map.of("name", "Second Ranch"))
                    .header("Location");
            var form = client.get(held + "lots/new/bales");
            other.setAutoCommit(false);
            try (var statement = other.createStatement()) {
                statement.execute("SELECT * FROM ranch WHERE name = 'Cold Spring Ranch' FOR UPDATE");
            }
            var waiting = CompletableFuture.supplyAsync(
                    () -> client.submit(form, held + "lots/new/bales", OneRanch.hay("210", "1,250 lb")));
            var meanwhile = client.submit(
                    client.get(free + "lots/new/bales"), free + "lots/new/bales", OneRanch.hay("210", "1,250 lb"));
            assertThat(meanwhile.status()).isEqualTo(303);
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(waiting).as("it waits for the one who holds the row").isNotDone();
            var said = waiting.get();
            assertThat(said.status()).isEqualTo(503);
            assertThat(said.body())
                    .contains("Another program is holding the database", "value=\"Ditch-side stack\"")
                    .contains("action=\"" + held + "lots/new/bales\"");
            other.rollback();
            assertThat(client.submit(said, held + "lots/new/bales", OneRanch.hay("210", "1,250 lb"))
                            .status())
                    .isEqualTo(303);
        } finally {
            postgres.close();
        }
    }

    @Test
    void aFormComesBackWhileItIsAwayAndTheNextTryIsSaved() throws IOException {
        var postgres = start(0);
        int port = postgres.getPort();
        try (var store = Store.at(postgres.getJdbcUrl("postgres", "postgres"), Clock.systemUTC());
                var server = Server.start(
                        OneRanch.desk(store), Home.in(folder.resolve("home")), "127.0.0.1", 0, routes -> {})) {
            var client = new RawClient(server.port(), Home.in(folder.resolve("home")));
            var path = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"))
                    .header("Location");
            var form = client.get(path + "lots/new/bales");

            postgres.close();
            var round = client.get("/");
            assertThat(round.status()).isEqualTo(503);
            assertThat(round.body()).contains("The database does not answer");
            var away = client.submit(form, path + "lots/new/bales", OneRanch.hay("210", "1,250 lb"));
            assertThat(away.status()).isEqualTo(503);
            assertThat(away.body()).contains("The database does not answer", "value=\"Ditch-side stack\"");

            postgres = start(port);
            var saved = client.submit(away, path + "lots/new/bales", OneRanch.hay("210", "1,250 lb"));
            assertThat(saved.status()).as("the first try: %s", saved.body()).isEqualTo(303);

            // a restart that nobody noticed: every connection of the pool is dead
            postgres.close();
            postgres = start(port);
            assertThat(client.get(path + "lots").body()).contains("Ditch-side stack");
        } finally {
            postgres.close();
        }
    }
}
