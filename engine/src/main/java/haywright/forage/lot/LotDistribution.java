package haywright.forage.lot;

import haywright.chance.Gaussian;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.Made;
import haywright.forage.Marginal;
import haywright.forage.book.Prior;
import haywright.forage.energy.AdfEquation;
import haywright.forage.energy.AdfTdn;
import haywright.forage.energy.Fiber;
import haywright.forage.energy.NetEnergy;
import haywright.forage.energy.RelativeFeedValue;
import haywright.forage.energy.Residual;
import haywright.workings.Origin;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * All that a lot, or a feed for sale, may be made of. Which figure comes from what was measured, from what its laboratory
 * prints or from the feed book, and which way to TDN is used, is chosen once, where its composition is made; here the
 * choice is applied to any state of what is not known, so that derived values, the spread of a ration's rows and draws
 * cannot part.
 *
 * <p>A state is a few standard normal values: the lot's own, and those that it shares with other lots ({@link Shared}).
 * What no feed can be is moved to the nearest that one can, and counted; nothing is dropped, so that draws stay in pairs.
 */
public final class LotDistribution {
    private static final String TDN = "tdn";

    private static final Residual NONE = new Residual(0, Source.judgment("how lots of the kind lie holds it already"));

    /** What is worked out from TDN or fiber, and so is no entry of θ. */
    private static final Set<Analyte> FOLLOWS = EnumSet.of(Analyte.TDN, Analyte.NEM, Analyte.NEG, Analyte.RFV);

    private final Theta theta;
    private final Composition expected;
    private final List<Axis> axes;
    private final TdnWay way;
    private final double[] plain;
    private final SortedSet<Shared> shared;
    private volatile @Nullable Steps steps;

    /**
     * Where one entry of θ goes.
     *
     * @param log whether θ is its logarithm
     * @param by carries the middle of θ to the expected value: a factor where {@code log}, else a sum
     * @param below what it was found to be under; null where it was not
     */
    private record Axis(
            int index,
            Analyte analyte,
            boolean log,
            double by,
            @Nullable Double below) {
        double value(double[] theta) {
            double x = log ? StrictMath.exp(theta[index]) * by : theta[index] + by;
            return below == null ? x : Math.min(x, below);
        }
    }

    /**
     * How TDN moves.
     *
     * @param line with ADF; null where none is used
     * @param own with the entry of θ that is TDN; −1 where there is none, or where somebody states TDN
     * @param doubt of the way itself, shared by every lot it is used on
     */
    private record TdnWay(@Nullable AdfEquation line, int own, Residual doubt, Shared name) {}

    private LotDistribution(Theta theta, Composition expected, List<Axis> axes, TdnWay way) {
        this.theta = theta;
        this.expected = expected;
        this.axes = List.copyOf(axes);
        this.way = way;
        plain = new double[Analyte.values().length];
        for (var analyte : Analyte.values()) {
            plain[analyte.ordinal()] = expected.value(analyte).orElse(Double.NaN);
        }
        var all = new TreeSet<>(theta.shared().keySet());
        if (expected.knows(Analyte.TDN) && way.doubt.sd() > 0) {
            all.add(way.name);
        }
        shared = Collections.unmodifiableSortedSet(all);
    }

    /** Of a lot or a feed for sale whose composition is made. */
    public static LotDistribution of(LotComposition lot) {
        return of(lot, Set.of());
    }

    /** @param certain figures that somebody says are certain as they stand */
    public static LotDistribution of(LotComposition lot, Set<Analyte> certain) {
        var estimate = lot.estimate();
        var doubt =
                certain.contains(Analyte.TDN) ? Optional.of(NONE) : lot.tdn().flatMap(tdn -> tdn.residual());
        return estimate.isPresent()
                ? of(
                        estimate.get().prior(),
                        estimate.get().theta(),
                        lot.composition(),
                        doubt,
                        lot.energy().way())
                : tagged(lot, doubt, certain);
    }

