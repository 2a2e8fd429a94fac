package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Days;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.pdf.PdfText;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import java.io.IOException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Sheets that were written before the reader met them, each with a trap. What they say was read off the sheets by
 * a person; a share of fiber or protein was carried with a pencil.
 */
class UnseenSheetsTest {
    private static String text(String file) throws IOException {
        try (var in = UnseenSheetsTest.class.getResourceAsStream("unseen/" + file)) {
            var bytes = in.readAllBytes();
            return PdfText.isPdf(bytes) ? PdfText.of(bytes) : ReportCsv.decode(bytes);
        }
    }

    private static Understood read(String file) throws IOException {
        return NothingIsLostTest.read(text(file));
    }

    /** "CP dm 9.8": as received is ar, at 90 % dry matter 90, and what has one figure whatever the basis has no word. */
    private static List<String> figures(Understood.Sample sample) {
        return sample.cells().stream()
                .map(cell -> {
                    var basis = cell.basis();
                    return cell.analyte()
                            + (basis == null
                                    ? ""
                                    : basis == Basis.DRY_MATTER ? " dm" : basis == Basis.AS_RECEIVED ? " ar" : " 90")
                            + " " + cell.text().replace("< ", "<");
                })
                .sorted()
                .toList();
    }

    private static List<String> said(String words) {
        return Arrays.stream(words.split("; ")).sorted().toList();
    }

