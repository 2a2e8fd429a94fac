package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.compute.topic.Topics;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Requests and answers that are promised to other programs: the keys stay, the values hold to six significant digits.
 * The expected values were worked out by hand from the published equations, not by this program.
 */
class ExamplesThatHoldTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Asked COMPUTE = new Asked(Topics.ALL);

    private record Example(String topic, String asked, String answer) {}

    static Stream<Example> examples() {
        return Stream.of(
                new Example(
                        "relative-feed-value",
                        "{'adf_pct_dm':28,'ndf_pct_dm':35}",
                        "{'ddm_pct_dm':67.088,'dmi_pct_bw':3.42857,'rfv':178.307}"),
                new Example(
                        "net-energy",
                        "{'tdn_pct_dm':84.1}",
                        "{'de_mcal_per_kg_dm':3.70797,'me_mcal_per_kg_dm':3.04053,'nem_mcal_per_kg_dm':2.06489,"
                                + "'neg_mcal_per_kg_dm':1.40189}"),
                new Example(
                        "basis",
                        "{'kind':'weight','value':25,'from':'dry_matter','to':'as_fed','moisture_pct':10}",
                        "{'value':27.7778}"),
                new Example(
                        "basis",
                        "{'kind':'weight','value':25,'from':'dry_matter','to':'as_fed','dm_pct':90}",
                        "{'value':27.7778}"),
                new Example(
                        "basis",
                        "{'kind':'concentration','value':25,'from':'dry_matter','to':'as_fed','dm_pct':90}",
                        "{'value':22.5}"),
                new Example(
                        "basis",
                        "{'kind':'price','value':25,'from':'dry_matter','to':'as_fed','dm_pct':90}",
                        "{'value':22.5}"),
                // 62 on dry matter is 55.8 at 90 % dry matter.
                new Example(
                        "basis",
                        "{'kind':'concentration','value':62,'from':'dry_matter','to':'ninety_pct'}",
                        "{'value':55.8}"),
                // 180·100/90 a ton of dry matter; 200/2000/0.75 and 200/2000/0.12 a pound of TDN and of protein; a
                // pound
                // of dry matter at 75 % TDN holds 1.78950 Mcal/kg NEm by the cubic, 0.811704 Mcal a pound.
                new Example(
                        "feed-price",
                        "{'price_usd':180,'per':'ton','lb_per_bushel':56,'dm_pct':90,'cp_pct_dm':12,'tdn_pct_dm':75}",
                        "{'usd_per_ton_dm':200,'usd_per_lb_dm':0.1,'usd_per_lb_cp':0.833333,'usd_per_lb_tdn':0.133333,"
                                + "'usd_per_mcal_nem':0.123198}"),
                // A bushel of 56 lb at $5.60 is $200 a ton as fed; a hundredweight at $10 too; a pound at 10 ¢ too.
                new Example(
                        "feed-price",
                        "{'price_usd':5.6,'per':'bushel','lb_per_bushel':56,'dm_pct':80}",
                        "{'usd_per_ton_dm':250,'usd_per_lb_dm':0.125}"),
                new Example("feed-price", "{'price_usd':10,'per':'cwt','dm_pct':80}", "{'usd_per_ton_dm':250}"),
                // Wells and Lalman (Oklahoma State), Noble Ag News and Views, October 2011: an open ring
                new Example(
                        "waste-cost",
                        "{'price_usd':70,'bale_lb':1200,'loss_pct':20.5,'bales':180}",
                        "{'lost_lb_per_bale':246,'lost_usd_per_bale':14.35,'lost_usd':2583}"),
                // Schmitz (Missouri) in Wyoming Livestock Roundup 2023 prints 900 lb and $167 a ton
                new Example(
                        "waste-cost",
                        "{'price_usd':75,'bale_lb':1200,'loss_pct':25,'bales':1}",
                        "{'eaten_lb_per_bale':900,'usd_per_ton_eaten':166.667}"),
                // Manitoba Agriculture, What is the value of hay this year: barley at $3.25 for 48 lb; $92.73 there,
                // since
                // it multiplies by 0.0921 for 0.09207
                new Example(
                        "break-even-hay",
                        "{'grain_usd_per_ton':135.416667,'grain_dm_pct':88.5,'grain_tdn_pct_dm':83.1,'hay_dm_pct':87.4,"
                                + "'hay_tdn_pct_dm':57.6}",
                        "{'usd_per_lb_tdn':0.0920657,'hay_usd_per_ton':92.6962}"),
                new Example("feed-price", "{'price_usd':0.1,'per':'lb','dm_pct':80}", "{'usd_per_ton_dm':250}"),
                // Penn State Beef Briefs 1993: at $50 a ton for hay of 38 % TDN, hay of 59 % is worth 50·59/38.
                new Example(
                        "feed-price",
                        "{'price_usd':70,'per':'ton','dm_pct':88,'tdn_pct_dm':59,"
                                + "'beside':{'price_usd':50,'per':'ton','dm_pct':88,'tdn_pct_dm':38}}",
                        "{'break_even_usd_by_tdn':77.6316}"),
                // Molar masses: 5000·14.007/62.005 and 5000·101.10/62.005.
                new Example(
                        "nitrate",
                        "{'value':0.5,'as':'no3','unit':'pct_dm'}",
                        "{'no3_n_ppm':1129.51,'no3_ppm':5000,'kno3_ppm':8152.57}"),
                // 2.5·255.74 / (0.5·499.00 + 0.2·822.64) = 639.35 / 414.028
                new Example(
                        "mineral-balance",
                        "{'k_pct_dm':2.5,'ca_pct_dm':0.5,'mg_pct_dm':0.2}",
                        "{'tetany_ratio':1.54422}"),
                // 0.05·434.98 + 2.5·255.74 − 0.6·282.06 = 491.863; less 0.2·623.75 = 367.113
                new Example(
                        "mineral-balance",
                        "{'k_pct_dm':2.5,'na_pct_dm':0.05,'cl_pct_dm':0.6,'s_pct_dm':0.2}",
                        "{'dcad_meq_per_kg':367.113,'electrolyte_balance_meq_per_kg':491.863}"),
                // r = 16.6667 %: rule A leaves 18·(100 − 9.66667)/100, rule B 18 − 3 + 1.8.
                new Example(
                        "available-protein", "{'cp_pct_dm':18,'adicp_pct_dm':3,'rule':'a'}", "{'acp_pct_dm':16.26}"),
                new Example("available-protein", "{'cp_pct_dm':18,'adicp_pct_dm':3,'rule':'b'}", "{'acp_pct_dm':16.8}"),
                // Worked from the equations of NRC 1996/2000 by an independent script: a cow of 600 kg shrunk, a calf
                // of
                // 40 kg, day 240 (energy of the calf 2.9521 Mcal, Ca 30.658 g, P 19.085 g as printed there).
                new Example(
                        "requirement",
                        "{'class':'mature_cow','body_weight_kg':600,'weight_is':'shrunk','condition_score':5,"
                                + "'days_pregnant':240,'calf_birth_weight_kg':40,'weeks_in_milk':0,'peak_milk_kg':8,"
                                + "'peak_week':8.5,'gain_lb_per_day':0,'final_weight_lb':1400,"
                                + "'previous_temperature_c':20,'system':'nrc-1996'}",
                        "{'nem_pregnancy_mcal':2.95211,'nem_lactation_mcal':0,'nem_cold_mcal':0,'neg_mcal':0}"),
                new Example(
                        "pearson-square",
                        "{'target_pct':26,'feeds':[{'name':'cottonseed meal','pct':54},{'name':'barley','pct':8}],"
                                + "'batch':600}",
                        "{'shares_pct':[39.1304,60.8696],'amounts':[234.783,365.217]}"),
                // The deterministic part of Hock and Schittkowski 73, solved by other solvers.
                new Example(
                        "mix",
                        "{'feeds':[{'name':'a','price':24.55,'values':{'protein':12,'oil':2.3}},"
                                + "{'name':'b','price':26.75,'values':{'protein':11.9,'oil':5.6}},"
                                + "{'name':'c','price':39,'values':{'protein':41.8,'oil':11.1}},"
                                + "{'name':'d','price':40.5,'values':{'protein':52.1,'oil':1.3}}],"
                                + "'limits':[{'value':'protein','at_least':21},{'value':'oil','at_least':5}]}",
                        "{'cost':28.9426,'shares_pct':[68.5245,1.26991,30.2056,0],"
                                + "'limits':[{'value':'protein','gets':21,'dual':0.285477},"
                                + "{'value':'oil','gets':5,'dual':0.675317}]}"),
                // The table gives 3 °F at 10 °F and 5 mph, and 13 at 20; 19 for a heavy coat; 15.5·1.11.
                new Example(
                        "cold",
                        "{'coat':'heavy_winter','wet':false,'condition':'average','temperature_f':15,'wind_mph':5,"
                                + "'tdn_lb':15.5}",
                        "{'effective_temperature_f':8,'lower_critical_f':19,'degrees_below_f':11,"
                                + "'energy_increase_pct':11,'tdn_lb':17.205}"),
                new Example(
                        "cold",
                        "{'lower_critical_f':59,'wet':true,'temperature_f':4,'wind_mph':0}",
                        "{'effective_temperature_f':4,'lower_critical_f':59,'degrees_below_f':55,"
                                + "'energy_increase_pct':110}"),
                new Example(
                        "wind-chill",
                        "{'temperature_f':-20,'wind_mph':5,'table':'nws-2001'}",
                        "{'wind_chill_f':-34.0011}"),
                new Example("wind-chill", "{'temperature_f':0,'wind_mph':15,'table':'cattle'}", "{'wind_chill_f':-15}"),
                // 100·26·120; /(0.85·0.9·0.9)/2000
                new Example(
                        "hay-need",
                        "{'groups':[{'head':100,'dmi_lb':26}],'days':120,'dm_pct':90,'feeding_loss_pct':15,"
                                + "'storage_loss_pct':10}",
                        "{'eaten_lb_dm':312000,'needed_tons_as_fed':226.580}"),
                // NDFn 39.5, NFC 29.8, FA 1.2: 29.204 + 17.67 + 2.619 + 18.17 − 7; 2.85714 + 0.0277037; /1.23
                new Example(
                        "relative-forage-quality",
                        "{'class':'legume','ndf_pct_dm':42,'ndicp_pct_dm':2.5,'cp_pct_dm':19,'fat_pct_dm':2.2,"
                                + "'ash_pct_dm':9.5,'ndfd48_pct_ndf':46}",
                        "{'tdn_pct_dm':60.663,'dmi_pct_bw':2.88485,'rfq':142.279}"),
                // 82.38 − 0.7515·40
                new Example("tdn", "{'equation':'western-alfalfa','adf_pct_dm':40}", "{'tdn_pct_dm':52.32}"));
    }

    @ParameterizedTest
    @MethodSource("examples")
    void holds(Example example) throws Exception {
        var outcome = COMPUTE.run(example.topic(), example.asked().replace('\'', '"'));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        agrees(
                JSON.readTree(example.answer().replace('\'', '"')),
                outcome.body().get("answer"));
    }

    /** Every key of the promise is there, and every number agrees to half of its sixth digit. */
    static void agrees(JsonNode promised, JsonNode given) {
        promised.properties().forEach(entry -> {
            var value = given.get(entry.getKey());
            assertThat(value).as(entry.getKey() + " in " + given).isNotNull();
            agree(entry.getKey(), entry.getValue(), value);
        });
    }

    private static void agree(String key, JsonNode promised, JsonNode given) {
        if (promised.isArray()) {
            assertThat(given).as(key).hasSameSizeAs(promised);
            for (int i = 0; i < promised.size(); i++) {
                agree(key, promised.get(i), given.get(i));
            }
        } else if (promised.isNumber()) {
            double value = promised.doubleValue();
            double halfOfTheSixthDigit =
                    value == 0 ? 5e-7 : 0.5 * Math.pow(10, Math.floor(Math.log10(Math.abs(value))) - 5);
            assertThat(given.doubleValue()).as(key).isCloseTo(value, within(halfOfTheSixthDigit * 1.000001));
        } else if (promised.isObject()) {
            agrees(promised, given);
        } else {
            assertThat(given).as(key).isEqualTo(promised);
        }
    }

    // The same script printed these to fewer digits; half of the last one is allowed.
    @Test
    void aRequirementAgreesWithThePrintedFigures() {
        var cow = answer(
                "requirement",
                "{'class':'mature_cow','body_weight_kg':600,'weight_is':'shrunk','days_pregnant':240,"
                        + "'calf_birth_weight_kg':40}");
        assertThat(cow.get("ca_g").doubleValue()).isCloseTo(30.658, within(0.0005));
        assertThat(cow.get("p_g").doubleValue()).isCloseTo(19.085, within(0.0005));
        var calf = answer(
                "requirement",
                "{'class':'growing','body_weight_kg':300,'weight_is':'shrunk','gain_kg_per_day':0.8,'final_weight_kg':600}");
        assertThat(calf.get("neg_mcal").doubleValue()).isCloseTo(2.63774, within(0.000005));
        var milking = answer(
                "requirement",
                "{'class':'mature_cow','body_weight_kg':600,'weight_is':'shrunk','weeks_in_milk':8.5,'peak_milk_kg':9}");
        assertThat(milking.get("ca_g").doubleValue()).isCloseTo(40.620, within(0.0005));
    }

    // NRC 1996/2000 chapter 7, a cow of 600 kg at a diet of 1.2 Mcal NEm/kg: open and pregnant.
    @Test
    void intakeAgreesWithThePrintedFigures() {
        var cow = "{'class':'mature_cow','body_weight_kg':600,'weight_is':'shrunk','nem_mcal_per_kg_dm':1.2%s}";
        assertThat(answer("intake", cow.formatted("")).get("dmi_kg").doubleValue())
                .isCloseTo(11.149, within(0.0005));
        assertThat(answer("intake", cow.formatted(",'days_pregnant':240"))
                        .get("dmi_kg")
                        .doubleValue())
                .isCloseTo(11.948, within(0.0005));
    }

    @Test
    void aRefusalInsideAnInlinedRecordNamesTheKeyThatWasTyped() {
        var outcome =
                COMPUTE.run("intake", "{\"class\":\"mature_cow\",\"body_weight_lb\":90,\"nem_mcal_per_kg_dm\":1.2}");
        assertThat(outcome.body().at("/errors/0/field").asText()).isEqualTo("body_weight_lb");
    }

    private static JsonNode answer(String topic, String asked) {
        var outcome = COMPUTE.run(topic, asked.replace('\'', '"'));
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        return outcome.body().get("answer");
    }

    /** A figure that cannot be does not count, so a ration without it would not be what was asked for. */
    @ParameterizedTest
    @ValueSource(strings = {"dm_pct", "cp_pct_dm", "adf_pct_dm", "ndf_pct_dm", "fat_pct_dm", "ca_pct_dm", "p_pct_dm"})
    void aRationRefusesAFigureThatCannotBe(String key) {
        for (var value : new String[] {"-1", "101"}) {
            var outcome = COMPUTE.run(
                    "ration",
                    "{\"requirement\":{\"class\":\"mature_cow\",\"body_weight_lb\":1300},\"feeds\":[{\"name\":\"hay\","
                            + "\"feed_class\":\"grass_hay\",\"price_usd_per_ton\":140,\"" + key + "\":" + value
                            + "}]}");
            assertThat(outcome.exit()).as(value).isEqualTo(Compute.REFUSED);
            assertThat(outcome.errors()).hasSize(1).allMatch(line -> line.startsWith("feeds[0]." + key + ": hay: "));
        }
    }

    @Test
    void aRationRefusesAFeedWithoutDryMatter() {
        var asked = Topics.ALL.stream()
                .filter(t -> t.name().equals("ration"))
                .findFirst()
                .orElseThrow()
                .example();
        assertThat(asked).contains("\"dm_pct\":89");
        for (var value : new String[] {"0", "1e-9"}) {
            var outcome = COMPUTE.run("ration", asked.replace("\"dm_pct\":89", "\"dm_pct\":" + value));
            assertThat(outcome.exit()).as(value).isEqualTo(Compute.REFUSED);
        }
    }

    @Test
    void nitrateIsNeverShownWithOneSourceAlone() {
        var outcome = COMPUTE.run("nitrate", "{\"value\":0.5,\"as\":\"no3\",\"unit\":\"pct_dm\"}");
        assertThat(outcome.body().at("/answer/classes").size()).isGreaterThanOrEqualTo(4);
    }

    @Test
    void swappedFibersAreRefusedBesideTheKeyThatWasTyped() {
        var outcome = COMPUTE.run("relative-feed-value", "{\"adf_g_per_kg_dm\":350,\"ndf_pct_dm\":28}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.errors())
                .containsExactly(
                        "adf_g_per_kg_dm: ADF 35 % and NDF 28 % of dry matter: they cannot both be right: ADF is"
                                + " part of NDF, and NDF is above 0 and at most 100. Are the two swapped?");
    }

    @Test
    void theSummativeEquationNamesEveryFractionThatIsMissing() {
        var outcome = COMPUTE.run("tdn", "{\"equation\":\"nrc-2001-summative\",\"kind\":\"forage\",\"cp_pct_dm\":18}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().get("errors")).hasSize(6);
        assertThat(outcome.body().at("/errors/0/field").asText()).isEqualTo("ndf_pct_dm");
    }

    @Test
    void anUnknownEquationNamesTheNearest() {
        var outcome = COMPUTE.run("tdn", "{\"equation\":\"western-alfafa\",\"adf_pct_dm\":40}");
        assertThat(outcome.body().at("/errors/0/fix").asText()).isEqualTo("Did you mean western-alfalfa?");
    }

    @Test
    void aReportSaysWhatIsImpossibleInIt() {
        var outcome = COMPUTE.run(
                "report-check",
                "{\"feed_class\":\"alfalfa_hay\",\"dm_pct\":88,\"values\":["
                        + "{\"analyte\":\"cp\",\"value\":400,\"unit\":\"pct\",\"basis\":\"dry_matter\"},"
                        + "{\"analyte\":\"ca\",\"value\":1.1,\"unit\":\"pct\",\"basis\":\"as_fed\"}]}");
        assertThat(outcome.body().at("/answer/issues/0/level").asText()).isEqualTo("E");
        assertThat(outcome.body().at("/answer/issues/0/field").asText()).isEqualTo("cp");
        var calcium = outcome.body().at("/answer/values/1");
        assertThat(calcium.get("analyte").asText()).isEqualTo("ca");
        assertThat(calcium.get("value").doubleValue()).isCloseTo(1.25, within(1e-9));
    }

    @Test
    void aMixThatCannotBeNamesWhatStandsInTheWay() {
        var outcome = COMPUTE.run(
                "mix",
                "{\"feeds\":[{\"name\":\"a\",\"price\":1,\"values\":{\"protein\":12}}],"
                        + "\"limits\":[{\"value\":\"protein\",\"at_least\":21}]}");
        assertThat(outcome.exit()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/stands_in_the_way").toString()).contains("protein");
        assertThat(outcome.body().get("answer").has("cost")).isFalse();
    }

    /** Hock and Schittkowski 1981, problem 73 (van de Panne and Popp 1963): 29.894378 as printed. */
    @ParameterizedTest
    @ValueSource(strings = {"\"z\":1.645", "\"sureness_pct\":95.00151"})
    void aSureMixIsAtItsPublishedOptimum(String sure) {
        var outcome = COMPUTE.run(
                "mix",
                "{\"feeds\":["
                        + "{\"name\":\"a\",\"price\":24.55,\"values\":{\"protein\":12,\"oil\":2.3},\"sd\":{\"protein\":0.52915}},"
                        + "{\"name\":\"b\",\"price\":26.75,\"values\":{\"protein\":11.9,\"oil\":5.6},\"sd\":{\"protein\":0.43589}},"
                        + "{\"name\":\"c\",\"price\":39,\"values\":{\"protein\":41.8,\"oil\":11.1},\"sd\":{\"protein\":4.52769}},"
                        + "{\"name\":\"d\",\"price\":40.5,\"values\":{\"protein\":52.1,\"oil\":1.3},\"sd\":{\"protein\":0.78740}}],"
                        + "\"limits\":[{\"value\":\"protein\",\"at_least\":21},{\"value\":\"oil\",\"at_least\":5}],"
                        + sure + "}");
        assertThat(outcome.exit()).isZero();
        assertThat(outcome.body().at("/answer/cost").asDouble()).isCloseTo(29.8943, within(1e-4));
        assertThat(outcome.body().at("/answer/shares_pct/0").asDouble()).isCloseTo(63.55, within(0.05));
        assertThat(outcome.body().at("/answer/shares_pct/2").asDouble()).isCloseTo(31.27, within(0.05));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"z\":1,\"sureness_pct\":95",
                "\"sureness_pct\":49",
                "\"sureness_pct\":100",
                "\"z\":-1",
                "\"z\":1,\"correlation\":2"
            })
    void aSurenessThatIsNoneIsRefused(String wish) {
        var outcome = COMPUTE.run(
                "mix", "{\"feeds\":[{\"name\":\"a\",\"price\":1,\"values\":{}}],\"limits\":[]," + wish + "}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
    }

    @Test
    void oneThingThatCannotBeMetIsAnAnswerWithTheChangeThatWouldHelp() {
        var outcome = COMPUTE.run(
                "ration",
                "{\"requirement\":{\"class\":\"mature_cow\",\"body_weight_lb\":1300,\"days_pregnant\":270},"
                        + "\"feeds\":[{\"name\":\"straw\",\"feed_class\":\"barley_straw\",\"price_usd_per_ton\":70}]}");
        assertThat(outcome.exit()).isEqualTo(Compute.NO);
        assertThat(outcome.body().at("/answer/no_ration/stands_in_the_way")).isNotEmpty();
        assertThat(outcome.body().at("/answer/ration").isMissingNode()).isTrue();
    }

    @Test
    void anUntestedOatHayStaysOutAndSaysSo() {
        var outcome = COMPUTE.run(
                "ration",
                "{\"requirement\":{\"class\":\"bull\",\"body_weight_lb\":2000},"
                        + "\"feeds\":[{\"name\":\"oat hay\",\"feed_class\":\"cereal_hay\",\"price_usd_per_ton\":110},"
                        + "{\"name\":\"meadow hay\",\"feed_class\":\"grass_hay\",\"price_usd_per_ton\":140}]}");
        assertThat(outcome.body().toString()).contains("oat hay is left out because it was not tested for nitrate");
        assertThat(outcome.body().get("cautions")).isNotEmpty();
    }

    @Test
    void aFigureWithoutItsBasisIsNotGuessed() {
        var outcome = COMPUTE.run(
                "report-check",
                "{\"feed_class\":\"alfalfa_hay\",\"values\":[{\"analyte\":\"cp\",\"value\":18,\"unit\":\"pct\"}]}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().at("/errors/0/field").asText()).isEqualTo("values[0].basis");
    }
}
