package haywright.app.compute;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Named;
import haywright.app.compute.shape.Nearest;
import haywright.app.compute.shape.Reader;
import haywright.app.compute.shape.Shape;
import haywright.app.compute.shape.Writer;
import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.OfARanch;
import haywright.app.compute.topic.TestWorthTopic;
import haywright.app.compute.topic.Topic;
import haywright.app.document.Fingerprint;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import haywright.app.words.Version;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** JSON in, JSON out: the one way a topic is run, from the command and over HTTP. */
public final class Compute {
    /** The answer is there. */
    public static final int DONE = 0;
    /** The answer is there and it is "no". */
    public static final int NO = 1;
    /** The input was refused. */
    public static final int REFUSED = 2;
    /** The answer is not there, and it is not the asker's fault. */
    public static final int FAILED = 3;

    private final List<Topic<?, ?>> topics;
    private final InstantSource clock;
    /** So many questions are worked at a time; those of other batches wait their turn, question by question. */
    private final Semaphore turns = new Semaphore(Runtime.getRuntime().availableProcessors(), true);

    /** @param clock measures how long a batch has been running */
    public Compute(List<Topic<?, ?>> topics, InstantSource clock) {
        this.topics = List.copyOf(topics);
        this.clock = clock;
    }

    /** Hears of each refusal and failure when it happens, besides what is written among the answers. */
    public interface Heard {
        /** @param line where, what, rule, fix; of a batch with the place of the element before it */
        void refused(String line);

        void failed(Throwable failure);
    }

