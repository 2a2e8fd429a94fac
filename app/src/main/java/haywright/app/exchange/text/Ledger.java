package haywright.app.exchange.text;

import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Keeps account of every word of a sheet, so that none is neither taken nor listed. */
final class Ledger {
    /** In what else stands on the sheet: a figure with its unit, or digits that a scanner took for letters. */
    private static final Pattern LOOKS_LIKE_FIGURES = Pattern.compile(
            "^Line [0-9]+: (?:.*[0-9] ?(?:%|ppm|ppb|[gm]{1,2}/kg|µg/kg)(?![\\p{L}0-9]).*|.*\\s%\\s.*[0-9].*|.*(?<![^ <])[0-9OIl]{0,3}\\.[0-9OIl]{1,3}(?![^ ,;]).*|[<0-9., ]+)$");

    private final List<TextLine> lines = new ArrayList<>();
    private final List<String> cut = new ArrayList<>();
    private final Map<Integer, BitSet> settled = new HashMap<>();

    /** @param length of the line as it came, of which only the first columns are read */
    void open(TextLine line, int length) {
        lines.add(line);
        if (length > TextLine.MOST_COLUMNS) {
            cut.add("Line %d goes on after column %,d, and is not read there"
                    .formatted(line.number(), TextLine.MOST_COLUMNS));
        }
    }

    /** These words were taken, or what was not taken is said of them elsewhere. */
    void settle(TextLine line, Collection<Word> words) {
        words.forEach(word -> settle(line.number(), word.from(), word.to()));
    }

    /** Headings, each of which can go over several lines. */
    void settle(List<TextLine> over, List<Word> headings) {
        for (var line : over) {
            settle(
                    line,
                    line.words().stream()
                            .filter(word -> headings.stream()
                                    .anyMatch(h -> h.from() <= word.from()
                                            && word.to() <= h.to()
                                            && h.text().contains(word.text())))
                            .toList());
        }
    }

    void settle(TextLine line) {
        settle(line, line.words());
    }

    void settle(int line, int from, int to) {
        settled.computeIfAbsent(line, n -> new BitSet()).set(from, Math.max(from, to));
    }

    /** Everything that nothing was said of, a line each, as it stands; not what looks like figures. */
    List<String> rest() {
        return all().stream()
                .filter(line -> !LOOKS_LIKE_FIGURES.matcher(line).find())
                .toList();
    }

    /** What nothing was said of and looks like figures, a line each with the reason. */
    List<String> figures() {
        return all().stream()
                .filter(line -> LOOKS_LIKE_FIGURES.matcher(line).find())
                .map(line -> line.replaceFirst(":", ", what it says is not understood:"))
                .toList();
    }

    private List<String> all() {
        var rest = new ArrayList<>(cut);
        for (var line : lines) {
            var done = settled.getOrDefault(line.number(), new BitSet());
            var left = line.words().stream()
                    .filter(word -> done.get(word.from(), word.to()).cardinality() < word.to() - word.from())
                    .map(Word::text)
                    .toList();
            if (left.stream().anyMatch(text -> text.matches(".*[\\p{L}\\p{N}].*"))) {
                rest.add("Line %d: %s".formatted(line.number(), String.join(" ", left)));
            }
        }
        return rest;
    }
}
