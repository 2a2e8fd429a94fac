package haywright.app.exchange.lab;

import java.util.regex.Pattern;

/** The name of who printed a sheet, by which its names are remembered and its reports compared. */
public final class Laboratory {
    /** "— batch 7140", "(report 3 of 5)", "2026/118-B", "Run A-17" behind a name. */
    private static final Pattern NUMBERED = Pattern.compile(
            "(?iu)(?<=[\\p{L}.)’'])[\\s,;:|–—][\\s,;:|/#(\\[–—-]*(?:(?:batch|bench|sheet|report|rept?|job|page|pg|series|run|order|work|lot|set|file|id|ref|certificate|cert|version|ver|rev|form|no|nr|number|copy|of)\\b[\\s.:#/–—-]*)*"
                    + "\\p{L}{0,4}[#-]?[0-9].*$");

    private Laboratory() {}

    /** Without the number of a batch, a sheet or a report behind it, which the next sheet has another of. */
    public static String name(String written) {
        var bare = NUMBERED.matcher(written.strip()).replaceFirst("").strip();
        return bare.matches("(?s).*\\p{L}{3}.*") ? bare : written.strip();
    }
}
