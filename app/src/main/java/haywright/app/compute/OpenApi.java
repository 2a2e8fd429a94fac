package haywright.app.compute;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Schema;
import haywright.app.compute.topic.Topic;
import haywright.app.words.Version;
import java.util.List;

/** The OpenAPI 3.1 document of the topics, from the records that read and write them. */
final class OpenApi {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final String TYPE = "application/json";

    private OpenApi() {}

    static ObjectNode document(List<Topic<?, ?>> topics) {
        var document = JSON.objectNode().put("openapi", "3.1.0");
        document.putObject("info")
                .put("title", "Haywright")
                .put("version", Version.TEXT)
                .put(
                        "description",
                        "One question, one answer, with its workings. A quantity may be given in any unit of its kind;"
                                + " an array of questions gives an array of answers in their order, sent as they are"
                                + " worked out. What is wrong with one element stands as errors in its place; after"
                                + " text that is no JSON, and after the last question that a batch may hold, the array"
                                + " ends with errors.");
        document.putObject("paths");
        document.putObject("components").putObject("schemas");
        var schemas = (ObjectNode) document.at("/components/schemas");
        schemas.set("working", Schema.answered(Body.WorkingOut.class));
        schemas.set("caution", Schema.answered(Body.CautionOut.class));
        schemas.set("errors", Schema.answered(Body.ErrorsOut.class));
        for (var topic : topics) {
            schemas.set(topic.name() + ".asked", Schema.asked(topic.in()));
            schemas.set(topic.name() + ".answer", Schema.answered(topic.out()));
            ((ObjectNode) document.get("paths"))
                    .putObject("/api/compute/" + topic.name())
                    .set("post", operation(topic));
        }
        return document;
    }

    private static ObjectNode operation(Topic<?, ?> topic) {
        var operation = JSON.objectNode().put("operationId", topic.name()).put("summary", topic.words());
        var request = operation.putObject("requestBody").put("required", true);
        var asked = request.putObject("content").putObject(TYPE);
        asked.set("schema", oneOrMany(reference(topic.name() + ".asked")));
        asked.set("example", example(topic));
        var responses = operation.putObject("responses");
        respond(
                responses,
                "200",
                "The answer; it may be \"no\", with the reason.",
                anyOf(body(topic), many(anyOf(reference("errors"), body(topic)))));
        respond(
                responses,
                "422",
                "The input is refused; of several, at least one. A batch whose first answers have been sent is 200:"
                        + " look at each element.",
                refusedOrAnswered(topic));
        respond(responses, "500", "As 422, and the fault of at least one is the program's.", refusedOrAnswered(topic));
        return operation;
    }

    private static ObjectNode refusedOrAnswered(Topic<?, ?> topic) {
        return anyOf(reference("errors"), many(anyOf(reference("errors"), body(topic))));
    }

    private static ObjectNode body(Topic<?, ?> topic) {
        var body = JSON.objectNode().put("type", "object");
        var properties = body.putObject("properties");
        properties.set("answer", reference(topic.name() + ".answer"));
        properties.set("workings", many(reference("working")));
        properties.set("cautions", many(reference("caution")));
        properties.putObject("version").put("type", "string");
        properties.putObject("inputs_sha256").put("type", "string").put("pattern", "^[0-9a-f]{64}$");
        var required = body.putArray("required");
        properties.fieldNames().forEachRemaining(required::add);
        return body.put("additionalProperties", false);
    }

    private static com.fasterxml.jackson.databind.JsonNode example(Topic<?, ?> topic) {
        try {
            return new ObjectMapper().readTree(topic.example());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the example of " + topic.name() + " is not JSON", e);
        }
    }

    private static void respond(ObjectNode responses, String status, String words, ObjectNode schema) {
        responses
                .putObject(status)
                .put("description", words)
                .putObject("content")
                .putObject(TYPE)
                .set("schema", schema);
    }

    private static ObjectNode reference(String name) {
        return JSON.objectNode().put("$ref", "#/components/schemas/" + name);
    }

    private static ObjectNode many(ObjectNode schema) {
        var many = JSON.objectNode().put("type", "array");
        many.set("items", schema);
        return many;
    }

    private static ObjectNode oneOrMany(ObjectNode schema) {
        return anyOf(schema, many(schema));
    }

    private static ObjectNode anyOf(ObjectNode a, ObjectNode b) {
        var schema = JSON.objectNode();
        schema.putArray("anyOf").add(a).add(b);
        return schema;
    }
}
