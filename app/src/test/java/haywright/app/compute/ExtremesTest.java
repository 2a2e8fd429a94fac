package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Shape;
import haywright.app.compute.topic.Topic;
import haywright.app.compute.topic.Topics;
import java.io.IOException;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every value of every request at its extremes, alone and two at a time: what comes is an answer of finite numbers or a
 * refusal in a sentence, never a failure.
 */
class ExtremesTest {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private static final double[] NUMBERS = {
        0,
        -0.0,
        -1,
        1e-29,
        1e-17,
        1e-9,
        Double.MIN_VALUE,
        100,
        100.0000001,
        1e3,
        1e6,
        1e9,
        1e12,
        -1e12,
        1e15,
        1e308,
        -1e308
    };
    private static final int[] WHOLE = {0, -1, 1, 1000, 1_000_000, Integer.MAX_VALUE, Integer.MIN_VALUE};
    private static final String[] DATES = {
        "2026-02-28", "2024-02-29", "1500-01-01", "9999-12-31", "+999999999-12-31", "-999999999-01-01"
    };
    private static final String[] TEXTS = {"", " ", "\u0000", "NaN", "x".repeat(300)};

    /** One way to change a request. */
    private record Change(String words, Consumer<ObjectNode> to) {}

    static Stream<Topic<?, ?>> topics() {
        return Topics.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("topics")
    void anExtremeIsAnsweredOrRefused(Topic<?, ?> topic) throws IOException {
        var changes = changes(topic);
        var wrong = new LinkedHashMap<String, String>();
        for (var change : changes) {
            ask(topic, List.of(change), wrong);
        }
        var random = new Random(1);
        for (int i = 0; i < 200; i++) {
            ask(
                    topic,
                    List.of(changes.get(random.nextInt(changes.size())), changes.get(random.nextInt(changes.size()))),
                    wrong);
        }
        assertThat(wrong).isEmpty();
    }

    private static void ask(Topic<?, ?> topic, List<Change> changes, Map<String, String> wrong) throws IOException {
        var question = (ObjectNode) Batch.JSON.readTree(topic.example());
        for (var change : changes) {
            try {
                change.to().accept(question);
            } catch (ClassCastException | NullPointerException | IndexOutOfBoundsException e) {
                return; // the first change took away what the second would change
            }
        }
        var told = new Asked(Topics.ALL).run(topic.name(), question.toString());
        var words = changes.stream().map(Change::words).toList().toString();
        var failure = told.failure();
        if (failure != null) {
            var at = Arrays.stream(failure.getStackTrace()).limit(6).toList();
            wrong.put(words, failure + " at " + at);
        } else if (told.exit() == Compute.REFUSED) {
            told.body().get("errors").forEach(error -> {
                var rule = error.get("rule").asText();
                if (rule.isBlank() || rule.contains("NaN") || rule.contains("Infinity") || rule.contains("xception")) {
                    wrong.put(words, error.toString());
                }
            });
        } else {
            for (var none : new String[] {"NaN", "Infinity", "null"}) {
                if (told.text().contains(none) && !question.toString().contains(none)) {
                    int at = told.text().indexOf(none);
                    wrong.put(
                            words,
                            told.text()
                                    .substring(
                                            Math.max(0, at - 100),
                                            Math.min(told.text().length(), at + 40)));
                }
            }
        }
    }

    private static List<Change> changes(Topic<?, ?> topic) throws IOException {
        var changes = new ArrayList<Change>();
        var example = Batch.JSON.readTree(topic.example());
        ofRecord(topic.in(), example, "", node -> node, changes);
        return changes;
    }

    private interface Find {
        JsonNode in(JsonNode question);
    }

    private static void ofRecord(
            Class<? extends Record> type, JsonNode example, String path, Find find, List<Change> changes) {
        for (var slot : Shape.of(type).slots()) {
            if (slot.inline()) {
                ofRecord(slot.component().getType().asSubclass(Record.class), example, path, find, changes);
                continue;
            }
            var key = slot.units().stream()
                    .map(slot::key)
                    .filter(example::has)
                    .findFirst()
                    .orElse(slot.key());
            var here = path + "." + key;
            var given = example.path(key);
            changes.add(new Change(here + " left out", q -> ((ObjectNode) find.in(q)).remove(key)));
            ofValue(
                    slot.type(),
                    given,
                    here,
                    (q, value) -> ((ObjectNode) find.in(q)).set(key, value),
                    q -> find.in(q).get(key),
                    changes);
        }
    }

    private interface Set {
        void to(JsonNode question, JsonNode value);
    }

    private static void ofValue(Type type, JsonNode given, String path, Set set, Find find, List<Change> changes) {
        if (type == double.class || type == Double.class) {
            for (double number : NUMBERS) {
                changes.add(change(path, set, JSON.numberNode(number)));
            }
        } else if (type == int.class || type == Integer.class) {
            for (int number : WHOLE) {
                changes.add(change(path, set, JSON.numberNode(number)));
            }
        } else if (type == boolean.class || type == Boolean.class) {
            changes.add(change(path, set, JSON.booleanNode(true)));
            changes.add(change(path, set, JSON.booleanNode(false)));
        } else if (type == String.class) {
            for (var text : TEXTS) {
                changes.add(change(path, set, JSON.textNode(text)));
            }
        } else if (type == LocalDate.class) {
            for (var date : DATES) {
                changes.add(change(path, set, JSON.textNode(date)));
            }
        } else if (Shape.inside(type, List.class) != null) {
            var element = Shape.inside(type, List.class);
            changes.add(change(path, set, JSON.arrayNode()));
            if (given.isEmpty()) {
                var list = JSON.arrayNode();
                changes.addAll(ofNew(element, path + "[]", value -> set, list));
            } else {
                changes.add(new Change(path + " twice", q -> {
                    var list = (ArrayNode) find.in(q);
                    list.addAll(list.deepCopy());
                }));
                for (int i = 0; i < Math.min(2, given.size()); i++) {
                    int at = i;
                    ofValue(
                            element,
                            given.get(i),
                            path + "[" + i + "]",
                            (q, value) -> ((ArrayNode) find.in(q)).set(at, value),
                            q -> find.in(q).get(at),
                            changes);
                }
            }
        } else if (Shape.inside(type, Map.class) != null) {
            var entry = Shape.inside(type, Map.class);
            changes.add(change(path, set, JSON.objectNode()));
            given.fieldNames()
                    .forEachRemaining(name -> ofValue(
                            entry,
                            given.get(name),
                            path + "." + name,
                            (q, value) -> ((ObjectNode) find.in(q)).set(name, value),
                            q -> find.in(q).get(name),
                            changes));
        } else if (type == ObjectNode.class) {
            changes.add(change(path, set, JSON.objectNode()));
            ofDocument(given, path, find, changes);
        } else if (((Class<?>) type).isEnum()) {
            for (var constant : ((Class<?>) type).getEnumConstants()) {
                changes.add(change(path, set, JSON.textNode(Shape.id((Enum<?>) constant))));
            }
        } else if (given.isObject()) {
            ofRecord(((Class<?>) type).asSubclass(Record.class), given, path, find, changes);
        } else {
            changes.add(change(path, set, JSON.objectNode()));
        }
    }

    /** Every figure and text of a document that is given whole. */
    private static void ofDocument(JsonNode given, String path, Find find, List<Change> changes) {
        given.fieldNames().forEachRemaining(name -> {
            var inside = given.get(name);
            var here = path + "." + name;
            Set set = (q, value) -> ((ObjectNode) find.in(q)).set(name, value);
            changes.add(new Change(here + " left out", q -> ((ObjectNode) find.in(q)).remove(name)));
            if (inside.isNumber()) {
                ofValue(double.class, inside, here, set, q -> find.in(q).get(name), changes);
            } else if (inside.isTextual()) {
                ofValue(String.class, inside, here, set, q -> find.in(q).get(name), changes);
            } else {
                ofDocument(inside, here, q -> find.in(q).get(name), changes);
            }
        });
    }

    /** A list that the example does not have, with one value in it. */
    private static List<Change> ofNew(
            Type element, String path, java.util.function.Function<JsonNode, Set> set, ArrayNode list) {
        var inside = new ArrayList<Change>();
        ofValue(
                element,
                JSON.missingNode(),
                path,
                (q, value) -> set.apply(value).to(q, list.deepCopy().add(value)),
                q -> JSON.missingNode(),
                inside);
        return inside;
    }

    private static Change change(String path, Set set, JsonNode value) {
        return new Change(path + " = " + (value.toString().length() > 40 ? "long" : value), q -> set.to(q, value));
    }
}
