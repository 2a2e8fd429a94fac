package haywright.season.week;

import haywright.cattle.herd.Group;
import haywright.outlook.LotTons;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedWeek;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.PartFed;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a week does to a ranch: tons of every lot that was fed or counted, and the score of every group that was scored. A
 * count stands over what was fed, and both over what was entered before. A week that is entered after a later one moves
 * nothing that was counted or scored since.
 *
 * @param yard of the ranch as it was before
 * @param planned kg as fed that were to be put out of each feed in these days; empty where nobody planned them
 */
public record WeekMoves(Yard yard, FedWeek week, Map<UUID, Double> planned) {
    /** A scorer is off by about half a score; in a week cattle change by a tenth (judgment). */
    private static final double MOST_SCORES = 1;

    /** Dry matter put out per head per day, as a share of the mean weight: outside of it somebody slipped (judgment). */
    private static final double MOST_OF_WEIGHT = 0.045;

    private static final double LEAST_OF_WEIGHT = 0.004;

    /** Tons that a count may differ by whatever the lot's own doubt is. */
    private static final double HAIR_TONS = 1;

    /** Half as much again as planned, or half of it, is more than weather and appetite move in a week (judgment). */
    private static final double FAR_MORE = 1.5;

    private static final double FAR_LESS = 0.5;

    /** More than so many times what was entered is another lot. */
    private static final double MOST_TIMES = 10;

    private static final double PERCENT = 100;

    /** What contradicts what is known of the ranch, and is asked about. */
    public enum Kind {
        /** More was fed of a lot than is on hand at the most. */
        FED_MORE_THAN_THERE,
        /** Far more or less of a feed than was to be put out: a double count, or another lot. */
        FAR_FROM_PLAN,
        /** More or less was counted than can be left at the most or the least. */
        COUNT_APART,
        /** A score moved further than it can. */
        SCORE_APART,
        /** More was fed in all than cattle hold, or hardly anything. */
        NO_MEAL
    }

    /**
     * @param of the lot or the group; the week itself where it is all of them
     * @param entered kg as fed, a score, or kg of dry matter per head per day
     * @param low of what could be
     * @param high of the same
     */
    public record Contradiction(UUID of, Kind kind, double entered, double low, double high) {}

    public WeekMoves {
        planned = Map.copyOf(planned);
    }

    public WeekMoves(Yard yard, FedWeek week) {
        this(yard, week, Map.of());
    }

    private Ranch ranch() {
        return yard.ranch();
    }

    /** Everything that is asked before the week is taken. */
    public List<Contradiction> asks() {
        var all = new ArrayList<Contradiction>();
        for (var id : touched()) {
            var used = LotTons.of(lot(id)).used();
            if (used == null) {
                continue;
            }
            double fed = fed(id);
            double high = Math.max(used.range().highKg(), used.kg());
            double low = Math.min(used.range().lowKg(), used.kg());
            var counted = week.counted().get(id);
            double hair = Unit.TON.toBase(HAIR_TONS);
            if (fed > high + hair) {
                all.add(new Contradiction(id, Kind.FED_MORE_THAN_THERE, fed, 0, used.kg()));
            } else if (counted != null) {
                double most = high - fed + fedLater(id);
                double least = low - fed + fedLater(id);
                if (counted.base() > most + hair || counted.base() < least - hair) {
                    all.add(new Contradiction(
                            id, Kind.COUNT_APART, counted.base(), Math.max(0, least), Math.max(0, most)));
                }
            }
        }
        week.scored().forEach((id, score) -> {
            var group = ranch().groups().get(id);
            if (group != null && !isScoredLater(id) && Math.abs(score - group.conditionScore()) > MOST_SCORES) {
                all.add(new Contradiction(
                        id,
                        Kind.SCORE_APART,
                        score,
                        group.conditionScore() - MOST_SCORES,
                        group.conditionScore() + MOST_SCORES));
            }
        });
        week.fed().keySet().stream()
                .filter(id -> all.stream().noneMatch(one -> one.of().equals(id)))
                .flatMap(id -> farFromPlan(id).stream())
                .toList()
                .forEach(all::add);
        meal().ifPresent(all::add);
        return all;
    }

    /** A ton apart and by half: what was left empty was not fed as far as anybody said, and is not asked about. */
    private Optional<Contradiction> farFromPlan(UUID id) {
        double fed = fed(id);
        double plan = planned.getOrDefault(id, 0.0);
        boolean isFar =
                Math.abs(fed - plan) > Unit.TON.toBase(HAIR_TONS) && (fed > FAR_MORE * plan || fed < FAR_LESS * plan);
        return isFar && !planned.isEmpty()
                ? Optional.of(new Contradiction(id, Kind.FAR_FROM_PLAN, fed, plan, plan))
                : Optional.empty();
    }

