package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.app.compute.shape.Key;
import haywright.app.compute.shape.Reader;
import haywright.app.compute.shape.Writer;
import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.Topic;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KeysTest {
    enum Coat {
        SUMMER,
        HEAVY_WINTER
    }

    record Feed(String name, @Key(Unit.DOLLAR_PER_KG) double price, Map<String, Double> values) {}

    record Cow(
            @Key(Unit.KILOGRAM) double bodyWeight,
            @Key(value = Unit.PERCENT, of = "dm") OptionalDouble adf,
            @Key(Unit.CELSIUS) OptionalDouble temperature,
            @Key(name = "class") Coat coat,
            @Nullable LocalDate date,
            @Nullable Integer head,
            @Nullable List<Feed> feeds) {
        Cow {
            if (bodyWeight <= 0) {
                throw new Refused("bodyWeight", bodyWeight + " kg", "a cow weighs something", "Weigh her again.");
            }
        }
    }

    private static JsonNode json(String text) {
        try {
            return new ObjectMapper().readTree(text.replace('\'', '"'));
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalArgumentException(text, e);
        }
    }

    private static Cow read(String text) {
        return Reader.read(Cow.class, json(text));
    }

    private static List<Problem> refused(String text) {
        return catchThrowableOfType(Refused.class, () -> read(text)).problems();
    }

    // 1 lb = 0.45359237 kg and 1 ton = 2,000 lb exactly (International Yard and Pound Agreement 1959).
    @ParameterizedTest
    @CsvSource({
        "body_weight_kg, 500, 500",
        "body_weight_lb, 1000, 453.59237",
        "body_weight_t, 0.5, 500",
        "body_weight_ton, 0.5, 453.59237"
    })
    void aWeightIsReadInAnyUnitOfMass(String key, double typed, double kilograms) {
        assertThat(read("{'%s':%s,'class':'summer'}".formatted(key, typed)).bodyWeight())
                .isCloseTo(kilograms, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        "adf_pct_dm, 28",
        "adf_fraction_dm, 0.28",
        "adf_g_per_kg_dm, 280",
        "adf_ppm_dm, 280000",
        "adf_mg_per_kg_dm, 280000"
    })
    void aShareIsReadInAnyUnitAndKeepsItsBasis(String key, double typed) {
        assertThat(read("{'body_weight_kg':1,'class':'summer','%s':%s}".formatted(key, typed))
                        .adf()
                        .orElseThrow())
                .isCloseTo(28, within(1e-9));
    }

    @Test
    void fahrenheitBecomesCelsius() {
        var cow = read("{'body_weight_kg':1,'class':'heavy_winter','temperature_f':-40}");
        assertThat(cow.temperature().orElseThrow()).isCloseTo(-40, within(1e-9));
        assertThat(cow.coat()).isEqualTo(Coat.HEAVY_WINTER);
    }

    @Test
    void nestedRecordsListsMapsAndDatesAreRead() {
        var cow = read("{'body_weight_kg':1,'class':'summer','date':'2026-11-25','head':3,"
                + "'feeds':[{'name':'hay','price_usd_per_ton':90.718474,'values':{'protein':12}}]}");
        assertThat(cow.date()).isEqualTo(LocalDate.of(2026, 11, 25));
        assertThat(cow.head()).isEqualTo(3);
        assertThat(cow.feeds()).hasSize(1);
        assertThat(cow.feeds().get(0).price()).isCloseTo(0.1, within(1e-12));
        assertThat(cow.feeds().get(0).values()).containsEntry("protein", 12.0);
    }

    @Test
    void whatIsWrittenIsWhatWasReadInTheFixedUnits() {
        var text = "{'body_weight_kg':500,'adf_pct_dm':28.5,'class':'summer','head':3}";
        assertThat(Writer.write(read(text)).toString()).isEqualTo(json(text).toString());
    }

    @Test
    void anUnknownKeyIsAnErrorThatNamesTheNearest() {
        var problems = refused("{'body_wieght_lb':1000,'class':'summer'}");
        assertThat(problems.get(0).field()).isEqualTo("body_wieght_lb");
        assertThat(problems.get(0).fix()).isEqualTo("Did you mean body_weight_lb?");
    }

    @Test
    void aShareWithoutItsBasisIsNotGuessed() {
        var problems = refused("{'body_weight_kg':1,'class':'summer','adf_pct':28}");
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).fix()).isEqualTo("Did you mean adf_pct_dm?");
    }

    @Test
    void oneQuantityInTwoUnitsIsRefused() {
        var problem = refused("{'body_weight_kg':500,'body_weight_lb':1100,'class':'summer'}")
                .get(0);
        assertThat(problem.rule()).isEqualTo("the same quantity is given twice, as body_weight_kg and body_weight_lb");
    }

    @Test
    void aKeyTwiceIsRefused() {
        var outcome = new Asked(List.of(echo())).run("echo", "{\"class\":\"summer\",\"class\":\"summer\"}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().at("/errors/0/rule").asText()).contains("“class”");
    }

    @ParameterizedTest
    @ValueSource(strings = {"'1000'", "true", "[1]", "{}", "1e999"})
    void aNumberThatIsNoneIsRefusedInWords(String value) {
        var problem =
                refused("{'body_weight_kg':" + value + ",'class':'summer'}").get(0);
        assertThat(problem.field()).isEqualTo("body_weight_kg");
        assertThat(problem.rule()).containsAnyOf("a number is needed here", "too large");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "Infinity", "-Infinity"})
    void notANumberIsNotJson(String value) {
        var outcome = new Asked(List.of(echo())).run("echo", "{\"body_weight_kg\":" + value + "}");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body().at("/errors/0/rule").asText()).startsWith("this is not JSON");
    }

    @Test
    void everythingWrongIsSaidAtOnce() {
        assertThat(refused("{'class':'fall','date':'25.11.2026','feeds':[{'name':3,'values':{}}]}"))
                .extracting(Problem::field)
                .containsExactly("body_weight_kg", "class", "date", "feeds[0].name", "feeds[0].price_usd_per_kg");
    }

    @Test
    void aWordThatIsNoneOfTheKnownNamesThem() {
        var problem = refused("{'body_weight_kg':1,'class':'heavy_wintre'}").get(0);
        assertThat(problem.rule()).isEqualTo("one of these is needed here: summer, heavy_winter");
        assertThat(problem.fix()).isEqualTo("Did you mean heavy_winter?");
    }

    @Test
    void aRuleOfTheRecordNamesTheKeyThatWasTyped() {
        var problem = refused("{'body_weight_lb':0,'class':'summer'}").get(0);
        assertThat(problem.field()).isEqualTo("body_weight_lb");
        assertThat(problem.rule()).isEqualTo("a cow weighs something");
    }

    @Test
    void anArrayGivesAnArrayAndTheWorstExit() {
        var compute = new Asked(List.of(echo()));
        var good = "{\"body_weight_kg\":500,\"class\":\"summer\"}";
        assertThat(compute.run("echo", "[" + good + "," + good + "]").exit()).isEqualTo(Compute.DONE);
        var no = "{\"body_weight_kg\":5,\"class\":\"summer\"}";
        assertThat(compute.run("echo", "[" + good + "," + no + "]").exit()).isEqualTo(Compute.NO);
        var outcome = compute.run("echo", "[" + no + ",{}," + good + "]");
        assertThat(outcome.exit()).isEqualTo(Compute.REFUSED);
        assertThat(outcome.body()).hasSize(3);
        assertThat(outcome.body().at("/0/answer/body_weight_kg").asDouble()).isEqualTo(5);
        assertThat(outcome.body().at("/1/errors")).hasSize(2);
    }

    @Test
    void theHashOfTheInputsDoesNotHangOnTheirOrder() {
        var compute = new Asked(List.of(echo()));
        var one = compute.run("echo", "{\"body_weight_kg\":500,\"class\":\"summer\"}");
        var other = compute.run("echo", "{ \"class\": \"summer\", \"body_weight_kg\": 500 }");
        // sha256sum of {"body_weight_kg":500,"class":"summer"}
        var expected = "113a5921c83bf6fde25da467b502a752155668ffe444c48648ac429fbe7169c9";
        assertThat(one.body().get("inputs_sha256").asText()).isEqualTo(expected);
        assertThat(other.body().get("inputs_sha256").asText()).isEqualTo(expected);
    }

    @Test
    void nothingAtAllAndAByteOrderMarkAreUnderstood() {
        var compute = new Asked(List.of(echo()));
        assertThat(compute.run("echo", "").errors())
                .containsExactly("json: nothing: an object in curly brackets is needed here. Put { } around the keys.");
        assertThat(compute.run("echo", "\uFEFF{\"body_weight_kg\":500,\"class\":\"summer\"}")
                        .exit())
                .isEqualTo(Compute.DONE);
    }

    @Test
    void anUnknownTopicNamesTheNearest() {
        var refused = catchThrowableOfType(Refused.class, () -> new Asked(List.of(echo())).run("ecko", "{}"));
        assertThat(refused.problems().get(0).fix()).isEqualTo("Did you mean echo?");
    }

    /** Says "no" to anything under 100 kg. */
    private static Topic<Cow, Cow> echo() {
        return new Topic<>(
                "echo",
                "Gives back what it was given.",
                Cow.class,
                Cow.class,
                "{}",
                cow -> new Answer<>(cow, cow.bodyWeight() >= 100, List.of(), List.of()));
    }
}
