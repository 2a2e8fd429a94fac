package haywright.app.exchange.line;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Takes a line apart into its rows: names that are known with the figures behind them, or one that nobody knows. */
public final class Rows {
    private static final int LONGEST_NAME = 12;
    private static final Pattern UNIT_LIKE = Pattern.compile("\\p{L}{1,8}/\\p{L}{1,8}[.,;]?");
    private static final Pattern BESIDE = Pattern.compile("[=:(),]|of|on|a|index|units?|" + TextLine.WITHIN);
    /** What people write between a name and its figure in a sentence. */
    private static final Pattern FILLER = Pattern.compile(
            "(?i)[=:(),~≈-]|of|on|an?|the|was|were|is|are|came|comes|in|at|back|out|tested|tests|ran|runs|about|around|only|just|low|high"
                    + "|(?:sample|forage|feed|hay):?|levels?|content|results?|measured|reads?|shows?|index|units?|approx\\.?|approximately|nearly|good|fair");

    /** What says that a figure is not the one that was found, but near it. */
    private static final Pattern ABOUT = Pattern.compile("(?i)[~≈]|approx\\.?|approximately|about|around|nearly");

    private static final String NOT_WHOLE =
            "the sheet says that this is only about the figure. If it is to count, type it in the form";

    private static final Pattern RANGE = Pattern.compile(
            "[(\\[][^()\\[\\]]*[0-9]\\s*%?\\s*(?:[-–—]|to|and)\\s*[0-9.,]*[0-9][^()\\[\\]]*[)\\]][.,;]?");

    /** What laboratories point to a footnote with. */
    private static final Pattern MARK =
            Pattern.compile("\\p{Ll}|[*†‡§#^]{1,3}|[(\\[][\\p{L}0-9*†‡§]{1,2}[)\\]]|[\\p{Ll}0-9][)\\]]");

    private static final Pattern JOINS = Pattern.compile(
            "(?i).*[.,;:/)]|and|&|plus|with|but|while|your|the|its|had|has|ran|runs|tested|tests|showed|shows?|contain(?:s|ed)|measured|[-–—]");

    /** "Nitrate was 3,900 ppm NO3". */
    private static final Pattern NITRATE = Pattern.compile("(?i)nitrates?(?: \\p{L}+)? NO ?3(?:-?N)?[,.;]?");

