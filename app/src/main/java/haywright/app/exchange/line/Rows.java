package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.line.TextLine.Word;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Takes a line apart into its rows: names that are known with the figures behind them, or one that nobody knows. */
public final class Rows {
    private static final int LONGEST_NAME = 12;
    private static final Pattern JOINS = Pattern.compile(
            "(?i).*[.,;:/)]|and|&|plus|with|but|while|your|the|its|had|has|ran|runs|tested|tests|showed|shows?|contain(?:s|ed)|measured|[-–—]");

    private static final Pattern SHARE = Pattern.compile("(?i)[(\\[]?(?:as )?(?:%|pct|percent)");
    private static final Pattern OF = Pattern.compile("(?i)of|for|in|as|the|,");
    private static final Pattern SYMBOL = Pattern.compile("\\p{Lu}\\p{L}?");

    private Rows() {}

    /** The rows of a line: side by side in columns, one after the other in a sentence, or one that nobody knows. */
    public static List<Row> of(List<Word> words, boolean isAligned, Names names) {
        var rows = new ArrayList<Row>();
        int at = 0;
        int end = 0;
        while (at < words.size()) {
            var next = begins(words, at, end, isAligned) ? known(words, at, isAligned, names) : null;
            if (next == null && isAligned && begins(words, at, end, true)) {
                next = unknown(words, at, true, names);
            }
            if (next != null) {
                rows.add(next.row);
                at = next.end;
                end = at;
                continue;
            }
            int basis = isAligned || rows.isEmpty() || !words.get(at).text().matches("(?i)both|all|each")
                    ? 0
                    : NamedFigures.basisWords(words, at + 1);
            if (basis > 0) {
                var said =
                        Heading.basis(NamedFigures.bare(words, at + 1, basis)).orElseThrow();
                rows.replaceAll(row -> row.on(said));
                at += 1 + basis;
                continue;
            }
            // behind the end of its sentence another figure is another's
            boolean isNext = !isAligned
                    && words.subList(Math.max(0, Math.min(end, at) - 1), at).stream()
                            .anyMatch(word -> word.text().matches(".*[;.]"));
            if (!rows.isEmpty() && !isNext && words.get(at).isFigure() && (!isAligned || isInCell(words, at))) {
                // one line, one figure for one name: where another follows unasked, either could be meant
                int last = rows.size() - 1;
                rows.set(last, rows.get(last).not("another figure stands behind it"));
            }
            at++; // a method, a remark, a range behind the figures
        }
        if (!isAligned && rows.size() > 1) {
            basisAtTheEnd(words, rows);
        }
        unitAtTheEnd(words).ifPresent(unit -> rows.replaceAll(row -> row.in(unit)));
        if (rows.isEmpty()) {
            var strange = unknown(words, 0, isAligned, names);
            return strange == null ? List.of() : List.of(strange.row);
        }
        return rows;
    }

    /** "CP 9.5, NDF 61.7 (dry)": a basis in brackets behind all of them, where no other of them has one. */
    private static void basisAtTheEnd(List<Word> words, List<Row> rows) {
        var last = rows.get(rows.size() - 1);
        boolean isOne = TextLine.join(words).text().matches(".*[(\\[][^()\\[\\]]*[)\\]][.;]?")
                && last.bases().size() == 1
                && rows.subList(0, rows.size() - 1).stream()
                        .allMatch(row -> row.bases().isEmpty());
        if (isOne) {
            var said = last.bases().values().iterator().next();
            rows.replaceAll(row -> row.on(said));
        }
    }

    /** "NEm .61, NEg .35 (Mcal/lb)": the unit in brackets behind all of them. */
    private static Optional<Unit> unitAtTheEnd(List<Word> words) {
        var last = words.isEmpty() ? "" : words.get(words.size() - 1).text().replaceAll("[.,;]$", "");
        return last.matches("[(\\[].*[)\\]]")
                ? Heading.unit(last.substring(1, last.length() - 1).replaceFirst("^(?:all|both|each)?(?: in)? ", ""))
                : Optional.empty();
    }

    /** "530 ppm nitrate nitrogen": a figure with its unit before the name of an analyte. */
    public static boolean isFigureFirst(List<Word> words, Names names) {
        for (int at = 0; at + 1 < words.size(); at++) {
            if (!words.get(at).isFigure()) {
                continue;
            }
            int from = at + 1 + Behind.unit(words, at + 1);
            while (from < words.size() && OF.matcher(words.get(from).text()).matches()) {
                from++;
            }
            if (from < words.size() && Behind.beginsName(words, from, names, false)) {
                return true;
            }
        }
        return false;
    }

