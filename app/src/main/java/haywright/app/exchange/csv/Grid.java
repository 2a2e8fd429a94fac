package haywright.app.exchange.csv;

import haywright.app.exchange.lab.BasisExcept;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.words.Said;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The cells of a file, each of which is taken or else listed. */
final class Grid {
    /** A cell with nothing in it. */
    private static final Set<String> NOTHING = Set.of("", "-", "--", "---", "–", "—", ".", "n/a", "na");

    /** How far from the truth a figure may be. */
    static final Pattern WITHIN = Pattern.compile("(?<=[0-9%])\\s*(?:±|\\+/?[-−])\\s*[0-9.,]+\\s*%?$");

    private static final Pattern FIGURE = Pattern.compile(
            "[<>]?\\s*[-−+]?(?:[0-9]|[.,][0-9])[0-9.,' ]*\\s*[*†‡§]*(?:%|\\p{L}{1,5}(?:/\\p{L}{1,3})?)?");
    /** Lines that a quotation mark has drawn into one cell. */
    private static final Pattern BROKEN = Pattern.compile("(?s)[0-9][,;\t].*\\R|\\R.*[,;\t].*[0-9]");

    private final List<List<String>> rows = new ArrayList<>();
    private final List<BitSet> settled = new ArrayList<>();
    private final List<Long> lines = new ArrayList<>();
    final Vocabulary words;

    /** @param number of its line in the file */
    record Line(long number, List<String> cells) {}

    Grid(List<Line> lines, Vocabulary words) {
        this.words = words;
        for (var line : lines) {
            rows.add(line.cells.stream().map(TableCsv::in).toList());
            settled.add(new BitSet());
            this.lines.add(line.number);
        }
    }

    int height() {
        return rows.size();
    }

    int width() {
        return rows.stream().mapToInt(List::size).max().orElse(0);
    }

    int width(int row) {
        return rows.get(row).size();
    }

    /** Up to the last cell with something in it. */
    private int used(int row) {
        int end = width(row);
        while (end > 0 && cell(row, end - 1).isBlank()) {
            end--;
        }
        return end;
    }

    /**
     * Why the figures of a line cannot be told apart: it has fewer cells than headings or more, or one of them holds
     * lines of its own. Empty where it is as wide as its headings.
     */
    Optional<String> uneven(int row, int head) {
        if (rows.get(row).stream().anyMatch(cell -> BROKEN.matcher(cell).find())) {
            return Optional.of("a cell of it goes on over several lines. Is a quotation mark missing");
        }
        int wanted = used(head);
        boolean isNarrow = width(row) < wanted;
        boolean isWide = used(row) > width(head);
        return isNarrow || isWide
                ? Optional.of("it has %d cells under %d headings. Is one missing, or a quotation mark"
                        .formatted(isNarrow ? width(row) : used(row), wanted))
                : Optional.empty();
    }

    /** Why a line without headings is not read: it is wider than another by the two sides of a comma within a figure. */
    Optional<String> cut(int row) {
        boolean isCut = IntStream.range(1, width(row))
                .anyMatch(column -> cell(row, column - 1).matches("[<≤]?\\s*[0-9]{1,3}")
                        && cell(row, column).matches("[0-9]{3}(?:\\.[0-9]+)?"));
        boolean isWide =
                IntStream.range(0, height()).anyMatch(other -> !hasNoFigures(other) && used(other) < used(row));
        return isCut && isWide
                ? Optional.of(
                        "a comma may stand inside its figure. Put such a figure in quotation marks, without them it is cut in two.")
                : Optional.empty();
    }

    long line(int row) {
        return lines.get(row);
    }

    List<String> row(int row) {
        return rows.get(row);
    }

    String cell(int row, int column) {
        var cells = rows.get(row);
        return column >= 0 && column < cells.size() ? cells.get(column) : "";
    }

    boolean isNothing(int row, int column) {
        return NOTHING.contains(Heading.key(cell(row, column)));
    }

    boolean isFigure(int row, int column) {
        var text = WITHIN.matcher(cell(row, column)).replaceFirst("");
        return FIGURE.matcher(text).matches() || Said.of(text).isPresent();
    }

    /** Whether a heading is that of a column of units. */
    static boolean isUnits(String key) {
        return Heading.sides(key).stream().anyMatch(ColumnWords::isUnits);
    }

    /** A column of names, or of what stands beside them, says so by its heading. */
    boolean isNames(int row, int column) {
        return Heading.sides(cell(row, column)).stream().anyMatch(ColumnWords::isNames);
    }

