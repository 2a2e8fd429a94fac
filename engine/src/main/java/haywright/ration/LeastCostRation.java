package haywright.ration;

import haywright.cattle.need.Need;
import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.lp.Conflict;
import haywright.lp.Infeasible;
import haywright.lp.Limit;
import haywright.lp.Optimum;
import haywright.lp.Range;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;

/**
 * The cheapest way to feed one head for a day.
 *
 * @param offered the ranch's lots and the feeds it can buy, each with its price
 * @param need of the animal or group
 * @param options limits switched off and limits on single feeds
 */
public record LeastCostRation(List<PricedFeed> offered, Need need, DietOptions options) {
    /** How close a gain that can just be carried is found, as a share of the wanted gain's energy. */
    private static final double GAIN_STEP = 1.0 / 1024;

    public LeastCostRation {
        offered = List.copyOf(offered);
        if (offered.isEmpty()) {
            throw new Refused(
                    "feeds", "no feeds", "a ration needs at least one feed", "Put in a lot or a feed to buy.");
        }
        var ids = new HashSet<String>();
        for (var feed : offered) {
            if (!ids.add(feed.feed().id())) {
                throw new Refused(
                        "feeds",
                        "“" + feed.feed().name() + "” twice",
                        "each feed is offered once",
                        "Give the two different names.");
            }
        }
    }

    public RationAnswer solve() {
        return solve(diet());
    }

    /** @param diet of these feeds, perhaps with a limit moved */
    RationAnswer solve(Diet diet) {
        var feeds = admitted(diet);
        if (feeds.isEmpty()) {
            return new NoRation(diet, List.of(), List.of());
        }
        try (var program = new RationProgram(diet, feeds)) {
            var outcome = program.solve();
            if (outcome instanceof Optimum optimum) {
                return ration(diet, feeds, program, optimum);
            }
            if (outcome instanceof Infeasible infeasible) {
                return noRation(diet, feeds, infeasible.why());
            }
            throw new IllegalStateException("prices are above zero, so a cheapest ration cannot be unbounded");
        }
    }

    /** The rows these feeds and this need give. */
    public Diet diet() {
        return Diet.of(offered.stream().map(PricedFeed::feed).toList(), need, options);
    }

    private List<PricedFeed> admitted(Diet diet) {
        var ids = diet.feeds().stream().map(haywright.diet.Feed::id).toList();
        return offered.stream().filter(f -> ids.contains(f.feed().id())).toList();
    }

    private static Ration ration(Diet diet, List<PricedFeed> feeds, RationProgram program, Optimum optimum) {
        var kg = program.amounts(optimum);
        var portions = new ArrayList<Portion>();
        var notUsed = new ArrayList<NotUsed>();
        for (int i = 0; i < kg.length; i++) {
            var feed = feeds.get(i);
            double perKg = feed.costPerKgEaten();
            if (kg[i] > Portions.NOTHING) {
                var range = optimum.costRange(i);
                portions.add(Portions.of(
                        feed, kg[i], new Range(feed.priceAtCost(range.low()), feed.priceAtCost(range.high()))));
            } else {
                notUsed.add(new NotUsed(feed, feed.priceAtCost(perKg - optimum.reducedCost(i))));
            }
        }
        var limits = new ArrayList<LimitAnswer>();
        for (int i = 0; i < diet.rows().size(); i++) {
            var row = diet.rows().get(i);
            // A ratio's program row moves by divisor for each unit of its limit.
            limits.add(new LimitAnswer(row, row.supplied(kg), Math.abs(optimum.dual(i)) * row.divisor(kg)));
        }
        diet.growth().ifPresent(energy -> {
            limits.add(new LimitAnswer(GrowthRow.of(energy), energy.leftForGain(kg), optimum.price(0)));
        });
        return new Ration(diet, portions, notUsed, optimum.objective(), limits, program.program());
    }

    private NoRation noRation(Diet diet, List<PricedFeed> feeds, Conflict why) {
        var conflicts = new ArrayList<NoRation.Conflict>();
        var lifts = new ArrayList<NoRation.Lift>();
        for (var limit : why.limits()) {
            if (limit.on() == Limit.On.ROW) {
                var row = diet.rows().get(limit.index());
                double missing = row.isRatio() ? 0 : why.shortfalls().getOrDefault(row.id(), 0.0);
                conflicts.add(new NoRation.Conflict(row, missing));
                lift(diet, feeds, limit.index(), why.givesAlone(limit)).ifPresent(lifts::add);
            } else if (limit.on() == Limit.On.CURVE) {
                var energy = diet.growth().orElseThrow();
                var best = mostGain(diet, feeds, energy);
                conflicts.add(new NoRation.Conflict(
                        GrowthRow.of(energy),
                        energy.neg() - best.map(NoRation.Lift::to).orElse(0.0)));
                best.ifPresent(lifts::add);
            }
        }
        lifts.sort(Comparator.comparingDouble(NoRation.Lift::cost));
        return new NoRation(diet, conflicts, lifts);
    }

    /** Moves one limit as little as lets a ration exist, and solves again with it. */
    private Optional<NoRation.Lift> lift(Diet diet, List<PricedFeed> feeds, int index, double gives) {
        var row = diet.rows().get(index);
        if (!Double.isFinite(gives)
                || row.kind() == DietRow.Kind.DANGER
                || row.kind() == DietRow.Kind.PRACTICE
                || row.isRatio()) {
            return Optional.empty();
        }
        // A hair more than the solver's own exactness, so that the limit named is one that works.
        double hair = 1e-6 * Math.max(1, Math.abs(row.limit()));
        double to = row.sense() == DietRow.Sense.AT_LEAST
                ? Math.max(0, row.limit() - gives - hair)
                : row.limit() + gives + hair;
        try (var program = new RationProgram(diet, feeds)) {
            program.limit(index, to);
            return program.solve() instanceof Optimum optimum
                    ? Optional.of(new NoRation.Lift(row, to, optimum.objective()))
                    : Optional.empty();
        }
    }

    /** The most gain these feeds can carry with everything else kept, by halving. */
    private static Optional<NoRation.Lift> mostGain(Diet diet, List<PricedFeed> feeds, GrowthEnergy energy) {
        double can = 0;
        double cannot = 1;
        double cost = Double.NaN;
        try (var program = new RationProgram(diet, feeds)) {
            while (cannot - can > GAIN_STEP) {
                double half = (can + cannot) / 2;
                program.gain(energy.neg() * half);
                if (program.solve() instanceof Optimum optimum) {
                    can = half;
                    cost = optimum.objective();
                } else {
                    cannot = half;
                }
            }
        }
        return can == 0
                ? Optional.empty()
                : Optional.of(new NoRation.Lift(GrowthRow.of(energy), can * energy.neg(), cost));
    }
}
