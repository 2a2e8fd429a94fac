package haywright.app.exchange.text;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Revisions;
import haywright.app.exchange.lab.SectionWords;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.forage.Analyte;
import java.time.Year;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Lines with figures of another report: quoted in a letter about this one, under a line or in a sentence that speaks of
 * last year or of a year before the newest on the page. They are listed, never taken. Where all figures stand in a quote,
 * it is the report.
 */
final class OfOthers {
    private static final Pattern QUOTED = Pattern.compile("^\\s{0,8}(?:>|\\|(?=\\s)(?![^|]*\\|))");
    private static final Pattern MESSAGE = Pattern.compile(
            "(?i)^[\\s>|]{0,8}(?:-{2,} ?(?:original|forwarded) message|(?:on|am|le|el) .{4,120} (?:wrote|schrieb|a écrit|escribió)\\b.{0,80}:\\s{0,4}$)");
    /** The head of a mail, whatever stands over it. */
    private static final Pattern FROM = Pattern.compile("(?i)^[\\s>|*]{0,8}(?:from|von|de):\\s*\\S");

    private static final Pattern SENT = Pattern.compile("(?i)^[\\s>|*]{0,8}(?:sent|date|to|subject|gesendet|datum):");
    private static final Pattern BEFORE = Pattern.compile(
            "(?iu)\\b(?:last|previous|prior|past|earlier) (?:year|yr|season|winter|fall|spring|summer|report|test|sample|results?|time|cutting)");
    private static final Pattern YEAR = Pattern.compile("(?<![0-9.,-])(20[0-9]{2})(?![0-9.,-]*[0-9])");
    private static final Pattern OF_A_YEAR = Pattern.compile(
            "(?iu)(?:\\b(?:in|from|of|your|our|the) (20[0-9]{2})\\b|\\b(20[0-9]{2}) (?:sample|results?|report|test|analysis)\\b)");
    /** "#1882 - Barley regrowth": the next sample. */
    private static final Pattern NUMBERED = Pattern.compile(
            "(?i)(?:#|no\\.?(?= ?[0-9])|sample|bag|lot|stack|report|certificate|lab no\\.?)(?: of (?:analysis|test(?:ing)?|results?))?(?:,? (?:no\\.?|number|nr\\.?|id|#))?\\s?[:.]?\\s?\\S*[0-9](?!.*20[0-9]{2}:?$).*");

    /** What a page or an office adds between the lines of a table: "Sheet 1 of 2", "Account 4471". */
    private static final Pattern FURNITURE = Pattern.compile(
            "(?iu)[\\s*–—=_(-]*(?:(?:(?:see|on|to|over to|from|next|turn) )*(?:page|sheet|side|part|p\\.|pg\\.?) ?(?:no\\.? ?)?[0-9]{1,3}(?:\\s?(?:of|/)\\s?[0-9]{1,3})?"
                    + "|(?:see |on |to )?(?:the )?(?:next|other|last|previous|following|second|first|back) (?:page|sheet|side)|over(?:leaf)?"
                    + "|(?:account|acct|(?:work |purchase |lab |test )?order|w\\.?o\\.?|p\\.?o\\.?|job|client|customer|invoice|project|batch|folder|file|form|rev(?:ision)?|doc(?:ument)?|ref(?:erence)?|request|submission|tracking|accession|login|lims|printed|copy)\\.? ?(?:no\\.?|number|#|id|:)? ?[\\p{L}]{0,4}[-/ ]?[0-9][\\p{L}\\p{N}/.-]*"
                    + "|(?:this )?(?:report |table |list )?(?:is )?(?:to be )?(?:continue[ds]|cont(?:inued|['’]?d)?\\.?|goes on)(?: (?:on|from|over|from the|on the)? ?(?:the )?(?:next|previous|last|other|back|page|sheet|side|[0-9]{1,3}| )*)?)"
                    + "[\\s,.:;–—=_-]*(?:\\(?(?:continue[ds]|cont(?:inued|['’]?d)?\\.?)\\)?)?[\\s).*–—=_-]*");

    private static final int MOST_WORDS_OF_A_TITLE = 10;
    private static final int LINES_OF_A_HEAD = 5;

