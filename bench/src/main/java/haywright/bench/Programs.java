package haywright.bench;

import haywright.app.document.TinLantern;
import haywright.lp.Basis;
import haywright.lp.ConeRow;
import haywright.lp.Infeasible;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.Outcome;
import haywright.lp.Plan;
import haywright.lp.Session;
import haywright.outlook.LotTests;
import haywright.outlook.Yard;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Seeded programs of invented numbers: a ration plain, sure, in portions and in whole bales; a ration that cannot be, and
 * why; and a winter of five groups, thirty weeks and nine feeds built, solved from nothing, moved and solved again. Every
 * figure is a ratio to the plain ration, or to the winter's first solve. Ends with 1 if anything has no answer that should.
 */
public final class Programs {
    private static final double INF = Double.POSITIVE_INFINITY;
    private static final int FEEDS = 12;
    private static final int MANY = 300;

    private Programs() {}

    public static void main(String[] ignored) {
        Locale.setDefault(Locale.ROOT);
        IntFunction<LinearProgram> plain = seed -> ration(new Random(seed), 0, false, false, 1);
        timed(MANY, plain, LinearProgram::solve);
        double one = timed(MANY, plain, LinearProgram::solve)[0];
        System.out.printf("a plain ration of %d feeds: %.3f ms, which is 1 here%n", FEEDS, one * 1e3);
        print("sure, four rows", one, seed -> ration(new Random(seed), 0.84, false, false, 1));
        print("in portions", one, seed -> ration(new Random(seed), 0, true, false, 1));
        print("in portions and whole bales", one, seed -> ration(new Random(seed), 0, true, true, 1));
        print("sure, in portions", one, seed -> ration(new Random(seed), 0.84, true, false, 1));
        print("sure, in portions and whole bales", one, seed -> ration(new Random(seed), 0.84, true, true, 1));
        IntFunction<LinearProgram> none = seed -> ration(new Random(seed), 0, false, false, 3);
        print("with no answer", one, none);
        double[] why = timed(MANY, none, p -> p.solve() instanceof Infeasible no ? no.why() : p);
        line("with no answer, and why", why, one);
        tellReports(one);
        System.exit(winter() && flat(plain) ? 0 : 1);
    }

    /** The reports on a lot of the demo, read to their estimate, and on to all that the lot is made of. */
    private static void tellReports(double one) {
        var ranch = TinLantern.ranch();
        var lot = ranch.lots().values().stream()
                .filter(l -> !ranch.reportsOn(l.id()).isEmpty())
                .findFirst()
                .orElseThrow();
        for (int warm = 0; warm < 8; warm++) {
            double[] estimate = timed(MANY, i -> lot, l -> LotTests.estimate(ranch, l));
            double[] made = timed(MANY, i -> new Yard(ranch, LocalDate.EPOCH), yard -> yard.composition(lot));
            if (warm == 7) {
                line("a lot's reports, to its estimate", estimate, one);
                line("a lot's reports, to what it is made of", made, one);
            }
        }
    }

    private static void print(String what, double one, IntFunction<LinearProgram> programs) {
        line(what, timed(MANY, programs, LinearProgram::solve), one);
    }

    private static void line(String what, double[] seconds, double one) {
        System.out.printf(
                "  %-40s median %8.2f, nine in ten %8.2f, most %8.2f times%n",
                what, seconds[0] / one, seconds[1] / one, seconds[2] / one);
    }

    private interface Work<T> {
        Object of(T one);
    }

    /** Median, ninth tenth and most; building what is worked on is not timed. */
    private static <T> double[] timed(int count, IntFunction<T> made, Work<T> work) {
        double[] seconds = new double[count];
        for (int i = 0; i < count; i++) {
            T one = made.apply(i);
            long started = System.nanoTime();
            work.of(one);
            seconds[i] = (System.nanoTime() - started) / 1e9;
        }
        Arrays.sort(seconds);
        return new double[] {seconds[count / 2], seconds[count * 9 / 10], seconds[count - 1]};
    }

