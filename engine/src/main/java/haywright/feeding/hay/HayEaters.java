package haywright.feeding.hay;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.DietOptions;
import haywright.diet.DietOptions.FeedLimit;
import haywright.diet.DietRow;
import haywright.diet.Feed;
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
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The groups of a ranch until grass, as they are to be fed and with what is done where hay is short. Needs are met as
 * expected figures have them. Nobody gets straw, grain or cake that it does not get now, unless it cannot be fed without;
 * dry mature cows that are not thin do once that is decided.
 */
final class HayEaters {
    private static final double[] PARTS_OF_GAIN = {1, 0.5, 0};

    /** Of grain and cake as they get it now, tried in turn. */
    private static final double[] TIMES_NOW = {1, 1.5, 2, Double.POSITIVE_INFINITY};

    private final Rations rations;
    private final Yard yard;
    private final List<PricedFeed> feeds;
    private final List<PricedFeed> bought;
    private final Map<UUID, List<Day>> days = new LinkedHashMap<>();

    /**
     * @param question of one head in the middle of the stretch, by careful limits where they leave a ration, and for less
     *     gain where the whole of it is out of reach
     * @param plain the same of the feeds that it gets as it is fed now
     */
    private record Day(int days, LeastCostRation question, LeastCostRation plain) {}

