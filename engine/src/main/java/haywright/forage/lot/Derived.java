package haywright.forage.lot;

import haywright.chance.Draws;
import haywright.chance.Gaussian;
import haywright.forage.Analyte;
import haywright.forage.book.Prior;
import haywright.forage.energy.AdfEquation;
import haywright.forage.energy.AdfTdn;
import haywright.forage.energy.Fibre;
import haywright.forage.energy.NetEnergy;
import haywright.forage.energy.RelativeFeedValue;
import haywright.forage.energy.Residual;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

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

    /**
     * @param lot on the scales of the kind's cells
     * @param tdn TDN as it is taken for the lot, which the draws are moved to; empty where the equation's own stands
     * @param way how far the truth lies around the way that TDN was had; empty takes the usual line's, or how lots lie
     * @return empty where neither fibre nor TDN of the kind is known
     */
    static List<Derived> of(Prior prior, Gaussian lot, OptionalDouble tdn, Optional<Residual> way, long seed) {
        var line = AdfEquation.usual(prior.feedClass(), Optional.of(prior.id())).map(AdfEquation.Usual::equation);
        int adf = prior.index(Analyte.ADF);
        int ndf = prior.index(Analyte.NDF);
        int own = prior.index(Analyte.TDN);
        boolean byLine = own < 0 && adf >= 0 && line.isPresent();
        if (!byLine && own < 0) {
            return List.of();
        }
        boolean ranked = Joining.RANKED_BY_FEED_VALUE.contains(prior.feedClass()) && adf >= 0 && ndf >= 0;
        var which = IntStream.of(adf, ndf, own).filter(i -> i >= 0).sorted().toArray();
        var some = lot.of(which);
        int atAdf = Arrays.binarySearch(which, adf);
        int atNdf = Arrays.binarySearch(which, ndf);
        int atTdn = Arrays.binarySearch(which, own);
        // TDN that somebody states has its own doubt; how lots of the kind lie is then no longer in it.
        boolean stated = !byLine && way.isPresent();
        double residual = way.map(Residual::sd).orElse(byLine ? AdfTdn.RESIDUAL.sd() : 0);
        double middle = byLine ? new AdfTdn(line.get(), some.mean(atAdf)).percent() : some.mean(atTdn);
        double moved = tdn.isPresent() ? tdn.getAsDouble() - middle : 0;
        var draws = new Draws(seed);
        var found = new EnumMap<Analyte, DoubleStream.Builder>(Analyte.class);
        var z = new double[some.size()];
        for (int pair = 0; pair < DRAWS / 2; pair++) {
            Arrays.setAll(z, i -> draws.normal());
            double apart = draws.normal();
            for (int sign = 1; sign >= -1; sign -= 2) {
                int side = sign;
                var x = some.at(Arrays.stream(z).map(v -> side * v).toArray());
                double percent = moved
                        + (byLine
                                ? new AdfTdn(line.get(), Math.max(0, x[atAdf])).percent() + side * apart * residual
                                : (stated ? some.mean(atTdn) : x[atTdn]) + side * apart * residual);
                put(found, percent);
                if (ranked) {
                    put(found, x[atAdf], x[atNdf]);
                }
            }
        }
        var derived = new ArrayList<Derived>();
        for (var analyte : List.of(Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.RFV)) {
            var values = found.get(analyte);
            if (values != null) {
                derived.add(of(analyte, values.build().sorted().toArray(), analyte == Analyte.TDN ? residual : 0));
            }
        }
        return derived;
    }

    /** A draw that no feed can be says nothing: far out, where the bell goes on and the feed does not. */
    private static void put(Map<Analyte, DoubleStream.Builder> found, double tdn) {
        if (Analyte.TDN.possible().holds(tdn)) {
            var energy = new NetEnergy(tdn);
            add(found, Analyte.TDN, tdn);
            add(found, Analyte.NEM, energy.nem());
            add(found, Analyte.NEG, energy.neg());
        }
    }

    private static void put(Map<Analyte, DoubleStream.Builder> found, double adf, double ndf) {
        if (adf >= 0 && adf <= ndf && ndf <= 100) {
            add(found, Analyte.RFV, new RelativeFeedValue(new Fibre(adf, ndf)).index());
        }
    }

    private static void add(Map<Analyte, DoubleStream.Builder> found, Analyte analyte, double value) {
        found.computeIfAbsent(analyte, a -> DoubleStream.builder()).add(value);
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
