package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Delimited;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.pdf.PdfText;
import haywright.app.exchange.text.ReportText;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The law of every sheet: each figure on it is taken, or is part of a name or of what is said of the sample, or is
 * listed. Figures are counted in the sheet's own text, not by the reader's own account.
 */
class NothingIsLostTest {
    private static final Pattern FIGURE = Pattern.compile("[0-9][0-9.,]*[0-9]|[0-9]");

    static Stream<Path> sheets() throws IOException, URISyntaxException {
        var all = new ArrayList<Path>();
        for (var folder : List.of("reports", "unseen")) {
            var at = Path.of(Objects.requireNonNull(NothingIsLostTest.class.getResource(folder))
                    .toURI());
            try (var files = Files.list(at)) {
                files.filter(file -> file.toString().matches(".*(?:layout.*|unseen/.*)\\.(?:txt|csv|tsv|pdf)"))
                        .forEach(all::add);
            }
        }
        return all.stream().sorted();
    }

    private static String text(Path sheet) throws IOException {
        var bytes = Files.readAllBytes(sheet);
        return PdfText.isPdf(bytes) ? PdfText.of(bytes) : Delimited.plain(ReportCsv.decode(bytes));
    }

    /** As somebody reads it who answers what is asked. */
    static Understood read(String text) {
        return read(text, Vocabulary.HOUSE);
    }

    static Understood read(String text, Vocabulary words) {
        return read(text, words, Basis.DRY_MATTER);
    }

    static Understood read(String text, Basis said) {
        return read(text, Vocabulary.HOUSE, said);
    }

    private static Understood read(String text, Vocabulary words, Basis said) {
        var decimals = Decimals.BY_SHEET;
        @Nullable Basis basis = null;
        for (int asked = 0; ; asked++) {
            try {
                return ReportCsv.isOne(text, words)
                        ? ReportCsv.read(text, decimals, basis, words)
                        : ReportText.read(text, decimals, basis, words);
            } catch (Refused e) {
                var field = e.problems().get(0).field();
                if (asked > 1 || field.equals("text")) {
                    throw e;
                }
                decimals = field.equals("decimal") ? Decimals.POINT : decimals;
                basis = field.equals("basis") ? said : basis;
            }
        }
    }

    private static List<String> figures(String text) {
        return FIGURE.matcher(text)
                .results()
                .map(found -> found.group())
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /** Digits alone, so that 1,234 and 1234 are one. */
    private static String digits(String figure) {
        return figure.replaceAll("[^0-9]", "");
    }

    /** Figures of the sheet, line by line, that nothing speaks of. */
    private static List<String> lost(String text, Understood found) {
        var lost = new ArrayList<String>();
        var said = new ArrayList<>(found.notTaken());
        said.addAll(found.rest());
        var listed = said.stream()
                .flatMap(line -> figures(line).stream())
                .map(NothingIsLostTest::digits)
                .collect(Collectors.toSet());
        var cells = found.samples().stream()
                .flatMap(sample -> sample.cells().stream())
                .collect(Collectors.toCollection(ArrayList::new));
        var about = found.samples().stream()
                .flatMap(s -> Stream.concat(
                        Stream.of(s.code(), s.lot(), s.laboratory(), s.sampled(), s.reported()), s.also().stream()))
                .collect(Collectors.joining("\n"));
        for (var line : lines(text)) {
            if (line.matches("--- page [0-9]+ ---")) {
                continue;
            }
            for (var figure : figures(line)) {
                var own = cells.stream().filter(c -> isFrom(c, line)).toList();
                var cell = (own.isEmpty() ? cells : own)
                        .stream().filter(c -> isOf(c, figure)).findFirst();
                boolean isName = Stream.concat(
                                found.names().stream().map(Understood.Named::written),
                                cells.stream().map(Understood.Cell::read))
                        .anyMatch(name -> name.contains(figure)
                                // a name over several lines has this one in it
                                && (squeezed(line).contains(squeezed(name))
                                        || squeezed(name).contains(squeezed(line))));
                boolean isSaid = isName
                        || about.contains(figure)
                        || listed.contains(digits(figure))
                        || isOfHeading(line, figure)
                        || isWhole(line, figure);
                if (cell.isPresent() && !(isSaid && own.isEmpty())) {
                    cells.remove(cell.get());
                } else if (!isSaid) {
                    lost.add(figure + " in: " + line.strip());
                }
            }
        }
        return lost;
    }

    /** The commas between the cells of a file are not those in figures; one inside quotation marks may be. */
    private static List<String> lines(String text) {
        if (!ReportCsv.isOne(text, Vocabulary.HOUSE) || text.indexOf(';') >= 0) {
            return text.lines().toList();
        }
        var parted = new StringBuilder();
        boolean isQuoted = false;
        for (char c : text.toCharArray()) {
            isQuoted ^= c == '"';
            parted.append(c == ',' && !isQuoted ? " | " : String.valueOf(c));
        }
        return parted.toString().lines().toList();
    }

    private static boolean isFrom(Understood.Cell cell, String line) {
        return squeezed(line).contains(squeezed(cell.read().replaceFirst(": [0-9.]+ % [×÷].*", "")));
    }

    /** As it is written on the sheet, or behind it the share that it was carried from. */
    private static boolean isOf(Understood.Cell cell, String figure) {
        var ways = List.of(
                figure,
                figure.replace(',', '.'),
                figure.replace(",", ""),
                figure.replace(".", "").replace(',', '.'));
        return figures(cell.text()).stream().anyMatch(ways::contains)
                || ways.stream().anyMatch(way -> cell.read().contains(": " + way + " % "));
    }

    private static String squeezed(String text) {
        return text.replaceAll("[^\\p{L}\\p{N}%]+", "").toLowerCase(Locale.ROOT);
    }

    /** "90 % DM" and "100 % dry matter" over a column. */
    private static boolean isOfHeading(String line, String figure) {
        return Pattern.compile("\\b" + figure + " ?% ?(?:dm|dry)")
                .matcher(line.toLowerCase(Locale.ROOT))
                .find();
    }

    /** Dry matter of dry matter says nothing. */
    private static boolean isWhole(String line, String figure) {
        return figure.matches("100(?:[.,]0+)?|0(?:[.,]0+)?")
                && line.toLowerCase(Locale.ROOT).matches(".*(?:dry matter|moisture|\\bdm\\b).*");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sheets")
    void everyFigureIsTakenOrSaidOrListed(Path sheet) throws IOException {
        var text = text(sheet);
        assertThat(lost(text, read(text))).isEmpty();
    }

    /** The law can be broken: without what is listed, or without a sample, figures are missing. */
    @Test
    void whatIsLeftOutIsFound() throws IOException, URISyntaxException {
        var sheet = sheets().filter(file -> file.endsWith("one-column.txt"))
                .findFirst()
                .orElseThrow();
        var text = text(sheet);
        var found = read(text);
        assertThat(lost(text, new Understood("", found.samples(), List.of(), List.of(), List.of(), List.of())))
                .anyMatch(line -> line.startsWith("48.2"))
                .anyMatch(line -> line.startsWith("08"));
        assertThat(lost(text, new Understood("", List.of(), found.names(), List.of(), found.notTaken(), found.rest())))
                .isNotEmpty();
    }
}
