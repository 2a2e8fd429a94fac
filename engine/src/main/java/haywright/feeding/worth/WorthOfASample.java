package haywright.feeding.worth;

import haywright.chance.Draws;
import haywright.diet.Diet;
import haywright.diet.Feed;
import haywright.feeding.Rations;
import haywright.feeding.worth.Consequence.Figures;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.Made;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lot.LotDistribution;
import haywright.forage.lot.LotEstimate;
import haywright.forage.lot.NextReport;
import haywright.forage.lot.Shared;
import haywright.outlook.LotSubject;
import haywright.outlook.LotTests;
import haywright.outlook.SameHay;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.ration.PricedFeed;
import haywright.sampling.Costs;
import haywright.sampling.Design;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What one more composite of a lot is worth before it is taken: what feeding until grass is expected to come to as it is
 * decided now, less what it is expected to come to decided after the result, less the price of the sample.
 *
 * <p>The result is drawn as it would likely read, given all reports so far; each result moves the lot's estimate as a
 * true report would, and so what may be fed. Each way to feed a group is the cheapest by what some of these results say;
 * the one that comes to the least on average is taken, now over all results, afterward for each. What a way comes to is
 * averaged over how all feeds may be made, the same ways for every result, so that a result that moves nothing is worth
 * nothing. A way that a result forbids comes to no less than the best that it allows: danger costs what the lot frees.
 *
 * <p>A lot that a danger keeps from all cattle is decided on for the whole winter: a result that lets it in is worth what the
 * plan of the winter then comes to less.
 *
 * <p>No more of the lot counts than lies there. A laboratory's own TDN stays where it is printed: of a lot that is fed by
 * it one more sample tells protein and minerals, not energy.
 *
 * @param worthUsd dollars for all groups until grass, the price taken off
 * @param lowUsd the draws leave it above that 19 times in 20
 * @param highUsd and below that 19 times in 20
 * @param priceUsd of the sample: laboratory, and a person's time
 * @param truthUsd what knowing the truth of everything fed would be worth, its price aside
 */
public record WorthOfASample(double worthUsd, double lowUsd, double highUsd, double priceUsd, double truthUsd) {
    /** Results drawn, in pairs of opposite ones. */
    private static final int RESULTS = 64;

    /** Ways that the feeds may be made, in pairs, for each result. */
    private static final int WAYS = 32;

    private static final long SEED = 20_260_201;

    /** Dollars of a winter that are the solver's exactness. */
    private static final double NOTHING = 1;

    private static final double IN_TWENTY = 1.645;

    /** What is asked of a lot that nobody tested: protein, fiber and the minerals that laboratories sell together. */
    private static final Set<Analyte> USUAL =
            EnumSet.of(Analyte.CP, Analyte.ADF, Analyte.NDF, Analyte.CA, Analyte.P, Analyte.MG, Analyte.K);

    /**
     * By the usual seed.
     *
     * @throws Refused where nobody has said when grass comes
     */
    public static WorthOfASample of(Rations rations, Lot lot) {
        return of(rations, lot, SEED);
    }

    /** @param seed the same seed gives the same figures */
    public static WorthOfASample of(Rations rations, Lot lot, long seed) {
        var turnout = rations.ranch().turnout();
        if (turnout == null || !turnout.isAfter(rations.day())) {
            throw new Refused(
                    "turnout",
                    turnout == null ? "not said" : turnout.toString(),
                    "what a sample is worth is counted until turnout, and turnout comes after today",
                    "Enter the turnout date in the ranch settings.");
        }
        var price = price(lot);
        var estimate = rations.yard().composition(lot).estimate();
        return estimate.isEmpty() || looked(rations, lot).isEmpty()
                ? new WorthOfASample(-price, -price, -price, price, 0)
                : new Weighing(rations, lot, estimate.get(), rations.day().until(turnout, ChronoUnit.DAYS), seed)
                        .worth(price);
    }

    private static double price(Lot lot) {
        int units = LotSubject.of(lot).units();
        int taken = units == 0 ? LotTests.CORES_WITHOUT_SHEET : Math.min(units, LotTests.CORES_WITHOUT_SHEET);
        return Costs.usual(LotSubject.material(lot)).of(Design.of(taken, 1, 1));
    }