    /** @param strain 1 can be fed; 3 asks for more than can be eaten */
    private static LinearProgram ration(Random random, double z, boolean portions, boolean bales, double strain) {
        var b = LinearProgram.minimize();
        int kinds = b.row("kinds", -INF, 6);
        for (int f = 0; f < FEEDS; f++) {
            int feed = b.column("feed " + f, 0.05 + 0.3 * random.nextDouble(), 0, INF);
            if (portions) {
                b.term(kinds, b.portion(feed, 0.3 + 0.5 * random.nextDouble(), 4 + 8 * random.nextDouble()), 1);
            }
        }
        int[] all = IntStream.range(0, FEEDS).map(f -> portions ? 2 * f : f).toArray();
        b.row("eaten", 8, 13, all, between(random, 1, 1));
        double[] low = {0.9, 0.05, 0.0015, 0.001};
        double[] high = {1.9, 0.25, 0.012, 0.009};
        double[] need = {12 * strain, 0.9, 0.03, 0.02};
        for (int r = 0; r < need.length; r++) {
            double[] mean = between(random, low[r], high[r]);
            if (z > 0) {
                double[] own = new double[FEEDS];
                double[] shared = new double[FEEDS];
                for (int f = 0; f < FEEDS; f++) {
                    own[f] = 0.1 * mean[f];
                    shared[f] = 0.03 * mean[f];
                }
                b.convex("need " + r, all, new ConeRow(mean, own, new double[][] {shared}, z, need[r]));
            } else {
                b.row("need " + r, need[r], INF, all, mean);
            }
        }
        for (int r = 0; r < 8; r++) {
            b.row("limit " + r, -INF, 8 + 4 * random.nextDouble(), all, between(random, 0, 1));
        }
        for (int f = 0; bales && f < 4; f++) {
            int whole = b.whole("bales " + f, 0.01, 0, 20);
            b.row("bales of " + f, 0, 0, new int[] {all[f], whole}, new double[] {1, -0.55});
        }
        return b.build();
    }

    private static double[] between(Random random, double low, double high) {
        return IntStream.range(0, FEEDS)
                .mapToDouble(f -> low + (high - low) * random.nextDouble())
                .toArray();
    }

    private static boolean winter() {
        timed(10, i -> winter(1), LinearProgram::solve);
        double started = Cpu.seconds();
        for (int i = 0; i < 20; i++) {
            winter(1);
        }
        double build = (Cpu.seconds() - started) / 20;
        LinearProgram winter = winter(1);
        double[] cold = timed(20, i -> winter, LinearProgram::solve);
        System.out.printf(
                "a winter, %,d rows and %,d columns, solved from nothing: %.1f ms, which is 1 here%n",
                winter.rows().size(), winter.columns().size(), cold[0] * 1e3);
        System.out.printf("  built                                     %.3f%n", build / cold[0]);
        boolean answered = true;
        try (Session session = winter.open()) {
            answered &= session.solve() instanceof Optimum;
            Basis kept = session.basis();
            Random random = new Random(2);
            double[] stock = new double[WINTER_FEEDS];
            double[] none = new double[WINTER_FEEDS];
            Arrays.fill(none, -INF);
            int many = 200;
            double[] moved = new double[many];
            double[] asked = new double[many];
            double[] from = new double[many];
            for (int i = 0; i < many; i++) {
                for (int f = 0; f < stock.length; f++) {
                    stock[f] = winter.rows().get(f).upper() * (0.9 + 0.2 * random.nextDouble());
                }
                session.rows(0, none, stock);
                long t = System.nanoTime();
                answered &= session.solve() instanceof Plan;
                moved[i] = (System.nanoTime() - t) / 1e9;
                t = System.nanoTime();
                session.solve();
                asked[i] = (System.nanoTime() - t) / 1e9;
                t = System.nanoTime();
                session.start(kept);
                answered &= session.solve() instanceof Plan;
                from[i] = (System.nanoTime() - t) / 1e9;
            }
            print("stocks moved and solved again", moved, cold[0]);
            print("solved again, nothing moved", asked, cold[0]);
            print("stocks moved, from a kept basis", from, cold[0]);
        }
        LinearProgram hard = winter(2.4);
        double[] no = timed(5, i -> hard, LinearProgram::solve);
        Outcome outcome = hard.solve();
        double[] why = timed(5, i -> hard, p -> ((Infeasible) outcome).why());
        System.out.printf(
                "  with no answer                            %.3f%n  why: %d limits                           %.3f%n",
                no[0] / cold[0], ((Infeasible) outcome).why().limits().size(), why[0] / cold[0]);
        return answered;
    }

