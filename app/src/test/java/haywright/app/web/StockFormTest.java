package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every kind of lot, rightly and wrongly: sizes of nonsense are refused or asked about beside their box. */
class StockFormTest {
    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private RawClient.Answer add(String kind, String feed, String sizes) {
        var fields = new LinkedHashMap<String, String>();
        fields.put("name", "A lot");
        fields.put("feedClass", feed);
        fields.put("storage", "barn");
        fields.put("replacementPrice", "165");
        Arrays.stream(sizes.split(" ")).map(s -> s.split("=")).forEach(s -> fields.put(s[0], s[1]));
        return ranch.send("lots/new/" + kind, fields);
    }

    /** Tons as published or by hand; and the plan that goes with the kind. */
    @ParameterizedTest(name = "{0} {2}: {3}, {4}")
    @CsvSource(
            delimiter = '|',
            value = {
                "bales | legume_hay | bale=small_square count=640 baleWeight=62 | 20 tons | Take 20 bales, one core each",
                "bales | grass_hay | bale=large_round count=1 baleWeight=1200 | 0.6 tons | Take 1 bale, 20 cores each",
                "pyramid | grass_hay | count=60 baleWeight=1200 base=3 tiers=3 length=10 | 36 tons | Take 20 bales",
                "loose_stack | grass_hay | shape=low_round_topped length=40 width=20 over=48 | 29 tons | Take 20 places",
                "rick | grass_hay | length=60 width=30 eaves=12 top=9 | 60 tons | Take 20 places",
                "bunker | corn_silage | length=120 width=40 height=10 densityDryMatter=14 dryMatterPercent=35 | 960 tons | 20 scoops",
                "pile | corn_silage | length=150 width=60 height=8 slope=3 densityDryMatter=14 dryMatterPercent=35 | tons | 20 scoops",
                "bag | corn_silage | diameter=9 length=200 densityDryMatter=13 dryMatterPercent=38 | tons | Take 15 scoops",
                "upright_silo | corn_silage | filling=corn_silage diameter=20 depth=60 fed=0 dryMatterPercent=35 | 458 tons | 15 scoops",
                "bin | grain | diameter=18 wall=12 cone=3 bushelWeight=48 | tons | Take 10 places",
                "bin | legume_hay | diameter=18 wall=12 cone=3 bushelWeight=48 | tons | Take 10 places",
                "sacks | protein_meal | bags=80 bagWeight=50 | 2.0 tons | Take 10 bags, one probe each",
                "sacks | protein_meal | bags=3 bagWeight=50 | tons | Take 3 bags, 2 probes each",
                "weighed | distillers_grains | mass=25 | 25 tons | Take 10 places"
            })
    void everyKindHasItsTonsAndItsPlan(String kind, String feed, String sizes, String tons, String plan) {
        assertThat(add(kind, feed, sizes).status()).isEqualTo(303);
        var lots = ranch.get("lots").body();
        assertThat(lots)
                .containsPattern("<b>[^<]*" + tons + "</b>")
                .contains("Worth testing?", "How the tons are known");
        var lot = ranch.anyLot();
        assertThat(ranch.get("take/lots/" + lot).body()).contains(plan);
        var page = ranch.get("lots/" + lot);
        assertThat(page.body()).contains("as fed", "Used: ");
    }

