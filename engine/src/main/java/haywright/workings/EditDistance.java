package haywright.workings;

import java.util.Arrays;

/** How far a word that was refused lies from one that is known. */
public final class EditDistance {
    /** No word that is known has more letters: a longer one is like none, and comparing it would take minutes. */
    public static final int LONGEST = 200;

    private EditDistance() {}

    /**
     * Letters to change, leave out or put in until one word is the other; 0 for the same. Of a word with more than
     * {@value #LONGEST} letters, all letters count.
     *
     * @see "Levenshtein, Binary codes capable of correcting deletions, insertions and reversals, Soviet Physics Doklady 10, 1966 (from memory)"
     */
    public static int between(String a, String b) {
        int longer = Math.max(a.length(), b.length());
        if (longer > LONGEST) {
            return longer;
        }
        var above = new int[b.length() + 1];
        Arrays.setAll(above, i -> i);
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = above[0];
            above[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = above[j];
                above[j] = Math.min(change, 1 + Math.min(above[j], above[j - 1]));
            }
        }
        return above[b.length()];
    }
}
