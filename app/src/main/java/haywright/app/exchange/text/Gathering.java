package haywright.app.exchange.text;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Counted;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Legend;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Whose;
import haywright.app.exchange.line.Behind;
import haywright.app.exchange.line.Names;
import haywright.app.exchange.line.Row;
import haywright.app.exchange.line.Rows;
import haywright.app.exchange.line.TextLine;
import haywright.app.exchange.line.TextLine.Word;
import haywright.app.exchange.text.TableHead.Column;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Tables on their way to samples. */
final class Gathering {
    /** So many words are a sentence, and a short one in it stands for no name by chance. */
    private static final int PROSE = 6;
    /** What should be a figure and is none; from one figure to another is what is usual. */
    private static final Pattern STRANGE = Pattern.compile("(?![0-9.,]+ ?[-–—] ?[0-9.,]+$)[^(\\[]*[0-9].*");

    /** A name with what it is a share of, which is a figure of the feed wherever it stands. */
    private static final Pattern SHARE = Pattern.compile("(?i)\\p{L}.*?(?:%|\\b(?:pct|percent)\\b)\\s*(?:of )?\\p{L}");

    /** What is said of a figure that a sentence takes out of the basis of the others. */
    static final String TAKEN_OUT =
            "the sheet takes it out of the basis of the others, and does not say its own. Say it below, beside its name";

    /** What is said of a line that somebody left out, on this sheet or an earlier one. */
    static final String LEFT_OUT = "its name was said to be left out";

    private final Vocabulary words;
    private final Names names;
    private final Set<String> notTaken = new LinkedHashSet<>();
    private final Ledger ledger;
    private final Footnotes footnotes;
    private final Samples samples;
    private final Asked asked;
    private final SaidAbove above;
    private final SampleLines across;

    private TableHead head = TableHead.NONE;
    private List<Figure> figures = new ArrayList<>();
    private final Sections sections = new Sections();
    private boolean isBoxed;
    private boolean hasPanels;
    private boolean isShort;

    Gathering(
            Names names,
            Decimals.Sheet decimals,
            @Nullable Basis untold,
            Ledger ledger,
            Footnotes footnotes,
            boolean isIon) {
        this.footnotes = footnotes;
        this.words = names.words();
        this.names = names;
        this.ledger = ledger;
        this.asked = new Asked(names.words(), isIon);
        this.samples = new Samples(words, decimals, untold, notTaken, asked::mark, ledger);
        this.above = new SaidAbove(footnotes, ledger);
        this.across = new SampleLines(samples, above, asked, notTaken, ledger, names.words());
    }

    SaidAbove above() {
        return above;
    }

    boolean hasMeaning(TextLine line) {
        return footnotes.hasMeaning(line);
    }

    /** Whether a line says what a mark means, and nothing else. */
    boolean isLegend(TextLine line) {
        return footnotes.isAll(line);
    }

    /** A line that is of no report that stands, or whose own words take it back. */
    void back(TextLine line, String why) {
        list(line, why);
        samples.back(why);
    }

    private void list(TextLine line, String why) {
        notTaken.add(line.notTaken(why));
        ledger.settle(line);
    }

    /** A line of figures whose names nobody knows; other words are kept with the rest of the sheet. */
    void unknown(TextLine line, List<Row> rows) {
        if (rows.stream().noneMatch(Row::isTold) && Rows.isFigureFirst(line.words(), names)) {
            list(line, "the figure stands before its name. If it is this sample’s, type it in the form");
            return;
        }
        boolean isShare =
                rows.stream().anyMatch(row -> SHARE.matcher(row.name()).find());
        if (rows.isEmpty() || !isShare && head == TableHead.NONE && figures.isEmpty() && samples.isEmpty()) {
            return;
        }
        for (var row : rows) {
            asked.name(row.name(), line, null);
        }
        if (rows.stream().allMatch(row -> words.leavesOut(row.name()))) {
            list(line, LEFT_OUT);
        } else {
            list(
                    line,
                    rows.stream()
                            .map(row -> line.isAligned()
                                            || line.words().size() < PROSE
                                            || row.name().length() > 3
                                    ? unknown(row.name())
                                    : "no analyte of this name is known")
                            .distinct()
                            .reduce((one, next) -> one.length() < next.length() ? next : one)
                            .orElseThrow());
        }
    }

    private static String unknown(String name) {
        return "no analyte of this name is known"
                + Analyte.nearest(name)
                        .map(near -> " (did you mean " + near + "?)")
                        .orElse("");
    }

