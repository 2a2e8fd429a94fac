package haywright.app.exchange.text;

import java.time.Year;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Lines with figures of another report: quoted in a letter about this one, under a line or in a sentence that speaks of
 * last year or of a year before the newest on the page. They are listed, never taken. Where all figures stand in a quote,
 * it is the report.
 */
final class OfOthers {
    private static final Pattern QUOTED = Pattern.compile("^\\s{0,8}>");
    private static final Pattern MESSAGE =
            Pattern.compile("(?i)^[\\s>]{0,8}(?:-{2,} ?(?:original|forwarded) message|on .{4,120} wrote:\\s{0,4}$)");
    private static final Pattern BEFORE = Pattern.compile(
            "(?iu)\\b(?:last|previous|prior|past|earlier) (?:year|yr|season|winter|fall|spring|summer|report|test|sample|results?|time|cutting)");
    private static final Pattern YEAR = Pattern.compile("(?<![0-9.,-])(20[0-9]{2})(?![0-9.,-]*[0-9])");
    private static final Pattern OF_A_YEAR = Pattern.compile(
            "(?iu)(?:\\b(?:in|from|of|your|our|the) (20[0-9]{2})\\b|\\b(20[0-9]{2}) (?:sample|results?|report|test|analysis)\\b)");
    private static final int MOST_WORDS_OF_A_TITLE = 10;

    private OfOthers() {}

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
                        .map(line -> line.replaceFirst("^\\s{0,8}(?:> ?){1,20}", ""))
                        .toList();
    }

    /** Their places in the list. */
    static Set<Integer> in(List<TextLine> lines, Names names) {
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
                .filter(at -> MESSAGE.matcher(lines.get(at).text()).find())
                .filter(at -> figures.stream().anyMatch(figure -> figure < at))
                .findFirst();
        boolean isQuoteApart = figures.stream()
                .anyMatch(at -> !QUOTED.matcher(lines.get(at).text()).find());
        var others = new HashSet<Integer>();
        var blocks = Blocks.ofOthers(lines, figures);
        for (int at : figures) {
            var text = lines.get(at).text();
            if (blocks.contains(at)
                    || isQuoteApart && QUOTED.matcher(text).find()
                    || isAfter(message, at)
                    || isSentence(lines.get(at)) && speaks(text, newest)
                    || isUnderATitle(lines, at, figures, newest)) {
                others.add(at);
            }
        }
        return others;
    }

    private static boolean isAfter(OptionalInt message, int at) {
        return message.isPresent() && at > message.getAsInt();
    }

    /** In columns a year or a "last" is a heading's business. */
    private static boolean isSentence(TextLine line) {
        return !line.isAligned() || line.cells().size() == 1;
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
