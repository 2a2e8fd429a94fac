package haywright.ration;

import haywright.cattle.need.Need;
import haywright.diet.Diet;
import haywright.diet.DietBlock;
import haywright.diet.DietOptions;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.lp.Optimum;
import haywright.lp.Range;
import haywright.lp.Undecided;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The cheapest way to feed one head for a day.
 *
 * @param offered the ranch's lots and the feeds it can buy, each with its price
 * @param need of the animal or group
 * @param options limits switched off and limits on single feeds
 * @param sureness how surely needs are met and dangers kept, as far as the feeds allow
 * @param amounts exact, or as people feed
 */
public record LeastCostRation(
        List<PricedFeed> offered, Need need, DietOptions options, Sureness sureness, Amounts amounts) {
    /** What counts as an amount. */
    public enum Amounts {
        /** Whatever is cheapest, to the gram. */
        EXACT,
        /** Nothing of a feed or a portion worth handling, few feeds, the ranch's own first. */
        AS_FED
    }

    /** How near the surest that the feeds allow is found, as a share of the standard deviations asked. */
    private static final double SURE_STEP = 1.0 / 64;

    /** Feeds up to which all are looked at, and how many of a kind beyond that. */
    private static final int FEW = 24;

    private static final int OF_A_KIND = 2;

    private static final int MOST_TANGENTS = 50;

    /** Dollars a kg by which two prices are the same. */
    private static final double SAME_PRICE = 1e-10;

    /** Share of the cost that the usual sureness is worth, where nobody asked for it (judgment). */
    private static final double WORTH_BEING_SURER = 0.15;

    /** As expected, to the gram. */
    public LeastCostRation(List<PricedFeed> offered, Need need, DietOptions options) {
        this(offered, need, options, Sureness.EXPECTED, Amounts.EXACT);
    }

    public LeastCostRation {
        offered = List.copyOf(offered);
        if (offered.isEmpty()) {
            throw new Refused("feeds", "no feeds", "a ration needs at least one feed", "Enter a lot or a feed to buy.");
        }
        var ids = new HashSet<String>();
        for (var feed : offered) {
            if (!ids.add(feed.feed().id())) {
                throw new Refused(
                        "feeds",
                        "“" + feed.feed().name() + "” twice",
                        "each feed is offered once",
                        "Give the two different names.");
            }
        }
    }

    /** The same question, to be kept as surely as this. */
    public LeastCostRation asSure(Sureness other) {
        return new LeastCostRation(offered, need, options, other, amounts);
    }

    /** By the careful limits, and by the looser published ones where those leave no ration as sure as was asked. */
    public RationAnswer solve() {
        try {
            return decided();
        } catch (Undecided undecided) {
            throw new Refused(
                    "ration",
                    "%d feeds, of which the solver could neither make a ration nor prove that there is none"
                            .formatted(offered.size()),
                    "prices, amounts and limits lie within a few thousandfold of each other",
                    "Look for a price, a weight or a limit that is far too large or far too small.");
        }
    }

    private RationAnswer decided() {
        var careful = solve(diet());
        boolean isSure = careful instanceof Ration ration && ration.sureness().equals(sureness);
        if (isSure || !options.isCareful()) {
            return careful;
        }
        var without = without();
        var loose = without.solve(without.diet());
        boolean isBetter = loose instanceof Ration ration
                && (careful instanceof NoRation
                        || ration.sureness().equals(sureness)
                        || isAsked() && isSurer(ration, (Ration) careful));
        return isBetter ? loose : careful;
    }

    private static boolean isSurer(Ration one, Ration other) {
        return one.sureness().othersPercent() > other.sureness().othersPercent();
    }

    /** @param diet of these feeds, perhaps with a limit moved */
    RationAnswer solve(Diet diet) {
        var feeds = admitted(diet);
        if (feeds.isEmpty()) {
            return new NoRation(diet, List.of(), List.of()).with(tests(diet));
        }
        var found = found(diet, feeds);
        return found.isPresent()
                ? found.get()
                : new WhyNone(diet, feeds, lastAlone(feeds), this::found)
                        .answer()
                        .with(tests(diet));
    }

    /** Feeds that nobody tested for nitrate, and that by themselves would let a ration exist. */
    private List<NoRation.Test> tests(Diet diet) {
        var tests = new ArrayList<NoRation.Test>();
        for (var out : diet.leftOut()) {
            out.ifFoundSafe().ifPresent(safe -> {
                var other = new LeastCostRation(
                        offered.stream()
                                .map(f -> f.feed().id().equals(safe.id()) ? f.madeOf(safe) : f)
                                .toList(),
                        need,
                        options,
                        sureness,
                        amounts);
                var with = other.diet();
                other.found(with, other.admitted(with))
                        .ifPresent(ration -> tests.add(new NoRation.Test(out.feed(), ration.cost())));
            });
        }
        tests.sort(Comparator.comparingDouble(NoRation.Test::cost));
        return tests;
    }

    private Optional<Ration> found(Diet diet, List<PricedFeed> feeds) {
        return isFreeChoice() ? oneForage(diet, feeds) : of(diet, feeds, beside(feeds, i -> true));
    }

    /** Free choice no blend exists: each forage alone, with what goes beside it; the cheapest of these. */
    private Optional<Ration> oneForage(Diet diet, List<PricedFeed> feeds) {
        Optional<Ration> best = Optional.empty();
        for (int alone : Shortlist.alone(diet, feeds, i -> least(diet, feeds, Sureness.EXPECTED, only(feeds, i)))) {
            var answer = of(diet, feeds, only(feeds, alone));
            if (answer.isPresent() && best.map(b -> isBetter(answer.get(), b)).orElse(true)) {
                best = answer;
            }
        }
        return best;
    }

    /** As sure as was asked first, then cheaper: what nobody tested is not first for being unknown. */
    private boolean isBetter(Ration one, Ration other) {
        boolean sure = one.sureness().equals(sureness);
        boolean isAsSure = sure == other.sureness().equals(sureness);
        if (isAsSure && (sure || !isAsked() || isSurer(one, other) == isSurer(other, one))) {
            return one.cost() < other.cost();
        }
        return isAsSure ? isSurer(one, other) : sure;
    }

    private Optional<Ration> of(Diet diet, List<PricedFeed> feeds, Set<Integer> mayBe) {
        var allowed = Shortlist.of(diet, feeds, mayBe, FEW, OF_A_KIND);
        var sure = sure(diet, feeds, allowed);
        if (amounts == Amounts.EXACT || sure.isEmpty()) {
            return sure;
        }
        var exact = sure.get();
        var offered = mayBe.stream().sorted().toList();
        return FewFeeds.of(diet, feeds, exact.sureness(), allowed, mayBe.size() > FEW)
                .flatMap(few -> held(diet, feeds, exact.sureness(), few))
                .map(held ->
                        held.withNotUsed(exact, offered.stream().map(feeds::get).toList()))
                .or(() -> sure);
    }

    /** As sure as was asked, or as these feeds can be made; where nobody asked, at no more cost than that is worth. */
    private Optional<Ration> sure(Diet diet, List<PricedFeed> feeds, Set<Integer> allowed) {
        var exact = exact(diet, feeds, sureness, allowed);
        if (exact.isPresent() || sureness.equals(Sureness.EXPECTED)) {
            return exact;
        }
        double expected = least(diet, feeds, Sureness.EXPECTED, allowed);
        return Double.isFinite(expected)
                ? surest(diet, feeds, allowed, isAsked() ? Double.MAX_VALUE : expected * (1 + WORTH_BEING_SURER))
                : Optional.empty();
    }

    /** Whether somebody said how sure: then whoever asks for more gets no less, whatever it costs. */
    private boolean isAsked() {
        return !sureness.equals(Sureness.USUAL);
    }

    /** @param dearest what a ration may weigh, dollars a head and day */
    private Optional<Ration> surest(Diet diet, List<PricedFeed> feeds, Set<Integer> allowed, double dearest) {
        double can = 0;
        double cannot = 1;
        while (cannot - can > SURE_STEP) {
            double half = (can + cannot) / 2;
            if (least(diet, feeds, sureness.part(half), allowed) <= dearest) {
                can = half;
            } else {
                cannot = half;
            }
        }
        return exact(diet, feeds, sureness.part(can), allowed);
    }

    /** What decides, dollars a head and day; infinite where there is no ration. */
    private static double least(Diet diet, List<PricedFeed> feeds, Sureness asked, Set<Integer> allowed) {
        try (var program = RationProgram.of(diet, feeds, asked, allowed)) {
            return program.solve() instanceof Optimum optimum ? optimum.objective() : Double.POSITIVE_INFINITY;
        }
    }

    private Optional<Ration> exact(Diet diet, List<PricedFeed> feeds, Sureness asked, Set<Integer> allowed) {
        try (var program = RationProgram.of(diet, feeds, asked, allowed)) {
            return program.solve() instanceof Optimum optimum
                    ? Optional.of(ration(diet, feeds, asked, program, optimum, amounts == Amounts.EXACT))
                    : Optional.empty();
        }
    }

    /** Of these feeds, each at least in a portion worth handling. */
    private Optional<Ration> held(Diet diet, List<PricedFeed> feeds, Sureness asked, Set<Integer> few) {
        try (var program = RationProgram.of(diet, feeds, asked, few)) {
            few.forEach(i -> program.feed(i, FewFeeds.least(feeds.get(i), options), Double.POSITIVE_INFINITY));
            return program.solve() instanceof Optimum optimum
                    ? Optional.of(ration(diet, feeds, asked, program, optimum, true))
                    : Optional.empty();
        }
    }

    /**
     * The ration of the same feeds with some amounts given, as surely as it is kept; empty where the others cannot make up
     * for them.
     *
     * @param kg dry matter eaten a head and day, by feed id
     * @param near share by which what is not held may be off the ration; a loose mineral may be off by any
     */
    Optional<Ration> holding(Ration ration, Map<String, Double> kg, double near) {
        var diet = ration.diet();
        var feeds = admitted(diet);
        var used = ration.portions().stream()
                .collect(Collectors.toMap(p -> p.feed().feed().id(), Portion::kg));
        var few = IntStream.range(0, feeds.size())
                .filter(i -> used.containsKey(feeds.get(i).feed().id()))
                .boxed()
                .collect(Collectors.toSet());
        try (var program = RationProgram.of(diet, feeds, ration.sureness(), few)) {
            for (int i : few) {
                var feed = feeds.get(i).feed();
                var given = kg.get(feed.id());
                if (given != null) {
                    program.feed(i, given, given);
                } else if (!feed.isLooseMineral()) {
                    double had = Objects.requireNonNull(used.get(feed.id()));
                    program.feed(i, (1 - near) * had, (1 + near) * had);
                }
            }
            return program.solve() instanceof Optimum optimum
                    ? Optional.of(ration(diet, feeds, ration.sureness(), program, optimum, false))
                    : Optional.empty();
        }
    }

    /**
     * The price below which a feed that a ration does without would come into it as a portion worth handling, beside the
     * feeds that are in it: what "worth buying below" says of the first bite, of the whole rule.
     * <pre>
     * V1(p) = V0        V1 the least cost with at least a portion of it, concave in p; V0 of the ration
     * </pre>
     * Free choice a forage stands in the place of the forage that is in it.
     *
     * @param feed of this question, not in the ration
     * @return dollars a kg as fed; empty where it would not come in as a gift, or nothing can be fed with it
     */
    public OptionalDouble breakEven(Ration ration, PricedFeed feed) {
        var diet = ration.diet();
        var feeds = admitted(diet);
        int at = feeds.indexOf(feed);
        boolean isInstead = isFreeChoice() && feed.feed().feedClass().isForage();
        var used = ration.portions().stream()
                .map(Portion::feed)
                .filter(f -> !isInstead || !f.feed().feedClass().isForage())
                .map(feeds::indexOf)
                .collect(Collectors.toCollection(HashSet::new));
        if (at < 0 || !used.add(at)) {
            return OptionalDouble.empty();
        }
        double weighed = 0;
        try (var program = RationProgram.of(diet, feeds, ration.sureness(), used)) {
            program.feed(at, Math.max(FewFeeds.least(feed, options), Portions.NOTHING), Double.POSITIVE_INFINITY);
            // Newton: of a concave cost the tangent lies above, so that each price but the first lies below the last
            for (int step = 0; step < MOST_TANGENTS; step++) {
                program.cost(at, weighed);
                if (!(program.solve() instanceof Optimum optimum)) {
                    return OptionalDouble.empty();
                }
                double kg = program.amounts(optimum)[at];
                double next = weighed + (ration.weighed() - optimum.objective()) / kg;
                if (Math.abs(next - weighed) <= SAME_PRICE * Math.max(1, Math.abs(next))) {
                    break;
                }
                weighed = next;
            }
        }
        double price = feed.priceAtCost(weighed);
        return price > 0 ? OptionalDouble.of(price) : OptionalDouble.empty();
    }

    /** How a day can be fed at all: its rows, and how surely they can be kept; empty where it cannot. */
    Optional<DietBlock> block() {
        for (var asked : options.isCareful() ? List.of(this, without()) : List.of(this)) {
            var diet = asked.diet();
            var feeds = admitted(diet);
            var all = beside(feeds, i -> true);
            for (double share = 1; !feeds.isEmpty() && share >= 0; share -= 0.25) {
                if (Double.isFinite(least(diet, feeds, sureness.part(share), all))) {
                    return Optional.of(new DietBlock(diet, sureness.part(share)));
                }
            }
        }
        return Optional.empty();
    }

    /** The program of a ration of it, kept open, of every feed that the ration might have had. @param most how surely at most */
    RationProgram open(Ration ration, Sureness most) {
        var feeds = admitted(ration.diet());
        var forages = ration.portions().stream()
                .map(portion -> portion.feed().feed())
                .filter(feed -> feed.feedClass().isForage())
                .toList();
        return RationProgram.of(
                ration.diet(),
                feeds,
                most,
                beside(
                        feeds,
                        i -> !isFreeChoice() || forages.contains(feeds.get(i).feed())));
    }

    /** Whether a day can be fed by these very options, by expected figures. */
    public boolean isPossible() {
        var diet = diet();
        var feeds = admitted(diet);
        return !feeds.isEmpty() && Double.isFinite(least(diet, feeds, Sureness.EXPECTED, beside(feeds, i -> true)));
    }

    private LeastCostRation without() {
        return new LeastCostRation(offered, need, options.withoutCare(), sureness, amounts);
    }

    /** Free choice the forage that most lies there of, with what goes beside it; else all of them. */
    private Set<Integer> lastAlone(List<PricedFeed> feeds) {
        var most = IntStream.range(0, feeds.size())
                .boxed()
                .filter(i -> feeds.get(i).feed().feedClass().isForage())
                .max(Comparator.comparingDouble(
                        i -> feeds.get(i).own() ? feeds.get(i).kgAtHand() : 0));
        return beside(feeds, i -> !isFreeChoice() || most.filter(m -> m == i).isPresent());
    }

    private boolean isFreeChoice() {
        return options.way() == WayOfFeeding.FREE_CHOICE;
    }

    private static Set<Integer> only(List<PricedFeed> feeds, int forage) {
        return beside(feeds, i -> i == forage);
    }

    /** Indices of all that is no forage, and of these forages. */
    private static Set<Integer> beside(List<PricedFeed> feeds, IntPredicate forages) {
        return IntStream.range(0, feeds.size())
                .filter(i -> !feeds.get(i).feed().feedClass().isForage() || forages.test(i))
                .boxed()
                .collect(Collectors.toSet());
    }

    /** The rows these feeds and this need give. */
    public Diet diet() {
        return Diet.of(offered.stream().map(PricedFeed::feed).toList(), need, options);
    }

    List<PricedFeed> admitted(Diet diet) {
        var ids = diet.feeds().stream().map(haywright.diet.Feed::id).toList();
        return offered.stream().filter(f -> ids.contains(f.feed().id())).toList();
    }

    private static Ration ration(
            Diet diet,
            List<PricedFeed> feeds,
            Sureness sureness,
            RationProgram program,
            Optimum optimum,
            boolean withRanges) {
        var kg = program.amounts(optimum);
        var portions = new ArrayList<Portion>();
        var notUsed = new ArrayList<NotUsed>();
        boolean ranges = withRanges && program.hasRanges(optimum);
        for (int i = 0; i < kg.length; i++) {
            var feed = feeds.get(i);
            double perKg = feed.weighedPerKgEaten();
            if (kg[i] > Portions.NOTHING) {
                portions.add(Portions.of(feed, kg[i], ranges ? stays(feed, optimum.costRange(i)) : Portions.NO_RANGE));
            } else {
                notUsed.add(new NotUsed(feed, feed.priceAtCost(perKg - optimum.reducedCost(i))));
            }
        }
        var limits = new ArrayList<LimitAnswer>();
        for (int i = 0; i < diet.rows().size(); i++) {
            var row = diet.rows().get(i);
            // A ratio's program row moves by divisor for each unit of its limit.
            limits.add(new LimitAnswer(row, row.supplied(kg), program.price(optimum, row.of()) * row.divisor(kg)));
        }
        diet.growth().ifPresent(energy -> {
            limits.add(new LimitAnswer(GrowthRow.of(energy), energy.leftForGain(kg), program.priceOfGrowth(optimum)));
        });
        return new Ration(
                diet,
                portions,
                notUsed,
                portions.stream().mapToDouble(Portion::cost).sum(),
                limits,
                sureness,
                program.program());
    }

    private static Range stays(PricedFeed feed, Range costs) {
        return new Range(feed.priceAtCost(costs.low()), feed.priceAtCost(costs.high()));
    }
}
