package haywright.app.exchange.text;

import haywright.app.exchange.lab.Laboratory;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import java.util.List;

/** Who prints a sheet: the first line near its top that calls itself a laboratory, else its very first words. */
final class Letterhead {
    /** Lines of a page in which it is looked for. */
    private static final int LINES = 8;

    private final Ledger ledger;
    private String named = "";
    private String first = "";
    /** The number of a line that is nothing else; 0 for none. */
    private int firstLine;

    private int page = 1;
    private int lines;

    Letterhead(Ledger ledger) {
        this.ledger = ledger;
    }

    /** Empty where the sheet does not say. */
    String laboratory() {
        return named.isEmpty() ? first : named;
    }

    /** Whether a line holds it and nothing else. */
    boolean isAll(TextLine line) {
        return line.number() == firstLine;
    }

    /** The very first words, where no other line calls itself a laboratory. */
    void first(TextLine line) {
        var words = line.cells().get(0);
        var cell = TextLine.join(words).text().matches(".*\\p{L}.*") ? words : line.words();
        var text = TextLine.join(cell).text();
        Head.letterhead(text).ifPresent(name -> {
            first = Laboratory.name(name);
            settleName(line, cell, name.equals(first) ? TextLine.join(cell).text() : first);
            firstLine = cell.size() == line.words().size() ? line.number() : 0;
        });
    }

    /** A line that is neither headings nor figures. @param said what it tells of the sample */
    void above(TextLine line, List<Head.Field> said) {
        if (line.page() != page) {
            page = line.page();
            lines = 0;
        }
        if (++lines > LINES || !named.isEmpty() && line.page() == 1) {
            return;
        }
        line.cells().stream()
                .map(TextLine::join)
                .filter(cell -> said.stream().noneMatch(f -> f.from() <= cell.to() && cell.from() <= f.to()))
                .map(Word::text)
                .filter(Head::isName)
                .findFirst()
                .or(() -> Head.spacedName(line))
                .ifPresent(name -> {
                    named = Laboratory.name(name);
                    settleName(line, line.words(), named);
                });
    }

    private void settleName(TextLine line, List<Word> words, String name) {
        ledger.settle(
                line,
                words.stream()
                        .filter(word -> name.contains(word.text().replaceAll("[,;]$", "")))
                        .toList());
    }
}
