package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The headings over a table of names and figures, from left to right. */
record TableHead(List<Column> columns) {
    static final TableHead NONE = new TableHead(List.of());

    /** Columns of text between two headings that may belong together. */
    private static final int NEAR = 6;

    /** What stands in a column. */
    enum Role {
        NAME,
        UNIT,
        /** Words or letters that stand for the basis, line by line. */
        BASIS,
        VALUE,
        IGNORED,
        OTHER
    }

    /**
     * @param basis null where the heading tells none
     * @param unit null where the heading tells none
     * @param place where its figures stand: under the heading, or where a whole line of them shows it
     * @param sample that the heading names beside the basis; empty for none
     */
    record Column(
            Role role, @Nullable Basis basis, @Nullable Unit unit, Word heading, Word place, String sample) {
        Column(Role role, @Nullable Basis basis, @Nullable Unit unit, Word heading) {
            this(role, basis, unit, heading, heading, "");
        }

        Column as(Role other, @Nullable Basis on) {
            return new Column(other, on, unit, heading, place, sample);
        }

        /**
         * How far beside it a word stands. Where a sign parts the cells it is under this heading or under none of its
         * kind, and what stands in cells has no place under headings that do not.
         */
        double away(Word word) {
            if (place.isInCell() || word.isInCell()) {
                return place.cell() == word.cell() ? 0 : Double.POSITIVE_INFINITY;
            }
            return Math.abs(place.middle() - word.middle());
        }

        boolean isOfFigures() {
            return role == Role.VALUE || role == Role.OTHER || role == Role.IGNORED;
        }

        private boolean canHoldFigures() {
            return role == Role.VALUE
                    || role == Role.OTHER
                    || role == Role.IGNORED && !heading.text().matches("(?i).*(?:method|flag|analyst|date|range).*");
        }
    }

    TableHead {
        columns = List.copyOf(columns);
    }

    /** Headings in this line, or in this and the next ones read downwards; empty where it is no line of headings. */
    static Optional<TableHead> of(List<List<Word>> cells, Vocabulary words) {
        var columns = new ArrayList<Column>();
        boolean isRow = Label.of(TextLine.join(cells.get(0)).text()).isPresent()
                && cells.stream()
                        .skip(1)
                        .flatMap(List::stream)
                        .anyMatch(word -> word.isFigure() || word.isParted() || word.isGarbled());
        boolean hasDecimals = cells.stream()
                .flatMap(List::stream)
                .anyMatch(word -> word.isFigure() && word.text().matches(".*[0-9][.,][0-9].*"));
        if (isRow || hasDecimals) { // its figures stand beside a name, though the name be that of a basis too
            return Optional.empty();
        }
        for (var cell : Headings.spaced(cells)) {
            columns.addAll(Headings.in(cell, words));
        }
        boolean isMeasuredAgain = columns.stream().anyMatch(c -> Told.isReplicate(c.heading.text()))
                && columns.stream().filter(c -> Told.isMean(c.heading.text())).count() == 1;
        if (isMeasuredAgain) { // their mean is the sample's
            columns.replaceAll(c -> Told.isReplicate(c.heading.text())
                    ? c.as(Role.IGNORED, null)
                    : Told.isMean(c.heading.text()) ? c.as(Role.VALUE, null) : c);
        }
        if (!isMeasuredAgain) {
            Headings.whose(columns, words);
        }
        Headings.nameSides(columns);
        boolean isDryBeside = columns.stream().anyMatch(c -> c.basis == Basis.DRY_MATTER);
        columns.replaceAll(c -> isDryBeside && c.role == Role.OTHER && Heading.isWet(c.heading.text())
                ? c.as(Role.VALUE, Basis.AS_RECEIVED)
                : c);
        var head = new TableHead(columns);
        long values = head.columns.stream().filter(c -> c.role == Role.VALUE).count();
        boolean isNamed = columns.stream().anyMatch(c -> c.role == Role.NAME);
        boolean isBased = columns.stream().anyMatch(c -> c.role == Role.VALUE && c.basis != null);
        boolean areAllKnown = columns.size() > 1 && columns.stream().noneMatch(c -> c.role == Role.OTHER);
        boolean isHead = isBased
                || values > 0 && areAllKnown
                || isMeasuredAgain
                || values > 0 && (isNamed || columns.stream().anyMatch(c -> c.role == Role.UNIT));
        if (!isHead && isNamed && columns.get(0).role == Role.NAME && columns.size() > 1) {
            // names down the side, and one column a sample under its own code
            var samples = columns.stream()
                    .map(c -> c.role == Role.OTHER ? c.as(Role.VALUE, null) : c)
                    .toList();
            isHead = samples.stream().anyMatch(c -> c.role == Role.VALUE)
                    && samples.stream()
                            .allMatch(c -> c.role != Role.VALUE
                                    || c.heading.text().matches(".*[0-9].*") && !Told.isReplicate(c.heading.text()));
            return isHead ? Optional.of(new TableHead(samples)) : Optional.empty();
        }
        return isHead ? Optional.of(head) : Optional.empty();
    }

