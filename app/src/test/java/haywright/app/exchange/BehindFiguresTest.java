package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Heading;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * No figure is kept in a unit or on a basis that its sheet does not say: what stands behind a figure, over it or beside
 * its name is read, or the figure waits until somebody says what it means. Values by pencil: 1 lb in a ton of 2,000 lb
 * is 0.05 %, 1 g in 1 kg and 1 ‰ are 0.1 %, 1 mEq in 100 g is 10 in 1 kg.
 */
class BehindFiguresTest {
    private static List<String> read(String text) {
        return figures(NothingIsLostTest.read(text));
    }

    private static List<String> figures(Understood found) {
        return found.samples().stream()
                .flatMap(sample -> sample.cells().stream())
                .map(cell -> cell.analyte()
                        + (cell.basis() == null ? "" : cell.basis() == Basis.DRY_MATTER ? " dm" : " ar")
                        + " " + cell.text() + " "
                        + (cell.unit() == null ? "?" : cell.unit().symbol()))
                .toList();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "Calcium 9.2 lb per ton | CA dm 9.2 lb/ton",
                "Calcium: 9.2 lb per ton | CA dm 9.2 lb/ton",
                "Calcium, 9.2 pounds a ton | CA dm 9.2 lb/ton",
                "Sodium 0.9 lbs per ton | NA dm 0.9 lb/ton",
                "Magnesium 1.9 #/ton | MG dm 1.9 lb/ton",
                "Starch 19 g per kg | STARCH dm 19 g/kg",
                "Potassium 19.3 g kg-1 | K dm 19.3 g/kg",
                "Potassium 19.3 g kg⁻¹ | K dm 19.3 g/kg",
                "Chloride 4.6 grams per kilogram | CL dm 4.6 g/kg",
                "Sulfur 1.7 ‰ | S dm 1.7 g/kg",
                "Sulfur (grams per kilogram) 1.7 | S dm 1.7 g/kg",
                "Iron 212 milligrams per kilogram | FE dm 212 mg/kg",
                "Copper 6 parts per million | CU dm 6 ppm",
                "NEm .61 Mcal per pound | NEM dm .61 Mcal/lb",
                "DCAD 25 meq/100g | DCAD dm 25 mEq/100 g",
                "DCAD 250 meq per kg | DCAD dm 250 mEq/kg",
                "Calcium   9.2   lb per ton | CA dm 9.2 lb/ton",
                "Zinc 24 mg/kg FM | ZN ar 24 mg/kg",
                "Zinc 24 mg/kg fresh matter | ZN ar 24 mg/kg",
                "Calcium 0.46 %, which is fine | CA dm 0.46 %",
                "Calcium 0.46 low | CA dm 0.46 ?",
                "Calcium 0.46 (NIR) | CA dm 0.46 ?"
            })
    void aUnitBehindAFigureIsItsUnit(String line, String says) {
        assertThat(read("Dry matter 88.2 %\nCrude protein 9.8 % dry\n" + line + "\n"))
                .containsExactly("DM 88.2 %", "CP dm 9.8 %", says);
    }

    @Test
    void sharesAreAsMuchAsWithAPencil() {
        assertThat(Heading.unit("lb per ton").orElseThrow().to(Unit.PERCENT, 9)).isEqualTo(0.45);
        assertThat(Heading.unit("‰").orElseThrow().to(Unit.PERCENT, 20)).isEqualTo(2);
        assertThat(Heading.unit("meq/100g").orElseThrow().to(Unit.MEQ_PER_KG, 25))
                .isEqualTo(250);
    }

    /** Neither taken in the usual unit nor lost: it is listed, and a person may say what it is. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "Calcium 118 g | Calcium",
                "Calcium 11.8 widgets | Calcium",
                "Calcium: 4.7 oz per ton | Calcium",
                "Calcium 460 mg/100 g | Calcium",
                "Calcium 0.46 % TQ | Calcium",
                "Calcium 0.46 % t.q. | Calcium",
                "Calcium 0.46 (per cow) | Calcium",
                "Calcium 9.2 in lb per bale | Calcium",
                "Calcium   22   grains per pound | Calcium",
                "Calcium   22   widgets | Calcium"
            })
    void whatNobodyKnowsBehindAFigureIsAsked(String line, String name) {
        var text = "Dry matter 88.2 %\nCrude protein 9.8 % dry\n" + line + "\n";
        var found = NothingIsLostTest.read(text);
        assertThat(figures(found)).containsExactly("DM 88.2 %", "CP dm 9.8 %");
        assertThat(found.notTaken()).anyMatch(listed -> listed.contains(line));
        var written = found.names().get(2).written();
        assertThat(written).startsWith(name);
        var said = new Vocabulary(
                Map.of(Heading.key(written), new Vocabulary.Meaning(Analyte.CA, Unit.PERCENT, Basis.DRY_MATTER)));
        assertThat(NothingIsLostTest.read(text, said).samples().get(0).cells())
                .anyMatch(cell -> cell.analyte() == Analyte.CA && cell.unit() == Unit.PERCENT);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "Minerals       As fed        Dry\\n               lb/ton        lb/ton | lb/ton",
                "Minerals       As fed        Dry\\n               (g/kg)        (g/kg) | g/kg",
                "Minerals       As fed        Dry\\n               mg/kg         mg/kg | mg/kg",
                "               As fed        Dry\\n               g per kg      g per kg | g/kg",
                "               lb/ton        lb/ton\\nMinerals       As fed        Dry | lb/ton",
                "Minerals       lb/ton        lb/ton\\n               As fed        Dry | lb/ton"
            })
    void aRowOfUnitsIsOfItsColumns(String head, String unit) {
        assertThat(read("Moisture 11.2 %\n" + head.replace("\\n", "\n")
                        + "\nCalcium        8.1           9.2\nNEm, Mcal/lb   .48           .54\n"))
                .containsExactly(
                        "MOISTURE 11.2 %",
                        "CA ar 8.1 " + unit, "CA dm 9.2 " + unit, "NEM ar .48 Mcal/lb", "NEM dm .54 Mcal/lb");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "Figures are grams per kilogram of dry matter.",
        "All results are reported in g/kg dry matter",
        "g/kg DM",
        "Units: g per kg"
    })
    void aSentenceSaysTheUnitOfAllFigures(String sentence) {
        assertThat(read(sentence + "\nCalcium 4.6\nZinc 24 ppm\nDry matter 88.2 %\n"))
                .containsExactly("CA dm 4.6 g/kg", "ZN dm 24 ppm", "DM 88.2 %");
    }

    /** One whose own basis differs from that of the rest. */
    @Test
    void aBasisBehindOneFigureIsItsOwn() {
        assertThat(read("Results as received\nCrude protein 9.8 %\nSulfur .17 %d.m.\nZinc 24 ppm a.r.\n"))
                .containsExactly("CP ar 9.8 %", "S dm .17 ?", "ZN ar 24 ppm");
    }

    /** "% of X" behind a name that nobody knows is no figure of X. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "TTNDFD, % NDF 41",
                "Digestible NDF fraction, % DM 31.7",
                "Sugars left over, % DM 6.1",
                "Starch digestibility, 7 hr, % of starch 74",
                "Heat damage, % of CP 7",
                "pdNDF, % DM 29",
                "Ammonia CP equivalent, % DM 0.9",
                "Widget index, percent of NDF 41",
                "Widget index: pct DM 41"
            })
    void aShareOfSomethingIsNotTheThing(String line) {
        var rest = "Dry matter 88.2 %\nCrude protein, % DM 9.8\nNDF, % DM 58\nStarch, % DM 2.2\n";
        for (var text : List.of(line + "\n" + rest, rest + line + "\n")) {
            var found = NothingIsLostTest.read(text);
            assertThat(figures(found)).containsExactly("DM 88.2 %", "CP dm 9.8 %", "NDF dm 58 %", "STARCH dm 2.2 %");
            assertThat(found.notTaken()).anyMatch(listed -> listed.contains(line.replaceFirst(".*\\s", "")));
        }
    }

    /** A mark before a column of units explains nothing, and no other line waits for it. */
    @Test
    void aUnitBehindAMarkIsNotItsMeaning() {
        assertThat(read("                          As fed    Dry\nTDN *              pct      21.4   60.7\n"
                        + "NE MAINT *  (MCAL/CWT)      21.4   60.7\n* calculated\n"))
                .containsExactly("TDN ar 21.4 %", "TDN dm 60.7 %", "NEM ar 21.4 Mcal/cwt", "NEM dm 60.7 Mcal/cwt");
        assertThat(read("Results on dry matter\nPotassium ¹ % 1.9\nIron ¹ ppm 212\nCalcium ¹ 0.46\n"))
                .containsExactly("K dm 1.9 %", "FE dm 212 ppm", "CA dm 0.46 ?");
    }

    @Test
    void aMailThatIsQuotedWholeIsTheReport() {
        assertThat(read("> Moisture 11.8 %\n>\n> > Crude protein 9.8 % dry\n"))
                .containsExactly("MOISTURE 11.8 %", "CP dm 9.8 %");
        assertThat(read("On Mon, Oct 12, 2026 at 3:01 PM Bench Lab wrote:\n>                      As fed     Dry\n"
                        + "> Crude protein, %      8.7       9.8\n> NDF, %               53.1      60.2\n"))
                .containsExactly("CP ar 8.7 %", "CP dm 9.8 %", "NDF ar 53.1 %", "NDF dm 60.2 %");
    }

    /** Headings that nobody knows are asked wherever they stand over the figures, and what is said of them counts. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "'Analyte                    Without water    The way it was'",
                "'ANALYTE  WITHOUT WATER  THE WAY IT WAS'",
                "'Name                    Without water              The way it was'"
            })
    void headingsThatNobodyKnowsAreAsked(String head) {
        var text = head + "\nCrude protein, %          9.8      8.7\nNDF, %                   60.2     53.1\n";
        var open = NothingIsLostTest.read(text);
        assertThat(open.columns())
                .extracting(column -> column.written().toLowerCase(Locale.ROOT))
                .containsExactly("without water", "the way it was");
        var said = new Vocabulary(
                Map.of(), Map.of("without water", ColumnIs.DRY_MATTER, "the way it was", ColumnIs.AS_RECEIVED));
        assertThat(figures(NothingIsLostTest.read(text, said)))
                .containsExactly("CP dm 9.8 %", "CP ar 8.7 %", "NDF dm 60.2 %", "NDF ar 53.1 %");
    }

    @Test
    void plainWordsForTheTwoBasesAreKnown() {
        assertThat(
                        read(
                                "Test            Free of moisture    As it came in\nCrude protein, %      9.8               8.7\n"))
                .containsExactly("CP dm 9.8 %", "CP ar 8.7 %");
    }

    /** How many samples there are is no third sample; one that is called N is. */
    @Test
    void aCountOfSamplesIsNoSample() {
        var found = NothingIsLostTest.read("Sample,DM %,CP % DM\nBag 1,88.2,9.8\nBag 2,88.9,10.2\nN,2,2\n");
        assertThat(found.samples()).extracting(Understood.Sample::code).containsExactly("Bag 1", "Bag 2");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("N 2 2"));
        assertThat(NothingIsLostTest.read("Sample,DM %,CP % DM\nCreek,88.2,9.8\nN,88.9,10.2\n")
                        .samples())
                .extracting(Understood.Sample::code)
                .containsExactly("Creek", "N");
    }

    @Test
    void aFigureBeforeItsNameIsListed() {
        var found = NothingIsLostTest.read(
                "Your oat hay came back at 530 ppm nitrate nitrogen, so they call it safe.\nCrude protein 9.8 % dry\n");
        assertThat(figures(found)).containsExactly("CP dm 9.8 %");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("530 ppm nitrate nitrogen"));
    }

    @Test
    void aFormBehindAFigureTellsWithAColonToo() {
        assertThat(read("Crude protein 9.8 % dry\nNitrate: 2,350 ppm as nitrate (NO3)\nSugars, % DM 6.1\n"))
                .containsExactly("CP dm 9.8 %", "NO3 dm 2350 ppm", "ESC dm 6.1 %");
    }

    /** 34.0 % of its protein, said in a column of bases or of units. */
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '!',
            value = {
                "Analyte | Basis | Result // Soluble protein | % of CP | 34.0 // Crude protein | % of DM | 9.8",
                "Analyte,Basis,Result // Moisture,as is,11 // Soluble protein,% of CP,34.0 // Crude protein,dry,9.8",
                "Analyte,Basis,As fed,Dry // Moisture,,11, // Soluble protein,% of CP,,34.0 // Crude protein,,,9.8"
            })
    void aShareInAColumnOfBasesIsRead(String sheet) {
        assertThat(read(sheet.replace(" // ", "\n")))
                .contains("SP 34.0 %")
                .anyMatch(cell -> cell.startsWith("CP dm 9.8"));
    }

    /** The same in the cells of a file: beside a figure, in its own cell, and in a line of units under the headings. */
    @Test
    void unitsInAFileAreReadLikewise() {
        var found = NothingIsLostTest.read("Analyte,Result\nMoisture,11.8 %\nCalcium,9.2 lb per ton\nZinc,24 widgets\n"
                + "Copper,<6 ppm DM\nSulfur,.17 %d.m.\nIron,212 mg/kg FM\n");
        assertThat(figures(found))
                .containsExactly(
                        "MOISTURE 11.8 %", "CA dm 9.2 lb/ton", "CU dm <6 ppm", "S dm .17 %", "FE ar 212 mg/kg");
        assertThat(found.notTaken()).anyMatch(line -> line.contains("24 widgets"));
        assertThat(read("Test,As fed,Dry\n,lb per ton,lb per ton\nCalcium,8.1,9.2\nPotassium,38,41\n"))
                .containsExactly("CA ar 8.1 lb/ton", "CA dm 9.2 lb/ton", "K ar 38 lb/ton", "K dm 41 lb/ton");
        assertThat(read("Sample,Calcium,Starch,Moisture\n,lb per ton,g per kg,%\nA,9.2,19,11.8\nB,9.1,18,12.8\n"))
                .startsWith("CA dm 9.2 lb/ton", "STARCH dm 19 g/kg");
    }
}