    /** A name that is known, and nothing beside it that could be read. */
    void empty(TextLine line) {
        list(line, "no figure stands beside the name");
    }

    void settle(TextLine line) {
        ledger.settle(line);
    }

    /** "North stack: DM 88.4, CP 9.5": the name of a lot here before its figures. */
    void lot(TextLine line) {
        var named = line.text().split(":", 2)[0].strip();
        if (words.ours().hasLot(named)) {
            table();
            above.addAll(List.of(new Head.Field(
                    Told.BAG,
                    named,
                    line.number(),
                    line.words().get(0).from(),
                    line.text().indexOf(':'))));
        }
    }

    /** A line that names the sample of the figures under it. */
    void named(TextLine line) {
        table();
        above.name(line);
    }

    void head(TableHead next, List<TextLine> lines) {
        head = next;
        isShort = false;
        above.corner(next);
        ledger.settle(
                lines,
                next.columns().stream()
                        .filter(c -> c.role() != TableHead.Role.OTHER)
                        .filter(c -> !isYear(c.heading(), lines))
                        .map(c -> c.heading())
                        .toList());
        asked.head(next);
    }

    /** Whether the headings lack some of the samples that have figures under them. */
    void isShort(boolean is) {
        isShort = is;
    }

    /** A year over a column says when the sample was taken, which is told nowhere else: it stays with the rest of the sheet. */
    private static boolean isYear(Word heading, List<TextLine> lines) {
        return Whose.isSaid(Whose.said(heading.text()).who())
                && lines.stream()
                        .flatMap(line -> line.words().stream())
                        .anyMatch(word -> heading.from() <= word.from()
                                && word.to() <= heading.to()
                                && word.text().matches(".*[0-9].*"));
    }

    /** Whether what calls itself preliminary counts. */
    void ask(List<Understood.Column> columns) {
        columns.forEach(asked::mark);
    }

    /** Figures that stand for years in the names of columns. */
    void years(TextLine line) {
        list(
                line,
                "these figures look like years in the names of columns. Write 2025 or 2026 over each column instead");
    }

    void rows(TextLine line, List<Word> read, List<Row> rows) {
        boolean isSentence = !line.isAligned()
                && rows.get(0).words().get(0).from() > line.words().get(0).from();
        if (isSentence && (!head.columns().isEmpty() || Told.speaksOfOthers(line.text()))) {
            list(line, "it is not about this sample");
            return;
        }
        var method = ignored(line, read);
        var places = Placing.of(line, rows, head);
        int before = figures.size();
        int panels = 0;
        for (int panel = 0; panel < rows.size(); panel++) {
            row(line, rows.get(panel), panel, places == null ? null : places.get(panel), method);
            panels += figures.size() > before ? 1 : 0;
            before = figures.size();
        }
        hasPanels |= panels > 1;
        var told = rows.stream().flatMap(row -> row.words().stream()).toList();
        for (var word : read) {
            boolean isStrange = !told.contains(word)
                    && !word.isBound()
                    && STRANGE.matcher(word.text()).matches();
            if (line.isAligned() && isStrange) {
                notTaken.add(line.notTaken("“%s” is not a number".formatted(word.text())));
                ledger.settle(line, List.of(word));
            }
        }
        for (var cell : line.cells()) {
            var whole = TextLine.join(cell);
            boolean isInRow =
                    rows.stream().flatMap(row -> row.words().stream()).anyMatch(word -> word.from() == whole.from());
            boolean isRead = cell.stream().anyMatch(read::contains);
            if (line.isAligned()
                    && isRead
                    && !isInRow
                    && names.label(whole.text()).isPresent()) {
                notTaken.add(line.notTaken("no figure stands beside “%s”".formatted(whole.text())));
                ledger.settle(line, cell);
            }
        }
    }

    /** A figure in a sentence that says the basis of the others. */
    void beside(TextLine line, Row row) {
        row(line, row, 0, null, null);
    }

    /** Lists what was not read of a line under its headings. @return how it was measured; null where that is not said */
    private Tested.@Nullable Method ignored(TextLine line, List<Word> read) {
        Tested.Method method = null;
        for (var word : line.words()) {
            if (read.contains(word)) {
                continue;
            }
            var heading = head.nearest(word).heading().text();
            method = heading.matches("(?i).*method.*") ? Understood.ownMethod(word.text()) : method;
            asked.ignored(heading, word.text());
            ledger.settle(line, List.of(word));
        }
        return method;
    }

