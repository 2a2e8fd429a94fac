package haywright.lp;

import static haywright.lp.Published.INF;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A search that may not take for ever stops, keeps its best, and leaves the session usable. */
class BudgetTest {
    /** Subset sums with large odd weights: branch and bound alone needs very many nodes. */
    private static LinearProgram hard() {
        Random random = new Random(3);
        var b = LinearProgram.maximize();
        int n = 60;
        double[][] weights = new double[5][n];
        for (int j = 0; j < n; j++) {
            double value = 0;
            for (double[] row : weights) {
                row[j] = 1_000 + random.nextInt(9_000);
                value += row[j];
            }
            b.whole("x" + j, value + random.nextInt(1_000), 0, 1);
        }
        int[] all = IntStream.range(0, n).toArray();
        for (int i = 0; i < weights.length; i++) {
            b.row("sack " + i, -INF, 75_000, all, weights[i]);
        }
        return b.build();
    }

    @Test
    void aTimeEndsIt() {
        try (Session session = hard().open()) {
            for (int again = 0; again < 3; again++) {
                Stopped stopped = (Stopped) session.solve(Budget.ofSeconds(0.3));
                Whole best = stopped.best().orElseThrow();
                assertThat(best.bound()).isGreaterThan(best.objective());
                for (var row : best.program().rows()) {
                    double sum = IntStream.range(0, 60)
                            .mapToDouble(j -> row.coefficients()[j] * best.value(j))
                            .sum();
                    assertThat(sum).isLessThanOrEqualTo(75_000 + 1e-3);
                }
            }
            assertThat(session.relaxed(Budget.UNLIMITED)).isInstanceOf(Optimum.class);
        }
    }

    @Test
    void aCountOfNodesEndsItWithTheSameBytes() {
        String first = best(hard().open());
        try (Session session = hard().open()) {
            session.solve(Budget.ofNodes(7));
            assertThat(best(session)).isEqualTo(first);
        }
    }

    private static String best(Session session) {
        Stopped stopped = (Stopped) session.solve(Budget.ofNodes(200));
        return WholeNumbersTest.text(stopped.best().orElseThrow());
    }

    @Test
    void itIsCanceledFromWithin() {
        AtomicInteger asked = new AtomicInteger();
        try (Session session = hard().open()) {
            Outcome outcome = session.solve(Budget.until(() -> asked.incrementAndGet() > 20));
            assertThat(outcome).isInstanceOf(Stopped.class);
            assertThat(asked.get()).isBetween(20, 2_000);
            // The next question is not canceled.
            assertThat(session.relaxed(Budget.UNLIMITED)).isInstanceOf(Optimum.class);
            int before = asked.get();
            assertThat(session.solve(Budget.ofNodes(10))).isInstanceOf(Stopped.class);
            assertThat(asked.get()).isEqualTo(before);
        }
    }

    @Test
    void aLinearProgramIsCancelledTooAndSolvedAfterwards() {
        LinearProgram program = WinterProgram.winter(5, 30, 9, 1);
        try (Session session = program.open()) {
            AtomicInteger asked = new AtomicInteger();
            assertThat(session.solve(Budget.until(() -> asked.incrementAndGet() > 3)))
                    .isEqualTo(new Stopped(java.util.Optional.empty()));
            assertThat(asked.get()).isGreaterThan(3);
            double objective = ((Optimum) session.solve()).objective();
            assertThat(objective).isCloseTo(((Optimum) program.solve()).objective(), within(1e-7 * objective));
        }
    }

    /** The solver is C: what a question throws must come out here, after the solver has ended in peace. */
    @Test
    void whatTheQuestionThrowsIsThrownOn() {
        try (Session session = hard().open()) {
            assertThatThrownBy(() -> session.solve(Budget.until(() -> {
                        throw new ArithmeticException("asked");
                    })))
                    .isInstanceOf(ArithmeticException.class)
                    .hasMessage("asked");
            assertThat(session.solve(Budget.ofNodes(10))).isInstanceOf(Stopped.class);
        }
    }

    @Test
    void aReasonIsGivenUpToItsBudget() {
        LinearProgram program = Published.program("I04");
        Infeasible infeasible = (Infeasible) program.solve();
        Conflict cut = infeasible.why(Budget.until(() -> true));
        assertThat(cut.irreducible()).isFalse();
        assertThat(cut.limits())
                .hasSizeGreaterThanOrEqualTo(infeasible.why().limits().size());
    }

    @Test
    void budgetsBelowNothingAreRefused() {
        assertThatThrownBy(() -> Budget.ofSeconds(-1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Budget.ofSeconds(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Budget.ofNodes(-1)).isInstanceOf(IllegalArgumentException.class);
    }
}
