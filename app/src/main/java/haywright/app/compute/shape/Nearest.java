package haywright.app.compute.shape;

import haywright.workings.EditDistance;
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
                .min(Comparator.comparingInt(word -> EditDistance.between(typed, word)));
    }

    private static boolean isNear(String typed, String word) {
        int changes = EditDistance.between(typed, word);
        int letters = Math.max(typed.length(), word.length());
        return typed.length() >= LEAST && word.startsWith(typed)
                || 2 * changes < letters && changes <= Math.max(2, letters / 3);
    }
}
