package haywright.outlook;

import haywright.cattle.herd.Group;
import haywright.diet.WayOfFeeding;
import haywright.outlook.HayStep.What;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.ration.Allotment;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Whether hay lasts until grass, and what to do where it does not. Hay is hay and silage here; straw and stalks are not.
 * Tons are of this ranch's hay as fed: dry matter put out over the mean dry matter of what lies there.
 * <pre>
 * short = max(a·d − T, M)        gone = today + T/a
 * </pre>
 * T is what lies there and can be had, a what is put out a day as fed now, d the days until grass, M what is missing when
 * everybody is fed to need: the least that a program of all groups leaves missing ({@link Allotment#leastMissing}).
 */
public final class ShortOfHay {
    private static final int A_MONTH = 30;
    private static final double USUAL_DRY_MATTER = 0.88;

    /** Tons below which nothing is short: less than a bale. */
    private static final double NOTHING = 0.25;

    /** Days by which 195 tons at 1.95 a day may miss 100. */
    private static final double HAIR = 1e-6;

    private final Yard yard;
    private final Asked asked;
    private final HayEaters eaters;
    private final List<PricedFeed> hay;
    private final double dryMatter;
    private final double onHand;
    private final double canBeHad;
    private final double aDay;
    private final boolean isSaid;
    private final int days;
    private final Allotment byNeed;
    private final List<HayStep> steps = new ArrayList<>();
    private Allotment last;
    private HayPlan plan = HayPlan.NOTHING;
    private boolean climbed;

    /**
     * What the ladder has to be told.
     *
     * @param sold head of open, old and late cows to sell; null for those that are not due, or late
     * @param dollarsSold what one of them brings; null where nobody said
     * @param away head of dry cows that can feed on stalks or elsewhere; null where nobody said
     * @param awayDays for how long
     * @param dollarsAway a head and day; null where nobody said
     */
    public record Asked(
            @Nullable Integer sold,
            @Nullable Double dollarsSold,
            @Nullable Integer away,
            @Nullable Integer awayDays,
            @Nullable Double dollarsAway) {
        /** Nobody said anything. */
        public static final Asked NOTHING = new Asked(null, null, null, null, null);

        public Asked {
            var problems = new ArrayList<Problem>();
            least("sold", sold, problems);
            least("dollarsSold", dollarsSold, problems);
            least("away", away, problems);
            least("awayDays", awayDays, problems);
            least("dollarsAway", dollarsAway, problems);
            Refused.unlessEmpty(problems);
        }

        private static void least(String field, @Nullable Number value, List<Problem> problems) {
            if (value != null && value.doubleValue() < 0) {
                problems.add(new Problem(field, value.toString(), "this is 0 or more", "Leave it empty if not known."));
            }
        }
    }

    /** What has to be known first. */
    public enum Lacks {
        CATTLE,
        HAY,
        GRASS
    }

    /**
     * What one group gets until grass if all steps are taken.
     *
     * @param feeds kg as fed a head and day, on average until the first of them calve; of all days for others
     * @param inMilk the same from then on; empty for those that do not calve before grass
     * @param unmet by need, the largest share that is not met at any time; empty where all is met
     */
    public record LeastHarm(
            Group group,
            int head,
            Map<PricedFeed, Double> feeds,
            Map<PricedFeed, Double> inMilk,
            Map<String, Double> unmet) {}

    /** Nothing where there is an answer. */
    public static List<Lacks> lacks(Yard yard) {
        var lacks = new ArrayList<Lacks>();
        if (yard.ranch().groups().isEmpty()) {
            lacks.add(Lacks.CATTLE);
        }
        if (HayEaters.counted(yard).stream().noneMatch(PricedFeed::isHayOrSilage)) {
            lacks.add(Lacks.HAY);
        }
        if (yard.daysToGrass().isEmpty()) {
            lacks.add(Lacks.GRASS);
        }
        return lacks;
    }

    /** Empty where something is lacking. @throws Refused where a group cannot be, or cannot be fed */
    public static Optional<ShortOfHay> of(Yard yard, Asked asked) {
        return lacks(yard).isEmpty() ? Optional.of(new ShortOfHay(yard, asked)) : Optional.empty();
    }

    private ShortOfHay(Yard yard, Asked asked) {
        this.yard = yard;
        this.asked = asked;
        eaters = new HayEaters(yard);
        days = yard.daysToGrass().orElseThrow();
        hay = eaters.hay();
        double kg = hay.stream().mapToDouble(PricedFeed::kgAtHand).sum();
        dryMatter = kg > 0 ? dry(hay.stream()) / kg : USUAL_DRY_MATTER;
        onHand = tons(dry(hay.stream().filter(PricedFeed::own)));
        canBeHad = tons(dry(hay.stream().filter(feed -> !feed.own())));
        isSaid = yard.ranch().groups().keySet().stream().allMatch(this::isSaid);
        byNeed = solve(HayPlan.NOTHING);
        last = byNeed;
        aDay = tons(yard.ranch().groups().values().stream()
                .mapToDouble(this::putOut)
                .sum());
    }

    private Allotment solve(HayPlan doing) {
        return Allotment.leastMissing(eaters.with(doing))
                .orElseThrow(() -> new Refused(
                        "groups",
                        yard.ranch().name(),
                        "there is no way to feed these groups",
                        "Look at each group’s page for what stands in the way."));
    }

    private static double dry(PricedFeed feed, double kgAsFed) {
        return feed.dryMatterPercent() / 100 * kgAsFed;
    }

    private static double dry(Stream<PricedFeed> feeds) {
        return feeds.mapToDouble(feed -> dry(feed, feed.kgAtHand())).sum();
    }

    /** @param dry kg of dry matter put out */
    private double tons(double dry) {
        return Unit.TON.fromBase(dry / dryMatter);
    }

    private boolean isSaid(UUID group) {
        var now = yard.ranch().fedNow().get(group);
        return now != null && !now.amounts().isEmpty();
    }

    /** kg of dry matter of hay and silage a group is put out a day, as it is fed now or by its ration. */
    private double putOut(Group group) {
        var now = yard.ranch().fedNow().get(group.id());
        double head = group.head();
        if (isSaid(group.id())) {
            var amounts = Objects.requireNonNull(now).amounts();
            return head
                    * hay.stream()
                            .mapToDouble(feed -> {
                                var amount =
                                        amounts.get(UUID.fromString(feed.feed().id()));
                                return amount == null ? 0 : dry(feed, amount.in(Unit.KILOGRAM_A_DAY));
                            })
                            .sum();
        }
        if (yard.ration(group) instanceof Ration ration) {
            return head
                    * yard.weighable(group, ration).portions().stream()
                            .filter(portion -> portion.feed().isHayOrSilage())
                            .mapToDouble(portion -> dry(portion.feed(), portion.kgPutOut()))
                            .sum();
        }
        return head * hayADay(byNeed, group, 0);
    }

    /** kg of dry matter of hay a head and day of one stretch; 0 where there is none. */
    private static double hayADay(Allotment of, Group group, int stretch) {
        return of.eaten().stream()
                .filter(e -> e.eater().equals(group.id().toString()) && e.stretch() == stretch)
                .mapToDouble(e -> hay(e) / e.headDays())
                .findFirst()
                .orElse(0);
    }

    private static double hay(Allotment.Eaten eaten) {
        return eaten.feeds().entrySet().stream()
                .filter(e -> e.getKey().isHayOrSilage())
                .mapToDouble(e -> dry(e.getKey(), e.getValue()))
                .sum();
    }

    private double missing(Allotment of) {
        double tons = tons(hay.stream()
                .mapToDouble(
                        feed -> dry(feed, of.missing().getOrDefault(feed.feed().id(), 0.0)))
                .sum());
        return tons < NOTHING ? 0 : tons;
    }

    // The ladder, in the order that costs cattle and money least

    private void climb() {
        if (climbed || !isShort()) {
            return;
        }
        climbed = true;
        if (tonsShortAsNow() > missing(byNeed)) {
            steps.add(new HayStep(What.FEED_TO_NEED, day(), tonsShortAsNow(), missing(byNeed), 0, 0, null));
        }
        double loss = yard.ranch().settings().hayLossPercent();
        if (loss > HayFacts.value("ring_loss")) {
            var cost = HayFacts.value("ring_price") * Math.ceil(head(plan) / HayFacts.value("ring_head"));
            step(What.CUT_WASTE, day(), HayPlan::withRings, 0, 0, cost);
        }
        if (eaters.cows().isEmpty()) {
            return;
        }
        sellOpen();
        step(What.STRAW, in("straw_days"), HayPlan::withStraw, 0, 0, 0.0);
        step(What.LIMIT_HAY, limitBy(), HayPlan::withLimit, 0, 0, 0.0);
        away();
        sellBred();
    }

    private void sellOpen() {
        int counted = eaters.cows().stream().mapToInt(HayEaters::openOrLate).sum();
        int sold = Math.min(asked.sold() == null ? counted : asked.sold(), cows());
        var each = asked.dollarsSold();
        step(
                What.SELL_OPEN,
                in("sell_days"),
                p -> p.selling(sold),
                sold,
                aCow(days),
                each == null ? null : -each * sold);
    }

    private void away() {
        int away = asked.away() == null ? 0 : asked.away();
        int stay = asked.awayDays() == null ? A_MONTH : asked.awayDays();
        var each = asked.dollarsAway();
        step(
                What.ELSEWHERE,
                in("straw_days"),
                p -> p.sending(away, Math.min(stay, days)),
                away,
                aCow(Math.min(stay, days)),
                each == null ? null : each * away * Math.min(stay, days));
    }

    /** As many bred cows as hay is still missing for, the fewest that do. */
    private void sellBred() {
        int most = cows() - plan.sold();
        int least = 0;
        int enough = missing(last) == 0 ? 0 : most;
        while (enough - least > 1) {
            int half = (least + enough) / 2;
            if (missing(solve(plan.sellingBred(half))) == 0) {
                enough = half;
            } else {
                least = half;
            }
        }
        int sold = enough;
        var by = calving().map(first -> first.minusDays(HayFacts.days("haul_before_calving")));
        var each = asked.dollarsSold();
        step(
                What.SELL_BRED,
                ahead(by.orElse(day())),
                p -> p.sellingBred(sold),
                sold,
                aCow(days),
                each == null ? null : -each * sold);
    }

    /**
     * One step more; it is not taken where it saves nothing.
     *
     * @param dollars beside the feed that is bought; null where nobody said
     */
    private void step(
            What what,
            LocalDate by,
            UnaryOperator<HayPlan> doing,
            int head,
            double tonsAHead,
            @Nullable Double dollars) {
        double before = missing(last);
        var next = doing.apply(plan);
        if (before == 0 || next.equals(plan)) {
            steps.add(new HayStep(what, by, before, before, head, tonsAHead, null));
            return;
        }
        var then = solve(next);
        double after = missing(then);
        if (before - after < NOTHING) {
            steps.add(new HayStep(what, by, before, before, head, tonsAHead, null));
            return;
        }
        Double aCow = dollars == null ? null : (Double) ((dollars + bought(then) - bought(last)) / kept(next));
        plan = next;
        last = then;
        steps.add(new HayStep(what, by, before, after, head, tonsAHead, aCow));
    }

    /** Dollars for feed that does not lie on the ranch. */
    private static double bought(Allotment of) {
        return of.eaten().stream()
                .flatMap(eaten -> eaten.feeds().entrySet().stream())
                .filter(e -> !e.getKey().own())
                .mapToDouble(e -> e.getKey().pricePerKgAsFed() * e.getValue())
                .sum();
    }

    /** Tons of hay that one mature cow takes in so many days as things are now done. */
    private double aCow(int until) {
        return eaters.cows().stream()
                .findFirst()
                .map(cow -> {
                    double left = until;
                    double dry = 0;
                    var stretches = yard.stretches(cow);
                    for (int t = 0; t < stretches.size() && left > 0; t++) {
                        double here = Math.min(left, stretches.get(t).days());
                        dry += here * hayADay(last, cow, t);
                        left -= here;
                    }
                    return tons(dry);
                })
                .orElse(0.0);
    }

    private int cows() {
        return eaters.cows().stream().mapToInt(Group::head).sum();
    }

    private int head(HayPlan with) {
        return yard.ranch().head() - with.sold() - with.bredSold();
    }

    /** Cows and heifers that calve and are not sold; at least one, to divide by. */
    private int kept(HayPlan with) {
        int calve = yard.ranch().groups().values().stream()
                .filter(group -> group.animals().calves())
                .mapToInt(Group::head)
                .sum();
        return Math.max(1, calve - with.sold() - with.bredSold());
    }

    private LocalDate day() {
        return yard.day();
    }

    private LocalDate in(String fact) {
        return ahead(day().plusDays(HayFacts.days(fact)));
    }

    /** Today for a day that is past, or beyond grass. */
    private LocalDate ahead(LocalDate date) {
        return date.isBefore(day()) || !date.isBefore(grass()) ? day() : date;
    }

    private Optional<LocalDate> calving() {
        return eaters.cows().stream()
                .flatMap(group -> group.firstCalving().stream())
                .filter(first -> !first.isBefore(day()))
                .min(LocalDate::compareTo);
    }

    private LocalDate limitBy() {
        int before = HayFacts.days("limit_before_calving") + HayFacts.days("change_over");
        return ahead(calving().map(first -> first.minusDays(before)).orElse(day()));
    }

    // The answer

    public Ranch ranch() {
        return yard.ranch();
    }

    public LocalDate today() {
        return day();
    }

    public LocalDate grass() {
        return day().plusDays(days);
    }

    public int daysToGrass() {
        return days;
    }

    /** Tons of hay and silage of the ranch, and of none that is left out of every ration. */
    public double tonsOnHand() {
        return onHand;
    }

    /** Tons of hay and silage for sale of which the ranch said how much can be had. */
    public double tonsThatCanBeHad() {
        return canBeHad;
    }

    /** Tons that go out a day, as fed now or by today's rations. */
    public double tonsADay() {
        return aDay;
    }

    /** Whether every group's feed of today is said; else rations stand in. */
    public boolean isFedNowSaid() {
        return isSaid;
    }

    /** The day on which there is no more, fed as now; empty where it lasts until grass. */
    public Optional<LocalDate> gone() {
        double lasts = (onHand + canBeHad) / aDay;
        return lasts < days ? Optional.of(day().plusDays((long) (lasts + HAIR))) : Optional.empty();
    }

    /** a·d − T, tons; 0 or less where it lasts. */
    private double tonsShortAsNow() {
        return aDay * days - onHand - canBeHad;
    }

    /** Tons short until grass; 0 where hay lasts. */
    public double tonsShort() {
        double tons = Math.max(tonsShortAsNow(), missing(byNeed));
        return tons < NOTHING ? 0 : tons;
    }

    public boolean isShort() {
        return tonsShort() > 0;
    }

    /** In the order in which they are to be taken; empty where hay lasts. */
    public List<HayStep> steps() {
        climb();
        return List.copyOf(steps);
    }

    /** Tons still short when all steps are taken. */
    public double tonsShortAtLast() {
        climb();
        return missing(last);
    }

    /** What is fed in place of hay that the ranch does not list, at a usual price, as far as a step takes it. */
    public List<PricedFeed> assumed() {
        climb();
        var taken = last.eaten().stream()
                .flatMap(eaten -> eaten.feeds().keySet().stream())
                .map(feed -> feed.feed().id())
                .collect(java.util.stream.Collectors.toSet());
        return eaters.assumed().stream()
                .filter(feed -> taken.contains(feed.feed().id()))
                .toList();
    }

    /** Hay and silage of the ranch that no group may have yet, such as an untested lot. */
    public List<PricedFeed> leftOut() {
        return eaters.leftOut();
    }

    /** What every group gets until grass if all steps are taken. */
    public List<LeastHarm> leastHarm() {
        climb();
        var all = new ArrayList<LeastHarm>();
        for (var group : yard.ranch().groups().values()) {
            var id = group.id().toString();
            var eats = last.eaten().stream().filter(e -> e.eater().equals(id)).toList();
            if (!eats.isEmpty()) {
                var unmet = new LinkedHashMap<String, Double>();
                eats.forEach(e -> e.unmet().forEach((row, share) -> unmet.merge(row, share, Math::max)));
                var milks = eats.stream().collect(Collectors.partitioningBy(e -> eaters.isInMilk(group, e.stretch())));
                all.add(new LeastHarm(
                        group,
                        head(id),
                        mean(Objects.requireNonNull(milks.get(false))),
                        mean(Objects.requireNonNull(milks.get(true))),
                        unmet));
            }
        }
        return all;
    }

    /** kg as fed a head and day. */
    private static Map<PricedFeed, Double> mean(List<Allotment.Eaten> eats) {
        double headDays = eats.stream().mapToDouble(Allotment.Eaten::headDays).sum();
        var feeds = new LinkedHashMap<PricedFeed, Double>();
        eats.forEach(e -> e.feeds().forEach((feed, kg) -> feeds.merge(feed, kg / headDays, Double::sum)));
        return feeds;
    }

    private int head(String eater) {
        return eaters.with(plan).stream()
                .filter(e -> e.id().equals(eater))
                .mapToInt(Allotment.Eater::head)
                .findFirst()
                .orElse(0);
    }

    /** Whether some group is taken to be fed free choice, which has to end where hay is limited. */
    public boolean isFreeChoice() {
        return yard.ranch().wishes().values().stream().anyMatch(wish -> wish.way() == WayOfFeeding.FREE_CHOICE);
    }

    /** Dollars for the tons that are short, at the cheapest hay that is for sale; empty where none is. */
    public OptionalDouble dollarsToBuy() {
        return yard.feeds().stream()
                .filter(feed -> !feed.own() && feed.feed().feedClass().isHay())
                .mapToDouble(feed -> feed.pricePerKgAsFed() / feed.dryMatterPercent() * 100 * dryMatter)
                .min()
                .stream()
                .map(perKg -> perKg * Unit.TON.toBase(tonsShort()))
                .findFirst();
    }
}
