package haywright.app.exchange.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** What the lines over a table say of the sample: label and value, several in a line. */
record Head(List<Field> fields) {
    /** What a label can tell; of two labels the earlier kind is the better one. */
    enum Kind {
        BAG(
                "bag label",
                "bag",
                "sample id",
                "sample code",
                "sample name",
                "sample description",
                "sample identification",
                "sample ident",
                "customer sample id",
                "client sample id",
                "customer id",
                "client id",
                "your sample",
                "field id",
                "description",
                "sample no.",
                "sample no",
                "sample number",
                "sample #",
                "sample"),
        NUMBER(
                "laboratory number",
                "laboratory no.",
                "laboratory no",
                "lab number",
                "lab sample no",
                "lab sample id",
                "lab no.",
                "lab no",
                "lab #",
                "lab id",
                "our number",
                "our no.",
                "our ref.",
                "reference",
                "report no",
                "report number",
                "log number",
                "number"),
        LABORATORY("laboratory", "lab name", "lab", "tested by", "analyzed by"),
        SAMPLED(
                "date sampled",
                "sampled on",
                "sampled",
                "sampling date",
                "sample date",
                "date collected",
                "collected on",
                "collected",
                "collection date"),
        REPORTED(
                "date reported",
                "reported on",
                "reported",
                "report date",
                "date of report",
                "date completed",
                "completed",
                "date issued",
                "issued",
                "date printed",
                "printed",
                "date"),
        OTHER(
                "date received",
                "received",
                "received on",
                "account",
                "account no",
                "customer",
                "client",
                "grower",
                "ranch",
                "farm",
                "submitted by",
                "submitted for",
                "feed type",
                "feed",
                "material",
                "sample type",
                "product",
                "crop",
                "cutting",
                "method",
                "methods",
                "analysis method",
                "procedure",
                "remarks",
                "remark",
                "note",
                "notes",
                "phone",
                "fax",
                "email",
                "address",
                "page",
                "invoice",
                "county",
                "state");

        private final List<String> labels;

        Kind(String... labels) {
            this.labels = List.of(labels);
        }
    }

    record Field(Kind kind, String value, int line, int from) {}

    private static final Pattern LABEL = label();
    private static final Pattern NEXT_LABEL = Pattern.compile("\\s\\p{L}[\\p{L}./#]*(?: \\p{L}[\\p{L}./#]*){0,2}\\s?:");
    private static final Pattern CALLS_ITSELF =
            Pattern.compile("(?i)\\b(?:laborator(?:y|ies)|labs?|analytical|testing)\\b");

    private static Pattern label() {
        var all = new ArrayList<String>();
        for (var kind : Kind.values()) {
            kind.labels.forEach(label -> all.add(Pattern.quote(label)));
        }
        all.sort((a, b) -> b.length() - a.length());
        return Pattern.compile("(?i)(?<![\\p{L}\\p{N}-])(" + String.join("|", all) + ")\\s*[:=]\\s*");
    }

    /** The fields of one line: label and value in a cell, or a label in a cell and its values in the next ones. */
    static List<Field> of(TextLine line) {
        var fields = new ArrayList<Field>();
        Kind open = null;
        for (var words : line.cells()) {
            var cell = TextLine.join(words);
            var found = LABEL.matcher(cell.text());
            var before = fields.size();
            if (isLabel(cell.text())) {
                open = kind(cell.text().replaceAll("\\s*[:=]$", ""));
                continue;
            }
            int at = 0;
            while (at < cell.text().length() && found.find(at)) {
                var rest = cell.text().substring(found.end());
                var next = NEXT_LABEL.matcher(rest);
                int end = next.find() ? next.start() : rest.length();
                var value = rest.substring(0, end).strip();
                if (!value.isEmpty()) {
                    fields.add(new Field(kind(found.group(1)), value, line.number(), cell.from() + found.start()));
                }
                at = found.end() + Math.max(end, 1);
            }
            if (fields.size() > before) {
                open = null;
            } else if (open != null) {
                fields.add(new Field(open, cell.text(), line.number(), cell.from()));
            }
        }
        return fields;
    }

    /** What a column under this heading says of each sample. */
    static Optional<Kind> tells(String heading) {
        return isLabel(heading)
                ? Optional.of(kind(heading.replaceAll("\\s*[:=]$", "").replaceAll("\\s+", " ")))
                : Optional.empty();
    }

    private static boolean isLabel(String cell) {
        var bare = cell.toLowerCase(Locale.ROOT).replaceAll("\\s*[:=]$", "");
        return Stream.of(Kind.values()).anyMatch(kind -> kind.labels.contains(bare));
    }

    private static Kind kind(String label) {
        var key = label.toLowerCase(Locale.ROOT);
        for (var kind : Kind.values()) {
            if (kind.labels.contains(key)) {
                return kind;
            }
        }
        throw new IllegalStateException(label);
    }

    static boolean isName(String line) {
        return CALLS_ITSELF.matcher(line).find() && line.length() < 80 && !line.contains(":");
    }

    /** Codes of the better kind that has one for each sample, in order. */
    List<String> codes(int samples) {
        var some = List.<String>of();
        for (var kind : List.of(Kind.BAG, Kind.NUMBER)) {
            var codes = all(kind).stream().distinct().toList();
            if (codes.size() == samples) {
                return codes;
            }
            some = some.isEmpty() ? codes : some;
        }
        return some;
    }

    List<String> all(Kind kind) {
        return fields.stream().filter(f -> f.kind == kind).map(Field::value).toList();
    }

    /** The value for one of several samples side by side; empty where it is not said. */
    String of(Kind kind, int group, int groups) {
        var values = all(kind);
        return values.isEmpty() ? "" : values.size() == groups ? values.get(group) : values.get(0);
    }
}
