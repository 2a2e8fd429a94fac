package haywright.app.exchange.csv;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood.Column;
import haywright.app.exchange.lab.Whose;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What each column holds beside names that stand down the side: by its heading, by its cells, or as somebody said. */
final class DownColumns {
    private static final Set<String> REPORTS = Set.of("report", "report no", "report no.", "report number");

    private static final Pattern LIMITS = Pattern.compile(
            "(?:(?:method|lab(?:oratory)?|lower|practical) )?(?:(?:reporting|detection|quantitation|quantification) )?limits?(?: of (?:detection|quantitation|reporting))?"
                    + "|(?:m|r|p|l)?dl|lod|loq|rl|mrl|pql");

    private final Taking taking;
    private final Grid grid;
    private final NameColumns names;
    private final ColumnCells cells;
    final Map<Integer, Value> values = new TreeMap<>();
    final Map<Integer, Told> told = new TreeMap<>();
    final RowsOfOthers others;
    int unit = -1;
    int basis = -1;
    int report = -1;
    int method = -1;
    /** Which of several measurements a line is, or their mean. */
    int replicate = -1;
    /** "<" beside the figures, in a column of its own. */
    int mark = -1;
    /** What a test could still have told from nothing. */
    int limit = -1;
    /** Of all figures, where the heading over the names says it; null where it does not. */
    final @Nullable Basis corner;

    /**
     * A column of figures.
     *
     * @param names the column with their names
     * @param basis null where no heading tells
     * @param about what is said over it of its sample
     */
    record Value(int names, @Nullable Basis basis, @Nullable Unit unit, About about) {
        String code() {
            var bag = about.first(Told.BAG);
            var number = bag.isEmpty() ? about.first(Told.NUMBER) : bag;
            return number.isEmpty() ? about.first(Told.LOT) : number;
        }
    }

    DownColumns(Taking taking, NameColumns names) {
        this.taking = taking;
        this.grid = taking.grid;
        this.names = names;
        this.cells = new ColumnCells(grid, names);
        this.others = new RowsOfOthers(grid, names.head(), names.first());
        this.corner = names.columns().stream()
                .flatMap(column ->
                        Heading.basis(cells.heading(column))
                                .or(() -> ColumnWords.corner(cells.heading(column)))
                                .stream())
                .findFirst()
                .orElse(null);
        byHeading();
        byCells();
        limit = IntStream.range(0, names.head() < 0 ? 0 : grid.width(names.head()))
                .filter(column -> !values.containsKey(column) && isLimit(column))
                .findFirst()
                .orElse(-1);
        told.forEach((column, what) -> {
            if (About.isKept(what, "")) {
                grid.settle(names.head(), column);
            }
        });
        basesInALine();
        IntStream.range(0, names.first()).forEach(this::describe);
        leaveOutOfMany();
    }

    /** "Basis" at the side, wherever its line stands: the basis of each column. */
    private void basesInALine() {
        IntStream.range(0, grid.height())
                .filter(row -> row != names.head() && grid.isOfBases(row))
                .forEach(row -> {
                    values.replaceAll((column, value) -> value.basis != null
                            ? value
                            : new Value(
                                    value.names,
                                    Heading.basis(grid.cell(row, column)).orElse(null),
                                    value.unit,
                                    value.about));
                    grid.settle(row);
                });
    }

    /** "Mean" in a line of codes is no sample's name, and what stands under it is listed. */
    private void leaveOutOfMany() {
        var ofMany = values.entrySet().stream()
                .filter(entry -> Told.isOfMany(entry.getValue().code())
                        || Whose.isOfOthers(entry.getValue().code()))
                .map(Map.Entry::getKey)
                .toList();
        for (int column : ofMany) {
            taking.notTaken.add("Column “%s”: it holds no figures of one sample%s"
                    .formatted(value(column).code(), grid.under(names.first(), column)));
        }
        values.keySet().removeAll(ofMany);
    }

    boolean isValue(int column) {
        return values.containsKey(column);
    }

    private void settle(int column) {
        if (names.head() >= 0) {
            grid.settle(names.head(), column);
        }
    }

