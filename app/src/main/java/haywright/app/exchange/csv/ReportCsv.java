package haywright.app.exchange.csv;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Sample;
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

    private static final Pattern WIDE_GAP = Pattern.compile("\\S {3,}\\S");

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

    /** Whether it is written in columns parted by a sign, with names of analytes across the top or down the side. */
    public static boolean isOne(String text, Vocabulary words) {
        // in lines laid out with blanks a comma belongs to a name or a figure
        long lines = text.lines().filter(line -> !line.isBlank()).count();
        long laidOut = text.lines()
                .filter(line -> WIDE_GAP.matcher(line.strip()).find())
                .count();
        if (4 * laidOut > lines && text.indexOf(';') < 0) {
            return false;
        }
        try {
            var layout = read(text, Decimals.POINT, Basis.DRY_MATTER, words).layout();
            return !layout.equals("one line a figure, columns separated by tabs"); // a sheet that was pasted
        } catch (Refused e) {
            var problem = e.problems().get(0);
            return !problem.rule().startsWith("no line names")
                    && !problem.rule().startsWith("no comma");
        }
    }

    /**
     * @param decimals what stands before the decimals, where somebody said
     * @param untold the basis of columns whose heading names none; null where nobody has said
     * @param words the names this laboratory uses
     * @throws Refused with one sentence: nothing in it, no columns, no analyte known, a basis or a comma to be told
     */
    public static Understood read(String text, Decimals decimals, @Nullable Basis untold, Vocabulary words) {
        var plain = text.startsWith("\ufeff") ? text.substring(1) : text;
        plain = plain.replaceFirst("^sep=.\\R", "");
        if (plain.isBlank()) {
            throw new Refused(
                    "text", "", "there is nothing in it", "Paste the lines, headings and all, or choose a file.");
        }
        char separator = separator(plain);
        var records = records(plain, separator);
        var grid = new Grid(records, words);
        var figures = new ArrayList<String>();
        for (int row = 0; row < grid.height(); row++) {
            for (int column = 0; column < grid.width(row); column++) {
                if (grid.isFigure(row, column)) {
                    figures.add(grid.cell(row, column));
                }
            }
        }
        var taking = new Taking(grid, decimals.of(figures), untold);
        var names = NameColumns.of(grid).orElse(null);
        int head = wideHead(grid);
        boolean isDown = names != null
                && (names.isSaid(grid) || head < 0 || NameColumns.labelsMost(grid) >= Wide.analytes(grid, head));
        if (!isDown && head < 0) {
            throw noHeadings(records.get(0));
        }
        var down = isDown && names != null ? new Down(taking, names) : null;
        var samples = down != null ? down.samples() : new Wide(taking, head).samples(separator);
        var layout = down != null
                ? down.areSamplesAcross() ? "one column a sample" : "one line a figure"
                : "one line a sample";
        return whole(taking, samples, layout, separator);
    }

    /** The line with the most analytes in its columns; −1 where none has two. */
    private static int wideHead(Grid grid) {
        int best = -1;
        long most = 1;
        for (int row = 0; row < Math.min(grid.height(), LINES_BEFORE_HEADINGS); row++) {
            long analytes = Wide.analytes(grid, row);
            if (analytes > most) {
                most = analytes;
                best = row;
            }
        }
        return best;
    }

    private static Understood whole(Taking taking, List<Sample> found, String layout, char separator) {
        taking.checkBasis();
        var samples = found.stream().filter(sample -> !sample.cells().isEmpty()).toList();
        if (samples.isEmpty()) {
            throw new Refused(
                    "text",
                    "",
                    "there are headings, but no figure of a known analyte under them",
                    taking.notTaken.stream()
                            .findFirst()
                            .map(words -> words + ".")
                            .orElse("Is the file whole?"));
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
        return new Understood(
                layout + ", columns separated by " + parted,
                samples,
                List.copyOf(taking.names.values()),
                List.copyOf(taking.notTaken),
                taking.grid.rest());
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
                    "no comma, semicolon or tab separates its columns",
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
}
