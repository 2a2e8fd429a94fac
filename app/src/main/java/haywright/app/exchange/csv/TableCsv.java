package haywright.app.exchange.csv;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * A table as CSV (RFC 4180, UTF-8). A cell that a spreadsheet would run as a formula goes out behind an apostrophe, and
 * is taken in without it; a figure is never such a cell.
 */
public final class TableCsv {
    private static final Pattern FORMULA =
            Pattern.compile("(?s)[\\s\\p{Cntrl}]*[=+\\-@\uff1d\uff0b\uff0d\uff20].*|\\p{Cntrl}.*");
    private static final Pattern FIGURE = Pattern.compile("[-+]?[0-9]+(?:\\.[0-9]+)?");

    private TableCsv() {}

    /** @param lines as many cells in each as there are headings */
    public static String of(List<String> headings, List<List<String>> lines) {
        var text = new StringBuilder();
        try (var printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(headings.stream().map(TableCsv::out).toList());
            for (var line : lines) {
                printer.printRecord(line.stream().map(TableCsv::out).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static String out(String cell) {
        return FORMULA.matcher(cell).matches() && !FIGURE.matcher(cell).matches() ? "'" + cell : cell;
    }

    static String in(String cell) {
        return cell.startsWith("'") && FORMULA.matcher(cell.substring(1)).matches() ? cell.substring(1) : cell;
    }
}
