package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.BentBucket;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.outlook.LotTons;
import haywright.quantity.Preset;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.sampling.Material;
import haywright.sampling.stock.Stock;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A ranch that is read in pounds, tonnes of 1,000 kg and °C. */
class WesternCanadaTest {
    /** International Yard and Pound Agreement 1959: 1 lb is 0.45359237 kg, so that a tonne is 1.10231 tons of 2,000 lb. */
    private static final double TONS_A_TONNE = 1.10231;

    /** Words and signs that such a ranch has no use for. */
    private static final Pattern US =
            Pattern.compile(".{0,60}(?:°F|\\btons?\\b|\\bmph\\b).{0,30}", Pattern.CASE_INSENSITIVE);

    private static final Pattern LINK = Pattern.compile("href=\"(/[^\"#]*)");

    /** Pages of one equation each, in the units of whoever published it. */
    private static final Pattern AS_PUBLISHED =
            Pattern.compile("/(?:figure/|workings|need\\b|at\\b)|/sources|/history");

    @RegisterExtension
    private final OneRanch one = new OneRanch();

    private static Ranch western(Ranch ranch) {
        return ranch.with(ranch.settings().withPreset(Preset.WESTERN_CANADA));
    }

    /** What a person reads of it: no workings, which are in the units of their equations, and no choice of units. */
    private static String read(String html) {
        return html.replaceAll("(?s)<script.*?</script>|<style.*?</style>|<head>.*?</head>", " ")
                .replaceAll("(?s)<details class=\"workings\".*?</details>", " ")
                .replaceAll("(?s)<label class=\"tick\">.*?</label>|<option.*?</option>", " ")
                .replaceAll("(?s)<ol class=\"lines\">.*?</ol>", " ")
                .replaceAll("<[^>]+>", "\n")
                .replace("&nbsp;", " ")
                .replace('\u00a0', ' ');
    }

    /** Without what sources say in their own words, and what somebody typed. */
    private static String unquoted(String text, Ranch ranch) {
        var left = text;
        for (var feed : ranch.feedsForSale().values()) {
            left = feed.delivery().isEmpty()
                    ? left
                    : left.replace(feed.delivery().replace("'", "&#39;"), "");
            left = feed.delivery().isEmpty() ? left : left.replace(feed.delivery(), "");
        }
        for (var material : Material.values()) {
            left = left.replace(material.method().lot(), "");
        }
        return left;
    }

    /** Every page and paper that its links lead to, pages of a kind with the same numbers once. */
    @Test
    void noPageAndNoPaperSpeaksOfTonsOrFahrenheit() throws Exception {
        var ranch = western(TinLantern.ranch());
        one.store().ranches().create(ranch);
        var browser = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
        var base = "http://127.0.0.1:" + one.port();
        get(browser, base + "/?key=" + one.key());
        var begin = "/ranch/" + ranch.id() + "/";
        await(browser, base + begin + "winter");
        var open = new ArrayDeque<String>();
        var seen = new HashSet<String>();
        open.add(begin);
        var found = new TreeMap<String, String>();
        int pages = 0;
        int papers = 0;
        while (!open.isEmpty()) {
            var at = open.poll();
            var answer = get(browser, base + at);
            var type = answer.headers().firstValue("Content-Type").orElse("");
            if (answer.statusCode() != 200 || !(type.contains("html") || type.contains("pdf"))) {
                continue;
            }
            var text = type.contains("pdf") ? pdf(answer.body()) : new String(answer.body(), StandardCharsets.UTF_8);
            if (type.contains("html")) {
                LINK.matcher(text)
                        .results()
                        .map(link -> link.group(1).replace("&amp;", "&"))
                        .forEach(link -> {
                            if (link.startsWith(begin) && !link.contains("export") && seen.add(kind(link))) {
                                open.add(link);
                            }
                        });
                pages++;
            } else {
                papers++;
            }
            if (!AS_PUBLISHED.matcher(at).find()) {
                var us = US.matcher(unquoted(read(text), ranch));
                if (us.find()) {
                    found.put(at, us.group().strip());
                }
            }
        }
        assertThat(pages).isGreaterThan(200);
        assertThat(papers).isGreaterThan(10);
        assertThat(found).isEmpty();
    }

