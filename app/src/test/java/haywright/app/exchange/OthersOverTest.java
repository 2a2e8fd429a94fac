package haywright.app.exchange;

import static haywright.app.exchange.WhoseFiguresTest.figures;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whose figures stand in a table is said in a line over its headings, whichever way the table runs. */
class OthersOverTest {
    /** One sample a line, its analytes across, twice under two labels. */
    @ParameterizedTest(name = "{0} beside {1}")
    @CsvSource({
        "Last year, This year",
        "2025, 2026",
        "2025 crop, 2026 crop",
        "Goal, Result",
        "Average, Yours",
        "Prior, Current",
        "Normal range, Your sample"
    })
    void ofTwoGroupsAcrossOnlyTheSamplesIsTaken(String other, String own) {
        for (boolean isOwnLast : List.of(true, false)) {
            var text = new StringBuilder("On dry matter\n%18s%-19s%-19s%n"
                    .formatted("", "       " + (isOwnLast ? other : own), "  " + (isOwnLast ? own : other)));
            text.append("Mark              DM %   CP %     ADF %      CP %     ADF %\n");
            text.append(
                    isOwnLast
                            ? "Pivot 3           87.1   17.0     33.0       18.9     32.4\n"
                            : "Pivot 3           87.1   18.9     32.4       17.0     33.0\n");
            text.append(
                    isOwnLast
                            ? "Bin 14.5          84.6   21.8     29.9       19.2     30.8\n"
                            : "Bin 14.5          84.6   19.2     30.8       21.8     29.9\n");
            var cells =
                    "On dry matter\n| | | " + (isOwnLast ? other : own) + " | | " + (isOwnLast ? own : other) + " | |\n"
                            + text.toString()
                                    .lines()
                                    .skip(2)
                                    .map(line -> "| " + line.replaceAll(" {2,}", " | ") + " |\n")
                                    .collect(Collectors.joining());
            for (var sheet : List.of(text.toString(), cells)) {
                var found = NothingIsLostTest.read(sheet);
                assertThat(figures(found))
                        .as(sheet)
                        .isEqualTo(
                                "Pivot 3: DM 87.1, CP dm 18.9, ADF dm 32.4; Bin 14.5: DM 84.6, CP dm 19.2, ADF dm 30.8");
                assertThat(String.join("\n", found.notTaken())).contains("17.0", "33.0", "21.8", "29.9");
            }
        }
    }

    @Test
    void anAnalyteThatOnlyTheOtherGroupHasIsNotTheSamples() {
        var found = NothingIsLostTest.read("""
                                 This year   Last year
                Mark      DM %   CP % DM     CP % DM   Mg % DM
                Pivot 3   87.1   18.9        17.0      0.22
                """);
        assertThat(figures(found)).isEqualTo("Pivot 3: DM 87.1, CP dm 18.9");
        assertThat(String.join("\n", found.notTaken())).contains("17.0", "0.22");
    }

    private static final String MONTHS = """
                             April                 October
            Mark      DM %   CP % DM   ADF % DM   CP % DM   ADF % DM
            Pivot 3   87.1   17.0      33.0       18.9      32.4
            """;

    @Test
    void ofTwoTimesAcrossEachIsAsked() {
        var found = NothingIsLostTest.read(MONTHS);
        assertThat(figures(found)).isEqualTo("Pivot 3: DM 87.1");
        assertThat(found.columns())
                .extracting(Understood.Column::written)
                .containsExactly("April CP % DM", "April ADF % DM", "October CP % DM", "October ADF % DM");
        var said = new Vocabulary(
                Map.of(),
                Map.of(
                        "april cp % dm", ColumnIs.LEFT_OUT,
                        "april adf % dm", ColumnIs.LEFT_OUT,
                        "october cp % dm", ColumnIs.RESULT,
                        "october adf % dm", ColumnIs.RESULT));
        assertThat(figures(NothingIsLostTest.read(MONTHS, said)))
                .isEqualTo("Pivot 3: DM 87.1, CP dm 18.9, ADF dm 32.4");
    }

    /** A page has no empty lines: what is said of the sample stands right over the years of its columns. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Reported    Nov 6, 2026",
                "Received    Nov 6, 2026",
                "Sampled     Oct 28, 2026",
                "Cut         7/14/2026",
                "Phone  307 555 0101",
                "Lab no.  26-11873",
                "Page  1 of 1",
                "Reported Nov 6, 2026"
            })
    void aLineOfTheSampleOverYearsIsNoHeading(String above) {
        for (var years : List.of("2025 crop;2026 crop", "2025;2026", "Last year;This year")) {
            var both = years.split(";");
            for (boolean isOwnLast : List.of(true, false)) {
                var text = "Plum Coulee Forage Lab\nSample: East stack\n%42s%s%n".formatted("", above)
                        + "%20s%-22s%s%n".formatted("", both[isOwnLast ? 0 : 1], both[isOwnLast ? 1 : 0])
                        + "Analysis            As fed     Dry        As fed     Dry\n"
                        + (isOwnLast
                                ? "Crude protein, %    9.9        11.0       7.6        8.6\n"
                                : "Crude protein, %    7.6        8.6        9.9        11.0\n");
                var found = NothingIsLostTest.read(text);
                assertThat(figures(found)).as(text).isEqualTo("East stack: CP ar 7.6, CP dm 8.6");
                assertThat(String.join("\n", found.notTaken())).contains("9.9", "11.0");
            }
        }
    }

    @Test
    void yearsInTheNamesOfColumnsAreNoFigures() {
        var found = NothingIsLostTest.read("""
                Sample: Pivot 3
                Dry matter 88.0 %
                Mark      CP 25 % DM   CP 26 % DM   ADF 25 % DM   ADF 26 % DM
                Pivot 3   17.0         18.9         33.0          32.4
                """);
        assertThat(figures(found)).isEqualTo("Pivot 3: DM 88.0");
        assertThat(String.join("\n", found.notTaken())).contains("17.0", "18.9", "33.0", "32.4");
    }
}