    @ParameterizedTest(name = "{0}, sample {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "one-column.txt | 0 | MOISTURE 9.7; CP dm 8.8; ADF dm 38.4; NDF dm 60.9; NDFD 56.7; UNDF dm 20.4; IVTD dm 71.4; LIGNIN dm 6.1;"
                        + " TDN dm 55.9; NEM dm 0.55; NEG dm 0.29; NO3N dm <100; P dm <0.05; ZN dm 21",
                "two-halves.layout.txt | 0 | MOISTURE 11.40; DM 88.60; CP ar 14.97; CP dm 16.90; ADF ar 29.06; ADF dm 32.80; NDF ar 37.21; NDF dm 42.00;"
                        + " LIGNIN dm 6.89; ADICP dm 1.27; TDN ar 53.87; TDN dm 60.80; NEM ar 0.54; NEM dm 0.61; CA ar 1.10; CA dm 1.24; P ar 0.19; P dm 0.21;"
                        + " MG ar 0.24; MG dm 0.27; K ar 1.93; K dm 2.18; FE ar 1135; FE dm 1281; SE ar 115; SE dm 130; MO ar <0.9; MO dm <1.0;"
                        + " NO3 ar Negative; RFV 140",
                "units-row.csv | 0 | DM 88.4; CP dm 9.1; ADICP dm 0.564; NDF dm 58.7; LIGNIN dm 5.52; STARCH dm 3.1; SE dm 88; NO3N dm 1240",
                "units-row.csv | 1 | DM 90.1; CP dm 8.3; ADICP dm <0.415; NDF dm 61.2; LIGNIN dm 6.61; STARCH dm n.d.; SE dm <20; NO3N dm ND",
                "commas.txt | 0 | DM 89.6; CP 90 8.8; CP dm 9.8; ADF 90 33.6; ADF dm 37.3; NDF 90 53.0; NDF dm 58.9; CA 90 0.35; CA dm 0.39;"
                        + " P 90 <0.18; P dm <0.20; FE 90 1111; FE dm 1234; MN 90 61; MN dm 68; TDN 90 50.9; TDN dm 56.5",
                "pasted-words.txt | 0 | CP dm 9.8; TDN dm 61; MOISTURE 11.2; NO3 dm 0.34; ADF dm 35.1; NDF dm 57.8; K dm 2.1; CA dm 0.31",
                "group-heads.tsv | 0 | MOISTURE 10.8; CP ar 17.4; CP dm 19.5; ADF dm 30.9; NEM dm 62; NEG dm 35",
                "group-heads.tsv | 1 | MOISTURE 9.5; CP ar 7.7; CP dm 8.5; ADF dm 39.8; NEM dm 53; NEG dm 27",
                "qualifier.csv | 0 | DM 14.6; NO3N dm 0.31; S dm <0.05; CU dm 4.2; MO dm <1.0",
                "scan.txt | 0 | CP ar 8.6; CP dm 9.7; ADF ar 33.7; NDF ar 53.2; NDF dm 60.0; CA ar 0.37; CA dm 0.42; K ar 1.38; K dm 1.56",
                "ranges.txt | 0 | MOISTURE 12.1; CP ar 17.8; CP dm 20.2; SP 41.0; ADICP dm 1.21; NDF ar 34.5; NDF dm 39.2; LIGNIN dm 7.1; NDFD 44.3;"
                        + " ASH ar 9.9; ASH dm 11.3; RFV 158; NEG ar 0.28; NEG dm 0.32; CL ar <0.09; CL dm <0.10",
                "two-pairs.pdf | 0 | MOISTURE 8.90; CP ar 8.56; CP dm 9.40; ADICP dm 0.902; ADF ar 34.53; ADF dm 37.90; TDN ar 52.38; TDN dm 57.50;"
                        + " NEM ar 0.51; NEM dm 0.56; CA ar 0.42; CA dm 0.46; P ar 0.13; P dm 0.14; SE ar <45; SE dm <50; FE ar 1020; FE dm 1120;"
                        + " NO3N ar 264; NO3N dm 290",
                "sideways.pdf | 1 | DM 90.4; CP dm 11.7; ADF dm 35.0; NDF dm 54.3; CA dm 0.71; P dm <0.10; NO3N dm <50; TDN dm 59.4",
                "sideways.pdf | 2 | DM 87.6; CP dm 10.3; ADF dm 36.9; NDF dm 57.7; CA dm 0.55; P dm 0.19; NO3N dm 1310; TDN dm 57.9",
                "wrapped-names.pdf | 0 | DM 89.6; MOISTURE 10.4; CP ar 8.4; CP dm 9.4; ADICP dm 0.761; ADF ar 34.7; ADF dm 38.7; NDF ar 55.4; NDF dm 61.8;"
                        + " LIGNIN dm 5.5; ASH ar 7.3; ASH dm 8.2; CA ar 0.41; CA dm 0.46; P ar 0.15; P dm 0.17; K ar 1.45; K dm 1.62;"
                        + " MG ar 0.16; MG dm 0.18; S ar 0.13; S dm 0.14; CU ar 4; CU dm 5; ZN ar 19; ZN dm 21; MN ar 57; MN dm 64; FE ar 168; FE dm 188;"
                        + " MO ar 1.7; MO dm 1.9; SE ar 0.07; SE dm 0.08; NO3N ar 278; NO3N dm 310; TDN ar 50.1; TDN dm 55.9; NEM ar 0.48; NEM dm 0.54;"
                        + " NEG ar 0.25; NEG dm 0.28; RFV 88",
                "basis-column.csv | 0 | DM 90.2; CP dm 8.1; ADF dm 39.9; NDF dm 62.9; CA dm 0.44; P dm 0.11; K ar 1.35; CU dm 6.1; NO3N dm 120;"
                        + " TDN dm 54.8; NEM dm 52.1",
                "basis-column.csv | 2 | DM 86.1; CP dm 19.8; ADF dm 31.2; NDF dm 40.6; CA dm 1.42; P dm 0.26; K ar 2.07; CU dm 9.8; NO3N dm <50;"
                        + " TDN dm 61.5; NEM dm 62.4",
                "basis-column.csv | 4 | DM 88.3; CP dm 10.4; ADF dm 37.7; NDF dm 60.2; CA dm 0.30; P dm 0.22; K ar 1.85; CU dm 5.0; NO3N dm 2310;"
                        + " TDN dm 56.6; NEM dm 54.9",
                "method-row.csv | 0 | MOISTURE 9.9; CP dm 8.8; ADICP dm 0.836; ADF dm 40.1; NDF dm 63.3; LIGNIN dm 5.95; STARCH dm 1.2; ASH dm 7.9;"
                        + " CA dm 0.41; P dm 0.16; CU dm 6; MN dm 71; KNO3 dm 0.12; TDN dm 54.3",
                "method-row.csv | 2 | MOISTURE 10.7; CP dm 13.2; ADICP dm 1.02; ADF dm 36.9; NDF dm 54.2; LIGNIN dm 6.4; STARCH dm 1.6; ASH dm 9.0;"
                        + " CA dm 0.88; P dm 0.20; CU dm 7; MN dm 38; KNO3 dm <0.05; TDN dm 57.9",
                "scan-letters.txt | 0 | MOISTURE 11.8; DM 88.2; CP ar 7.2; CP dm 8.2; ADF ar 35.9; ADF dm 40.7; MG ar 0.16; NDF ar 55.3; NDF dm 62.7; NO3 ar 1410;"
                        + " TDN ar 48.5; TDN dm 55.0; NEM ar .48; NEM dm .54; NEG ar .23; NEG dm .26; RFV 85",
                "samples-beside.pdf | 0 | DM 41.8; MOISTURE 58.2; CP ar 5.1; CP dm 12.1; SP 48; ADF ar 15.3; ADF dm 36.6; NDF ar 22.7; NDF dm 54.4;"
                        + " ASH ar 4.2; ASH dm 10.1; PH 4.6; LACTIC ar 2.3; LACTIC dm 5.4; CA ar 0.26; CA dm 0.62; P ar 0.10; P dm 0.24; K ar 0.94; K dm 2.26;"
                        + " MG ar 0.09; MG dm 0.21; NO3 ar 1180; NO3 dm 2820; TDN ar 24.6; TDN dm 58.9; NEM ar 0.25; NEM dm 0.59",
                "samples-beside.pdf | 1 | DM 93.1; MOISTURE 6.9; CP ar 3.6; CP dm 3.9; SP 31; ADF ar 46.4; ADF dm 49.8; NDF ar 70.9; NDF dm 76.2;"
                        + " ASH ar 7.0; ASH dm 7.5; CA ar 0.25; CA dm 0.27; P ar <0.04; P dm <0.05; K ar 1.20; K dm 1.29; MG ar 0.10; MG dm 0.11;"
                        + " TDN ar 38.5; TDN dm 41.4; NEM ar 0.30; NEM dm 0.32",
                "corrected.txt | 0 | CP dm 10.2; ADF dm 36.1; NDF dm 59.5; TDN dm 57.2; CA dm 0.29; P dm 0.20; NO3N dm 1460; DM 88.9",
                "export.csv | 0 | DM 91.4; CP ar 6.2; CP dm 6.8; ADF ar 38.8; ADF dm 42.4; NDF ar 59.9; NDF dm 65.5; CA ar 0.35; CA dm 0.38; P ar 0.10;"
                        + " P dm 0.11; NO3N dm 95; TDN dm 52.6; NEM dm 0.51",
                "long-commas.csv | 0 | DM 893; CP dm 81; ADF dm 391; NDF dm 628; CA dm 3.9; P dm 1.7; K dm 15.2; SE dm 62; CU dm 5.2; NO3 dm 0.9; NEM dm 4.95",
                "long-commas.csv | 1 | DM 861; CP dm 104; ADF dm 362; NDF dm 589; CA dm 3.1; P dm <0.5; K dm 21.6; SE dm 118; CU dm 6.0; NO3 dm 9.4; NEM dm 5.19",
                "letter.txt | 0 | CP dm 9.7; ADF dm 38.4; NDF dm 61.0; TDN dm 56; NO3 dm 6200; CA dm .34; P dm .21; DM 87.6",
                "footnotes.txt | 0 | DM 87.9; CP ar 8.0; ADF ar 34.1; NDF ar 54.0; UNDF ar 13; IVTD dm 63; ASH ar 7.4; CA dm 0.42; P dm 0.18; MG dm 0.15;"
                        + " SE dm 0.31; ZN dm 18; NO3N dm <25; TDN dm 57.1; NEM dm 0.56; NEG dm 0.30; RFV 87",
                "mark-of-form.txt | 0 | MOISTURE 11.2; CP ar 17.9; CP dm 20.2; NDF ar 36.0; NDF dm 40.5; LIGNIN dm 6.97; CA ar 1.21; CA dm 1.36; NO3N dm 0.12;"
                        + " TDN ar 54.2; TDN dm 61.0",
                "unless-noted.txt | 0 | CP dm 9.1; ADF dm 41.0; NDF dm 65.2; NO3N dm 2150; MOISTURE 13.0; HCN dm <50; CA dm 4.1",
                "method-column.csv | 1 | DM 90.0; CP dm 8.4; ADF dm 40.0; NDF dm 62.0; NO3N dm ND; TDN dm 54.0",
                "last-year-column.csv | 0 | DM 88.8; CP dm 10.6; NDF dm 57.2; NO3N dm 880",
                "last-year-beside.txt | 0 | CP dm 11.2; ADF dm 34.0; K dm 1.9; NO3N dm 1320",
                "units-at-the-right.txt | 0 | DM 34.6; PH 3.8; CP dm 8.1; ADICP dm 0.559; NDF dm 41.3; CA dm 0.22",
                "old-letter.txt | 0 | CP dm 7.6; ADF dm 40.3; NDF dm 63.7; NO3N dm <100; CU dm 4; ZN dm 17",
                "typical-beside.pdf | 0 | DM 88.6; MOISTURE 11.4; CP ar 8.7; CP dm 9.8; SP 31; ADF ar 35.2; ADF dm 39.7; NDF ar 53.5; NDF dm 60.4;"
                        + " LIGNIN ar 5.0; LIGNIN dm 5.6; ASH ar 7.2; ASH dm 8.1; TDN ar 51.3; TDN dm 57.9; NEM ar 0.50; NEM dm 0.56; NEG ar 0.27;"
                        + " NEG dm 0.31; CA ar 0.41; CA dm 0.46; P ar 0.15; P dm 0.17; K ar 1.54; K dm 1.74; MG ar 0.14; MG dm 0.16; S ar 0.13;"
                        + " S dm 0.15; CU ar 4; CU dm 5; ZN ar 19; ZN dm 22; NO3N ar 186; NO3N dm 210",
                "codes-over-figures.pdf | 0 | MOISTURE 12.1; CP dm 18.4; ADF dm 33.9; NDF dm 43.0; CA dm 1.31; P dm 0.24; K dm 2.05; NO3 dm 0.11; TDN dm 60.2",
                "codes-over-figures.pdf | 3 | MOISTURE 15.8; CP dm 9.4; ADF dm 34.6; NDF dm 57.8; CA dm 0.29; P dm 0.21; K dm 1.92; NO3 dm 0.88; TDN dm 60.9",
                "bases-row.csv | 0 | DM 87.2; CP dm 88.5; ADF dm 372.0; NDF dm 601.0; LIGNIN dm 5.05; CA dm 4.10; P dm 1.90; K dm 17.3; MG dm 1.45; CU dm 4.8;"
                        + " MO dm 1.2; NEM dm 5.31; NO3 dm 640.0",
                "bases-row.csv | 1 | DM 84.9; CP dm 171.0; ADF dm 318.0; NDF dm 402.0; LIGNIN dm 7.2; CA dm 13.60; P dm 2.40; K dm 21.0; MG dm 2.60; CU dm 7.9;"
                        + " MO dm 2.4; NEM dm 5.78; NO3 dm 1240.0",
                "parted-figure.txt | 0 | DM 87.2; MG ar 0.13; MG dm .15; TDN ar 49.4; TDN dm 56.7; NEM ar .48; NEM dm .55",
                "camel-case.csv | 0 | DM 91.3; CP dm 4.2; ADF dm 49.6; NDF dm 76.1; P dm <0.05; CA dm 0.31; SE dm <0.05; CU dm 3.1; NO3N dm <100",
                "camel-case.csv | 1 | DM 89.0; CP dm 8.9; ADF dm 38.8; NDF dm 62.3; P dm 0.18; CA dm 0.44; S dm 0.21; CU dm 6.0; NO3N dm 640",
                "unknown-codes.csv | 0 | DM 91.3; CP dm 4.2; ADF dm 49.6; NDF dm 76.1; P dm <0.05; CA dm 0.31; SE dm <0.05; CU dm 3.1; NO3N dm <100",
                "unknown-codes.csv | 1 | DM 89.0; CP dm 8.9; ADF dm 38.8; NDF dm 62.3; P dm 0.18; CA dm 0.44; S dm 0.21; CU dm 6.0; NO3N dm 640",
                "short-heads.pdf | 0 | MOISTURE 13.4; DM 86.6; CP ar 15.2; CP dm 17.6; ADF ar 30.1; ADF dm 34.8; NDF ar 38.9; NDF dm 44.9; CA ar 1.12; CA dm 1.29;"
                        + " P ar 0.20; P dm 0.23; NO3N ar <43; NO3N dm <50; TDN ar 52.8; TDN dm 61.0; NEM ar 0.53; NEM dm 0.61",
                "short-heads.pdf | 1 | MOISTURE 9.1; DM 90.9; CP ar 6.9; CP dm 7.6; ADF ar 38.0; ADF dm 41.8; NDF ar 57.7; NDF dm 63.5; CA ar 0.35; CA dm 0.39;"
                        + " P ar 0.12; P dm 0.13; NO3N ar 309; NO3N dm 340; TDN ar 50.5; TDN dm 55.6; NEM ar 0.48; NEM dm 0.53",
                "parted-figures.txt | 0 | MOISTURE 11.2; ZN dm 21",
                "strokes-empty.txt | 0 | DM 86.4; CP dm 9.7; ADF dm 36.2; NDF ar 50.4; NDF dm 58.3; NO3N ar 1590; NO3N dm 1840; FE dm 1120",
                "strokes-box.txt | 0 | DM 90.3; CP dm 11.2; ADF dm 35.8; CA dm 0.52; SE dm <0.05; NO3N dm 1430",
                "strokes-two-samples.txt | 0 | DM 89.9; CP ar 8.1; CP dm 9.0; ADF ar 34.6; ADF dm 38.5",
                "strokes-two-samples.txt | 1 | DM 90.4; CP dm 11.1; ADF ar 32.1; ADF dm 35.5",
                "tabs-empty.txt | 0 | DM 88.8; CP dm 9.9; ADF dm 37.0; NO3N ar 1100; NO3N dm 1239",
                "basis-before.csv | 0 | DM 91.7; CP dm 8.8; ADF dm 39.9; CA dm 0.44; CU dm 4.6; NO3N dm 225",
                "page-breaks.csv | 0 | DM 90.2; CP ar 8.3; CP dm 9.2; CA ar 0.41; CA dm 0.45",
                "page-breaks.csv | 1 | DM 87.7; CP ar 10.5; CP dm 12.0; CA ar 0.87; CA dm 0.99",
                "samples-two-heads.csv | 1 | CP dm 12.2; ADF dm 34.1",
                "samples-two-heads.csv | 2 | CP dm 7.7; ADF dm 41.0",
                "interleaved.tsv | 0 | CP dm 9.9; ADF dm 38.8; DM 90.1",
                "interleaved.tsv | 1 | CP dm 14.2; ADF dm 33.3; DM 88.2",
                "dotted.txt | 0 | MOISTURE 11.0; CP ar 8.0; CP dm 9.0; ADF ar 34.0; ADF dm 38.2; NDF ar 53.1; NDF dm 59.7; TDN ar 50.3; TDN dm 56.5;"
                        + " NEM ar .48; NEM dm .54; RFV 92",
                "mail-figures.txt | 0 | CP dm 9.8; ADF dm 37.2; NDF dm 58.8; TDN dm 57.5; CA dm .41; P dm .19; K dm 1.62; MG dm .15; DM 88.9; NO3N dm 310",
                "plus-minus-glued.txt | 0 | CP dm 9.4; ADF dm 38.1; NDF dm 60.2; CU dm 5.2",
                "repeats.txt | 0 | DM 89.3; CP dm 10.4; ADF dm 38.2; CA dm 0.42",
                "run-dates.txt | 0 | DM 91.3; CP dm 9.3; ADF dm 38.4; CA dm 0.41",
                "names-with-bases.txt | 0 | DM 89.9; CP ar 8.1; CP dm 9.0; ADF ar 34.6; ADF dm 38.5",
                "names-with-bases.txt | 1 | DM 90.4; CP dm 11.1; ADF ar 32.1; ADF dm 35.5",
                "pasted-table.txt | 0 | MOISTURE 12.4; CP ar 17.1; CP dm 19.5; ADF dm 31.4; K ar 2.02; K dm 2.31; SE ar <0.04; SE dm <0.05",
                "target-strokes.txt | 0 | CP dm 7.4; ADF dm 41.2; CA dm 0.36",
                "heads-close.txt | 0 | MOISTURE 11.6; CP ar 16.7; CP dm 18.9; ADF ar 30.2; ADF dm 34.2; TDN ar 53.9; TDN dm 61.0; RFV 133",
                "method-numbers.txt | 0 | CP ar 8.4; CP dm 9.3; ADF ar 34.5; CA ar 0.40; CA dm 0.44; NO3N dm 1300",
                "marks-of-bases.csv | 0 | DM 86.4; CP dm 9.8; ADF ar 33.2; NDF dm 59.6; LIGNIN dm 4.83; NO3 ar 1240; K dm 1.9",
                "letters-of-bases.csv | 0 | DM 87.1; CP dm 10.3; ADF ar 32.0; CA dm 4.1; NO3 ar 910",
                "corner-basis.txt | 0 | MOISTURE 11.2; CP dm 10.9; ADF ar 34.1; FE ar 1020",
                "corner-basis.txt | 1 | MOISTURE 13.0; CP dm 8.7; ADF ar 36.6; FE ar 310",
                "oven-dry.csv | 0 | CP dm 12.8; NDF dm 55.0; DM 84.1",
                "two-stacks.txt | 0 | DM 90.2; CP dm 8.8; ADF dm 38.7; TDN dm 57; NO3N dm 310",
                "two-stacks.txt | 1 | DM 85.1; CP dm 12.6; ADF dm 32.9; TDN dm 62; NO3N dm 1450",
                "limits-beside.csv | 0 | CP dm 11.4; ADF dm 35.2; SE dm <0.03; NO3N dm ND (<25); MO dm 1.4",
                "limits-of-law.csv | 0 | CP dm 11.4; CU dm 31; NO3N dm ND",
                "names-over.txt | 0 | MOISTURE 11.1; CP ar 8.0; CP dm 9.0; ADF ar 34.7; ADF dm 39.0",
                "names-over.txt | 1 | MOISTURE 13.9; CP ar 9.5; CP dm 11.0; ADF ar 31.0; ADF dm 36.0",
                "marks-before-units.txt | 0 | DM 88.2; CP dm 98; ADF dm 381; NDF dm 602; P dm 1.9; CU dm 6.1; ZN dm 22",
                "marks-explained.txt | 0 | DM 88.2; CP dm 98; ADF dm 381; CA dm 4.1; P dm 1.9; NO3N dm 310",
                "marks-in-a-mail.txt | 0 | CP dm 98; ADF dm 381; TDN dm 58; CA dm 4.1",
                "marks-in-cells.csv | 0 | CP dm 98; ADF dm 381; CA dm 4.1; P dm 1.9; CU dm 6.1; MOISTURE 11.2",
                "basis-with-dry-matter.txt | 0 | DM 92.6; CP dm 9.8; ADF dm 38.1",
                "all-but-moisture.txt | 0 | MOISTURE 9.4; CP dm 9.8; ADF dm 38.1",
                "basis-then-dry-matter.txt | 0 | DM 92.6; CP dm 9.8; ADF dm 38.1",
                "basis-of-results.csv | 0 | CP ar 8.8; ADF ar 34.1; NDF ar 55.0",
                "reporting-basis.txt | 0 | DM 92.6; CP dm 9.8; ADF dm 38.1",
                "bag-you-marked.txt | 0 | CP dm 9.8; ADF dm 38.1",
                "sample-labeled.txt | 0 | CP dm 9.8; ADF dm 38.1; TDN dm 57",
                "leader-dots.txt | 0 | CP dm 9.8; ADF dm 38.1",
                "raised-figures.txt | 0 | CP dm 9.8; NO3N dm 310",
                "lowered-figures.txt | 0 | CP dm 9.8; NO3N dm 310; NO3 dm 1372; NH3N 4; CA dm 0.4",
                "formulas.csv | 0 | DM 90; CP dm 9.8; NO3N dm 310; K dm 1.9; KNO3 dm 0.22",
                "years-by-a-stroke.txt | 0 | CP dm 9.8; ADF dm 38.1",
                "years-over-columns.txt | 0 | CP dm 9.8; ADF dm 38.1",
                "years-sideways.csv | 0 | CP dm 9.8; ADF dm 38.1",
                "year-column.csv | 0 | DM 89; CP dm 9.8; ADF dm 38.1",
                "last-year-dm.txt | 0 | CP dm 9.8; ADF dm 38.1",
                "years-under-bases.txt | 0 | CP ar 8.7; CP dm 9.8; ADF ar 34.0; ADF dm 38.1",
                "letters-at-the-end.txt | 0 | CP dm 9.8; ADF ar 34.1; NO3N dm 310; MOISTURE 10.4",
                "letters-in-a-column.txt | 0 | CP dm 9.8; ADF ar 34.1; TDN dm 1140; CA dm 8.4; MOISTURE 10.4",
                "letters-in-brackets.txt | 0 | CP dm 9.8; ADF ar 34.1; CA dm 8.4",
                "uneven-lines.csv | 0 | DM 90; CP dm 9.8; ADF dm 38.1; ZN dm 22",
                "uneven-down.csv | 0 | CP dm 9.8",
                "uneven-tabs.tsv | 0 | DM 90; CP dm 9.8; ADF dm 38.1; ZN dm 22",
                "two-samples-described.txt | 0 | MOISTURE 12.30; DM 87.70; CP ar 8.42; CP dm 9.60; ADF ar 33.94; ADF dm 38.70; NDF ar 54.02; NDF dm 61.60;"
                        + " NEM ar 48.24; NEM dm 55.00; NEG ar 25.43; NEG dm 29.00; CA ar 0.39; CA dm 0.44; P ar 0.14; P dm 0.16; FE ar 1087; FE dm 1240;"
                        + " NO3N ar ND; NO3N dm ND; RFV 88",
                "two-samples-described.txt | 1 | MOISTURE 16.40; DM 83.60; CP ar 10.03; CP dm 12.00; ADF ar 29.26; ADF dm 35.00; NDF ar 47.65; NDF dm 57.00;"
                        + " NEM ar 50.16; NEM dm 60.00; NEG ar 28.42; NEG dm 34.00; CA ar 0.25; CA dm 0.30; P ar 0.20; P dm 0.24; FE ar 142; FE dm 170;"
                        + " NO3N ar 1003; NO3N dm 1200; RFV 100",
                // 8.9 % of 58.4 % fiber, by pencil: 5.20
                "commas-and-methods.csv | 0 | MOISTURE 11.8; CP dm 10.9; CP ar 9.6; SP 34; NDF dm 58.4; NDF ar 51.5; ADF dm 36.7; ADF ar 32.4; LIGNIN dm 5.2;"
                        + " NDFD 57; CA dm 4.6; CA ar 4.1; P dm 2.1; P ar 1.9; MN dm 1104; MN ar 974; NEM dm 5.61; NEM ar 4.95; NEG dm 3.14; NEG ar 2.77",
                "two-stacks-in-sentences.txt | 0 | MOISTURE 13.1; CP dm 12.4; ADF dm 35.2; NDF dm 53.3; TDN dm 59.9; NEM dm .61; NEG dm .35; CA dm 0.78;"
                        + " P dm 0.19; K dm 2.04; MG dm 0.20; NO3N dm 180",
                "two-stacks-in-sentences.txt | 1 | MOISTURE 17.9; CP dm 13.8; ADF dm 31.0; NDF dm 54.8; TDN dm 63.1; NEM dm .65; NEG dm .39; CA dm 0.41;"
                        + " P dm 0.26; K dm 2.77; MG dm 0.17",
                "duplicates-and-averages.csv | 2 | MOISTURE 14.6; DM 85.4; CP dm 10.8; ADF dm 36.1; NDF dm 58.0; LIGNIN dm 4.4; ASH dm 9.2; CA dm 0.31; P dm 0.22;"
                        + " K dm 2.10; MG dm 0.16; S dm 0.18; CU dm 6; ZN dm 24; MN dm 48; FE dm 210; TDN dm 58.9; NEM dm 0.58; NEG dm 0.32; NO3N dm 1880",
                "nir-beside-wet.txt | 0 | DM 89.4; ADF dm 31.1; NDF dm 39.7; CU dm 9; RFV 152",
                "units-at-the-foot.txt | 0 | MOISTURE 12.7; CP ar 9.2; CP dm 10.5; ADF ar 34.0; ADF dm 38.9; NDF ar 53.1; NDF dm 60.8; TDN ar 49.9; TDN dm 57.2;"
                        + " NEM ar .49; NEM dm .56; NEG ar .26; NEG dm .30; CA ar .26; CA dm .30; P ar .19; P dm .22; NO3 ar 0.51; NO3 dm 0.58; HCN dm <10",
                "mean-beside.tsv | 2 | DM 86.9; CP dm 11.4; ADF dm 36.0; NDF dm 60.1; TDN dm 59.1; CA dm 0.36; P dm 0.21; SE dm 66; NO3 dm 0.87",
                "previous-beside.txt | 0 | MOISTURE 9.8; CP ar 8.0; CP dm 8.9; ADF ar 35.3; ADF dm 39.1; NDF ar 56.1; NDF dm 62.2; NO3N ar <45; NO3N dm <50;"
                        + " CA ar 0.37; CA dm 0.41; RFQ 91",
                "rerun-long.csv | 0 | DM 88.6; ADF dm 37.8; SE dm <0.05; NO3N dm 1150; TDN dm 1150",
                "rerun-long.csv | 1 | DM 83.0; CP ar 7.0; NO3N dm <45",
                "fresh-and-dry-sections.txt | 0 | DM 352; CP ar 29.6; STARCH ar 98; ASH ar 17; CP dm 84; NDF dm 438; ADF dm 262; STARCH dm 278; CA dm 2.3;"
                        + " P dm 2.2; PH 3.9; LACTIC dm 5.1; NH3N 7.7; ME dm 10.4",
                // 6.8 % of 16.0 % protein, by pencil: 1.088
                "boxes-with-headings.txt | 0 | RFV 122; CP ar 14.1; CP dm 16.0; ADICP dm 1.09; ADF ar 30.6; ADF dm 34.8; NDF ar 41.4; NDF dm 47.1; NDFD 55.2; TDN ar 52.9;"
                        + " TDN dm 60.1; NEM ar 54.2; NEM dm 61.6; NEG ar 31.1; NEG dm 35.4; NEL ar 54.0; NEL dm 61.4; CA ar 1.00; CA dm 1.14; P ar 0.21; P dm 0.24;"
                        + " K ar 2.02; K dm 2.30; CU ar 7; CU dm 8; NO3N ar 387; NO3N dm 440; MOISTURE 12.0; DM 88.0",
                "average-and-last-year-rows.txt | 2 | DM 90.0; CP dm 7.7; ADF dm 41.1; NDF dm 64.9; TDN dm 54.4; NO3N dm <20",
                "average-between-bases.txt | 0 | MOISTURE 10.90; CP dm 8.90; CP ar 7.93; ADF dm 39.80; ADF ar 35.46; NDF dm 62.70; NDF ar 55.87; TDN dm 55.80;"
                        + " TDN ar 49.72; NEM dm 0.54; NEM ar 0.48; CA dm 0.40; CA ar 0.36; SE dm 0.06; SE ar 0.05",
                "tabs-with-flags.txt | 0 | MOISTURE 14.2; CP dm 9.9; NO3N dm 0.21; P dm 2100; CA dm 0.39; S dm 0.17; ZN dm <5; TDN dm 1140",
                "two-halves-across.csv | 0 | CP dm 10.2; CP ar 9.1; CA dm 0.51; CA ar 0.45; ADF dm 37.9; ADF ar 33.7; P dm 0.18; P ar 0.16; NDF dm 60.4;"
                        + " NDF ar 53.8; MG dm 0.17; MG ar 0.15; TDN dm 57.8; TDN ar 51.4; NO3N dm 640; NO3N ar 570; MOISTURE 11.0; FE dm 1310; FE ar 1166",
                "plus-minus-between.txt | 0 | DM 88.4; CP dm 12.7; CP ar 11.2; ADF dm 35.5; ADF ar 31.4; S dm 0.21; S ar 0.19; MO dm <0.5; MO ar <0.4;"
                        + " SE dm 0.31; SE ar 0.27; CU dm 11; CU ar 10",
                "snake-case.csv | 1 | DM 81.5; CP dm 8.1; ADF dm 40.2; NDF dm 63.3; TDN dm 55.4; NEM dm 0.53; NEG dm 0.27; CA dm 0.35; P dm 0.19; K dm 2.6;"
                        + " NO3N dm 3410; CP ar 6.6",
                "three-nitrates.txt | 0 | NO3 dm 4210; NO3N dm 951; KNO3 dm 6866; MOISTURE 11.8; HCN dm Negative"
            })
    void everyFigureThatIsTakenIsTheOneOnTheSheet(String file, int sample, String says) throws IOException {
        assertThat(figures(read(file).samples().get(sample))).containsExactlyElementsOf(said(says));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "one-column.txt | TD 14 | 07/29/2026 | GF-2026-3310",
                "two-halves.layout.txt | Q7 second cut stack | 8/21/26 | 26-55102",
                "units-row.csv | OC-1 | 2026-08-30 | Oat hay",
                "commas.txt | RC-88 | 11/09/2026 | Timothy hay",
                "group-heads.tsv | W-1 | Oct-3-2026 | 51880",
                "ranges.txt | East pivot 3rd | 9-Sep-26 | 2026-118",
                "two-pairs.pdf | North meadow | 08/30/26 | 26H0442",
                "wrapped-names.pdf | North stack grass hay, 1st cut | 09/11/2026 | 26-11873",
                "scan-letters.txt | B-5520 | 28 Sept 2026 | Meadow hay, river field, 2nd cutting",
                "export.csv | GW-7 | 09/26/25 | B-3107",
                "typical-beside.pdf | North meadow 1st cut | 08/29/2026 | 26-30718",
                "codes-over-figures.pdf | 12 | 6 Sep 2026 | ''",
                "bases-row.csv | Field 3 timothy | '' | 24-0911",
                "camel-case.csv | R-77101 | 2026-09-24 | Stubble bales",
                "unknown-codes.csv | R-77101 | 2026-09-24 | ''",
                "colons-in-columns.txt | Bull pasture hay | September 28, 2026 | HL26-0345",
                "interleaved.tsv | Stackyard 1 | '' | ''",
                "two-stacks.txt | Meadow stack behind the corrals | '' | 771-A",
                "names-over.txt | Corral stack LB-2041 | 10/18/2026 | Corral stack",
                "limits-beside.csv | Bench 9 | 10/03/2026 | ''",
                "strokes-empty.txt | West bench oats | 10/02/2026 | GB-4410",
                "strokes-two-samples.txt | North bench | '' | ''",
                "lot-mark.txt | West stack | '' | ''",
                "boxes-with-headings.txt | Hill 40 alfalfa-grass | '' | ''",
                "bag-you-marked.txt | West stack 2 | '' | ''",
                "your-name-for-it.csv | West stack | '' | 771",
                "leader-dots.txt | West stack | 10/14/2026 | ''",
                "sample-labeled.txt | Creek bottom | '' | ''",
                "mail-date-zone.txt | West stack | 10/20/2026 | ''",
                "three-nitrates.txt | Sudangrass hay, round bales, \"SG-1\" | 09/26/26 | ''"
            })
    void aSampleIsToldByItsCodeItsDayAndItsOtherNames(String file, String code, String sampled, String other)
            throws IOException {
        var sample = read(file).samples().get(0);
        assertThat(sample.code()).isEqualTo(code);
        assertThat(sample.sampled()).isEqualTo(sampled);
        assertThat(sample.lot() + " " + sample.also()).contains(other);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "wrapped-names.pdf | Larkspur Forage Bench",
                "scan-letters.txt | BUFFALOBERRY FEED & SOIL",
                "samples-beside.pdf | QUILLSTONE LAB — feed report (imaginary laboratory)",
                "footnotes.txt | STILLWATER FARM LAB"
            })
    void aSheetSaysWhoseItIs(String file, String laboratory) throws IOException {
        assertThat(read(file).samples()).allMatch(sample -> sample.laboratory().equals(laboratory));
    }

    /** Fiber by NIR and minerals by wet chemistry, as the sheet says of each; one word for all where they agree. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "wrapped-names.pdf | | ADF, NDF, LIGNIN, ASH | CP, CA, NO3N",
                "method-row.csv | | ADF, NDF, LIGNIN, STARCH, ASH | CP, ADICP, CA, P, KNO3",
                "long-commas.csv | | ADF, NDF | CP, CA, SE, NO3",
                "footnotes.txt | WET | ADF, NDF, IVTD | ",
                "samples-beside.pdf | WET | | "
            })
    void eachFigureHasItsMethod(String file, Tested.Method all, String nir, String wet) throws IOException {
        var sample = read(file).samples().get(0);
        assertThat(sample.method()).isEqualTo(all);
        assertThat(by(sample, Tested.Method.NIR)).containsAll(names(nir));
        assertThat(by(sample, Tested.Method.WET)).containsAll(names(wet)).noneMatch(names(nir)::contains);
    }

    private static List<String> by(Understood.Sample sample, Tested.Method method) {
        return sample.cells().stream()
                .filter(cell -> cell.method() == method)
                .map(cell -> cell.analyte().name())
                .distinct()
                .toList();
    }

    private static List<String> names(String list) {
        return list == null ? List.of() : List.of(list.split(", "));
    }

    /** What a share is carried by is shown in the unit that it is carried in, 8.4 % of 60.1 % and not of 601. */
    @Test
    void aShareIsCarriedByPercent() throws IOException {
        assertThat(read("bases-row.csv").samples().get(0).cells())
                .anyMatch(cell -> cell.read().contains("8.4 % × 60.1 % of"));
    }

    /** "Morning Wes," is nobody's laboratory. */
    @Test
    void aGreetingIsNoLaboratory() throws IOException {
        assertThat(read("two-stacks.txt").samples())
                .allMatch(sample -> sample.laboratory().isEmpty());
    }

    /** A mark that the sheet does not explain is asked for itself, and one answer is not for all figures. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "marks-unsaid.csv | † | * | DM 86.4; CP dm 9.8; ADF ar 33.2; NDF dm 59.6",
                "letters-unsaid.csv | 2 | 1 | DM 87.1; CP dm 10.3; ADF ar 32.0"
            })
    void eachMarkOfABasisIsAskedForItself(String file, String dry, String received, String says) throws IOException {
        var open = read(file);
        assertThat(open.columns())
                .filteredOn(column -> column.said() == null)
                .extracting(Understood.Column::written)
                .containsExactlyInAnyOrder("mark " + dry, "mark " + received);
        assertThat(open.samples())
                .allMatch(sample -> sample.cells().stream().allMatch(cell -> cell.analyte() == Analyte.DM));
        var said = new Vocabulary(
                Map.of(), Map.of("mark " + dry, ColumnIs.DRY_MATTER, "mark " + received, ColumnIs.AS_RECEIVED));
        assertThat(figures(NothingIsLostTest.read(text(file), said).samples().get(0)))
                .containsExactlyElementsOf(said(says));
    }

    /** What stands under "Mean" or in a line of averages is of no sample, and no sample has the lot of another. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"mean-beside.tsv, 3", "duplicates-and-averages.csv, 3", "average-and-last-year-rows.txt, 3"})
    void whatIsOfManySamplesIsNone(String file, int samples) throws IOException {
        assertThat(read(file).samples()).hasSize(samples);
    }

    /** One unit behind two figures of a sentence, or in the heading over them, is the unit of each. */
    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "two-stacks-in-sentences.txt, NEM, MCAL_PER_LB",
        "two-stacks-in-sentences.txt, NEG, MCAL_PER_LB",
        "fresh-and-dry-sections.txt, CP, GRAM_PER_KG",
        "fresh-and-dry-sections.txt, DM, GRAM_PER_KG",
        "fresh-and-dry-sections.txt, ME, MJ_PER_KG",
        "fresh-and-dry-sections.txt, LACTIC, PERCENT"
    })
    void aUnitSaidOnceIsOfAllThatItStandsOver(String file, Analyte analyte, Unit unit) throws IOException {
        assertThat(read(file).samples().get(0).cells())
                .filteredOn(cell -> cell.analyte() == analyte)
                .isNotEmpty()
                .allMatch(cell -> cell.unit() == unit);
    }

    /** A line whose cells do not go with the headings is listed with its number, and none of its figures taken. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"uneven-lines.csv, 1, 3:4:5", "uneven-down.csv, 1, 3:4:5", "uneven-tabs.tsv, 1, 3:4"})
    void anUnevenLineIsListedWithItsNumber(String file, int samples, String lines) throws IOException {
        var found = read(file);
        assertThat(found.samples()).hasSize(samples);
        for (var line : lines.split(":")) {
            assertThat(found.notTaken()).anyMatch(words -> words.startsWith("Line " + line + ", "));
        }
    }

    /** The date of a mail, with its time and zone, is a day; what the form gets is the day. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"mail-date.txt, 2026-11-03", "mail-date-zone.txt, 2026-11-03"})
    void theDateLineOfAMailIsADay(String file, String day) throws IOException {
        var reported = read(file).samples().get(0).reported();
        assertThat(Days.read(reported, Days.Order.UNTOLD)).hasToString("Optional[" + day + "]");
    }

    /** Letters in a column of bases that nobody explains, in text laid out with blanks. */
    @Test
    void lettersInTextAreAskedEachForItself() throws IOException {
        var open = read("letters-not-said.txt");
        assertThat(open.columns()).extracting(Understood.Column::written).containsExactly("mark D", "mark A");
        assertThat(figures(open.samples().get(0))).containsExactly("MOISTURE 10.4");
        var said = new Vocabulary(Map.of(), Map.of("mark d", ColumnIs.DRY_MATTER, "mark a", ColumnIs.AS_RECEIVED));
        assertThat(figures(NothingIsLostTest.read(text("letters-not-said.txt"), said)
                        .samples()
                        .get(0)))
                .containsExactlyElementsOf(said("CP dm 9.8; ADF ar 34.1; CA dm 0.4; MOISTURE 10.4"));
    }

    /** 8.4 lb in a ton of 2,000 lb is 0.42 %. */
    @Test
    void poundsInATonAreAShare() throws IOException {
        assertThat(read("letters-in-a-column.txt").samples().get(0).cells())
                .filteredOn(cell -> cell.analyte() == Analyte.CA)
                .singleElement()
                .satisfies(cell -> assertThat(cell.unit().to(Unit.PERCENT, 8.4)).isEqualTo(0.42, within(1e-12)));
    }

    /** Unit and basis as the sheet prints them stay with a name that somebody explained; what it does not print is asked. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "own-names.csv | Ashfast (g/kg, dry); Leafbrown mg/kg as fed; Oddium"
                        + " | DM 88.2 %; CP dm 9.1 %; NA dm 1.4 g/kg; ZN ar 33 mg/kg; P dm 1.8 g/kg | Oddium",
                "own-names-units.csv | Ashfast; Leafbrown; Oddium"
                        + " | DM 88.2 %; CP dm 9.1 %; NA dm 1.4 g/kg; ZN dm 33 mg/kg | Oddium",
                "own-names-lines.csv | Ashfast; Leafbrown; Oddium"
                        + " | DM 88.2 %; NA dm 1.4 g/kg; ZN dm 33 mg/kg; P dm 1.8 g/kg | ''",
                "own-names.txt | Ashfast g/kg DM; Oddium; Nothing"
                        + " | DM 88.2 %; CP dm 9.1 %; NA dm 1.4 g/kg; K dm 17.2 g/kg; S dm 1.3 g/kg | Nitrate"
            })
    void aNameThatIsExplainedKeepsTheUnitOfItsSheet(String file, String names, String says, String asked)
            throws IOException {
        var own = names.split("; ");
        var words = new Vocabulary(Map.of(
                Heading.key(own[0]), new Vocabulary.Meaning(Analyte.NA, null, null),
                Heading.key(own[1]), new Vocabulary.Meaning(Analyte.ZN, null, null),
                Heading.key(own[2]), new Vocabulary.Meaning(Analyte.S, null, null)));
        var found = NothingIsLostTest.read(text(file), words);
        assertThat(found.samples().get(0).cells())
                .extracting(cell -> cell.analyte()
                        + (cell.basis() == null ? "" : cell.basis() == Basis.DRY_MATTER ? " dm" : " ar")
                        + " " + cell.text() + " "
                        + (cell.unit() == null ? "?" : cell.unit().symbol()))
                .containsExactlyInAnyOrder(says.split("; "));
        assertThat(String.join("\n", found.notTaken())).contains(asked);
    }

    /** A laboratory that prints another unit next time is not read by what was said of its last sheet. */
    @Test
    void aUnitThatWasSaidIsNotPutOverOneThatIsPrinted() throws IOException {
        var words =
                new Vocabulary(Map.of("leafbrown", new Vocabulary.Meaning(Analyte.ZN, Unit.PERCENT, Basis.DRY_MATTER)));
        var found = NothingIsLostTest.read(text("own-names-lines.csv"), words);
        assertThat(found.samples().get(0).cells()).noneMatch(cell -> cell.analyte() == Analyte.ZN);
        assertThat(found.notTaken()).anyMatch(line -> line.contains("Leafbrown") && line.contains("mg/kg"));
    }

    /** One answer for two columns would take the first figure for both. */
    @Test
    void eachColumnThatNobodyKnowsIsAskedForItself() throws IOException {
        var open = read("two-unknown.csv");
        assertThat(open.samples()).isEmpty();
        assertThat(open.columns())
                .extracting(Understood.Column::written)
                .containsExactly("Frischmasse", "Trockenmasse");
        var said = new Vocabulary(
                Map.of(), Map.of("frischmasse", ColumnIs.AS_RECEIVED, "trockenmasse", ColumnIs.DRY_MATTER));
        var found = NothingIsLostTest.read(text("two-unknown.csv"), said);
        assertThat(figures(found.samples().get(0)))
                .containsExactlyElementsOf(
                        said(
                                "CA ar 0.38; CA dm 0.42; MG ar 0.13; MG dm 0.14; NDF ar 54.2; NDF dm 59.9; ADF ar 34.0; ADF dm 37.6"));
        assertThat(found.columns()).allMatch(column -> column.said() != null);
    }

    /** Read cell by cell from the file: its lines are as long as each other. */
    @Test
    void twentySamplesStandBesideEachOther() throws IOException {
        String text;
        try (var in = UnseenSheetsTest.class.getResourceAsStream("unseen/across-twenty.csv")) {
            text = ReportCsv.decode(in.readAllBytes());
        }
        var lines = text.lines().map(line -> line.split(",", -1)).toList();
        var found = read("across-twenty.csv");
        assertThat(found.samples()).hasSize(20);
        for (int i = 0; i < 20; i++) {
            var sample = found.samples().get(i);
            assertThat(sample.code()).isEqualTo(lines.get(4)[i + 2]);
            assertThat(sample.also()).containsExactlyInAnyOrder(lines.get(3)[i + 2], lines.get(5)[i + 2]);
            assertThat(sample.sampled()).isEqualTo(lines.get(6)[i + 2]);
            var column = i + 2;
            assertThat(sample.cells())
                    .extracting(Understood.Cell::text)
                    .containsExactlyElementsOf(lines.subList(8, lines.size()).stream()
                            .map(line -> line[column])
                            .toList());
        }
        assertThat(found.samples().get(3).cells().stream()
                        .sorted(Comparator.comparing(Understood.Cell::analyte))
                        .map(cell -> cell.analyte() + " " + cell.text()))
                .contains("P <0.05", "NO3N 2185");
    }
}
