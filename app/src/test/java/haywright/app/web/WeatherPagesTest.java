package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.web.ranch.RecordForm;
import haywright.app.words.HerdWords;
import haywright.cattle.cold.Coat;
import haywright.quantity.Unit;
import haywright.weather.DailyWeather;
import haywright.weather.Station;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A station's record brought to a new ranch, without scripts: the wrong file first, then the right one, then out again. */
class WeatherPagesTest {
    private static final String RECORD = "settings/weather/record";
    private static final Station PART =
            Station.fortCollins().between(LocalDate.of(1960, 1, 1), LocalDate.of(1999, 12, 31));

    static final Map<String, String> BULLS = Map.of(
            "name",
            "Bulls",
            "head",
            "4",
            "weight",
            "1900",
            "shrunk",
            "no",
            "weighedOn",
            "Nov 12, 2026",
            "matureWeight",
            "1900",
            "conditionScore",
            "5",
            "gain",
            "0");

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private RawClient.Answer upload(String content) {
        return ranch.client().upload(ranch.get("settings/weather"), ranch.path() + RECORD, "station.csv", content);
    }

    private RawClient.Answer send(String path, Map<String, String> fields) {
        return ranch.send("settings/weather", path, fields);
    }

    private static String csv(Function<DailyWeather, String> values) {
        return "STATION,DATE,NAME,TMAX,TMIN,AWND\n"
                + PART.days().stream()
                        .map(d -> "USC1,%s,\"TOWN, CO US\",%s\n".formatted(d.date(), values.apply(d)))
                        .collect(Collectors.joining());
    }

    private static String fahrenheit(DailyWeather d) {
        return String.format(
                Locale.ROOT, "%.0f,%.0f,10", Unit.FAHRENHEIT.fromBase(d.high()), Unit.FAHRENHEIT.fromBase(d.low()));
    }

    private static Map<String, String> stand() {
        var stand = new LinkedHashMap<String, String>();
        stand.put("wind", "6 mph");
        stand.put("coat", "heavy_winter");
        stand.put("hide", "some_mud");
        stand.put("coldSystem", "heat_balance");
        return stand;
    }