    /** Headings that nobody knows over figures, each of which is asked about. */
    static TableHead unknown(List<Word> headings, List<Word> figures, Vocabulary words) {
        return new TableHead(IntStream.range(0, headings.size())
                .mapToObj(i -> {
                    var heading = headings.get(i);
                    var known = Headings.of(heading, words);
                    var place = heading.isInCell() ? heading : figures.get(i);
                    return known == null
                            ? new Column(Role.OTHER, null, null, heading, place, "")
                            : new Column(known.role, known.basis, known.unit, heading, place, known.sample);
                })
                .toList());
    }

    /** One column a sample, under its code; no heading says more. @param figures of a line that lacks none */
    static TableHead ofSamples(List<Word> codes, List<Word> figures) {
        return new TableHead(IntStream.range(0, codes.size())
                .mapToObj(i -> new Column(Role.VALUE, null, null, codes.get(i), figures.get(i), ""))
                .toList());
    }

    /** Each column of figures with the unit that stands under its heading or over it; a single one is of all of them. */
    TableHead in(List<Word> units) {
        var values = values();
        return new TableHead(columns.stream()
                .map(c -> c.role != Role.VALUE || c.unit != null
                        ? c
                        : new Column(
                                c.role,
                                c.basis,
                                IntStream.range(0, units.size())
                                        .filter(i -> units.size() == 1
                                                || (units.size() == values.size()
                                                        ? values.get(i) == c
                                                        : nearest(units.get(i)) == c))
                                        .mapToObj(units::get)
                                        .findFirst()
                                        .flatMap(Headings::unit)
                                        .orElse(null),
                                c.heading,
                                c.place,
                                c.sample))
                .toList());
    }

    /** Names and units of this line with the columns of the next one. */
    TableHead over(TableHead lower) {
        var all = new ArrayList<>(columns);
        all.removeIf(c -> c.role == Role.VALUE);
        all.addAll(lower.columns);
        all.sort((a, b) -> Integer.compare(a.heading.from(), b.heading.from()));
        return new TableHead(all);
    }

    /** Each of several columns under one basis has it: of two years under "As received", the newer one. */
    TableHead under(TableHead upper) {
        var bases = upper.columns.stream()
                .filter(c -> c.basis != null && c.role == Role.VALUE)
                .toList();
        return new TableHead(columns.stream()
                .map(c -> c.role != Role.VALUE
                        ? c
                        : bases.stream()
                                .min(Comparator.comparingDouble(up -> up.away(c.heading)))
                                .map(up -> c.as(Role.VALUE, up.basis))
                                .orElse(c))
                .toList());
    }

    /** What the heading over the names says of all figures; null where it says none, or those of figures do. */
    @Nullable
    Basis corner() {
        return bases() > 0
                ? null
                : columns.stream()
                        .filter(c -> c.role == Role.NAME)
                        .<@Nullable Basis>map(Column::basis)
                        .filter(basis -> basis != null)
                        .findFirst()
                        .orElse(null);
    }

    /** What the heading over the names says of the unit of all figures; null where it says none. */
    @Nullable
    Unit cornerUnit() {
        return columns.stream()
                .filter(c -> c.role == Role.NAME)
                .<@Nullable Unit>map(Column::unit)
                .filter(unit -> unit != null)
                .findFirst()
                .orElse(null);
    }

