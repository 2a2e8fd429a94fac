package haywright.app.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.compute.topic.Answer;
import haywright.app.compute.topic.Topic;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BatchTest {
    record Number(double number) {}

    private final AtomicInteger worked = new AtomicInteger();

    private final Topic<Number, Number> topic =
            new Topic<>("twice", "Twice the number.", Number.class, Number.class, "{}", in -> {
                worked.incrementAndGet();
                if (in.number() == 13) {
                    throw new IllegalStateException("thirteen");
                }
                return new Answer<>(new Number(2 * in.number()), in.number() >= 0, List.of(), List.of());
            });

    private Asked.Told ask(String json) {
        return new Asked(List.of(topic)).run("twice", json);
    }

    private static String number(int n) {
        return "{\"number\":" + n + "}";
    }

    @Test
    void theFaultOfOneStaysInItsPlace() {
        var told = ask("[" + number(1) + ",{\"number\":\"x\"},7,null,[[1]],{\"number\":1,\"number\":2}," + number(13)
                + "," + number(4) + "]");
        var body = told.body();
        assertThat(body).hasSize(8);
        assertThat(body.at("/0/answer/number").asInt()).isEqualTo(2);
        IntStream.range(1, 7)
                .forEach(i -> assertThat(body.get(i).get("errors")).as("%d", i).isNotEmpty());
        assertThat(body.at("/7/answer/number").asInt()).isEqualTo(8);
        assertThat(told.exit()).isEqualTo(Compute.FAILED);
        assertThat(told.errors()).hasSize(6).allMatch(line -> line.matches("\\[[1-6]\\] .*"));
        assertThat(told.failure()).hasMessage("thirteen");
        assertThat(told.text()).doesNotContain("thirteen", "Exception");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[%s,", "[%s,]", "[%s,{\"number\":", "[%s,{\"number\":1}}", "[%s] 5", "[%s,\u0007]", "[%s"})
    void textThatIsNoJsonEndsTheAnswersWhereItBegins(String text) {
        var told = ask(text.formatted(number(1)));
        assertThat(told.body().at("/0/answer/number").asInt()).isEqualTo(2);
        assertThat(told.body().get(told.body().size() - 1).at("/errors/0/rule").asText())
                .contains("not JSON");
        assertThat(told.exit()).isEqualTo(Compute.REFUSED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "}",
                "{\"number\":1} {\"number\":2}",
                "x",
                "{\"number\":1,\"number\":2}",
                "\"",
                "{\"number\":1e}"
            })
    void oneQuestionThatIsNoJsonHasOneAnswer(String text) {
        var told = ask(text);
        assertThat(told.body().get("errors")).hasSize(1);
        assertThat(told.exit()).isEqualTo(Compute.REFUSED);
        assertThat(worked).hasValue(0);
    }

    @Test
    void lettersOutsideOfUtf8AreSaidAndNotReplaced() {
        var told = new Asked(List.of(topic)).run("twice", new byte[] {'[', '"', (byte) 0xe9, '"', ']'});
        assertThat(told.body().at("/0/errors/0/rule").asText()).contains("not JSON");
        var wide = new Asked(List.of(topic)).run("twice", number(3).getBytes(StandardCharsets.UTF_16));
        assertThat(wide.body().at("/answer/number").asInt()).isEqualTo(6);
    }

    @Test
    void aQuestionTooLargeToHoldIsPassedOver() {
        var large = IntStream.range(0, Batch.MOST_TOKENS).mapToObj(i -> "0").collect(Collectors.joining(",", "[", "]"));
        var told = ask("[{\"number\":" + large + "}," + number(4) + "]");
        assertThat(told.body()).hasSize(2);
        assertThat(told.body().at("/0/errors/0/fix").asText()).isEqualTo("Ask for less at once.");
        assertThat(told.body().at("/1/answer/number").asInt()).isEqualTo(8);
    }

    @Test
    void aBatchIsLimitedByCount() {
        var told = ask(
                Stream.generate(() -> "{}").limit(Batch.MOST_QUESTIONS + 5).collect(Collectors.joining(",", "[", "]")));
        assertThat(told.body()).hasSize(Batch.MOST_QUESTIONS + 1);
        assertThat(told.body().get(Batch.MOST_QUESTIONS).at("/errors/0/rule").asText())
                .contains("at most 100,000");
        assertThat(told.exit()).isEqualTo(Compute.REFUSED);
    }

    @Test
    void aBatchIsLimitedByTime() {
        var start = Instant.parse("2026-11-25T12:00:00Z");
        InstantSource clock = () -> start.plus(worked.get() < 3 ? Batch.LONGEST : Batch.LONGEST.plusMillis(1));
        var told = new Asked(List.of(topic), new InstantSource() {
                    private boolean begun;

                    @Override
                    public Instant instant() {
                        var now = begun ? clock.instant() : start;
                        begun = true;
                        return now;
                    }
                })
                .run("twice", "[" + number(1) + "," + number(2) + "," + number(3) + "," + number(4) + "]");
        assertThat(worked).hasValue(3);
        assertThat(told.body()).hasSize(4);
        assertThat(told.body().at("/3/errors/0/value").asText()).isEqualTo("question 4");
        assertThat(told.exit()).isEqualTo(Compute.REFUSED);
    }

    @Test
    void eachIsWrittenBeforeTheNextIsRead() throws IOException {
        var written = new AtomicInteger();
        var to = new Writer() {
            @Override
            public void write(char[] text, int from, int length) {}

            @Override
            public void flush() {
                written.incrementAndGet();
            }

            @Override
            public void close() {}
        };
        // an endless array: read to the end it would never be answered
        var endless = new InputStream() {
            private int at = -1;

            @Override
            public int read() {
                if (written.get() >= 1000) {
                    return -1;
                }
                at++;
                return at == 0 ? '[' : "{\"number\":1},".charAt((at - 1) % 13);
            }

            @Override
            public int read(byte[] into, int from, int length) {
                int next = read();
                into[from] = (byte) next;
                return next < 0 ? -1 : 1;
            }
        };
        var compute = new Compute(List.of(topic), InstantSource.system());
        assertThat(compute.run("twice", endless, Compute.generator(to), new Quiet()))
                .isEqualTo(Compute.REFUSED);
        assertThat(worked.get()).isBetween(900, 1000);
    }

    @Test
    void nothingMoreIsWorkedWhenNobodyTakesTheAnswers() {
        var gone = new Writer() {
            @Override
            public void write(char[] text, int from, int length) throws IOException {
                throw new IOException("gone");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        var compute = new Compute(List.of(topic), InstantSource.system());
        var batch = Stream.generate(() -> number(1)).limit(1000).collect(Collectors.joining(",", "[", "]"));
        assertThatThrownBy(() -> compute.run(
                        "twice",
                        new ByteArrayInputStream(batch.getBytes(StandardCharsets.UTF_8)),
                        Compute.generator(gone),
                        new Quiet()))
                .hasMessage("gone");
        assertThat(worked).hasValue(1);
    }

    private static final class Quiet implements Compute.Heard {
        @Override
        public void refused(String line) {}

        @Override
        public void failed(Throwable failure) {}
    }
}
