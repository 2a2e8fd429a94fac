package haywright.diet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.Animal;
import haywright.cattle.LiveWeight;
import haywright.cattle.RequirementSystem;
import haywright.cattle.need.Need;
import haywright.cattle.need.Requirement;
import haywright.diet.CheckedNeed.Verdict;
import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What nobody measured is neither short nor enough; what is short whatever a test would say is short. */
class CheckedNeedTest {
    private static final Need DRY =
            new Requirement(Animal.matureCow(new LiveWeight(590, false)), RequirementSystem.NRC_1996);

    private static Feed feed(String name, FeedClass kind, Object... figures) {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        for (int i = 0; i < figures.length; i += 2) {
            values.put(
                    (Analyte) figures[i], new Composition.Known(((Number) figures[i + 1]).doubleValue(), Origin.TYPED));
        }
        return new Feed(name, name, kind, new Composition(values), false);
    }

    private static Feed hay(Object... figures) {
        var all = new ArrayList<Object>(List.of(Analyte.TDN, 60, Analyte.NEM, 1.3, Analyte.NEG, 0.75));
        all.addAll(List.of(figures));
        return feed("hay", FeedClass.GRASS_HAY, all.toArray());
    }

    private static CheckedNeed checked(String id, List<Feed> feeds, double... kg) {
        return CheckedNeed.of(DRY, feeds, kg).stream()
                .filter(need -> need.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static CheckedNeed checked(String id, Feed feed) {
        return checked(id, List.of(feed), 10);
    }

    // Arkansas MP391, table of mineral requirements: magnesium 0.12 % in gestation. By hand: (10 · 0.10 + 2 · 0.30) /
    // 12.
    @Test
    void magnesiumIsCountedOverAllTheyEat() {
        var alfalfa = feed("alfalfa", FeedClass.LEGUME_HAY, Analyte.TDN, 58, Analyte.MG, 0.30);
        var both = checked("mg", List.of(hay(Analyte.MG, 0.10), alfalfa), 10, 2);
        assertThat(both.unit()).isEqualTo(Unit.PERCENT);
        assertThat(both.needed()).isEqualTo(0.12);
        assertThat(both.least()).isCloseTo(1.6 / 12, within(1e-12)).isEqualTo(both.most());
        assertThat(both.verdict()).isEqualTo(Verdict.MET);
        assertThat(checked("mg", hay(Analyte.MG, 0.10)).verdict()).isEqualTo(Verdict.SHORT);
    }

    @Test
    void aFeedThatNobodyTestedIsNeitherShortNorEnough() {
        var rich = feed("alfalfa", FeedClass.LEGUME_HAY, Analyte.TDN, 58, Analyte.MG, 0.30);
        var untested = checked("mg", List.of(hay(), rich), 10, 2);
        assertThat(untested.verdict()).isEqualTo(Verdict.UNTESTED);
        assertThat(untested.unknown()).containsExactly("hay");
        assertThat(untested.least()).isCloseTo(0.05, within(1e-12));
        // unless the tested ones bring enough for all: 8 kg of 0.30 in 12 kg are 0.20 %
        assertThat(checked("mg", List.of(hay(), rich), 4, 8).verdict()).isEqualTo(Verdict.MET);
        // and a feed of which nothing is fed asks nothing
        assertThat(checked("mg", List.of(hay(), rich), 0, 8).unknown()).isEmpty();
    }

    /** Found to be less than a limit: it may be all of the limit, or none. */
    @Test
    void lessThanIsABoundHereToo() {
        var values = new EnumMap<Analyte, Composition.Known>(Analyte.class);
        values.put(Analyte.MG, new Composition.Known(0.05, Origin.TYPED, null, null, 0.10));
        var hay = new Feed("hay", "hay", FeedClass.GRASS_HAY, new Composition(values), false);
        var need = checked("mg", hay);
        assertThat(List.of(need.least(), need.most())).containsExactly(0.0, 0.10);
        assertThat(need.verdict()).isEqualTo(Verdict.SHORT);
    }

    // NRC 1996 from memory: the microbes take 0.13 of the TDN eaten: 7.8 % of a diet of 60 % TDN.
    @ParameterizedTest(name = "protein {0} %, undegradable {1} % of it: {4}")
    @CsvSource({
        "13.0, 35, 8.45, 8.45, MET", // 13 · 0.65
        "10.0, 35, 6.50, 6.50, SHORT",
        "10.0, , 0, 10, UNTESTED",
        "7.5, , 0, 7.5, SHORT"
    })
    void degradableProteinIsWhatTheUndegradableShareLeaves(
            double protein, Double rup, double least, double most, Verdict verdict) {
        var feed = rup == null ? hay(Analyte.CP, protein) : hay(Analyte.CP, protein, Analyte.RUP, rup);
        var need = checked("rdp", feed);
        assertThat(need.needed()).isCloseTo(7.8, within(1e-9));
        assertThat(need.least()).isCloseTo(least, within(1e-9));
        assertThat(need.most()).isCloseTo(most, within(1e-9));
        assertThat(need.verdict()).isEqualTo(verdict);
        assertThat(need.source().cite()).contains("0.13");
    }

    @Test
    void aTestedShareComesBeforeTheBooks() {
        var tested = hay(Analyte.CP, 10, Analyte.RDP, 70, Analyte.RUP, 60);
        assertThat(checked("rdp", tested).least()).isCloseTo(7, within(1e-12));
    }

    // 0.1 kg of urea of 281 % is 281 g, all of it degradable; limestone has none and is no gap.
    @Test
    void ureaIsDegradableWholeAndAMineralBringsNone() {
        var urea = feed("urea", FeedClass.NPN, Analyte.CP, 281);
        var limestone = feed("limestone", FeedClass.MINERAL, Analyte.CA, 34);
        var need = checked("rdp", List.of(hay(Analyte.CP, 8, Analyte.RUP, 25), urea, limestone), 9.8, 0.1, 0.1);
        assertThat(need.unknown()).isEmpty();
        assertThat(need.least() * 100).isCloseTo(9.8 * 60 + 281, within(1e-9));
    }

    @Test
    void withoutAFeedsEnergyTheRumensNeedIsNotMadeUp() {
        var needs = CheckedNeed.of(DRY, List.of(feed("hay", FeedClass.GRASS_HAY, Analyte.CP, 9.0)), new double[] {10});
        assertThat(needs).extracting(CheckedNeed::id).containsExactly("mg", "vitamin_a");
        assertThat(CheckedNeed.of(DRY, List.of(hay()), new double[] {0})).isEmpty();
    }

    // 2,800 IU in a kg for pregnant cows (1,270 IU a lb, Merck).
    @Test
    void vitaminAIsNeededAndCountedOfNoFeed() {
        var need = checked("vitamin_a", hay());
        assertThat(need.needed()).isEqualTo(2800);
        assertThat(Unit.IU_PER_LB.fromBase(need.needed())).isCloseTo(1270, within(0.5));
        assertThat(need.least()).isZero();
        assertThat(need.verdict()).isEqualTo(Verdict.UNTESTED);
    }

    /** Drewnoski 2021: tags are made for 4 oz of loose mineral a day; 5 oz are 0.1417 kg. */
    @Test
    void moreMineralThanTagsAreMadeForIsSaid() {
        var tag = feed("mineral", FeedClass.MINERAL, Analyte.CA, 12, Analyte.P, 8);
        var diet = Diet.of(List.of(hay(Analyte.CP, 10), tag), DRY, DietOptions.USUAL);
        int at = diet.feeds().indexOf(tag);
        assertThat(tag.isLooseMineral()).isTrue();
        assertThat(diet.cautions(amounts(at, 5)))
                .singleElement()
                .satisfies(caution -> assertThat(caution.words()).contains("5.0 oz", "4 oz"));
        assertThat(diet.cautions(amounts(at, 4))).isEmpty();
    }

    private static double[] amounts(int mineral, double ounces) {
        var kg = new double[] {10, 10};
        kg[mineral] = ounces * 0.0283495;
        return kg;
    }

    /** Only what is surely short is warned of, by what the surely short lack. */
    @Test
    void aMixIsWarnedOfWhatIsShortForCertain() {
        var options = DietOptions.USUAL;
        var poor = Diet.of(List.of(hay(Analyte.CP, 10, Analyte.RUP, 35, Analyte.MG, 0.10)), DRY, options);
        assertThat(poor.cautions(new double[] {10}))
                .extracting(Object::toString)
                .hasSize(2);
        // by hand: 10 kg · 0.10 % are 10 g, 10 kg · 0.12 % are 12 g
        assertThat(poor.cautions(new double[] {10}).get(0).words()).contains("10 g of magnesium and 12 g");
        var untested = Diet.of(List.of(hay(Analyte.CP, 10)), DRY, options);
        assertThat(untested.cautions(new double[] {10})).isEmpty();
        assertThat(Map.of("mg", Verdict.UNTESTED, "rdp", Verdict.UNTESTED, "vitamin_a", Verdict.UNTESTED))
                .isEqualTo(untested.checked(new double[] {10}).stream()
                        .collect(java.util.stream.Collectors.toMap(CheckedNeed::id, CheckedNeed::verdict)));
    }
}
