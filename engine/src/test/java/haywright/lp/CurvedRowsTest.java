package haywright.lp;

import static haywright.lp.Published.INF;
import static haywright.lp.Published.dense;
import static haywright.lp.Published.numbers;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.diet.GrowthEnergy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** Curved rows held by cuts: against print, a general nonlinear method, and a grid of points. */
class CurvedRowsTest {
    static final List<String> IDS =
            List.of("C01", "C03", "C04", "C05", "C06", "C08", "C09", "C10", "C12", "C14", "C15");

    private static final int[] FOUR = {0, 1, 2, 3};

    /** Hock and Schittkowski 73, after van de Panne and Popp 1963: cattle feed with uncertain protein. */
    private static LinearProgram cattleFeed(JsonNode in, ConeRow protein) {
        var b = LinearProgram.minimize();
        double[] cost = numbers(in.get("c"));
        for (int j : FOUR) {
            b.column("feed " + j, cost[j], 0, INF);
        }
        dense(b, "oil", in.get("oil_min").asDouble(), INF, numbers(in.get("oil")));
        dense(b, "sum", 1, 1, 1, 1, 1, 1);
        b.convex("protein", FOUR, protein);
        return b.build();
    }

    /** A correlation of all feeds is one doubt that they share: √ρ of each deviation, and √(1 − ρ) of its own. */
    private static ConeRow protein(JsonNode in, double z) {
        double rho = in.has("rho") ? in.get("rho").asDouble() : 0;
        double[] sd = DoubleStream.of(numbers(in.get("var"))).map(Math::sqrt).toArray();
        double[] own = DoubleStream.of(sd).map(s -> s * Math.sqrt(1 - rho)).toArray();
        double[] shared = DoubleStream.of(sd).map(s -> s * Math.sqrt(rho)).toArray();
        return new ConeRow(
                numbers(in.get("mean")),
                own,
                new double[][] {shared},
                z,
                in.get("protein_min").asDouble());
    }

    private static JsonNode inputs(String id) {
        return Published.json(Published.row(id).text("inputs"));
    }

    @ParameterizedTest
    @FieldSource("IDS")
    void chanceConstrainedCattleFeedIsAtItsPublishedOptimum(String id) {
        JsonNode in = inputs(id);
        var row = Published.row(id);
        Optimum best =
                (Optimum) cattleFeed(in, protein(in, in.get("z").asDouble())).solve();
        JsonNode verified = Published.json(row.text("verified"));
        assertThat(best.objective())
                .isCloseTo(
                        verified.get("obj").asDouble(),
                        within(row.number("tolerance").orElseThrow()));
        row.number("published_objective")
                .ifPresent(printed -> assertThat(best.objective()).isCloseTo(printed, within(1e-6)));
        for (int j : FOUR) {
            // A row may be broken by 1e-7 of its size, and its border is flat to the second order: shares to the root
            // of it.
            assertThat(best.value(j)).isCloseTo(verified.get("x").get(j).asDouble(), within(1e-3));
        }
        Certificate.holds(best);
    }

    /** Sureness 50 % is the plain program. */
    @Test
    void withoutAnyDoubtTakenOffItIsTheLinearProgram() {
        JsonNode in = inputs("C02");
        Optimum best = (Optimum) cattleFeed(in, protein(in, 0)).solve();
        Optimum plain = (Optimum) Published.program("C02").solve();
        assertThat(best.objective()).isCloseTo(plain.objective(), within(1e-9));
        assertThat(best.price(0)).isCloseTo(plain.dual(plain.program().row("protein")), within(1e-6));
    }

    /** One session walks up the whole table of sureness: cuts of a smaller z hold for a larger one. */
    @Test
    void oneSessionWalksUpItsOwnCuts() {
        JsonNode in = inputs("C01");
        double least = in.get("protein_min").asDouble();
        ConeRow protein = protein(in, in.get("z").asDouble());
        try (Session session = cattleFeed(in, protein).open()) {
            session.solve();
            int cuts = 0;
            for (double wanted = least; wanted <= least + 4; wanted += 0.25) {
                int before = session.program().rows().size();
                session.convex(0, protein.withLimit(wanted));
                double warm = ((Optimum) session.solve()).objective();
                cuts += session.program().rows().size() - before;
                double cold =
                        ((Optimum) cattleFeed(in, protein.withLimit(wanted)).solve()).objective();
                assertThat(warm).as("%s", wanted).isCloseTo(cold, within(1e-6));
            }
            assertThat(cuts).isLessThan(17 * 4);
        }
    }

