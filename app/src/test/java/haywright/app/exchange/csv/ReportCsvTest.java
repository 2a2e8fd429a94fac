package haywright.app.exchange.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files as laboratories and spreadsheets write them, and files that are none. */
class ReportCsvTest {
    private static final String WIDE = """
            Sample ID,Laboratory,Date reported,DM %,CP (% DM),"ADF, dry matter",aNDF DM,NEm (Mcal/lb) DM,Nitrate-N ppm dry basis,pH
            NS-1,Tin Valley,10/14/2026,88.4,12.1,37.8,54.6,0.56,240,
            NS-2,Tin Valley,10/14/2026,86.0,9.3,40.1,61.0,0.52,n/a,5.9
            """;
    private static final String LONG = """
            Tin Valley Forage Laboratory
            Analyte;Unit;As received;Dry matter
            Dry Matter;%;88,4;100
            Protein, crude;%;10,7;12,1
            NEm;Mcal/kg;1,09;1,23
            Sparkle;%;3;4
            """;

    /** A figure without the line it was read from. */
    private record Cell(
            Analyte analyte, @Nullable Unit unit, @Nullable Basis basis, String text) {}

    private static List<Cell> cells(Understood.Sample sample) {
        return sample.cells().stream()
                .map(c -> new Cell(c.analyte(), c.unit(), c.basis(), c.text()))
                .toList();
    }

    private static Understood point(String text) {
        return ReportCsv.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
    }

    private static Problem problem(String text) {
        try {
            ReportCsv.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
        } catch (Refused e) {
            assertThat(e.problems()).hasSize(1);
            return e.problems().get(0);
        }
        throw new AssertionError("it was taken: " + text);
    }

    @Test
    void oneLineASample() {
        var found = point(WIDE);
        assertThat(found.layout()).isEqualTo("one line a sample, columns separated by commas");
        assertThat(found.notTaken()).isEmpty();
        assertThat(found.samples()).hasSize(2);
        var first = found.samples().get(0);
        assertThat(first.code()).isEqualTo("NS-1");
        assertThat(first.laboratory()).isEqualTo("Tin Valley");
        assertThat(first.reported()).isEqualTo("10/14/2026");
        assertThat(cells(first))
                .containsExactly(
                        new Cell(Analyte.DM, Unit.PERCENT, null, "88.4"),
                        new Cell(Analyte.CP, Unit.PERCENT, Basis.DRY_MATTER, "12.1"),
                        new Cell(Analyte.ADF, null, Basis.DRY_MATTER, "37.8"),
                        new Cell(Analyte.NDF, null, Basis.DRY_MATTER, "54.6"),
                        new Cell(Analyte.NEM, Unit.MCAL_PER_LB, Basis.DRY_MATTER, "0.56"),
                        new Cell(Analyte.NO3N, Unit.PPM, Basis.DRY_MATTER, "240"));
        assertThat(cells(found.samples().get(1))).contains(new Cell(Analyte.PH, null, null, "5.9"));
    }

    @Test
    void oneLineAFigureWithDecimalCommas() {
        var found = ReportCsv.read(LONG, Decimals.COMMA, null, Vocabulary.HOUSE);
        assertThat(found.layout()).isEqualTo("one line a figure, columns separated by semicolons");
        assertThat(found.samples()).hasSize(1);
        assertThat(cells(found.samples().get(0)))
                .containsExactly(
                        new Cell(Analyte.DM, Unit.PERCENT, null, "88.4"),
                        new Cell(Analyte.CP, Unit.PERCENT, Basis.AS_RECEIVED, "10.7"),
                        new Cell(Analyte.CP, Unit.PERCENT, Basis.DRY_MATTER, "12.1"),
                        new Cell(Analyte.NEM, Unit.MCAL_PER_KG, Basis.AS_RECEIVED, "1.09"),
                        new Cell(Analyte.NEM, Unit.MCAL_PER_KG, Basis.DRY_MATTER, "1.23"));
        assertThat(found.samples().get(0).laboratory()).isEqualTo("Tin Valley Forage Laboratory");
        assertThat(found.notTaken())
                .singleElement()
                .satisfies(line -> assertThat(line).contains("4"))
                .matches(line -> line.contains("“Sparkle”") && line.contains("no analyte of this name is known"));
    }

