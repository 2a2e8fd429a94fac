package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Unit;
import haywright.sampling.Aim;
import haywright.sampling.LotCheck;
import haywright.sampling.LotFacts;
import haywright.sampling.Material;
import haywright.sampling.Probe;
import haywright.sampling.Purpose;
import haywright.sampling.Safety;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Subject;
import haywright.workings.PublishedTable;
import java.util.HashSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a plan says to the person who takes the sample. */
class SamplingWordsTest {
    private static SamplingPlan plan(Material material, int units, Aim aim) {
        return SamplingPlan.of(Subject.of(material, units), aim);
    }

    /** Bore and depth in meters, of large round bales. */
    private static SamplingPlan cored(double bore, double depth, int bales) {
        var probe = new Probe(bore, depth);
        var subject = new Subject(Material.LARGE_ROUND_BALE, bales, null, null, 0, 0, probe, LotFacts.PLAIN);
        return SamplingPlan.of(subject, Aim.USUAL);
    }

    @ParameterizedTest
    @EnumSource
    void everyMaterialHasItsKitAndItsCautions(Material material) {
        var aim = material == Material.STOCK_WATER ? Aim.USUAL.with(Purpose.WATER) : Aim.USUAL;
        var plan = plan(material, material.isCounted() ? 120 : 0, aim);
        assertThat(MassWords.of(plan)).isNotBlank().doesNotContain("laboratory needs more", "take larger ones");
        assertThat(SamplingWords.kit(plan)).isNotEmpty();
        assertThat(SamplingWords.kit(plan).toString().contains("bales, or the loader"))
                .isEqualTo(material.isBaled());
        assertThat(SamplingWords.cautions(plan).get(0).words()).contains("safety rules come first");
    }

    // 20 cores of 3/8 in to 12 in are 0.161 lb, 0.00805 lb each (SamplingPlanTest): 42.1 more make 0.5 lb
    @Test
    void tooLittleAndTooMuchAreSaidAndNoCoreIsThrownAway() {
        assertThat(MassWords.of(plan(Material.LARGE_ROUND_BALE, 100, Aim.USUAL)))
                .contains("fits one bag", "Send all of it");
        var thin = cored(Unit.INCH.toBase(0.375), Unit.INCH.toBase(12), 100);
        double needs = Unit.GRAM.to(Unit.POUND, thin.needGrams());
        assertThat(MassWords.of(thin)).contains("take %d more cores".formatted((int)
                        Math.ceil((needs - 20 * 0.0080535) / 0.0080535)));
        assertThat(MassWords.of(cored(0.025, 0.6, 100))).contains("grind it all", "Never split cored hay");
        assertThat(MassWords.of(cored(0.05, 0.6, 100))).contains("narrower probe", "every core");
    }

    @Test
    void thePurposeChangesWhatIsSaid() {
        assertThat(Orders.of(Material.STANDING_FORAGE, Purpose.PRUSSIC_ACID).keep())
                .contains("never dried");
        var nitrate = plan(Material.LARGE_ROUND_BALE, 80, new Aim(null, "no3n", 20, 95, Purpose.NITRATE, 1, null));
        assertThat(SamplingWords.cautions(nitrate).toString()).contains("veterinarian");
        var molds = plan(Material.LARGE_ROUND_BALE, 80, Aim.USUAL.with(Purpose.MOULDS));
        assertThat(MassWords.of(molds)).contains("10 lb");
    }

    /** Published rows R001 to R003 and R086: tons as they lie or of dry matter, hours of baling, tons for nitrate. */
    @Test
    void whatALotIsSplitByIsSaidWithWhatItCosts() {
        var mixed = new LotFacts(350, 2, 3, 96, true, true, true, 2);
        var said = LotCheck.of(Material.BALEAGE, mixed, Purpose.NITRATE).warnings();
        assertThat(said)
                .hasSize(LotCheck.By.values().length)
                .allMatch(w -> SplitWords.cost(w).length() > 40);
        assertThat(said.stream().map(SplitWords::by).toList().toString())
                .contains("2 cuttings", "3 fields", "2 kinds", "96 h", "350 tons");
        assertThat(said.stream().map(SplitWords::cost).toList().toString())
                .contains("at most 200 tons", "dry matter", "48 h", "at most 100 tons");
    }

