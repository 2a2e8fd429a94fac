package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.diet.DietRow;
import haywright.diet.LeftOut;
import haywright.diet.RowId;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import haywright.ration.HandMix;
import haywright.ration.LeastCostRation;
import haywright.ration.NoRation;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import haywright.ration.Weighable;
import haywright.ration.WholeBales;
import haywright.season.WinterPlan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What every group of a ranch is to be fed on one day: its own least-cost ration, with each feed weighed at its price or at
 * what the plan of the winter makes it worth, whichever is more. Page, paper, command and topic ask here, so that they cannot
 * differ. Answers are kept as long as this is.
 */
public final class Rations {
    /** kg a day below which nothing is wished. */
    private static final double NOTHING_WISHED = 1e-6;

    /** A ration is of feeds that would last the group so long: changing over takes a week or two (judgment). */
    private static final int LEAST_DAYS = 30;

    /** Share by which a feed that the plan has a group eat later weighs more than its worth: what decides between equals. */
    private static final double LATER = 0.03;

    private static final double TENTHS = 10;

    /** Factors on the standard deviations of needs at which a surer ration is looked for, upward. */
    static final List<Double> SURER = List.of(1.25, 1.6, 2.0);

    private final Yard yard;
    private final Map<Group, Group> planned = new ConcurrentHashMap<>();
    private final Map<Group, LeastCostRation> asked = new ConcurrentHashMap<>();
    private final Map<AsSure, RationAnswer> asSure = new ConcurrentHashMap<>();
    private final Map<Group, RationAnswer> answered = new ConcurrentHashMap<>();
    private final Map<Group, NoRation> explained = new ConcurrentHashMap<>();
    private final Map<Group, HandMix> weighed = new ConcurrentHashMap<>();
    private final Map<UUID, Optional<Meanwhile>> meanwhile = new ConcurrentHashMap<>();
    private final Map<Class<?>, Object> worked = new ConcurrentHashMap<>();
    private @Nullable Optional<WinterPlan> plan;
    private @Nullable Map<String, LocalDate> gone;

    public Rations(Yard yard) {
        this.yard = yard;
    }

    /** @param day the day that is looked at */
    public Rations(Ranch ranch, LocalDate day) {
        this(new Yard(ranch, day));
    }

    public Yard yard() {
        return yard;
    }

    public Ranch ranch() {
        return yard.ranch();
    }

    public LocalDate day() {
        return yard.day();
    }

    /** What is worked out of these rations and nothing else: once for all pages and papers of a revision and day. */
    public <T> T once(Class<T> type, Supplier<T> make) {
        return type.cast(worked.computeIfAbsent(type, any -> make.get()));
    }

    /** Of all groups until grass; empty where nobody has said when that is, or nothing can be fed. */
    public synchronized Optional<WinterPlan> plan() {
        if (plan == null) {
            plan = WinterPlan.of(yard);
        }
        return plan;
    }

    /** What is asked for a group, each feed weighed by what it is worth to all groups until grass. */
    public LeastCostRation question(Group group) {
        var toCalve = planned(group);
        return asked.computeIfAbsent(toCalve, this::ask);
    }

    private LeastCostRation ask(Group group) {
        var alone = yard.alone(group);
        return plan().map(winter -> sharing(winter, group, alone)).orElse(alone);
    }

    /**
     * With the score at calving that it is fed for: {@link Regain#planned}, or where no ration of these feeds does that as
     * surely as one that holds them, the highest tenth of a score that one does. The group itself where nothing is to be
     * regained.
     */
    public Group planned(Group group) {
        var known = planned.get(group);
        if (known == null) {
            known = Regain.of(group, day()).isEmpty() ? group : reaching(group);
            planned.put(known, known);
            planned.put(group, known);
        }
        return known;
    }

    private Group reaching(Group group) {
        double score = group.conditionScore();
        double wanted = Regain.planned(group);
        var whole = group.wanting(wanted);
        double asked = ask(whole).sureness().energyPercent();
        double reached = sureness(whole);
        // where they cannot be held as surely as was asked, no more is asked of what they are to regain
        double held = reached >= asked ? asked : sureness(group.holding());
        if (reached > 0 && reached >= held) {
            return whole;
        }
        int can = 0;
        int cannot = (int) Math.ceil(TENTHS * (wanted - score));
        while (cannot - can > 1) {
            int half = (can + cannot) / 2;
            double percent = sureness(group.wanting(score + half / TENTHS));
            if (percent > 0 && percent >= held) {
                can = half;
            } else {
                cannot = half;
            }
        }
        return group.wanting(score + can / TENTHS);
    }

