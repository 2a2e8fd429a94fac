package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** What a form is about was deleted in another window, or its ranch archived: that is said, and what was typed stays. */
class GoneTest {
    private static final Pattern BOX =
            Pattern.compile("<input(?: type=\"hidden\")? name=\"([^\"]+)\" value=\"([^\"]*)\">");

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    /** Presses the button of the page that says what is gone. */
    private RawClient.Answer again(RawClient.Answer gone) {
        var form = gone.body().replaceAll("(?s).*?(<form class=\"sheet\".*?</form>).*", "$1");
        var all = new LinkedHashMap<String, String>();
        var boxes = BOX.matcher(form);
        while (boxes.find()) {
            all.put(boxes.group(1), boxes.group(2));
        }
        assertThat(all).containsKey("again");
        var action = form.replaceAll("(?s).* action=\"([^\"]+)\".*", "$1");
        return ranch.client().submit(gone, action, all);
    }

    private static Map<String, String> changed() {
        var hay = OneRanch.hay("280", "1200 lb");
        hay.put("name", "Creek stack");
        return hay;
    }

    @Test
    void aLotThatIsGoneIsNotAddedInSilence() {
        ranch.hay("300");
        var lot = UUID.fromString(ranch.anyLot());
        var at = "lots/" + lot + "/as/bales";
        var stale = ranch.get(at);
        var sheet = Map.of("laboratory", "Tin Valley", "howSampled", "grab", "one-dm", "90", "dry-cp", "10");
        assertThat(ranch.send("reports/new/" + lot, sheet).status()).isEqualTo(303);
        assertThat(ranch.send("lots/" + lot + "/delete", Map.of()).status()).isEqualTo(303);
        var gone = ranch.submit(stale, at, changed());
        assertThat(gone.status()).isEqualTo(409);
        assertThat(gone.body()).contains("Lot deleted: Ditch-side stack", "Creek stack");
        assertThat(ranch.kept().lots()).isEmpty();
        // a draft too, and its page says the same
        assertThat(ranch.store().drafts().waiting(ranch.id())).contains(at);
        var opened = ranch.get(at);
        assertThat(opened.status()).isEqualTo(404);
        assertThat(opened.body()).contains("Lot deleted: Ditch-side stack", "Creek stack");
        assertThat(again(gone).status()).isEqualTo(303);
        assertThat(ranch.kept().lots().get(lot).name()).isEqualTo("Creek stack");
        assertThat(ranch.kept().lots().get(lot).stock().bales()).isEqualTo(280);
        assertThat(ranch.kept().reportsOn(lot)).as("went with the lot").hasSize(1);
        assertThat(ranch.store().drafts().waiting(ranch.id())).isEmpty();
        // pressed twice, nothing comes a second time
        assertThat(again(gone).status()).isEqualTo(303);
        assertThat(ranch.kept().lots()).hasSize(1);
    }

    @Test
    void everyKindOfRowSaysIt() {
        ranch.hay("300");
        ranch.cows();
        var feed = Map.of("name", "Cake", "feedClass", "protein_meal", "price", "400");
        assertThat(ranch.send("feeds/new", feed).status()).isEqualTo(303);
        assertThat(ranch.send("reports/water/new", Map.of("name", "Well")).status())
                .isEqualTo(303);
        var now = ranch.kept();
        var lot = now.lots().keySet().iterator().next();
        var group = now.groups().keySet().iterator().next();
        var sale = now.feedsForSale().keySet().iterator().next();
        var water = now.waters().keySet().iterator().next();
        for (var row : List.of(
                new String[] {"herd/" + group, "herd/" + group},
                new String[] {"bench/" + group + "/wishes", "herd/" + group},
                new String[] {"feeds/" + sale, "feeds/" + sale},
                new String[] {"reports/water/" + water, "reports/water/" + water},
                new String[] {"reports/new/" + lot, "lots/" + lot},
                new String[] {"take/lots/" + lot + "/weigh", "lots/" + lot})) {
            var stale = ranch.get(row[0]);
            assertThat(stale.status()).as(row[0]).isEqualTo(200);
            assertThat(ranch.send(row[1] + "/delete", Map.of()).status())
                    .as(row[1])
                    .isEqualTo(303);
            var gone = ranch.submit(stale, row[0], Map.of("name", "typed here"));
            assertThat(gone.status()).as(row[0]).isEqualTo(409);
            assertThat(gone.body()).as(row[0]).contains("deleted:", "typed here", "name=\"again\"");
            assertThat(ranch.store().drafts().waiting(ranch.id())).as(row[0]).contains(row[0]);
            again(ranch.get(row[0]));
            assertThat(ranch.get(row[0]).status()).as(row[0]).isEqualTo(200);
            ranch.store().drafts().clear(ranch.id(), row[0]);
        }
        var back = ranch.kept();
        assertThat(back.lots()).isEqualTo(now.lots());
        assertThat(back.groups()).isEqualTo(now.groups());
        assertThat(back.feedsForSale()).isEqualTo(now.feedsForSale());
        assertThat(back.waters()).isEqualTo(now.waters());
    }

