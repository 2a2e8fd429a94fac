package haywright.feeding;

import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.diet.LeftOut;
import haywright.diet.Sureness;
import haywright.feeding.worth.WorthOfASample;
import haywright.outlook.Yard;
import haywright.ranch.Lot;
import haywright.ranch.Wishes;
import haywright.ration.Doubts;
import haywright.ration.HandMix;
import haywright.ration.JointChance;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import haywright.ration.RationAnswer;
import haywright.ration.WholeBales;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The ways to feed one group, side by side: as now, as surely as is asked, and at even odds. Everything is worked out when
 * it is first asked for, and kept.
 */
public final class Offers {
    /** Percent of the doubt below which a test of the lot is not worth looking at. */
    private static final double LEAST_DOUBT = 5;

    /** Lots whose test is weighed: each takes most of a second. */
    private static final int MOST_TESTS = 2;

    /** On the standard deviations of needs; 0 is even odds, 1 as surely as is asked. */
    private static final List<Double> FACTORS = Stream.of(List.of(0.0, 0.5), Rations.SURER, List.of(2.5))
            .flatMap(List::stream)
            .toList();

    private final Rations asked;
    private final Group group;
    private final Map<UUID, WorthOfASample> worth = new ConcurrentHashMap<>();
    private @Nullable Optional<Offer> now;
    private @Nullable Optional<Offer> sure;
    private @Nullable Optional<Offer> held;
    private @Nullable Optional<WholeBales> bales;
    private @Nullable List<Offer> ways;
    private @Nullable List<Supply> supplies;
    private @Nullable Optional<ColdSnap> cold;
    private @Nullable GoodUntil until;

    public Offers(Rations rations, Group group) {
        asked = rations;
        this.group = group;
    }

    /** Of the ranch without {@link #waiting}. */
    public Rations rations() {
        return asked.meanwhile(group).map(Rations.Meanwhile::of).orElse(asked);
    }

    /** What was wished of feeds that may not be fed until they are tested: the ration is without it. */
    public List<Wishes.Wish> waiting() {
        return asked.meanwhile(group).map(Rations.Meanwhile::waiting).orElse(List.of());
    }

    public Yard yard() {
        return asked.yard();
    }

    public Group group() {
        return group;
    }

    /** The ranch's ration for it, or what stands in its way. */
    public RationAnswer answer() {
        return rations().ration(group);
    }

    /** As it is fed now; empty where nobody has said it. */
    public synchronized Optional<Offer> now() {
        if (now == null) {
            now = rations()
                    .fedNow(group)
                    .map(mix -> new Offer(mix, Lasting.asNow(rations(), mix.portions()), () -> holds(mix)));
        }
        return now;
    }

    /** As surely as is asked, or as these feeds allow; empty where there is no ration. */
    public synchronized Optional<Offer> sure() {
        if (sure == null) {
            sure = answer() instanceof Ration ration ? Optional.of(offer(ration)) : Optional.empty();
        }
        return sure;
    }

    /** With the score at calving that its ration is made for: {@link Rations#planned}. */
    public Group planned() {
        return rations().planned(group);
    }

    /** What would only hold cattle that the ration brings to a better score; empty where it brings them to none. */
    public synchronized Optional<Offer> held() {
        if (held == null) {
            var holding = group.holding();
            held = Regain.of(planned(), yard().day()).isPresent() && rations().ration(holding) instanceof Ration ration
                    ? Optional.of(new Offers(rations(), holding).offer(ration))
                    : Optional.empty();
        }
        return held;
    }

    /** The ration in whole bales; empty where there is none, or nothing of it is baled. */
    public synchronized Optional<WholeBales> wholeBales() {
        if (bales == null) {
            bales = answer() instanceof Ration ration ? rations().wholeBales(group, ration) : Optional.empty();
        }
        return bales;
    }

    /** By expected figures, dangers as surely as ever; empty where that is no cheaper, neither to pay nor as it counts. */
    public synchronized Optional<Offer> even() {
        return ways().stream()
                .findFirst()
                .filter(plain -> sure().filter(sure -> plain.counted() < sure.counted() && plain.cents() < sure.cents())
                        .isPresent());
    }

    /**
     * What can be fed more and less surely, from even odds upward, each in amounts that can be weighed out; none that counts
     * no less than one that holds more often. Empty where there is no ration.
     */
    public synchronized List<Offer> ways() {
        if (ways == null) {
            ways = answer() instanceof Ration ration ? ways(ration) : List.of();
        }
        return ways;
    }

    private List<Offer> ways(Ration ration) {
        var sure = sure().orElseThrow();
        var all = new ArrayList<Offer>();
        all.add(sure);
        if (ration.sureness().equals(Sureness.EXPECTED)) {
            return List.copyOf(all);
        }
        for (double factor : FACTORS) {
            if (rations().asSure(group, factor) instanceof Ration other) {
                all.add(offer(other));
            }
        }
        all.sort(Comparator.comparingDouble(Offer::counted)
                .thenComparing(Comparator.comparingDouble(Offer::holdsPercent).reversed()));
        var ways = new ArrayList<Offer>();
        double surest = -1;
        for (var way : all) {
            // one that is no worse than what is fed differs from it by less than can be told
            if (way.equals(sure) || way.holdsPercent() > surest && !isNoWorse(way, sure)) {
                ways.add(way);
                surest = way.holdsPercent();
            }
        }
        return List.copyOf(ways);
    }

