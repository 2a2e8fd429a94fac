package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import haywright.lp.Infeasible;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.Outcome;
import haywright.lp.ProgramBuilder;
import haywright.season.given.Forecast;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Published programs of a decision now and several futures, put together as a winter's plan is: at their published optima,
 * with what knowing the future is worth (EVPI) and what planning for several is worth over planning for the mean (VSS).
 *
 * <p>Data and optima: the farmer of Birge and Louveaux, Introduction to Stochastic Programming, section 1.1; LandS of Louveaux
 * and Smeers 1988, and its 64 futures as distributed as LandS2; airlift of Midler and Wollmer by Felt's test set; example 4.2
 * of Birge and Louveaux. What is not published (LandS2, example 4.2, EVPI and VSS of all but the farmer) was worked out apart
 * from this program with another solver.
 */
class PublishedFuturesTest {
    private static final double INF = Double.POSITIVE_INFINITY;

    /** What a future moves: right sides by row, coefficients by row and variable. */
    private record Future(double weight, Map<String, Double> right, Map<String, Double> coefficient) {}

    private static JsonNode read(String name) throws IOException {
        try (var in =
                PublishedFuturesTest.class.getResourceAsStream("/haywright/season/stochastic/" + name + ".json")) {
            return new ObjectMapper().readTree(in);
        }
    }

    private static List<Future> futures(JsonNode problem) {
        var random = problem.get("random");
        var all = new ArrayList<Future>();
        if (random.get("type").asText().equals("independent_rhs")) {
            all.add(new Future(1, Map.of(), Map.of()));
            for (var element : random.get("elements")) {
                var more = new ArrayList<Future>();
                for (var before : all) {
                    for (int i = 0; i < element.get("values").size(); i++) {
                        var right = new HashMap<>(before.right);
                        right.put(
                                element.get("row").asText(),
                                element.get("values").get(i).asDouble());
                        more.add(new Future(
                                before.weight * element.get("probs").get(i).asDouble(), right, Map.of()));
                    }
                }
                all = more;
            }
        } else {
            for (var one : random.get("scenarios")) {
                all.add(new Future(one.get("prob").asDouble(), numbers(one.path("rhs")), numbers(one.path("coef"))));
            }
        }
        double sum = all.stream().mapToDouble(Future::weight).sum();
        return all.stream()
                .map(f -> new Future(f.weight / sum, f.right, f.coefficient))
                .toList();
    }

    private static Map<String, Double> numbers(JsonNode object) {
        var all = new HashMap<String, Double>();
        object.fields().forEachRemaining(e -> all.put(e.getKey(), e.getValue().asDouble()));
        return all;
    }

    private static Future mean(List<Future> futures) {
        var right = new HashMap<String, Double>();
        var coefficient = new HashMap<String, Double>();
        for (var one : futures) {
            one.right.forEach((row, value) -> right.merge(row, one.weight * value, Double::sum));
            one.coefficient.forEach((at, value) -> coefficient.merge(at, one.weight * value, Double::sum));
        }
        return new Future(1, right, coefficient);
    }

    private static LinearProgram program(JsonNode problem, List<Future> futures) {
        var columns = new HashMap<String, Integer>();
        return new Futures(futures.stream().mapToDouble(Future::weight).toArray())
                .together(
                        (in, f) -> stage(in, problem.get("first_stage"), new Future(1, Map.of(), Map.of()), columns),
                        (in, f) -> stage(
                                in.in("future " + f),
                                problem.get("second_stage"),
                                futures.get(f),
                                new HashMap<>(columns)));
    }

    private static void stage(ProgramBuilder in, JsonNode stage, Future future, Map<String, Integer> columns) {
        for (var v : stage.get("vars")) {
            columns.put(
                    v.get("name").asText(),
                    in.column(
                            v.get("name").asText(),
                            future.weight * v.get("cost").asDouble(),
                            v.get("lb").asDouble(),
                            v.get("ub").isNull() ? INF : v.get("ub").asDouble()));
        }
        for (var row : stage.get("rows")) {
            var name = row.get("name").asText();
            double right = future.right.getOrDefault(name, row.get("rhs").asDouble());
            var sense = row.get("sense").asText();
            int index = in.row(name, sense.equals("<=") ? -INF : right, sense.equals(">=") ? INF : right);
            row.get("coef")
                    .fields()
                    .forEachRemaining(e -> in.term(
                            index,
                            Objects.requireNonNull(columns.get(e.getKey())),
                            future.coefficient.getOrDefault(
                                    name + "|" + e.getKey(), e.getValue().asDouble())));
        }
    }

