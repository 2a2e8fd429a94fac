package haywright.app.web.form;

import haywright.app.web.Form;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** What one component of a record is asked by: one box, or several that belong together. */
public interface Part {
    /** The record component that it becomes. */
    String component();

    /** Its boxes, in the order of the page. */
    List<Field> fields();

    /** Its boxes as they are shown: what was typed may have added to their choices. */
    default List<Field> fields(Form form) {
        return fields();
    }

    /** Whether its boxes are short and stand side by side. */
    default boolean isRow() {
        return false;
    }

    /** Null where nothing was typed; a stand-in where the form has noted a problem. */
    @Nullable
    Object read(Form form, Class<?> type, LocalDate today);

    /** Puts the boxes' texts beside their names. */
    void know(Map<String, String> known, @Nullable Object value);

    /** A single box. */
    record One(Field field) implements Part {
        @Override
        public String component() {
            return field.name();
        }

        @Override
        public List<Field> fields() {
            return List.of(field);
        }

        @Override
        public @Nullable Object read(Form form, Class<?> type, LocalDate today) {
            return field.read(form, type, today);
        }

        @Override
        public void know(Map<String, String> known, @Nullable Object value) {
            known.put(field.name(), field.typed(value));
        }
    }

    /**
     * A record of its own, whose boxes are filled in all together or not at all: the two ends of a range.
     *
     * @param fix what to do where one of them is left empty
     */
    record Together(String component, Fields<? extends Record> inside, String fix) implements Part {
        @Override
        public List<Field> fields() {
            return inside.fields();
        }

        @Override
        public @Nullable Object read(Form form, Class<?> type, LocalDate today) {
            var empty =
                    fields().stream().filter(field -> form.isEmpty(field.ask())).toList();
            fields().forEach(field -> form.text(field.ask())); // so that a message can name each of them
            if (empty.size() == fields().size()) {
                return null;
            }
            empty.forEach(field -> form.refuse(field.name(), "", "it goes with the one beside it", fix));
            return empty.isEmpty() ? inside.part(form, Map.of(), today).orElse(null) : null;
        }

        @Override
        public void know(Map<String, String> known, @Nullable Object value) {
            if (value instanceof Record record) {
                known.putAll(inside.known(record));
            }
        }
    }
}
