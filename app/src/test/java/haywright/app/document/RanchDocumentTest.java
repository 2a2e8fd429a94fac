package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.ranch.Ranch;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What a document may say, and the one sentence that each bad one gets. */
class RanchDocumentTest {
    private static final String LOT = "/lots/7e000000-0000-4000-8000-000000000201";
    private static final String COWS = "/groups/7e000000-0000-4000-8000-000000000101";

    private final RanchDocument documents = new RanchDocument();

    @Test
    void aTreeIsTheSameWrittenAndReadAgain() {
        var tree = documents.tree(TinLantern.ranch());
        assertThat(documents.tree(bytes(documents.print(tree)))).isEqualTo(tree);
    }

    @Test
    void anEmptyRanchComesBackTheSame() {
        var ranch = Ranch.empty(java.util.UUID.randomUUID(), "New place");
        assertThat(documents.read(bytes(documents.write(ranch)))).isEqualTo(ranch);
    }

    @Test
    void markupInANameIsKeptAsText() {
        var name = "<b onclick=\"x()\">Oat</b> & hay";
        var ranch = documents.ranch(demo(tree -> at(tree, LOT).put("name", name)));
        var again = documents.read(bytes(documents.write(ranch)));
        assertThat(again.lots().values()).anyMatch(lot -> lot.name().equals(name));
    }

    @Test
    void aByteOrderMarkIsReadOver() {
        var text = documents.write(TinLantern.ranch());
        assertThat(documents.read(bytes("\uFEFF" + text))).isEqualTo(TinLantern.ranch());
    }

    @Test
    void aNewerFormatIsRefusedInOneSentence() {
        assertThat(problems(demo(tree -> tree.put("format", 7))))
                .containsExactly(new Problem(
                        "format",
                        "format 7",
                        "made by a newer Haywright (format 7); this one reads up to 3",
                        "Use the newer Haywright, or ask for an export from this one."));
    }

    @Test
    void anOlderFormatIsBroughtUpToDateStepByStep() {
        // planted: format 1 called the name "title", format 2 shouted it
        List<UnaryOperator<ObjectNode>> planted = List.of(
                tree -> tree.put("name", tree.remove("title").asText()),
                tree -> tree.put("name", tree.path("name").asText().toUpperCase(java.util.Locale.ROOT)));
        var newer = new RanchDocument(planted);
        var old = demo(tree -> {
            tree.remove("name");
            tree.put("title", "Old place");
            tree.put("format", 1);
        });
        assertThat(newer.read(bytes(old.toString())).name()).isEqualTo("OLD PLACE");
        assertThat(newer.tree(bytes(old.toString())).path("format").intValue()).isEqualTo(3);
        assertThat(old.path("format").intValue()).as("the one given stays").isEqualTo(1);
    }

    /** Format 1 had a rule that format 2 has not; the sheet that was made by it opens, its bales as they were printed. */
    @Test
    void aSheetMadeByARuleThatIsGoneStillOpens() {
        var lot = TinLantern.ranch().lots().values().iterator().next();
        var plan = haywright.sampling.SamplingPlan.of(
                haywright.outlook.LotSubject.of(lot),
                haywright.sampling.Aim.USUAL.withRule(haywright.sampling.Rule.CHEAPEST));
        var id = new java.util.UUID(1, 2);
        var sheet = haywright.ranch.Sampling.of(plan, id, lot.id(), lot.name(), java.time.LocalDate.of(2026, 12, 1));
        var old = documents.tree(TinLantern.ranch().with(sheet));
        ((ObjectNode) old.at("/samplings/" + id)).put("rule", "statistical");
        old.put("format", 1);
        assertThat(documents.read(bytes(old.toString())).samplings().get(id)).isEqualTo(sheet);
    }