    @Test
    void aRecordInFahrenheitIsFoundOutKeptAndTakenOut() {
        var saved = upload(csv(WeatherPagesTest::fahrenheit));
        assertThat(saved.status()).isEqualTo(303);
        var page = ranch.after(saved).body();
        assertThat(page)
                .contains("Weather of TOWN, CO US imported", "the latest 30 whole ones, to spring 1999")
                .contains("none missing", "daily, where a winter has all its days");
        var weather = ranch.kept().settings().weather();
        assertThat(weather).isNotNull();
        assertThat(weather.blows().in(Unit.MILE_AN_HOUR)).isEqualTo(10);
        assertThat(weather.departures()).hasSize(12);
        assertThat(ranch.kept().winters()).isNotNull();

        // how they stand in it is said on top; the record stays
        assertThat(send("settings/weather", stand()).status()).isEqualTo(303);
        var changed = ranch.kept().settings().weather();
        assertThat(changed).isNotNull();
        assertThat(changed.monthly()).isEqualTo(weather.monthly());
        assertThat(changed.departures()).isEqualTo(weather.departures());
        assertThat(changed.blows().value()).isEqualTo(6);

        assertThat(send("settings/weather/forget", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.kept().settings().weather()).isNull();
        assertThat(ranch.kept().winters()).isNull();
        assertThat(ranch.get("settings").body()).contains("not entered: needs are for mild days");
        assertThat(ranch.get("settings/weather").body()).doesNotContain("Delete the weather");

        // and is back as it was when that is undone
        var history = ranch.get("history");
        var undo = history.body().replaceAll("(?s).*?action=\"[^\"]*/(undo/[0-9]+)\".*", "$1");
        assertThat(ranch.submit(history, undo, Map.of()).status()).isEqualTo(303);
        assertThat(ranch.kept().settings().weather()).isEqualTo(changed);
        assertThat(ranch.kept().winters()).isNotNull();
    }

    /** Named from the bench, which figures for mild weather until then; then chosen among several, moved, undone. */
    @Test
    void aPlaceByItsNameIsUnderstoodAndMoved() {
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", BULLS).status()).isEqualTo(303);
        var asked = ranch.get("bench");
        assertThat(asked.body()).contains("Figured for mild weather.", "id=\"f-town\"");
        var several = ranch.submit(asked, "settings/weather/place", Map.of("town", "Lincoln", "then", "bench"));
        assertThat(several.status()).isEqualTo(422);
        assertThat(several.body())
                .contains("href=\"#f-town\"", "value=\"Lincoln, NE\"", "value=\"Lincoln, MT\"")
                .contains("name=\"then\" value=\"bench\"");
        assertThat(ranch.kept().settings().weather()).isNull();
        var chosen = ranch.submit(
                several, "settings/weather/place", Map.of("town", "Lincoln", "which", "Lincoln, MT", "then", "bench"));
        assertThat(chosen.status()).isEqualTo(303);
        var bench = ranch.after(chosen);
        assertThat(bench.body()).contains("The ranch is at Lincoln, MT").doesNotContain("Figured for mild weather.");
        var day = LocalDate.of(2026, 11, 25);
        var settings = ranch.kept().settings();
        var group = ranch.kept().groups().keySet().iterator().next();
        var groups = ranch.kept().groups().values();
        assertThat(ranch.get("herd").body()).contains(HerdWords.figured(settings, groups, day, day, false));
        // the need of another day says the coat of that day
        var may = LocalDate.of(2027, 5, 15);
        assertThat(ranch.get("herd/" + group + "/need?on=2027-05-15").body())
                .contains(HerdWords.figured(settings, groups, may, may, false));
        // four bulls: four times the pounds that one is shown to eat
        var eats = Pattern.compile("about ([0-9,]+) lb of dry.*?about ([0-9]+) lb \\(", Pattern.DOTALL)
                .matcher(ranch.get("herd").body());
        assertThat(eats.find()).isTrue();
        assertThat(Integer.parseInt(eats.group(1).replace(",", ""))).isEqualTo(4 * Integer.parseInt(eats.group(2)));
        for (var shown : List.of("bench", "letter")) {
            assertThat(ranch.get(shown).body()).as(shown).contains(HerdWords.figured(settings, groups, day, day, true));
        }
        assertThat(ranch.get("herd/" + group).body())
                .contains(HerdWords.figured(settings, groups, day, day.plusWeeks(26), true));
        var weather = ranch.kept().settings().weather();
        assertThat(weather).isNotNull();
        assertThat(weather.found()).isNotNull();
        assertThat(weather.found().typed()).isEqualTo("Lincoln");
        assertThat(ranch.kept().knownWinters()).hasSize(28);

        var page = ranch.get("settings/weather").body();
        assertThat(page).contains("Picked by distance; in hill");
        assertThat(page).contains("you entered “Lincoln”", "miles away", "1995-96", "14 %", "id=\"winters-title\"");
        double before = weather.normals().monthly().get(0);
        var moved = send("settings/weather/place", Map.of("town", "Lincoln, MT", "warmer", "-3", "height", "4500 ft"));
        assertThat(moved.status()).isEqualTo(303);
        var colder = ranch.kept().settings().weather();
        assertThat(colder).isNotNull();
        assertThat(colder.found()).isNotNull();
        assertThat(ranch.get("settings/weather").body()).contains("Picked by distance and elevation");
        assertThat(colder.found().warmerByF()).isEqualTo(-3);
        assertThat(colder.blows()).isEqualTo(weather.blows());
        assertThat(before).isGreaterThan(-30);

        // how they stand in it is said on top; the place stays
        assertThat(send("settings/weather", stand()).status()).isEqualTo(303);
        var stands = ranch.kept().settings().weather();
        assertThat(stands).isNotNull();
        assertThat(stands.found()).isEqualTo(colder.found());
        assertThat(stands.coat()).isEqualTo(Coat.HEAVY_WINTER);
    }

    /** The page has one form and one button: what is colder, the wind and the coat are kept together. */
    @Test
    void oneSaveKeepsAllThatWasTyped() {
        assertThat(send("settings/weather/place", Map.of("town", "Valentine, NE"))
                        .status())
                .isEqualTo(303);
        var body = ranch.get("settings/weather").body();
        for (var box : List.of("town", "warmer", "height", "wind", "windbreak", "coat", "hide", "coldSystem")) {
            assertThat(body).as(box).containsOnlyOnce("id=\"f-" + box + "\"");
        }
        assertThat(body).doesNotContain("action=\"" + ranch.path() + "settings/weather\"");
        var all = Map.of(
                "town",
                "Valentine, NE",
                "warmer",
                "3",
                "wind",
                "9",
                "windbreak",
                "yes",
                "coat",
                "fall",
                "hide",
                "wet",
                "coldSystem",
                "heat_balance");
        assertThat(send("settings/weather/place", all).status()).isEqualTo(303);
        var kept = ranch.kept().settings().weather();
        assertThat(kept).isNotNull();
        assertThat(kept.found()).isNotNull();
        assertThat(kept.found().warmerByF()).isEqualTo(3);
        assertThat(kept.blows().value()).isEqualTo(9);
        assertThat(kept.coat()).isEqualTo(Coat.FALL);
        assertThat(kept.coldSystem()).isEqualTo(haywright.cattle.cold.ColdSystem.HEAT_BALANCE);
    }

    /** A record stays where no town is typed, and what is typed beside it is kept. */
    @Test
    void aRecordStaysWhereNoTownIsTyped() {
        assertThat(upload(csv(WeatherPagesTest::fahrenheit)).status()).isEqualTo(303);
        assertThat(send(
                                "settings/weather/place",
                                Map.of("town", "", "wind", "7", "hide", "dry", "coldSystem", "heat_balance"))
                        .status())
                .isEqualTo(303);
        var kept = ranch.kept().settings().weather();
        assertThat(kept).isNotNull();
        assertThat(kept.departures()).hasSize(12);
        assertThat(kept.blows().value()).isEqualTo(7);
        assertThat(ranch.kept().winters()).isNotNull();
    }

    /** The tables have not every state: Illinois has a McHenry County too. */
    @Test
    void aCountyWithoutItsStateIsAskedAbout() {
        var asked = send("settings/weather/place", Map.of("town", "McHenry County"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("McHenry County, ND", "name=\"confirm\" value=\"state\"");
        assertThat(ranch.kept().settings().weather()).isNull();
        assertThat(send("settings/weather/place", Map.of("town", "McHenry County", "confirm", "state"))
                        .status())
                .isEqualTo(303);
        var many = send("settings/weather/place", Map.of("town", "Lincoln County"));
        assertThat(many.body()).contains("more: add the state");
    }

    /** Until they are said, wind, windbreak and coat are named on every page that shows a figure they move. */
    @Test
    void whatNobodySaidOfTheWindIsNamedUntilItIsSaid() {
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", BULLS).status()).isEqualTo(303);
        var place = ranch.get("settings/weather");
        assertThat(place.body()).contains("id=\"f-wind\"", "name=\"windbreak\" value=\"no\"");
        assertThat(send("settings/weather/place", Map.of("town", "Valentine, NE", "windbreak", ""))
                        .status())
                .isEqualTo(303);
        var weather = ranch.kept().settings().weather();
        assertThat(weather).isNotNull();
        assertThat(weather.wind()).isNull();
        assertThat(weather.windbreak()).isNull();
        assertThat(weather.isSheltered()).isFalse();
        for (var path : List.of("herd", "bench", "letter", "settings/weather")) {
            assertThat(ranch.get(path).body()).as(path).contains("8 mph", "no windbreak");
        }
        assertThat(ranch.get("settings/weather").body()).doesNotContain("value=\"8\"");

        var said = Map.of("town", "Valentine, NE", "wind", "11", "windbreak", "no");
        assertThat(send("settings/weather/place", said).status()).isEqualTo(303);
        var now = ranch.kept().settings().weather();
        assertThat(now).isNotNull();
        assertThat(now.blows().value()).isEqualTo(11);
        assertThat(now.windbreak()).isFalse();
        assertThat(HerdWords.taken(ranch.kept().settings())).doesNotContain("wind");
        assertThat(send("settings/weather", stand()).status()).isEqualTo(303);
        assertThat(HerdWords.taken(ranch.kept().settings())).isEmpty();
        var stands = ranch.kept().settings().weather();
        assertThat(stands).isNotNull();
        assertThat(stands.wind()).isEqualTo(now.wind());
        assertThat(stands.windbreak()).isFalse();

        var wild = Map.of("town", "Valentine, NE", "wind", "300 km/h", "windbreak", "perhaps");
        assertThat(send("settings/weather/place", wild).body()).contains("href=\"#f-wind", "href=\"#f-windbreak");
        assertThat(ranch.kept().settings().weather()).isEqualTo(stands);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | '' | f-town | nearest town",
                "Valentin, NE | '' | f-town | Valentine, NE",
                "Amarillo, TX | '' | f-town | nearest weather station",
                "Valentine, NE | 60 | f-warmer | 20 °F",
                "Valentine, NE | cold | f-warmer | cold"
            })
    void aPlaceThatCannotBeIsRefusedBesideItsBox(String town, String warmer, String box, String words) {
        var answer = send("settings/weather/place", Map.of("town", town, "warmer", warmer));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("href=\"#" + box).contains(words);
        assertThat(ranch.kept().settings().weather()).isNull();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | the file is empty",
                "hello | a line of .dly has a station",
                "PK\u0003\u0004\u0000\u0000x | not a text of days",
                "STATION,DATE,TMAX,TMIN\\nA,2020-01-01,5,-5 | does not show whether it is °F, °C",
                "A,20200101,TMAX,39,,,0,\\nB,20200102,TMAX,39,,,0, | the file holds one station",
                "A,20200101,TMAX,39,,,0,\\nA,20200101,TMIN,9,,,0, | 0 days in February",
                "A,20200101,TMAX,39,,X,0,\\nA,20200101,TMIN,9,,,0, | no day has both a high and a low"
            })
    void anotherFileIsRefusedBesideItsBox(String content, String words) {
        var answer = upload(content.replace("\\n", "\n"));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("href=\"#f-").contains(words).contains("Error: ");
        assertThat(ranch.kept().settings().weather()).isNull();
    }

    @Test
    void monthsThatCannotBeAreRefusedBesideTheirBoxes() {
        var typed = stand();
        typed.put("place", "the yard");
        for (var month : java.time.Month.values()) {
            typed.put(month.name().toLowerCase(Locale.ROOT), "40");
        }
        typed.put("january", "-80 C");
        typed.put("july", "230");
        var answer = send("settings/weather", typed);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("href=\"#f-january\"", "href=\"#f-july\"", "value=\"-80 C\"");
        typed.put("january", "20");
        typed.put("july", "65");
        typed.put("wind", "300 km/h");
        assertThat(send("settings/weather", typed).body()).contains("href=\"#f-wind\"");
        typed.put("wind", "8");
        assertThat(send("settings/weather", typed).status()).isEqualTo(303);
    }

    @Test
    void fahrenheitUnderCelsiusIsAskedFor() {
        var page = ranch.get("settings/weather");
        var told = csv(WeatherPagesTest::fahrenheit)
                + "\r\n--part-of-a-form\r\nContent-Disposition: form-data; name=\"units\"\r\n\r\nmetric";
        var answer = ranch.client().upload(page, ranch.path() + RECORD, "station.csv", told);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains("href=\"#f-units\"").contains("Are they °F?");
    }

    private static byte[] gzip(int times, String of) {
        var packed = new ByteArrayOutputStream();
        try (var out = new GZIPOutputStream(packed)) {
            for (int i = 0; i < times; i++) {
                out.write(of.getBytes(StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    private static String dly(String month, String values) {
        return "USC00053005" + month + "TMAX" + values + "\n";
    }

    private static Map<String, byte[]> hostile() {
        var month = "  123   ".repeat(31);
        var text = new LinkedHashMap<String, String>();
        text.put("a line cut short", dly("202001", month) + "USC00053005202002TMAX  12");
        text.put("a month that is none", dly("202013", month));
        text.put("a year without end", dly("99999901", month));
        text.put("letters for figures", dly("202001", "  abc   ".repeat(31)));
        text.put("NUL far down", dly("202001", month).repeat(30) + "\0".repeat(300));
        text.put("NUL in a line of columns", dly("202001", "  1\0003   ".repeat(31)));
        text.put("nothing but ends of lines", "\n".repeat(30_000_000));
        text.put("a quotation mark that stays open", "DATE,TMAX,TMIN\n2020-01-01,\"1,2\n".repeat(1000));
        text.put("headings without end", "DATE" + ",DATE".repeat(12_000) + "\n2020-01-01,1\n");
        text.put("figures beyond all", "DATE,TMAX,TMIN\n2020-01-01,1e308,-1e308\n2020-01-02,NaN,Infinity\n");
        text.put("days that are none", "DATE,TMAX,TMIN\n2020-02-31,1,0\n+999999999-12-31,1,0\n");
        text.put("a value a line, of no day", "USC1,20201301,TMAX,123,,,7,\n");
        text.put("a page of the web", "<!doctype html><title>404</title>");
        text.put("no figures", "DATE,TMAX,TMIN\n" + "2020-01-01,,\n".repeat(1000));
        text.put("a zip", "PK\003\004" + "x".repeat(300));
        text.put("nothing", "");
        var all = new LinkedHashMap<String, byte[]>();
        text.forEach((what, content) -> all.put(what, content.getBytes(StandardCharsets.UTF_8)));
        all.put("sixteen bits a letter", "DATE,TMAX,TMIN\n2020-01-01,1,0\n".getBytes(StandardCharsets.UTF_16));
        all.put("packed zeros", gzip(200, "\0".repeat(1_000_000)));
        all.put("packed lines without end", gzip(2000, dly("202001", month).repeat(400)));
        all.put("packed twice", gzip(1, "\u001f"));
        all.put("packed and cut", Arrays.copyOf(gzip(10, dly("202001", month)), 60));
        all.put("the head of a packed file", new byte[] {0x1f, (byte) 0x8b});
        return all;
    }

    /** Every one of them is said beside its box, and nothing is kept of it. */
    @Test
    void whateverIsNoRecordIsSaidBesideItsBox() {
        long rev = ranch.store().ranches().open(ranch.id()).rev();
        hostile().forEach((what, content) -> {
            var page = ranch.get("settings/weather");
            var answer = ranch.client().upload(page, ranch.path() + RECORD, "station.dly", content);
            assertThat(answer.status()).as(what).isEqualTo(422);
            assertThat(answer.body())
                    .as(what)
                    .contains("id=\"p-" + RecordForm.FILE.name() + "\"")
                    .doesNotContain("Exception", "java.");
        });
        assertThat(ranch.store().ranches().open(ranch.id()).rev()).isEqualTo(rev);
        assertThat(ranch.get("settings/weather").status()).isEqualTo(200);
    }

    /** More than any form takes is said before it is read to its end. */
    @Test
    void aFileOfFiftyMegabytesIsSaidToBeTooMuch() {
        var page = ranch.get("settings/weather");
        var answer = ranch.client().upload(page, ranch.path() + RECORD, "station.dly", new byte[50_000_000]);
        assertThat(answer.status()).isIn(413, 422);
        assertThat(answer.body()).contains("MB").doesNotContain("Exception", "java.");
    }
}
