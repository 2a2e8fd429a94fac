package haywright.ration;

import haywright.diet.CheckedNeed;
import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.forage.FeedClass;
import haywright.lp.Range;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Amounts that somebody typed, judged by the same rows as a solved ration. A feed that the diet leaves out is judged
 * all the same, and said.
 *
 * @param portions what is fed
 * @param cost dollars a head and day
 * @param limits every row, the worst shortfall first
 * @param checked needs that decide nothing, by what is known of its feeds
 * @param notAllowed feeds in it that may not be fed
 */
public record HandMix(
        List<Portion> portions,
        double cost,
        List<LimitAnswer> limits,
        List<CheckedNeed> checked,
        List<haywright.diet.LeftOut> notAllowed) {
    public HandMix {
        portions = List.copyOf(portions);
        limits = List.copyOf(limits);
        checked = List.copyOf(checked);
        notAllowed = List.copyOf(notAllowed);
    }

    /** What decides: its cost, and what its feeds are worth to other groups or later; dollars a head and day. */
    public double weighed() {
        return portions.stream().mapToDouble(Portion::weighed).sum();
    }

    /** The same to the cent, as it is compared. */
    public double counted() {
        return Math.rint(100 * weighed()) / 100;
    }

    private static final Range ANY = new Range(0, Double.POSITIVE_INFINITY);

    /** @param kgPutOut as fed, a head and day, by feed id */
    public static HandMix judge(LeastCostRation question, Map<String, Double> kgPutOut) {
        var eatenOf = new LinkedHashMap<Feed, Double>();
        var portions = new ArrayList<Portion>();
        for (var feed : question.offered()) {
            double put = kgPutOut.getOrDefault(feed.feed().id(), 0.0);
            if (!(put >= 0) || !Double.isFinite(put)) {
                throw new Refused(
                        feed.feed().id(),
                        String.valueOf(put),
                        "an amount is zero or more",
                        "Enter pounds per head per day.");
            }
            if (put == 0) {
                continue;
            }
            double eaten = feed.eaten(put);
            portions.add(Portions.of(feed, eaten, ANY));
            eatenOf.put(feed.feed(), eaten);
        }
        var fed = List.copyOf(eatenOf.keySet());
        var diet = question.diet().judging(fed);
        var kg = diet.feeds().stream()
                .mapToDouble(feed -> eatenOf.getOrDefault(feed, 0.0))
                .toArray();
        return new HandMix(
                portions,
                portions.stream().mapToDouble(Portion::cost).sum(),
                limits(diet, kg),
                diet.checked(kg),
                diet.leftOut().stream().filter(l -> fed.contains(l.feed())).toList());
    }

    private static List<LimitAnswer> limits(Diet diet, double[] kg) {
        var limits = LimitAnswer.of(diet, kg);
        // of a feed that nobody tested no row of its danger can be told
        limits.removeIf(limit -> Double.isNaN(limit.supplied()));
        limits.sort(Comparator.comparing(LimitAnswer::isMet)
                .thenComparing(limit -> canHarm(limit) ? 0 : weight(limit.row().kind()))
                .thenComparingDouble(LimitAnswer::share));
        return limits;
    }

    /** What may hurt them is said first, good practice last. */
    private static int weight(DietRow.Kind kind) {
        return switch (kind) {
            case DANGER -> 0;
            case NEED -> 1;
            case CHOICE -> 2;
            case PRACTICE -> 3;
        };
    }

    /** What of it can kill: a danger that is not kept, or more grain than they can take. */
    public List<LimitAnswer> harms() {
        return limits.stream().filter(limit -> !limit.isMet() && canHarm(limit)).toList();
    }

    private static boolean canHarm(LimitAnswer limit) {
        var row = limit.row();
        return row.kind() == DietRow.Kind.DANGER
                || row.id().equals("grain")
                || row.id().equals("fast_starch");
    }

    /** As fed put out for a kg of dry matter eaten, over all of a kind; 1 where there is none of it. */
    public double putOutPerKg(FeedClass kind) {
        var of = portions.stream()
                .filter(p -> p.feed().feed().feedClass() == kind)
                .toList();
        double eaten = of.stream().mapToDouble(Portion::kg).sum();
        return eaten > 0 ? of.stream().mapToDouble(Portion::kgPutOut).sum() / eaten : 1;
    }

    public boolean meetsEverything() {
        return notAllowed.isEmpty() && limits.stream().allMatch(LimitAnswer::isMet);
    }
}
