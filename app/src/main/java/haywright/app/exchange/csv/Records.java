package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Delimited;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;

/** The lines of a file, cut into cells by the sign that parts most of them. */
final class Records {
    static final char PIPE = '|';

    private static final int MOST_LINES = 10_000;
    private static final int MOST_COLUMNS = 400;
    /** Longer than any remark; the patterns of a figure need a stack as deep as a cell is long. */
    private static final int LONGEST_CELL = 2_000;
    /** A laboratory's name and address may stand above the headings. */
    private static final int LINES_BEFORE_HEADINGS = 25;

    private Records() {}

    /** The one of the three that parts the line with the most columns. */
    static char separator(String text) {
        if (Delimited.isPiped(text)) {
            return PIPE;
        }
        char best = 0;
        long most = 0;
        for (char c : new char[] {',', ';', '\t'}) {
            long count = text.lines()
                    .limit(LINES_BEFORE_HEADINGS)
                    .mapToLong(line -> line.replaceAll("\"[^\"]*\"", "")
                            .chars()
                            .filter(i -> i == c)
                            .count())
                    .max()
                    .orElse(0);
            // a decimal comma in every cell must not outweigh the semicolons between them
            if (count > most || c != ',' && count > 0 && 2 * count >= most) {
                best = c;
                most = count;
            }
        }
        if (best == 0) {
            var line = text.lines()
                    .filter(l -> !l.isBlank())
                    .findFirst()
                    .orElse("")
                    .strip();
            throw new Refused(
                    "text",
                    line.length() > 60 ? line.substring(0, 60) + "…" : line,
                    "no comma, semicolon or tab separates its columns",
                    "Save it with one of these between the columns.");
        }
        return best;
    }

    static List<Grid.Line> of(String text, char separator) {
        if (separator == PIPE) {
            var lines = new ArrayList<Grid.Line>();
            for (var cells : Delimited.piped(text)) {
                lines.add(new Grid.Line(lines.size() + 1, cells));
            }
            lines.removeIf(line -> line.cells().stream().allMatch(String::isBlank));
            return lines;
        }
        var format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        var records = new ArrayList<Grid.Line>();
        try (var parser = format.parse(new StringReader(text))) {
            for (var record : parser) {
                if (record.size() > MOST_COLUMNS) {
                    throw new Refused(
                            "text",
                            record.size() + " columns",
                            "a table has at most " + MOST_COLUMNS,
                            "Is this the right file?");
                }
                if (record.stream().anyMatch(cell -> cell.length() > LONGEST_CELL)) {
                    throw new Refused(
                            "text",
                            "line " + record.getRecordNumber(),
                            "a cell has at most %d letters".formatted(LONGEST_CELL),
                            "Is a quotation mark missing, or is it another file?");
                }
                if (record.stream().anyMatch(cell -> !cell.isBlank())) {
                    records.add(new Grid.Line(
                            record.getRecordNumber(), record.stream().toList()));
                }
                if (records.size() > MOST_LINES) {
                    throw new Refused(
                            "text",
                            "more than %,d lines".formatted(MOST_LINES),
                            "this is more than is read at once",
                            "Split the file.");
                }
            }
        } catch (IOException | UncheckedIOException e) {
            throw new Refused(
                    "text",
                    "",
                    "a quotation mark opens in line %d and the cell does not end with one"
                            .formatted(
                                    records.isEmpty()
                                            ? 1
                                            : records.get(records.size() - 1).number() + 1),
                    "Delete the mark or close it.");
        }
        return records;
    }
}
