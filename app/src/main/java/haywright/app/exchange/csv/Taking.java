package haywright.app.exchange.csv;

import haywright.app.exchange.lab.BasisExcept;
import haywright.app.exchange.lab.Cells;
import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.HalfDry;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Label;
import haywright.app.exchange.lab.Legend;
import haywright.app.exchange.lab.ShareSaid;
import haywright.app.exchange.lab.Standing;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Column;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.NotMeasured.Why;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Figures on their way from cells to samples, and what is said of those that are not taken. */
final class Taking {
    private static final Pattern MARKED = Pattern.compile("(?<=\\S)\\s?(" + Legend.MARK + ")$");

    /** Behind a figure, letters without brackets too. */
    private static final Pattern MARKED_FIGURE =
            Pattern.compile("(?<=[0-9%])\\s*(" + Legend.MARK + "|(?<=\\s)[a-z0-9])$");

    private static final Pattern MARKED_WITH_A_SIGN = Pattern.compile("(?i)x|y|yes|true|✓|✗");
    private static final String TAKEN_OUT =
            "the sheet takes it out of the basis of the others, and does not say its own. Say it below, beside its name";

    private static final Pattern FORM =
            Pattern.compile("(?i)\\s*(?:%|ppm|ppb|pct|[mµu]?g/k?g|lbs?/ton)[\\s,(]*(?:as )?NO ?3\\b.*");

    final Grid grid;
    final Map<String, Named> names;
    final Map<String, Column> columns;
    final Set<String> notTaken;
    private final Set<String> withoutBasis;

    private final Decimals.Sheet decimals;
    private final @Nullable Basis untold;
    /** Whether the sheet says by itself on which basis figures are whose heading names none. */
    private final boolean isTold;

    final Legend legend;
    private final BasisExcept except;
    private final ShareSaid shares;

    /** @param untold the basis of what names none, as the sheet says or somebody did; null where neither has */
    Taking(Grid grid, Decimals.Sheet decimals, @Nullable Basis untold, boolean isTold) {
        this.grid = grid;
        this.isTold = isTold;
        this.legend = new Legend(IntStream.range(0, grid.height())
                .mapToObj(grid::row)
                .flatMap(List::stream)
                .toList());
        this.except = grid.except();
        this.shares = ShareSaid.in(grid.notes());
        this.names = new LinkedHashMap<>();
        this.columns = new LinkedHashMap<>();
        this.notTaken = new LinkedHashSet<>();
        this.withoutBasis = new LinkedHashSet<>();
        this.decimals = decimals;
        this.untold = untold;
    }

    /** "ppm NO3" in a cell of its own: which form of nitrate the figure beside it is; empty where none says so. */
    private String form(int row) {
        return grid.row(row).stream()
                .filter(cell -> FORM.matcher(cell).matches())
                .findFirst()
                .orElse("");
    }

    /** The next table of the same file. */
    Taking(Grid grid, Taking before) {
        this.grid = grid;
        this.isTold = before.isTold;
        this.legend = before.legend;
        this.except = before.except;
        this.shares = before.shares;
        this.names = before.names;
        this.columns = before.columns;
        this.notTaken = before.notTaken;
        this.withoutBasis = before.withoutBasis;
        this.decimals = before.decimals;
        this.untold = before.untold;
    }

    void name(String written, String example, @Nullable Heading taken) {
        names.putIfAbsent(Heading.key(written), new Named(written, example, taken, grid.words.leavesOut(written)));
    }

    /** A line whose name somebody left out, on this sheet or an earlier one. */
    void leftOut(int row) {
        notTaken.add("Line %d, its name was said to be left out: %s".formatted(grid.line(row), grid.shown(row)));
        grid.settle(row);
    }

    /** Whether the cells of a line do not go with the headings; then it is listed, and none of its figures taken. */
    boolean isUneven(int row, int head) {
        if (grid.hasNoFigures(row)) {
            return false;
        }
        var why = head < 0 ? grid.cut(row) : grid.uneven(row, head).map(words -> words + "?");
        why.ifPresent(words -> {
            notTaken.add("Line %d, %s Nothing of it is taken: %s".formatted(grid.line(row), words, grid.shown(row)));
            grid.settle(row);
        });
        return why.isPresent();
    }

    /** The words of a line outside of these columns; "x" under "Void" is a word of it too. */
    List<String> remarks(int row, int head, IntPredicate ofFigures) {
        return IntStream.range(0, grid.width(row))
                .filter(column -> !ofFigures.test(column) && !grid.isFigure(row, column))
                .mapToObj(column ->
                        MARKED_WITH_A_SIGN.matcher(grid.cell(row, column)).matches()
                                ? grid.cell(head, column)
                                : grid.cell(row, column))
                .filter(text -> text.matches(".*\\p{L}{3}.*"))
                .toList();
    }

