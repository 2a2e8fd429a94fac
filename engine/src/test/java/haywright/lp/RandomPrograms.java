package haywright.lp;

import static haywright.lp.Published.INF;

import java.util.Random;
import java.util.stream.IntStream;

/** Seeded programs of every shape: free, fixed and bounded columns, one-sided, two-sided and equal rows. */
final class RandomPrograms {
    private RandomPrograms() {}

    /** @param strain how far limits lie from a plan that keeps them: 0 always feasible, 1 seldom, more hardly ever */
    static LinearProgram program(Random random, double strain) {
        int n = 2 + random.nextInt(9);
        var b = random.nextBoolean() ? LinearProgram.minimize() : LinearProgram.maximize();
        double[] plan = new double[n];
        for (int j = 0; j < n; j++) {
            plan[j] = 10 * random.nextDouble();
            double lower = random.nextInt(6) == 0 ? -INF : random.nextInt(3) == 0 ? plan[j] * 0.5 : 0;
            double upper = random.nextInt(3) == 0 ? INF : plan[j] * (1 + random.nextDouble());
            b.column("x" + j, Math.rint(40 * random.nextGaussian()) / 4, lower, upper);
        }
        b.offset(random.nextInt(5));
        int m = 1 + random.nextInt(8);
        for (int i = 0; i < m; i++) {
            double[] row = row(random, n);
            double at = IntStream.range(0, n).mapToDouble(j -> row[j] * plan[j]).sum();
            double[] limits = limits(random, at, strain);
            b.row("r" + i, limits[0], limits[1], IntStream.range(0, n).toArray(), row);
        }
        return b.build();
    }

    static double[] row(Random random, int n) {
        return IntStream.range(0, n)
                .mapToDouble(j -> random.nextInt(3) == 0 ? 0 : Math.rint(20 * random.nextGaussian()) / 4)
                .toArray();
    }

    static double[] limits(Random random, double at, double strain) {
        double pushed = at + strain * (1 + Math.abs(at)) * random.nextGaussian() * 0.5;
        double width = (1 + Math.abs(at)) * random.nextDouble() * 0.5;
        return switch (random.nextInt(4)) {
            case 0 -> new double[] {pushed - width, INF};
            case 1 -> new double[] {-INF, pushed + width};
            case 2 -> new double[] {pushed - width, pushed + width};
            default -> new double[] {pushed, pushed};
        };
    }
}
