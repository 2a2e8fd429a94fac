package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.sampling.CountLine;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lot, what was weighed of it, and what makes it more than one lot: on the page, without scripts. */
class WeighPagesTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private String lot;

    @BeforeEach
    void start() {
        ranch.send("lots/new/bales", hay());
        lot = ranch.anyLot();
    }

    private static Map<String, String> hay() {
        return OneRanch.hay("200", "1,200 lb");
    }

    private RawClient.Answer weigh(String bales, String whole) {
        return ranch.send(
                "take/lots/" + lot + "/weigh", Map.of("weighedOn", "Nov 24, 2026", "bales", bales, "whole", whole));
    }

    // 200 · 1,100 lb = 110 tons; typed in: 200 · 1,200 lb = 120 tons
    @Test
    void aWeighingStandsBesideWhatWasTypedInAndCanBeTakenAway() {
        var kept = weigh("1080, 1,090 1100; 1110\n1120", "");
        assertThat(kept.status()).isEqualTo(303);
        assertThat(ranch.after(kept).body()).contains("<b>Saved.</b>", "110 tons", "120 tons");
        assertThat(ranch.get("lots/" + lot).body())
                .contains("<b>110 tons</b> as fed", "120 tons", "Nov 24, 2026", "value=\"1,200\"");
        assertThat(ranch.get("lots").body()).contains("<b>110 tons</b> on hand");
        var again = weigh("1080 1090 1100 1110 1120", "");
        assertThat(ranch.after(again).body()).contains("<b>Saved.</b> Nothing changed", "110 tons");
        ranch.send("lots/" + lot + "/as/bales", hay());
        assertThat(ranch.get("lots").body()).contains("<b>110 tons</b> on hand");
        var page = ranch.get("take/lots/" + lot + "/weigh");
        ranch.submit(page, "take/lots/" + lot + "/weigh/0/delete", Map.of());
        assertThat(ranch.get("lots").body()).contains("<b>120 tons</b> on hand");
    }

    @ParameterizedTest(name = "“{0}” and “{1}”: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | '' | nothing entered",
                "1100 | '' | 1 bale weighed”: it takes at least two",
                "1100 heavy | '' | is not a unit of what is asked here",
                "1100 lb 1110 | '' | some have a unit and some have none",
                "about 1100 lb 1110 lb | '' | no other words",
                "1100 -1100 | '' | each is a number of 0 or more",
                "1100 0 | '' | a bale weighs more than 0",
                "1100 110 | '' | is far from the 1,200 lb",
                "1100 1110 | 112 | enter some bales or the whole lot, not both",
                "'' | -3 | a lot weighs more than 0"
            })
    void whatCannotBeStandsBesideItsBoxAndNothingIsLost(String bales, String whole, String rule) {
        var answer = weigh(bales, whole);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).containsIgnoringCase(rule).contains(bales, "id=\"problems\"");
        assertThat(ranch.get("lots").body()).contains("<b>120 tons</b> on hand");
    }

    // 200 · 500 kg = 100,000 kg = 110.2 tons; the one of Nov 20 is older, though it is typed in later
    @Test
    void unitsAreUnderstoodAndTheNewestDayCounts() {
        for (var typed : List.of("500 kg 490kg 510 kg", "500, 490, 510 kg")) {
            assertThat(weigh(typed, "").status()).isEqualTo(303);
            assertThat(ranch.get("lots").body()).contains("<b>110 tons</b> on hand");
        }
        var older = ranch.send(
                "take/lots/" + lot + "/weigh",
                Map.of("weighedOn", "Nov 20, 2026", "bales", "1000 990 1010", "whole", ""));
        assertThat(older.status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("<b>110 tons</b> on hand");
    }

    @Test
    void aDayThatHasNotComeIsRefused() {
        var answer = ranch.send(
                "take/lots/" + lot + "/weigh", Map.of("weighedOn", "Nov 26, 2026", "bales", "1100 1110", "whole", ""));
        assertThat(answer.body()).contains("a weighing can’t be in the future");
    }

    @Test
    void whatMakesItMoreThanOneLotIsSaidAndNotRefused() {
        var mixed = hay();
        mixed.put("cuttings", "2");
        mixed.put("balingHours", "72");
        mixed.put("partRained", "yes");
        assertThat(ranch.send("lots/" + lot + "/as/bales", mixed).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body())
                .contains("Split it by cutting", "Split it by rain", "Split it by day of baling");
        assertThat(ranch.get("lots/" + lot).body()).contains("Split it by rain", "value=\"72\"");
        assertThat(ranch.get("take/lots/" + lot).body()).contains("Split it by day of baling");
        mixed.put("cuttings", "none");
        mixed.put("fields", "0");
        var refused = ranch.send("lots/" + lot + "/as/bales", mixed);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.body()).contains("id=\"p-cuttings\"", "value=\"72\"");
    }

    private RawClient.Answer line(String line) {
        return ranch.send("take", "take/line", Map.of("line", line));
    }

    private String code(String path) {
        var page = ranch.get(path + "/phone.html");
        assertThat(page.body()).contains("Scripts are off").doesNotContain("src=", "href=");
        return page.body().replaceAll("(?s).*data-code=\"([A-Z0-9]{6})\".*", "$1");
    }

    @Test
    void aLineFromAPhoneIsReadLikeOneOfAFieldSheet() {
        var day = LocalDate.of(2026, 11, 24);
        var code = code("take/lots/" + lot + "/weigh");
        var line = new CountLine(code, day, List.of(1080, 1090, 1100, 1110, 1120)).text();
        var kept = line(line);
        assertThat(ranch.after(kept).body()).contains("<b>Saved.</b>", "110 tons", "Nov 24, 2026");
        assertThat(ranch.after(line(line)).body()).contains("Nothing changed");
        var changed = line(line.replace("1110", "1111"));
        assertThat(changed.status()).isEqualTo(422);
        assertThat(changed.body()).contains("its last letter does not fit", "id=\"p-line\"", "1111");
        var strange = line(new CountLine("WZZZZZ", day, List.of(1100, 1110)).text());
        assertThat(strange.body()).contains("no lot or group of this ranch has a sheet with this code");
        assertThat(line(new CountLine(code, day, List.of(1100)).text()).body()).contains("it takes at least two");
    }
}