    @Test
    void severalSamplesUnderEachOtherInLongForm() {
        var found = point("sample,name,result,basis\nA,CP,12.1,DM\nA,ADF,37,DM\nB,CP,8.4,as fed\nB,DM,90,\n");
        assertThat(found.samples()).extracting(Understood.Sample::code).containsExactly("A", "B");
        assertThat(cells(found.samples().get(1)))
                .containsExactly(
                        new Cell(Analyte.CP, null, Basis.AS_RECEIVED, "8.4"), new Cell(Analyte.DM, null, null, "90"));
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void anyOfThreeSeparators(String separator) {
        var text = "Name,CP DM,ADF DM\nNorth stack,12.1,38\n".replace(",", separator);
        var found = point(text);
        assertThat(cells(found.samples().get(0))).hasSize(2);
        assertThat(found.samples().get(0).code()).isEqualTo("North stack");
    }

    @Test
    void semicolonsBetweenColumnsThoughEveryCellHasADecimalComma() {
        var found =
                ReportCsv.read("Probe;CP DM;ADF DM;NDF DM\nA;12,1;37,8;54,6\n", Decimals.COMMA, null, Vocabulary.HOUSE);
        assertThat(cells(found.samples().get(0))).extracting(Cell::text).containsExactly("12.1", "37.8", "54.6");
        assertThat(found.notTaken()).singleElement().asString().contains("“Probe”");
    }

    @Test
    void marksAndAlphabetsOfSpreadsheets() {
        var text = "sep=;\nSample;Laboratory;CP DM;ADF DM\nDécharge;Ñandú;12.1;38\n";
        for (var bytes : List.of(
                text.getBytes(StandardCharsets.UTF_8),
                ("\ufeff" + text).getBytes(StandardCharsets.UTF_8),
                ("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE),
                text.getBytes(Charset.forName("windows-1252")))) {
            var sample = point(ReportCsv.decode(bytes)).samples().get(0);
            assertThat(sample.code()).isEqualTo("Décharge");
            assertThat(sample.laboratory()).isEqualTo("Ñandú");
            assertThat(cells(sample)).hasSize(2);
        }
    }

    @ParameterizedTest(name = "{0}: {1}, {2}")
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "CP | CP | - | -",
                "CP % DM | CP | PERCENT | DRY_MATTER",
                "% CP (as fed) | CP | PERCENT | AS_RECEIVED",
                "NEm (Mcal/lb), as received | NEM | MCAL_PER_LB | AS_RECEIVED",
                "adf_dm | ADF | - | DRY_MATTER",
                "Ca ppm | CA | PPM | -",
                "NO3-N | NO3N | - | -",
                "Crude Protein At 90% | CP | - | NINETY_PCT",
                "TDN 90% DM | TDN | - | NINETY_PCT",
                "Dry Matter | DM | - | -",
                "DM | DM | - | -",
                "Moisture, % | MOISTURE | PERCENT | -",
                "Acid Detergent Fiber [DM basis] | ADF | - | DRY_MATTER"
            })
    void aHeadingTellsAnalyteUnitAndBasis(String text, Analyte analyte, Unit unit, Basis basis) {
        assertThat(Heading.of(text)).contains(new Heading(analyte, unit, basis));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Sparkle", "CP Mcal/lb", "", "%", "as fed", "NEm ppm"})
    void aHeadingThatNamesNothing(String text) {
        assertThat(Heading.of(text)).isEmpty();
    }

    @Test
    void aBasisThatNobodyTellsIsAskedFor() {
        var text = "Sample,DM,CP,ADF\nA,88,12,38\n";
        var asked = problem(text);
        assertThat(asked.field()).isEqualTo("basis");
        assertThat(asked.value()).isEqualTo("CP, ADF");
        assertThat(cells(ReportCsv.read(text, Decimals.BY_SHEET, Basis.AS_RECEIVED, Vocabulary.HOUSE)
                        .samples()
                        .get(0)))
                .contains(new Cell(Analyte.CP, null, Basis.AS_RECEIVED, "12"));
    }

    @Test
    void figuresShowByThemselvesWhatStandsBeforeTheirDecimals() {
        var found = point("Sample;CP DM;ADF DM;NDF DM\nA;12,1;37.8;1.061,5\n");
        assertThat(cells(found.samples().get(0))).extracting(Cell::text).containsExactly("12.1", "37.8", "1061.5");
    }

    @Test
    void aFigureThatCouldBeTwoIsToldByItsSheetOrAskedAbout() {
        var iron = "Sample;CP DM;Fe ppm DM\nA;%s;%s\n";
        assertThat(problem(iron.formatted("12", "1,234")).field()).isEqualTo("decimal");
        assertThat(problem(iron.formatted("12,1", "1,234")).field()).isEqualTo("decimal");
        assertThat(iron(iron.formatted("12.1", "1,234"), Decimals.BY_SHEET)).isEqualTo("1234");
        assertThat(problem(iron.formatted("0,121", "1,234")).field()).isEqualTo("decimal");
        assertThat(iron(iron.formatted("0,121", "1,234"), Decimals.COMMA)).isEqualTo("1.234");
        assertThat(iron(iron.formatted("12,1", "1,234"), Decimals.POINT)).isEqualTo("1234");
        assertThat(iron(iron.formatted("12,1", "1.234"), Decimals.BY_SHEET)).isEqualTo("1234");
        assertThat(iron(iron.formatted("12.1", "<1,234"), Decimals.BY_SHEET)).isEqualTo("<1234");
    }

    private static String iron(String text, Decimals decimals) {
        return ReportCsv.read(text, decimals, null, Vocabulary.HOUSE)
                .samples()
                .get(0)
                .cells()
                .get(1)
                .text();
    }

    @ParameterizedTest(name = "{1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "`` | there is nothing in it",
                "`\ufeff  \n ` | there is nothing in it",
                "`CP:DM:ADF\n12:88:38\n` | no comma, semicolon or tab separates its columns",
                "`Rain,Snow\n1,2\n` | no line names analytes",
                "`Sample,CP DM,ADF DM\n` | no figure of a known analyte",
                "`Analyte,As received,Dry matter\nSparkle,3,4\n` | no figure of a known analyte",
                "`Sample,CP DM,ADF DM\nA,12,38,9\n` | line 2 has 4 cells under 3 headings",
                "`Sample,CP DM,ADF DM\nA,12,1,37,8\n` | line 2 has 5 cells under 3 headings",
                "`Sample,CP DM,ADF DM\nA,\"12,38\n` | a quotation mark opens in line 2"
            })
    void whatIsNoReportIsRefusedInOneSentence(String text, String words) {
        var problem = problem(text);
        assertThat(problem.field()).isEqualTo("text");
        assertThat(problem.rule()).contains(words);
        assertThat(problem.fix()).isNotBlank();
    }

