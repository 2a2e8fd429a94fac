package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Plans asked for by tired people: slips are asked about, and a plan is of what it is for. */
class PlanPagesTest {
    private static final String ASKED = "?start=1&purpose=%s&analyte=cp&halfWidth=0.5&confidencePercent=95&seed=1";

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private RawClient.Answer add(String kind, String fields) {
        var typed = new LinkedHashMap<String, String>();
        typed.put("name", "North stack");
        typed.put("feedClass", "grass_hay");
        typed.put("storage", "barn");
        typed.put("replacementPrice", "165");
        Arrays.stream(fields.split(";")).map(s -> s.split("=")).forEach(s -> typed.put(s[0], s[1]));
        return ranch.send("lots/new/" + kind, typed);
    }

    /** Path of the plan of a new lot of hay. */
    private String hay() {
        assertThat(add("bales", "bale=large_round;count=120;baleWeight=1200").status())
                .isEqualTo(303);
        return "take/lots/" + ranch.anyLot();
    }

    private String plan(String at, String purpose, String... more) {
        var asked = ASKED.formatted(purpose);
        for (int i = 0; i < more.length; i += 2) {
            asked = asked.replaceAll("&" + more[i] + "=[^&]*", "") + "&" + more[i] + "=" + more[i + 1];
        }
        return ranch.get(at + asked).body();
    }

    @ParameterizedTest(name = "{0}={1}: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "confidencePercent | 0.95 | Did you mean 95?",
                "confidencePercent | 20 | coin toss",
                "results | 10%2C5+12%2C3+14%2C1 | Write 10.5 for one number",
                "results | 10+11 | three single cores",
                "results | 10+120+11 | more than 100 %",
                "purpose | prussic_acid | it is not sampled from large round bales",
                "analyte | ca | in % of the value"
            })
    void aSlipIsRefusedAndNamed(String box, String typed, String words) {
        assertThat(plan(hay(), "nutrients", box, typed)).contains(words).doesNotContain("Make the field");
    }

    @Test
    void ownCoresAreEchoedAsTheyWereRead() {
        assertThat(plan(hay(), "nutrients", "results", "10.5+12.3+14.1")).contains("3 cores (10.5, 12.3, 14.1)");
    }

    // Nobody chose the default's half-width, so it fails nobody's question; and nothing is asked that the lot says.
    @Test
    void theDefaultRuleIsNotMarkedAndTheLotIsNotAskedAboutTwice() {
        var page = ranch.get(hay()).body();
        assertThat(page).doesNotContain("wider than asked", "class=\"short\"", "name=\"cuttings\"");
        assertThat(page).doesNotContain("name=\"perUnit\"", "name=\"twoComposites\"", "as many as");
        assertThat(plan(hay2(), "nutrients", "halfWidth", "0.01")).contains("class=\"short\"");
    }

    private String hay2() {
        return "take/lots/" + ranch.anyLot();
    }

    @Test
    void aPlanForNitrateIsCountedForNitrate() {
        assertThat(plan(hay(), "nitrate"))
                .contains("nitrate: <b>±", "% of the value")
                .doesNotContain("crude protein: <b>");
    }

    // 4,536 g are the ten pounds of the source; nobody knows how far molds spread in a lot, so nothing is said of it.
    @Test
    void aPlanForMoldsTakesTenPoundsAndPromisesNothing() {
        var molds = plan(hay(), "moulds");
        assertThat(molds)
                .containsPattern("Take 20 bales, 1[0-9] cores each")
                .contains("10 lb", "breathable")
                .doesNotContain(
                        "crude protein: <b>", "<th scope=\"col\">Rule</th>", "airtight plastic", "airtight bag");
    }

    // Percent of the value is a question of feed; water has no half-width to be wrong.
    @Test
    void stockWaterOpensWithoutAnErrorNobodyMade() {
        assertThat(ranch.get("take/other/stock_water").body())
                .contains("Fill one bottle")
                .doesNotContain("class=\"problem\"", "<b>Error:</b>");
    }

    @Test
    void theUsualOfAMixedRationFitsItsUnit() {
        assertThat(ranch.get("take/other/mixed_ration").body())
                .contains("± 5 % of the value")
                .doesNotContain("246 places");
    }

    @Test
    void aSecondLotOfOneNameAndADayToComeAreAskedAbout() {
        hay();
        var twice = add("bales", "bale=large_round;count=20;baleWeight=1200;name=north stack;madeOn=Jan 1, 2099");
        assertThat(twice.status()).isEqualTo(422);
        assertThat(twice.body()).contains("name-twice", "Jan 1, 2099 is in the future");
    }

    @Test
    void aFractionForDryMatterIsAskedAbout() {
        var asked = add(
                "bunker",
                "feedClass=corn_silage;storage=bunker;length=120;width=40;height=10;densityDryMatter=14;dryMatterPercent=0.35");
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.body()).contains("Did you mean 35 %?");
    }

    @Test
    void squareBalesSayWhichFacesShowTheirButtEnds() {
        add("bales", "bale=large_square;count=40;baleWeight=1300;rows=4;columns=10;tiers=1");
        assertThat(ranch.get("take/lots/" + ranch.anyLot()).body()).contains("Butt ends only");
    }

    @Test
    void theSameReportTypedAgainIsAskedAbout() {
        hay();
        var path = "reports/new/" + ranch.anyLot();
        var typed = Map.of(
                "laboratory", "Valley", "sampleCode", "AB-1", "howSampled", "grab", "one-dm", "90", "dry-cp", "11");
        assertThat(ranch.send(path, typed).status()).isEqualTo(303);
        var again = ranch.send(path, typed);
        assertThat(again.status()).isEqualTo(422);
        assertThat(again.body()).contains("The same figures are on this lot already");
    }
}
