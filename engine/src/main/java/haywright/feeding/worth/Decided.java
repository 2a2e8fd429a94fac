package haywright.feeding.worth;

import haywright.diet.Diet;
import haywright.diet.Feed;
import haywright.feeding.worth.Consequence.Figures;
import haywright.ration.PricedFeed;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What one group's decisions come to. */
final class Decided {
    /** Results, the first of them, that a ration is made for. */
    private static final int RATIONS = 12;

    /** Dollars per head per day that each result saves. */
    final double[] saved;

    final double truth;
    final double mostUsed;

    Decided(Consequence of, String id, List<Feed> results, Figures[][] ways) {
        var decisions = decisions(of, id, results);
        int n = results.size();
        mostUsed = decisions.stream().mapToDouble(kg -> of.putOut(kg, id)).max().orElse(0);
        saved = new double[n];
        if (mostUsed == 0) {
            truth = 0; // no result puts it into what they eat, so none decides anything
            return;
        }
        var allowed = new boolean[decisions.size()][n];
        var comesTo = new double[decisions.size()][n];
        var best = new double[n];
        double truly = 0;
        for (int k = 0; k < n; k++) {
            var offered = of.with(id, Optional.of(results.get(k)));
            var diet = Diet.of(
                    offered.stream().map(PricedFeed::feed).toList(),
                    of.question().need(),
                    of.now().diet().options());
            var least = new double[ways[k].length];
            Arrays.fill(least, Double.POSITIVE_INFINITY);
            best[k] = Double.POSITIVE_INFINITY;
            for (int d = 0; d < decisions.size(); d++) {
                allowed[d][k] = of.putOut(decisions.get(d), id) > 0
                        ? of.isAllowed(decisions.get(d), diet)
                        : of.isAllowed(decisions.get(d), of.now().diet());
                for (int j = 0; j < ways[k].length; j++) {
                    double one = of.of(decisions.get(d), ways[k][j]);
                    comesTo[d][k] += one / ways[k].length;
                    least[j] = allowed[d][k] ? Math.min(least[j], one) : least[j];
                }
                best[k] = allowed[d][k] ? Math.min(best[k], comesTo[d][k]) : best[k];
            }
            truly += DoubleStream.of(least).average().orElse(0) / n;
        }
        int now = now(of, decisions, allowed, comesTo, best);
        for (int k = 0; k < n; k++) {
            // where a result forbids every way, nothing is known of what it saves
            saved[k] = Double.isFinite(best[k]) ? priced(comesTo[now][k], allowed[now][k], best[k]) - best[k] : 0;
        }
        double at = 0;
        for (int k = 0; k < n; k++) {
            at += priced(comesTo[now][k], allowed[now][k], best[k]) / n;
        }
        truth = Double.isFinite(truly) ? at - truly : 0;
    }

    private static double priced(double comesTo, boolean allowed, double best) {
        return allowed || !Double.isFinite(best) ? comesTo : Math.max(comesTo, best);
    }

    /** As it is now, without the lot, and as the first results would have it. */
    private static List<double[]> decisions(Consequence of, String id, List<Feed> results) {
        var all = new LinkedHashSet<List<Double>>();
        var found = new ArrayList<double[]>();
        Stream.concat(
                        Stream.of(
                                Optional.of(of.now()), Consequence.exact(of.question(), of.with(id, Optional.empty()))),
                        results.stream()
                                .limit(RATIONS)
                                .map(feed -> Consequence.exact(of.question(), of.with(id, Optional.of(feed)))))
                .flatMap(Optional::stream)
                .map(of::amounts)
                .forEach(kg -> {
                    if (all.add(DoubleStream.of(kg).boxed().toList())) {
                        found.add(kg);
                    }
                });
        return found;
    }

    /** What is allowed by what is known now, and comes to the least over all results. */
    private static int now(
            Consequence of, List<double[]> decisions, boolean[][] allowed, double[][] comesTo, double[] best) {
        int now = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int d = 0; d < decisions.size(); d++) {
            double sum = 0;
            for (int k = 0; k < best.length; k++) {
                sum += priced(comesTo[d][k], allowed[d][k], best[k]);
            }
            if (of.isAllowed(decisions.get(d), of.now().diet()) && sum < least) {
                least = sum;
                now = d;
            }
        }
        return now;
    }
}
