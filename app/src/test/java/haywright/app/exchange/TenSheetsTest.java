package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.pdf.PdfText;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Sheets with what stands on them, written down before the reader met them: no figure is taken wrong, and none is lost.
 * A share of fiber or protein is known by the share that is printed.
 */
class TenSheetsTest {
    /**
     * Of the figures, by the truth beside the sheets; the scan has five that its letters spoil, and a lost
     * point; protein, potassium and TDN of 06 stand there once more as a need, and are asked; aflatoxin B1 is asked by name.
     */
    private static final Map<String, Integer> FEWEST_TAKEN = Map.ofEntries(
            Map.entry("01_pinhollow.pdf", 42),
            Map.entry("02_coldsparrow.pdf", 84),
            Map.entry("02b_wrapped.pdf", 0),
            Map.entry("03_birkstein.csv", 80),
            Map.entry("04_scan.txt", 7),
            Map.entry("05_paste.txt", 39),
            Map.entry("06_tallow.pdf", 19),
            Map.entry("07_letter.txt", 9),
            Map.entry("08_email.html", 15),
            Map.entry("09_tag.txt", 12),
            Map.entry("10_quernstone.csv", 77),
            Map.entry("11_nitrate.pdf", 2));

    private static final Map<String, Analyte> NAMES =
            Map.of("solcp", Analyte.SP, "ndfd48", Analyte.NDFD, "undf240", Analyte.UNDF, "cp_af", Analyte.CP);

    /** Kept by no report here: after other hours, or of starch alone. */
    private static final List<String> NOT_KEPT = List.of("ndfd30", "starchd7");

    private record Sheet(String file, String text, JsonNode samples) {
        @Override
        public String toString() {
            return file;
        }
    }

    private static byte[] bytes(String file) throws IOException {
        try (var in = TenSheetsTest.class.getResourceAsStream("ten/" + file)) {
            return in.readAllBytes();
        }
    }

    static List<Sheet> sheets() throws IOException {
        var all = new ArrayList<Sheet>();
        for (var sheet : new JsonMapper().readTree(bytes("truth.json"))) {
            var file = sheet.get("file").asText();
            var bytes = bytes(file);
            all.add(new Sheet(
                    file, PdfText.isPdf(bytes) ? PdfText.of(bytes) : ReportCsv.decode(bytes), sheet.get("samples")));
        }
        return all;
    }

    /** How the truth and a sample go together: by the names of it, else by the most figures alike. */
    private static Optional<Understood.Sample> read(JsonNode truth, List<Understood.Sample> samples) {
        return samples.stream()
                .filter(sample -> alike(truth, sample) > 0)
                .max(Comparator.comparingLong(sample -> alike(truth, sample)));
    }

    private static long alike(JsonNode truth, Understood.Sample sample) {
        return truth.get("figures").properties().stream()
                .filter(figure -> cell(figure, sample)
                        .filter(cell -> isSame(figure.getValue(), cell))
                        .isPresent())
                .count();
    }

    private static Analyte analyte(String name) {
        return NAMES.getOrDefault(name, Analyte.find(name).orElse(Analyte.DM));
    }

    private static Optional<Understood.Cell> cell(Map.Entry<String, JsonNode> figure, Understood.Sample sample) {
        var basis = figure.getValue().get(2).asText();
        return sample.cells().stream()
                .filter(cell -> cell.analyte() == analyte(figure.getKey()))
                .filter(cell -> cell.basis() == null || (cell.basis() == Basis.AS_RECEIVED) == (basis.equals("af")))
                .findFirst();
    }

    /** 9.50 and .95e1 are one; "9.2 % of protein" stands before what it was carried to. */
    private static boolean isSame(JsonNode figure, Understood.Cell cell) {
        var printed = plain(figure.get(0).asText());
        var taken = plain(cell.text());
        return printed.equals(taken)
                || number(printed).equals(number(taken)) && number(printed).isPresent()
                || cell.read().contains(": " + printed + " % ");
    }

    private static String plain(String figure) {
        return figure.replaceAll("[\\s,]", "").replaceFirst("^\\.", "0.");
    }

    private static Optional<Double> number(String figure) {
        return figure.matches("[0-9.]+") ? Optional.of(Double.parseDouble(figure)) : Optional.empty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sheets")
    void noFigureIsWrongAndNoneIsLost(Sheet sheet) {
        Understood found;
        try {
            found = NothingIsLostTest.read(sheet.text);
        } catch (Refused whole) {
            assertThat(FEWEST_TAKEN.get(sheet.file))
                    .as("turned away: " + whole.problems())
                    .isZero();
            return;
        }
        var said =
                Stream.of(found.notTaken(), found.rest()).flatMap(List::stream).toList();
        int taken = 0;
        for (var truth : sheet.samples) {
            var sample = read(truth, found.samples());
            for (var one : truth.get("figures").properties()) {
                var printed = one.getValue().get(0).asText();
                var cell = NOT_KEPT.contains(one.getKey())
                        ? Optional.<Understood.Cell>empty()
                        : sample.flatMap(read -> cell(one, read));
                // a scanner has lost the point of 37.5, which the form asks about
                boolean isSpoiled =
                        sheet.file.equals("04_scan.txt") && one.getKey().equals("adf");
                cell.filter(is -> !isSpoiled)
                        .ifPresent(is -> assertThat(isSame(one.getValue(), is))
                                .as("%s %s: %s for %s", truth.get("lot"), one.getKey(), is, printed)
                                .isTrue());
                taken += cell.isPresent() ? 1 : 0;
                var digits = Arrays.stream(printed.split("[^0-9]+"))
                        .filter(part -> !part.isEmpty())
                        .toList();
                boolean isListed =
                        said.stream().anyMatch(line -> digits.stream().allMatch(line.replace(",", "")::contains));
                assertThat(cell.isPresent() || isListed || sheet.file.equals("04_scan.txt"))
                        .as("%s %s %s", truth.get("lot"), one.getKey(), printed)
                        .isTrue();
            }
        }
        assertThat(taken).as("taken").isGreaterThanOrEqualTo(FEWEST_TAKEN.get(sheet.file));
    }

    /** What stands over last year's figures, and what is usual, makes no sample of its own. */
    @Test
    void noSampleIsMadeUp() throws IOException {
        for (var sheet : sheets()) {
            if (FEWEST_TAKEN.get(sheet.file) > 0
                    && !sheet.file.startsWith("02")) { // with the laboratory's repeat there
                assertThat(NothingIsLostTest.read(sheet.text).samples())
                        .as(sheet.file)
                        .hasSizeLessThanOrEqualTo(sheet.samples.size());
            }
        }
    }
}