    static Stream<Arguments> badText() {
        return Stream.of(
                Arguments.of("", "an empty file: a ranch document begins with \"haywright\": \"ranch\""),
                Arguments.of("lot;cp\nhay;12", "line 1, column 1: this is not JSON"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":1,", "it ends too early"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":1,\"format\":1}", "stands twice"),
                Arguments.of("PK\u0003\u0004", "this is a zip"),
                Arguments.of("%PDF-1.7", "this is a PDF"),
                Arguments.of("{\"haywright\":\"ranch\"} {}", "something stands after its end"),
                Arguments.of("[1]", "a ranch document begins with \"haywright\": \"ranch\""),
                Arguments.of("{\"haywright\":\"recipe\",\"format\":1}", "a ranch document begins with"),
                Arguments.of("{\"haywright\":\"ranch\"}", "the format is a whole number from 1 to 3"),
                Arguments.of(
                        "{\"haywright\":\"ranch\",\"format\":\"one\"}", "the format is a whole number from 1 to 3"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":0}", "the format is a whole number from 1 to 3"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":1e99}", "the format is a whole number"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":99999999999}", "made by a newer Haywright"),
                Arguments.of("{\"haywright\":\"ranch\",\"format\":NaN}", "this is not JSON"),
                Arguments.of("[".repeat(5000), "deeper"),
                Arguments.of("[" + "[],".repeat(1_000_000) + "[]]", "in more parts"),
                Arguments.of("{\"format\":1" + "0".repeat(200) + "}", "longer"));
    }

