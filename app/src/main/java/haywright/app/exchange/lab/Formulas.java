package haywright.app.exchange.lab;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Formulas as a page sets them, with lowered and raised signs, in plain ones: NO₃⁻-N and NO³-N are NO3-N. */
final class Formulas {
    private static final String LOWERED = "₀₁₂₃₄₅₆₇₈₉";
    private static final String RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    /** A raised figure behind these counts atoms; elsewhere it is the mark of a footnote. */
    private static final Pattern ATOMS = Pattern.compile(
            "[₀-₉]|(?<=(?<![\\p{L}])(?:[Nn][Oo]|[Ss][Oo]|[Pp][Oo]|[Cc][Oo]|[Nn][Hh]|HCO|KNO))[²³⁴](?=[-–⁻⁺ ),;:]|$)");

    /** A word with a charge in it, whose place the room behind the word takes, so that columns stay where they are. */
    private static final Pattern CHARGED = Pattern.compile("(?<=[\\p{L}0-9])([²³]?[⁺⁻])(\\S*)");

    private Formulas() {}

    static String plain(String text) {
        if (text.chars().noneMatch(c -> c > 0x7f)) {
            return text;
        }
        var atoms = ATOMS.matcher(text)
                .replaceAll(found ->
                        Integer.toString(Math.max(LOWERED.indexOf(found.group()), RAISED.indexOf(found.group()))));
        return CHARGED.matcher(atoms)
                .replaceAll(found -> Matcher.quoteReplacement(
                        found.group(2) + " ".repeat(found.group(1).length())));
    }
}
