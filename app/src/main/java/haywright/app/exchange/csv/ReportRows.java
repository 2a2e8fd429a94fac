package haywright.app.exchange.csv;

import haywright.app.exchange.csv.Columns.Told;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Cell;
import haywright.app.exchange.lab.Understood.Named;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.words.Said;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/** The lines under the headings, on their way to samples. */
final class ReportRows {
    private static final int MOST_SAMPLES = 200;
    /** A cell with nothing in it. */
    private static final Set<String> NOTHING = Set.of("", "-", "--", "---", "–", "—", ".", "n/a", "na");

    private final Columns columns;
    private final char separator;
    private final boolean decimalComma;
    private final @Nullable Basis untold;
    private final Vocabulary words;
    private final Map<String, Named> names = new LinkedHashMap<>();
    private final Set<String> notTaken = new LinkedHashSet<>();
    private final Set<String> withoutBasis = new LinkedHashSet<>();

    ReportRows(Columns columns, char separator, boolean decimalComma, @Nullable Basis untold, Vocabulary words) {
        this.columns = columns;
        this.separator = separator;
        this.decimalComma = decimalComma;
        this.untold = untold;
        this.words = words;
    }

    Understood read(List<CSVRecord> above, List<CSVRecord> lines) {
        above.forEach(line -> notTaken.add("Line above the headings: " + String.join(" ", line.toList())));
        var first = lines.isEmpty() ? null : lines.get(0);
        for (var name : columns.unknown()) {
            var example = first == null ? "" : cell(first, columns.names().indexOf(name));
            name(name, example, null);
            if (!words.leavesOut(name)) {
                notTaken.add("Column “%s”: ".formatted(name) + unknown(name));
            }
        }
        for (var line : lines) {
            if (line.size() > columns.names().size()) {
                throw new Refused(
                        "text",
                        String.join(" ", line.toList().subList(0, Math.min(6, line.size()))),
                        "line %d has %d cells under %d headings"
                                .formatted(
                                        line.getRecordNumber(),
                                        line.size(),
                                        columns.names().size()),
                        decimalComma || separator != ','
                                ? "Is a cell not closed, or a heading missing?"
                                : "Is the comma between columns also the one before decimals? Then save it with semicolons.");
            }
        }
        var samples =
                columns.isLong() ? longSamples(lines) : columns.samples().isEmpty() ? wide(lines) : sideBySide(lines);
        if (!withoutBasis.isEmpty()) {
            throw new Refused(
                    "basis",
                    String.join(", ", withoutBasis),
                    "the file does not say whether these are as received or on dry matter",
                    "Look at the sheet and say which.");
        }
        samples.removeIf(sample -> sample.cells().isEmpty());
        if (samples.isEmpty()) {
            throw new Refused(
                    "text", "", "there are headings, but no figure of a known analyte under them", firstUnknown());
        }
        if (samples.size() > MOST_SAMPLES) {
            throw new Refused(
                    "text", samples.size() + " samples", "this is more than are taken in at once", "Split the file.");
        }
        var parted = switch (separator) {
            case ';' -> "semicolons";
            case '\t' -> "tabs";
            default -> "commas";
        };
        var layout = (columns.isLong()
                        ? "one line a figure"
                        : columns.samples().isEmpty() ? "one line a sample" : "one column a sample")
                + ", columns parted by " + parted;
        return new Understood(layout, samples, List.copyOf(names.values()), List.copyOf(notTaken));
    }

    private String firstUnknown() {
        return notTaken.stream().findFirst().map(words -> words + ".").orElse("Is the file whole?");
    }

    private void name(String written, String example, @Nullable Heading taken) {
        names.putIfAbsent(Heading.key(written), new Named(written, example, taken, words.leavesOut(written)));
    }

    private static String unknown(String name) {
        try {
            Analyte.named(name);
            return "its unit or basis is not understood";
        } catch (Refused e) {
            return e.problems().get(0).rule() + ". " + e.problems().get(0).fix();
        }
    }

    private List<Sample> wide(List<CSVRecord> lines) {
        var samples = new ArrayList<Sample>();
        columns.analytes()
                .forEach((column, heading) ->
                        name(columns.names().get(column), lines.isEmpty() ? "" : cell(lines.get(0), column), heading));
        for (var line : lines) {
            var cells = new LinkedHashMap<String, Cell>();
            columns.analytes().forEach((column, heading) -> {
                var text = cell(line, column);
                if (!isNothing(text)) {
                    take(cells, heading, columns.names().get(column), text, line);
                }
            });
            samples.add(sample(line, cells));
        }
        return samples;
    }

