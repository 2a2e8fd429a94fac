package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Cells;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.app.exchange.lab.Whose;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** One line a sample, its analytes across the top; their units may stand in a line of their own under the names. */
final class Wide {
    /** Units under the names, and bases under the units. */
    private static final int LINES_OF_UNITS = 2;

    private final Taking taking;
    private final Grid grid;
    private final int head;
    private final Map<Integer, Heading> analytes = new LinkedHashMap<>();
    private final Map<Integer, Tested.Method> methods = new HashMap<>();
    private final Map<Integer, Told> told = new LinkedHashMap<>();
    /** Under "name" and the like. */
    private final List<Integer> names = new ArrayList<>();

    private final About about;
    private final OverNames over;
    private final BasisOfLines bases;
    private final int first;

    /** @param before what was said over the table before it */
    Wide(Taking taking, int head, About before) {
        this.taking = taking;
        this.about = About.over(taking.grid, 0, head).after(before);
        this.grid = taking.grid;
        this.head = head;
        this.over = new OverNames(grid, head);
        int under = head + 1;
        while (under < head + 1 + LINES_OF_UNITS && isUnits(grid, head, under)) {
            under++;
        }
        this.first = under;
        this.bases = new BasisOfLines(
                grid,
                head,
                first,
                column -> grid.words.label(grid.cell(head, column)).isPresent());
    }

    About above() {
        return about;
    }

    /** How many analytes a line names, each in a column of its own. */
    static long analytes(Grid grid, int row) {
        long count = 0;
        if (grid.isOfBases(row)) {
            return 0;
        }
        for (int column = 0; column < grid.width(row); column++) {
            count += grid.isFigure(row, column)
                            || grid.words.label(grid.cell(row, column)).isEmpty()
                    ? 0
                    : 1;
        }
        return count;
    }

    private List<String> figures(int row) {
        return analytes.keySet().stream()
                .filter(column -> !grid.isNothing(row, column))
                .map(column -> grid.cell(row, column).strip())
                .toList();
    }

    List<Sample> samples(char separator) {
        headings();
        bases.names(first, this::code);
        checkWidths(separator);
        var drafts = new LinkedHashMap<String, Draft>();
        var others = new RowsOfOthers(grid, head, first);
        boolean isDated = told.containsValue(Told.SAMPLED); // a day tells better which sample it is
        for (int row = first; row < grid.height(); row++) {
            if (taking.isUneven(row, head)
                    || !isDated && others.has(row, taking)
                    || taking.isTakenBack(row, head, analytes::containsKey)) {
                continue;
            }
            var own = own(row);
            var called = bases.bare(row, code(row));
            if (Told.isOfMany(called) || Whose.isOfOthers(called) || Told.isCount(called, figures(row))) {
                taking.notTaken.add("Line %d, it is no sample: %s".formatted(grid.line(row), grid.shown(row)));
                grid.settle(row);
                continue;
            }
            if (isOfMethods(row)) {
                continue;
            }
            int at = row;
            if (analytes.keySet().stream().allMatch(column -> grid.isNothing(at, column))) {
                taking.notTaken.add("Line %d, no figure stands in it: %s".formatted(grid.line(row), grid.shown(row)));
                grid.settle(row);
                continue;
            }
            var line = bases.of(row, called, taking);
            if (line.isOpen()) {
                grid.settle(row);
                continue;
            }
            // on one basis each, two lines can speak of one sample
            var key = called + "\n" + own.first(Told.NUMBER) + "\n" + own.first(Told.LOT) + "\n"
                    + own.first(Told.SAMPLED);
            var before = line.basis() == null || called.isEmpty() ? null : drafts.get(key);
            boolean goesOn = before != null && before.bases.add(line.basis());
            var draft = goesOn && before != null ? before : new Draft(called, own);
            if (!goesOn) {
                drafts.put(drafts.containsKey(key) || line.basis() == null ? key + "\n" + row : key, draft);
                if (line.basis() != null) {
                    draft.bases.add(line.basis());
                }
            }
            analytes.forEach((column, heading) -> {
                if (!grid.isNothing(at, column)) {
                    take(draft, heading, line.basis(), at, column);
                }
            });
            taking.remarks(row, head, column -> analytes.containsKey(column) || bases.isAt(column))
                    .forEach(remark -> draft.own.add(Told.REMARK, remark));
        }
        return drafts.values().stream()
                .map(draft -> draft.own.sample(draft.code, about, taking.carried(draft.cells)))
                .toList();
    }