    /** What is tested: what was tested last, or the usual; and nitrate where it is a danger that nobody tested. */
    private static Set<Analyte> looked(Rations rations, Lot lot) {
        var all = EnumSet.noneOf(Analyte.class);
        var made = rations.yard().composition(lot);
        var estimate = made.estimate();
        if (estimate.isEmpty()) {
            return all;
        }
        var tested = estimate.get().tested();
        if (tested.isEmpty()) {
            all.addAll(USUAL);
        } else {
            all.addAll(tested.get(tested.size() - 1).values().keySet());
        }
        if (lot.isNitrateDanger() && !made.composition().knows(Analyte.NO3N)) {
            all.add(Analyte.NO3N);
        }
        all.remove(Analyte.DM);
        all.removeIf(analyte -> estimate.get().prior().index(analyte) < 0);
        return all;
    }

    /** One weighing; used once. */
    private static final class Weighing {
        private final Rations rations;
        private final Lot lot;
        private final String id;
        private final LotEstimate estimate;
        private final long days;
        private final Draws random;

        private record Group(Consequence of, double headDays) {}

        Weighing(Rations rations, Lot lot, LotEstimate estimate, long days, long seed) {
            this.rations = rations;
            this.lot = lot;
            this.id = lot.id().toString();
            this.estimate = estimate;
            this.days = days;
            random = new Draws(seed);
        }

        WorthOfASample worth(double price) {
            var groups = new ArrayList<Group>();
            for (var group : rations.ranch().groups().values()) {
                Consequence.of(rations.question(group))
                        .filter(c -> c.kgAtHand(id).isPresent())
                        .ifPresent(c -> groups.add(new Group(c, group.head() * (double) days)));
            }
            var saved = new double[RESULTS];
            double truth = 0;
            double used = 0;
            if (!groups.isEmpty()) {
                var results = results();
                var offered = groups.get(0).of.question().offered();
                var letIn = lettingIn();
                if (letIn.isPresent()) {
                    Arrays.setAll(saved, k -> isAllowed(groups, results.get(k)) ? letIn.getAsDouble() : 0);
                    return worth(saved, price, Math.max(0, letIn.getAsDouble()));
                }
                var ways = ways(offered, results);
                for (var group : groups) {
                    var decided = new Decided(group.of, id, results, ways);
                    for (int k = 0; k < RESULTS; k++) {
                        saved[k] += group.headDays * decided.saved[k];
                    }
                    truth += group.headDays * decided.truth;
                    used += group.headDays * decided.mostUsed;
                }
                double atHand = groups.get(0).of.kgAtHand(id).orElse(0);
                double reaches = used > atHand ? atHand / used : 1;
                Arrays.setAll(saved, k -> reaches * saved[k]);
                truth *= reaches;
            }
            return worth(saved, price, truth);
        }

        /**
         * Dollars until grass that the plan of the winter comes to less once the lot may be fed; empty where it may be fed
         * already.
         */
        private OptionalDouble lettingIn() {
            return rations.plan()
                    .filter(plan -> plan.isKeptOut(id))
                    .map(plan -> plan.plan().cost()
                            - plan.cleared(rations.yard(), id).plan().cost())
                    .map(saves -> OptionalDouble.of(saves < NOTHING ? 0 : saves))
                    .orElse(OptionalDouble.empty());
        }

        private boolean isAllowed(List<Group> groups, Feed result) {
            return groups.stream().anyMatch(group -> {
                var offered = group.of.with(id, Optional.of(result));
                return Diet.of(
                                offered.stream().map(PricedFeed::feed).toList(),
                                group.of.question().need(),
                                group.of.question().options())
                        .feeds()
                        .stream()
                        .anyMatch(feed -> feed.id().equals(id));
            });
        }

        private static WorthOfASample worth(double[] saved, double price, double truth) {
            var pairs = IntStream.range(0, RESULTS / 2)
                    .mapToDouble(p -> (saved[2 * p] + saved[2 * p + 1]) / 2)
                    .toArray();
            double mean = DoubleStream.of(pairs).average().orElse(0);
            double squares =
                    DoubleStream.of(pairs).map(s -> (s - mean) * (s - mean)).sum();
            double half = IN_TWENTY * Math.sqrt(squares / (pairs.length - 1) / pairs.length);
            return new WorthOfASample(
                    mean - price, Math.max(0, mean - half) - price, mean + half - price, price, truth);
        }

