package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.TextLine;
import haywright.forage.Analyte;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * The lines of a sheet that stand over figures: names of samples, whose figures they are, bases, units. What was read
 * last holds until the next headings stand.
 */
final class HeadingLines {
    private static final int LINES_OF_HEADINGS = 3;

    /** Over the columns of samples side by side: name, number, feed, day. */
    private static final int MOST_LINES_OF_NAMES = 6;

    /** Lines under headings in which one with all its figures is looked for. */
    private static final int LOOK_AHEAD = 40;

    private final List<TextLine> lines;
    private final Names names;
    private final Gathering gathering;
    private final Map<TextLine, Optional<TableHead>> heads = new IdentityHashMap<>();
    private TableHead head = TableHead.NONE;
    /** Of columns whose headings stand in the next line. */
    private List<TextLine.Word> unitsOver = List.of();

    /** What says whose figures stand under the headings of the next line. */
    private Optional<OverColumns> overColumns = Optional.empty();

    HeadingLines(List<TextLine> lines, Names names, Gathering gathering) {
        this.lines = lines;
        this.names = names;
        this.gathering = gathering;
    }

    /** Those that hold; none before the first. */
    TableHead head() {
        return head;
    }

    /** Headings that no words of theirs show. */
    void put(StrayHeadings.Over over) {
        head = over.head();
        gathering.head(head, List.of(over.line()));
    }

    /** "DM 2026    DM 2025": headings, though a name with a figure looks the same. */
    static boolean isOfTimes(TextLine line) {
        return line.isAligned() && line.text().contains("20") && (areOfTimes(line) || isBesideBases(line));
    }

    /** "As fed    Dry matter    2025": two bases, and a year that stands over figures of another report. */
    private static boolean isBesideBases(TextLine line) {
        var cells =
                line.cells().stream().map(cell -> TextLine.join(cell).text()).toList();
        long bases =
                cells.stream().filter(cell -> Heading.basis(cell).isPresent()).count();
        return bases > 1
                && cells.stream()
                        .allMatch(cell -> Heading.basis(cell).isPresent()
                                || Whose.isOnly(cell)
                                || ColumnWords.isNames(cell)
                                || ColumnWords.isUnits(cell));
    }

    private static boolean areOfTimes(TextLine line) {
        return line.cells().stream()
                        .filter(cell -> Whose.isOfATime(TextLine.join(cell).text()))
                        .count()
                > 1;
    }

    /** "CP 25 % DM    CP 26 % DM": each analyte under the same years, side by side. */
    static boolean areYears(TextLine line, List<Row> rows) {
        var years = new HashMap<Analyte, List<Integer>>();
        for (var row : rows) {
            var heading = row.heading();
            var figure = row.figures().isEmpty() ? "" : row.figures().get(0).text();
            if (heading == null || row.figures().size() != 1 || !figure.matches("(?:20)?[1-4][0-9]")) {
                return false;
            }
            years.computeIfAbsent(heading.analyte(), k -> new ArrayList<>()).add(Integer.parseInt(figure) % 100);
        }
        return line.isAligned()
                && rows.size() > 1
                && years.values().stream().distinct().count() == 1
                && years.values().stream()
                        .allMatch(some -> some.size() > 1 && Math.abs(some.get(1) - some.get(0)) == 1);
    }

    /** What stands under a heading that is known to hold no figures of the feed is not read. */
    List<TextLine.Word> read(TextLine line) {
        if (!line.isAligned() || head.columns().isEmpty()) {
            return line.words();
        }
        return line.words().stream()
                .filter(word -> isOfName(line, word)
                        || head.isNameless() && line.cells().get(0).contains(word)
                        || head.nearest(column(line, word)).role() != TableHead.Role.IGNORED
                                && !(head.nearest(word).role() == TableHead.Role.UNIT && word.isNothing()))
                .toList();
    }

    /** A word with those of its cell, where words begin it: "Van Soest 1991, mod." stands in one column. */
    private static TextLine.Word column(TextLine line, TextLine.Word word) {
        return line.cells().stream()
                .filter(cell -> cell.contains(word) && cell.get(0).text().matches("\\p{L}{2}.*"))
                .findFirst()
                .map(TextLine::join)
                .orElse(word);
    }

    /** The first word of a line, and those behind it in its cell up to a figure. */
    private static boolean isOfName(TextLine line, TextLine.Word word) {
        for (var one : line.cells().get(0)) {
            if (one == word) {
                return true;
            }
            if (one.isFigure()) {
                return false;
            }
        }
        return false;
    }