    private List<Sample> longSamples(List<CSVRecord> lines) {
        var first = new LinkedHashMap<String, CSVRecord>();
        var byCode = new LinkedHashMap<String, Map<String, Cell>>();
        for (var line : lines) {
            var name = cell(line, columns.column(Told.NAME));
            var heading = heading(line, name);
            if (heading.isEmpty()) {
                continue;
            }
            // several reports can speak of one code, and several codes stand in one report
            var key = cell(line, columns.column(Told.REPORT)) + "\n" + cell(line, columns.column(Told.CODE));
            first.putIfAbsent(key, line);
            var cells = byCode.computeIfAbsent(key, c -> new LinkedHashMap<>());
            columns.bases().forEach((column, basis) -> {
                var text = cell(line, column);
                boolean isWhole = basis == Basis.DRY_MATTER
                        && (heading.get().analyte() == Analyte.DM
                                || heading.get().analyte() == Analyte.MOISTURE);
                if (!isNothing(text) && !isWhole) { // dry matter of dry matter is 100 and says nothing
                    take(
                            cells,
                            new Heading(heading.get().analyte(), heading.get().unit(), basis),
                            name,
                            text,
                            line);
                }
            });
            var text = cell(line, columns.value());
            if (!isNothing(text)) {
                take(cells, heading.get(), name, text, line);
            }
        }
        var samples = new ArrayList<Sample>();
        first.forEach((key, line) -> samples.add(sample(line, byCode.getOrDefault(key, Map.of()))));
        return samples;
    }

    /** What the name in a line of its own stands for; empty where it is to be left out, or is not known. */
    private Optional<Heading> heading(CSVRecord line, String name) {
        var heading = words.heading(name);
        if (name.isBlank()) {
            return Optional.empty();
        }
        name(name, String.join(" ", line.toList()), heading.orElse(null));
        if (words.leavesOut(name)) {
            return Optional.empty();
        }
        if (heading.isEmpty()) {
            notTaken.add("Line “%s”: ".formatted(name) + unknown(name));
        }
        return heading.flatMap(known -> measured(line, known));
    }

    /** With what its line says of unit and basis; empty where the unit is not understood, for it could be any. */
    private Optional<Heading> measured(CSVRecord line, Heading heading) {
        var analyte = heading.analyte();
        var own = Heading.basis(cell(line, columns.column(Told.BASIS))).orElse(heading.basis());
        var written = cell(line, columns.column(Told.UNIT));
        if (isNothing(written) || analyte.unit() == Unit.NONE) {
            return Optional.of(new Heading(analyte, heading.unit(), own));
        }
        var told = Heading.measured(analyte, written);
        if (told.isEmpty()) {
            notTaken.add("Line “%s”: its unit “%s” is not understood"
                    .formatted(cell(line, columns.column(Told.NAME)), written));
        }
        return told.map(unit -> new Heading(analyte, unit.unit(), own == null ? unit.basis() : own));
    }

    private List<Sample> sideBySide(List<CSVRecord> lines) {
        var samples = new ArrayList<Sample>();
        columns.samples().forEach((column, code) -> {
            var cells = new LinkedHashMap<String, Cell>();
            for (var line : lines) {
                var name = cell(line, columns.column(Told.NAME));
                var text = cell(line, column);
                heading(line, name).filter(heading -> !isNothing(text)).ifPresent(heading -> {
                    take(cells, heading, name, text, line);
                });
            }
            samples.add(new Sample(code, "", "", "", "", null, List.copyOf(cells.values())));
        });
        return samples;
    }

    private void take(Map<String, Cell> cells, Heading heading, String name, String text, CSVRecord line) {
        var analyte = heading.analyte();
        var basis = analyte.hasBasis() ? (heading.basis() == null ? untold : heading.basis()) : null;
        if (analyte.hasBasis() && basis == null && !Said.isWithoutLimit(text)) {
            withoutBasis.add(name);
            return;
        }
        var cell = new Cell(analyte, heading.unit(), basis, ReportCsv.pointed(text, decimalComma), name);
        var before = cells.putIfAbsent(analyte.id() + " " + basis, cell);
        if (before != null && !before.text().equals(cell.text())) {
            notTaken.add("Line %d, “%s”: %s stands there before it, as %s"
                    .formatted(line.getRecordNumber(), text, analyte.words(), before.text()));
        }
    }

    private Sample sample(CSVRecord line, Map<String, Cell> cells) {
        var code = cell(line, columns.column(Told.CODE));
        return new Sample(
                code.isEmpty() && !columns.isLong() ? cell(line, columns.column(Told.NAME)) : code,
                cell(line, columns.column(Told.LOT)),
                cell(line, columns.column(Told.LABORATORY)),
                cell(line, columns.column(Told.SAMPLED)),
                cell(line, columns.column(Told.REPORTED)),
                Understood.method(cell(line, columns.column(Told.METHOD))),
                List.copyOf(cells.values()));
    }

    private static boolean isNothing(String text) {
        return NOTHING.contains(Heading.key(text));
    }

    private static String cell(CSVRecord line, int column) {
        return column >= 0 && column < line.size() ? TableCsv.in(line.get(column)) : "";
    }
}
