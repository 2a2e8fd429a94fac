package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.words.Show;
import haywright.outlook.LotTons;
import haywright.outlook.UsualPrices;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UsualBale;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A lot that nobody has priced: sampled, read, shown and fed like any other, at a usual price that is said wherever it acts. */
class LotWithoutPriceTest {
    private static final Map<String, String> PLAN =
            Map.of("purpose", "nutrients", "analyte", "cp", "halfWidth", "0.5", "confidencePercent", "95", "seed", "1");

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    /** What a sample does without is asked for later, and nothing is filled in for it. */
    @Test
    void aLotIsSampledBeforeItsPriceAndItsStorageAreKnown() {
        var typed = new LinkedHashMap<>(OneRanch.hay("120", "1200 lb"));
        typed.remove("storage");
        typed.put("replacementPrice", "");
        assertThat(ranch.send("lots/new/bales", typed).status()).isEqualTo(303);
        var lot = ranch.kept().lots().values().iterator().next();
        assertThat(lot.storage()).isNull();
        assertThat(lot.replacementPrice()).isNull();
        for (var path : List.of("lots", "lots/" + lot.id(), "reports/lot/" + lot.id(), "reports/beside")) {
            assertThat(ranch.get(path).status()).as(path).isLessThan(500);
        }
        assertThat(ranch.get("lots").body()).contains(Show.price(UsualPrices.of(lot)), "assumed");
        var plan = ranch.get("take/lots/" + lot.id());
        assertThat(plan.status()).isEqualTo(200);
        assertThat(plan.body()).contains("id=\"make\"").doesNotContain("class=\"problem");
        var sheet = ranch.submit(plan, "take/lots/" + lot.id() + "/sheet", PLAN);
        assertThat(sheet.status()).isEqualTo(303);
        assertThat(ranch.kept().samplings()).hasSize(1);

        var bulls = WeatherPagesTest.BULLS;
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", bulls).status()).isEqualTo(303);
        var group = ranch.kept().groups().keySet().iterator().next();
        var assumed = "price of Ditch-side stack (%s)".formatted(Show.price(UsualPrices.of(lot)));
        for (var path : List.of("bench", "bench/" + group, "letter/" + group)) {
            assertThat(ranch.get(path).body()).as(path).contains(assumed);
        }
        assertThat(ranch.get("herd/" + group).body()).contains("Ditch-side stack put out");
        assertThat(new Yard(ranch.kept(), LocalDate.of(2026, 11, 25)).feeds())
                .anyMatch(feed -> feed.feed().id().equals(lot.id().toString())
                        && feed.pricePerKgAsFed() == UsualPrices.of(lot).in(Unit.DOLLAR_PER_KG));

        var hand = ranch.send(
                "bench/" + group + "/hand",
                "bench/" + group + "/hand",
                Map.of("feed-" + lot.id(), "30", "act", "keep"));
        assertThat(hand.status()).isEqualTo(303);
        assertThat(ranch.get("letter/" + group).status()).isEqualTo(200);

        typed.put("replacementPrice", "150");
        typed.put("storage", "tarped");
        assertThat(ranch.send("lots/" + lot.id(), "lots/" + lot.id() + "/as/bales", typed)
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get("bench/" + group).body()).doesNotContain(assumed, "price of Ditch-side stack");
    }

    /** A bale weight that nobody said is a usual one with a wide range, and is named beside every ration. */
    @Test
    void aBaleWeightThatNobodySaidIsAssumedAndNamed() {
        var typed = new LinkedHashMap<>(OneRanch.hay("120 bales", ""));
        assertThat(ranch.send("lots/new/bales", typed).status()).isEqualTo(303);
        var lot = ranch.kept().lots().values().iterator().next();
        assertThat(((Stock.Bales) lot.stock()).baleWeight()).isNull();
        var each = Show.quantity(UsualBale.weight(Stock.BaleKind.LARGE_ROUND));
        assertThat(ranch.get("lots").body()).contains(each + ", assumed");
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", WeatherPagesTest.BULLS)
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get("bench").body()).contains("bale weight of Ditch-side stack (" + each + ")");
        var tons = LotTons.of(lot).used();
        assertThat(tons.range().highKg() / tons.range().lowKg()).isGreaterThan(1.5);
    }
}