    private void byHeading() {
        for (int column = 0; names.head() >= 0 && column < grid.width(names.head()); column++) {
            var key = Heading.key(cells.heading(column));
            var what = Told.of(cells.heading(column)).orElse(null);
            boolean isKnown = true;
            int at = column;
            if (names.columns().contains(column)) {
                // its own heading
            } else if (column == others.column()) {
                // it tells lines apart
            } else if (Grid.isUnits(key)) {
                unit = column;
            } else if (ColumnWords.isBasis(key)) {
                basis = column;
            } else if (REPORTS.contains(key)) {
                report = column;
            } else if (Told.isMean(cells.heading(column)) && cells.areMeasuredAgain()) {
                value(column, null);
            } else if (cells.whose(column) == Whose.OWN) {
                value(
                        column,
                        Whose.said(cells.heading(column))
                                .basis()
                                .or(() -> NameColumns.basis(grid, names.head(), at))
                                .orElse(null));
            } else if (cells.whose(column) != Whose.UNSAID && what == null) {
                isKnown = false;
            } else if (NameColumns.isValue(key)
                    || NameColumns.basis(grid, names.head(), column).isPresent()) {
                value(column, NameColumns.basis(grid, names.head(), column).orElse(null));
            } else if (Told.isReplicate(cells.heading(column)) && !cells.hasDecimals(column)) {
                replicate = column;
            } else if (what == Told.METHOD) {
                method = column;
            } else {
                isKnown = false;
                if (what != null) {
                    told.put(column, what);
                }
            }
            if (isKnown
                    && (cells.whose(column) != Whose.OWN
                            || !cells.heading(column).matches(".*[0-9].*"))) {
                settle(column);
            }
        }
        if (!values.isEmpty() && report < 0 && !told.containsValue(Told.BAG) && !told.containsValue(Told.NUMBER)) {
            IntStream.range(0, grid.width())
                    .filter(column -> !isKnown(column) && cells.partsSamples(column, basis))
                    .findFirst()
                    .ifPresent(column -> told.put(column, Told.BAG));
        }
    }

    private void byCells() {
        boolean areValuesSaid = !values.isEmpty();
        var strange = new ArrayList<Integer>();
        for (int column = 0; column < grid.width(); column++) {
            if (isKnown(column)) {
                continue;
            }
            if (mark < 0 && cells.isMarks(column)) {
                mark = column;
                settle(column);
            } else if (unit < 0
                    && cells.isMostly(
                            column,
                            text -> text.startsWith("%") || Heading.unit(text).isPresent())) {
                unit = column;
            } else if (basis < 0
                    && cells.isMostly(column, text -> Heading.basis(text).isPresent())) {
                basis = column;
            } else if (!areValuesSaid && cells.hasFigures(column) && cells.isCode(column)) {
                value(column, null);
            } else {
                strange.add(column);
            }
        }
        var sides = strange.stream()
                .filter(column -> cells.whose(column) == Whose.UNSAID
                        && Heading.side(cells.heading(column)).isPresent()
                        && cells.hasFigures(column))
                .toList();
        if (sides.size() > 1) {
            strange.removeAll(sides);
            sides.forEach(column -> {
                var side = Heading.side(cells.heading(column)).orElseThrow();
                value(column, side.basis());
                value(column).about.add(Told.BAG, side.sample());
                settle(column);
            });
        }
        // of two columns that nothing parts, either could be meant
        long bare = values.keySet().stream().filter(cells::isBare).count();
        if (bare > 1) {
            values.keySet().stream().filter(cells::isBare).forEach(strange::add);
            values.keySet().removeAll(strange);
        }
        strange.forEach(column -> strange(column, areValuesSaid));
    }

    /** A column whose heading nobody knows: of a sample where the lines of the sheet say so, else as somebody said. */
    private void strange(int column, boolean areValuesSaid) {
        var heading = cells.heading(column).isBlank() && cells.hasFigures(column)
                ? "column %d, without a heading".formatted(column + 1)
                : cells.heading(column);
        if (heading.isBlank()) {
            return;
        }
        boolean isOfOthers = cells.whose(column) == Whose.OTHERS
                || cells.whose(column) != Whose.ASKED && ColumnWords.isOther(heading);
        var said = grid.words
                .column(heading)
                .or(() -> !areValuesSaid && !isOfOthers && cells.isNumbered(column)
                        ? java.util.Optional.of(ColumnIs.SAMPLE)
                        : java.util.Optional.empty())
                .orElse(null);
        if (cells.hasFigures(column)
                && !isOfOthers
                && (grid.words.column(heading).isPresent() || said == null)) {
            taking.column(new Column(
                    heading,
                    grid.example(names.first(), column),
                    grid.words.column(heading).orElse(null),
                    false));
        }
        settle(column);
        if (said == null || said == ColumnIs.LEFT_OUT) {
            boolean isAsked = said == null && cells.hasFigures(column) && !isOfOthers;
            taking.notTaken.add("Column “%s”: %s%s"
                    .formatted(
                            heading,
                            said != null
                                    ? "it was said to be left out"
                                    : isOfOthers
                                            ? "it holds no figures of the sample"
                                            : "what it holds is not known" + (isAsked ? ". Say so below" : ""),
                            grid.under(names.first(), column)));
        } else {
            value(column, said.basis());
            if (said == ColumnIs.SAMPLE) {
                value(column).about.add(Told.BAG, heading);
            }
        }
    }