    private OfOthers() {}

    /** Whether a line is of the page or the office, and of no result. */
    static boolean isFurniture(TextLine line) {
        return FURNITURE.matcher(line.text().strip()).matches();
    }

    /** Lines without the signs of a quote, where no figure of an analyte stands outside of it; else as they are. */
    static List<String> quoteOnly(List<String> lines, Names names) {
        boolean isQuoted = lines.stream().anyMatch(line -> QUOTED.matcher(line).find());
        boolean isApart = isQuoted
                && lines.stream()
                        .filter(line -> !QUOTED.matcher(line).find())
                        .flatMap(line -> names.rows(TextLine.of(0, 1, line)).stream())
                        .anyMatch(Row::isTold);
        return !isQuoted || isApart
                ? lines
                : lines.stream()
                        .map(line -> line.replaceFirst("^\\s{0,8}(?:[>|] ?){1,20}", ""))
                        .toList();
    }

    /** Why a line with figures is not of this sample's report. */
    private static final String LISTED = "it is of another report or another year";

    private static final Pattern MEASURED = Pattern.compile("(?i)[0-9] ?(?:%|pp[mb]\\b|[gm]{1,2}/kg|mcal/)");
    private static final String QUOTED_IN = "it is in another message that is quoted";

    /**
     * Lines that are left out, with what they say of days and names.
     *
     * @param why by their place, for those with figures
     * @param skipped the places of others
     */
    record Found(Map<Integer, String> why, Set<Integer> skipped, List<Understood.Column> asked) {}

    /**
     * @param isMark whether a line says what a mark means, and nothing of a report
     */
    static Found in(List<TextLine> lines, Names names, Set<Integer> samplesNamed, Predicate<TextLine> isMark) {
        var figures = IntStream.range(0, lines.size())
                .filter(at -> names.rows(lines.get(at)).stream().anyMatch(Row::isTold))
                .boxed()
                .toList();
        int newest = lines.stream()
                .flatMap(line -> YEAR.matcher(line.text()).results())
                .mapToInt(year -> Integer.parseInt(year.group(1)))
                .max()
                .orElse(Year.MAX_VALUE);
        var message = IntStream.range(0, lines.size())
                .filter(at -> MESSAGE.matcher(lines.get(at).text()).find() || isMailHead(lines, at))
                .filter(at -> figures.stream().anyMatch(figure -> figure < at))
                .findFirst();
        boolean isQuoteApart = figures.stream()
                .anyMatch(at -> !QUOTED.matcher(lines.get(at).text()).find());
        var others = new HashMap<Integer, String>();
        var skipped = new HashSet<Integer>();
        closed(lines, names, figures, samplesNamed, newest, skipped).forEach(at -> others.put(at, LISTED));
        var blocks = Blocks.ofOthers(lines, figures);
        for (int at = 0; at < lines.size(); at++) {
            var text = lines.get(at).text();
            boolean isQuote = isQuoteApart && QUOTED.matcher(text).find() || isAfter(message, at);
            boolean hasFigures = figures.contains(at);
            if (isQuote && (hasFigures || MEASURED.matcher(text).find())) {
                others.put(at, QUOTED_IN);
            } else if (isQuote) {
                skipped.add(at);
            } else if (hasFigures
                    && (blocks.contains(at)
                            || isSentence(lines.get(at)) && speaksOutsideBrackets(text, newest)
                            || isUnderATitle(lines, at, figures, newest))) {
                others.put(at, LISTED);
            }
        }
        var revisions = revisions(lines, names, figures, samplesNamed, skipped, isMark);
        for (int at = 0; at < lines.size(); at++) {
            int place = at;
            revisions.why(at).ifPresent(why -> {
                if (figures.contains(place)) {
                    others.put(place, why);
                } else {
                    skipped.add(place);
                }
            });
        }
        return new Found(others, skipped, revisions.asked());
    }

