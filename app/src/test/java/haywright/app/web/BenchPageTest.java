package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The bench of a group on a new ranch: small enough for a phone, with its workings on the page of its need. */
class BenchPageTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private Group cows() {
        assertThat(ranch.send("lots/new/bales", OneRanch.hay("520", "1200 lb")).status())
                .isEqualTo(303);
        var cows = new LinkedHashMap<String, String>();
        cows.put("name", "Cows");
        cows.put("head", "180");
        cows.put("weight", "1300");
        cows.put("shrunk", "no");
        cows.put("weighedOn", "Nov 12, 2026");
        cows.put("conditionScore", "5");
        cows.put("breed", "Angus");
        var page = ranch.get("herd/new/mature_cow");
        var saved = ranch.submit(page, "herd/new/mature_cow", cows);
        assertThat(saved.status()).as(saved.body()).isEqualTo(303);
        var group = ranch.kept().groups().values().iterator().next();
        var weeks = new ArrayList<Group.CalvingWeek>();
        for (int i = 0; i < 9; i++) {
            weeks.add(new Group.CalvingWeek(LocalDate.of(2027, 3, 1).plusWeeks(i), 20));
        }
        var now = ranch.kept();
        var changed = now.with(new Group(
                group.id(),
                group.name(),
                group.animals(),
                group.head(),
                group.weight(),
                group.shrunk(),
                group.weighedOn(),
                group.matureWeight(),
                group.conditionScore(),
                group.breed(),
                weeks,
                null,
                null,
                null,
                group.gain(),
                null,
                null,
                null,
                null,
                List.of()));
        ranch.store()
                .ranches()
                .save(now.id(), ranch.store().ranches().open(now.id()).rev(), "test", "calving", changed);
        return changed.groups().get(group.id());
    }

    /** Somebody's own mineral was left out without a word, and another was fed in its place. */
    @Test
    void aMineralWithoutItsTagIsSaidNotToBeUsedWithTheWayToItsTag() {
        var group = cows();
        assertThat(ranch.get("bench/" + group.id()).body()).doesNotContain("untagged");
        var mineral = new LinkedHashMap<String, String>();
        mineral.put("name", "Co-op mineral");
        mineral.put("feedClass", "mineral");
        mineral.put("price", "1520");
        assertThat(ranch.send("feeds/new", mineral).status()).isEqualTo(303);
        var id = ranch.kept().feedsForSale().keySet().iterator().next();
        for (var page : List.of("bench", "bench/" + group.id(), "letter/" + group.id())) {
            assertThat(ranch.get(page).body())
                    .as(page)
                    .contains("class=\"careful untagged\"", "href=\"" + ranch.path() + "feeds/" + id + "\"");
        }
    }

    @Test
    void thePageOfManyCalvingWeeksIsSmallAndLinksToEveryLineOfTheirNeed() {
        var group = cows();
        var body = ranch.get("bench/" + group.id()).body();
        assertThat(body).contains("Ditch-side stack").containsPattern("<b>\\$[0-9.]+</b>");
        assertThat(body.getBytes(StandardCharsets.UTF_8).length).isLessThan(100_000);
        var every = ranch.get("bench/" + group.id() + "/workings").body();
        assertThat(every.getBytes(StandardCharsets.UTF_8).length).isLessThan(100_000);
        assertThat(every)
                .containsPattern("href=\"[^\"]*/herd/" + group.id() + "/need\"")
                .contains("ration.mps");
        assertThat(body).doesNotContain("ration.mps");
        var workings = ranch.get("herd/" + group.id() + "/need");
        assertThat(workings.status()).isEqualTo(200);
        assertThat(workings.body().getBytes(StandardCharsets.UTF_8).length).isLessThan(200_000);
        // a source is written out once for the minerals and once for the lines of the math
        var cites = Pattern.compile("<cite>(.*?)</cite>")
                .matcher(workings.body().replaceFirst("(?s).*Every line of the math", ""))
                .results()
                .map(found -> found.group(1))
                .toList();
        assertThat(cites).hasSizeGreaterThan(5).doesNotHaveDuplicates();
        // every calving week opens, each with the lines that its need stands on
        assertThat(workings.body().split("<details class=\"alike\"", -1).length - 1)
                .isGreaterThanOrEqualTo(group.calving().size());
        assertThat(workings.body().split("<ol class=\"lines\">", -1).length - 1)
                .isGreaterThan(3 * group.calving().size());
    }

    /** The first screen before any picture: pounds of a feed, dollars, in how many of 10, and the ten dots of each offer. */
    @Test
    void theFirstScreenSaysWhatToFeedWhatItCostsHowSureAndUntilWhen() {
        var group = cows();
        var body = ranch.get("bench/" + group.id()).body();
        var say =
                body.replaceAll("(?s).*<p class=\"say feed\">(.*?)</p>.*", "$1").replaceAll("<[^>]+>", "");
        assertThat(say)
                .containsPattern("[0-9½]+ lb Ditch-side stack")
                .containsPattern("\\$[0-9]+\\.[0-9]{2}")
                .containsPattern("[0-9]+ times in 10");
        assertThat(body.split("<section class=\"offer", -1).length - 1).isBetween(1, 3);
        assertThat(body.indexOf("class=\"say feed\"")).isLessThan(body.indexOf("class=\"picture\""));
    }

    /** What is fed now is the first column, with what it lacks. */
    @Test
    void whatIsFedNowComesFirstWithItsShortfall() {
        var group = cows();
        var hay = ranch.lot("Ditch-side stack");
        var kept = ranch.send("bench/" + group.id() + "/hand", Map.of("feed-" + hay, "12", "act", "keep"));
        assertThat(kept.status()).isEqualTo(303);
        var body = ranch.get("bench/" + group.id()).body();
        var first = body.replaceAll("(?s).*?<section class=\"offer(.*?)</section>.*", "$1");
        assertThat(first).contains("12 lb Ditch-side stack").containsPattern("<p>[^<]*[0-9.]+ (?:%|lb|Mcal|g)[ .)]");
        assertThat(first).doesNotContain("picked");
    }

    @Test
    void aLimitIsSetByASentenceAndDroppedByUntickingIt() {
        var group = cows();
        var hay = ranch.lot("Ditch-side stack");
        var at = "bench/" + group.id() + "/wishes";
        assertThat(ranch.send(at, Map.of("how-1", "at_least", "amount-1", "8", "feed-1", hay))
                        .status())
                .isEqualTo(303);
        var wished = ranch.kept().wishes().get(group.id()).feeds();
        assertThat(wished).hasSize(1);
        assertThat(wished.get(0).amount().value()).isEqualTo(8);
        assertThat(ranch.get(at).body()).contains("Feed at least 8 lb of Ditch-side stack");
        var keep = "keep-at_least-" + hay;
        var against = ranch.send(at, Map.of(keep, "yes", "how-1", "at_most", "amount-1", "5", "feed-1", hay));
        assertThat(against.status()).isEqualTo(422);
        assertThat(against.body()).contains("href=\"#f-amount-1\"", "value=\"5\"");
        assertThat(ranch.send(at, Map.of("how-1", "at_least", "feed-1", hay)).status())
                .isEqualTo(422);
        assertThat(ranch.kept().wishes().get(group.id()).feeds()).hasSize(1);
        assertThat(ranch.send(at, Map.of("off-fat", "yes")).status()).isEqualTo(303);
        assertThat(ranch.kept().wishes().get(group.id()).feeds()).isEmpty();
        assertThat(ranch.kept().wishes().get(group.id()).limitsOff()).containsExactly("fat");
    }

    /**
     * 30 lb at $165 a ton are 30 · 8.25 ¢ = $2.475, and about two ounces of a mineral at $1,100 a ton 7 ¢, which is said: what is
     * judged by hand can be figured with a pencil.
     */
    @Test
    void aMixByHandIsJudgedBesideTheRation() {
        var group = cows();
        var hay = ranch.lot("Ditch-side stack");
        var judged = ranch.send("bench/" + group.id() + "/hand", Map.of("feed-" + hay, "30", "act", "judge"));
        assertThat(judged.status()).isEqualTo(200);
        var part = judged.body().replaceAll("(?s).*<section id=\"judged\"(.*)</section>.*", "$1");
        assertThat(part).contains("30 lb Ditch-side stack").containsPattern("\\$2\\.5[3-6]");
        assertThat(part.split("class=\"offer", -1).length).isGreaterThan(2);
        var wrong = ranch.send("bench/" + group.id() + "/hand", Map.of("feed-" + hay, "plenty", "act", "judge"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.body()).contains("id=\"judged\"", "value=\"plenty\"");
    }

    /** Corn gluten meal at a price that nobody pays, then nearly for nothing; what is asked is kept nowhere. */
    @Test
    void whatAPurchaseWouldChangeIsSaidAndKeptNowhere() {
        var group = cows();
        var sale = Map.of("name", "Cake", "feedClass", "protein_meal", "price", "400");
        assertThat(ranch.send("feeds/new", sale).status()).isEqualTo(303);
        var feed = ranch.kept().feedsForSale().keySet().iterator().next();
        var at = "bench/" + group.id() + "/buy?feed=" + feed;
        assertThat(ranch.get(at).body()).contains("value=\"25\"", "value=\"400\"");
        var before = ranch.kept();
        var dear = ranch.get(at + "&tons=50&price=4000").body();
        var cheap = ranch.get(at + "&tons=50&price=5").body();
        assertThat(dear).contains("50 tons of Cake at $4,000 a ton").doesNotContain("worth buying.");
        assertThat(cheap).contains("50 tons of Cake at $5 a ton", "a pound of protein");
        assertThat(cheap).contains("worth buying");
        assertThat(ranch.kept()).isEqualTo(before);
        var wrong = ranch.get(at + "&tons=-2&price=none");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.body()).contains("href=\"#f-tons\"", "href=\"#f-price\"");
    }

    /** Every tool opens with a published example, answers it, and names what cannot be beside its box. */
    @Test
    void smallToolsAnswerTheirExamplesAndNameWhatCannotBe() {
        var list = ranch.get("tools").body();
        for (var tool : List.of("pearson-square", "feed-price", "break-even-hay", "waste-cost", "substitution")) {
            assertThat(list).contains("/tools/" + tool + "\"");
            var page = ranch.get("tools/" + tool);
            assertThat(page.status()).as(tool).isEqualTo(200);
            assertThat(page.body()).as(tool).contains("class=\"say feed\"", "class=\"workings\"");
        }
        // Wells and Lalman (Oklahoma State), Noble Ag News and Views, October 2011
        assertThat(ranch.get("tools/waste-cost").body()).contains("$14.35", "246 lb", "$2,583");
        // 2,000 lb of 18 % from 44.4 and 8.9 %: 512.7 and 1,487.3 lb
        assertThat(ranch.get("tools/pearson-square").body()).contains("513 lb", "1,487 lb");
        var wrong = ranch.get("tools/pearson-square?target=50&a=44&b=9&batch=100");
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.body()).contains("href=\"#f-target\"", "value=\"50\"");
        assertThat(ranch.get("tools/waste-cost?bale=x&weight=1200&loss=20").status())
                .isEqualTo(422);
        assertThat(ranch.get("tools/none-such").status()).isEqualTo(404);
    }

    /** A field that two rules refuse is one thing to fix. */
    @Test
    void anErrorListNamesEachFieldOnce() {
        var cow = Map.of(
                "name",
                "Cows",
                "head",
                "ten",
                "weight",
                "50",
                "shrunk",
                "no",
                "weighedOn",
                "Nov 12, 2026",
                "conditionScore",
                "44",
                "breed",
                "Angus");
        var refused = ranch.send("herd/new/mature_cow", cow).body();
        assertOnce(refused);
        var next = new LinkedHashMap<>(cow);
        next.put("head", "10");
        var again = ranch.send("herd/new/mature_cow", next).body();
        assertOnce(again);
        assertThat(again).doesNotContain("Weight at score 5.</b> 1 lb", "3,465");
    }

    private static void assertOnce(String page) {
        var list = page.replaceAll("(?s).*<div class=\"problems\"(.*?)</div>.*", "$1");
        var fields = Pattern.compile("href=\"#(f-[^\"]+)\"")
                .matcher(list)
                .results()
                .map(r -> r.group(1))
                .toList();
        assertThat(fields).isNotEmpty().doesNotHaveDuplicates();
    }
}
