package haywright.lp;

import static haywright.lp.Published.INF;

import haywright.diet.GrowthEnergy;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Seeded programs with curved rows: rations that must hold with their doubt taken off, some of them for growth. */
final class CurvedPrograms {
    private CurvedPrograms() {}

    /** The program and the same numbers once more, for another method. */
    record Curved(double[] cost, double[] upper, List<double[]> rows, double[] atMost, List<ConvexRow> curves) {
        LinearProgram program() {
            return tightened(1);
        }

        /** @param share of what the linear rows allow */
        LinearProgram tightened(double share) {
            int n = cost.length;
            int[] all = IntStream.range(0, n).toArray();
            var b = LinearProgram.minimize();
            for (int j = 0; j < n; j++) {
                b.column("feed " + j, cost[j], 0, upper[j]);
            }
            for (int i = 0; i < rows.size(); i++) {
                b.row("limit " + i, -INF, share * atMost[i], all, rows.get(i));
            }
            for (int c = 0; c < curves.size(); c++) {
                b.convex("curve " + c, all, curves.get(c));
            }
            return b.build();
        }
    }

    static Curved random(Random random) {
        int n = 3 + random.nextInt(4);
        List<ConvexRow> curves = new ArrayList<>();
        for (int c = 0; c < 1 + random.nextInt(3); c++) {
            curves.add(
                    random.nextInt(3) == 0
                            ? growth(random, n)
                            : cone(random, n, c > 0 && random.nextInt(3) == 0 ? 0 : 5));
        }
        List<double[]> rows = new ArrayList<>();
        double[] atMost = new double[1 + random.nextInt(3)];
        for (int i = 0; i < atMost.length; i++) {
            rows.add(amounts(random, n, 1));
            atMost[i] = 6 + 8 * random.nextDouble();
        }
        double[] cost = DoubleStream.of(amounts(random, n, 1)).map(c -> c + 0.2).toArray();
        double[] upper = DoubleStream.of(amounts(random, n, 10)).map(u -> u + 2).toArray();
        return new Curved(cost, upper, rows, atMost, curves);
    }

    /** A limit of 0 makes a ratio of it: more of some columns than of others, for sure. */
    static ConeRow cone(Random random, int n, double limit) {
        double[] mean = DoubleStream.of(amounts(random, n, 2))
                .map(m -> limit == 0 ? m - 0.6 : m + 0.3)
                .toArray();
        double[] own = amounts(random, n, 0.3);
        double[][] shared = new double[random.nextInt(3)][];
        for (int k = 0; k < shared.length; k++) {
            shared[k] =
                    DoubleStream.of(amounts(random, n, 0.3)).map(s -> s - 0.05).toArray();
        }
        return new ConeRow(mean, own, shared, 2 * random.nextDouble(), limit);
    }

    static GrowthEnergy growth(Random random, int n) {
        double z = random.nextBoolean() ? 0 : random.nextDouble();
        return new GrowthEnergy(
                2 + 3 * random.nextDouble(),
                0.5 + 2 * random.nextDouble(),
                energy(random, n, 0.9, z),
                energy(random, n, 0.3, z));
    }

    /** Mcal in a kg, each with its own doubt and one that all share. */
    private static ConeRow energy(Random random, int n, double least, double z) {
        double[] mean =
                DoubleStream.of(amounts(random, n, 1)).map(m -> m + least).toArray();
        return new ConeRow(mean, amounts(random, n, 0.15), new double[][] {amounts(random, n, 0.15)}, z, 0);
    }

    static double[] amounts(Random random, int n, double most) {
        return IntStream.range(0, n)
                .mapToDouble(j -> most * random.nextDouble())
                .toArray();
    }
}
