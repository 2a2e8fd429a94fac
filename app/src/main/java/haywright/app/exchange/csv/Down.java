package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Analytes down the side, once or in several columns beside each other; across the top a basis, a sample, or a sample
 * over each pair of bases.
 */
final class Down {
    private static final Set<String> REPORTS = Set.of("report", "report no", "report no.", "report number");

    private static final Pattern MARKS =
            Pattern.compile("(?i)(?:data |result |lab )?(?:qualifiers?|qual\\.?|flags?|signs?|marks?|sym(?:bol)?)");

    private final Taking taking;
    private final Grid grid;
    /** The line with the headings; −1 where the names begin at once. */
    private final int head;

    private final int first;
    private final List<Integer> nameColumns;
    private final Map<Integer, Value> values = new TreeMap<>();
    private final Map<Integer, Told> told = new TreeMap<>();
    private int unit = -1;
    private int basis = -1;
    private int report = -1;
    private int method = -1;
    /** "<" beside the figures, in a column of its own. */
    private int mark = -1;

    /** A column of figures. @param basis null where no heading tells @param about what is said over it of its sample */
    private record Value(
            int names, @Nullable Basis basis, @Nullable Unit unit, About about) {
        String code() {
            var bag = about.first(Told.BAG);
            return bag.isEmpty() ? about.first(Told.NUMBER) : bag;
        }
    }

    Down(Taking taking, NameColumns names) {
        this.taking = taking;
        this.grid = taking.grid;
        this.head = names.head();
        this.first = names.first();
        this.nameColumns = names.columns();
    }

    boolean areSamplesAcross() {
        return values.values().stream().anyMatch(value -> value.basis == null) && values.size() > 1;
    }

    List<Sample> samples() {
        columns();
        var above = About.over(grid, 0, head < 0 ? first : head);
        var byKey = new LinkedHashMap<String, Map<String, Cell>>();
        var abouts = new LinkedHashMap<String, About>();
        for (int row = first; row < grid.height(); row++) {
            if (isAbout(row)) {
                continue;
            }
            if (isMarkKnown(row)) {
                for (int names : nameColumns) {
                    row(row, names, byKey, abouts);
                }
            }
        }
        var samples = new ArrayList<Sample>();
        byKey.forEach((key, cells) ->
                samples.add(abouts.getOrDefault(key, new About()).sample("", above, taking.carried(cells))));
        return samples;
    }

    /** What each column is, by its heading or by what stands in it. */
    private void columns() {
        boolean areValuesSaid = false;
        for (int column = 0; head >= 0 && column < grid.width(head); column++) {
            var key = Heading.key(grid.cell(head, column));
            if (nameColumns.contains(column)) {
                grid.settle(head, column);
            } else if (Grid.isUnits(key)) {
                unit = column;
                grid.settle(head, column);
            } else if (key.equals("basis")) {
                basis = column;
                grid.settle(head, column);
            } else if (REPORTS.contains(key)) {
                report = column;
                grid.settle(head, column);
            } else if (NameColumns.isValue(key)
                    || NameColumns.basis(grid, head, column).isPresent()) {
                areValuesSaid = true;
                value(column);
                grid.settle(head, column);
            } else {
                var what = Told.of(grid.cell(head, column)).orElse(null);
                if (what == Told.METHOD) {
                    method = column;
                    grid.settle(head, column);
                } else if (what != null) {
                    told.put(columnOf(key), what);
                }
            }
        }
        if (areValuesSaid && report < 0 && !told.containsValue(Told.BAG) && !told.containsValue(Told.NUMBER)) {
            IntStream.range(0, grid.width())
                    .filter(column -> !isKnown(column) && partsSamples(column))
                    .findFirst()
                    .ifPresent(column -> told.put(column, Told.BAG));
        }
        for (int column = 0; column < grid.width(); column++) {
            if (isKnown(column)) {
                continue;
            }
            if (mark < 0 && isMarks(column)) {
                mark = column;
                if (head >= 0) {
                    grid.settle(head, column);
                }
            } else if (unit < 0
                    && isMostly(
                            column,
                            text -> text.startsWith("%") || Heading.unit(text).isPresent())) {
                unit = column;
            } else if (basis < 0 && isMostly(column, text -> Heading.basis(text).isPresent())) {
                basis = column;
            } else if (!areValuesSaid && hasFigures(column) && isCode(column)) {
                value(column);
            } else if (head >= 0 && !grid.cell(head, column).isBlank()) {
                grid.settle(head, column);
                taking.notTaken.add("Column “%s”: what it holds is not known%s"
                        .formatted(grid.cell(head, column), grid.under(first, column)));
            }
        }
        told.forEach((column, what) -> {
            if (About.isKept(what, "")) {
                grid.settle(head, column);
            }
        });
        describe();
    }

    private boolean isKnown(int column) {
        return nameColumns.contains(column)
                || column == unit
                || column == basis
                || column == report
                || column == method
                || values.containsKey(column)
                || told.containsKey(column);
    }

