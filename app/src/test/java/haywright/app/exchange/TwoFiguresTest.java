package haywright.app.exchange;

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

/** Two figures of one analyte of one sample: neither is taken before somebody says which, and the rest of the sheet is. */
class TwoFiguresTest {
    private static final String HEAD =
            "Dust Creek Lab\nSample: North\nAll results on dry matter basis.\nDry matter 88.4 %\n";

    @ParameterizedTest(name = "{0} and {1}")
    @CsvSource(
            delimiter = ';',
            value = {
                "Crude protein 8.1 %; Crude protein (rerun) 9.5 %",
                "Crude protein 8.1 %; Repeat Crude protein 9.5 %",
                "Crude protein 8.1 %; Crude protein, re-test 9.5 %",
                "Crude protein 8.1 %; Crude protein (duplicate) 9.5 %",
                "Crude protein 8.1 %; Crude protein run 2 9.5 %",
                "Crude protein 8.1 %; Crude protein - rechecked 9.5 %",
                "Crude protein 8.1 %; Crude protein 9.5 %",
                "CP 8.1 %; Crude protein 9.5 %",
                "Crude protein, NIR 8.1 %; Crude protein, combustion 9.5 %",
                "Crude protein   8.1   %;Crude protein (rerun)   9.5   %"
            })
    void bothAreAskedAndTheRestIsTaken(String one, String other) {
        var sheet = HEAD + one + "\n" + other + "\nNDF 61.7 %\nCalcium 0.42 %\n";
        var found = NothingIsLostTest.read(sheet);
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("North: DM 88.4, NDF dm 61.7, CA dm 0.42");
        assertThat(found.columns()).hasSize(2);
        assertThat(String.join("\n", found.notTaken())).contains("8.1", "9.5");
        for (int i = 0; i < 2; i++) {
            var counts = found.columns().get(i).written().toLowerCase();
            var said = new Vocabulary(Map.of(), Map.of(counts, ColumnIs.RESULT));
            var answered = NothingIsLostTest.read(sheet, said);
            assertThat(answered.columns()).noneMatch(column -> column.said() == null);
            assertThat(WhoseFiguresTest.figures(answered))
                    .isEqualTo("North: DM 88.4, CP dm %s, NDF dm 61.7, CA dm 0.42".formatted(i == 0 ? "8.1" : "9.5"));
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "TDN 58.0 %; TDN 56.1 %",
                "TDN (ADF) 58.0 %; TDN (NRC) 56.1 %",
                "TDN (ADF equation) 58.0 %; TDN (summative) 56.1 %",
                "TDN, ADF method 58.0 %; TDN, OSU summative 56.1 %",
                "TDN, %   58.0; TDN, %   56.1"
            })
    void twoWaysToEnergyAreAsked(String lines) {
        var found = NothingIsLostTest.read(HEAD + lines.replace("; ", "\n") + "\nCalcium 0.42 %\n");
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("North: DM 88.4, CA dm 0.42");
        assertThat(found.columns()).hasSize(2);
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "NDF (rerun) 60.0 %",
                "Repeat NDF 60.0 %",
                "NDF, re-analyzed 60.0 %",
                "NDF retest: 60.0 %",
                "NDF   (repeat)   60.0 %"
            })
    void aRerunAloneIsTakenAndLeavesTheRest(String line) {
        var found = NothingIsLostTest.read(HEAD + line + "\nCrude protein 9.5 %\n");
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("North: DM 88.4, NDF dm 60.0, CP dm 9.5");
    }

    @Test
    void columnsOfTwoMethodsAreAsked() {
        for (var sheet : List.of(
                "Lot;DM %;CP NIR % DM;CP combustion % DM;NDF % DM\nNorth;88.4;9.2;9.5;61.7\n",
                "Sample;North\nTest;Result;Unit;Basis\nDry matter;88.4;%;\nCrude protein;9.2;%;dry\nCrude protein (rerun);9.5;%;dry\nNDF;61.7;%;dry\n")) {
            var found = NothingIsLostTest.read(sheet);
            assertThat(WhoseFiguresTest.figures(found)).as(sheet).isEqualTo("North: DM 88.4, NDF dm 61.7");
            assertThat(found.columns()).as(sheet).hasSize(2);
        }
    }

    @Test
    void oneFigureWrittenTwiceIsOne() {
        var found = NothingIsLostTest.read(HEAD + "Crude protein 9.5 %\nCP 9.50 %\nProtein, crude 95 g/kg\n");
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("North: DM 88.4, CP dm 9.5");
        assertThat(found.columns()).isEmpty();
    }

    @Test
    void aBagThatWasRunTwiceIsAsked() {
        var sheet = """
                Bag;Ranch mark;Sampled;Moisture %;CP % (DM)
                B-1;NORTH MEADOW;09/04/2026;11.1;9.4
                B-2;SCHOOL SECTION;09/04/2026;9.9;7.2
                B-2 rerun;SCHOOL SECTION;09/04/2026;9.8;7.0
                """;
        var found = NothingIsLostTest.read(sheet);
        assertThat(WhoseFiguresTest.figures(found)).isEqualTo("B-1: MOISTURE 11.1, CP dm 9.4");
        assertThat(found.columns().stream().map(Understood.Column::written).collect(Collectors.toSet()))
                .containsExactlyInAnyOrder("result B-2", "result B-2 rerun");
        var said = new Vocabulary(Map.of(), Map.of("result b-2", ColumnIs.RESULT));
        assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet, said)))
                .isEqualTo("B-1: MOISTURE 11.1, CP dm 9.4; B-2: MOISTURE 9.9, CP dm 7.2");
    }
}
