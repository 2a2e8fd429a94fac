package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.Spelling;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Two windows on one ranch: a save changes what the person changed, and nobody chooses between figures worked out. */
class TwoWindowsTest {
    private static final String WEEK = "winter/week";
    private static final Pattern CHOICE = Pattern.compile("name=\"(stands/[^\"]+)\" value=\"mine\"");
    private static final Pattern HIDDEN =
            Pattern.compile("<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\">");

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String lot;
    private String group;

    @BeforeEach
    void aStackAndCows() {
        ranch.hay("300");
        ranch.cows();
        lot = ranch.anyLot();
        group = ranch.kept().groups().keySet().iterator().next().toString();
    }

    private static Map<String, String> week(String from, String to, String... boxes) {
        var typed = new LinkedHashMap<>(Map.of("from", from, "to", to));
        for (int i = 0; i < boxes.length; i += 2) {
            typed.put(boxes[i], boxes[i + 1]);
        }
        return typed;
    }

    private Map<String, String> first() {
        return week("Nov 5, 2026", "Nov 11, 2026", "fed-" + lot, "10");
    }

    private Map<String, String> second() {
        return week("Nov 12, 2026", "Nov 18, 2026", "fed-" + lot, "12");
    }

    private static double left(Ranch ranch) {
        return ((PartFed) ranch.lots().values().iterator().next().stock()).share();
    }

