package haywright.ration;

import haywright.chance.Normal;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Law;
import haywright.forage.Analyte;
import haywright.forage.Made;
import haywright.forage.lot.Shared;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.ToDoubleFunction;

/**
 * What the doubt about one row of a ration is made of, by the spreads of its feeds alone, without draws.
 *
 * @param row a need or a danger that counts its doubt
 * @param surePercent of the ways that the feeds may be made in which it is kept, as if all doubt were normal
 * @param parts of its variance, the largest first; those that add nothing are not in it
 */
public record Doubts(DietRow row, double surePercent, List<Doubt> parts) {
    public Doubts {
        parts = List.copyOf(parts);
    }

    /** What makes a doubt smaller. */
    public enum Shrinks {
        /** Of what is the feed's own. */
        SAMPLE,
        /** Of what the results of one laboratory share. */
        OTHER_LABORATORY,
        /** Of the way that TDN was had, which no test can tell. */
        CONDITION_SCORES
    }

    /**
     * One thing that is not known.
     *
     * @param feed whose own it is; empty for what feeds share
     * @param shared what it is that feeds share, all of one laboratory together; empty for a feed's own
     * @param sharePercent of the row's variance
     * @param surePercentWithout how surely the row would be kept if this were known, and turned out as it is expected
     */
    public record Doubt(
            Optional<PricedFeed> feed, Optional<Shared> shared, double sharePercent, double surePercentWithout) {
        public Shrinks shrinks() {
            return feed.isPresent()
                    ? Shrinks.SAMPLE
                    : shared.orElseThrow().isOfLaboratory() ? Shrinks.OTHER_LABORATORY : Shrinks.CONDITION_SCORES;
        }
    }

    /** Of every row of it that counts its doubt and has any, the least sure first. */
    public static List<Doubts> of(Ration ration) {
        var all = new ArrayList<Doubts>();
        for (var row : ration.diet().rows()) {
            if (row.law().counted() == Law.Counted.SURE) {
                int sign = row.sense() == DietRow.Sense.AT_LEAST ? 1 : -1;
                double expected = row.margin(ration.amounts()) * row.divisor(ration.amounts());
                of(ration, row, expected, (feed, made) -> sign * row.law().perKg(feed.feed(), made, row.limit()))
                        .ifPresent(all::add);
            }
        }
        // a/u + b/v along its slope at what is expected
        ration.diet().growth().ifPresent(energy -> {
            double u = energy.inNem().mean(ration.amounts());
            double v = energy.inNeg().mean(ration.amounts());
            of(
                            ration,
                            GrowthRow.of(energy),
                            1 - energy.nem() / u - energy.neg() / v,
                            (feed, made) -> energy.nem() / (u * u) * Diet.value(feed.feed(), made, Analyte.NEM)
                                    + energy.neg() / (v * v) * Diet.value(feed.feed(), made, Analyte.NEG))
                    .ifPresent(all::add);
        });
        all.sort(Comparator.comparingDouble(Doubts::surePercent));
        return all;
    }

    private static Optional<Doubts> of(
            Ration ration, DietRow row, double expected, BiFunction<PricedFeed, Made, Double> perKg) {
        var own = new ArrayList<Double>();
        var shared = new TreeMap<Shared, Double>();
        for (var portion : ration.portions()) {
            ToDoubleFunction<Made> figure = made -> perKg.apply(portion.feed(), made);
            var spread = portion.feed().feed().spread(figure);
            own.add(Math.pow(spread.own() * portion.kg(), 2));
            spread.shared().forEach((doubt, by) -> shared.merge(doubt, by * portion.kg(), Double::sum));
        }
        var whose = new TreeMap<Shared, Double>();
        shared.forEach((doubt, by) -> whose.merge(doubt.whose(), by * by, Double::sum));
        double all = own.stream().mapToDouble(v -> v).sum()
                + whose.values().stream().mapToDouble(v -> v).sum();
        if (!(all > 0)) {
            return Optional.empty();
        }
        var parts = new ArrayList<Doubt>();
        for (int i = 0; i < own.size(); i++) {
            parts.add(new Doubt(
                    Optional.of(ration.portions().get(i).feed()),
                    Optional.empty(),
                    100 * own.get(i) / all,
                    sure(expected, all - own.get(i))));
        }
        whose.forEach((doubt, variance) -> parts.add(
                new Doubt(Optional.empty(), Optional.of(doubt), 100 * variance / all, sure(expected, all - variance))));
        parts.removeIf(part -> part.sharePercent() <= 0);
        parts.sort(Comparator.comparingDouble(Doubt::sharePercent).reversed());
        return Optional.of(new Doubts(row, sure(expected, all), parts));
    }

    private static double sure(double expected, double variance) {
        return variance > 0 ? 100 * Normal.cumulative(expected / Math.sqrt(variance)) : expected >= 0 ? 100 : 0;
    }
}
