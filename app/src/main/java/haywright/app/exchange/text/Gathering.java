package haywright.app.exchange.text;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.TableHead.Column;
import haywright.app.exchange.text.TextLine.Word;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Tested;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Tables on their way to samples. */
final class Gathering {
    private static final int MOST_SAMPLES = 500;
    private static final int MOST_NAMES = 400;
    private static final int LETTERHEAD = 8;

    private final Vocabulary words;
    private final boolean decimalComma;
    private final @Nullable Basis untold;
    private final Map<String, Named> names = new LinkedHashMap<>();
    private final Set<String> notTaken = new LinkedHashSet<>();
    private final Set<String> withoutBasis = new LinkedHashSet<>();
    private final List<Draft> drafts = new ArrayList<>();

    private List<Head.Field> fields = new ArrayList<>();
    private StringBuilder told = new StringBuilder();
    private String laboratory = "";
    private TableHead head = TableHead.NONE;
    private @Nullable Basis saidBasis;
    private List<Figure> figures = new ArrayList<>();
    private boolean hasPanels;
    private int page = 1;
    private int linesAbove;
    /** The samples that the last table spoke for. */
    private List<Draft> current = List.of();

    /** A figure with its place: which of the rows side by side, which group of columns. */
    private record Figure(
            TextLine line,
            Row row,
            int panel,
            int group,
            @Nullable Column column,
            @Nullable Basis basis,
            @Nullable Unit unit,
            Word word) {
        Heading heading() {
            var heading = row.heading();
            if (heading == null) {
                throw new IllegalStateException(row.name());
            }
            return heading;
        }
    }

    /** A sample that is not whole yet. */
    private static final class Draft {
        private String code = "";
        private String laboratory = "";
        private String sampled = "";
        private String reported = "";
        private Tested.@Nullable Method method;
        private final int page;
        private final Map<String, Cell> cells = new LinkedHashMap<>();

        Draft(int page) {
            this.page = page;
        }
    }

    Gathering(Vocabulary words, boolean decimalComma, @Nullable Basis untold) {
        this.words = words;
        this.decimalComma = decimalComma;
        this.untold = untold;
    }

    /** A line that is neither headings nor figures. */
    void above(TextLine line, List<Head.Field> said) {
        if (line.page() != page) {
            page = line.page();
            linesAbove = 0;
        }
        fields.addAll(said);
        told.append(line.text()).append('\n');
        if (++linesAbove <= LETTERHEAD && (laboratory.isEmpty() || line.page() > 1)) {
            line.cells().stream()
                    .map(cell -> TextLine.join(cell).text())
                    .filter(Head::isName)
                    .findFirst()
                    .ifPresent(name -> laboratory = name);
        }
    }

    void basis(String words) {
        saidBasis = Heading.basis(words).orElse(saidBasis);
    }

    void unknown(TextLine line, List<Row> rows) {
        boolean hasFigure = line.words().stream().anyMatch(Word::isFigure);
        if (rows.isEmpty() || head == TableHead.NONE && figures.isEmpty() && current.isEmpty()) {
            if (hasFigure) {
                notTaken.add("Line %d: %s".formatted(line.number(), shown(line)));
            }
            return;
        }
        var row = rows.get(0);
        name(row.name(), line, null);
        if (!words.leavesOut(row.name())) {
            notTaken.add("Line %d, no analyte of this name is known: %s".formatted(line.number(), shown(line)));
        }
    }

    /** The headings themselves name the samples that stand side by side. */
    void codes(List<String> codes) {
        codes.forEach(code -> fields.add(new Head.Field(Head.Kind.BAG, code, 0, 0)));
    }

    void head(TableHead next) {
        head = next;
        next.columns().stream()
                .filter(c -> c.role() == TableHead.Role.IGNORED)
                .forEach(c -> notTaken.add("Column “%s”: it holds no figures of the feed"
                        .formatted(c.heading().text())));
    }

    private static String shown(TextLine line) {
        var text = line.text().strip().replaceAll(" {3,}", "   ");
        return text.length() > 160 ? text.substring(0, 160) + "…" : text;
    }

    private void name(String written, TextLine line, @Nullable Heading taken) {
        if (names.size() < MOST_NAMES || names.containsKey(Heading.key(written))) {
            names.putIfAbsent(Heading.key(written), new Named(written, shown(line), taken, words.leavesOut(written)));
        }
    }

