package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A figure with a sign between its thousands is one figure, whatever else the sign parts on its sheet. */
class ThousandsTest {
    private static String figures(String sheet) {
        return NothingIsLostTest.read(sheet.replace("; ", "\n")).samples().stream()
                .flatMap(sample -> sample.cells().stream())
                .map(cell -> cell.analyte() + " " + cell.text())
                .collect(Collectors.joining(", "));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Sample: Oat hay, north yard; Basis: dry matter; Moisture, % as received: 12.1; Nitrate-N, ppm: 1,776 | MOISTURE 12.1, NO3N 1776",
                "Results on dry matter; Nitrate-N, ppm   1,776 | NO3N 1776",
                "Oat hay, north yard, dry basis; Nitrate (NO3), ppm  7,860; Moisture, %  12.1 | NO3 7860, MOISTURE 12.1",
                "All results on dry matter basis; Iron, ppm  1,140; ADF, %  38.0; Manganese, ppm  1,081 | FE 1140, ADF 38.0, MN 1081",
                "Dry matter, % as fed: 87.6; ADF, % dry: 38.0; Iron, ppm dry: 1,144; Nitrate-N, ppm dry: 1,776 | DM 87.6, ADF 38.0, FE 1144, NO3N 1776",
                "Sampled: Sept 12, 2026; Results on dry matter; Iron, ppm  1,140; ADF, % 38.0 | FE 1140, ADF 38.0",
                "Results on dry matter; Iron, ppb: 1,140,000; ADF, %: 38.1 | FE 1140000, ADF 38.1",
                "Results on dry matter; Nitrate-N, ppm: <1,000; ADF, %: 38.1 | NO3N <1000, ADF 38.1",
                "All results on dry matter basis; Iron, ppm: 1'140; ADF, %: 38.0 | FE 1140, ADF 38.0",
                "All results on dry matter basis; Iron, ppm: 1.776,0; ADF, %: 38,0 | FE 1776.0, ADF 38.0",
                "Test As fed Dry; Iron, ppm 1,003 1,140; ADF, % 33.2 38.0 | FE 1003, FE 1140, ADF 33.2, ADF 38.0",
                "Results on dry matter basis; Iron, ppm ........ 1,140; ADF, % ........... 38.0 | FE 1140, ADF 38.0",
                "Dry matter basis: Nitrate-N 1,776 ppm, CP 8.8 %, iron 1,140 ppm | NO3N 1776, CP 8.8, FE 1140"
            })
    void aFigureIsWhole(String sheet, String says) {
        assertThat(figures(sheet)).isEqualTo(says);
    }

    /** Cells that a comma parts stay cells where a unit stands between a name and its figure. */
    @Test
    void commasStillPartTheCellsOfAFile() {
        assertThat(figures("Crude protein, % DM,8.8\nIron, ppm DM,1140\nADF, % DM,38.0"))
                .isEqualTo("CP 8.8, FE 1140, ADF 38.0");
        assertThat(figures("Analyte,Dry\nCP %,88.1\nuNDF 240 %,179\nNDFD 48,551"))
                .isEqualTo("CP 88.1, UNDF 179, NDFD 551");
    }

    /** In a file of cells without headings, "1,776" is two cells: neither is taken, and the line is listed. */
    @Test
    void aFigureCutInTwoIsListed() {
        for (var sheet : List.of("Nitrate-N (ppm),1,776\nCP (%),12.1", "Nitrate-N, ppm, 1,776\nMoisture, %, 12.1")) {
            var found = NothingIsLostTest.read("Dry basis\n" + sheet);
            assertThat(found.samples().stream().flatMap(sample -> sample.cells().stream()))
                    .noneMatch(cell -> Arrays.asList("1", "776").contains(cell.text()));
            assertThat(found.notTaken()).anyMatch(line -> line.startsWith("Line 2") && line.contains("776"));
        }
    }
}