    /** Takes the headings that begin in a line. @return how many lines they take; 0 where none stand here */
    int take(int at) {
        var sides = BasesUnder.at(lines, at, names.words());
        if (sides.isPresent()) {
            gathering.table();
            int end = at + sides.get().lines();
            head = placed(sides.get().head(), end);
            gathering.head(head, List.of());
            gathering.settle(lines.get(at));
            gathering.settle(lines.get(end - 1));
            return sides.get().lines();
        }
        int labels = overColumns.isEmpty() ? labelsOver(at) : 0;
        if (labels > 0) {
            gathering.table();
            return labels;
        }
        boolean isOverHead = at + 1 < lines.size()
                && !lines.get(at + 1).isBlank()
                && alone(lines.get(at)).isEmpty()
                && alone(lines.get(at + 1)).isPresent();
        if (isOverHead && !Headings.units(lines.get(at).cells()).isEmpty()) {
            unitsOver = Headings.units(lines.get(at).cells());
            gathering.settle(lines.get(at));
            return 1;
        }
        if (alone(lines.get(at)).isPresent()) {
            gathering.table();
        }
        TableHead best = null;
        int taken = 0;
        List<List<TextLine.Word>> cells = null;
        for (int i = 0; i < LINES_OF_HEADINGS && at + i < lines.size(); i++) {
            var line = lines.get(at + i);
            boolean isRow = !isOfTimes(line)
                    && (line.hasDecimals()
                            || names.rows(line).stream().anyMatch(Row::isTold)
                            || i > 0 && isOfFigures(line));
            if (line.isBlank() || isRow || i > 0 && line.text().contains(":")) {
                break;
            }
            var alone = alone(line);
            if (i > 0
                    && best != null
                    && best.bases() == 0
                    && alone.isPresent()
                    && alone.get().bases() > 0) {
                gathering
                        .above()
                        .codes(best.values().stream()
                                .map(c -> c.heading().text())
                                .toList());
                best = best.over(alone.get());
                taken = i + 1;
                break;
            }
            if (i > 0
                    && best != null
                    && best.bases() > 1
                    && alone.isPresent()
                    && alone.get().bases() == 0
                    && alone.get().values().size() >= best.bases()) {
                best = alone.get().under(best);
                taken = i + 1;
                break;
            }
            if (i > 0 && best == null && alone.isPresent()) {
                return 0; // the headings begin in the next line
            }
            cells = cells == null ? line.cells() : Headings.over(cells, line.cells());
            var head = i == 0 ? alone : TableHead.of(cells, names.words());
            if (head.isPresent() && (best == null || head.get().bases() > best.bases())) {
                best = head.get();
                taken = i + 1;
            }
        }
        if (best != null) {
            int next = at + taken;
            var under = next < lines.size() ? Headings.units(lines.get(next).cells()) : List.<TextLine.Word>of();
            best = best.in(unitsOver).in(under);
            taken += under.isEmpty() ? 0 : 1;
            unitsOver = List.of();
            if (overColumns.isPresent()) {
                var over = overColumns.get();
                best = over.over(best, names.words());
                gathering.above().codes(over.names(best));
                overColumns = Optional.empty();
            }
            best = OddColumns.asked(best, lines.subList(Math.max(0, at - MOST_LINES_OF_NAMES), at), names.words());
            head = placed(best, at + taken);
            nameGroups(at);
            gathering.head(head, lines.subList(at, at + taken));
            gathering.isShort(isShort(best, at + taken));
        }
        return taken;
    }

    /** "Dry residue   612   g/kg fresh": a name, and behind it a figure with its unit, though nobody knows the name. */
    private static boolean isOfFigures(TextLine line) {
        var cells = line.cells().stream().map(TextLine::join).toList();
        return IntStream.range(1, Math.max(1, cells.size() - 1))
                .anyMatch(at -> cells.get(at).text().matches("(?!20[0-9]{2}$)[0-9]+")
                        && Headings.unit(cells.get(at + 1)
                                        .with(cells.get(at + 1).text().replaceFirst("\\s.*", "")))
                                .isPresent());
    }

    /** Headings that say no basis of their own stand in the next lines, or this line has a label with a value. */
    boolean isUnder(int at, OfAllBelow said) {
        if (said.isBesideAValue()) {
            return true;
        }
        for (int next = at + 1; next < Math.min(lines.size(), at + LINES_OF_HEADINGS + 1); next++) {
            if (lines.get(next).isBlank()) {
                continue;
            }
            var head = alone(lines.get(next));
            if (head.isPresent()) {
                return head.get().bases() == 0
                        && head.get().columns().stream()
                                        .filter(TableHead.Column::isOfFigures)
                                        .count()
                                > 1;
            }
            if (names.rows(lines.get(next)).stream().anyMatch(Row::isTold)) {
                return false;
            }
        }
        return false;
    }

