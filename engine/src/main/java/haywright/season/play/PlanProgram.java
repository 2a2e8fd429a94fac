package haywright.season.play;

import haywright.lp.Basis;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.ProgramBuilder;
import haywright.lp.Session;
import haywright.season.given.Energies;
import haywright.season.given.Prices;
import haywright.season.given.Season;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The linear program of a plan from one week to grass: every group's diet in every stretch, the tons of every feed and the
 * reserves of every group from one to the next. The first stretch is shared by all scenarios of the rest. Everything can be
 * missed at a price, so that there always is a plan. What it multiplies never changes: weather, stocks and days move right
 * sides, bounds and the prices of purchases.
 */
public final class PlanProgram {
    private static final double INF = Double.POSITIVE_INFINITY;

    /** Of a feed that does not reach, so that rounding leaves a plan. */
    private static final double ALMOST = 1 - 1e-9;

    private final Season season;
    private final Blocks blocks;
    private final Energies made;
    private final int scenarios;
    private final boolean isOrdered;
    private final Futures futures;
    private final Prices prices;
    private final LinearProgram program;
    private final Moved base;
    /** By scenario, block and group; the first block of every scenario is that of the first. */
    private final GroupBlock[][][] nodes;
    /**
     * By scenario, block and feed: columns of what lies there after it, and of what is bought, sold and spoils in it, and the
     * row of what is kept for calving; −1 for none.
     */
    private final int[][][] stock;

    private final int[][][] buy;
    private final int[][][] sell;
    private final int[][][] spoil;
    private final int[][][] keep;
    private final int[][] cap;
    private final int[][] storm;
    private final int[][] stormMissed;
    private final boolean[] isReserve;
    private final int[] opening;

    /** A plan for somebody: what is on hand goes to everybody before hay that nobody has yet. */
    public PlanProgram(Season season, Blocks blocks, Energies made, int scenarios) {
        this(season, blocks, made, scenarios, true);
    }

