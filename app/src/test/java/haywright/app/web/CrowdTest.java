package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Store;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Many more are connected than there are places for, and every one of them hangs: whoever asks is answered all the same. */
class CrowdTest {
    @TempDir
    private static Path folder;

    private static final int MANY = 1000;
    private static final byte[] MUCH = new byte[20_000_000];
    private static final CountDownLatch WORKING = new CountDownLatch(1);
    private static final AtomicInteger COUNTED = new AtomicInteger();
    private static final CountDownLatch GO_ON = new CountDownLatch(1);

    private static Store store;
    private static Home home;
    /** It waits longer than any test lasts, so that nobody goes because of the time. */
    private static Server server;

    @BeforeAll
    static void start() {
        store = Store.inFolder(folder, Clock.systemUTC());
        home = Home.in(folder);
        server = server(Duration.ofMinutes(10));
    }

    private static Server server(Duration patience) {
        return Server.start(
                OneRanch.desk(store), home, "127.0.0.1", 0, new Deadline.Patience(patience, patience), routes -> {
                    routes.get("/much", http -> http.result(MUCH));
                    routes.get("/counted", http -> {
                        COUNTED.incrementAndGet();
                        Thread.sleep(5);
                        http.result("counted");
                    });
                    routes.get("/works", http -> {
                        WORKING.countDown();
                        GO_ON.await();
                        http.result("done");
                    });
                });
    }

    @AfterAll
    static void stop() {
        server.close();
        store.close();
    }

    private enum Hanging {
        IN_SILENCE,
        IN_A_HEAD,
        AFTER_AN_ANSWER,
        IN_A_FORM,
        IN_A_FILE,
        BEFORE_A_LONG_ANSWER;

        Socket begin(RawClient client) throws IOException {
            var socket = new Socket();
            socket.setSoTimeout(20_000);
            socket.setReceiveBufferSize(4096);
            socket.connect(new InetSocketAddress("127.0.0.1", server.port()), 20_000);
            switch (this) {
                case IN_SILENCE -> {}
                case IN_A_HEAD -> write(socket, "GET / HTTP/1.1\r\nHost: 127.0.0.1");
                case AFTER_AN_ANSWER -> {
                    write(socket, "GET /static/none HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
                    assertThat(socket.getInputStream().read()).isEqualTo('H');
                }
                case IN_A_FORM ->
                    client.half(socket, "/ranches", "application/x-www-form-urlencoded", 500_000, "name=");
                case IN_A_FILE ->
                    client.half(socket, "/import", "multipart/form-data; boundary=part", 5_000_000, "--part\r\n");
                case BEFORE_A_LONG_ANSWER -> client.ask(socket, "/much");
            }
            return socket;
        }
    }

    private static void write(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.UTF_8));
        socket.getOutputStream().flush();
    }

    @ParameterizedTest
    @EnumSource
    void whoeverAsksIsAnsweredHoweverManyHang(Hanging how) throws Exception {
        var client = new RawClient(server.port(), home);
        try (var crowd = new Crowd(how, client)) {
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(crowd.size()).isEqualTo(MANY);
        }
    }

    /** By how many were answered before, not by a clock. */
    @ParameterizedTest
    @ValueSource(ints = {60, 300})
    void whoeverAsksOneAfterAnotherWaitsBehindWhoeverOpensAPage(int connections) throws Exception {
        var client = new RawClient(server.port(), home);
        COUNTED.set(0);
        var flood = new ArrayList<Socket>();
        try {
            for (int i = 0; i < connections; i++) {
                var socket = new Socket("127.0.0.1", server.port());
                flood.add(socket);
                try {
                    for (int n = 0; n < 200; n++) {
                        client.ask(socket, "/counted");
                    }
                } catch (IOException e) {
                    // it had to go: there are more than there are places for
                }
            }
            while (COUNTED.get() < 10 * connections) {
                Thread.sleep(10);
            }
            int before = COUNTED.get();
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(COUNTED.get() - before).isLessThan(connections * 10);
        } finally {
            for (var socket : flood) {
                socket.close();
            }
        }
    }

    @Test
    void whatIsBeingWorkedOnKeepsItsPlace() throws Exception {
        var client = new RawClient(server.port(), home);
        var threads = Executors.newSingleThreadExecutor();
        try {
            var answer = threads.submit(() -> client.get("/works"));
            WORKING.await();
            try (var crowd = new Crowd(Hanging.IN_A_HEAD, client)) {
                assertThat(client.get("/").status()).isEqualTo(200);
                assertThat(crowd.size()).isEqualTo(MANY);
                GO_ON.countDown();
                assertThat(answer.get().body()).isEqualTo("done");
            }
        } finally {
            GO_ON.countDown();
            threads.shutdownNow();
        }
    }

    @Test
    void aHeadThatNeverEndsIsCutOff() throws Exception {
        drips("");
    }

    /** The silence before the first byte of a second request is another matter: so browsers keep what they opened. */
    @Test
    void aSecondHeadThatNeverEndsIsCutOffToo() throws Exception {
        drips("GET /static/none HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n");
    }

    private static void drips(String before) throws Exception {
        try (var impatient = server(Duration.ofSeconds(1));
                var socket = new Socket("127.0.0.1", impatient.port())) {
            socket.setSoTimeout(20_000);
            write(socket, before);
            boolean open = true;
            for (int i = 0; i < 1000 && open; i++) {
                Thread.sleep(20);
                try {
                    write(socket, i == 0 ? "GET /" : "a");
                } catch (IOException e) {
                    open = false;
                }
            }
            assertThat(open).isFalse();
        }
    }

    private static final class Crowd implements AutoCloseable {
        private final List<Socket> open = new ArrayList<>();

        Crowd(Hanging how, RawClient client) throws IOException {
            for (int i = 0; i < MANY; i++) {
                open.add(how.begin(client));
            }
        }

        int size() {
            return open.size();
        }

        @Override
        public void close() throws IOException {
            for (var socket : open) {
                socket.close();
            }
        }
    }
}