    boolean hasNoFigures(int row) {
        return IntStream.range(0, width(row)).noneMatch(column -> isFigure(row, column));
    }

    /** "Basis" and behind it a basis for each column: "DM" in it is no dry matter. */
    boolean isOfBases(int row) {
        var said = rows.get(row).stream().filter(cell -> !cell.isBlank()).toList();
        return said.size() > 1
                && ColumnWords.isBasis(said.get(0))
                && said.stream().skip(1).anyMatch(cell -> Heading.basis(cell).isPresent());
    }

    /** "Unit" and behind it a unit for each column. */
    boolean isOfUnits(int row) {
        var said = rows.get(row).stream().filter(cell -> !cell.isBlank()).toList();
        return said.size() > 1
                && isUnits(Heading.key(said.get(0)))
                && said.stream().skip(1).allMatch(cell -> Heading.unit(cell).isPresent());
    }

    /** How many names that are known stand in a line; "DM" and "as fed" over figures are none. */
    long labels(int row) {
        return IntStream.range(0, width(row))
                .filter(column ->
                        isLabel(row, column) && Heading.basis(cell(row, column)).isEmpty())
                .count();
    }

    /** Whether a line tells of a sample: a label, and behind it what it tells. */
    boolean isTold(int row) {
        var first = cell(row, 0);
        return told(row, 0).isPresent()
                || first.indexOf(':') > 0
                        && Told.of(first.substring(0, first.indexOf(':'))).isPresent();
    }

    Optional<Told> told(int row, int column) {
        return isNames(row, column) || heading(row, column).isPresent() ? Optional.empty() : Told.of(cell(row, column));
    }

    /** Whether a name that is known stands there; a unit such as "% DM" is none. */
    boolean isLabel(int row, int column) {
        var text = cell(row, column);
        return !text.startsWith("%")
                && !text.startsWith("(")
                && !isFigure(row, column)
                && (words.label(text).isPresent() || words.leavesOut(text));
    }

    Optional<Heading> heading(int row, int column) {
        return isFigure(row, column) ? Optional.empty() : words.heading(cell(row, column));
    }

    void settle(int row, int column) {
        if (column >= 0) {
            settled.get(row).set(column);
        }
    }

    /** What the lines without figures say of the basis of some figures alone. */
    BasisExcept except() {
        return BasisExcept.in(notes());
    }

    /** Cells that stand alone or in a pair, and no figure beside them: perhaps a sentence. */
    List<String> notes() {
        return IntStream.range(0, rows.size())
                .filter(this::hasNoFigures)
                .mapToObj(this::row)
                .filter(cells -> cells.stream().filter(cell -> !cell.isBlank()).count() <= 2)
                .flatMap(List::stream)
                .toList();
    }

    void settle(int row) {
        settled.get(row).set(0, Math.max(1, width(row)));
    }

    /** What stands in a column under its heading, for a list of what is not taken. */
    String under(int row, int column) {
        var all = new ArrayList<String>();
        for (int at = row; at < rows.size(); at++) {
            settle(at, column);
            if (!isNothing(at, column)) {
                all.add(cell(at, column));
            }
        }
        return all.isEmpty() ? "" : " (" + String.join("; ", all) + ")";
    }

    /** The first figures of a column. */
    String example(int row, int column) {
        return IntStream.range(row, rows.size())
                .filter(at -> isFigure(at, column))
                .limit(4)
                .mapToObj(at -> cell(at, column))
                .collect(Collectors.joining("; "));
    }

    List<String> lines() {
        return IntStream.range(0, height()).mapToObj(this::shown).toList();
    }

    String shown(int row) {
        return String.join(
                " ", rows.get(row).stream().filter(cell -> !cell.isBlank()).toList());
    }

    /** Everything that nothing was said of, a line each. */
    List<String> rest() {
        var rest = new ArrayList<String>();
        for (int row = 0; row < rows.size(); row++) {
            int at = row;
            var left = IntStream.range(0, width(row))
                    .filter(column -> !settled.get(at).get(column))
                    .mapToObj(column -> cell(at, column))
                    .filter(text -> text.matches("(?s).*[\\p{L}\\p{N}].*"))
                    .toList();
            if (!left.isEmpty()) {
                rest.add("Line %d: %s".formatted(line(row), String.join("; ", left)));
            }
        }
        return rest;
    }
}
