package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A figure with its place in a table.
 *
 * @param name of its row, as written
 * @param panel which of the rows side by side
 * @param group which group of columns
 * @param basis null where neither column, row, name nor the lines above tell it
 * @param unit null where neither row, name nor column tells it
 * @param share what it is a share of where the house keeps it as one of something else; null as a rule
 * @param method how it was measured, where its line says so; null as a rule
 * @param beside the words of its name, unit and basis
 * @param read the part of the line that it was read from
 */
record Figure(
        TextLine line,
        String name,
        Analyte analyte,
        int panel,
        int group,
        @Nullable Basis basis,
        @Nullable Unit unit,
        Heading.@Nullable Share share,
        Tested.@Nullable Method method,
        List<Word> beside,
        String read,
        Word word) {
    /**
     * @param row one whose name is known
     * @param number which of its figures
     * @param column null where the row has one figure and no heading stands over it
     * @param saidAbove of all figures
     * @param saidOfIt in a sentence, of this analyte alone
     */
    static Figure of(
            TextLine line,
            Row row,
            int panel,
            int number,
            TableHead head,
            @Nullable Column column,
            @Nullable Basis saidAbove,
            @Nullable Basis saidOfIt,
            Tested.@Nullable Method method) {
        var heading = Objects.requireNonNull(row.heading(), row.name());
        return new Figure(
                line,
                row.name(),
                heading.analyte(),
                panel,
                column == null ? 0 : head.group(column),
                basis(row, number, heading, column, head, saidAbove, saidOfIt),
                unit(row, heading, column),
                heading.share(),
                method,
                row.words().stream()
                        .filter(word -> !row.figures().contains(word) && !word.isWithin())
                        .toList(),
                shown(line, row),
                row.figures().get(number));
    }

    private static @Nullable Basis basis(
            Row row,
            int number,
            Heading heading,
            @Nullable Column column,
            TableHead head,
            @Nullable Basis saidAbove,
            @Nullable Basis saidOfIt) {
        var over = column == null ? null : column.basis();
        boolean areMany = head.values().size() > 1;
        // a column of units on the right says it behind the last figure for all of the line
        var said = head.endsWithUnits() ? row.basis(row.figures().size() - 1) : row.basis(number);
        var own = said == null ? heading.basis() : said;
        // of several columns each has its basis; over a single one the line itself knows better
        if (over != null && (areMany || own == null && saidOfIt == null)) {
            return over;
        }
        return own != null ? own : saidOfIt != null ? saidOfIt : saidAbove;
    }

    private static @Nullable Unit unit(Row row, Heading heading, @Nullable Column column) {
        var unit = row.unit() != null ? row.unit() : heading.unit();
        if (unit != null || column == null) {
            return unit;
        }
        var told = column.unit();
        return told != null && told.kind() == heading.analyte().unit().kind() ? told : null;
    }

    /** A row as it stands in its line. */
    private static String shown(TextLine line, Row row) {
        int from = row.words().stream().mapToInt(Word::from).min().orElse(0);
        int to = row.words().stream().mapToInt(Word::to).max().orElse(0);
        return line.text().substring(from, to).strip().replaceAll(" {3,}", "   ");
    }

    /** Nothing or all of it, as dry matter of dry matter is. */
    boolean isWhole() {
        return word.figure().matches("0+(?:[.,]0+)?|100(?:[.,]0+)?");
    }
}
