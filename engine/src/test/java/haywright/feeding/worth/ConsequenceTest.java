package haywright.feeding.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.diet.DietOptions;
import haywright.diet.Feed;
import haywright.feeding.worth.Consequence.Figures;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.energy.NetEnergy;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.workings.Origin;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What falling short comes to, with a pencil. Feeds and prices are invented. */
class ConsequenceTest {
    private static final Need COW =
            new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);

    private static Feed feed(String name, FeedClass kind, double cp, double tdn) {
        Map<Analyte, Composition.Known> values = new EnumMap<>(Analyte.class);
        Map.of(
                        Analyte.DM,
                        100.0,
                        Analyte.CP,
                        cp,
                        Analyte.TDN,
                        tdn,
                        Analyte.NEM,
                        new NetEnergy(tdn).nem(),
                        Analyte.NEG,
                        new NetEnergy(tdn).neg(),
                        Analyte.CA,
                        0.6,
                        Analyte.P,
                        0.3)
                .forEach((analyte, value) -> values.put(analyte, new Composition.Known(value, Origin.TYPED)));
        return new Feed(name, name, kind, new Composition(values), false);
    }

    private static PricedFeed priced(Feed feed, double price, boolean own) {
        return new PricedFeed(feed, price, 100, 0, 0, own, Double.POSITIVE_INFINITY, 0, Double.POSITIVE_INFINITY);
    }

    private static final Feed HAY = feed("hay", FeedClass.GRASS_HAY, 9, 56);
    private static final List<PricedFeed> FEEDS =
            List.of(priced(HAY, 0.15, true), priced(feed("cake", FeedClass.DISTILLERS_GRAINS, 30, 80), 0.3, false));

    private static Consequence of(Need need) {
        return Consequence.of(new LeastCostRation(FEEDS, need, DietOptions.USUAL))
                .orElseThrow();
    }

    private static Figures made(double nem, double neg, double cp) {
        return new Figures(new double[] {nem, 0}, new double[] {neg, 0}, new double[] {cp, 0});
    }

    @Test
    void enoughCostsItsFeedAndShortIsRefilledAtTheDearestMcalOrBoughtLate() {
        var cow = of(COW);
        double nem = new NetEnergy(56).nem();
        var kg = new double[] {12, 0};
        assertThat(cow.of(kg, made(10, 1, 50))).isCloseTo(12 * 0.15, within(1e-9));
        // 12 kg that hold a Mcal each; hay alone is fed, at 15 cents for NEm of 56 % TDN
        double missing = COW.nem() - 12 * 0.5;
        assertThat(cow.of(kg, made(0.5, 1, 50))).isCloseTo(12 * 0.15 + missing * 0.15 / nem / 0.8, within(1e-9));
        // protein: the cake is what can be bought, 30 cents for 0.3 kg
        double crude = Math.max(COW.crudeProtein(), COW.proteinFloor().percent() / 100 * 12) - 12 * 0.04;
        assertThat(cow.of(kg, made(10, 1, 4))).isCloseTo(12 * 0.15 + crude * 1.25, within(1e-9));
    }

    @Test
    void whatGrowsIsShortOfGain() {
        var need = new Requirement(
                new Animal(AnimalClass.GROWING, Breed.AVERAGE, new LiveWeight(230, false), 5, null, null, 0.3, 560, 20),
                RequirementSystem.NRC_1996);
        var calf = of(need);
        var kg = new double[] {7, 0};
        assertThat(calf.of(kg, made(10, 10, 50))).isCloseTo(7 * 0.15, within(1e-9));
        double left = 7 * 0.2 * (1 - need.nem() / (7 * 1.2));
        assertThat(calf.of(kg, made(1.2, 0.2, 50)))
                .isCloseTo(7 * 0.15 + (need.neg() - left) * calf.energyPrice(), within(1e-9));
    }
}
