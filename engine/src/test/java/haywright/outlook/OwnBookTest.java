package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class OwnBookTest {
    private static final LocalDate DAY = LocalDate.of(2026, 10, 14);

    private static Lot lot(long id) {
        return new Lot(
                new UUID(1, id),
                "lot " + id,
                FeedClass.GRASS_HAY,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                new Stock.Weighed(Quantity.of(50, Unit.TON)),
                Quantity.of(130, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }

    private static LabReport report(long id, long lot, double cp) {
        return new LabReport(
                new UUID(2, id),
                new UUID(1, lot),
                "A",
                "",
                null,
                DAY.plusDays(id),
                LabReport.HowSampled.PLAN,
                List.of(
                        new Reading(Analyte.CP, cp, Unit.PERCENT, Basis.DRY_MATTER),
                        new Reading(Analyte.TDN, 56, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of());
    }

    /** By hand: lots of 8, 10 and (9 + 13)/2 = 11 have the mean 29/3 and the standard deviation sqrt(7/3). */
    @Test
    void eachLotCountsOnceAndWhatWasCalculatedNotAtAll() {
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch")
                .with(lot(1))
                .with(lot(2))
                .with(lot(3))
                .with(lot(4))
                .with(report(1, 1, 8))
                .with(report(2, 2, 10))
                .with(report(3, 3, 9))
                .with(report(4, 3, 13));
        assertThat(OwnBook.of(ranch).rows()).singleElement().satisfies(row -> {
            assertThat(row.lots()).isEqualTo(3);
            assertThat(row.last()).isEqualTo(DAY.plusDays(4));
            assertThat(row.figures()).containsOnlyKeys(Analyte.CP);
            var protein = row.figures().get(Analyte.CP);
            assertThat(protein.lots()).isEqualTo(3);
            assertThat(protein.mean()).isCloseTo(29 / 3.0, within(1e-12));
            assertThat(protein.sd().orElseThrow()).isCloseTo(Math.sqrt(7 / 3.0), within(1e-12));
            assertThat(protein.least()).isEqualTo(8);
            assertThat(protein.most()).isEqualTo(11);
        });
    }

    /** By hand: beside lot 1 stand 10 and 11, beside a lot not tested all three. */
    @Test
    void besideALotStandOnlyTheOthersOfItsClass() {
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch")
                .with(lot(1))
                .with(lot(2))
                .with(lot(3))
                .with(report(1, 1, 8))
                .with(report(2, 2, 10))
                .with(report(3, 3, 11));
        var protein = OwnBook.beside(ranch, lot(1)).orElseThrow().figures().get(Analyte.CP);
        assertThat(protein.lots()).isEqualTo(2);
        assertThat(protein.mean()).isCloseTo(10.5, within(1e-12));
        assertThat(protein.least()).isEqualTo(10);
        assertThat(OwnBook.beside(ranch, lot(4)).orElseThrow().lots()).isEqualTo(3);
        assertThat(OwnBook.beside(
                        Ranch.empty(new UUID(0, 9), "a ranch").with(lot(1)).with(report(1, 1, 8)), lot(1)))
                .isEmpty();
    }

    @Test
    void oneLotTellsNothingOfSpread() {
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch").with(lot(1)).with(report(1, 1, 8));
        assertThat(OwnBook.of(ranch).rows().get(0).figures().get(Analyte.CP).sd())
                .isEmpty();
        assertThat(OwnBook.of(Ranch.empty(new UUID(0, 9), "a ranch").with(lot(1)))
                        .rows())
                .isEmpty();
    }
}
