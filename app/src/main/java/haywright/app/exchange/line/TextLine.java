package haywright.app.exchange.line;

import haywright.app.exchange.lab.Delimited;
import haywright.app.exchange.lab.Heading;
import haywright.app.words.Said;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** A line of a report, cut into words that know in which column of the text they stand. */
public record TextLine(int number, int page, String text, List<Word> words) {
    public static final int MOST_COLUMNS = 1000;
    /** What leads the eye from a name to its figure or its value, and what draws a table. */
    private static final String LEADERS =
            "\\.{3,}|…+|_{2,}|[|│¦]|(?:\\. ){3,}|(?<=[\\p{L}\\p{N}%)] {0,3})\\.(?: ?\\.)+(?=\\s)|(?<=[\\p{L})] )\\.(?= \\S)";

    private static final Pattern WORD = Pattern.compile("\\S+");
    private static final Pattern FIGURE =
            Pattern.compile("<?[-−+]?(?:[0-9]{1,3}(?:[,.’'][0-9]{3})+(?:[.,][0-9]+)?|[0-9]*[.,]?[0-9]+)[*†]?");
    private static final Pattern GLUED = Pattern.compile("(<?[-−+]?[0-9.,]*[0-9])(%|[A-Za-zµμ][A-Za-z0-9µμ/]*)");
    /** A figure with the signs of a sentence about it, or with its name before a colon. */
    private static final Pattern IN_SENTENCE =
            Pattern.compile("([(\\[~≈]?)(<?[-−+]?[0-9.,]*[0-9]%?)([.,;:)\\]]+)|([(\\[~≈])(<?[-−+]?[0-9.,]*[0-9]%?)");

    private static final Pattern NAMED_BEFORE = Pattern.compile("(\\p{L}[^:=0-9]*)([:=])(<?[-−+]?[0-9][0-9.,]*.*)");
    private static final Set<String> NOTHING = Set.of(
            "-", "--", "---", "–", "—", "n/a", "na", ".", "n/d", "n/r", "qns", "lost", "spilled", "insufficient");
    /** Words that say together what stands in place of a figure. */
    private static final String INSTEAD =
            "(?:[<≤] {0,8}[0-9.,]+|(?:less {1,8}than|below|under) {1,8}[0-9.,]+|insufficient (?:sample|material|amount)|not enough(?: sample| material)?|no (?:sample|result)|see (?:foot)?notes?|not (?:detected|detectable|tested|analy[sz]ed|requested|determined|run|done|reported)"
                    + "|none (?:detected|found)|below detection(?: limit)?|nd \\(?<? ?[0-9.,]+\\)?)(?![0-9.])";

    private static final Pattern NO_FIGURE = Pattern.compile(
            "(?i)insufficient (?:sample|material|amount)|not enough(?: sample| material)?|no (?:sample|result)|see (?:foot)?notes?");

    /** How far from the truth a figure may be; no figure of its own. */
    public static final String WITHIN = "(?:±|\\+/?[-−]) ?[0-9.,]*[0-9]%?";

    private static final Pattern GLUED_WITHIN = Pattern.compile("([0-9.,]*[0-9])(" + WITHIN + ")");

    /** Figures that belong to a name: hours, a method with its number or year, a factor, a basis; and all in brackets. */
    private static final String OF_A_NAME =
            "|(?-i:(?<![0-9.,])(?:[5-9][05]|1[0-3][05]) ?[°º]? ?C)(?= |$|[,;)])|[0-9]{1,3} ?-?(?:hours?|hrs?|h)\\b\\.?|[1-5] ?x\\b"
                    + "|n ?[x×*] ?[0-9][.,][0-9]+|(?:aoac|nrc|nasem|iso|astm|nfta)[ -]?[0-9]+(?:[.:-][0-9]+)*"
                    + "|(?<![\\p{L}])(?:tdn|nfc|nsc|ne[lmg]|me|de)[ ,] ?(?:19|20)[0-9]{2}(?=[ ,%)])"
                    + "|(?:90|100) ?% (?:dm|dry(?: matter)?)\\b(?: basis)?"
                    + "|[(\\[](?=[^()\\[\\]]*(?:\\p{L}|20[0-9]{2}))(?:[^()\\[\\] ]| (?! )){1,60}[)\\]]";

    /** "12 .8", "12. 8": a scanner has parted one figure; its first half alone would be another one. */
    private static final String PARTED = "<?[0-9]+(?: [.,] ?|[.,] )[0-9]+";

    /** What should not be passed: "0.4 max", "up to 5"; and from one figure to another. */
    private static final String BOUND =
            "[0-9.,]*[0-9] ?(?:max|min)(?:imum|\\.)?|(?:max|min)(?:imum|\\.)? [0-9.,]*[0-9]|up to [0-9.,]*[0-9]"
                    + "|[0-9.,]*[0-9](?: to | ?[-–—] ?)[0-9.,]*[0-9]";

    private static final Pattern TOGETHER = Pattern.compile("(?iu)" + INSTEAD + "|" + WITHIN + OF_A_NAME);
    /** In columns, also what is usual: from one figure to another. */
    private static final Pattern TOGETHER_IN_COLUMNS = Pattern.compile("(?iu)" + INSTEAD + "|" + WITHIN + OF_A_NAME
            + "|" + BOUND + "(?![^ ])"
            + "|[0-9][0-9.,]*(?:[-–—]| [-–—] )[0-9][0-9.,]*(?![^ ])" + "|" + PARTED + "(?![^ ])");

    /**
     * A word, or several that are one thing.
     *
     * @param cell which cell of its line, where a sign parts them; −1 where only its place tells
     */
    public record Word(String text, int from, int to, int cell) {
        static final int BY_PLACE = -1;