    @Test
    void thePriceIsWhatOneUnitMoreReallyCosts() {
        for (String id : IDS) {
            JsonNode in = inputs(id);
            ConeRow protein = protein(in, in.get("z").asDouble());
            double step = 1e-3;
            double more = cost(in, protein.withLimit(protein.limit() + step));
            double less = cost(in, protein.withLimit(protein.limit() - step));
            double price = ((Optimum) cattleFeed(in, protein).solve()).price(0);
            assertThat(price).isCloseTo((more - less) / (2 * step), within(1e-3 * price));
        }
    }

    private static double cost(JsonNode in, ConeRow protein) {
        return ((Optimum) cattleFeed(in, protein).solve()).objective();
    }

    /** Random programs with several curved rows, some shared doubts, some growth. */
    @Test
    void aGeneralNonlinearMethodFindsTheSameOnRandomPrograms() {
        int compared = 0;
        for (int seed = 0; seed < 250; seed++) {
            CurvedPrograms.Curved curved = CurvedPrograms.random(new Random(seed));
            if (!(curved.program().solve() instanceof Optimum best)) {
                continue;
            }
            double general = NonlinearMethod.least(curved);
            if (Double.isNaN(general)) {
                continue;
            }
            assertThat(best.objective())
                    .as("seed %d", seed)
                    .isCloseTo(general, within(1e-6 * Math.max(1, Math.abs(general))));
            compared++;
        }
        assertThat(compared).isGreaterThanOrEqualTo(200);
    }

    /** Cuts of one need, moved to another, cut off no point that keeps it; nor do they let through what they cut there. */
    @Test
    void noCutEverCutsOffAPointThatKeepsTheRow() {
        Random random = new Random(5);
        int kept = 0;
        for (int i = 0; i < 100_000; i++) {
            int n = 2 + random.nextInt(4);
            boolean growth = random.nextBoolean();
            ConvexRow first = growth ? CurvedPrograms.growth(random, n) : CurvedPrograms.cone(random, n, 1);
            ConvexRow other = first instanceof GrowthEnergy g
                    ? new GrowthEnergy(
                            g.nem() * 2 * random.nextDouble(), g.neg() * 2 * random.nextDouble(), g.inNem(), g.inNeg())
                    : ((ConeRow) first).withLimit(2 * random.nextDouble());
            double[] x = CurvedPrograms.amounts(random, n, 3);
            double[] y = CurvedPrograms.amounts(random, n, 12);
            if (first.broken(x) <= 0) {
                continue;
            }
            ConvexRow.Cut cut = first.cutAt(x);
            assertThat(sum(cut, x)).isLessThan(first.atLeast(cut));
            if (other.broken(y) <= 0) {
                assertThat(sum(cut, y)).isGreaterThanOrEqualTo(other.atLeast(cut) * (1 - 1e-12) - 1e-12);
                kept++;
            }
        }
        assertThat(kept).isGreaterThan(10_000);
    }

    private static double sum(ConvexRow.Cut cut, double[] x) {
        return IntStream.range(0, x.length)
                .mapToDouble(j -> cut.coefficients()[j] * x[j])
                .sum();
    }

    /** Whole columns and curved rows: every combination of the whole columns, each as a program of its own. */
    @Test
    void curvedRowsHoldInWholeNumbersToo() {
        int compared = 0;
        for (int seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            ConeRow cone = CurvedPrograms.cone(random, 4, 1.2);
            LinearProgram whole = mixed(cone, new Random(seed), 0, 3);
            double best = INF;
            for (int a = 0; a <= 3; a++) {
                for (int b = 0; b <= 3; b++) {
                    try (Session session = whole.continuous().open()) {
                        session.columns(0, new double[] {a, b}, new double[] {a, b});
                        best = session.solve() instanceof Optimum o ? Math.min(best, o.objective()) : best;
                    }
                }
            }
            if (whole.solve() instanceof Whole plan) {
                assertThat(plan.objective()).as("seed %d", seed).isCloseTo(best, within(1e-6 * best));
                double[] x = IntStream.range(0, 4).mapToDouble(plan::value).toArray();
                assertThat(cone.broken(x)).isLessThanOrEqualTo(1e-7);
                compared++;
            } else {
                assertThat(best).isEqualTo(INF);
            }
        }
        assertThat(compared).isGreaterThan(30);
    }

