package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TextLine.Word;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
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
 */
record Figure(
        TextLine line,
        String name,
        Analyte analyte,
        int panel,
        int group,
        @Nullable Basis basis,
        @Nullable Unit unit,
        Word word) {
    /** @param row one whose name is known @param column null where the row has one figure and no heading stands over it */
    static Figure of(
            TextLine line,
            Row row,
            int panel,
            TableHead head,
            @Nullable Column column,
            @Nullable Basis saidAbove,
            Word word) {
        var heading = Objects.requireNonNull(row.heading(), row.name());
        return new Figure(
                line,
                row.name(),
                heading.analyte(),
                panel,
                column == null ? 0 : head.group(column),
                basis(row, heading, column, saidAbove),
                unit(row, heading, column),
                word);
    }

    private static @Nullable Basis basis(Row row, Heading heading, @Nullable Column column, @Nullable Basis saidAbove) {
        if (column != null && column.basis() != null) {
            return column.basis();
        }
        if (row.basis() != null) {
            return row.basis();
        }
        return heading.basis() != null ? heading.basis() : saidAbove;
    }

    private static @Nullable Unit unit(Row row, Heading heading, @Nullable Column column) {
        var unit = row.unit() != null ? row.unit() : heading.unit();
        if (unit != null || column == null) {
            return unit;
        }
        var told = column.unit();
        return told != null && told.kind() == heading.analyte().unit().kind() ? told : null;
    }

    /** Nothing or all of it, as dry matter of dry matter is. */
    boolean isWhole() {
        return word.figure().matches("0+(?:[.,]0+)?|100(?:[.,]0+)?");
    }
}