    private Value value(int column) {
        return java.util.Objects.requireNonNull(values.get(column));
    }

    private boolean isKnown(int column) {
        return names.columns().contains(column)
                || column == unit
                || column == basis
                || column == report
                || column == method
                || column == replicate
                || column == others.column()
                || values.containsKey(column)
                || told.containsKey(column);
    }

    private void value(int column, @Nullable Basis on) {
        int own = names.columns().get(0);
        for (int one : names.columns()) {
            own = one < column ? one : own;
        }
        var last =
                Heading.unit(cells.heading(column).replaceFirst("^.*[\\s(]", "").replace(")", ""));
        values.put(column, new Value(own, on, last.orElse(null), new About()));
    }

    /** A limit of detection lies below all that was found; one above is a limit of another kind. */
    private boolean isLimit(int column) {
        return LIMITS.matcher(Heading.key(cells.heading(column))).matches()
                && IntStream.range(names.first(), grid.height())
                        .allMatch(row -> values.keySet().stream()
                                .allMatch(
                                        value -> ColumnCells.isAtMost(grid.cell(row, column), grid.cell(row, value))));
    }

    /** What a line over the figures says of the sample in each column; what stands once over two columns is of both. */
    private void describe(int row) {
        int from = names.columns().get(0);
        var what = Told.of(grid.cell(row, from)).orElse(null);
        if (isUnits(row)) {
            values.replaceAll((column, value) -> value.unit != null
                    ? value
                    : new Value(
                            value.names,
                            value.basis,
                            Heading.unit(grid.cell(row, column)).orElse(null),
                            value.about));
            IntStream.range(0, grid.width(row)).forEach(column -> grid.settle(row, column));
            return;
        }
        if (row == names.head() && what == null) {
            what = values.values().stream().allMatch(v -> v.basis != null) ? null : Told.BAG;
        } else if (what == null
                && (grid.cell(row, from).isBlank() || isOverBases(row) && grid.isNames(row, from))
                && isOverSamples(row)) {
            what = Told.BAG;
        }
        if (what != null && isOverSamples(row)) {
            tell(row, what);
        }
    }

    /** Above the headings, where those say the basis of each column alone. */
    private boolean isOverBases(int row) {
        return row < names.head() && grid.isOfBases(names.head());
    }

    /** A line of units over the figures, and nothing else in it. */
    private boolean isUnits(int row) {
        var said = values.keySet().stream()
                .map(column -> grid.cell(row, column))
                .filter(cell -> !cell.isBlank())
                .toList();
        return row != names.head()
                && !said.isEmpty()
                && said.stream().allMatch(cell -> Heading.unit(cell).isPresent());
    }

    private boolean isOverSamples(int row) {
        long said = values.keySet().stream()
                .filter(column -> !grid.cell(row, column).isBlank())
                .count();
        return said > (values.size() > 1 ? 1 : 0) || values.size() == 2 && said == 1;
    }

    void tell(int row, Told what) {
        var left = "";
        for (var entry : values.entrySet()) {
            var text = grid.cell(row, entry.getKey());
            left = text.isBlank() && entry.getValue().basis != null ? left : text;
            boolean isYear = cells.whose(entry.getKey()) == Whose.OWN && row == names.head();
            if (!isYear && NameColumns.basis(left).isEmpty() && !NameColumns.isValue(Heading.key(left))) {
                entry.getValue().about.add(what, left);
            }
            if (!isYear && About.isKept(what, text)) {
                grid.settle(row, entry.getKey());
                grid.settle(row, names.columns().get(0));
            }
        }
    }
}
