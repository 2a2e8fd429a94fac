package haywright.app.exchange.text;

import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.TextLine.Word;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Tables on their way to samples. */
final class Gathering {
    private static final int MOST_NAMES = 400;
    private static final int LETTERHEAD = 8;
    /** In place of a sample's name: figures of many samples. */
    private static final Pattern OF_MANY = Pattern.compile(
            "(?i)(?:average|avg\\.?|mean|median|typical|normal|min(?:imum)?|max(?:imum)?|range|sd|std\\.?|goal|target|count)\\b.*");

    private final Vocabulary words;
    private final Map<String, Named> names = new LinkedHashMap<>();
    private final Set<String> notTaken = new LinkedHashSet<>();
    private final Samples samples;

    private List<Head.Field> fields = new ArrayList<>();
    private StringBuilder told = new StringBuilder();
    private String laboratory = "";
    private TableHead head = TableHead.NONE;
    private @Nullable Basis saidBasis;
    private List<Figure> figures = new ArrayList<>();
    private boolean hasPanels;
    private boolean isAcross;
    private int page = 1;
    private int linesAbove;

    Gathering(Vocabulary words, boolean decimalComma, @Nullable Basis untold) {
        this.words = words;
        this.samples = new Samples(decimalComma, untold, notTaken);
    }

    /** A line that is neither headings nor figures. */
    void above(TextLine line, List<Head.Field> said) {
        if (line.page() != page) {
            page = line.page();
            linesAbove = 0;
            forgetAcross();
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
        if (rows.isEmpty() || head == TableHead.NONE && figures.isEmpty() && samples.isEmpty()) {
            if (hasFigure) {
                notTaken.add("Line %d: %s".formatted(line.number(), line.shown()));
            }
            return;
        }
        var row = rows.get(0);
        name(row.name(), line, null);
        if (!words.leavesOut(row.name())) {
            notTaken.add(line.notTaken("no analyte of this name is known"));
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

    private void name(String written, TextLine line, @Nullable Heading taken) {
        if (names.size() < MOST_NAMES || names.containsKey(Heading.key(written))) {
            names.putIfAbsent(Heading.key(written), new Named(written, line.shown(), taken, words.leavesOut(written)));
        }
    }

    void rows(TextLine line, List<Row> rows) {
        var all = new ArrayList<Word>();
        rows.forEach(row -> all.addAll(row.figures()));
        var columns = head.ofFigures(line.isAligned());
        var places = columns.isEmpty() ? null : Placing.of(all, columns, line.isAligned());
        hasPanels |= rows.size() > 1;
        int number = 0;
        for (int panel = 0; panel < rows.size(); panel++) {
            var row = rows.get(panel);
            name(row.name(), line, row.heading());
            if (row.strange()) {
                notTaken.add(line.notTaken("its unit does not fit"));
                number += row.figures().size();
                continue;
            }
            long wanted = row.figures().stream().filter(Word::isFigure).count();
            if (places == null && wanted > 1) {
                notTaken.add(line.notTaken("no heading tells which column is which"));
                continue;
            }
            for (var word : row.figures()) {
                var column = places == null ? null : places.get(number);
                number++;
                if (word.isFigure() && (column == null || column.role() == TableHead.Role.VALUE)) {
                    figures.add(Figure.of(line, row, panel, head, column, saidBasis, word));
                } else if (word.isFigure() && column != null && column.role() == TableHead.Role.OTHER) {
                    notTaken.add(line.notTaken("%s under “%s”, a heading that is not known"
                            .formatted(word.text(), column.heading().text())));
                }
            }
        }
        if (places != null && places.contains(null)) {
            notTaken.add(line.notTaken("a figure stands under no heading"));
            figures.removeIf(f -> f.line() == line);
        }
    }

    /** A table with one sample in each line begins. */
    void across(Across table, TextLine line) {
        table();
        for (var column : table.columns()) {
            var written = column.heading().text();
            if (column.tells() == null) {
                name(written, line, column.analyte());
            }
            if (column.analyte() == null && column.tells() == null && !words.leavesOut(written)) {
                notTaken.add("Column “%s”: no analyte of this name is known".formatted(written));
            }
        }
    }

    void sample(TextLine line, Across.Line sample) {
        var places = sample.places();
        if (places.contains(null)) {
            notTaken.add(line.notTaken("a figure stands under no heading"));
            return;
        }
        if (sample.told().stream()
                .anyMatch(field -> OF_MANY.matcher(field.value()).matches())) {
            notTaken.add(line.notTaken("it is no sample"));
            return;
        }
        sample.strange().forEach(word -> notTaken.add(line.notTaken("“%s” is no figure".formatted(word.text()))));
        var read = new ArrayList<Figure>();
        for (int i = 0; i < places.size(); i++) {
            var column = Objects.requireNonNull(places.get(i));
            var word = sample.figures().get(i);
            var analyte = column.analyte();
            if (analyte != null && word.isFigure()) {
                var basis = column.basis() == null ? saidBasis : column.basis();
                var name = column.heading().text();
                read.add(new Figure(line, name, analyte.analyte(), 0, 0, basis, analyte.unit(), word));
            }
        }
        if (read.isEmpty()) {
            return;
        }
        isAcross = true;
        var own = new ArrayList<>(sample.told());
        boolean isNamed = own.stream().anyMatch(f -> f.kind() == Head.Kind.BAG || f.kind() == Head.Kind.NUMBER);
        fields.stream()
                .filter(f -> !isNamed || f.kind() != Head.Kind.BAG && f.kind() != Head.Kind.NUMBER)
                .forEach(own::add);
        var said = new Head(own);
        var codes = Stream.concat(said.all(Head.Kind.BAG).stream(), said.all(Head.Kind.NUMBER).stream());
        samples.inLine(
                codes.findFirst().orElse(""),
                read,
                new Samples.Above(said, laboratory, Understood.method(told.toString())));
        read.stream()
                .collect(Collectors.groupingBy(Figure::analyte, LinkedHashMap::new, Collectors.toList()))
                .values()
                .forEach(row -> samples.take(0, row));
    }

    /** What was said over a table of samples holds for all of them, and for no other page. */
    private void forgetAcross() {
        if (isAcross) {
            fields = new ArrayList<>();
            told = new StringBuilder();
            isAcross = false;
        }
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
        var said = new Head(fields);
        samples.begin(
                figures,
                codes(said, groups),
                groups,
                new Samples.Above(said, laboratory, Understood.method(told.toString())));
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
        fields = new ArrayList<>();
        told = new StringBuilder();
    }

    private List<String> codes(Head said, int groups) {
        var codes = said.codes(groups);
        return codes.isEmpty() && groups > 1
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
        return new Understood(
                "lines of a name and its figures", samples.whole(), List.copyOf(names.values()), List.copyOf(notTaken));
    }
}