    /** @return how many lines say whose figures stand in the columns under the next headings; 0 where none does */
    private int labelsOver(int at) {
        List<TextLine.Word> cells = List.of();
        for (int below = at; below < Math.min(lines.size(), at + LINES_OF_HEADINGS); below++) {
            int next = below;
            var line = lines.get(next);
            boolean isRule = !line.isBlank()
                    && line.words().stream().allMatch(word -> word.text().matches("[-–—=_]{2,}"));
            if (isRule && next > at) {
                continue;
            }
            var head = next == at || line.isBlank() ? Optional.<TableHead>empty() : alone(line);
            if (head.filter(one -> one.bases() > 0 || next == at + 1).isPresent()) {
                overColumns = OverColumns.in(
                        cells, lines.subList(Math.max(0, at - MOST_LINES_OF_NAMES), at), head.orElseThrow());
                if (overColumns.isPresent()) {
                    return next - at;
                }
            }
            boolean isOfValues = line.text().contains(":") && !OverColumns.areNamesBesideOthers(line);
            if (line.isBlank() || line.hasDecimals() || isOfValues || Head.isField(line)) {
                return 0;
            }
            cells = (cells.isEmpty()
                            ? line.cells()
                            : Headings.over(cells.stream().map(List::of).toList(), line.cells()))
                    .stream().map(TextLine::join).toList();
        }
        return 0;
    }

    /** The headings in one line, looked for once. */
    Optional<TableHead> alone(TextLine line) {
        return heads.computeIfAbsent(line, one -> TableHead.of(one.cells(), names.words()));
    }

    /** Whether more figures stand in the lines under samples side by side than the headings name: which is whose cannot be told. */
    private boolean isShort(TableHead best, int from) {
        long wanted = best.ofFigures(false).size();
        int end = from;
        while (end < lines.size()
                && !lines.get(end).isBlank()
                && alone(lines.get(end)).isEmpty()) {
            end++;
        }
        return best.groups() > 2
                && lines.subList(from, end).stream()
                                .filter(TextLine::isAligned)
                                .map(names::rows)
                                .filter(rows -> rows.size() == 1
                                        && rows.get(0).isTold()
                                        && rows.get(0).hasCells()
                                        && rows.get(0).figures().size() > wanted)
                                .count()
                        > 1;
    }

    /** The headings over the figures of the first line that lacks none, which tell better where figures stand. */
    private TableHead placed(TableHead best, int from) {
        return lines.subList(from, Math.min(lines.size(), from + LOOK_AHEAD)).stream()
                .filter(TextLine::isAligned)
                .map(names::rows)
                .filter(rows ->
                        rows.size() == 1 && rows.get(0).isTold() && rows.get(0).hasCells())
                .map(rows -> best.placed(rows.get(0).figures()))
                .flatMap(Optional::stream)
                .findFirst()
                .orElse(best);
    }

    /** The cells of a line but for a heading over the names of analytes. */
    private static List<List<TextLine.Word>> withoutCorner(TextLine line) {
        var cells = line.cells();
        boolean isCorner = cells.size() > 1
                && ColumnWords.isNames(TextLine.join(cells.get(0)).text());
        return isCorner ? cells.subList(1, cells.size()) : cells;
    }

    /** Samples side by side can be named over their columns, in lines above the headings; days among them are no names. */
    private void nameGroups(int at) {
        int from = at;
        while (from > Math.max(0, at - MOST_LINES_OF_NAMES)
                && !lines.get(from - 1).isBlank()
                && !lines.get(from - 1).text().contains(":")
                && !Head.isField(lines.get(from - 1))
                && head.areOver(withoutCorner(lines.get(from - 1)))) {
            from--;
        }
        var all = new ArrayList<List<String>>();
        for (var line : lines.subList(from, at)) {
            var groups = new TreeMap<Integer, String>();
            withoutCorner(line).stream()
                    .flatMap(List::stream)
                    .forEach(word -> groups.merge(head.groupOver(word), word.text(), (a, b) -> a + " " + b));
            boolean areDays =
                    Head.of(line).stream().anyMatch(field -> field.told().isDay());
            boolean areNumbers =
                    groups.values().stream().allMatch(name -> name.matches("(?i)(?:sample|no\\.?|#) ?[0-9]{1,2}"));
            if (head.groups() > 1 && groups.size() == head.groups() && !areDays && !areNumbers) {
                all.add(List.copyOf(groups.values()));
                gathering.settle(line);
            }
        }
        if (!all.isEmpty()) {
            gathering.above().samplesOver(all);
        }
    }
}
