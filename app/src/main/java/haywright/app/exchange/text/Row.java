package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.text.TextLine.Word;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A name with the figures behind it.
 *
 * @param heading what the name means; null where it is not known
 * @param figures and signs that there is none, from left to right
 * @param unit as the row says it; null where it says none
 * @param basis as the row says it; null where it says none
 * @param strange a unit or a share that does not fit the name; then the row is not to be taken
 */
record Row(
        String name,
        @Nullable Heading heading,
        List<Word> figures,
        @Nullable Unit unit,
        @Nullable Basis basis,
        boolean strange) {
    private static final int LONGEST_NAME = 9;
    private static final Pattern UNIT_LIKE = Pattern.compile("\\p{L}{1,8}/\\p{L}{1,8}[.,;]?");

    Row {
        figures = List.copyOf(figures);
    }

    /** The rows that stand side by side in a line; the last may be one whose name is not known. */
    static List<Row> of(List<Word> words, boolean isAligned, Names names) {
        var rows = new ArrayList<Row>();
        int at = 0;
        while (at < words.size()) {
            boolean isInCell = at > 0
                    && isAligned
                    && words.get(at).from() - words.get(at - 1).to() < 2;
            var next = isInCell ? null : known(words, at, names);
            if (next == null) {
                if (rows.isEmpty()) {
                    return unknown(words).map(List::of).orElse(List.of());
                }
                at++; // a method, a remark, a range behind the figures
            } else {
                rows.add(next.row);
                at = next.end;
            }
        }
        return rows;
    }

    private record Found(Row row, int end) {}

    private static @Nullable Found known(List<Word> words, int at, Names names) {
        for (int end = Math.min(words.size() - 1, at + LONGEST_NAME); end > at; end--) {
            var name = TextLine.join(words.subList(at, end)).text();
            var heading = names.heading(name).orElse(null);
            boolean isBare = heading == null && !Character.isLetter(name.charAt(name.length() - 1));
            if (heading == null && (isBare || !isNextUnitOfOther(words, end))) {
                continue;
            }
            var found = figures(words, end, name, heading, names);
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    /** "Soluble protein  %CP  42": the name is told only together with its unit. */
    private static boolean isNextUnitOfOther(List<Word> words, int at) {
        return words.get(at).text().startsWith("%");
    }

    private static @Nullable Found figures(
            List<Word> words, int from, String name, @Nullable Heading heading, Names names) {
        var figures = new ArrayList<Word>();
        var said = heading;
        Unit unit = null;
        Basis basis = null;
        boolean strange = false;
        int at = from;
        while (at < words.size()) {
            var word = words.get(at);
            if (word.isFigure() || word.isNothing()) {
                figures.add(word);
                at++;
                continue;
            }
            int share = shareOf(words, at);
            if (share > 0) {
                var whole = TextLine.join(words.subList(at, at + share)).text();
                var told = names.headingWithUnit(name, whole);
                strange |= told.isEmpty();
                said = told.orElse(said);
                unit = Unit.PERCENT;
                at += share;
                continue;
            }
            var one = Heading.unit(word.text().replaceAll("[(),\\[\\]]", ""));
            if (one.isPresent()) {
                strange |= unit != null && unit != one.get();
                unit = one.get();
                at++;
                continue;
            }
            int long_ = basisWords(words, at);
            if (long_ > 0) {
                basis = Heading.basis(bare(words, at, long_)).orElse(null);
                at += long_;
            } else if (word.text().matches("[=:(),]|of|on|a|index|units?")) {
                at++;
            } else {
                // a unit that nobody knows; left unsaid it would be taken for the usual one
                strange |= unit == null
                        && at > from
                        && words.get(at - 1).isFigure()
                        && UNIT_LIKE.matcher(word.text()).matches();
                break;
            }
        }
        if (said == null || figures.stream().noneMatch(Word::isFigure)) {
            return null;
        }
        return new Found(new Row(name, said, figures, unit, basis, strange), at);
    }

    private static int basisWords(List<Word> words, int at) {
        for (int long_ = Math.min(3, words.size() - at); long_ > 0; long_--) {
            if (Heading.basis(bare(words, at, long_)).isPresent()) {
                return long_;
            }
        }
        return 0;
    }

    private static String bare(List<Word> words, int at, int long_) {
        return TextLine.join(words.subList(at, at + long_)).text().replaceAll("[(),\\[\\]]", "");
    }

    /** Words that say "% of crude protein" and the like; 0 for none. */
    private static int shareOf(List<Word> words, int at) {
        if (!words.get(at).text().startsWith("%") && !words.get(at).text().startsWith("(%")) {
            return 0;
        }
        for (int long_ = Math.min(4, words.size() - at); long_ > 0; long_--) {
            var text = Heading.key(bare(words, at, long_));
            if (text.matches("%\\s*(?:of )?(?:total )?(?:crude protein|protein|cp|a?ndf|nitrogen|n|starch|fat)")) {
                return long_;
            }
        }
        return 0;
    }

    /** Words, then figures: perhaps something that a laboratory calls by a name of its own. */
    private static Optional<Row> unknown(List<Word> words) {
        int first = 0;
        while (first < words.size() && !words.get(first).isFigure()) {
            first++;
        }
        if (first == 0 || first == words.size() || first > LONGEST_NAME) {
            return Optional.empty();
        }
        var name = TextLine.join(words.subList(0, first)).text().replaceAll("\\s+(?:%|\\S+/\\S+|ppm)$", "");
        return name.matches(".*\\p{L}.*")
                ? Optional.of(new Row(name, null, words.subList(first, words.size()), null, null, false))
                : Optional.empty();
    }
}
