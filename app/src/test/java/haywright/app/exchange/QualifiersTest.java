package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.exchange.csv.ReportCsv;
import haywright.app.exchange.lab.Decimals;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.app.exchange.text.ReportText;
import haywright.forage.Basis;
import haywright.workings.Refused;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Words and numbers beside a name that are neither its figure nor its basis. What each line says a person reads off it. */
class QualifiersTest {
    private static Understood text(String lines) {
        return ReportText.read(lines, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
    }

    private static List<String> figures(Understood found) {
        return found.samples().get(0).cells().stream()
                .map(c -> c.analyte() + (c.basis() == null ? "" : c.basis() == Basis.DRY_MATTER ? " dm" : " ar") + " "
                        + c.text().replaceAll("\\s", ""))
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Potassium, % wet 2.24 | K dm 2.24",
                "Calcium, % DM wet 0.33 | CA dm 0.33",
                "Zinc, ppm   wet chem   21 | ZN dm 21",
                "Crude protein, % wet basis 8.1 | CP ar 8.1",
                "Crude protein, % wet weight 8.1 | CP ar 8.1",
                "Dry matter, % oven 87.3 | DM 87.3",
                "ADF, %   NIR    38.1 | ADF dm 38.1",
                "aNDF, %   NIRS    58.6   usual 53.0-64.0 | NDF dm 58.6",
                "TDN 1X (2001), % calc 56.9 | TDN dm 56.9",
                "TDN (2001) % 56.9 | TDN dm 56.9",
                "TDN (4), % 56.9 | TDN dm 56.9",
                "ADF 37.2 (33.0 - 41.0) | ADF dm 37.2",
                "ADF   37.2   (33.0 to 41.0) | ADF dm 37.2",
                "ADF 37.2 [33-41] | ADF dm 37.2",
                "Nitrate  nitrogen   came  in at  less  than    100   ppm | NO3N dm <100"
            })
    void aFigureStandsBehindWhatQualifiesItsName(String line, String says) {
        assertThat(figures(text("Results on dry matter basis\n" + line + "\n"))).containsExactly(says);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {"Potassium, % wet 2.24", "Potassium, %   wet   2.24", "Calcium wet 0.33 %"})
    void wetAloneIsNoBasis(String line) {
        assertThatThrownBy(() -> text(line + "\nADF % DM 38.1\n"))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems().get(0).field()).isEqualTo("basis"));
    }

    @Test
    void wetBesideDryOverTwoColumnsIsOne() {
        assertThat(figures(text("Test            Wet   Dry\nCrude protein   8.1   9.2\n")))
                .containsExactly("CP ar 8.1", "CP dm 9.2");
        assertThat(figures(ReportCsv.read(
                        "Test,Wet,Dry\nCrude protein,8.1,9.2\n", Decimals.BY_SHEET, null, Vocabulary.HOUSE)))
                .containsExactly("CP ar 8.1", "CP dm 9.2");
    }

    @Test
    void aMethodInAColumnOfAFileIsNoBasis() {
        var csv = "Test,Unit,Method,N1,N2\nCalcium,% DM,wet,0.41,0.48\nADF,% DM,NIR,38.1,37.4\n";
        assertThat(figures(ReportCsv.read(csv, Decimals.BY_SHEET, null, Vocabulary.HOUSE)))
                .containsExactly("CA dm 0.41", "ADF dm 38.1");
        assertThatThrownBy(() -> ReportCsv.read(
                        "Sample,CP % wet,ADF % DM\nA,8.1,38\n", Decimals.BY_SHEET, null, Vocabulary.HOUSE))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aLineWithFiguresIsNoLineOfHeadings() {
        var found = text("Dry matter, %         some way   87.3\nADF, % DM   38.1\n");
        assertThat(figures(found)).containsExactly("ADF dm 38.1");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("87.3"));
    }

    private static Understood csv(String lines) {
        return ReportCsv.read(lines, Decimals.BY_SHEET, null, Vocabulary.HOUSE);
    }

    @Test
    void nitrateInPartsOfAMillionIsAskedWhereItsFormIsNotSaid() {
        for (var found : List.of(
                text("ADF % DM 38\nNitrate, ppm DM 1240\n"),
                text("Test    Units   Dry matter\nADF     %       38.1\nNitrate   ppm   1240\n"),
                csv("Sample,ADF % DM,Nitrate (mg/kg DM)\nA,38,1240\n"),
                csv("Test,Unit,Dry matter\nADF,%,38\nNitrate,ppm,1240\n"))) {
            assertThat(figures(found)).hasSize(1).allMatch(figure -> figure.startsWith("ADF"));
            assertThat(found.notTaken()).anyMatch(line -> line.contains("NO3-N") && line.contains("1240"));
            assertThat(found.names()).anyMatch(name -> name.written().startsWith("Nitrate") && name.taken() == null);
        }
        assertThat(figures(text("Results on dry matter basis\nNitrate 1240 ppm as NO3-N\n")))
                .containsExactly("NO3N dm 1240");
        assertThat(figures(text("Nitrate (NO3), ppm DM 1240\nNitrate, % DM 0.34\n")))
                .contains("NO3 dm 1240");
    }

    @Test
    void aNameInTwoLanguagesIsKnownByEither() {
        assertThat(figures(csv("Essai / Test;Résultat / Result;Unité / Unit\nProtéine brute / Crude protein;12,9;% DM\n"
                        + "Starch / Stärke;55,2;% DM\nCa/P ratio;1,4;\nCalcium / Phosphorus;1,4;% DM\n")))
                .containsExactly("CP dm 12.9", "STARCH dm 55.2");
    }

    @Test
    void ergotBodiesByWeightAreNoAlkaloids() {
        var found = csv("Test,Unit,Result\nADF,% DM,38\nErgot,% by weight,0.08\n");
        assertThat(figures(found)).containsExactly("ADF dm 38");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("0.08") && line.contains("alkaloids"));
    }

    @ParameterizedTest
    @CsvSource({"Reporting limit", "MDL", "Detection limit", "Method", "Units", "Lower reporting limit"})
    void whatTellsOfTheMeasurementIsNoSample(String name) {
        var rows = csv("Lab ID,Sample,ADF % DM,CP % DM\n7,A,38,9\n" + name + ",,0.3,0.2\n");
        assertThat(rows.samples()).extracting(Understood.Sample::code).containsExactly("A");
        assertThat(rows.notTaken()).anyMatch(line -> line.contains(name));
        var columns = csv("Test,Unit," + name + " 1,A1,B2\nADF,% DM,0.3,38,39\nCP,% DM,0.2,9,8\n");
        assertThat(columns.samples()).extracting(Understood.Sample::code).containsExactly("A1", "B2");
    }

    @ParameterizedTest
    @CsvSource({"Mag, Magnesium", "Potas., Potassium", "Moly, Molybdenum"})
    void aShortFormIsAskedWithTheNearestName(String written, String near) {
        assertThat(text("ADF % DM 38\n" + written + " 0.16\n").notTaken())
                .anyMatch(line -> line.contains("did you mean " + near));
        assertThat(csv("Test,Unit,Result\nADF,% DM,38\n" + written + ",% DM,0.16\nTest weight,lb/bu,48\n")
                        .notTaken())
                .anyMatch(line -> line.contains("Did you mean " + near))
                .anyMatch(line -> line.contains("Test weight") && !line.contains("mean"));
    }

    @Test
    void boxesSideBySideEachHaveTheirOwnHeading() {
        var found = text("""
                Quiet Creek Forage Works               Minerals (dry matter basis)
                Main Road                              Calcium, %        wet   0.33
                Client sample: OH-1                    Potassium, %      wet   2.24
                Sampled: 2025-09-02                    Zinc, ppm         wet   < 5
                Lab ref: KH-77120

                Fiber (as received)                    On file from last year
                ADF, %         NIR    37.2             protein 11.8
                aNDF, %        NIR    58.6             TDN 59.3
                """);
        assertThat(found.samples()).hasSize(1);
        assertThat(figures(found))
                .containsExactlyInAnyOrder("CA dm 0.33", "K dm 2.24", "ZN dm <5", "ADF ar 37.2", "NDF ar 58.6");
        assertThat(found.samples().get(0).sampled()).isEqualTo("2025-09-02");
        assertThat(found.samples().get(0).laboratory()).isEqualTo("Quiet Creek Forage Works");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("59.3"));
    }

    @Test
    void aRemarkInBracketsIsNoLaboratory() {
        assertThat(text("  NEW   BRIDGE   LAB   ( invented )\nADF % DM 38\n")
                        .samples()
                        .get(0)
                        .laboratory())
                .isEqualTo("NEW BRIDGE LAB");
    }
}
