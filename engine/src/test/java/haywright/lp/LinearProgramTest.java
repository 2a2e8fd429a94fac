package haywright.lp;

import static haywright.lp.Published.INF;
import static haywright.lp.Published.dense;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is refused before the solver sees it, and answers without a best value. */
class LinearProgramTest {
    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e20})
    void whatIsNoNumberIsRefusedByName(double bad) {
        var b = LinearProgram.minimize();
        refused(() -> b.column("hay", bad, 0, 1), "The cost of “hay” is");
        b.column("hay", 1, 0, 1);
        refused(() -> b.row("energy", 0, 1, new int[] {0}, new double[] {bad}), "A coefficient of “energy” is");
        refused(() -> b.offset(bad), "The constant of the objective is");
    }

    @Test
    void limitsThatAreNoNumberOrInfiniteTheWrongWayRoundAreRefused() {
        var b = LinearProgram.minimize();
        refused(() -> b.column("hay", 1, Double.NaN, 1), "The lower limit of “hay” is NaN");
        refused(() -> b.column("hay", 1, 0, Double.NaN), "The upper limit of “hay” is NaN");
        refused(() -> b.column("hay", 1, INF, INF), "The lower limit of “hay” is Infinity");
        refused(() -> b.column("hay", 1, -INF, -INF), "The upper limit of “hay” is -Infinity");
        b.column("hay", 1, 0, 1);
        refused(() -> b.row("energy", Double.NaN, 1, new int[] {0}, new double[] {1}), "The lower limit of “energy”");
    }

    @Test
    void namesAndColumnsMustFit() {
        var b = LinearProgram.minimize();
        b.column("hay", 1, 0, 1);
        refused(() -> b.column("hay", 2, 0, 1), "Two columns are named “hay”");
        refused(() -> b.row("energy", 0, 1, new int[] {1}, new double[] {1}), "names column 1");
        refused(() -> b.row("energy", 0, 1, new int[] {-1}, new double[] {1}), "names column -1");
        refused(() -> b.row("energy", 0, 1, new int[] {0, 0}, new double[] {1, 1}), "twice");
        refused(() -> b.row("energy", 0, 1, new int[] {0}, new double[] {1, 1}), "1 columns and 2 coefficients");
        b.row("energy", 0, 1, new int[] {0}, new double[] {1});
        refused(() -> b.row("energy", 0, 1, new int[] {0}, new double[] {1}), "Two rows are named “energy”");
        refused(() -> b.build().column("straw"), "No column is named “straw”");
        refused(() -> b.build().row("protein"), "No row is named “protein”");
        refused(() -> LinearProgram.maximize().build(), "nothing to choose");
    }

    @Test
    void aRefusedColumnMayBeAddedRight() {
        var b = LinearProgram.minimize();
        refused(() -> b.column("hay", Double.NaN, 0, 1), "cost");
        assertThat(b.column("hay", 1, 0, 1)).isZero();
    }

    @Test
    void aProgramCannotBeChangedThroughWhatItWasMadeFrom() {
        var b = LinearProgram.minimize();
        b.column("hay", 1, 0, INF);
        double[] coefficient = {2};
        b.row("energy", 10, INF, new int[] {0}, coefficient);
        LinearProgram program = b.build();
        coefficient[0] = 99;
        program.rows().get(0).coefficients()[0] = 99;
        b.column("straw", 0, 0, INF);
        assertThat(((Optimum) program.solve()).objective()).isCloseTo(5, within(1e-9));
        assertThat(program.columns()).hasSize(1);
    }

    @Test
    void aProgramWithoutRowsAndOneWithAnOffsetAreSolved() {
        var b = LinearProgram.maximize().offset(100);
        b.column("a", 2, 0, 3);
        b.column("b", -1, 1, 3);
        var best = (Optimum) b.build().solve();
        assertThat(best.objective()).isCloseTo(105, within(1e-9));
        assertThat(best.reducedCost(0)).isCloseTo(2, within(1e-9));
        assertThat(best.reducedCost(1)).isCloseTo(-1, within(1e-9));
        Certificate.holds(best);
    }

    @Test
    void anEmptyRowThatAsksForSomethingIsInConflictAlone() {
        var b = LinearProgram.minimize();
        b.column("a", 1, 0, INF);
        b.row("nothing", 1, INF, new int[0], new double[0]);
        assertThat(((Infeasible) b.build().solve()).why().names()).containsExactly("nothing");
    }

    @Test
    void theColumnThatRunsAwayIsNamed() {
        var b = LinearProgram.minimize();
        b.column("bought", 3, 0, INF);
        b.column("sold", -4, 0, INF);
        b.column("kept", 0, 0, 10);
        dense(b, "balance", 0, 0, 1, -1, -1);
        var answer = (Unbounded) b.build().solve();
        assertThat(answer.direction().keySet()).containsExactly("bought", "sold");
        assertThat(answer.direction().get("sold")).isCloseTo(1, within(1e-9));
        assertThat(answer.column()).isIn("bought", "sold");
    }

    @Test
    void unboundedDirectionsKeepEveryLimitAndImprove() {
        int found = 0;
        for (int seed = 0; seed < 300; seed++) {
            LinearProgram p = RandomPrograms.program(new Random(seed), 0);
            if (p.solve() instanceof Unbounded answer) {
                found++;
                double gain = 0;
                for (LinearProgram.Column c : p.columns()) {
                    double step = answer.direction().getOrDefault(c.name(), 0.0);
                    gain += c.cost() * step * (p.maximizing() ? 1 : -1);
                    keeps(step, c.lower(), c.upper());
                }
                for (LinearProgram.Row r : p.rows()) {
                    double step = 0;
                    for (int k = 0; k < r.columns().length; k++) {
                        step += r.coefficients()[k]
                                * answer.direction()
                                        .getOrDefault(
                                                p.columns().get(r.columns()[k]).name(), 0.0);
                    }
                    keeps(step, r.lower(), r.upper());
                }
                assertThat(gain).as("seed %d", seed).isPositive();
                assertThat(Math.abs(answer.direction().get(answer.column()))).isCloseTo(1, within(1e-9));
            }
        }
        assertThat(found).isGreaterThan(20);
    }

    private static void keeps(double step, double lower, double upper) {
        if (Double.isFinite(lower)) {
            assertThat(step).isGreaterThan(-1e-6);
        }
        if (Double.isFinite(upper)) {
            assertThat(step).isLessThan(1e-6);
        }
    }

    @Test
    void roundingDoesNotMakeAConflict() {
        var b = LinearProgram.minimize();
        b.column("a", 1, 0.1 + 0.2, 0.3);
        b.column("b", 1, 0, INF);
        dense(b, "sum", 1.1 + 2.2, 3.3, 1, 1);
        assertThat(((Optimum) b.build().solve()).objective()).isCloseTo(3.3, within(1e-9));
    }

    private static void refused(Runnable wrong, String words) {
        assertThatThrownBy(wrong::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(words);
    }

    @Test
    void manySessionsAtOnceDoNotDisturbEachOther() {
        List<Session> open = java.util.stream.Stream.of("L03", "L04", "D01", "L08")
                .map(id -> Published.program(id).open())
                .toList();
        double[] objectives = open.stream()
                .mapToDouble(s -> ((Optimum) s.solve()).objective())
                .toArray();
        open.forEach(Session::close);
        assertThat(objectives)
                .usingComparatorWithPrecision(1e-4)
                .containsExactly(90, 241.71428571, 17.31147541, 6315.625);
    }
}