    /** Of a kind, or of a lot of it, by the equations alone. @param tdn as it is taken; empty where the equation's own stands */
    static LotDistribution byEquations(Prior prior, Theta theta, OptionalDouble tdn, Optional<Residual> doubt) {
        var known = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        for (int i = 0; i < prior.cells().size(); i++) {
            var cell = prior.cells().get(i);
            var now =
                    Marginal.ofScale(theta.mean(i), theta.sd(i), cell.marginal().log());
            known.put(
                    cell.analyte(),
                    new Composition.Known(now.mean(), new Origin.Published(cell.source()), now, null, null));
        }
        var adf = known.get(Analyte.ADF);
        var ndf = known.get(Analyte.NDF);
        var own = known.get(Analyte.TDN);
        var line = line(prior);
        var percent = tdn.isPresent()
                ? tdn
                : own != null
                        ? OptionalDouble.of(own.value())
                        : adf != null && line.isPresent()
                                ? OptionalDouble.of(new AdfTdn(line.get(), Math.max(0, adf.value())).percent())
                                : OptionalDouble.empty();
        if (percent.isPresent() && Analyte.TDN.possible().holds(percent.getAsDouble())) {
            var energy = new NetEnergy(percent.getAsDouble());
            put(known, Analyte.TDN, energy.tdn());
            put(known, Analyte.NEM, energy.nem());
            put(known, Analyte.NEG, energy.neg());
        }
        if (Joining.RANKED_BY_FEED_VALUE.contains(prior.feedClass())
                && adf != null
                && ndf != null
                && adf.value() <= ndf.value()) {
            put(known, Analyte.RFV, new RelativeFeedValue(new Fiber(adf.value(), ndf.value())).index());
        }
        return of(
                prior,
                theta,
                new Composition(known),
                doubt,
                line.map(AdfEquation::id).orElse(""));
    }

    private static Optional<AdfEquation> line(Prior prior) {
        return AdfEquation.usual(prior.feedClass(), Optional.of(prior.id())).map(AdfEquation.Usual::equation);
    }

    private static void put(Map<Analyte, Composition.Known> known, Analyte analyte, double value) {
        known.put(analyte, new Composition.Known(value, Origin.TYPED));
    }

    private static LotDistribution of(
            Prior prior, Theta theta, Composition expected, Optional<Residual> doubt, String way) {
        var axes = new ArrayList<Axis>();
        for (int i = 0; i < prior.cells().size(); i++) {
            var cell = prior.cells().get(i);
            var known = expected.values().get(cell.analyte());
            if (known != null && known.lot() != null && cell.analyte() != Analyte.TDN) {
                axes.add(axis(i, cell.analyte(), known, theta, cell.marginal().log()));
            }
        }
        var line = line(prior);
        int own = prior.index(Analyte.TDN);
        boolean byLine = own < 0 && prior.index(Analyte.ADF) >= 0 && line.isPresent();
        return new LotDistribution(
                theta,
                expected,
                axes,
                new TdnWay(
                        byLine ? line.get() : null,
                        byLine || doubt.isPresent() ? -1 : own,
                        doubt.orElse(byLine ? AdfTdn.RESIDUAL : NONE),
                        new Shared(TDN, way)));
    }

