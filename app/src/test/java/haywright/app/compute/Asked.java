package haywright.app.compute;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.compute.topic.Topic;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Asks topics and keeps the whole answer, as no caller outside of tests does. */
public final class Asked {
    private final Compute compute;

    public Asked(List<Topic<?, ?>> topics) {
        this(topics, InstantSource.system());
    }

    public Asked(List<Topic<?, ?>> topics, InstantSource clock) {
        compute = new Compute(topics, clock);
    }

    public record Told(String text, int exit, List<String> errors, List<Throwable> failures) {
        public JsonNode body() {
            try {
                return Batch.JSON.readTree(text);
            } catch (IOException e) {
                throw new UncheckedIOException(text, e);
            }
        }

        @Nullable
        Throwable failure() {
            return failures.isEmpty() ? null : failures.get(0);
        }
    }

    public Told run(String topic, String json) {
        return run(topic, json.getBytes(StandardCharsets.UTF_8));
    }

    public Told run(String topic, byte[] json) {
        var out = new StringWriter();
        var errors = new ArrayList<String>();
        var failures = new ArrayList<Throwable>();
        var heard = new Compute.Heard() {
            @Override
            public void refused(String line) {
                errors.add(line);
            }

            @Override
            public void failed(Throwable failure) {
                failures.add(failure);
            }
        };
        try {
            int exit = compute.run(topic, new ByteArrayInputStream(json), Compute.generator(out), heard);
            return new Told(out.toString(), exit, errors, failures);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
