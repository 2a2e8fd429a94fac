package haywright.app.compute.topic;

import java.util.function.Function;

/**
 * One question that can be asked from a command or over HTTP.
 *
 * @param name as typed: {@code relative-feed-value}
 * @param words what it answers, in one line
 * @param example a request, as JSON; the tests run it and the OpenAPI document shows it
 */
public record Topic<I extends Record, O extends Record>(
        String name, String words, Class<I> in, Class<O> out, String example, Function<I, Answer<O>> run) {}
