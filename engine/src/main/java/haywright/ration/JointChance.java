package haywright.ration;

import haywright.chance.Draws;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Law;
import haywright.forage.Analyte;
import haywright.forage.Made;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.Shared;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * How often a mix meets every need and keeps every danger at once, over the ways its feeds may be made: counted in draws
 * through the equations themselves, in pairs of opposite ones. What cattle choose to eat is left out: its own error would
 * drown everything else.
 *
 * @param percent in which all is kept
 * @param byRow per cent in which each row is kept, by its id, the least sure first
 * @param draws how many were counted
 * @param movedPercent of draws in which something no feed can be was moved to what one can
 */
public record JointChance(double percent, Map<String, Double> byRow, int draws, double movedPercent) {
    /** Enough to tell 80 from 81 per cent two times in three. */
    public static final int DRAWS = 6_000;

    private static final long SEED = 20_260_101;

    /** Shares of a limit that a row may miss and still counts as kept: what the solver's exactness leaves. */
    private static final double KEPT = 1e-6;

    public JointChance {
        byRow = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(byRow));
    }

    /** @param kg dry matter eaten a head and day, in the diet's order */
    public static JointChance of(Diet diet, double[] kg) {
        return of(diet, kg, DRAWS, SEED);
    }

    static JointChance of(Diet diet, double[] kg, int draws, long seed) {
        var rows = diet.rows().stream()
                .filter(row -> row.law().counted() == Law.Counted.SURE)
                .toList();
        var fed = new ArrayList<Integer>();
        for (int i = 0; i < kg.length; i++) {
            if (kg[i] > 0) {
                fed.add(i);
            }
        }
        var random = new Draws(seed);
        var kept = new int[rows.size() + 1];
        int all = 0;
        int moved = 0;
        Way way = Way.NONE;
        for (int draw = 0; draw < draws; draw++) {
            way = draw % 2 == 0 ? Way.drawn(diet, fed, random) : way.opposite();
            var made = way.made(diet, fed);
            moved += made.values().stream().anyMatch(m -> m instanceof LotDistribution.State s && s.moved()) ? 1 : 0;
            boolean every = true;
            for (int r = 0; r < rows.size(); r++) {
                boolean one = keeps(diet, rows.get(r), kg, made);
                kept[r] += one ? 1 : 0;
                every &= one;
            }
            if (diet.growth().isPresent()) {
                boolean grows = grows(diet, kg, made);
                kept[rows.size()] += grows ? 1 : 0;
                every &= grows;
            }
            all += every ? 1 : 0;
        }
        var by = new HashMap<String, Double>();
        for (int r = 0; r < rows.size(); r++) {
            by.put(rows.get(r).id(), 100.0 * kept[r] / draws);
        }
        if (diet.growth().isPresent()) {
            by.put(GrowthRow.ID, 100.0 * kept[rows.size()] / draws);
        }
        var sorted = new LinkedHashMap<String, Double>();
        by.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .forEach(e -> sorted.put(e.getKey(), e.getValue()));
        return new JointChance(100.0 * all / draws, sorted, draws, 100.0 * moved / draws);
    }

    private static boolean keeps(Diet diet, DietRow row, double[] kg, Map<Integer, Made> made) {
        double sum = row.beside();
        double size = Math.abs(row.beside());
        for (var one : made.entrySet()) {
            double adds =
                    kg[one.getKey()] * row.law().perKg(diet.feeds().get(one.getKey()), one.getValue(), row.limit());
            sum += adds;
            size += Math.abs(adds);
        }
        double over = row.isRatio() ? sum : sum - row.limit();
        return (row.sense() == DietRow.Sense.AT_LEAST ? over : -over) >= -KEPT * Math.max(size, 1e-9);
    }

    private static boolean grows(Diet diet, double[] kg, Map<Integer, Made> made) {
        double u = 0;
        double v = 0;
        for (var one : made.entrySet()) {
            var feed = diet.feeds().get(one.getKey());
            u += kg[one.getKey()] * Diet.value(feed, one.getValue(), Analyte.NEM);
            v += kg[one.getKey()] * Diet.value(feed, one.getValue(), Analyte.NEG);
        }
        var energy = diet.growth().orElseThrow();
        return u > 0 && v > 0 && energy.nem() / u + energy.neg() / v <= 1 + KEPT;
    }

    /** One way that all feeds may be made, in standard normal values. */
    private record Way(List<double[]> own, Map<Shared, Double> shared) {
        static final Way NONE = new Way(List.of(), Map.of());

        static Way drawn(Diet diet, List<Integer> fed, Draws random) {
            var own = new ArrayList<double[]>();
            var shared = new TreeMap<Shared, Double>();
            for (int i : fed) {
                var lot = diet.feeds().get(i).lot();
                var values = new double[lot.map(LotDistribution::size).orElse(0)];
                for (int k = 0; k < values.length; k++) {
                    values[k] = random.normal();
                }
                own.add(values);
                lot.ifPresent(one -> one.shared().forEach(doubt -> shared.put(doubt, 0.0)));
            }
            shared.replaceAll((doubt, none) -> random.normal());
            return new Way(own, shared);
        }

        Way opposite() {
            var other = new ArrayList<double[]>();
            for (var values : own) {
                var turned = new double[values.length];
                for (int k = 0; k < turned.length; k++) {
                    turned[k] = -values[k];
                }
                other.add(turned);
            }
            var turned = new TreeMap<Shared, Double>();
            shared.forEach((doubt, value) -> turned.put(doubt, -value));
            return new Way(other, turned);
        }

        /** By index of the feed. */
        Map<Integer, Made> made(Diet diet, List<Integer> fed) {
            var made = new LinkedHashMap<Integer, Made>();
            for (int k = 0; k < fed.size(); k++) {
                var feed = diet.feeds().get(fed.get(k));
                var values = own.get(k);
                made.put(
                        fed.get(k),
                        feed.lot().<Made>map(lot -> lot.at(values, this::of)).orElse(feed.composition()));
            }
            return made;
        }

        private double of(Shared doubt) {
            return shared.getOrDefault(doubt, 0.0);
        }
    }
}