    @ParameterizedTest(name = "{0} {1}: {3}")
    @CsvSource(
            delimiter = '|',
            value = {
                "bales | bale=large_round count=0 baleWeight=1200 | count | a stack has at least one bale",
                "bales | bale=large_round count=-5 baleWeight=1200 | count | a stack has at least one bale",
                "bales | bale=large_round count=100000 baleWeight=1200 | count | more than most yards hold",
                "bales | bale=large_round count=2000000 baleWeight=1200 | count | no yard has more than 1,000,000",
                "bales | bale=large_round count=99999999999 baleWeight=1200 | count | nothing is counted in billions",
                "bales | bale=large_round count=200 baleWeight=1200 rows=2 columns=10 tiers=3 | count | fewer than the 200",
                "bales | bale=large_round count=9 baleWeight=1200 rows=1 columns=20000 tiers=1 | columns | no stack has more",
                "bales | bale=large_round count=9 baleWeight=1200 rows=0 columns=9 tiers=1 | rows | at least one",
                "pyramid | count=600 baleWeight=1200 base=3 tiers=3 length=10 | count | holds only 60 bales",
                "pyramid | count=6 baleWeight=1200 base=2 tiers=3 length=1 | tiers | each pyramid tier",
                "loose_stack | shape=low_round_topped length=-40 width=20 over=48 | length | has a length, a width",
                "loose_stack | shape=low_round_topped length=40 width=20 over=15 | over | a tape over the top",
                "rick | length=60 width=30 eaves=12 top=-9 | top | has a length, a width",
                "bunker | length=9 width=9 height=9 densityDryMatter=140 dryMatterPercent=35 | densityDryMatter | Did you mean 14",
                "bunker | length=9 width=9 height=9 densityDryMatter=140 dryMatterPercent=35 | densityDryMatter | above 50 lb",
                "bunker | length=9 width=9 height=9 densityDryMatter=1.4 dryMatterPercent=35 | densityDryMatter | Is this right?",
                "bunker | length=9 width=9 height=9 densityDryMatter=14 dryMatterPercent=350 | dryMatterPercent | up to 100 %",
                "pile | length=150 width=60 height=18 slope=3 densityDryMatter=14 dryMatterPercent=35 | slope | peak below its height",
                "pile | length=150 width=60 height=8 slope=-3 densityDryMatter=14 dryMatterPercent=35 | slope | slope outward",
                "bag | diameter=90 length=200 densityDryMatter=13 dryMatterPercent=38 | diameter | Did you mean 9",
                "upright_silo | filling=haylage diameter=20 depth=60 fed=70 dryMatterPercent=35 | fed | more fed than there was",
                "bin | diameter=18 wall=0 cone=3 bushelWeight=48 | wall | has a length, a width",
                "sacks | bags=0 bagWeight=50 | bags | at least one bag",
                "weighed | mass=0 | mass | a lot weighs more than 0"
            })
    void nonsenseIsSaidBesideItsBoxAndNothingIsLost(String kind, String sizes, String field, String words) {
        var answer = add(kind, "corn_silage", sizes);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.body()).contains(words, "href=\"#f-" + field + "\"", "id=\"problems\"", "value=\"A lot\"");
        for (var size : sizes.split(" ")) {
            assertThat(answer.body()).contains("value=\"" + size.split("=")[1] + "\"");
        }
        assertThat(ranch.get("lots").body()).doesNotContain("role=\"row\"");
    }

    /** A stack drawn smaller than its count is kept once it is confirmed, and every page still opens. */
    @Test
    void moreBalesThanTheStackIsDrawnForAreTakenAsLoose() {
        var sizes = "bale=large_round count=200 baleWeight=1200 rows=2 columns=10 tiers=3 confirm=count-above-stack";
        assertThat(add("bales", "grass_hay", sizes).status()).isEqualTo(303);
        assertThat(ranch.get("lots").status()).isEqualTo(200);
        var lot = ranch.anyLot();
        assertThat(ranch.get("take/lots/" + lot).body()).contains("Take 20 bales", "bale 5");
        assertThat(ranch.get("take").status()).isEqualTo(200);
        var twice = "name=Another bale=large_round count=100000 baleWeight=1200 confirm=count-unusual";
        assertThat(add("bales", "grass_hay", twice).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("60,000 tons");
    }

    /** A box on a page has one line; what sends two lines otherwise is given a name in one. */
    @Test
    void aNameIsOneLine() {
        var fields = new LinkedHashMap<String, String>();
        fields.put("name", "Low\r\n meadow");
        fields.put("feedClass", "distillers_grains");
        fields.put("storage", "barn");
        fields.put("replacementPrice", "165");
        fields.put("mass", "25");
        assertThat(ranch.send("lots/new/weighed", fields).status()).isEqualTo(303);
        assertThat(ranch.get("lots").body()).contains("Low meadow");
    }
}
