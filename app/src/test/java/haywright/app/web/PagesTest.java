package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.BookDocument;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A new ranch, without scripts: erring, correcting, going away and coming back, two windows at once. */
class PagesTest {
    private static final String HAY = "lots/new/bales";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static Map<String, String> hay() {
        return OneRanch.hay("210", "1,250 lb");
    }

    private Map<String, String> hayBut(String field, String value) {
        var hay = hay();
        hay.put(field, value);
        return hay;
    }

    @Test
    void noLineBreaksBeforeAPercentAndWhatWasTypedStays() {
        var called = hayBut("name", "Left of 18 % slope");
        ranch.send(HAY, called);
        var lot = ranch.anyLot();
        assertThat(ranch.get("lots").sent())
                .contains("Left of 18\u00a0% slope</")
                .doesNotContain("18 % slope</");
        assertThat(ranch.get("lots/" + lot + "/as/bales").sent()).contains("value=\"Left of 18 % slope\"");
    }

    // 210 · 1,250 lb = 262,500 lb = 131.25 tons
    @Test
    void aLotIsAddedWithItsTonsAndCanBeTakenBack() {
        var saved = ranch.send(HAY, hay());
        assertThat(saved.status()).isEqualTo(303);
        var list = ranch.after(saved);
        assertThat(list.body()).contains("Ditch-side stack", "131 tons", "210 large round bales of 1,250 lb", "n·w");
        assertThat(list.body()).contains("<b>Saved.</b> Lot added: Ditch-side stack");
        var undone = ranch.submit(list, "undo/2", Map.of("back", ranch.path() + "lots"));
        assertThat(undone.status()).isEqualTo(303);
        assertThat(ranch.after(undone).body()).doesNotContain("role=\"row\"");
    }

