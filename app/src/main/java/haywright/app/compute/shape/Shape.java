package haywright.app.compute.shape;

import haywright.quantity.Kind;
import haywright.quantity.Unit;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What a record looks like in JSON: its slots in order. */
public record Shape(Class<? extends Record> type, List<Slot> slots) {
    public static Shape of(Class<? extends Record> type) {
        var slots = new ArrayList<Slot>();
        for (var component : type.getRecordComponents()) {
            slots.add(Slot.of(component));
        }
        return new Shape(type, List.copyOf(slots));
    }

    /** Every key that may be typed, with those of inlined records. */
    List<String> keys() {
        return slots.stream()
                .flatMap(slot -> slot.inline() ? slot.shape().keys().stream() : slot.keys().stream())
                .toList();
    }

    /**
     * One component.
     *
     * @param name the quantity without unit and basis
     * @param type the type inside an {@code Optional}, else the component's own; {@code double} for OptionalDouble
     */
    public record Slot(RecordComponent component, String name, Unit unit, String of, boolean optional, Type type) {
        public static Slot of(RecordComponent component) {
            var key = component.getAnnotation(Key.class);
            var name = key == null || key.name().isEmpty() ? snake(component.getName()) : key.name();
            var type = component.getGenericType();
            boolean optional = component.getAnnotatedType().isAnnotationPresent(Nullable.class);
            if (type == OptionalDouble.class) {
                type = double.class;
                optional = true;
            } else if (type instanceof ParameterizedType wrapped && wrapped.getRawType() == Optional.class) {
                type = wrapped.getActualTypeArguments()[0];
                optional = true;
            }
            return new Slot(
                    component,
                    name,
                    key == null ? Unit.NONE : key.value(),
                    key == null ? "" : key.of(),
                    optional,
                    type);
        }

        public boolean inline() {
            var key = component.getAnnotation(Key.class);
            return key != null && key.inline();
        }

        /** Of a component that is a record. */
        Shape shape() {
            return Shape.of(component.getType().asSubclass(Record.class));
        }

        String words() {
            var key = component.getAnnotation(Key.class);
            return key == null ? "" : key.words();
        }

        /** The key that answers are written with. */
        public String key() {
            return key(unit);
        }

        public String key(Unit in) {
            return name + (in.suffix().isEmpty() ? "" : "_" + in.suffix()) + (of.isEmpty() ? "" : "_" + of);
        }

        /** The units it may be typed in, its own first. */
        public List<Unit> units() {
            if (unit.kind() == Kind.NUMBER) {
                return List.of(unit);
            }
            var units = new ArrayList<Unit>();
            units.add(unit);
            Unit.of(unit.kind()).stream().filter(u -> u != unit).forEach(units::add);
            return units;
        }

        List<String> keys() {
            return units().stream().map(this::key).toList();
        }

        Object valueIn(Record record) {
            return call(component.getAccessor(), record);
        }
    }

    static String snake(String camel) {
        return camel.replaceAll("([a-z0-9])([A-Z])", "$1_$2").toLowerCase(Locale.ROOT);
    }

    /** The element type of a list, or the value type of a map whose keys are text. */
    public static @Nullable Type inside(Type type, Class<?> container) {
        if (type instanceof ParameterizedType p && p.getRawType() == container) {
            return p.getActualTypeArguments()[container == Map.class ? 1 : 0];
        }
        return null;
    }

    /** How an enum constant is written: its {@code id()} where it has one, else its name in lower case. */
    public static String id(Enum<?> constant) {
        try {
            return (String) call(constant.getDeclaringClass().getMethod("id"), constant);
        } catch (NoSuchMethodException e) {
            return constant.name().toLowerCase(Locale.ROOT);
        }
    }

    private static Object call(java.lang.reflect.Method method, Object on) {
        try {
            method.setAccessible(true);
            return method.invoke(on);
        } catch (InvocationTargetException | IllegalAccessException e) {
            throw new IllegalStateException(method + " could not be read", e);
        }
    }
}