    @ParameterizedTest
    @MethodSource("badText")
    void textThatIsNoRanchGetsOneSentence(String text, String sentence) {
        var problems = problems(bytes(text));
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).sentence()).contains(sentence);
    }

    @Test
    void latin1IsNamedAsSuchAndNotHalfRead() {
        var latin1 = documents
                .write(Ranch.empty(new java.util.UUID(1, 1), "Caf\u00e9"))
                .getBytes(StandardCharsets.ISO_8859_1);
        var problems = problems(latin1);
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).sentence()).contains("UTF-8");
    }

    static Stream<Arguments> badField() {
        return Stream.of(
                bad(t -> at(t, LOT).put("replacment_price", 4), "replacment_price", "Is it “replacement_price”?"),
                bad(t -> t.put("lotts", 1), "lotts", "Is it “lots”?"),
                bad(t -> at(t, LOT).put("feed_class", "mixd_hay"), "feed_class", "Is it “mixed_hay”?"),
                bad(t -> at(t, LOT + "/stock").put("kind", "bails"), "kind", "Is it “bales”?"),
                bad(t -> at(t, LOT + "/stock").remove("kind"), "kind", "the kind is one of bales, bunker"),
                bad(t -> at(t, LOT + "/stock").put("count", 0), "stock/count", "at least one bale"),
                bad(t -> at(t, LOT + "/stock").put("count", 2.5), "stock/count", "this is a whole number"),
                bad(
                        t -> at(t, LOT + "/stock/bale_weight").put("value", -3),
                        "bale_weight",
                        "a bale weighs more than 0"),
                bad(t -> at(t, LOT + "/stock/bale_weight").put("value", "heavy"), "bale_weight/value", "is a number"),
                bad(t -> at(t, LOT + "/replacement_price").put("value", -5), "replacement_price", "priced at nothing"),
                bad(t -> at(t, LOT + "/replacement_price").put("unit", "ft"), "replacement_price", "unit of price"),
                bad(t -> at(t, LOT + "/replacement_price").put("unit", "furlong"), "unit", "not known here"),
                bad(t -> at(t, LOT).remove("stock"), "stock", "this is missing"),
                bad(t -> at(t, LOT).put("name", " "), "name", "a lot needs a name"),
                bad(t -> at(t, LOT).put("name", "x".repeat(201)), "name", "at most 200 characters"),
                bad(t -> at(t, LOT).put("name", 7), "name", "this is a text"),
                bad(t -> at(t, LOT).putNull("name"), "name", "this cannot be empty"),
                bad(t -> at(t, LOT).put("made_on", "24 June"), "made_on", "year-month-day"),
                bad(t -> at(t, LOT).put("nitrate_risk", "no"), "nitrate_risk", "this is true or false"),
                bad(t -> at(t, COWS).put("calving", "spring"), "calving", "this is a list"),
                bad(t -> t.put("lots", "none"), "lots", "this is an object"),
                bad(t -> t.put("id", "tin"), "id", "an id is a UUID"),
                bad(t -> at(t, "/lots").set("oats", at(t, LOT).deepCopy()), "lots/oats", "an id is a UUID"),
                bad(t -> at(t, "/settings").put("feeding_loss_percent", 100), "feeding_loss_percent", "under 60 %"),
                bad(t -> at(t, "/settings").put("turnout", "2026-05-05"), "turnout", "turnout comes after today"),
                bad(t -> at(t, "/settings").put("system", "nrc-1886"), "system", "Is it “nrc-1996”?"),
                bad(t -> at(t, "/last_winter").put("score_after", 47), "score_after", "scored from 1 to 9"),
                bad(t -> at(t, "/outfit").put("times_a_day", 0), "times_a_day", "1 to 6 a day"),
                bad(
                        t -> at(t, "/fields/7e000000-0000-4000-8000-000000000402/boundary")
                                .put("type", "Point"),
                        "boundary/type",
                        "GeoJSON Polygon"),
                bad(
                        t -> at(t, "/fields/7e000000-0000-4000-8000-000000000402/boundary")
                                .withArray("/coordinates/0")
                                .remove(0),
                        "boundary/coordinates",
                        "a ring ends where it began"),
                bad(
                        t -> at(t, "/fields").remove("7e000000-0000-4000-8000-000000000401"),
                        "lots/7e000000-0000-4000-8000-000000000208/stock/field",
                        "points to a field that is not on this ranch"));
    }

    private static Arguments bad(Consumer<ObjectNode> change, String field, String words) {
        return Arguments.of(change, field, words);
    }

    @ParameterizedTest(name = "{1}: {2}")
    @MethodSource("badField")
    void aWrongFieldIsNamedWithItsPath(Consumer<ObjectNode> change, String field, String words) {
        var problems = problems(demo(change));
        assertThat(problems).hasSize(1);
        assertThat(problems.get(0).field()).endsWith(field);
        assertThat(problems.get(0).sentence()).contains(words);
        assertThat(problems.get(0).fix()).isNotBlank();
        // the path is for whoever mends the file; the sentence is for a person
        assertThat(problems.get(0).sentence()).doesNotContainPattern("[0-9a-f]{8}-[0-9a-f]{4}-");
    }

    @Test
    void everyWrongFieldIsNamedAtOnce() {
        var problems = problems(demo(tree -> {
            at(tree, LOT).put("feed_class", "hay");
            at(tree, COWS).put("head", "many");
            at(tree, "/settings").put("sytem", 1);
        }));
        assertThat(problems).extracting(Problem::field).hasSize(3);
    }

    @Test
    void infinityDoesNotPassForANumber() {
        var text = documents.write(TinLantern.ranch()).replaceFirst("\"value\" : 1300", "\"value\" : 1e999");
        assertThat(problems(bytes(text)).get(0).sentence()).contains("this is a number");
    }

    private ObjectNode demo(Consumer<ObjectNode> change) {
        var tree = documents.tree(TinLantern.ranch());
        change.accept(tree);
        return tree;
    }

    private static ObjectNode at(ObjectNode tree, String pointer) {
        return (ObjectNode) tree.at(pointer);
    }

    private List<Problem> problems(ObjectNode tree) {
        return problems(bytes(tree.toString()));
    }

    private List<Problem> problems(byte[] document) {
        return catchThrowableOfType(Refused.class, () -> documents.read(document))
                .problems();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