    /** Whether the sheet takes the figures of a line back; then they are listed with its words. */
    boolean isTakenBack(int row, int head, IntPredicate ofFigures) {
        var why = grid.hasNoFigures(row)
                ? Optional.<String>empty()
                : remarks(row, head, ofFigures).stream()
                        .map(Standing::why)
                        .flatMap(Optional::stream)
                        .findFirst();
        why.ifPresent(because -> {
            notTaken.add("Line %d, %s: %s".formatted(grid.line(row), because, grid.shown(row)));
            grid.settle(row);
        });
        return why.isPresent();
    }

    /** A column that is asked about. */
    void column(Column column) {
        columns.putIfAbsent(Heading.key(column.written()), column);
    }

    /** Why the figures of this name are not taken. */
    String unknown(String name) {
        var label = grid.words.label(name).map(Label::why).orElse("");
        if (!label.isEmpty()) {
            return label;
        }
        return Analyte.find(name).isPresent()
                ? "its unit or basis is not understood"
                : "no analyte of this name is known" + near(name);
    }

    /** The name that may be meant, as a question; empty where none is near. */
    private static String near(String name) {
        return Analyte.nearest(name).map(near -> ". Did you mean " + near + "?").orElse("");
    }

    /** A unit or a basis in the cell of its figure. */
    private static final Pattern BEHIND = Pattern.compile("([<>≤]?\\s*[0-9.,]*[0-9])\\s*(\\p{L}.*|[%‰#].*)");

    /**
     * The figure of one cell; the cell is settled, taken or not.
     *
     * @param isOver whether the columns beside each other have bases of their own, which a mark does not change
     * @param limit what the test could still have told from nothing, where a column beside says so; empty as a rule
     * @param isLess whether a mark beside it makes the figure a "less than"
     * @param method how it was measured, where that stands beside it; null where it does not
     */
    void take(
            Cells cells,
            Heading unmarked,
            String name,
            int row,
            int column,
            boolean isOver,
            String limit,
            boolean isLess,
            Tested.@Nullable Method besideIt) {
        var share = unmarked.share() == null ? shares.of(unmarked.analyte()) : Optional.<String>empty();
        if (share.isPresent()) {
            var measured = Heading.measured(unmarked.analyte(), share.get());
            if (unmarked.basis() != null || measured.isEmpty()) {
                notTaken.add("Line %d, “%s” %s: %s"
                        .formatted(grid.line(row), name, grid.cell(row, column), ShareSaid.contradicted(share.get())));
                grid.settle(row, column);
                return;
            }
            unmarked = measured.get();
        }
        var own = ownMark(grid.cell(row, column));
        var mark = own.isEmpty() ? mark(name) : own;
        var meaning = legend.of(mark);
        var method = besideIt == null && meaning != null ? meaning.method() : besideIt;
        var atName = mark.isEmpty() ? unmarked : marked(unmarked, name, mark, row, isOver);
        var behind = own.isEmpty() ? BEHIND.matcher(grid.cell(row, column)) : BEHIND.matcher("");
        boolean isBehind = behind.matches()
                && (grid.cell(row, column).matches("[<≤].*")
                        || Said.of(grid.cell(row, column)).isEmpty());
        var told = isBehind && atName != null
                ? Heading.measured(atName.analyte(), behind.group(2)).orElse(null)
                : null;
        var unitBefore = atName == null ? null : atName.unit();
        boolean isStrange = isBehind
                && atName != null
                && (told == null || unitBefore != null && told.unit() != null && told.unit() != unitBefore);
        if (isStrange) {
            notTaken.add(
                    "Line %d, “%s”: “%s” stands behind the figure, and it is no unit or basis that is known: type it in the form"
                            .formatted(grid.line(row), name, grid.cell(row, column)));
        }
        if (atName == null || isStrange) {
            grid.settle(row, column);
            return;
        }
        var heading = told == null
                ? atName
                : new Heading(
                        atName.analyte(),
                        told.unit() == null ? atName.unit() : told.unit(),
                        told.basis() == null ? atName.basis() : told.basis(),
                        told.share() == null ? atName.share() : told.share());
        if (own.matches(".*[\\p{L}\\p{N}].*") && meaning == null) {
            notTaken.add("Line %d, “%s”: what its mark %s means is not said on the sheet"
                    .formatted(grid.line(row), name, own));
        }
        var analyte = heading.analyte();
        boolean isBare = grid.cell(row, column).matches("[0-9].*");
        var text = (isLess && isBare ? "<" : "")
                + Grid.WITHIN.matcher(grid.cell(row, column)).replaceFirst("");
        text = told != null
                ? (isLess && isBare ? "<" : "") + behind.group(1)
                : own.isEmpty()
                        ? text
                        : text.substring(0, text.length() - own.length()).strip();
        if (Said.of(text)
                        .filter(said ->
                                said.why() == Why.NOT_DETECTED && said.limit().isEmpty())
                        .isPresent()
                && limit.matches("[0-9]*[.,]?[0-9]+")) {
            text = "ND (<%s)".formatted(limit.replace(',', '.'));
        }
        boolean isBased = analyte.hasBasis() && heading.share() == null;
        var said = except.of(analyte).orElse(untold);
        var basis = isBased ? (heading.basis() == null ? said : heading.basis()) : null;
        grid.settle(row, column);
        if (isBased && heading.basis() == null && except.isOpen(analyte)) {
            notTaken.add("Line %d, “%s” %s: %s".formatted(grid.line(row), name, text, TAKEN_OUT));
            names.put(Heading.key(name), new Named(name, text, null, false));
            return;
        }
        var within = Grid.WITHIN.matcher(grid.cell(row, column));
        if (within.find()) {
            notTaken.add("Line %d, “%s”: how far from the truth the figure may be is not kept (%s)"
                    .formatted(grid.line(row), name, within.group().strip()));
        }
        if (isBased && basis == null && !Said.isWithoutLimit(text)) {
            withoutBasis.add(name);
            return;
        }
        var ambiguous = grid.words.own().containsKey(Heading.key(name))
                ? grid.words.unitAsked(name, analyte, heading.share() == null ? heading.unit() : Unit.PERCENT, text)
                : Label.asked(name + " " + form(row), analyte, text);
        if (ambiguous.isPresent()) {
            notTaken.add("Line %d, “%s” %s: %s".formatted(grid.line(row), name, text, ambiguous.get()));
            names.put(Heading.key(name), new Named(name, text, null, false));
            return;
        }
        var cell = new Cell(
                analyte, heading.unit(), basis, decimals.pointed(text, heading.unit()), name, heading.share(), method);
        if (text.matches("[0-9.,]*[0-9] +[0-9]{1,2}(?![0-9]).*")) {
            notTaken.add("Line %d, “%s”: “%s” is not a number".formatted(grid.line(row), name, text));
            return;
        }
        cells.add(cell, name + " " + text, "Line " + grid.line(row));
    }

