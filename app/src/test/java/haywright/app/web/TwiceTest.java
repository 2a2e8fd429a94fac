package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A button that is pressed twice: what it adds is there once, and the second answer is the first one's. */
class TwiceTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private void twice(String at, Map<String, String> fields) {
        twice(at, at, fields);
    }

    private void twice(String from, String to, Map<String, String> fields) {
        var page = ranch.get(from);
        var first = ranch.submit(page, to, fields);
        assertThat(first.status()).as(() -> to + first.body()).isEqualTo(303);
        long rev = ranch.store().ranches().open(ranch.id()).rev();
        var second = ranch.submit(page, to, fields);
        assertThat(second.status()).as(() -> to + second.body()).isEqualTo(303);
        assertThat(second.header("Location")).as(to).isEqualTo(first.header("Location"));
        assertThat(ranch.store().ranches().open(ranch.id()).rev()).as(to).isEqualTo(rev);
        assertThat(ranch.store().drafts().waiting(ranch.id())).as(to).isEmpty();
    }

    private static Map<String, String> but(Map<String, String> fields, String box, String value) {
        var all = new LinkedHashMap<>(fields);
        all.put(box, value);
        return all;
    }

    @Test
    void everyFormAddsOnce() {
        twice("lots/new/bales", OneRanch.hay("300", "1200 lb"));
        var lot = ranch.anyLot();
        var cows = new LinkedHashMap<String, String>();
        cows.put("name", "Cows");
        cows.put("head", "100");
        cows.put("weight", "1300");
        cows.put("shrunk", "no");
        cows.put("weighedOn", "Nov 12, 2026");
        cows.put("conditionScore", "5");
        cows.put("breed", "Angus");
        twice("herd/new/mature_cow", cows);
        var group = ranch.kept().groups().keySet().iterator().next();
        twice("feeds/new", Map.of("name", "Cake", "feedClass", "protein_meal", "price", "400"));
        twice("reports/water/new", Map.of("name", "Well"));
        twice(
                "reports/new/" + lot,
                Map.of("laboratory", "Tin Valley", "howSampled", "grab", "one-dm", "90", "dry-cp", "10"));
        twice("winter/week", Map.of("from", "Nov 12, 2026", "to", "Nov 18, 2026", "fed-" + lot, "12"));
        twice("take/lots/" + lot + "/weigh", Map.of("weighedOn", "Nov 20, 2026", "bales", "1190 1215 1199 1230 1201"));
        twice("letter/" + group + "/sign", Map.of("by", "Ann"));
        twice("herd/" + group + "/split", Map.of("name", "Thin cows", "head", "20", "who", "alike"));
        twice("take/lots/" + lot, "take/lots/" + lot + "/sheet", planned(ranch.get("take/lots/" + lot)));
        twice("lots/" + lot + "/delete", Map.of());
        var now = ranch.kept();
        assertThat(now.groups().values().stream().collect(Collectors.toMap(Group::name, Group::head)))
                .containsExactlyInAnyOrderEntriesOf(Map.of("Cows", 80, "Thin cows", 20));
        assertThat(now.feedsForSale()).hasSize(1);
        assertThat(now.waters()).hasSize(1);
        assertThat(now.weeks()).hasSize(1);
        assertThat(now.signed()).hasSize(1);
    }

    /** What the form of a plan has in its boxes. */
    private static Map<String, String> planned(RawClient.Answer page) {
        var boxes = new LinkedHashMap<String, String>();
        java.util.regex.Pattern.compile(
                        "<input id=\"f-[^\"]*\" name=\"([^\"]+)\" type=\"text\"[^>]* value=\"([^\"]*)\"")
                .matcher(page.body())
                .results()
                .forEach(box -> boxes.put(box.group(1), box.group(2)));
        java.util.regex.Pattern.compile("type=\"(?:checkbox|radio)\" name=\"([^\"]+)\" value=\"([^\"]+)\" checked")
                .matcher(page.body())
                .results()
                .forEach(box -> boxes.put(box.group(1), box.group(2)));
        java.util.regex.Pattern.compile("(?s)<select id=\"f-[^\"]*\" name=\"([^\"]+)\".*?value=\"([^\"]*)\" selected")
                .matcher(page.body())
                .results()
                .forEach(box -> boxes.put(box.group(1), box.group(2)));
        return boxes;
    }

    @Test
    void bothAtOnceAddOnce() throws Exception {
        var page = ranch.get("lots/new/bales");
        var threads = Executors.newFixedThreadPool(4);
        try {
            Callable<RawClient.Answer> send =
                    () -> ranch.submit(page, "lots/new/bales", OneRanch.hay("300", "1200 lb"));
            var answers = threads.invokeAll(Stream.generate(() -> send).limit(8).toList());
            for (var answer : answers) {
                assertThat(answer.get().status()).isEqualTo(303);
            }
            assertThat(ranch.kept().lots()).hasSize(1);
            Callable<RawClient.Answer> ranches =
                    () -> ranch.client().submit(ranch.client().get("/"), "/ranches", Map.of("name", "Two Creeks"));
            var round = ranch.client().get("/");
            Callable<RawClient.Answer> fromOnePage =
                    () -> ranch.client().submit(round, "/ranches", Map.of("name", "Two Creeks"));
            var made = threads.invokeAll(
                    Stream.generate(() -> fromOnePage).limit(8).toList());
            for (var answer : made) {
                assertThat(answer.get().header("Location"))
                        .isEqualTo(made.get(0).get().header("Location"));
            }
            assertThat(ranch.store().ranches().list()).hasSize(2);
            assertThat(ranches.call().status())
                    .as("another of the name, on purpose")
                    .isEqualTo(303);
            assertThat(ranch.store().ranches().list()).hasSize(3);
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void nextWintersRanchIsMadeOnce() {
        var page = ranch.get("next-winter");
        var name = Map.of("name", "Cold Spring, 2027-28");
        var first = ranch.submit(page, "next-winter", name);
        assertThat(ranch.submit(page, "next-winter", name).header("Location")).isEqualTo(first.header("Location"));
        assertThat(ranch.store().ranches().list()).hasSize(2);
    }

    @Test
    void twoLikeEachOtherAreAddedOnPurpose() {
        for (int i = 0; i < 2; i++) {
            assertThat(ranch.send("reports/water/new", Map.of("name", "Well")).status())
                    .isEqualTo(303);
        }
        assertThat(ranch.kept().waters()).hasSize(2);
    }

    /** What was changed since is not said to be as it was sent. */
    @Test
    void whatWasChangedSinceIsNoSecondPress() {
        ranch.hay("300");
        var at = "lots/" + ranch.anyLot() + "/as/bales";
        var stale = ranch.get(at);
        var mine = but(OneRanch.hay("300", "1200 lb"), "count", "290");
        assertThat(ranch.submit(stale, at, mine).status()).isEqualTo(303);
        assertThat(ranch.send(at, OneRanch.hay("250", "1200 lb")).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, at, mine).status()).isEqualTo(409);
        assertThat(ranch.kept().lots().values().iterator().next().stock().bales())
                .isEqualTo(250);
    }
}
