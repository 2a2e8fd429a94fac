package haywright.app.document;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import haywright.sampling.field.Polygon;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Reads what {@link RecordForm} writes. Every wrong field is named with its path, not only the first. Texts, lists and
 * maps that are left out are empty, and a yes-or-no that is left out is no; numbers, dates and choices are never
 * guessed.
 */
final class RecordReader {
    private static final int MOST_NAMED = 20;

    private final List<Problem> problems = new ArrayList<>();
    /** How many more there are than are named. */
    private int beyond;

    private RecordReader() {}

    static <T extends Record> T read(JsonNode node, Class<T> type) {
        var reader = new RecordReader();
        var value = reader.readRecord(node, type, "", null);
        if (value == null) {
            throw new Refused(reader.few());
        }
        return type.cast(value);
    }

    /** Nobody reads a hundred thousand of them; usually one slip made them all. */
    private List<Problem> few() {
        if (beyond > 0) {
            problems.add(new Problem("document", "and " + beyond + " more", "these are like them", "Fix those first."));
        }
        return problems;
    }

    private void add(Supplier<Problem> problem) {
        if (problems.size() < MOST_NAMED) {
            problems.add(problem.get());
        } else {
            beyond++;
        }
    }

    /** Null where it was refused; the reason is in {@link #problems}. */
    private @Nullable Object readValue(JsonNode node, Type type, String path) {
        if (type instanceof ParameterizedType generic) {
            var parts = generic.getActualTypeArguments();
            return generic.getRawType() == List.class
                    ? readList(node, parts[0], path)
                    : readMap(node, parts[0], parts[1], path);
        }
        var raw = (Class<?>) type;
        if (raw == Polygon.class) {
            return readPolygon(node, path);
        } else if (raw.isRecord()) {
            return readRecord(node, raw, path, null);
        } else if (raw.isSealed()) {
            return readKind(node, raw, path);
        } else if (raw.isEnum()) {
            return readChoice(node, raw, path);
        } else if (raw == String.class) {
            return readText(node, path);
        } else if (raw == boolean.class || raw == Boolean.class) {
            return node.isBoolean() ? node.booleanValue() : refuse(path, node, "this is true or false", "Which is it?");
        } else if (raw == int.class || raw == Integer.class) {
            return node.isNumber() && node.canConvertToInt() && node.doubleValue() == node.intValue()
                    ? node.intValue()
                    : refuse(path, node, "this is a whole number", "How many?");
        } else if (raw == double.class || raw == Double.class) {
            return node.isNumber() && Double.isFinite(node.doubleValue())
                    ? node.doubleValue()
                    : refuse(path, node, "this is a number", "Write it without quotes, with a point for decimals.");
        } else if (raw == LocalDate.class) {
            return readDate(node, path);
        } else if (raw == UUID.class) {
            return readId(node.isTextual() ? node.textValue() : "", node, path);
        }
        throw new IllegalStateException("documents cannot hold a " + type);
    }

    private @Nullable Object readText(JsonNode node, String path) {
        if (!node.isTextual()) {
            return refuse(path, node, "this is a text", "Put it in quotes.");
        }
        return node.textValue().indexOf('\0') < 0
                ? node.textValue()
                : refuse(path, node, "it has a character in it that nobody can type (NUL)", "Take out the \\u0000.");
    }

    private @Nullable Object readRecord(JsonNode node, Class<?> type, String path, @Nullable UUID key) {
        if (!node.isObject()) {
            return refuse(path, node, "this is an object in { }", "Compare it with an exported ranch.");
        }
        int before = problems.size() + beyond;
        var shape = Shape.of(type);
        var parts = shape.parts().subList(key == null ? 0 : 1, shape.parts().size());
        var keys = shape.keys().subList(key == null ? 0 : 1, shape.keys().size());
        for (var name : (Iterable<String>) node::fieldNames) {
            if (!keys.contains(name) && !(name.equals("kind") && shape.kind() != null)) {
                add(() -> new Problem(at(path, name), name, "this key is not known here", Spelling.isIt(name, keys)));
            }
        }
        var arguments = new ArrayList<@Nullable Object>();
        if (key != null) {
            arguments.add(key);
        }
        for (var part : parts) {
            arguments.add(readPart(node.path(part.key()), part, at(path, part.key())));
        }
        return problems.size() + beyond > before ? null : build(shape, arguments, path);
    }

    private @Nullable Object readPart(JsonNode node, Shape.Part part, String path) {
        if (!node.isMissingNode() && !node.isNull()) {
            return readValue(node, part.generic(), path);
        }
        var type = part.type();
        if (part.nullable()) {
            return null;
        } else if (node.isNull()) {
            return refuse(path, node, "this cannot be empty", "Enter a value.");
        } else if (type == String.class) {
            return "";
        } else if (type == List.class) {
            return List.of();
        } else if (type == Map.class) {
            return Map.of();
        } else if (type == boolean.class) {
            return false;
        }
        return refuse(path, node, "this is missing", "Put it in; it is never guessed.");
    }