    private static final Pattern SAME =
            Pattern.compile("(?i),|which|that|this|is|or|and|makes?|comes|to|equals?|=|i\\.e\\.");

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
                    : basisWords(words, at + 1);
            if (basis > 0) {
                var said = Heading.basis(bare(words, at + 1, basis)).orElseThrow();
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

    private record Found(Row row, int end) {}

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
            if (label == null && (isBare || !isNextUnitOfOther(words, end))) {
                continue;
            }
            var found = figures(words, at, end, name, label, names);
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

    /** "Soluble protein  %CP  42": the name is told only together with its unit. */
    private static boolean isNextUnitOfOther(List<Word> words, int at) {
        return words.get(at).text().replaceFirst("^[(\\[]", "").startsWith("%");
    }

    private static @Nullable Found figures(
            List<Word> words, int start, int from, String name, @Nullable Label label, Names names) {
        var figures = new ArrayList<Word>();
        var marks = new ArrayList<Word>();
        var bases = new HashMap<Integer, Basis>();
        var said = label;
        Unit unit = null;
        var why = "";
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
                var whole = TextLine.join(words.subList(at, at + share)).text().replaceAll("[()\\[\\]]", "");
                var told = names.headingWithUnit(name, whole).orElse(null);
                boolean isOther = said != null && !said.why().isEmpty();
                why = told == null && !isOther ? "its unit does not fit" : why;
                said = told == null ? said : new Label(told, "");
                unit = Unit.PERCENT;
                at += share;
                continue;
            }
            boolean isBare = !figures.isEmpty()
                    && NITRATE.matcher(name + " " + word.text()).matches();
            int form = isBare ? 1 : formOf(words, at, names);
            if (form > 0) {
                // "900 ppm as NO3-N": the form behind the figure tells which it is
                var told = names.label(name.replaceFirst("[\\s:=,]+$", "")
                                + (isBare ? " as " : " ")
                                + TextLine.join(words.subList(at, at + form))
                                        .text()
                                        .replaceAll("[,.;]+$", ""))
                        .orElse(null);
                why = told == null ? "it is printed as another thing" : why;
                said = told == null ? said : told;
                at += form;
                continue;
            }
            int ofUnit = Behind.unit(words, at);
            if (ofUnit > 0) {
                var one = Heading.unit(bare(words, at, ofUnit)).orElseThrow();
                why = unit != null && unit != one ? "its unit does not fit" : why;
                unit = one;
                at += ofUnit;
                continue;
            }
            int many = basisWords(words, at);
            boolean isNextSentence = !figures.isEmpty()
                    && words.get(at - 1).text().endsWith(".")
                    && word.text().matches("\\p{Lu}.*")
                    && names.canBegin(word.text());
            if (said != null && many > 0 && (isNextSentence || isNextName(said, words, at, many))) {
                break;
            }
            if (many == 0 && !figures.isEmpty() && isMark(words, at)) {
                marks.add(word); // what nobody explains stays with the rest of the sheet
                at++;
                continue;
            }
            if (many > 0) {
                Heading.basis(bare(words, at, many)).ifPresent(basis -> bases.put(figures.size() - 1, basis));
                at += many;
            } else if (figures.isEmpty() && Label.isManner(word.text())) {
                at++;
            } else if (!figures.isEmpty() && rangeOf(words, at) > 0) {
                at += rangeOf(words, at);
            } else if (!bases.isEmpty() && otherBasis(words, at) > 0) {
                at += otherBasis(words, at);
            } else if ((figures.isEmpty() ? FILLER : BESIDE)
                    .matcher(word.text())
                    .matches()) {
                why = why.isEmpty()
                                && figures.isEmpty()
                                && ABOUT.matcher(word.text()).matches()
                        ? NOT_WHOLE
                        : why;
                at++;
            } else {
                // left out, it could be a unit or a basis, and the usual one would be taken
                why = why.isEmpty() && !figures.isEmpty() ? Behind.guide(words, at) : why;
                boolean isAsked = !figures.isEmpty() && !names.words().says(name) && !isBareNumber(said);
                why = isAsked ? Behind.why(words, at, names, why) : why;
                break;
            }
        }
        if (said == null || figures.stream().noneMatch(Word::isFigure)) {
            return null;
        }
        var own = words.subList(start, at).stream()
                .filter(word -> !marks.contains(word))
                .toList();
        var row = new Row(name, said.heading(), own, figures, unit, bases, why.isEmpty() ? said.why() : why);
        return new Found(row, at);
    }

    /** An index has neither unit nor basis, whatever stands behind it. */
    private static boolean isBareNumber(@Nullable Label said) {
        var heading = said == null ? null : said.heading();
        return heading != null
                && heading.analyte().unit() == Unit.NONE
                && !heading.analyte().hasBasis();
    }

    /** "Moisture 12.0    Dry matter 88.0": behind moisture its other side is a name, and no basis. */
    private static boolean isNextName(Label said, List<Word> words, int at, int many) {
        var heading = said.heading();
        return heading != null
                && heading.analyte() == Analyte.MOISTURE
                && words.get(at).from() - words.get(at - 1).to() > 1
                && at + many < words.size()
                && words.get(at + many).isFigure();
    }

    /** A sign that points to a footnote, between a figure and its unit or behind both. */
    private static boolean isMark(List<Word> words, int at) {
        var before = words.get(at - 1);
        boolean isBehind = before.isFigure() || Heading.unit(before.text()).isPresent();
        boolean isNext = at + 1 < words.size() && isUnitLike(words.get(at + 1).text());
        return isBehind && MARK.matcher(words.get(at).text()).matches() && (isNext || !isLetter(words.get(at)));
    }

    private static boolean isLetter(Word word) {
        return word.text().matches("\\p{L}");
    }

    private static boolean isUnitLike(String text) {
        return text.startsWith("%")
                || Heading.unit(text.replaceAll("[,;.]$", "")).isPresent()
                || UNIT_LIKE.matcher(text).matches();
    }

    /** Words in brackets that say from which figure to which is usual; 0 for none. */
    private static int rangeOf(List<Word> words, int at) {
        for (int many = Math.min(8, words.size() - at); many > 0; many--) {
            if (RANGE.matcher(TextLine.join(words.subList(at, at + many)).text())
                    .matches()) {
                return many;
            }
        }
        return 0;
    }

    /** "7.9 percent as fed, which is 9.2 percent dry": words before the same on another basis; 0 for none. */
    private static int otherBasis(List<Word> words, int at) {
        int end = at;
        while (end < words.size()
                && end - at < 4
                && SAME.matcher(words.get(end).text()).matches()) {
            end++;
        }
        if (end == at || end >= words.size() || !words.get(end).isFigure()) {
            return 0;
        }
        int behind = end + 1 + (end + 1 < words.size() ? Behind.unit(words, end + 1) : 0);
        return behind < words.size() && basisWords(words, behind) > 0 ? end - at : 0;
    }

    private static int formOf(List<Word> words, int at, Names names) {
        if (!words.get(at).text().equalsIgnoreCase("as")) {
            return 0;
        }
        for (int many = Math.min(4, words.size() - at); many > 1; many--) {
            var form = TextLine.join(words.subList(at + 1, at + many)).text();
            if (names.label(form.replaceAll("[,.;]+$", "")).isPresent()) {
                return many;
            }
        }
        return 0;
    }

    private static int basisWords(List<Word> words, int at) {
        for (int many = Math.min(4, words.size() - at); many > 0; many--) {
            if (Heading.basis(bare(words, at, many)).isPresent()) {
                return many;
            }
        }
        return 0;
    }

    public static String bare(List<Word> words, int at, int many) {
        return TextLine.join(words.subList(at, at + many))
                .text()
                .replaceAll("[(),;\\[\\]]|\\.$", "")
                .strip();
    }

    /** Words that say "% of crude protein" and the like; 0 for none. */
    private static int shareOf(List<Word> words, int at) {
        if (!isNextUnitOfOther(words, at)) {
            return 0;
        }
        for (int many = Math.min(4, words.size() - at); many > 0; many--) {
            var text = Heading.key(bare(words, at, many));
            boolean isParted = words.subList(at, at + many - 1).stream()
                    .anyMatch(word -> word.text().matches(".*[,;]"));
            if (!isParted
                    && text.matches(
                            "%\\s*(?:of )?(?:total )?(?:crude protein|protein|cp|a?ndf(?:om)?|adf|nitrogen|n|starch|fat|ee)")) {
                return many;
            }
        }
        return 0;
    }

    /** Words, then figures: perhaps something that a laboratory calls by a name of its own. */
    private static @Nullable Found unknown(List<Word> words, int at, boolean isAligned, Names names) {
        int first = at;
        while (first < words.size() && !words.get(first).isFigure()) {
            if (first > at
                    && isAligned
                    && !isNextUnitOfOther(words, first)
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
