package haywright.app.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A change to whole entities of a document: {@code lots/UUID}, {@code settings}, {@code name} and so on, each with what
 * stands there afterwards; JSON null takes it away.
 *
 * @param format of the documents that it changes; it fits no other
 * @param changes by path
 */
public record Patch(int format, Map<String, JsonNode> changes) {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    public Patch {
        changes = Collections.unmodifiableMap(new LinkedHashMap<>(changes));
    }

    /** What turns one document into the other. */
    public static Patch between(ObjectNode before, ObjectNode after) {
        var changes = new LinkedHashMap<String, JsonNode>();
        for (var path : union(paths(before), paths(after))) {
            var now = at(after, path);
            if (!at(before, path).equals(now)) {
                changes.put(path, now);
            }
        }
        return new Patch(after.path("format").intValue(), changes);
    }

    /** What turns one ranch into the other. */
    public static Patch between(Ranch before, Ranch after) {
        var documents = new RanchDocument();
        return between(documents.tree(before), documents.tree(after));
    }

    public Set<String> paths() {
        return changes.keySet();
    }

    public boolean isEmpty() {
        return changes.isEmpty();
    }

    /**
     * The document with the change made; the one given stays as it is.
     *
     * @throws Refused when the document has another format
     */
    public ObjectNode apply(ObjectNode document) {
        if (document.path("format").intValue() != format) {
            throw new Refused(
                    "format",
                    "format " + format,
                    "this change was made by an older Haywright and no longer fits the document",
                    "Change it by hand.");
        }
        var changed = document.deepCopy();
        changes.forEach((path, value) -> {
            int slash = path.indexOf('/');
            var parent = slash < 0 ? changed : changed.withObject("/" + path.substring(0, slash));
            var key = path.substring(slash + 1);
            if (value.isNull()) {
                parent.remove(key);
            } else {
                parent.set(key, value.deepCopy());
            }
        });
        return changed;
    }

    /** What takes this change back, when it is made to this document. */
    public Patch inverse(ObjectNode before) {
        var changes = new LinkedHashMap<String, JsonNode>();
        paths().forEach(path -> changes.put(path, at(before, path).deepCopy()));
        return new Patch(format, changes);
    }

    /** The paths of this change under which two documents differ. */
    public List<String> differing(ObjectNode one, ObjectNode other) {
        return paths().stream()
                .filter(path -> !at(one, path).equals(at(other, path)))
                .toList();
    }

    /** What stands at a path; JSON null where there is nothing. */
    public static JsonNode at(ObjectNode document, String path) {
        var found = document.at("/" + path);
        return found.isMissingNode() ? JSON.nullNode() : found;
    }

    /** As the store keeps it. */
    public String json() {
        var json = JSON.objectNode().put("format", format);
        changes.forEach(json.putObject("changes")::set);
        return json.toString();
    }

    /**
     * @param json as {@link #json()} writes it
     * @throws Refused when it is damaged
     */
    public static Patch of(String json) {
        try {
            var tree = MAPPER.readTree(json);
            if (tree.path("format").isInt() && tree.path("changes").isObject()) {
                var changes = new LinkedHashMap<String, JsonNode>();
                tree.path("changes").properties().forEach(e -> changes.put(e.getKey(), e.getValue()));
                return new Patch(tree.path("format").intValue(), changes);
            }
        } catch (JsonProcessingException e) {
            // said below
        }
        throw new Refused(
                "history",
                "a change",
                "what is kept of a change in the history is damaged, so nothing can be taken back past it",
                "Open the page again and change it by hand.");
    }

    private static List<String> paths(ObjectNode document) {
        var paths = new ArrayList<String>();
        for (var component : Ranch.class.getRecordComponents()) {
            var name = Spelling.snake(component.getName());
            if (component.getType() == Map.class) {
                document.path(name).fieldNames().forEachRemaining(id -> paths.add(name + "/" + id));
            } else {
                paths.add(name);
            }
        }
        return paths;
    }

    private static Set<String> union(List<String> one, List<String> other) {
        var all = new LinkedHashSet<>(one);
        all.addAll(other);
        return all;
    }
}
