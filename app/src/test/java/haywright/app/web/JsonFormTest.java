package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The same boxes, filled in by a script: one description, one reading, one judgment. */
class JsonFormTest {
    private static final String BULLS = """
            {"name": "Bulls", "head": 4, "weight_lb": 1900, "condition_score": 5, "shrunk": false,
             "weighed_on": "2026-11-12", "mature_weight": "1,900 lb", "gain_lb_per_day": 0}
            """;

    @RegisterExtension
    private final OneRanch ranch = new OneRanch();

    private RawClient.Answer send(String path, String json) {
        var key = Map.of("Authorization", "Bearer " + ranch.key(), "Content-Type", "application/json");
        return ranch.client().send("POST", ranch.path() + path, key, json);
    }

    private Group group() {
        return ranch.kept().groups().values().iterator().next();
    }

    @Test
    void aGroupIsTheSameTypedOrSent() {
        assertThat(send("herd/new/bull", BULLS).status()).isEqualTo(303);
        var sent = group();
        assertThat(ranch.send("herd/" + sent.id() + "/delete", Map.of()).status())
                .isEqualTo(303);
        assertThat(ranch.send("herd/new/bull", WeatherPagesTest.BULLS).status()).isEqualTo(303);
        assertThat(sent).usingRecursiveComparison().ignoringFields("id").isEqualTo(group());
    }

    /** What is left out stays; null empties; an amount may be in any unit of its kind. */
    @Test
    void whatIsSentChangesAndTheRestStays() {
        send("herd/new/bull", BULLS);
        var before = group();
        assertThat(send("herd/" + before.id(), "{\"weight_kg\": 900, \"breed\": \"Angus\"}")
                        .status())
                .isEqualTo(303);
        assertThat(group().weight().in(Unit.KILOGRAM)).isEqualTo(900);
        assertThat(group().breed()).isEqualTo("Angus");
        assertThat(group().head()).isEqualTo(before.head());
        assertThat(group().conditionScore()).isEqualTo(before.conditionScore());

        assertThat(send("settings/outfit", "{\"mixer\": true, \"mixer_holds_lb\": 9000, \"times_a_day\": 2}")
                        .status())
                .isEqualTo(303);
        assertThat(send("settings/outfit", "{\"mixer\": null, \"scale\": true}").status())
                .isEqualTo(303);
        var outfit = ranch.kept().outfit();
        assertThat(outfit.mixer()).isNull();
        assertThat(outfit.scale()).isTrue();
        assertThat(outfit.mixerHolds()).isNotNull();
        assertThat(outfit.timesADay()).isEqualTo(2);

        assertThat(send("settings/weather/place", "{\"town\": \"Malta, MT\", \"wind_mph\": 12, \"windbreak\": false}")
                        .status())
                .isEqualTo(303);
        var weather = ranch.kept().settings().weather();
        assertThat(weather).isNotNull();
        assertThat(weather.place()).isEqualTo("Malta, MT");
        assertThat(weather.windbreak()).isFalse();
    }

    @ParameterizedTest(name = "{1}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "herd/new/bull | {\"nam\": \"Bulls\"} | \"field\":\"nam\" | name",
                "herd/new/bull | {\"head\": \"many\"} | \"field\":\"head\" | many",
                "herd/new/bull | {\"weight_lb\": \"1900\"} | \"field\":\"weight_lb\" | a number belongs",
                "herd/new/bull | {\"weight_lb\": 1900, \"weight_kg\": 860} | \"field\":\"weight_kg\" | comes twice",
                "herd/new/bull | {\"weight_ft\": 6} | \"field\":\"weight_ft\" | unknown key",
                "herd/new/bull | {\"name\": [1]} | \"field\":\"name\" | Write the value alone",
                "herd/new/bull | [] | \"field\":\"json\" | curly brackets",
                "herd/new/bull | {\"name\": | \"field\":\"json\" | too early",
                "settings/weather/place | {\"town\": \"Atlantis, MT\"} | \"field\":\"town\" | Atlantis",
                "settings/last-winter | {\"score_before\": 50} | \"field\":\"score_before\" | 1 to 9"
            })
    void whatCannotBeIsNamedAndNothingIsKept(String path, String json, String field, String words) {
        var before = ranch.kept();
        var answer = send(path, json);
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.header("Content-Type")).startsWith("application/json");
        assertThat(answer.body()).contains("\"errors\"", field, words);
        assertThat(ranch.kept()).isEqualTo((Ranch) before);
    }

    /** A question is asked of a script too, and answered by its name. */
    @Test
    void whatIsUnusualIsAskedAbout() {
        var asked = send("herd/new/bull", BULLS.replace("1900,", "190,"));
        assertThat(asked.status()).isEqualTo(422);
        var questions = Pattern.compile("confirm[^\\[]*\\[\\W*([\\w-]+)").matcher(asked.body());
        var confirmed =
                questions.results().map(one -> "\"" + one.group(1) + "\"").toList();
        assertThat(confirmed).isNotEmpty();
        var sure = BULLS.replace("1900,", "190,").strip().replaceAll("\\}$", ", \"confirm\": " + confirmed + "}");
        var answer = send("herd/new/bull", sure);
        assertThat(answer.body()).doesNotContain("confirm");
    }

    /** A page of another site may not send it: only who has the key. */
    @Test
    void withoutTheKeyNothingIsTaken() {
        var answer = ranch.client()
                .send("POST", ranch.path() + "settings/outfit", Map.of("Content-Type", "application/json"), "{}");
        assertThat(answer.status()).isEqualTo(403);
    }
}