    private static double best(LinearProgram program) {
        return ((Optimum) program.solve()).objective();
    }

    /** What following the plan for the mean costs; infinite where it leaves some future without an answer. */
    private static double withMeanPlan(JsonNode problem, List<Future> futures) {
        var plan = (Optimum) program(problem, List.of(mean(futures))).solve();
        int first = problem.get("first_stage").get("vars").size();
        try (var session = program(problem, futures).open()) {
            var held = IntStream.range(0, first).mapToDouble(plan::value).toArray();
            session.columns(0, held, held);
            Outcome outcome = session.solve();
            return outcome instanceof Infeasible ? INF : ((Optimum) outcome).objective();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "farmer3, -108390, 7015.555556, 1150",
        "farmer_30_40_30, -108486, 7239, 110",
        "lands3, 381.853333, 1.686667, 2.133333",
        "lands64, 227.60375, 6.86875, 1.131109",
        "airlift_first, 249101.672072, 7888.418243, 6739.964555",
        "bl42_capacity, 30.94, 21.74, Infinity"
    })
    void comesToItsOptimumWithWhatKnowingAndPlanningForSeveralAreWorth(
            String name, double optimum, double knowing, double several) throws IOException {
        var problem = read(name);
        var futures = futures(problem);
        double best = best(program(problem, futures));
        double known = futures.stream()
                .mapToDouble(one ->
                        one.weight * best(program(problem, List.of(new Future(1, one.right, one.coefficient)))))
                .sum();
        double size = Math.max(1, Math.abs(optimum));
        assertThat(best).isCloseTo(optimum, within(1e-6 * size));
        assertThat(best - known).isCloseTo(knowing, within(1e-6 * size));
        double mean = withMeanPlan(problem, futures);
        if (Double.isInfinite(several)) {
            assertThat(mean).isInfinite();
        } else {
            assertThat(mean - best).isCloseTo(several, within(1e-6 * size));
        }
    }

    @Test
    void threeFuturesThatAreAlikeCostWhatOneDoes() {
        var season = Invented.season(100, 0);
        var known = Judge.start(season);
        var forecast = new Forecast(season, -1);
        var costs = new ArrayList<Double>();
        for (int scenarios : new int[] {1, 3}) {
            var programs = new Planner.Programs(season, Blocks.FEW, scenarios);
            var hardness = IntStream.range(0, scenarios).mapToObj(i -> 0.5).toList();
            try (var policy = new Replanned(season, forecast, hardness, new Planner(programs))) {
                costs.add(policy.plan(known).cost());
            }
        }
        assertThat(costs.get(1)).isCloseTo(costs.get(0), within(1e-6 * Math.abs(costs.get(0)) + 0.01));
    }

    @Test
    void planningForSeveralLiesBetweenTheMildestAndTheHardestOfThem() {
        var season = Invented.season(100, 0);
        var known = Judge.start(season);
        var forecast = new Forecast(season, -1);
        var one = new Planner.Programs(season, Blocks.FEW, 1);
        double wait = 0;
        for (double h : new double[] {-1, 0.5, 2}) {
            try (var policy = new Replanned(season, forecast, List.of(h), new Planner(one))) {
                wait += policy.plan(known).cost() / 3;
            }
        }
        try (var policy = new Replanned(
                season, forecast, List.of(-1.0, 0.5, 2.0), new Planner(new Planner.Programs(season, Blocks.FEW, 3)))) {
            // sharing this week never costs less than knowing which of them comes
            assertThat(policy.plan(known).cost()).isGreaterThan(wait - 0.01);
        }
    }
}
