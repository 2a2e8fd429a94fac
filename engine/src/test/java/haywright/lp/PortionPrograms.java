package haywright.lp;

import static haywright.lp.Published.INF;

import java.util.Random;
import java.util.stream.IntStream;

/** Seeded rations: twelve feeds, each nothing or a portion, some in whole bales, and limits on their mix. */
final class PortionPrograms {
    private PortionPrograms() {}

    static LinearProgram ration(Random random, boolean bales) {
        int n = 12;
        var b = LinearProgram.minimize();
        int[] feeds = new int[n];
        int kinds = b.row("kinds", -INF, 5);
        for (int j = 0; j < n; j++) {
            feeds[j] = b.column("feed " + j, 0.05 + 0.3 * random.nextDouble(), 0, INF);
            b.term(kinds, b.portion(feeds[j], 0.2 + random.nextDouble(), 4 + 8 * random.nextDouble()), 1);
        }
        int[] all = IntStream.range(0, n).map(j -> feeds[j]).toArray();
        b.row("eaten", 9, 13, all, coefficients(random, n, 1, 1));
        b.row("energy", 11, INF, all, coefficients(random, n, 0.7, 1.9));
        b.row("protein", 0.9, INF, all, coefficients(random, n, 0.04, 0.3));
        b.row("calcium", 0.03, 0.2, all, coefficients(random, n, 0.0005, 0.015));
        b.row("phosphorus", 0.02, INF, all, coefficients(random, n, 0.0005, 0.009));
        for (int j = 0; bales && j < 4; j++) {
            int whole = b.whole("bales " + j, 0.01, 0, 20);
            b.row("bales of " + j, 0, 0, new int[] {feeds[j], whole}, new double[] {1, -0.55});
        }
        return b.build();
    }

    private static double[] coefficients(Random random, int n, double low, double high) {
        return IntStream.range(0, n)
                .mapToDouble(j -> low + (high - low) * random.nextDouble())
                .toArray();
    }
}
