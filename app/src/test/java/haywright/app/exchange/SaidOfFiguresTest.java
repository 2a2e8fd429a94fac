package haywright.app.exchange;

import static haywright.app.exchange.WhoseFiguresTest.figures;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.Vocabulary;
import haywright.forage.Analyte;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Words in names, beside figures and under marks, each of which says something of the figure. */
class SaidOfFiguresTest {
    @Test
    void aRowWhoseNameHasWordsOfABasisIsNoHeading() {
        for (var rows : List.of(
                "Oven dry matter      612      g/kg\nCrude protein        104      g/kg DM\n",
                "Crude protein        104      g/kg DM\nOven dry matter      612      g/kg\n")) {
            var found = NothingIsLostTest.read("Test                 Result   Units\n" + rows);
            assertThat(figures(found)).contains("DM 612", "CP dm 104");
        }
        var unknown = NothingIsLostTest.read("""
                Test                 Result   Units
                Dried residue        612      g/kg fresh
                Crude protein        104      g/kg DM
                """);
        assertThat(figures(unknown)).isEqualTo(": CP dm 104");
        assertThat(String.join("\n", unknown.notTaken())).contains("612");
    }

    @Test
    void howDryMatterWasDriedIsPartOfItsName() {
        assertThat(figures(NothingIsLostTest.read("CP % DM\t10.3\nDry matter, 105 C 3 h\t86.5\n")))
                .isEqualTo(": CP dm 10.3, DM 86.5");
    }

    @Test
    void digestibilityAtOtherHoursIsNotTakenWhateverItIsSaidToBe() {
        var said = new Vocabulary(Map.of("ndfd 30 h", new Vocabulary.Meaning(Analyte.NDFD, null, null)));
        var found = NothingIsLostTest.read("On dry matter\nCP %   10.3\nNDFD 30 h   51.6\n", said);
        assertThat(figures(found)).isEqualTo(": CP dm 10.3");
        assertThat(String.join("\n", found.notTaken())).contains("51.6");
    }

    @Test
    void whatIsOnlyAboutAFigureAndSugarsInGramsAreNotTakenUnasked() {
        var found = NothingIsLostTest.read(
                "On dry matter\nADF 38.0 %\nZinc ~ 24 ppm\nCrude protein approx. 9 %\nSugars 62 g/kg DM\n");
        assertThat(figures(found)).isEqualTo(": ADF dm 38.0");
        assertThat(String.join("\n", found.notTaken())).contains("24", "9", "62");
        assertThat(found.names()).anyMatch(name -> name.written().equals("Sugars") && name.taken() == null);
    }

    @Test
    void aMarkThatSaysTheBasisInOtherWordsIsUnderstood() {
        assertThat(figures(NothingIsLostTest.read("""
                        Sample: X
                        Crude protein % (a)        9.6
                        Phosphorus % (b)           0.15

                        (a) percent or parts in the dry matter
                        (b) in the sample as received
                        """))).isEqualTo("X: CP dm 9.6, P ar 0.15");
    }

    @Test
    void anAverageBesideNamedSamplesIsNoSample() {
        for (var mean : List.of("Lab mean", "Lab avg.", "2025 mean")) {
            var found = NothingIsLostTest.read("""
                                      |  Sample A: Sudan hay       |  Sample B: Millet bales     |  %s
                                      |  As fed      Dry           |  As fed      Dry            |  Dry
                    Crude protein, %% |   7.7        9.1           |   8.6        9.6            |  10.4
                    """.formatted(mean));
            assertThat(figures(found)).isEqualTo("Sudan hay: CP ar 7.7, CP dm 9.1; Millet bales: CP ar 8.6, CP dm 9.6");
            assertThat(String.join("\n", found.notTaken())).contains("10.4");
        }
        var rows = NothingIsLostTest.read(
                "Sample,DM %,CP % DM\nNorth,88,9.1\nAll oat hays 2025,90,8.4\nReference hay QC7,91,12.0\n");
        assertThat(figures(rows)).isEqualTo("North: DM 88, CP dm 9.1");
    }

    /** A scanner took letters for digits: its figures are listed among what was not taken. */
    @Test
    void linesThatAScannerSpoiltAreAmongWhatWasNotTaken() {
        var found =
                NothingIsLostTest.read("Sample: X\nOn dry matter\nADF %   46.0\nCalciurn  %   O.40\n1 Main Street\n");
        assertThat(String.join("\n", found.notTaken())).contains("O.40");
        assertThat(String.join("\n", found.rest())).contains("Main Street").doesNotContain("O.40");
    }
}
