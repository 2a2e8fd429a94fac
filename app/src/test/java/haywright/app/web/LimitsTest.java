package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.store.Store;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What comes too slowly, too long or broken, and what fails inside: answered in our words, and others go on. */
class LimitsTest {
    @TempDir
    private static Path folder;

    private static final CountDownLatch INTERRUPTED = new CountDownLatch(1);
    private static final AtomicBoolean STOP = new AtomicBoolean();

    private static Store store;
    private static Home home;
    private static Server server;
    /** Its limit is a second, and only what waits for ever is asked of it. */
    private static Server impatient;

    @BeforeAll
    static void start() {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = Server.start(OneRanch.desk(store), home, "127.0.0.1", 0, routes -> {
            routes.get("/deep", http -> http.result(String.valueOf(deep(1))));
            routes.get("/gone", http -> {
                throw new NoClassDefFoundError("a class that is missing");
            });
        });
        impatient = Server.start(OneRanch.desk(store), home, "127.0.0.1", 0, Duration.ofSeconds(1), routes -> {
            routes.get("/sleeps", http -> {
                try {
                    Thread.sleep(60_000);
                } catch (InterruptedException e) {
                    INTERRUPTED.countDown();
                    throw e;
                }
            });
            routes.get("/deaf", http -> {
                while (!STOP.get()) {
                    Thread.onSpinWait();
                }
            });
        });
    }

    @AfterAll
    static void stop() {
        server.close();
        impatient.close();
        store.close();
    }

    private static int deep(int n) {
        return n < Integer.MAX_VALUE ? deep(n + 1) + 1 : 0;
    }

    private static RawClient client() {
        return new RawClient(server.port(), home);
    }

    private static RawClient slow() {
        return new RawClient(impatient.port(), client());
    }

    private static void saysSoUnderOurHeaders(RawClient.Answer answer, int status) {
        assertThat(answer.status()).isEqualTo(status);
        assertThat(answer.header("Content-Security-Policy")).contains("default-src 'none'");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Server")).isEmpty();
        assertThat(answer.body())
                .contains("<h1>" + Errors.title(status))
                .doesNotContainIgnoringCase("jetty")
                .doesNotContain("haywright.app");
    }

    @Test
    void whatTakesTooLongIsInterruptedAndAnswered() throws Exception {
        saysSoUnderOurHeaders(slow().get("/sleeps"), 503);
        assertThat(INTERRUPTED.await(10, TimeUnit.SECONDS)).isTrue();
        assertThat(client().get("/").status()).isEqualTo(200);
    }

    @Test
    void whatCannotBeInterruptedIsAnsweredAllTheSame() {
        try {
            saysSoUnderOurHeaders(slow().get("/deaf"), 503);
        } finally {
            STOP.set(true);
        }
    }

    @Test
    void whatIsHalfSentIsCutOff() {
        var half = Map.of("Content-Length", "1000", "Content-Type", "application/x-www-form-urlencoded");
        saysSoUnderOurHeaders(slow().send("POST", "/ranches", half, "name=Half"), 408);
        assertThat(client().get("/").body()).doesNotContain("Half");
    }

    @Test
    void halfSentFormsKeepNobodyWaiting() throws Exception {
        var client = client();
        var open = new ArrayList<Socket>();
        try {
            for (int i = 0; i < 30; i++) {
                var socket = new Socket("127.0.0.1", server.port());
                socket.setSoTimeout(15_000);
                open.add(socket);
                client.half(socket, "/ranches", 500_000, "name=");
            }
            var begun = Instant.now();
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(client.submit(client.get("/ranches/new"), "/ranches", Map.of("name", "Whole"))
                            .status())
                    .isNotEqualTo(503);
            assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(4));
            var answers = new ArrayList<String>();
            for (var socket : open) {
                var answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
                answers.add(answer.substring(9, 12));
            }
            assertThat(answers).containsOnly("408", "503").contains("408", "503");
            assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(12));
        } finally {
            for (var socket : open) {
                socket.close();
            }
        }
    }

    @Test
    void whatTricklesInIsCutOff() throws Exception {
        try (var socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(15_000);
            client().half(socket, "/ranches", 500_000, "name=");
            for (int i = 0; i < 60 && socket.getInputStream().available() == 0; i++) {
                Thread.sleep(200);
                socket.getOutputStream().write('a');
            }
            var head = new String(socket.getInputStream().readNBytes(12), StandardCharsets.UTF_8);
            assertThat(head).endsWith("408");
        }
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "no request line  | ' '                                                     | 400",
                "a strange version| 'GET / HTTP/9.9~Host: 127.0.0.1~~'                      | 505",
                "no host          | 'GET / HTTP/1.1~~'                                      | 400",
                "a wild escape    | 'GET /%zz HTTP/1.1~Host: 127.0.0.1~~'                   | 400",
                "two lengths      | 'POST / HTTP/1.1~Host: 127.0.0.1~Content-Length: 1~Content-Length: 2~~' | 400",
                "a zero byte      | 'GET /a%00b HTTP/1.1~Host: 127.0.0.1~~'                 | 400"
            })
    void aBrokenRequestIsAnsweredInOurWords(String what, String request, int status) {
        var sent = (request.isBlank() ? "nonsense\r\n\r\n" : request).replace("~", "\r\n");
        saysSoUnderOurHeaders(client().exchange(sent), status);
    }

    @Test
    void tooLongAHeadIsRefused() {
        var client = client();
        saysSoUnderOurHeaders(client.get("/" + "a".repeat(40_000)), 414);
        saysSoUnderOurHeaders(client.send("GET", "/", Map.of("X-Long", "a".repeat(40_000)), ""), 431);
    }

    @ParameterizedTest
    @CsvSource({"/deep, StackOverflowError", "/gone, NoClassDefFoundError"})
    void anErrorOfTheMachineIsLoggedWhereThePageSays(String path, String error) throws Exception {
        var answer = client().get(path);
        saysSoUnderOurHeaders(answer, 500);
        assertThat(answer.body()).doesNotContain(error);
        var number = answer.body().replaceAll("(?s).* error ([0-9A-F]{6})\\..*", "$1");
        var log = folder.resolve("errors.log");
        assertThat(answer.body()).contains(log.toString());
        assertThat(Files.readString(log)).contains("error " + number + " at GET " + path, error);
    }
}