    /** A tag is no promise of one load: each figure as far as loads of its kind differ, each by itself. */
    private static LotDistribution tagged(LotComposition lot, Optional<Residual> doubt, Set<Analyte> certain) {
        var which = new ArrayList<Map.Entry<Analyte, Composition.Known>>();
        for (var one : lot.composition().values().entrySet()) {
            if (one.getValue().lot() != null) {
                which.add(one);
            }
        }
        var kind = Prior.of(lot.feedClass(), lot.row());
        var line = kind.flatMap(LotDistribution::line);
        boolean byLine = which.stream().noneMatch(one -> one.getKey() == Analyte.TDN)
                && which.stream().anyMatch(one -> one.getKey() == Analyte.ADF)
                && line.isPresent();
        double tdn = byLine || certain.contains(Analyte.TDN) || certain.contains(Analyte.ADF)
                ? 0
                : ofKind(which, kind, line);
        int size = which.size() + (tdn > 0 ? 1 : 0);
        var mean = new double[size];
        var covariance = new double[size][size];
        for (int i = 0; i < which.size(); i++) {
            var bell = which.get(i).getValue().lot();
            if (bell != null) {
                mean[i] = bell.onScale(bell.center());
                covariance[i][i] = bell.sd() * bell.sd();
            }
        }
        int own = -1;
        if (tdn > 0) {
            own = which.size();
            covariance[own][own] = tdn * tdn;
        }
        var theta = new Theta(new Gaussian(mean, covariance));
        var axes = new ArrayList<Axis>();
        for (int i = 0; i < which.size(); i++) {
            var known = which.get(i).getValue();
            var analyte = which.get(i).getKey();
            var bell = known.lot();
            if (analyte == Analyte.TDN) {
                own = i;
            } else if (bell != null && !FOLLOWS.contains(analyte)) {
                axes.add(axis(i, analyte, known, theta, bell.log()));
            }
        }
        return new LotDistribution(
                theta,
                lot.composition(),
                axes,
                new TdnWay(
                        byLine ? line.get() : null,
                        own,
                        doubt.orElse(line.isPresent() ? AdfTdn.RESIDUAL : NONE),
                        new Shared(TDN, lot.energy().way())));
    }

    /** Points of TDN that loads of the kind differ by, where no figure of this one says it: what their fiber makes of it. */
    private static double ofKind(
            List<Map.Entry<Analyte, Composition.Known>> which, Optional<Prior> kind, Optional<AdfEquation> line) {
        if (kind.isEmpty() || line.isEmpty() || which.stream().anyMatch(one -> one.getKey() == Analyte.TDN)) {
            return 0;
        }
        int adf = kind.get().index(Analyte.ADF);
        if (adf < 0) {
            return 0;
        }
        var bell = kind.get().cells().get(adf).marginal();
        double sd = bell.standardDeviation() / 2;
        return Math.abs(new AdfTdn(line.get(), bell.mean() + sd).percent()
                - new AdfTdn(line.get(), bell.mean() - sd).percent());
    }

    private static Axis axis(int index, Analyte analyte, Composition.Known known, Theta theta, boolean log) {
        double mean = Marginal.ofScale(theta.mean(index), theta.sd(index), log).mean();
        double by = known.below() != null ? (log ? 1 : 0) : log ? known.value() / mean : known.value() - mean;
        return new Axis(index, analyte, log, by, known.below());
    }

    /** As it is expected, every figure with its origin. */
    public Composition expected() {
        return expected;
    }

    /** How many standard normal values of its own one state takes. */
    public int size() {
        return theta.size();
    }

    /** The doubts that it shares with other lots. */
    public SortedSet<Shared> shared() {
        return shared;
    }

    /** One of the states that it may be in. @param moved whether something no feed can be was moved to what one can */
    public record State(double[] values, boolean moved) implements Made {
        @Override
        public OptionalDouble value(Analyte analyte) {
            double value = values[analyte.ordinal()];
            return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
        }

        @Override
        public boolean equals(@Nullable Object o) {
            return o instanceof State other && Arrays.equals(values, other.values) && moved == other.moved;
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(values);
        }
    }

    /**
     * Never throws.
     *
     * @param own {@link #size()} standard normal values
     * @param doubts one for each of {@link #shared()}, the same wherever the doubt stands
     */
    public State at(double[] own, ToDoubleFunction<Shared> doubts) {
        var x = theta.at(own, doubts);
        var values = plain.clone();
        boolean moved = false;
        for (var axis : axes) {
            double value = axis.value(x);
            double held = held(axis.analyte, value);
            moved |= held != value;
            values[axis.analyte.ordinal()] = held;
        }
        for (var pair : Joining.PARTS) {
            int part = pair.get(0).ordinal();
            int whole = pair.get(1).ordinal();
            if (values[part] > values[whole] && !(plain[part] > plain[whole])) {
                values[part] = values[whole];
                moved = true;
            }
        }
        if (expected.knows(Analyte.TDN)) {
            moved |= energy(values, x, doubts);
        }
        double adf = values[Analyte.ADF.ordinal()];
        double ndf = values[Analyte.NDF.ordinal()];
        if (expected.knows(Analyte.RFV) && adf <= ndf && ndf > 0) {
            values[Analyte.RFV.ordinal()] = new RelativeFeedValue(new Fiber(adf, ndf)).index();
        }
        return new State(values, moved);
    }

