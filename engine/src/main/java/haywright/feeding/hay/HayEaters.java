package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.need.GroupRequirement;
import haywright.cattle.need.Need;
import haywright.diet.DietOptions;
import haywright.diet.DietOptions.FeedLimit;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.GrainFed;
import haywright.diet.LeftOut;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Rations;
import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.outlook.UsualPrices;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The groups of a ranch until grass, as they are to be fed and with what is done where hay is short. Needs are met as
 * expected figures have them. Nobody gets straw, grain or cake that it does not get now, unless it cannot be fed without;
 * dry mature cows that are not thin do once that is decided.
 */
final class HayEaters {
    private static final List<Double> PARTS_OF_GAIN = List.of(0.5, 0.0);

    /** Of grain and cake as they get it now, tried in turn. */
    private static final double[] TIMES_NOW = {1, 1.5, 2, Double.POSITIVE_INFINITY};

    /** kg of hay for sale that is not bought: so little that it is none, and still a feed that can be missing. */
    private static final double NOT_BOUGHT = 1e-3;

    private static final String IN_MILK = " in milk";

    private final Rations rations;
    private final Yard yard;
    private final HayDates dates;
    private final List<PricedFeed> feeds;
    private final List<PricedFeed> bought;
    private final Map<UUID, List<Day>> days = new LinkedHashMap<>();

    /**
     * Some of a group in a stretch: those in milk, or the others.
     *
     * @param question of one head in the middle of the stretch, by careful limits where they leave a ration, and for less
     *     gain where the whole of it is out of reach
     * @param plain the same of the feeds that it gets as it is fed now
     * @param gain share of the wanted gain that is asked
     */
    record Part(LeastCostRation question, LeastCostRation plain, double gain) {}

    /**
     * @param from days after today
     * @param milkingShare of the group's head
     * @param held of the whole group: it eats from one wagon
     */
    private record Day(
            int from,
            int days,
            double milkingShare,
            @Nullable Part dry,
            @Nullable Part milking,
            LeastCostRation held) {
        @Nullable
        Part part(boolean inMilk) {
            return inMilk ? milking : dry;
        }
    }

    HayEaters(Rations rations, HayDates dates) {
        this.rations = rations;
        this.dates = dates;
        yard = rations.yard();
        feeds = counted(yard);
        bought = bought(feeds);
        yard.ranch().groups().values().forEach(group -> days.put(group.id(), days(rations.planned(group))));
    }

    /** Feeds of a ranch, without hay and silage of which nobody said how much there is. */
    static List<PricedFeed> counted(Yard yard) {
        return yard.feeds().stream()
                .filter(feed -> !feed.isHayOrSilage() || Double.isFinite(feed.kgAtHand()))
                .toList();
    }

    /** Of straw and cake that are put out. */
    private static final double BOUGHT_LOSS_PERCENT = 10;

    /** Straw and a protein cake at usual prices, each where the ranch lists none. */
    private static List<PricedFeed> bought(List<PricedFeed> feeds) {
        var all = new ArrayList<PricedFeed>();
        if (feeds.stream().noneMatch(PricedFeed::isStraw)) {
            all.add(UsualPrices.feed("Straw, bought", FeedClass.STRAW, BOUGHT_LOSS_PERCENT));
        }
        if (feeds.stream().noneMatch(HayEaters::isCake)) {
            all.add(UsualPrices.feed("Protein cake, bought", FeedClass.CAKE, BOUGHT_LOSS_PERCENT));
        }
        return List.copyOf(all);
    }

    static boolean isCake(PricedFeed feed) {
        return switch (feed.feed().feedClass()) {
            case PROTEIN_MEAL, DISTILLERS_GRAINS, BYPRODUCT_PROTEIN, CAKE, TUB -> true;
            default -> false;
        };
    }

    List<PricedFeed> feeds() {
        return feeds;
    }

    /** Hay and silage that some group may have. */
    List<PricedFeed> hay() {
        return hay(true);
    }

    /** Hay and silage that no group may have yet, such as an untested lot. */
    List<PricedFeed> leftOut() {
        return hay(false);
    }

    /** Of these what only a test of its nitrate keeps out. */
    List<PricedFeed> untested() {
        var safe = parts().flatMap(part -> part.question().diet().leftOut().stream())
                .flatMap(out -> out.ifFoundSafe().stream())
                .map(Feed::id)
                .collect(Collectors.toSet());
        return leftOut().stream()
                .filter(feed -> feed.own() && safe.contains(feed.feed().id()))
                .toList();
    }

    private Stream<Part> parts() {
        return days.values().stream()
                .flatMap(List::stream)
                .flatMap(day -> Stream.of(day.dry(), day.milking()))
                .filter(Objects::nonNull);
    }

