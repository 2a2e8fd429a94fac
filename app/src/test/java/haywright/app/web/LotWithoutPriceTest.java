package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.outlook.Yard;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** A lot that nobody has priced: sampled, read and shown like any other, and in no ration until its price is said. */
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
        assertThat(ranch.get("lots").body()).contains("in no ration yet");
        var plan = ranch.get("take/lots/" + lot.id());
        assertThat(plan.status()).isEqualTo(200);
        assertThat(plan.body()).contains("id=\"make\"").doesNotContain("class=\"problem");
        var sheet = ranch.submit(plan, "take/lots/" + lot.id() + "/sheet", PLAN);
        assertThat(sheet.status()).isEqualTo(303);
        assertThat(ranch.kept().samplings()).hasSize(1);

        var bulls = WeatherPagesTest.BULLS;
        assertThat(ranch.send("herd/new/bull", "herd/new/bull", bulls).status()).isEqualTo(303);
        var group = ranch.kept().groups().keySet().iterator().next();
        assertThat(ranch.get("bench").body()).contains("no lot has a price yet");
        assertThat(ranch.get("bench/" + group).body()).contains("Ditch-side stack", "would cost to replace");
        assertThat(ranch.get("herd/" + group).body()).contains("Ditch-side stack put out");
        assertThat(new Yard(ranch.kept(), LocalDate.of(2026, 11, 25)).feeds()).isEmpty();

        // fed already: what it costs is asked for, and what is typed stays
        var hand = ranch.send(
                "bench/" + group + "/hand",
                "bench/" + group + "/hand",
                Map.of("feed-" + lot.id(), "30", "act", "keep"));
        assertThat(hand.status()).isEqualTo(303);
        assertThat(ranch.get("bench/" + group).body()).contains("has no price yet", "would cost to replace");
        assertThat(ranch.get("letter/" + group).status()).isEqualTo(200);

        typed.put("replacementPrice", "150");
        typed.put("storage", "tarped");
        assertThat(ranch.send("lots/" + lot.id(), "lots/" + lot.id() + "/as/bales", typed)
                        .status())
                .isEqualTo(303);
        assertThat(ranch.get("bench/" + group).body()).doesNotContain("has no price yet");
    }
}
