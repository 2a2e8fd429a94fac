package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Animal;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.LiveWeight;
import haywright.cattle.Pregnancy;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.workings.Origin;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows of protein and grain against the published rules, worked by hand. */
class GrainAndProteinRowsTest {
    private static Feed feed(String name, FeedClass kind, Map<Analyte, Double> figures) {
        var known = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        figures.forEach((a, v) -> known.put(a, new Composition.Known(v, new Origin.Typed("a test"))));
        return new Feed(name, name, kind, new Composition(known), false);
    }

    private static Need cow(AnimalClass kind, double gain) {
        var pregnancy = kind == AnimalClass.MATURE_COW ? new Pregnancy(38, 200) : null;
        return new Requirement(
                new Animal(kind, Breed.named("Angus"), new LiveWeight(600, false), 5, pregnancy, null, gain, 600, 20),
                RequirementSystem.NRC_1996,
                List.of(),
                null);
    }

    private static Map<Analyte, Double> figures(double tdn, double cp, double nem) {
        var map = new EnumMap<Analyte, Double>(Analyte.class);
        map.put(Analyte.DM, 88.0);
        map.put(Analyte.TDN, tdn);
        map.put(Analyte.CP, cp);
        map.put(Analyte.NEM, nem);
        map.put(Analyte.NEG, nem - 0.6);
        return map;
    }

    /**
     * NRC 1996: 10 kg of hay of 60 % TDN let the rumen make 0.13·6,000 = 780 g, 64 % of it metabolizable: 499.2 g; of its
     * 1,000 g of protein 30 % passes and 80 % of that counts: 240 g. By degradable protein 0.64·700 + 240 = 688 g.
     */
    @Test
    void metabolizableProteinIsTheLessOfEnergyAndDegradableProtein() {
        var made = figures(60, 10, 1.3);
        made.put(Analyte.RUP, 30.0);
        var diet = Diet.of(List.of(feed("hay", FeedClass.GRASS_HAY, made)), cow(AnimalClass.MATURE_COW, 0), USUAL);
        assertThat(diet.row("mp").supplied(new double[] {10})).isCloseTo(739.2, within(1e-6));
        assertThat(diet.row("mp_rumen").supplied(new double[] {10})).isCloseTo(688, within(1e-6));
    }

    private static final DietOptions USUAL = DietOptions.USUAL;

    /** MP = 0.67·CP (University of Arkansas MP391) where nobody measured what passes: 10 kg of 10 % are 670 g. */
    @Test
    void whereNobodyMeasuredWhatPassesTheShortcutHolds() {
        var diet = Diet.of(
                List.of(feed("hay", FeedClass.GRASS_HAY, figures(60, 10, 1.3))), cow(AnimalClass.MATURE_COW, 0), USUAL);
        assertThat(diet.row("mp_rumen").supplied(new double[] {10})).isCloseTo(670, within(1e-6));
    }

    /** Yaremcio: wheat, triticale or rye at most 6 lb a day for cows, 3 for calves; other grain besides. */
    @ParameterizedTest
    @CsvSource({
        "Rolled wheat, MATURE_COW, 6",
        "Fall rye, MATURE_COW, 6",
        "TRITICALE grain, BULL, 6",
        "wheat, GROWING, 3",
    })
    void fastStarchHasItsOwnLimit(String name, AnimalClass kind, double pounds) {
        var wheat = feed(name, FeedClass.GRAIN, figures(88, 14, 2.1));
        var barley = feed("barley", FeedClass.GRAIN, figures(84, 12.8, 2.0));
        double gain = kind == AnimalClass.GROWING ? 0.5 : 0;
        var row = Diet.of(List.of(wheat, barley), cow(kind, gain), USUAL).row("fast_starch");
        double kgOfDryMatter = pounds * 0.45359237 * 0.88;
        assertThat(row.margin(new double[] {kgOfDryMatter, 5})).isCloseTo(0, within(1e-9));
        assertThat(row.margin(new double[] {kgOfDryMatter + 0.1, 0})).isNegative();
    }

    @ParameterizedTest
    @CsvSource({"Wheat straw, STRAW", "barley, GRAIN", "Ryegrass hay, GRASS_HAY"})
    void whatIsNoWheatGrainHasNone(String name, FeedClass kind) {
        var other = feed(name, kind, figures(60, 10, 1.3));
        assertThat(Diet.of(List.of(other), cow(AnimalClass.MATURE_COW, 0), USUAL)
                        .rows())
                .noneMatch(row -> row.id().equals("fast_starch"));
    }

    /** 4 kg of barley for a cow of 600 kg: 1 kg beyond 0.5 %, which loses 15 % of 2.0 Mcal. */
    @Test
    void grainBeyondOneFeedingCountsLess() {
        var barley = feed("barley", FeedClass.GRAIN, figures(84, 12.8, 2.06));
        var twice = new DietOptions(Set.of(), List.of(), 2, Mixing.MIXES);
        var need = cow(AnimalClass.MATURE_COW, 0);
        var diet = Diet.of(List.of(barley), need, twice);
        assertThat(diet.row("nem_two_feedings").supplied(new double[] {4})).isCloseTo(4 * 2.06 - 0.3, within(1e-9));
        assertThat(diet.row("nem_two_feedings").supplied(new double[] {3})).isCloseTo(3 * 2.06, within(1e-9));
        assertThat(Diet.of(List.of(barley), need, USUAL).rows())
                .noneMatch(row -> row.id().equals("nem_two_feedings"));
    }

    @Test
    void eachIsSwitchable() {
        var wheat = feed("wheat", FeedClass.GRAIN, figures(88, 14, 2.1));
        var off = new DietOptions(Set.of("mp", "fast_starch", "nem_two_feedings"), List.of(), 2, Mixing.MIXES);
        assertThat(Diet.of(List.of(wheat), cow(AnimalClass.MATURE_COW, 0), off).rows())
                .extracting(DietRow::id)
                .doesNotContain("mp", "mp_rumen", "fast_starch", "nem_two_feedings");
    }
}
