package haywright.season.play;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietRow;
import haywright.lp.Basis;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.ProgramBuilder;
import haywright.lp.Session;
import haywright.season.given.Body;
import haywright.season.given.Eater;
import haywright.season.given.Energies;
import haywright.season.given.Facts;
import haywright.season.given.Prices;
import haywright.season.given.Season;
import haywright.season.given.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The linear program of a plan from one week to grass: every group's diet in every stretch, the tons of every feed and the
 * reserves of every group from one to the next. The first stretch is shared by all scenarios of the rest. Everything can be
 * missed at a price, so that there always is a plan. What it multiplies never changes: weather, stocks and days move right
 * sides, bounds and the prices of purchases.
 */
public final class PlanProgram {
    private static final double PERCENT = 100;
    private static final double INF = Double.POSITIVE_INFINITY;

    private final Season season;
    private final Blocks blocks;
    private final Energies made;
    private final int scenarios;
    private final Futures futures;
    private final Prices prices;
    private final LinearProgram program;
    private final Moved base;
    /** By scenario, block and group; the first block of every scenario is that of the first. */
    private final Node[][][] nodes;
    /** By scenario, block and feed: columns of what lies there after it, and of what is bought in it; −1 for none. */
    private final int[][][] stock;

    private final int[][][] buy;
    private final int[][] cap;
    private final int[][] storm;
    private final int[][] stormMissed;
    private final int[] opening;

    /** One group in one block: where it lies in the program. */
    private record Node(
            Stage stage, Diet diet, int[] feed, List<Held> rows, List<Tangent> tangents, Optional<Reserve> reserve) {}

    /** A row of the diet. @param rights a head and day, by week of the block, in usual weather */
    @SuppressWarnings("ArrayRecordComponent")
    private record Held(DietRow row, int index, double[] rights, int missed) {}

    private record Tangent(int index, double weight) {}

    /** @param lose columns outside and inside the guarded days. @param row of the balance. @param least row of the floor */
    private record Reserve(Body body, int gain, int lose, int guarded, int at, int row, int least) {}

    public PlanProgram(Season season, Blocks blocks, Energies made, int scenarios) {
        this.season = season;
        this.blocks = blocks;
        this.made = made;
        this.scenarios = scenarios;
        futures = Futures.alike(scenarios);
        prices = new Prices(season);
        int feeds = season.feeds().size();
        int count = blocks.count();
        nodes = new Node[scenarios][count][season.eaters().size()];
        stock = new int[scenarios][count][feeds];
        buy = new int[scenarios][count][feeds];
        cap = new int[scenarios][feeds];
        storm = new int[scenarios][count];
        stormMissed = new int[scenarios][count];
        opening = new int[feeds];
        program = futures.together((in, s) -> add(in.in("0/" + blocks.from(0)), 0, 0), (in, s) -> {
            nodes[s][0] = nodes[0][0];
            stock[s][0] = stock[0][0];
            buy[s][0] = buy[0][0];
            storm[s][0] = storm[0][0];
            stormMissed[s][0] = stormMissed[0][0];
            for (int k = 1; k < blocks.count(); k++) {
                add(in.in(s + "/" + blocks.from(k)), s, k);
            }
            caps(in.in("can be bought " + s), s);
        });
        base = Moved.of(program);
    }

    /** Every scenario is as likely. */
    private double weight(int block) {
        return block == 0 ? 1 : futures.weight(0);
    }

    private void add(ProgramBuilder in, int s, int k) {
        for (int e = 0; e < season.eaters().size(); e++) {
            var before = k == 0 ? null : nodes[s][k - 1][e];
            nodes[s][k][e] = node(in.in(season.eaters().get(e).group().id().toString()), s, k, e, before);
        }
        int days = Season.DAYS_A_WEEK * (blocks.to(k) - blocks.from(k));
        boolean last = k == blocks.count() - 1;
        for (int f = 0; f < season.feeds().size(); f++) {
            stock[s][k][f] = -1;
            buy[s][k][f] = -1;
            var feed = season.feeds().get(f);
            if (feed.isTracked()) {
                double left = last ? -weight(k) * feed.carryValue() : 0;
                stock[s][k][f] = in.column("left of " + feed.id(), left, 0, INF);
                int row = in.row("stock of " + feed.id(), 0, 0);
                in.term(row, stock[s][k][f], 1);
                if (k == 0) {
                    opening[f] = row;
                } else {
                    in.term(row, stock[s][k - 1][f], -(1 - feed.lossADay() * days));
                }
                if (feed.canBuy() > 0) {
                    buy[s][k][f] = in.column("bought of " + feed.id(), 0, 0, INF);
                    in.term(row, buy[s][k][f], -1);
                }
                draw(in, row, s, k, f);
            }
        }
        storm[s][k] = in.row("storm reserve", 0, INF);
        stormMissed[s][k] =
                in.column("storm reserve missed", weight(k) * days * prices.storm() / Season.DAYS_A_WEEK, 0, INF);
        in.term(storm[s][k], stormMissed[s][k], 1);
        for (int f = 0; f < season.feeds().size(); f++) {
            if (stock[s][k][f] >= 0 && season.feeds().get(f).isForage()) {
                in.term(
                        storm[s][k],
                        stock[s][k][f],
                        season.feeds().get(f).priced().dryMatterPercent() / 100);
            }
        }
    }