    void rows(TextLine line, TableHead over, List<Row> rows) {
        var all = new ArrayList<Word>();
        rows.forEach(row -> all.addAll(row.figures()));
        var columns = over.ofFigures(line.isAligned());
        var places = columns.isEmpty() ? null : Placing.of(all, columns, line.isAligned());
        hasPanels |= rows.size() > 1;
        int number = 0;
        for (int panel = 0; panel < rows.size(); panel++) {
            var row = rows.get(panel);
            name(row.name(), line, row.heading());
            if (row.strange()) {
                notTaken.add("Line %d, its unit does not fit: %s".formatted(line.number(), shown(line)));
                number += row.figures().size();
                continue;
            }
            long wanted = row.figures().stream().filter(Word::isFigure).count();
            if (places == null && wanted > 1) {
                notTaken.add(
                        "Line %d, no heading tells which column is which: %s".formatted(line.number(), shown(line)));
                continue;
            }
            for (var word : row.figures()) {
                var column = places == null ? null : places.get(number);
                number++;
                if (word.isFigure() && (column == null || column.role() == TableHead.Role.VALUE)) {
                    figures.add(figure(line, row, panel, over, column, word));
                } else if (word.isFigure() && column != null && column.role() == TableHead.Role.OTHER) {
                    notTaken.add("Line %d, %s under “%s”, a heading that is not known: %s"
                            .formatted(
                                    line.number(), word.text(), column.heading().text(), shown(line)));
                }
            }
        }
        if (places != null && places.contains(null)) {
            notTaken.add("Line %d, a figure stands under no heading: %s".formatted(line.number(), shown(line)));
            figures.removeIf(f -> f.line == line);
        }
    }

    private Figure figure(TextLine line, Row row, int panel, TableHead over, @Nullable Column column, Word word) {
        var heading = row.heading();
        var basis = column != null && column.basis() != null
                ? column.basis()
                : row.basis() != null
                        ? row.basis()
                        : heading != null && heading.basis() != null ? heading.basis() : saidBasis;
        var unit = row.unit() != null ? row.unit() : heading == null ? null : heading.unit();
        if (unit == null && column != null && heading != null) {
            var told = column.unit();
            unit = told != null && told.kind() == heading.analyte().unit().kind() ? told : null;
        }
        return new Figure(line, row, panel, column == null ? 0 : over.group(column), column, basis, unit, word);
    }

    /** The table before is whole. */
    void table(List<TextLine> over) {
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
        var said = new Head(fields);
        var samples = samples(said, groups);
        var byName = new LinkedHashMap<String, List<Figure>>();
        for (var figure : figures) {
            int sample = panelsAreSamples ? figure.panel : areColumnsSamples ? figure.group : 0;
            byName.computeIfAbsent(
                            sample + " " + figure.line.number() + " " + figure.row.name(), k -> new ArrayList<>())
                    .add(figure);
        }
        byName.forEach((key, row) -> {
            var sample = samples.get(Math.min(groups - 1, Integer.parseInt(key.substring(0, key.indexOf(' ')))));
            take(sample, row);
        });
        figures = new ArrayList<>();
        hasPanels = false;
        fields = new ArrayList<>();
        told = new StringBuilder();
        current = samples;
    }

    private boolean panelsRepeat() {
        var left = EnumSet.noneOf(Analyte.class);
        var right = EnumSet.noneOf(Analyte.class);
        figures.forEach(f -> (f.panel == 0 ? left : right).add(f.heading().analyte()));
        int smaller = Math.min(left.size(), right.size());
        left.retainAll(right);
        return 2 * left.size() > smaller;
    }

    /** Those of the last table where this one goes on with them, or new ones. */
    private List<Draft> samples(Head said, int groups) {
        var codes = new ArrayList<>(said.codes(groups));
        if (codes.isEmpty() && groups > 1) {
            head.values().stream()
                    .filter(c -> c.basis() == null)
                    .forEach(c -> codes.add(c.heading().text()));
        }
        int at = figures.get(0).line.page();
        boolean goesOn = current.size() == groups
                && (codes.isEmpty()
                        || current.stream().map(d -> d.code).toList().equals(codes))
                && (!codes.isEmpty() || !contradicts(groups));
        if (goesOn) {
            return current;
        }
        var samples = new ArrayList<Draft>();
        for (int i = 0; i < groups; i++) {
            var draft = new Draft(at);
            draft.code = codes.size() == groups ? codes.get(i) : groups == 1 && !codes.isEmpty() ? codes.get(0) : "";
            var lab = said.of(Head.Kind.LABORATORY, i, groups);
            draft.laboratory = lab.isEmpty() ? laboratory : lab;
            var before = drafts.isEmpty() ? null : drafts.get(drafts.size() - 1);
            draft.sampled = said.of(Head.Kind.SAMPLED, i, groups);
            draft.reported = said.of(Head.Kind.REPORTED, i, groups);
            draft.method = Understood.method(told.toString());
            if (before != null && before.page == at) { // said once over several tables of a page
                draft.reported = draft.reported.isEmpty() ? before.reported : draft.reported;
                draft.method = draft.method == null ? before.method : draft.method;
            }
            samples.add(draft);
        }
        drafts.addAll(samples);
        if (drafts.size() > MOST_SAMPLES) {
            throw new Refused(
                    "text", drafts.size() + " samples", "this is more than are taken in at once", "Split the file.");
        }
        return samples;
    }

