package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A line of the round is made once a version and day, and is never older than either. */
class RoundTest {
    private static final UUID ID = new UUID(5, 5);

    @TempDir
    private Path folder;

    private Instant now = Instant.parse("2026-11-25T12:00:00Z");

    private final Clock clock = new Clock() {
        @Override
        public Instant instant() {
            return now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            throw new UnsupportedOperationException();
        }
    };

    private static Settings turnoutOn(LocalDate day) {
        return Ranch.empty(ID, "x").settings().withTurnout(day);
    }

    private static int at(String page, String text) {
        assertThat(page).contains(text);
        return page.indexOf(text);
    }

    @Test
    void ranchesAreFoundAndSortedByTheirNextDateAsADate() {
        try (var store = Store.inFolder(folder, clock)) {
            var home = Home.in(folder);
            var server = Server.start(new Desk(store, clock, TinLantern::ranch), home, "127.0.0.1", 0, routes -> {});
            try {
                store.ranches().create(Ranch.empty(new UUID(5, 1), "Alder").with(turnoutOn(LocalDate.of(2027, 5, 2))));
                store.ranches().create(Ranch.empty(new UUID(5, 2), "Birch").with(turnoutOn(LocalDate.of(2026, 12, 9))));
                store.ranches().create(Ranch.empty(new UUID(5, 3), "Cedar"));
                var browser = new RawClient(server.port(), home);
                var byName = browser.get("/").body();
                assertThat(at(byName, ">Alder<")).isLessThan(at(byName, ">Birch<"));
                var byDate = browser.get("/?by=next").body();
                assertThat(at(byDate, ">Birch<"))
                        .isLessThan(at(byDate, ">Alder<"))
                        .isLessThan(at(byDate, ">Cedar<"));
                assertThat(browser.get("/?find=bir").body()).contains(">Birch<").doesNotContain(">Alder<");
                assertThat(browser.get("/?find=%3Cb%3E&by=none").body())
                        .contains("&lt;b&gt;")
                        .doesNotContain(">Birch<");
            } finally {
                server.close();
            }
        }
    }

    @Test
    void aLineIsAsNewAsTheRanchAndTheDay() {
        try (var store = Store.inFolder(folder, clock);
                var other = Store.inFolder(folder, clock)) {
            var home = Home.in(folder);
            var server = Server.start(new Desk(store, clock, TinLantern::ranch), home, "127.0.0.1", 0, routes -> {});
            try {
                var empty = Ranch.empty(ID, "Cold Spring");
                var ranch = empty.with(turnoutOn(LocalDate.of(2026, 11, 27)));
                store.ranches().create(ranch);
                var browser = new RawClient(server.port(), home);
                assertThat(browser.get("/").body())
                        .contains("in 2 days")
                        .isEqualTo(browser.get("/").body());
                now = Instant.parse("2026-11-26T12:00:00Z");
                assertThat(browser.get("/").body()).contains("tomorrow");
                other.ranches().save(ID, 1, "Ben", "name", ranch.withName("Warm Spring"));
                assertThat(browser.get("/").body()).contains("Warm Spring").doesNotContain("Cold Spring");
            } finally {
                server.close();
            }
        }
    }
}
