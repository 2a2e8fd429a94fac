package haywright.app.document;

import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a record looks like in a document. Looked up once a class, because asking the platform for annotations takes
 * longer than all the rest of reading.
 *
 * @param keyed whether the first part is the id that a map holds it by
 * @param kind as a document writes it; null where the record is not one of several kinds
 * @param keys of all parts
 */
record Shape(
        Constructor<?> constructor,
        List<Part> parts,
        boolean keyed,
        @Nullable String kind,
        List<String> keys) {
    private static final ClassValue<Shape> SHAPES = new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
            return look(type);
        }
    };

    /** @param key as a document writes it */
    record Part(String key, Class<?> type, Type generic, boolean nullable, Method accessor) {}

    static Shape of(Class<?> type) {
        return SHAPES.get(type);
    }

    private static Shape look(Class<?> type) {
        var components = type.getRecordComponents();
        var parts = Arrays.stream(components)
                .map(c -> new Part(
                        Spelling.snake(c.getName()),
                        c.getType(),
                        c.getGenericType(),
                        c.getAnnotatedType().isAnnotationPresent(Nullable.class),
                        c.getAccessor()))
                .toList();
        boolean keyed = components.length > 0 && components[0].getType() == UUID.class;
        try {
            return new Shape(
                    type.getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new)),
                    parts,
                    keyed,
                    Arrays.stream(type.getInterfaces()).anyMatch(Class::isSealed)
                            ? Spelling.snake(type.getSimpleName())
                            : null,
                    parts.stream().map(Part::key).toList());
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(type.toString(), e);
        }
    }
}
