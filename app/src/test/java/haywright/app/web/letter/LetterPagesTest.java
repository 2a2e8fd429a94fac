package haywright.app.web.letter;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import haywright.cattle.herd.Group;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LetterPagesTest {
    private final HttpClient browser = HttpClient.newBuilder()
            .cookieHandler(new CookieManager())
            .followRedirects(HttpClient.Redirect.NORMAL)
            .build();

    @TempDir
    private Path folder;

    private Store store;
    private Server server;
    private Ranch ranch;
    private Group cows;

    @BeforeEach
    void openTheDemo() throws Exception {
        store = Store.inFolder(folder, Clock.systemUTC());
        ranch = store.ranches().create(TinLantern.ranch()).ranch();
        cows = ranch.groups().values().iterator().next();
        var home = Home.in(folder);
        server =
                Server.start(new Desk(store, Clock.systemUTC(), TinLantern::ranch), home, "127.0.0.1", 0, routes -> {});
        browser.send(HttpRequest.newBuilder(at("?key=" + home.key())).build(), HttpResponse.BodyHandlers.discarding());
    }

    @AfterEach
    void close() {
        server.close();
        store.close();
    }

    private URI at(String path) {
        return URI.create("http://127.0.0.1:%d/ranch/%s/%s".formatted(server.port(), ranch.id(), path));
    }

    private String get(String path) throws Exception {
        var answer = browser.send(HttpRequest.newBuilder(at(path)).build(), HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        return answer.body();
    }

    private String print(String size) throws Exception {
        var answer = browser.send(
                HttpRequest.newBuilder(at(letter() + "/print/" + size)).build(),
                HttpResponse.BodyHandlers.ofByteArray());
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/pdf");
        try (var pdf = Loader.loadPDF(answer.body())) {
            return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }
    }

    /** Sends the page's form as a browser without scripts does: its hidden fields, and these boxes. */
    private String post(String path, Map<String, String> boxes) throws Exception {
        var page = get(letter());
        var fields = new java.util.LinkedHashMap<>(boxes);
        fields.put("token", hidden(page, "token"));
        fields.put("rev", hidden(page, "rev"));
        var body = fields.entrySet().stream()
                .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        var answer = browser.send(
                HttpRequest.newBuilder(at(path))
                        .header("Content-Type", "application/x-www-form-urlencoded")
                        .POST(HttpRequest.BodyPublishers.ofString(body))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(200);
        return answer.body();
    }

    private static String hidden(String page, String name) {
        var found = Pattern.compile("name=\"%s\" value=\"([^\"]*)\"".formatted(name))
                .matcher(page);
        assertThat(found.find()).isTrue();
        return found.group(1);
    }

    private String letter() {
        return "letter/" + cows.id();
    }

    @Test
    void everyGroupIsListedAndItsLetterShown() throws Exception {
        assertThat(get("letter")).contains("Mature cows", "Bulls", "Not saved");
        assertThat(get(letter())).contains("Not saved", "240 head", "What to do", "An invented ranch");
    }

    @Test
    void writtenWordsAreKeptPrintedAndOutliveNewFigures() throws Exception {
        var kept = post(letter(), Map.of("own", "Chain the <gate>.", "what_to_do", "Feed them\r\nwell."));
        assertThat(kept).contains("Kept, with the figures of", "Chain the &lt;gate&gt;.");
        assertThat(print("letter.pdf")).contains("Chain the <gate>.", "Feed them well.", "This costs");

        changeWhatIsFedNow();
        assertThat(get(letter())).contains("The figures are out of date", "Chain the &lt;gate&gt;.");
        assertThat(get("letter")).contains("Out of date");
        var before = print("a4.pdf");

        var anew = post(letter() + "/anew", Map.of());
        assertThat(anew)
                .contains("Kept, with the figures of", "Chain the &lt;gate&gt;.")
                .doesNotContain("The figures are out of date");
        assertThat(print("a4.pdf")).isNotEqualTo(before).contains("Chain the <gate>.", "Feed them well.");
    }

    @Test
    void anEmptiedPartSaysAgainWhatWasWorkedOut() throws Exception {
        assertThat(post(letter(), Map.of("why", "Because."))).contains("You wrote this");
        assertThat(post(letter(), Map.of("why", ""))).doesNotContain("You wrote this");
        assertThat(print("letter.pdf")).contains("This costs").doesNotContain("Because.");
    }

    @Test
    void onlyPapersThatPrintersHoldArePrinted() throws Exception {
        var answer = browser.send(
                HttpRequest.newBuilder(at(letter() + "/print/a3.pdf")).build(), HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(404);
    }

    private void changeWhatIsFedNow() {
        var opened = store.ranches().open(ranch.id());
        var hay = ranch.lots().keySet().iterator().next();
        var more = opened.ranch().with(new FedNow(cows.id(), Map.of(hay, Quantity.of(5, Unit.POUND_A_DAY))));
        store.ranches().save(ranch.id(), opened.rev(), "test", "less hay", more);
    }

    /** The copy stays word for word when the letter is worked out anew; its reports are known by number, overrides by name. */
    @Test
    void aSignedLetterIsKeptWithItsReportsAndOverrides() throws Exception {
        post(letter(), Map.of("why", "Because I say so."));
        var signing = get(letter() + "/sign");
        assertThat(signing).contains("June Harrow", "Pivot hay, first cutting: ", "Words written by hand: Why");
        post(letter() + "/sign", Map.of("by", "June Harrow"));
        post(letter() + "/anew", Map.of());
        post(letter(), Map.of("why", "Another reason."));
        var signed = store.ranches().open(ranch.id()).ranch().signed().values();
        assertThat(signed).hasSize(1);
        var one = signed.iterator().next();
        assertThat(one.by()).isEqualTo("June Harrow");
        assertThat(one.reports()).isNotEmpty().allMatch(report -> report.contains("number"));
        assertThat(one.overrides()).contains("Words written by hand: Why");
        assertThat(one.letter().words()).containsEntry("why", "Because I say so.");
        assertThat(get(letter() + "/signed/" + one.id())).contains("Because I say so.", "June Harrow");
    }

    /** Each feed is loaded up to what the scale reads: the pounds before it and its own. */
    @Test
    void theWagonCardHasRunningReadingsAndABoxForWhatWasFed() throws Exception {
        var card = get(letter() + "/card");
        var rows = Pattern.compile("<td>([0-9,]+)</td><td><b>([0-9,]+)</b></td>")
                .matcher(card)
                .results()
                .toList();
        assertThat(rows).hasSizeGreaterThan(1);
        int reading = 0;
        for (var row : rows) {
            reading += Integer.parseInt(row.group(1).replace(",", ""));
            assertThat(Integer.parseInt(row.group(2).replace(",", ""))).isEqualTo(reading);
        }
        assertThat(card.split("class=\"really\"", -1).length - 1).isEqualTo(rows.size());
        assertThat(card).contains("240 head", "east gate", "orange paint");
        for (var size : java.util.List.of("letter", "a4")) {
            var answer = browser.send(
                    HttpRequest.newBuilder(at(letter() + "/card/" + size + ".pdf"))
                            .build(),
                    HttpResponse.BodyHandlers.ofByteArray());
            try (var pdf = Loader.loadPDF(answer.body())) {
                assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            }
        }
    }

    @Test
    void phonesMarkAndGateAreSaidOnceAndStandOnTheLetterAndInTheFileForAPhone() throws Exception {
        assertThat(get(letter())).contains("308.555.0142", "308.555.0173", "orange paint", "east gate");
        post(letter() + "/who", Map.of("adviserPhone", "(701) 555-0100", "paintMark", "green", "gate", "west"));
        var file = get(letter() + "/phone/letter.html");
        assertThat(file)
                .contains("701.555.0100", "green", "west", "name=\"viewport\"")
                .doesNotContain("<script", "/static/", "http-equiv");
        assertThat(file.getBytes(StandardCharsets.UTF_8).length).isLessThan(100_000);
        var message = get(letter()).replaceAll("(?s).*As a text message.*?<p[^>]*>(.*?)</p>.*", "$1");
        assertThat(message).contains("Mature cows", "240 head", "701.555.0100", "Do not feed Oat hay");
        assertThat(message.length()).isLessThan(800);
    }
}
