package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietOptions;
import haywright.diet.Sureness;
import haywright.forage.FeedClass;
import haywright.lp.Budget;
import haywright.lp.LinearProgram;
import haywright.lp.Outcome;
import haywright.lp.Session;
import haywright.lp.Stopped;
import haywright.lp.Whole;
import haywright.quantity.Unit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Which feeds a ration is made of, as people feed: nothing of a feed or a portion worth handling, within a little of the
 * cheapest the fewest feeds, and of those sets the one that takes most of the ranch's own forage.
 */
final class FewFeeds {
    /** Share of the cheapest cost, and dollars a head and day, that fewer feeds may cost: the larger of the two. */
    private static final double DEARER = 0.02;

    private static final double DEARER_DOLLARS = 0.03;

    /** Pounds as fed below which nobody starts the loader, opens a sack or strings out cake (judgment). */
    private static final double LEAST_FORAGE = 2;

    private static final double LEAST_CONCENTRATE = 1;
    private static final double LEAST_BY_HAND = 2;

    /** More than anybody eats of one feed, as a share of body weight. */
    private static final double MOST_SHARE = 0.05;

    /** Of branch and bound in each of its searches: counted, not timed, so that the same ration comes out again. */
    private static final Budget BUDGET = Budget.ofNodes(5_000);

    /** Of many feeds so many are looked at, or one of a kind of either sort. */
    private static final int FEW = 12;

    /** Then how many of a kind; how near the best, a quarter of what fewer feeds may cost; after how many tries. */
    private static final int OF_A_KIND = 1;

    private static final double NEAR = 0.005;

    private static final int MOST_PLANS = 6;

    private static final Budget SHORT = Budget.ofNodes(200);

    private FewFeeds() {}

    /**
     * @param diet whose feeds are in the order of {@code feeds}
     * @param allowed indices of those that may be used
     * @param many whether more might be used than every set of them can be looked through
     * @return indices of the feeds; empty where portions leave no ration
     */
    static Optional<Set<Integer>> of(
            Diet diet, List<PricedFeed> feeds, Sureness sureness, Set<Integer> allowed, boolean many) {
        if (many) {
            var near = Shortlist.of(diet, feeds, allowed, FEW, OF_A_KIND).stream()
                    .sorted()
                    .toList();
            var these = near.stream().map(feeds::get).toList();
            var alone = Diet.of(these.stream().map(PricedFeed::feed).toList(), diet.need(), diet.options());
            var all = IntStream.range(0, near.size()).boxed().collect(Collectors.toSet());
            return best(alone, these, sureness, all, false)
                    .map(few -> few.stream().map(near::get).collect(Collectors.toSet()));
        }
        return best(diet, feeds, sureness, allowed, true);
    }

    private static Optional<Set<Integer>> best(
            Diet diet, List<PricedFeed> feeds, Sureness sureness, Set<Integer> allowed, boolean toTheEnd) {
        var program = LinearProgram.minimize();
        var placed = new DietBlock(diet, sureness).addTo(program, RationProgram.costs(feeds), GrowthRow.ID, 1);
        var used = new int[feeds.size()];
        double most = MOST_SHARE * diet.need().bodyWeight();
        for (int i = 0; i < used.length; i++) {
            used[i] = program.portion(
                    placed.feed()[i],
                    least(feeds.get(i), diet.options()),
                    allowed.contains(i) ? Math.min(most, feeds.get(i).mostEaten()) : 0);
        }
        int cost = program.row("cost", 0, Double.POSITIVE_INFINITY, placed.feed(), RationProgram.costs(feeds));
        int count = program.row(
                "feeds",
                0,
                Double.POSITIVE_INFINITY,
                used,
                IntStream.of(used).mapToDouble(u -> 1).toArray());
        try (var session = program.build().open()) {
            var budget = toTheEnd ? BUDGET : SHORT;
            if (!toTheEnd) {
                session.sooner(NEAR, MOST_PLANS);
            }
            var first = plan(session, budget);
            if (first.isEmpty()) {
                return Optional.empty();
            }
            var cheapest = first.get();
            double best = cheapest.objective();
            // of what is paid: a feed that other groups want more is no reason to spend more
            double paid = IntStream.range(0, used.length)
                    .mapToDouble(
                            i -> cheapest.value(placed.feed()[i]) * feeds.get(i).costPerKgEaten())
                    .sum();
            double band = Math.max(DEARER * paid, DEARER_DOLLARS);
            session.rowBounds(cost, 0, best + band);
            session.costs(0, costs(session, used, 1));
            var fewest = plan(session, budget).orElse(first.get());
            long least = IntStream.of(used).filter(u -> fewest.value(u) > 0.5).count();
            session.rowBounds(count, 0, least);
            session.costs(0, ownForage(session, placed.feed(), feeds));
            var chosen = plan(session, budget).orElse(fewest);
            return Optional.of(IntStream.range(0, used.length)
                    .filter(i -> chosen.value(used[i]) > 0.5)
                    .boxed()
                    .collect(Collectors.toSet()));
        }
    }

    private static Optional<Whole> plan(Session session, Budget budget) {
        Outcome outcome = session.solve(budget);
        return outcome instanceof Whole whole
                ? Optional.of(whole)
                : outcome instanceof Stopped stopped ? stopped.best() : Optional.empty();
    }

    private static double[] costs(Session session, int[] columns, double each) {
        var costs = new double[session.program().columns().size()];
        for (int column : columns) {
            costs[column] = each;
        }
        return costs;
    }

    private static double[] ownForage(Session session, int[] columns, List<PricedFeed> feeds) {
        var costs = new double[session.program().columns().size()];
        for (int i = 0; i < columns.length; i++) {
            var feed = feeds.get(i);
            costs[columns[i]] = feed.own() && feed.feed().feedClass().isForage() ? -1 : 0;
        }
        return costs;
    }

    /** kg of dry matter eaten. A mineral is fed in ounces, and a wish says its own least. */
    static double least(PricedFeed feed, DietOptions options) {
        var kind = feed.feed().feedClass();
        if (Shortlist.isWished(feed, options) || kind == FeedClass.MINERAL || kind == FeedClass.NPN) {
            return 0;
        }
        double pounds = kind.isForage()
                ? LEAST_FORAGE
                : kind == FeedClass.GRAIN || options.mixing().mixes() ? LEAST_CONCENTRATE : LEAST_BY_HAND;
        return feed.eaten(Unit.POUND.toBase(pounds));
    }
}
