package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A field of a new ranch: drawn tap by tap or leg by leg, typed, or from a file; zones in it; without scripts. */
class FieldPagesTest {
    private static final String DRAW = "take/fields/draw";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    /** The form as it stands, with something more put in. */
    private RawClient.Answer draw(String path, String... more) {
        var page = ranch.get(path);
        var fields = new LinkedHashMap<String, String>();
        var input = Pattern.compile(
                        "<input [^>]*name=\"(corners|name|grows|start|longitude|side)\"[^>]*value=\"([^\"]*)\"")
                .matcher(page.body());
        while (input.find()) {
            fields.put(input.group(1), input.group(2));
        }
        var lies = Pattern.compile("value=\"([a-z_]+)\" selected").matcher(page.body());
        if (lies.find()) {
            fields.put("lies", lies.group(1));
        }
        for (int i = 0; i < more.length; i += 2) {
            fields.put(more[i], more[i + 1]);
        }
        return ranch.submit(page, path, fields);
    }

    private void aSheet() {
        var laid = draw(DRAW, "name", "Creek meadow", "start", "44.5031, -109.5012", "do", "sheet");
        assertThat(laid.status()).isEqualTo(303);
    }

    // Side 880 yd: the start stands 0.06 of it inside the lower left corner, and a tap at x of 600 is x/600 of 880 yd.
    @Test
    void aFieldIsDrawnTapByTapAndTakenBackAndSaved() {
        aSheet();
        assertThat(ranch.get(DRAW).body()).contains("One square is 88 yd", "1 corner so far");
        draw(DRAW, "wide.x", "336", "wide.y", "564");
        draw(DRAW, "wide.x", "336", "wide.y", "264");
        assertThat(ranch.get(DRAW).body()).contains("440 yd from the last; 440 yd east, 440 yd north of the start");
        draw(DRAW, "wide.x", "36", "wide.y", "200");
        draw(DRAW, "do", "undo");
        draw(DRAW, "tap.x", "15", "tap.y", "113");
        // 440 yd by 440 yd are 40 acres; the last tap was on the small sheet, where a pixel is 3.4 yd
        assertThat(ranch.get(DRAW).body()).containsPattern("(39\\.[0-9]|40(\\.[0-9])?) acres, closed");
        var saved = draw(DRAW, "do", "save");
        assertThat(saved.status()).isEqualTo(303);
        var walk = ranch.after(saved);
        assertThat(walk.body())
                .contains("Field drawn: Creek meadow", "stops on an M")
                .containsPattern("(39\\.|40)");
        assertThat(ranch.get("").body()).doesNotContain("Left unfinished");
    }

    // 440 yd square are 193,600 yd², 40 acres of 4,840.
    @Test
    void aFieldIsDrawnByKeyboard() {
        aSheet();
        draw(DRAW, "do", "leg", "long", "440", "bearing", "90");
        draw(DRAW, "do", "leg", "east", "440", "north", "440");
        draw(DRAW, "do", "leg", "long", "402.336 m", "bearing", "270");
        assertThat(ranch.get(DRAW).body()).contains("40 acres, closed from corner 4 back to 1");
        assertThat(draw(DRAW, "do", "save").status()).isEqualTo(303);
    }

    @Test
    void anEdgeThatCrossesIsRefusedWithItsPlaceAndTheRestStays() {
        aSheet();
        draw(DRAW, "wide.x", "336", "wide.y", "564");
        draw(DRAW, "wide.x", "336", "wide.y", "264");
        var crossing = draw(DRAW, "wide.x", "100", "wide.y", "595");
        assertThat(crossing.status()).isEqualTo(422);
        assertThat(crossing.body())
                .contains(
                        "edge 3 to 4",
                        "crosses edge 1 to 2 at -109.",
                        "<title>Error: ",
                        "3 corners so far".substring(2));
        // closed as it is, the last edge may cross too
        draw(DRAW, "wide.x", "20", "wide.y", "264");
        draw(DRAW, "wide.x", "20", "wide.y", "590");
        draw(DRAW, "wide.x", "500", "wide.y", "590");
        draw(DRAW, "wide.x", "500", "wide.y", "400");
        assertThat(ranch.get(DRAW).body()).contains("It can’t be closed yet: edges cross at -109.");
        var unsaved = draw(DRAW, "do", "save");
        assertThat(unsaved.status()).isEqualTo(422);
        assertThat(unsaved.body()).contains("edges cross at -109.");
    }

