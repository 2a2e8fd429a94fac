package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Whose;
import haywright.forage.Basis;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The lines over names of analytes across: whose figures stand in each column, and the basis of a group of them. */
final class OverNames {
    private static final int LINES_OF_LABELS = 2;

    private final Grid grid;
    private final int head;
    /** What says over a column whose figures stand in it. */
    private final Map<Integer, String> labels = new HashMap<>();

    OverNames(Grid grid, int head) {
        this.grid = grid;
        this.head = head;
        read();
    }

    /** Whether what stands over a column leaves it out, or it is asked first; either is listed. */
    boolean isOfOthers(int column, String written, int first, Taking taking) {
        var over = labels.getOrDefault(column, "");
        if (over.isEmpty()) {
            return false;
        }
        var heading = over + " " + written;
        var said = grid.words.column(heading).orElse(null);
        var all = labels.values().stream().distinct().toList();
        var whose = said != null
                ? said == ColumnIs.LEFT_OUT ? Whose.OTHERS : Whose.OWN
                : Whose.of(all.stream().map(label -> Whose.said(label).who()).toList())
                        .get(all.indexOf(over));
        if (said != null || whose == Whose.ASKED) {
            taking.column(new Understood.Column(heading, grid.example(first, column), said, false));
        }
        if (whose != Whose.OTHERS && whose != Whose.ASKED) {
            return false;
        }
        taking.notTaken.add("Column “%s”: %s%s"
                .formatted(
                        heading,
                        whose == Whose.ASKED ? "it is not known whose figures these are. Say so below" : Whose.LISTED,
                        grid.under(first, column)));
        return true;
    }

    /** What the cells of a line over the names say of whose figures stand under each, as in cells that were merged. */
    private void read() {
        for (int row = head - 1; row >= Math.max(0, head - LINES_OF_LABELS); row--) {
            if (isHistory(row)) {
                continue;
            }
            var all = new LinkedHashMap<Integer, String>();
            var left = "";
            for (int column = 0; column < grid.width(head); column++) {
                var cell = column < grid.width(row) ? grid.cell(row, column).strip() : "";
                boolean isCorner = column == 0
                        && (ColumnWords.isNames(cell) || Told.of(cell).isPresent());
                left = cell.isEmpty() || isCorner ? left : cell;
                if (!left.isEmpty()) {
                    all.put(column, left);
                }
            }
            var said = all.values().stream().distinct().toList();
            var whose =
                    Whose.of(said.stream().map(label -> Whose.said(label).who()).toList());
            boolean areLabels = said.stream()
                            .allMatch(label -> label.indexOf(':') < 0
                                    && Told.of(label)
                                            .filter(told -> !Whose.isSaid(label))
                                            .isEmpty())
                    && said.stream()
                            .anyMatch(label -> Whose.isSaid(Whose.said(label).who()));
            if (areLabels && (whose.contains(Whose.OTHERS) || whose.contains(Whose.ASKED))) {
                labels.putAll(all);
                return;
            }
        }
    }

    /** "Customer history" alone in its line is the title of all that was tested, each of its own day. */
    private boolean isHistory(int row) {
        return grid.cell(row, 0).matches("(?i).*\\bhistor(?:y|ical|ic)\\b.*")
                && IntStream.range(1, grid.width(row))
                        .allMatch(column -> grid.cell(row, column).isBlank());
    }

    /** The basis of a group of columns, in the line over the names. */
    @Nullable
    Basis basis(int column) {
        for (int at = column; head > 0 && at >= 0; at--) {
            if (!grid.cell(head - 1, at).isBlank()) {
                var cell = grid.cell(head - 1, at);
                var basis = Heading.basis(cell)
                        .or(() -> labels.isEmpty()
                                ? Optional.empty()
                                : Whose.said(cell).basis())
                        .orElse(null);
                if (basis != null) {
                    grid.settle(head - 1, at);
                }
                return basis;
            }
        }
        return null;
    }
}
