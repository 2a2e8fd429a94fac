package haywright.app.document;

import haywright.cattle.RequirementSystem;
import haywright.quantity.Unit;
import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;

/** How names of the code are written in a document. */
final class Spelling {
    private Spelling() {}

    /** {@code replacementPrice} and {@code ReplacementPrice} as {@code replacement_price}. */
    static String snake(String camel) {
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

    /** The known word that takes the fewest single-letter changes to reach. */
    static String nearest(String word, Collection<String> known) {
        return known.stream()
                .min(Comparator.comparingInt(k -> changes(word.toLowerCase(Locale.ROOT), k)))
                .orElse("none");
    }

    private static int changes(String a, String b) {
        var above = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            above[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            var row = new int[b.length() + 1];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
            }
            above = row;
        }
        return above[b.length()];
    }
}