    /** Of energy, percent, in the ration that its question has; 0 where there is none. */
    private double sureness(Group group) {
        return ask(group).solve() instanceof Ration ration ? ration.sureness().energyPercent() : 0;
    }

    private LeastCostRation sharing(WinterPlan winter, Group group, LeastCostRation alone) {
        double headDays =
                group.head() * (double) Math.min(LEAST_DAYS, yard.daysToGrass().orElse(LEAST_DAYS));
        var feeds = alone.offered().stream()
                .map(feed -> Double.isFinite(feed.kgAtHand())
                        ? feed.shared(scarcity(winter, group, feed), feed.eaten(feed.kgAtHand()) / headDays)
                        : feed)
                .toList();
        return new LeastCostRation(feeds, alone.need(), alone.options(), alone.sureness(), alone.amounts());
    }

    /**
     * Dollars a kg as fed beside its price. The plan makes lots worth the same where it could feed either: of these a ration
     * takes the one that the plan has this group eat this week.
     */
    private static double scarcity(WinterPlan winter, Group group, PricedFeed feed) {
        var id = feed.feed().id();
        double worth = Math.max(winter.worth(id).orElse(0), feed.pricePerKgAsFed());
        return (winter.feeds(group, id) ? worth : (1 + LATER) * worth) - feed.pricePerKgAsFed();
    }

    /** What a group is to be fed of, in amounts that can be weighed out; empty where no ration exists. */
    public List<Portion> toFeed(Group group) {
        return answer(group) instanceof Ration ration
                ? weighable(group, ration).portions()
                : meanwhile(group).map(m -> m.of().toFeed(group)).orElse(List.of());
    }

    /**
     * The day before which a feed is used up, if every group goes on being fed as it is to be fed today, and what is gone is
     * made up by the hay that is left; empty where it reaches to grass or has no end.
     */
    public Optional<LocalDate> lastsUntil(PricedFeed feed) {
        return Optional.ofNullable(gone().get(feed.feed().id()));
    }

    /** For whom the plan of the winter keeps a feed that no ration has today; empty for one that is fed, or never. */
    public Optional<WinterPlan.Kept> kept(String feed) {
        return plan().flatMap(winter -> winter.kept(feed)).filter(later -> kgADay(feed) == 0);
    }

    private synchronized Map<String, LocalDate> gone() {
        if (gone == null) {
            gone = Lasting.gone(this, this::toFeed);
        }
        return gone;
    }

    /** As fed, that all head of all groups are to be put out a day. */
    double kgADay(String feed) {
        double aDay = 0;
        for (var group : ranch().groups().values()) {
            aDay += group.head()
                    * toFeed(group).stream()
                            .filter(p -> p.feed().feed().id().equals(feed))
                            .mapToDouble(Portion::kgPutOut)
                            .sum();
        }
        return aDay;
    }

    /** Dollars a kg as fed that a feed is worth to all groups until grass; empty where no plan says it. */
    public OptionalDouble worth(String feed) {
        return plan().map(winter -> winter.worth(feed)).orElse(OptionalDouble.empty());
    }

    public RationAnswer ration(Group group) {
        var answer = answer(group);
        return answer instanceof NoRation none ? explained.computeIfAbsent(group, one -> lifted(one, none)) : answer;
    }

    /** Without what doing without a wish would cost: that feeds all groups anew. */
    private RationAnswer answer(Group group) {
        return answered.computeIfAbsent(planned(group), one -> {
            var answer = question(one).solve();
            // a lot that would last less than a month is better than nothing
            return answer instanceof Ration ration
                    ? surest(one, ration)
                    : yard.alone(one).solve();
        });
    }

    /** As surely as was asked, or more surely where that counts no more to the cent: of few feeds in whole pounds it may. */
    private Ration surest(Group group, Ration ration) {
        var asked = question(group);
        var surest = ration;
        if (ration.sureness().equals(asked.sureness())) {
            double least = Weighable.of(asked, ration).counted();
            for (double factor : SURER) {
                if (asSure(group, factor) instanceof Ration surer
                        && Weighable.of(asked, surer).counted() <= least) {
                    surest = surer;
                }
            }
        }
        return surest;
    }

    /** What its question answers where needs are kept more or less surely. @param factor on their standard deviations */
    RationAnswer asSure(Group group, double factor) {
        return asSure.computeIfAbsent(new AsSure(planned(group), factor), way -> {
            var asked = question(group);
            return asked.asSure(asked.sureness().needs(factor)).solve();
        });
    }

