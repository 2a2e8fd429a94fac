package haywright.app.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.sampling.field.Polygon;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Values of the engine written as JSON. Keys are component names in snake_case; one of several kinds says which by
 * {@code kind}; what is not known is left out; an entity that sits in a map does not repeat the id it is found by.
 */
final class RecordForm {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private RecordForm() {}

    static JsonNode write(Object value) {
        if (value instanceof Polygon polygon) {
            return JSON.objectNode().put("type", "Polygon").set("coordinates", write(polygon.coordinates()));
        } else if (value instanceof Record r) {
            return writeRecord(r, false);
        } else if (value instanceof Map<?, ?> map) {
            var node = JSON.objectNode();
            map.forEach((key, entry) ->
                    node.set(key.toString(), entry instanceof Record r ? writeRecord(r, true) : write(entry)));
            return node;
        } else if (value instanceof Collection<?> list) {
            var node = JSON.arrayNode();
            list.forEach(entry -> node.add(write(entry)));
            return node;
        } else if (value instanceof Double number) {
            return isWhole(number) ? whole(number.longValue()) : JSON.numberNode(number);
        } else if (value instanceof Integer number) {
            return whole(number);
        } else if (value instanceof Boolean yes) {
            return JSON.booleanNode(yes);
        } else if (value instanceof Enum<?> constant) {
            return JSON.textNode(Spelling.id(constant));
        } else if (value instanceof String || value instanceof LocalDate || value instanceof UUID) {
            return JSON.textNode(value.toString());
        }
        throw new IllegalStateException("documents cannot hold a " + value.getClass());
    }

    /** As a parser would hold it, so that trees compare alike wherever they came from. */
    private static JsonNode whole(long number) {
        return number == (int) number ? JSON.numberNode((int) number) : JSON.numberNode(number);
    }

    /** Whole and small enough that a long holds it exactly; −0 is kept as it is. */
    private static boolean isWhole(double number) {
        return number == Math.rint(number)
                && Math.abs(number) < 1e15
                && Double.doubleToRawLongBits(number) != Double.doubleToRawLongBits(-0.0);
    }

    private static ObjectNode writeRecord(Record value, boolean inMap) {
        var node = JSON.objectNode();
        var shape = Shape.of(value.getClass());
        if (shape.kind() != null) {
            node.put("kind", shape.kind());
        }
        for (var part : shape.parts()
                .subList(inMap && shape.keyed() ? 1 : 0, shape.parts().size())) {
            var held = get(part, value);
            if (held != null) {
                node.set(part.key(), write(held));
            }
        }
        return node;
    }

    private static @Nullable Object get(Shape.Part part, Record value) {
        try {
            return part.accessor().invoke(value);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(part.toString(), e);
        }
    }
}
