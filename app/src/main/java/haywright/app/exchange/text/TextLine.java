package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.words.Said;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** A line of a report, cut into words that know in which column of the text they stand. */
record TextLine(int number, int page, String text, List<Word> words) {
    private static final int MOST_COLUMNS = 1000;
    private static final Pattern WORD = Pattern.compile("\\S+");
    private static final Pattern FIGURE =
            Pattern.compile("<?[-−+]?(?:[0-9]{1,3}(?:[,.’'][0-9]{3})+(?:[.,][0-9]+)?|[0-9]*[.,]?[0-9]+)[*†]?");
    private static final Pattern GLUED = Pattern.compile("(<?[-−+]?[0-9.,]*[0-9])(%|[A-Za-zµ][A-Za-z0-9µ/]*)");
    private static final Set<String> NOTHING = Set.of("-", "--", "---", "–", "—", "n/a", "na", ".");
    /** Words that say together what stands in place of a figure. */
    private static final String INSTEAD =
            "(?:< ?[0-9.,]+|(?:less than|below) [0-9.,]+|not (?:detected|detectable|tested|analy[sz]ed|requested|determined|run)"
                    + "|none detected|below detection(?: limit)?|nd \\(?<? ?[0-9.,]+\\)?)(?![0-9.])";

    private static final Pattern TOGETHER = Pattern.compile("(?i)" + INSTEAD);
    /** In columns, also what is usual: from one figure to another. */
    private static final Pattern TOGETHER_IN_COLUMNS =
            Pattern.compile("(?i)" + INSTEAD + "|[0-9][0-9.,]*(?:[-–—]| [-–—] )[0-9][0-9.,]*(?![^ ])");

    /** A word, or several that are one thing. */
    record Word(String text, int from, int to) {
        double middle() {
            return (from + to) / 2.0;
        }

        boolean isFigure() {
            return FIGURE.matcher(text).matches() || Said.of(text).isPresent();
        }

        boolean isNothing() {
            return NOTHING.contains(text.toLowerCase(Locale.ROOT));
        }

        /** The figure without the star that points to a footnote. */
        String figure() {
            return text.replaceAll("[*†]$", "");
        }

        Word with(Word next) {
            return new Word(text + " " + next.text, Math.min(from, next.from), Math.max(to, next.to));
        }
    }

    static TextLine of(int number, int page, String raw) {
        var plain = raw.length() > MOST_COLUMNS ? raw.substring(0, MOST_COLUMNS) : raw;
        // what leads the eye from a name to its figure, and what draws a table
        var text = replace(plain.replace("\t", "    "), "\\.{3,}|…+|_{2,}|[|│¦]|(?:\\. ){3,}");
        text = text.replaceAll("[\\p{Cntrl}\\u00a0\\u202f]", " ").stripTrailing();
        return new TextLine(number, page, text, words(text));
    }

    private static String replace(String text, String pattern) {
        return Pattern.compile(pattern)
                .matcher(text)
                .replaceAll(found -> " ".repeat(found.group().length()));
    }

    private static List<Word> words(String text) {
        var words = new ArrayList<Word>();
        var together = (isAligned(text) ? TOGETHER_IN_COLUMNS : TOGETHER).matcher(text);
        int at = 0;
        while (together.find(at)) {
            boolean startsWord = together.start() == 0 || text.charAt(together.start() - 1) == ' ';
            plain(text, at, startsWord ? together.start() : together.end(), words);
            if (startsWord) {
                words.add(new Word(together.group(), together.start(), together.end()));
            }
            at = together.end();
        }
        plain(text, at, text.length(), words);
        return List.copyOf(words);
    }

    private static void plain(String text, int from, int to, List<Word> words) {
        var word = WORD.matcher(text).region(from, to);
        while (word.find()) {
            var glued = GLUED.matcher(word.group());
            if (glued.matches() && Heading.unit(glued.group(2)).isPresent()) {
                int cut = word.start() + glued.group(1).length();
                words.add(new Word(glued.group(1), word.start(), cut));
                words.add(new Word(glued.group(2), cut, word.end()));
            } else {
                words.add(new Word(word.group(), word.start(), word.end()));
            }
        }
    }

    /** As a reader is shown it. */
    String shown() {
        var shown = text.strip().replaceAll(" {3,}", "   ");
        return shown.length() > 160 ? shown.substring(0, 160) + "…" : shown;
    }

    /** As it stands among what was not taken. */
    String notTaken(String why) {
        return "Line %d, %s: %s".formatted(number, why, shown());
    }

    boolean isBlank() {
        return words.isEmpty();
    }

    /** Words with two spaces or more between them stand in columns of their own. */
    boolean isAligned() {
        return isAligned(text);
    }

    private static boolean isAligned(String text) {
        return text.strip().contains("  ");
    }

    /** Words that one space parts, together. */
    List<List<Word>> cells() {
        var cells = new ArrayList<List<Word>>();
        for (var word : words) {
            var last = cells.isEmpty() ? null : cells.get(cells.size() - 1);
            if (last == null || word.from - last.get(last.size() - 1).to > 1) {
                cells.add(new ArrayList<>(List.of(word)));
            } else {
                last.add(word);
            }
        }
        return cells;
    }

    static Word join(List<Word> words) {
        var all = words.get(0);
        for (var word : words.subList(1, words.size())) {
            all = all.with(word);
        }
        return all;
    }
}
