package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.app.compute.shape.Nearest;
import haywright.cattle.cold.Coat;
import haywright.cattle.cold.ColdSystem;
import haywright.cattle.cold.Exposure;
import haywright.cattle.cold.Hide;
import haywright.cattle.herd.Group;
import haywright.diet.CheckedNeed;
import haywright.diet.Diet;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.LimitFeeding;
import haywright.diet.Mixing;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.outlook.HayFacts;
import haywright.quantity.Unit;
import haywright.ration.LeastCostRation;
import haywright.ration.LimitAnswer;
import haywright.ration.NoRation;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import haywright.ration.UsualMineral;
import haywright.workings.Caution;
import haywright.workings.Refused;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The cheapest ration for one head and day, or what stands in its way. */
public final class RationTopic {
    private RationTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "ration",
            "The cheapest ration for one head per day, or why there is none.",
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

            @Key(
                    words =
                            "Limits of practice that are switched off: straw, grain, forage, fat, distillers, ca_p, forage_floor, forage_least, mineral, grain_careful, mp, fast_starch, nem_two_feedings.")
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
                    value = Unit.MILLIGRAM_PER_LITER,
                    name = "water_no3_n",
                    words = "Nitrate of the water as nitrogen; 0 when not said.")
            OptionalDouble waterNitrate,

            @Key(
                    value = Unit.MILLIGRAM_PER_LITER,
                    name = "water_sulfate",
                    words = "Sulfate of the water; 0 when not said.")
            OptionalDouble waterSulfate,

            @Key(words = "How they are fed; put_out_daily when not said.") @Nullable
            WayOfFeeding feeding,

            @Key(words = "How many; what is at hand lasts so many of them.") @Nullable
            Integer head,

            @Key(
                    value = Unit.CELSIUS,
                    words =
                            "Of the day, in a wind of 5 mph, with a dry winter coat; without it the need is that of a mild day.")
            OptionalDouble temperature,

            @Key(value = Unit.PERCENT, words = "How surely every need is met; 50, on what is expected, when not said.")
            OptionalDouble sureness,

            @Key(words = "as_fed: portions worth handling and few feeds; continuous when not said.") @Nullable
            Kind answer,

            @Key(words = "The least forage that published advice has where hay is short.") @Nullable
            Boolean shortOfHay,

            @Key(words = "Whether the price is told at which each unused feed would come in as a portion.") @Nullable
            Boolean breakEven) {
        enum Kind {
            CONTINUOUS,
            AS_FED
        }

        private static final Set<String> CAN_BE_OFF = Set.of(
                "straw",
                "grain",
                "forage",
                "fat",
                "distillers",
                "ca_p",
                "forage_floor",
                "forage_least",
                "mineral",
                "grain_careful",
                "mp",
                "fast_starch",
                "nem_two_feedings");

        In {
            if (head != null && head < 1) {
                throw new Refused("head", head.toString(), "a group has one head or more", "How many are they?");
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
                            "feedLimits", limit.feed(), "the limit names no feed of the list", "Is it spelled alike?");
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
                    new DietOptions.Water(waterNitrate.orElse(0), waterSulfate.orElse(0)),
                    feeding == null ? WayOfFeeding.PUT_OUT_DAILY : feeding,
                    shortOfHay != null && shortOfHay,
                    shortOfHay == null || !shortOfHay);
        }
    }

    record Fed(
            String name,
            @Key(value = Unit.KILOGRAM, of = "dm") double eaten,
            @Key(value = Unit.KILOGRAM, name = "put_out") double putOut,
            @Key(value = Unit.POUND, name = "put_out") double putOutPounds,
            @Key(Unit.DOLLAR) double cost,

            @Key(words = "For all head; left out where head or bale is not given.")
            OptionalDouble balesADay,

            @Key(words = "What is at hand, for all head; left out where it or head is not given.")
            OptionalDouble lastsDays) {}

    record Bales(
            String name,
            int bales,
            @Key(value = Unit.POUND, name = "bale") double pounds) {}

    /** Whole bales for all head. */
    record WholeBales(
            @Key(words = "How many days they are for.") int days,
            List<Bales> feeds,

            @Key(value = Unit.DOLLAR, words = "Per head per day, all that is fed so.")
            double cost,

            @Key(words = "Whether they keep every limit.") boolean meetsEverything) {
        static WholeBales of(haywright.ration.WholeBales whole) {
            return new WholeBales(
                    whole.days(),
                    whole.bales().stream()
                            .map(b -> new Bales(
                                    b.feed().feed().name(), b.count(), Unit.KILOGRAM.to(Unit.POUND, b.kgEach())))
                            .toList(),
                    whole.mix().cost(),
                    whole.mix().meetsEverything());
        }
    }

    record Mineral(
            String name,

            @Key(value = Unit.OUNCE, words = "Per head per day, as fed.")
            double amount) {}

    record NotUsed(
            String name,
            @Key(Unit.DOLLAR_PER_TON) double price,

            @Key(value = Unit.DOLLAR_PER_TON, words = "The first bite of it.")
            double worthBuyingBelow,

            @Key(value = Unit.DOLLAR_PER_TON, words = "A portion worth handling; left out where not asked, or never.")
            OptionalDouble breakEven) {}

    record Limit(
            String id,
            String name,
            DietRow.Sense sense,
            double required,
            double supplied,
            String unit,

            @Key(value = Unit.DOLLAR, words = "Per head per day for one unit more.")
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
            @Key(value = Unit.DOLLAR, words = "Per head per day, feeding loss included.")
            double cost,

            @Key(Unit.KILOGRAM) double dmi,
            @Key(value = Unit.MCAL_PER_KG, of = "dm") double nem,
            @Key(value = Unit.PERCENT, of = "dm") double tdn,

            @Key(value = Unit.KILOGRAM, words = "Dry matter that they would eat of it free choice.")
            double expectedIntake,

            @Key(
                    value = Unit.PERCENT,
                    words = "Of the ways that its feeds may be made, that meet every need and keep every danger.")
            double jointChance,

            @Key(
                    value = Unit.PERCENT,
                    words = "How surely protein and minerals are met: as asked, or as these feeds allow.")
            double sureness,

            List<Fed> feeds,
            @Nullable Mineral mineral,

            @Key(words = "The same in whole bales; left out where nothing is baled or head is not given.") @Nullable
            WholeBales wholeBales,

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

            @Key(value = Unit.DOLLAR, words = "Per head per day of the cheapest ration with it.")
            double cost) {}

    record Test(
            String name,

            @Key(value = Unit.DOLLAR, words = "Per head per day of the cheapest ration, if its test finds no nitrate.")
            double cost) {}

    record NotMade(
            List<InTheWay> standsInTheWay,

            @Key(words = "Needs that these feeds cannot meet either, each by itself.")
            List<InTheWay> alsoShortOf,

            List<Lift> lifts,

            @Key(words = "Feeds of which a test alone would let a ration exist.")
            List<Test> tests,

            List<LeftOut> leftOut) {}

    record Out(@Nullable Made ration, @Nullable NotMade noRation) {}

    private static Answer<Out> ration(In in) {
        var weather =
                in.temperature.isEmpty() ? List.<Exposure>of() : List.of(onADryWinterDay(in.temperature.getAsDouble()));
        var need = Sent.in("requirement", () -> in.requirement.requirement(weather));
        LimitFeeding.check(
                in.options().way(), need, in.requirement.conditionScore().orElse(5));
        var feeds = UsualMineral.beside(Sent.each("feeds", in.feeds, RationFeeds.FeedIn::priced));
        var question = new LeastCostRation(
                feeds,
                need,
                in.options()
                        .withoutStraw(HayFacts.strawNotFor(
                                need.animals(), in.requirement.conditionScore().orElse(5), feeds)),
                Sureness.of(in.sureness.orElse(50)),
                in.answer == In.Kind.AS_FED ? LeastCostRation.Amounts.AS_FED : LeastCostRation.Amounts.EXACT);
        var answer = question.solve();
        var whole = answer instanceof Ration ration && in.head != null
                ? haywright.ration.WholeBales.of(question, ration, in.head, bales(in.feeds))
                : Optional.<haywright.ration.WholeBales>empty();
        return answer(
                answer,
                in.feeds,
                in.head,
                whole,
                feed -> answer instanceof Ration ration && in.breakEven != null && in.breakEven
                        ? question.breakEven(ration, feed)
                        : OptionalDouble.empty());
    }

    private static Map<String, Double> bales(List<RationFeeds.FeedIn> feeds) {
        var kg = new HashMap<String, Double>();
        feeds.forEach(feed -> feed.bale().ifPresent(each -> kg.put(feed.name(), each)));
        return kg;
    }

    private static Exposure onADryWinterDay(double temperature) {
        return new Exposure(temperature, 8, Coat.WINTER, Hide.DRY, false, ColdSystem.USUAL);
    }

    /** Of a group of a ranch. */
    public static Answer<Out> answer(Rations rations, Group group) {
        var answer = rations.ration(group);
        return answer(
                answer,
                List.of(),
                null,
                answer instanceof Ration ration ? rations.wholeBales(group, ration) : Optional.empty(),
                feed -> OptionalDouble.empty());
    }

    private static Answer<Out> answer(
            RationAnswer answer,
            List<RationFeeds.FeedIn> feeds,
            @Nullable Integer head,
            Optional<haywright.ration.WholeBales> whole,
            Function<PricedFeed, OptionalDouble> breakEven) {
        if (answer instanceof Ration ration) {
            var cautions = new ArrayList<>(cautions(ration.diet()));
            cautions.addAll(ration.cautions());
            return new Answer<>(
                    new Out(made(ration, feeds, head, whole, breakEven), null),
                    true,
                    List.of(ration.diet().need(), ration),
                    cautions);
        }
        var none = (NoRation) answer;
        return new Answer<>(
                new Out(null, notMade(none)), false, List.of(none.diet().need()), cautions(none.diet()));
    }

    private static Made made(
            Ration ration,
            List<RationFeeds.FeedIn> feeds,
            @Nullable Integer head,
            Optional<haywright.ration.WholeBales> whole,
            Function<PricedFeed, OptionalDouble> breakEven) {
        var fed = ration.portions().stream().map(p -> fed(p, feeds, head)).toList();
        var notUsed = ration.notUsed().stream()
                .map(n -> new NotUsed(
                        n.feed().feed().name(),
                        perTon(n.feed().pricePerKgAsFed()),
                        perTon(n.worthBuyingBelow()),
                        perTon(breakEven.apply(n.feed()))))
                .toList();
        return new Made(
                ration.cost(),
                ration.kg(),
                ration.dietNem(),
                ration.mean(Analyte.TDN),
                ration.diet().need().intake(ration.dietNem()).kilograms(),
                ration.chance().percent(),
                ration.sureness().othersPercent(),
                fed,
                mineral(ration),
                whole.map(WholeBales::of).orElse(null),
                notUsed,
                ration.limits().stream().map(Limit::of).toList(),
                ration.checked().stream().map(Checked::of).toList(),
                leftOut(ration.diet()));
    }

    private static Fed fed(Portion portion, List<RationFeeds.FeedIn> feeds, @Nullable Integer head) {
        double putOut = portion.kgPutOut();
        var bale = feeds.stream()
                .filter(f -> f.name().equals(portion.feed().feed().name()))
                .map(RationFeeds.FeedIn::bale)
                .findFirst()
                .orElse(OptionalDouble.empty());
        return new Fed(
                portion.feed().feed().name(),
                portion.kg(),
                putOut,
                Unit.KILOGRAM.to(Unit.POUND, putOut),
                portion.cost(),
                head == null || bale.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(putOut * head / bale.getAsDouble()),
                head == null || Double.isInfinite(portion.feed().kgAtHand())
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(portion.feed().kgAtHand() / (putOut * head)));
    }

    private static @Nullable Mineral mineral(Ration ration) {
        return ration.portions().stream()
                .filter(p -> p.feed().feed().isLooseMineral())
                .findFirst()
                .map(p -> new Mineral(p.feed().feed().name(), Unit.OUNCE.fromBase(p.kgPutOut())))
                .orElse(null);
    }

    private static OptionalDouble perTon(OptionalDouble perKg) {
        return perKg.isPresent() ? OptionalDouble.of(perTon(perKg.getAsDouble())) : perKg;
    }

    private static double perTon(double perKg) {
        return Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, perKg);
    }

    private static NotMade notMade(NoRation none) {
        var lifts = none.lifts().stream()
                .filter(NoRation.Lift::isPossible)
                .map(l -> new Lift(
                        l.row().id(), l.row().name(), l.to(), l.row().unit().symbol(), l.cost()))
                .toList();
        var tests = none.tests().stream()
                .map(t -> new Test(t.feed().name(), t.cost()))
                .toList();
        return new NotMade(inTheWay(none.conflicts()), inTheWay(none.also()), lifts, tests, leftOut(none.diet()));
    }

    private static List<InTheWay> inTheWay(List<NoRation.Conflict> conflicts) {
        return conflicts.stream()
                .map(c -> new InTheWay(
                        c.row().id(),
                        c.row().name(),
                        c.row().sense(),
                        c.row().limit(),
                        c.missing(),
                        c.row().unit().symbol()))
                .toList();
    }

    private static List<LeftOut> leftOut(Diet diet) {
        return diet.leftOut().stream()
                .map(l -> new LeftOut(l.feed().name(), l.danger(), l.why(), l.fix()))
                .toList();
    }

    private static List<Caution> cautions(Diet diet) {
        return diet.leftOut().stream()
                .filter(haywright.diet.LeftOut::danger)
                .map(l -> new Caution(l.why() + ". " + l.fix(), Source.judgment("what may hurt the cattle stays out")))
                .toList();
    }
}