    /** Behind a name: signs, and letters in brackets that the sheet explains; empty for none. */
    private String mark(String name) {
        var found = MARKED.matcher(name);
        boolean isOne = found.find() && (!found.group(1).matches("[(\\[].*") || legend.of(found.group(1)) != null);
        return isOne ? found.group(1) : "";
    }

    /** Behind a figure; another figure is one only where the sheet explains it. */
    private String ownMark(String cell) {
        var found = MARKED_FIGURE.matcher(cell);
        boolean isOne = found.find() && (!found.group(1).matches("[0-9]") || legend.of(found.group(1)) != null);
        return isOne ? found.group(1) : "";
    }

    /** With what a mark says of unit and basis; null where that is not understood, or has to be said first. */
    private @Nullable Heading marked(Heading heading, String name, String mark, int row, boolean isOver) {
        var meaning = legend.of(mark);
        if (meaning != null && meaning.isTold()) {
            if (meaning.basis() != null) {
                return isOver
                        ? heading
                        : new Heading(heading.analyte(), heading.unit(), meaning.basis(), heading.share());
            }
            var bare = name.substring(0, name.length() - (name.endsWith(mark) ? mark.length() : 0));
            var told = meaning.share().isEmpty()
                    ? meaning.form().isEmpty()
                            ? Optional.of(heading)
                            : grid.words
                                    .heading(bare + " " + meaning.form())
                                    .map(h -> h.with(heading.unit(), heading.basis()))
                    : Heading.measured(heading.analyte(), meaning.share());
            if (told.isEmpty() || !meaning.why().isEmpty()) {
                notTaken.add("Line %d, “%s”: %s: %s"
                        .formatted(
                                grid.line(row),
                                name,
                                meaning.why().isEmpty() ? "what its mark says does not fit" : meaning.why(),
                                grid.shown(row)));
            }
            return meaning.why().isEmpty() ? told.orElse(null) : null;
        }
        boolean isKnown = isTold
                || heading.basis() != null
                || heading.share() != null
                || !heading.analyte().hasBasis();
        if (meaning != null || isKnown) {
            return heading;
        }
        var said = said(mark, name, row);
        return said == null || said == ColumnIs.LEFT_OUT ? null : heading.with(null, said.basis());
    }

    /** What somebody said a mark means; null where nobody has, and then it is asked. What is not to be taken is listed. */
    @Nullable
    ColumnIs said(String mark, String name, int row) {
        var said = grid.words.column("mark " + mark).orElse(null);
        column(new Column("mark " + mark, grid.shown(row), said, true));
        if (said == null || said == ColumnIs.LEFT_OUT) {
            notTaken.add("Line %d, “%s”, marked “%s”%s: %s"
                    .formatted(
                            grid.line(row),
                            name,
                            mark,
                            said == null
                                    ? ", and what that means is not known. Say so below"
                                    : ", and it was to be left out",
                            grid.shown(row)));
        }
        return said;
    }

    List<Cell> carried(Cells cells) {
        return cells.whole(grid.words, notTaken::add, this::column);
    }

    void checkBasis() {
        if (!withoutBasis.isEmpty()) {
            throw new Refused(
                    "basis",
                    String.join(", ", withoutBasis),
                    HalfDry.why("the file", grid.lines()),
                    HalfDry.fix(grid.lines(), "Look at the sheet and say which."));
        }
    }
}