        /** The lot as each result would have it. */
        private List<Feed> results() {
            var ranch = rations.ranch();
            var asked = looked(rations, lot);
            var placeholders = new HashMap<Analyte, Double>();
            for (var analyte : asked) {
                var cell = estimate.prior().cells().get(estimate.prior().index(analyte));
                placeholders.put(
                        analyte,
                        estimate.estimate(analyte)
                                .map(e -> e.now().center())
                                .orElse(cell.marginal().center()));
            }
            var next = estimate.next(LotTests.tested(ranch, lot, report(placeholders)));
            var feeds = new ArrayList<Feed>();
            for (var values : drawn(next)) {
                feeds.add(Yard.feed(lot, Yard.composition(ranch.with(report(values)), lot)));
            }
            return feeds;
        }

        private List<Map<Analyte, Double>> drawn(NextReport next) {
            var all = new ArrayList<Map<Analyte, Double>>();
            var z = new double[next.size()];
            for (int k = 0; k < RESULTS; k++) {
                if (k % 2 == 0) {
                    Arrays.setAll(z, i -> random.normal());
                } else {
                    Arrays.setAll(z, i -> -z[i]);
                }
                all.add(next.at(z));
            }
            return all;
        }

        /** By the laboratory of the last one and its methods; taken by a plan, after all others. */
        private LabReport report(Map<Analyte, Double> values) {
            var counted = SameHay.counted(rations.ranch(), lot.id());
            var last = counted.isEmpty() ? null : counted.get(counted.size() - 1);
            var day = counted.stream()
                    .flatMap(report ->
                            Stream.of(Optional.ofNullable(report.sampled()), Optional.ofNullable(report.reported())))
                    .flatMap(Optional::stream)
                    .max(Comparator.naturalOrder())
                    .map(newest -> newest.plusDays(1))
                    .orElse(rations.day());
            return report(values, last, day);
        }

        private LabReport report(Map<Analyte, Double> values, @Nullable LabReport last, LocalDate day) {
            var readings = new ArrayList<Reading>();
            for (var analyte : looked(rations, lot)) {
                var value = values.get(analyte);
                if (value != null) {
                    readings.add(new Reading(
                            analyte,
                            value,
                            analyte.unit(),
                            Basis.DRY_MATTER,
                            last == null ? null : last.methods().get(analyte)));
                }
            }
            return new LabReport(
                    new UUID(0, 0),
                    lot.id(),
                    last == null ? "" : last.laboratory(),
                    "",
                    day,
                    day,
                    LabReport.HowSampled.PLAN,
                    readings,
                    List.of(),
                    last == null ? null : last.method(),
                    List.of());
        }

        /** For each result and each way, what counts of every feed offered; the same ways for every result. */
        private Figures[][] ways(List<PricedFeed> offered, List<Feed> results) {
            var made = new Figures[results.size()][WAYS];
            int at = IntStream.range(0, offered.size())
                    .filter(i -> offered.get(i).feed().id().equals(id))
                    .findFirst()
                    .orElseThrow();
            int sign = 1;
            Map<String, double[]> own = Map.of();
            Map<Shared, Double> shared = Map.of();
            for (int j = 0; j < WAYS; j++) {
                if (j % 2 == 0) {
                    own = new HashMap<>();
                    shared = new TreeMap<>();
                }
                sign = j % 2 == 0 ? 1 : -1;
                var figures = Figures.of(offered.size());
                for (int i = 0; i < offered.size(); i++) {
                    figures.set(i, offered.get(i), way(offered.get(i).feed(), own, shared, sign));
                }
                for (int k = 0; k < results.size(); k++) {
                    var feed = offered.get(at).madeOf(results.get(k));
                    made[k][j] = figures.with(at, feed, way(feed.feed(), own, shared, sign));
                }
            }
            return made;
        }

        private Made way(Feed feed, Map<String, double[]> own, Map<Shared, Double> shared, int sign) {
            if (feed.lot().isEmpty()) {
                return feed.composition();
            }
            LotDistribution lotOf = feed.lot().get();
            var z = own.computeIfAbsent(
                    feed.id(),
                    one -> IntStream.range(0, lotOf.size())
                            .mapToDouble(i -> random.normal())
                            .toArray());
            ToDoubleFunction<Shared> doubts = doubt -> sign * shared.computeIfAbsent(doubt, one -> random.normal());
            return lotOf.at(sign > 0 ? z : DoubleStream.of(z).map(x -> -x).toArray(), doubts);
        }
    }
}
