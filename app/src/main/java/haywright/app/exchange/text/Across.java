package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnWords;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.Rows;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The headings of a table that has its analytes across the top and one sample in each line under them.
 *
 * @param columns from left to right
 * @param whole the figures of a line that lacks none, which tell better than the headings where figures stand; empty
 *     where there is no such line
 */
record Across(List<Column> columns, List<Word> whole) {
    private static final int MOST_LINES = 5;
    private static final int FEWEST = 2;
    /** Lines in which one without a gap is looked for. */
    private static final int LOOK_AHEAD = 60;

    /**
     * @param heading with its unit and basis, if they stand under the name
     * @param analyte null where the heading names none
     * @param basis of the group of columns, where the heading names none; null where neither does
     * @param tells what it says of the sample; null for figures, and for what is not known
     * @param whose figures stand in it, as a line over the headings says
     */
    record Column(
            Word heading,
            @Nullable Heading analyte,
            @Nullable Basis basis,
            @Nullable Told tells,
            Whose whose) {
        Column(Word heading, @Nullable Heading analyte, @Nullable Basis basis, @Nullable Told tells) {
            this(heading, analyte, basis, tells, Whose.UNSAID);
        }
    }

    /** A heading over several columns, with the dashes that show how far it goes. */
    private record Span(int from, int to, Basis basis) {}

    /**
     * @param lines how many the headings take
     * @param understood how much of them, and whether the figures of the first line stand under them
     */
    record Found(Across table, int lines, long understood) {}

    /**
     * Line by line, what the sample is called and what was found in it.
     *
     * @param strange what stands where a figure should and is none
     * @param basis what a column says of the basis of the line; null where none does
     */
    record Line(
            List<Head.Field> told,
            List<Word> figures,
            List<@Nullable Column> places,
            List<Word> strange,
            @Nullable Word basis) {}

    Across {
        columns = List.copyOf(columns);
        whole = List.copyOf(whole);
    }

    /** The headings that begin in a line; they end where a line of figures begins. */
    static Optional<Found> at(List<TextLine> lines, int at, Names names) {
        return headings(lines, at, names)
                // a line of words over the headings can lie over them by chance
                .filter(found -> IntStream.range(at + 1, at + found.lines)
                        .mapToObj(later -> headings(lines, later, names))
                        .flatMap(Optional::stream)
                        .noneMatch(later -> later.understood > found.understood))
                .or(() -> ofOne(lines, at, names));
    }

    /** The usual nitrate list: samples under a heading that says so, and one analyte beside them. */
    private static Optional<Found> ofOne(List<TextLine> lines, int at, Names names) {
        int under = at + 1;
        while (under < lines.size() && lines.get(under).isBlank()) {
            under++;
        }
        var cells = lines.get(at).cells();
        if (cells.size() < 2 || under >= lines.size() || lines.get(at).text().contains(":")) {
            return Optional.empty();
        }
        var columns = cells.stream()
                .map(cell -> column(TextLine.join(cell), List.of(), names))
                .toList();
        boolean isSaid = columns.stream()
                        .allMatch(c -> c.tells != null
                                || c.analyte != null
                                        && Heading.basis(c.heading.text()).isEmpty())
                && Stream.of(Told.BAG, Told.NUMBER, Told.LOT).anyMatch(told -> told == columns.get(0).tells);
        var table = new Across(columns, List.of());
        return isSaid
                        && table.known() == 1
                        && table.line(lines.get(under), names).isPresent()
                ? Optional.of(new Found(table, 1, 2L * columns.size()))
                : Optional.empty();
    }

