package haywright.app.exchange.text;

import haywright.forage.Tested;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

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
                "report no",
                "report number",
                "log number"),
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
            Pattern.compile("(?i)\\b(?:laborator(?:y|ies)|labs?|analytical|forage testing)\\b");
    private static final Pattern NIR = Pattern.compile("(?i)\\bNIRS?\\b|near[- ]infra-?red");
    private static final Pattern WET = Pattern.compile("(?i)\\bwet[- ]chem");

    private static Pattern label() {
        var all = new ArrayList<String>();
        for (var kind : Kind.values()) {
            kind.labels.forEach(label -> all.add(Pattern.quote(label)));
        }
        all.sort((a, b) -> b.length() - a.length());
        return Pattern.compile("(?i)(?<![\\p{L}\\p{N}-])(" + String.join("|", all) + ")(\\s*[:=]|\\s{2,})\\s*");
    }

    /** The fields of one line. A label with a colon may stand anywhere, one without at the start of a cell. */
    static List<Field> of(TextLine line) {
        var fields = new ArrayList<Field>();
        var text = line.text();
        var found = LABEL.matcher(text);
        int at = 0;
        while (at < text.length() && found.find(at)) {
            boolean startsCell = text.substring(0, found.start()).isBlank()
                    || text.substring(0, found.start()).endsWith("  ");
            boolean isLabel = startsCell || found.group(2).strip().length() == 1;
            if (!isLabel) {
                at = found.end(1);
                continue;
            }
            var rest = text.substring(found.end());
            int end = rest.indexOf("  ");
            end = end < 0 ? rest.length() : end;
            var next = NEXT_LABEL.matcher(rest);
            if (next.find()) {
                end = Math.min(end, next.start());
            }
            var value = rest.substring(0, end).strip();
            if (!value.isEmpty()) {
                fields.add(new Field(kind(found.group(1)), value, line.number(), found.start()));
            }
            at = found.end() + Math.max(end, 0);
            at = Math.max(at, found.end(1) + 1);
        }
        return fields;
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

    /** Null where the words do not say, or say both. */
    static Tested.@Nullable Method method(String text) {
        boolean nir = NIR.matcher(text).find();
        boolean wet = WET.matcher(text).find();
        return nir == wet ? null : nir ? Tested.Method.NIR : Tested.Method.WET;
    }

    /** Values of the best kind of code, in order; none twice in a row. */
    List<String> codes() {
        for (var kind : List.of(Kind.BAG, Kind.NUMBER)) {
            var codes = fields.stream()
                    .filter(f -> f.kind == kind)
                    .map(Field::value)
                    .distinct()
                    .toList();
            if (!codes.isEmpty()) {
                return codes;
            }
        }
        return List.of();
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
