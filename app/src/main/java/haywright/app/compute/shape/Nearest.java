package haywright.app.compute.shape;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;

/**
 * The known word nearest to a mistyped one, by single-letter changes. Only what is near is offered: where the word begins
 * with what was typed, or turns into it by two changes or as many as a third of the letters of the longer, but never half.
 */
public final class Nearest {
    /** Letters from which on a beginning says something. */
    private static final int LEAST = 2;

    private Nearest() {}

    public static Optional<String> to(String typed, Collection<String> known) {
        return known.stream()
                .filter(word -> isNear(typed, word))
                .min(Comparator.comparingInt(word -> changes(typed, word)));
    }

    private static boolean isNear(String typed, String word) {
        int changes = changes(typed, word);
        int letters = Math.max(typed.length(), word.length());
        return typed.length() >= LEAST && word.startsWith(typed)
                || 2 * changes < letters && changes <= Math.max(2, letters / 3);
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
