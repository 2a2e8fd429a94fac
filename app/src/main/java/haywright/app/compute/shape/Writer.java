package haywright.app.compute.shape;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Writes a record as JSON with its fixed keys. What is not known is left out, never written as zero or null. */
public final class Writer {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private Writer() {}

    public static ObjectNode write(Record record) {
        var out = JSON.objectNode();
        for (var slot : Shape.of(record.getClass()).slots()) {
            var value = value(slot.valueIn(record));
            if (value instanceof ObjectNode inside && slot.inline()) {
                out.setAll(inside);
            } else if (value != null) {
                out.set(slot.key(), value);
            }
        }
        return out;
    }

    private static @Nullable JsonNode value(@Nullable Object value) {
        if (value == null) {
            return null;
        }
        if (value instanceof OptionalDouble some) {
            return some.isPresent() ? value(some.getAsDouble()) : null;
        }
        if (value instanceof Optional<?> some) {
            return value(some.orElse(null));
        }
        if (value instanceof Double number) {
            if (!Double.isFinite(number)) {
                throw new IllegalStateException("an answer came out as " + number);
            }
            // A double that is whole is written 25, not 25.0, as people write it.
            return number == Math.rint(number) && Math.abs(number) < 1e15
                    ? JSON.numberNode(number.longValue())
                    : JSON.numberNode(number);
        }
        if (value instanceof Integer number) {
            return JSON.numberNode(number);
        }
        if (value instanceof Boolean bool) {
            return JSON.booleanNode(bool);
        }
        if (value instanceof String || value instanceof LocalDate) {
            return JSON.textNode(value.toString());
        }
        if (value instanceof Enum<?> constant) {
            return JSON.textNode(Shape.id(constant));
        }
        if (value instanceof List<?> list) {
            var out = JSON.arrayNode();
            list.forEach(element -> out.add(value(element)));
            return out;
        }
        if (value instanceof Map<?, ?> map) {
            var out = JSON.objectNode();
            map.forEach((key, entry) -> out.set(key.toString(), value(entry)));
            return out;
        }
        return write((Record) value);
    }
}
