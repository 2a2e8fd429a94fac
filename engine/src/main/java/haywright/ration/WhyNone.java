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
import java.util.function.Function;

/**
 * Why a diet has no ration: what stands in the way, and the single changes that would lift it.
 *
 * @param allowed indices of the feeds that are held against it
 * @param solving the ration of the same feeds with a limit moved
 */
record WhyNone(Diet diet, List<PricedFeed> feeds, Set<Integer> allowed, Function<Diet, Optional<Ration>> solving) {
    /** How close a gain that can just be carried is found, as a share of the wanted gain's energy. */
    private static final double GAIN_STEP = 1.0 / 1024;

    NoRation answer() {
        try (var program = RationProgram.of(diet, feeds, Sureness.EXPECTED, allowed)) {
            if (program.solve() instanceof Infeasible infeasible) {
                return noRation(infeasible.why());
            }
        }
        return new NoRation(diet, List.of(), List.of());
    }

    private NoRation noRation(Conflict why) {
        var conflicts = new ArrayList<NoRation.Conflict>();
        var lifts = new ArrayList<NoRation.Lift>();
        for (var limit : why.limits()) {
            if (limit.on() == Limit.On.ROW) {
                var row = diet.rows().get(limit.index());
                double missing = row.isRatio() ? 0 : why.shortfalls().getOrDefault(row.id(), 0.0);
                conflicts.add(new NoRation.Conflict(row, missing));
                lift(limit.index(), why.givesAlone(limit)).ifPresent(lifts::add);
            } else if (limit.on() == Limit.On.CURVE) {
                var energy = diet.growth().orElseThrow();
                var best = mostGain(energy);
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
    private Optional<NoRation.Lift> lift(int index, double gives) {
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
        return solving.apply(diet.withLimit(index, to)).map(ration -> new NoRation.Lift(row, to, ration.cost()));
    }

    /** The most gain these feeds can carry with everything else kept, by halving. */
    private Optional<NoRation.Lift> mostGain(GrowthEnergy energy) {
        double can = 0;
        double cannot = 1;
        double cost = Double.NaN;
        try (var program = RationProgram.of(diet, feeds, Sureness.EXPECTED, allowed)) {
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
