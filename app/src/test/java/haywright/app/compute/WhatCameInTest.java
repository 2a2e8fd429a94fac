package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.topic.Topic;
import haywright.app.compute.topic.Topics;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each number of each request made impossible, one at a time: it is refused, and the refusal names a key that was sent, with
 * the value as it was sent. A whole document is read by the reader of documents, and has its own test.
 */
class WhatCameInTest {
    /** What a report has in it is judged, in the answer. */
    private static final Pattern CAN_BE_BELOW_NOTHING =
            Pattern.compile("^report-check|temperature|seed|/coordinates/|/limits/|/values/(protein|oil)$");

    static Stream<Topic<?, ?>> topics() {
        return Topics.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("topics")
    void aRefusalNamesWhatWasSent(Topic<?, ?> topic) throws IOException {
        var wrong = new ArrayList<String>();
        var example = (ObjectNode) Batch.JSON.readTree(topic.example());
        for (var path : numbers(example, "")) {
            for (long value : new long[] {-7, 987_654_321}) {
                var question = example.deepCopy();
                set(question, path, value);
                var told = new Asked(Topics.ALL).run(topic.name(), question.toString());
                if (told.exit() == Compute.REFUSED
                        && StreamSupport.stream(told.body().get("errors").spliterator(), false)
                                .noneMatch(error -> names(error, question, path, value))) {
                    wrong.add(path + " = " + value + " -> " + told.errors());
                }
                if (told.exit() == Compute.DONE
                        && value < 0
                        && !CAN_BE_BELOW_NOTHING.matcher(topic.name() + path).find()) {
                    wrong.add(path + " = " + value + " is answered");
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** A key of the question, feeds[1].pct, beside the figure that was sent; a corner of a field stands for its field. */
    private static boolean names(JsonNode error, JsonNode question, String path, long value) {
        var field = error.get("field").asText();
        if (question.at("/" + field.replace('.', '/').replace("[", "/").replace("]", ""))
                .isMissingNode()) {
            return false;
        }
        return path.contains("/coordinates/")
                || error.get("value")
                        .asText()
                        .replace(",", "")
                        .replace('−', '-')
                        .matches("(.*[^\\d.-])?" + value + "( .*|[^\\d.].*)?");
    }

    private static List<String> numbers(JsonNode node, String path) {
        var paths = new ArrayList<String>();
        if (node.isNumber()) {
            paths.add(path);
        }
        node.fieldNames().forEachRemaining(name -> {
            if (!name.equals("ranch")) {
                paths.addAll(numbers(node.get(name), path + "/" + name));
            }
        });
        if (node.isArray()) {
            for (int i = 0; i < Math.min(2, node.size()); i++) {
                paths.addAll(numbers(node.get(i), path + "/" + i));
            }
        }
        return paths;
    }

    private static void set(JsonNode question, String path, long value) {
        int last = path.lastIndexOf('/');
        var in = question.at(path.substring(0, last));
        var name = path.substring(last + 1);
        var number = JsonNodeFactory.instance.numberNode(value);
        if (in instanceof ArrayNode list) {
            list.set(Integer.parseInt(name), number);
        } else {
            ((ObjectNode) in).set(name, number);
        }
    }
}
