package haywright.app.compute.topic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.compute.Asked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the topics of cattle say to bad input, and what they have of water, minerals, vitamins and mud. */
class CattleTopicsTest {
    private static final Asked COMPUTE = new Asked(Topics.ALL);
    private static final String COW = "'class':'mature_cow','body_weight_lb':1175";

    private static JsonNode json(String topic, String text) {
        return COMPUTE.run(topic, text.replace('\'', '"')).body();
    }

    private static double answer(String topic, String text, String key) {
        return json(topic, text).at("/answer/" + key).asDouble();
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "requirement | 'days_pregnant':400 | days_pregnant | 400 days | 1 to 310 days",
                "requirement | 'condition_score':0 | condition_score | 0 | 1 to 9",
                "requirement | 'condition_score':12 | condition_score | 12 | 1 to 9",
                "requirement | 'days_pregnant':200,'calf_birth_weight_lb':900 | calf_birth_weight_lb | 900 lb, which is 408.2 kg | birth weight is",
                "requirement | 'temperature_c':-80 | temperature_c | -80 °C | the temperature of a day is",
                "requirement | 'temperature_f':-112 | temperature_f | -112 °F, which is -80 °C | the temperature of a day is",
                "requirement | 'temperature_c':-5,'wind_kmh':300 | wind_kmh | 300 km/h | the mean wind of a day is",
                "requirement | 'gain_lb_per_day':-1,'final_weight_lb':1200 | gain_lb_per_day | -1 lb a day | 0 to 2.268",
                "intake | 'tdn_pct_dm':55,'temperature_c':-80 | temperature_c | -80 °C | the temperature of a day is",
                "intake | 'tdn_pct_dm':55,'mud':'deep' | mud | deep | one of these",
            })
    void refusesInTheUnitThatWasTyped(String topic, String more, String field, String value, String rule) {
        var error = json(topic, "{" + COW + "," + more + "}").at("/errors/0");
        assertThat(error.path("field").asText()).isEqualTo(field);
        assertThat(error.path("value").asText()).contains(value);
        assertThat(error.path("rule").asText()).contains(rule);
        assertThat(error.path("fix").asText()).isNotBlank();
    }

    @Test
    void aNinetyPoundCowIsNamedInPounds() {
        var error = json("requirement", "{'class':'mature_cow','body_weight_lb':90}")
                .at("/errors/0");
        assertThat(error.path("value").asText()).isEqualTo("90 lb, which is 40.82 kg");
    }

    /** Arkansas MP391 and NASEM 2016 by class; the water table at 40 °F. */
    @Test
    void aNeedHasMineralsVitaminsAndWater() {
        assertThat(answer("requirement", "{" + COW + "}", "mg_pct_dm")).isEqualTo(0.12);
        assertThat(answer("requirement", "{" + COW + ",'weeks_in_milk':8}", "mg_pct_dm"))
                .isEqualTo(0.20);
        assertThat(answer("requirement", "{" + COW + "}", "co_ppm_dm")).isEqualTo(0.10);
        assertThat(answer("requirement", "{" + COW + ",'system':'nasem-2016'}", "co_ppm_dm"))
                .isEqualTo(0.15);
        assertThat(answer("requirement", "{" + COW + "}", "vitamin_a_iu_per_kg_dm"))
                .isEqualTo(2800);
        assertThat(answer("requirement", "{" + COW + "}", "water_l")).isCloseTo(6.5 * 3.785411784, within(1e-9));
        assertThat(answer("requirement", "{" + COW + ",'temperature_f':70}", "water_l"))
                .isCloseTo(10.8 * 3.785411784, within(1e-6));
    }

    /** NRC 1996: 0.85 of expected intake in mud of 10 to 20 cm. */
    @Test
    void mudTakesAppetite() {
        double dry = answer("intake", "{" + COW + ",'tdn_pct_dm':55}", "dmi_kg");
        assertThat(answer("intake", "{" + COW + ",'tdn_pct_dm':55,'mud':'hoof_deep'}", "dmi_kg"))
                .isCloseTo(0.85 * dry, within(1e-9));
    }

    private static final String CALVING =
            ",'date':'2027-03-30','calving':[{'begins':'2027-03-15','head':30},{'begins':'2027-04-19','head':60}]";

    /** Those of March 18 are 12 days in milk, those of April 22 at day 260: the mean by head of the two alone. */
    @Test
    void aGroupIsTheMeanOfItsCows() {
        var group = json("requirement", "{" + COW + CALVING + "}").path("answer");
        double milking = answer("requirement", "{" + COW + ",'weeks_in_milk':1.7142857142857142}", "nem_mcal");
        double pregnant = answer("requirement", "{" + COW + ",'days_pregnant':260}", "nem_mcal");
        double mean = (30 * milking + 60 * pregnant) / 90;
        assertThat(group.path("nem_mcal").asDouble()).isCloseTo(mean, within(1e-9));
        assertThat(group.path("nem_low_mcal").asDouble()).isLessThanOrEqualTo(mean);
        assertThat(group.path("nem_high_mcal").asDouble()).isGreaterThanOrEqualTo(mean);
        assertThat(json("requirement", "{" + COW + "}").path("answer").has("nem_low_mcal"))
                .isFalse();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "'calving':[{'begins':'2027-03-15','head':30}] | date",
                "'date':'2027-03-30' | calving",
                "'date':'2027-03-30','days_pregnant':100,'calving':[{'begins':'2027-03-15','head':30}] | calving",
                "'date':'2027-03-30','weaning':'2027-03-01','calving':[{'begins':'2027-03-15','head':30}] | weaning",
                "'date':'2027-03-30','calving':[{'begins':'2029-03-15','head':30}] | calving",
                "'date':'2027-02-29','calving':[{'begins':'2027-03-15','head':30}] | date",
            })
    void refusesAGroupThatCannotBe(String more, String field) {
        var error = json("requirement", "{" + COW + "," + more + "}").at("/errors/0");
        assertThat(error.path("field").asText()).isEqualTo(field);
        assertThat(error.path("fix").asText()).isNotBlank();
    }
}
