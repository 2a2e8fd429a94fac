package haywright.workings;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.zip.GZIPInputStream;

/**
 * A table of published numbers that ships with the engine: comma-separated (RFC 4180), a heading line, one row a fact,
 * with columns for its source. Reads class-path resources only; what a user brings is read elsewhere.
 */
public final class PublishedTable {
    private final String name;
    private final List<Row> rows;
    /** By column, then by what is in it: a limit is looked up for every feed of every program. */
    private final Map<String, Map<String, Row>> found = new ConcurrentHashMap<>();

    private PublishedTable(String name, List<Row> rows) {
        this.name = name;
        this.rows = List.copyOf(rows);
    }

    /** @param beside a class in the table's room; the resource lies in that room's folder, plain or packed (.gz) */
    public static PublishedTable read(Class<?> beside, String resource) {
        try (InputStream in = beside.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the table " + resource + " is missing beside " + beside.getName());
            }
            return read(resource, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @param name ends in .gz where the table is packed */
    public static PublishedTable read(String name, InputStream in) throws IOException {
        var bytes = name.endsWith(".gz") ? new GZIPInputStream(in).readAllBytes() : in.readAllBytes();
        return parse(name, new String(bytes, StandardCharsets.UTF_8));
    }

    public List<Row> rows() {
        return rows;
    }

    /** The one row whose {@code column} holds {@code value}. */
    public Row row(String column, String value) {
        var row = found.computeIfAbsent(column, this::byValue).get(value);
        if (row == null) {
            throw new IllegalStateException("%s has no row with %s %s".formatted(name, column, value));
        }
        return row;
    }

    private Map<String, Row> byValue(String column) {
        var first = new HashMap<String, Row>();
        rows.forEach(row -> first.putIfAbsent(row.text(column), row));
        return first;
    }

    private static PublishedTable parse(String name, String text) {
        var records = new ArrayList<List<String>>();
        var fields = new ArrayList<String>();
        var field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quoted) {
                if (c != '"') {
                    field.append(c);
                } else if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
                    field.append('"');
                    i++;
                } else {
                    quoted = false;
                }
            } else if (c == '"') {
                quoted = true;
            } else if (c == ',' || c == '\n') {
                fields.add(field.toString());
                field.setLength(0);
                if (c == '\n') {
                    records.add(List.copyOf(fields));
                    fields.clear();
                }
            } else if (c != '\r') {
                field.append(c);
            }
        }
        if (field.length() > 0 || !fields.isEmpty()) {
            fields.add(field.toString());
            records.add(List.copyOf(fields));
        }
        var headings = records.get(0);
        var rows = new ArrayList<Row>();
        for (var record : records.subList(1, records.size())) {
            if (record.size() == 1 && record.get(0).isEmpty()) {
                continue;
            }
            if (record.size() != headings.size()) {
                throw new IllegalStateException("%s: a row has %d fields under %d headings: %s"
                        .formatted(name, record.size(), headings.size(), record));
            }
            var cells = new LinkedHashMap<String, String>();
            for (int i = 0; i < headings.size(); i++) {
                cells.put(headings.get(i), record.get(i));
            }
            rows.add(new Row(cells));
        }
        return new PublishedTable(name, rows);
    }

    /** One row. A blank cell means that the source gives nothing. */
    public record Row(Map<String, String> cells) {
        public String text(String column) {
            var cell = cells.get(column);
            if (cell == null) {
                throw new IllegalStateException("no column " + column + " in " + cells.keySet());
            }
            return cell;
        }

        public Optional<String> some(String column) {
            return Optional.of(text(column)).filter(t -> !t.isBlank());
        }

        /** The publication in {@code source}, as firmly as {@code known} says. */
        public Source source() {
            return source(text("source"));
        }

        /** What {@code cite} says, as firmly as {@code known} says: read, reproduces, or else from memory. */
        public Source source(String cite) {
            return switch (text("known")) {
                case "read" -> Source.read(cite);
                case "reproduces" -> Source.reproduces(cite);
                default -> Source.memory(cite);
            };
        }

        public OptionalDouble number(String column) {
            var cell = text(column);
            return cell.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
        }
    }
}