    private static Optional<Found> headings(List<TextLine> lines, int at, Names names) {
        int end = at;
        while (end < lines.size()
                && end - at <= MOST_LINES
                && !isFigures(lines.get(end), names)
                && !hasSeveral(lines.get(end), names)) {
            end++;
        }
        if (end == at
                || end >= lines.size()
                || end - at > MOST_LINES
                || lines.get(at).text().contains(":")) {
            return Optional.empty();
        }
        var spans = new ArrayList<Span>();
        List<List<Word>> cells = List.of();
        var labels = LabelsAcross.none();
        for (var line : lines.subList(at, end)) {
            var over = cells.isEmpty() ? LabelsAcross.in(line, names) : Optional.<LabelsAcross>empty();
            if (over.isPresent()) {
                labels = over.get();
                continue;
            }
            var own = line.cells().stream().filter(cell -> !isRule(cell)).toList();
            line.cells().stream().filter(Across::isRule).forEach(rule -> widen(spans, TextLine.join(rule)));
            var groups =
                    own.stream().map(Across::span).flatMap(Optional::stream).toList();
            if (!own.isEmpty() && groups.size() == own.size()) {
                spans.addAll(groups);
            } else if (!own.isEmpty()) {
                cells = cells.isEmpty() ? own : Headings.over(cells, own);
            }
        }
        if (spans.size() == 1
                && lines.subList(at, end).stream()
                        .anyMatch(line -> line.cells().size() == 1
                                && span(line.cells().get(0)).isPresent())) {
            spans.set(0, new Span(0, Integer.MAX_VALUE, spans.get(0).basis)); // alone in its line it is of all of them
        }
        var columns = cells.stream()
                .map(cell -> column(TextLine.join(cell), spans, names))
                .toList();
        var headings = new Across(labels.over(columns, names), List.of());
        if (headings.known() < FEWEST) {
            return Optional.empty();
        }
        var table = headings.with(lines.subList(end, Math.min(lines.size(), end + LOOK_AHEAD)), names);
        var first = table.line(lines.get(end), names);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        long told = columns.stream().filter(c -> c.tells != null).count();
        boolean isPlaced = !first.get().places.contains(null);
        return Optional.of(new Found(table, end - at, 2 * (table.known() + told) + (isPlaced ? 1 : 0)));
    }

    /** A line of figures, and not of headings: the name of a test may have a figure in it. */
    private static boolean isFigures(TextLine line, Names names) {
        return figures(line) >= FEWEST
                && !isRow(line, names)
                && LabelsAcross.in(line, names).isEmpty();
    }

    private static boolean isRow(TextLine line, Names names) {
        var words = withoutBases(line);
        var rows = words.size() == line.words().size() ? names.rows(line) : Rows.of(words, line.isAligned(), names);
        return rows.stream().anyMatch(Row::isTold);
    }

    /** "NDFD 48 h   % of NDF   57   55": a name and its figures, and no line of names. */
    private static boolean hasSeveral(TextLine line, Names names) {
        return figures(line) >= FEWEST
                && names.rows(line).stream()
                        .anyMatch(row -> row.isTold()
                                && row.figures().stream().filter(Word::isFigure).count() >= FEWEST);
    }

    /** "DM" in a cell behind a sample's name is its basis, and no dry matter. */
    private static List<Word> withoutBases(TextLine line) {
        return line.cells().stream()
                .filter(cell -> cell.get(0) == line.words().get(0)
                        || Heading.basis(TextLine.join(cell).text()).isEmpty())
                .flatMap(List::stream)
                .toList();
    }

    private static long figures(TextLine line) {
        return line.words().stream().filter(Word::isFigure).count();
    }

    private static boolean isRule(List<Word> cell) {
        return cell.stream().allMatch(word -> word.text().matches("[-–—=]{2,}"));
    }

    private static Optional<Span> span(List<Word> cell) {
        var whole = TextLine.join(cell);
        return Heading.basis(whole.text().replaceAll("(?:^[-–—=\\s]+|[-–—=\\s]+$)", ""))
                .map(basis -> new Span(whole.from(), whole.to(), basis));
    }

    private static void widen(List<Span> spans, Word rule) {
        spans.replaceAll(span -> span.from < rule.to() && rule.from() < span.to
                ? new Span(Math.min(span.from, rule.from()), Math.max(span.to, rule.to()), span.basis)
                : span);
    }

