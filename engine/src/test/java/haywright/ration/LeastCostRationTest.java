package haywright.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.Mixing;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.energy.NetEnergy;
import haywright.forage.hazard.NitrateRisk;
import haywright.workings.Origin;
import haywright.workings.Refused;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ojalgo.optimisation.ExpressionsBasedModel;

class LeastCostRationTest {
    /** Feeds of round book values (Preston's guide and NRC tables, as the feed book has them), prices invented. */
    private static final PricedFeed MEADOW =
            feed("meadow hay", FeedClass.GRASS_HAY, 0.13, 90, 7, 50, 0.61, 0.18, 2.5, 0);

    private static final PricedFeed ALFALFA =
            feed("alfalfa", FeedClass.LEGUME_HAY, 0.21, 89, 17, 58, 1.4, 0.24, 2.3, 0);
    private static final PricedFeed STRAW = feed("barley straw", FeedClass.STRAW, 0.06, 90, 4, 43, 0.32, 0.08, 1.9, 0);
    private static final PricedFeed BARLEY = feed("barley", FeedClass.GRAIN, 0.26, 89, 12, 84, 0.06, 0.38, 2.1, 0);
    private static final PricedFeed DISTILLERS =
            feed("distillers grains", FeedClass.DISTILLERS_GRAINS, 0.27, 90, 29.7, 79.5, 0.22, 0.83, 10, 0);
    private static final PricedFeed LIMESTONE = mineral("limestone", 0.3, 34, 0);
    private static final List<PricedFeed> ALL = List.of(MEADOW, ALFALFA, STRAW, BARLEY, DISTILLERS, LIMESTONE);