    /**
     * Whether names that come again, which no sample has twice, come once for each of the words in this column: then
     * those tell the samples apart, whatever stands over them.
     */
    private boolean partsSamples(int column) {
        var names = new ArrayList<String>();
        var parts = new HashMap<String, List<String>>();
        for (int row = first; row < grid.height(); row++) {
            var name = grid.cell(row, nameColumns.get(0));
            if (!name.isBlank()) {
                var whole = Heading.key(name + "\n" + grid.cell(row, basis));
                names.add(whole);
                parts.computeIfAbsent(grid.cell(row, column), k -> new ArrayList<>())
                        .add(whole);
            }
        }
        return names.size() > new HashSet<>(names).size()
                && !parts.containsKey("")
                && parts.values().stream().allMatch(in -> in.size() > 1 && in.size() == new HashSet<>(in).size());
    }

    private int columnOf(String key) {
        for (int column = 0; column < grid.width(head); column++) {
            if (Heading.key(grid.cell(head, column)).equals(key)) {
                return column;
            }
        }
        throw new IllegalStateException(key);
    }

    private void value(int column) {
        int names = nameColumns.get(0);
        for (int one : nameColumns) {
            names = one < column ? one : names;
        }
        var heading = head < 0 ? "" : grid.cell(head, column);
        var last = Heading.unit(heading.replaceFirst("^.*[\\s(]", "").replace(")", ""));
        values.put(
                column,
                new Value(
                        names,
                        head < 0 ? null : NameColumns.basis(grid, head, column).orElse(null),
                        last.orElse(null),
                        new About()));
    }

    /** Codes of samples side by side have a figure or say nothing of what they are; "Goal" and "Range" are no codes. */
    private boolean isCode(int column) {
        var heading = head < 0 ? "" : grid.cell(head, column);
        return heading.isBlank()
                || heading.matches(".*[0-9].*") && !Told.isOfMany(heading) && !Told.speaksOfOthers(heading);
    }

    private boolean hasFigures(int column) {
        for (int row = first; row < grid.height(); row++) {
            if (grid.isFigure(row, column)) {
                return true;
            }
        }
        return false;
    }

    /** Signs and letters that say how the figure beside them is meant. */
    private boolean isMarks(int column) {
        boolean isSaid = head >= 0 && MARKS.matcher(grid.cell(head, column)).matches();
        int signs = 0;
        for (int row = first; row < grid.height(); row++) {
            var text = grid.cell(row, column);
            if (!text.isBlank() && !text.matches("[<>≤≥=~]|(?i:U|ND|BDL|J)") && !isSaid) {
                return false;
            }
            signs += text.isBlank() ? 0 : 1;
        }
        return signs > 0;
    }

    /** Units or bases beside the names, without a heading that says so. */
    private boolean isMostly(int column, Predicate<String> what) {
        var cells = IntStream.range(first, grid.height())
                .mapToObj(row -> grid.cell(row, column))
                .filter(text -> !text.isBlank())
                .toList();
        return 2 * cells.stream().filter(what).count() > cells.size();
    }

    /** What lines over the figures say of the sample in each column; what stands once over two columns is of both. */
    private void describe() {
        for (int row = 0; row < first; row++) {
            int from = nameColumns.get(0);
            var what = Told.of(grid.cell(row, from)).orElse(null);
            if (row == head && what == null) {
                what = values.values().stream().allMatch(v -> v.basis != null) ? null : Told.BAG;
            } else if (what == null && grid.cell(row, from).isBlank() && isOverSamples(row)) {
                what = Told.BAG;
            }
            if (what != null && isOverSamples(row)) {
                tell(row, what);
            }
        }
    }

    private boolean isOverSamples(int row) {
        long said = values.keySet().stream()
                .filter(column -> !grid.cell(row, column).isBlank())
                .count();
        return said > (values.size() > 1 ? 1 : 0) || values.size() == 2 && said == 1;
    }

    private void tell(int row, Told what) {
        var left = "";
        int from = nameColumns.get(0);
        for (var entry : values.entrySet()) {
            var text = grid.cell(row, entry.getKey());
            left = text.isBlank() && entry.getValue().basis != null ? left : text;
            if (NameColumns.basis(left).isEmpty() && !NameColumns.isValue(Heading.key(left))) {
                entry.getValue().about.add(what, left);
            }
            if (About.isKept(what, text)) {
                grid.settle(row, entry.getKey());
                grid.settle(row, from);
            }
        }
    }

    /** "Sampled", "Feed": a line among the others that tells of the samples. */
    private boolean isAbout(int row) {
        int names = nameColumns.get(0);
        var what = grid.told(row, names).orElse(null);
        if (what == null || grid.isLabel(row, names) || !told.isEmpty()) {
            return false;
        }
        tell(row, what);
        return true;
    }

    /** "<" and U, not detected, make a bound of the figure; what any other mark means is not known. */
    private boolean isMarkKnown(int row) {
        var text = grid.cell(row, mark).strip();
        if (text.isEmpty() || text.equals("=") || isLess(row)) {
            grid.settle(row, mark);
            return true;
        }
        taking.notTaken.add(
                "Line %d, what “%s” means is not known: %s".formatted(grid.line(row), text, grid.shown(row)));
        grid.settle(row);
        return false;
    }

