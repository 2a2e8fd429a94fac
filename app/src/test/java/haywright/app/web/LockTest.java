package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.compute.ComputeHttp;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who is let in: whoever can read the data folder, and nobody else on the machine. */
class LockTest {
    private static final Map<String, String> JSON = Map.of("Content-Type", "application/json");
    private static final String QUESTION = "{\"adf_pct_dm\":28,\"ndf_pct_dm\":35}";

    @TempDir
    private static Path folder;

    private static Store store;
    private static Home home;
    private static Server server;

    @BeforeAll
    static void start() {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(
                OneRanch.desk(store), home, "127.0.0.1", 0, new ComputeHttp(Clock.systemUTC(), home::log)::register);
    }

    @AfterAll
    static void stop() {
        server.close();
        store.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/api", "/nothing", "/echo/POUND/x?x=1", "/?key=", "/?key=guessed"})
    void whoeverBringsNothingGetsNothing(String path) {
        var answer = new RawClient(server.port()).get(path);
        assertThat(answer.status()).isEqualTo(401);
        assertThat(answer.header("Set-Cookie")).isEmpty();
        assertThat(answer.header("WWW-Authenticate")).startsWith("Bearer");
        assertThat(answer.body()).doesNotContain(home.token(), home.key(), home.cookie());
    }

    @Test
    void thePageSaysHowToOpenIt() {
        assertThat(new RawClient(server.port()).get("/").body()).contains("key=", "haywright key", "name=\"key\"");
        assertThat(new RawClient(server.port()).get("/static/haywright.css").status())
                .isEqualTo(200);
    }

    @Test
    void theAddressWithTheKeyLeavesACookieAndGoesOnWithoutTheKey() {
        var browser = new RawClient(server.port());
        var entered = browser.get("/?key=" + home.key());
        assertThat(entered.status()).isEqualTo(303);
        assertThat(entered.header("Location")).endsWith("/").doesNotContain("key");
        assertThat(entered.header("Set-Cookie"))
                .contains("HttpOnly", "SameSite=Strict", "Max-Age=")
                .doesNotContain(home.key());
        assertThat(browser.get("/").status()).isEqualTo(200);
    }

    @Test
    void aPathThatLooksLikeAnotherMachineStaysHere() {
        var entered = new RawClient(server.port()).get("//evil.example/?key=" + home.key());
        assertThat(entered.header("Location")).doesNotContain("//evil");
    }

    @Test
    void fromAFileTheBrowserIsLedOnByAPage() {
        var entered = new RawClient(server.port())
                .send("GET", "/?key=" + home.key(), Map.of("Sec-Fetch-Site", "cross-site"), "");
        assertThat(entered.status()).isEqualTo(200);
        assertThat(entered.header("Set-Cookie")).isNotEmpty();
        assertThat(entered.body()).contains("http-equiv=\"refresh\"", "url=/\"").doesNotContain(home.key());
    }

    @Test
    void theSameBrowserIsLetInAfterARestart() {
        var browser = new RawClient(server.port(), home);
        var page = browser.get("/");
        var again = Server.start(OneRanch.desk(store), Home.in(folder), "127.0.0.1", 0, routes -> {});
        try {
            var after = new RawClient(again.port(), browser);
            assertThat(after.get("/").status()).isEqualTo(200);
            assertThat(after.submit(page, "/ranches", Map.of("name", "Kept open"))
                            .status())
                    .as("a form that was open meanwhile")
                    .isEqualTo(303);
        } finally {
            again.close();
        }
    }

    @Test
    void twoFoldersInOneBrowserDoNotLockEachOtherOut(@TempDir Path other) {
        assertThat(Home.in(other).cookieName()).isNotEqualTo(home.cookieName());
        assertThat(Home.in(other).cookie()).isNotEqualTo(home.cookie());
    }

    @Test
    void aScriptSendsTheKey() {
        var script = new RawClient(server.port());
        var key = Map.of("Authorization", "Bearer " + home.key(), "Content-Type", "application/json");
        assertThat(script.send("POST", "/api/compute/relative-feed-value", JSON, QUESTION)
                        .status())
                .isEqualTo(401);
        var answer = script.send("POST", "/api/compute/relative-feed-value", key, QUESTION);
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.body()).contains("rfv");
        var wrong = Map.of("Authorization", "Bearer " + home.cookie(), "Content-Type", "application/json");
        assertThat(script.send("POST", "/api/compute/relative-feed-value", wrong, QUESTION)
                        .status())
                .isEqualTo(401);
    }

    @Test
    void openedToTheMachineItAsksNoKeyAndStillItsFormToken() {
        var open = Server.start(OneRanch.desk(store), home.open(), "127.0.0.1", 0, routes -> {});
        try {
            var anybody = new RawClient(open.port());
            var page = anybody.get("/");
            assertThat(page.status()).isEqualTo(200);
            assertThat(anybody.send("POST", "/ranches", Map.of(), "name=Stolen").status())
                    .isEqualTo(403);
            assertThat(anybody.submit(page, "/ranches", Map.of("name", "Mine")).status())
                    .isEqualTo(303);
        } finally {
            open.close();
        }
    }

    @Test
    void aDamagedKeyIsMadeAnew(@TempDir Path other) throws Exception {
        var first = Home.in(other).key();
        assertThat(Home.in(other).key()).isEqualTo(first).hasSize(43);
        Files.writeString(other.resolve("key"), "half");
        assertThat(Home.in(other).key()).hasSize(43).isNotEqualTo(first);
        // it may be somebody's file of that name
        try (var all = Files.list(other)) {
            assertThat(all.filter(file -> file.getFileName().toString().startsWith("key-set-aside-")))
                    .singleElement()
                    .satisfies(aside -> assertThat(aside).hasContent("half"));
        }
    }

    @Test
    void aPageThatIsTheSameIsNotSentTwice() {
        var browser = new RawClient(server.port(), home);
        var page = browser.get("/");
        var tag = Map.of("If-None-Match", page.header("ETag"));
        var again = browser.send("GET", "/", tag, "");
        assertThat(again.status()).isEqualTo(304);
        assertThat(again.body()).isEmpty();
        assertThat(page.header("Cache-Control")).contains("private");
        browser.submit(page, "/ranches", Map.of("name", "One more"));
        assertThat(browser.send("GET", "/", tag, "").status()).isEqualTo(200);
    }
}
