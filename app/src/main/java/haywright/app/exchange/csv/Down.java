package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Cells;
import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Analytes down the side, once or in several columns beside each other; across the top a basis, a sample, or a sample
 * over each pair of bases.
 */
final class Down {
    private final Taking taking;
    private final Grid grid;
    private final int head;
    private final int first;
    private final List<Integer> nameColumns;
    private final DownColumns columns;
    private final About above;
    private final Set<String> means = new HashSet<>();

    /** @param before what was said over the table before it */
    Down(Taking taking, NameColumns names, About before) {
        this.taking = taking;
        this.grid = taking.grid;
        this.head = names.head();
        this.first = names.first();
        this.nameColumns = names.columns();
        this.above =
                About.over(grid, 0, names.head() < 0 ? first : names.head()).after(before);
        this.columns = new DownColumns(taking, names);
    }

    About above() {
        return above;
    }

    /** Whether a column tells line by line of which sample it is. */
    boolean areSamplesInLines() {
        return columns.report >= 0 || Stream.of(Told.BAG, Told.NUMBER, Told.LOT).anyMatch(columns.told::containsValue);
    }

    boolean areSamplesAcross() {
        return columns.values.values().stream().anyMatch(value -> value.basis() == null) && columns.values.size() > 1;
    }

    List<Sample> samples() {
        var byKey = new LinkedHashMap<String, Cells>();
        var abouts = new LinkedHashMap<String, About>();
        measuredAgain();
        for (int row = head + 1; row < grid.height(); row++) {
            if (row < first && !isUnknownName(row) || isAbout(row)) {
                continue;
            }
            if (!taking.isUneven(row, head)
                    && !columns.others.has(row, taking)
                    && !taking.isTakenBack(row, head, column -> nameColumns.contains(column) || columns.isValue(column))
                    && isMarkKnown(row)) {
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

    /** Which names have the mean of several measurements in a line of its own. */
    private void measuredAgain() {
        for (int row = first; columns.replicate >= 0 && row < grid.height(); row++) {
            var name = grid.cell(row, nameColumns.get(0));
            var written = grid.cell(row, columns.unit);
            var heading = grid.words.heading(name);
            if (Told.isMean(grid.cell(row, columns.replicate))
                    && (written.isBlank() ? heading : withUnit(name, written, heading)).isPresent()) {
                int at = row;
                columns.values.values().forEach(value -> means.add(key(at, value, told(at)) + name));
            }
        }
    }

    /** Between the headings and the first name that is known: one that is not, with a figure beside it. */
    private boolean isUnknownName(int row) {
        return head >= 0
                && !grid.cell(row, nameColumns.get(0)).isBlank()
                && grid.told(row, nameColumns.get(0)).isEmpty()
                && IntStream.range(nameColumns.get(0) + 1, grid.width(row))
                        .anyMatch(column -> grid.isFigure(row, column));
    }

    /** "Sampled", "Feed": a line among the others that tells of the samples. */
    private boolean isAbout(int row) {
        int names = nameColumns.get(0);
        var what = grid.told(row, names).orElse(null);
        if (what == null || grid.isLabel(row, names) || !columns.told.isEmpty()) {
            return false;
        }
        columns.tell(row, what);
        return true;
    }

    /** "<" and U, not detected, make a bound of the figure; what any other mark means is asked. */
    private boolean isMarkKnown(int row) {
        var text = grid.cell(row, columns.mark).strip();
        if (text.isEmpty() || text.equals("=") || isLess(row)) {
            grid.settle(row, columns.mark);
            return true;
        }
        var said = taking.said(text, grid.cell(row, nameColumns.get(0)), row);
        if (said != null && said != ColumnIs.LEFT_OUT) {
            grid.settle(row, columns.mark);
            return true;
        }
        grid.settle(row);
        return false;
    }

    private boolean isLess(int row) {
        return grid.cell(row, columns.mark).strip().matches("[<≤]|(?i:U|ND|BDL)");
    }

    private void row(int row, int names, Map<String, Cells> byKey, Map<String, About> abouts) {
        var name = grid.cell(row, names);
        if (name.isBlank()) {
            return;
        }
        var heading = heading(row, names, name);
        if (heading.isEmpty()) {
            return;
        }
        boolean areBased = columns.values.values().stream()
                        .map(DownColumns.Value::basis)
                        .filter(basis -> basis != null)
                        .distinct()
                        .count()
                > 1;
        for (var entry : columns.values.entrySet()) {
            int column = entry.getKey();
            var value = entry.getValue();
            if (value.names() != names || grid.isNothing(row, column)) {
                continue;
            }
            var own = told(row);
            var key = key(row, value, own);
            var about = abouts.computeIfAbsent(key, k -> columns.told.isEmpty() ? value.about() : own);
            about.add(Told.NUMBER, grid.cell(row, columns.report));
            columns.told.forEach((at, what) -> {
                if (About.isKept(what, grid.cell(row, at))) {
                    grid.settle(row, at);
                }
            });
            grid.settle(row, columns.report);
            if (means.contains(key + name) && !Told.isMean(grid.cell(row, columns.replicate))) {
                taking.notTaken.add("Line %d, one of several measurements, and their mean is taken: %s"
                        .formatted(grid.line(row), grid.shown(row)));
                grid.settle(row);
                continue;
            }
            grid.settle(row, columns.replicate);
            var analyte = heading.get().analyte();
            var cells = byKey.computeIfAbsent(key, k -> new Cells());
            boolean isWhole =
                    value.basis() == Basis.DRY_MATTER && (analyte == Analyte.DM || analyte == Analyte.MOISTURE);
            if (isWhole) { // dry matter of dry matter is 100 and says nothing
                grid.settle(row, column);
            } else {
                var marked = grid.words
                        .column("mark " + grid.cell(row, columns.mark))
                        .map(ColumnIs::basis);
                var on = value.basis() == null
                        ? marked.orElse(
                                heading.get().basis() == null
                                        ? columns.corner
                                        : heading.get().basis())
                        : value.basis();
                boolean fits = value.unit() != null
                        && value.unit().kind() == analyte.unit().kind();
                var unitHere = heading.get().unit() == null && fits
                        ? value.unit()
                        : heading.get().unit();
                taking.take(
                        cells,
                        new Heading(analyte, unitHere, on, heading.get().share()),
                        name,
                        row,
                        column,
                        areBased,
                        grid.cell(row, columns.limit),
                        isLess(row),
                        Understood.ownMethod(grid.cell(row, columns.method)));
            }
        }
    }

    private About told(int row) {
        var own = new About();
        columns.told.forEach((at, what) -> own.add(what, grid.cell(row, at)));
        return own;
    }

    /** Several reports can speak of one code, and several codes stand in one report. */
    private String key(int row, DownColumns.Value value, About own) {
        return columns.told.isEmpty()
                ? grid.cell(row, columns.report) + "\n" + value.code()
                : grid.cell(row, columns.report) + "\n" + own.first(Told.BAG) + "\n" + own.first(Told.NUMBER) + "\n"
                        + own.first(Told.LOT) + "\n" + own.first(Told.CUSTOMER) + "\n"
                        + (value.basis() == null && columns.values.size() > 1
                                ? value.about().first(Told.BAG)
                                : "");
    }

    /** What the name in a line of its own stands for; empty where it is to be left out, or is not known. */
    private Optional<Heading> heading(int row, int names, String name) {
        var heading = grid.words.heading(name);
        var beside = grid.cell(row, columns.basis);
        // "% of CP" in a column of bases says what it is a share of
        boolean isShare = Heading.basis(beside).isEmpty()
                && taking.legend.letter(beside).isEmpty()
                && beside.matches("(?i)\\s*(?:%|pct|percent).*")
                && grid.words.heading(name + ", " + beside).isPresent();
        var written = isShare ? beside : grid.cell(row, columns.unit);
        var with = written.isBlank() || !isShare && grid.isNothing(row, columns.unit)
                ? heading
                : heading.isPresent() && grid.words.own().containsKey(Heading.key(name))
                        ? grid.words.label(name, written).map(Label::heading)
                        : withUnit(name, written, heading);
        taking.name(name, grid.shown(row), heading.orElse(null));
        if (grid.words.leavesOut(name)) {
            taking.leftOut(row);
            return Optional.empty();
        }
        if (with.isEmpty()) {
            taking.notTaken.add("Line %d, “%s”: %s: %s"
                    .formatted(
                            grid.line(row),
                            name,
                            grid.words.own().containsKey(Heading.key(name)) && heading.isPresent()
                                    ? grid.words
                                            .label(name, written)
                                            .map(Label::why)
                                            .orElse("")
                                    : heading.isPresent()
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
        var on = grid.cell(row, columns.basis);
        var own = Heading.basis(on).or(() -> taking.legend.letter(on)).orElse(null);
        if (own == null
                && !isShare
                && !grid.isNothing(row, columns.basis)
                && with.get().analyte().hasBasis()) {
            var said = taking.said(on, name, row);
            if (said == null || said == ColumnIs.LEFT_OUT) {
                grid.settle(row);
                return Optional.empty();
            }
            own = said.basis();
        }
        grid.settle(row, names);
        grid.settle(row, columns.unit);
        grid.settle(row, columns.basis);
        if (Understood.ownMethod(grid.cell(row, columns.method)) != null
                && grid.cell(row, columns.method).chars().noneMatch(Character::isDigit)) {
            grid.settle(row, columns.method);
        }
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
