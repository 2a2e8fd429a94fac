package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.compute.shape.Nearest;
import haywright.diet.CheckedNeed;
import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Mixing;
import haywright.quantity.Unit;
import haywright.ration.LeastCostRation;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The cheapest ration for one head and day, or what stands in its way. */
public final class RationTopic {
    private RationTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "ration",
            "The cheapest ration for one head and day, or what stands in its way.",
            In.class,
            Out.class,
            """
            {"requirement":{"class":"mature_cow","body_weight_lb":1300,"days_pregnant":220},\
            "feeds":[{"name":"meadow hay","feed_class":"grass_hay","price_usd_per_ton":140,"dm_pct":89,"cp_pct_dm":8.2,\
            "adf_pct_dm":40,"ndf_pct_dm":63,"feeding_loss_pct":15},\
            {"name":"alfalfa","feed_class":"alfalfa_hay","price_usd_per_ton":230,"dm_pct":88,"cp_pct_dm":19,\
            "adf_pct_dm":33,"ndf_pct_dm":43,"feeding_loss_pct":15},\
            {"name":"barley straw","feed_class":"barley_straw","price_usd_per_ton":70,"feeding_loss_pct":15}]}""",
            RationTopic::ration);

    record In(
            CattleTopics.AnimalIn requirement,
            List<RationFeeds.FeedIn> feeds,

            @Key(words = "Limits of practice that are switched off: straw, grain, forage, fat, distillers, ca_p.")
            @Nullable
            List<String> limitsOff,

            @Nullable List<RationFeeds.FeedLimit> feedLimits,

            @Key(words = "Over how many feedings a day grain is spread; 1 when not said.") @Nullable
            Integer grainFeedingsADay,

            @Key(
                    words =
                            "Whether a wagon mixes the feeds; only that dilutes nitrate. When not said, what needs one stays out.")
            @Nullable
            Boolean mixed,

            @Key(
                    value = Unit.MILLIGRAM_PER_LITRE,
                    name = "water_no3_n",
                    words = "Nitrate of the water as nitrogen; 0 when not said.")
            OptionalDouble waterNitrate,

            @Key(value = Unit.PERCENT, words = "Not built yet: refused.")
            OptionalDouble sureness) {
        private static final Set<String> CAN_BE_OFF = Set.of("straw", "grain", "forage", "fat", "distillers", "ca_p");

        In {
            if (sureness.isPresent()) {
                throw new Refused(
                        "sureness",
                        "a ration that is sure",
                        "spread and sureness are not built yet; a ration is worked out on averages",
                        "Leave it out.");
            }
            for (var off : limitsOff == null ? List.<String>of() : limitsOff) {
                if (!CAN_BE_OFF.contains(off)) {
                    throw new Refused(
                            "limitsOff",
                            off,
                            "no limit of practice has this name, or it is a danger and stays",
                            Nearest.to(off, CAN_BE_OFF)
                                    .map("Did you mean %s?"::formatted)
                                    .orElse("Leave it out."));
                }
            }
            for (var limit : feedLimits == null ? List.<RationFeeds.FeedLimit>of() : feedLimits) {
                if (feeds.stream().noneMatch(f -> f.name().equals(limit.feed()))) {
                    throw new Refused(
                            "feedLimits", limit.feed(), "the limit names no feed of the list", "Is it spelt alike?");
                }
            }
        }

        private DietOptions options() {
            return new DietOptions(
                    limitsOff == null ? Set.of() : Set.copyOf(limitsOff),
                    feedLimits == null
                            ? List.of()
                            : feedLimits.stream()
                                    .flatMap(l -> l.limits().stream())
                                    .toList(),
                    grainFeedingsADay == null ? 1 : grainFeedingsADay,
                    mixed == null ? Mixing.NOT_SAID : mixed ? Mixing.MIXES : Mixing.NO_MIXER,
                    waterNitrate.orElse(0));
        }
    }

    record Fed(
            String name,
            @Key(value = Unit.KILOGRAM, of = "dm") double eaten,
            @Key(value = Unit.KILOGRAM, name = "put_out") double putOut,
            @Key(value = Unit.POUND, name = "put_out") double putOutPounds,
            @Key(Unit.DOLLAR) double cost) {}

    record NotUsed(
            String name,
            @Key(Unit.DOLLAR_PER_TON) double price,
            @Key(Unit.DOLLAR_PER_TON) double worthBuyingBelow) {}

    record Limit(
            String id,
            String name,
            DietRow.Sense sense,
            double required,
            double supplied,
            String unit,

            @Key(value = Unit.DOLLAR, words = "A head and day for one unit more.")
            double price) {
        static Limit of(LimitAnswer answer) {
            var row = answer.row();
            return new Limit(
                    row.id(),
                    row.name(),
                    row.sense(),
                    row.limit(),
                    answer.supplied(),
                    row.unit().symbol(),
                    answer.price());
        }
    }

    record LeftOut(String name, boolean danger, String why, String fix) {}

    record Made(
            @Key(value = Unit.DOLLAR, words = "A head and day, feeding loss included.")
            double cost,

            @Key(Unit.KILOGRAM) double dmi,
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double nem,
            List<Fed> feeds,
            List<NotUsed> notUsed,
            List<Limit> limits,

            @Key(words = "Needs that decide nothing, since most feeds have no figure for them.")
            List<Checked> checked,

            List<LeftOut> leftOut) {}

    record Checked(
            String id,
            String name,
            double needed,

            @Key(words = "Where feeds without a figure bring none.")
            double least,

            @Key(words = "Where they bring all they can; left out where nothing bounds it.") @Nullable
            Double most,

            String unit,
            CheckedNeed.Verdict verdict,
            List<String> unknown) {
        static Checked of(CheckedNeed need) {
            return new Checked(
                    need.id(),
                    need.name(),
                    need.needed(),
                    need.least(),
                    Double.isFinite(need.most()) ? need.most() : null,
                    need.unit().symbol(),
                    need.verdict(),
                    need.unknown());
        }
    }

    record InTheWay(
            String id,
            String name,
            DietRow.Sense sense,
            double required,

            @Key(words = "How far the ration that misses least in all misses it.")
            double missing,

            String unit) {}

    record Lift(
            String id,
            String name,

            @Key(words = "Where a ration begins to exist, everything else kept.")
            double to,

            String unit,

            @Key(value = Unit.DOLLAR, words = "A head and day of the cheapest ration with it.")
            double cost) {}

    record NotMade(List<InTheWay> standsInTheWay, List<Lift> lifts, List<LeftOut> leftOut) {}

    record Out(@Nullable Made ration, @Nullable NotMade noRation) {}

    private static Answer<Out> ration(In in) {
        var need = in.requirement.requirement();
        var question = new LeastCostRation(
                in.feeds.stream().map(RationFeeds.FeedIn::priced).toList(), need, in.options());
        return answer(question.solve());
    }

    public static Answer<Out> answer(RationAnswer answer) {
        if (answer instanceof Ration ration) {
            var cautions = new ArrayList<>(cautions(ration.diet()));
            cautions.addAll(ration.cautions());
            return new Answer<>(
                    new Out(made(ration), null), true, List.of(ration.diet().need(), ration), cautions);
        }
        var none = (NoRation) answer;
        return new Answer<>(
                new Out(null, notMade(none)), false, List.of(none.diet().need()), cautions(none.diet()));
    }

    private static Made made(Ration ration) {
        var fed = ration.portions().stream()
                .map(p -> new Fed(
                        p.feed().feed().name(),
                        p.kg(),
                        p.kgPutOut(),
                        Unit.KILOGRAM.to(Unit.POUND, p.kgPutOut()),
                        p.cost()))
                .toList();
        var notUsed = ration.notUsed().stream()
                .map(n -> new NotUsed(
                        n.feed().feed().name(), perTon(n.feed().pricePerKgAsFed()), perTon(n.worthBuyingBelow())))
                .toList();
        return new Made(
                ration.cost(),
                ration.kg(),
                ration.dietNem(),
                fed,
                notUsed,
                ration.limits().stream().map(Limit::of).toList(),
                ration.checked().stream().map(Checked::of).toList(),
                leftOut(ration.diet()));
    }

    private static double perTon(double perKg) {
        return Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, perKg);
    }

    private static NotMade notMade(NoRation none) {
        var way = none.conflicts().stream()
                .map(c -> new InTheWay(
                        c.row().id(),
                        c.row().name(),
                        c.row().sense(),
                        c.row().limit(),
                        c.missing(),
                        c.row().unit().symbol()))
                .toList();
        var lifts = none.lifts().stream()
                .map(l -> new Lift(
                        l.row().id(), l.row().name(), l.to(), l.row().unit().symbol(), l.cost()))
                .toList();
        return new NotMade(way, lifts, leftOut(none.diet()));
    }

    private static List<LeftOut> leftOut(Diet diet) {
        return diet.leftOut().stream()
                .map(l -> new LeftOut(l.feed().name(), l.danger(), l.why(), l.fix()))
                .toList();
    }

    private static List<Caution> cautions(Diet diet) {
        return diet.leftOut().stream()
                .filter(haywright.diet.LeftOut::danger)
                .map(l -> new Caution(l.why() + ". " + l.fix(), Source.judgement("what may hurt the cattle stays out")))
                .toList();
    }
}
