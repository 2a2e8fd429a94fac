package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.workings.Refused;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What another site in the same browser, or another program, must not be able to do. */
class GateTest {
    private static Store store;
    private static Server server;
    private static Home home;

    @BeforeAll
    static void start(@TempDir Path folder) {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(
                OneRanch.desk(store),
                home,
                "127.0.0.1",
                0,
                routes -> routes.get("/boom", http -> {
                    throw new IllegalStateException("secret of the house");
                }));
    }

    @AfterAll
    static void stop() {
        server.close();
        store.close();
    }

    @Test
    void aTakenPortIsSaidInWords() {
        assertThatThrownBy(() -> Server.start(OneRanch.desk(store), home, "127.0.0.1", server.port(), routes -> {}))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("listens there");
    }

    private static RawClient client() {
        return new RawClient(server.port(), home);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "evil.example",
                "evil.example:8470",
                "127.0.0.1.evil.example",
                "localhost.evil.example",
                "0.0.0.0"
            })
    void aForeignNameThatPointsHereIsTurnedAway(String host) {
        assertThat(client().send("GET", "/", Map.of("Host", host), "").status()).isEqualTo(421);
        assertThat(client().send("GET", "/static/haywright.css", Map.of("Host", host), "")
                        .status())
                .isEqualTo(421);
        assertThat(client().send("POST", "/ranches", Map.of("Host", host), "name=x")
                        .status())
                .isEqualTo(421);
    }

    /** It can be copied, and not be sent from there: it may be another site's. */
    @Test
    void whatWasTypedIntoAFormThatIsNotLetInComesBackWithoutAToken() {
        var own = Map.of("Origin", "http://127.0.0.1:" + server.port());
        var typed = "name=Willow+%3Cb%3EFork&token=wrong";
        for (var answer : List.of(
                new RawClient(server.port()).send("POST", "/ranches", own, typed),
                client().send("POST", "/ranches", own, typed),
                client().send("POST", "/ranches", Map.of("Origin", "http://evil.example"), typed),
                client().send("POST", "/ranches", Map.of("Host", "evil.example"), typed))) {
            assertThat(answer.status()).isIn(401, 403, 421);
            assertThat(answer.body()).contains("Willow &lt;b&gt;Fork").doesNotContain("name=\"token\"");
        }
    }

    @Test
    void soDoesWhatCameBesideAFile() {
        var line = "--part\r\nContent-Disposition: form-data; name=";
        var body = line + "\"shows\"\r\n\r\nNorth side, Oct 6\r\n" + line
                + "\"file\"; filename=\"a.jpg\"\r\n\r\nxx\r\n--part--\r\n";
        var type = Map.of("Content-Type", "multipart/form-data; boundary=part");
        var answer = new RawClient(server.port()).send("POST", "/ranches", type, body);
        assertThat(answer.status()).isIn(401, 403);
        assertThat(answer.body()).contains("North side, Oct 6").doesNotContain("name=\"token\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost", "127.0.0.1", "[::1]", "LOCALHOST"})
    void theNamesOfThisMachineAreAnswered(String host) {
        assertThat(client().send("GET", "/", Map.of("Host", host + ":" + server.port()), "")
                        .status())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/nothing",
                "/ranch/00000000-0000-0000-0000-000000000099",
                "/ranch/00000000-0000-0000-0000-000000000099/lots",
                "/static/haywright.css",
                "/static/none.css",
                "/demo",
                "/api/compute/basis"
            })
    void aHeadIsAnsweredAsAGet(String path) {
        var client = client();
        client.get("/");
        int get = client.send("GET", path, Map.of(), "").status();
        assertThat(client.send("HEAD", path, Map.of(), "").status()).isEqualTo(get);
        assertThat(client.send("HEAD", path, Map.of(), "").body()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"bogus", "\"b\"", "*", ""})
    void lettersInNoKnownCodeAreSaid(String charset) {
        for (var path : new String[] {"/ranches", "/api/compute/basis"}) {
            var type = Map.of("Content-Type", "application/json; charset=" + charset);
            assertThat(client().send("POST", path, type, "{}").status()).isEqualTo(415);
        }
    }

    @Test
    void jsonWithoutTheKeyOrItsTypeIsToldSo() {
        var client = client();
        client.get("/");
        for (var type : new String[] {"application/json", "application/x-www-form-urlencoded"}) {
            var answer = client.send("POST", "/ranches", Map.of("Content-Type", type), "{\"name\":\"Stolen\"}");
            assertThat(answer.status()).isEqualTo(403);
            assertThat(answer.body()).contains("application/json", "Bearer");
        }
    }

    @Test
    void aFormWithoutItsTokenIsRefused() {
        var client = client();
        client.get("/");
        assertThat(client.send("POST", "/ranches", Map.of(), "name=Stolen").status())
                .isEqualTo(403);
        assertThat(client.send("POST", "/ranches", Map.of(), "name=Stolen&token=guessed")
                        .status())
                .isEqualTo(403);
        assertThat(client().send("POST", "/ranches", Map.of(), "name=Stolen&token=")
                        .status())
                .isEqualTo(403);
        assertThat(client.get("/").body()).doesNotContain("Stolen");
    }

    @Test
    void aFormFromAnotherSiteIsRefusedEvenWithTheToken() {
        var client = client();
        var token = client.get("/").body().replaceAll("(?s).*?name=\"token\" value=\"([^\"]+)\".*", "$1");
        var body = "name=Stolen&token=" + token;
        for (var from :
                new String[] {"http://evil.example", "null", "http://127.0.0.1:1", "https://127.0.0.1.evil.example"}) {
            assertThat(client.send("POST", "/ranches", Map.of("Origin", from), body)
                            .status())
                    .as(from)
                    .isEqualTo(403);
        }
        for (var site : new String[] {"cross-site", "same-site"}) {
            assertThat(client.send("POST", "/ranches", Map.of("Sec-Fetch-Site", site), body)
                            .status())
                    .as(site)
                    .isEqualTo(403);
        }
        assertThat(client.get("/").body()).doesNotContain("Stolen");
    }

    @Test
    void theCookieIsOutOfReachOfScriptsAndOtherSites() {
        assertThat(client().get("/").header("Set-Cookie")).contains("HttpOnly").contains("SameSite=Strict");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/nothing", "/static/haywright.css", "/boom"})
    void everyAnswerCarriesThePolicy(String path) {
        var answer = client().get(path);
        assertThat(answer.header("Content-Security-Policy"))
                .contains("default-src 'none'")
                .contains("frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Cross-Origin-Opener-Policy")).isEqualTo("same-origin");
        assertThat(answer.header("Cross-Origin-Resource-Policy")).isEqualTo("same-origin");
        assertThat(answer.header("Server")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/static/../haywright.db",
                "/static/..%2fhaywright.db",
                "/static/%2e%2e/%2e%2e/etc/passwd",
                "/static/....//etc/passwd",
                "/static//etc/passwd",
                "/static/haywright.css/../../Server.class"
            })
    void noPathLeadsToAFile(String path) {
        assertThat(client().get(path).status()).isBetween(400, 404);
    }

    @Test
    void tooMuchAtOnceIsRefusedBeforeItIsRead() {
        var huge = Map.of("Content-Length", "300000000", "Content-Type", "multipart/form-data; boundary=x");
        assertThat(client().send("POST", "/import", huge, "--x").body())
                .contains("300 MB were sent", "67 MB", "choose another");
        var length = Map.of("Content-Length", Long.toString(Gate.FORM_LIMIT + 1424L));
        var form = client().send("POST", "/ranches", length, "name=x");
        assertThat(form.status()).isEqualTo(413);
        assertThat(form.body()).contains("1,050 kB", "1,049 kB").doesNotContain("right file");
        assertThat(client().send("POST", "/ranches", Map.of("Transfer-Encoding", "chunked"), "")
                        .status())
                .isEqualTo(411);
    }

    @Test
    void whatFailsInsideSaysNothingOfTheInside() {
        var answer = client().get("/boom");
        assertThat(answer.status()).isEqualTo(500);
        assertThat(answer.body())
                .contains("Something went wrong")
                .doesNotContain("secret")
                .doesNotContain("at haywright");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/nothing", "/ranch/nobody/", "/ranch/00000000-0000-0000-0000-000000000001/lots"})
    void whatIsNotThereIsSaidInAPage(String path) {
        var answer = client().get(path);
        assertThat(answer.status()).isEqualTo(404);
        assertThat(answer.body()).contains("No such page").contains("id=\"main\"");
    }
}