    private static boolean isNoWorse(Offer one, Offer other) {
        return one.counted() <= other.counted() && one.holdsPercent() >= other.holdsPercent();
    }

    private Offer offer(Ration ration) {
        return offer(rations().weighable(group, ration));
    }

    /** Any mix, judged by the limits of this group, as an offer. */
    public Offer offer(HandMix mix) {
        return new Offer(mix, Lasting.with(rations(), group, mix.portions()), () -> holds(mix));
    }

    /** In which all is kept of what a mix is printed as; none where something in it may not be fed. */
    private double holds(HandMix mix) {
        if (!mix.notAllowed().isEmpty()
                || mix.portions().isEmpty()
                || !mix.harms().isEmpty()) {
            return 0;
        }
        var diet = rations()
                .question(group)
                .diet()
                .judging(mix.portions().stream().map(p -> p.feed().feed()).toList());
        return JointChance.of(diet, Supply.amounts(diet, mix.portions())).percent();
    }

    /** The day of grass; empty where it is not said, or none of this winter. */
    public Optional<LocalDate> grass() {
        var own = group.turnout();
        var day = own == null ? yard().ranch().turnout() : own;
        return Optional.ofNullable(day).filter(d -> d.isAfter(yard().day()));
    }

    /** From today to grass. */
    public OptionalInt days() {
        return grass().map(day -> OptionalInt.of((int) yard().day().until(day, ChronoUnit.DAYS)))
                .orElse(OptionalInt.empty());
    }

    /** The day until which the page holds and no feed of either mix is gone: beyond it their prices say nothing. */
    public LocalDate bothLast(Offer one, Offer other) {
        return Stream.of(one, other)
                .flatMap(offer -> offer.gone().values().stream())
                .reduce(goodUntil().day(), (first, gone) -> gone.isBefore(first) ? gone : first);
    }

    /** Cost against how often it holds; empty where there is no ration or being surer costs nothing. */
    public Optional<CostOfSureness> curve() {
        return CostOfSureness.of(ways());
    }

    /** What the ration likely supplies of each need, the least sure first; of what is fed now where there is no ration. */
    public synchronized List<Supply> supplies() {
        if (supplies == null) {
            supplies =
                    sure().or(this::now).map(offer -> suppliesOf(offer.mix())).orElse(List.of());
        }
        return supplies;
    }

    /** The same of any mix. */
    public List<Supply> suppliesOf(HandMix mix) {
        var fed = mix.portions().stream().map(p -> p.feed().feed()).toList();
        return fed.isEmpty()
                ? List.of()
                : Supply.of(rations().question(group).diet().judging(fed), mix.portions());
    }

    /** What a colder day takes; empty where no weather is said, or no hay is in the ration. */
    public synchronized Optional<ColdSnap> cold() {
        if (cold == null) {
            cold = sure().or(this::now).flatMap(offer -> ColdSnap.of(yard(), group, offer.mix()));
        }
        return cold;
    }

    /** How long the ration is good as it is written. */
    public synchronized GoodUntil goodUntil() {
        if (until == null) {
            until = GoodUntil.of(
                    rations(),
                    group,
                    sure().or(this::now).orElseThrow(() -> new IllegalStateException("nothing is fed")));
        }
        return until;
    }

    /** Lots whose test might change what is fed: those kept out for want of one, then the most doubtful of the ration. */
    public List<Lot> testable() {
        var lots = yard().ranch().lots();
        var out = rations().question(group).diet().leftOut().stream()
                .filter(LeftOut::danger)
                .map(l -> lots.get(UUID.fromString(l.feed().id())))
                .filter(lot -> lot != null && yard().ranch().reportsOn(lot.id()).isEmpty());
        var doubtful = new ArrayList<Lot>();
        if (answer() instanceof Ration ration) {
            Doubts.of(ration).stream()
                    .flatMap(row -> row.parts().stream())
                    .filter(part -> part.shrinks() == Doubts.Shrinks.SAMPLE && part.sharePercent() >= LEAST_DOUBT)
                    .sorted(Comparator.comparingDouble(Doubts.Doubt::sharePercent)
                            .reversed())
                    .flatMap(part -> part.feed().stream())
                    .filter(PricedFeed::own)
                    .map(feed -> lots.get(UUID.fromString(feed.feed().id())))
                    .filter(lot -> lot != null)
                    .forEach(doubtful::add);
        }
        return Stream.concat(out, doubtful.stream())
                .distinct()
                .limit(MOST_TESTS)
                .toList();
    }

    /** Worked out when it is first asked for: it takes most of a second. */
    public WorthOfASample worth(Lot lot) {
        return worth.computeIfAbsent(lot.id(), id -> WorthOfASample.of(asked, lot));
    }

    /** Whether every test of {@link #testable} is worked out already. */
    public boolean knowsWorth() {
        return testable().stream().allMatch(lot -> worth.containsKey(lot.id()));
    }
}
