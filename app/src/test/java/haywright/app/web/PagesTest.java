package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.store.Store;
import haywright.ranch.Ranch;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A new ranch, without scripts: erring, correcting, going away and coming back, two windows at once. */
class PagesTest {
    private static final String HAY = "lots/new/bales";

    private Store store;
    private Server server;
    private RawClient client;
    private String ranch;

    static Desk desk(Store store) {
        return new Desk(
                store,
                Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC),
                () -> Ranch.empty(new UUID(7, 7), "A demo"));
    }

    @BeforeEach
    void start(@TempDir Path folder) {
        store = Store.inFolder(folder, Clock.systemUTC());
        server = Server.start(desk(store), "127.0.0.1", 0, routes -> {});
        client = new RawClient(server.port());
        var made = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"));
        assertThat(made.status()).isEqualTo(303);
        ranch = made.header("Location");
    }

    @AfterEach
    void stop() {
        server.close();
        store.close();
    }

    private static Map<String, String> hay() {
        var hay = new LinkedHashMap<String, String>();
        hay.put("name", "Ditch-side stack");
        hay.put("feedClass", "grass_hay");
        hay.put("bale", "large_round");
        hay.put("count", "210");
        hay.put("baleWeight", "1,250 lb");
        hay.put("storage", "tarped");
        hay.put("replacementPrice", "$165");
        return hay;
    }

    private RawClient.Answer send(String path, Map<String, String> fields) {
        return client.submit(client.get(ranch + path), ranch + path, fields);
    }

    private Map<String, String> hayBut(String field, String value) {
        var hay = hay();
        hay.put(field, value);
        return hay;
    }

    private String anyLot() {
        var body = client.get(ranch + "lots").body();
        return body.replaceAll("(?s).*?/lots/([0-9a-f]{8}-[0-9a-f-]{27})\".*", "$1");
    }

    // 210 · 1,250 lb = 262,500 lb = 131.25 tons
    @Test
    void aLotIsAddedWithItsTonsAndCanBeTakenBack() {
        var saved = send(HAY, hay());
        assertThat(saved.status()).isEqualTo(303);
        var list = client.get(saved.header("Location"));
        assertThat(list.body()).contains("Ditch-side stack", "131 tons", "210 large round bales of 1,250 lb", "n·w");
        assertThat(list.body()).contains("<b>Saved.</b> Lot added: Ditch-side stack");
        var undone = client.submit(list, ranch + "undo/2", Map.of("back", ranch + "lots"));
        assertThat(undone.status()).isEqualTo(303);
        assertThat(client.get(undone.header("Location")).body()).contains("Nothing is in the yard yet");
    }

    @ParameterizedTest(name = "{0} “{1}” is refused: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "name | '' | nothing is written here",
                "count | 0 | a stack has at least one bale",
                "count | 12.5 | a whole number is needed",
                "baleWeight | hefty | this is not a number",
                "baleWeight | NaN | this is not a number",
                "baleWeight | 1.250,5 | the comma can mean two things",
                "baleWeight | 12 ft | is not a unit",
                "baleWeight | -900 | a bale weighs something",
                "replacementPrice | -5 | given away by every ration",
                "replacementPrice | '' | nothing is written here",
                "madeOn | Feb 30, 2026 | there is no such day",
                "feedClass | moss | this is none of the choices",
                "bookRow | C999 | the feed book has no such row"
            })
    void badInputIsNamedBesideItsFieldAndNothingTypedIsLost(String field, String value, String words) {
        var refused = send(HAY, hayBut(field, value));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .containsIgnoringCase(words)
                .contains("<title>Error: ")
                .contains("href=\"#f-" + field + "\"")
                .contains("id=\"p-" + field + "\"")
                .contains("value=\"tarped\" selected")
                .contains("One thing to put right");
        assertThat(client.get(ranch + "lots").body()).contains("Nothing is in the yard yet");
    }

    @Test
    void everyWrongFieldIsNamedAtOnce() {
        var refused = send(HAY, Map.of("count", "many", "baleWeight", "12,5", "madeOn", "soon"));
        assertThat(refused.body())
                .contains("things to put right", "many", "12,5", "soon")
                .contains("Did you mean 12.5?");
    }

    @Test
    void aDraftIsThereWhenOneComesBackAndGoneWhenItIsSaved() {
        send(HAY, hayBut("baleWeight", "hefty"));
        assertThat(client.get(ranch).body()).contains("Left unfinished", "A lot: Ditch-side stack");
        assertThat(client.get(ranch + HAY).body()).contains("You left this unfinished", "value=\"hefty\"");
        send(HAY, hay());
        assertThat(client.get(ranch + HAY).body())
                .doesNotContain("unfinished")
                .doesNotContain("value=\"Ditch-side stack\"");
    }

    @Test
    void aDraftCanBeLeftBehind() {
        send(HAY, hayBut("baleWeight", "hefty"));
        assertThat(client.get(ranch + HAY + "?afresh").body()).doesNotContain("hefty");
        assertThat(client.get(ranch + HAY).body()).doesNotContain("hefty");
    }

    @Test
    void aSlipOfThePointIsAskedAboutAndKeptWhenItIsRight() {
        var asked = send(HAY, hayBut("baleWeight", "125"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Is this right?", "Did you mean 1,250 lb?");
        var sure = hayBut("baleWeight", "125");
        sure.put("confirm", "baleWeight-unusual");
        assertThat(send(HAY, sure).status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("13 tons");
    }

    @Test
    void htmlInANameIsTextOnEveryPage() {
        send(HAY, hayBut("name", "<b>Hay</b> <script>alert(1)</script> & \"so\""));
        var lot = anyLot();
        for (var path : new String[] {"lots", "lots/" + lot, "lots/" + lot + "/delete", "history", ""}) {
            assertThat(client.get(ranch + path).body())
                    .as(path)
                    .doesNotContain("<script>alert")
                    .doesNotContain("<b>Hay");
        }
        assertThat(client.get(ranch + "lots").body()).contains("&lt;script&gt;alert(1)");
    }

    @Test
    void twoWindowsOnOneLotShowBothVersionsAndTheChoiceStands() {
        send(HAY, hay());
        var path = "lots/" + anyLot() + "/as/bales";
        var stale = client.get(ranch + path);
        assertThat(send(path, hayBut("count", "200")).status()).isEqualTo(303);
        var both = client.submit(stale, ranch + path, hayBut("count", "190"));
        assertThat(both.status()).isEqualTo(409);
        assertThat(both.body()).contains("Two versions", "<td>190</td><td>200</td>");
        assertThat(client.get(ranch + "lots").body()).contains("200 large round bales");

        var theirs = hayBut("count", "190");
        assertThat(chosen(both, path, theirs, "theirs").status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("200 large round bales");

        var again = client.submit(stale, ranch + path, hayBut("count", "180"));
        assertThat(chosen(again, path, hayBut("count", "180"), "").status()).isEqualTo(409);
        assertThat(chosen(again, path, hayBut("count", "180"), "mine").status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("180 large round bales");
    }

    /** Sends the page of two versions again, as its form would. */
    private RawClient.Answer chosen(RawClient.Answer page, String path, Map<String, String> typed, String which) {
        var entity = "lots/" + path.split("/")[1];
        var all = new LinkedHashMap<>(typed);
        all.put("between", entity);
        all.put("upon", page.body().replaceAll("(?s).*name=\"upon\" value=\"([0-9]+)\".*", "$1"));
        if (!which.isEmpty()) {
            all.put("stands/" + entity, which);
        }
        return client.submit(page, ranch + path, all);
    }

    @Test
    void aLotTakenAwayMeanwhileIsTheOtherVersion() {
        send(HAY, hay());
        var lot = anyLot();
        var path = "lots/" + lot + "/as/bales";
        var stale = client.get(ranch + path);
        assertThat(send("lots/" + lot + "/delete", Map.of()).status()).isEqualTo(303);
        var both = client.submit(stale, ranch + path, hayBut("count", "190"));
        assertThat(both.status()).isEqualTo(409);
        assertThat(both.body()).contains("taken away");
        assertThat(chosen(both, path, hayBut("count", "190"), "mine").status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("190 large round bales");
    }

    @Test
    void twoWindowsOnDifferentThingsLoseNothing() {
        send(HAY, hay());
        var stale = client.get(ranch + "lots/" + anyLot() + "/as/bales");
        var feed = Map.of("name", "Barley", "feedClass", "grain", "price", "250");
        assertThat(send("feeds/new", feed).status()).isEqualTo(303);
        assertThat(client.submit(stale, ranch + "lots/" + anyLot() + "/as/bales", hayBut("count", "199"))
                        .status())
                .isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("199 large round bales", "Barley", "$250 a ton");
    }

    @Test
    void aFeedKeepsItsPriceInTheUnitItWasTypedIn() {
        var cube = new LinkedHashMap<String, String>();
        cube.put("name", "Range cube");
        cube.put("feedClass", "protein_meal");
        cube.put("price", "$0.21/lb");
        cube.put("tag-cp", "20");
        assertThat(send("feeds/new", cube).body()).contains("Are they as fed or on dry matter?");
        cube.put("tagBasis", "as_received");
        assertThat(send("feeds/new", cube).status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("$0.21 a lb", "its tag, then");
    }

    @Test
    void settingsAreSavedAndTheirDatesReachTheRound() {
        var settings = new LinkedHashMap<String, String>();
        settings.put("name", "Cold Spring Ranch");
        settings.put("turnout", "5/15/2027");
        settings.put("feedingLossPercent", "80");
        settings.put("system", "nrc_1996");
        assertThat(send("settings/ranch", settings).body()).contains("the share that is fed but not eaten");
        settings.put("feedingLossPercent", "12 %");
        assertThat(send("settings/ranch", settings).status()).isEqualTo(303);
        assertThat(client.get("/").body()).contains("May 15, 2027, in 171 days: to grass");
        assertThat(send("settings/last-winter", Map.of("head", "0", "scoreBefore", "12"))
                        .body())
                .contains("a herd has at least one", "condition is scored from 1 to 9");
        assertThat(send("settings/outfit", Map.of("timesADay", "9")).body()).contains("one to six times a day");
    }

    @Test
    void aRanchIsPutAwayAndBroughtBack() {
        assertThat(send("put-away", Map.of()).status()).isEqualTo(303);
        assertThat(client.get(ranch).status()).isEqualTo(404);
        var id = ranch.split("/")[2];
        client.submit(client.get("/"), "/ranches/" + id + "/restore", Map.of());
        assertThat(client.get(ranch).status()).isEqualTo(200);
    }

    @Test
    void anUndoThatWouldTakeALaterChangeWithItIsRefusedInWords() {
        send(HAY, hay());
        send("lots/" + anyLot() + "/as/bales", hayBut("count", "200"));
        var refused = client.submit(client.get(ranch + "history"), ranch + "undo/2", Map.of());
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.body()).contains("That could not be taken back", "has been changed since");
    }

    @Test
    void quickerWithScriptsGoesToTheSamePlace() {
        var page = client.get(ranch + HAY);
        var fields = hay();
        fields.put("token", page.body().replaceAll("(?s).*?name=\"token\" value=\"([^\"]+)\".*", "$1"));
        var saved = client.send("POST", ranch + HAY, Map.of("HX-Request", "true"), RawClient.form(fields));
        assertThat(saved.status()).isEqualTo(200);
        assertThat(saved.header("HX-Redirect")).startsWith(ranch + "lots?saved=");
        assertThat(client.get("/echo/POUND/baleWeight?baleWeight=1%2C300").body())
                .isEqualTo("590 kg");
    }

    @Test
    void anExportedRanchComesBackFromItsFile() {
        send(HAY, hay());
        var file = client.get(ranch + "export");
        assertThat(file.header("Content-Disposition")).contains("cold-spring-ranch.json");
        send("put-away", Map.of());
        var taken = client.upload(client.get("/"), "/import", "cold.json", file.body());
        assertThat(taken.status()).isEqualTo(303);
        assertThat(client.get(ranch + "lots").body()).contains("131 tons");
    }

    @ParameterizedTest(name = "a file with “{0}” is refused: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | No file was chosen",
                "hay, 12 % | this is not JSON",
                "{\"haywright\":\"ranch\",\"format\":99} | made by a newer Haywright",
                "{\"a\":1} | a ranch document begins with"
            })
    void aFileThatIsNoRanchIsRefusedInWords(String content, String words) {
        var refused = client.upload(client.get("/"), "/import", "<b>x</b>.json", content);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains(words, "Nothing was changed.").doesNotContain("<b>x</b>");
        assertThat(client.get("/").body()).contains("One ranch to look after");
    }
}
