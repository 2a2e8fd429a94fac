package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Whose;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Lines of a table that a column of it calls another year's or another's: 2025 beside 2026, "Last year", "Average". */
final class RowsOfOthers {
    private final Grid grid;
    private final Map<Integer, Whose> whose = new HashMap<>();
    private int column = -1;

    /** @param head its headings, one of which is over the column; −1 for none @param first the line under them */
    RowsOfOthers(Grid grid, int head, int first) {
        this.grid = grid;
        for (int at = 0; head >= 0 && at < grid.width(head) && column < 0; at++) {
            boolean isOfTimes = Whose.isColumn(grid.cell(head, at));
            boolean isOfNames = Told.of(grid.cell(head, at))
                    .filter(told -> told == Told.BAG || told == Told.NUMBER)
                    .isPresent();
            var labels = isOfTimes || isOfNames ? labels(first, at, isOfTimes) : List.<String>of();
            var said =
                    labels.stream().filter(label -> !label.isBlank()).distinct().toList();
            if (said.size() > 1
                    && said.stream().allMatch(label -> isOfTimes ? Whose.isSaid(label) : Whose.isOnly(label))) {
                column = at;
                var all = Whose.of(said);
                IntStream.range(0, labels.size())
                        .filter(row -> said.contains(labels.get(row)))
                        .forEach(row -> whose.put(first + row, all.get(said.indexOf(labels.get(row)))));
            }
        }
    }

    /** Line by line; what a merged cell says holds for the lines beside it. */
    private List<String> labels(int first, int column, boolean areMerged) {
        var labels = new ArrayList<String>();
        var left = "";
        for (int row = first; row < grid.height(); row++) {
            var cell = grid.cell(row, column);
            left = areMerged && cell.isBlank() ? left : cell;
            labels.add(left);
        }
        return labels;
    }

    /** The column that says it; −1 where none does. */
    int column() {
        return column;
    }

    /** Whether the figures of a line are another's, or could be: then they are listed. */
    boolean has(int row, Taking taking) {
        var is = whose.get(row);
        if (is != Whose.OTHERS && is != Whose.ASKED) {
            return false;
        }
        taking.notTaken.add("Line %d, %s: %s"
                .formatted(
                        grid.line(row),
                        is == Whose.OTHERS ? Whose.LISTED : "which of several times is this sample’s is not said",
                        grid.shown(row)));
        grid.settle(row);
        return true;
    }
}