    private @Nullable Object build(Shape shape, List<@Nullable Object> arguments, String path) {
        try {
            return shape.constructor().newInstance(arguments.toArray());
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof Refused refused) {
                for (var p : refused.problems()) {
                    add(() -> new Problem(at(path, Spelling.snake(p.field())), p.value(), p.rule(), p.fix()));
                }
                return null;
            }
            throw new IllegalStateException(path, e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(path, e);
        }
    }

    private List<@Nullable Object> readList(JsonNode node, Type each, String path) {
        var list = new ArrayList<@Nullable Object>();
        if (!node.isArray()) {
            refuse(path, node, "this is a list in [ ]", "Compare it with an exported ranch.");
            return list;
        }
        for (int i = 0; i < node.size(); i++) {
            list.add(readValue(node.get(i), each, at(path, Integer.toString(i))));
        }
        return list;
    }

    private Map<Object, @Nullable Object> readMap(JsonNode node, Type keyType, Type valueType, String path) {
        var map = new LinkedHashMap<Object, @Nullable Object>();
        if (!node.isObject()) {
            refuse(path, node, "this is an object in { } with one entry for each id", "Compare it with an export.");
            return map;
        }
        for (var entry : node.properties()) {
            var here = at(path, entry.getKey());
            Object key = keyType == String.class ? entry.getKey() : readId(entry.getKey(), node, here);
            if (key == null) {
                continue;
            }
            boolean keyed = valueType instanceof Class<?> c
                    && c.isRecord()
                    && Shape.of(c).keyed();
            var value = keyed
                    ? readRecord(entry.getValue(), (Class<?>) valueType, here, (UUID) key)
                    : readValue(entry.getValue(), valueType, here);
            if (map.putIfAbsent(key, value) != null) {
                refuse(here, entry.getValue(), "this id is here twice", "Give one of the two another id.");
            }
        }
        return map;
    }

    private @Nullable Object readPolygon(JsonNode node, String path) {
        if (!node.path("type").asText().equals("Polygon")) {
            return refuse(at(path, "type"), node.path("type"), "a boundary is a GeoJSON Polygon", "Export it as one.");
        }
        var inner = node.deepCopy();
        ((ObjectNode) inner).remove("type");
        return readRecord(inner, Polygon.class, path, null);
    }

    private @Nullable Object readKind(JsonNode node, Class<?> sealed, String path) {
        var kinds = Spelling.kinds(sealed);
        var chosen = kinds.get(node.path("kind").asText());
        return chosen != null
                ? readRecord(node, chosen, path, null)
                : refuse(
                        at(path, "kind"),
                        node.path("kind"),
                        "the kind is one of " + String.join(", ", kinds.keySet()),
                        Spelling.isIt(node.path("kind").asText(), kinds.keySet()));
    }

    private @Nullable Object readChoice(JsonNode node, Class<?> type, String path) {
        var choices = Spelling.choices(type);
        var chosen = choices.get(node.asText());
        return chosen != null && node.isTextual()
                ? chosen
                : refuse(
                        path,
                        node,
                        choices.size() > 12
                                ? "this word is not known here"
                                : "one of " + String.join(", ", choices.keySet()),
                        Spelling.isIt(node.asText(), choices.keySet()));
    }

    private @Nullable Object readDate(JsonNode node, String path) {
        try {
            return LocalDate.parse(node.isTextual() ? node.textValue() : "");
        } catch (DateTimeParseException e) {
            return refuse(path, node, "a date is year-month-day, like 2026-12-01", "Which day is meant?");
        }
    }

    private @Nullable Object readId(String text, JsonNode node, String path) {
        try {
            var id = UUID.fromString(text);
            if (id.toString().equalsIgnoreCase(text)) {
                return id;
            }
        } catch (IllegalArgumentException e) {
            // said below, with the path
        }
        return refuse(
                path,
                text.isEmpty() ? node : TextNode.valueOf(text),
                "an id is a UUID, 36 characters of 0 to 9, a to f and dashes",
                "Copy it from an exported ranch, or make a new one.");
    }

    private @Nullable Object refuse(String path, JsonNode node, String rule, String fix) {
        add(() -> {
            var text = node instanceof MissingNode ? "nothing" : node.toString();
            return new Problem(path, text.length() > 60 ? text.substring(0, 57) + "…" : text, rule, fix);
        });
        return null;
    }

    private static String at(String path, String name) {
        return path.isEmpty() ? name : path + "/" + name;
    }
}
