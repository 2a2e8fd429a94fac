package haywright.app.web;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.app.store.SaveAnswer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Two people, or two windows, changed the same thing: both versions side by side, to choose from.
 *
 * @param action where the form goes again
 * @param rev the revision that the form was made from
 * @param upon the revision that is chosen upon
 * @param typed the whole form, sent again with the choice
 */
public record TwoVersions(
        String action, long rev, long upon, String back, Map<String, List<String>> typed, List<Entity> entities) {
    /** @param path the entity in the document: {@code lots/UUID} */
    public record Entity(String path, String name, List<Row> rows) {}

    /** One line in which they differ. */
    public record Row(String what, String mine, String theirs) {}

    /** Hidden on the page: each entity that has to be chosen, and the revision that the choice is made upon. */
    static final String BETWEEN = "between";

    static final String UPON = "upon";

    static TwoVersions of(Page page, long base, Form form, SaveAnswer.Conflict conflict, String then) {
        var documents = new RanchDocument();
        var mine = documents.tree(conflict.mine());
        var theirs = documents.tree(conflict.theirs());
        var entities = conflict.paths().stream()
                .map(path -> entity(path, Patch.at(mine, path), Patch.at(theirs, path)))
                .toList();
        return new TwoVersions(page.http().path(), base, conflict.rev(), page.at(then), form.typed(), entities);
    }

    private static Entity entity(String path, JsonNode mine, JsonNode theirs) {
        var left = new LinkedHashMap<String, String>();
        var right = new LinkedHashMap<String, String>();
        flatten("", mine, left);
        flatten("", theirs, right);
        var names = new LinkedHashMap<>(left);
        names.putAll(right);
        var rows = new ArrayList<Row>();
        for (var name : names.keySet()) {
            var a = left.getOrDefault(name, "nothing");
            var b = right.getOrDefault(name, "nothing");
            if (!a.equals(b)) {
                rows.add(new Row(name.isEmpty() ? "whole" : name, a, b));
            }
        }
        var kind = words(path.replaceAll("/.*", ""));
        var name = theirs.path("name").asText(mine.path("name").asText(""));
        return new Entity(path, name.isEmpty() ? kind : name, rows);
    }

    /** A quantity is one line: value and unit. */
    private static void flatten(String at, JsonNode node, Map<String, String> lines) {
        if (node.isNull()) {
            lines.put(at, "deleted");
        } else if (node.isObject() && node.has("value") && node.has("unit")) {
            lines.put(
                    at,
                    node.path("value").asText() + " "
                            + node.path("unit").asText().replace('_', ' '));
        } else if (node.isContainerNode()) {
            int i = 1;
            if (node.isArray()) {
                for (var each : node) {
                    flatten(at + " " + i++, each, lines);
                }
            } else {
                node.properties().forEach(e -> flatten((at + " " + words(e.getKey())).strip(), e.getValue(), lines));
            }
        } else {
            lines.put(
                    at,
                    node.isBoolean()
                            ? (node.asBoolean() ? "yes" : "no")
                            : node.asText().isBlank() ? "nothing" : node.asText());
        }
    }

    private static String words(String key) {
        return key.replace('_', ' ').toLowerCase(Locale.ROOT);
    }
}
