package haywright.forage;

import haywright.chance.Draws;
import haywright.chance.Gaussian;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

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

    /** How far TDN itself lies from a line drawn through fibre, points of TDN. */
    public static final double TDN_RESIDUAL = 3;

    public static final Source RESIDUAL =
            Source.judgement("TDN around a line from fibre: about 3 points; 6.1 was read for the summative equation");

    /** @param lot on the scales of the kind's cells */
    static List<Derived> of(Prior prior, Gaussian lot, long seed) {
        var line = AdfEquation.usual(prior.feedClass()).map(AdfEquation.Usual::equation);
        int tdn = prior.index(Analyte.TDN);
        var some = tdn < 0
                ? lot.of(prior.index(Analyte.ADF), prior.index(Analyte.NDF))
                : lot.of(prior.index(Analyte.ADF), prior.index(Analyte.NDF), tdn);
        double residual = line.isPresent() ? TDN_RESIDUAL : 0;
        boolean ranked = Joining.RANKED_BY_FEED_VALUE.contains(prior.feedClass());
        var draws = new Draws(seed);
        var found = new ArrayList<Map<Analyte, Double>>();
        var z = new double[some.size()];
        for (int pair = 0; pair < DRAWS / 2; pair++) {
            Arrays.setAll(z, i -> draws.normal());
            double apart = draws.normal();
            for (int sign = 1; sign >= -1; sign -= 2) {
                int side = sign;
                var x = some.at(Arrays.stream(z).map(v -> side * v).toArray());
                double percent = line.isPresent()
                        ? new AdfTdn(line.get(), Math.max(0, x[0])).percent() + side * apart * residual
                        : x[2];
                found.add(values(x[0], x[1], percent, ranked));
            }
        }
        var derived = new ArrayList<Derived>();
        for (var analyte : List.of(Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.RFV)) {
            var sorted = found.stream()
                    .filter(v -> v.containsKey(analyte))
                    .mapToDouble(v -> v.getOrDefault(analyte, 0.0))
                    .sorted()
                    .toArray();
            if (sorted.length > 0) {
                derived.add(of(analyte, sorted, analyte == Analyte.TDN ? residual : 0));
            }
        }
        return derived;
    }

    /** A draw that no feed can be says nothing: far out, where the bell goes on and the feed does not. */
    private static Map<Analyte, Double> values(double adf, double ndf, double tdn, boolean ranked) {
        var values = new EnumMap<Analyte, Double>(Analyte.class);
        if (Analyte.TDN.possible().holds(tdn)) {
            var energy = new NetEnergy(tdn);
            values.put(Analyte.TDN, tdn);
            values.put(Analyte.NEM, energy.nem());
            values.put(Analyte.NEG, energy.neg());
        }
        if (ranked && adf >= 0 && adf <= ndf && ndf <= 100) {
            values.put(Analyte.RFV, new RelativeFeedValue(new Fibre(adf, ndf)).index());
        }
        return values;
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