    @ParameterizedTest(name = "{0} “{1}” is refused: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "start | '' | nothing entered",
                "start | by the gate | not a latitude",
                "start | 109.5 W | not a latitude",
                "start | 95 | latitude is within",
                "longitude | 44.5 N | not a longitude",
                "longitude | 1095 | not a longitude",
                "side | 0 | a sheet is between",
                "side | 90 miles | a sheet is between",
                "side | wide | this is not a number",
                "lies | up | one of the choices"
            })
    void aSheetThatCannotBeIsRefused(String field, String value, String words) {
        var fields = new LinkedHashMap<>(Map.of(
                "name", "Creek meadow", "start", "44.5", "longitude", "-109.5", "lies", "north_east", "side", "880"));
        fields.put(field, value);
        fields.put("do", "sheet");
        var refused = ranch.send(DRAW, fields);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).containsIgnoringCase(words).contains("value=\"Creek meadow\"");
    }

    @Test
    void whatIsNoCornerIsRefused() {
        aSheet();
        assertThat(draw(DRAW, "wide.x", "0", "wide.y", "0").body()).contains("pressed by key");
        assertThat(draw(DRAW, "do", "leg", "long", "440").body()).contains("takes two numbers");
        assertThat(draw(DRAW, "do", "leg", "long", "4", "bearing", "1", "east", "4", "north", "4")
                        .body())
                .contains("one way or the other");
        assertThat(draw(DRAW, "do", "leg", "long", "90 mi", "bearing", "1").body())
                .contains("within 50 km");
        assertThat(draw(DRAW, "do", "leg", "long", "0", "bearing", "1").body()).contains("the one before");
        assertThat(draw(DRAW, "do", "leg", "long", "five", "bearing", "1").body())
                .contains("not a number");
        assertThat(draw(DRAW, "do", "save").body()).contains("“1 corner”");
        assertThat(draw(DRAW, "corners", "0,0 5,x 1e9,1 --3,4", "do", "sheet").status())
                .isEqualTo(303);
    }

    private static Map<String, String> typed(String corners) {
        return Map.of("name", "Creek meadow", "field", corners);
    }

    private static final String BENCH = "-109.5, 44.5\n-109.49, 44.5\n-109.49, 44.51\n-109.5, 44.51";

    @ParameterizedTest(name = "“{0}” is refused: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "'-109.5, 44.5;-109.49, 44.5' | 2 corners",
                "'-109.5, 44.5;-109.49, 44.5;-109.48, 44.5' | a field has an area",
                "'-109.5, 44.5;-109.49, 44.51;-109.49, 44.5;-109.5, 44.51' | edges cross at -109.495000, 44.505000",
                "'44.5, -109.5;44.51, -109.5;44.51, -109.6' | Check whether the two are swapped.",
                "'north gate' | a corner is two numbers",
                "'{\"type\":\"Point\",\"coordinates\":[1,2]}' | a field is a GeoJSON Polygon",
                "'{\"type\":\"Polygon\"' | is whole"
            })
    void anOutlineThatCannotBeIsRefused(String corners, String words) {
        var refused = ranch.send("take/fields/new", typed(corners.replace(';', '\n')));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).containsIgnoringCase(words).contains("value=\"Creek meadow\"");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "an L | -109.5, 44.5;-109.49, 44.5;-109.49, 44.503;-109.497, 44.503;-109.497, 44.51;-109.5, 44.51 | acres",
                "a sliver | -109.5, 44.5;-109.45, 44.5;-109.45, 44.50001 | acres",
                "40,000 acres | -109.5, 44.5;-109.34, 44.5;-109.34, 44.614;-109.5, 44.614 | mark zones",
                "over the 180th meridian | 179.995, 51.5;-179.994, 51.5;-179.994, 51.507;179.995, 51.507 | acres"
            })
    void anOddFieldIsWalkedAllTheSame(String what, String corners, String words) {
        var fields = new LinkedHashMap<>(typed(corners.replace(';', '\n')));
        fields.put("confirm", "acres-unusual");
        var saved = ranch.send("take/fields/new", fields);
        assertThat(saved.status()).as(what).isEqualTo(303);
        var at = saved.header("Location").replaceAll("\\?.*", "");
        assertThat(ranch.client().get(at).body()).contains(words, "stops on an M");
        assertThat(ranch.client().get(at + "/walk.gpx").body()).contains("<name>S15</name>");
        assertThat(ranch.client().get(at + "/walk.geojson").status()).isEqualTo(200);
        assertThat(ranch.client().get(at + "/change").body()).contains("Delete the field");
    }

    @Test
    void zonesAreDrawnOrTypedAndEachIsWalked() {
        var at = ranch.send("take/fields/new", typed(BENCH))
                .header("Location")
                .replaceAll("\\?.*", "")
                .substring(ranch.path().length());
        assertThat(ranch.send(at + "/zones", Map.of("zones", "-109.48, 44.5\n-109.47, 44.5\n-109.47, 44.51"))
                        .body())
                .contains("id=\"p-zones\"");
        assertThat(ranch.send(
                                at + "/zones",
                                Map.of("zones", "-109.5, 44.5\n-109.495, 44.5\n-109.495, 44.51\n-109.5, 44.51"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get(at).body()).contains("are in no zone and not walked");
        // one over the other is refused, one beside it is kept
        for (var leg : new String[] {"0 0", "200 0", "200 200", "0 200"}) {
            var to = leg.split(" ");
            draw(at + "/zone", "do", "leg", "east", to[0], "north", to[1]);
        }
        assertThat(draw(at + "/zone", "do", "save").body()).contains("it overlaps zone 1");
        ranch.afresh(at + "/zone");
        for (var leg : new String[] {"600 100", "800 100", "800 300", "600 300"}) {
            var to = leg.split(" ");
            draw(at + "/zone", "do", "leg", "east", to[0], "north", to[1]);
        }
        assertThat(draw(at + "/zone", "do", "save").status()).isEqualTo(303);
        assertThat(ranch.get(at).body()).contains("in each of 2 zones");
        assertThat(ranch.send(at + "/zones", Map.of()).body()).contains("Zone 2", "Nothing entered");
        assertThat(ranch.send(at + "/zones", at + "/zones/0/delete", Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.send(at + "/zones", at + "/zones/7/delete", Map.of()).status())
                .isEqualTo(404);
        assertThat(ranch.send(at + "/change", at + "/delete", Map.of()).status())
                .isEqualTo(303);
    }

    // Browsers end each line of a text box with a carriage return and a line feed.
    @Test
    void zonesTypedInABrowserAreReadWithAnEmptyLineBetweenThem() {
        var at = ranch.send("take/fields/new", typed(BENCH))
                .header("Location")
                .replaceAll("\\?.*", "")
                .substring(ranch.path().length());
        var zones = "-109.5, 44.5\r\n-109.495, 44.5\r\n-109.495, 44.51\r\n-109.5, 44.51\r\n\r\n"
                + "-109.494, 44.5\r\n-109.49, 44.5\r\n-109.49, 44.51\r\n-109.494, 44.51\r\n";
        assertThat(ranch.send(at + "/zones", Map.of("zones", zones)).status()).isEqualTo(303);
        assertThat(ranch.get(at).body()).contains("in each of 2 zones");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "109.5 W, 44.5 N;109.49 W, 44.5 N;109.49 W, 44.51 N",
                "44.5 N 109.5 W;44.5° N 109.49° W;44.51° N 109.49° W",
                "N44.5 W109.5;N44.5 W109.49;N44.51 W109.49",
                "-109.5, 44.5, 1380;-109.49, 44.5, 1380;-109.49, 44.51, 1381"
            })
    void cornersMayHaveLettersAndHeights(String corners) {
        var saved = ranch.send("take/fields/new", typed(corners.replace(";", "\r\n")));
        assertThat(saved.status()).isEqualTo(303);
        var at = saved.header("Location").replaceAll("\\?.*", "");
        assertThat(ranch.client().get(at + "/change").body()).contains("-109.5, 44.5", "-109.49, 44.51");
    }

    @ParameterizedTest(name = "{0} is asked about: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "44.5, -89.5;44.51, -89.5;44.51, -89.51 | Are the two swapped?",
                "-100, 45;-99.5, 45;-99.5, 45.5;-100, 45.5 | more than most fields",
                "-109.5, 44.5;-109.4999, 44.5;-109.4999, 44.5001 | less than most fields"
            })
    void aPlaceOrASizeOfNonsenseIsAskedAbout(String corners, String words) {
        var asked = ranch.send("take/fields/new", typed(corners.replace(';', '\n')));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Is this right?", words);
    }

    @Test
    void aFieldFarFromTheOthersIsAskedAbout() {
        ranch.send("take/fields/new", typed(BENCH));
        var asked = ranch.send("take/fields/new", typed(BENCH.replace("-109", "109")));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("is a minus missing?");
        assertThat(ranch.send("take/fields/new", typed(BENCH.replace("-109.5", "-109.6")))
                        .status())
                .isEqualTo(303);
    }

    // An L of two arms, 800 m and 780 m long and 100 m wide: the M of its rectangle misses most of both.
    @Test
    void aGridIsOfferedWhereTheMLeavesAnArmFarFromAnyStop() {
        var arms =
                "-109.5, 44.5\n-109.49, 44.5\n-109.49, 44.5009\n-109.4987, 44.5009\n-109.4987, 44.507\n-109.5, 44.507";
        var at = ranch.send("take/fields/new", typed(arms)).header("Location").replaceAll("\\?.*", "");
        assertThat(ranch.client().get(at).body()).contains("Use a grid");
        var grid = ranch.client().get(at + "?stops=15&seed=1&grid=yes").body();
        assertThat(grid).contains("in an even grid").doesNotContain("Use a grid");
    }

    @Test
    void clippedPlotsOfNonsenseAreAskedAbout() {
        var at = ranch.send("take/fields/new", typed(BENCH)).header("Location").replaceAll("\\?.*", "");
        assertThat(ranch.client().get(at).body()).doesNotContain("value=\"90\"");
        var asks = at + "?stops=15&seed=1&areaM2=1&usablePercent=25&grams=100+90+";
        assertThat(ranch.client().get(asks + "95&dryMatterPercent=0.9").body()).contains("Did you mean 90 %?");
        assertThat(ranch.client().get(asks + "100000&dryMatterPercent=30").body())
                .contains("100,000 g is 1,000 times the middle plot’s 100 g");
        // 95 g of 30 % on a square foot: 95 · 0.30 · 96.03 lb/acre a gram
        assertThat(ranch.client().get(asks + "95&dryMatterPercent=30").body()).contains("Dry matter: about 2,7");
        assertThat(ranch.client().get(asks + "95").body()).contains("Dry a handful");
    }
}
