package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.compute.topic.Topics;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code compute ration} asked what cannot be answered: exit 2 with the key that was typed, or 1 with what stands in the way. */
class BadRationsTest {
    private static final Asked COMPUTE = new Asked(Topics.ALL);

    private static final String COW = "'requirement':{'class':'mature_cow','body_weight_lb':1300,'days_pregnant':200}";
    private static final String HAY =
            "{'name':'hay','feed_class':'grass_hay','price_usd_per_ton':120,'dm_pct':88,'cp_pct_dm':11,'tdn_pct_dm':56}";

    private static String quoted(String json) {
        return json.replace('\'', '"');
    }

    private static String asked(String feeds, String more) {
        return quoted("{%s,'feeds':[%s]%s}".formatted(COW, feeds, more.isEmpty() ? "" : "," + more));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '"',
            value = {
                "'sureness_pct':49; sureness_pct",
                "'sureness_pct':100; sureness_pct",
                "'head':0; head",
                "'head':-3; head",
                "'feeding':'buckets'; feeding",
                "'answer':'tidy'; answer",
                "'grain_feedings_a_day':0; grain_feedings_a_day",
                "'limits_off':['nitrate']; limits_off",
                "'feed_limits':[{'feed':'straw','at_most_kg_dm':1}]; feed_limits",
                "'water_no3_n_mg_per_l':-1; water",
                "'temperature_c':-500; temperature",
                "'sureness':80; sureness",
            })
    void aWishThatIsNoneIsRefusedBesideItsKey(String more, String field) {
        var outcome = COMPUTE.run("ration", asked(HAY, more));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().at("/errors/0/field").asText()).contains(field);
        assertThat(outcome.body().toString()).doesNotContain("Exception").doesNotContain("null");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "'price_usd_per_ton':0",
                "'price_usd_per_ton':-5",
                "'price_usd_per_ton':120,'feeding_loss_pct':100",
                "'price_usd_per_ton':120,'on_hand_tons':-1",
                "'price_usd_per_ton':120,'sd':{'cp':-1}",
                "'price_usd_per_ton':120,'sd':{'protein':1}",
                "'dm_pct':88",
                "'price_usd_per_ton':120,'feed_class':'moon_hay'",
            })
    void aFeedThatIsNoneIsRefusedByName(String key) {
        var kind = key.contains("feed_class") ? "" : "'feed_class':'grass_hay',";
        var outcome = COMPUTE.run("ration", asked("{'name':'hay'," + kind + key + "}", ""));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().toString()).doesNotContain("Exception");
    }

    @Test
    void noFeedAndTheSameTwiceAreRefused() {
        assertThat(COMPUTE.run("ration", asked("", "")).exit()).isEqualTo(Compute.REFUSED);
        var twice = COMPUTE.run("ration", asked(HAY + "," + HAY, ""));
        assertThat(twice.exit()).isEqualTo(Compute.REFUSED);
        assertThat(twice.body().at("/errors/0").toString()).contains("twice");
    }

    /** Neither a report nor a kind: what it is must be said. A kind alone is answered from the feed book, doubt and all. */
    @Test
    void noReportAndNoKind() {
        var none = COMPUTE.run("ration", asked("{'name':'something','price_usd_per_ton':100}", ""));
        assertThat(none.exit()).isEqualTo(Compute.REFUSED);
        assertThat(none.body().at("/errors/0/field").asText()).contains("feed_class");
        var kind = COMPUTE.run(
                "ration",
                asked(
                        HAY + ",{'name':'something','feed_class':'grass_hay','price_usd_per_ton':100}",
                        "'sureness_pct':80"));
        assertThat(kind.exit()).as(kind.body().toString()).isEqualTo(Compute.DONE);
    }

    @Test
    void wishesThatContradictStandInTheWay() {
        var outcome = COMPUTE.run(
                "ration", asked(HAY, "'feed_limits':[{'feed':'hay','at_least_kg_dm':8,'at_most_kg_dm':5}]"));
        assertThat(outcome.exit()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/no_ration/stands_in_the_way")).hasSize(2);
        assertThat(outcome.body().at("/answer/no_ration/lifts")).isNotEmpty();
    }

    /** A spread of nothing is certain; one wider than the figure is as sure as can be had, and says how sure that is. */
    @Test
    void aSpreadOfNothingAndOneWiderThanTheFigure() {
        var certain =
                COMPUTE.run("ration", asked(HAY.replace("}", ",'sd':{'cp':0,'ca':0,'p':0}}"), "'sureness_pct':90"));
        assertThat(certain.exit()).as(certain.body().toString()).isEqualTo(Compute.DONE);
        var wide = COMPUTE.run("ration", asked(HAY.replace("}", ",'sd':{'cp':40}}"), "'sureness_pct':90"));
        assertThat(wide.exit()).as(wide.body().toString()).isEqualTo(Compute.DONE);
        assertThat(wide.body().at("/answer/ration/sureness_pct").asDouble()).isLessThan(90);
        assertThat(wide.body().at("/answer/ration/joint_chance_pct").asDouble()).isLessThan(90);
    }

    /** A lot of which nothing is left is not fed. */
    @ParameterizedTest
    @ValueSource(strings = {"continuous", "as_fed"})
    void aLotOfWhichNothingIsLeftIsNotFed(String answer) {
        var feeds = HAY.replace("}", ",'on_hand_tons':0}").replace("120", "60") + ","
                + HAY.replace("'hay'", "'hay to buy'");
        var outcome = COMPUTE.run("ration", asked(feeds, "'head':40,'answer':'" + answer + "'"));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        var fed = outcome.body().at("/answer/ration/feeds");
        assertThat(fed.findValuesAsText("name")).contains("hay to buy").doesNotContain("hay");
    }

    @Test
    void fiveHundredFeedsAreAnswered() {
        var feeds = IntStream.range(0, 500)
                .mapToObj(i -> HAY.replace("120", String.valueOf(100 + i)).replace("'hay'", "'hay " + i + "'"))
                .collect(Collectors.joining(","));
        var outcome = COMPUTE.run("ration", asked(feeds, "'answer':'as_fed'"));
        assertThat(outcome.exit()).as(outcome.errors().toString()).isEqualTo(Compute.DONE);
        assertThat(outcome.body().at("/answer/ration/not_used").size()
                        + outcome.body().at("/answer/ration/feeds").size())
                .isEqualTo(501);
    }

    @Test
    void cattleThatCannotEatEnoughAreToldWhatIsShort() {
        var outcome = COMPUTE.run(
                "ration",
                quoted(
                        "{'requirement':{'class':'mature_cow','body_weight_lb':1300,'weeks_in_milk':8,'peak_milk_lb':25},'temperature_c':-25,"
                                + "'feeds':[{'name':'slough hay','feed_class':'grass_hay','price_usd_per_ton':60,'cp_pct_dm':7,'tdn_pct_dm':44}]}"));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/no_ration/stands_in_the_way")).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"free_choice", "put_out_daily", "bunk", "limit_fed"})
    void everyWayOfFeedingIsAnsweredThatItsNameSays(String way) {
        var outcome = COMPUTE.run("ration", asked(HAY, "'feeding':'" + way + "'"));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        assertThat(outcome.body().at("/answer/ration/cost_usd").asDouble()).isCloseTo(1.5, within(0.6));
    }
}
