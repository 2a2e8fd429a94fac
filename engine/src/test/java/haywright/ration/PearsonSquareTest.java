package haywright.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.FormulaCheck;
import haywright.workings.PublishedTable;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PearsonSquareTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Rows of kind pearson: published squares, two of them published wrong. Sources stand in the table. */
    static Stream<PublishedTable.Row> published() {
        return PublishedTable.read(haywright.lp.LinearProgram.class, "worked.csv").rows().stream()
                .filter(r -> r.text("kind").equals("pearson"));
    }

    private static PearsonSquare square(PublishedTable.Row row) throws Exception {
        JsonNode in = JSON.readTree(row.text("inputs"));
        return new PearsonSquare(
                in.get("target_pct").asDouble(),
                in.get("a_pct").asDouble(),
                in.get("b_pct").asDouble(),
                in.path("batch").asDouble(0));
    }

    private static void agrees(PearsonSquare square, JsonNode with, double tolerance) {
        var ours = Map.of(
                "a_pct_of_mix", square.shareOfA(),
                "b_pct_of_mix", square.shareOfB(),
                "a_amount", square.amountOfA(),
                "b_amount", square.amountOfB());
        with.fields()
                .forEachRemaining(field -> assertThat(ours.get(field.getKey()))
                        .as(field.getKey())
                        .isCloseTo(field.getValue().asDouble(), within(tolerance)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("published")
    void agreesWithThePublishedSquareOrWithItsCorrection(PublishedTable.Row row) throws Exception {
        var square = square(row);
        // The corrections and the squares printed without an answer were worked out with another program.
        agrees(square, JSON.readTree(row.text("verified")), 5e-4);
        var printed = row.text("published_solution");
        if (row.text("tag").contains("wrong")) {
            var with = JSON.readTree(printed);
            assertThat(Math.abs(square.shareOfA() - with.path("a_pct_of_mix").asDouble(40)))
                    .as("the published answer is wrong: " + row.text("note"))
                    .isGreaterThan(1);
        } else if (!printed.isBlank() && printed.startsWith("{")) {
            agrees(square, JSON.readTree(printed), row.number("tolerance").orElseThrow());
        }
        FormulaCheck.reEvaluates(square);
    }

    /** The same question as a linear program: least cost with the protein exact must give the same shares. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("published")
    void theCheapestMixWithTheTargetExactIsTheSquare(PublishedTable.Row row) throws Exception {
        var square = square(row);
        var mix = new Mix(
                List.of(
                        new Mix.MixFeed("a", 3, Map.of("x", square.a())),
                        new Mix.MixFeed("b", 1, Map.of("x", square.b()))),
                List.of(new Mix.MixLimit("x", OptionalDouble.of(square.target()), OptionalDouble.of(square.target()))),
                List.of(),
                false,
                OptionalDouble.empty());
        var cheapest = (Mix.Cheapest) mix.solve();
        assertThat(cheapest.sharesPct()[0]).isCloseTo(square.shareOfA(), within(1e-6));
        assertThat(cheapest.sharesPct()[1]).isCloseTo(square.shareOfB(), within(1e-6));
    }

    // Arithmetic printed as a rule of thumb (T11): a lot of 3000 ppm nitrate-N with one of 200, to 1000, is 28.5 to
    // 28.7 %.
    @Test
    void theShareOfAHotLotIsASquareToo() {
        assertThat(new PearsonSquare(0.1, 0.3, 0.02, 0).shareOfA()).isBetween(28.5, 28.7);
    }

    // Corn 8 %, barley 12 %, target 14 %: no mix of the two reaches it.
    @Test
    void aTargetOutsideTheTwoFeedsIsRefused() {
        assertThatThrownBy(() -> new PearsonSquare(14, 8, 12, 100))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("lies between the two");
        assertThatThrownBy(() -> new PearsonSquare(10, 10, 10, 100)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PearsonSquare(Double.NaN, 8, 12, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PearsonSquare(10, 54, -1, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PearsonSquare(10, 8, 12, -1)).hasMessageContaining("batch");
    }
}