    /** What somebody else took in since stays. */
    @Test
    void nothingElseComesBackWithIt() {
        ranch.hay("300");
        var lot = UUID.fromString(ranch.anyLot());
        ranch.weighedLot("Second cutting", "grass_hay");
        var second = UUID.fromString(ranch.lot("Second cutting"));
        var stale = ranch.get("lots/" + lot + "/as/bales");
        ranch.change(now -> now.withoutLot(lot).withoutLot(second));
        assertThat(again(ranch.submit(stale, "lots/" + lot + "/as/bales", changed()))
                        .status())
                .isEqualTo(303);
        assertThat(ranch.kept().lots()).containsOnlyKeys(lot);
    }

    @Test
    void whatWasTypedOfThePlaceOfAnArchivedRanchIsInItsFormAfterwards() {
        var stale = ranch.get("settings/weather");
        assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, "settings/weather/place", Map.of("town", "Valentine, NE"))
                        .status())
                .isEqualTo(409);
        ranch.store().ranches().restore(ranch.id());
        assertThat(ranch.get("settings/weather").body()).contains("value=\"Valentine, NE\"");
    }

    /** The link on the ranch's page leads to it. */
    @Test
    void whatWasPickedForALotOfAnArchivedRanchIsInItsFormAfterwards() {
        ranch.hay("300");
        var lot = ranch.anyLot();
        var sheet = Map.of("laboratory", "Tin Valley", "howSampled", "grab", "one-dm", "90", "dry-cp", "10");
        assertThat(ranch.send("reports/new/" + lot, sheet).status()).isEqualTo(303);
        var at = "reports/lot/" + lot;
        var stale = ranch.get(at);
        assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.submit(stale, at + "/energy", Map.of("way", "typed here"))
                        .status())
                .isEqualTo(409);
        ranch.store().ranches().restore(ranch.id());
        assertThat(ranch.store().drafts().waiting(ranch.id())).containsExactly(at + "/energy");
        assertThat(ranch.get("").body()).contains("href=\"" + ranch.path() + at + "\"");
    }

    /** A form beside others on its page does not get into theirs. */
    @Test
    void whatWasSentOfAnArchivedRanchBesideAnotherFormIsInItsOwnAfterwards() {
        ranch.hay("300");
        ranch.cows();
        var group = ranch.kept().groups().keySet().iterator().next();
        for (var form : List.of(
                List.of("winter/week", "winter/week/line", "line", "F12345-not-a-line"),
                List.of("letter/" + group, "letter/" + group + "/call", "veterinarian", "Dr. Typed Here"))) {
            var stale = ranch.get(form.get(0));
            assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
            assertThat(ranch.submit(stale, form.get(1), Map.of(form.get(2), form.get(3)))
                            .status())
                    .isEqualTo(409);
            ranch.store().ranches().restore(ranch.id());
            assertThat(ranch.store().drafts().waiting(ranch.id()))
                    .as(form.get(1))
                    .containsExactly(form.get(1));
            assertThat(ranch.get("").body()).contains("href=\"" + ranch.path() + form.get(0) + "\"");
            assertThat(ranch.get(form.get(0)).body()).contains("value=\"" + form.get(3) + "\"");
            var listed = ranch.get("");
            assertThat(ranch.submit(listed, "unfinished/forget", Map.of("form", form.get(1), "print", "older"))
                            .status())
                    .isEqualTo(303);
            assertThat(ranch.store().drafts().waiting(ranch.id()))
                    .as("what was typed since it was listed stays")
                    .hasSize(1);
            var print = listed.body().replaceAll("(?s).*name=\"print\" value=\"([^\"]*)\".*", "$1");
            assertThat(ranch.submit(listed, "unfinished/forget", Map.of("form", form.get(1), "print", print))
                            .status())
                    .isEqualTo(303);
            assertThat(ranch.store().drafts().waiting(ranch.id())).isEmpty();
        }
    }

    /** It can be brought back, and what was typed with it. */
    @Test
    void deletingALotLeavesWhatAnotherWindowTypedOfIt() {
        ranch.hay("300");
        var lot = UUID.fromString(ranch.anyLot());
        var at = "lots/" + lot + "/as/bales";
        var wrong = changed();
        wrong.put("count", "many");
        assertThat(ranch.send(at, wrong).status()).isEqualTo(422);
        assertThat(ranch.send("lots/" + lot + "/delete", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.store().drafts().waiting(ranch.id())).containsExactly(at);
        var gone = ranch.get(at);
        assertThat(gone.body()).contains("Creek stack", "many");
        assertThat(again(gone).status()).isEqualTo(303);
        assertThat(ranch.get(at).body()).contains("value=\"many\"");
    }

    @Test
    void aFormOfAnArchivedRanchSaysSo() {
        ranch.hay("300");
        var lot = UUID.fromString(ranch.anyLot());
        var at = "lots/" + lot + "/as/bales";
        var stale = ranch.get(at);
        assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
        var gone = ranch.submit(stale, at, changed());
        assertThat(gone.status()).isEqualTo(409);
        assertThat(gone.body()).contains("Cold Spring Ranch", "archived", "Creek stack");
        assertThat(ranch.store().drafts().waiting(ranch.id())).contains(at);
        assertThat(ranch.store().ranches().deleted()).hasSize(1);
        var opened = ranch.get("lots");
        assertThat(opened.status()).isEqualTo(404);
        assertThat(opened.body()).contains("archived");
        assertThat(again(gone).status()).isEqualTo(303);
        assertThat(ranch.kept().lots().get(lot).name()).isEqualTo("Creek stack");
        assertThat(ranch.send("archive", Map.of()).status()).isEqualTo(303);
        assertThat(ranch.after(again(ranch.get("lots"))).status()).isEqualTo(200);
        assertThat(ranch.store().ranches().deleted()).isEmpty();
    }

    /** What was left unfinished is found again from the ranch's own page, whichever form it was. */
    @Test
    void eachLinkToWhatWasLeftUnfinishedOpensItsForm() {
        ranch.hay("300");
        ranch.cows();
        var lot = ranch.anyLot();
        var group = ranch.kept().groups().keySet().iterator().next();
        var wrong = List.of(
                List.of("herd/" + group, "herd/" + group, "head"),
                List.of("herd/new/mature_cow", "herd/new/mature_cow", "head"),
                List.of("herd/" + group + "/split", "herd/" + group + "/split", "head"),
                List.of("bench/" + group + "/wishes", "bench/" + group + "/wishes", "sureness"),
                List.of("bench/" + group + "/hand", "bench/" + group + "/hand", "feed-" + lot),
                List.of("settings/weather", "settings/weather/place", "town"),
                List.of("settings/outfit", "settings/outfit", "bunk"),
                List.of("lots/" + lot + "/as/bales", "lots/" + lot + "/as/bales", "count"),
                List.of("take/groups/" + group + "/scores", "take/groups/" + group + "/scores", "scores"),
                List.of("winter/week", "winter/week", "fed-" + lot));
        for (var form : wrong) {
            var typed = Map.of(form.get(2), "zz-" + wrong.indexOf(form), "act", "keep");
            assertThat(ranch.send(form.get(0), form.get(1), typed).status())
                    .as(form.get(1))
                    .isEqualTo(422);
        }
        var links = Pattern.compile("<li><a href=\"([^\"]+)\">[^<]*</a><p>not saved yet")
                .matcher(ranch.get("").body())
                .results()
                .map(link -> link.group(1))
                .toList();
        assertThat(links).hasSize(wrong.size());
        var pages = links.stream().map(link -> ranch.client().get(link)).toList();
        assertThat(pages).allMatch(page -> page.status() == 200);
        for (int i = 0; i < wrong.size(); i++) {
            var typed = "zz-" + i;
            assertThat(pages)
                    .as(wrong.get(i).get(0))
                    .anyMatch(page -> page.body().contains(typed));
        }
    }

    @Test
    void whatNeverWasIsNoSuchPage() {
        var never = "7e000000-0000-4000-8000-000000000000";
        assertThat(ranch.get("lots/" + never).body()).doesNotContain("name=\"again\"");
        assertThat(ranch.client().get("/ranch/" + never + "/").body()).doesNotContain("name=\"again\"");
        var page = ranch.get("lots/new/bales");
        assertThat(ranch.submit(page, "lots/" + never + "/as/bales", changed()).status())
                .isEqualTo(404);
        assertThat(ranch.kept().lots()).isEmpty();
    }
}