    private List<PricedFeed> hay(boolean fed) {
        var used = parts().flatMap(part -> part.question().diet().feeds().stream())
                .map(Feed::id)
                .collect(Collectors.toSet());
        return feeds.stream()
                .filter(feed ->
                        feed.isHayOrSilage() && fed == used.contains(feed.feed().id()))
                .toList();
    }

    /** Feeds that are bought at a usual price since the ranch lists none like them. */
    List<PricedFeed> assumed() {
        return bought;
    }

    private List<Day> days(Group group) {
        var now = fedNow(group);
        var ends = dates.ends(group);
        var asked = new HashMap<Group, List<Allotment.Stretch>>();
        var whole = yard.stretches(group, ends);
        asked.put(group, whole);
        var all = new ArrayList<Day>();
        for (int t = 0; t < whole.size(); t++) {
            var question = whole.get(t).question();
            var held = new LeastCostRation(
                    Stream.concat(feeds.stream(), bought.stream()).toList(),
                    question.need(),
                    question.options(),
                    Sureness.EXPECTED,
                    LeastCostRation.Amounts.EXACT);
            all.add(new Day(
                    t == 0 ? 0 : ends.get(t - 1),
                    whole.get(t).days(),
                    question.need().milkingShare(),
                    part(group, t, false, asked, now),
                    part(group, t, true, asked, now),
                    held));
        }
        return List.copyOf(all);
    }

    private @Nullable Part part(
            Group group,
            int t,
            boolean milking,
            Map<Group, List<Allotment.Stretch>> stretches,
            Map<String, Double> now) {
        var less = lessAsked(group);
        for (int i = 0; i < less.size(); i++) {
            boolean isLast = i == less.size() - 1;
            var whole = stretches
                    .computeIfAbsent(less.get(i), one -> yard.stretches(one, dates.ends(group)))
                    .get(t)
                    .question();
            var need = whole.need() instanceof GroupRequirement of ? of.inMilk(milking) : Optional.<Need>empty();
            if (need.isEmpty()) {
                return null;
            }
            var may = mayHave(group, milking);
            var wished = new LeastCostRation(
                    may, need.get(), options(group, whole), sureness(group, whole), LeastCostRation.Amounts.EXACT);
            var careful = asked(wished, may, withoutVainWishes(wished));
            var loose = asked(careful, may, careful.options().withoutCare());
            boolean isPossible = careful.isPossible();
            if (isPossible || isLast || loose.isPossible()) {
                var question = isPossible ? careful : loose;
                double gain = group.gain().value() > 0
                        ? less.get(i).gain().value() / group.gain().value()
                        : 1;
                return new Part(question, plain(question, now), gain);
            }
        }
        return null;
    }

    /** The group, then with nothing to regain, then gaining less. */
    private static List<Group> lessAsked(Group group) {
        var holding = group.holding();
        return Stream.concat(
                        Stream.of(group, holding),
                        group.gain().value() > 0
                                ? PARTS_OF_GAIN.stream().map(part -> gaining(holding, part))
                                : Stream.of())
                .distinct()
                .toList();
    }

    /** Straw goes to dry mature cows in good condition, and to others as far as they get it now. */
    private List<PricedFeed> mayHave(Group group, boolean milking) {
        return feeds.stream()
                .filter(feed -> !feed.isStraw() || isSturdy(group) && !milking || strawNow(group, feed) > 0)
                .toList();
    }

    /** kg put out a head and day of a feed, where somebody said so. */
    private double strawNow(Group group, PricedFeed feed) {
        var now = yard.ranch().fedNow().get(group.id());
        var amount = now == null
                ? null
                : now.amounts().get(UUID.fromString(feed.feed().id()));
        return amount == null ? 0 : amount.in(Unit.KILOGRAM_A_DAY);
    }

    /** Whether a group that gets no straw by itself gets some now. */
    boolean getsStraw(Group group) {
        return !isSturdy(group) && feeds.stream().anyMatch(feed -> feed.isStraw() && strawNow(group, feed) > 0);
    }

    /**
     * Held to what they would eat, to straw that they get now and to what one feeding may have of grain. Thin cows
     * have hay before them all day.
     */
    private DietOptions options(Group group, LeastCostRation whole) {
        var usual = whole.options().atLeastHarm();
        boolean isFull = group.animals() == AnimalClass.MATURE_COW
                && !isSturdy(group)
                && usual.way() == WayOfFeeding.PUT_OUT_DAILY;
        var options = isFull ? usual.with(WayOfFeeding.FREE_CHOICE) : usual;
        var limits = new ArrayList<>(options.feedLimits());
        boolean grown = group.animals() != AnimalClass.GROWING;
        double grain = GrainFed.percentADay(options.grainFeedingsADay())
                / 100
                * whole.need().bodyWeight();
        for (var feed : feeds) {
            if (feed.isStraw() && !isSturdy(group)) {
                atMost(limits, feed, strawNow(group, feed));
            } else if (grown && feed.feed().feedClass() == FeedClass.GRAIN) {
                atMost(limits, feed, grain);
            }
        }
        return options.with(limits);
    }

