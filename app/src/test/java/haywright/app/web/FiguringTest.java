package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.trail.Step;
import java.nio.file.Path;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many wait for the rations of one ranch, which take long: every other page opens meanwhile. */
class FiguringTest {
    /** More than are worked for at once. */
    private static final int MANY = 20;

    /** Of one ranch, whoever may wait for its figures. */
    private static final int INSIDE = 2;

    @TempDir
    private Path folder;

    private final Semaphore figuring = new Semaphore(0);
    private final Semaphore goOn = new Semaphore(0);
    private Store store;
    private Server server;
    private RawClient client;

    @BeforeEach
    void start() {
        store = Store.inFolder(folder, java.time.Clock.systemUTC());
        var home = Home.in(folder);
        var desk = OneRanch.desk(store);
        server = Server.start(desk, home, "127.0.0.1", 0, routes -> {
            var on = new Routes(routes, desk, Step.BENCH);
            on.get("takes-long", page -> {
                page.rations();
                figuring.release();
                goOn.acquire();
                page.http().result("figured");
            });
            on.get(
                    "asks-late",
                    page -> page.show("haywright/app/web/letter/letters.jte", new AbstractList<>() {
                        @Override
                        public Object get(int index) {
                            return page.rations();
                        }

                        @Override
                        public int size() {
                            return 1;
                        }
                    }));
        });
        client = new RawClient(server.port(), home);
    }

    @AfterEach
    void stop() {
        goOn.release(MANY);
        server.close();
        store.close();
    }

    private String ranch(String name) {
        return client.submit(client.get("/"), "/ranches", Map.of("name", name)).header("Location");
    }

    @Test
    void otherPagesOpenWhileManyWaitForTheSameFigures() throws Exception {
        var slow = ranch("Long Creek Ranch");
        var other = ranch("Short Creek Ranch");
        var threads = Executors.newFixedThreadPool(MANY + 1);
        try {
            var reloads = new ArrayList<Future<RawClient.Answer>>();
            for (int i = 0; i < MANY; i++) {
                reloads.add(threads.submit(() -> client.get(slow + "takes-long")));
            }
            figuring.acquire(INSIDE);
            for (var page : new String[] {"/", slow, slow + "lots", slow + "herd", other + "bench", other + "lots"}) {
                assertThat(threads.submit(() -> client.get(page))
                                .get(20, TimeUnit.SECONDS)
                                .status())
                        .as(page)
                        .isEqualTo(200);
            }
            var waits = client.get(slow + "bench");
            assertThat(waits.status()).isEqualTo(503);
            assertThat(waits.header("Retry-After")).matches("[1-9]");
            assertThat(waits.header("Refresh"))
                    .as("opens by itself without a script")
                    .matches("[1-9]");
            goOn.release(INSIDE);
            int figured = 0;
            for (var reload : reloads) {
                var answer = reload.get(20, TimeUnit.SECONDS);
                assertThat(answer.status()).isIn(200, 503);
                figured += answer.status() == 200 ? 1 : 0;
            }
            assertThat(figured).isEqualTo(INSIDE);
            assertThat(client.get(slow + "bench").status()).isEqualTo(200);
        } finally {
            threads.shutdownNow();
        }
    }

    /** Figures that the page itself asks for while it is written, as the winter book does. */
    @Test
    void aPageThatAsksLateWaitsToo() throws Exception {
        var slow = ranch("Long Creek Ranch");
        var threads = Executors.newFixedThreadPool(INSIDE);
        try {
            for (int i = 0; i < INSIDE; i++) {
                threads.submit(() -> client.get(slow + "takes-long"));
            }
            figuring.acquire(INSIDE);
            var waits = client.get(slow + "asks-late");
            assertThat(waits.status()).isEqualTo(503);
            assertThat(waits.header("Refresh")).matches("[1-9]");
        } finally {
            goOn.release(INSIDE);
            threads.shutdownNow();
        }
    }

    /** What failed while it was figured keeps nobody out. */
    @Test
    void whoeverWasInsideLeaves() {
        var slow = ranch("Long Creek Ranch");
        for (int i = 0; i < MANY; i++) {
            assertThat(client.get(slow + "bench").status()).isEqualTo(200);
            assertThat(client.get(slow + "bench/7e000000-0000-4000-8000-000000000000")
                            .status())
                    .isEqualTo(404);
        }
    }
}
