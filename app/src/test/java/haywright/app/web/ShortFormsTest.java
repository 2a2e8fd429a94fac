package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What makes entering a ranch short: one after another, alike, in the words people use, and nothing asked twice. */
class ShortFormsTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    @Test
    void aNewRanchTakesItsTurnoutWithoutAYear() {
        var made = ranch.client()
                .submit(ranch.client().get("/"), "/ranches", Map.of("name", "Wet Boot Ranch", "turnout", "May 10"));
        assertThat(made.status()).isEqualTo(303);
        assertThat(ranch.client().get(made.header("Location")).body()).contains("May 10, 2027");
    }

    /** What is seen on the form goes over to the next one; name, amount and all that is folded does not. */
    @Test
    void anotherLotBeginsLikeTheLast() {
        var typed = new LinkedHashMap<>(OneRanch.hay("120", "1,250#"));
        typed.put("cutting", "first");
        typed.put("more", "yes");
        var next = ranch.after(ranch.send("lots/new/bales", typed)).body();
        assertThat(box(next, "baleWeight")).isEqualTo("1,250");
        assertThat(box(next, "replacementPrice")).isEqualTo("165");
        assertThat(box(next, "name")).isEmpty();
        assertThat(box(next, "count")).isEmpty();
        assertThat(box(next, "cutting")).isEmpty();
        assertThat(next).contains("value=\"grass_hay\" selected", "value=\"tarped\" selected");
    }

    @Test
    void aFeedToBuyNeedsItsNameAndPrice() {
        assertThat(ranch.send("feeds/new", Map.of("name", "Corn", "price", "$185/T"))
                        .status())
                .isEqualTo(303);
        var corn = ranch.kept().feedsForSale().values().iterator().next();
        assertThat(corn.feedClass()).isEqualTo(FeedClass.GRAIN);
        assertThat(corn.price().in(Unit.DOLLAR_PER_TON)).isEqualTo(185);
        var asked = ranch.send("feeds/new", Map.of("name", "Joe’s special", "price", "185"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("href=\"#f-feedClass\"");
    }

    /** Bulls in for 63 days: said in the notice, so that it can be changed. */
    @Test
    void weeksOfCalvingLeftEmptyAreTheUsualAndSaid() {
        var cows = Map.of(
                "name",
                "Cows",
                "head",
                "150 cows",
                "weight",
                "1,300 lb",
                "shrunk",
                "no",
                "weighedOn",
                "11/12",
                "conditionScore",
                "5½",
                "calvingFirst",
                "3/15");
        var saved = ranch.send("herd/new/mature_cow", cows);
        assertThat(saved.status()).isEqualTo(303);
        var group = ranch.kept().groups().values().iterator().next();
        assertThat(group.weighedOn()).isEqualTo(LocalDate.of(2026, 11, 12));
        assertThat(group.conditionScore()).isEqualTo(5.5);
        assertThat(group.firstCalving()).contains(LocalDate.of(2027, 3, 15));
        assertThat(ranch.after(saved).body()).contains("9 weeks of calving, from Mar 15, 2027");
    }

    /** A browser presses a form's first button on Enter: that one does nothing. */
    @Test
    void enterDoesNotSendHalfASheet() {
        for (var at : new String[] {"lots/new/bales", "feeds/new", "herd/new/mature_cow"}) {
            var sheet = ranch.get(at).body().replaceAll("(?s).*?<form class=\"sheet\"", "");
            assertThat(sheet.substring(sheet.indexOf("<button"))).as(at).startsWith("<button type=\"submit\" disabled");
        }
    }

    /** A draft left over an old value is no longer the only one to be seen. */
    @Test
    void aRestoredDraftShowsWhatIsKeptNow() {
        ranch.hay("120");
        var lot = ranch.anyLot();
        var typed = new LinkedHashMap<>(OneRanch.hay("0", "1200 lb"));
        typed.put("replacementPrice", "190");
        assertThat(ranch.send("lots/" + lot, "lots/" + lot + "/as/bales", typed).status())
                .isEqualTo(422);
        var again = ranch.get("lots/" + lot).body();
        assertThat(box(again, "replacementPrice")).isEqualTo("190");
        assertThat(again).contains("On the ranch now: <b>$165 a ton</b>", "On the ranch now: <b>120</b>");
        assertThat(ranch.afresh("lots/" + lot).body()).doesNotContain("On the ranch now");
    }

    @Test
    void whomToCallIsAskedOnceOnTheFirstLetter() {
        ranch.hay("400");
        ranch.cows();
        var group = ranch.kept().groups().keySet().iterator().next();
        var letter = "letter/" + group;
        assertThat(ranch.get(letter).body()).contains(letter + "/call");
        var sent = ranch.send(letter, letter + "/call", Map.of("adviser", "Jo Fenn", "adviserPhone", "308-555-0142"));
        assertThat(ranch.after(sent).body()).doesNotContain(letter + "/call").contains("Jo Fenn");
        assertThat(ranch.kept().settings().adviser()).isEqualTo("Jo Fenn");
    }

    @Test
    void oneBoxFindsWhatIsOnTheRanch() {
        ranch.hay("120");
        ranch.cows();
        assertThat(ranch.send("feeds/new", Map.of("name", "Corn", "price", "185"))
                        .status())
                .isEqualTo(303);
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next();
        var feed = ranch.kept().feedsForSale().keySet().iterator().next();
        assertThat(ranch.get("find").status()).isEqualTo(200);
        assertThat(ranch.get("find?q=stack%20GRASS").body())
                .contains("lots/" + lot)
                .doesNotContain("herd/" + group + "\"");
        assertThat(ranch.get("find?q=angus").body()).contains("herd/" + group).doesNotContain("lots/" + lot + "\"");
        assertThat(ranch.get("find?q=corn").body()).contains("feeds/" + feed);
        assertThat(ranch.get("find?q=%3Cb%3E").body()).contains("&lt;b&gt;").doesNotContain("“<b>”");
    }

    /** A line a group, and a line a feed of its ration; pounds of the whole group are pounds per head times head. */
    @Test
    void herdAndRationsGoToASpreadsheet() {
        ranch.hay("400");
        ranch.cows();
        var herd = ranch.get("herd/herd.csv").body().strip().split("\\R");
        assertThat(herd).hasSize(2);
        assertThat(herd[1]).startsWith("Cows,").contains(",100,1300,full,2026-11-12,5,");
        var rations = ranch.get("bench/rations.csv").body().strip().split("\\R");
        assertThat(rations.length).isGreaterThan(1);
        var cells = rations[1].split(",");
        assertThat(cells).startsWith("2026-11-25", "Cows", "100", "Ditch-side stack", "on hand");
        assertThat(Double.parseDouble(cells[6]))
                .isEqualTo(Math.rint(100 * Double.parseDouble(cells[5])), Offset.offset(1.0));
    }

    private static String box(String page, String name) {
        return page.replaceAll("(?s).*<input id=\"f-" + name + "\"[^>]*? value=\"([^\"]*)\".*", "$1");
    }
}