    /**
     * The weeks of a group's need, the figures of a herd, two choices of a winter, steps left out, a feed's worth and a
     * lot for a group are each the same page with other numbers.
     */
    private static String kind(String link) {
        return link.replaceAll("\\?on=.*", "")
                .replaceAll("(herd/[0-9a-f-]+/figure)/.*", "$1")
                .replaceAll("(winter/with|short[?]not)[/=].*", "$1")
                .replaceAll("bench/[0-9a-f-]+/buy.*", "buy")
                .replaceAll("match/[0-9a-f-]+/([0-9a-f-]+)/.*", "match/$1");
    }

    private static HttpResponse<byte[]> get(HttpClient browser, String at) throws IOException, InterruptedException {
        return browser.send(HttpRequest.newBuilder(URI.create(at)).build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    private static void await(HttpClient browser, String at) throws IOException, InterruptedException {
        while (new String(get(browser, at).body(), StandardCharsets.UTF_8).contains("hx-trigger=\"every")) {
            Thread.sleep(500);
        }
    }

    private static String pdf(byte[] body) throws IOException {
        try (var paper = Loader.loadPDF(body)) {
            return new PDFTextStripper().getText(paper);
        }
    }

    /** Every lot of the demo, by its id: its tons over 1.10231 are the tonnes that its row says. */
    @Test
    void everyLotHasItsTonnes() {
        var ranch = western(TinLantern.ranch());
        one.store().ranches().create(ranch);
        int compared = 0;
        for (var lot : ranch.lots().values()) {
            var kg = LotTons.of(lot).kg();
            if (kg.isEmpty()) {
                continue;
            }
            var page = one.client()
                    .get("/ranch/" + ranch.id() + "/lots/" + lot.id())
                    .body();
            var said = Pattern.compile("<b>([0-9,.]+) tonnes</b> as fed").matcher(page);
            assertThat(said.find()).as(lot.name()).isTrue();
            double tons = kg.getAsDouble() / 0.45359237 / 2000;
            double tonnes = Double.parseDouble(said.group(1).replace(",", ""));
            assertThat(tonnes).as(lot.name()).isCloseTo(tons / TONS_A_TONNE, within(tonnes < 9.95 ? 0.05 : 0.5));
            compared++;
        }
        assertThat(compared).isGreaterThan(5);
        // the mean of January: °C is five ninths of what °F is over 32
        double celsius = ranch.settings().weather().normals().monthly().get(0);
        var settings = one.client().get("/ranch/" + ranch.id() + "/settings").body();
        var january = Pattern.compile("([−0-9]+) °C, mean of the month").matcher(settings);
        assertThat(january.find()).isTrue();
        double fahrenheit = celsius * 9 / 5 + 32;
        assertThat(Double.parseDouble(january.group(1).replace('−', '-')))
                .isCloseTo((fahrenheit - 32) * 5 / 9, within(0.5));
    }

    /** Head times pounds times days, over the 2,204.6 lb of a tonne. */
    @Test
    void theLadderComesOutWithAPencilInTonnes() {
        var ranch = western(BentBucket.ranch());
        one.store().ranches().create(ranch);
        var page =
                read(one.client().get("/ranch/" + ranch.id() + "/bench/short").body());
        var lines = Pattern.compile("([0-9,]+) head × ([0-9.]+) lb × ([0-9]+) days? = ([0-9,.]+) tonnes")
                .matcher(page)
                .results()
                .toList();
        assertThat(lines).isNotEmpty();
        for (var line : lines) {
            double headDays = Double.parseDouble(line.group(1).replace(",", "")) * Double.parseDouble(line.group(3));
            double tonnes = headDays * Double.parseDouble(line.group(2)) / 2204.6;
            // the pounds are printed to a tenth
            assertThat(Double.parseDouble(line.group(4).replace(",", "")))
                    .as(line.group())
                    .isCloseTo(tonnes, within(0.05 + headDays * 0.05 / 2204.6));
        }
    }

    private Map<String, String> weighed(String mass) {
        var lot = new LinkedHashMap<String, String>();
        lot.put("name", "Stack by scale");
        lot.put("feedClass", "grass_hay");
        lot.put("storage", "tarped");
        lot.put("mass", mass);
        lot.put("replacementPrice", "150");
        return lot;
    }

    /** 100 is 100 tonnes, 100,000 kg; a unit that is typed wins, and what was typed comes back. */
    @Test
    void aNumberIsReadInTheUnitBesideItsBox() {
        one.change(WesternCanadaTest::western);
        assertThat(one.send("lots/new/weighed", "lots/new/weighed", weighed("100"))
                        .status())
                .isEqualTo(303);
        var lot = one.kept().lots().values().iterator().next();
        assertThat(((Stock.Weighed) lot.stock()).mass()).isEqualTo(Quantity.of(100, Unit.TONNE));
        assertThat(LotTons.of(lot).kg().orElseThrow()).isEqualTo(100_000);
        assertThat(lot.replacementPrice()).isEqualTo(Quantity.of(150, Unit.DOLLAR_PER_TONNE));
        assertThat(one.get("lots/" + lot.id()).body()).contains("<b>100 tonnes</b>", "value=\"100\"");
        // the same ranch read in U.S. units: 100 tonnes are 110 tons, and the box has what was typed
        one.change(now -> now.with(now.settings().withPreset(Preset.US)));
        assertThat(one.get("lots/" + lot.id()).body()).contains("<b>110 tons</b>", "value=\"100 tonnes\"");
        var typed = weighed("100 tons");
        typed.put("name", "Another");
        one.change(WesternCanadaTest::western);
        assertThat(one.send("lots/new/weighed", "lots/new/weighed", typed).status())
                .isEqualTo(303);
        var other = one.kept().lots().values().stream()
                .filter(kept -> kept.name().equals("Another"))
                .findFirst()
                .orElseThrow();
        assertThat(((Stock.Weighed) other.stock()).mass()).isEqualTo(Quantity.of(100, Unit.TON));
        // 100 tons of 2,000 lb: 90,718 kg
        assertThat(one.get("lots/" + other.id()).body()).contains("<b>91 tonnes</b>", "value=\"100 tons\"");
    }

    /** A form that was open when the units were changed is read in those that stood beside its boxes. */
    @Test
    void aFormIsReadInTheUnitsThatItShowed() {
        var open = one.get("lots/new/weighed");
        one.change(WesternCanadaTest::western);
        assertThat(one.submit(open, "lots/new/weighed", weighed("100")).status())
                .isEqualTo(303);
        var lot = one.kept().lots().values().iterator().next();
        assertThat(((Stock.Weighed) lot.stock()).mass()).isEqualTo(Quantity.of(100, Unit.TON));
    }

    /** Where nobody chose, a ranch in a province is read in its units; any other as before. */
    @Test
    void thePlaceSaysTheUnitsUntilSomebodyChooses() {
        var there = RanchWeather.of(FoundPlace.of("Estevan, SK", null, 0));
        assertThat(one.kept().at(there).settings().measures()).isEqualTo(Preset.WESTERN_CANADA);
        var here = RanchWeather.of(FoundPlace.of("Valentine, NE", null, 0));
        assertThat(one.kept().at(here).settings().measures()).isEqualTo(Preset.US);
        // a place that was said before units could be chosen moves nothing
        assertThat(one.kept().at(here).at(there).settings().measures()).isEqualTo(Preset.US);
        one.change(now -> now.at(here));
        assertThat(one.send(
                                "settings/weather",
                                "settings/weather/place",
                                Map.of("town", "Valentine, NE", "units", "western_canada"))
                        .status())
                .isEqualTo(303);
        assertThat(one.kept().settings().measures()).isEqualTo(Preset.WESTERN_CANADA);
        assertThat(read(one.get("settings/weather").body()))
                .contains("°C", "km/h")
                .doesNotContain("°F", "mph");
    }

    /** An old document has no units and reads as it did; a chosen one is kept. */
    @Test
    void theUnitsAreAnOptionalPartOfTheDocument() {
        var documents = new RanchDocument();
        var before = documents.tree(TinLantern.ranch());
        assertThat(before.path("settings").has("preset")).isFalse();
        assertThat(documents.ranch(before).settings().measures()).isEqualTo(Preset.US);
        var tree = documents.tree(western(TinLantern.ranch()));
        assertThat(tree.path("settings").path("preset").asText()).isEqualTo("western_canada");
        assertThat(documents.ranch(tree).settings().measures()).isEqualTo(Preset.WESTERN_CANADA);
    }
}
