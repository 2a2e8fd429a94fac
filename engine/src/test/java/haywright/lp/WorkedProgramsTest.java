package haywright.lp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Published programs with a published or independently recomputed answer; sources in worked.csv. */
class WorkedProgramsTest {
    static final List<String> IDS = List.of(
            "L01", "L02", "L03", "L04", "L05", "L06", "L08", "L09", "L10", "L11", "L12", "L13", "L14", "L15", "L16",
            "L17", "C02", "C16", "S14");

    /** What the table's column {@code verified} gives, where it is not a plain number. */
    private static final Map<String, Double> OBJECTIVE =
            Map.of("L01", 0.10866227820676, "L02", 28.94264765, "C02", 28.94264765, "C16", 30.12491972);

    /** Duals of the table's notes, in the order of its rows. */
    private static final Map<String, double[]> DUALS = Map.of(
            "L03", new double[] {0, 2.5, 7.5, 0},
            "L04", new double[] {0.7714286, 0.4857143, 0},
            "L08", new double[] {0, 1.0375, 28.875},
            "L09", new double[] {318.41176, 1.43137, 73.05882},
            "L11", new double[] {0.2790698, 0.1627907, 0},
            "L12", new double[] {1.9, 0.15},
            "L14", new double[] {0.8, 0, 0.2},
            "S14", new double[] {0, 0.25, 0.5});

    private static Optimum best(String id) {
        return (Optimum) Published.program(id).solve();
    }

    @ParameterizedTest
    @FieldSource("IDS")
    void theObjectiveAgrees(String id) {
        double verified = OBJECTIVE.containsKey(id)
                ? OBJECTIVE.get(id)
                : Published.row(id).number("verified").orElseThrow();
        double tolerance =
                id.equals("L01") ? 1e-9 : Published.row(id).number("tolerance").orElseThrow();
        assertThat(best(id).objective()).isCloseTo(verified, within(tolerance));
    }

    @ParameterizedTest
    @FieldSource("IDS")
    void theAnswerCarriesItsOwnProof(String id) {
        Certificate.holds(best(id));
    }

    /** The plan is unique in these. */
    @ParameterizedTest
    @FieldSource("UNIQUE")
    void thePublishedPlanAgrees(String id) {
        JsonNode x =
                Published.json(Published.row(id).text("published_solution")).get("x");
        Optimum best = best(id);
        for (int j = 0; j < x.size(); j++) {
            Published.agrees("x" + j, best.value(j), x.get(j), 1e-5);
        }
    }

    static final List<String> UNIQUE = List.of("L03", "L04", "L06", "L08", "L09", "L17", "S14");

    @ParameterizedTest
    @FieldSource("WITH_DUALS")
    void theDualsAgree(String id) {
        Optimum best = best(id);
        double[] duals = DUALS.get(id);
        for (int i = 0; i < duals.length; i++) {
            assertThat(best.dual(i)).as("row %d", i).isCloseTo(duals[i], within(5e-6));
        }
    }

    static final List<String> WITH_DUALS = DUALS.keySet().stream().sorted().toList();

    // 39.69 dollars a year is of 365.25 days; 39.66, also printed, of 365.
    @Test
    void stiglersDietCostsWhatIsPrintedForEitherYear() {
        Optimum best = best("L01");
        assertThat(365.25 * best.objective()).isCloseTo(39.69, within(0.005));
        assertThat(365 * best.objective()).isCloseTo(39.66, within(0.005));
        JsonNode dollars = Published.json(Published.row("L01").text("published_solution"));
        dollars.fields()
                .forEachRemaining(food -> assertThat(365.25 * best.value(food.getKey()))
                        .as(food.getKey())
                        .isCloseTo(food.getValue().asDouble(), within(0.005)));
        // Duals in stigler_requirements.csv, recomputed with another interface of the solver.
        assertThat(best.dual(best.program().row("calories_1000kcal"))).isCloseTo(0.00876515, within(5e-9));
        assertThat(best.dual(best.program().row("protein_g"))).isZero();
        assertThat(best.dual(best.program().row("calcium_g"))).isCloseTo(0.03173771, within(5e-9));
        assertThat(best.dual(best.program().row("vitamin_a_1000iu"))).isCloseTo(0.00040023, within(5e-9));
        assertThat(best.dual(best.program().row("riboflavin_mg"))).isCloseTo(0.01635803, within(5e-9));
        assertThat(best.dual(best.program().row("ascorbic_acid_mg"))).isCloseTo(0.00014412, within(5e-9));
    }

    // A recomputation with another program (SciPy's) of the mean-protein mix, Hock and Schittkowski 73.
    @Test
    void theCattleFeedMixAndItsPricesAgree() {
        JsonNode verified = Published.json(Published.row("L02").text("verified"));
        Optimum best = best("L02");
        for (int j = 0; j < 4; j++) {
            Published.agrees("x" + j, best.value(j), verified.get("x").get(j), 1e-8);
        }
        for (String row : List.of("oil", "protein", "sum")) {
            Published.agrees(row, best.dual(best.program().row(row)), verified.get("dual_" + row), 1e-8);
        }
    }

    @Test
    void theMenusPricesOfVitaminAndSodiumAgree() {
        Optimum best = best("L06");
        assertThat(best.dual(best.program().row("B2"))).isCloseTo(0.40458483, within(5e-9));
        assertThat(best.dual(best.program().row("NA"))).isCloseTo(-0.00306905, within(5e-9));
        assertThat(best.dual(best.program().row("CAL"))).isZero();
    }

    @Test
    void foodManufactureMakesItsTonnageEachMonth() {
        Optimum best = best("L10");
        for (int month = 0; month < 6; month++) {
            double made = 0;
            for (int oil = 0; oil < 5; oil++) {
                made += best.value("use " + oil + " in " + month);
            }
            assertThat(made).isCloseTo(450, within(1e-6));
        }
    }

    // L11: the printed plan keeps every limit, but costs more than the optimum: a corner that is not the best.
    @Test
    void thePublishedAnswerThatIsWrongIsBeaten() {
        LinearProgram program = Published.program("L11");
        JsonNode x =
                Published.json(Published.row("L11").text("published_solution")).get("x");
        double published = 0;
        for (int j = 0; j < 2; j++) {
            published += program.columns().get(j).cost() * x.get(j).asDouble();
        }
        for (LinearProgram.Row r : program.rows()) {
            double sum = 0;
            for (int k = 0; k < 2; k++) {
                sum += r.coefficients()[k] * x.get(r.columns()[k]).asDouble();
            }
            assertThat(sum).isGreaterThan(r.lower() - 1e-3);
        }
        Optimum best = (Optimum) program.solve();
        assertThat(published).isCloseTo(52.18, within(0.005));
        assertThat(best.objective()).isLessThan(published - 0.9);
        assertThat(best.value(0)).isCloseTo(87.0 / 43, within(1e-9));
        assertThat(best.value(1)).isCloseTo(54.0 / 43, within(1e-9));
    }

    // The older price set of the pig ration: same plan, 60.42857143.
    @Test
    void theOlderPricesOfThePigRationGiveTheSamePlan() {
        try (Session session = Published.program("L04").open()) {
            double[] prices = {21, 18, 15};
            for (int j = 0; j < 3; j++) {
                session.cost(j, prices[j]);
            }
            Optimum best = (Optimum) session.solve();
            assertThat(best.objective()).isCloseTo(60.42857143, within(5e-9));
            assertThat(best.value(0)).isCloseTo(1.142857, within(5e-7));
            assertThat(best.value(2)).isCloseTo(2.428571, within(5e-7));
        }
    }
}
