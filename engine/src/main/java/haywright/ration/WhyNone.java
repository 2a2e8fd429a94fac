package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.GrowthEnergy;
import haywright.diet.Sureness;
import haywright.lp.Conflict;
import haywright.lp.Infeasible;
import haywright.lp.Limit;
import haywright.lp.Optimum;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;

/**
 * Why a diet has no ration: what stands in the way, and the single changes that would lift it.
 *
 * <p>First it is asked whether they can be fed at all by what is wanted, allowed and at hand; then of each need alone
 * whether these feeds could ever meet it. The one that they miss by the largest share is the cause, what the animal needs
 * before what practice asks; only where each could be met alone do needs stand in each other's way. That a mineral is
 * fed is taken for granted, and never named as the cause of something else.
 *
 * @param allowed indices of the feeds that are held against it
 * @param solving the ration of the same feeds, or of as many of others, with a limit moved
 */
record WhyNone(
        Diet diet,
        List<PricedFeed> feeds,
        Set<Integer> allowed,
        BiFunction<Diet, List<PricedFeed>, Optional<Ration>> solving) {
    /** How close a gain that can just be carried is found, as a share of the wanted gain's energy. */
    private static final double GAIN_STEP = 1.0 / 1024;

    /** Rows of how much they eat, and of which kinds: all that is no need of a nutrient. */
    private static final Set<String> HOW_MUCH =
            Set.of("intake", "eaten_least", "forage_floor", "forage_least", "forage", "mineral");

    /** Limits that stand in each other's way, of a diet that has no others. */
    private record Cause(Diet diet, Conflict why, List<NoRation.Conflict> rows) {
        /** Whether no need of the animal itself is in it. */
        boolean isOfPractice() {
            return rows.stream()
                    .noneMatch(
                            c -> c.row().kind() == DietRow.Kind.NEED && c.row().sense() == DietRow.Sense.AT_LEAST);
        }

        boolean isMetabolizable() {
            return rows.stream().anyMatch(c -> isMetabolizable(c.row()));
        }

        static boolean isMetabolizable(DietRow row) {
            return row.id().equals("mp") || row.id().equals("mp_rumen");
        }

        /** Largest share that is missing of one of its needs. */
        double share() {
            return rows.stream()
                    .mapToDouble(
                            c -> c.missing() / Math.max(1e-9, Math.abs(c.row().limit())))
                    .max()
                    .orElse(0);
        }
    }

    NoRation answer() {
        var whole = cause(diet);
        if (whole.isEmpty()) {
            return new NoRation(diet, List.of(), List.of());
        }
        var room = cause(diet.keeping(row -> !isSupplied(row), false));
        if (room.isPresent()) {
            return answer(whole.get(), room.get(), List.of());
        }
        var alone = new ArrayList<Cause>();
        diet.rows().stream()
                .filter(WhyNone::isSupplied)
                .forEach(need -> cause(
                                diet.keeping(row -> !isSupplied(row) || row.of().equals(need.of()), false))
                        .ifPresent(alone::add));
        if (diet.growth().isPresent()) {
            cause(diet.keeping(row -> !isSupplied(row), true)).ifPresent(alone::add);
        }
        // of protein the plain word first
        alone.sort(Comparator.comparing(Cause::isOfPractice)
                .thenComparing(Cause::isMetabolizable)
                .thenComparing(Comparator.comparingDouble(Cause::share).reversed()));
        return alone.isEmpty()
                ? answer(whole.get(), whole.get(), List.of())
                : answer(whole.get(), alone.get(0), alone.subList(1, alone.size()));
    }

    /** @param whole of all limits: what a single change can lift stands in every conflict, so in this one too */
    private NoRation answer(Cause whole, Cause first, List<Cause> others) {
        boolean isOfProtein = first.rows().stream().anyMatch(c -> c.row().id().startsWith("cp"));
        var also = others.stream()
                .flatMap(cause -> cause.rows().stream())
                .filter(c -> isSupplied(c.row()) || c.row().id().equals(GrowthRow.ID))
                .filter(c -> !isOfProtein || !Cause.isMetabolizable(c.row()))
                .filter(c -> first.rows().stream()
                        .noneMatch(f -> f.row().of().equals(c.row().of())))
                .toList();
        return new NoRation(diet, first.rows(), also, lifts(whole), List.of());
    }

    private static boolean isSupplied(DietRow row) {
        return row.sense() == DietRow.Sense.AT_LEAST
                && (row.kind() == DietRow.Kind.NEED || row.kind() == DietRow.Kind.PRACTICE)
                && !HOW_MUCH.contains(row.id());
    }

    private Optional<Cause> cause(Diet of) {
        try (var program = RationProgram.of(of, feeds, Sureness.EXPECTED, allowed)) {
            return program.solve() instanceof Infeasible infeasible
                    ? Optional.of(cause(of, infeasible.why()))
                    : Optional.empty();
        }
    }

    private Cause cause(Diet of, Conflict why) {
        var rows = new ArrayList<NoRation.Conflict>();
        for (var limit : why.limits()) {
            switch (limit.on()) {
                case ROW -> {
                    var row = of.rows().get(limit.index());
                    double missing = row.isRatio() ? 0 : why.shortfalls().getOrDefault(row.id(), 0.0);
                    rows.add(new NoRation.Conflict(row, missing));
                }
                case CURVE -> {
                    var energy = of.growth().orElseThrow();
                    rows.add(new NoRation.Conflict(
                            GrowthRow.of(energy),
                            energy.neg()
                                    - mostGain(of, energy)
                                            .map(NoRation.Lift::to)
                                            .orElse(0.0)));
                }
                case COLUMN -> {
                    if (limit.bound() > 0) {
                        rows.add(new NoRation.Conflict(NoRation.most(feeds.get(limit.index())), 0));
                    }
                }
            }
        }
        if (rows.size() > 1) {
            rows.removeIf(c -> c.row().id().equals("mineral"));
        }
        return new Cause(of, why, List.copyOf(rows));
    }

    private List<NoRation.Lift> lifts(Cause whole) {
        var lifts = new ArrayList<NoRation.Lift>();
        for (var limit : whole.why().limits()) {
            switch (limit.on()) {
                case ROW -> lift(limit.index(), whole.why().givesAlone(limit)).ifPresent(lifts::add);
                case CURVE -> {} // a slower gain asks for less of everything, and is tried whatever stands in the way
                case COLUMN -> more(limit, whole.why().givesAlone(limit)).ifPresent(lifts::add);
            }
        }
        diet.growth().flatMap(energy -> mostGain(diet, energy)).ifPresent(lifts::add);
        return lifts;
    }

    /** Moves one limit as little as lets a ration exist, and solves again with it. */
    private Optional<NoRation.Lift> lift(int index, double gives) {
        var row = diet.rows().get(index);
        if (!Double.isFinite(gives)
                || row.kind() == DietRow.Kind.DANGER
                || row.kind() == DietRow.Kind.PRACTICE
                || row.isRatio()) {
            return Optional.empty();
        }
        double to = row.sense() == DietRow.Sense.AT_LEAST
                ? Math.max(0, row.limit() - gives - hair(row.limit()))
                : row.limit() + gives + hair(row.limit());
        return solving.apply(diet.withLimit(index, to), feeds).map(ration -> new NoRation.Lift(row, to, ration.cost()));
    }

    /** A little more of a feed of which there is too little. */
    private Optional<NoRation.Lift> more(Limit limit, double gives) {
        if (!Double.isFinite(gives) || !(limit.bound() > 0)) {
            return Optional.empty();
        }
        var feed = feeds.get(limit.index());
        double to = limit.bound() + gives + hair(limit.bound());
        var more = new ArrayList<>(feeds);
        more.set(limit.index(), feed.shared(feed.scarcityPerKgAsFed(), to));
        return solving.apply(diet, more).map(ration -> new NoRation.Lift(NoRation.most(feed), to, ration.cost()));
    }

    /** A hair more than the solver's own exactness, so that the limit named is one that works. */
    private static double hair(double limit) {
        return 1e-6 * Math.max(1, Math.abs(limit));
    }

    /** The most gain these feeds can carry with everything else kept, by halving; what goes by the gain goes with it. */
    private Optional<NoRation.Lift> mostGain(Diet of, GrowthEnergy energy) {
        var kept = of.rows().stream().map(DietRow::of).toList();
        double can = 0;
        double cannot = 1;
        double cost = Double.NaN;
        while (cannot - can > GAIN_STEP) {
            double half = (can + cannot) / 2;
            var slower = of.of(of.need().gaining(energy.neg() * half)).keeping(row -> kept.contains(row.of()), true);
            try (var program = RationProgram.of(slower, feeds, Sureness.EXPECTED, allowed)) {
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
