package haywright.lp;

import static haywright.lp.Published.INF;
import static haywright.lp.Published.dense;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.lp.LinearProgram.Column;
import haywright.lp.LinearProgram.Row;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Whole columns and portions: against trying everything, and print. */
class WholeNumbersTest {
    static final List<String> IDS = List.of("L07");

    // AMPL book ch. 2: the menu in whole packages.
    @Test
    void theMenuInWholePackagesIsThePublishedOne() {
        LinearProgram menu = Published.program("L07");
        Whole best = (Whole) menu.solve();
        var row = Published.row("L07");
        double tolerance = row.number("tolerance").orElseThrow();
        assertThat(best.objective()).isCloseTo(row.number("published_objective").orElseThrow(), within(tolerance));
        assertThat(best.bound()).isCloseTo(best.objective(), within(tolerance));
        var x = Published.json(row.text("published_solution")).get("x");
        for (int j = 0; j < x.size(); j++) {
            assertThat(best.value(j)).isEqualTo(x.get(j).asDouble());
        }
    }

    /** Small programs: every combination of the whole columns is tried, each as a linear program. */
    @Test
    void branchAndBoundFindsWhatTryingEverythingFinds() {
        int solved = 0;
        int none = 0;
        for (int seed = 0; seed < 300; seed++) {
            LinearProgram program = small(new Random(seed));
            double best = tryEverything(program);
            Outcome outcome = program.solve();
            if (Double.isNaN(best)) {
                assertThat(outcome).as("seed %d", seed).isInstanceOf(Infeasible.class);
                none++;
            } else {
                assertThat(((Whole) outcome).objective())
                        .as("seed %d", seed)
                        .isCloseTo(best, within(1e-7 * Math.max(1, Math.abs(best))));
                keepsEveryLimit((Whole) outcome);
                solved++;
            }
        }
        assertThat(solved).isGreaterThan(150);
        assertThat(none).isGreaterThan(10);
    }

    /** One column in three is free to be a fraction, the others are whole from 0 to 3. */
    static LinearProgram small(Random random) {
        int n = 3 + random.nextInt(4);
        var b = random.nextBoolean() ? LinearProgram.minimize() : LinearProgram.maximize();
        for (int j = 0; j < n; j++) {
            double cost = Math.rint(40 * random.nextGaussian()) / 4;
            if (j % 3 == 2) {
                b.column("x" + j, cost, 0, 1 + 3 * random.nextDouble());
            } else {
                b.whole("x" + j, cost, random.nextInt(2), 1 + random.nextInt(3));
            }
        }
        double[] plan =
                IntStream.range(0, n).mapToDouble(j -> 1 + random.nextInt(2)).toArray();
        for (int i = 0; i < 1 + random.nextInt(5); i++) {
            double[] row = RandomPrograms.row(random, n);
            double at = IntStream.range(0, n).mapToDouble(j -> row[j] * plan[j]).sum();
            double[] limits = RandomPrograms.limits(random, at, 0.2);
            b.row("r" + i, limits[0], limits[1], IntStream.range(0, n).toArray(), row);
        }
        return b.build();
    }

    /** The best objective, or NaN if there is no plan. */
    private static double tryEverything(LinearProgram program) {
        double[] best = {Double.NaN};
        try (Session session = program.continuous().open()) {
            tryFrom(0, program, session, best);
        }
        return best[0];
    }

    private static void tryFrom(int j, LinearProgram program, Session session, double[] best) {
        if (j == program.columns().size()) {
            if (session.solve() instanceof Optimum optimum) {
                double turn = program.maximizing() ? -1 : 1;
                if (Double.isNaN(best[0]) || turn * optimum.objective() < turn * best[0]) {
                    best[0] = optimum.objective();
                }
            }
            return;
        }
        Column column = program.columns().get(j);
        if (!column.whole()) {
            tryFrom(j + 1, program, session, best);
            return;
        }
        for (double value = column.lower(); value <= column.upper(); value++) {
            session.columnBounds(j, value, value);
            tryFrom(j + 1, program, session, best);
        }
        session.columnBounds(j, column.lower(), column.upper());
    }

