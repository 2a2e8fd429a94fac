package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * Reads a laboratory's CSV in either of its two usual forms: wide (one row a sample, one column an analyte) and long
 * (one row an analyte: its name and a column for each basis). Columns parted by comma, semicolon or tab; UTF-8 with or
 * without its mark, or Latin-1. Nothing is guessed: basis and decimal comma are asked for where the file does not tell.
 */
public final class ReportCsv {
    /** Far above any report; a file that is no report is turned away before it is read. */
    public static final int MOST_BYTES = 1_000_000;

    private static final int MOST_SAMPLES = 200;
    private static final int MOST_COLUMNS = 400;
    /** Longer than any remark; the patterns of a figure need a stack as deep as a cell is long. */
    private static final int LONGEST_CELL = 2_000;
    /** A laboratory's name and address may stand above the headings. */
    private static final int LINES_BEFORE_HEADINGS = 25;

    private static final Pattern COMMA = Pattern.compile("(?:<\\s*)?[-−+]?[0-9. ]*,[0-9]+.*");
    private static final Pattern GROUPED = Pattern.compile("(?:<\\s*)?[-−+]?[0-9]{1,3}(,[0-9]{3})+(\\.[0-9]*)?\\D*");
    private static final Pattern POINT_GROUPED =
            Pattern.compile("(?:<\\s*)?[-−+]?[0-9]{1,3}(\\.[0-9]{3})+(,[0-9]*)?\\D*");

    private ReportCsv() {}

    /** The text of a file in UTF-8, UTF-16 with its mark, or else Latin-1 as Windows writes it. */
    public static String decode(byte[] file) {
        if (file.length > MOST_BYTES) {
            throw new Refused(
                    "file",
                    file.length / 1000 + " kB",
                    "a report is smaller than %d kB".formatted(MOST_BYTES / 1000),
                    "Is this the right file?");
        }
        var text = charset(file).decode(ByteBuffer.wrap(file)).toString();
        if (text.indexOf('\0') >= 0 || text.startsWith("PK\u0003") || text.startsWith("%PDF")) {
            throw new Refused(
                    "file",
                    "",
                    "this is not a CSV file but another kind",
                    "Open it where it was made and save it as CSV, or paste the figures.");
        }
        return text;
    }

    private static Charset charset(byte[] file) {
        if (file.length > 1 && (file[0] & 0xff) + (file[1] & 0xff) == 0xff + 0xfe) {
            return StandardCharsets.UTF_16;
        }
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(file));
            return StandardCharsets.UTF_8;
        } catch (CharacterCodingException e) {
            return Charset.forName("windows-1252");
        }
    }

    /** Whether it is written in columns parted by a sign, with a line of headings that names analytes. */
    public static boolean isOne(String text, Vocabulary words) {
        try {
            var layout = read(text, false, Basis.DRY_MATTER, words).layout();
            return !layout.equals("one line a figure, columns parted by tabs"); // a sheet that was pasted
        } catch (Refused e) {
            var problem = e.problems().get(0);
            return !problem.rule().startsWith("no line names")
                    && !problem.rule().startsWith("no comma");
        }
    }

    /**
     * @param decimalComma whether 12,5 is twelve and a half
     * @param untold the basis of columns whose heading names none; null where nobody has said
     * @param words the names this laboratory uses
     * @throws Refused with one sentence: nothing in it, no columns, no analyte known, a basis or a comma to be told
     */
    public static Understood read(String text, boolean decimalComma, @Nullable Basis untold, Vocabulary words) {
        var plain = text.startsWith("\ufeff") ? text.substring(1) : text;
        plain = plain.replaceFirst("^sep=.\\R", "");
        if (plain.isBlank()) {
            throw new Refused(
                    "text", "", "there is nothing in it", "Paste the lines, headings and all, or choose a file.");
        }
        char separator = separator(plain);
        var records = records(plain, separator);
        for (int i = 0; i < Math.min(records.size(), LINES_BEFORE_HEADINGS); i++) {
            var columns = Columns.of(records.get(i), words);
            if (columns.isHeadings()) {
                return new ReportRows(columns, separator, decimalComma, untold, words)
                        .read(records.subList(0, i), records.subList(i + 1, records.size()));
            }
        }
        throw noHeadings(records.get(0));
    }

    private static Refused noHeadings(CSVRecord first) {
        var names = first.stream().filter(cell -> !cell.isBlank()).limit(4).toList();
        return new Refused(
                "text",
                String.join(", ", names),
                "no line names analytes in its columns (CP, ADF, TDN …) or has a column of names beside figures",
                "Put a line of headings above the figures.");
    }

    /** The one of the three that parts the line with the most columns. */
    private static char separator(String text) {
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
                    "no comma, semicolon or tab parts its columns",
                    "Save it with one of these between the columns.");
        }
        return best;
    }

    private static List<CSVRecord> records(String text, char separator) {
        var format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        var records = new ArrayList<CSVRecord>();
        try (var parser = format.parse(new StringReader(text))) {
            for (var record : parser) {
                if (record.size() > MOST_COLUMNS) {
                    throw new Refused(
                            "text",
                            record.size() + " columns",
                            "a report has at most " + MOST_COLUMNS,
                            "Is this the right file?");
                }
                if (record.stream().anyMatch(cell -> cell.length() > LONGEST_CELL)) {
                    throw new Refused(
                            "text",
                            "line " + record.getRecordNumber(),
                            "a cell of a report has at most %d letters".formatted(LONGEST_CELL),
                            "Is a quotation mark missing, or is it another file?");
                }
                if (record.stream().anyMatch(cell -> !cell.isBlank())) {
                    records.add(record);
                }
                if (records.size() > MOST_SAMPLES * 50) {
                    throw new Refused(
                            "text", records.size() + " lines", "this is more than reports have", "Split the file.");
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
                                            : records.get(records.size() - 1).getRecordNumber() + 1),
                    "Take the mark away or close it.");
        }
        return records;
    }

    /** The figure with a point before its decimals, as the form understands it. */
    public static String pointed(String cell, boolean decimalComma) {
        if (decimalComma) {
            if (POINT_GROUPED.matcher(cell).matches() || COMMA.matcher(cell).matches()) {
                return cell.replace(".", "").replace(',', '.');
            }
            if (cell.matches("(?:<\\s*)?[-−+]?[0-9]+\\.[0-9]+.*")) {
                throw new Refused(
                        "decimal",
                        cell,
                        "this has a point, and decimals were said to follow a comma",
                        "Say “a point”, or write every figure of the file alike.");
            }
            return cell;
        }
        if (COMMA.matcher(cell).matches() && !GROUPED.matcher(cell).matches()) {
            throw new Refused(
                    "decimal",
                    cell,
                    "this has a comma before its decimals, and a point was said",
                    "Say “a comma” if the whole file is written so.");
        }
        return cell;
    }
}