    private void row(
            TextLine line,
            Row asRead,
            int panel,
            @Nullable List<@Nullable Column> places,
            Tested.@Nullable Method besideIt) {
        var marks = footnotes.share(footnotes.on(line, asRead, names), names);
        var row = sections.unit(line, marks).map(marks::in).orElse(marks);
        var marked = footnotes.method(line, row);
        var method = marked == null ? besideIt : marked;
        if (sections.areOthers(line, row)) {
            list(line, row, "it is not about this sample");
            return;
        }
        var letter = letter(line, row);
        row = letter == null ? row : row.without(letter);
        if (letter != null && isMarkAsked(line, row, letter)) {
            return;
        }
        var said = letter == null ? null : words.column("mark " + letter).orElse(null);
        if (said != null && said.basis() != null) {
            row = row.with(new Legend.Meaning(said.basis(), null, "", "", ""), -1, names);
        }
        var ofAll = above.unit();
        boolean isOfColumn = places != null && places.stream().anyMatch(c -> c != null && c.unit() != null);
        if (ofAll != null
                && !isOfColumn
                && row.heading() != null
                && row.heading().analyte().hasBasis()
                && row.heading().analyte().unit().kind() == ofAll.kind()) {
            row = row.in(ofAll);
        }
        var question = asked.question(row, places);
        boolean isOpen = !question.isEmpty() || row.why().startsWith(Behind.QUOTE);
        asked.name(row.name(), line, isOpen ? null : row.heading());
        if (!question.isEmpty()) {
            list(line, row, question);
            return;
        }
        if (row.heading() == null || !row.why().isEmpty()) {
            list(
                    line,
                    row,
                    words.leavesOut(row.name()) ? LEFT_OUT : row.why().isEmpty() ? unknown(row.name()) : row.why());
            return;
        }
        long wanted = row.figures().stream().filter(Word::isFigure).count();
        if (places == null && wanted > 1 && !row.areTold()) {
            list(line, row, "no heading tells which column is which");
            return;
        }
        // what has one figure whatever the basis needs no column, where all of them are of one sample
        boolean isOne = wanted == 1
                && row.figures().size() == 1
                && !row.heading().analyte().hasBasis()
                && head.groups() == 1
                && head.columns().stream().noneMatch(c -> c.role() == TableHead.Role.OTHER);
        if (places != null && (isShort || places.contains(null)) && !isOne) {
            list(line, row, "no heading over the figure says what it is");
            return;
        }
        if (isTakenOut(row, places)) {
            asked.again(row.name(), line.shown());
            list(line, row, TAKEN_OUT);
            return;
        }
        for (int i = 0; i < row.figures().size(); i++) {
            var word = row.figures().get(i);
            var column = places == null ? null : places.get(i);
            if (word.isFigure() && (column == null || column.role() == TableHead.Role.VALUE)) {
                figures.add(Figure.of(
                        line,
                        row,
                        panel,
                        i,
                        head,
                        column,
                        sections.basis(line, row, above.basis()),
                        footnotes.except().of(row.heading().analyte()).orElse(null),
                        method));
            } else if (word.isFigure() && column != null && column.role() == TableHead.Role.OTHER) {
                var heading = column.heading().text();
                asked.column(heading, word.text());
                notTaken.add(underUnknown(line, word, column.heading()));
                ledger.settle(line, List.of(word));
            }
        }
    }

    static String underUnknown(TextLine line, Word word, Word heading) {
        return line.notTaken("%s under “%s”, a heading that is not known".formatted(word.text(), heading.text()));
    }

    /** Whether a sentence takes it out of the basis of the others, and neither it nor a column says its own. */
    private boolean isTakenOut(Row row, @Nullable List<@Nullable Column> places) {
        var heading = row.heading();
        return heading != null
                && footnotes.except().isOpen(heading.analyte())
                && heading.share() == null
                && heading.basis() == null
                && row.basis(0) == null
                && (places == null || places.stream().anyMatch(c -> c == null || c.basis() == null));
    }

    /** What stands beside a row under a heading that says "basis" and is none that is known; null where nothing does. */
    private @Nullable String letter(TextLine line, Row row) {
        if (row.heading() == null || !row.heading().analyte().hasBasis()) {
            return null;
        }
        if (head.hasNoBasisColumn()) {
            return footnotes.unexplained(row);
        }
        return line.words().stream()
                .filter(word ->
                        !row.words().contains(word) && head.nearest(word).role() == TableHead.Role.BASIS)
                .map(Word::text)
                .filter(text -> Heading.basis(text).isEmpty())
                .findFirst()
                .orElse(null);
    }

