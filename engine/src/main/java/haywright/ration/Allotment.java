package haywright.ration;

import haywright.diet.DietBlock;
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
 * Who eats which of the feeds that all groups share, over the days ahead, at the least cost: one program of every
 * group's diet in every stretch of days, with what lies on the ranch and what can be had of each feed. A feed that does
 * not reach is taken beyond its end at a price that nobody pays while there is another way, so that there is always an
 * answer, and it says how much is missing.
 */
public final class Allotment {
    /** Times its price that a feed costs beyond its end: enough that nothing else is left dearer to avoid it. */
    private static final double BEYOND = 10;

    /** Shares of what there is below which nothing is missing: what the solver's exactness leaves. */
    private static final double NOTHING = 1e-6;

    private final List<Eater> eaters;
    private final Map<String, Double> kgMissing;
    private final Map<String, Double> scarcity;

    /** @param question of one head on a day of it */
    public record Stretch(int days, LeastCostRation question) {}

    /** @param stretches one after the other, the same days for every eater */
    public record Eater(String id, int head, List<Stretch> stretches) {
        public Eater {
            stretches = List.copyOf(stretches);
        }
    }

    private record Stock(int row, int beyond, PricedFeed feed) {}

    private Allotment(List<Eater> eaters, Map<String, Double> kgMissing, Map<String, Double> scarcity) {
        this.eaters = List.copyOf(eaters);
        this.kgMissing = Collections.unmodifiableMap(kgMissing);
        this.scarcity = scarcity;
    }

    /** Empty where no group can be fed at all, or none is there. */
    public static Optional<Allotment> of(List<Eater> eaters) {
        var program = LinearProgram.minimise();
        var stocks = new LinkedHashMap<String, Stock>();
        var placed = new ArrayList<Placed>();
        for (int e = 0; e < eaters.size(); e++) {
            var stretches = eaters.get(e).stretches();
            for (int t = 0; t < stretches.size(); t++) {
                place(program.in(e + "/" + t), eaters.get(e), stretches.get(t), placed);
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
            var scarcity = new LinkedHashMap<String, Double>();
            stocks.forEach((id, stock) -> {
                double beyond = optimum.value(stock.beyond());
                if (beyond > NOTHING * Math.max(1, stock.feed().kgAtHand())) {
                    missing.put(id, beyond);
                }
                scarcity.put(id, Math.abs(optimum.dual(stock.row())));
            });
            return Optional.of(new Allotment(eaters, missing, scarcity));
        }
    }

    private static void place(ProgramBuilder in, Eater eater, Stretch stretch, List<Placed> placed) {
        // A day alone says how surely these feeds can be fed, and whether at all; tons are counted here.
        stretch.question().block().ifPresent(block -> {
            var feeds = stretch.question().admitted(block.diet());
            double headDays = (double) eater.head() * stretch.days();
            placed.add(new Placed(feeds, block.addTo(in, RationProgram.costs(feeds), GrowthRow.ID, headDays)));
        });
    }

    private record Placed(List<PricedFeed> feeds, DietBlock.Placed block) {
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
            int beyond = program.column("beyond " + id, BEYOND * feed.pricePerKgAsFed(), 0, Double.POSITIVE_INFINITY);
            program.term(row, beyond, -1);
            return new Stock(row, beyond, feed);
        }
    }

    /** Dollars that one more kg as fed would save all groups together, beside its price; 0 where it reaches. */
    public double scarcity(String feed) {
        return scarcity.getOrDefault(feed, 0.0);
    }

    /** kg as fed that are missing of what there is, by feed; empty where all reaches. */
    public Map<String, Double> missing() {
        return kgMissing;
    }

    /** Days that are looked ahead. */
    public int length() {
        return eaters.get(0).stretches().stream().mapToInt(Stretch::days).sum();
    }
}
