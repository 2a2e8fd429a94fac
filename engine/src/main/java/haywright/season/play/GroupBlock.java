package haywright.season.play;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietRow;
import haywright.diet.RowId;
import haywright.lp.Optimum;
import haywright.lp.ProgramBuilder;
import haywright.season.given.Body;
import haywright.season.given.Eater;
import haywright.season.given.Energies;
import haywright.season.given.Facts;
import haywright.season.given.Season;
import haywright.season.given.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One group in one stretch of a plan: its diet, what of it can be missed at a price, energy for growth along tangents, and the
 * energy on its back.
 */
final class GroupBlock {
    private static final double PERCENT = 100;
    private static final double INF = Double.POSITIVE_INFINITY;

    /** Rows that keep what is high in nitrate to a share of the day. */
    private static final Set<String> NITRATE = Set.of("nitrate", "nitrate_second");

    private final Season season;
    private final Eater eater;
    private final int group;
    private final int from;
    private final int to;
    private final double weight;
    private final Stage stage;
    private final int[] feed;
    /** Dollars a kg of hay still to find beyond its price, so that the plan comes to it last. */
    private final double dread;

    private final List<Held> rows = new ArrayList<>();
    private final List<Tangent> tangents = new ArrayList<>();
    private int growthMissed = -1;
    private Optional<Reserve> reserve = Optional.empty();

    /** A row of the diet. @param rights a head and day, by week of the stretch, in usual weather */
    @SuppressWarnings("ArrayRecordComponent")
    private record Held(DietRow row, int index, double[] rights, int missed) {}

    private record Tangent(int index, double weight) {}

    /** @param lose columns outside and inside the guarded days. @param row of the balance. @param least row of the floor */
    private record Reserve(Body body, int gain, int lose, int guarded, int at, int row, int least) {}

    /**
     * @param group its number
     * @param block the stretch
     * @param weight how likely it comes to it
     * @param isOrdered whether what is on hand goes to everybody before hay that nobody has yet
     * @param before the same group in the stretch before; null in the first
     */
    GroupBlock(
            ProgramBuilder in,
            Season season,
            int group,
            Blocks blocks,
            int block,
            double weight,
            Energies made,
            boolean isOrdered,
            @Nullable GroupBlock before) {
        this.season = season;
        this.group = group;
        this.weight = weight;
        eater = season.eaters().get(group);
        from = blocks.from(block);
        to = blocks.to(block);
        stage = eater.stages().get(blocks.middle(block));
        dread = isOrdered
                ? weight * season.feeds().get(season.emergency()).priced().costPerKgEaten() * share(blocks, block)
                : 0;
        var diet = new Diet(
                stage.diet().need(),
                stage.diet().feeds(),
                stage.rows(made).stream()
                        .map(this::overItsWeeks)
                        .flatMap(this::withoutFound)
                        .toList(),
                Optional.empty(),
                List.of(),
                stage.diet().options());
        var placed = new DietBlock(diet).addTo(in, costs(), "growth", 1);
        feed = placed.feed();
        int energy = -1;
        for (var row : diet.rows()) {
            int index = Objects.requireNonNull(placed.row().get(row.of()));
            rows.add(held(in, row, index));
            energy = row.id().equals(Stage.ENERGY) ? index : energy;
        }
        stage.growth().ifPresent(growth -> grow(in, growth, made));
        if (energy >= 0 && eater.body().isPresent()) {
            reserve = Optional.of(reserve(in, energy, before));
        }
    }

    /**
     * A share of practice moves with those that have calved, as straw's does: in a stretch over calving it is the mean of its
     * weeks, not what the middle one has. Of a danger the stage's own stands.
     */
    private DietRow overItsWeeks(DietRow row) {
        return row.isRatio() && row.kind() == DietRow.Kind.PRACTICE
                ? row.withLimit(IntStream.range(from, to)
                        .mapToDouble(week -> row.law()
                                .asks()
                                .applyAsDouble(eater.stages().get(week).diet().need()))
                        .average()
                        .orElse(row.limit()))
                : row;
    }

    /**
     * Hay that nobody has yet thins no nitrate and is no other feed to give first: what is safe only beside it is not safe
     * before it is found. Nitrate of the water is no feed's, and stays in a row with all of it.
     */
    private Stream<DietRow> withoutFound(DietRow row) {
        int found = IntStream.range(0, stage.feeds().length)
                .filter(i -> stage.feeds()[i] == season.emergency())
                .findFirst()
                .orElse(-1);
        if (found < 0 || !NITRATE.contains(row.id())) {
            return Stream.of(row);
        }
        boolean isWater = row.beside() != 0;
        var own = new DietRow(
                isWater ? new RowId.Nutrient(row.id() + "_on_hand") : row.of(),
                row.kind(),
                row.name(),
                row.sense(),
                row.limit(),
                row.unit(),
                row.law(),
                without(found, row.top()),
                without(found, row.bottom()),
                0,
                row.source());
        return isWater ? Stream.of(row, own) : Stream.of(own);
    }

