package haywright.app.compute.topic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.compute.Asked;
import haywright.app.compute.Compute;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EstimateTopicsTest {
    private static final Asked COMPUTE = new Asked(Topics.ALL);

    private static JsonNode answer(String asked) {
        var outcome = COMPUTE.run("lot-estimate", asked.replace('\'', '"'));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        return outcome.body().get("answer");
    }

    private static String refused(String asked) {
        var outcome = COMPUTE.run("lot-estimate", asked.replace('\'', '"'));
        assertThat(outcome.exit()).isNotEqualTo(Compute.DONE);
        return outcome.body().toString();
    }

    private static JsonNode analyte(JsonNode answer, String id) {
        for (var known : answer.get("analytes")) {
            if (known.get("analyte").asText().equals(id)) {
                return known;
            }
        }
        throw new AssertionError(id);
    }

    /**
     * Barley's analytes stand alone: variance of the kind 1.69, of one load 1.96, of the laboratory 0.25. So 1.69/3.90 of
     * the way from 12.3 to 13, SD sqrt(1.69·2.21/3.90), and 1.64485 of it to each side.
     */
    @Test
    void oneResultAgainstOneKindByHand() {
        var protein = analyte(
                answer("{'feed_class':'barley_grain','reports':[{'sampled':'grab','method':'wet','values':["
                        + "{'analyte':'cp','value':13,'unit':'pct','basis':'dry_matter'}]}]}"),
                "cp");
        Map.of(
                        "mean", 12.6033,
                        "sd", 0.978604,
                        "low_90", 10.9937,
                        "high_90", 14.2130,
                        "prior_mean", 12.3,
                        "prior_sd", 1.3,
                        "share_lot", 0.566667,
                        "share_sampling", 0.384314,
                        "share_laboratory", 0.0490196)
                .forEach((key, value) ->
                        assertThat(protein.get(key).asDouble()).as(key).isCloseTo(value, within(0.00005)));
    }

    @Test
    void aLotNeverTestedIsItsKind() {
        var answer = answer("{'feed_class':'dormant_range','reports':[]}");
        assertThat(analyte(answer, "adf").get("mean").asDouble()).isEqualTo(45);
        assertThat(analyte(answer, "adf").get("share_lot").asDouble()).isEqualTo(1);
        assertThat(answer.get("derived").findValuesAsText("what")).containsExactly("tdn", "nem", "neg");
    }

    @Test
    void aFeedThatNobodyMeasuredIsWideAndSaysSo() {
        var cp = analyte(answer("{'feed_class':'soybean_meal','reports':[]}"), "cp");
        assertThat(cp.get("sd").asDouble()).isPositive();
        assertThat(cp.get("prior_known").asText()).contains("nobody measured it");
    }

    @Test
    void whatALaboratoryCalculatedMovesNothing() {
        var cp = "{'analyte':'cp','value':11,'unit':'pct','basis':'dry_matter'}";
        var tdn = ",{'analyte':'tdn','value':68,'unit':'pct','basis':'dry_matter'}";
        var asked = "{'feed_class':'grass_hay','reports':[{'sampled':'plan','units':20,'values':[%s]}]}";
        assertThat(answer(asked.formatted(cp + tdn)).get("analytes"))
                .isEqualTo(answer(asked.formatted(cp)).get("analytes"));
    }

    @Test
    void whatIsMissingOrImpossibleIsRefusedInWords() {
        assertThat(refused("{'feed_class':'grass_hay','reports':[{'sampled':'plan','values':[]}]}"))
                .contains("units", "From how many bales");
        assertThat(refused("{'feed_class':'npn','reports':[]}")).contains("how far lots of it differ");
        assertThat(refused("{'feed_class':'grass_hay','reports':[{'sampled':'grab','values':["
                        + "{'analyte':'cp','value':-3,'unit':'pct','basis':'dry_matter'}]}]}"))
                .contains("minus");
    }
}