    @Test
    void otherFilesAreTurnedAway() {
        for (var file : List.of("PK\u0003\u0004 zip", "%PDF-1.7", "a\0b,c")) {
            assertThatThrownBy(() -> ReportCsv.decode(file.getBytes(StandardCharsets.ISO_8859_1)))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("not a CSV file");
        }
        assertThatThrownBy(() -> ReportCsv.decode(new byte[ReportCsv.MOST_BYTES + 1]))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("larger than");
    }

    @Test
    void formulasAndHtmlStayText() {
        var found = point("Sample,CP DM,ADF DM\n<script>alert(1)</script>,=1+1,\"=HYPERLINK(\"\"http://x\"\")\"\n");
        assertThat(found.samples().get(0).code()).isEqualTo("<script>alert(1)</script>");
        assertThat(cells(found.samples().get(0)))
                .extracting(Cell::text)
                .containsExactly("=1+1", "=HYPERLINK(\"http://x\")");
    }

    @Test
    void whatStandsThereTwiceIsListedAndNotMerged() {
        var found = point("Sample,CP DM,Crude protein DM,ADF DM\nA,12.1,13.5,38\n");
        assertThat(found.notTaken())
                .hasSize(2)
                .allSatisfy(line -> assertThat(line).contains("13.5", "12.1"));
        assertThat(cells(found.samples().get(0))).extracting(Cell::text).containsExactly("38");
    }

    @Test
    void aPercentSignIsNoBasis() {
        assertThat(Heading.basis("%")).isEmpty();
        assertThat(Heading.basis("% DM")).contains(Basis.DRY_MATTER);
        assertThat(Heading.basis("90 %")).contains(Basis.NINETY_PCT);
    }

    @Test
    void tenThousandAnalytesAreTurnedAwaySoonEitherWay() {
        var across = "Sample," + "CP DM,".repeat(10_000) + "\nA," + "9,".repeat(10_000) + "\n";
        assertThat(problem(across).rule()).contains("at most 400");
        var down = "Analyte,Dry matter\n" + "Stuff,1\n".repeat(10_001);
        assertThat(problem(down).rule()).contains("more than is read at once");
    }

    @Test
    void twoSamplesSideBySideAreTwo() {
        var found = point("Analyte,Unit,N-1,N-2\nDry matter,%,88,86\nCP DM,%,9.1,10.4\n");
        assertThat(found.samples()).extracting(Understood.Sample::code).containsExactly("N-1", "N-2");
        assertThat(cells(found.samples().get(1))).extracting(Cell::text).containsExactly("86", "10.4");
    }

    @ParameterizedTest
    @CsvSource({
        "g/kg DM, GRAM_PER_KG, DRY_MATTER",
        "%DM, PERCENT, DRY_MATTER",
        "% as fed, PERCENT, AS_RECEIVED",
        "% of DM, PERCENT, DRY_MATTER"
    })
    void aCellOfUnitsCanTellTheBasisToo(String written, Unit unit, Basis basis) {
        var cell = point("Analyte,Value,Unit\nCalcium,4.7," + written + "\n")
                .samples()
                .get(0)
                .cells()
                .get(0);
        assertThat(cell.unit()).isEqualTo(unit);
        assertThat(cell.basis()).isEqualTo(basis);
    }

    @Test
    void aFigureWhoseUnitIsNotUnderstoodIsNotTaken() {
        var found = point("Analyte,Dry matter,Unit\nCalcium,4.7,oz/ton\nSoluble protein,30,% of CP\nCP,9,%\n");
        assertThat(cells(found.samples().get(0))).extracting(Cell::analyte).containsExactly(Analyte.SP, Analyte.CP);
        assertThat(found.notTaken())
                .singleElement()
                .asString()
                .contains("Calcium", "its unit “oz/ton” is not understood", "4.7");
    }
}