    /** A letter for a basis that neither the sheet nor anybody explains is asked, and its figures wait. */
    private boolean isMarkAsked(TextLine line, Row row, String letter) {
        var mark = "mark " + letter;
        var said = words.column(mark).orElse(null);
        asked.mark(new Understood.Column(mark, line.shown(), said, true));
        boolean isOpen = said == null || said == ColumnIs.LEFT_OUT;
        if (isOpen) {
            asked.name(row.name(), line, row.heading());
            list(line, marked(letter, said));
        }
        return isOpen;
    }

    static String marked(String letter, @Nullable ColumnIs said) {
        return said == null
                ? "marked “%s”, and what that means is not known. Say so below".formatted(letter)
                : "marked “%s”, and it was to be left out".formatted(letter);
    }

    /** A line that holds no figures, in the box of a page where it stands. */
    void section(TextLine line, List<Word> cell) {
        sections.open(line, cell);
    }

    void gap() {
        sections.gap();
    }

    /** What stands of the sample beside figures, in a box of its own. */
    void beside(TextLine line, List<Row> rows) {
        var inRows = rows.stream().flatMap(row -> row.words().stream()).toList();
        var left = line.cells().stream()
                .filter(cell -> cell.stream().noneMatch(inRows::contains))
                .toList();
        left.forEach(cell -> section(line, cell));
        var own = left.stream().flatMap(List::stream).toList();
        var said = own.isEmpty()
                ? List.<Head.Field>of()
                : Head.of(new TextLine(line.number(), line.page(), line.text(), own));
        isBoxed = !said.isEmpty();
        above.addAll(said);
    }

    /** Whether a label with a new value begins the next sample; not in a box beside the first figures of this one. */
    boolean begins(List<Head.Field> said) {
        return !isBoxed
                && said.stream().map(Head.Field::told).anyMatch(Set.of(Told.BAG, Told.NUMBER, Told.CUSTOMER)::contains);
    }

    private void list(TextLine line, Row row, String why) {
        notTaken.add(line.notTaken(why));
        ledger.settle(line, row.words());
    }

    /** A table with one sample in each line begins. */
    void across(Across table, TextLine line, List<TextLine> headings) {
        table();
        across.begin(table, line, headings);
    }

    void sample(TextLine line, Across.Line sample) {
        across.take(line, sample);
    }

    /** The table before is whole. */
    void table() {
        if (figures.isEmpty()) {
            return;
        }
        boolean panelsAreSamples = hasPanels && panelsRepeat();
        int groups = hasPanels
                ? (panelsAreSamples
                        ? 1 + figures.stream().mapToInt(Figure::panel).max().orElse(0)
                        : 1)
                : head.groups();
        boolean areColumnsSamples = !hasPanels && groups > 1;
        var said = above.all();
        samples.begin(figures, codes(said.said(), groups), groups, said);
        record InRow(int sample, int line, String name) {}
        var rows = new LinkedHashMap<InRow, List<Figure>>();
        for (var figure : figures) {
            int sample = panelsAreSamples ? figure.panel() : areColumnsSamples ? figure.group() : 0;
            rows.computeIfAbsent(new InRow(sample, figure.line().number(), figure.name()), k -> new ArrayList<>())
                    .add(figure);
        }
        rows.forEach((in, row) -> samples.take(Math.min(groups - 1, in.sample), row));
        figures = new ArrayList<>();
        hasPanels = false;
        above.clear();
    }

    private List<String> codes(Head said, int groups) {
        var codes = head.samples().size() == groups ? head.samples() : said.codes(groups);
        return codes.size() != groups && groups > 1 // a work order over the table is none of its samples
                ? head.values().stream()
                        .filter(c -> c.basis() == null)
                        .map(c -> c.heading().text())
                        .toList()
                : codes;
    }

    private boolean panelsRepeat() {
        var left = EnumSet.noneOf(Analyte.class);
        var right = EnumSet.noneOf(Analyte.class);
        figures.forEach(f -> (f.panel() == 0 ? left : right).add(f.analyte()));
        int smaller = Math.min(left.size(), right.size());
        left.retainAll(right);
        return 2 * left.size() > smaller;
    }

    Understood done() {
        notTaken.addAll(asked.ignored());
        notTaken.addAll(ledger.figures());
        var whole = samples.whole(asked.isOpen(), footnotes.lines());
        return Counted.of(
                new Understood(
                        "lines of a name and its figures",
                        whole,
                        asked.names(),
                        asked.columns(),
                        List.copyOf(notTaken),
                        ledger.rest()),
                words);
    }
}
