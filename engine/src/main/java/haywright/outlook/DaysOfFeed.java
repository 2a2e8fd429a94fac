package haywright.outlook;

import haywright.cattle.AnimalClass;
import haywright.cattle.LiveWeight;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.PricedFeed;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * How long the hay and silage on hand would feed the whole ranch, by a rule that needs no laboratory: a first look for a
 * list of ranches, not the plan of a winter.
 * <pre>
 * days = Σ tons · DM · (1 − loss) / Σ head · weight · share
 * </pre>
 * Mature cattle eat 2 % of body weight a day as dry matter, growing cattle 2.5 % (common practice, no source). Lots
 * without a weight count as nothing, and are counted in {@code unknown}.
 *
 * @param dryKg dry matter of hay and silage that reaches the cattle, kg
 * @param eatenKg dry matter all groups eat a day, kg, above 0
 * @param unknown lots of hay and silage whose weight is not known
 * @param isAsFedNow whether it is by what every group is fed now, as put out, of lots that may be fed
 */
public record DaysOfFeed(double dryKg, double eatenKg, int unknown, boolean isAsFedNow) {
    private static final double MATURE = 0.02;
    private static final double GROWING = 0.025;
    /** Days by which a whole number may be missed. */
    private static final double HAIR = 1e-6;

    /** Empty where there are no cattle, or no lot of hay or silage has a weight. */
    public static Optional<DaysOfFeed> of(Ranch ranch) {
        double eaten = ranch.groups().values().stream()
                .mapToDouble(group -> {
                    double weight = group.weight().base();
                    double full = group.shrunk() ? LiveWeight.shrunk(weight).full() : weight;
                    return group.head() * full * (group.animals() == AnimalClass.GROWING ? GROWING : MATURE);
                })
                .sum();
        double dry = 0;
        int unknown = 0;
        int known = 0;
        for (var lot : ranch.lots().values()) {
            var kg = LotTons.of(lot).kg();
            if (!isHayOrSilage(lot)) {
                continue;
            }
            if (kg.isEmpty()) {
                unknown++;
            } else {
                known++;
                dry += kg.getAsDouble() * lot.feedClass().usualDryMatterPercent() / 100;
            }
        }
        double reaches = dry * (1 - ranch.settings().hayLossPercent() / 100);
        return eaten == 0 || known == 0
                ? Optional.empty()
                : Optional.of(new DaysOfFeed(reaches, eaten, unknown, false));
    }

    /** As every group is fed now, where that is said of all of them; else by the rule. One count with bench and letter. */
    public static Optional<DaysOfFeed> of(Yard yard) {
        return asFedNow(yard).or(() -> of(yard.ranch()));
    }

    private static Optional<DaysOfFeed> asFedNow(Yard yard) {
        var ranch = yard.ranch();
        boolean isSaid = !ranch.groups().isEmpty()
                && ranch.groups().keySet().stream()
                        .map(ranch.fedNow()::get)
                        .allMatch(now -> now != null && !now.amounts().isEmpty());
        if (!isSaid) {
            return Optional.empty();
        }
        double there = 0;
        double aDay = 0;
        for (var feed : yard.feeds()) {
            if (!feed.isHayOrSilage() || Double.isInfinite(feed.kgAtHand()) || isUntested(feed)) {
                continue;
            }
            double dry = feed.dryMatterPercent() / 100;
            there += feed.own() ? dry * feed.kgAtHand() : 0;
            for (var group : ranch.groups().values()) {
                var now = Objects.requireNonNull(ranch.fedNow().get(group.id()));
                var amount = now.amounts().get(UUID.fromString(feed.feed().id()));
                aDay += amount == null ? 0 : dry * group.head() * amount.in(Unit.KILOGRAM_A_DAY);
            }
        }
        return there > 0 && aDay > 0 ? Optional.of(new DaysOfFeed(there, aDay, 0, true)) : Optional.empty();
    }

    private static boolean isUntested(PricedFeed feed) {
        return feed.feed().nitrateDanger() && !feed.feed().composition().knows(Analyte.NO3N);
    }

    private static boolean isHayOrSilage(Lot lot) {
        return lot.feedClass().isForage() && lot.feedClass() != FeedClass.STRAW;
    }

    public long days() {
        return isAsFedNow ? (long) (dryKg / eatenKg + HAIR) : Math.round(dryKg / eatenKg);
    }

    /** The day it runs out, fed from {@code today}. */
    public LocalDate until(LocalDate today) {
        return today.plusDays(days());
    }
}
