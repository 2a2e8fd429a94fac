package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Whose;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the heading and the cells of a column show, before anything is made of it. */
final class ColumnCells {
    private static final Pattern MARKS = Pattern.compile(
            "(?i)(?:data |result |lab )?(?:qualifiers?|qual\\.?|flags?|signs?|marks?|sym(?:bol)?|codes?|remarks?)");

    private final Grid grid;
    private final NameColumns names;
    private final Map<Integer, Whose> whose = new HashMap<>();

    ColumnCells(Grid grid, NameColumns names) {
        this.grid = grid;
        this.names = names;
        var columns = IntStream.range(0, names.head() < 0 ? 0 : grid.width(names.head()))
                .filter(this::isOfFigures)
                .boxed()
                .toList();
        var all = Whose.of(columns.stream()
                .map(column -> Whose.said(heading(column)).who())
                .toList());
        columns.forEach(column -> whose.put(column, all.get(columns.indexOf(column))));
    }

    private boolean isOfFigures(int column) {
        var key = Heading.key(heading(column));
        return !names.columns().contains(column)
                && !key.isEmpty()
                && (Told.of(key).isEmpty() || NameColumns.isValue(key))
                && !Grid.isUnits(key)
                && !ColumnWords.isBasis(key)
                && grid.words.column(heading(column)).isEmpty();
    }

    String heading(int column) {
        return names.head() < 0 ? "" : grid.cell(names.head(), column);
    }

    /** Whose figures stand in a column, by all headings together. */
    Whose whose(int column) {
        return whose.getOrDefault(column, Whose.UNSAID);
    }

    boolean isBare(int column) {
        return heading(column).isBlank()
                && IntStream.range(0, names.first())
                        .noneMatch(row -> !grid.cell(row, column).isBlank());
    }

    /** Whether a line of the sheet gives each of several columns a number, a code or a day of its own. */
    boolean isNumbered(int column) {
        return IntStream.range(0, grid.height())
                .filter(row -> grid.told(row, names.columns().get(0))
                        .filter(what -> what == Told.BAG || what == Told.NUMBER || what.isDay())
                        .isPresent())
                .anyMatch(row -> !grid.isNothing(row, column)
                        && IntStream.range(0, grid.width(row))
                                        .filter(other ->
                                                !names.columns().contains(other) && !grid.isNothing(row, other))
                                        .count()
                                > 1);
    }

    /**
     * Whether names that come again, which no sample has twice, come once for each of the words in this column: then
     * those tell the samples apart, whatever stands over them.
     */
    boolean partsSamples(int column, int basis) {
        var all = new ArrayList<String>();
        var parts = new HashMap<String, List<String>>();
        for (int row = names.first(); row < grid.height(); row++) {
            var name = grid.cell(row, names.columns().get(0));
            if (!name.isBlank()) {
                var whole = Heading.key(name + "\n" + grid.cell(row, basis));
                all.add(whole);
                parts.computeIfAbsent(grid.cell(row, column), k -> new ArrayList<>())
                        .add(whole);
            }
        }
        return all.size() > new HashSet<>(all).size()
                && !parts.containsKey("")
                && parts.values().stream().allMatch(in -> in.size() > 1 && in.size() == new HashSet<>(in).size());
    }

    /** Codes of samples side by side have a figure or say nothing of what they are; "Goal" and "Range" are no codes. */
    boolean isCode(int column) {
        var heading = heading(column);
        return heading.isBlank()
                || heading.matches(".*[0-9].*")
                        && !ColumnWords.isOther(heading)
                        && !Told.isReplicate(heading)
                        && whose(column) == Whose.UNSAID;
    }

    /** Whether the headings have several measurements of one sample, and their mean. */
    boolean areMeasuredAgain() {
        return IntStream.range(0, grid.width(names.head())).anyMatch(column -> Told.isReplicate(heading(column)));
    }

    boolean hasDecimals(int column) {
        return under(column).anyMatch(text -> text.matches(".*[0-9][.,][0-9].*"));
    }

    Stream<String> under(int column) {
        return IntStream.range(names.first(), grid.height()).mapToObj(row -> grid.cell(row, column));
    }

    boolean hasFigures(int column) {
        return IntStream.range(names.first(), grid.height()).anyMatch(row -> grid.isFigure(row, column));
    }

    /** Signs and letters that say how the figure beside them is meant. */
    boolean isMarks(int column) {
        boolean isSaid = MARKS.matcher(heading(column)).matches() && !hasFigures(column);
        var signs = under(column).filter(text -> !text.isBlank()).toList();
        return !signs.isEmpty()
                && (isSaid || signs.stream().allMatch(text -> text.matches("[<>≤≥=~]|(?i:U|ND|BDL|J|E)")));
    }

    static boolean isAtMost(String limit, String found) {
        var plain = "[0-9]*[.,]?[0-9]+";
        return !limit.matches(plain)
                || !found.matches(plain)
                || Double.parseDouble(limit.replace(',', '.')) <= Double.parseDouble(found.replace(',', '.'));
    }

    /** Units or bases beside the names, without a heading that says so. */
    boolean isMostly(int column, Predicate<String> what) {
        var cells = under(column).filter(text -> !text.isBlank()).toList();
        return 2 * cells.stream().filter(what).count() > cells.size();
    }
}