    private static List<Double> without(int feed, List<Double> perKg) {
        return IntStream.range(0, perKg.size())
                .mapToObj(i -> i == feed ? 0.0 : perKg.get(i))
                .toList();
    }

    /** Of its price: the sooner the more, and more for cattle that grow or carry their first calf, which stand poor hay worst. */
    private double share(Blocks blocks, int block) {
        double middle = (blocks.from(block) + blocks.to(block)) / 2.0;
        double soon = Math.max(0, 1 - middle / season.weeks()) * Facts.value("found_soon");
        boolean isYoung = !eater.group().animals().isGrown();
        return (soon + (isYoung ? Facts.value("found_young") : 0)) / PERCENT;
    }

    private double[] costs() {
        var costs = new double[stage.feeds().length];
        for (int i = 0; i < costs.length; i++) {
            var of = season.feeds().get(stage.feeds()[i]);
            costs[i] = weight
                            * (of.isTracked()
                                    ? of.priced().putOut(of.priced().handlingPerKgAsFed())
                                    : of.priced().costPerKgEaten())
                    + (of.isEmergency() ? dread : 0);
        }
        return costs;
    }

    private Held held(ProgramBuilder in, DietRow row, int index) {
        boolean least = row.sense() == DietRow.Sense.AT_LEAST;
        var rights = new double[to - from];
        double most = least ? 0 : INF;
        for (int t = 0; t < rights.length; t++) {
            var at = eater.stages().get(from + t);
            double own = stage.rights().getOrDefault(row.of(), 0.0);
            rights[t] = row.isRatio() ? own : at.rights().getOrDefault(row.of(), own);
            most = least ? Math.max(most, rights[t]) : Math.min(most, rights[t]);
        }
        double price = Stage.missPrice(row, most);
        int missed = -1;
        if (Double.isFinite(price)) {
            missed = in.column(row.id() + " missed", weight * price, 0, INF);
            in.term(index, missed, least ? 1 : -1);
        }
        return new Held(row, index, rights, missed);
    }

    private void grow(ProgramBuilder in, Stage.Growth growth, Energies made) {
        growthMissed = in.column("growth missed", weight * Facts.value("unmet_gain"), 0, INF);
        for (double neg : growth.weights()) {
            int row = in.row("growth " + tangents.size(), 0, INF);
            for (int i = 0; i < feed.length; i++) {
                int f = stage.feeds()[i];
                double perKg = made.nem()[f] + neg * made.neg()[f];
                if (perKg > 0) {
                    in.term(row, feed[i], perKg);
                }
            }
            in.term(row, growthMissed, 1 + neg * Stage.Growth.MISSED_NEG);
            tangents.add(new Tangent(row, neg));
        }
    }

    private Reserve reserve(ProgramBuilder in, int energy, @Nullable GroupBlock before) {
        var body = eater.body().orElseThrow();
        int gain = in.column("gained", 0, 0, INF);
        int lose = in.column("lost", 0, 0, INF);
        int guarded = in.column("lost near calving", weight * Facts.value("loss_near_calving"), 0, INF);
        int at = in.column("reserve", 0, Double.NEGATIVE_INFINITY, INF);
        double replaces = Facts.value("lost_mcal");
        in.term(energy, gain, -1).term(energy, lose, replaces).term(energy, guarded, replaces);
        int row = in.row("reserve balance", 0, 0);
        in.term(row, at, 1).term(row, gain, -1).term(row, lose, 1).term(row, guarded, 1);
        if (before != null && before.reserve.isPresent()) {
            in.term(row, before.reserve.get().at, -1);
        }
        int thin = in.column("too thin", weight * (to - from) * body.thinPrice(), 0, INF);
        int least = in.row("least condition", eater.head() * body.least(), INF);
        in.term(least, at, 1).term(least, thin, 1);
        if (body.calvingDay() > 0 && to == Blocks.calvingWeek(body)) {
            atLeast(in, "calving", at, body.calvingPrice(), 0);
        }
        if (to == season.weeks()) {
            atLeast(in, "turnout", at, body.turnoutPrice(), -eater.head() * body.milk());
        }
        return new Reserve(body, gain, lose, guarded, at, row, least);
    }

    private void atLeast(ProgramBuilder in, String when, int at, double price, double mcal) {
        int shortOf = in.column("too thin at " + when, weight * price, 0, INF);
        in.row("condition at " + when, mcal, INF, new int[] {at, shortOf}, new double[] {1, 1});
    }

    /** The column of a feed of the season; −1 where the group may not have it. */
    int column(int ofSeason) {
        for (int i = 0; i < feed.length; i++) {
            if (stage.feeds()[i] == ofSeason) {
                return feed[i];
            }
        }
        return -1;
    }

