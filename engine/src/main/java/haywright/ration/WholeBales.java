package haywright.ration;

import haywright.diet.DietBlock;
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
 * <p>Of every one to four days the first counts that keeps every limit at no more than a fiftieth over the ration; what is
 * fed beside the bales is worked out again for each. A small group gets one bale that lasts longer, up to two weeks.
 * Where whole bales keep not every limit, those that miss by the least share are taken, and {@link HandMix#limits} says
 * which.
 *
 * @param days how many days they are for
 * @param bales of each lot that is baled, in the ration's order
 * @param mix a head and day
 */
public record WholeBales(int days, List<Bales> bales, HandMix mix) {
    /** Of hay in rings; longer and more of it spoils (common practice, no source). */
    private static final int MOST_DAYS = 4;

    /** That one bale may last a small group (judgment). */
    private static final int LONGEST = 14;

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
     * @return empty where nothing of the ration is baled, or one bale would last longer than two weeks
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
        Tried best = null;
        for (int days : lasting(baled, head, baleKg)) {
            var tried = combinations(baled, head, days, baleKg).stream()
                    .map(bales -> tried(question, ration, judge, head, days, bales, baleKg))
                    .min(Comparator.comparingDouble(Tried::misses).thenComparingDouble(Tried::cost));
            if (tried.isPresent() && (best == null || isBetter(tried.get(), best))) {
                best = tried.get();
            }
            if (best != null && best.misses() == 0 && best.cost() <= (1 + DEARER) * ration.cost()) {
                break;
            }
        }
        return Optional.ofNullable(best).map(found -> found(question, found, baleKg));
    }

    /** Of a lot that lies in bales. */
    private static double kg(Map<String, Double> baleKg, String feed) {
        return Objects.requireNonNull(baleKg.get(feed));
    }

    private static boolean isBetter(Tried one, Tried other) {
        return one.misses() < other.misses() || one.misses() == other.misses() && one.cost() < other.cost();
    }

    /** One to four days, or as long as a bale lasts where that is longer. */
    private static List<Integer> lasting(List<Portion> baled, int head, Map<String, Double> baleKg) {
        double longest = baled.stream()
                .mapToDouble(p -> kg(baleKg, p.feed().feed().id()) / (p.kgPutOut() * head))
                .max()
                .orElse(0);
        if (longest <= MOST_DAYS) {
            return IntStream.rangeClosed(1, MOST_DAYS).boxed().toList();
        }
        return IntStream.rangeClosed((int) Math.floor(longest), (int) Math.ceil(longest))
                .filter(days -> days <= LONGEST)
                .boxed()
                .toList();
    }

    /** Of each lot the number of bales below and above what the ration has, and at least one. */
    private static List<Map<String, Integer>> combinations(
            List<Portion> baled, int head, int days, Map<String, Double> baleKg) {
        List<Map<String, Integer>> all = new ArrayList<>();
        all.add(Map.of());
        for (var portion : baled) {
            var id = portion.feed().feed().id();
            double exact = portion.kgPutOut() * head * days / kg(baleKg, id);
            int below = Math.max(1, (int) Math.floor(exact));
            int above = Math.max(1, (int) Math.ceil(exact));
            var longer = new ArrayList<Map<String, Integer>>();
            for (var so : all) {
                for (int count : below == above ? List.of(below) : List.of(below, above)) {
                    var next = new LinkedHashMap<>(so);
                    next.put(id, count);
                    longer.add(next);
                }
            }
            all = longer;
        }
        return all;
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
        var made = question.holding(ration, eaten).orElseGet(() -> ration.with(eaten));
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