    @ParameterizedTest(name = "{0} “{1}” is refused: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "name | '' | nothing entered",
                "count | 0 | a stack has at least one bale",
                "count | 12.5 | a whole number is needed",
                "baleWeight | hefty | this is not a number",
                "baleWeight | NaN | this is not a number",
                "baleWeight | 1.250,5 | the comma can mean two things",
                "baleWeight | 12 ft | is not a unit",
                "baleWeight | -900 | a bale weighs more than 0",
                "replacementPrice | -5 | priced at nothing",
                "madeOn | Feb 30, 2026 | there is no such day",
                "feedClass | moss | not one of the choices",
                "bookRow | C999 | the feed book has no feed of this name"
            })
    void badInputIsNamedBesideItsFieldAndNothingTypedIsLost(String field, String value, String words) {
        var refused = ranch.send(HAY, hayBut(field, value));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body())
                .containsIgnoringCase(words)
                .contains("<title>Error: ")
                .contains("href=\"#f-" + field + "\"")
                .contains("id=\"p-" + field + "\"")
                .contains("value=\"tarped\" selected")
                .contains("One thing to fix");
        assertThat(ranch.get("lots").body()).doesNotContain("role=\"row\"");
    }

    // A layer of 4 in on 5 ft is 24.9 % of a bale, 1 − (52 / 60)^2, and takes 20 points of that: 4.98.
    @Test
    void whatWeatheredTakesItsShareOfTheTdn() {
        var noDiameter = ranch.send(HAY, hayBut("weatheredDepth", "4"));
        assertThat(noDiameter.status()).isEqualTo(422);
        assertThat(noDiameter.body()).contains("href=\"#f-baleDiameter\"", "value=\"4\"");
        var weathered = hayBut("weatheredDepth", "4");
        weathered.put("baleDiameter", "5");
        ranch.send(HAY, weathered);
        var lot = ranch.lot("Ditch-side stack");
        var was = ranch.get("lots/" + lot).body();
        assertThat(was).contains("value=\"4\"", "value=\"5\"");
        assertThat(ranch.get("reports/lot/" + lot).body())
                .contains("The outside of its bales weathered since the sample: 25 %", "TDN is 5 points less");
    }

    private String rowOf(String... fields) {
        var lot = hay();
        for (int i = 0; i < fields.length; i += 2) {
            lot.put(fields[i], fields[i + 1]);
        }
        lot.put("name", "Lot " + fields[1] + fields[fields.length - 1]);
        var saved = ranch.send(HAY, lot);
        assertThat(saved.status()).as(String.join(" ", fields)).isEqualTo(303);
        var page = ranch.get("lots/" + ranch.lot(lot.get("name"))).body();
        return page.replaceAll("(?s).*id=\"f-bookRow\"[^>]*? value=\"([^\"]*)\".*", "$1") + "|"
                + page.replaceAll("(?s).*<select id=\"f-stage\"(.*?)</select>.*", "$1")
                        .replaceAll("(?s).*value=\"([^\"]*)\" selected.*", "$1")
                        .replaceAll("(?s).*<option.*", "");
    }

    /** By its name, by words that only one feed has, by how ripe it was; what was picked is shown by name. */
    @Test
    void aFeedIsPickedByTypingItsName() {
        assertThat(rowOf("feedClass", "grass_hay", "bookRow", "meadow HAY")).isEqualTo("Meadow hay|");
        assertThat(rowOf("feedClass", "grass_hay", "bookRow", "prairie")).isEqualTo("Prairie hay|");
        assertThat(rowOf("feedClass", "grass_hay", "bookRow", "grass hay")).isEqualTo("Grass hay|");
        // the usual feeds of their kinds, and hay that can be of any ripeness: what was typed comes back
        assertThat(rowOf("feedClass", "grain", "bookRow", "Barley grain")).isEqualTo("Barley grain|");
        assertThat(rowOf("feedClass", "crop_residue", "bookRow", "corn stalks")).isEqualTo("Corn stalks|");
        assertThat(rowOf("feedClass", "legume_hay", "bookRow", "alfalfa hay")).isEqualTo("Alfalfa hay|");
        assertThat(rowOf("feedClass", "legume_hay", "stage", "C153")).isEqualTo("|C153");
        assertThat(rowOf("feedClass", "pasture", "stage", "C182")).isEqualTo("|C182");
        assertThat(rowOf("feedClass", "crop_residue", "bookRow", "corn cobs")).isEqualTo("Corn cobs|");
    }

    private static Map<String, String> feed(String name, String feedClass, String price) {
        var feed = new LinkedHashMap<String, String>();
        feed.put("name", name);
        feed.put("feedClass", feedClass);
        feed.put("price", price);
        return feed;
    }

    /** The book has no wet distillers grains: as dry ones they would be fed far too short. */
    @Test
    void aFeedThatIsCalledWetNeedsItsDryMatter() {
        var wet = feed("Wet distillers", "distillers_grains", "75");
        var refused = ranch.send("feeds/new", wet);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("href=\"#f-tag-dm\"", "id=\"p-tag-dm\"", "90 % dry matter");
        assertThat(ranch.kept().feedsForSale()).isEmpty();
        wet.put("tag-dm", "34");
        assertThat(ranch.send("feeds/new", wet).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("$75 a ton, 34 % dry matter");
    }

    @Test
    void aPriceFarTooLowForDryFeedIsAskedAbout() {
        var cheap = feed("Distillers", "distillers_grains", "75");
        var asked = ranch.send("feeds/new", cheap);
        assertThat(asked.status()).isEqualTo(422);
        // 75 / 0.90
        assertThat(asked.body()).contains("value=\"price-of-dry-matter\"", "$83.33 a ton of dry matter");
        cheap.put("confirm", "price-of-dry-matter");
        assertThat(ranch.send("feeds/new", cheap).status()).isEqualTo(303);
        assertThat(ranch.send("feeds/new", feed("Dry distillers", "distillers_grains", "215"))
                        .status())
                .isEqualTo(303);
    }

    /** Typed with its size, a bag's dry matter is the lot's, wherever no report says another. */
    @Test
    void theDryMatterTypedForSilageIsTheLots() {
        var bag = new LinkedHashMap<String, String>();
        bag.put("name", "Silage bag");
        bag.put("feedClass", "corn_silage");
        bag.put("diameter", "9");
        bag.put("length", "200");
        bag.put("densityDryMatter", "13");
        bag.put("dryMatterPercent", "35");
        bag.put("storage", "bag");
        bag.put("replacementPrice", "45");
        assertThat(ranch.send("lots/new/bag", bag).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("$45 a ton, 35 % dry matter");
        var yard = new haywright.outlook.Yard(ranch.kept(), java.time.LocalDate.of(2026, 12, 1));
        assertThat(yard.feeds())
                .filteredOn(f -> f.own())
                .singleElement()
                .satisfies(f -> assertThat(f.dryMatterPercent()).isEqualTo(35));
    }

    @Test
    void aNameThatSeveralFeedsHaveAskWhich() {
        var asked = ranch.send(HAY, hayBut("bookRow", "silage"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("id=\"p-bookRow\"", "Corn silage", "value=\"silage\"");
    }

    @Test
    void pastureIsAskedWhichItIsAndAStageOfAnotherFeedIsNotTaken() {
        var pasture = ranch.send(HAY, hayBut("feedClass", "pasture"));
        assertThat(pasture.status()).isEqualTo(422);
        assertThat(pasture.body()).contains("id=\"p-stage\"");
        var two = hayBut("stage", "C153");
        assertThat(ranch.send(HAY, two).status()).isEqualTo(422);
        two.put("feedClass", "legume_hay");
        two.put("bookRow", "soybean hay");
        assertThat(ranch.send(HAY, two).status()).isEqualTo(422);
        assertThat(ranch.send(HAY, hayBut("bookRow", "barley straw")).body()).contains("Is this right?");
    }

    @Test
    void everyWrongFieldIsNamedAtOnce() {
        var refused = ranch.send(HAY, Map.of("count", "many", "baleWeight", "12,5", "madeOn", "soon"));
        assertThat(refused.body())
                .contains("things to fix", "many", "12,5", "soon")
                .contains("Did you mean 12.5?");
    }

    @Test
    void aDraftIsThereWhenOneComesBackAndGoneWhenItIsSaved() {
        ranch.send(HAY, hayBut("baleWeight", "hefty"));
        assertThat(ranch.get("").body()).contains("Left unfinished", "A lot: Ditch-side stack");
        assertThat(ranch.get(HAY).body()).contains("You left this unfinished", "value=\"hefty\"");
        ranch.send(HAY, hay());
        assertThat(ranch.get(HAY).body()).doesNotContain("unfinished").doesNotContain("value=\"Ditch-side stack\"");
    }

    @Test
    void aDraftCanBeLeftBehind() {
        ranch.send(HAY, hayBut("baleWeight", "hefty"));
        var gone = ranch.get(HAY).body().replaceAll("(?s).*href=\"([?]afresh=[^\"]*)\".*", "$1");
        assertThat(ranch.afresh(HAY).body()).doesNotContain("hefty");
        // the same address again, once more was typed
        assertThat(ranch.send(HAY, hayBut("baleWeight", "weighty")).status()).isEqualTo(422);
        assertThat(ranch.get(HAY + gone).body()).contains("weighty");
        assertThat(ranch.get(HAY).body()).doesNotContain("hefty");
    }

    @Test
    void aSlipOfThePointIsAskedAboutAndKeptWhenItIsRight() {
        var asked = ranch.send(HAY, hayBut("baleWeight", "125"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Is this right?", "Did you mean 1,250 lb?");
        var sure = hayBut("baleWeight", "125");
        sure.put("confirm", "baleWeight-unusual");
        assertThat(ranch.send(HAY, sure).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("13 tons");
    }

    @Test
    void htmlInANameIsTextOnEveryPage() {
        ranch.send(HAY, hayBut("name", "<b>Hay</b> <script>alert(1)</script> & \"so\""));
        var lot = ranch.anyLot();
        for (var path : new String[] {"lots", "lots/" + lot, "lots/" + lot + "/delete", "history", ""}) {
            assertThat(ranch.get(path).body())
                    .as(path)
                    .doesNotContain("<script>alert")
                    .doesNotContain("<b>Hay");
        }
        assertThat(ranch.get("lots").body()).contains("&lt;script&gt;alert(1)");
    }

    @Test
    void twoWindowsOnOneLotShowBothVersionsAndTheChoiceStands() {
        ranch.send(HAY, hay());
        var path = "lots/" + ranch.anyLot() + "/as/bales";
        var stale = ranch.get(path);
        assertThat(ranch.send(path, hayBut("count", "200")).status()).isEqualTo(303);
        var both = ranch.submit(stale, path, hayBut("count", "190"));
        assertThat(both.status()).isEqualTo(409);
        assertThat(both.body()).contains("Two versions", "<td>190</td><td>200</td>");
        assertThat(ranch.get("lots").body()).contains("200 large round bales");

        var theirs = hayBut("count", "190");
        assertThat(chosen(both, path, theirs, "theirs").status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("200 large round bales");

        var again = ranch.submit(stale, path, hayBut("count", "180"));
        assertThat(chosen(again, path, hayBut("count", "180"), "").status()).isEqualTo(409);
        assertThat(chosen(again, path, hayBut("count", "180"), "mine").status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("180 large round bales");
    }

    /** Sends the page of two versions again, as its form would. */
    private RawClient.Answer chosen(RawClient.Answer page, String path, Map<String, String> typed, String which) {
        var all = new LinkedHashMap<>(typed);
        all.put("upon", page.body().replaceAll("(?s).*name=\"upon\" value=\"([0-9a-f-]+)\".*", "$1"));
        var asked = Pattern.compile("name=\"((?:between|theirs)/([^\"]+))\" value=\"([^\"]*)\"")
                .matcher(page.body());
        while (asked.find()) {
            all.put(asked.group(1), asked.group(3));
            if (!which.isEmpty()) {
                all.put("stands/" + asked.group(2), which);
            }
        }
        return ranch.submit(page, path, all);
    }

    @Test
    void twoWindowsOnDifferentThingsLoseNothing() {
        ranch.send(HAY, hay());
        var stale = ranch.get("lots/" + ranch.anyLot() + "/as/bales");
        var feed = Map.of("name", "Barley", "feedClass", "grain", "price", "250");
        assertThat(ranch.send("feeds/new", feed).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, "lots/" + ranch.anyLot() + "/as/bales", hayBut("count", "199"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("199 large round bales", "Barley", "$250 a ton");
    }

    @Test
    void aFeedKeepsItsPriceInTheUnitItWasTypedIn() {
        var cube = new LinkedHashMap<String, String>();
        cube.put("name", "Range cube");
        cube.put("feedClass", "protein_meal");
        cube.put("price", "$0.21/lb");
        cube.put("tag-cp", "20");
        assertThat(ranch.send("feeds/new", cube).body()).contains("Choose as fed or dry matter basis.");
        cube.put("tagBasis", "as_received");
        assertThat(ranch.send("feeds/new", cube).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("$0.21 a lb", "its tag, then");
    }

    @Test
    void settingsAreSavedAndTheirDatesReachTheRound() {
        var settings = new LinkedHashMap<String, String>();
        settings.put("name", "Cold Spring Ranch");
        settings.put("turnout", "5/15/2027");
        settings.put("feedingLossPercent", "80");
        settings.put("system", "nrc_1996");
        assertThat(ranch.send("settings/ranch", settings).body()).contains("id=\"p-feedingLossPercent\"");
        settings.put("feedingLossPercent", "12 %");
        settings.put("findPrice", "220");
        settings.put("turnout", "May 10, 2025");
        var asked = ranch.send("settings/ranch", settings);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("value=\"turnout-past\"");
        settings.put("turnout", "5/15/2027");
        var hash = BookDocument.hash(ranch.kept());
        assertThat(ranch.send("settings/ranch", settings).status()).isEqualTo(303);
        assertThat(ranch.kept().settings().findPrice()).isEqualTo(Quantity.of(220, Unit.DOLLAR_PER_TON));
        assertThat(BookDocument.hash(ranch.kept())).isNotEqualTo(hash);
        assertThat(ranch.get("settings").body()).contains("$220 a ton");
        assertThat(ranch.client().get("/").body()).contains("May 15, in 171 days: turnout");
        assertThat(ranch.send("settings/last-winter", Map.of("head", "0", "scoreBefore", "12"))
                        .body())
                .contains("a herd has at least one head", "condition is scored from 1 to 9");
        assertThat(ranch.send("settings/outfit", Map.of("timesADay", "9")).body())
                .contains("1 to 6 a day");
    }

    @Test
    void aRanchIsPutAwayAndBroughtBack() {
        assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.get("").status()).isEqualTo(404);
        ranch.client().submit(ranch.client().get("/"), "/ranches/" + ranch.id() + "/restore", Map.of());
        assertThat(ranch.get("").status()).isEqualTo(200);
    }

    @Test
    void anUndoThatWouldTakeALaterChangeWithItIsRefusedInWords() {
        ranch.send(HAY, hay());
        ranch.send("lots/" + ranch.anyLot() + "/as/bales", hayBut("count", "200"));
        var refused = ranch.submit(ranch.get("history"), "undo/2", Map.of());
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.body()).contains("That could not be undone", "has been changed since");
    }

    @Test
    void quickerWithScriptsGoesToTheSamePlace() {
        var page = ranch.get(HAY);
        var fields = hay();
        fields.put("token", page.body().replaceAll("(?s).*?name=\"token\" value=\"([^\"]+)\".*", "$1"));
        var saved =
                ranch.client().send("POST", ranch.path() + HAY, Map.of("HX-Request", "true"), RawClient.form(fields));
        assertThat(saved.status()).isEqualTo(200);
        assertThat(saved.header("HX-Redirect")).startsWith(ranch.path() + "lots?saved=");
        assertThat(ranch.client()
                        .get("/echo/POUND/baleWeight?baleWeight=1%2C300")
                        .body())
                .isEqualTo("590 kg");
    }

    @Test
    void anExportedRanchComesBackFromItsFile() {
        ranch.send(HAY, hay());
        var file = ranch.get("export");
        assertThat(file.header("Content-Disposition")).contains("cold-spring-ranch.json");
        ranch.send("archive", Map.of());
        var taken = ranch.client().upload(ranch.client().get("/"), "/import", "cold.json", file.body());
        assertThat(taken.status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("131 tons");
    }

    @ParameterizedTest(name = "a file with “{0}” is refused: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | is empty",
                "hay, 12 % | this is not JSON",
                "{\"haywright\":\"ranch\",\"format\":99} | made by a newer Haywright",
                "{\"a\":1} | a ranch document begins with"
            })
    void aFileThatIsNoRanchIsRefusedInWords(String content, String words) {
        var refused = ranch.client().upload(ranch.client().get("/"), "/import", "<b>x</b>.json", content);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains(words, "Nothing was changed.").doesNotContain("<b>x</b>");
        assertThat(ranch.client().get("/").body()).contains("1 ranch");
    }
}