    private static void keepsEveryLimit(Whole plan) {
        LinearProgram program = plan.program();
        for (int j = 0; j < program.columns().size(); j++) {
            Column c = program.columns().get(j);
            assertThat(plan.value(j)).isBetween(c.lower() - 1e-7, c.upper() + 1e-7);
            assertThat(!c.whole() || plan.value(j) == Math.rint(plan.value(j))).isTrue();
        }
        for (Row r : program.rows()) {
            double sum = 0;
            for (int k = 0; k < r.columns().length; k++) {
                sum += r.coefficients()[k] * plan.value(r.columns()[k]);
            }
            assertThat(sum).isBetween(r.lower() - 1e-6, r.upper() + 1e-6);
        }
    }

    /** Straw costs least but only from 4 to 5, hay fills the rest: 0 or 4 of straw, never 2. */
    @Test
    void aPortionIsNothingOrFromLeastToMost() {
        for (double wanted : new double[] {3, 4.5, 6, 9}) {
            var b = LinearProgram.minimize();
            int hay = b.column("hay", 3, 0, INF);
            int straw = b.in("pen").column("straw", 1, 0, INF);
            int used = b.portion(straw, 4, 5);
            b.row("fed", wanted, wanted, new int[] {hay, straw}, new double[] {1, 1});
            Whole best = (Whole) b.build().solve();
            double expected = wanted < 4 ? 0 : Math.min(wanted, 5);
            assertThat(best.value(straw)).isCloseTo(expected, within(1e-7));
            assertThat(best.value(used)).isEqualTo(expected > 0 ? 1 : 0);
            assertThat(best.value("pen/straw used")).isEqualTo(best.value(used));
        }
    }

    @Test
    void atMostSoManyPortionsCanBeAskedLater() {
        var b = LinearProgram.minimize();
        int kinds = b.row("kinds of feed", -INF, 2);
        int fed = b.row("fed", 12, 12);
        for (int f = 0; f < 4; f++) {
            int feed = b.column("feed " + f, 1 + f, 0, INF);
            b.term(fed, feed, 1).term(kinds, b.portion(feed, 1, 5), 1);
        }
        assertThat(b.build().solve()).isInstanceOf(Infeasible.class);
        try (Session session = b.build().open()) {
            session.rowBounds(kinds, -INF, 3);
            // 5 at 1, 5 at 2, 2 at 3.
            assertThat(((Whole) session.solve()).objective()).isCloseTo(21, within(1e-6));
            session.rowBounds(kinds, 4, 4);
            // 5 at 1, 5 at 2, and one each at 3 and 4.
            assertThat(((Whole) session.solve()).objective()).isCloseTo(22, within(1e-6));
            // Two and a half kinds: in fractions 5, 5 and 2 of 5.
            session.rowBounds(kinds, -INF, 2.5);
            assertThat(session.solve()).isInstanceOf(Infeasible.class);
            assertThat(((Optimum) session.relaxed(Budget.UNLIMITED)).objective())
                    .isCloseTo(21, within(1e-6));
        }
    }

    /** With the bales held, a ton more of need is met by loose hay, at its price. */
    @Test
    void heldWholeColumnsGiveDuals() {
        var b = LinearProgram.minimize();
        int bales = b.whole("bales", 3, 0, INF);
        int loose = b.column("loose", 5, 0, INF);
        int need = b.row("need", 7.5, INF, new int[] {bales, loose}, new double[] {1, 1});
        b.row("loose at least", 0.25, INF, new int[] {loose}, new double[] {1});
        try (Session session = b.build().open()) {
            Whole whole = (Whole) session.solve();
            assertThat(whole.value(bales)).isEqualTo(7);
            Optimum held = (Optimum) session.held(whole, Budget.UNLIMITED);
            assertThat(held.objective()).isCloseTo(whole.objective(), within(1e-7));
            assertThat(held.dual(need)).isCloseTo(5, within(1e-9));
            assertThat(session.program().columns().get(bales).upper()).isEqualTo(INF);
            assertThat(((Whole) session.solve()).objective()).isCloseTo(whole.objective(), within(1e-7));
        }
    }