    private void draw(ProgramBuilder in, int row, int s, int k, int f) {
        for (var node : nodes[s][k]) {
            for (int i = 0; i < node.feed.length; i++) {
                if (node.stage.feeds()[i] == f) {
                    in.term(row, node.feed[i], season.feeds().get(f).priced().putOut(1));
                }
            }
        }
    }

    private void caps(ProgramBuilder in, int s) {
        for (int f = 0; f < season.feeds().size(); f++) {
            cap[s][f] = -1;
            if (buy[s][0][f] >= 0) {
                cap[s][f] = in.row(season.feeds().get(f).id(), Double.NEGATIVE_INFINITY, 0);
                for (int k = 0; k < blocks.count(); k++) {
                    in.term(cap[s][f], buy[s][k][f], 1);
                }
            }
        }
    }

    private Node node(ProgramBuilder in, int s, int k, int e, @org.jspecify.annotations.Nullable Node before) {
        var eater = season.eaters().get(e);
        var stage = eater.stages().get(blocks.middle(k));
        var diet = new Diet(
                stage.diet().need(),
                stage.diet().feeds(),
                stage.rows(made),
                Optional.empty(),
                List.of(),
                stage.diet().options());
        var costs = new double[stage.feeds().length];
        for (int i = 0; i < costs.length; i++) {
            var feed = season.feeds().get(stage.feeds()[i]);
            costs[i] = weight(k)
                    * (feed.isTracked()
                            ? feed.priced().putOut(feed.priced().handlingPerKgAsFed())
                            : feed.priced().costPerKgEaten());
        }
        var placed = new DietBlock(diet).addTo(in, costs, "growth", 1);
        var held = new ArrayList<Held>();
        int energy = -1;
        for (var row : diet.rows()) {
            int index = placed.row().get(row.of());
            var rights = new double[blocks.to(k) - blocks.from(k)];
            double most = row.sense() == DietRow.Sense.AT_LEAST ? 0 : INF;
            for (int t = 0; t < rights.length; t++) {
                var at = eater.stages().get(blocks.from(k) + t);
                double own = stage.rights().getOrDefault(row.of(), 0.0);
                rights[t] = row.isRatio() ? own : at.rights().getOrDefault(row.of(), own);
                most = row.sense() == DietRow.Sense.AT_LEAST ? Math.max(most, rights[t]) : Math.min(most, rights[t]);
            }
            double price = Stage.missPrice(row, most);
            int missed = -1;
            if (Double.isFinite(price)) {
                missed = in.column(row.id() + " missed", weight(k) * price, 0, INF);
                in.term(index, missed, row.sense() == DietRow.Sense.AT_LEAST ? 1 : -1);
            }
            held.add(new Held(row, index, rights, missed));
            energy = row.id().equals(Stage.ENERGY) ? index : energy;
        }
        var tangents = new ArrayList<Tangent>();
        if (stage.growth().isPresent()) {
            var growth = stage.growth().get();
            int missed = in.column("growth missed", weight(k) * Facts.value("unmet_gain"), 0, INF);
            for (double weight : growth.weights()) {
                int row = in.row("growth " + tangents.size(), 0, INF);
                for (int i = 0; i < placed.feed().length; i++) {
                    int f = stage.feeds()[i];
                    double perKg = made.nem()[f] + weight * made.neg()[f];
                    if (perKg > 0) {
                        in.term(row, placed.feed()[i], perKg);
                    }
                }
                in.term(row, missed, 1 + weight * Stage.Growth.MISSED_NEG);
                tangents.add(new Tangent(row, weight));
            }
        }
        var reserve = energy < 0 || eater.body().isEmpty()
                ? Optional.<Reserve>empty()
                : Optional.of(reserve(in, s, k, eater, energy, before));
        return new Node(stage, diet, placed.feed(), held, tangents, reserve);
    }