    private static Column column(Word heading, List<Span> spans, Names names) {
        var analyte = names.heading(heading.text()).orElse(null);
        if (analyte == null) {
            return new Column(
                    heading,
                    null,
                    null,
                    ColumnWords.isNames(heading.text())
                            ? Told.LOT
                            : Head.tells(heading.text()).orElse(null));
        }
        var group = spans.stream()
                .filter(span -> span.from <= heading.middle() && heading.middle() <= span.to)
                .map(Span::basis)
                .findFirst();
        return new Column(heading, analyte, analyte.basis() == null ? group.orElse(null) : analyte.basis(), null);
    }

    private long known() {
        return columns.stream()
                .map(Column::analyte)
                .filter(heading -> heading != null)
                .map(Heading::analyte)
                .distinct()
                .count();
    }

    /** A sample; empty where the line is none of this table. */
    Optional<Line> line(TextLine line, Names names) {
        if (figures(line) == 0 || !line.isAligned() || isRow(line, names)) {
            return Optional.empty();
        }
        var told = new ArrayList<Head.Field>();
        var figures = new ArrayList<Word>();
        var strange = new ArrayList<Word>();
        Word basis = null;
        for (var cell : line.cells()) {
            var whole = TextLine.join(cell);
            var column = nearest(whole);
            boolean isFirst = whole.from() == line.words().get(0).from();
            if (!isFirst && ColumnWords.isBasis(column.heading.text())) {
                basis = whole;
            } else if (column.analyte == null && (column.tells != null || isFirst)) {
                Told kind = column.tells == null ? Told.NUMBER : column.tells;
                told.add(new Head.Field(kind, whole.text(), line.number(), whole.from(), whole.to()));
            } else if (cell.stream().allMatch(word -> word.isFigure() || word.isNothing())) {
                figures.addAll(cell);
            } else if (isFirst) {
                told.add(new Head.Field(Told.NUMBER, whole.text(), line.number(), whole.from(), whole.to()));
            } else if (column.analyte != null) {
                strange.add(whole);
            }
        }
        boolean isOfOne = known() == 1;
        if (figures.size() < (isOfOne ? 1 : FEWEST)
                || isOfOne && line.cells().size() != columns.size()
                || strange.size() >= figures.size()) {
            return Optional.empty(); // words of another kind of line
        }
        var wanted = new ArrayList<TableHead.Column>();
        for (var column : figureColumns()) {
            var place = whole.isEmpty() ? column.heading : whole.get(wanted.size());
            wanted.add(new TableHead.Column(TableHead.Role.VALUE, null, null, place));
        }
        return Optional.of(new Line(
                told,
                figures,
                Placing.of(figures, wanted, true).stream()
                        .<@Nullable Column>map(
                                place -> place == null ? null : figureColumns().get(wanted.indexOf(place)))
                        .toList(),
                strange,
                basis));
    }

    private List<Column> figureColumns() {
        return columns.stream()
                .filter(c -> c.tells == null && !ColumnWords.isBasis(c.heading.text()))
                .toList();
    }

    private Across with(List<TextLine> under, Names names) {
        return under.stream()
                .map(line -> line(line, names))
                .flatMap(Optional::stream)
                .filter(line -> line.figures.size() == figureColumns().size() && !line.places.contains(null))
                .map(line -> new Across(columns, line.figures))
                .findFirst()
                .orElse(this);
    }

    private Column nearest(Word cell) {
        return columns.stream()
                .min((a, b) -> Double.compare(away(a, cell), away(b, cell)))
                .orElseThrow();
    }

    /** How far a cell lies beside a heading; words under a heading begin where it does, figures end there. */
    private static double away(Column column, Word cell) {
        var heading = column.heading;
        if (heading.isInCell() || cell.isInCell()) {
            return heading.cell() == cell.cell() ? 0 : Double.POSITIVE_INFINITY;
        }
        return Math.min(
                Math.abs(heading.middle() - cell.middle()),
                Math.min(Math.abs(heading.from() - cell.from()), Math.abs(heading.to() - cell.to())));
    }
}
