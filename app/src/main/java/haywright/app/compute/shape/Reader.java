package haywright.app.compute.shape;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.compute.shape.Shape.Slot;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Reads a record from JSON and collects everything that is wrong with it, so that one answer names all of it. An unknown
 * key, a wrong type, a number that is none, one quantity in two units: each is refused in words.
 */
public final class Reader {
    private static final int SHOWN = 60;

    // No amount of this trade lies outside, and what is worked out from amounts inside stays within a double. What is
    // left over when a program subtracts equal amounts is above the smallest.
    private static final double LARGEST = 1e12;
    private static final double SMALLEST = 1e-30;

    private final List<Problem> problems = new ArrayList<>();

    private Reader() {}

    /** @throws Refused with every problem found */
    public static <R extends Record> R read(Class<R> type, JsonNode json) {
        var reader = new Reader();
        var record = reader.record(type, json, "");
        Refused.unlessEmpty(reader.problems);
        return type.cast(Objects.requireNonNull(record, "no problem and no record"));
    }

    private @Nullable Object record(Class<? extends Record> type, JsonNode json, String path) {
        if (!json.isObject()) {
            return wrong(path, json, "an object in curly brackets is needed here", "Put { } around the keys.");
        }
        int before = problems.size();
        var shape = Shape.of(type);
        unknownKeys(shape, json, path);
        var record = known(shape, json, path);
        return problems.size() > before ? null : record;
    }

    /** A record whose keys have been looked through. */
    private @Nullable Object known(Shape shape, JsonNode json, String path) {
        int before = problems.size();
        var values = new ArrayList<@Nullable Object>();
        for (var slot : shape.slots()) {
            values.add(slot.inline() ? known(slot.shape(), json, path) : slot(slot, json, path));
        }
        return problems.size() > before ? null : build(shape, values, json, path);
    }

    private void unknownKeys(Shape shape, JsonNode json, String path) {
        var known = shape.keys();
        json.fieldNames().forEachRemaining(key -> {
            if (!known.contains(key)) {
                problems.add(new Problem(
                        Named.at(path, key),
                        shown(json.get(key)),
                        "there is no key of this name here",
                        Nearest.to(key, known)
                                .map("Did you mean %s?"::formatted)
                                .orElse("Leave it out.")));
            }
        });
    }

    private @Nullable Object slot(Slot slot, JsonNode json, String path) {
        var given =
                slot.units().stream().filter(unit -> json.has(slot.key(unit))).toList();
        if (given.size() > 1) {
            var keys = given.stream().map(slot::key).toList();
            return wrong(
                    Named.at(path, keys.get(0)),
                    json.get(keys.get(0)),
                    "the same quantity is given twice, as " + String.join(" and ", keys),
                    "Keep one of them.");
        }
        if (given.isEmpty() || json.get(slot.key(given.get(0))).isNull()) {
            if (!slot.optional()) {
                problems.add(new Problem(
                        Named.at(path, slot.key()),
                        "nothing",
                        "it is needed for the answer",
                        "Add " + oneOf(slot) + "."));
            }
            return nothing(slot);
        }
        var unit = given.get(0);
        var key = slot.key(unit);
        var value = value(slot.type(), json.get(key), Named.at(path, key), v -> unit.to(slot.unit(), v));
        return value == null ? nothing(slot) : wrapped(slot, value);
    }

    private static String oneOf(Slot slot) {
        var keys = slot.keys();
        return keys.size() == 1 ? keys.get(0) : keys.get(0) + " (or " + keys.get(1) + ", or another unit)";
    }

    private interface Convert {
        double toOwnUnit(double typed);
    }

    private @Nullable Object value(Type type, JsonNode json, String path, Convert convert) {
        if (type == double.class || type == Double.class) {
            return number(json, path, convert);
        }
        if (type == int.class || type == Integer.class) {
            return json.isIntegralNumber() && json.canConvertToInt()
                    ? (Object) json.intValue()
                    : wrong(
                            path,
                            json,
                            "a whole number is needed here",
                            "Write it without a point and without quotes.");
        }
        if (type == boolean.class || type == Boolean.class) {
            return json.isBoolean()
                    ? (Object) json.booleanValue()
                    : wrong(path, json, "true or false is needed here", "Write true or false without quotes.");
        }
        if (type == String.class) {
            return json.isTextual() ? json.textValue() : wrong(path, json, "text is needed here", "Put it in quotes.");
        }
        if (type == LocalDate.class) {
            return date(json, path);
        }
        if (type == ObjectNode.class) {
            return json.isObject()
                    ? json
                    : wrong(path, json, "an object in curly brackets is needed here", "Put { } around the keys.");
        }
        var element = Shape.inside(type, List.class);
        if (element != null) {
            return list(element, json, path, convert);
        }
        var entry = Shape.inside(type, Map.class);
        if (entry != null) {
            return map(entry, json, path, convert);
        }
        var raw = (Class<?>) type;
        return raw.isEnum() ? constant(raw, json, path) : record(raw.asSubclass(Record.class), json, path);
    }

