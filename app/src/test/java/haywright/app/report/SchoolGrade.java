package haywright.app.report;

import java.util.Locale;

/**
 * The United States school grade of a text.
 *
 * <pre>
 * 0.39·words / sentences + 11.8·syllables / words − 15.59
 * </pre>
 *
 * @see "Kincaid, Fishburne, Rogers, Chissom 1975, Derivation of new readability formulas for Navy enlisted personnel"
 */
final class SchoolGrade {
    private SchoolGrade() {}

    static double of(String text) {
        int sentences = 0;
        int words = 0;
        int syllables = 0;
        for (var sentence : text.split("[.!?](\\s+|$)|\\n+")) {
            if (sentence.isBlank()) {
                continue;
            }
            sentences++;
            for (var word : sentence.split("[\\s\\-/]+")) {
                if (word.chars().anyMatch(Character::isLetterOrDigit)) {
                    words++;
                    syllables += syllables(word);
                }
            }
        }
        return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
    }

    /** Groups of vowels, without a silent e at the end; a word has at least one. */
    static int syllables(String word) {
        var letters = word.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "").replace("ian", "i'an");
        var heard = letters.length() > 2
                ? letters.replaceAll("(?<![aeiouyl])e$|(?<=[^aeiouytd])ed$|(?<=[^aeiouysxzhcg])es$", "")
                : letters;
        int groups = 0;
        boolean inVowels = false;
        for (char c : heard.toCharArray()) {
            boolean vowel = "aeiouy".indexOf(c) >= 0;
            groups += vowel && !inVowels ? 1 : 0;
            inVowels = vowel;
        }
        return Math.max(1, groups);
    }
}