    private Optional<Contradiction> meal() {
        double headDays = (double) ranch().head() * week.days();
        if (week.fed().isEmpty() || headDays == 0) {
            return Optional.empty();
        }
        double weight = 0;
        for (var group : ranch().groups().values()) {
            weight += group.head() * group.weight().base() / ranch().head();
        }
        double dry = 0;
        for (var fed : week.fed().entrySet()) {
            dry += fed.getValue().base() * dryMatter(fed.getKey()) / PERCENT / headDays;
        }
        return dry > MOST_OF_WEIGHT * weight || dry < LEAST_OF_WEIGHT * weight
                ? Optional.of(new Contradiction(
                        week.id(), Kind.NO_MEAL, dry, LEAST_OF_WEIGHT * weight, MOST_OF_WEIGHT * weight))
                : Optional.empty();
    }

    private double dryMatter(UUID feed) {
        var lot = ranch().lots().get(feed);
        var sale = ranch().feedsForSale().get(feed);
        return lot != null ? yard.dryMatter(lot) : sale != null ? yard.dryMatter(sale) : PERCENT;
    }

    private Stream<FedWeek> later() {
        return ranch().weeks().values().stream().filter(other -> other.from().isAfter(week.to()));
    }

    /** kg of a lot that were fed after this week and entered before it. */
    private double fedLater(UUID id) {
        return later().map(other -> other.fed().get(id))
                .filter(Objects::nonNull)
                .mapToDouble(Quantity::base)
                .sum();
    }

    private boolean isScoredLater(UUID group) {
        return later().anyMatch(other -> other.scored().containsKey(group));
    }

    /** What was there was counted, or all of it weighed, after this week: what it fed is out of that already. */
    private boolean isCountedLater(Lot lot) {
        return later().anyMatch(other -> other.counted().containsKey(lot.id()))
                || lot.weighings().stream()
                        .anyMatch(weighing ->
                                weighing.whole() != null && weighing.on().isAfter(week.to()));
    }

    /** Lots of this ranch that were fed or counted, and were not counted since. */
    private List<UUID> touched() {
        var ids = new LinkedHashSet<>(week.fed().keySet());
        ids.addAll(week.counted().keySet());
        ids.removeIf(id -> {
            var lot = ranch().lots().get(id);
            return lot == null || lot.stock() instanceof Stock.Standing || isCountedLater(lot);
        });
        return List.copyOf(ids);
    }

    private Lot lot(UUID id) {
        return Objects.requireNonNull(ranch().lots().get(id));
    }

    private double fed(UUID id) {
        var fed = week.fed().get(id);
        return fed == null ? 0 : fed.base();
    }

    /** The ranch after the week, with the record of it. */
    public Ranch moved() {
        var after = ranch();
        Map<UUID, Quantity> expected = new LinkedHashMap<>();
        for (var id : touched()) {
            var lot = lot(id);
            var kg = LotTons.of(lot).kg();
            var counted = week.counted().get(id);
            if (counted != null && kg.isPresent()) {
                double left = Math.max(0, kg.getAsDouble() + fedLater(id) - fed(id));
                expected.put(id, tons(left));
            }
            after = after.with(left(lot, kg, counted));
        }
        Map<UUID, Double> before = new LinkedHashMap<>();
        for (var scored : week.scored().entrySet()) {
            var group = ranch().groups().get(scored.getKey());
            if (group != null && !isScoredLater(group.id())) {
                before.put(group.id(), group.conditionScore());
                after = after.with(scored(group, scored.getValue()));
            }
        }
        return after.with(new FedWeek(
                week.id(),
                week.from(),
                week.to(),
                week.fed(),
                week.counted(),
                week.left(),
                week.scored(),
                expected,
                before));
    }

    /** How far scores lie apart within the group was said of another mean, and is kept. */
    private static Group scored(Group group, double score) {
        return group.scored(score, group.scores());
    }

    private Lot left(Lot lot, OptionalDouble kg, @Nullable Quantity counted) {
        if (kg.isEmpty() || kg.getAsDouble() == 0) {
            return counted == null || counted.base() == 0 ? lot : lot.with(new Stock.Weighed(counted));
        }
        double left =
                Math.max(0, counted == null ? kg.getAsDouble() - fed(lot.id()) : counted.base() - fedLater(lot.id()));
        double share = left / kg.getAsDouble();
        if (share > MOST_TIMES) {
            return lot.with(new Stock.Weighed(Objects.requireNonNull(counted)));
        }
        if (lot.stock() instanceof PartFed part) {
            var used = Objects.requireNonNull(LotTons.of(lot).used());
            boolean weighedSince = used.on() != null && used.on().isAfter(part.on()) && isWhole(lot, used);
            return lot.with(
                    weighedSince
                            ? new PartFed(new Stock.Weighed(tons(used.kg())), share, on())
                            : new PartFed(part.before(), part.share() * share, on()));
        }
        return lot.with(new PartFed(lot.stock(), share, on()));
    }

    /** The last evening that is entered. */
    private LocalDate on() {
        return later().map(FedWeek::to).max(LocalDate::compareTo).orElse(week.to());
    }

    /** Whether all of a lot was weighed: then nothing that was entered before says any more what is there. */
    private static boolean isWhole(Lot lot, LotTons.Way used) {
        return lot.weighings().stream()
                .anyMatch(weighing -> weighing.whole() != null && weighing.on().equals(used.on()));
    }

    private static Quantity tons(double kg) {
        return Quantity.of(Unit.TON.fromBase(kg), Unit.TON);
    }
}