    /** The tighter of two where the ranch has one in pounds; its own as a share of what they eat stands alone. */
    private static void atMost(List<FeedLimit> limits, PricedFeed feed, double kgPutOut) {
        var id = feed.feed().id();
        double most = kgPutOut;
        for (var limit : List.copyOf(limits)) {
            if (limit.feed().equals(id) && limit.sense() == DietRow.Sense.AT_MOST) {
                if (limit.per() != FeedLimit.Per.KG_PUT_OUT) {
                    return;
                }
                most = Math.min(most, limit.amount());
                limits.remove(limit);
            }
        }
        limits.add(new FeedLimit(id, DietRow.Sense.AT_MOST, FeedLimit.Per.KG_PUT_OUT, most, feed.putOut(1)));
    }

    /** A wish for what may not be fed, or is not there, cannot be kept: it would make every narrower question impossible. */
    private static DietOptions withoutVainWishes(LeastCostRation wished) {
        var fed = wished.diet().feeds().stream().map(Feed::id).collect(Collectors.toSet());
        return wished.options()
                .with(wished.options().feedLimits().stream()
                        .filter(limit -> limit.sense() == DietRow.Sense.AT_MOST || fed.contains(limit.feed()))
                        .toList());
    }

    /** Names of feeds that are wished for a group and may not be fed to it. */
    List<String> vainWishes(Group group) {
        var diet = rations.question(group).diet();
        return diet.leftOut().stream()
                .map(LeftOut::feed)
                .filter(feed -> diet.options().feedLimits().stream()
                        .anyMatch(limit -> limit.sense() == DietRow.Sense.AT_LEAST
                                && limit.feed().equals(feed.id())))
                .map(Feed::name)
                .toList();
    }

    private static Group gaining(Group group, double part) {
        return group.gaining(
                new Quantity(part * group.gain().value(), group.gain().unit()));
    }

    /**
     * Of what is not straw, grain or cake, and of these what they get now: as little more than that as they can be fed with,
     * all that the ranch lists where they cannot.
     */
    private LeastCostRation plain(LeastCostRation question, Map<String, Double> now) {
        var plain = question.offered().stream()
                .filter(feed -> !isBeside(feed) || now.containsKey(feed.feed().id()))
                .toList();
        for (double times : TIMES_NOW) {
            var limits = new ArrayList<>(question.options().feedLimits());
            plain.stream().filter(HayEaters::isBeside).forEach(feed -> {
                double most = times * now.getOrDefault(feed.feed().id(), 0.0);
                if (Double.isFinite(most) && question.offered().contains(feed)) {
                    atMost(limits, feed, most);
                }
            });
            var asked = asked(question, plain, question.options().with(limits));
            if (asked.isPossible()) {
                return asked;
            }
        }
        var withoutStraw = asked(
                question,
                question.offered().stream()
                        .filter(feed ->
                                !feed.isStraw() || now.containsKey(feed.feed().id()))
                        .toList(),
                question.options());
        return withoutStraw.isPossible() ? withoutStraw : question;
    }

    /** What goes beside hay and is no mineral. */
    static boolean isBeside(PricedFeed feed) {
        return !feed.isHayOrSilage() && !feed.feed().isLooseMineral();
    }

    static LeastCostRation asked(LeastCostRation question, List<PricedFeed> feeds, DietOptions options) {
        return new LeastCostRation(feeds, question.need(), options, question.sureness(), LeastCostRation.Amounts.EXACT);
    }

    /** As expected, and of growing cattle protein as surely as at any time: what they miss of it they never make up. */
    private static Sureness sureness(Group group, LeastCostRation whole) {
        return group.animals() == AnimalClass.GROWING ? whole.sureness().ofOthers() : Sureness.EXPECTED;
    }

    /** kg put out of each feed as a group is fed now, or without an end by its ration where nobody said. */
    private Map<String, Double> fedNow(Group group) {
        var amounts = new HashMap<String, Double>();
        var now = yard.ranch().fedNow().get(group.id());
        if (now != null && !now.amounts().isEmpty()) {
            now.amounts().forEach((feed, amount) -> amounts.put(feed.toString(), amount.in(Unit.KILOGRAM_A_DAY)));
        } else if (rations.ration(group) instanceof Ration ration) {
            ration.portions().forEach(p -> amounts.put(p.feed().feed().id(), Double.POSITIVE_INFINITY));
        }
        return amounts;
    }