    /** A sample on its way. @param bases that lines speak of it on */
    private record Draft(String code, About own, Cells cells, Set<Basis> bases) {
        Draft(String code, About own) {
            this(code, own, new Cells(), EnumSet.noneOf(Basis.class));
        }
    }

    private void take(Draft draft, Heading heading, @Nullable Basis on, int row, int column) {
        boolean isBased = heading.analyte().hasBasis() && heading.share() == null;
        if (isBased && on != null && heading.basis() != null && heading.basis() != on) {
            taking.notTaken.add("Line %d, “%s” %s: its line says %s, and its heading another basis"
                    .formatted(
                            grid.line(row),
                            known(column),
                            grid.cell(row, column),
                            on.id().replace('_', ' ')));
            grid.settle(row, column);
            return;
        }
        taking.take(
                draft.cells,
                isBased ? heading.with(null, on) : heading,
                known(column),
                row,
                column,
                false,
                "",
                false,
                methods.get(column));
    }

    private About own(int row) {
        var own = new About();
        told.forEach((column, what) -> {
            own.add(what, bases.bare(row, grid.cell(row, column)));
            if (About.isKept(what, grid.cell(row, column))) {
                grid.settle(row, column);
            }
        });
        boolean hasCode = told.containsValue(Told.BAG) || told.containsValue(Told.NUMBER);
        names.forEach(column -> {
            own.add(hasCode ? Told.LOT : Told.BAG, bases.bare(row, grid.cell(row, column)));
            grid.settle(row, column);
        });
        return own;
    }

    /** What the sample of a line is called: by its bag, its number, or the cell under "name". */
    private String code(int row) {
        var own = own(row);
        var code = own.first(Told.BAG).isEmpty() ? own.first(Told.NUMBER) : own.first(Told.BAG);
        return code.isEmpty() ? name(row) : code;
    }

    /** A line without figures that says how each column was measured. */
    private boolean isOfMethods(int row) {
        boolean hasFigures = analytes.keySet().stream().anyMatch(column -> grid.isFigure(row, column));
        var said = new HashMap<Integer, Tested.Method>();
        for (int column : analytes.keySet()) {
            var method = hasFigures ? null : Understood.ownMethod(grid.cell(row, column));
            if (method != null) {
                said.put(column, method);
                grid.settle(row, column);
            }
        }
        methods.putAll(said);
        return !said.isEmpty();
    }

    /** Beside a code, what stands under "name" calls the sample too; alone it is its code. */
    private String name(int row) {
        return names.stream()
                .map(column -> grid.cell(row, column))
                .filter(cell -> !cell.isBlank())
                .findFirst()
                .orElse("");
    }

    /** Units, bases and shares under the names, and no figure among them. */
    private static boolean isUnits(Grid grid, int head, int row) {
        if (row >= grid.height()) {
            return false;
        }
        int units = 0;
        for (int column = 0; column < grid.width(row); column++) {
            if (grid.isNothing(row, column)) {
                continue;
            }
            if (grid.isFigure(row, column)) {
                return false;
            }
            boolean isUnder = grid.words.label(grid.cell(head, column)).isPresent();
            units += isUnder && isMeasure(grid.cell(row, column)) ? 1 : 0;
        }
        return units > 0;
    }

    private static boolean isMeasure(String text) {
        var bare = text.replaceAll("^[(\\[]|[)\\]]$", "").strip();
        return Heading.unit(bare).isPresent()
                || Heading.basis(bare).isPresent()
                || bare.startsWith("%")
                || Heading.unit(bare.split("[\\s,]", 2)[0]).isPresent();
    }

    private String written(int column) {
        var name = grid.cell(head, column);
        var under = under(column);
        return under.isEmpty() ? name : name + ", " + under;
    }

