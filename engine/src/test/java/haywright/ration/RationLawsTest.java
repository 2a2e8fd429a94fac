package haywright.ration;

import static haywright.ration.Lots.LB;
import static haywright.ration.Lots.lot;
import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.intake.ForageCapacity;
import haywright.diet.DietOptions;
import haywright.diet.Feed;
import haywright.diet.Mixing;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.energy.NetEnergy;
import haywright.lp.Optimum;
import haywright.ration.LeastCostRation.Amounts;
import haywright.ration.RandomQuestions.Asked;
import haywright.workings.Origin;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What holds of every ration, over questions by chance. */
class RationLawsTest {
    private static final int QUESTIONS = 200;

    /** Of the cost: what two solutions of the same program may differ by. */
    private static final double EXACTNESS = 2e-6;

    private static Optional<Ration> ration(Asked asked, Sureness sureness, Amounts amounts) {
        return asked.as(sureness, amounts).solve() instanceof Ration ration ? Optional.of(ration) : Optional.empty();
    }

    /** By the careful limits alone, as surely as asked or not at all. */
    private static Optional<Ration> strictly(Asked asked, Sureness sureness) {
        return ration(asked, sureness, Amounts.EXACT)
                .filter(r -> r.sureness().equals(sureness)
                        && r.diet().options().isCareful() == asked.options().isCareful());
    }

