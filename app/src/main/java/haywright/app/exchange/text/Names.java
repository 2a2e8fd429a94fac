package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What the name beside a figure means. Where a name says the same thing twice, as in "Crude Protein (CP)", both halves
 * must agree; where a figure is a share of something else than the feed, it must be what the house keeps it in.
 */
record Names(Vocabulary words) {
    private static final int LONGEST = 80;
    private static final Pattern BRACKETS = Pattern.compile("^(.*?)\\s*[(\\[]([^()\\[\\]]+)[)\\]]\\s*(.*)$");
    private static final Pattern TWICE = Pattern.compile("^(.+?)(?:\\s+[-–]\\s+|\\s*/\\s*|,\\s+)(.+)$");
    private static final Pattern SHARE_OF =
            Pattern.compile("^(.*?)[\\s,(\\[]*(?:%|pct|percent)\\s*(?:of\\s+)?(?:total\\s+)?"
                    + "(crude protein|protein|cp|ndf|andf|nitrogen|n|starch|fat)[)\\]]*$");
    private static final Map<String, Set<Analyte>> SHARES = Map.of(
            "cp", EnumSet.of(Analyte.SP, Analyte.RDP, Analyte.RUP),
            "ndf", EnumSet.of(Analyte.NDFD),
            "n", EnumSet.of(Analyte.NH3N));
    /** Printed as a share of protein or of the feed by different laboratories: never taken unless it is said. */
    private static final Set<Analyte> TO_BE_SAID = EnumSet.of(Analyte.SP, Analyte.RDP, Analyte.RUP, Analyte.NH3N);

    Optional<Heading> heading(String written) {
        var name = Heading.key(written).replaceAll("[\\s:.,;=*†-]+$", "").replaceAll("^[*•·-]+\\s*", "");
        if (name.isEmpty() || name.length() > LONGEST) {
            return Optional.empty();
        }
        if (words.own().containsKey(Heading.key(written))) {
            return words.heading(written);
        }
        var share = SHARE_OF.matcher(name);
        if (share.matches()) {
            return plain(share.group(1)).filter(h -> isShareOf(h.analyte(), share.group(2)));
        }
        return plain(name).filter(h -> !TO_BE_SAID.contains(h.analyte()) || name.contains("% of"));
    }

    /** A unit column can say "% of CP" too. */
    Optional<Heading> headingWithUnit(String written, String unit) {
        return heading(written + " " + unit);
    }

    private static boolean isShareOf(Analyte analyte, String whole) {
        var key =
                whole.contains("protein") ? "cp" : whole.contains("ndf") ? "ndf" : whole.startsWith("n") ? "n" : whole;
        return SHARES.getOrDefault(key.toLowerCase(Locale.ROOT), Set.of()).contains(analyte);
    }

    private Optional<Heading> plain(String name) {
        var known = words.heading(name);
        if (known.isPresent()) {
            return known;
        }
        var brackets = BRACKETS.matcher(name);
        if (brackets.matches()) {
            return same(words.heading((brackets.group(1) + " " + brackets.group(3)).strip()), brackets.group(2));
        }
        var twice = TWICE.matcher(name);
        return twice.matches() ? same(words.heading(twice.group(1)), twice.group(2)) : Optional.empty();
    }

    /** The half that tells more of unit and basis, if both halves are the same analyte. */
    private Optional<Heading> same(Optional<Heading> first, String other) {
        var second = words.heading(other.strip());
        if (first.isEmpty()
                || second.isEmpty()
                || first.get().analyte() != second.get().analyte()) {
            return Optional.empty();
        }
        return List.of(first.get(), second.get()).stream()
                .filter(h -> h.unit() != null || h.basis() != null)
                .findFirst()
                .or(() -> first);
    }
}
