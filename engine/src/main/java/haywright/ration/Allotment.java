package haywright.ration;

import haywright.diet.DietBlock;
import haywright.diet.DietRow;
import haywright.diet.Sureness;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.lp.ProgramBuilder;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Who eats which of the feeds that all groups share, over the days ahead, where hay is short: the least hay or silage that is
 * missing, of dry matter, and of such ways the cheapest. One program of every group's diet in every stretch of days, with what
 * lies on the ranch and what can be had of each feed. Hay and silage of the ranch are taken beyond their end at one price,
 * other feeds at a much higher one, so that more feed, fewer head or a looser limit never makes more of it missing. Everybody
 * is fed: a need that the feeds cannot meet is missed by as little as can be. As expected figures have it, by the limits of
 * each question as they stand.
 */
public final class Allotment {
    /** Shares of what there is below which nothing is missing: what the solver's exactness leaves. */
    private static final double NOTHING = 1e-6;

    /** Share of a need below which it is met: what the solver's exactness leaves. */
    private static final double LEAST_UNMET = 1e-4;

    /** Dollars a kg of dry matter of hay that is missing, where that is what is to be least: dearer than any feed. */
    private static final double DEAREST = 20;

    /** Times that of any other feed beyond its end: only where nothing else meets a need at all. */
    private static final double OTHERS = 10;

    /** Dollars a head and day that a need costs of which nothing is met: ten times a day's hay at that price. */
    private static final double UNMET = 4000;

    private final List<Eater> eaters;
    private final Map<String, Double> kgMissing;
    private final List<Eaten> eaten;

    /** @param question of one head on a day of it */
    public record Stretch(int days, LeastCostRation question) {}

    /** @param stretches one after the other, the same days for every eater */
    public record Eater(String id, int head, List<Stretch> stretches) {
        public Eater {
            stretches = List.copyOf(stretches);
        }
    }

    /**
     * What an eater takes in a stretch.
     *
     * @param stretch its number, from 0
     * @param headDays head times days of it
     * @param feeds that are taken, and kg as fed of each that all its head are put out in all its days
     * @param unmet the share of each need that these feeds cannot meet, by row id; empty where they meet all
     */
    public record Eaten(
            String eater, int stretch, double headDays, Map<PricedFeed, Double> feeds, Map<String, Double> unmet) {
        public Eaten {
            feeds = Collections.unmodifiableMap(new LinkedHashMap<>(feeds));
            unmet = Collections.unmodifiableMap(new LinkedHashMap<>(unmet));
        }
    }

    private record Stock(int row, int beyond, PricedFeed feed) {}

    private Allotment(List<Eater> eaters, Map<String, Double> kgMissing, List<Eaten> eaten) {
        this.eaters = List.copyOf(eaters);
        this.kgMissing = Collections.unmodifiableMap(kgMissing);
        this.eaten = List.copyOf(eaten);
    }

    /** Empty where no group is there. */
    public static Optional<Allotment> leastMissing(List<Eater> eaters) {
        var program = LinearProgram.minimise();
        var stocks = new LinkedHashMap<String, Stock>();
        var placed = new ArrayList<Placed>();
        for (var eater : eaters) {
            for (int t = 0; t < eater.stretches().size(); t++) {
                placed.add(place(program, eater, t));
            }
        }
        if (placed.isEmpty()) {
            return Optional.empty();
        }
        placed.forEach(block -> block.draw(program, stocks));
        try (var session = program.build().open()) {
            if (!(session.solve() instanceof Optimum optimum)) {
                return Optional.empty();
            }
            var missing = new LinkedHashMap<String, Double>();
            stocks.forEach((id, stock) -> {
                double beyond = optimum.value(stock.beyond());
                if (beyond > NOTHING * Math.max(1, stock.feed().kgAtHand())) {
                    missing.put(id, beyond);
                }
            });
            return Optional.of(new Allotment(
                    eaters,
                    missing,
                    placed.stream().map(block -> block.eaten(optimum)).toList()));
        }
    }

    private static Placed place(ProgramBuilder program, Eater eater, int t) {
        var stretch = eater.stretches().get(t);
        var question = stretch.question();
        double headDays = (double) eater.head() * stretch.days();
        var block = new DietBlock(question.diet(), Sureness.EXPECTED);
        var in = program.in(eater.id() + "/" + t);
        var feeds = question.admitted(block.diet());
        var at = block.addTo(in, RationProgram.costs(feeds), GrowthRow.ID, headDays);
        return new Placed(eater, t, headDays, feeds, at, unmet(in, block, at));
    }

    /** A column beside each need that more feed meets, for what is not met of it. */
    private static Map<DietRow, Integer> unmet(ProgramBuilder in, DietBlock block, DietBlock.Placed at) {
        var columns = new LinkedHashMap<DietRow, Integer>();
        for (var row : block.diet().rows()) {
            Integer index = at.row().get(row.of());
            if (index != null && row.sense() == DietRow.Sense.AT_LEAST && !row.isRatio() && row.limit() > 0) {
                int column = in.column(row.id() + " unmet", UNMET / row.limit(), 0, Double.POSITIVE_INFINITY);
                in.term(index, column, 1);
                columns.put(row, column);
            }
        }
        return columns;
    }

    private record Placed(
            Eater eater,
            int stretch,
            double headDays,
            List<PricedFeed> feeds,
            DietBlock.Placed block,
            Map<DietRow, Integer> unmet) {
        /** Takes what is put out off the stock of each feed that has an end. */
        void draw(ProgramBuilder program, Map<String, Stock> stocks) {
            for (int i = 0; i < feeds.size(); i++) {
                var feed = feeds.get(i);
                if (Double.isFinite(feed.kgAtHand())) {
                    var stock = stocks.computeIfAbsent(feed.feed().id(), id -> open(program, feed));
                    program.term(stock.row(), block.feed()[i], feed.putOut(1));
                }
            }
        }

        private static Stock open(ProgramBuilder program, PricedFeed feed) {
            var id = feed.feed().id();
            int row = program.row("at hand " + id, Double.NEGATIVE_INFINITY, feed.kgAtHand());
            int beyond = program.column("beyond " + id, beyond(feed), 0, Double.POSITIVE_INFINITY);
            program.term(row, beyond, -1);
            return new Stock(row, beyond, feed);
        }

        /** Dollars a kg as fed beyond its end. */
        private static double beyond(PricedFeed feed) {
            double dry = DEAREST * feed.dryMatterPercent() / 100;
            return feed.own() && feed.isHayOrSilage() ? dry : OTHERS * dry;
        }

        Eaten eaten(Optimum optimum) {
            var kg = new LinkedHashMap<PricedFeed, Double>();
            for (int i = 0; i < feeds.size(); i++) {
                double putOut = feeds.get(i).putOut(optimum.value(block.feed()[i]));
                if (putOut > NOTHING * headDays) {
                    kg.put(feeds.get(i), putOut);
                }
            }
            var missed = new LinkedHashMap<String, Double>();
            unmet.forEach((row, column) -> {
                double share = optimum.value(column) / (row.limit() * headDays);
                if (share > LEAST_UNMET && row.kind() != DietRow.Kind.CHOICE) {
                    missed.put(row.id(), share);
                }
            });
            return new Eaten(eater.id(), stretch, headDays, kg, missed);
        }
    }

    /** kg as fed that are missing of what there is, by feed; empty where all reaches. */
    public Map<String, Double> missing() {
        return kgMissing;
    }

    /** What every eater takes in every stretch. */
    public List<Eaten> eaten() {
        return eaten;
    }
}