    private boolean energy(double[] values, double[] x, ToDoubleFunction<Shared> doubts) {
        double middle = plain[Analyte.TDN.ordinal()];
        double tdn = middle;
        int adf = Analyte.ADF.ordinal();
        if (way.line != null && !Double.isNaN(values[adf])) {
            tdn += new AdfTdn(way.line, values[adf]).percent() - new AdfTdn(way.line, plain[adf]).percent();
        } else if (way.own >= 0) {
            tdn += x[way.own] - theta.mean(way.own);
        }
        if (way.doubt.sd() > 0) {
            tdn += doubts.applyAsDouble(way.name) * way.doubt.sd();
        }
        double held = held(Analyte.TDN, tdn);
        values[Analyte.TDN.ordinal()] = held;
        var now = new NetEnergy(held);
        var then = new NetEnergy(middle);
        // what a laboratory or the book prints beside its own TDN moves with it, as far as the equations do
        values[Analyte.NEM.ordinal()] = Math.max(0, plain[Analyte.NEM.ordinal()] + now.nem() - then.nem());
        values[Analyte.NEG.ordinal()] = Math.max(0, plain[Analyte.NEG.ordinal()] + now.neg() - then.neg());
        return held != tdn;
    }

    private static double held(Analyte analyte, double value) {
        var possible = analyte.possible();
        return Math.max(possible.low(), Math.min(possible.high(), value));
    }

    /**
     * How far one figure may lie, by central differences of one standard deviation along each normal: no draws.
     *
     * @param figure of what a feed is made of: grams of calcium in a kilogram
     */
    public Spread of(ToDoubleFunction<Made> figure) {
        var steps = steps();
        double squares = 0;
        for (var step : steps.own()) {
            double apart = step.apart(figure);
            squares += apart * apart / 4;
        }
        var by = new TreeMap<Shared, Double>();
        steps.shared().forEach((doubt, step) -> {
            double apart = step.apart(figure);
            if (apart != 0) {
                by.put(doubt, apart / 2);
            }
        });
        return new Spread(figure.applyAsDouble(expected), Math.sqrt(squares), by);
    }

    /** One standard deviation up and down along one normal. */
    private record Step(State up, State down) {
        double apart(ToDoubleFunction<Made> figure) {
            return figure.applyAsDouble(up) - figure.applyAsDouble(down);
        }
    }

    private record Steps(List<Step> own, SortedMap<Shared, Step> shared) {}

    /** The same for every figure of every ration: worked out once. Two threads that ask at once get equal ones. */
    private Steps steps() {
        var known = steps;
        if (known == null) {
            var own = new ArrayList<Step>();
            var z = new double[size()];
            for (int i = 0; i < z.length; i++) {
                z[i] = 1;
                var up = at(z, doubt -> 0);
                z[i] = -1;
                own.add(new Step(up, at(z, doubt -> 0)));
                z[i] = 0;
            }
            var by = new TreeMap<Shared, Step>();
            for (var one : shared) {
                by.put(
                        one,
                        new Step(
                                at(z, doubt -> doubt.equals(one) ? 1 : 0), at(z, doubt -> doubt.equals(one) ? -1 : 0)));
            }
            known = new Steps(own, by);
            steps = known;
        }
        return known;
    }

    /** Of TDN's own way, points; 0 where how lots lie holds it. */
    double wayDoubt() {
        return shared.contains(way.name) ? way.doubt.sd() : 0;
    }
}
