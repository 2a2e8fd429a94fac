package haywright.ration;

import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A ration in whole bales: so many of each lot every so many days, and the rest of it weighed out beside them. Bales
 * times their weight, by the head and the days, are the pounds a head and day.
 *
 * <p>The first of one to seven days counts on which every feed comes within a tenth of the ration and every limit is kept at
 * no more than a fiftieth over its cost; what is fed beside the bales is worked out again for each, and stays as it is where
 * that would move it further. More than one lot is put out for a week at most, so that none is eaten before the other; one
 * alone may last a small group two. A feed that brings a danger nearer is never more than in the ration. Where no days keep every limit those
 * that miss by the least share are taken, and {@link HandMix#limits} says which; a danger is never missed. Where no days
 * come within a tenth there are no whole bales: the ration is weighed, or bales are peeled off.
 *
 * @param days how many days they are for
 * @param bales of each lot that is baled, in the ration's order
 * @param mix a head and day
 */
public record WholeBales(int days, List<Bales> bales, HandMix mix) {
    /** Of more than one lot (judgment). */
    private static final int MOST_DAYS = 7;

    /** That one bale may last a small group that gets one lot (judgment). */
    private static final int LONGEST = 14;

    /** Share of what the ration has of a feed, by which whole bales may be off it (judgment). */
    private static final double NEAR = 0.1;

    /** Of a danger's row, below which a feed brings it no nearer. */
    private static final double HAIR = 1e-9;

    private static final double DEARER = 0.02;

    /** Shares of a row that count as kept. */
    private static final double KEPT = 1e-6;

    public WholeBales {
        bales = List.copyOf(bales);
    }

    /** @param kgEach of one bale as fed */
    public record Bales(PricedFeed feed, int count, double kgEach) {}

    private record Tried(int days, Map<String, Integer> bales, Ration ration, double misses, double cost) {}

    /**
     * @param ration an answer to this question
     * @param baleKg of one bale as fed, by feed id; feeds that are not in it are no bales
     * @return empty where nothing of the ration is baled, or whole bales come not near it
     */
    public static Optional<WholeBales> of(
            LeastCostRation question, Ration ration, int head, Map<String, Double> baleKg) {
        var baled = ration.portions().stream()
                .filter(p -> baleKg.containsKey(p.feed().feed().id()))
                .toList();
        if (baled.isEmpty()) {
            return Optional.empty();
        }
        var judge = new DietBlock(ration.diet(), ration.sureness()).judge();
        WholeBales best = null;
        for (int days = 1; days <= MOST_DAYS || best == null && baled.size() == 1 && days <= LONGEST; days++) {
            int so = days;
            var whole = combinations(ration.diet(), baled, head, days, baleKg).stream()
                    .map(bales -> tried(question, ration, judge, head, so, bales, baleKg))
                    .min(Comparator.comparingDouble(Tried::misses).thenComparingDouble(Tried::cost))
                    .map(tried -> found(question, tried, baleKg))
                    .filter(WholeBales::isSafe);
            if (whole.isPresent() && (best == null || whole.get().isBetterThan(best))) {
                best = whole.get();
            }
            if (best != null && best.mix.meetsEverything() && best.mix.cost() <= (1 + DEARER) * ration.cost()) {
                break;
            }
        }
        return Optional.ofNullable(best);
    }

    private boolean isSafe() {
        return mix.limits().stream().noneMatch(limit -> limit.row().kind() == DietRow.Kind.DANGER && !limit.isMet());
    }

    private double misses() {
        return mix.limits().stream().mapToDouble(limit -> -limit.share()).max().orElse(0);
    }

    private boolean isBetterThan(WholeBales other) {
        double less = Math.max(0, misses()) - Math.max(0, other.misses());
        return less < -KEPT || less <= KEPT && mix.cost() < other.mix.cost();
    }

    /** Of a lot that lies in bales. */
    private static double kg(Map<String, Double> baleKg, String feed) {
        return Objects.requireNonNull(baleKg.get(feed));
    }

    /** Of each lot the numbers of bales next to what the ration has and near it; none where one lot has no such number. */
    private static List<Map<String, Integer>> combinations(
            Diet diet, List<Portion> baled, int head, int days, Map<String, Double> baleKg) {
        List<Map<String, Integer>> all = new ArrayList<>();
        all.add(Map.of());
        for (var portion : baled) {
            var id = portion.feed().feed().id();
            double exact = portion.kgPutOut() * head * days / kg(baleKg, id);
            boolean danger = isDanger(diet, portion.feed().feed());
            var counts = IntStream.of((int) Math.floor(exact), (int) Math.ceil(exact))
                    .distinct()
                    .filter(count ->
                            count > 0 && Math.abs(count - exact) <= NEAR * exact && (!danger || count <= exact))
                    .toArray();
            var longer = new ArrayList<Map<String, Integer>>();
            for (var so : all) {
                for (int count : counts) {
                    var next = new LinkedHashMap<>(so);
                    next.put(id, count);
                    longer.add(next);
                }
            }
            all = longer;
        }
        return all;
    }

    private static boolean isDanger(Diet diet, Feed feed) {
        return diet.rows().stream()
                .filter(row -> row.kind() == DietRow.Kind.DANGER)
                .anyMatch(row -> row.law().perKg(feed, feed.composition(), row.limit()) > HAIR);
    }

    private static Tried tried(
            LeastCostRation question,
            Ration ration,
            DietBlock.Judge judge,
            int head,
            int days,
            Map<String, Integer> bales,
            Map<String, Double> baleKg) {
        var eaten = new HashMap<String, Double>();
        for (var portion : ration.portions()) {
            var id = portion.feed().feed().id();
            var count = bales.get(id);
            if (count != null) {
                eaten.put(id, portion.feed().eaten(count * kg(baleKg, id) / (head * (double) days)));
            }
        }
        var made = question.holding(ration, eaten, NEAR).orElseGet(() -> ration.with(eaten));
        double misses = judge.misses(made.amounts());
        return new Tried(days, bales, made, misses > KEPT ? misses : 0, made.cost());
    }

    private static WholeBales found(LeastCostRation question, Tried found, Map<String, Double> baleKg) {
        var bales = found.ration().portions().stream()
                .filter(p -> found.bales().containsKey(p.feed().feed().id()))
                .map(p -> {
                    var id = p.feed().feed().id();
                    return new Bales(
                            p.feed(), Objects.requireNonNull(found.bales().get(id)), kg(baleKg, id));
                })
                .toList();
        return new WholeBales(
                found.days(),
                bales,
                Weighable.of(question, found.ration(), found.bales().keySet()));
    }
}