    @Test
    void moreOfferedNeverCostsMore() {
        var random = new RandomQuestions(11);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            var asked = random.next();
            var more = new ArrayList<>(asked.feeds());
            more.add(random.hay("another"));
            more.add(random.priced("another grain", FeedClass.GRAIN, 120, 300, Map.of()));
            for (var sureness : List.of(Sureness.EXPECTED, Sureness.USUAL)) {
                var before = strictly(asked, sureness);
                if (before.isPresent()) {
                    var after = strictly(asked.with(more), sureness);
                    assertThat(after).as("question %d", k).isPresent();
                    assertThat(after.get().cost())
                            .as("question %d", k)
                            .isLessThanOrEqualTo(before.get().cost() * (1 + EXACTNESS));
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(QUESTIONS);
    }

    @Test
    void surerNeverCostsLess() {
        var random = new RandomQuestions(12);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            var asked = random.next();
            double before = 0;
            for (double percent : new double[] {50, 60, 75, 90, 97}) {
                var ration = strictly(asked, Sureness.of(percent));
                if (ration.isEmpty()) {
                    break;
                }
                assertThat(ration.get().cost())
                        .as("question %d at %s %%", k, percent)
                        .isGreaterThanOrEqualTo(before * (1 - EXACTNESS));
                before = ration.get().cost();
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(2 * QUESTIONS);
    }

    /** Of one hay: more protein, less of its doubt, less nitrate. What was a ration stays one, and costs no more. */
    @Test
    void betterNewsOfALotNeverMakesTheRationDearer() {
        var random = new RandomQuestions(13);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            double tdn = random.from(46, 62);
            double cp = random.from(5, 11);
            double sd = random.from(0.5, 2);
            double nitrate = random.from(100, 2000);
            double price = random.from(70, 130);
            var others = random.feeds();
            var mixing = Mixing.values()[random.below(3)];
            var options = new DietOptions(Set.of(), List.of(), 1, mixing).with(WayOfFeeding.values()[random.below(4)]);
            var asked = new Asked(with(others, news(tdn, cp, sd, nitrate, price)), random.need(), options);
            var better = List.of(
                    news(tdn, cp + random.from(0, 3), sd, nitrate, price),
                    news(tdn, cp, sd * random.from(0, 1), nitrate, price),
                    news(tdn, cp, sd, nitrate * random.from(0, 1), price));
            for (var sureness : List.of(Sureness.EXPECTED, Sureness.USUAL)) {
                var before = strictly(asked, sureness);
                for (int i = 0; before.isPresent() && i < better.size(); i++) {
                    var after = strictly(asked.with(with(others, better.get(i))), sureness);
                    assertThat(after).as("question %d, news %d", k, i).isPresent();
                    assertThat(after.get().cost())
                            .as("question %d, news %d", k, i)
                            .isLessThanOrEqualTo(before.get().cost() * (1 + EXACTNESS));
                    assertThat(isIn(after.get()))
                            .as("question %d, news %d", k, i)
                            .isGreaterThanOrEqualTo(isIn(before.get()));
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(3 * QUESTIONS);
    }

    private static int isIn(Ration ration) {
        return ration.diet().feeds().stream().anyMatch(f -> f.id().equals("news")) ? 1 : 0;
    }

    private static List<PricedFeed> with(List<PricedFeed> others, PricedFeed feed) {
        var all = new ArrayList<>(others);
        all.add(feed);
        return all;
    }

    private static PricedFeed news(double tdn, double cp, double sd, double nitrate, double price) {
        return lot(
                "news",
                FeedClass.GRASS_HAY,
                "",
                price,
                Map.of(Analyte.TDN, tdn, Analyte.CP, cp, Analyte.NO3N, nitrate),
                Map.of(Analyte.CP, sd));
    }

    /** A hay that carries them when they eat their fill of it is a ration by itself: no floor asks for more than they hold. */
    @Test
    void floorsNeverCrossFill() {
        var random = new RandomQuestions(14);
        int carried = 0;
        for (int k = 0; k < 2 * QUESTIONS; k++) {
            double tdn = random.from(42, 70);
            var need = random.need();
            var hay = certain("hay", FeedClass.GRASS_HAY, tdn);
            var feeds = UsualMineral.beside(List.of(hay));
            for (var way : List.of(WayOfFeeding.PUT_OUT_DAILY, WayOfFeeding.BUNK, WayOfFeeding.LIMIT_FED)) {
                var options = DietOptions.USUAL.with(way);
                for (var limits : List.of(options, options.withoutCare(), options.whereHayIsShort())) {
                    var question = new LeastCostRation(feeds, need, limits);
                    var diet = question.diet();
                    // the mineral's 2 oz fill a little too
                    double most = 0.99 / (diet.row("fill").top().get(0) / 100);
                    var energy = new NetEnergy(tdn);
                    boolean carries = need.neg() > 0
                            ? need.nem() / (most * energy.nem()) + need.neg() / (most * energy.neg()) < 1
                            : most * energy.nem() > need.nem();
                    if (carries) {
                        assertThat(question.solve())
                                .as("question %d, TDN %.1f, %s, %s", k, tdn, need.animals(), way)
                                .isInstanceOf(Ration.class);
                        carried++;
                    }
                }
            }
        }
        assertThat(carried).isGreaterThan(QUESTIONS);
    }

    /** Rich in protein, calcium and phosphorus, as it is stated. */
    private static PricedFeed certain(String name, FeedClass kind, double tdn) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        var energy = new NetEnergy(tdn);
        Map.of(
                        Analyte.DM,
                        88.0,
                        Analyte.CP,
                        16.0,
                        Analyte.TDN,
                        tdn,
                        Analyte.NEM,
                        energy.nem(),
                        Analyte.NEG,
                        energy.neg(),
                        Analyte.CA,
                        0.7,
                        Analyte.P,
                        0.32)
                .forEach((analyte, value) -> values.put(analyte, new Composition.Known(value, Origin.TYPED)));
        return new PricedFeed(new Feed(name, name, kind, new Composition(values), false), 0.12, 88, 0);
    }

    /**
     * Free choice they hold no more than elsewhere: what is fed beside the hay keeps them from eating some of it. The cold
     * makes room, as the intake equation has it; minerals take none; calves eat a little more than the classes of forage
     * say.
     */
    @Test
    void freeChoiceNothingIsEatenOnTopOfAFullBelly() {
        var random = new RandomQuestions(17);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            var asked = random.next();
            var free =
                    ration(asked.with(DietOptions.USUAL.with(WayOfFeeding.FREE_CHOICE)), Sureness.USUAL, Amounts.EXACT);
            if (free.isPresent()) {
                var need = asked.need();
                double milking = need.animals() == AnimalClass.GROWING ? 1 : need.milkingShare();
                double filled = 0;
                for (var portion : free.get().portions()) {
                    var feed = portion.feed().feed();
                    double percent = feed.feedClass() == FeedClass.MINERAL
                            ? Double.POSITIVE_INFINITY
                            : feed.feedClass().isForage()
                                    ? ForageCapacity.percentOfBodyWeight(
                                            feed.composition()
                                                    .value(Analyte.TDN)
                                                    .orElseThrow(),
                                            milking)
                                    : 3.5;
                    filled += portion.kg() / (percent / 100 * need.bodyWeight());
                }
                assertThat(filled).as("question %d", k).isLessThanOrEqualTo(1.03 * need.intakeFactor());
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(QUESTIONS / 2);
    }

    /**
     * As fed: nothing below a portion worth handling, within 2 % or 3 cents of the cheapest that portions allow, and no
     * set of fewer feeds is. Both are found here by trying every set of feeds.
     */
    @Test
    void asFedIsFewFeedsInPortionsForLittleMore() {
        var random = new RandomQuestions(15);
        int compared = 0;
        for (int k = 0; k < QUESTIONS; k++) {
            var asked = random.next();
            if (asked.options().way() == WayOfFeeding.FREE_CHOICE) {
                asked = asked.with(DietOptions.USUAL);
            }
            var sureness = k % 2 == 0 ? Sureness.EXPECTED : Sureness.USUAL;
            var exact = strictly(asked, sureness);
            var asFed = ration(asked, sureness, Amounts.AS_FED);
            if (exact.isEmpty() || asFed.isEmpty()) {
                continue;
            }
            var ration = asFed.get();
            assertThat(ration.sureness()).isEqualTo(sureness);
            assertThat(ration.limits()).as("question %d", k).allMatch(LimitAnswer::isMet);
            for (var portion : ration.portions()) {
                assertThat(portion.kgPutOut())
                        .as("question %d, %s", k, portion.feed().feed().name())
                        .isGreaterThanOrEqualTo(least(portion.feed()) * (1 - 1e-6));
            }
            var sets = sets(asked, exact.get(), sureness);
            double cheapest = sets.values().stream().mapToDouble(c -> c).min().orElseThrow();
            double band = cheapest + Math.max(0.02 * cheapest, 0.03);
            assertThat(ration.cost()).as("question %d", k).isLessThanOrEqualTo(band * (1 + EXACTNESS));
            int fewest = sets.entrySet().stream()
                    .filter(set -> set.getValue() <= band * (1 - EXACTNESS))
                    .mapToInt(set -> Integer.bitCount(set.getKey()))
                    .min()
                    .orElseThrow();
            assertThat(ration.portions().size()).as("question %d", k).isLessThanOrEqualTo(fewest);
            compared++;
        }
        assertThat(compared).isGreaterThan(QUESTIONS / 2);
    }

    /** kg as fed. 2 lb of a forage and 1 lb of anything else where a wagon mixes; a mineral is fed in ounces. */
    private static double least(PricedFeed feed) {
        var kind = feed.feed().feedClass();
        return kind == FeedClass.MINERAL ? 0 : kind.isForage() ? 2 * LB : LB;
    }

    /** Of each set of feeds that makes a ration in portions what it costs. */
    private static Map<Integer, Double> sets(Asked asked, Ration exact, Sureness sureness) {
        var costs = new java.util.TreeMap<Integer, Double>();
        int n = asked.feeds().size();
        for (int set = 1; set < 1 << n; set++) {
            try (var program = new RationProgram(exact.diet(), asked.feeds(), sureness)) {
                for (int i = 0; i < n; i++) {
                    boolean fed = (set >> i & 1) == 1;
                    var feed = asked.feeds().get(i);
                    program.feed(i, fed ? feed.eaten(least(feed)) : 0, fed ? Double.POSITIVE_INFINITY : 0);
                }
                if (program.solve() instanceof Optimum optimum) {
                    costs.put(set, optimum.objective());
                }
            }
        }
        return costs;
    }

    @Test
    void twoRunsGiveTheSameBytes() {
        for (var amounts : Amounts.values()) {
            var first = new RandomQuestions(16);
            var again = new RandomQuestions(16);
            var asked = new ArrayList<Asked>();
            var answers = new ArrayList<String>();
            for (int k = 0; k < QUESTIONS; k++) {
                asked.add(first.next());
                answers.add(bytes(asked.get(k).as(Sureness.USUAL, amounts).solve()));
            }
            for (int k = QUESTIONS - 1; k >= 0; k--) {
                assertThat(bytes(asked.get(k).as(Sureness.USUAL, amounts).solve()))
                        .isEqualTo(answers.get(k));
            }
            // made anew from the beginning, and solved on another thread
            var other = java.util.stream.IntStream.range(0, QUESTIONS)
                    .mapToObj(k -> again.next())
                    .toList();
            assertThat(other.stream()
                            .parallel()
                            .map(a -> bytes(a.as(Sureness.USUAL, amounts).solve()))
                            .toList())
                    .isEqualTo(answers);
        }
    }

    private static String bytes(RationAnswer answer) {
        if (answer instanceof Ration ration) {
            var all = new StringBuilder(Double.toHexString(ration.cost())).append(ration.sureness());
            ration.portions().forEach(p -> all.append(p.feed().feed().id()).append(Double.toHexString(p.kg())));
            ration.limits().forEach(l -> all.append(l.row().id()).append(Double.toHexString(l.price())));
            ration.notUsed().forEach(n -> all.append(Double.toHexString(n.worthBuyingBelow())));
            return all.toString();
        }
        var all = new StringBuilder("none");
        ((NoRation) answer).conflicts().forEach(c -> all.append(c.row().id()).append(Double.toHexString(c.missing())));
        return all.toString();
    }

    /** Whoever asks for more gets no less: as sure as asked, or as these feeds can be made, to a 64th of what was asked. */
    @Test
    void whoAsksForMoreGetsNoLess() {
        var random = new RandomQuestions(400);
        int unreached = 0;
        for (int i = 0; i < 200; i++) {
            var asked = random.next();
            double before = 0;
            double weighed = 0;
            boolean wasCareful = true;
            for (double percent : new double[] {60, 75, 85, 92, 97}) {
                if (!(asked.as(Sureness.of(percent), Amounts.EXACT).solve() instanceof Ration ration)) {
                    break;
                }
                double z = haywright.chance.Normal.quantile(ration.sureness().othersPercent() / 100);
                boolean isReached = ration.sureness().equals(Sureness.of(percent));
                unreached += isReached ? 0 : 1;
                double step = isReached ? 0 : haywright.chance.Normal.quantile(percent / 100) / 64;
                assertThat(z).as("question " + i + " at " + percent).isGreaterThan(before - step - 1e-9);
                // by the looser of two published limits it may cost less
                boolean isCareful = ration.diet().options().isCareful();
                if (isReached && isCareful == wasCareful) {
                    assertThat(ration.weighed()).isGreaterThan(weighed - 1e-6);
                }
                before = Math.max(before, z);
                weighed = ration.weighed();
                wasCareful = isCareful;
            }
        }
        assertThat(unreached).isPositive();
    }
}