    /** Feasible in fractions alone: 2 a + 2 b = 3. What stands in the way is irreducible in whole numbers. */
    @Test
    void limitsThatOnlyWholeNumbersBreakAreNamed() {
        var b = LinearProgram.minimize();
        b.whole("a", 1, 0, 5);
        b.whole("b", 1, 0, 5);
        b.column("c", 1, 0, INF);
        dense(b, "odd", 3, 3, 2, 2, 0);
        dense(b, "idle", 1, INF, 1, 1, 1);
        Conflict why = ((Infeasible) b.build().solve()).why();
        assertThat(why.irreducible()).isTrue();
        assertThat(why.names()).containsExactly("odd", "odd");
        assertThat(why.shortfalls()).isEmpty();
    }

    @Test
    void theSameBytesOnOneThreadAndTwo() throws ExecutionException, InterruptedException {
        List<Integer> seeds = IntStream.range(0, 200).boxed().toList();
        List<String> alone = seeds.stream().map(WholeNumbersTest::bytes).toList();
        var pool = Executors.newFixedThreadPool(2);
        try {
            List<Future<String>> futures = new ArrayList<>();
            seeds.forEach(s -> futures.add(pool.submit(() -> bytes(s))));
            for (int i = 0; i < seeds.size(); i++) {
                assertThat(futures.get(i).get()).as("seed %d", i).isEqualTo(alone.get(i));
            }
        } finally {
            pool.shutdown();
        }
    }

    /** Solved in whole numbers in a session that has answered other questions, and in a fresh one. */
    @Test
    void aUsedSessionGivesTheBytesOfAFreshOne() {
        for (int seed = 0; seed < 100; seed++) {
            LinearProgram program = small(new Random(seed));
            try (Session session = program.open()) {
                Column first = program.columns().get(0);
                session.columnBounds(0, first.lower(), first.upper() + 1);
                session.solve();
                session.columnBounds(0, first.lower(), first.upper());
                session.start(Basis.NONE);
                assertThat(text(session.solve())).as("seed %d", seed).isEqualTo(bytes(seed));
            }
        }
    }

    private static String bytes(int seed) {
        return text(small(new Random(seed)).solve());
    }

    static String text(Outcome outcome) {
        if (!(outcome instanceof Plan plan)) {
            return outcome.getClass().getSimpleName();
        }
        double[] x = IntStream.range(0, plan.program().columns().size())
                .mapToDouble(plan::value)
                .toArray();
        return plan.objective() + " at " + Arrays.toString(x);
    }

    /** The solver's own lines would stand amid what a command prints. */
    @Test
    void theSolverWritesNothing() throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Process child = new ProcessBuilder(java, "-cp", System.getProperty("java.class.path"), Silent.class.getName())
                .redirectError(ProcessBuilder.Redirect.DISCARD) // newer JVMs warn there of native libraries
                .start();
        assertThat(new String(child.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                .isEqualTo("solved\n");
        assertThat(child.waitFor()).isZero();
    }

    /** Solves hundreds of programs in whole numbers, in a process of its own. */
    static final class Silent {
        private Silent() {}

        public static void main(String[] ignored) {
            // Of these the solver would write a line.
            for (int seed : new int[] {2027, 2918, 2987, 3019, 3112}) {
                small(new Random(seed)).solve();
            }
            for (int seed = 0; seed < 400; seed++) {
                PortionPrograms.ration(new Random(seed), seed % 2 == 0).solve();
            }
            System.out.println("solved");
        }
    }
}
