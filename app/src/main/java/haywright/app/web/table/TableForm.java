package haywright.app.web.table;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.csv.TableIn;
import haywright.app.web.Ask;
import haywright.app.web.Findings;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A table of things that are typed one by one otherwise. All of it is kept at once, or nothing. */
public final class TableForm {
    public static final Ask TABLE = Ask.text(
            "table",
            "Paste the table, headings included",
            "From a spreadsheet: mark the cells, copy, paste here. Nothing is saved before you see each line.");

    /** Ticked with the number of a line that is not to be kept. */
    public static final String WITHOUT = "without";

    /** Before the number of a line: what is asked about it and was confirmed. */
    public static final String CONFIRM = "confirm-line-";

    /** Which table was seen. */
    public static final String SEEN = "table-seen";

    private static final String PAGE = "haywright/app/web/table/table.jte";
    private static final int MOST_BYTES = 256 * 1024;
    private static final int MOST_LINES = 400;
    private static final Pattern NUMBER = Pattern.compile("[0-9][0-9,.]*");
    private static final Set<String> UNITS = Set.of(
            "lb", "lbs", "pounds", "kg", "ton", "tons", "tonne", "tonnes", "t", "$/t", "$/tonne", "ft", "m", "$/ton",
            "$ ton", "lb/day", "kg/day");

    private final List<Column> columns;

    public TableForm(List<Column> columns) {
        this.columns = List.copyOf(columns);
    }

    /**
     * One line of it.
     *
     * @param form that it would be typed in
     * @param words as it stands in the table
     */
    private record Line(long number, Form form, String words) {}

    /**
     * One line as the page shows it.
     *
     * @param says what it becomes, in words; empty where something is wrong with it
     * @param wrong what, by the label of its box
     * @param asked what is unusual, to be confirmed
     * @param isLeftOut whether it is not to be kept
     */
    public record Shown(
            long number,
            String words,
            String says,
            List<Findings.Message> wrong,
            List<Findings.Doubt> asked,
            boolean isLeftOut) {}

    /** @param seen what the page sends back, so that it is known which table was seen. @param lines none before one was sent */
    public record View(
            Form form, String title, String headings, String action, String back, String seen, List<Shown> lines) {}

    /**
     * What its lines become.
     *
     * @param usual what stands in a box that no column fills in
     * @param said questions that the page of the form answers by its hints, so that nobody is asked
     */
    public interface Of<T> {
        Map<String, String> usual();

        List<String> said();

        /** Fills in a box by what stands in others; it is said with what the line becomes. */
        default void fill(Map<String, String> boxes) {}

        /** @param ranch with the lines above. Empty where anything is wrong or asked; then the form says what */
        Optional<T> read(Ranch ranch, Form line);

        /** What it becomes, and what was taken for what was left empty. */
        String says(Form line, T one);

        Ranch with(Ranch ranch, T one);
    }

    /** Where it stands, and what it is called. */
    public record At(String key, String title, String back, String noun) {}

    /** The empty page. */
    public void show(Page page, At at) {
        page.show(PAGE, view(page, at, page.form(at.key, Map::of), List.of()));
    }

    private View view(Page page, At at, Form form, List<Shown> lines) {
        return new View(form, at.title, headings(), page.at(at.key), page.at(at.back), seen(form), lines);
    }

    /** Reads it; shows what each line becomes; and where that was seen and nothing is open, keeps all of it. */
    public <T> void keep(Page page, At at, Of<T> of) throws IOException {
        var form = posted(page, at.key);
        var lines = lines(form, of);
        var all = new ArrayList<T>();
        var words = new ArrayList<String>();
        var shown = new ArrayList<Shown>();
        var ranch = page.ranch();
        boolean isOpen = form.hasProblems() || lines.isEmpty();
        for (var line : lines) {
            boolean isLeftOut = form.isTicked(WITHOUT, String.valueOf(line.number));
            var one = of.read(ranch, line.form);
            var says = one.map(read -> of.says(line.form, read));
            shown.add(shown(line, says.orElse(""), of.said(), isLeftOut));
            if (one.isEmpty() && !isLeftOut) {
                isOpen = true;
                form.refuse(
                        TABLE.name(),
                        "Line " + line.number,
                        "it has something to fix or to confirm",
                        "See below, or leave it out.");
            }
            if (one.isPresent() && !isLeftOut) {
                all.add(one.get());
                words.add(says.orElseThrow());
                ranch = of.with(ranch, one.get());
            }
        }
        var view = view(page, at, form, shown);
        if (isOpen) {
            page.reject(form, PAGE, view);
        } else if (all.isEmpty() || !form.value(SEEN).equals(seen(form))) {
            page.keep(form);
            page.show(PAGE, view);
        } else {
            page.save(
                    form,
                    "%s from a table: %s".formatted(Show.count(all.size(), at.noun), String.join("; ", words)),
                    now -> {
                        var with = now;
                        for (var one : all) {
                            with = of.with(with, one);
                        }
                        return with;
                    },
                    at.back);
        }
    }

    /** A table that was changed since it was seen has to be seen again. */
    private static String seen(Form form) {
        return Integer.toHexString(form.value(TABLE).strip().hashCode());
    }

    /** The text of the form, or of the file that was chosen in its place. */
    private static Form posted(Page page, String key) throws IOException {
        var file = page.http().isMultipartFormData() ? page.http().uploadedFile("file") : null;
        if (file == null) {
            return page.posted(key);
        }
        var form = page.posted(key, Map.of());
        if (file.size() > MOST_BYTES) {
            form.refuse(TABLE.name(), file.filename(), "too large for a list", "Save only the list as CSV.");
            return form;
        }
        try (var in = file.content()) {
            var bytes = in.readNBytes(MOST_BYTES);
            return form.buildFrom(TABLE, () -> ReportCsv.decode(bytes))
                    .map(text -> page.posted(key, Map.of(TABLE.name(), List.of(text))))
                    .orElse(form);
        }
    }

