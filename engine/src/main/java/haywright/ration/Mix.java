package haywright.ration;

import haywright.lp.ConeRow;
import haywright.lp.Infeasible;
import haywright.lp.LinearProgram;
import haywright.lp.Optimum;
import haywright.quantity.Unit;
import haywright.workings.Input;
import haywright.workings.Line;
import haywright.workings.Origin;
import haywright.workings.Problem;
import haywright.workings.Refused;
import haywright.workings.Source;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * The cheapest mix of anything with named values: a textbook diet, a mineral mix, a trade blend.
 *
 * @param feeds what may go in
 * @param limits on the named values: of the mix's average, or of the total where amounts are free
 * @param feedLimits on single feeds
 * @param amountsFree false: shares of one whole; true: amounts as large as wanted, limits are totals
 * @param total the sum of all amounts, where amounts are free and this is wanted
 * @param sure how surely the limits are kept; {@link Sure#NOT} on averages alone
 */
public record Mix(
        List<MixFeed> feeds,
        List<MixLimit> limits,
        List<FeedLimit> feedLimits,
        boolean amountsFree,
        OptionalDouble total,
        Sure sure) {
    private static final Source SOLVED = new Source(
            "linear programming: the least cost under every limit listed, solved exactly", Source.Known.ARITHMETIC);
    private static final double NO = Double.NEGATIVE_INFINITY;
    private static final double ANY = Double.POSITIVE_INFINITY;

    /**
     * @param price for one unit of it, 0 or more
     * @param sd standard deviations of its values; what is not in it is certain
     */
    public record MixFeed(String name, double price, Map<String, Double> values, Map<String, Double> sd) {
        public MixFeed {
            if (!(price >= 0)) {
                throw new Refused("price", String.valueOf(price), "a price is 0 or more", "What does it cost?");
            }
            values = Map.copyOf(values);
            sd = Map.copyOf(sd);
        }

        /** Whose values are certain. */
        public MixFeed(String name, double price, Map<String, Double> values) {
            this(name, price, values, Map.of());
        }
    }

    /**
     * @param z standard deviations that every limit on a value is kept with, 0 or more
     * @param correlation between the same value of any two feeds, 0 to 1
     */
    public record Sure(double z, double correlation) {
        public static final Sure NOT = new Sure(0, 0);

        public Sure {
            var problems = new ArrayList<Problem>();
            if (!(z >= 0) || z > MOST_Z) {
                problems.add(new Problem(
                        "z",
                        String.valueOf(z),
                        "a limit is kept with 0 to %.0f standard deviations".formatted(MOST_Z),
                        "0 is what is expected, right half the time; 1.645 is 95 times in 100."));
            }
            if (!(correlation >= 0 && correlation <= 1)) {
                problems.add(new Problem(
                        "correlation",
                        String.valueOf(correlation),
                        "the same value of two feeds goes together from 0 (not at all) to 1 (fully)",
                        "A number below 0 would make feeds cover for each other: nothing says so."));
            }
            Refused.unlessEmpty(problems);
        }
    }

    private static final double MOST_Z = 8;

    /** On averages. */
    public Mix(
            List<MixFeed> feeds,
            List<MixLimit> limits,
            List<FeedLimit> feedLimits,
            boolean amountsFree,
            OptionalDouble total) {
        this(feeds, limits, feedLimits, amountsFree, total, Sure.NOT);
    }

    public record MixLimit(String value, OptionalDouble atLeast, OptionalDouble atMost) {}

    /** Amounts in the mix's own units; shares in percent of the whole mix. */
    public record FeedLimit(
            String feed,
            OptionalDouble atLeast,
            OptionalDouble atMost,
            OptionalDouble atLeastSharePct,
            OptionalDouble atMostSharePct) {}

    public Mix {
        feeds = List.copyOf(feeds);
        limits = List.copyOf(limits);
        feedLimits = List.copyOf(feedLimits);
        Refused.unlessEmpty(problems(feeds, limits, feedLimits));
    }

    public sealed interface Answer permits Cheapest, None {}

    /**
     * @param amounts in feed order
     * @param sharesPct percent of the whole, in feed order
     * @param limits in limit order
     * @param worthBuyingBelow by feed, the price under which it comes in; its own price where it is in
     */
    public record Cheapest(
            double cost, double[] amounts, double[] sharesPct, List<Gets> limits, double[] worthBuyingBelow)
            implements Answer {
        @Override
        public boolean equals(Object o) {
            return this == o;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }

    /** @param dual change of the cost for one unit more of the limit that binds; zero where none does */
    public record Gets(String value, double gets, double dual) {}

    /** @param standsInTheWay a smallest set of limits that no mix can keep together */
    public record None(List<String> standsInTheWay) implements Answer {}

    public Answer solve() {
        var outcome = program().solve();
        if (outcome instanceof Optimum optimum) {
            return cheapest(optimum);
        }
        if (outcome instanceof Infeasible infeasible) {
            return new None(infeasible.why().names());
        }
        throw new IllegalStateException("no price is below 0, and yet there is no cheapest: " + outcome);
    }

    /** How the cost and each limited value come from the amounts. */
    public Worked workings(Cheapest answer) {
        return () -> {
            var lines = new ArrayList<Line>();
            lines.add(sum("cost", "price", MixFeed::price, answer, answer.cost()));
            for (int i = 0; i < limits.size(); i++) {
                var value = limits.get(i).value();
                lines.add(sum(
                        "value" + (i + 1),
                        value,
                        f -> f.values().getOrDefault(value, 0.0),
                        answer,
                        answer.limits().get(i).gets()));
            }
            return List.copyOf(lines);
        };
    }

    private Line sum(String symbol, String what, ToDoubleFunction<MixFeed> perUnit, Cheapest answer, double value) {
        var terms = new ArrayList<String>();
        var inputs = new ArrayList<Input>();
        for (int i = 0; i < feeds.size(); i++) {
            int n = i + 1;
            terms.add("c%d·x%<d".formatted(n));
            var name = feeds.get(i).name();
            inputs.add(new Input(
                    "c" + n, perUnit.applyAsDouble(feeds.get(i)), Unit.NONE, new Origin.Typed(what + " of " + name)));
            inputs.add(new Input(
                    "x" + n, answer.amounts()[i], Unit.NONE, new Origin.Typed(name + ", chosen by the solver")));
        }
        return new Line(symbol, String.join(" + ", terms), value, Unit.NONE, SOLVED, inputs);
    }

    public LinearProgram program() {
        var program = LinearProgram.minimize();
        var all = IntStream.range(0, feeds.size()).toArray();
        for (var feed : feeds) {
            program.column(feed.name(), feed.price(), 0, ANY);
        }
        for (var limit : limits) {
            var row = feeds.stream()
                    .mapToDouble(f -> f.values().get(limit.value()))
                    .toArray();
            program.row(
                    limit.value(), limit.atLeast().orElse(NO), limit.atMost().orElse(ANY), all, row);
            if (isDoubtful(limit.value())) {
                limit.atLeast()
                        .ifPresent(least -> program.convex(
                                limit.value() + " surely",
                                all,
                                cone(limit.value(), row, 1).withLimit(least)));
                limit.atMost()
                        .ifPresent(most -> program.convex(
                                limit.value() + " surely no more",
                                all,
                                cone(limit.value(), row, -1).withLimit(-most)));
            }
        }
        double whole = amountsFree ? total.orElse(Double.NaN) : 1;
        if (!Double.isNaN(whole)) {
            program.row(
                    "whole mix",
                    whole,
                    whole,
                    all,
                    feeds.stream().mapToDouble(f -> 1).toArray());
        }
        for (var limit : feedLimits) {
            int feed = index(limit.feed());
            if (limit.atLeast().isPresent() || limit.atMost().isPresent()) {
                program.row(
                        limit.feed() + " amount",
                        limit.atLeast().orElse(NO),
                        limit.atMost().orElse(ANY),
                        new int[] {feed},
                        new double[] {1});
            }
            limit.atLeastSharePct()
                    .ifPresent(pct -> program.row(limit.feed() + " share at least", 0, ANY, all, share(feed, pct)));
            limit.atMostSharePct()
                    .ifPresent(pct -> program.row(limit.feed() + " share at most", NO, 0, all, share(feed, pct)));
        }
        return program.build();
    }

    private Cheapest cheapest(Optimum optimum) {
        var amounts =
                IntStream.range(0, feeds.size()).mapToDouble(optimum::value).toArray();
        double sum =
                IntStream.range(0, amounts.length).mapToDouble(i -> amounts[i]).sum();
        var shares = IntStream.range(0, amounts.length)
                .mapToDouble(i -> sum == 0 ? 0 : 100 * amounts[i] / sum)
                .toArray();
        var duals = duals(optimum);
        var gets = IntStream.range(0, limits.size())
                .mapToObj(i -> new Gets(limits.get(i).value(), optimum.activity(i), duals[i]))
                .toList();
        var worth = IntStream.range(0, feeds.size())
                .mapToDouble(i -> feeds.get(i).price() - optimum.reducedCost(i))
                .toArray();
        return new Cheapest(optimum.objective(), amounts, shares, gets, worth);
    }

    private boolean isDoubtful(String value) {
        return sure.z() > 0 && feeds.stream().anyMatch(f -> f.sd().getOrDefault(value, 0.0) > 0);
    }

    /** One unknown moves all feeds together as far as they go together; the rest is each one's own. */
    private ConeRow cone(String value, double[] row, int sign) {
        var sd =
                feeds.stream().mapToDouble(f -> f.sd().getOrDefault(value, 0.0)).toArray();
        return new ConeRow(
                DoubleStream.of(row).map(v -> sign * v).toArray(),
                DoubleStream.of(sd)
                        .map(s -> s * Math.sqrt(1 - sure.correlation()))
                        .toArray(),
                new double[][] {
                    DoubleStream.of(sd)
                            .map(s -> s * Math.sqrt(sure.correlation()))
                            .toArray()
                },
                sure.z(),
                0);
    }

    /** Of each limit: its plain row, and the curved ones that keep it surely. */
    private double[] duals(Optimum optimum) {
        var duals = new double[limits.size()];
        int curve = 0;
        for (int i = 0; i < duals.length; i++) {
            duals[i] = optimum.dual(i);
            if (isDoubtful(limits.get(i).value())) {
                duals[i] += limits.get(i).atLeast().isPresent() ? optimum.price(curve++) : 0;
                duals[i] -= limits.get(i).atMost().isPresent() ? optimum.price(curve++) : 0;
            }
        }
        return duals;
    }

    /** The feed's share of the whole against the limit: positive when it is above. */
    private double[] share(int feed, double pct) {
        return IntStream.range(0, feeds.size())
                .mapToDouble(i -> (i == feed ? 1 : 0) - pct / 100)
                .toArray();
    }

    private int index(String feed) {
        for (int i = 0; i < feeds.size(); i++) {
            if (feeds.get(i).name().equals(feed)) {
                return i;
            }
        }
        throw new IllegalStateException(feed);
    }

    private static List<Problem> problems(List<MixFeed> feeds, List<MixLimit> limits, List<FeedLimit> feedLimits) {
        var problems = new ArrayList<Problem>();
        var names = new HashSet<String>();
        if (feeds.isEmpty()) {
            problems.add(new Problem("feeds", "none", "a mix needs at least one feed", "Enter the feeds."));
        }
        for (var feed : feeds) {
            if (!names.add(feed.name())) {
                problems.add(new Problem(
                        "feeds",
                        "“" + feed.name() + "” twice",
                        "each feed is listed once",
                        "Give the two other names."));
            }
            for (var limit : limits) {
                if (!feed.values().containsKey(limit.value())) {
                    problems.add(new Problem(
                            "values",
                            "no “%s” for “%s”".formatted(limit.value(), feed.name()),
                            "a value that is limited must be known of every feed",
                            "Put it in, as 0 if it has none."));
                }
            }
            feed.sd().forEach((value, sd) -> {
                if (!(sd >= 0) || !Double.isFinite(sd)) {
                    problems.add(new Problem(
                            "sd",
                            "%s of “%s” for “%s”".formatted(sd, value, feed.name()),
                            "a standard deviation is 0 or more",
                            "How far do two loads of it differ?"));
                } else if (!feed.values().containsKey(value)) {
                    problems.add(new Problem(
                            "sd",
                            "“%s” of “%s”".formatted(value, feed.name()),
                            "a standard deviation belongs to a value that is given",
                            "Put the value in, or leave its sd out."));
                }
            });
        }
        var limited = new HashSet<String>();
        for (var limit : limits) {
            if (!limited.add(limit.value())) {
                problems.add(new Problem(
                        "limits",
                        "“" + limit.value() + "” twice",
                        "each value is limited once",
                        "Put at least and at most into one limit."));
            }
        }
        for (var limit : feedLimits) {
            if (!names.contains(limit.feed())) {
                problems.add(new Problem(
                        "feedLimits",
                        "“" + limit.feed() + "”",
                        "the limit names no feed of the mix",
                        "Is it spelled alike?"));
            }
        }
        return problems;
    }
}
