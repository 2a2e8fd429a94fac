package haywright.app.exchange;

import static haywright.app.exchange.WhoseFiguresTest.figures;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A line that stands alone over figures, and is no section of a result, closes those of the sample. */
class OthersBelowTest {
    private static String under(String title) {
        return "Lab\nSample: Y\nDry matter 88.4 %\nCrude protein 8.6 % DM\n" + title
                + "\nPhosphorus 0.20 % DM\nMagnesium 0.12 % DM\n";
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Cows need:",
                "A dry cow needs:",
                "Recommended:",
                "Requirements of a dry cow",
                "NRC requirement",
                "Typical brome hay",
                "What good hay tests",
                "For comparison:",
                "Comparison (2025)",
                "Book values:",
                "State average",
                "Limits",
                "Guideline values",
                "Neighbor",
                "Check sample",
                "Our 2025 crop",
                "In 2025:",
                "2025:",
                "Same field in 2025:",
                "Results, 2025",
                "A year ago this field had",
                "Nov 2025:",
                "Uncle Bert’s stack",
                "South pasture"
            })
    void whatStandsUnderItIsListed(String title) {
        for (var between : List.of("", "\n", "\nOn a dry matter basis:\n")) {
            var found = NothingIsLostTest.read(under(title + between));
            assertThat(figures(found)).as(title).isEqualTo("Y: DM 88.4, CP dm 8.6");
            assertThat(String.join("\n", found.notTaken())).contains("0.20", "0.12");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Minerals",
                "Minerals:",
                "Macro minerals, % DM",
                "Dry matter basis:",
                "Other:",
                "Analysis continued",
                "Page 2 of 2",
                "Y",
                "Y:",
                "Your hay:",
                "Trace minerals and nitrate"
            })
    void aSectionOfTheResultOrTheSamplesNameGoesOn(String title) {
        assertThat(figures(NothingIsLostTest.read(under(title))))
                .isEqualTo("Y: DM 88.4, CP dm 8.6, P dm 0.20, MG dm 0.12");
    }

    @Test
    void whatTheSampleNeedsMayStandFirst() {
        assertThat(figures(NothingIsLostTest.read("""
                        Lab
                        Sample: X
                        Cows need:
                        Crude protein 7.0 % DM
                        Phosphorus 0.20 % DM
                        Your hay:
                        Crude protein 8.6 % DM
                        Phosphorus 0.14 % DM
                        """))).isEqualTo("X: CP dm 8.6, P dm 0.14");
        assertThat(figures(NothingIsLostTest.read("""
                        Dry matter 91.0%
                        Crude protein 9.9 % DM
                        Magnesium 0.15 % DM
                        That was November 2025. Now the new ones:
                        Dry matter 89.3%
                        Crude protein 8.1 % DM
                        """))).isEqualTo(": DM 89.3, CP dm 8.1");
    }

    @Test
    void aSectionOfAnEarlierYearWithItsOwnBasisStaysApart() {
        var found = NothingIsLostTest.read("""
                Sample: Lower field brome
                Dry matter 89.3%
                On a dry matter basis:
                Crude protein 8.1 %
                Calcium 0.36 %

                Results, 2025
                Sample: Lower field brome
                Dry matter 91.0%
                On a dry matter basis:
                Crude protein 9.9 %
                Magnesium 0.15 %
                """);
        assertThat(figures(found)).isEqualTo("Lower field brome: DM 89.3, CP dm 8.1, CA dm 0.36");
        assertThat(String.join("\n", found.notTaken())).contains("91.0", "9.9", "0.15");
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "From: Inez Dallow\nSent: Monday, November 3, 2025 9:12 AM\nTo: Wade\nSubject: results\n",
                "________________________________\nFrom: Inez Dallow\nSent: Nov 3, 2025\n",
                "Am 03.11.2025 um 09:12 schrieb Inez Dallow:\n",
                "On Mon, Nov 3, 2025 at 9:12 AM Inez Dallow wrote:\n",
                "Here is the one from 2025 again:\n"
            })
    void aMailThatIsQuotedIsListed(String quote) {
        var found = NothingIsLostTest.read("Sample: Lower field\nDry matter 89.3%\nCrude protein 8.1 % DM\nInez\n\n"
                + quote + "Sample: Lower field\nDry matter 91.0%\nCrude protein 9.9 % DM\nMagnesium 0.15 % DM\n");
        assertThat(figures(found)).isEqualTo("Lower field: DM 89.3, CP dm 8.1");
        assertThat(String.join("\n", found.notTaken())).contains("91.0", "9.9", "0.15");
    }
}