    /** @param isOrdered whether hay still to find comes last; not so in a bound, where only dollars count */
    PlanProgram(Season season, Blocks blocks, Energies made, int scenarios, boolean isOrdered) {
        this.season = season;
        this.isOrdered = isOrdered;
        this.blocks = blocks;
        this.made = made;
        this.scenarios = scenarios;
        futures = Futures.alike(scenarios);
        prices = new Prices(season);
        int feeds = season.feeds().size();
        int count = blocks.count();
        nodes = new GroupBlock[scenarios][count][season.eaters().size()];
        stock = new int[scenarios][count][feeds];
        buy = new int[scenarios][count][feeds];
        sell = new int[scenarios][count][feeds];
        spoil = new int[scenarios][count][feeds];
        keep = new int[scenarios][count][feeds];
        cap = new int[scenarios][feeds];
        storm = new int[scenarios][count];
        isReserve = season.reserves();
        stormMissed = new int[scenarios][count];
        opening = new int[feeds];
        program = futures.together((in, s) -> add(in.in("0/" + blocks.from(0)), 0, 0), (in, s) -> {
            nodes[s][0] = nodes[0][0];
            stock[s][0] = stock[0][0];
            buy[s][0] = buy[0][0];
            sell[s][0] = sell[0][0];
            spoil[s][0] = spoil[0][0];
            keep[s][0] = keep[0][0];
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
            nodes[s][k][e] = new GroupBlock(
                    in.in(season.eaters().get(e).group().id().toString()),
                    season,
                    e,
                    blocks,
                    k,
                    weight(k),
                    made,
                    isOrdered,
                    k == 0 ? null : nodes[s][k - 1][e]);
        }
        int days = Season.DAYS_A_WEEK * (blocks.to(k) - blocks.from(k));
        boolean last = k == blocks.count() - 1;
        for (int f = 0; f < season.feeds().size(); f++) {
            stock[s][k][f] = -1;
            buy[s][k][f] = -1;
            sell[s][k][f] = -1;
            spoil[s][k][f] = -1;
            keep[s][k][f] = -1;
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
                    double most = feed.supply().aWeek() * (blocks.to(k) - blocks.from(k));
                    buy[s][k][f] = in.column("bought of " + feed.id(), 0, 0, most);
                    in.term(row, buy[s][k][f], -1);
                }
                draw(in, row, s, k, f);
                meant(in, row, s, k, f);
            }
        }
        storm[s][k] = in.row("storm reserve", 0, INF);
        stormMissed[s][k] =
                in.column("storm reserve missed", weight(k) * days * prices.storm() / Season.DAYS_A_WEEK, 0, INF);
        in.term(storm[s][k], stormMissed[s][k], 1);
        for (int f = 0; f < season.feeds().size(); f++) {
            if (stock[s][k][f] >= 0 && isReserve[f]) {
                in.term(
                        storm[s][k],
                        stock[s][k][f],
                        season.feeds().get(f).priced().dryMatterPercent() / 100);
            }
        }
    }

    private void meant(ProgramBuilder in, int row, int s, int k, int f) {
        var feed = season.feeds().get(f);
        var meant = feed.meant();
        if (meant.sells() > 0) {
            sell[s][k][f] = in.column("sold of " + feed.id(), -weight(k) * meant.sells(), 0, INF);
            in.term(row, sell[s][k][f], 1);
        }
        if (meant.faceADay() > 0) {
            spoil[s][k][f] = in.column("spoiled of " + feed.id(), 0, 0, INF);
            in.term(row, spoil[s][k][f], 1);
        }
        if (meant.keep() > 0) {
            int weeks = blocks.to(k) - blocks.from(k);
            int missed =
                    in.column("kept for calving missed of " + feed.id(), weight(k) * weeks * prices.kept(f), 0, INF);
            keep[s][k][f] = in.row("kept for calving of " + feed.id(), 0, INF);
            in.term(keep[s][k][f], stock[s][k][f], 1).term(keep[s][k][f], missed, 1);
        }
    }

    private void draw(ProgramBuilder in, int row, int s, int k, int f) {
        for (var block : nodes[s][k]) {
            int column = block.column(f);
            if (column >= 0) {
                in.term(row, column, season.feeds().get(f).priced().putOut(1));
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

    public Session open() {
        return program.open();
    }

    public LinearProgram program() {
        return program;
    }

    /**
     * Asks for other winters ahead, from what is known now, free in all that is done.
     *
     * @param ahead one for each scenario
     */
    public void move(Session session, Known known, List<Ahead> ahead) {
        move(session, known, ahead, false);
    }

    /** @param holds whether the first week is fed as it is settled, where it is */
    public void move(Session session, Known known, List<Ahead> ahead, boolean holds) {
        var to = base.copy();
        move(to, known, ahead);
        if (holds && blocks.from(0) == 0) {
            hold(to, known);
        }
        session.costs(0, to.costs);
        session.columns(0, to.lower, to.upper);
        session.rows(0, to.low, to.high);
    }

    @SuppressWarnings("ArrayRecordComponent")
    record Moved(double[] costs, double[] lower, double[] upper, double[] low, double[] high) {
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
            faces(to, known, s);
        }
    }

    /** No more than this lies behind an open face, since so much comes off it each day, fed or spoiled. */
    private void faces(Moved to, Known known, int s) {
        for (int f = 0; f < opening.length; f++) {
            if (season.feeds().get(f).meant().faceADay() > 0) {
                faces(to, known, s, f);
            }
        }
    }

    private void faces(Moved to, Known known, int s, int f) {
        var feed = season.feeds().get(f);
        double most = known.stock()[f];
        for (int k = 0; k < blocks.count(); k++) {
            double days = (double) Season.DAYS_A_WEEK * (blocks.to(k) - blocks.from(k));
            most = Math.max(
                    0, most * (1 - feed.lossADay() * days) - feed.meant().faceADay() * days);
            if (known.face()[f] == Known.Face.OPEN) {
                to.upper[stock[s][k][f]] = most;
            }
        }
        if (known.face()[f] == Known.Face.LEFT_CLOSED) {
            for (var block : nodes[s][0]) {
                int column = block.column(f);
                if (column >= 0) {
                    to.upper[column] = 0;
                }
            }
        }
    }

    /** What lies there or can be bought is fed by what is settled, as far as it reaches. */
    private void hold(Moved to, Known known) {
        var reaches = new double[season.feeds().size()];
        for (int f = 0; f < reaches.length; f++) {
            var feed = season.feeds().get(f);
            reaches[f] = 1;
            if (feed.isTracked()) {
                double wanted = 0;
                for (var block : nodes[0][0]) {
                    wanted += feed.priced().putOut(block.settled(known, f));
                }
                double there = to.high[opening[f]]
                        + Math.min(known.canBuy()[f], feed.supply().aWeek());
                reaches[f] = wanted > there ? ALMOST * there / wanted : 1;
            }
        }
        for (var block : nodes[0][0]) {
            block.hold(to, known, reaches);
        }
    }

    private void move(Moved to, Known known, Ahead ahead, int s, int k) {
        double week = (blocks.from(k) + blocks.to(k) - 1) / 2.0;
        for (int f = 0; f < opening.length; f++) {
            if (keep[s][k][f] >= 0) {
                to.low[keep[s][k][f]] = prices.keep(f, blocks.to(k));
            }
            if (buy[s][k][f] >= 0) {
                to.costs[buy[s][k][f]] = weight(k) * prices.buy(f, week, ahead.hard()[blocks.from(k)]);
            }
        }
        to.low[storm[s][k]] = prices.stormReserve(blocks.to(k));
        for (var block : nodes[s][k]) {
            block.move(to, known, ahead, k == 0);
        }
    }

    public Plan plan(Optimum optimum, Basis basis) {
        return new Reading(season, blocks, scenarios, optimum, basis).plan(this);
    }

    /** What is done in each block. */
    public List<Decision> decisions(Optimum optimum, Basis basis) {
        var reading = new Reading(season, blocks, scenarios, optimum, basis);
        return IntStream.range(0, blocks.count())
                .mapToObj(k -> reading.decision(this, k))
                .toList();
    }

    // What a reader of an optimum needs

    int feedColumn(int s, int k, int e, int f) {
        return nodes[s][k][e].column(f);
    }

    public int stockColumn(int s, int k, int f) {
        return stock[s][k][f];
    }

    /** Of what lies there of a feed on the first day. */
    int openingRow(int f) {
        return opening[f];
    }

    public int buyColumn(int s, int k, int f) {
        return buy[s][k][f];
    }

    int sellColumn(int s, int k, int f) {
        return sell[s][k][f];
    }

    int spoilColumn(int s, int k, int f) {
        return spoil[s][k][f];
    }

    public int stormColumn(int s, int k) {
        return stormMissed[s][k];
    }

    /** What is missed by more than a share of it, wishes aside; of the middle scenario. */
    List<Plan.Unmet> unmet(Optimum optimum, double share) {
        var all = new ArrayList<Plan.Unmet>();
        for (int e = 0; e < season.eaters().size(); e++) {
            for (int k = 0; k < blocks.count(); k++) {
                all.addAll(nodes[scenarios / 2][k][e].unmet(optimum, share));
            }
        }
        return all;
    }

    /** Dollars that it costs, without what only puts hay still to find last. */
    double cost(Optimum optimum) {
        double dread = 0;
        for (int s = 0; s < scenarios; s++) {
            for (int k = s == 0 ? 0 : 1; k < blocks.count(); k++) {
                for (var block : nodes[s][k]) {
                    dread += block.dread(optimum);
                }
            }
        }
        return optimum.objective() - dread;
    }

    /** Dollars counted for what is missed of a group's needs in one block. */
    double missed(Optimum optimum, int s, int k, int e) {
        return nodes[s][k][e].missed(optimum, base.costs);
    }
}
