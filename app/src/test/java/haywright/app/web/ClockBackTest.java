package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.ranch.Ranch;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayDeque;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The clock of the machine is set back behind what was entered: every page opens, and nothing is lost. */
class ClockBackTest {
    private static final Pattern LINK = Pattern.compile("href=\"(/ranch/[^\"#?]+)[\"#?]");
    /** Papers, tables and files are made of the same pages. */
    private static final Pattern FILE = Pattern.compile(".*(\\.[a-z]+|/export|/raw|/set-aside/.*)");

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    /** What has a day: a week, a weighing, a signed letter, a score, a sample. */
    private void entered() {
        ranch.hay("300");
        ranch.cows();
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next();
        sent("settings/weather", "settings/weather/place", Map.of("town", "Cody, WY"));
        sent("winter/week", Map.of("from", "Nov 12, 2026", "to", "Nov 18, 2026", "fed-" + lot, "12"));
        sent("take/lots/" + lot + "/weigh", Map.of("weighedOn", "Nov 20, 2026", "bales", "1190 1215 1199 1230 1201"));
        sent("take/groups/" + group + "/scores", Map.of("scores", "5 5 6 5 5 5 6 5 5 5 5 5"));
        sent("letter/" + group + "/sign", Map.of("by", "Ann"));
        assertThat(ranch.kept().weeks()).hasSize(1);
        assertThat(ranch.kept().signed()).hasSize(1);
    }

    private void sent(String at, Map<String, String> fields) {
        sent(at, at, fields);
    }

    private void sent(String from, String to, Map<String, String> fields) {
        var answer = ranch.send(from, to, fields);
        assertThat(answer.status())
                .as(() -> to + answer.body().replaceAll("(?s).*<main|</main>.*", ""))
                .isEqualTo(303);
    }

    @Test
    void everyPageOpensAndNothingIsLost() throws Exception {
        entered();
        var before = ranch.kept();
        ranch.store().dailyCopy();
        for (var day : new String[] {"2026-11-01T12:00:00Z", "2025-06-01T12:00:00Z", "1970-01-01T12:00:00Z"}) {
            var clock = Clock.fixed(Instant.parse(day), ZoneOffset.UTC);
            var desk = new Desk(ranch.store(), clock, () -> Ranch.empty(new UUID(7, 7), "A demo"));
            try (var server = Server.start(desk, Home.in(ranch.folder()), "127.0.0.1", 0, routes -> {})) {
                var client = new RawClient(server.port(), Home.in(ranch.folder()));
                assertThat(client.get("/").status()).isEqualTo(200);
                for (var page : all(client)) {
                    assertThat(client.get(page).status()).as(day + " " + page).isEqualTo(200);
                }
            }
            assertThat(ranch.kept()).as(day).isEqualTo(before);
        }
        assertThat(ranch.folder().resolve("errors.log"))
                .satisfiesAnyOf(
                        log -> assertThat(log).doesNotExist(),
                        log -> assertThat(Files.readString(log)).isEmpty());
    }

    private Set<String> all(RawClient client) {
        var found = new LinkedHashSet<String>();
        var left = new ArrayDeque<>(Set.of(ranch.path()));
        while (!left.isEmpty()) {
            var page = left.remove();
            if (found.add(page)) {
                LINK.matcher(client.get(page).body())
                        .results()
                        .map(link -> link.group(1))
                        .filter(link -> !FILE.matcher(link).matches())
                        .forEach(left::add);
            }
        }
        assertThat(found).hasSizeGreaterThan(40);
        return found;
    }
}