    private static void print(String what, double[] seconds, double one) {
        Arrays.sort(seconds);
        System.out.printf("  %-40s  %.4f%n", what, seconds[seconds.length / 2] / one);
    }

    private static final int WINTER_FEEDS = 9;
    private static final int WEEKS = 30;

    /**
     * Rows 0 to 8 are the stocks in the first week; what is left passes to the next, and a little can be bought each week.
     *
     * @param hardness of the weather: 1 is average
     */
    private static LinearProgram winter(double hardness) {
        Random random = new Random(11);
        var b = LinearProgram.minimize();
        int[][] stock = new int[WEEKS][WINTER_FEEDS];
        double[] price = between(random, 0.08, 0.3);
        for (int w = 0; w < WEEKS; w++) {
            var week = b.in("week " + w);
            for (int f = 0; f < WINTER_FEEDS; f++) {
                double first = w == 0 ? 40_000 + random.nextInt(60_000) : 0;
                stock[w][f] = week.row("stock of " + f, -INF, first);
                double dearer = price[f] * (1 + 0.02 * w * random.nextDouble());
                week.term(stock[w][f], week.column("bought " + f, dearer, 0, 9_000), -1);
                int left = week.column("left " + f, w == WEEKS - 1 ? -0.5 * price[f] : 0.0005, 0, INF);
                week.term(stock[w][f], left, 1);
                if (w > 0) {
                    week.term(stock[w][f], left - 2 * WINTER_FEEDS, -1);
                }
            }
        }
        for (int g = 0; g < 5; g++) {
            double head = 40 + random.nextInt(80);
            double[] energy = between(random, 0.9, 1.9);
            double[] protein = between(random, 0.04, 0.2);
            double[] calcium = between(random, 0.002, 0.012);
            for (int w = 0; w < WEEKS; w++) {
                var part = b.in("group " + g).in("week " + w);
                double cold = hardness * (1 + 0.25 * Math.sin(Math.PI * w / WEEKS) + 0.1 * random.nextDouble());
                int eaten = part.row("eaten", 6 * 7 * head, 13 * 7 * head);
                int need = part.row("energy", 11 * 7 * head * cold, INF);
                int crude = part.row("protein", 0.85 * 7 * head, INF);
                int lime = part.row("calcium", 0.03 * 7 * head, INF);
                for (int f = 0; f < WINTER_FEEDS; f++) {
                    int fed = part.column("feed " + f, 0.002 * random.nextDouble(), 0, INF);
                    b.term(stock[w][f], fed, 1).term(eaten, fed, 1).term(lime, fed, calcium[f]);
                    b.term(need, fed, energy[f]).term(crude, fed, protein[f]);
                }
            }
        }
        return b.build();
    }

    /** The size of this process after 20,000 solves on new handles beside that after 2,000. */
    private static boolean flat(IntFunction<LinearProgram> programs) {
        long before = 0;
        for (int i = 0; i < 20_000; i++) {
            if (i == 2_000) {
                before = resident();
            }
            programs.apply(i % MANY).solve();
        }
        double grown = (double) resident() / before;
        System.out.printf("20,000 rations on new handles: memory %.2f times that after 2,000%n", grown);
        return grown < 1.5;
    }

    private static long resident() {
        System.gc();
        try (var lines = java.nio.file.Files.lines(java.nio.file.Path.of("/proc/self/status"))) {
            return lines.filter(l -> l.startsWith("VmRSS"))
                    .mapToLong(l -> Long.parseLong(l.replaceAll("\\D", "")))
                    .sum();
        } catch (java.io.IOException e) {
            return 1;
        }
    }
}
