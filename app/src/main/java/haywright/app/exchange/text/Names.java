package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import haywright.quantity.Unit;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What the name beside a figure means. Where a name says the same thing twice, as in "Crude Protein (CP)", both halves
 * must agree; where a figure is a share of something else than the feed, it must be what the house keeps it in.
 */
record Names(Vocabulary words, Map<String, Optional<Heading>> known) {
    private static final int LONGEST = 80;
    private static final Pattern BRACKETS = Pattern.compile("^(.*?)\\s*[(\\[]([^()\\[\\]]+)[)\\]]\\s*(.*)$");
    private static final Pattern TWICE = Pattern.compile("^(.+?)(?:\\s+[-–]\\s+|\\s*/\\s*|,\\s+)(.+)$");
    /** Says how it was come by, and changes nothing of what it is. */
    private static final Pattern WORKED_OUT =
            Pattern.compile("\\s*[(\\[](?:est\\.?|estimated|calc\\.?|calculated|by calculation)[)\\]]");

    private static final Pattern SHARE_OF =
            Pattern.compile("^(.*?)[\\s,(\\[]*(?:%|pct|percent)\\s*(?:of\\s+)?(?:total\\s+)?"
                    + "(crude protein|protein|cp|ndf|andf|nitrogen|n|starch|fat)[)\\]]*$");
    /** Printed as a share of protein or of the feed by different laboratories: never taken unless it is said. */
    private static final Set<Analyte> TO_BE_SAID = EnumSet.of(Analyte.SP, Analyte.RDP, Analyte.RUP, Analyte.NH3N);

    /** Most words begin no name, and are sooner told by this than by taking them apart. */
    private static final Set<String> FIRST_WORDS = Arrays.stream(Analyte.values())
            .flatMap(a -> Stream.concat(Stream.of(a.id(), a.words()), a.synonyms().stream()))
            .map(Names::firstWord)
            .collect(Collectors.toSet());

    /** The same names come again on every page. */
    private static final int MOST_KNOWN = 20_000;

    Names(Vocabulary words) {
        this(words, new HashMap<>());
    }

    Optional<Heading> heading(String written) {
        var before = known.get(written);
        if (before == null) {
            before = look(written);
            if (known.size() < MOST_KNOWN) {
                known.put(written, before);
            }
        }
        return before;
    }

    private Optional<Heading> look(String written) {
        var name = Heading.key(written).replaceAll("[\\s:.,;=*†-]+$", "").replaceAll("^[*•·-]+\\s*", "");
        if (name.isEmpty() || name.length() > LONGEST) {
            return Optional.empty();
        }
        if (words.own().containsKey(Heading.key(written))) {
            return words.heading(written);
        }
        if (!FIRST_WORDS.contains(firstWord(name))) {
            return Optional.empty();
        }
        var share = SHARE_OF.matcher(name);
        if (share.matches()) {
            return plain(share.group(1))
                    .filter(h -> Heading.isShareOf(h.analyte(), share.group(2)))
                    .map(h -> new Heading(h.analyte(), Unit.PERCENT, h.basis()));
        }
        return plain(name).filter(h -> !TO_BE_SAID.contains(h.analyte()) || name.contains("% of"));
    }

    private static String firstWord(String name) {
        var bare = Heading.key(name)
                .replaceFirst("^(?:(?:%|pct|percent)\\s*(?:of )?)+", "")
                .replaceFirst("^[^\\p{L}]+", "");
        return bare.split("[^\\p{L}\\p{N}]", 2)[0]
                .replace("fibre", "fiber")
                .replace("isable", "izable")
                .replace("sulph", "sulf");
    }

    /** A unit column can say "% of CP" too, alone or once more. */
    Optional<Heading> headingWithUnit(String written, String unit) {
        return SHARE_OF.matcher(Heading.key(written)).matches()
                ? heading(written)
                        .filter(h -> heading(h.analyte().id() + " " + unit).isPresent())
                : heading(written + " " + unit);
    }

    private Optional<Heading> plain(String written) {
        var name = WORKED_OUT.matcher(written).replaceFirst("");
        var known = words.heading(name).or(() -> words.heading(name.replace(",", "")));
        if (known.isPresent()) {
            return known;
        }
        var brackets = BRACKETS.matcher(name);
        if (brackets.matches()) {
            return same(plain((brackets.group(1) + " " + brackets.group(3)).strip()), brackets.group(2));
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
