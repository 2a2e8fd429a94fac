package haywright.forage.energy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.FormulaCheck;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.book.FeedBook;
import haywright.forage.lot.LotComposition;
import haywright.forage.lot.StorageLoss;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.workings.Origin;
import haywright.workings.Refused;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WeatheredTest {
    private static Weathered layer(double inches, double feet) {
        return new Weathered(Quantity.of(inches, Unit.INCH), Quantity.of(feet, Unit.FOOT));
    }

    // A layer of 4 inches on a bale 5 feet across: 1 − (52 / 60)^2 of it; 20 units lost there by the trial of 1990-91.
    @Test
    void aLayerIsMoreOfABaleThanItLooksAndTakesItsShareOfDigestibility() {
        assertThat(layer(4, 5).share()).isCloseTo(0.2488889, within(1e-7));
        assertThat(layer(4, 5).tdnLost()).isCloseTo(4.977778, within(1e-6));
        FormulaCheck.reEvaluates(layer(4, 5));
    }

    @ParameterizedTest(name = "{0} in of {1} ft: {2}")
    @CsvSource({
        "0, 5, deeper than nothing",
        "-1, 5, deeper than nothing",
        "30, 5, less deep than half the bale",
        "4, 60, round bales are from 2 to 9 ft across"
    })
    void aLayerThatCannotBeIsRefused(double inches, double feet, String words) {
        assertThatThrownBy(() -> layer(inches, feet))
                .isInstanceOf(Refused.class)
                .hasMessageContaining(words);
    }

    @Test
    void theLotHasLessEnergyAndTheSameProteinAndSaysWhy() {
        var meadow = FeedBook.published().row("C161");
        var before = LotComposition.of(FeedClass.GRASS_HAY, meadow, List.of());
        var after = LotComposition.of(
                FeedClass.GRASS_HAY,
                meadow,
                List.of(),
                Optional.empty(),
                Optional.of(layer(4, 5)),
                Map.of(),
                OptionalDouble.empty());
        double tdn = after.composition().value(Analyte.TDN).orElseThrow();
        assertThat(before.composition().value(Analyte.TDN).orElseThrow() - tdn).isCloseTo(4.977778, within(1e-6));
        assertThat(after.composition().value(Analyte.NEM).orElseThrow())
                .isCloseTo(new NetEnergy(tdn).nem(), within(1e-12));
        assertThat(after.composition().value(Analyte.CP))
                .isEqualTo(before.composition().value(Analyte.CP));
        assertThat(after.notes()).anyMatch(note -> note.contains("weathered since the sample"));
        assertThat(after.tdn().orElseThrow()).isInstanceOf(WeatheredTdn.class).satisfies(FormulaCheck::reEvaluates);
    }

    @Test
    void evenARottenBaleOfStrawHasTheTdnOfAFeed() {
        var straw = new StatedTdn(25, new Origin.Typed("report"));
        var rotten = new WeatheredTdn(straw, layer(20, 5));
        assertThat(rotten.percent()).isEqualTo(Analyte.TDN.possible().low());
        FormulaCheck.reEvaluates(rotten);
    }

    /** Twine, mesh, roof and plastic within a year, and stacks of the dry West in half of one, as their sources print them. */
    @Test
    void whatStoringTakesIsShownByHowHayIsKept() {
        assertThat(StorageLoss.published())
                .extracting(loss -> loss.percent() + " in " + loss.months() + ", " + loss.kept())
                .containsExactly(
                        "3.6 in 12, outside in solid plastic",
                        "5.0 in 6, outside",
                        "5.7 in 12, under a roof",
                        "10.6 in 12, outside in mesh wrap",
                        "18.2 in 12, outside in twine");
    }
}
