package haywright.app.exchange.csv;

import haywright.app.exchange.lab.BasisSaid;
import haywright.app.exchange.lab.Counted;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Delimited;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Told;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Understood.Sample;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
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
    /** A laboratory's name and address may stand above the headings. */
    private static final int LINES_BEFORE_HEADINGS = 25;

    private static final Pattern WIDE_GAP = Pattern.compile("\\S {3,}\\S");

    private ReportCsv() {}

    /** The text of a file in UTF-8, UTF-16 with its mark, or else Latin-1 as Windows writes it. */
    public static String decode(byte[] file) {
        if (file.length > MOST_BYTES) {
            throw new Refused(
                    "file",
                    String.format(Locale.ROOT, "%.1f MB", Math.ceil(file.length / 1e5) / 10),
                    "a report is not larger than %d MB".formatted(MOST_BYTES / 1_000_000),
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
    public static boolean isOne(String raw, Vocabulary words) {
        var text = Delimited.plain(raw);
        // in lines laid out with blanks a comma belongs to a name or a figure
        long lines = text.lines().filter(line -> !line.isBlank()).count();
        long laidOut = text.lines()
                .filter(line -> WIDE_GAP.matcher(line.strip()).find())
                .count();
        if (4 * laidOut > lines && text.indexOf(';') < 0 && !Delimited.isPiped(text)) {
            return false;
        }
        try {
            if (Records.separator(text) == ',' && !Commas.partCells(text)) {
                return false; // a comma in a name or between thousands, and the figure behind the name
            }
            var layout = read(text, Decimals.POINT, Basis.DRY_MATTER, words).layout();
            return !layout.matches(
                    "one line a figure, columns separated by (?:tabs|strokes)"); // a sheet that was pasted
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
        var plain = Delimited.plain(text.startsWith("\ufeff") ? text.substring(1) : text);
        plain = plain.replaceFirst("^sep=.\\R", "");
        if (plain.isBlank()) {
            throw new Refused(
                    "text", "", "there is nothing in it", "Paste the lines, headings and all, or choose a file.");
        }
        char separator = Records.separator(plain);
        var records = Records.of(plain, separator);
        var grid = new Grid(records, words);
        var figures = new ArrayList<String>();
        for (int row = 0; row < grid.height(); row++) {
            for (int column = 0; column < grid.width(row); column++) {
                if (grid.isFigure(row, column)) {
                    figures.add(grid.cell(row, column));
                }
            }
        }
        var said = saidBasis(grid);
        var all = new Taking(grid, decimals.of(figures), untold == null ? said : untold, said != null);
        var tables = new ArrayList<Table>();
        for (var lines : tables(records, grid)) {
            var labeled = labeled(lines, words);
            var part = labeled == records ? grid : new Grid(labeled, words);
            var before = tables.isEmpty() ? new About() : tables.get(tables.size() - 1).above;
            table(part == grid ? all : new Taking(part, all), before, separator).ifPresent(tables::add);
        }
        if (tables.isEmpty()) {
            throw noHeadings(records.get(0));
        }
        return whole(all, tables, separator);
    }

    /** With what stands over the headings of a table written before each of them. */
    private static List<Grid.Line> labeled(List<Grid.Line> lines, Vocabulary words) {
        var grid = new Grid(lines, words);
        return names(grid)
                .flatMap(names -> LabelsOver.within(lines, grid, names))
                .orElse(lines);
    }

    /** @param above what stands over it, of its samples */
    private record Table(String layout, List<Sample> samples, About above, Grid grid) {}

    /** One table with what stands over it; empty where it has neither names across the top nor down the side. */
    private static Optional<Table> table(Taking taking, About before, char separator) {
        var grid = taking.grid;
        var names = names(grid);
        int head = wideHead(grid);
        if (names.isPresent()) {
            var down = new Down(taking, names.get(), before);
            var layout = down.areSamplesAcross()
                    ? "one column a sample"
                    : down.areSamplesInLines() ? "one line a figure and its sample" : "one line a figure";
            return Optional.of(new Table(layout, down.samples(), down.above(), grid));
        }
        if (head < 0) {
            return Optional.empty();
        }
        var wide = new Wide(taking, head, before);
        return Optional.of(new Table("one line a sample", wide.samples(separator), wide.above(), grid));
    }

    /** Where names stand down the side; empty where they stand across the top, or nowhere. */
    private static Optional<NameColumns> names(Grid grid) {
        int head = wideHead(grid);
        return NameColumns.of(grid)
                .filter(names -> head < 0
                        || NameColumns.labelsMost(grid) > 0 && names.isSaid(grid)
                        || NameColumns.labelsMost(grid) >= Wide.analytes(grid, head));
    }

    /** The lines of each table; a new one begins where headings stand again, with what stands over them. */
    private static List<List<Grid.Line>> tables(List<Grid.Line> lines, Grid grid) {
        var names = names(grid).orElse(null);
        int head = wideHead(grid);
        var tables = new ArrayList<List<Grid.Line>>();
        int from = 0;
        for (int row = 1; row < lines.size(); row++) {
            boolean isAgain = names != null
                    ? names.isHeadAgain(grid, row)
                    : head >= 0 && row > head && grid.labels(row) > 1 && grid.hasNoFigures(row);
            int last = row;
            boolean isUnderAll = grid.isOfBases(row)
                    && IntStream.range(last + 1, lines.size()).allMatch(grid::hasNoFigures);
            if (!isAgain || isUnderAll) {
                continue;
            }
            int begin = row;
            while (begin > from + 1 && (grid.hasNoFigures(begin - 1) || grid.isTold(begin - 1))) {
                begin--;
            }
            tables.add(lines.subList(from, begin));
            from = begin;
        }
        tables.add(from == 0 ? lines : lines.subList(from, lines.size()));
        return tables;
    }

    /** What the lines beside the tables say of all figures; null where they say nothing, or two things. */
    private static @Nullable Basis saidBasis(Grid grid) {
        var said = new HashSet<Basis>();
        for (int row = 0; row < grid.height(); row++) {
            if (grid.hasNoFigures(row)) {
                for (var one : BasisSaid.in(grid.shown(row))) {
                    said.add(one.basis());
                }
            }
        }
        return said.size() == 1 && !grid.except().isAllOpen() ? said.iterator().next() : null;
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
        return best < 0 ? headOfOne(grid) : best;
    }

    /** The usual nitrate list: samples under a heading that says so, and one analyte beside them; −1 where there is none. */
    private static int headOfOne(Grid grid) {
        return IntStream.range(0, Math.min(grid.height() - 1, LINES_BEFORE_HEADINGS))
                .filter(row -> Wide.analytes(grid, row) == 1 && isOverSamples(grid, row))
                .findFirst()
                .orElse(-1);
    }

    private static boolean isOverSamples(Grid grid, int row) {
        int analyte = IntStream.range(0, grid.width(row))
                .filter(column -> grid.isLabel(row, column)
                        && Heading.basis(grid.cell(row, column)).isEmpty())
                .findFirst()
                .orElse(-1);
        boolean isSaid = IntStream.range(0, grid.width(row))
                .filter(column -> column != analyte)
                .anyMatch(column -> grid.isNames(row, column)
                        || grid.cell(row, column).isBlank() && column < analyte
                        || grid.told(row, column)
                                .filter(told -> told == Told.BAG || told == Told.NUMBER || told == Told.LOT)
                                .isPresent());
        return analyte >= 0
                && isSaid
                && grid.hasNoFigures(row)
                && (grid.isFigure(row + 1, analyte) || row + 2 < grid.height() && grid.isFigure(row + 2, analyte))
                && IntStream.range(row + 1, grid.height())
                        .noneMatch(below -> IntStream.range(0, analyte)
                                .anyMatch(column -> grid.isLabel(below, column)
                                        && Heading.basis(grid.cell(below, column))
                                                .isEmpty()));
    }

    private static Understood whole(Taking taking, List<Table> tables, char separator) {
        var layout = tables.get(0).layout;
        var found = together(tables);
        var samples = found.stream().filter(sample -> !sample.cells().isEmpty()).toList();
        boolean isAsked = taking.columns.values().stream().anyMatch(column -> column.said() == null);
        if (!isAsked || !samples.isEmpty()) {
            taking.checkBasis();
        }
        if (samples.isEmpty() && !isAsked) {
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
            case Records.PIPE -> "strokes";
            default -> "commas";
        };
        return Counted.of(
                new Understood(
                        layout + ", columns separated by " + parted,
                        samples,
                        List.copyOf(taking.names.values()),
                        List.copyOf(taking.columns.values()),
                        List.copyOf(taking.notTaken),
                        tables.stream()
                                .flatMap(table -> table.grid.rest().stream())
                                .toList()),
                taking.grid.words);
    }

    /** The samples of all tables; what two say of one sample and does not differ is of one. */
    private static List<Sample> together(List<Table> tables) {
        var all = new ArrayList<Sample>();
        for (var table : tables) {
            int before = all.size();
            for (var sample : table.samples) {
                var same = all.subList(0, before).stream()
                        .filter(other -> other.goesOn(sample))
                        .findFirst();
                same.ifPresentOrElse(
                        other -> all.set(all.indexOf(other), other.with(sample.cells())), () -> all.add(sample));
            }
        }
        return all;
    }

    private static Refused noHeadings(Grid.Line first) {
        var names =
                first.cells().stream().filter(cell -> !cell.isBlank()).limit(4).toList();
        return new Refused(
                "text",
                String.join(", ", names),
                "no line names analytes in its columns (CP, ADF, TDN …) or has a column of names beside figures",
                "Put a line of headings above the figures.");
    }
}