    /** Moves right sides and bounds to a winter ahead and to what is known. @param isFirst whether it is this week */
    void move(PlanProgram.Moved by, Known known, Ahead ahead, boolean isFirst) {
        var headDays = new double[to - from];
        int days = 0;
        for (int t = 0; t < headDays.length; t++) {
            int fed = isFirst && t == 0 ? known.days()[group] : eater.fed(from + t, ahead.late());
            headDays[t] = (double) eater.head() * fed;
            days += fed;
        }
        for (var held : rows) {
            double right = 0;
            for (int t = 0; t < headDays.length; t++) {
                right += headDays[t] * right(held, t, ahead);
            }
            if (held.row.sense() == DietRow.Sense.AT_LEAST) {
                by.low()[held.index] = right;
            } else {
                by.high()[held.index] = right;
            }
        }
        for (var tangent : tangents) {
            double right = 0;
            for (int t = 0; t < headDays.length; t++) {
                var growth = eater.stages().get(from + t).growth();
                double neg = growth.map(Stage.Growth::neg).orElse(0.0);
                right += headDays[t] * Stage.Growth.right(tangent.weight, ahead.nem()[group][from + t], neg);
            }
            by.low()[tangent.index] = right;
        }
        if (reserve.isPresent()) {
            move(by, reserve.get(), known, days, isFirst);
        }
    }

    /** kg of dry matter of a feed that all head are to eat this week, as it is settled; 0 where it is not. */
    double settled(Known known, int ofSeason) {
        return column(ofSeason) < 0
                ? 0
                : eater.firstWeek().getOrDefault(ofSeason, 0.0) * eater.head() * known.days()[group];
    }

    /**
     * Holds this week to what is settled. Rows that cannot be missed at a price ask nothing then: it was judged by its own.
     *
     * @param reaches share of what is settled that there is, by feed; of other feeds a group that one does not reach for may
     *     have more
     */
    void hold(PlanProgram.Moved by, Known known, double[] reaches) {
        if (eater.firstWeek().isEmpty()) {
            return;
        }
        boolean isShort = eater.firstWeek().keySet().stream().anyMatch(f -> settled(known, f) > 0 && reaches[f] < 1);
        for (int i = 0; i < feed.length; i++) {
            int f = stage.feeds()[i];
            double kg = settled(known, f) * reaches[f];
            by.lower()[feed[i]] = kg;
            by.upper()[feed[i]] = isShort && reaches[f] == 1 ? INF : kg;
        }
        for (var held : rows) {
            if (held.missed < 0) {
                by.low()[held.index] = Double.NEGATIVE_INFINITY;
                by.high()[held.index] = INF;
            }
        }
    }

    private double right(Held held, int t, Ahead ahead) {
        if (held.row.id().equals(Stage.ENERGY)) {
            return ahead.nem()[group][from + t];
        }
        return Stage.isEaten(held.row)
                ? held.rights[t]
                        * ahead.factor()[group][from + t]
                        / eater.stages().get(from + t).factor()
                : held.rights[t];
    }

    private void move(PlanProgram.Moved by, Reserve of, Known known, int days, boolean isFirst) {
        var body = of.body;
        double guarded = body.guarded(Season.DAYS_A_WEEK * from, days);
        by.upper()[of.gain] = eater.head() * body.most(days);
        by.upper()[of.lose] = eater.head() * body.most(days - guarded);
        by.upper()[of.guarded] = eater.head() * body.most(guarded);
        if (isFirst) {
            double start = eater.head() * known.reserve()[group];
            by.low()[of.row] = start;
            by.high()[of.row] = start;
        }
        by.low()[of.least] = eater.head() * Math.min(body.least(), known.reserve()[group]);
    }

    /** What is missed by more than a share of it, wishes aside. */
    List<Plan.Unmet> unmet(Optimum optimum, double share) {
        var all = new ArrayList<Plan.Unmet>();
        for (var held : rows) {
            boolean counts = held.missed >= 0
                    && held.row.kind() != DietRow.Kind.CHOICE
                    && held.row.sense() == DietRow.Sense.AT_LEAST;
            if (counts) {
                double missed = optimum.value(held.missed);
                double asked = optimum.activity(held.index);
                if (missed > share * asked) {
                    all.add(unmet(held.row.id(), held.row.name(), missed / asked));
                }
            }
        }
        if (growthMissed >= 0) {
            var first = tangents.get(0);
            double missed = optimum.value(growthMissed) * (1 + first.weight * Stage.Growth.MISSED_NEG);
            double asked = optimum.activity(first.index);
            if (missed > share * asked) {
                all.add(unmet("growth", "energy for gain", missed / asked));
            }
        }
        return all;
    }

    private Plan.Unmet unmet(String row, String name, double share) {
        return new Plan.Unmet(
                eater.group().name(), season.begins(from), season.begins(to).minusDays(1), row, name, PERCENT * share);
    }

    /** Dollars by which hay still to find counts beyond its price. */
    double dread(Optimum optimum) {
        int found = column(season.emergency());
        return found < 0 ? 0 : dread * optimum.value(found);
    }

    /** Dollars counted for what is missed of needs. */
    double missed(Optimum optimum, double[] costs) {
        double dollars = growthMissed < 0 ? 0 : optimum.value(growthMissed) * costs[growthMissed];
        for (var held : rows) {
            dollars += held.missed < 0 ? 0 : optimum.value(held.missed) * costs[held.missed];
        }
        return dollars;
    }
}
