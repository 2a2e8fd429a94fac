package haywright.app.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.sampling.Polygon;
import java.lang.reflect.RecordComponent;
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
            return isWhole(number) ? JSON.numberNode(number.longValue()) : JSON.numberNode(number);
        } else if (value instanceof Integer number) {
            // a long like every whole number, so that trees compare alike wherever they came from
            return JSON.numberNode(number.longValue());
        } else if (value instanceof Boolean yes) {
            return JSON.booleanNode(yes);
        } else if (value instanceof Enum<?> constant) {
            return JSON.textNode(Spelling.id(constant));
        } else if (value instanceof String || value instanceof LocalDate || value instanceof UUID) {
            return JSON.textNode(value.toString());
        }
        throw new IllegalStateException("documents cannot hold a " + value.getClass());
    }

    /** Whole and small enough that a long holds it exactly; −0 is kept as it is. */
    private static boolean isWhole(double number) {
        return number == Math.rint(number)
                && Math.abs(number) < 1e15
                && Double.doubleToRawLongBits(number) != Double.doubleToRawLongBits(-0.0);
    }

    private static ObjectNode writeRecord(Record value, boolean inMap) {
        var node = JSON.objectNode();
        for (var side : value.getClass().getInterfaces()) {
            if (side.isSealed()) {
                node.put("kind", Spelling.snake(value.getClass().getSimpleName()));
            }
        }
        var components = value.getClass().getRecordComponents();
        for (int i = inMap && isKeyed(value.getClass()) ? 1 : 0; i < components.length; i++) {
            var part = get(components[i], value);
            if (part != null) {
                node.set(Spelling.snake(components[i].getName()), write(part));
            }
        }
        return node;
    }

    /** Whether a record's first component is the id that a map holds it by. */
    static boolean isKeyed(Class<?> type) {
        var components = type.getRecordComponents();
        return components.length > 0 && components[0].getType() == UUID.class;
    }

    private static @Nullable Object get(RecordComponent component, Record value) {
        try {
            return component.getAccessor().invoke(value);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component.toString(), e);
        }
    }
}