    @Test
    void theHayOfBothWeeksIsTakenOff() {
        var stale = ranch.get(WEEK);
        assertThat(ranch.send(WEEK, first()).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, WEEK, second()).status()).isEqualTo(303);
        assertThat(ranch.kept().weeks()).hasSize(2);
        // 300 bales, 10 and 12 of them fed
        assertThat(left(ranch.kept())).isCloseTo(278.0 / 300, within(1e-9));
    }

    @Test
    void aDraftOfAnOlderDayIsNoSecondVersion() {
        var wrong = second();
        wrong.put("fed-" + lot, "many");
        assertThat(ranch.send(WEEK, wrong).status()).isEqualTo(422);
        ranch.change(now -> now.with(fed(now, 290.0 / 300)));
        assertThat(ranch.send(WEEK, second()).status()).isEqualTo(303);
        assertThat(left(ranch.kept())).isCloseTo(278.0 / 300, within(1e-9));
    }

    @Test
    void aDraftOfALotIsNoSecondVersionOfWhatItDidNotChange() {
        var at = "lots/" + lot + "/as/bales";
        assertThat(ranch.send(at, hay("count", "many")).status()).isEqualTo(422);
        ranch.change(now -> now.with(fed(now, 290.0 / 300)));
        assertThat(ranch.send(at, hay("replacementPrice", "$180")).status()).isEqualTo(303);
        assertThat(left(ranch.kept())).isCloseTo(290.0 / 300, within(1e-9));
    }

    /** Asked again, it would be a second version against oneself. */
    @Test
    void whatStandsBesideTheBoxesOfADraftIsNotAskedAboutAgain() {
        var at = "lots/" + lot + "/as/bales";
        assertThat(ranch.send(at, hay("baleWeight", "hefty")).status()).isEqualTo(422);
        ranch.change(now -> now.with(now.lots()
                .get(UUID.fromString(lot))
                .with(new Stock.Bales(
                        Stock.BaleKind.LARGE_ROUND, 290, Quantity.of(1150, Unit.POUND), null, null, null))));
        var fresh = ranch.get(at);
        assertThat(fresh.body()).contains("On the ranch now: <b>1,150 lb</b>");
        var typed = hay("baleWeight", "1250");
        typed.put("seen", hidden(fresh).get("seen"));
        // somebody is quicker once more: that was not seen
        ranch.change(now -> now.with(now.lots()
                .get(UUID.fromString(lot))
                .with(new Stock.Bales(
                        Stock.BaleKind.LARGE_ROUND, 290, Quantity.of(1100, Unit.POUND), null, null, null))));
        var asked = ranch.submit(fresh, at, typed);
        isAskedInWords(asked);
        var again = ranch.get(at);
        typed.put("seen", hidden(again).get("seen"));
        assertThat(ranch.submit(again, at, typed).status()).isEqualTo(303);
        var stock = (Stock.Bales) ranch.kept().lots().get(UUID.fromString(lot)).stock();
        assertThat(stock.baleWeight()).isEqualTo(Quantity.of(1250, Unit.POUND));
        assertThat(stock.count()).as("the count was not touched here").isEqualTo(290);
    }

    @Test
    void anEarlierWeekEnteredLaterMovesNothingThatWasCountedOrScoredSince() {
        var counted = second();
        counted.put("left-on-hand-" + lot, "280");
        counted.put("score-" + group, "4.5");
        assertThat(ranch.send(WEEK, counted).status()).isEqualTo(303);
        var earlier = first();
        earlier.put("score-" + group, "5");
        assertThat(ranch.send(WEEK, earlier).status()).isEqualTo(303);
        var now = ranch.kept();
        assertThat(now.weeks()).hasSize(2);
        assertThat(left(now)).isCloseTo(280.0 / 300, within(1e-9));
        var stock = (PartFed) now.lots().values().iterator().next().stock();
        assertThat(stock.on()).isEqualTo(LocalDate.of(2026, 11, 18));
        assertThat(now.groups().get(UUID.fromString(group)).conditionScore()).isEqualTo(4.5);
    }

    @Test
    void weeksAreTheSameInEitherOrder() {
        assertThat(ranch.send(WEEK, second()).status()).isEqualTo(303);
        var counted = first();
        counted.put("left-on-hand-" + lot, "288");
        assertThat(ranch.send(WEEK, counted).status()).isEqualTo(303);
        // 288 were left on Nov 11, and 12 were fed after
        assertThat(left(ranch.kept())).isCloseTo(276.0 / 300, within(1e-9));
        var stock = (PartFed) ranch.kept().lots().values().iterator().next().stock();
        assertThat(stock.on()).isEqualTo(LocalDate.of(2026, 11, 18));
    }

    private RawClient.Answer from(RawClient.Answer page, String at, Map<String, String> fields) {
        var all = new LinkedHashMap<>(fields);
        hidden(page).forEach(all::putIfAbsent);
        return ranch.submit(page, at, all);
    }

    private List<String> leftUnfinished() {
        var links = Pattern.compile("href=\"" + Pattern.quote(ranch.path()) + "(" + WEEK + "\\?left=[0-9a-f]{8})\"")
                .matcher(ranch.get("").body());
        return links.results().map(found -> found.group(1)).distinct().toList();
    }

    @Test
    void whatOneWindowLeftUnfinishedOutlivesTheSaveOfAnother() {
        var one = ranch.get(WEEK);
        var other = ranch.get(WEEK);
        var wrong = first();
        wrong.put("fed-" + lot, "7l00");
        assertThat(from(one, WEEK, wrong).status()).isEqualTo(422);
        assertThat(from(other, WEEK, second()).status()).isEqualTo(303);
        var left = leftUnfinished();
        assertThat(left).hasSize(1);
        var back = ranch.get(left.get(0));
        assertThat(back.body()).contains("7l00", "&amp;left=");
        // mended and saved there, it is gone; what is new stays what it is
        assertThat(from(back, WEEK, first()).status()).isEqualTo(303);
        assertThat(leftUnfinished()).isEmpty();
        assertThat(ranch.kept().weeks()).hasSize(2);
        assertThat(ranch.get(WEEK).body()).doesNotContain("7l00");
    }

    @Test
    void ofTwoUnfinishedWeeksNoneIsDropped() {
        var one = ranch.get(WEEK);
        var other = ranch.get(WEEK);
        var wrong = first();
        wrong.put("fed-" + lot, "7l00");
        var wrongToo = second();
        wrongToo.put("fed-" + lot, "l2");
        var again = from(one, WEEK, wrong);
        assertThat(again.status()).isEqualTo(422);
        assertThat(from(other, WEEK, wrongToo).status()).isEqualTo(422);
        assertThat(ranch.get(WEEK).body()).contains("l2");
        assertThat(ranch.get(leftUnfinished().get(0)).body()).contains("7l00");
        // sent again from the page that came back, it is the same window's
        var mine = ranch.get(leftUnfinished().get(0));
        wrong.put("fed-" + lot, "8l00");
        assertThat(from(mine, WEEK, wrong).status()).isEqualTo(422);
        assertThat(leftUnfinished()).hasSize(1);
    }

    private List<String> unfinished() {
        return ranch.store().drafts().waiting(ranch.id());
    }

    private static Map<String, String> but(RawClient.Answer page, String box, String value) {
        var all = shown(page);
        all.put(box, value);
        return all;
    }

    @Test
    void whatIsSavedTogetherWithAnotherWindowIsNotLeftUnfinished() {
        var boxes = Map.of(
                "settings/ranch",
                List.of("adviser", "Ann Field", "feedingLossPercent", "19"),
                "settings/outfit",
                List.of("timesADay", "2", "bunk", "1.5"),
                "settings/last-winter",
                List.of("head", "120", "days", "150"),
                "lots/" + lot + "/as/bales",
                List.of("replacementPrice", "$180", "count", "280"),
                "herd/" + group,
                List.of("head", "96", "conditionScore", "4.5"));
        boxes.forEach((at, two) -> {
            var one = ranch.get(at);
            var other = ranch.get(at);
            assertThat(from(one, at, but(one, two.get(0), two.get(1))).status())
                    .as(at)
                    .isEqualTo(303);
            assertThat(unfinished()).as(at).isEmpty();
            assertThat(from(other, at, but(other, two.get(2), two.get(3))).status())
                    .as(at)
                    .isEqualTo(303);
            assertThat(unfinished()).as(at).isEmpty();
        });
    }

    private static final String CORNERS =
            "{\"type\":\"Polygon\",\"coordinates\":[[[-100,42],[-100,42.01],[-99.99,42.01],[-99.99,42],[-100,42]]]}";

    /** @param box of the form that is sent there */
    private void keepsBothRefused(String page, String at, String box, Map<String, String> more) {
        var one = ranch.get(page);
        var other = ranch.get(page);
        var words = List.of("l7 oaks", "l8 elms");
        for (var window : List.of(one, other)) {
            var all = new LinkedHashMap<>(more);
            all.put(box, words.get(window == one ? 0 : 1));
            assertThat(from(window, at, all).status()).as(at).isEqualTo(422);
        }
        var left = unfinished();
        assertThat(left).as(at).hasSize(2);
        var shown = left.stream()
                .map(path -> ranch.get(path.replace(at, page)).body())
                .reduce("", String::concat);
        assertThat(shown).as(at).contains(words);
        left.forEach(path -> ranch.store().drafts().clear(ranch.id(), path));
    }

    @Test
    void ofTwoWindowsThatAreRefusedNoFormDropsTheWordsOfTheFirst() {
        assertThat(ranch.send("take/fields/new", Map.of("name", "North", "grows", "brome", "field", CORNERS))
                        .status())
                .isEqualTo(303);
        var field = "take/fields/" + ranch.kept().fields().keySet().iterator().next();
        keepsBothRefused("take/fields/new", "take/fields/new", "name", Map.of());
        keepsBothRefused(field + "/change", field + "/change", "name", Map.of("field", "nowhere"));
        keepsBothRefused(field + "/zones", field + "/zones", "zones", Map.of());
        keepsBothRefused("take/fields/draw", "take/fields/draw", "name", Map.of());
        keepsBothRefused("settings/weather", "settings/weather/place", "town", Map.of());
        keepsBothRefused("bench/" + group + "/hand", "bench/" + group + "/hand", "feed-" + lot, Map.of());
        keepsBothRefused("lots/table", "lots/table", "table", Map.of());
    }

    @Test
    void formsLeftUnfinishedAreToldApart() {
        var paths = List.of(
                "settings/ranch",
                "settings/outfit",
                "settings/last-winter",
                "settings/weather",
                "take/lots/" + lot,
                "take/lots/" + lot + "/weigh",
                "take/groups/" + group + "/scores",
                "bench/" + group + "/wishes",
                "bench/" + group + "/hand");
        paths.forEach(path -> ranch.store().drafts().put(ranch.id(), path, Map.of("notes", List.of("typed"))));
        var home = ranch.get("").body();
        var names = paths.stream()
                .map(path -> Pattern.compile("<li><a href=\"" + ranch.path() + path + "\">([^<]+)</a><p>")
                        .matcher(home)
                        .results()
                        .map(found -> found.group(1))
                        .toList())
                .toList();
        assertThat(names)
                .doesNotHaveDuplicates()
                .allSatisfy(one -> assertThat(one).hasSize(1));
    }

    @Test
    void ofThreeWindowsOnOneFieldNoneIsDropped() {
        assertThat(ranch.send("take/fields/new", Map.of("name", "North", "grows", "brome", "field", CORNERS))
                        .status())
                .isEqualTo(303);
        var at = "take/fields/" + ranch.kept().fields().keySet().iterator().next() + "/change";
        var second = ranch.get(at);
        var third = ranch.get(at);
        assertThat(ranch.send(at, Map.of("name", "First", "grows", "brome", "field", CORNERS))
                        .status())
                .isEqualTo(303);
        assertThat(from(second, at, Map.of("name", "Second", "grows", "brome", "field", CORNERS))
                        .status())
                .isEqualTo(409);
        assertThat(from(third, at, Map.of("name", "Third", "grows", "brome", "field", CORNERS))
                        .status())
                .isEqualTo(409);
        assertThat(unfinished().stream()
                        .map(path ->
                                ranch.store().drafts().get(ranch.id(), path).get("name")))
                .containsExactlyInAnyOrder(List.of("Second"), List.of("Third"));
    }

    /** They look, write and save at the same moments; what none of them saved stays. */
    @Test
    void windowsThatSaveAtOnceLeaveNothingOfTheirOwnAndTakeNothingOfAnother() throws Exception {
        var at = "lots/new/bales";
        var unsaved = hay("count", "many");
        assertThat(from(ranch.get(at), at, unsaved).status()).isEqualTo(422);
        var before = ranch.kept().lots().size();
        var threads = Executors.newFixedThreadPool(8);
        try {
            var sent = new ArrayList<Callable<RawClient.Answer>>();
            for (int i = 0; i < 24; i++) {
                var page = ranch.get(at + "?left=" + "%08x".formatted(i)); // opened before anything was left
                var all = hidden(page);
                all.remove("left");
                var lot = hay("name", "Stack " + i);
                all.keySet().removeAll(lot.keySet());
                all.putAll(lot);
                sent.add(() -> ranch.submit(page, at, all));
            }
            for (var answer : threads.invokeAll(sent)) {
                assertThat(answer.get().status()).isEqualTo(303);
            }
        } finally {
            threads.shutdown();
        }
        assertThat(ranch.kept().lots()).hasSize(before + 24);
        assertThat(unfinished()).hasSize(1);
        assertThat(ranch.store().drafts().get(ranch.id(), unfinished().get(0))).containsEntry("count", List.of("many"));
    }

    @Test
    void whoeverChoosesBetweenTwoVersionsTakesNothingOfAThird() {
        var at = "lots/" + lot + "/as/bales";
        var second = ranch.get(at);
        var third = ranch.get(at);
        assertThat(ranch.send(at, hay("name", "First")).status()).isEqualTo(303);
        var asked = from(second, at, hay("name", "Second"));
        assertThat(asked.status()).isEqualTo(409);
        var askedToo = from(third, at, hay("name", "Third"));
        assertThat(askedToo.status()).isEqualTo(409);
        assertThat(unfinished()).hasSize(2);
        assertThat(chosen(asked, at, "mine").status()).isEqualTo(303);
        assertThat(unfinished()).hasSize(1);
        assertThat(ranch.store().drafts().get(ranch.id(), unfinished().get(0))).containsEntry("name", List.of("Third"));
    }

    /** What it left at first made room for another window's meanwhile. */
    @Test
    void whatIsSentAgainAndSavedIsNotLeftUnfinished() {
        var one = ranch.get(WEEK);
        var other = ranch.get(WEEK);
        var wrong = first();
        wrong.put("fed-" + lot, "7l00");
        var again = from(one, WEEK, wrong);
        var wrongToo = second();
        wrongToo.put("fed-" + lot, "l2");
        assertThat(from(other, WEEK, wrongToo).status()).isEqualTo(422);
        assertThat(unfinished()).hasSize(2);
        assertThat(from(again, WEEK, first()).status()).isEqualTo(303);
        assertThat(unfinished()).hasSize(1);
        assertThat(ranch.store().drafts().get(ranch.id(), unfinished().get(0)))
                .containsEntry("fed-" + lot, List.of("l2"));
    }

    @Test
    void aDraftShowsWhatStandsNowWhereNobodyTypedAnything() {
        var at = "lots/" + lot + "/as/bales";
        var one = ranch.get(at);
        var wrong = hay("count", "many");
        assertThat(from(one, at, wrong).status()).isEqualTo(422);
        ranch.change(now -> now.with(now.lots()
                .get(UUID.fromString(lot))
                .with(new Stock.Bales(
                        Stock.BaleKind.LARGE_ROUND, 300, Quantity.of(1150, Unit.POUND), null, null, null))));
        var back = ranch.get(at).body();
        assertThat(back).contains("value=\"many\"", "value=\"1,150\"").doesNotContain("now: <b>1,150 lb</b>");
    }

    /** Of three hundred bales. */
    private static Lot fed(Ranch now, double share) {
        var lot = now.lots().values().iterator().next();
        return lot.with(new PartFed(lot.stock(), share, LocalDate.of(2026, 11, 11)));
    }

    @Test
    void aWeekThatIsThereAlreadyIsSaidBesideItsDaysWithAllElseThatIsWrong() {
        var stale = ranch.get(WEEK);
        assertThat(ranch.send(WEEK, first()).status()).isEqualTo(303);
        var again = first();
        again.put("score-" + group, "99");
        again.put("refused-" + lot, "101");
        again.put("left-on-hand-" + lot, "-5");
        var refused = ranch.submit(stale, WEEK, again);
        assertThat(refused.status()).isEqualTo(422);
        for (var box : new String[] {"from", "score-" + group, "refused-" + lot, "left-on-hand-" + lot}) {
            assertThat(refused.body()).as(box).contains("id=\"p-" + box + "\"");
        }
        assertThat(ranch.kept().weeks()).hasSize(1);
        var endless = second();
        endless.put("from", "Jan 1, 1900");
        assertThat(ranch.send(WEEK, endless).body()).contains("id=\"p-from\"", "id=\"p-to\"");
    }

    @Test
    void whatWasFedOfALotThatIsGoneIsSaidBesideItsBox() {
        ranch.weighedLot("Second cutting", "grass_hay");
        var gone = ranch.lot("Second cutting");
        var stale = ranch.get(WEEK);
        assertThat(ranch.send("lots/" + gone + "/delete", Map.of()).status()).isEqualTo(303);
        var typed = second();
        typed.put("fed-" + gone, "7");
        var refused = ranch.submit(stale, WEEK, typed);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("id=\"p-fed-" + gone + "\"", "value=\"7\"", "Second cutting");
        assertThat(ranch.kept().weeks()).isEmpty();
        typed.remove("fed-" + gone);
        assertThat(ranch.submit(refused, WEEK, typed).status()).isEqualTo(303);
    }

    /** Of what is fed up, no bales are left to count by. */
    @Test
    void balesAreNotTakenForTons() {
        var stale = ranch.get(WEEK);
        ranch.change(now -> now.with(fed(now, 0)));
        var refused = ranch.submit(stale, WEEK, week("Nov 12, 2026", "Nov 18, 2026", "fed-" + lot, "1"));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("id=\"p-fed-" + lot + "\"");
    }

    // Forms of what is there

    private static Map<String, String> hay(String box, String value) {
        var hay = OneRanch.hay("300", "1200 lb");
        hay.put(box, value);
        return hay;
    }

    @Test
    void twoBoxesOfOneLotBothStand() {
        var at = "lots/" + lot + "/as/bales";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, hay("replacementPrice", "$180")).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, at, hay("count", "280")).status()).isEqualTo(303);
        var kept = ranch.kept().lots().values().iterator().next();
        assertThat(kept.stock().bales()).isEqualTo(280);
        assertThat(kept.replacementPrice().value()).isEqualTo(180);
    }

    @Test
    void aWeekAndAnotherPriceBothStand() {
        var at = "lots/" + lot + "/as/bales";
        var stale = ranch.get(at);
        assertThat(ranch.send(WEEK, first()).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, at, hay("replacementPrice", "$180")).status())
                .isEqualTo(303);
        assertThat(left(ranch.kept())).isCloseTo(290.0 / 300, within(1e-9));
        assertThat(ranch.kept()
                        .lots()
                        .values()
                        .iterator()
                        .next()
                        .replacementPrice()
                        .value())
                .isEqualTo(180);
    }

    @Test
    void aHeadCountAndAScoreBothStand() {
        var stale = ranch.get("herd/" + group);
        assertThat(ranch.send(WEEK, week("Nov 12, 2026", "Nov 18, 2026", "score-" + group, "4.5"))
                        .status())
                .isEqualTo(303);
        var cows = shown(stale);
        cows.put("head", "96");
        assertThat(ranch.submit(stale, "herd/" + group, cows).status()).isEqualTo(303);
        var kept = ranch.kept().groups().values().iterator().next();
        assertThat(kept.head()).isEqualTo(96);
        assertThat(kept.conditionScore()).isEqualTo(4.5);
    }

    @Test
    void twoWeighingsBothStand() {
        var at = "take/lots/" + lot + "/weigh";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, Map.of("weighedOn", "Nov 20, 2026", "bales", "1180 1210 1195 1240 1205"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.submit(stale, at, Map.of("weighedOn", "Nov 21, 2026", "bales", "1190 1215 1199 1230 1201"))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.kept().lots().values().iterator().next().weighings()).hasSize(2);
    }

    @Test
    void wishesOfTwoWindowsBothStand() {
        var at = "bench/" + group + "/wishes";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, Map.of("sureness", "80")).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, at, Map.of("off-straw", "yes")).status()).isEqualTo(303);
        var kept = ranch.kept().wishes().values().iterator().next();
        assertThat(kept.surenessPercent()).isEqualTo(80);
        assertThat(kept.limitsOff()).containsExactly("straw");
        var both = ranch.submit(stale, at, Map.of("sureness", "60", "way", "bunk"));
        isAskedInWords(both);
        assertThat(chosen(both, at, "theirs").status()).isEqualTo(303);
        kept = ranch.kept().wishes().values().iterator().next();
        assertThat(kept.surenessPercent()).isEqualTo(80);
        assertThat(kept.limitsOff()).containsExactly("straw");
        assertThat(kept.way()).as("what nobody else touched stands").isNotNull();
    }

    @Test
    void aFieldsNameAndWhatGrowsOnItBothStand() {
        var corners =
                "{\"type\":\"Polygon\",\"coordinates\":[[[-100,42],[-100,42.01],[-99.99,42.01],[-99.99,42],[-100,42]]]}";
        assertThat(ranch.send("take/fields/new", Map.of("name", "North", "grows", "brome", "field", corners))
                        .status())
                .isEqualTo(303);
        var at = "take/fields/" + ranch.kept().fields().keySet().iterator().next() + "/change";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, Map.of("name", "North meadow", "grows", "brome", "field", corners))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.submit(stale, at, Map.of("name", "North", "grows", "alfalfa", "field", corners))
                        .status())
                .isEqualTo(303);
        var kept = ranch.kept().fields().values().iterator().next();
        assertThat(kept.name()).isEqualTo("North meadow");
        assertThat(kept.grows()).isEqualTo("alfalfa");
        var both = ranch.submit(stale, at, Map.of("name", "Far meadow", "grows", "brome", "field", corners));
        isAskedInWords(both);
        assertThat(chosen(both, at, "theirs").status()).isEqualTo(303);
        assertThat(ranch.kept().fields().values().iterator().next().name()).isEqualTo("North meadow");
    }

    @Test
    void oneMixStandsWhole() {
        ranch.weighedLot("Second cutting", "grass_hay");
        var other = ranch.lot("Second cutting");
        var at = "bench/" + group + "/hand";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, Map.of("act", "keep", "feed-" + lot, "24")).status())
                .isEqualTo(303);
        var both = ranch.submit(stale, at, Map.of("act", "keep", "feed-" + other, "26"));
        isAskedInWords(both);
        assertThat(chosen(both, at, "mine").status()).isEqualTo(303);
        assertThat(ranch.kept().fedNow().values().iterator().next().amounts()).containsOnlyKeys(UUID.fromString(other));
    }

    @Test
    void twoScoresOfOneGroupAreAskedAbout() {
        var at = "take/groups/" + group + "/scores";
        var stale = ranch.get(at);
        assertThat(ranch.send(at, Map.of("scores", "5 5 6 5 5 5 6 5 5 5 5 5")).status())
                .isEqualTo(303);
        var both = ranch.submit(stale, at, Map.of("scores", "4 4 4 5 4 4 4 4 4 4 4 4"));
        isAskedInWords(both);
        assertThat(chosen(both, at, "theirs").status()).isEqualTo(303);
        assertThat(ranch.kept().groups().values().iterator().next().conditionScore())
                .isGreaterThan(5);
    }

    /** Whatever the document calls its parts, a person is asked in the words of the pages. */
    private static void isAskedInWords(RawClient.Answer both) {
        assertThat(both.status()).isEqualTo(409);
        assertThat(CHOICE.matcher(both.body()).find()).isTrue();
        var said = both.body().replaceAll("(?s).*<main|<input[^>]*>", "").replaceAll("<[^>]*>", "|");
        assertThat(said).doesNotContainPattern("[0-9a-f]{8}-[0-9a-f]{4}").doesNotContainPattern("\\.[0-9]{5}");
        for (var component : Ranch.class.getRecordComponents()) {
            var raw = Spelling.snake(component.getName());
            assertThat(said).doesNotContainPattern("\\|\\s*" + raw + "\\s*\\|");
        }
        assertThat(said).doesNotContainPattern("\\b[a-z]+_[a-z]+\\b");
    }

    @Test
    void aLotChangedInBothIsAskedByItsBoxes() {
        var at = "lots/" + lot + "/as/bales";
        var stale = ranch.get(at);
        var theirs = hay("baleWeight", "1100 lb");
        theirs.put("storage", "barn");
        assertThat(ranch.send(at, theirs).status()).isEqualTo(303);
        var mine = hay("baleWeight", "1300");
        mine.put("storage", "outside_on_ground");
        var both = ranch.submit(stale, at, mine);
        isAskedInWords(both);
        assertThat(both.body())
                .contains("<td>1,300 lb</td><td>1,100 lb</td>", "under a roof", "outside, on the ground");
        assertThat(chosen(both, at, "theirs").status()).isEqualTo(303);
        var kept = ranch.kept().lots().values().iterator().next();
        assertThat(kept.storage()).isEqualTo(Lot.Storage.BARN);
    }

    /** Sends the page of two versions as it is, with one answer to all of it. */
    private RawClient.Answer chosen(RawClient.Answer page, String at, String which) {
        var all = hidden(page);
        var choice = CHOICE.matcher(page.body());
        while (choice.find()) {
            all.put(choice.group(1), which);
        }
        return ranch.submit(page, at, all);
    }

    private static Map<String, String> hidden(RawClient.Answer page) {
        var all = new LinkedHashMap<String, String>();
        var field = HIDDEN.matcher(page.body());
        while (field.find()) {
            all.put(field.group(1), field.group(2).replace("&#34;", "\""));
        }
        return all;
    }

    /** What a form has in its boxes. */
    private static Map<String, String> shown(RawClient.Answer page) {
        var all = new LinkedHashMap<String, String>();
        var box = Pattern.compile("<input id=\"f-[^\"]*\" name=\"([^\"]+)\" type=\"text\"[^>]* value=\"([^\"]*)\"")
                .matcher(page.body());
        while (box.find()) {
            all.put(box.group(1), box.group(2));
        }
        var pick = Pattern.compile("(?s)<select id=\"f-[^\"]*\" name=\"([^\"]+)\".*?</select>")
                .matcher(page.body());
        while (pick.find()) {
            var chosen = Pattern.compile("value=\"([^\"]*)\" selected").matcher(pick.group());
            if (chosen.find()) {
                all.put(pick.group(1), chosen.group(1));
            }
        }
        var tick = Pattern.compile("type=\"(?:checkbox|radio)\" name=\"([^\"]+)\" value=\"([^\"]+)\" checked")
                .matcher(page.body());
        while (tick.find()) {
            all.put(tick.group(1), tick.group(2));
        }
        return all;
    }
}