    private Reserve reserve(
            ProgramBuilder in, int s, int k, Eater eater, int energy, @org.jspecify.annotations.Nullable Node before) {
        var body = eater.body().orElseThrow();
        double w = weight(k);
        int weeks = blocks.to(k) - blocks.from(k);
        int gain = in.column("gained", 0, 0, INF);
        int lose = in.column("lost", 0, 0, INF);
        int guarded = in.column("lost near calving", w * Facts.value("loss_near_calving"), 0, INF);
        int at = in.column("reserve", 0, Double.NEGATIVE_INFINITY, INF);
        double replaces = Facts.value("lost_mcal");
        in.term(energy, gain, -1).term(energy, lose, replaces).term(energy, guarded, replaces);
        int row = in.row("reserve balance", 0, 0);
        in.term(row, at, 1).term(row, gain, -1).term(row, lose, 1).term(row, guarded, 1);
        if (before != null && before.reserve.isPresent()) {
            in.term(row, before.reserve.get().at, -1);
        }
        int thin = in.column("too thin", w * weeks * body.thinPrice(), 0, INF);
        int least = in.row("least condition", eater.head() * body.least(), INF);
        in.term(least, at, 1).term(least, thin, 1);
        if (body.calvingDay() > 0 && blocks.to(k) == Blocks.calvingWeek(body)) {
            int shortOf = in.column("too thin at calving", w * body.calvingPrice(), 0, INF);
            in.row("condition at calving", 0, INF, new int[] {at, shortOf}, new double[] {1, 1});
        }
        if (blocks.to(k) == season.weeks()) {
            int shortOf = in.column("too thin at turnout", w * body.turnoutPrice(), 0, INF);
            in.row("condition at turnout", -eater.head() * body.milk(), INF, new int[] {at, shortOf}, new double[] {1, 1
            });
        }
        return new Reserve(body, gain, lose, guarded, at, row, least);
    }

    public Session open() {
        return program.open();
    }

    public LinearProgram program() {
        return program;
    }

    /** Asks for other winters ahead, from what is known now. @param ahead one for each scenario */
    public void move(Session session, Known known, List<Ahead> ahead) {
        var to = base.copy();
        move(to, known, ahead);
        session.costs(0, to.costs);
        session.columns(0, to.lower, to.upper);
        session.rows(0, to.low, to.high);
    }

    @SuppressWarnings("ArrayRecordComponent")
    private record Moved(double[] costs, double[] lower, double[] upper, double[] low, double[] high) {
        public static Moved of(LinearProgram program) {
            var columns = program.columns();
            var rows = program.rows();
            return new Moved(
                    columns.stream().mapToDouble(LinearProgram.Column::cost).toArray(),
                    columns.stream().mapToDouble(LinearProgram.Column::lower).toArray(),
                    columns.stream().mapToDouble(LinearProgram.Column::upper).toArray(),
                    rows.stream().mapToDouble(LinearProgram.Row::lower).toArray(),
                    rows.stream().mapToDouble(LinearProgram.Row::upper).toArray());
        }

        public Moved copy() {
            return new Moved(costs.clone(), lower.clone(), upper.clone(), low.clone(), high.clone());
        }
    }

    private void move(Moved to, Known known, List<Ahead> ahead) {
        for (int f = 0; f < opening.length; f++) {
            var feed = season.feeds().get(f);
            if (feed.isTracked()) {
                double kept = known.stock()[f] * (1 - feed.lossADay() * Season.DAYS_A_WEEK);
                to.low[opening[f]] = kept;
                to.high[opening[f]] = kept;
            }
        }
        for (int s = 0; s < scenarios; s++) {
            for (int f = 0; f < opening.length; f++) {
                if (cap[s][f] >= 0) {
                    to.high[cap[s][f]] = known.canBuy()[f];
                }
            }
            for (int k = s == 0 ? 0 : 1; k < blocks.count(); k++) {
                move(to, known, ahead.get(s), s, k);
            }
        }
    }

