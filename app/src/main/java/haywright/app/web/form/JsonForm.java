package haywright.app.web.form;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.document.BoundedJson;
import haywright.app.document.Spelling;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The boxes of a form filled in from JSON, which a script sends with the key of the folder to the same address. A key is a
 * box's name in snake_case; an amount has its unit behind it ({@code weight_lb}, {@code weight_kg}) or in its text
 * ({@code "1,300 lb"}). What is left out stays as it was; null empties a box. A question is answered by its name under
 * {@code confirm}. From there on it is read and judged like what was typed.
 */
public final class JsonForm {
    private static final String CONFIRM = "confirm";
    private static final int LONGEST_TEXT = 100_000;
    private static final long MOST_PARTS = 10_000;

    private JsonForm() {}

    /** @param known what stands in the boxes by now; empty for what is new */
    public static Form posted(Page page, String key, Fields<?> fields, Map<String, String> known) {
        if (!page.http().isJson()) {
            return page.posted(key);
        }
        var typed = new LinkedHashMap<String, List<String>>();
        known.forEach((name, value) -> typed.put(name, List.of(value)));
        var form = page.posted(key, typed);
        fill(form, fields, page.http().body(), typed);
        return form;
    }

    static void fill(Form form, Fields<?> fields, String body, Map<String, List<String>> typed) {
        JsonNode json;
        try {
            json = BoundedJson.mapper(LONGEST_TEXT, MOST_PARTS).readTree(body);
        } catch (JsonProcessingException e) {
            var problem = BoundedJson.problem("json", e);
            form.refuse(problem.field(), problem.value(), problem.rule(), problem.fix());
            return;
        }
        if (json == null || !json.isObject()) {
            form.refuse("json", shown(json), "an object in curly brackets belongs here", "Put { } around the keys.");
            return;
        }
        var boxes = keys(fields);
        var given = new HashSet<String>();
        for (var entry : json.properties()) {
            var box = boxes.get(entry.getKey());
            if (entry.getKey().equals(CONFIRM)) {
                typed.put(CONFIRM, texts(entry.getValue()));
            } else if (box == null) {
                form.refuse(
                        entry.getKey(),
                        shown(entry.getValue()),
                        "unknown key",
                        Spelling.isIt(entry.getKey(), boxes.keySet()));
            } else {
                box.take(form, entry.getKey(), entry.getValue(), typed, given);
            }
        }
    }

    /** @param unit that its key has; null where the key has none */
    private record Box(Field field, @Nullable Unit unit) {
        void take(Form form, String key, JsonNode value, Map<String, List<String>> typed, Set<String> given) {
            if (value.isObject() || value.isArray() || unit != null && !value.isNumber() && !value.isNull()) {
                form.refuse(
                        key,
                        shown(value),
                        unit == null ? "a text, a number or true or false belongs here" : "a number belongs here",
                        unit == null ? "Write the value alone." : "The unit is in the key.");
                return;
            }
            if (!given.add(field.name())) {
                form.refuse(key, shown(value), "the same figure comes twice", "Keep one of them.");
            }
            var text = value.isNull()
                    ? ""
                    : value.isBoolean()
                            ? value.booleanValue() ? "yes" : field.kind() == Field.Kind.TICK ? "" : "no"
                            : value.asText() + (unit == null ? "" : " " + unit.symbol());
            typed.put(field.name(), List.of(text));
        }
    }

    private static Map<String, Box> keys(Fields<?> fields) {
        var keys = new LinkedHashMap<String, Box>();
        for (var field : fields.fields()) {
            var name = Spelling.snake(field.name());
            keys.put(name, new Box(field, null));
            var kind = field.ask().unit().kind();
            if (kind != Kind.NUMBER) {
                Unit.of(kind).forEach(unit -> keys.put(name + "_" + unit.suffix(), new Box(field, unit)));
            }
        }
        return keys;
    }

    private static List<String> texts(JsonNode list) {
        var texts = new ArrayList<String>();
        list.forEach(one -> texts.add(one.asText()));
        return texts;
    }

    private static String shown(@Nullable JsonNode value) {
        var text = value == null ? "nothing" : value.toString();
        return text.length() <= 60 ? text : text.substring(0, 57) + "…";
    }
}
