package haywright.ration;

import haywright.diet.DietBlock;
import haywright.quantity.Unit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/**
 * A cheapest ration in amounts that can be weighed out: whole pounds of hay, tenths of a pound of what is little,
 * ounces of less than a pound. Every paper prints these amounts and works on with them, so that pounds a head times
 * the head are the pounds of the group.
 *
 * <p>Each amount is moved to the step below or above it. Of all mixes of such steps that keep every limit the cheapest
 * counts, as surely as the ration keeps it; where none does, or it costs over a hundredth more than the exact ration, the steps are made finer. Where the
 * finest keep not every limit either, the mix that misses by the least share is taken, and {@link HandMix#limits} says
 * which limit it misses and by how much. Common practice, no source: scales of mixer wagons show whole pounds of a load.
 */
public final class Weighable {
    /** What is written is at most this share off the exact amount. */
    private static final double NEAR_ENOUGH = 0.05;
    /** A mix of coarse steps that costs more than this share over the exact one is not taken. */
    private static final double DEARER = 0.01;
    /** Below this a forage is not worth starting the loader for; common practice, no source. */
    private static final double LEAST_FORAGE_POUNDS = 1;
    /** From here on amounts are said in pounds, below in ounces. */
    public static final double LEAST_POUNDS = 0.975;

    /** Shares of a row that count as kept; the solver works to about 1e-7. */
    private static final double KEPT = 1e-6;

    private static final int FINEST = 2;
    /** Steps of more feeds than these are not tried in every mix: each goes to the nearest. */
    private static final int MOST_FEEDS = 8;

    private static final double[] WHOLE = {1, 0.5, 0.5};
    private static final double[] HALF = {0.5, 0.1, 0.1};
    private static final double[] TENTH = {0.1, 0.1, 0.05};

    private Weighable() {}

    /** @param ration an answer to this question */
    public static HandMix of(LeastCostRation question, Ration ration) {
        return of(question, ration, Set.of());
    }

    /** @param kept ids of feeds whose amounts stay as they are: those in whole bales */
    static HandMix of(LeastCostRation question, Ration ration, Set<String> kept) {
        var judge = new DietBlock(ration.diet(), ration.sureness()).judge();
        var best = best(ration, judge, 0, kept);
        for (int level = 1; level <= FINEST && !isEnough(best, ration); level++) {
            var finer = best(ration, judge, level, kept);
            best = finer.isBetterThan(best) ? finer : best;
        }
        var put = new HashMap<String, Double>();
        for (int i = 0; i < best.kgPutOut().size(); i++) {
            put.put(ration.portions().get(i).feed().feed().id(), best.kgPutOut().get(i));
        }
        return HandMix.judge(question, put);
    }

    private static boolean isEnough(Tried mix, Ration ration) {
        return mix.misses() == 0 && mix.cost() <= (1 + DEARER) * ration.weighed();
    }

    /**
     * One mix of steps.
     *
     * @param cost what decides, dollars a head and day
     * @param misses the worst share by which a limit is missed; zero where every limit is kept
     */
    private record Tried(List<Double> kgPutOut, double cost, double misses) {
        boolean isBetterThan(Tried other) {
            return misses < other.misses || misses == other.misses && cost < other.cost;
        }
    }

    private static Tried best(Ration ration, DietBlock.Judge judge, int level, Set<String> kept) {
        var choices = ration.portions().stream()
                .map(p -> kept.contains(p.feed().feed().id()) ? List.of(p.kgPutOut()) : choices(p, level))
                .toList();
        if (choices.size() > MOST_FEEDS) {
            choices = ration.portions().stream()
                    .map(p -> List.of(nearest(p, level)))
                    .toList();
        }
        var mixes = new ArrayList<List<Double>>();
        mixes.add(List.of());
        for (var choice : choices) {
            var longer = new ArrayList<List<Double>>();
            for (var mix : mixes) {
                for (double kg : choice) {
                    var next = new ArrayList<>(mix);
                    next.add(kg);
                    longer.add(next);
                }
            }
            mixes.clear();
            mixes.addAll(longer);
        }
        Tried best = null;
        for (var mix : mixes) {
            var tried = tried(ration, judge, mix);
            if (best == null || tried.isBetterThan(best)) {
                best = tried;
            }
        }
        return Objects.requireNonNull(best);
    }

    private static Tried tried(Ration ration, DietBlock.Judge judge, List<Double> kgPutOut) {
        var diet = ration.diet();
        var kg = new double[diet.feeds().size()];
        double cost = 0;
        for (int i = 0; i < kgPutOut.size(); i++) {
            var feed = ration.portions().get(i).feed();
            double eaten = feed.eaten(kgPutOut.get(i));
            kg[diet.feeds().indexOf(feed.feed())] = eaten;
            cost += eaten * feed.weighedPerKgEaten();
        }
        if (!(DoubleStream.of(kg).sum() > 0)) {
            return new Tried(kgPutOut, cost, Double.POSITIVE_INFINITY);
        }
        double misses = judge.misses(kg);
        return new Tried(kgPutOut, cost, misses > KEPT ? misses : 0);
    }

    /** Kilograms put out at the steps around the exact amount; of little forage none, too. */
    private static List<Double> choices(Portion portion, int level) {
        double pounds = Unit.POUND.fromBase(portion.kgPutOut());
        double step = step(pounds, level);
        var steps = DoubleStream.of(Math.floor(pounds / step), Math.ceil(pounds / step))
                .distinct()
                .filter(n -> n > 0 && Math.abs(n * step - pounds) <= NEAR_ENOUGH * pounds)
                .mapToObj(n -> kg(n, step))
                .collect(Collectors.toCollection(ArrayList::new));
        if (steps.isEmpty()) {
            steps.add(nearest(portion, level));
        }
        if (pounds < LEAST_FORAGE_POUNDS && portion.feed().feed().feedClass().isForage()) {
            steps.add(0.0);
        }
        return steps;
    }

    private static double nearest(Portion portion, int level) {
        double pounds = Unit.POUND.fromBase(portion.kgPutOut());
        double step = step(pounds, level);
        return kg(Math.max(1, Math.rint(pounds / step)), step);
    }

    private static double kg(double steps, double step) {
        return Unit.POUND.toBase(steps * step);
    }

    /** Pounds, or sixteenths of a pound for ounces. */
    private static double step(double pounds, int level) {
        return pounds < LEAST_POUNDS ? grain(16 * pounds)[level] / 16 : grain(pounds)[level];
    }

    private static double[] grain(double amount) {
        return amount >= 10 ? WHOLE : amount >= 5 ? HALF : TENTH;
    }
}
