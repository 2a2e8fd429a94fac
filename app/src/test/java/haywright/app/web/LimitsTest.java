package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
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

    private static final int FILES = 5;
    private static final CountDownLatch CAME = new CountDownLatch(FILES);
    private static final Semaphore READ = new Semaphore(0);
    private static final AtomicInteger INSIDE = new AtomicInteger();

    private static Store store;
    private static Home home;
    /** It waits for what is sent longer than any test lasts. */
    private static Server server;
    /** Its limits are a second, and only what waits for ever is asked of it. */
    private static Server impatient;

    @BeforeAll
    static void start() {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        var patient = new Deadline.Patience(Duration.ofMinutes(10), Duration.ofMinutes(10));
        server = Server.start(OneRanch.desk(store), home, "127.0.0.1", 0, patient, routes -> {
            routes.get("/deep", http -> http.result(String.valueOf(deep(1))));
            routes.before("/held", http -> CAME.countDown());
            routes.post("/held", http -> {
                int inside = INSIDE.incrementAndGet();
                CAME.await();
                http.result(Integer.toString(inside));
                INSIDE.decrementAndGet();
            });
            routes.post("/read", http -> {
                READ.acquire();
                http.result("read");
            });
            routes.get("/gone", http -> {
                throw new NoClassDefFoundError("a class that is missing");
            });
        });
        impatient = Server.start(
                OneRanch.desk(store),
                home,
                "127.0.0.1",
                0,
                new Deadline.Patience(Duration.ofSeconds(1), Duration.ofSeconds(1)),
                routes -> {
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

    /** All of them are still being waited for when the others have been answered. */
    @Test
    void halfSentFormsKeepNobodyWaiting() throws Exception {
        var client = client();
        try (var half = new HalfSent(30, "name=")) {
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(client.submit(client.get("/ranches/new"), "/ranches", Map.of("name", "Whole"))
                            .status())
                    .isNotEqualTo(503);
            assertThat(inPieces(client, 20_000)).isEqualTo(422);
            assertThat(half.answered()).isZero();
        }
    }

    /** More than is taken in beforehand, so that threads wait for the rest; whoever goes on sending is not sent away. */
    @Test
    void halfSentFilesLeaveRoomForOthers() throws Exception {
        var client = client();
        try (var half = new HalfSent(30, "name=" + "x".repeat(300_000))) {
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(inPieces(client, 900_000)).isEqualTo(422);
            assertThat(half.answered()).isLessThan(30);
        }
    }

    /** Sends a file that is no ranch, a piece at a time, and returns what the answer begins with. */
    private static int inPieces(RawClient client, int length) throws Exception {
        var token = client.token(client.get("/"));
        var line = "--part\r\nContent-Disposition: form-data; name=";
        var body = line + "\"token\"\r\n\r\n" + token + "\r\n" + line + "\"file\"; filename=\"a.json\"\r\n\r\n"
                + "{".repeat(length) + "\r\n--part--\r\n";
        try (var socket = new Socket("127.0.0.1", server.port())) {
            socket.setTcpNoDelay(true);
            client.half(socket, "/import", "multipart/form-data; boundary=part", body.length(), "");
            for (int from = 0; from < body.length(); from += 5000) {
                Thread.sleep(1); // a piece of its own
                var piece = body.substring(from, Math.min(body.length(), from + 5000));
                socket.getOutputStream().write(piece.getBytes(StandardCharsets.UTF_8));
            }
            return status(socket);
        }
    }

    private static int status(Socket socket) throws IOException {
        return Integer.parseInt(
                new String(socket.getInputStream().readNBytes(12), StandardCharsets.UTF_8).substring(9));
    }

    /** Forms of which the beginning was sent, to the server that waits for the rest longer than any test lasts. */
    private static final class HalfSent implements AutoCloseable {
        private final List<Socket> open = new ArrayList<>();

        HalfSent(int many, String beginning) throws IOException {
            for (int i = 0; i < many; i++) {
                var socket = new Socket("127.0.0.1", server.port());
                open.add(socket);
                client().half(socket, "/ranches", "application/x-www-form-urlencoded", 500_000, beginning);
            }
        }

        int answered() throws IOException {
            int answered = 0;
            for (var socket : open) {
                answered += socket.getInputStream().available() > 0 ? 1 : 0;
            }
            return answered;
        }

        @Override
        public void close() throws IOException {
            for (var socket : open) {
                socket.close();
            }
        }
    }

    /** Each may unpack to half of the memory. The first is held until all have come. */
    @Test
    void filesAreWorkedOnOneAfterTheOther() throws Exception {
        var client = client();
        var page = client.get("/");
        var threads = Executors.newFixedThreadPool(FILES);
        try {
            var sent = new ArrayList<Future<RawClient.Answer>>();
            for (int i = 0; i < FILES; i++) {
                sent.add(threads.submit(() -> client.upload(page, "/held", "a.json", "{}")));
            }
            for (var one : sent) {
                assertThat(one.get().body()).isEqualTo("1");
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void filesBeingReadKeepNobodyWaitingForAPage() throws Exception {
        int many = 40;
        var client = client();
        var page = client.get("/");
        var threads = Executors.newFixedThreadPool(many);
        try {
            var sent = new ArrayList<Future<RawClient.Answer>>();
            for (int i = 0; i < many; i++) {
                sent.add(threads.submit(() -> client.upload(page, "/read", "a.pdf", "%PDF")));
            }
            while (!READ.hasQueuedThreads()) {
                Thread.sleep(10);
            }
            for (int i = 0; i < many; i++) {
                assertThat(client.get("/").status()).isEqualTo(200);
            }
            READ.release(many);
            for (var one : sent) {
                assertThat(one.get().body()).isEqualTo("read");
            }
        } finally {
            READ.release(many);
            threads.shutdownNow();
        }
    }

    @Test
    void whatTricklesInIsCutOff() throws Exception {
        try (var socket = new Socket("127.0.0.1", impatient.port())) {
            slow().half(socket, "/ranches", "application/x-www-form-urlencoded", 500_000, "name=");
            for (int i = 0; i < 1000 && socket.getInputStream().available() == 0; i++) {
                Thread.sleep(20);
                socket.getOutputStream().write('a');
            }
            assertThat(status(socket)).isEqualTo(408);
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

    @Test
    void theLogSaysWhereItFailedAndNothingThatWasTyped(@TempDir Path home) throws Exception {
        var typed = "north stack, behind the old barn";
        var row = new SQLException("Failing row contains (1, " + typed + ").", "23502", 7);
        Home.written(
                home, "POST /ranches", new IllegalStateException("could not keep " + typed, new RuntimeException(row)));
        assertThat(Files.readString(home.resolve("errors.log")))
                .contains(
                        "IllegalStateException", "RuntimeException", "SQLException", "23502", "\tat ", "POST /ranches")
                .doesNotContain(typed);
    }

    /** Where what failed cannot be written down, nobody at the terminal meets a trace for it either. */
    @Test
    void whatCannotBeLoggedIsSaidInALine(@TempDir Path full) throws Exception {
        Files.createDirectories(full.resolve("errors.log/in the way"));
        var terminal = new ByteArrayOutputStream();
        var before = System.err;
        String said;
        System.setErr(new PrintStream(terminal, true, StandardCharsets.UTF_8));
        try {
            said = Home.written(full, "GET /", new IllegalStateException("a secret of the house"));
        } finally {
            System.setErr(before);
        }
        assertThat(terminal.toString(StandardCharsets.UTF_8) + said).doesNotContain("\tat ", "secret of the house");
        assertThat(said).contains("errors.log", "IllegalStateException at LimitsTest.java:");
    }
}
