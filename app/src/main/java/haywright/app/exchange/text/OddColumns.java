package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TableHead.Role;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A column whose basis comes again beside a whole pair, "As fed, Dry, Dry", under no name of a sample: last year, a
 * neighbor or what is usual as well as a sample of its own. It is asked by what stands over it.
 */
final class OddColumns {
    private static final int LINES_ABOVE = 2;

    private OddColumns() {}

    /** @param above the lines over the headings */
    static TableHead asked(TableHead head, List<TextLine> above, Vocabulary words) {
        if (head.groups() < 2 || !head.samples().isEmpty()) {
            return head;
        }
        var bases = head.values().stream()
                .collect(Collectors.groupingBy(
                        head::group,
                        Collectors.mapping(column -> Objects.toString(column.basis()), Collectors.toSet())));
        var whole = bases.getOrDefault(0, Set.of());
        var odd = bases.keySet().stream()
                .filter(group -> !bases.getOrDefault(group, Set.of()).equals(whole))
                .toList();
        var labels = labels(head, above);
        boolean areNamed = bases.keySet().stream()
                .allMatch(group -> labels.stream().anyMatch(label -> head.groupOver(label) == group));
        if (odd.isEmpty() || areNamed || !whole.contains(Objects.toString(Basis.DRY_MATTER)) || whole.size() < 2) {
            return head;
        }
        var columns = new ArrayList<Column>();
        for (var column : head.columns()) {
            boolean isOdd = column.role() == Role.VALUE && odd.contains(head.group(column));
            columns.add(isOdd ? asked(column, head, labels, words) : column);
        }
        return new TableHead(columns);
    }

    private static Column asked(Column column, TableHead head, List<Word> labels, Vocabulary words) {
        var own = column.heading();
        var over = labels.stream()
                .filter(label -> isOver(label, column, head))
                .map(Word::text)
                .collect(Collectors.joining(" "));
        var first = over.isEmpty() ? "column %d,".formatted(head.columns().indexOf(column) + 1) : over;
        var heading = own.with(first + " " + own.text().replaceAll("[()]", ""));
        var said = words.column(heading.text()).orElse(null);
        var role = said == null ? Role.OTHER : said == ColumnIs.LEFT_OUT ? Role.IGNORED : Role.VALUE;
        var basis = said == null || said.basis() == null ? column.basis() : said.basis();
        return new Column(role, basis, column.unit(), heading, column.place(), said == ColumnIs.SAMPLE ? first : "");
    }

    private static boolean isOver(Word label, Column column, TableHead head) {
        return head.columns().stream()
                .filter(Column::isOfFigures)
                .min(Comparator.comparingDouble(one -> Math.abs(one.heading().middle() - label.middle())))
                .filter(column::equals)
                .isPresent();
    }

    /** What stands over columns of figures, in the lines just above. */
    private static List<Word> labels(TableHead head, List<TextLine> above) {
        var labels = new ArrayList<Word>();
        int from = head.values().get(0).heading().from();
        for (int at = above.size() - 1; at >= Math.max(0, above.size() - LINES_ABOVE); at--) {
            var line = above.get(at);
            if (line.isBlank() || line.text().indexOf(':') >= 0 || line.hasDecimals()) {
                break;
            }
            var cells = line.cells().stream().map(TextLine::join).toList();
            boolean isOver = cells.stream().anyMatch(cell -> cell.middle() >= from);
            if (!isOver) {
                break;
            }
            cells.stream()
                    .filter(cell -> cell.middle() >= from && !ColumnWords.isNames(cell.text()))
                    .forEach(cell -> labels.add(0, cell));
        }
        return labels;
    }
}