    private static Revisions revisions(
            List<TextLine> lines,
            Names names,
            List<Integer> figures,
            Set<Integer> samplesNamed,
            Set<Integer> skipped,
            Predicate<TextLine> isMark) {
        var texts = new ArrayList<String>();
        for (int at = 0; at < lines.size(); at++) {
            var line = lines.get(at);
            boolean isOfColumns = line.cells().size() > 2;
            texts.add(skipped.contains(at) || isOfColumns || isMark.test(line) ? "" : line.text());
        }
        var analytes = new TreeMap<Integer, Set<Analyte>>();
        figures.forEach(at -> analytes.put(at, Set.copyOf(analytes(names, lines.get(at)))));
        return Revisions.in(
                texts,
                analytes,
                at -> samplesNamed.contains(at)
                        || Head.of(lines.get(at)).stream().anyMatch(field -> field.told() == Told.BAG),
                names.words());
    }

    private static boolean isMailHead(List<TextLine> lines, int at) {
        return FROM.matcher(lines.get(at).text()).find()
                && lines.subList(at + 1, Math.min(lines.size(), at + LINES_OF_A_HEAD)).stream()
                        .anyMatch(line -> SENT.matcher(line.text()).find());
    }

    /**
     * The places of figures under a line that closes those of the sample: after the first of them, one that stands alone
     * over others and is no title of a section that a result has; before them, one that says that it speaks of others.
     * A line that names the sample opens them again.
     *
     * @param days the places of lines that say a day of others are added to it
     */
    private static Set<Integer> closed(
            List<TextLine> lines,
            Names names,
            List<Integer> figures,
            Set<Integer> samplesNamed,
            int newest,
            Set<Integer> days) {
        var closed = new HashSet<Integer>();
        var open = new ArrayList<Integer>();
        var before = new HashSet<String>();
        var called = new HashSet<String>();
        boolean areYears = lines.stream()
                .flatMap(line -> SectionWords.year(line.text()).stream())
                .anyMatch(year -> year < newest);
        boolean isClosed = false;
        boolean isEmpty = false;
        for (int at = 0; at < lines.size(); at++) {
            var line = lines.get(at);
            if (figures.contains(at)) {
                isEmpty = false;
                // under what others have, and a gap, the same names again without a title
                boolean isNext = isClosed && open.isEmpty() && lines.get(at - 1).isBlank();
                isClosed &= !isNext || !isAgain(lines, names, closed, at);
                (isClosed ? closed : open).add(at);
                continue;
            }
            if (line.isBlank()) {
                continue;
            }
            var text = line.text().strip();
            var fields = Head.of(line);
            if (isClosed && fields.stream().anyMatch(field -> field.told().isDay())) {
                days.add(at);
            }
            var said = fields.stream()
                    .filter(field -> field.told() == Told.BAG || field.told() == Told.NUMBER)
                    .toList();
            if (SectionWords.speaksBack(text)) {
                closed.addAll(open);
                open.clear();
                isClosed = false;
                continue;
            }
            if (!said.isEmpty()
                    || samplesNamed.contains(at)
                    || NUMBERED.matcher(text).matches()
                    || Revisions.isOne(text) && SectionWords.year(text).isEmpty()) {
                isClosed &= isEmpty; // a title of others over it speaks of its figures too
                said.forEach(field -> called.add(Heading.key(field.value())));
                continue;
            }
            boolean isAlone = line.cells().size() == 1
                    && !Head.isName(text)
                    && !(before.isEmpty() && Head.isHouse(text))
                    && !hasAFigure(line, names)
                    && line.words().size() <= MOST_WORDS_OF_A_TITLE
                    && isOver(lines, names, figures, at)
                    && !SectionWords.isKnown(text)
                    && !isFurniture(line)
                    && !isOverAColumn(lines, figures, at)
                    && !before.contains(text);
            if (open.isEmpty() && closed.isEmpty()) {
                before.add(text);
            }
            if (!isAlone) {
                continue;
            }
            var key = Heading.key(text.replaceAll("[:.]$", ""));
            if (SectionWords.saysOwn(text, newest, areYears) || called.contains(key)) {
                isClosed = false;
            } else if (SectionWords.saysOthers(text, newest) || !open.isEmpty() && fields.isEmpty() && isTitle(text)) {
                isClosed = true;
                isEmpty = true;
            }
        }
        return closed;
    }

