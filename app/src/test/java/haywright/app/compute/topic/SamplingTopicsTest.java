package haywright.app.compute.topic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.compute.Asked;
import haywright.app.compute.Compute;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sampling, fields and stocks as other programs ask for them. Expected values are worked by hand from the formulas. */
class SamplingTopicsTest {
    private static final Asked COMPUTE = new Asked(Topics.ALL);

    private static JsonNode answer(String topic, String asked) {
        var outcome = COMPUTE.run(topic, asked.replace('\'', '"'));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        return outcome.body().get("answer");
    }

    private static String error(String topic, String asked) {
        var outcome = COMPUTE.run(topic, asked.replace('\'', '"'));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.REFUSED);
        return outcome.errors().toString();
    }

    private static void six(JsonNode answer, String key, double expected) {
        assertThat(answer.get(key).doubleValue()).as(key).isCloseTo(expected, within(5e-6 * Math.abs(expected)));
    }

    @Test
    void samplePrecision() {
        var whole = answer(
                "sample-precision",
                "{'between_variance':0.64,'within_variance':0,'units':20,'lot_units':0,'increments':1,"
                        + "'laboratory_variance':0.25,'analyses':1,'confidence_pct':95}");
        six(whole, "standard_error", 0.531037);
        six(whole, "half_width", 1.040813);
        // (1 − 20/100)·0.64/20 + 0.25 = 0.2756
        six(
                answer(
                        "sample-precision",
                        "{'between_variance':0.64,'units':20,'lot_units':100,'laboratory_variance':0.25}"),
                "standard_error",
                0.524976);
    }

    @ParameterizedTest
    @CsvSource({"ten_percent,10,2", "twenty_cores,20,1"})
    void samplingPlan(String rule, int units, int increments) {
        var plan = answer(
                "sampling-plan",
                "{'material':'large_round_bale','units':100,'rule':'%s','analyte':'cp','half_width':0.5,'confidence_pct':95,'seed':7}"
                        .formatted(rule));
        assertThat(plan.get("units").intValue()).isEqualTo(units);
        assertThat(plan.get("increments").intValue()).isEqualTo(increments);
        assertThat(plan.get("picks")).hasSize(units);
        six(plan, "mass_g", 253.6779);
        assertThat(plan.get("kit").toString()).contains("probe");
        assertThat(plan.get("cautions").toString()).contains("Both hands");
        assertThat(plan.get("half_width").doubleValue()).isPositive();
    }

    @Test
    void thePlanOfAHalfWidthKeepsIt() {
        var plan = answer(
                "sampling-plan",
                "{'material':'large_round_bale','units':100,'rule':'cheapest','analyte':'cp','half_width':0.5}");
        assertThat(plan.get("half_width").doubleValue()).isLessThanOrEqualTo(0.5);
        // SD 0.9: V_b = V_w = 0.405; V_l 0.0625. One analysis would need nearly every bale; two need 22:
        // R = (0.5/1.95996)² − 0.0625/2 = 0.033829; 0.81/(0.033829 + 0.00405) = 21.4.
        assertThat(plan.get("units").intValue()).isEqualTo(22);
        assertThat(plan.get("analyses").intValue()).isEqualTo(2);
    }

    @Test
    void aHalfWidthOutOfReachIsAnAnswerOfNo() {
        var outcome = COMPUTE.run(
                "sampling-plan",
                "{\"material\":\"large_round_bale\",\"units\":100,\"rule\":\"cheapest\",\"half_width\":0.01}");
        assertThat(outcome.exit()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/choices").toString()).contains("Ask for a wider plus");
    }

    @Test
    void plotYield() {
        // Mean 50 g on 0.25 m² at 35 %: 700 kg/ha; spread 7.905694 g: t(0.9, 4) = 1.533206.
        var yield = answer(
                "plot-yield",
                "{'masses_g':[40,45,50,55,60],'area_m2':0.25,'dm_pct':35,'confidence_pct':80,'wanted_pct':20,'usable_pct':50}");
        six(yield, "kg_dm_per_ha", 700);
        six(yield, "low_kg_dm_per_ha", 624.1097);
        six(yield, "high_kg_dm_per_ha", 775.8903);
        six(yield, "lb_dm_per_acre", 624.5253);
        six(yield, "usable_kg_dm_per_ha", 350);
        assertThat(yield.get("plots_needed").intValue()).isEqualTo(5);
    }

    @Test
    void stock() {
        var bales = answer("stock", "{'kind':'bales','count':100,'weight_lb':1100,'dm_pct':88}");
        six(bales, "tons_as_fed", 55);
        six(bales, "tons_dm", 48.4);
        six(bales, "low_tons_as_fed", 50);
        six(bales, "high_tons_as_fed", 60);
        var bale = answer("stock", "{'kind':'round_bale','width_ft':5,'diameter_ft':5,'weight_lb':1100}");
        six(bale, "volume_ft3", 98.1748);
        six(bale, "density_lb_per_ft3", 11.2045);
        var bag = answer(
                "stock",
                "{'kind':'silage_bag','diameter_ft':8,'plastic_ft':200,'ends_ft':16,'density_lb_dm_per_ft3':13,'dm_pct':35}");
        six(bag, "tons_dm", 60.11752);
        six(bag, "tons_as_fed", 171.7643);
        six(answer("stock", "{'kind':'upright_silo','diameter_ft':20,'depth_ft':60,'dm_pct':35}"), "tons_dm", 160.2212);
        six(
                answer(
                        "stock",
                        "{'kind':'bunker','length_ft':80,'width_ft':24,'height_ft':8,'density_lb_dm_per_ft3':14,'dm_pct':33}"),
                "tons_as_fed",
                325.8182);
        // 10/6·(80·140 + 20·80 + 100·220) ft³ at 14 lb: with sides of 3 to 1 the top is 20 × 80 ft.
        six(
                answer(
                        "stock",
                        "{'kind':'pile','length_ft':140,'width_ft':80,'height_ft':10,'density_lb_dm_per_ft3':14,'dm_pct':35}"),
                "tons_dm",
                406);
        assertThat(error("stock", "{'kind':'pile','length_ft':140}")).contains("width_ft");
        assertThat(error("stock", "{'kind':'bales','count':0,'weight_lb':1100}"))
                .contains("at least one bale");
    }

    @Test
    void fieldWalk() {
        var walk = answer(
                "field-walk",
                "{'field':{'type':'Polygon','coordinates':[[[-109.5,44.5],[-109.49,44.5],[-109.49,44.504],[-109.5,44.504],[-109.5,44.5]]]},'stops':15,'seed':7}");
        assertThat(walk.at("/walk/type").asText()).isEqualTo("LineString");
        assertThat(walk.at("/stops/type").asText()).isEqualTo("MultiPoint");
        assertThat(walk.at("/stops/coordinates")).hasSize(15);
        // A degree of longitude is 79.55 km here and one of latitude 111.12 km: 795.5 m by 444.5 m.
        assertThat(walk.get("area_ha").doubleValue()).isCloseTo(35.36, within(0.05));
        assertThat(walk.get("length_m").doubleValue()).isBetween(1600.0, 2000.0);
        assertThat(walk.get("farthest_m").doubleValue())
                .isGreaterThan(walk.get("grid_farthest_m").doubleValue());
        assertThat(error("field-walk", "{'field':{'type':'Polygon','coordinates':[[[0,0],[1,1],[1,0],[0,1],[0,0]]]}}"))
                .contains("cross at 0.500000, 0.500000");
        assertThat(error("field-walk", "{'field':{'type':'Point','coordinates':[]}}"))
                .contains("GeoJSON Polygon");
    }

    @Test
    void badPlansAreRefused() {
        assertThat(error("sampling-plan", "{'material':'large_round_bale','units':0}"))
                .contains("at least one bale");
        assertThat(error("sampling-plan", "{'material':'large_round_bales','units':10}"))
                .contains("large_round_bale?");
        assertThat(error("sampling-plan", "{'material':'large_round_bale','units':21,'rows':2,'columns':5,'tiers':2}"))
                .contains("holds only 20");
        assertThat(error("sampling-plan", "{'material':'bunker_or_pile','rule':'ten_percent'}"))
                .contains("how many bales");
        assertThat(error("sampling-plan", "{'material':'large_round_bale','units':10,'analyte':'gold'}"))
                .contains("cp");
    }
}
