package haywright.app.compute;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.util.JsonParserDelegate;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.MissingNode;
import haywright.app.document.BoundedJson;
import haywright.workings.Refused;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.Semaphore;
import java.util.function.Function;

/**
 * One question, or an array of them: each is read, answered and written before the next is read, so memory does not grow
 * with their number. What is wrong with one element stays in its place among the answers; text that is no JSON, and a
 * batch that is too long, end the array with their own errors. What is written is whole JSON in every case.
 */
final class Batch {
    static final int MOST_QUESTIONS = 100_000;
    static final Duration LONGEST = Duration.ofMinutes(10);
    /** Of one question: it is held as a tree, many times the size of its text. */
    static final int MOST_TOKENS = 50_000;

    static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
            .build();

    private final Function<JsonNode, Compute.Outcome> answer;
    private final Semaphore turns;
    private final JsonGenerator to;
    private final Compute.Heard heard;
    private final InstantSource clock;
    private final Instant started;
    private int worst = Compute.DONE;

    /**
     * @param answer never throws for what is wrong with a question
     * @param turns held while a question is read and answered, but not while the answer is sent
     */
    Batch(
            Function<JsonNode, Compute.Outcome> answer,
            Semaphore turns,
            JsonGenerator to,
            Compute.Heard heard,
            InstantSource clock) {
        this.answer = answer;
        this.turns = turns;
        this.to = to;
        this.heard = heard;
        this.clock = clock;
        started = clock.instant();
    }

    /**
     * @return the worst exit status
     * @throws IOException when the questions cannot be read on, or the answers not be written
     */
    int run(InputStream json) throws IOException {
        try (var parser = new Counted(JSON.createParser(json))) {
            if (parser.nextToken() == JsonToken.START_ARRAY) {
                to.writeStartArray();
                elements(parser);
                to.writeEndArray();
            } else {
                write("", inTurn(() -> single(parser)));
            }
        } catch (JsonProcessingException | CharConversionException e) {
            write("", Compute.refused(wrong(e)));
        }
        to.flush();
        return worst;
    }

    private interface Step {
        Compute.Outcome take() throws IOException;
    }

    private Compute.Outcome inTurn(Step step) throws IOException {
        turns.acquireUninterruptibly();
        try {
            return step.take();
        } catch (Refused refused) {
            return Compute.refused(refused);
        } finally {
            turns.release();
        }
    }

    private Compute.Outcome single(Counted parser) throws IOException {
        var question = parser.currentToken() == null ? MissingNode.getInstance() : parser.tree();
        nothingMore(parser);
        return answer.apply(question);
    }

    private void elements(Counted parser) throws IOException {
        int n = 0;
        try {
            for (; parser.nextToken() != JsonToken.END_ARRAY; n++) {
                withinLimits(n);
                write("[" + n + "] ", inTurn(() -> element(parser)));
            }
            nothingMore(parser);
        } catch (JsonProcessingException | CharConversionException e) {
            write("[" + n + "] ", Compute.refused(wrong(e)));
        } catch (Refused refused) {
            write("[" + n + "] ", Compute.refused(refused));
        }
    }

    private Compute.Outcome element(Counted parser) throws IOException {
        JsonNode question;
        try {
            question = parser.tree();
        } catch (MismatchedInputException e) {
            parser.skipElement();
            throw wrong(e);
        } catch (Refused refused) {
            parser.skipElement();
            throw refused;
        }
        return answer.apply(question);
    }

    private void withinLimits(int n) {
        if (n == MOST_QUESTIONS) {
            throw new Refused(
                    "json",
                    "question %,d".formatted(n + 1),
                    "a batch holds at most %,d questions".formatted(MOST_QUESTIONS),
                    "Ask the rest in another batch, from this one on.");
        }
        if (Duration.between(started, clock.instant()).compareTo(LONGEST) > 0) {
            throw new Refused(
                    "json",
                    "question %,d".formatted(n + 1),
                    "the batch has been running for %d minutes, the longest one may take"
                            .formatted(LONGEST.toMinutes()),
                    "Ask the rest in another batch, from this one on.");
        }
    }

    private static void nothingMore(Counted parser) throws IOException {
        if (parser.nextToken() != null) {
            throw new Refused(
                    "json",
                    where(parser.currentTokenLocation()),
                    "this is not JSON: something stands after its end",
                    "Take it out, or put several questions in [ ] with commas between.");
        }
    }

    private void write(String place, Compute.Outcome outcome) throws IOException {
        worst = Math.max(worst, outcome.exit());
        to.writeTree(outcome.body()); // and is flushed
        outcome.errors().forEach(line -> heard.refused(place + line));
        if (outcome.failure() != null) {
            heard.failed(outcome.failure());
        }
    }

    private static Refused wrong(IOException e) {
        if (e instanceof MismatchedInputException twice) {
            return new Refused("json", where(twice.getLocation()), BoundedJson.why(twice), "Keep one of them.");
        }
        var place = e instanceof JsonProcessingException json ? where(json.getLocation()) : "the text";
        return new Refused("json", place, "this is not JSON: " + BoundedJson.why(e), "Fix it there.");
    }

    private static String where(JsonLocation at) {
        return at == null ? "the text" : "line %d, column %d".formatted(at.getLineNr(), at.getColumnNr());
    }

    /** Counts the tokens of one question while its tree is built. */
    private static final class Counted extends JsonParserDelegate {
        private int left = Integer.MAX_VALUE;

        Counted(JsonParser parser) {
            super(parser);
        }

        @Override
        public JsonToken nextToken() throws IOException {
            if (left-- == 0) {
                throw new Refused(
                        "json",
                        "a question of more than %,d names and values".formatted(MOST_TOKENS),
                        "this is more than one question may hold",
                        "Ask for less at once.");
            }
            return super.nextToken();
        }

        /** @throws Refused when it is too large */
        JsonNode tree() throws IOException {
            left = MOST_TOKENS;
            try {
                return JSON.readTree(this);
            } finally {
                left = Integer.MAX_VALUE;
            }
        }

        /** Reads on to the last token of the array's element that is being read. */
        void skipElement() throws IOException {
            while (getParsingContext().getNestingDepth() > 1) {
                nextToken();
            }
        }
    }
}