    /**
     * One answer.
     *
     * @param exit {@link #DONE}, {@link #NO}, {@link #REFUSED} or {@link #FAILED}
     * @param failure what went wrong inside, for whoever mends it; it is not in the body
     */
    public record Outcome(JsonNode body, int exit, @Nullable Throwable failure) {
        /** One line an error: where, what, rule, fix. */
        public List<String> errors() {
            var lines = new ArrayList<String>();
            for (var error : body.path("errors")) {
                lines.add("%s: %s: %s. %s"
                        .formatted(
                                error.path("field").asText(),
                                error.path("value").asText(),
                                error.path("rule").asText(),
                                error.path("fix").asText()));
            }
            return lines;
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
                    Nearest.to(name, names)
                            .map("Did you mean %s?"::formatted)
                            .orElse("Ask without a topic: that lists them."));
        });
    }

    /**
     * Answers a question, or an array of them one by one.
     *
     * @param json as UTF-8, UTF-16 or UTF-32
     * @param to its answer, or an array of them; flushed after each, and not closed
     * @return the exit status, of an array the worst
     * @throws Refused when there is no such topic
     * @throws IOException when the questions cannot be read on, or the answers not be written
     */
    public int run(String name, InputStream json, JsonGenerator to, Heard heard) throws IOException {
        return run(name, json, to, heard, UnaryOperator.identity());
    }

    /**
     * The same.
     *
     * @param before what is done to each question first; what it refuses is refused of that question
     */
    public int run(String name, InputStream json, JsonGenerator to, Heard heard, UnaryOperator<JsonNode> before)
            throws IOException {
        var topic = topic(name);
        return new Batch(question -> answer(topic, question, before), turns, to, heard, clock).run(json);
    }

    /** Writes answers for {@link #run}, and leaves open what they go to. */
    public static JsonGenerator generator(java.io.Writer to) throws IOException {
        return Batch.JSON.createGenerator(to).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
    }

    /** As {@link #demo(String, InputStream)}, of all there is. */
    public Outcome demo(String name) {
        return demo(name, InputStream.nullInputStream());
    }

    /** Whether a demo's question can name something: a lot. */
    public static boolean demoAsks(String name) {
        return DemoAnswers.asksOfLots(name);
    }

    /**
     * What a topic says of the demo ranch: an array, each body with the name of the group or lot it is {@code of}; one body
     * where it is of the whole ranch, or of a lot that was named.
     *
     * @param question JSON that names a lot, where the topic asks for one; empty for all
     */
    public Outcome demo(String name, InputStream question) {
        try {
            var lot = DemoAnswers.asksOfLots(name) ? lot(question) : null;
            if (!DemoAnswers.isOfTheRanch(name)) {
                topic(name);
            }
            var document = new RanchDocument().tree(TinLantern.ranch());
            ArrayNode bodies = Batch.JSON.createArrayNode();
            int worst = DONE;
            for (var answer : DemoAnswers.to(name, lot).entrySet()) {
                bodies.add(body(answer.getValue(), document).put("of", answer.getKey()));
                worst = Math.max(worst, answer.getValue().yes() ? DONE : NO);
            }
            boolean isOne = DemoAnswers.asksOfLots(name) ? lot != null : DemoAnswers.isOfTheRanch(name);
            return new Outcome(isOne ? bodies.get(0) : bodies, worst, null);
        } catch (Refused refused) {
            return refused(refused);
        }
    }

    private static @Nullable String lot(InputStream question) {
        try {
            var json = Batch.JSON.readTree(question);
            return json.isMissingNode()
                    ? null
                    : Reader.read(TestWorthTopic.OfALot.class, json).lot();
        } catch (IOException e) {
            throw new Refused(
                    "json", "the question", "it is no JSON that can be read", "For instance {\"lot\":\"Oat hay\"}.");
        }
    }

    private Outcome answer(Topic<?, ?> topic, JsonNode question, UnaryOperator<JsonNode> before) {
        try {
            return one(topic, OfARanch.isAsked(topic) ? ofARanch(question) : before.apply(question));
        } catch (Refused refused) {
            return refused(refused);
        } catch (RuntimeException | StackOverflowError e) {
            return new Outcome(
                    errors(List.of(new Problem(
                            "json",
                            "this question",
                            "Haywright failed on it, and the fault is not yours",
                            "Change a figure and ask again, and tell whoever looks after Haywright."))),
                    FAILED,
                    e);
        }
    }

    /** A document by itself asks about its ranch; where it says no day, it is today. */
    private JsonNode ofARanch(JsonNode question) {
        boolean isAlone = question.path("haywright").isTextual();
        var asked = isAlone ? Batch.JSON.createObjectNode().set("ranch", question) : question.deepCopy();
        if (asked instanceof ObjectNode object
                && !object.hasNonNull("date")
                && !object.path("ranch").path("settings").hasNonNull("fixed_today")) {
            object.put(
                    "date",
                    LocalDate.ofInstant(clock.instant(), ZoneId.systemDefault()).toString());
        }
        return asked;
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
            return new Outcome(body(answer, json), answer.yes() ? DONE : NO, null);
        } catch (Refused refused) {
            var shape = Shape.of(topic.in());
            return refused(new Refused(refused.problems().stream()
                    .map(p -> Named.named(p, shape, json, ""))
                    .toList()));
        }
    }

    static ObjectNode body(Answer<?> answer, JsonNode json) {
        var body = Batch.JSON.createObjectNode();
        body.set("answer", Writer.write(answer.answer()));
        var workings = body.putArray("workings");
        Body.lines(answer.workings()).forEach(line -> workings.add(Writer.write(line)));
        var cautions = body.putArray("cautions");
        answer.cautions().forEach(c -> cautions.add(Writer.write(Body.CautionOut.of(c))));
        return body.put("version", Version.TEXT).put("inputs_sha256", Fingerprint.sha256(json));
    }

    static Outcome refused(Refused refused) {
        return new Outcome(errors(refused.problems()), REFUSED, null);
    }

    private static ObjectNode errors(List<Problem> problems) {
        return Writer.write(
                new Body.ErrorsOut(problems.stream().map(Body.ErrorOut::of).toList()));
    }
}