    public static boolean isInCell(List<Word> words, int at) {
        return at > 0 && words.get(at).from() - words.get(at - 1).to() < 2;
    }

    /** In columns a name begins a cell; in a sentence it stands first, behind a sign, or behind a word that joins. */
    private static boolean begins(List<Word> words, int at, int end, boolean isAligned) {
        if (isAligned) {
            return !isInCell(words, at)
                    || at > 0 && at == end && words.get(at - 1).text().matches(".*[,;]|and|&");
        }
        // "Sugars, % DM 6.1": behind words that nobody knows it says what those are a share of
        return at == end
                || JOINS.matcher(words.get(at - 1).text()).matches()
                        && (!isShareOrBasis(words.get(at)) || isFirstOfSeveral(words, at));
    }

    /** "North stack: DM 88.4, CP 9.5": a figure and a comma behind what could be a basis too. */
    private static boolean isFirstOfSeveral(List<Word> words, int at) {
        return words.get(at - 1).text().endsWith(":")
                && at + 2 < words.size()
                && words.get(at + 1).isFigure()
                && words.get(at + 2).text().matches("[,;]");
    }

    private static boolean isShareOrBasis(Word word) {
        return SHARE.matcher(word.text()).lookingAt()
                || Heading.basis(word.text().replaceAll("[.,;:]$", "")).isPresent();
    }

    record Found(Row row, int end) {}

    private static @Nullable Found known(List<Word> words, int at, boolean isAligned, Names names) {
        if (!names.canBegin(words.get(at).text())) {
            return null;
        }
        for (int end = Math.min(words.size() - 1, at + LONGEST_NAME); end > at; end--) {
            var name = TextLine.join(words.subList(at, end)).text();
            if (end == at + 1 && at > 0 && !isAligned && name.length() <= 2 && !isSymbol(words, at)) {
                continue;
            }
            var label = names.label(name).orElse(null);
            boolean isBare = label == null && !Character.isLetter(name.charAt(name.length() - 1));
            if (label == null && (isBare || !NamedFigures.isNextUnitOfOther(words, end))) {
                continue;
            }
            var found = NamedFigures.of(words, at, end, name, label, names);
            if (found != null && isAligned && isPartOfName(words, at, found)) {
                return null;
            }
            if (found != null) {
                return found;
            }
            if (label != null && words.get(end - 1).isFigure()) {
                return null; // the number belongs to the name, and no figure stands behind it
            }
        }
        return null;
    }

    /** "Crude fiber, 1.25 % acid    27.3": words go on behind the number in its cell, and figures stand in the next one. */
    private static boolean isPartOfName(List<Word> words, int at, Found found) {
        int end = found.end;
        boolean goesOn = end < words.size()
                && IntStream.range(at + 1, end).allMatch(one -> isInCell(words, one))
                && isInCell(words, end)
                && words.get(end).text().matches(".*\\p{L}.*")
                && !Label.isManner(words.get(end).text())
                && found.row.figures().size() == 1;
        while (end < words.size() && isInCell(words, end)) {
            end++;
        }
        return goesOn && end < words.size() && words.get(end).isFigure();
    }

    /** "K" and "Ca" in a sentence are elements where a figure follows, and "a" and "in" are not. */
    private static boolean isSymbol(List<Word> words, int at) {
        return SYMBOL.matcher(words.get(at).text()).matches()
                && words.get(at + 1).text().matches("[=:]|is|was|<?[.,]?[0-9].*");
    }

    /** Words, then figures: perhaps something that a laboratory calls by a name of its own. */
    private static @Nullable Found unknown(List<Word> words, int at, boolean isAligned, Names names) {
        int first = at;
        while (first < words.size() && !words.get(first).isFigure()) {
            if (first > at
                    && isAligned
                    && !NamedFigures.isNextUnitOfOther(words, first)
                    && words.get(first).from() - words.get(first - 1).to() > 1
                    && known(words, first, true, names) != null) {
                return null; // the next name begins
            }
            first++;
        }
        if (first == at || first == words.size() || first - at > LONGEST_NAME) {
            return null;
        }
        var name = TextLine.join(words.subList(at, first)).text().replaceAll("\\s+(?:%|\\S+/\\S+|ppm)$", "");
        if (!name.matches(".*\\p{L}.*")) {
            return null;
        }
        int end = first;
        while (end < words.size()
                && (end == first || isAligned && known(words, end, true, names) == null || !isAligned)) {
            end++;
        }
        return new Found(
                new Row(name, null, words.subList(at, end), words.subList(first, end), null, Map.of(), ""), end);
    }
}
