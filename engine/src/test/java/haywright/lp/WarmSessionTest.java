package haywright.lp;

import static haywright.lp.Published.INF;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.ExpressionsBasedModel;

/** A changed program solved again from where it stood answers as if it were new. */
class WarmSessionTest {
    @Test
    void warmAgreesWithColdAfterEveryKindOfChange() {
        Map<String, Integer> answers = new TreeMap<>();
        for (int seed = 0; seed < 150; seed++) {
            Random random = new Random(seed);
            try (Session session = RandomPrograms.program(random, 0.3).open()) {
                for (int change = 0; change < 12; change++) {
                    change(session, random);
                    Outcome warm = session.solve();
                    agrees(
                            "seed %d, change %d".formatted(seed, change),
                            warm,
                            session.program().solve());
                    answers.merge(warm.getClass().getSimpleName(), 1, Integer::sum);
                }
            }
        }
        assertThat(answers).containsKeys("Optimum", "Infeasible", "Unbounded");
        assertThat(answers.values()).allSatisfy(n -> assertThat(n).isGreaterThan(50));
    }

    private static void change(Session session, Random random) {
        LinearProgram now = session.program();
        int j = random.nextInt(now.columns().size());
        int i = random.nextInt(now.rows().size());
        Column c = now.columns().get(j);
        Row r = now.rows().get(i);
        switch (random.nextInt(4)) {
            case 0 -> session.cost(j, c.cost() + random.nextGaussian() * 5);
            case 1 -> session.columnBounds(j, random.nextBoolean() ? 0 : c.lower(), random.nextDouble() * 20);
            case 2 -> {
                double by = random.nextGaussian() * 5;
                session.rowBounds(i, r.lower() + by, r.upper() + by);
            }
            default -> {
                int n = now.columns().size();
                double[] row = RandomPrograms.row(random, n);
                double[] limits = RandomPrograms.limits(
                        random,
                        5 * IntStream.range(0, n).mapToDouble(k -> row[k]).sum(),
                        0.3);
                session.addRow(
                        "added " + now.rows().size(),
                        limits[0],
                        limits[1],
                        IntStream.range(0, n).toArray(),
                        row);
            }
        }
    }

    private static void agrees(String where, Outcome warm, Outcome cold) {
        assertThat(warm).as(where).hasSameClassAs(cold);
        if (warm instanceof Optimum best) {
            double objective = ((Optimum) cold).objective();
            assertThat(best.objective())
                    .as(where)
                    .isCloseTo(objective, within(1e-7 * Math.max(1, Math.abs(objective))));
            Certificate.holds(best);
        } else if (warm instanceof Unbounded unbounded) {
            improvesForEver(where, ((Unbounded) cold), unbounded);
        }
    }

    private static void improvesForEver(String where, Unbounded cold, Unbounded warm) {
        assertThat(warm.direction()).as(where).containsKey(warm.column());
        assertThat(cold.direction()).as(where).containsKey(cold.column());
    }