    /** Mature cows in good condition: the only cattle whose hay is stretched. */
    static boolean isSturdy(Group group) {
        return group.animals() == AnimalClass.MATURE_COW && group.conditionScore() >= HayFacts.value("thin");
    }

    /** Every group with what is done: those in milk apart. */
    List<Allotment.Eater> with(HayPlan plan) {
        var heads = new HayHeads(yard, dates, plan);
        var eaters = new ArrayList<Allotment.Eater>();
        for (var group : yard.ranch().groups().values()) {
            for (boolean milking : new boolean[] {false, true}) {
                var stretches = new ArrayList<Allotment.Stretch>();
                for (var day : days.getOrDefault(group.id(), List.of())) {
                    int there = heads.there(group, day.from(), day.milkingShare(), milking);
                    stretches.add(stretch(group, day, milking, plan, there));
                }
                eaters.add(new Allotment.Eater(id(group, milking), group.head(), stretches));
            }
        }
        return eaters;
    }

    static String id(Group group, boolean milking) {
        return group.id() + (milking ? IN_MILK : "");
    }

    private Allotment.Stretch stretch(Group group, Day day, boolean milking, HayPlan plan, int there) {
        var part = day.part(milking);
        if (part == null || there == 0) {
            return new Allotment.Stretch(day.days(), day.held(), 0, null, null);
        }
        var question = asked(group, day, part, milking, plan);
        return new Allotment.Stretch(
                day.days(),
                question,
                (double) there / group.head(),
                day.held(),
                question.options().shortOfHay() ? day.held() : null);
    }

    private LeastCostRation asked(Group group, Day day, Part part, boolean milking, HayPlan plan) {
        boolean stretched = isSturdy(group) && day.from() >= dates.changedOver();
        boolean straw = plan.straw() && stretched && !milking;
        boolean grained = plan.limited() && stretched && milking;
        boolean limited = isLimited(plan, group, day, milking);
        var question = straw || grained ? part.question() : part.plain();
        var options = question.options();
        if (limited || grained) {
            options = options.with(
                    options.way() == WayOfFeeding.FREE_CHOICE ? WayOfFeeding.PUT_OUT_DAILY : options.way());
            options = limited ? options.whereHayIsShort() : options.without("grain_careful");
        }
        var offered = Stream.concat(question.offered().stream(), straw ? bought.stream() : Stream.empty())
                .map(feed -> plan.bought() || feed.own() || !feed.isHayOrSilage() ? feed : feed.atHand(NOT_BOUGHT))
                .map(feed -> canHaveRings(group) ? putOut(feed, limited, plan.rings()) : feed)
                .toList();
        return asked(question, offered, options);
    }

    private boolean isLimited(HayPlan plan, Group group, Day day, boolean milking) {
        return plan.limited()
                && !milking
                && isSturdy(group)
                && day.from() >= dates.changedOver()
                && dates.mayLimit(group);
    }

    boolean isLimited(HayPlan plan, Group group, int stretch, boolean milking) {
        return isLimited(plan, group, day(group, stretch), milking);
    }

    /** Limited hay goes out a day at a time where all eat at once, which no ring allows. */
    private static PricedFeed putOut(PricedFeed feed, boolean limited, boolean rings) {
        double loss =
                limited ? HayFacts.value("day_loss") : rings ? HayFacts.value("ring_loss") : feed.feedingLossPercent();
        boolean baled = feed.feed().feedClass().isHay() || feed.isStraw();
        return baled && feed.feedingLossPercent() > loss ? feed.losing(loss) : feed;
    }

    /** What a mixer lays before them lies in no ring. */
    boolean canHaveRings(Group group) {
        var wish = yard.ranch().wishes().get(group.id());
        var way = wish == null ? null : wish.way();
        return way != WayOfFeeding.BUNK
                && (way != null || !yard.ranch().outfit().mixing().mixes());
    }

    /** What is asked of one head, of those in milk or the others; empty where there are none. */
    Optional<Part> part(Group group, int stretch, boolean milking) {
        return Optional.ofNullable(day(group, stretch).part(milking));
    }

    private Day day(Group group, int stretch) {
        return days.getOrDefault(group.id(), List.of()).get(stretch);
    }

    /** Days after today on which a stretch begins. */
    int begins(Group group, int stretch) {
        return day(group, stretch).from();
    }

    int days(Group group, int stretch) {
        return day(group, stretch).days();
    }

    int stretches(Group group) {
        return days.getOrDefault(group.id(), List.of()).size();
    }
}
