package haywright.app.words;

import haywright.forage.lab.NotMeasured;
import haywright.forage.lab.NotMeasured.Why;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What stands where a laboratory prints no figure: {@code <0.01}, {@code less than 50 ppm}, {@code ND},
 * {@code ND (<0.5)}, {@code negative}, {@code not tested}.
 *
 * @param limit the figure behind it, with its unit if one is typed; empty where there is none
 */
public record Said(Why why, String limit) {
    private static final Pattern LESS = Pattern.compile("(?:<|‹|≤|less\\s+than|below|under)\\s*([0-9.,].*)");
    private static final Pattern NOT_DETECTED = Pattern.compile(
            "(?:n\\.?d\\.?|not detect(?:ed|able)|none (?:detected|found)|negative|bdl|below detection(?: limit)?|<\\s*(?:lod|loq|mdl|rl))"
                    + "\\s*(?:[(\\[]?\\s*(?:<|less than|limit|lod|mdl)?\\s*([0-9.,][^)\\]]*)[)\\]]?)?");
    private static final Pattern NOT_TESTED = Pattern.compile(
            "n\\.?/?t\\.?|n\\.?s\\.?|not (?:tested|submitted|sampled|analy[sz]ed|requested|determined|run|done|reported)|untested");

    /** Empty where it is none of the three: a figure, or anything else. */
    public static Optional<Said> of(String text) {
        var typed = text.replace('\u00a0', ' ').strip().toLowerCase(Locale.ROOT);
        if (NOT_TESTED.matcher(typed).matches()) {
            return Optional.of(new Said(Why.NOT_TESTED, ""));
        }
        var none = NOT_DETECTED.matcher(typed);
        if (none.matches()) {
            var limit = none.group(1);
            return Optional.of(new Said(Why.NOT_DETECTED, limit == null ? "" : limit.strip()));
        }
        var less = LESS.matcher(typed);
        return less.matches()
                ? Optional.of(new Said(Why.LESS_THAN, less.group(1).strip()))
                : Optional.empty();
    }

    /** Whether it says that there is no figure, and no limit either. */
    public static boolean isWithoutLimit(String text) {
        return of(text).filter(said -> said.limit.isEmpty()).isPresent();
    }

    /** As it is typed into a box. */
    public static String typed(NotMeasured said, String limit) {
        return switch (said.why()) {
            case LESS_THAN -> "<" + limit;
            case NOT_DETECTED -> limit.isEmpty() ? "ND" : "ND (<" + limit + ")";
            case NOT_TESTED -> "not tested";
        };
    }
}
