package haywright.app.compute;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.Fingerprint;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;

/** JSON in, JSON out: the one way a topic is run, from the command and over HTTP. */
public final class Compute {
    /** The answer is there. */
    public static final int DONE = 0;
    /** The answer is there and it is "no". */
    public static final int NO = 1;
    /** The input was refused. */
    public static final int REFUSED = 2;

    /** Some editors put it before everything else. */
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private final List<Topic<?, ?>> topics;

    public Compute(List<Topic<?, ?>> topics) {
        this.topics = List.copyOf(topics);
    }

    /** @param exit {@link #DONE}, {@link #NO} or {@link #REFUSED}; of an array the worst */
    public record Outcome(JsonNode body, int exit) {
        /** One line an error: where, what, rule, fix. Of an array with the place of the element before it. */
        public List<String> errors() {
            var lines = new ArrayList<String>();
            if (body.isArray()) {
                for (int i = 0; i < body.size(); i++) {
                    add(lines, "[" + i + "] ", body.get(i));
                }
            } else {
                add(lines, "", body);
            }
            return lines;
        }

        private static void add(List<String> lines, String place, JsonNode body) {
            for (var error : body.path("errors")) {
                lines.add(place
                        + "%s: %s: %s. %s"
                                .formatted(
                                        error.path("field").asText(),
                                        error.path("value").asText(),
                                        error.path("rule").asText(),
                                        error.path("fix").asText()));
            }
        }
    }

    /** @throws Refused when there is no such topic */
    public Topic<?, ?> topic(String name) {
        return topics.stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow(() -> {
            var names = topics.stream().map(Topic::name).toList();
            return new Refused(
                    "topic",
                    name,
                    "there is no topic of this name",
                    Nearest.to(name, names).map("Did you mean %s?"::formatted).orElse(""));
        });
    }

    /** Runs a topic on JSON text: an object, or an array of them. */
    public Outcome run(String name, String json) {
        try {
            return run(topic(name), JSON.readTree(json.startsWith(BYTE_ORDER_MARK) ? json.substring(1) : json));
        } catch (Refused refused) {
            return refused(refused);
        } catch (JsonProcessingException e) {
            return refused(
                    new Refused("json", where(e), "this is not JSON: " + e.getOriginalMessage(), "Mend it there."));
        }
    }

    private static String where(JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        return at == null ? "the text" : "line %d, column %d".formatted(at.getLineNr(), at.getColumnNr());
    }

    /** What a topic says of the demo ranch: an array, each body with the name of the group or lot it is {@code of}. */
    public Outcome demo(String name) {
        try {
            topic(name);
            var document = new RanchDocument().tree(TinLantern.ranch());
            ArrayNode bodies = JSON.createArrayNode();
            int worst = DONE;
            for (var answer : DemoAnswers.to(name).entrySet()) {
                bodies.add(body(answer.getValue(), document).put("of", answer.getKey()));
                worst = Math.max(worst, answer.getValue().yes() ? DONE : NO);
            }
            return new Outcome(bodies, worst);
        } catch (Refused refused) {
            return refused(refused);
        }
    }

    private static <I extends Record, O extends Record> Outcome run(Topic<I, O> topic, JsonNode json) {
        if (!json.isArray()) {
            return one(topic, json);
        }
        ArrayNode bodies = JSON.createArrayNode();
        int worst = DONE;
        for (var element : json) {
            var outcome = one(topic, element);
            bodies.add(outcome.body());
            worst = Math.max(worst, outcome.exit());
        }
        return new Outcome(bodies, worst);
    }

    private static <I extends Record, O extends Record> Outcome one(Topic<I, O> topic, JsonNode json) {
        I in;
        try {
            in = Reader.read(topic.in(), json);
        } catch (Refused refused) {
            return refused(refused);
        }
        try {
            var answer = topic.run().apply(in);
            return new Outcome(body(answer, json), answer.yes() ? DONE : NO);
        } catch (Refused refused) {
            var shape = Shape.of(topic.in());
            return refused(new Refused(refused.problems().stream()
                    .map(p -> Reader.named(p, shape, json, ""))
                    .toList()));
        }
    }

    private static ObjectNode body(Answer<?> answer, JsonNode json) {
        var body = JSON.createObjectNode();
        body.set("answer", Writer.write(answer.answer()));
        var workings = body.putArray("workings");
        Body.lines(answer.workings()).forEach(line -> workings.add(Writer.write(line)));
        var cautions = body.putArray("cautions");
        answer.cautions().forEach(c -> cautions.add(Writer.write(Body.CautionOut.of(c))));
        return body.put("version", Version.TEXT).put("inputs_sha256", Fingerprint.sha256(json));
    }

    private static Outcome refused(Refused refused) {
        List<Problem> problems = refused.problems();
        return new Outcome(
                Writer.write(new Body.ErrorsOut(
                        problems.stream().map(Body.ErrorOut::of).toList())),
                REFUSED);
    }
}