    private void move(Moved to, Known known, Ahead ahead, int s, int k) {
        double week = (blocks.from(k) + blocks.to(k) - 1) / 2.0;
        for (int f = 0; f < opening.length; f++) {
            if (buy[s][k][f] >= 0) {
                to.costs[buy[s][k][f]] = weight(k) * prices.buy(f, week, ahead.hard()[blocks.from(k)]);
            }
        }
        to.low[storm[s][k]] = prices.stormReserve(blocks.to(k));
        for (int e = 0; e < season.eaters().size(); e++) {
            var eater = season.eaters().get(e);
            var node = nodes[s][k][e];
            int weeks = blocks.to(k) - blocks.from(k);
            var headDays = new double[weeks];
            double days = 0;
            for (int t = 0; t < weeks; t++) {
                int fed = k == 0 && t == 0 ? known.days()[e] : eater.fed(blocks.from(k) + t, ahead.late());
                headDays[t] = (double) eater.head() * fed;
                days += fed;
            }
            for (var held : node.rows) {
                double right = 0;
                for (int t = 0; t < weeks; t++) {
                    int at = blocks.from(k) + t;
                    double aDay = held.row.id().equals(Stage.ENERGY)
                            ? ahead.nem()[e][at]
                            : Stage.isEaten(held.row)
                                    ? held.rights[t]
                                            * ahead.factor()[e][at]
                                            / eater.stages().get(at).factor()
                                    : held.rights[t];
                    right += headDays[t] * aDay;
                }
                if (held.row.sense() == DietRow.Sense.AT_LEAST) {
                    to.low[held.index] = right;
                } else {
                    to.high[held.index] = right;
                }
            }
            for (var tangent : node.tangents) {
                double right = 0;
                for (int t = 0; t < weeks; t++) {
                    int at = blocks.from(k) + t;
                    var growth = eater.stages().get(at).growth();
                    double neg = growth.map(Stage.Growth::neg).orElse(0.0);
                    right += headDays[t] * Stage.Growth.right(tangent.weight, ahead.nem()[e][at], neg);
                }
                to.low[tangent.index] = right;
            }
            int stretch = (int) days;
            if (node.reserve.isPresent()) {
                var reserve = node.reserve.get();
                var body = reserve.body;
                double guarded = body.guarded(Season.DAYS_A_WEEK * blocks.from(k), stretch);
                to.upper[reserve.gain] = eater.head() * body.most(stretch);
                to.upper[reserve.lose] = eater.head() * body.most(stretch - guarded);
                to.upper[reserve.guarded] = eater.head() * body.most(guarded);
                if (k == 0) {
                    double start = eater.head() * known.reserve()[e];
                    to.low[reserve.row] = start;
                    to.high[reserve.row] = start;
                }
                double least = eater.head() * Math.min(body.least(), known.reserve()[e]);
                to.low[reserve.least] = least;
            }
        }
    }

    public Plan plan(Optimum optimum, Basis basis) {
        return new Reading(season, blocks, scenarios, optimum, basis).plan(this);
    }

    /** What is done in each block. */
    public List<Decision> decisions(Optimum optimum, Basis basis) {
        var reading = new Reading(season, blocks, scenarios, optimum, basis);
        return java.util.stream.IntStream.range(0, blocks.count())
                .mapToObj(k -> reading.decision(this, k))
                .toList();
    }

    // What a reader of an optimum needs

    public int feedColumn(int s, int k, int e, int f) {
        var node = nodes[s][k][e];
        for (int i = 0; i < node.feed.length; i++) {
            if (node.stage.feeds()[i] == f) {
                return node.feed[i];
            }
        }
        return -1;
    }

    public int stockColumn(int s, int k, int f) {
        return stock[s][k][f];
    }

    public int buyColumn(int s, int k, int f) {
        return buy[s][k][f];
    }

    public int stormColumn(int s, int k) {
        return stormMissed[s][k];
    }

    /** What is missed by more than a share of it, wishes aside; of the middle scenario. */
    List<Plan.Unmet> unmet(Optimum optimum, double share) {
        var all = new ArrayList<Plan.Unmet>();
        int s = scenarios / 2;
        for (int e = 0; e < season.eaters().size(); e++) {
            for (int k = 0; k < blocks.count(); k++) {
                for (var held : nodes[s][k][e].rows) {
                    var row = held.row;
                    if (held.missed < 0 || row.kind() == DietRow.Kind.CHOICE || row.sense() == DietRow.Sense.AT_MOST) {
                        continue;
                    }
                    double missed = optimum.value(held.missed);
                    double asked = optimum.activity(held.index);
                    if (missed > share * asked) {
                        all.add(new Plan.Unmet(
                                season.eaters().get(e).group().name(),
                                season.begins(blocks.from(k)),
                                season.begins(blocks.to(k)).minusDays(1),
                                row.id(),
                                row.name(),
                                PERCENT * missed / asked));
                    }
                }
            }
        }
        return all;
    }

    /** Dollars counted for what is missed of a group's needs in one block. */
    public double missed(Optimum optimum, int s, int k, int e) {
        double dollars = 0;
        for (var held : nodes[s][k][e].rows) {
            if (held.missed >= 0) {
                dollars += optimum.value(held.missed) * base.costs[held.missed];
            }
        }
        return dollars;
    }
}
