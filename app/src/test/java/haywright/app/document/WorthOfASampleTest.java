package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.feeding.Rations;
import haywright.feeding.worth.WorthOfASample;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.Tested;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Laws that whatever information is worth must keep, on the demo, which is invented. */
class WorthOfASampleTest {
    private static final Ranch RANCH = TinLantern.ranch();
    private static final LocalDate DAY = RANCH.settings().today(LocalDate.EPOCH);
    private static final Rations RATIONS = new Rations(RANCH, DAY);
    private static final WorthOfASample OAT_HAY = WorthOfASample.of(RATIONS, lot("Oat hay"));

    private static Lot lot(String name) {
        return RANCH.lots().values().stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** A lot that must not be fed until it is tested, and one that nobody is sure of. */
    @Test
    void aSampleIsNeverWorthMoreThanTheTruth() {
        for (var worth : List.of(OAT_HAY, WorthOfASample.of(RATIONS, lot("Barley straw")))) {
            assertThat(worth.priceUsd()).isPositive();
            assertThat(worth.worthUsd()).isBetween(-worth.priceUsd(), worth.truthUsd() - worth.priceUsd() + 1e-6);
            assertThat(worth.lowUsd()).isLessThanOrEqualTo(worth.worthUsd());
            assertThat(worth.highUsd()).isGreaterThanOrEqualTo(worth.worthUsd());
        }
        assertThat(OAT_HAY.lowUsd()).isPositive();
    }

    @Test
    void theSameSeedGivesTheSameAndAnotherNearlyTheSame() {
        assertThat(WorthOfASample.of(new Rations(TinLantern.ranch(), DAY), lot("Oat hay")))
                .isEqualTo(OAT_HAY);
        var hay = WorthOfASample.of(RATIONS, lot("Pivot hay, first cutting"));
        var other = WorthOfASample.of(RATIONS, lot("Pivot hay, first cutting"), 7);
        assertThat(other).isNotEqualTo(hay);
        double half = hay.highUsd() - hay.worthUsd() + other.highUsd() - other.worthUsd();
        assertThat(other.worthUsd()).isCloseTo(hay.worthUsd(), within(1.5 * half));
    }

    /** It is let in for the whole winter or not at all: what a safe result saves is what the plan then costs less. */
    @Test
    void aLotThatADangerKeepsOutIsWorthWhatThePlanOfTheWinterSavesWithIt() {
        var plan = RATIONS.plan().orElseThrow();
        var oats = lot("Oat hay").id().toString();
        assertThat(plan.isKeptOut(oats)).isTrue();
        double saves =
                plan.plan().cost() - plan.cleared(RATIONS.yard(), oats).plan().cost();
        assertThat(OAT_HAY.truthUsd()).isEqualTo(saves);
        assertThat(OAT_HAY.worthUsd() + OAT_HAY.priceUsd()).isBetween(0.5 * saves, saves);
    }

    /** Too dear to be fed whatever it is made of, and standing in a field: then a result decides nothing. */
    @Test
    void whatCannotChangeTheDecisionIsWorthNothing() {
        var oats = lot("Oat hay");
        var dear = new Lot(
                oats.id(),
                oats.name(),
                oats.feedClass(),
                oats.bookRow(),
                oats.where(),
                oats.cutting(),
                oats.madeOn(),
                oats.storage(),
                oats.stock(),
                Quantity.of(5000, Unit.DOLLAR_PER_TON),
                oats.nitrateRisk(),
                oats.notes(),
                oats.makeup(),
                oats.weathered(),
                oats.weighings());
        for (var worth : List.of(
                WorthOfASample.of(new Rations(RANCH.with(dear), DAY), dear),
                WorthOfASample.of(RATIONS, lot("Standing meadow")))) {
            assertThat(worth.worthUsd()).isEqualTo(-worth.priceUsd());
            assertThat(worth.highUsd()).isEqualTo(-worth.priceUsd());
        }
    }

    /** Known from twenty laboratories, each of its own sample: one more look tells next to nothing. */
    @Test
    void anotherLookAtWhatIsKnownIsWorthItsPriceLess() {
        var known = RANCH;
        var values = Map.of(
                Analyte.CP, 9.5,
                Analyte.ADF, 37.0,
                Analyte.NDF, 58.0,
                Analyte.CA, 0.3,
                Analyte.P, 0.22,
                Analyte.NO3N, 250.0);
        for (int i = 0; i < 20; i++) {
            known = known.with(new LabReport(
                    new UUID(7, i),
                    lot("Oat hay").id(),
                    "laboratory " + i,
                    "",
                    DAY.minusDays(30),
                    DAY.minusDays(20),
                    LabReport.HowSampled.PLAN,
                    values.entrySet().stream()
                            .map(e -> new Reading(
                                    e.getKey(), e.getValue(), e.getKey().unit(), Basis.DRY_MATTER))
                            .toList(),
                    List.of(),
                    Tested.Method.WET,
                    List.of()));
        }
        var worth = WorthOfASample.of(new Rations(known, DAY), lot("Oat hay"));
        assertThat(worth.worthUsd() + worth.priceUsd()).isBetween(0.0, 0.02 * OAT_HAY.worthUsd());
    }
}