    private record AsSure(Group group, double factor) {}

    /** A wish that is done without is priced with all groups fed: those that have no ration draw on no lot till then. */
    private NoRation lifted(Group group, NoRation none) {
        var lifts = none.lifts().stream()
                .map(lift -> lift.row().of() instanceof RowId.OfFeed wish && lift.to() < NOTHING_WISHED
                        ? without(group, wish)
                                .map(cost -> new NoRation.Lift(lift.row(), lift.to(), cost))
                                .orElse(lift)
                        : lift)
                .toList();
        return none.withLifts(lifts);
    }

    private Optional<Double> without(Group group, RowId.OfFeed wish) {
        var wanted = ranch().wishes().getOrDefault(group.id(), Wishes.none(group.id()));
        var rest = wanted.feeds().stream()
                .filter(w -> !w.feed().toString().equals(wish.feed()) || w.sense() != wish.sense())
                .toList();
        return wishing(wanted, rest).answer(group) instanceof Ration ration
                ? Optional.of(ration.cost())
                : Optional.empty();
    }

    /** The same ranch where a group is to get these alone of what it was to get. */
    private Rations wishing(Wishes wanted, List<Wishes.Wish> feeds) {
        return new Rations(
                ranch().with(new Wishes(
                        wanted.group(), feeds, wanted.limitsOff(), wanted.way(), wanted.surenessPercent())),
                day());
    }

    /**
     * The ration without what was wished of feeds that may not be fed until they are tested; empty where there is one with
     * it, or none without.
     */
    public Optional<Meanwhile> meanwhile(Group group) {
        return meanwhile.computeIfAbsent(group.id(), id -> {
            if (!(answer(group) instanceof NoRation none)) {
                return Optional.empty();
            }
            var out = none.diet().leftOut().stream()
                    .filter(LeftOut::danger)
                    .map(left -> UUID.fromString(left.feed().id()))
                    .collect(Collectors.toSet());
            var wanted = ranch().wishes().getOrDefault(id, Wishes.none(id));
            var waiting = wanted.feeds().stream()
                    .filter(wish -> wish.sense() == DietRow.Sense.AT_LEAST && out.contains(wish.feed()))
                    .toList();
            if (waiting.isEmpty()) {
                return Optional.empty();
            }
            var rest = new ArrayList<>(wanted.feeds());
            rest.removeAll(waiting);
            var other = wishing(wanted, rest);
            return other.answer(group) instanceof Ration ration
                    ? Optional.of(new Meanwhile(ration, other, waiting))
                    : Optional.empty();
        });
    }

    /** @param of the same ranch without these wishes. @param waiting wishes that have to wait for a test */
    public record Meanwhile(Ration ration, Rations of, List<Wishes.Wish> waiting) {}

    /** What the group is fed today, judged by the same rows; empty when nobody has said what it is fed. */
    public Optional<HandMix> fedNow(Group group) {
        var now = ranch().fedNow().get(group.id());
        return now == null || now.amounts().isEmpty() ? Optional.empty() : Optional.of(judge(group, now.amounts()));
    }

    /**
     * Any amounts, judged by the same rows.
     *
     * @param amounts as fed, a head and day
     */
    public HandMix judge(Group group, Map<UUID, Quantity> amounts) {
        var kg = new HashMap<String, Double>();
        amounts.forEach((feed, amount) -> kg.put(feed.toString(), amount.in(Unit.KILOGRAM_A_DAY)));
        return HandMix.judge(question(group), kg);
    }

    /** A ration of the group in amounts that can be weighed out, as every paper prints it. */
    public HandMix weighable(Group group, Ration ration) {
        return isTheAnswer(group, ration)
                ? weighed.computeIfAbsent(group, one -> Weighable.of(question(group), ration))
                : Weighable.of(question(group), ration);
    }

    /** Comparing all of two rations would cost more than it saves. */
    @SuppressWarnings("ReferenceEquality")
    private boolean isTheAnswer(Group group, Ration ration) {
        return answered.get(planned(group)) == ration;
    }

    /** A ration of the group in whole bales, every so many days; empty where nothing of it is baled. */
    public Optional<WholeBales> wholeBales(Group group, Ration ration) {
        var kg = new HashMap<String, Double>();
        for (var portion : ration.portions()) {
            yard.baleKg(portion).ifPresent(each -> kg.put(portion.feed().feed().id(), each));
        }
        return WholeBales.of(question(group), ration, group.head(), kg);
    }
}
