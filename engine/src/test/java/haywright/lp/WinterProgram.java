package haywright.lp;

import static haywright.lp.Published.INF;

import java.util.Random;

/**
 * A winter of invented numbers: what every group eats of every feed in every week, from stocks that weeks share, some of
 * them bought. Built of parts, each within its scope.
 */
final class WinterProgram {
    private WinterProgram() {}

    /** @param hardness of the weather: 1 is average */
    static LinearProgram winter(int groups, int weeks, int feeds, double hardness) {
        Random random = new Random(11);
        var b = LinearProgram.minimize();
        double[] energy = new double[feeds];
        double[] protein = new double[feeds];
        int[] stock = new int[feeds];
        for (int f = 0; f < feeds; f++) {
            energy[f] = 0.9 + 0.1 * f + 0.05 * random.nextDouble();
            protein[f] = 0.05 + 0.1 * random.nextDouble();
            stock[f] = b.row("stock of " + f, -INF, 20_000 + random.nextInt(60_000));
            int bought = b.column("bought " + f, 0.08 + 0.2 * random.nextDouble(), 0, INF);
            b.term(stock[f], bought, -1);
        }
        for (int g = 0; g < groups; g++) {
            double head = 40 + random.nextInt(80);
            for (int w = 0; w < weeks; w++) {
                var part = b.in("group " + g).in("week " + w);
                double cold = hardness * (1 + 0.2 * Math.sin(Math.PI * w / weeks));
                int eaten = part.row("eaten", 6 * 7 * head, 14 * 7 * head);
                int netEnergy = part.row("energy", 11 * 7 * head * cold, INF);
                int crude = part.row("protein", 0.75 * 7 * head, INF);
                for (int f = 0; f < feeds; f++) {
                    int fed = part.column("feed " + f, 0.002 * random.nextDouble(), 0, INF);
                    b.term(stock[f], fed, 1).term(eaten, fed, 1);
                    b.term(netEnergy, fed, energy[f]).term(crude, fed, protein[f]);
                }
            }
        }
        return b.build();
    }
}
