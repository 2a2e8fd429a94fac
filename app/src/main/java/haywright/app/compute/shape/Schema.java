package haywright.app.compute.shape;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Shape.Slot;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** JSON Schema (2020-12) of a record: what may be asked, in every unit, or what is answered, in the fixed ones. */
public final class Schema {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private final boolean asked;

    private Schema(boolean asked) {
        this.asked = asked;
    }

    public static ObjectNode asked(Class<? extends Record> type) {
        return new Schema(true).record(type);
    }

    public static ObjectNode answered(Class<? extends Record> type) {
        return new Schema(false).record(type);
    }

    private ObjectNode record(Class<? extends Record> type) {
        var schema = typed("object");
        var properties = schema.putObject("properties");
        var required = JSON.arrayNode();
        var choices = JSON.arrayNode();
        for (var slot : Shape.of(type).slots()) {
            if (slot.inline()) {
                var inside = record(slot.shape().type());
                properties.setAll((ObjectNode) inside.get("properties"));
                if (!slot.optional()) {
                    inside.withArray("required").forEach(required::add);
                }
                inside.withArray("allOf").forEach(choices::add);
                continue;
            }
            var units = asked ? slot.units() : List.of(slot.unit());
            for (var unit : units) {
                properties.set(slot.key(unit), described(slot, unit));
            }
            if (units.size() > 1) {
                choices.add(choice(slot));
            } else if (!slot.optional()) {
                required.add(slot.key());
            }
        }
        if (!required.isEmpty()) {
            schema.set("required", required);
        }
        if (!choices.isEmpty()) {
            schema.set("allOf", choices);
        }
        return schema.put("additionalProperties", false);
    }

    /** A quantity stands in one unit: exactly once if it is needed, at most once if not. */
    private ObjectNode choice(Slot slot) {
        var choice = JSON.objectNode();
        var one = choice.putArray("oneOf");
        slot.keys().forEach(key -> one.add(requires(key)));
        if (slot.optional()) {
            var any = JSON.arrayNode();
            slot.keys().forEach(key -> any.add(requires(key)));
            var none = JSON.objectNode();
            none.putObject("not").set("anyOf", any);
            one.add(none);
        }
        return choice;
    }

    private static ObjectNode requires(String key) {
        var schema = JSON.objectNode();
        schema.putArray("required").add(key);
        return schema;
    }

    private ObjectNode described(Slot slot, Unit unit) {
        var schema = value(slot.type());
        var words = slot.words();
        if (unit.kind() != Kind.NUMBER) {
            words = (words + " In " + (unit.symbol().isEmpty() ? "parts of 1" : unit.symbol())).strip()
                    + basis(slot.of());
        }
        return words.isEmpty() ? schema : schema.put("description", words);
    }

    private static String basis(String of) {
        return switch (of) {
            case "" -> ".";
            case "dm" -> " of dry matter.";
            case "bw" -> " of body weight.";
            default -> " of " + of + ".";
        };
    }

    private ObjectNode value(Type type) {
        if (type == double.class || type == Double.class) {
            return typed("number");
        }
        if (type == int.class || type == Integer.class) {
            return typed("integer");
        }
        if (type == boolean.class || type == Boolean.class) {
            return typed("boolean");
        }
        if (type == String.class) {
            return typed("string");
        }
        if (type == LocalDate.class) {
            return typed("string").put("format", "date");
        }
        if (type == ObjectNode.class) {
            return typed("object");
        }
        var element = Shape.inside(type, List.class);
        if (element != null) {
            var schema = typed("array");
            schema.set("items", value(element));
            return schema;
        }
        var entry = Shape.inside(type, Map.class);
        if (entry != null) {
            var schema = typed("object");
            schema.set("additionalProperties", value(entry));
            return schema;
        }
        var raw = (Class<?>) type;
        return raw.isEnum() ? constants(raw) : record(raw.asSubclass(Record.class));
    }

    private static ObjectNode constants(Class<?> type) {
        var schema = typed("string");
        ArrayNode ids = schema.putArray("enum");
        Arrays.stream(type.getEnumConstants()).forEach(c -> ids.add(Shape.id((Enum<?>) c)));
        return schema;
    }

    private static ObjectNode typed(String type) {
        return JSON.objectNode().put("type", type);
    }
}
