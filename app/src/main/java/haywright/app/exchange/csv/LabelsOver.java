package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Whose;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A line over the headings that says whose figures stand in the columns under each of its cells, as in cells that were
 * merged: "2025" and "2026" over a pair of bases each.
 */
final class LabelsOver {
    private static final int MOST_LINES = 3;

    private LabelsOver() {}

    /** The lines of a table with what stands over its headings written before each of them; empty where nothing does. */
    static Optional<List<Grid.Line>> within(List<Grid.Line> lines, Grid grid, NameColumns names) {
        int head = names.head();
        for (int row = head - 1; row >= Math.max(0, head - MOST_LINES); row--) {
            var labels = labels(grid, row, names);
            if (labels.stream().filter(label -> !label.isEmpty()).distinct().count() > 1) {
                var whose = Whose.of(withNames(grid, row, labels));
                return whose.contains(Whose.OTHERS) || whose.contains(Whose.ASKED)
                        ? Optional.of(written(lines, row, head, labels))
                        : Optional.empty(); // each is of a sample
            }
        }
        return Optional.empty();
    }

    /** Of each column what stands over it; nothing in all of them where the line says no such thing. */
    private static List<String> labels(Grid grid, int row, NameColumns names) {
        int from = names.columns().get(0);
        var corner = grid.cell(row, from);
        boolean isCorner = corner.isBlank()
                || ColumnWords.isNames(corner)
                || Whose.isColumn(corner)
                || Told.of(corner).filter(Told.BAG::equals).isPresent();
        var said = IntStream.range(from + 1, grid.width(row))
                .mapToObj(column -> grid.cell(row, column))
                .filter(cell -> !cell.isBlank())
                .toList();
        boolean areLabels = isCorner
                && said.stream().anyMatch(Whose::isSaid)
                && said.stream()
                        .allMatch(cell -> Heading.basis(cell).isEmpty()
                                && Heading.unit(cell).isEmpty()
                                && cell.indexOf(':') < 0);
        if (!areLabels) {
            return List.of();
        }
        var labels = new ArrayList<String>();
        var left = "";
        for (int column = 0; column < Math.max(grid.width(row), grid.width(names.head())); column++) {
            boolean isBeside = column <= from || names.columns().contains(column);
            left = isBeside ? "" : grid.cell(row, column).isBlank() ? left : grid.cell(row, column);
            labels.add(left);
        }
        return labels;
    }

    /** Each label with what another line calls its sample, where one has several names over the columns. */
    private static List<String> withNames(Grid grid, int row, List<String> labels) {
        var all = new ArrayList<>(labels);
        for (int above = 0; above < row; above++) {
            var left = "";
            var names = new ArrayList<String>();
            for (int column = 0; column < labels.size(); column++) {
                var cell = grid.cell(above, column);
                left = labels.get(column).isEmpty() ? "" : cell.isBlank() ? left : cell;
                names.add(left);
            }
            if (names.stream().filter(name -> !name.isEmpty()).distinct().count() > 1) {
                for (int column = 0; column < all.size(); column++) {
                    all.set(column, (names.get(column) + " " + all.get(column)).strip());
                }
            }
        }
        return all.stream().filter(label -> !label.isEmpty()).distinct().toList();
    }

    private static List<Grid.Line> written(List<Grid.Line> lines, int row, int head, List<String> labels) {
        var written = new ArrayList<>(lines);
        var own = lines.get(head).cells();
        var cells = new ArrayList<String>();
        for (int column = 0; column < Math.max(own.size(), labels.size()); column++) {
            var cell = column < own.size() ? own.get(column) : "";
            var label = column < labels.size() ? labels.get(column) : "";
            cells.add(label.isEmpty() || column >= own.size() ? cell : (label + " " + cell).strip());
        }
        written.set(head, new Grid.Line(lines.get(head).number(), cells.subList(0, own.size())));
        written.set(
                row,
                new Grid.Line(
                        lines.get(row).number(),
                        lines.get(row).cells().stream().map(cell -> "").toList()));
        return written;
    }
}