        public Word(String text, int from, int to) {
            this(text, from, to, BY_PLACE);
        }

        /** Whether a sign parts the cells of its line. */
        public boolean isInCell() {
            return cell != BY_PLACE;
        }

        public double middle() {
            return (from + to) / 2.0;
        }

        public boolean isFigure() {
            return FIGURE.matcher(text).matches() || Said.of(text).isPresent();
        }

        /** A figure that a scanner has parted: no number to be taken, and no heading. */
        public boolean isParted() {
            return text.matches(PARTED);
        }

        /** A figure with letters that a scanner took for its digits: "9O.7", "l.21". */
        public boolean isGarbled() {
            return text.matches("(?=.*[0-9.,])<?[0-9OolI]*[.,]?[0-9OolI]+");
        }

        /** What is usual or wanted, in a cell of its own. */
        public boolean isBound() {
            return text.matches("(?i)" + BOUND);
        }

        /** How far from the truth the figure before it may be, which has no place in a report here. */
        public boolean isWithin() {
            return text.matches(WITHIN);
        }

        public boolean isNothing() {
            return NOTHING.contains(text.toLowerCase(Locale.ROOT))
                    || NO_FIGURE.matcher(text).matches();
        }

        /** The figure without the star that points to a footnote. */
        public String figure() {
            return text.replaceAll("[*†]$", "")
                    .replace('≤', '<')
                    .replaceFirst("^<\\s+", "< ")
                    .replaceFirst("(?i)^(?:less\\s+than|below|under)\\s+", "<");
        }

        /** Both, one under or behind the other. */
        public Word with(Word next) {
            return new Word(
                    text + " " + next.text,
                    Math.min(from, next.from),
                    Math.max(to, next.to),
                    cell == next.cell ? cell : BY_PLACE);
        }

        /** In the same place. */
        public Word with(String other) {
            return new Word(other, from, to, cell);
        }

        private Word beside(Word next) {
            return next.from == to ? new Word(text + next.text, from, next.to, cell) : with(next);
        }
    }

    public static TextLine of(int number, int page, String raw) {
        var plain = raw.length() > MOST_COLUMNS ? raw.substring(0, MOST_COLUMNS) : raw;
        var text = replace(plain.replace("\t", "    "), LEADERS);
        text = text.replaceAll("[\\p{Cntrl}\\u00a0\\u202f]", " ").stripTrailing();
        return new TextLine(number, page, text, inCells(words(text), plain));
    }

    /** Each with the number of its cell, where a sign parts them. */
    private static List<Word> inCells(List<Word> words, String line) {
        return line.indexOf(Delimited.CUT) < 0
                ? words
                : words.stream()
                        .map(word -> new Word(word.text, word.from, word.to, (int) line.substring(0, word.from)
                                .chars()
                                .filter(c -> c == Delimited.CUT)
                                .count()))
                        .toList();
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
            parts(word.group(), word.start(), words);
        }
    }

    private static void parts(String word, int from, List<Word> words) {
        var within = GLUED_WITHIN.matcher(word);
        if (within.matches()) {
            parts(within.group(1), from, words);
            words.add(new Word(within.group(2), from + within.start(2), from + within.end(2)));
            return;
        }
        var named = NAMED_BEFORE.matcher(word);
        var sentence = IN_SENTENCE.matcher(word);
        var glued = GLUED.matcher(word);
        if (word.matches("[(\\[][0-9\\p{Ll}][)\\]]")) { // the mark of a footnote
            words.add(new Word(word, from, from + word.length()));
        } else if (named.matches()) {
            parts(word.substring(0, named.end(2)), from, words);
            parts(named.group(3), from + named.start(3), words);
        } else if (sentence.matches()) {
            for (int i = 1; i <= sentence.groupCount(); i++) {
                var part = sentence.group(i);
                if (part != null && !part.isEmpty()) {
                    boolean isFigure = part.matches(".*[0-9].*");
                    if (isFigure) {
                        parts(part, from + sentence.start(i), words);
                    } else {
                        words.add(new Word(part, from + sentence.start(i), from + sentence.end(i)));
                    }
                }
            }
        } else if (glued.matches() && Heading.unit(glued.group(2)).isPresent()) {
            int cut = from + glued.group(1).length();
            words.add(new Word(glued.group(1), from, cut));
            words.add(new Word(glued.group(2), cut, from + word.length()));
        } else {
            words.add(new Word(word, from, from + word.length()));
        }
    }

    /** As a reader is shown it. */
    public String shown() {
        var shown = text.strip().replaceAll(" {3,}", "   ");
        return shown.length() > 160 ? shown.substring(0, 160) + "…" : shown;
    }

    /** As it stands among what was not taken: whole. */
    public String notTaken(String why) {
        return "Line %d%s: %s"
                .formatted(number, why.isEmpty() ? "" : ", " + why, text.strip().replaceAll(" {3,}", "   "));
    }

    /** A line with decimals holds figures, and is none of headings. */
    public boolean hasDecimals() {
        return words.stream().anyMatch(word -> word.isFigure() && word.text().matches(".*[0-9][.,][0-9].*"));
    }

    public boolean isBlank() {
        return words.isEmpty();
    }

    /** Words with two spaces or more between them stand in columns of their own. */
    public boolean isAligned() {
        return isAligned(text);
    }

    private static boolean isAligned(String text) {
        return text.strip().contains("  ");
    }

    /** Words that one space parts, together. */
    public List<List<Word>> cells() {
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

    public static Word join(List<Word> words) {
        var all = words.get(0);
        for (var word : words.subList(1, words.size())) {
            all = all.beside(word);
        }
        return all;
    }

    /** One under the other. */
    public static Word stack(List<Word> words) {
        return words.stream().reduce(Word::with).orElseThrow();
    }
}