    HayEaters(Rations rations) {
        this.rations = rations;
        yard = rations.yard();
        feeds = counted(yard);
        bought = bought(feeds);
        yard.ranch().groups().values().forEach(group -> days.put(group.id(), days(group)));
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

    private List<PricedFeed> hay(boolean fed) {
        var used = days.values().stream()
                .flatMap(List::stream)
                .flatMap(day -> day.question().diet().feeds().stream())
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
        var stretches = new HashMap<Double, List<Allotment.Stretch>>();
        var all = new ArrayList<Day>();
        var whole = yard.stretches(group);
        for (int t = 0; t < whole.size(); t++) {
            var question = question(group, t, whole, stretches);
            all.add(new Day(whole.get(t).days(), question, plain(question, now)));
        }
        return List.copyOf(all);
    }

    private LeastCostRation question(
            Group group, int t, List<Allotment.Stretch> whole, Map<Double, List<Allotment.Stretch>> byGain) {
        byGain.putIfAbsent(1.0, whole);
        LeastCostRation last = null;
        for (double part : PARTS_OF_GAIN) {
            if (part == 1 || group.gain().value() > 0) {
                var asked = byGain.computeIfAbsent(part, p -> yard.stretches(gaining(group, p)))
                        .get(t)
                        .question();
                var careful = new LeastCostRation(
                        feeds, asked.need(), asked.options(), Sureness.EXPECTED, LeastCostRation.Amounts.EXACT);
                var loose = asked(careful, feeds, careful.options().withoutCare());
                if (careful.isPossible()) {
                    return careful;
                }
                if (loose.isPossible()) {
                    return loose;
                }
                last = loose;
            }
        }
        return Objects.requireNonNull(last);
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
        var plain = feeds.stream()
                .filter(feed -> !isBeside(feed) || now.containsKey(feed.feed().id()))
                .toList();
        for (double times : TIMES_NOW) {
            var limits = new ArrayList<>(question.options().feedLimits());
            plain.stream().filter(HayEaters::isBeside).forEach(feed -> {
                double most = times * now.getOrDefault(feed.feed().id(), 0.0);
                if (Double.isFinite(most)) {
                    limits.add(new FeedLimit(
                            feed.feed().id(), DietRow.Sense.AT_MOST, FeedLimit.Per.KG_PUT_OUT, most, feed.putOut(1)));
                }
            });
            var asked = asked(question, plain, question.options().with(limits));
            if (asked.isPossible()) {
                return asked;
            }
        }
        var withoutStraw = asked(
                question,
                feeds.stream()
                        .filter(feed ->
                                !feed.isStraw() || now.containsKey(feed.feed().id()))
                        .toList(),
                question.options());
        return withoutStraw.isPossible() ? withoutStraw : question;
    }

    /** What goes beside hay and is no mineral. */
    private static boolean isBeside(PricedFeed feed) {
        return !feed.isHayOrSilage() && !feed.feed().isLooseMineral();
    }

    private static LeastCostRation asked(LeastCostRation question, List<PricedFeed> feeds, DietOptions options) {
        return new LeastCostRation(feeds, question.need(), options, Sureness.EXPECTED, LeastCostRation.Amounts.EXACT);
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

    /** Mature cows, those with the most head that are not due first, as they are sold. */
    List<Group> cows() {
        return yard.ranch().groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.MATURE_COW)
                .sorted(Comparator.comparingInt(HayEaters::openOrLate)
                        .thenComparingInt(Group::head)
                        .reversed())
                .toList();
    }

    /** Head that are not due, or late after the first of their group; none where nobody said when any is due. */
    static int openOrLate(Group group) {
        if (group.calving().isEmpty()) {
            return 0;
        }
        var late = group.firstCalving().map(first -> first.plusDays(HayFacts.days("late_days")));
        int due = group.calving().stream()
                .filter(week -> late.map(on -> !week.begins().isAfter(on)).orElse(true))
                .mapToInt(Group.CalvingWeek::head)
                .sum();
        return Math.max(0, group.head() - due);
    }

    /** Every group with what is done. */
    List<Allotment.Eater> with(HayPlan plan) {
        var head = new LinkedHashMap<UUID, Integer>();
        yard.ranch().groups().values().forEach(group -> head.put(group.id(), group.head()));
        take(plan.sold() + plan.bredSold(), head);
        var eaters = new ArrayList<Allotment.Eater>();
        int away = plan.away();
        for (var group : yard.ranch().groups().values()) {
            int stay = head.getOrDefault(group.id(), 0);
            int gone = isSturdy(group) ? Math.min(away, stay) : 0;
            away -= gone;
            add(eaters, group, stay - gone, plan, 0);
            add(eaters, group, gone, plan, plan.awayDays());
        }
        return eaters;
    }

    private void take(int wanted, Map<UUID, Integer> head) {
        int left = wanted;
        for (var group : cows()) {
            int taken = Math.min(left, head.getOrDefault(group.id(), 0));
            head.merge(group.id(), -taken, Integer::sum);
            left -= taken;
        }
    }

    private void add(List<Allotment.Eater> eaters, Group group, int head, HayPlan plan, int gone) {
        if (head == 0) {
            return;
        }
        var stretches = new ArrayList<Allotment.Stretch>();
        int before = 0;
        for (var day : days.getOrDefault(group.id(), List.of())) {
            int there = Math.max(0, Math.min(day.days(), before + day.days() - gone));
            before += day.days();
            if (there > 0) {
                stretches.add(new Allotment.Stretch(there, asked(group, day, plan)));
            }
        }
        var id = group.id().toString();
        eaters.add(new Allotment.Eater(gone == 0 ? id : id + " away", head, stretches));
    }

    private LeastCostRation asked(Group group, Day day, HayPlan plan) {
        boolean stretched = isSturdy(group) && day.question().need().milkingShare() == 0;
        var question = plan.straw() && stretched ? day.question() : day.plain();
        var options = question.options();
        if (plan.limited() && stretched) {
            options = options.with(
                            options.way() == WayOfFeeding.FREE_CHOICE ? WayOfFeeding.PUT_OUT_DAILY : options.way())
                    .whereHayIsShort();
        }
        var offered = Stream.concat(
                question.offered().stream(), plan.straw() && stretched ? bought.stream() : Stream.empty());
        return asked(
                question,
                offered.map(feed -> plan.rings() ? inRings(feed) : feed).toList(),
                options);
    }

    /** Whether some of a group have calved in the middle of a stretch. */
    boolean isInMilk(Group group, int stretch) {
        return days.getOrDefault(group.id(), List.of())
                        .get(stretch)
                        .question()
                        .need()
                        .milkingShare()
                > 0;
    }

    private static PricedFeed inRings(PricedFeed feed) {
        double loss = HayFacts.value("ring_loss");
        boolean baled = feed.feed().feedClass().isHay() || feed.isStraw();
        return baled && feed.feedingLossPercent() > loss ? feed.losing(loss) : feed;
    }
}
