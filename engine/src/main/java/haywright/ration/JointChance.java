package haywright.ration;

import haywright.chance.Draws;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.GrowthEnergy;
import haywright.diet.Law;
import haywright.forage.Analyte;
import haywright.forage.Made;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.Shared;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * How often a mix meets every need and keeps every danger at once, over the ways its feeds may be made: counted in draws
 * through the equations themselves, in pairs of opposite ones. What cattle choose to eat is left out: its own error would
 * drown everything else.
 *
 * @param percent in which all is kept
 * @param byRow percent in which each row is kept, by its id, the least sure first
 * @param draws how many were counted
 * @param movedPercent of draws in which something no feed can be was moved to what one can
 */
public record JointChance(double percent, Map<String, Double> byRow, int draws, double movedPercent) {
    /** Enough to tell 80 from 81 percent two times in three. */
    public static final int DRAWS = 6_000;

    private static final long SEED = 20_260_101;

    /** Shares of a limit that a row may miss and still counts as kept: what the solver's exactness leaves. */
    private static final double KEPT = 1e-6;

    public JointChance {
        byRow = Collections.unmodifiableMap(new LinkedHashMap<>(byRow));
    }

    /** @param kg dry matter eaten a head and day, in the diet's order */
    public static JointChance of(Diet diet, double[] kg) {
        return of(List.of(new Fed("", diet, kg)), DRAWS, SEED);
    }

    /** Of several groups at once: a lot that two of them eat is made in one way for both. */
    public static JointChance of(Map<String, Ration> groups) {
        var fed = new ArrayList<Fed>();
        groups.forEach((name, ration) -> fed.add(new Fed(name + "/", ration.diet(), ration.amounts())));
        return of(fed, DRAWS, SEED);
    }

    /** @param scope before the ids of its rows */
    @SuppressWarnings("ArrayRecordComponent")
    record Fed(String scope, Diet diet, double[] kg) {}

    static JointChance of(List<Fed> all, int draws, long seed) {
        var rows = new ArrayList<Kept>();
        var feeds = new LinkedHashMap<String, Feed>();
        for (var fed : all) {
            var eaten = new ArrayList<Integer>();
            for (int i = 0; i < fed.kg().length; i++) {
                if (fed.kg()[i] > 0) {
                    eaten.add(i);
                    feeds.putIfAbsent(
                            fed.diet().feeds().get(i).id(), fed.diet().feeds().get(i));
                }
            }
            fed.diet().rows().stream()
                    .filter(row -> row.law().counted() == Law.Counted.SURE)
                    .forEach(row -> rows.add(new Kept(fed.scope() + row.id(), made -> keeps(fed, eaten, row, made))));
            fed.diet()
                    .growth()
                    .ifPresent(energy ->
                            rows.add(new Kept(fed.scope() + GrowthRow.ID, made -> grows(fed, eaten, energy, made))));
        }
        var random = new Draws(seed);
        var kept = new int[rows.size()];
        int every = 0;
        int moved = 0;
        Way way = Way.NONE;
        for (int draw = 0; draw < draws; draw++) {
            way = draw % 2 == 0 ? Way.drawn(feeds.values(), random) : way.opposite();
            var made = way.made(feeds.values());
            moved += made.values().stream().anyMatch(m -> m instanceof LotDistribution.State s && s.moved()) ? 1 : 0;
            boolean whole = true;
            for (int r = 0; r < kept.length; r++) {
                boolean one = rows.get(r).in().test(made);
                kept[r] += one ? 1 : 0;
                whole &= one;
            }
            every += whole ? 1 : 0;
        }
        var by = new ArrayList<Map.Entry<String, Double>>();
        for (int r = 0; r < kept.length; r++) {
            by.add(Map.entry(rows.get(r).id(), 100.0 * kept[r] / draws));
        }
        by.sort(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()));
        var sorted = new LinkedHashMap<String, Double>();
        by.forEach(e -> sorted.put(e.getKey(), e.getValue()));
        return new JointChance(100.0 * every / draws, sorted, draws, 100.0 * moved / draws);
    }

    private record Kept(String id, Predicate<Map<String, Made>> in) {}

    private static boolean keeps(Fed fed, List<Integer> eaten, DietRow row, Map<String, Made> made) {
        double sum = row.beside();
        double size = Math.abs(row.beside());
        for (int i : eaten) {
            var feed = fed.diet().feeds().get(i);
            double adds = fed.kg()[i] * row.law().perKg(feed, of(made, feed), row.limit());
            sum += adds;
            size += Math.abs(adds);
        }
        double over = row.isRatio() ? sum : sum - row.limit();
        return (row.sense() == DietRow.Sense.AT_LEAST ? over : -over) >= -KEPT * Math.max(size, 1e-9);
    }

    private static boolean grows(Fed fed, List<Integer> eaten, GrowthEnergy energy, Map<String, Made> made) {
        double u = 0;
        double v = 0;
        for (int i : eaten) {
            var feed = fed.diet().feeds().get(i);
            u += fed.kg()[i] * Diet.value(feed, of(made, feed), Analyte.NEM);
            v += fed.kg()[i] * Diet.value(feed, of(made, feed), Analyte.NEG);
        }
        return u > 0 && v > 0 && energy.nem() / u + energy.neg() / v <= 1 + KEPT;
    }

    private static Made of(Map<String, Made> made, Feed feed) {
        return Objects.requireNonNull(made.get(feed.id()));
    }

    /** One way that all feeds may be made, in standard normal values; own ones by feed. */
    private record Way(Map<String, double[]> own, Map<Shared, Double> shared) {
        static final Way NONE = new Way(Map.of(), Map.of());

        static Way drawn(Collection<Feed> feeds, Draws random) {
            var own = new LinkedHashMap<String, double[]>();
            var shared = new TreeMap<Shared, Double>();
            for (var feed : feeds) {
                var values = new double[feed.lot().map(LotDistribution::size).orElse(0)];
                Arrays.setAll(values, k -> random.normal());
                own.put(feed.id(), values);
                feed.lot().ifPresent(lot -> lot.shared().forEach(doubt -> shared.put(doubt, 0.0)));
            }
            shared.replaceAll((doubt, none) -> random.normal());
            return new Way(own, shared);
        }

        Way opposite() {
            var other = new LinkedHashMap<String, double[]>();
            own.forEach((id, values) ->
                    other.put(id, Arrays.stream(values).map(z -> -z).toArray()));
            var turned = new TreeMap<Shared, Double>();
            shared.forEach((doubt, value) -> turned.put(doubt, -value));
            return new Way(other, turned);
        }

        Map<String, Made> made(Collection<Feed> feeds) {
            var made = new HashMap<String, Made>();
            for (var feed : feeds) {
                var values = Objects.requireNonNull(own.get(feed.id()));
                made.put(
                        feed.id(),
                        feed.lot()
                                .<Made>map(lot -> lot.at(values, doubt -> shared.getOrDefault(doubt, 0.0)))
                                .orElse(feed.composition()));
            }
            return made;
        }
    }
}