    /** Each line as a form; empty where the table itself cannot be read, and then the form says why. */
    private List<Line> lines(Form form, Of<?> of) {
        var text = form.hasProblems() ? "" : form.text(TABLE, "Copy it from the spreadsheet.");
        return form.hasProblems()
                ? List.of()
                : form.buildFrom(TABLE, () -> TableIn.of(text))
                        .map(table -> lines(form, table, of))
                        .orElse(List.of());
    }

    private List<Line> lines(Form form, TableIn table, Of<?> of) {
        if (table.lines().size() > MOST_LINES) {
            form.refuse(
                    TABLE.name(),
                    Show.count(table.lines().size(), "line"),
                    "at most %d at once".formatted(MOST_LINES),
                    "Bring half of it at a time.");
            return List.of();
        }
        var places = places(form, table);
        if (form.hasProblems()) {
            return List.of();
        }
        var lines = new ArrayList<Line>();
        for (var line : table.lines()) {
            var filled = new LinkedHashMap<>(of.usual());
            places.forEach((at, place) -> {
                var cell = at < line.cells().size() ? line.cells().get(at).strip() : "";
                if (!cell.isEmpty()) {
                    filled.put(place.column.box(), place.value(cell));
                }
            });
            of.fill(filled);
            var boxes = new LinkedHashMap<String, List<String>>();
            filled.forEach((box, value) -> boxes.put(box, List.of(value)));
            boxes.put(
                    "confirm",
                    Stream.concat(form.all(CONFIRM + line.number()).stream(), of.said().stream())
                            .toList());
            lines.add(new Line(
                    line.number(),
                    Form.posted("line " + line.number(), boxes),
                    line.cells().stream().filter(cell -> !cell.isBlank()).collect(Collectors.joining(", "))));
            over(form, table, line);
        }
        return lines;
    }

    /** Cells that no heading stands over are not dropped in silence. */
    private static void over(Form form, TableIn table, TableIn.Line line) {
        var beyond = line.cells().stream()
                .skip(table.headings().size())
                .filter(cell -> !cell.isBlank())
                .toList();
        if (!beyond.isEmpty()) {
            form.refuse(
                    TABLE.name(),
                    String.join(", ", beyond),
                    "line %d has more cells than there are headings".formatted(line.number()),
                    "Is a quotation mark missing, or a heading?");
        }
    }

    /** @param unit that the heading names; empty where it names none */
    private record Placed(Column column, String unit) {
        String value(String cell) {
            return !unit.isEmpty() && NUMBER.matcher(cell).matches() ? cell + " " + unit : column.value(cell);
        }
    }

    /** Which column is which. One that is unknown is asked about; two of one kind are refused. */
    private Map<Integer, Placed> places(Form form, TableIn table) {
        var places = new TreeMap<Integer, Placed>();
        for (int at = 0; at < table.headings().size(); at++) {
            var heading = table.headings().get(at).strip();
            var placed = placed(Column.key(heading));
            int column = at;
            boolean isEmpty = table.lines().stream()
                    .allMatch(line -> column >= line.cells().size()
                            || line.cells().get(column).isBlank());
            if (placed.isEmpty() && !isEmpty) {
                form.doubt(
                        TABLE,
                        "column-" + at + "-" + Integer.toHexString(heading.hashCode()),
                        "No box here goes by “%s”. Leave this column out?".formatted(Findings.shown(heading)));
            } else if (placed.isPresent() && !isEmpty) {
                var twice = places.values().stream().anyMatch(other -> other.column.equals(placed.get().column));
                if (twice) {
                    form.refuse(
                            TABLE.name(),
                            heading,
                            "two columns are of the same",
                            "Delete one of them, or its heading.");
                } else {
                    places.put(at, placed.get());
                }
            }
        }
        return places;
    }

    /** The unit that a heading has in its name, where a bare number in its box would be of another. */
    private static String named(String name) {
        var words = List.of(name.split("[ /]"));
        var unit = words.contains("ton") || words.contains("tons")
                ? Unit.TON
                : words.contains("tonne") || words.contains("tonnes") ? Unit.TONNE : Measures.mass();
        return unit == Measures.mass()
                ? ""
                : (words.contains("price") || name.startsWith("$") ? "$/" : "") + unit.symbol();
    }

    private Optional<Placed> placed(String heading) {
        return columns.stream()
                .flatMap(column -> column.headings().stream().flatMap(name -> {
                    if (heading.equals(name)) {
                        return Optional.of(new Placed(column, named(name))).stream();
                    }
                    var rest = heading.startsWith(name + " ") ? heading.substring(name.length() + 1) : "";
                    return UNITS.contains(rest)
                            ? Optional.of(new Placed(column, rest)).stream()
                            : Optional.<Placed>empty().stream();
                }))
                .findFirst();
    }

    private static Shown shown(Line line, String says, List<String> said, boolean isLeftOut) {
        var asked = line.form.doubts().stream()
                .filter(doubt -> !said.contains(doubt.question()))
                .toList();
        return new Shown(
                line.number,
                line.words,
                says,
                line.form.messages().stream()
                        .filter(message -> asked.stream()
                                .noneMatch(doubt -> message.words().contains(doubt.words())))
                        .toList(),
                asked,
                isLeftOut);
    }

    /** The headings of our own tables, for somebody who begins one. */
    private String headings() {
        return columns.stream()
                .map(column -> Measures.inWords(column.headings().get(0)))
                .collect(Collectors.joining(", "));
    }
}
