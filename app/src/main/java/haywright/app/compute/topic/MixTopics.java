package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.chance.Normal;
import haywright.quantity.Unit;
import haywright.ration.Mix;
import haywright.ration.PearsonSquare;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Mixes of anything with named values: two feeds by hand, or many at least cost. */
final class MixTopics {
    private MixTopics() {}

    static final List<Topic<?, ?>> ALL = List.of(
            new Topic<>(
                    "pearson-square",
                    "How two feeds are mixed to hit one target.",
                    SquareIn.class,
                    SquareOut.class,
                    """
                    {"target_pct":26,"feeds":[{"name":"cottonseed meal","pct":54},{"name":"barley","pct":8}],"batch":600}""",
                    MixTopics::square),
            new Topic<>(
                    "mix",
                    "The cheapest mix of feeds with named values, or why there is none.",
                    MixIn.class,
                    MixOut.class,
                    """
                    {"feeds":[{"name":"a","price":24.55,"values":{"protein":12,"oil":2.3}},\
                    {"name":"b","price":26.75,"values":{"protein":11.9,"oil":5.6}},\
                    {"name":"c","price":39,"values":{"protein":41.8,"oil":11.1}},\
                    {"name":"d","price":40.5,"values":{"protein":52.1,"oil":1.3}}],\
                    "limits":[{"value":"protein","at_least":21},{"value":"oil","at_least":5}]}""",
                    MixTopics::mix));

    record Content(String name, double pct) {}

    record SquareIn(
            @Key(Unit.PERCENT) double target,

            @Key(words = "Two, on the same basis as the target.")
            List<Content> feeds,

            @Key(words = "How much is mixed, in any unit of weight.")
            OptionalDouble batch) {
        SquareIn {
            if (feeds.size() != 2) {
                throw new Refused(
                        "feeds",
                        feeds.size() + " feeds",
                        "the square is for two feeds",
                        "For more, ask the topic mix.");
            }
        }
    }

    record SquareOut(
            @Key(Unit.PERCENT) List<Double> shares,
            @Nullable List<Double> amounts) {}

    private static Answer<SquareOut> square(SquareIn in) {
        var square = Sent.as(
                Map.of("a", "feeds[0].pct", "b", "feeds[1].pct"),
                () -> new PearsonSquare(in.target, in.feeds.get(0).pct, in.feeds.get(1).pct, in.batch.orElse(0)));
        var amounts = in.batch.isPresent() ? List.of(square.amountOfA(), square.amountOfB()) : null;
        return Answer.of(new SquareOut(List.of(square.shareOfA(), square.shareOfB()), amounts), square);
    }

    record MixFeed(
            String name,
            @Key(words = "For one unit of it.") double price,

            @Key(words = "Below 0 where such a thing can be, as a charge balance can.")
            Map<String, Double> values,

            @Key(words = "Standard deviations of its values; what is not in it is certain.") @Nullable
            Map<String, Double> sd) {}

    record Limit(String value, OptionalDouble atLeast, OptionalDouble atMost) {
        Limit {
            if (atLeast.isEmpty() && atMost.isEmpty()) {
                throw new Refused("value", value, "a limit has an end", "Add at_least or at_most.");
            }
        }
    }

    record FeedLimit(
            String feed,
            OptionalDouble atLeast,
            OptionalDouble atMost,
            @Key(Unit.PERCENT) OptionalDouble atLeastShare,
            @Key(Unit.PERCENT) OptionalDouble atMostShare) {}

    /** Amounts as large as wanted; without it the answer is shares of one whole. */
    enum Amounts {
        FREE
    }

    record MixIn(
            List<MixFeed> feeds,

            @Key(words = "On the mix's average; on its total when amounts are free.")
            List<Limit> limits,

            @Nullable List<FeedLimit> feedLimits,
            @Nullable Amounts amounts,

            @Key(words = "The sum of all amounts, when they are free.")
            OptionalDouble total,

            @Key(
                    value = Unit.PERCENT,
                    words = "How surely every limit on a value is kept; 50 (on averages) when not said.")
            OptionalDouble sureness,

            @Key(words = "The same in standard deviations, in place of sureness.")
            OptionalDouble z,

            @Key(words = "Between the same value of any two feeds; 0 when not said.")
            OptionalDouble correlation) {
        MixIn {
            if (sureness.isPresent() && z.isPresent()) {
                throw new Refused("z", "z and sureness", "both say how sure the mix is", "Leave one of them out.");
            }
            if (sureness.isPresent() && !(sureness.getAsDouble() >= 50 && sureness.getAsDouble() < 100)) {
                throw new Refused(
                        "sureness",
                        sureness.getAsDouble() + " %",
                        "a limit is kept surely from 50 % (on averages) to below 100 %",
                        "No mix is sure to the last case.");
            }
            if (total.isPresent() && amounts == null) {
                throw new Refused(
                        "total",
                        "a total of amounts that are not free",
                        "without free amounts the answer is shares of one whole",
                        "Add \"amounts\":\"free\", or leave total out.");
            }
        }

        private Mix.Sure sure() {
            double half = 50;
            double asked = sureness.orElse(half);
            return new Mix.Sure(z.orElse(asked == half ? 0 : Normal.quantile(asked / 100)), correlation.orElse(0));
        }
    }

    record Gets(String value, double gets, double dual) {}

    record Worth(String name, double worthBuyingBelow) {}

    record MixOut(
            OptionalDouble cost,
            @Key(Unit.PERCENT) @Nullable List<Double> shares,
            @Nullable List<Double> amounts,
            @Nullable List<Gets> limits,
            @Nullable List<Worth> feeds,

            @Key(words = "A smallest set of limits that no mix can keep together.") @Nullable
            List<String> standsInTheWay) {}

    private static Answer<MixOut> mix(MixIn in) {
        boolean free = in.amounts != null;
        var mix = new Mix(
                Sent.each(
                        "feeds",
                        in.feeds,
                        f -> new Mix.MixFeed(f.name, f.price, f.values, f.sd == null ? Map.of() : f.sd)),
                in.limits.stream()
                        .map(l -> new Mix.MixLimit(l.value, l.atLeast, l.atMost))
                        .toList(),
                in.feedLimits == null
                        ? List.of()
                        : in.feedLimits.stream()
                                .map(l -> new Mix.FeedLimit(l.feed, l.atLeast, l.atMost, l.atLeastShare, l.atMostShare))
                                .toList(),
                free,
                in.total,
                in.sure());
        var answer = mix.solve();
        if (answer instanceof Mix.Cheapest cheapest) {
            var worth = IntStream.range(0, in.feeds.size())
                    .mapToObj(i -> new Worth(in.feeds.get(i).name, cheapest.worthBuyingBelow()[i]))
                    .toList();
            return Answer.of(
                    new MixOut(
                            OptionalDouble.of(cheapest.cost()),
                            list(cheapest.sharesPct()),
                            free ? list(cheapest.amounts()) : null,
                            cheapest.limits().stream()
                                    .map(g -> new Gets(g.value(), g.gets(), g.dual()))
                                    .toList(),
                            worth,
                            null),
                    mix.workings(cheapest));
        }
        return new Answer<>(
                new MixOut(OptionalDouble.empty(), null, null, null, null, ((Mix.None) answer).standsInTheWay()),
                false,
                List.of(),
                List.of());
    }

    private static List<Double> list(double[] values) {
        return IntStream.range(0, values.length).mapToObj(i -> values[i]).toList();
    }
}
