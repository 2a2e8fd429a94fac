package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Basis;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which sample a figure is of, and whether it is one of this report, by where it stands. Tabs are written as ~. */
class LayoutsTest {
    private static Understood read(String sheet) {
        return NothingIsLostTest.read(lines(sheet));
    }

    private static String lines(String sheet) {
        return sheet.replace("; ", "\n").replace('~', '\t');
    }

    private static String said(Understood found) {
        return found.samples().stream()
                .map(sample -> sample.code() + (sample.lot().isEmpty() ? "" : "/" + sample.lot()) + ": "
                        + sample.cells().stream()
                                .map(cell -> cell.analyte()
                                        + (cell.basis() == null
                                                ? " "
                                                : cell.basis() == Basis.DRY_MATTER ? " dm " : " ar ")
                                        + cell.text())
                                .collect(Collectors.joining(", ")))
                .collect(Collectors.joining("; "));
    }

    /** A second "dry" beside a whole pair, under last year or no name, is no sample of its own: it is asked. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Hay;                                      2025 crop; Test       Unit    As fed    Dry      dry; DM         %       87.6; CP         %       7.7       8.8      9.6 | 2025 crop dry",
                "Hay;                                      Same field 2025; Test       Unit    As fed    Dry      (dry); DM         %       87.6; CP         %       7.7       8.8      9.6 | Same field 2025 dry"
            })
    void aSecondDryColumnIsAsked(String sheet, String heading) {
        var found = read(sheet.stripTrailing());
        assertThat(said(found)).isEqualTo(": DM 87.6, CP ar 7.7, CP dm 8.8");
        assertThat(found.columns())
                .singleElement()
                .satisfies(asked -> assertThat(asked.written()).isEqualTo(heading));
        var left = new Vocabulary(Map.of(), Map.of(heading.toLowerCase(Locale.ROOT), ColumnIs.LEFT_OUT));
        var again = NothingIsLostTest.read(lines(sheet.stripTrailing()), left);
        assertThat(said(again)).isEqualTo(": DM 87.6, CP ar 7.7, CP dm 8.8");
        assertThat(again.columns()).allMatch(asked -> asked.said() != null);
    }

    @Test
    void theEndOfARangeIsNoSample() {
        assertThat(
                        said(
                                read(
                                        "Test      As fed   Dry    Usual (dry); Mg, %     0.14     0.16   .1 - .2; CP, %     7.7      8.8    8 - 12; Ca, %     0.30     0.35   0.1 to 0.2")))
                .isEqualTo(": MG ar 0.14, MG dm 0.16, CP ar 7.7, CP dm 8.8, CA ar 0.30, CA dm 0.35");
    }

    @Test
    void namesOverTheUpperOfTwoHeadingLines() {
        assertThat(said(read(
                        "Sample~As fed~~Dry~; ~CP %~TDN %~CP %~TDN %; East~7.7~49.9~8.8~57; West~7.8~49.8~8.9~56")))
                .isEqualTo(
                        "East: CP ar 7.7, TDN ar 49.9, CP dm 8.8, TDN dm 57; West: CP ar 7.8, TDN ar 49.8, CP dm 8.9, TDN dm 56");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Sample,Nitrate-N ppm DM; North yard,1776; South yard,2010",
                "Sample~Nitrate-N ppm DM; North yard~1776; South yard~2010",
                "Sample;Nitrate-N (ppm DM); North yard;1776; South yard;2010",
                "Sample        Nitrate-N ppm DM; North yard    1776; South yard    2010",
                "Name,Nitrate-N ppm DM; North yard,1776; South yard,2010",
                ",Nitrate-N ppm DM; North yard,1776; South yard,2010"
            })
    void aListOfOneAnalyte(String sheet) {
        assertThat(said(read(sheet))).isEqualTo("North yard: NO3N dm 1776; South yard: NO3N dm 2010");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Sample,Name,DM %,CP % DM; A1,East,89.1,8.5; A2,West,86.2,18.2 | A1/East: DM 89.1, CP dm 8.5; A2/West: DM 86.2, CP dm 18.2",
                "Sample~Name~DM~CP; ~~%~% DM; A1~East~89.1~8.5; A2~West~86.2~18.2 | A1/East: DM 89.1, CP dm 8.5; A2/West: DM 86.2, CP dm 18.2",
                "Name~DM~CP; East~89.1~8.5; West~86.2~18.2 | East: DM 89.1, CP dm 8.5; West: DM 86.2, CP dm 18.2",
                "Name      DM      CP; East      89.1    8.5; West      86.2    18.2 | East: DM 89.1, CP dm 8.5; West: DM 86.2, CP dm 18.2",
                "Test,DM %,CP % DM; East,89.1,8.5; West,86.2,18.2 | East: DM 89.1, CP dm 8.5; West: DM 86.2, CP dm 18.2"
            })
    void underNameStandNamesOfSamples(String sheet, String says) {
        assertThat(said(read(sheet))).isEqualTo(says);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Sheet 1 of 2",
                "See page 2",
                "Continued on next page",
                "Account 4471",
                "Order 61-3305",
                "Work order 61-3305 (continued)"
            })
    void whatAPageAddsDoesNotEndATable(String line) {
        var sheet = "Analyte         Unit   W-1    W-2; Crude Protein   % DM   9.9    8.4; " + line
                + "; Sodium          % DM   0.14   0.31";
        assertThat(said(read(sheet))).isEqualTo("W-1: CP dm 9.9, NA dm 0.14; W-2: CP dm 8.4, NA dm 0.31");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Work order 61-3305; Analyte         Unit   W-1    W-2; Crude Protein   % DM   9.9    8.4; Sodium          % DM   0.14   0.31",
                "Analyte         Unit    Method              W-1    W-2;                                  limit; Crude Protein   % DM    NIR      0.1        9.9    8.4; Sodium          % DM    NIR      0.01       0.14   0.31",
                "Analyte         Unit       Method    W-1    W-2; Crude Protein   % DM       NIR       9.9    8.4; NDFD 30 h       % of NDF   NIR       57     55; Sodium          % DM       ICP       0.14   0.31"
            })
    void whatStandsOverOrBetweenTakesNoNames(String sheet) {
        assertThat(said(read(sheet))).isEqualTo("W-1: CP dm 9.9, NA dm 0.14; W-2: CP dm 8.4, NA dm 0.31");
    }

    /** Four names over five figures: whose each is cannot be told, though a line that lacks one has four. */
    @Test
    void figuresUnderTooFewNamesAreListed() {
        var found = read(
                "Basis: dry matter; Analyte     Unit    W-1     W-2             W-3     W-4; CP          %       9.9     8.4     8.6     4.2     12.7; ADF         %       33.1    36.8    36.5    51.0    34.4; Ca          %       0.36    0.29    0.28            0.88; ; Analyte     Unit    W-1     W-2; Ash         %       8.0     8.2");
        assertThat(said(found)).isEqualTo("W-1: ASH dm 8.0; W-2: ASH dm 8.2");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("0.88"));
    }

    @Test
    void anAnswerTakesThoughABasisEndsTheHeading() {
        var sheet = "Test~Unit~As fed~Dry~Cow guide (dry); CP~%~7.7~8.8~7.0; ADF~%~33.3~38.0~40";
        assertThat(read(sheet).columns()).allMatch(asked -> asked.said() == null);
        var words = new Vocabulary(Map.of(), Map.of("cow guide (dry)", ColumnIs.LEFT_OUT));
        var found = NothingIsLostTest.read(lines(sheet), words);
        assertThat(said(found)).isEqualTo(": CP ar 7.7, CP dm 8.8, ADF ar 33.3, ADF dm 38.0");
        assertThat(found.columns()).allMatch(asked -> asked.said() != null);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Test            As fed   Dry; Crude protein %   8.9    10.8   7 - 9; Sulfur %          0.15   0.17   0.4 max | : CP ar 8.9, CP dm 10.8, S ar 0.15, S dm 0.17",
                "Dry basis; Crude protein 8.8 % (2025: 9.6 %); ADF 38.0 % (last year 37.1) | : CP dm 8.8, ADF dm 38.0",
                "Protein was 7.9 percent as fed, which is 9.2 percent dry. | : CP ar 7.9, CP dm 9.2",
                "Basis: dry matter; ADF 38.0 %; Nitrate was 3,900 ppm NO3 on dry matter. Most people grow careful above 5,000 ppm. | : ADF dm 38.0, NO3 dm 3900"
            })
    void whatStandsBesideLeavesTheFigures(String sheet, String says) {
        assertThat(said(read(sheet))).isEqualTo(says);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "NDF (a) 61.3 % | NDF dm 61.3",
                "NDFom 61.0 % | NDF dm 61.0",
                "aNDF (om) 61.0 % | NDF dm 61.0",
                "uNDF240om 20 % | UNDF dm 20",
                "Sugars (WSC) 7.1 % | WSC dm 7.1",
                "Sugar ESC 5.0 % | ESC dm 5.0",
                "Lignin (Sulfuric acid) 5.3 % | LIGNIN dm 5.3",
                "Nitrate (as N) 310 ppm | NO3N dm 310",
                "Adjusted CP 8.0 % | ACP dm 8.0",
                "NFC 2001 22 % | NFC dm 22",
                "TDN 2001, % 57 | TDN dm 57",
                "NH3-N % of N 7.1 | NH3N 7.1",
                "Total dry matter, % 33.7 | DM 33.7",
                "Moisture, total 66.3 | MOISTURE 66.3"
            })
    void aNameIsKnown(String line, String says) {
        assertThat(said(read("Dry basis; ADF 38.0 %; " + line))).isEqualTo(": ADF dm 38.0, " + says);
    }
}