    @Test
    void aFaceAndASiloAreWarnedOf() {
        assertThat(SamplingWords.cautions(plan(Material.BUNKER_OR_PILE, 0, Aim.USUAL))
                        .toString())
                .contains("Never alone", "three times its height");
        assertThat(SamplingWords.cautions(plan(Material.UPRIGHT_SILO, 0, Aim.USUAL))
                        .toString())
                .contains("stay out for six weeks", "45 minutes");
    }

    // Storage of each material as its own row of the published methods has it: wet feed goes cold whatever it is tested
    // for.
    @ParameterizedTest
    @EnumSource
    void wetFeedIsNeverKeptAsHayIs(Material material) {
        for (var purpose : Purpose.values()) {
            var keep = Orders.of(material, purpose).keep();
            assertThat(keep).isNotBlank();
            if (material.needsCold()) {
                assertThat(keep).as(purpose.words()).doesNotContain("dry.", "cool and dark");
                assertThat(keep).as(purpose.words()).containsPattern("(?i)chill|cold|froze|freeze|ice");
            }
        }
        assertThat(Orders.of(Material.LARGE_ROUND_BALE, Purpose.NUTRIENTS).keep())
                .contains("airtight", "cool and dark");
        assertThat(Orders.of(Material.LARGE_ROUND_BALE, Purpose.MOULDS).keep()).contains("breathes");
    }

    @Test
    void anAmountIsNamedForWhatIsTaken() {
        var scoops = Orders.of(Material.BUNKER_OR_PILE, Purpose.NUTRIENTS);
        assertThat(scoops.amount(Material.BUNKER_OR_PILE, 20, 1)).isEqualTo("20 scoops");
        var cores = Orders.of(Material.LARGE_ROUND_BALE, Purpose.NUTRIENTS);
        assertThat(cores.amount(Material.LARGE_ROUND_BALE, 1, 20)).isEqualTo("1 bale, 20 cores each");
        var loads = Orders.of(Material.CHOPPER_WAGON, Purpose.NUTRIENTS);
        assertThat(loads.amount(Material.CHOPPER_WAGON, 10, 5)).isEqualTo("10 loads, 5 handfuls each");
    }

    @Test
    void coredHayIsNeverQuarteredAndWetFeedGoesCold() {
        assertThat(Material.LARGE_ROUND_BALE.maySplit()).isFalse();
        assertThat(MassWords.of(plan(Material.LARGE_ROUND_BALE, 100, Aim.USUAL)))
                .doesNotContain("uarter");
        assertThat(MassWords.of(plan(Material.BUNKER_OR_PILE, 0, Aim.USUAL))).contains("Quarter");
        assertThat(SamplingWords.kit(plan(Material.BALEAGE, 60, Aim.USUAL)).toString())
                .contains("cooler", "bale tape");
    }

    // The strictest figure of the published rows comes first, in pounds, feet and weeks: 10 m, 800 kg, 4-6 weeks
    // against
    // 21 days and 2 weeks, 15-45 minutes against 30 and 15-20.
    @Test
    void aCautionSaysTheStrictestFigureInPlainWords() {
        var all = new HashSet<String>();
        for (var material : Material.values()) {
            assertThat(SamplingWords.cautions(material)).as(material.words()).isNotEmpty();
            for (var caution : SamplingWords.cautions(material)) {
                all.add(caution.words());
                assertThat(caution.source().cite()).isNotBlank();
                assertThat(caution.words().split("[.!] ", -1))
                        .as(caution.words())
                        .hasSizeLessThanOrEqualTo(2);
                assertThat(caution.words()).doesNotContainPattern("[0-9] (kg|m|percent)\\b|\\(read|, read");
            }
        }
        assertThat(all.toString())
                .contains("%.0f ft from power lines".formatted(10 / 0.3048))
                .contains("weigh 1,760 lb")
                .contains("six weeks after filling (other sources: two or three)")
                .contains("blower 45 minutes")
                .contains("three times its height");
        assertThat(800 / 0.45359237).isBetween(1760.0, 1770.0);
        for (var row : PublishedTable.read(Safety.class, "safety.csv").rows()) {
            assertThat(PublishedTable.read(SamplingWords.class, "cautions.csv").rows())
                    .as(row.text("id"))
                    .anyMatch(c -> c.text("stands_on").contains(row.text("id")));
        }
    }
}
