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
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ration.Allotment;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of one head of a group in a stretch where hay is short, before anything is done about it. Needs are met as
 * expected figures have them. Nobody gets straw, grain or cake that it does not get now, unless it cannot be fed without.
 */
final class HayQuestions {
    private static final List<Double> PARTS_OF_GAIN = List.of(0.5, 0.0);

    /** Of grain and cake as they get it now, tried in turn. */
    private static final double[] TIMES_NOW = {1, 1.5, 2, Double.POSITIVE_INFINITY};

    private final Rations rations;
    private final Yard yard;
    private final HayDates dates;
    private final List<PricedFeed> feeds;

    /**
     * Some of a group in a stretch: those in milk, or the others.
     *
     * @param question of one head in the middle of the stretch, by careful limits where they leave a ration, and for less
     *     gain where the whole of it is out of reach
     * @param plain the same of the feeds that it gets as it is fed now
     * @param gain share of the wanted gain that is asked
     */
    record Part(LeastCostRation question, LeastCostRation plain, double gain) {}

    HayQuestions(Rations rations, HayDates dates, List<PricedFeed> feeds) {
        this.rations = rations;
        this.dates = dates;
        this.feeds = feeds;
        yard = rations.yard();
    }

    @Nullable
    Part part(
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
            var may = mayHave(milking);
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

    /** Straw goes to dry cattle; to which of them, their question has. */
    private List<PricedFeed> mayHave(boolean milking) {
        return feeds.stream().filter(feed -> !feed.isStraw() || !milking).toList();
    }

    /** What they get now and no ration may have, each with its reason. */
    List<LeftOut> stops(Group group) {
        var now = yard.ranch().fedNow().get(group.id());
        return now == null
                ? List.of()
                : yard.alone(group).diet().leftOut().stream()
                        .filter(out -> {
                            var fed =
                                    now.amounts().get(UUID.fromString(out.feed().id()));
                            return fed != null && fed.value() > 0;
                        })
                        .toList();
    }

    /**
     * Held to what they would eat and to what one feeding may have of grain. Thin cows have hay before them all day.
     */
    private DietOptions options(Group group, LeastCostRation whole) {
        var usual = whole.options().atLeastHarm();
        boolean isFull = group.animals() == AnimalClass.MATURE_COW
                && !HayFacts.isSturdy(group)
                && usual.way() == WayOfFeeding.PUT_OUT_DAILY;
        var options = isFull ? usual.with(WayOfFeeding.FREE_CHOICE) : usual;
        var limits = new ArrayList<>(options.feedLimits());
        boolean grown = group.animals() != AnimalClass.GROWING;
        double grain = GrainFed.percentADay(options.grainFeedingsADay())
                / 100
                * whole.need().bodyWeight();
        for (var feed : feeds) {
            if (grown && feed.feed().feedClass() == FeedClass.GRAIN) {
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
            plain.stream().filter(HayQuestions::isBeside).forEach(feed -> {
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
    Map<String, Double> fedNow(Group group) {
        var amounts = new HashMap<String, Double>();
        var now = yard.ranch().fedNow().get(group.id());
        if (now != null && !now.amounts().isEmpty()) {
            now.amounts().forEach((feed, amount) -> amounts.put(feed.toString(), amount.in(Unit.KILOGRAM_A_DAY)));
        } else if (rations.ration(group) instanceof Ration ration) {
            ration.portions().forEach(p -> amounts.put(p.feed().feed().id(), Double.POSITIVE_INFINITY));
        }
        return amounts;
    }
}
