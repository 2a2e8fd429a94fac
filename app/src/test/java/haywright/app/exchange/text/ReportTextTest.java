package haywright.app.exchange.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.lab.Vocabulary.Meaning;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.Tested;
import haywright.quantity.Unit;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines as they are pasted: in columns, without columns, side by side, wrong. */
class ReportTextTest {
    private static Understood read(String text) {
        return ReportText.read(text, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
    }

    private static List<String> cells(Understood found, int sample) {
        return found.samples().get(sample).cells().stream()
                .map(c -> "%s %s %s %s".formatted(c.analyte(), c.text(), c.unit(), c.basis()))
                .toList();
    }

    @Test
    void headingsOverTwoLinesAndBlankCells() {
        var found = read("""
                 Prairie Analytical Laboratory
                 Sample ID: N-14          Lab No: 8831        Date Reported: 10/14/2026
                                            As          Dry
                 Analysis        Unit     Received      Matter     Method
                 Moisture          %        11.8                   AOAC 934.01
                 Crude Protein     %         9.0         10.2      AOAC 990.03
                 NEg             Mcal/lb                  0.29
                 Nitrate-N        ppm        <50          <57
                 Selenium         ppm         ND           ND
                 Fancy index                              12
                 Analysis by near infrared.
                """);
        assertThat(cells(found, 0))
                .containsExactly(
                        "MOISTURE 11.8 PERCENT null",
                        "CP 9.0 PERCENT AS_RECEIVED",
                        "CP 10.2 PERCENT DRY_MATTER",
                        "NEG 0.29 MCAL_PER_LB DRY_MATTER",
                        "NO3N <50 PPM AS_RECEIVED",
                        "NO3N <57 PPM DRY_MATTER",
                        "SE ND PPM AS_RECEIVED",
                        "SE ND PPM DRY_MATTER");
        var sample = found.samples().get(0);
        assertThat(sample.code()).isEqualTo("N-14");
        assertThat(sample.laboratory()).isEqualTo("Prairie Analytical Laboratory");
        assertThat(sample.method()).isEqualTo(Tested.Method.NIR);
        assertThat(found.notTaken()).anyMatch(line -> line.contains("Fancy index"));
    }

    /** A quote of last year's figures, a history block and a sentence of a year before: none is this year's. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "> ES-4307, \"Slough hay\": crude protein 9.4%, NDF 60.1%, nitrate-nitrogen 95 ppm.",
                "Results of your 2025 sample\nCrude protein %   9.4\nNDF %            60.1\nNitrate-N ppm     95",
                "Last year NDF was 60.1% and crude protein 9.4%.",
                "In 2025 the nitrate-nitrogen was 95 ppm.",
                "-----Original Message-----\nSent: Oct 20, 2025\nNDF: 60.1 %\nNitrate-N: 95 ppm"
            })
    void figuresOfAnotherYearAreListedAndNeverTaken(String old) {
        var now = "Crude protein %   8.8\nADF %            39.0\nNDF %            64.8\nNitrate-N ppm   233\n";
        for (var text : List.of(now + "\n" + old + "\n", old.startsWith("-") ? now + old : old + "\n\n" + now)) {
            var found = read("Reported: 10/15/2026\nResults on a dry matter basis\n\n" + text);
            assertThat(cells(found, 0))
                    .as(text)
                    .contains("NDF 64.8 PERCENT DRY_MATTER", "NO3N 233 PPM DRY_MATTER", "CP 8.8 PERCENT DRY_MATTER")
                    .noneMatch(cell -> cell.contains(" 60.1 ") || cell.contains(" 95 ") || cell.contains(" 9.4 "));
            assertThat(found.notTaken()).isNotEmpty();
        }
    }

    @Test
    void aFigureThatCouldStandInEitherColumnIsNotTaken() {
        var found = read("""
                Analyte As Received Dry Matter
                Dry Matter 88.2 100
                Crude Protein 9.0 10.2
                ADF 33.5
                """); // a copy that has lost the room between the columns
        assertThat(cells(found, 0))
                .containsExactly("DM 88.2 null null", "CP 9.0 null AS_RECEIVED", "CP 10.2 null DRY_MATTER");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("ADF 33.5"));
        var between = read("""
                Analysis             As received                    Dry matter
                Crude protein            9.0                            10.2
                ADF                                    33.5
                """);
        assertThat(cells(between, 0)).hasSize(2);
        assertThat(between.notTaken()).anyMatch(line -> line.contains("33.5"));
    }

    @Test
    void twoTablesSideBySideAreOneSampleOrTwo() {
        var one = read("""
                Proteins   As fed   Dry      Minerals   As fed   Dry
                CP           9.0    10.2     Ca           0.40   0.45
                ADICP        0.9     1.0     K            1.5    1.7
                """);
        assertThat(one.samples()).hasSize(1);
        assertThat(cells(one, 0)).hasSize(8).contains("K 1.7 null DRY_MATTER", "ADICP 0.9 null AS_RECEIVED");
        var two = read("""
                Sample: A-1                  Sample: B-2
                Test      As fed   Dry       Test      As fed   Dry
                CP          9.0    10.2      CP         12.0    15.0
                ADF        30.0    34.0      ADF        24.0    30.0
                """);
        assertThat(two.samples()).extracting(Understood.Sample::code).containsExactly("A-1", "B-2");
        assertThat(cells(two, 1)).contains("CP 15.0 null DRY_MATTER", "ADF 24.0 null AS_RECEIVED");
    }

    @Test
    void whatIsNotSharedWithTheFeedIsNotTakenForAShareOfIt() {
        var found = read("""
                Analysis                   Dry matter
                Crude protein, %              10.2
                ADICP, % of CP                 8.0
                Soluble protein               35
                Soluble protein, % of CP      36
                NDICP, % of NDF                5.0
                """);
        // 8.0 % of 10.2 % protein, by pencil
        assertThat(cells(found, 0))
                .containsExactly("CP 10.2 PERCENT DRY_MATTER", "ADICP 0.816 PERCENT DRY_MATTER", "SP 36 PERCENT null");
        assertThat(found.notTaken())
                .hasSize(2)
                .anyMatch(line -> line.contains("Soluble protein   35"))
                .anyMatch(line -> line.contains("NDICP, % of NDF"));
    }

    @Test
    void aNameIsTakenAsSomebodySaidOrLeftOut() {
        var text = "Analysis   Dry matter\nProtéine brute  12.1\nADF  38\nIndice  4\n";
        assertThat(read(text).notTaken()).hasSize(2);
        var told = Vocabulary.HOUSE.with(Map.of(
                "protéine brute",
                new Meaning(Analyte.CP, Unit.PERCENT, null),
                "indice",
                new Meaning(null, null, null)));
        var found = ReportText.read(text, Decimals.BY_SHEET, null, told);
        assertThat(cells(found, 0)).containsExactly("CP 12.1 PERCENT DRY_MATTER", "ADF 38 null DRY_MATTER");
        assertThat(found.notTaken()).singleElement().asString().contains("left out: Indice  4");
        assertThat(found.names()).extracting(Understood.Named::leftOut).containsExactly(false, false, true);
    }

    @Test
    void aBasisIsAskedForAndNeverTakenForGranted() {
        assertThatThrownBy(() -> read("Crude protein  12.1 %\nADF  38 %\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("as received or on dry matter");
        assertThat(cells(
                        ReportText.read(
                                "Crude protein  12.1 %\n", Decimals.BY_SHEET, Basis.AS_RECEIVED, Vocabulary.HOUSE),
                        0))
                .containsExactly("CP 12.1 PERCENT AS_RECEIVED");
        assertThat(cells(read("Results are reported on a dry matter basis.\nCrude protein  12.1 %\n"), 0))
                .containsExactly("CP 12.1 PERCENT DRY_MATTER");
        assertThatThrownBy(() -> read("Crude protein  12.1  13.4\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Write the headings As received and Dry matter");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "   \n\t\n",
                "Dear Sir, thank you for your order of 12 bales.",
                "=cmd|' /C calc'!A0   12",
                "Test   As received   Dry matter\n",
                "Davis, CA 95616\nFort Collins, CO 80523"
            })
    void whatIsNoReportIsRefused(String text) {
        assertThatThrownBy(() -> read(text)).isInstanceOf(Refused.class);
    }

    @Test
    void decimalsInTwoWaysAreReadLineByLineAndAskedAboutWhereAFigureCouldBeTwo() {
        var mixed = "Analysis  Dry matter\nCrude protein  12.1\nADF  38,4\n";
        assertThat(cells(read(mixed), 0)).containsExactly("CP 12.1 null DRY_MATTER", "ADF 38.4 null DRY_MATTER");
        assertThatThrownBy(() -> read(mixed + "Iron ppm  1,234\n"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1.234 or 1234");
    }

    @Test
    void aFigureAmongTenThousandLinesIsFound() {
        var text = new StringBuilder("Analysis  As received  Dry matter\n");
        for (int i = 0; i < 10_000; i++) {
            text.append("Stuff ").append(i).append(" of a kind     1.0        2.0\n");
        }
        text.append("Crude protein     9.0       10.2\n");
        text.append("x".repeat(100_000))
                .append(" 12\n")
                .append("( ".repeat(20_000))
                .append('\n');
        assertThat(cells(read(text.toString()), 0)).hasSize(2);
    }

    @Test
    void controlCharactersAreBlanks() {
        var found = read("Analysis   Dry matter\nCrude protein\u0000\u0007\u202e   12.1\nADF\u00a0   38\n");
        assertThat(cells(found, 0)).contains("ADF 38 null DRY_MATTER");
        assertThat(found.samples().get(0).cells()).allMatch(c -> !c.read().matches(".*\\p{Cntrl}.*"));
    }

    @Test
    void negativeFiguresAndSwappedColumnsAreHandedToTheChecksAsTheyStand() {
        var found = read("Analysis   Dry matter   As received\nCrude protein   -9.0   10.2\n");
        assertThat(cells(found, 0)).containsExactly("CP -9.0 null DRY_MATTER", "CP 10.2 null AS_RECEIVED");
    }

    @Test
    void analytesAcrossTheTopAreOneSampleALine() {
        var found = read("""
                Reported: Oct 2, 2026
                Values are on a dry matter basis.
                Lab No      Your mark       Crude    ADF     Zeal     K      DCAD
                                            Protein                         mEq/kg
                                              %       %                %
                20261       S4K2P1           9.8     37.4     3      1.61    120
                20262       Creek stack     12.6               4     1.44   -15
                20263       Third                            12 13
                Average                     11.2     37.4     3.5    1.5     50
                """);
        assertThat(cells(found, 0))
                .containsExactly(
                        "CP 9.8 PERCENT DRY_MATTER",
                        "ADF 37.4 PERCENT DRY_MATTER",
                        "K 1.61 PERCENT DRY_MATTER",
                        "DCAD 120 MEQ_PER_KG DRY_MATTER");
        assertThat(cells(found, 1))
                .containsExactly(
                        "CP 12.6 PERCENT DRY_MATTER", "K 1.44 PERCENT DRY_MATTER", "DCAD -15 MEQ_PER_KG DRY_MATTER");
        assertThat(found.samples()).extracting(Understood.Sample::code).containsExactly("S4K2P1", "Creek stack");
        assertThat(found.samples().get(0).also()).contains("20261");
        assertThat(found.samples()).extracting(Understood.Sample::reported).containsOnly("Oct 2, 2026");
        assertThat(found.notTaken())
                .anyMatch(line -> line.contains("Zeal"))
                .anyMatch(line -> line.contains("no heading over the figure says what it is: 20263"))
                .anyMatch(line -> line.contains("it is no sample: Average"));
        assertThat(found.names()).extracting(Understood.Named::written).contains("Zeal", "Crude Protein %");
    }

    @Test
    void oneCellThatIsNoFigureIsListedAndTheRestOfItsLineIsTaken() {
        var found = read("""
                All results are on a dry matter basis
                Sample   DM %   CP %   ADF %  NDF %
                E-1      87.5   =9+2   39.8   60.0
                E-2      87.5   <0.5   ND     61.0
                """);
        assertThat(cells(found, 0))
                .containsExactly("DM 87.5 PERCENT null", "ADF 39.8 PERCENT DRY_MATTER", "NDF 60.0 PERCENT DRY_MATTER");
        assertThat(cells(found, 1)).contains("CP <0.5 PERCENT DRY_MATTER", "ADF ND PERCENT DRY_MATTER");
        assertThat(found.notTaken()).singleElement().asString().contains("“=9+2” is not a number");
    }

    @Test
    void whatTheRanchCallsASampleIsToldFromItsNumber() {
        var sample = read("""
                        Sample ID    Description        CP % DM    ADF % DM
                        8831         Creek meadow          9.8        37.4
                        """).samples().get(0);
        assertThat(List.of(sample.code(), sample.lot())).containsExactly("8831", "Creek meadow");
    }

    @Test
    void aFigureInAUnitThatNobodyKnowsIsNotTakenForTheUsualOne() {
        var found = read("Results are on a dry matter basis\nCalcium: 4.7 oz/ton\nCrude protein: 9.1\n");
        assertThat(cells(found, 0)).containsExactly("CP 9.1 null DRY_MATTER");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("Calcium: 4.7 oz/ton"));
    }

    @Test
    void aBasisAcrossTheTopIsAskedForToo() {
        assertThatThrownBy(() -> read("""
                        Sample      CP      ADF
                        A-1         9.8     37.4
                        """))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("as received or on dry matter");
    }
}
