package haywright.app.document;

import haywright.cattle.RequirementSystem;
import haywright.quantity.Unit;
import haywright.workings.EditDistance;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** How names of the code are written in a document. */
public final class Spelling {
    /** Made once a class: a ranch holds a choice in almost every line, and each is looked up when it is read. */
    private static final ClassValue<Map<String, Enum<?>>> CHOICES = new ClassValue<>() {
        @Override
        protected Map<String, Enum<?>> computeValue(Class<?> type) {
            var choices = new LinkedHashMap<String, Enum<?>>();
            for (var constant : type.getEnumConstants()) {
                choices.put(id((Enum<?>) constant), (Enum<?>) constant);
            }
            return Collections.unmodifiableMap(choices);
        }
    };

    private static final ClassValue<Map<String, Class<?>>> KINDS = new ClassValue<>() {
        @Override
        protected Map<String, Class<?>> computeValue(Class<?> sealed) {
            var kinds = new LinkedHashMap<String, Class<?>>();
            for (var kind : sealed.getPermittedSubclasses()) {
                kinds.put(snake(kind.getSimpleName()), kind);
            }
            return Collections.unmodifiableMap(kinds);
        }
    };

    private Spelling() {}

    /** The constants of an enum by their words, in order. */
    static Map<String, Enum<?>> choices(Class<?> type) {
        return CHOICES.get(type);
    }

    /** What a sealed interface permits, by their words, in order. */
    static Map<String, Class<?>> kinds(Class<?> sealed) {
        return KINDS.get(sealed);
    }

    /** {@code replacementPrice} and {@code ReplacementPrice} as {@code replacement_price}. */
    public static String snake(String camel) {
        return camel.replaceAll("(?<=.)(?=[A-Z])", "_").toLowerCase(Locale.ROOT);
    }

    static String id(Enum<?> constant) {
        if (constant instanceof Unit unit) {
            return unit == Unit.NONE ? "none" : unit.suffix();
        }
        return constant instanceof RequirementSystem system
                ? system.id()
                : constant.name().toLowerCase(Locale.ROOT);
    }

    /** Asks for the known word that takes the fewest single-letter changes to reach; of a word that is near none, what to do. */
    public static String isIt(String word, Collection<String> known) {
        var small = word.toLowerCase(Locale.ROOT);
        return known.stream()
                .filter(k -> EditDistance.between(small, k.toLowerCase(Locale.ROOT))
                        <= Math.max(1, Math.min(small.length(), k.length()) / 2))
                .min(Comparator.comparingInt(k -> EditDistance.between(small, k.toLowerCase(Locale.ROOT))))
                .map("Is it “%s”?"::formatted)
                .orElse("Compare it with an exported ranch.");
    }
}