    private static LinearProgram mixed(ConeRow cone, Random random, int low, int high) {
        var b = LinearProgram.minimize();
        for (int j = 0; j < 4; j++) {
            double cost = 1 + random.nextDouble();
            if (j < 2) {
                b.whole("whole " + j, cost, low, high);
            } else {
                b.column("free " + j, 1.5 * cost, 0, 0.6);
            }
        }
        b.convex("sure", FOUR, cone);
        return b.build();
    }

    /**
     * What stands in the way is irreducible, the curved row among it as one. No amount is below nothing here: a curved row
     * whose amounts have no bound cannot always be decided.
     */
    @Test
    void aCurvedRowStandsInTheWayByName() {
        int found = 0;
        for (int seed = 0; seed < 400; seed++) {
            CurvedPrograms.Curved curved = CurvedPrograms.random(new Random(seed));
            LinearProgram program = curved.tightened(0.3);
            if (!(program.solve() instanceof Infeasible infeasible)) {
                continue;
            }
            Conflict why = infeasible.why();
            found += why.limits().stream().anyMatch(l -> l.on() == Limit.On.CURVE) ? 1 : 0;
            assertThat(only(program, why.limits()).solve()).as("seed %d", seed).isInstanceOf(Infeasible.class);
            List<Limit> members = why.limits().stream()
                    .filter(l -> why.names().contains(l.name()))
                    .toList();
            for (Limit left : members) {
                List<Limit> rest = new ArrayList<>(why.limits());
                rest.remove(left);
                assertThat(only(program, rest).solve())
                        .as("seed %d without %s", seed, left.name())
                        .isInstanceOf(Optimum.class);
            }
        }
        assertThat(found).isGreaterThan(20);
    }

    private static LinearProgram only(LinearProgram program, List<Limit> limits) {
        var b = LinearProgram.minimize();
        program.columns().forEach(c -> b.column(c.name(), 0, -INF, INF));
        double[][] column = new double[2][program.columns().size()];
        Arrays.fill(column[1], INF);
        for (Limit l : limits) {
            switch (l.on()) {
                case ROW -> {
                    var r = program.rows().get(l.index());
                    b.row(
                            l.name(),
                            l.lower() ? l.bound() : -INF,
                            l.lower() ? INF : l.bound(),
                            r.columns(),
                            r.coefficients());
                }
                case COLUMN -> column[l.lower() ? 0 : 1][l.index()] = l.bound();
                case CURVE -> {
                    var curve = program.curves.get(l.index());
                    b.convex(curve.name(), curve.columns(), curve.row());
                }
            }
        }
        try (Session session = b.build().open()) {
            session.columns(0, column[0], column[1]);
            return session.program();
        }
    }

    @Test
    void theSameBytesOnOneThreadAndTwo() throws Exception {
        List<Callable<String>> work = new ArrayList<>();
        for (int seed = 0; seed < 100; seed++) {
            int s = seed;
            work.add(() -> WholeNumbersTest.text(
                    CurvedPrograms.random(new Random(s)).program().solve()));
        }
        List<String> alone = new ArrayList<>();
        for (var w : work) {
            alone.add(w.call());
        }
        var pool = Executors.newFixedThreadPool(2);
        try {
            List<String> together = new ArrayList<>();
            for (var future : pool.invokeAll(work)) {
                together.add(future.get());
            }
            assertThat(together).isEqualTo(alone);
        } finally {
            pool.shutdown();
        }
    }

    /** Cuts that hold nothing go, so that a session can be moved for ever. */
    @Test
    void aSessionMovedThousandsOfTimesKeepsFewCuts() {
        Random random = new Random(1);
        CurvedPrograms.Curved curved = CurvedPrograms.random(new Random(12));
        try (Session session = curved.program().open()) {
            int own = curved.program().rows().size();
            int n = curved.program().columns().size();
            for (int i = 0; i < 3_000; i++) {
                session.costs(0, CurvedPrograms.amounts(random, n, 1));
                assertThat(session.solve()).isInstanceOf(Optimum.class);
            }
            int curves = curved.program().curves.size();
            assertThat(session.program().rows().size() - own).isLessThan(150 * curves);
        }
    }

    @Test
    void lessSureThanEvenOddsIsRefused() {
        assertThatThrownBy(() -> new ConeRow(new double[1], new double[1], new double[0][], -0.1, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("z is -0.1");
    }
}
