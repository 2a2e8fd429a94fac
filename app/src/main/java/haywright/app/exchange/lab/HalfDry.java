package haywright.app.exchange.lab;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Words with "dry" in them that do not say dry matter: a sample dried in air still holds some 5 to 10 percent of water, so
 * its figures are neither as received nor on dry matter.
 */
public final class HalfDry {
    private static final Pattern DRIED = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:air|lab(?:oratory)?|sun|field|shade|freeze|wind|barn|forced[- ]air|(?:partial|part|semi|half|pre)(?:ly)?|partly|non|un)[\\s_-]{0,2}(?:dry|dried|dm|dry matter)(?!\\p{L})");

    /** How ash or minerals are come by. */
    private static final Pattern ASHED = Pattern.compile("(?iu)(?<!\\p{L})dr(?:y|ied)[\\s-]ash\\p{L}*");

    /** "Results are not on a dry basis": the basis named behind it is the one that they are not on. */
    static final Pattern DENIED = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:not|never|neither|nor|isn['’]t|aren['’]t|wasn['’]t|weren['’]t|without|rather than|instead of|no)(?!\\p{L})[^.,;:()]{0,40}$");

    private HalfDry() {}

    public static boolean isIn(String text) {
        return DRIED.matcher(text).find() || ASHED.matcher(text).find();
    }

    /** Why the basis of figures is asked; in the words of the sheet where those say that it is neither of the two. */
    public static String why(String who, List<String> lines) {
        return in(lines)
                .map(words -> "%s says “%s”, which is neither as received nor dry matter".formatted(who, words))
                .orElse(who + " does not say whether these are as received or on dry matter");
    }

    /** What can be done about it. */
    public static String fix(List<String> lines, String usual) {
        return in(lines)
                .map(
                        words ->
                                "Ask the laboratory for the figures on dry matter; taken as either they would be off by the water left in the sample.")
                .orElse(usual);
    }

    /** The words of a sheet that say so; empty where none do. */
    private static Optional<String> in(List<String> lines) {
        return lines.stream()
                .map(DRIED::matcher)
                .filter(Matcher::find)
                .map(found -> found.group().strip())
                .findFirst();
    }
}