    private @Nullable Object number(JsonNode json, String path, Convert convert) {
        if (!json.isNumber()) {
            return wrong(path, json, "a number is needed here", "Write it without quotes and without a unit.");
        }
        double value = convert.toOwnUnit(json.doubleValue());
        if (!(Math.abs(value) <= LARGEST)) {
            return wrong(path, json, "the number is too large to be meant", "Is a digit too many in it?");
        }
        return value != 0 && Math.abs(value) < SMALLEST
                ? wrong(path, json, "the number is too close to zero to be meant", "Write 0 if it is none.")
                : (Object) value;
    }

    private @Nullable Object date(JsonNode json, String path) {
        try {
            return LocalDate.parse(json.asText());
        } catch (DateTimeParseException e) {
            return wrong(path, json, "a date is needed here", "Write it as 2026-11-25: year, month, day.");
        }
    }

    private @Nullable Object constant(Class<?> type, JsonNode json, String path) {
        var ids = Arrays.stream(type.getEnumConstants())
                .map(c -> Shape.id((Enum<?>) c))
                .toList();
        var asked = json.asText().replace('-', '_');
        for (int i = 0; i < ids.size(); i++) {
            if (json.isTextual() && ids.get(i).replace('-', '_').equalsIgnoreCase(asked)) {
                return type.getEnumConstants()[i];
            }
        }
        return wrong(
                path,
                json,
                "one of these is needed here: " + String.join(", ", ids),
                Nearest.to(json.asText(), ids)
                        .map("Did you mean %s?"::formatted)
                        .orElse("Choose one of them."));
    }

    private @Nullable Object list(Type element, JsonNode json, String path, Convert convert) {
        if (!json.isArray()) {
            return wrong(path, json, "a list is needed here", "Put [ ] around it.");
        }
        var list = new ArrayList<Object>();
        for (int i = 0; i < json.size(); i++) {
            var value = value(element, json.get(i), path + "[" + i + "]", convert);
            if (value != null) {
                list.add(value);
            }
        }
        return List.copyOf(list);
    }

    private @Nullable Object map(Type entry, JsonNode json, String path, Convert convert) {
        if (!json.isObject()) {
            return wrong(path, json, "names with their values are needed here", "Write {\"name\": value}.");
        }
        var map = new LinkedHashMap<String, Object>();
        json.fields().forEachRemaining(field -> {
            var value = value(entry, field.getValue(), Named.at(path, field.getKey()), convert);
            if (value != null) {
                map.put(field.getKey(), value);
            }
        });
        return map;
    }

    private @Nullable Object build(Shape shape, List<@Nullable Object> values, JsonNode json, String path) {
        try {
            var types = Arrays.stream(shape.type().getRecordComponents())
                    .map(c -> c.getType())
                    .toArray(Class<?>[]::new);
            var constructor = shape.type().getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values.toArray());
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof Refused refused) {
                refused.problems().forEach(p -> problems.add(Named.named(p, shape, json, path)));
                return null;
            }
            throw new IllegalStateException(shape.type() + " could not be made", e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(shape.type() + " could not be made", e);
        }
    }

    private static @Nullable Object nothing(Slot slot) {
        var type = slot.component().getType();
        if (type == OptionalDouble.class) {
            return OptionalDouble.empty();
        }
        return type == Optional.class ? Optional.empty() : null;
    }

    private static Object wrapped(Slot slot, Object value) {
        var type = slot.component().getType();
        if (type == OptionalDouble.class) {
            return OptionalDouble.of((Double) value);
        }
        return type == Optional.class ? Optional.of(value) : value;
    }

    private @Nullable Object wrong(String path, JsonNode json, String rule, String fix) {
        problems.add(new Problem(path.isEmpty() ? "json" : path, shown(json), rule, fix));
        return null;
    }

    private static String shown(JsonNode json) {
        var text = json.isMissingNode() ? "nothing" : json.toString();
        return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "…";
    }
}