    private boolean contradicts(int groups) {
        return groups == 1
                && figures.stream().anyMatch(f -> {
                    var known = current.get(0).cells.get(key(f.heading().analyte(), f.basis));
                    return known != null && !known.text().equals(f.word.figure());
                });
    }

    private static String key(Analyte analyte, @Nullable Basis basis) {
        return analyte.id() + " " + (analyte.hasBasis() ? basis : null);
    }

    private void take(Draft sample, List<Figure> row) {
        var analyte = row.get(0).heading().analyte();
        if (analyte.hasBasis()) {
            row.forEach(figure -> cell(sample, figure));
            return;
        }
        // one figure whatever the basis; dry matter of dry matter is 100 and says nothing
        boolean isWater = analyte == Analyte.DM || analyte == Analyte.MOISTURE;
        var figures = row.stream()
                .filter(f -> !isWater || row.size() == 1 || f.basis != Basis.DRY_MATTER)
                .toList();
        if (isWater && row.size() == 1 && row.get(0).basis == Basis.DRY_MATTER && isWhole(row.get(0))) {
            return;
        }
        if (figures.stream().map(f -> f.word.figure()).distinct().count() > 1) {
            var line = row.get(0).line;
            notTaken.add("Line %d, it has one figure whatever the basis, and here stand two: %s"
                    .formatted(line.number(), shown(line)));
        } else if (!figures.isEmpty()) {
            cell(sample, figures.get(0));
        }
    }

    private static boolean isWhole(Figure figure) {
        return figure.word.figure().matches("0+(?:[.,]0+)?|100(?:[.,]0+)?");
    }

    private void cell(Draft sample, Figure figure) {
        var analyte = figure.heading().analyte();
        var unit = figure.unit;
        var line = figure.line;
        if (unit != null && unit.kind() != analyte.unit().kind()) {
            notTaken.add("Line %d, %s is not measured in %s: %s"
                    .formatted(line.number(), analyte.words(), unit.symbol(), shown(line)));
            return;
        }
        boolean hasNoLimit =
                Said.of(figure.word.text()).map(s -> s.limit().isEmpty()).orElse(false);
        var basis = !analyte.hasBasis() ? null : figure.basis == null ? untold : figure.basis;
        if (analyte.hasBasis() && basis == null && !hasNoLimit) {
            withoutBasis.add(figure.row.name());
            return;
        }
        var text = ReportCsv.pointed(figure.word.figure(), decimalComma);
        var cell = new Cell(analyte, unit, basis, text, shown(line));
        var before = sample.cells.putIfAbsent(key(analyte, basis), cell);
        if (before != null && !before.text().equals(cell.text())) {
            notTaken.add("Line %d, %s stands there before it as %s: %s"
                    .formatted(line.number(), analyte.words(), before.text(), shown(line)));
        }
    }

    Understood done() {
        if (!withoutBasis.isEmpty()) {
            throw new Refused(
                    "basis",
                    String.join(", ", withoutBasis.stream().limit(8).toList()),
                    "the report does not say whether these are as received or on dry matter",
                    "Look at the sheet and say which, or write the heading over the column in the text.");
        }
        drafts.removeIf(draft -> draft.cells.isEmpty());
        if (drafts.isEmpty()) {
            throw new Refused(
                    "text",
                    "",
                    "no line in it has the name of an analyte with a figure that could be placed",
                    notTaken.stream()
                            .filter(words -> words.contains("heading"))
                            .findFirst()
                            .map(words -> words + ". Write the headings As received and Dry matter over the columns.")
                            .orElse("Is this the report? Type the figures if it is written in another way."));
        }
        var samples = drafts.stream()
                .map(d -> new Sample(
                        d.code, d.laboratory, d.sampled, d.reported, d.method, List.copyOf(d.cells.values())))
                .toList();
        return new Understood(
                "lines of a name and its figures", samples, List.copyOf(names.values()), List.copyOf(notTaken));
    }
}