    /** "Sulfate-S 0.11 %": a name that nobody knows, and its figure; a year or a number of a report is none. */
    private static boolean hasAFigure(TextLine line, Names names) {
        return names.rows(line).stream()
                .flatMap(row -> row.figures().stream())
                .anyMatch(word -> word.text().matches("<?[0-9]*[.,][0-9]+.*")
                        || line.text().matches(".*[0-9] ?(?:%|ppm|ppb|[gm]{1,2}/kg|mcal/lb)\\W*$"));
    }

    private static boolean isAgain(List<TextLine> lines, Names names, Set<Integer> places, int at) {
        var own = analytes(names, lines.get(at));
        return places.stream()
                .flatMap(place -> analytes(names, lines.get(place)).stream())
                .anyMatch(own::contains);
    }

    private static List<Analyte> analytes(Names names, TextLine line) {
        return names.rows(line).stream()
                .map(Row::heading)
                .flatMap(heading -> heading == null ? Stream.empty() : Stream.of(heading.analyte()))
                .toList();
    }

    /** Beside the names of the next figures: a part of a heading over several lines. */
    private static boolean isOverAColumn(List<TextLine> lines, List<Integer> figures, int at) {
        return figures.stream()
                .filter(below -> below > at)
                .findFirst()
                .map(lines::get)
                .filter(line -> line.cells().size() > 2)
                .map(line -> TextLine.join(line.cells().get(0)))
                .filter(name -> name.to() < lines.get(at).words().get(0).from())
                .isPresent();
    }

    /** A sentence, or what is left of a name over several lines, is none; one that goes on to a colon is a title. */
    private static boolean isTitle(String text) {
        boolean isPart = text.matches("(?s)\\p{Ll}.*|[^(\\[]*[)\\]].*|.*[(\\[][^)\\]]*");
        return text.endsWith(":") || !isPart && !text.matches(".*[.!?,-]$");
    }

    /** The next line has figures, or it is a title or a heading over such a line. */
    private static boolean isOver(List<TextLine> lines, Names names, List<Integer> figures, int at) {
        for (int below = at + 1; below < lines.size(); below++) {
            var line = lines.get(below);
            if (figures.contains(below)) {
                return true;
            }
            boolean isBetween = line.isBlank()
                    || isFurniture(line)
                    || SectionWords.isKnown(line.text())
                    || !BasisSaid.in(line.text()).isEmpty()
                    || !Head.of(line).isEmpty()
                    || TableHead.of(line.cells(), names.words()).isPresent();
            if (!isBetween) {
                return false;
            }
        }
        return false;
    }

    private static boolean isAfter(OptionalInt message, int at) {
        return message.isPresent() && at > message.getAsInt();
    }

    /** In columns a year or a "last" is a heading's business. */
    private static boolean isSentence(TextLine line) {
        return !line.isAligned() || line.cells().size() == 1;
    }

    /** What a figure's own line says beside it in brackets is a remark: "8.8 % (last year 9.6)". */
    private static boolean speaksOutsideBrackets(String text, int newest) {
        var bare = text.replaceAll("[(\\[][^()\\[\\]]*[)\\]]", " ");
        return speaks(bare.matches(".*[0-9].*") ? bare : text, newest);
    }

    private static boolean speaks(String text, int newest) {
        if (BEFORE.matcher(text).find()) {
            return true;
        }
        return OF_A_YEAR
                .matcher(text)
                .results()
                .mapToInt(year -> Integer.parseInt(year.group(1) == null ? year.group(2) : year.group(1)))
                .anyMatch(year -> year < newest);
    }

    /** Up to the next empty line. */
    private static boolean isUnderATitle(List<TextLine> lines, int at, List<Integer> figures, int newest) {
        for (int above = at - 1; above >= 0 && !lines.get(above).isBlank(); above--) {
            var line = lines.get(above);
            if (!figures.contains(above)
                    && line.cells().size() == 1
                    && line.words().size() <= MOST_WORDS_OF_A_TITLE
                    && speaks(line.text(), newest)) {
                return true;
            }
        }
        return false;
    }
}
