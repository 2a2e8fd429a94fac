package haywright.app.web.form;

import haywright.app.web.Form;
import haywright.workings.Refused;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The boxes that a record is asked by, in the sections of its page. A component without a box is handed in when the
 * record is read, or stays as it was.
 *
 * @param <R> what is read
 */
public final class Fields<R extends Record> {
    private final Class<R> type;
    private final List<Section> sections = new ArrayList<>();

    private Fields(Class<R> type) {
        this.type = type;
    }

    /**
     * @param legend empty where the page's own heading is enough
     * @param folded whether it is shut until somebody opens it or something in it has to be fixed
     */
    public record Section(String legend, boolean folded, List<Part> parts) {
        public List<Field> fields() {
            return parts.stream().flatMap(part -> part.fields().stream()).toList();
        }

        /** As they are shown. */
        public List<Field> fields(Form form) {
            return parts.stream().flatMap(part -> part.fields(form).stream()).toList();
        }

        /** Something in it is wrong or asked about, so it may not be shut. */
        public boolean isOpen(Form form) {
            return !folded || form.isAsking(fields().stream().map(Field::ask).toList());
        }

        /** Something in it was entered. */
        public boolean isFilled(Form form) {
            return fields().stream().anyMatch(field -> !form.isEmpty(field.ask()));
        }
    }

    public static <R extends Record> Fields<R> of(Class<R> type) {
        return new Fields<>(type);
    }

    /** A section that is open. */
    public Fields<R> section(String legend, Object... parts) {
        return add(legend, false, parts);
    }

    /** A section that is shut at first: what most people need not fill in. */
    public Fields<R> folded(String legend, Object... parts) {
        return add(legend, true, parts);
    }

    private Fields<R> add(String legend, boolean folded, Object... parts) {
        var list = Arrays.stream(parts)
                .map(part -> part instanceof Field field ? new Part.One(field) : (Part) part)
                .toList();
        for (var part : list) {
            component(part.component()); // a slip in a name is found when the class is loaded, not when somebody saves
        }
        sections.add(new Section(legend, folded, list));
        return this;
    }

    public List<Section> sections() {
        return List.copyOf(sections);
    }

    public List<Field> fields() {
        return sections.stream().flatMap(section -> section.fields().stream()).toList();
    }

    private List<Part> parts() {
        return sections.stream().flatMap(section -> section.parts().stream()).toList();
    }

    // From a record to its form, and back

    /** Whether something is what they are the boxes of. */
    public boolean isOf(Object record) {
        return type.isInstance(record);
    }

    /** Null where it is something else. */
    public @Nullable R as(@Nullable Object record) {
        return type.isInstance(record) ? type.cast(record) : null;
    }

    /** The text of each box. @param record what they are the boxes of */
    public Map<String, String> known(Record record) {
        var known = new LinkedHashMap<String, String>();
        parts().forEach(part -> part.know(known, value(component(part.component()), record)));
        return known;
    }

    /**
     * What was typed, as a record, or nothing where anything is wrong with it; then the form says what. What is only asked
     * about is read too, so that more can be asked of it: keep it once {@link Form#hasProblems} says that nothing is open.
     *
     * @param given components that have no box: an id, a kind
     * @param before the record as it was, for what is neither asked nor given and for what was asked about then; null for
     *     a new one
     * @param today that dates without a year are understood by
     */
    public Optional<R> read(Form form, Map<String, Object> given, @Nullable R before, LocalDate today) {
        var read = typed(form, given, before, today);
        for (var part : parts()) {
            if (part instanceof Part.One one) {
                var was = before == null ? null : value(component(one.component()), before);
                one.field().doubt(form, was, read.get(one.component()));
            }
        }
        return form.part(() -> make(read));
    }

    Optional<R> part(Form form, Map<String, Object> given, LocalDate today) {
        var read = typed(form, given, null, today);
        return form.part(() -> make(read));
    }

    private Map<String, @Nullable Object> typed(
            Form form, Map<String, Object> given, @Nullable R before, LocalDate today) {
        var read = new LinkedHashMap<String, @Nullable Object>();
        if (before != null) {
            for (var component : type.getRecordComponents()) {
                read.put(component.getName(), value(component, before));
            }
        }
        for (var part : parts()) {
            if (given.containsKey(part.component())) {
                part.fields().forEach(field -> form.text(field.ask())); // so that a message can name it
            } else {
                read.put(
                        part.component(),
                        part.read(form, component(part.component()).getType(), today));
            }
        }
        read.putAll(given);
        return read;
    }

    private R make(Map<String, @Nullable Object> read) {
        var components = type.getRecordComponents();
        try {
            return type.getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new))
                    .newInstance(Arrays.stream(components)
                            .map(component -> read.get(component.getName()))
                            .toArray());
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof Refused refused) {
                throw refused;
            }
            throw new IllegalStateException(type.toString(), e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(type.toString(), e);
        }
    }

    private RecordComponent component(String name) {
        return Arrays.stream(type.getRecordComponents())
                .filter(component -> component.getName().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(type + " has no component " + name));
    }

    private static @Nullable Object value(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component.toString(), e);
        }
    }
}
