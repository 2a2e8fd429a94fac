package haywright.app.exchange.text;

import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Which column each figure of a line stands in. A figure between two columns stands in none. */
final class Placing {
    /** Nearer than this part of the way to the next column, a figure belongs to the nearest. */
    private static final double NEAR = 0.4;

    private Placing() {}

    /** Row by row, the column of each figure; null where no headings stand over them. */
    static @Nullable List<List<@Nullable Column>> of(TextLine line, List<Row> rows, TableHead head) {
        var columns = head.ofFigures(line.isAligned());
        if (columns.isEmpty()) {
            return null;
        }
        var all = new ArrayList<Word>();
        rows.forEach(row -> all.addAll(row.figures()));
        var together = of(all, columns, line.isAligned());
        boolean isPlaced = !together.contains(null);
        var places = new ArrayList<List<@Nullable Column>>();
        int number = 0;
        for (int panel = 0; panel < rows.size(); panel++) {
            int figures = rows.get(panel).figures().size();
            int group = panel;
            // each half of a page has its own columns: what is not clear in one does not touch the other
            var own = isPlaced || rows.size() != head.groups()
                    ? columns
                    : columns.stream().filter(c -> head.group(c) == group).toList();
            places.add(
                    isPlaced
                            ? together.subList(number, number + figures)
                            : of(rows.get(panel).figures(), own, line.isAligned()));
            number += figures;
        }
        return places;
    }

    /** @return one for each figure; null for one that cannot be placed */
    static List<@Nullable Column> of(List<Word> figures, List<Column> columns, boolean isAligned) {
        if (Stream.concat(figures.stream(), columns.stream().map(Column::place)).anyMatch(Word::isInCell)) {
            return inCells(figures, columns);
        }
        if (figures.size() == columns.size() && (!isAligned || isInOrder(figures, columns))) {
            return new ArrayList<>(columns);
        }
        var nowhere = new ArrayList<@Nullable Column>(Collections.nCopies(figures.size(), null));
        if (columns.size() == 1 && figures.size() == 1) {
            return new ArrayList<>(columns);
        }
        if (!isAligned || figures.size() > columns.size() || columns.size() < 2) {
            return nowhere;
        }
        var placed = new ArrayList<@Nullable Column>();
        for (var figure : figures) {
            var column = nearest(figure, columns);
            if (column == null || placed.contains(column)) {
                return nowhere;
            }
            placed.add(column);
        }
        return placed;
    }

    /** A sign parts the cells: each figure is under the heading of its own cell, or under none. */
    private static List<@Nullable Column> inCells(List<Word> figures, List<Column> columns) {
        return figures.stream()
                .<@Nullable Column>map(figure -> figures.stream()
                                        .filter(other -> other.cell() == figure.cell())
                                        .count()
                                > 1
                        ? null
                        : columns.stream()
                                .filter(column -> column.away(figure) == 0)
                                .findFirst()
                                .orElse(null))
                .collect(Collectors.toList());
    }

    /** As many figures as columns, and each stands nearest to its own. */
    private static boolean isInOrder(List<Word> figures, List<Column> columns) {
        for (int i = 0; i < figures.size(); i++) {
            var figure = figures.get(i);
            var own = columns.get(i);
            if (columns.stream().anyMatch(other -> other.away(figure) < own.away(figure))) {
                return false;
            }
        }
        return true;
    }

    private static @Nullable Column nearest(Word figure, List<Column> columns) {
        var sorted = columns.stream()
                .sorted((a, b) -> Double.compare(a.away(figure), b.away(figure)))
                .toList();
        var first = sorted.get(0);
        var second = sorted.get(1);
        double apart = first.away(second.place());
        return first.away(figure) <= NEAR * apart ? first : null;
    }
}