    @Test
    void anUnrelatedSolverAgreesOnSeededPrograms() {
        int compared = 0;
        for (int seed = 0; seed < 60; seed++) {
            LinearProgram program = RandomPrograms.program(new Random(seed), 0.2);
            if (program.solve() instanceof Optimum best) {
                var in = new ByteArrayInputStream(program.toMps().getBytes(StandardCharsets.UTF_8));
                var other = ExpressionsBasedModel.parse(in, ExpressionsBasedModel.FileFormat.MPS)
                        .minimise();
                double turned = program.maximizing() ? -best.objective() : best.objective();
                assertThat(other.getState().isOptimal()).as("seed %d", seed).isTrue();
                assertThat(other.getValue())
                        .as("seed %d", seed)
                        .isCloseTo(turned, within(1e-6 * Math.max(1, Math.abs(turned))));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(20);
    }

    /**
     * Large enough to be presolved: five stacks, twelve pens, a price for each way, and 5,000 roads that three ways
     * share. Rows make it large: a conflict is searched through every column.
     */
    @Test
    void aLargeProgramIsSolvedWarmAndColdAlike() {
        Random random = new Random(7);
        var b = LinearProgram.minimize();
        int stacks = 5;
        int pens = 12;
        for (int j = 0; j < stacks * pens; j++) {
            b.column("way " + j, 1 + random.nextInt(50), 0, INF);
        }
        double[] ones = new double[pens];
        Arrays.fill(ones, 1);
        for (int s = 0; s < stacks; s++) {
            int first = s * pens;
            b.row("stack " + s, -INF, 300, IntStream.range(first, first + pens).toArray(), ones);
        }
        for (int p = 0; p < pens; p++) {
            int pen = p;
            b.row(
                    "pen " + p,
                    60 + random.nextInt(40),
                    INF,
                    IntStream.range(0, stacks).map(s -> s * pens + pen).toArray(),
                    Arrays.copyOf(ones, stacks));
        }
        for (int road = 0; road < 5000; road++) {
            int first = random.nextInt(pens - 3);
            int[] shared = IntStream.range(1, 4)
                    .map(s -> (s + random.nextInt(2)) * pens + 1 + first + random.nextInt(3))
                    .distinct()
                    .toArray();
            b.row("road " + road, -INF, 60 + random.nextInt(200), shared, Arrays.copyOf(ones, shared.length));
        }
        LinearProgram program = b.build();
        try (Session session = program.open()) {
            Certificate.holds((Optimum) session.solve());
            for (int change = 0; change < 10; change++) {
                session.rowBounds(random.nextInt(stacks), -INF, 250 + random.nextInt(50));
                session.cost(random.nextInt(stacks * pens), random.nextInt(60));
                agrees("change " + change, session.solve(), session.program().solve());
            }
            session.rowBounds(0, 5000, INF);
            session.columnBounds(0, 0, 10);
            assertThat(session.solve()).isInstanceOf(Optimum.class);
            session.rowBounds(stacks, 20_000, INF);
            var answer = (Infeasible) session.solve();
            assertThat(answer.why().names())
                    .containsExactlyInAnyOrder("pen 0", "way 0 at most 10", "stack 1", "stack 2", "stack 3", "stack 4");
            session.rowBounds(stacks, 0, INF);
            session.cost(5, -1);
            assertThat(((Unbounded) session.solve()).column()).isEqualTo("way 5");
        }
    }

    @Test
    void anEarlierOptimumIsNotTouchedByLaterChanges() {
        try (Session session = Published.program("D01").open()) {
            Optimum first = (Optimum) session.solve();
            Range before = ((Optimum) Published.program("D01").solve()).costRange(0);
            session.cost(0, 9);
            Optimum second = (Optimum) session.solve();
            assertThat(first.objective()).isCloseTo(17.31148, within(5e-6));
            assertThat(second.objective()).isGreaterThan(first.objective() + 1);
            assertThat(first.costRange(0)).isEqualTo(before);
            assertThat(first.program().columns().get(0).cost()).isEqualTo(3);
        }
    }

    /** A session that starts from a kept basis gives its bytes whatever it answered before, and so does any other. */
    @Test
    void aKeptBasisGivesTheSameBytesInEverySessionOfTheForm() {
        LinearProgram winter = WinterProgram.winter(3, 12, 6, 1);
        LinearProgram harder = WinterProgram.winter(3, 12, 6, 1.1);
        Basis kept;
        try (Session session = winter.open()) {
            assertThat(session.basis()).isEqualTo(Basis.NONE);
            session.solve();
            kept = session.basis();
        }
        String first = null;
        for (int used = 0; used < 3; used++) {
            try (Session session = harder.open()) {
                for (int i = 0; i < used; i++) {
                    session.rowBounds(0, -INF, 1_000 * (i + 1));
                    session.solve();
                }
                session.rowBounds(0, -INF, harder.rows().get(0).upper());
                session.start(kept);
                String text = WholeNumbersTest.text(session.solve());
                first = first == null ? text : first;
                assertThat(text).isEqualTo(first);
                assertThat(session.basis()).isNotEqualTo(Basis.NONE);
                session.start(Basis.NONE);
                assertThat(WholeNumbersTest.text(session.solve())).isEqualTo(WholeNumbersTest.text(harder.solve()));
            }
        }
        try (Session other = Published.program("D01").open()) {
            assertThatThrownBy(() -> other.start(kept))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("This basis is of a program with");
        }
    }

    @Test
    void aSessionBelongsToItsThread() {
        try (Session session = Published.program("D01").open()) {
            assertThatThrownBy(
                            () -> CompletableFuture.supplyAsync(session::solve).join())
                    .isInstanceOf(CompletionException.class)
                    .hasCauseInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("open one for each thread");
            assertThat(session.solve()).isInstanceOf(Optimum.class);
        }
    }

    @Test
    void aClosedSessionSaysSo() {
        Session session = Published.program("D01").open();
        session.close();
        session.close();
        assertThatThrownBy(session::solve)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("closed");
    }

    @Test
    void aWrongChangeIsRefusedAndNothingHasMoved() {
        try (Session session = Published.program("D01").open()) {
            double before = ((Optimum) session.solve()).objective();
            for (Runnable wrong : new Runnable[] {
                () -> session.cost(0, Double.NaN),
                () -> session.columnBounds(0, Double.NaN, 1),
                () -> session.rowBounds(0, 0, Double.NaN),
                () -> session.addRow("new", 0, INF, new int[] {9}, new double[] {1}),
                () -> session.addRow("new", 0, INF, new int[] {0}, new double[] {INF}),
                () -> session.addRow(session.program().rows().get(0).name(), 0, INF, new int[] {0}, new double[] {1})
            }) {
                assertThatThrownBy(wrong::run).isInstanceOf(IllegalArgumentException.class);
            }
            assertThat(((Optimum) session.solve()).objective()).isEqualTo(before);
            assertThat(session.program().rows()).hasSize(8);
        }
    }
}
