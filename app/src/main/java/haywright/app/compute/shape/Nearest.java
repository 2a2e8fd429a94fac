package haywright.app.compute.shape;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/** The known word nearest to a mistyped one, by single-letter changes. */
public final class Nearest {
    private Nearest() {}

    public static Optional<String> to(String typed, Collection<String> known) {
        return known.stream().min(Comparator.comparingInt(word -> changes(typed, word)));
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
                int swap = above[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(swap, Math.min(above[j], row[j - 1]) + 1);
            }
            above = row;
        }
        return above[b.length()];
    }
}
