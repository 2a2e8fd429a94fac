package haywright.lp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.lp.LinearProgram.Row;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Printed sensitivity reports, and the same by solving again. Sources in worked.csv. */
class DualsAndRangesTest {
    static final List<String> IDS = List.of("D01", "D02", "D03", "D04");
    static final List<String> WITH_ALL_RANGES = List.of("D01", "D03", "D04");
    static final List<String> RESOLVED =
            List.of("D01", "D02", "D03", "D04", "L01", "L02", "L06", "L08", "L09", "L11", "L12", "L13", "L15", "L17");

    private static JsonNode printed(String id) {
        return Published.json(
                Published.row(id).text(id.equals("D01") || id.equals("D02") ? "published_solution" : "verified"));
    }

    private static Optimum best(String id) {
        return (Optimum) Published.program(id).solve();
    }

    private static double binding(Optimum o, int row) {
        return o.activity(row);
    }

    @ParameterizedTest
    @FieldSource("IDS")
    void dualsAndReducedCostsAgree(String id) {
        JsonNode printed = printed(id);
        Optimum best = best(id);
        for (int i = 0; i < printed.get("dual").size(); i++) {
            Published.agrees("dual " + i, best.dual(i), printed.get("dual").get(i), 1e-5);
        }
        for (int j = 0; j < printed.get("reduced_cost").size(); j++) {
            Published.agrees(
                    "reduced cost " + j,
                    best.reducedCost(j),
                    printed.get("reduced_cost").get(j),
                    1e-5);
        }
        Certificate.holds(best);
    }

    @ParameterizedTest
    @FieldSource("WITH_ALL_RANGES")
    void rangesOfCostsAndLimitsAgree(String id) {
        JsonNode printed = printed(id);
        Optimum best = best(id);
        for (int j = 0; j < printed.get("obj_increase").size(); j++) {
            double cost = best.program().columns().get(j).cost();
            Range range = best.costRange(j);
            Published.agrees(
                    "cost up " + j,
                    range.high() - cost,
                    printed.get("obj_increase").get(j),
                    1e-5);
            Published.agrees(
                    "cost down " + j,
                    cost - range.low(),
                    printed.get("obj_decrease").get(j),
                    1e-5);
        }
        for (int i = 0; i < printed.get("rhs_increase").size(); i++) {
            Row r = best.program().rows().get(i);
            double limit = Double.isFinite(r.lower()) ? r.lower() : r.upper();
            Range range = best.boundRange(i);
            Published.agrees(
                    "limit up " + i,
                    range.high() - limit,
                    printed.get("rhs_increase").get(i),
                    1e-5);
            Published.agrees(
                    "limit down " + i,
                    limit - range.low(),
                    printed.get("rhs_decrease").get(i),
                    1e-5);
        }
    }

    @Test
    void thePrintedObjectivesPlansAndSlacksAgree() {
        Optimum d01 = best("D01");
        assertThat(d01.objective()).isCloseTo(17.31148, within(5e-6));
        assertThat(best("D02").objective()).isCloseTo(31.7828, within(5e-5));
        for (int j = 0; j < 4; j++) {
            Published.agrees("x", d01.value(j), printed("D01").get("x").get(j), 1e-5);
            Published.agrees("x", best("D02").value(j), printed("D02").get("x").get(j), 1e-5);
        }
        for (int i = 0; i < 8; i++) {
            Row r = d01.program().rows().get(i);
            double slack = Math.min(d01.activity(i) - r.lower(), r.upper() - d01.activity(i));
            Published.agrees("slack", slack, printed("D01").get("slack").get(i), 1e-5);
        }
        for (int i = 0; i < 3; i++) {
            assertThat(best("D02").activity(i))
                    .isCloseTo(printed("D02").get("activity").get(i).asDouble(), within(5e-4));
        }
    }

    // lp_solve reference guide, sensitivity: the first row's dual holds from 52.2 to 142.042 of its limit, COLFOUR
    // stays in the plan up to a cost of 0.1111679, COLTWO stays out of it down to 2.698621.
    @Test
    void theRangesOfBoundedColumnsAgree() {
        Optimum best = best("D02");
        assertThat(best.boundRange(0).low()).isCloseTo(52.2, within(5e-4));
        assertThat(best.boundRange(0).high()).isCloseTo(142.042, within(5e-4));
        assertThat(best.costRange(3).high()).isCloseTo(0.1111679, within(5e-8));
        assertThat(best.costRange(1).low()).isCloseTo(2.698621, within(5e-7));
    }

    @ParameterizedTest
    @FieldSource("RESOLVED")
    void dualsAreWhatSolvingAgainShows(String id) {
        Optimum best = best(id);
        int moved = 0;
        for (int i = 0; i < best.program().rows().size(); i++) {
            Range range = best.boundRange(i);
            double at = binding(best, i);
            Row r = best.program().rows().get(i);
            boolean atLower = Math.abs(at - r.lower()) < 1e-7;
            boolean atUpper = Math.abs(at - r.upper()) < 1e-7;
            if (!atLower && !atUpper) {
                continue;
            }
            for (double to : new double[] {inside(at, range.low()), inside(at, range.high())}) {
                try (Session session = best.program().open()) {
                    session.rowBounds(i, atLower ? to : r.lower(), atUpper ? to : r.upper());
                    Optimum again = (Optimum) session.solve();
                    double predicted = best.objective() + best.dual(i) * (to - at);
                    assertThat(again.objective())
                            .as("row %s moved from %s to %s", r.name(), at, to)
                            .isCloseTo(predicted, within(1e-7 * Math.max(1, Math.abs(predicted))));
                    moved++;
                }
            }
        }
        assertThat(moved).isPositive();
    }

    /** Inside its range a cost moves the objective by the amount in the plan; beyond it the plan is bettered. */
    @ParameterizedTest
    @FieldSource("RESOLVED")
    void costRangesAreWhatSolvingAgainShows(String id) {
        Optimum best = best(id);
        double turn = best.program().maximizing() ? -1 : 1;
        int beyond = 0;
        for (int j = 0; j < best.program().columns().size(); j++) {
            Range range = best.costRange(j);
            double cost = best.program().columns().get(j).cost();
            assertThat(cost).isBetween(range.low() - 1e-9, range.high() + 1e-9);
            for (double end : new double[] {range.low(), range.high()}) {
                double in = inside(cost, end);
                assertThat(turn * resolved(best, j, in))
                        .isCloseTo(turn * kept(best, j, in), within(1e-7 * Math.max(1, Math.abs(best.objective()))));
                if (Double.isFinite(end)) {
                    double out = end + (end - cost) * 0.5 + Math.signum(end - cost) * 0.01;
                    assertThat(turn * resolved(best, j, out)).isLessThanOrEqualTo(turn * kept(best, j, out) + 1e-9);
                    beyond += turn * resolved(best, j, out) < turn * kept(best, j, out) - 1e-9 ? 1 : 0;
                }
            }
        }
        assertThat(beyond).isPositive();
    }

    private static double inside(double from, double end) {
        return from + (Double.isFinite(end) ? (end - from) * 0.9 : Math.signum(end));
    }

    private static double kept(Optimum best, int column, double cost) {
        return best.objective() + (cost - best.program().columns().get(column).cost()) * best.value(column);
    }

    private static double resolved(Optimum best, int column, double cost) {
        try (Session session = best.program().open()) {
            session.cost(column, cost);
            return session.solve() instanceof Optimum again
                    ? again.objective()
                    : best.program().maximizing() ? Published.INF : -Published.INF;
        }
    }
}
