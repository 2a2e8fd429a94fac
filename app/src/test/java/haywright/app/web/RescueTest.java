package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.server.Rescue;
import haywright.app.store.BadDatabase;
import haywright.app.store.Home;
import haywright.app.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page there is while the database is damaged. */
class RescueTest {
    @TempDir
    private Path folder;

    private Rescue rescue;
    private RawClient client;

    @BeforeEach
    void damage() throws Exception {
        try (var store = Store.inFolder(folder, Clock.systemUTC())) {
            store.ranches().create(TinLantern.ranch());
            store.dailyCopy();
        }
        Files.writeString(folder.resolve("haywright.db"), "no database ".repeat(1000));
        rescue = Rescue.start(bad(), Home.in(folder), "127.0.0.1", 0, SHORT);
        client = new RawClient(rescue.port(), Home.in(folder));
    }

    private static final Deadline.Patience SHORT = new Deadline.Patience(Duration.ofMinutes(1), Duration.ofSeconds(1));

    private BadDatabase bad() {
        try (var store = Store.inFolder(folder, Clock.systemUTC())) {
            throw new AssertionError("it was damaged");
        } catch (BadDatabase bad) {
            return bad;
        }
    }

    @AfterEach
    void close() {
        rescue.close();
    }

    @Test
    void itsButtonPutsTheNewestCopyInPlace() {
        var page = client.get("/ranch/anything");
        assertThat(page.status()).isEqualTo(503);
        assertThat(client.send("POST", "/restore-newest", Map.of(), "token=guessed")
                        .status())
                .isEqualTo(403);
        assertThat(client.submit(page, "/restore-newest", Map.of()).status()).isEqualTo(200);
        var meanwhile = client.get("/");
        assertThat(meanwhile.body()).contains("<h1>Done").doesNotContain("cannot be used</h1>");
        assertThat(meanwhile.header("Refresh")).isEqualTo("1; url=/");
        try (var store = Store.inFolder(folder, Clock.systemUTC())) {
            assertThat(store.ranches().list()).hasSize(1);
        }
    }

    /** The pages have their limits, and so has this one. */
    @Test
    void whatIsHalfSentIsCutOffHereToo() {
        var half = Map.of("Content-Length", "1000", "Content-Type", "application/x-www-form-urlencoded");
        var answer = client.send("POST", "/restore-newest", half, "token=");
        assertThat(answer.status()).isEqualTo(408);
        assertThat(answer.header("Content-Security-Policy")).contains("default-src 'none'");
        assertThat(answer.header("Server")).isEmpty();
    }
}
