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
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The figures behind a name that is known, with the units, the bases, the forms and the marks between and behind them. */
final class NamedFigures {
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

    /** "Nitrate was 3,900 ppm NO3". */
    private static final Pattern NITRATE = Pattern.compile("(?i)nitrates?(?: \\p{L}+)? NO ?3(?:-?N)?[,.;]?");

    private static final Pattern SAME =
            Pattern.compile("(?i),|which|that|this|is|or|and|makes?|comes|to|equals?|=|i\\.e\\.");

    private NamedFigures() {}

    /** "Soluble protein  %CP  42": the name is told only together with its unit. */
    static boolean isNextUnitOfOther(List<Word> words, int at) {
        return words.get(at).text().replaceFirst("^[(\\[]", "").startsWith("%");
    }

    static Rows.@Nullable Found of(
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
        return new Rows.Found(row, at);
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

    static int basisWords(List<Word> words, int at) {
        for (int many = Math.min(4, words.size() - at); many > 0; many--) {
            if (Heading.basis(bare(words, at, many)).isPresent()) {
                return many;
            }
        }
        return 0;
    }

    static String bare(List<Word> words, int at, int many) {
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
}