    /** A name that somebody explained goes by itself. */
    private String known(int column) {
        var name = grid.cell(head, column);
        return grid.words.own().containsKey(Heading.key(name)) ? name : written(column);
    }

    /** Unit and basis in the lines under a name. */
    private String under(int column) {
        return IntStream.range(head + 1, first)
                .filter(row -> !grid.isNothing(row, column))
                .mapToObj(row -> grid.cell(row, column).replaceAll("^[(\\[]|[)\\]]$", ""))
                .collect(Collectors.joining(" "))
                .strip();
    }

    private void headings() {
        for (int column = 0; column < grid.width(head); column++) {
            int at = column;
            boolean isOver = grid.cell(head, column).isBlank()
                    && head > 0
                    && (grid.told(head - 1, column).isPresent() || grid.isNames(head - 1, column))
                    && IntStream.range(first, grid.height()).anyMatch(row -> !grid.isNothing(row, at));
            var name = grid.cell(isOver ? head - 1 : head, column);
            if (name.isBlank() && column == 0 && hasWords(column)) {
                names.add(column);
            }
            if (name.isBlank()) {
                continue;
            }
            grid.settle(isOver ? head - 1 : head, column);
            IntStream.range(head + 1, first).forEach(row -> grid.settle(row, at));
            var what = grid.words.own().containsKey(Heading.key(name))
                    ? null
                    : Told.of(name)
                            .or(() -> areLots(at) ? Optional.of(Told.LOT) : Optional.empty())
                            .orElse(null);
            boolean isLabel = grid.words.label(name).isPresent();
            if (bases.isAt(column)) {
                continue;
            }
            if (!isLabel && (grid.isNames(head, column) || isOver && grid.isNames(head - 1, column))) {
                names.add(column);
                continue;
            }
            if (!isLabel && what != null) {
                told.put(column, what);
                if (!About.isKept(what, "")) {
                    taking.notTaken.add("Column “%s”: a report here has no place for it%s"
                            .formatted(name, grid.under(first, column)));
                }
                continue;
            }
            if (isLabel && over.isOfOthers(column, written(column), first, taking)) {
                continue;
            }
            var label = grid.words.label(name, under(column));
            var heading = label.map(Label::heading).orElse(null);
            taking.name(name, first < grid.height() ? grid.cell(first, column) : "", heading);
            if (heading != null) {
                analytes.put(column, heading.with(null, over.basis(column)));
            } else {
                var under = grid.under(first, column);
                taking.notTaken.add("Column “%s”: %s%s"
                        .formatted(
                                written(column),
                                grid.words.leavesOut(name)
                                        ? "its name was said to be left out"
                                        : label.map(Label::why).orElseGet(() -> taking.unknown(written(at))),
                                under));
            }
        }
    }

    private boolean hasWords(int column) {
        return IntStream.range(first, grid.height())
                .anyMatch(row -> grid.cell(row, column).matches(".*\\p{L}.*") && !grid.isFigure(row, column));
    }

    /** Whether names of lots here stand under a heading that nobody knows. */
    private boolean areLots(int column) {
        return IntStream.range(first, grid.height())
                .mapToObj(row -> grid.cell(row, column))
                .anyMatch(grid.words.ours()::hasLot);
    }

    /** Where most lines have more cells than headings, one sign stands for two things in all of the file. */
    private void checkWidths(char separator) {
        var wide = IntStream.range(first, grid.height())
                .filter(row -> grid.width(row) > grid.width(head))
                .boxed()
                .toList();
        if (2 * wide.size() > grid.height() - first) {
            var line = grid.row(wide.get(0));
            throw new Refused(
                    "text",
                    String.join(" ", line.subList(0, Math.min(6, line.size()))),
                    "line %d has %d cells under %d headings"
                            .formatted(grid.line(wide.get(0)), line.size(), grid.width(head)),
                    separator == ','
                            ? "Is the comma between columns also the one before decimals? Then save it with semicolons."
                            : "Is a cell not closed, or a heading missing?");
        }
    }
}
