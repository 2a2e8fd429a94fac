package haywright.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.LabReport;
import haywright.forage.LabReport.HowSampled;
import haywright.forage.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.sampling.Aim;
import haywright.sampling.Design;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Stock;
import haywright.sampling.Taken;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class LotTestsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 10, 14);

    private static Lot lot(FeedClass feed) {
        return new Lot(
                new UUID(0, 1),
                "a lot",
                feed,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                new Stock.Bales(Stock.BaleKind.LARGE_SQUARE, 120, Quantity.of(1250, Unit.POUND), 5, 12, 2),
                Quantity.of(180, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                List.of());
    }

    private static LabReport report(HowSampled how, String code) {
        return new LabReport(
                new UUID(0, 2),
                new UUID(0, 1),
                "Tin Valley",
                code,
                null,
                DAY,
                how,
                List.of(new Reading(Analyte.CP, 19, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of());
    }

    private static Design design(Ranch ranch) {
        return LotTests.estimate(ranch, lot(FeedClass.LEGUME_HAY))
                .orElseThrow()
                .tested()
                .get(0)
                .design();
    }

    @Test
    void aReportCountsAsItsSheetCameBack() {
        var lot = lot(FeedClass.LEGUME_HAY);
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch").with(lot);
        assertThat(design(ranch.with(report(HowSampled.GRAB, "")))).isEqualTo(Design.of(1, 1, 1));
        assertThat(design(ranch.with(report(HowSampled.UNKNOWN, "")))).isEqualTo(Design.of(1, 1, 1));
        assertThat(design(ranch.with(report(HowSampled.PLAN, ""))))
                .isEqualTo(Design.of(LotTests.CORES_WITHOUT_SHEET, 1, 1));

        var plan = SamplingPlan.of(LotSubject.of(lot), Aim.USUAL.withSeed(9));
        var older = Sampling.of(plan, new UUID(3, 0x0123456789abcdefL), lot.id(), "a lot", DAY.minusDays(9))
                .with(new Taken(DAY.minusDays(8), "HB", Collections.nCopies(20, 1), "", List.of()));
        var newer = Sampling.of(plan, new UUID(4, 0x0fedcba987654321L), lot.id(), "a lot", DAY.minusDays(2))
                .with(new Taken(DAY.minusDays(1), "HB", Collections.nCopies(12, 2), "", List.of()));
        var sampled = ranch.with(older).with(newer);
        assertThat(design(sampled.with(report(HowSampled.PLAN, older.bag(1))))).isEqualTo(Design.of(20, 1, 1));
        assertThat(design(sampled.with(report(HowSampled.PLAN, "")))).isEqualTo(Design.of(12, 2, 1));
    }

    @Test
    void aFeedWhoseLotsNobodyKnowsHasNoEstimate() {
        var lot = lot(FeedClass.PROTEIN_MEAL);
        assertThat(LotTests.estimate(Ranch.empty(new UUID(0, 9), "a ranch").with(lot), lot))
                .isEmpty();
    }
}