    private boolean isLess(int row) {
        return grid.cell(row, mark).strip().matches("[<≤]|(?i:U|ND|BDL)");
    }

    private void row(int row, int names, Map<String, Map<String, Cell>> byKey, Map<String, About> abouts) {
        var name = grid.cell(row, names);
        if (name.isBlank()) {
            return;
        }
        var heading = heading(row, names, name);
        if (heading.isEmpty()) {
            return;
        }
        for (var entry : values.entrySet()) {
            int column = entry.getKey();
            var value = entry.getValue();
            if (value.names != names || grid.isNothing(row, column)) {
                continue;
            }
            var own = new About();
            told.forEach((at, what) -> own.add(what, grid.cell(row, at)));
            var key = key(row, value, own);
            var about = abouts.computeIfAbsent(key, k -> told.isEmpty() ? value.about : own);
            about.add(Told.NUMBER, grid.cell(row, report));
            told.forEach((at, what) -> {
                if (About.isKept(what, grid.cell(row, at))) {
                    grid.settle(row, at);
                }
            });
            grid.settle(row, report);
            var analyte = heading.get().analyte();
            var cells = byKey.computeIfAbsent(key, k -> new LinkedHashMap<>());
            boolean isWhole = value.basis == Basis.DRY_MATTER && (analyte == Analyte.DM || analyte == Analyte.MOISTURE);
            if (isWhole) { // dry matter of dry matter is 100 and says nothing
                grid.settle(row, column);
            } else {
                var on = value.basis == null ? heading.get().basis() : value.basis;
                boolean fits = value.unit != null
                        && value.unit.kind() == analyte.unit().kind();
                var unitHere = heading.get().unit() == null && fits
                        ? value.unit
                        : heading.get().unit();
                taking.take(
                        cells,
                        new Heading(analyte, unitHere, on, heading.get().share()),
                        name,
                        row,
                        column,
                        isLess(row),
                        Understood.ownMethod(grid.cell(row, method)));
            }
        }
    }

    /** Several reports can speak of one code, and several codes stand in one report. */
    private String key(int row, Value value, About own) {
        return told.isEmpty()
                ? grid.cell(row, report) + "\n" + value.code()
                : grid.cell(row, report) + "\n" + own.first(Told.BAG) + "\n" + own.first(Told.NUMBER) + "\n"
                        + (value.basis == null && values.size() > 1 ? value.about.first(Told.BAG) : "");
    }

    /** What the name in a line of its own stands for; empty where it is to be left out, or is not known. */
    private Optional<Heading> heading(int row, int names, String name) {
        var heading = grid.words.heading(name);
        var written = grid.cell(row, unit);
        var with = written.isBlank() || grid.isNothing(row, unit)
                ? heading
                : heading.isPresent() && grid.words.own().containsKey(Heading.key(name))
                        ? heading.flatMap(h -> Heading.measured(h.analyte(), written))
                        : withUnit(name, written, heading);
        taking.name(name, grid.shown(row), heading.orElse(null));
        if (grid.words.leavesOut(name)) {
            grid.settle(row);
            return Optional.empty();
        }
        if (with.isEmpty()) {
            taking.notTaken.add("Line %d, “%s”: %s: %s"
                    .formatted(
                            grid.line(row),
                            name,
                            heading.isPresent()
                                                    && grid.words
                                                            .label(name + ", " + written)
                                                            .map(Label::why)
                                                            .orElse("")
                                                            .isEmpty()
                                            || grid.words
                                                    .heading(name + ", " + written)
                                                    .isPresent()
                                    ? "its unit “%s” is not understood".formatted(written)
                                    : grid.words
                                            .label(name + ", " + written)
                                            .map(Label::why)
                                            .filter(why -> !why.isEmpty())
                                            .orElseGet(() -> taking.unknown(name)),
                            grid.shown(row)));
            grid.settle(row);
            return Optional.empty();
        }
        grid.settle(row, names);
        grid.settle(row, unit);
        grid.settle(row, basis);
        if (Understood.ownMethod(grid.cell(row, method)) != null
                && grid.cell(row, method).chars().noneMatch(Character::isDigit)) {
            grid.settle(row, method);
        }
        var own = Heading.basis(grid.cell(row, basis)).orElse(null);
        var found = with.get();
        return Optional.of(own == null ? found : new Heading(found.analyte(), found.unit(), own, found.share()));
    }

    private Optional<Heading> withUnit(String name, String written, Optional<Heading> alone) {
        if (alone.isPresent() && alone.get().analyte().unit() == Unit.NONE) {
            return alone;
        }
        return grid.words
                .heading(name + ", " + written)
                .or(() -> alone.flatMap(h -> Heading.measured(h.analyte(), written)
                        .filter(told -> h.unit() == null || h.unit() == told.unit())
                        .map(told -> told.with(null, h.basis()))));
    }
}
