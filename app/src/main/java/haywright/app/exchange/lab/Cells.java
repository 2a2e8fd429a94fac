package haywright.app.exchange.lab;

import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Column;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The figures of one sample on their way. Where one analyte has two on the same basis, by two methods, by a rerun or by no
 * word at all, which of them counts is asked, and until that is said neither is taken.
 */
public final class Cells {
    /** Before what stands on the sheet, where somebody says whether a figure counts. */
    static final String FIGURE = "figure ";

    private final Map<String, List<Entry>> all = new LinkedHashMap<>();

    /** @param shown as it stands on the sheet @param place "Line 4", for what is listed */
    private record Entry(Cell cell, String shown, String place) {
        String question() {
            return FIGURE + shown;
        }
    }

    public void add(Cell cell, String shown, String place) {
        var same = all.computeIfAbsent(key(cell), k -> new ArrayList<>());
        if (same.stream().noneMatch(entry -> isSame(entry.cell, cell))) {
            same.add(new Entry(cell, shown.strip().replaceAll("\\s+", " "), place));
        }
    }

    public boolean isEmpty() {
        return all.isEmpty();
    }

    /** Whether another figure of this analyte stands here already. */
    public boolean contradicts(Cell cell) {
        return all.getOrDefault(key(cell), List.of()).stream().anyMatch(entry -> !isSame(entry.cell, cell));
    }

    private static String key(Cell cell) {
        return cell.analyte().id() + " " + (cell.analyte().hasBasis() ? cell.basis() : null)
                + (cell.share() == null ? "" : cell.share());
    }

    /** The same figure, written otherwise: 9.5 and 9.50 %, 9.5 % and 95 g/kg. */
    private static boolean isSame(Cell one, Cell other) {
        if (one.text().equals(other.text()) && Objects.equals(one.unit(), other.unit())) {
            return true;
        }
        var unit = one.unit();
        var beside = other.unit();
        if (!isNumber(one.text()) || !isNumber(other.text())) {
            return one.text().equals(other.text());
        }
        if (unit == null || beside == null || unit == beside) {
            return new BigDecimal(one.text()).compareTo(new BigDecimal(other.text())) == 0;
        }
        double a = unit.toBase(Double.parseDouble(one.text()));
        double b = beside.toBase(Double.parseDouble(other.text()));
        double half = Math.max(unit.toBase(last(one.text())), beside.toBase(last(other.text()))) / 2;
        return Math.abs(a - b) <= half + 1e-12;
    }

    private static boolean isNumber(String text) {
        return text.matches("[-+]?[0-9]*\\.?[0-9]+");
    }

    /** One of the last digit that is printed. */
    private static double last(String text) {
        return Math.pow(10, -new BigDecimal(text).scale());
    }

    /**
     * Those that count.
     *
     * @param words what somebody said of two figures of one analyte
     * @param ask takes a question for each of several that stand there
     */
    public List<Cell> whole(Vocabulary words, Consumer<String> notTaken, Consumer<Column> ask) {
        var taken = new ArrayList<Cell>();
        for (var same : all.values()) {
            if (same.size() == 1) {
                taken.add(same.get(0).cell);
                continue;
            }
            var left = same.stream()
                    .filter(entry -> words.column(entry.question()).orElse(null) != ColumnIs.LEFT_OUT)
                    .toList();
            var said = left.stream()
                    .filter(entry -> words.column(entry.question()).isPresent())
                    .toList();
            var own = said.size() == 1 ? said.get(0) : said.isEmpty() && left.size() == 1 ? left.get(0) : null;
            var places = same.stream()
                    .map(entry -> "%s (%s)".formatted(entry.place, entry.cell.text()))
                    .collect(Collectors.joining(" and "));
            same.forEach(entry -> ask.accept(new Column(
                    entry.question(),
                    places,
                    own == null
                            ? words.column(entry.question()).orElse(null)
                            : entry == own ? ColumnIs.RESULT : ColumnIs.LEFT_OUT,
                    false)));
            same.stream()
                    .filter(entry -> entry != own)
                    .map(entry -> "%s, %s: %s".formatted(entry.place, entry.shown, why(same, own)))
                    .forEach(notTaken);
            Stream.ofNullable(own).map(Entry::cell).forEach(taken::add);
        }
        return Shares.carried(taken, notTaken);
    }

    private static String why(List<Entry> same, @org.jspecify.annotations.Nullable Entry own) {
        var analyte = same.get(0).cell.analyte().words();
        var figures = String.join(
                " and ", same.stream().map(entry -> entry.cell.text()).toList());
        return own == null
                ? "%s stands there as %s. Say below which counts; until then neither is taken"
                        .formatted(analyte, figures)
                : "%s was said to be %s".formatted(analyte, own.cell.text());
    }
}
