package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Many more are connected than there are places for, and every one of them hangs: whoever asks is answered all the same. */
class CrowdTest {
    @TempDir
    private static Path folder;

    private static final int MANY = 1000;
    private static final byte[] MUCH = new byte[20_000_000];
    private static final AtomicInteger COUNTED = new AtomicInteger();
    private static final Semaphore WORKING = new Semaphore(0);
    private static final Semaphore GO_ON = new Semaphore(0);

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
                        WORKING.release();
                        GO_ON.acquire();
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
            socket.setReceiveBufferSize(4096);
            socket.connect(new InetSocketAddress("127.0.0.1", server.port()));
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

    /** By how many were answered before, not by a clock; with more than there are places for, also to be let in. */
    @ParameterizedTest
    @CsvSource({"60, false", "300, false", "600, false", "600, true"})
    void whoeverAsksOneAfterAnotherWaitsBehindWhoeverOpensAPage(int connections, boolean again) throws Exception {
        var client = new RawClient(server.port(), home);
        var threads = Executors.newFixedThreadPool(2);
        COUNTED.set(0);
        try (var flood = new Flood(client.asked("/counted"), connections, again)) {
            threads.submit(flood);
            while (COUNTED.get() < 10 * connections) {
                Thread.sleep(10);
            }
            int before = COUNTED.get();
            var page = threads.submit(() -> answer(client, flood));
            while (!page.isDone() && COUNTED.get() - before < 10 * connections) {
                Thread.sleep(10);
            }
            assertThat(page.isDone()).isTrue();
            assertThat(page.get().status()).isEqualTo(200);
        } finally {
            threads.shutdown();
        }
    }

    /** Where hundreds come again and again, one may be cut off before anybody looked at it, and has to knock again. */
    private static RawClient.Answer answer(RawClient client, Flood flood) throws IOException {
        while (!flood.ends) {
            try {
                return client.get("/");
            } catch (UncheckedIOException e) {
                // again
            }
        }
        throw new IOException("never answered");
    }

    @Test
    void whatIsBeingWorkedOnKeepsItsPlace() throws Exception {
        var client = new RawClient(server.port(), home);
        var threads = Executors.newSingleThreadExecutor();
        try {
            var answer = threads.submit(() -> client.get("/works"));
            WORKING.acquire();
            try (var crowd = new Crowd(Hanging.IN_A_HEAD, client)) {
                assertThat(client.get("/").status()).isEqualTo(200);
                assertThat(crowd.size()).isEqualTo(MANY);
                GO_ON.release();
                assertThat(answer.get().body()).isEqualTo("done");
            }
        } finally {
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

    /** Asks without end over many connections and waits for no answer. */
    private static final class Flood implements Runnable, AutoCloseable {
        private final byte[] requests;
        private final boolean again;
        private final SocketChannel[] open;
        private final ByteBuffer[] left;
        private final ByteBuffer answers = ByteBuffer.allocate(1 << 16);
        private volatile boolean ends;

        /** @param again whether it comes again over a new connection where one had to go */
        Flood(byte[] request, int connections, boolean again) {
            this.again = again;
            requests = new String(request, StandardCharsets.UTF_8).repeat(200).getBytes(StandardCharsets.UTF_8);
            open = new SocketChannel[connections];
            left = new ByteBuffer[connections];
        }

        @Override
        public void run() {
            try {
                while (!ends) {
                    for (int i = 0; i < open.length; i++) {
                        goOn(i);
                    }
                    Thread.sleep(1);
                }
                for (var channel : open) {
                    channel.close();
                }
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        private void goOn(int i) throws IOException {
            if (open[i] == null || again && !open[i].isOpen()) {
                open[i] = SocketChannel.open(new InetSocketAddress("127.0.0.1", server.port()));
                open[i].configureBlocking(false);
                left[i] = ByteBuffer.wrap(requests);
            }
            try {
                open[i].write(left[i]);
                if (!left[i].hasRemaining()) {
                    left[i].rewind();
                }
                if (open[i].read(answers.clear()) < 0) {
                    open[i].close();
                }
            } catch (IOException e) {
                open[i].close();
            }
        }

        @Override
        public void close() {
            ends = true;
        }
    }
}
