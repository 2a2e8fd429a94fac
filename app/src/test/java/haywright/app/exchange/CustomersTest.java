package haywright.app.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.exchange.lab.ColumnIs;
import haywright.app.exchange.lab.Ours;
import haywright.app.exchange.lab.Understood;
import haywright.app.exchange.lab.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sheet with figures of several customers: this ranch's are taken, the others' are asked. */
class CustomersTest {
    private static final Ours OURS = new Ours("Bent Gate Ranch", List.of("NORTH MEADOW", "CREEK BOTTOM"));
    private static final Vocabulary WORDS = new Vocabulary(Map.of(), Map.of(), OURS);

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Customer",
                "Client",
                "Owner",
                "Farm name",
                "Producer",
                "Submitted by",
                "Grower",
                "Account name",
                "Customer / Client"
            })
    void aColumnOfCustomersTellsWhoseTheRowsAre(String heading) {
        for (var sign : List.of("\t", ";", " | ", "~")) {
            var sheet = sign.equals("~")
                    ? "%-20s %-16s %8s %8s%n%-20s %-16s %8s %8s%n%-20s %-16s %8s %8s%n"
                            .formatted(
                                    heading,
                                    "Lot",
                                    "DM %",
                                    "CP % DM",
                                    "Bent Gate Ranch",
                                    "NORTH MEADOW",
                                    "88.4",
                                    "9.5",
                                    "Hollis Dairy",
                                    "NORTH MEADOW",
                                    "86.0",
                                    "17.1")
                    : (heading + "~Lot~DM %~CP % DM\nBent Gate Ranch~NORTH MEADOW~88.4~9.5\n"
                                    + "Hollis Dairy~NORTH MEADOW~86.0~17.1\n")
                            .replace("~", sign);
            var found = NothingIsLostTest.read(sheet, WORDS);
            assertThat(WhoseFiguresTest.figures(found)).as(sheet).isEqualTo("NORTH MEADOW: DM 88.4, CP dm 9.5");
            assertThat(found.columns()).extracting(Understood.Column::written).containsExactly("customer Hollis Dairy");
            assertThat(String.join("\n", found.notTaken())).contains("86.0", "17.1");
        }
    }

    @Test
    void whereNobodyIsKnownEachIsAskedAndAnAnswerHolds() {
        var sheet = "Customer;Lot;DM %;CP % DM\nBent Gate Ranch;A-1;88.4;9.5\nHollis Dairy;A-1;86.0;17.1\n";
        assertThat(NothingIsLostTest.read(sheet).samples()).isEmpty();
        var said = new Vocabulary(
                Map.of(),
                Map.of("customer hollis dairy", ColumnIs.LEFT_OUT, "customer bent gate ranch", ColumnIs.RESULT));
        assertThat(WhoseFiguresTest.figures(NothingIsLostTest.read(sheet, said)))
                .isEqualTo("A-1: DM 88.4, CP dm 9.5");
    }

    @Test
    void customersOverColumnsOrOverReportsAreToldToo() {
        var across = """
                All results on dry basis.
                                         26-551           26-552           26-553
                Customer                 Bent Gate        Bent Gate        R. Ostlund
                Sample                   NORTH MEADOW     CREEK BOTTOM     HOME PLACE
                Dry matter, %            89.0             88.1             83.7
                Crude protein, %         9.2              10.1             18.8
                """;
        var reports = """
                Client: Bent Gate Ranch
                Sample: NORTH MEADOW
                On dry matter
                Dry matter 89.0 %
                Crude protein 9.2 %

                Client: Hollis Dairy Co.
                Sample: BARN 3
                On dry matter
                Dry matter 83.7 %
                Crude protein 18.8 %
                """;
        for (var sheet : List.of(across, reports)) {
            var found = NothingIsLostTest.read(sheet, WORDS);
            assertThat(WhoseFiguresTest.figures(found))
                    .as(sheet)
                    .contains("DM 89.0, CP dm 9.2")
                    .doesNotContain("18.8");
            assertThat(found.columns()).as(sheet).hasSize(1);
        }
    }

    @Test
    void oneCustomerIsNotAsked() {
        var found = NothingIsLostTest.read(
                "Customer;Lot;DM %;CP % DM\nW. Hale;A-1;88.4;9.5\nW. Hale;A-2;86.0;17.1\n", WORDS);
        assertThat(found.samples()).hasSize(2);
        assertThat(found.columns()).isEmpty();
    }

    @Test
    void namesOfLotsHereAreHeadingsOfSamples() {
        for (var sheet : List.of(
                "All on dry matter.\nTest\tNORTH MEADOW\tCREEK BOTTOM\nCrude protein, %\t9.5\t10.1\nNDF, %\t61.0\t58.0\n",
                "All on dry matter.\nTest                NORTH MEADOW    CREEK BOTTOM\nCrude protein, %    9.5             10.1\nNDF, %              61.0            58.0\n",
                "All on dry matter.\n| Test | North Meadow | Creek Bottom |\n| Crude protein, % | 9.5 | 10.1 |\n| NDF, % | 61.0 | 58.0 |\n")) {
            var found = NothingIsLostTest.read(sheet, WORDS);
            assertThat(WhoseFiguresTest.figures(found).toUpperCase(Locale.ROOT))
                    .as(sheet)
                    .isEqualTo("NORTH MEADOW: CP DM 9.5, NDF DM 61.0; CREEK BOTTOM: CP DM 10.1, NDF DM 58.0");
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "Report 0926-33, Bent Gate Ranch, NORTH MEADOW",
                "Sample / Echantillon: NORTH MEADOW",
                "Sample mark: NORTH MEADOW",
                "Client: Bent Gate Ranch           Sample mark: NORTH MEADOW          Material: grass hay",
                "North Meadow",
                "Paddock: North Meadow"
            })
    void theNameOfALotOnTheSheetIsItsSamples(String line) {
        var found = NothingIsLostTest.read(
                "Dust Creek Lab\n" + line + "\nAll on dry matter.\nDry matter 88.4 %\nCrude protein 9.5 %\n", WORDS);
        var sample = found.samples().get(0);
        assertThat((sample.code() + sample.lot() + sample.also()).toUpperCase(Locale.ROOT))
                .contains("NORTH MEADOW");
    }

    @Test
    void theNameOfALotBeforeItsFiguresOrUnderAnyHeadingIsItsSamples() {
        for (var sheet : List.of(
                "North Meadow: DM 88.4, CP 9.5 (dry)\nCreek Bottom: DM 87.0, CP 8.8 (dry)\n",
                "No;Field mark;DM %;CP % DM\n1;North Meadow;88.4;9.5\n2;Creek Bottom;87.0;8.8\n")) {
            var found = NothingIsLostTest.read(sheet, WORDS);
            assertThat(found.samples()).as(sheet).hasSize(2);
            assertThat(found.samples().get(0).code() + found.samples().get(0).lot())
                    .contains("North Meadow");
            assertThat(found.samples().get(1).code() + found.samples().get(1).lot())
                    .contains("Creek Bottom");
            assertThat(WhoseFiguresTest.figures(found)).contains("DM 88.4, CP dm 9.5", "DM 87.0, CP dm 8.8");
        }
    }
}
