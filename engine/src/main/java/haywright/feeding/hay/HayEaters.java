package haywright.feeding.hay;

import haywright.cattle.herd.Group;
import haywright.diet.Feed;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.feeding.Rations;
import haywright.forage.FeedClass;
import haywright.outlook.HayFacts;
import haywright.outlook.UsualPrices;
import haywright.outlook.Yard;
import haywright.ration.Allotment;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
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
    /** kg of hay for sale that is not bought: so little that it is none, and still a feed that can be missing. */
    private static final double NOT_BOUGHT = 1e-3;

    private static final String IN_MILK = " in milk";

    private final Rations rations;
    private final Yard yard;
    private final HayDates dates;
    private final List<PricedFeed> feeds;
    private final List<PricedFeed> bought;
    private final HayQuestions questions;
    private final Map<UUID, List<Day>> days = new LinkedHashMap<>();

    /**
     * @param from days after today
     * @param milkingShare of the group's head
     * @param held of the whole group: it eats from one wagon
     */
    private record Day(
            int from,
            int days,
            double milkingShare,
            HayQuestions.@Nullable Part dry,
            HayQuestions.@Nullable Part milking,
            LeastCostRation held) {
        HayQuestions.@Nullable Part part(boolean inMilk) {
            return inMilk ? milking : dry;
        }
    }

    HayEaters(Rations rations, HayDates dates) {
        this.rations = rations;
        this.dates = dates;
        yard = rations.yard();
        feeds = counted(yard);
        bought = bought(feeds);
        questions = new HayQuestions(rations, dates, feeds);
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

    HayQuestions questions() {
        return questions;
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

    private Stream<HayQuestions.Part> parts() {
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
        var now = questions.fedNow(group);
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
                    questions.part(group, t, false, asked, now),
                    questions.part(group, t, true, asked, now),
                    held));
        }
        return List.copyOf(all);
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

    private LeastCostRation asked(Group group, Day day, HayQuestions.Part part, boolean milking, HayPlan plan) {
        boolean stretched = HayFacts.isSturdy(group) && day.from() >= dates.changedOver();
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
        return HayQuestions.asked(question, offered, options);
    }

    private boolean isLimited(HayPlan plan, Group group, Day day, boolean milking) {
        return plan.limited()
                && !milking
                && HayFacts.isSturdy(group)
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
    Optional<HayQuestions.Part> part(Group group, int stretch, boolean milking) {
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
