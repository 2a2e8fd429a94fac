package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.BookDocument;
import haywright.app.document.RanchDocument;
import haywright.app.report.Paper;
import haywright.app.report.WinterPaper;
import haywright.app.store.WinterBooks;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FoundPlace;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.RanchWeather;
import haywright.sampling.CheckLetter;
import haywright.sampling.stock.Stock;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Match and the winter book, from a new ranch without anything, on November 25, without scripts. */
class WinterPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private static Ranch placed(Ranch now) {
        var weather = RanchWeather.of(FoundPlace.of("Valentine, NE", null, 0));
        return now.with(now.settings().with(weather).withTurnout(LocalDate.of(2027, 5, 5)));
    }

    private static final String MAKE_AGAIN = "<button class=\"plain\" type=\"submit\">Make it again</button>";

    /** Pages that show a line of the book. */
    private static final List<String> BESIDE = List.of("", "lots", "herd", "bench", "letter");

    private static Ranch lessHay(Ranch now) {
        var lot = now.lots().values().iterator().next();
        var fewer = new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 100, Quantity.of(1200, Unit.POUND), null, null, null);
        return now.with(new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                lot.where(),
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                fewer,
                lot.replacementPrice(),
                lot.nitrateRisk(),
                lot.notes(),
                lot.makeup(),
                lot.weathered(),
                lot.weighings()));
    }

    private static Map<String, String> week(String... boxes) {
        var typed = new LinkedHashMap<>(Map.of("from", "Nov 19, 2026", "to", "Nov 25, 2026"));
        for (int i = 0; i < boxes.length; i += 2) {
            typed.put(boxes[i], boxes[i + 1]);
        }
        return typed;
    }

    private String whole() throws InterruptedException {
        var page = ranch.get("winter").body();
        while (page.contains("hx-trigger=\"every")) {
            Thread.sleep(500);
            page = ranch.get("winter").body();
        }
        return page;
    }

    @Test
    void whatIsLackingIsSaid() throws Exception {
        assertThat(ranch.get("match").status()).isEqualTo(200);
        assertThat(whole()).contains("<li>").doesNotContain("class=\"do\"");
    }

    @Test
    void aBookIsMadeBesideThePageAndAskedToBeMadeAgainOnceTheRanchChanges() throws Exception {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var book = whole();
        assertThat(book).contains("class=\"do\"", "id=\"dots-title\"", "id=\"stack-title\"", "Ditch-side stack");
        assertThat(ranch.get("winter").body()).isEqualTo(book);
        for (var other : BESIDE) {
            assertThat(ranch.get(other).body()).as(other).contains("class=\"book-line\"");
        }
        assertThat(ranch.client().get("/").body()).contains("winter book of Nov 25");
        // two together by two taps
        var first = linked(ranch.get("winter/choices").body(), "winter/with/");
        var second = linked(ranch.get(first).body(), first + "/");
        var both = ranch.get(second);
        assertThat(both.status()).isEqualTo(200);
        assertThat(both.body()).contains("<table>");
        assertThat(ranch.get(second).body()).isEqualTo(both.body());
        assertThat(ranch.get(first + "/" + first.substring(first.lastIndexOf('/') + 1))
                        .status())
                .isEqualTo(404);
        assertThat(ranch.get("winter/with/nothing").status()).isEqualTo(404);
        // a name moves no figure; two hundred bales less do
        ranch.change(now -> now.withName("Another name"));
        assertThat(ranch.get("winter").body()).doesNotContain(MAKE_AGAIN);
        ranch.change(WinterPagesTest::lessHay);
        assertThat(ranch.get(second).body()).doesNotContain("<table>");
        var older = ranch.get("winter").body();
        assertThat(older).contains(MAKE_AGAIN, "href=\"" + ranch.path() + "history\"", "id=\"dots-title\"");
        for (var other : BESIDE) {
            assertThat(ranch.get(other).body())
                    .as(other)
                    .contains("class=\"book-older")
                    .doesNotContain("class=\"book-line\"");
        }
        assertThat(ranch.client().get("/").body()).doesNotContain("winter book of");
        assertThat(ranch.send("winter", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.get("winter").body()).contains("hx-trigger=\"every");
        assertThat(ranch.send("winter", "winter/stop", Map.of()).status()).isEqualTo(303);
        assertThat(whole()).contains("class=\"do\"");
    }

    /** The first link of a page that begins so, without the ranch before it. */
    private String linked(String page, String to) {
        var link = Pattern.compile("href=\"" + Pattern.quote(ranch.path() + to) + "[^\"/]+\"")
                .matcher(page);
        assertThat(link.find()).as(to).isTrue();
        return link.group()
                .substring(("href=\"" + ranch.path()).length(), link.group().length() - 1);
    }

    @Test
    void aBookIsKeptInTheStoreAndOneThatIsDamagedIsNotUsed() throws Exception {
        assertThat(whole()).doesNotContain("class=\"do\"");
        assertThat(ranch.store().winterBooks().of(ranch.id())).isEmpty();
        // what was lacking then is no book that would be older now
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var book = whole();
        var kept = ranch.store().winterBooks().of(ranch.id());
        assertThat(kept).hasSize(1);
        assertThat(BookDocument.read(kept.get(0).doc()).map(BookDocument::write))
                .contains(kept.get(0).doc());
        assertThat(ranch.get("winter").body()).isEqualTo(book).doesNotContain(MAKE_AGAIN);
        var read = BookDocument.read(kept.get(0).doc()).orElseThrow();
        for (var size : Paper.Size.values()) {
            assertThat(ranch.get("winter/page/" + size.id() + ".pdf").header("Content-Type"))
                    .isEqualTo("application/pdf");
            var paper = new WinterPaper(ranch.kept(), read, java.util.List.of()).paper(size);
            try (var pdf = Loader.loadPDF(paper.pdf())) {
                assertThat(pdf.getNumberOfPages()).isEqualTo(1);
                assertThat(pdf.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
                assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
                        .contains("Cold Spring Ranch", "Nov 25, 2026", "of 20");
            }
        }
        assertThat(ranch.get("winter/page/legal.pdf").status()).isEqualTo(404);
        // each winter on a page of its own, and who eats what adds up to what the plan puts out
        var story = read.winters().get(0);
        assertThat(ranch.get("winter/of/" + story.winter()).body()).contains("id=\"lots-title\"", story.winter());
        assertThat(ranch.get("winter/of/1066-67").status()).isEqualTo(404);
        var csv = ranch.get("winter/who-eats-what.csv").body().lines().skip(1).toList();
        double tons = csv.stream()
                .filter(line -> line.contains("\"Ditch-side stack\""))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(',') + 1)))
                .sum();
        double put = read.plan().stretches().stream()
                .flatMap(stretch -> stretch.eats().stream())
                .filter(eats -> eats.name().equals("Ditch-side stack"))
                .mapToDouble(eats -> Unit.TON.fromBase(eats.kg()))
                .sum();
        assertThat(tons).isCloseTo(put, within(0.01)).isPositive();
        // a lot is drawn down by what it has: never below nothing, from 180 tons
        assertThat(story.lots().get(0).kg()).allMatch(kg -> kg >= 0);
        assertThat(story.lots().get(0).kg().get(0)).isCloseTo(Unit.TON.toBase(180), within(1.0));
        change("UPDATE winter_book SET doc = '{\"hash\":', at = '2027'");
        assertThat(ranch.get("winter").status()).isEqualTo(200);
        assertThat(whole()).contains("class=\"do\"", "id=\"dots-title\"");
        thatIsWrongIsNoBook(kept.get(0).doc());
        thatIsGoneIsKeptAgain(book);
    }

    private void change(String sql) throws SQLException {
        try (var connection = ranch.database();
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** Each number and each day in it, made into one that no book has. */
    private void thatIsWrongIsNoBook(String doc) throws Exception {
        var mapper = new ObjectMapper();
        var tree = mapper.readTree(doc);
        var wrong = Map.of(
                "day",
                "\"+999999999-12-31\"",
                "grass",
                "\"1066-01-01\"",
                "draws",
                "-5",
                "lasted",
                "1000",
                "lasts",
                "21");
        for (var each : wrong.entrySet()) {
            var changed = tree.deepCopy();
            ((ObjectNode) changed).set(each.getKey(), mapper.readTree(each.getValue()));
            assertThat(BookDocument.read(changed.toString())).as(each.getKey()).isEmpty();
        }
        for (var text : List.of(
                doc.replaceFirst("\"kg\":\\[[0-9]", "\"kg\":[1e300,1"),
                doc.replaceFirst("\"kg\":\\[", "\"kg\":[" + "1,".repeat(100)),
                doc.replaceFirst("\"used_up\":\"[^\"]*\"", "\"used_up\":\"9999-12-31\""),
                doc.replaceFirst("\"begins\":\\[(\"[^\"]*\"),(\"[^\"]*\")", "\"begins\":[$2,$1"),
                "[".repeat(100_000),
                "null")) {
            assertThat(text).isNotEqualTo(doc);
            assertThat(BookDocument.read(text)).isEmpty();
        }
        change(
                "UPDATE winter_book SET at = '2028', doc = replace(doc, '\"day\":\"2026-11-25\"', '\"day\":\"+999999999-12-31\"')");
        for (var other : BESIDE) {
            assertThat(ranch.get(other).status()).as(other).isEqualTo(200);
        }
        assertThat(ranch.get("match").status()).isEqualTo(200);
        assertThat(ranch.client().get("/").status()).isEqualTo(200);
    }

    /** It is not made over and over, and what cannot be kept is said. */
    private void thatIsGoneIsKeptAgain(String book) throws SQLException {
        var books = ranch.store().winterBooks();
        ranch.get("winter");
        var doc = books.of(ranch.id()).get(0).doc();
        change("CREATE TRIGGER full BEFORE INSERT ON winter_book BEGIN SELECT RAISE(FAIL, 'full'); END");
        change("DELETE FROM winter_book");
        assertThat(ranch.get("winter").body()).contains("id=\"unkept\"", "class=\"do\"");
        change("DROP TRIGGER full");
        assertThat(ranch.get("winter").body()).doesNotContain("id=\"unkept\"").contains("class=\"do\"");
        assertThat(books.of(ranch.id())).extracting(WinterBooks.Kept::doc).containsExactly(doc);
        assertThat(ranch.get("winter").body()).isEqualTo(book);
        change(
                "INSERT INTO winter_book SELECT ranch_id, hash || 'x', 9000000000000000000, at, 'broken' FROM winter_book");
        assertThat(ranch.get("winter").body()).contains("class=\"do\"");
        assertThat(books.of(ranch.id())).extracting(WinterBooks.Kept::doc).containsExactly(doc, "broken");
    }

    /** One that never was in the store. */
    @Test
    void aBookThatThereWasNoRoomForIsKeptOnceThereIs() throws Exception {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        change("CREATE TRIGGER full BEFORE INSERT ON winter_book BEGIN SELECT RAISE(FAIL, 'full'); END");
        assertThat(whole()).contains("id=\"unkept\"", "class=\"do\"");
        assertThat(ranch.get("winter").body()).contains("id=\"unkept\"");
        assertThat(ranch.store().winterBooks().of(ranch.id())).isEmpty();
        change("DROP TRIGGER full");
        assertThat(ranch.get("winter").body()).doesNotContain("id=\"unkept\"").contains("class=\"do\"");
        assertThat(ranch.store().winterBooks().of(ranch.id())).hasSize(1);
    }

    @Test
    void aWeekMovesTheStacksAndTheBookGoesOnFromThereAndSaysWhy() throws Exception {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        whole();
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next().toString();
        // 900 bales were never there; nothing is lost
        var much = ranch.send("winter/week", week("fed-" + lot, "900"));
        assertThat(much.status()).isEqualTo(422);
        assertThat(much.body()).contains("value=\"900\"", "fed_more_than_there-fed-" + lot);
        assertThat(ranch.kept().weeks()).isEmpty();
        assertThat(ranch.send("winter/week", week("fed-" + lot, "much")).status())
                .isEqualTo(422);
        assertThat(ranch.send("winter/week", week("fed-" + lot, "20", "to", "Nov 30, 2026"))
                        .status())
                .isEqualTo(422);
        var week = week("fed-" + lot, "17 bales", "left-on-hand-" + lot, "273", "score-" + group, "4.5");
        assertThat(ranch.send("winter/week", week).status()).isEqualTo(303);
        var after = ranch.kept();
        assertThat(after.lots().get(UUID.fromString(lot)).stock().bales()).isEqualTo(273);
        assertThat(after.groups().get(UUID.fromString(group)).conditionScore()).isEqualTo(4.5);
        assertThat(after.weeks()).hasSize(1);
        // made again without being asked; 283 bales were expected, six tons more than were counted
        assertThat(whole()).contains("class=\"why\"", "6 tons less", "4.5").doesNotContain(MAKE_AGAIN);
        // the same days twice
        assertThat(ranch.send("winter/week", week("fed-" + lot, "20", "from", "Nov 20, 2026"))
                        .status())
                .isEqualTo(422);
        // what was put up may be looked at and saved again without bringing back what was fed
        assertThat(ranch.send("lots/" + lot + "/as/bales", OneRanch.hay("300", "1200 lb"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.kept().lots().get(UUID.fromString(lot)).stock().bales())
                .isEqualTo(273);
        assertThat(ranch.get("match").body()).contains("class=\"match\"");
        var read =
                new RanchDocument().read(new RanchDocument().write(ranch.kept()).getBytes(StandardCharsets.UTF_8));
        assertThat(read).isEqualTo(ranch.kept());
    }

    /** The winter book took 48 tons of a lot of which 17 were planned, bales and wagon card both filled in. */
    @Test
    void farFromThePlanOrCountedTwiceIsAskedAndNothingOfItIsLost() {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next().toString();
        var pounds = Pattern.compile("\\b([0-9],[0-9]{3}) lb a day")
                .matcher(ranch.get("bench/" + group).body());
        assertThat(pounds.find()).isTrue();
        double tons = Integer.parseInt(pounds.group(1).replace(",", "")) * 7 / 2000.0;
        // three times as many bales of 1,200 lb as planned, then as many as planned and the pounds of the card beside
        // them
        var much = "%.0f".formatted(3 * tons * 2000 / 1200);
        var far = ranch.send("winter/week", week("fed-" + lot, much));
        assertThat(far.status()).isEqualTo(422);
        assertThat(far.body()).contains("far_from_plan-fed-" + lot, "value=\"" + much + "\"");
        var right = "%.0f".formatted(tons * 2000 / 1200);
        var card = pounds.group(1).replace(",", "");
        var both = week(
                "fed-" + lot, right, "card-" + group, (card + " ").repeat(7).strip());
        var asked = ranch.send("winter/week", both);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body())
                .contains("value=\"both-fed-" + lot + "\"", "value=\"" + right + "\"", "value=\"" + card + " ")
                .doesNotContain("far_from_plan");
        assertThat(ranch.kept().weeks()).isEmpty();
        both.put("confirm", "both-fed-" + lot);
        assertThat(ranch.send("winter/week", both).status()).isEqualTo(303);
        assertThat(ranch.kept()
                        .weeks()
                        .values()
                        .iterator()
                        .next()
                        .fed()
                        .values()
                        .iterator()
                        .next()
                        .in(Unit.TON))
                .isCloseTo(2 * tons, within(0.5));
    }

    @Test
    void aLineFromThePhoneFillsInTheWeekAndSavesNothingByItself() {
        ranch.hay("300");
        ranch.cows();
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next().toString();
        var phone = ranch.get("winter/week/phone.html").body();
        var code = Pattern.compile("data-code=\"(F[A-Z0-9]{5})\"").matcher(phone);
        assertThat(code.find()).isTrue();
        assertThat(phone.split("type=\"text\" name=\"count\"", -1)).hasSize(1 + 8 + 3);
        // two of seven days, a score, and of the lot what was fed and what is left
        var line = weekLine(code.group(1), 71_000, -1, 70_550, -1, -1, -1, -1, 45, 170, 2_730);
        var filled = ranch.send("winter/week", "winter/week/line", Map.of("line", line));
        assertThat(filled.status()).isEqualTo(200);
        assertThat(filled.body())
                .contains(
                        "value=\"7100 7055\"",
                        "value=\"4.5\"",
                        "value=\"17\"",
                        "value=\"273\"",
                        "value=\"Nov 16, 2026\"",
                        "value=\"Nov 18, 2026\"");
        assertThat(ranch.kept().weeks()).isEmpty();
        // one sign changed, another ranch's, and one of another sheet; what was typed stays in its box
        var other = weekLine("FAAAAA", 71_000);
        for (var wrong : List.of(line.replace("71000", "71001"), other, "S4K2QX-261125-JB-11111111118Q")) {
            var answer = ranch.send("winter/week", "winter/week/line", Map.of("line", wrong));
            assertThat(answer.status()).as(wrong).isEqualTo(422);
            assertThat(answer.body()).contains(wrong);
        }
        // the phone has it still: nothing is left unfinished here
        assertThat(ranch.get("").body()).doesNotContain("winter/week/line");
        // and where the other sheets go back it is not taken for one of those
        assertThat(ranch.send("take", "take/line", Map.of("line", line)).status())
                .isEqualTo(422);
        // another group: the boxes are others, and so is the sheet
        ranch.cows("More cows");
        assertThat(ranch.send("winter/week", "winter/week/line", Map.of("line", line))
                        .status())
                .isEqualTo(422);
        assertThat(ranch.get("herd/" + group).status()).isEqualTo(200);
    }

    /** As what another window left unfinished. */
    @Test
    void aLineFromThePhoneTakesNoHalfTypedWeekAway() {
        ranch.hay("300");
        ranch.cows();
        var lot = ranch.anyLot();
        assertThat(ranch.send("winter/week", week("fed-" + lot, "typed by hand"))
                        .status())
                .isEqualTo(422);
        var code = Pattern.compile("data-code=\"(F[A-Z0-9]{5})\"")
                .matcher(ranch.get("winter/week/phone.html").body());
        assertThat(code.find()).isTrue();
        var line = weekLine(code.group(1), 71_000, -1, 70_550, -1, -1, -1, -1, 45, 170, 2_730);
        var filled = ranch.send("winter/week", "winter/week/line", Map.of("line", line));
        assertThat(filled.body()).contains("name=\"draft\" value=\"\"");
        var sent = week("fed-" + lot, "from the phone", "draft", "");
        assertThat(ranch.submit(filled, "winter/week", sent).status()).isEqualTo(422);
        assertThat(ranch.store().drafts().waiting(ranch.id()).stream()
                        .map(form ->
                                ranch.store().drafts().get(ranch.id(), form).get("fed-" + lot)))
                .containsExactlyInAnyOrder(List.of("typed by hand"), List.of("from the phone"));
    }

    /** @param tenths of each box; below zero where it is empty */
    private static String weekLine(String code, int... tenths) {
        var line = new StringBuilder(code + "-261116");
        for (int one : tenths) {
            line.append('-').append(one < 0 ? "" : String.valueOf(one));
        }
        return CheckLetter.add(line.append('-').toString());
    }

    @Test
    void whatIsTypedOfAWeekIsNeverTakenForAnotherFigure() {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var lot = ranch.anyLot();
        var fed = "fed-" + lot;
        var group = ranch.kept().groups().keySet().iterator().next().toString();
        var much = "9".repeat(400);
        for (var wrong : List.of(
                List.of(fed, "12,5"),
                List.of(fed, much),
                List.of(fed, "-5"),
                List.of(fed, "1e308"),
                List.of(fed, "5 feet"),
                List.of("left-on-hand-" + lot, "-5"),
                List.of("refused-" + lot, "101"),
                List.of("refused-" + lot, "-1"),
                List.of("score-" + group, "99"),
                List.of("card-" + group, much),
                List.of("card-" + group, "100,200,300"),
                List.of("card-" + group, "1 ".repeat(1000) + "x"))) {
            var box = wrong.get(0);
            var answer = ranch.send("winter/week", week(box, wrong.get(1)));
            assertThat(answer.status()).as(wrong.toString()).isEqualTo(422);
            assertThat(answer.body()).as(wrong.toString()).contains("id=\"p-" + box + "\"");
        }
        // not eaten alone is a share of nothing, and the box to fill in is named
        assertThat(ranch.send("winter/week", week("refused-" + lot, "20")).body())
                .contains("id=\"p-" + fed + "\"");
        var all = ranch.send("winter/week", week(fed, "-5", "refused-" + lot, "101", "score-" + group, "99"))
                .body();
        for (var box : List.of(fed, "refused-" + lot, "score-" + group)) {
            assertThat(all).contains("id=\"p-" + box + "\"");
        }
        assertThat(ranch.kept().weeks()).isEmpty();
        // a bale of 1,200 lb is 0.6 of a ton
        assertThat(ranch.send("winter/week", week(fed, "6 tons")).status()).isEqualTo(303);
        var kept = ranch.kept().weeks().values().iterator().next();
        assertThat(kept.fed().get(UUID.fromString(lot)).in(Unit.TON)).isCloseTo(6, within(1e-9));
    }

    @Test
    void aLotStandsBesideEachGroupAtEachStage() {
        ranch.hay("300");
        ranch.cows();
        ranch.change(WinterPagesTest::placed);
        var chart = ranch.get("match").body();
        assertThat(chart).contains("class=\"match\"", "<a class=\"");
        var box = chart.replaceAll("(?s).*?<td>.*?href=\"([^\"]*/match/[^\"]*)\".*", "$1");
        assertThat(ranch.client().get(box).status()).isEqualTo(200);
        assertThat(ranch.get("match/" + ranch.anyLot() + "/" + UUID.randomUUID() + "/now")
                        .status())
                .isEqualTo(404);
    }
}
