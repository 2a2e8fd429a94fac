package haywright.forage.lot;

import haywright.chance.Draws;
import haywright.forage.Analyte;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;

/**
 * What the equations make of a lot whose analytes are known with a spread: TDN, net energy, relative feed value. Drawn
 * from a seed in antithetic pairs and put through the same equations as a report.
 *
 * @param analyte what it is, in its own unit
 * @param low90 the truth lies between {@code low90} and {@code high90} nine times in ten
 * @param equationSd of {@code sd}, the equation's own part, common to every lot it is used on; 0 where there is none
 */
public record Derived(Analyte analyte, double mean, double sd, double low90, double high90, double equationSd) {
    /** Draws, half of them the mirror of the other half. */
    static final int DRAWS = 4_000;

    private static final List<Analyte> WORKED_OUT = List.of(Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.RFV);

    /** @return empty where TDN is not known */
    static List<Derived> of(LotDistribution lot, long seed) {
        var known = WORKED_OUT.stream().filter(lot.expected()::knows).toList();
        if (!known.contains(Analyte.TDN)) {
            return List.of();
        }
        var draws = new Draws(seed);
        var found = new double[known.size()][DRAWS];
        var z = new double[lot.size()];
        var mirrored = new double[lot.size()];
        var doubts = new HashMap<Shared, Double>();
        for (int draw = 0; draw < DRAWS; draw += 2) {
            for (int i = 0; i < z.length; i++) {
                z[i] = draws.normal();
                mirrored[i] = -z[i];
            }
            lot.shared().forEach(doubt -> doubts.put(doubt, draws.normal()));
            var one = lot.at(z, doubt -> doubts.getOrDefault(doubt, 0.0));
            var fellow = lot.at(mirrored, doubt -> -doubts.getOrDefault(doubt, 0.0));
            for (int i = 0; i < known.size(); i++) {
                found[i][draw] = one.value(known.get(i)).orElseThrow();
                found[i][draw + 1] = fellow.value(known.get(i)).orElseThrow();
            }
        }
        var derived = new ArrayList<Derived>();
        for (int i = 0; i < known.size(); i++) {
            Arrays.sort(found[i]);
            derived.add(of(known.get(i), found[i], known.get(i) == Analyte.TDN ? lot.wayDoubt() : 0));
        }
        return derived;
    }

    private static Derived of(Analyte analyte, double[] sorted, double residual) {
        double mean = Arrays.stream(sorted).average().orElseThrow();
        double squares = Arrays.stream(sorted).map(v -> (v - mean) * (v - mean)).sum();
        return new Derived(
                analyte,
                mean,
                Math.sqrt(squares / sorted.length),
                quantile(sorted, 0.05),
                quantile(sorted, 0.95),
                residual);
    }

    private static double quantile(double[] sorted, double p) {
        double at = p * (sorted.length - 1);
        int below = (int) at;
        return sorted[below] + (at - below) * (sorted[Math.min(below + 1, sorted.length - 1)] - sorted[below]);
    }
}