    private static final Need DRY_COW =
            new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);

    private static Need heifer(double gain) {
        return new Requirement(
                new Animal(
                        AnimalClass.GROWING, Breed.AVERAGE, new LiveWeight(230, false), 5, null, null, gain, 560, 20),
                RequirementSystem.NRC_1996);
    }

    private static Ration solved(Need need, PricedFeed... feeds) {
        return (Ration) new LeastCostRation(List.of(feeds), need, DietOptions.USUAL).solve();
    }

    @Test
    void aCowsRationMeetsEveryRowAndIsMadeOfForage() {
        var ration = solved(DRY_COW, ALL.toArray(PricedFeed[]::new));
        assertThat(ration.limits()).allMatch(LimitAnswer::isMet);
        assertThat(ration.limit("nem").supplied()).isGreaterThanOrEqualTo(DRY_COW.nem() - 1e-6);
        assertThat(ration.limit("forage").supplied()).isGreaterThanOrEqualTo(60 - 1e-6);
        assertThat(ration.limit("straw").supplied()).isLessThanOrEqualTo(0.0125 * DRY_COW.bodyWeight() + 1e-6);
        assertThat(ration.cost())
                .isCloseTo(ration.portions().stream().mapToDouble(Portion::cost).sum(), within(1e-9));
        FormulaCheck.reEvaluates(ration);
    }

    @Test
    void aSecondSolverFindsTheSameCostInTheRationsOwnMps() throws Exception {
        for (var need : List.of(DRY_COW, heifer(0.5), heifer(0.9))) {
            var ration = solved(need, ALL.toArray(PricedFeed[]::new));
            var text = ration.program().toMps();
            var file = java.nio.file.Files.createTempFile("ration", ".mps");
            java.nio.file.Files.writeString(file, text);
            var other = ExpressionsBasedModel.parse(file.toFile()).minimise();
            assertThat(other.getValue()).isCloseTo(ration.cost(), within(1e-6 * ration.cost()));
        }
    }

    @Test
    void pricesOfLimitsAreWhatOneUnitMoreReallyCosts() {
        var ration = solved(DRY_COW, ALL.toArray(PricedFeed[]::new));
        double step = 1e-4;
        for (var limit : ration.limits()) {
            if (!limit.isTight() || limit.row().isRatio() || limit.row().kind() != DietRow.Kind.NEED) {
                continue;
            }
            int row = ration.diet().rows().indexOf(limit.row());
            double toward = limit.row().sense() == DietRow.Sense.AT_LEAST ? step : -step;
            var feeds = ALL;
            try (var program = new RationProgram(ration.diet(), feeds)) {
                program.limit(row, limit.row().limit() + toward);
                double more = ((haywright.lp.Optimum) program.solve()).objective();
                assertThat((more - ration.cost()) / step)
                        .as(limit.row().name())
                        .isCloseTo(limit.price(), within(1e-5 * Math.max(1, limit.price())));
            }
        }
    }

    @Test
    void theTightRatiosPriceIsWhatOneUnitMoreReallyCosts() {
        var question = new LeastCostRation(ALL, DRY_COW, DietOptions.USUAL);
        double floor = 9;
        double step = 1e-4;
        var ration = withProteinFloor(question, floor);
        assertThat(ration.limit("cp_floor").isTight()).isTrue();
        assertThat(ration.limit("cp_floor").supplied()).isCloseTo(floor, within(1e-6));
        assertThat(ration.limit("cp_floor").price())
                .isCloseTo((withProteinFloor(question, floor + step).cost() - ration.cost()) / step, within(1e-5));
    }

    private static Ration withProteinFloor(LeastCostRation question, double percent) {
        var diet = question.diet();
        var rows = diet.rows().stream()
                .map(r -> r.id().equals("cp_floor") ? r.withLimit(percent) : r)
                .toList();
        return (Ration) question.solve(new haywright.diet.Diet(
                diet.need(), diet.feeds(), rows, diet.growth(), diet.leftOut(), diet.options()));
    }

    @Test
    void growthIsCarriedByWhatUpkeepLeavesOver() {
        var need = heifer(0.7);
        var ration = solved(need, ALL.toArray(PricedFeed[]::new));
        double nem = 0;
        double neg = 0;
        for (var portion : ration.portions()) {
            nem += portion.kg()
                    * portion.feed().feed().composition().value(Analyte.NEM).orElse(0);
            neg += portion.kg()
                    * portion.feed().feed().composition().value(Analyte.NEG).orElse(0);
        }
        // National Research Council 1996: kilograms for maintenance first, the rest of the same diet for gain.
        double kg = ration.kg();
        double forUpkeep = need.nem() / (nem / kg);
        double forGain = need.neg() / (neg / kg);
        assertThat(forUpkeep + forGain).isLessThanOrEqualTo(kg * (1 + 1e-7));
        assertThat(ration.limit("growth").isMet()).isTrue();
    }

    @Test
    void theLeastCostOfGrowthAgreesWithATrialOfTenThousandMixes() {
        // Two feeds, so that every mix can be tried: nothing on the grid that keeps all rows is cheaper.
        var need = heifer(0.6);
        var ration = solved(need, ALFALFA, BARLEY);
        double best = Double.POSITIVE_INFINITY;
        var diet = ration.diet();
        for (double share = 0; share <= 1; share += 0.0001) {
            var one = new double[] {1 - share, share};
            double kg = 1 + diet.growth().orElseThrow().broken(one);
            for (var row : diet.rows()) {
                if (row.kind() == DietRow.Kind.NEED && row.sense() == DietRow.Sense.AT_LEAST) {
                    kg = Math.max(kg, row.limit() / row.supplied(one));
                }
            }
            var fed = new double[] {kg * (1 - share), kg * share};
            if (diet.rows().stream().allMatch(r -> r.margin(fed) >= -1e-9)) {
                best = Math.min(best, fed[0] * ALFALFA.costPerKgEaten() + fed[1] * BARLEY.costPerKgEaten());
            }
        }
        assertThat(ration.cost()).isLessThanOrEqualTo(best + 1e-9).isCloseTo(best, within(1e-3));
    }

    @Test
    void aFeedComesInJustBelowThePriceItIsWorthBuyingAt() {
        var ration = solved(DRY_COW, ALL.toArray(PricedFeed[]::new));
        assertThat(ration.notUsed()).isNotEmpty();
        for (var unused : ration.notUsed()) {
            if (!(unused.worthBuyingBelow() > 0)) {
                continue;
            }
            for (var factor : Map.of(0.999, true, 1.001, false).entrySet()) {
                var priced = new PricedFeed(
                        unused.feed().feed(),
                        unused.worthBuyingBelow() * factor.getKey(),
                        unused.feed().dryMatterPercent(),
                        unused.feed().feedingLossPercent());
                var feeds = ALL.stream()
                        .map(f -> f.feed().id().equals(priced.feed().id()) ? priced : f)
                        .toArray(PricedFeed[]::new);
                assertThat(solved(DRY_COW, feeds).portions())
                        .filteredOn(
                                p -> p.feed().feed().id().equals(priced.feed().id()))
                        .hasSize(factor.getValue() ? 1 : 0);
            }
        }
    }

    @Test
    void tooMuchGainHasNoRationAndTheGainThatLiftsItLiftsIt() {
        var answer = new LeastCostRation(ALL, heifer(1.6), DietOptions.USUAL).solve();
        assertThat(answer).isInstanceOf(NoRation.class);
        var no = (NoRation) answer;
        assertThat(no.conflicts()).extracting(c -> c.row().id()).contains("growth");
        var lift = no.lifts().stream()
                .filter(l -> l.row().id().equals("growth"))
                .findFirst()
                .orElseThrow();
        assertThat(lift.to()).isBetween(0.0, heifer(1.6).neg());
        // A heifer whose energy for gain is that much has a ration; with two percent more she has none.
        assertThat(gainWithNeg(lift.to() * 0.999)).isInstanceOf(Ration.class);
        assertThat(gainWithNeg(lift.to() * 1.02)).isInstanceOf(NoRation.class);
    }

    private static RationAnswer gainWithNeg(double neg) {
        return new LeastCostRation(ALL, heifer(1.6).gaining(neg), DietOptions.USUAL).solve();
    }

    @Test
    void everyConflictIsIrreducible() {
        var no = (NoRation) new LeastCostRation(List.of(STRAW, LIMESTONE), DRY_COW, DietOptions.USUAL).solve();
        var ids = no.conflicts().stream().map(c -> c.row().id()).toList();
        assertThat(ids).isNotEmpty();
        assertThat(feasible(no, Set.copyOf(ids))).isFalse();
        for (var id : ids) {
            var rest = new java.util.HashSet<>(ids);
            rest.remove(id);
            assertThat(feasible(no, rest)).as("without " + id).isTrue();
        }
    }

    private static boolean feasible(NoRation no, Set<String> rows) {
        var program = haywright.lp.LinearProgram.minimize();
        int n = no.diet().feeds().size();
        for (var feed : no.diet().feeds()) {
            program.column(feed.id(), 0, 0, Double.POSITIVE_INFINITY);
        }
        for (var row : no.diet().rows()) {
            if (rows.contains(row.id())) {
                program.row(
                        row.id(),
                        row.lower(),
                        row.upper(),
                        java.util.stream.IntStream.range(0, n).toArray(),
                        row.coefficients());
            }
        }
        return program.build().solve() instanceof haywright.lp.Optimum;
    }

    @Test
    void anUntestedLotOfARiskCropStaysOutByName() {
        var oat = new PricedFeed(
                new Feed(
                        "oat hay",
                        "oat hay",
                        FeedClass.CEREAL_HAY,
                        MEADOW.feed().composition(),
                        true),
                0.01,
                88,
                15);
        var ration = solved(DRY_COW, MEADOW, ALFALFA, LIMESTONE, oat);
        assertThat(ration.portions()).noneMatch(p -> p.feed() == oat);
        assertThat(ration.diet().leftOut())
                .singleElement()
                .satisfies(out -> assertThat(out.why()).contains("oat hay").contains("not tested for nitrate"));
    }

    @Test
    void wantingAFeedThatIsLeftOutStandsInTheWayUntilItsNitrateIsKnown() {
        var oat = new Feed(
                "oat hay", "oat hay", FeedClass.CEREAL_HAY, MEADOW.feed().composition(), true);
        var wish = new DietOptions(
                Set.of(),
                List.of(new DietOptions.FeedLimit(
                        "oat hay", DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, 3)),
                1,
                Mixing.MIXES);
        var untested = List.of(MEADOW, ALFALFA, LIMESTONE, new PricedFeed(oat, 0.13, 88, 15));
        var no = (NoRation) new LeastCostRation(untested, DRY_COW, wish).solve();
        assertThat(no.conflicts()).extracting(c -> c.row().name()).containsExactly("oat hay");
        var tested = List.of(
                MEADOW,
                ALFALFA,
                LIMESTONE,
                feed("oat hay", FeedClass.CEREAL_HAY, 0.13, 88, 9, 57, 0.3, 0.28, 2.1, 300));
        var ration = (Ration) new LeastCostRation(tested, DRY_COW, wish).solve();
        assertThat(ration.portions()).anyMatch(p -> p.feed().feed().id().equals("oat hay") && p.kg() >= 3 - 1e-6);
    }

    @Test
    void aLotAboveTheStrictestDoNotFeedClassIsRefusedHoweverDiluted() {
        var hot = feed("hot oats", FeedClass.CEREAL_HAY, 0.01, 88, 10, 57, 0.3, 0.28, 2, 2100);
        var warm = feed("warm oats", FeedClass.CEREAL_HAY, 0.01, 88, 10, 57, 0.3, 0.28, 2, 1500);
        var ration = solved(DRY_COW, MEADOW, ALFALFA, LIMESTONE, hot, warm);
        assertThat(ration.diet().leftOut()).extracting(o -> o.feed().id()).containsExactly("hot oats");
        assertThat(ration.limit("nitrate").supplied()).isLessThanOrEqualTo(1000 + 1e-6);
    }

    /**
     * Without a wagon: free up to the safe line (1,000 ppm for cattle that are not pregnant, Clemson); from there to 1,500
     * only as the day's second feed, at most half of it; above that not at all. Silence counts as no wagon, and says so.
     */
    @Test
    void whereNothingMixesALotAboveTheSafeLineComesSecondOrNotAtAll() {
        var safe = feed("safe oats", FeedClass.CEREAL_HAY, 0.03, 88, 10, 57, 0.3, 0.28, 2, 1000);
        var warm = feed("warm oats", FeedClass.CEREAL_HAY, 0.01, 88, 10, 57, 0.3, 0.28, 2, 1400);
        var hotter = feed("hotter oats", FeedClass.CEREAL_HAY, 0.01, 88, 10, 57, 0.3, 0.28, 2, 1501);
        for (var mixing : List.of(Mixing.NO_MIXER, Mixing.NOT_SAID)) {
            var unmixed = new DietOptions(Set.of(), List.of(), 1, mixing);
            var offered = List.of(MEADOW, ALFALFA, LIMESTONE, warm, hotter);
            var ration = (Ration) new LeastCostRation(offered, DRY_COW, unmixed).solve();
            assertThat(ration.diet().leftOut()).singleElement().satisfies(out -> {
                assertThat(out.feed().id()).isEqualTo("hotter oats");
                assertThat(out.danger()).isTrue();
                assertThat(out.why().contains("nobody said")).isEqualTo(mixing == Mixing.NOT_SAID);
            });
            assertThat(ration.limit("nitrate_second").supplied()).isBetween(1.0, 50 + 1e-6);
            assertThat(ration.limit("nitrate").supplied()).isLessThanOrEqualTo(1000 + 1e-6);
        }
        var alone = new DietOptions(Set.of(), List.of(), 1, Mixing.NO_MIXER);
        var free = (Ration) new LeastCostRation(List.of(MEADOW, ALFALFA, LIMESTONE, safe), DRY_COW, alone).solve();
        assertThat(free.portions()).anyMatch(p -> p.feed() == safe);
        assertThat(free.limits()).noneMatch(l -> l.row().id().equals("nitrate_second"));
    }

    /** Rule of thumb T11: 30 L of water at 50 ppm on 12.2 kg of dry matter add 123 ppm (nitrate as nitrogen). */
    @Test
    void theNitrateOfTheWaterIsAdded() {
        var near = feed("near oats", FeedClass.CEREAL_HAY, 0.01, 88, 10, 57, 0.3, 0.28, 2, 950);
        var dry = DietOptions.USUAL;
        var wet = DietOptions.USUAL.with(new DietOptions.Water(50, 0));
        var one = new LeastCostRation(List.of(near), DRY_COW, dry).diet().row("nitrate");
        var other = new LeastCostRation(List.of(near), DRY_COW, wet).diet().row("nitrate");
        double[] eaten = {12.2};
        double added = other.supplied(eaten) - one.supplied(eaten);
        assertThat(one.supplied(eaten)).isCloseTo(950, within(1e-9));
        assertThat(added / 123).isBetween(0.7, 1.5); // she drinks near what the published example has
        assertThat(other.margin(eaten)).isNegative();
    }

    @Test
    void withoutPracticeLimitsTheCheapestAnswerIsOneNobodyShouldFeed() {
        var cheapGrain = List.of(
                MEADOW,
                feed("cheap straw", FeedClass.STRAW, 0.02, 90, 4, 43, 0.32, 0.08, 1.9, 0),
                feed("cheap barley", FeedClass.GRAIN, 0.10, 89, 12, 84, 0.06, 0.38, 2.1, 0),
                LIMESTONE);
        var off = new DietOptions(
                Set.of(
                        "straw",
                        "grain",
                        "grain_careful",
                        "forage",
                        "forage_floor",
                        "forage_least",
                        "fat",
                        "distillers"),
                List.of(),
                1,
                Mixing.MIXES);
        var bare = (Ration) new LeastCostRation(cheapGrain, DRY_COW, off).solve();
        var usual = (Ration) new LeastCostRation(cheapGrain, DRY_COW, DietOptions.USUAL).solve();
        assertThat(bare.cost()).isLessThan(usual.cost());
        assertThat(usual.limit("grain").supplied()).isLessThanOrEqualTo(0.005 * DRY_COW.bodyWeight() + 1e-6);
    }

    // Practice limit L02b: the careful limit is 0.25 % of body weight; by the looser one more is warned of.
    @Test
    void muchGrainOnForageIsWarnedOf() {
        var cheap = feed("cheap barley", FeedClass.GRAIN, 0.05, 89, 12, 84, 0.06, 0.38, 2.1, 0);
        var offered = List.of(MEADOW, cheap, LIMESTONE);
        assertThat(solved(DRY_COW, MEADOW, cheap, LIMESTONE).limit("grain").supplied())
                .isLessThanOrEqualTo(0.0025 * DRY_COW.bodyWeight() + 1e-6);
        var grainy = (Ration) new LeastCostRation(offered, DRY_COW, DietOptions.USUAL.withoutCare()).solve();
        assertThat(grainy.limit("grain").supplied()).isGreaterThan(0.0025 * DRY_COW.bodyWeight());
        assertThat(grainy.cautions()).hasSize(1);
        assertThat(solved(DRY_COW, MEADOW, ALFALFA, LIMESTONE).cautions()).isEmpty();
    }

    @Test
    void whatIsFedNowIsJudgedByTheSameRowsTheWorstFirst() {
        var question = new LeastCostRation(ALL, DRY_COW, DietOptions.USUAL);
        var mix = HandMix.judge(question, Map.of("barley straw", 10.0));
        assertThat(mix.meetsEverything()).isFalse();
        assertThat(mix.limits().get(0).isMet()).isFalse();
        assertThat(mix.cost()).isCloseTo(10 * 0.06, within(1e-9));
        var good = HandMix.judge(question, Map.of("meadow hay", 9.5, "alfalfa", 4.0, "barley", 1.0));
        assertThat(good.limits()).filteredOn(l -> l.row().id().equals("nem")).allMatch(LimitAnswer::isMet);
    }

    @Test
    void aFeedWithoutAPriceIsRefusedInWords() {
        assertThatThrownBy(() -> new PricedFeed(MEADOW.feed(), 0, 90, 15))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("replace");
        assertThatThrownBy(() -> new PricedFeed(MEADOW.feed(), Double.NaN, 90, 15))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PricedFeed(MEADOW.feed(), 0.1, 0, 15)).hasMessageContaining("dry matter");
        assertThatThrownBy(() -> new LeastCostRation(List.of(MEADOW, MEADOW), DRY_COW, DietOptions.USUAL))
                .hasMessageContaining("twice");
    }

    private static PricedFeed mineral(String name, double price, double ca, double p) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        put(values, Analyte.CA, ca);
        put(values, Analyte.P, p);
        return new PricedFeed(new Feed(name, name, FeedClass.MINERAL, new Composition(values), false), price, 99, 0);
    }

    private static PricedFeed feed(
            String name,
            FeedClass kind,
            double price,
            double dm,
            double cp,
            double tdn,
            double ca,
            double p,
            double fat,
            double no3n) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        put(values, Analyte.DM, dm);
        put(values, Analyte.CP, cp);
        put(values, Analyte.TDN, tdn);
        put(values, Analyte.NEM, new NetEnergy(tdn).nem());
        put(values, Analyte.NEG, new NetEnergy(tdn).neg());
        put(values, Analyte.CA, ca);
        put(values, Analyte.P, p);
        put(values, Analyte.FAT, fat);
        if (no3n > 0) {
            put(values, Analyte.NO3N, no3n);
        }
        boolean risk = NitrateRisk.isRisk(kind, java.util.Optional.empty());
        return new PricedFeed(new Feed(name, name, kind, new Composition(values), risk), price, dm, 0);
    }

    private static void put(Map<Analyte, Composition.Known> values, Analyte analyte, double value) {
        values.put(analyte, new Composition.Known(value, Origin.TYPED));
    }
}