    /** Whether no heading stands over the names, so that what lies left of all others is one. */
    boolean isNameless() {
        return columns.stream().noneMatch(c -> c.role == Role.NAME);
    }

    boolean hasNoBasisColumn() {
        return columns.stream().noneMatch(c -> c.role == Role.BASIS);
    }

    boolean endsWithUnits() {
        return !columns.isEmpty() && columns.get(columns.size() - 1).role == Role.UNIT;
    }

    int bases() {
        return (int) columns.stream()
                .filter(c -> c.basis != null && c.role != Role.NAME)
                .count();
    }

    /** Columns that figures can stand in. Of a line in columns, what is not to be read was taken out before. */
    List<Column> ofFigures(boolean isAligned) {
        return columns.stream()
                .filter(c -> c.role == Role.VALUE || c.role == Role.OTHER || c.role == Role.IGNORED && !isAligned)
                .toList();
    }

    List<Column> values() {
        return columns.stream().filter(c -> c.role == Role.VALUE).toList();
    }

    /** The number of the group that a column of figures belongs to: a basis that comes again begins the next. */
    int group(Column asked) {
        int group = 0;
        var seen = new ArrayList<@Nullable Basis>();
        boolean hasValue = false;
        if (areSamplesNamed()) {
            return samples().indexOf(asked.sample);
        }
        for (var column : columns) {
            if (column.role == Role.NAME && hasValue || column.role == Role.VALUE && seen.contains(column.basis)) {
                group++;
                seen.clear();
                hasValue = false;
            }
            if (column.role == Role.VALUE) {
                seen.add(column.basis);
                hasValue = true;
            }
            if (column == asked) {
                return group;
            }
        }
        return group;
    }

    private boolean areSamplesNamed() {
        return !values().isEmpty() && values().stream().noneMatch(c -> c.sample.isEmpty());
    }

    /** Those that the headings name, each once; empty where not every column of figures has one. */
    List<String> samples() {
        return areSamplesNamed()
                ? values().stream().map(Column::sample).distinct().toList()
                : List.of();
    }

    /** The same with its places where these figures stand; empty where they are not one for each column. */
    Optional<TableHead> placed(List<Word> all) {
        // the number of a method is no figure of the sample's
        var figures = all.stream()
                .filter(word ->
                        nearest(word).role != Role.IGNORED || nearest(word).canHoldFigures())
                .toList();
        long wanted = columns.stream().filter(Column::canHoldFigures).count();
        if (figures.stream().anyMatch(Word::isInCell)
                || figures.size() != wanted
                || !figures.stream().allMatch(Word::isFigure)) {
            return Optional.empty();
        }
        var left = new ArrayDeque<>(figures);
        return Optional.of(new TableHead(columns.stream()
                .map(c -> c.canHoldFigures()
                        ? new Column(c.role, c.basis, c.unit, c.heading, left.remove(), c.sample)
                        : c)
                .toList()));
    }

    /** The column over a word; one without a heading where it stands in a cell that has none. */
    Column nearest(Word word) {
        return columns.stream()
                .filter(c -> c.away(word) < Double.POSITIVE_INFINITY)
                .min(Comparator.comparingDouble(c -> c.away(word)))
                .orElseGet(() -> new Column(Role.OTHER, null, null, new Word("", word.from(), word.to(), word.cell())));
    }

    /** Whether these stand over columns of figures of several groups, and not over names or beside them. */
    boolean areOver(List<List<Word>> cells) {
        var values = values();
        return groups() > 1
                && cells.stream()
                        .map(TextLine::join)
                        .allMatch(cell -> cell.middle() > values.get(0).heading.from() - NEAR
                                && cell.middle()
                                        < columns.get(columns.size() - 1)
                                                        .heading
                                                        .to()
                                                + NEAR
                                && Heading.basis(cell.text()).isEmpty());
    }

    /** The group that a word over the headings is nearest to. */
    int groupOver(Word word) {
        return columns.stream()
                .filter(Column::canHoldFigures)
                .min(Comparator.comparingDouble(c -> Math.abs(c.place.middle() - word.middle())))
                .map(this::group)
                .orElse(0);
    }

    int groups() {
        var values = values();
        return areSamplesNamed() ? samples().size() : values.isEmpty() ? 1 : group(values.get(values.size() - 1)) + 1;
    }
}
