package haywright.app.exchange.text;

import haywright.app.exchange.text.TextLine.Word;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Keeps account of every word of a sheet, so that none is neither taken nor listed. */
final class Ledger {
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

    /** Everything that nothing was said of, a line each, as it stands. */
    List<String> rest() {
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
