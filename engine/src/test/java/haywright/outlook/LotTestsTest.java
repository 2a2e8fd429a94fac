package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.LabReport.HowSampled;
import haywright.forage.lab.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.Aim;
import haywright.sampling.Design;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Taken;
import haywright.sampling.stock.Stock;
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

    private static Sampling sheet(Aim aim, long code) {
        var plan = SamplingPlan.of(LotSubject.of(lot(FeedClass.LEGUME_HAY)), aim);
        return Sampling.of(plan, new UUID(5, code), new UUID(0, 1), "a lot", DAY.minusDays(3));
    }

    @Test
    void aCodeThatNamesASheetLetsNoOtherSpeakForIt() {
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch").with(lot(FeedClass.LEGUME_HAY));
        var back = sheet(Aim.USUAL, 0x0123456789abcdefL)
                .with(new Taken(DAY.minusDays(1), "HB", Collections.nCopies(20, 1), "", List.of()));
        var out = sheet(Aim.USUAL, 0x0fedcba987654321L);
        var both = ranch.with(back).with(out);
        assertThat(design(both.with(report(HowSampled.PLAN, out.bag(1)))))
                .isEqualTo(Design.of(LotTests.CORES_WITHOUT_SHEET, 1, 1));
        var wrong = back.bag(1).substring(0, 8) + "3" + back.bag(1).substring(9);
        assertThat(design(both.with(report(HowSampled.PLAN, wrong))))
                .isEqualTo(Design.of(LotTests.CORES_WITHOUT_SHEET, 1, 1));
        assertThat(design(both.with(report(HowSampled.PLAN, "24-7731")))).isEqualTo(Design.of(20, 1, 1));
    }

    /** Every single wrong sign, every swap of neighbors and every sign left out is seen, and the right code is named. */
    @Test
    void aBagThatWasCopiedWrongIsNeverTakenForAnother() {
        var sheet = sheet(Aim.USUAL, 0x0123456789abcdefL);
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch").with(sheet);
        var bag = sheet.bag(1);
        assertThat(BagCode.read(ranch, " " + bag.toLowerCase(java.util.Locale.ROOT))
                        .orElseThrow())
                .isEqualTo(new BagCode(sheet, "", ""));
        assertThat(BagCode.read(ranch, sheet.code()).orElseThrow()).isEqualTo(new BagCode(sheet, "", ""));
        for (int i = 0; i < bag.length(); i++) {
            for (char c : "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-".toCharArray()) {
                if (c != bag.charAt(i)) {
                    near(ranch, bag, bag.substring(0, i) + c + bag.substring(i + 1));
                }
            }
            near(ranch, bag, bag.substring(0, i) + bag.substring(i + 1));
            if (i + 1 < bag.length() && bag.charAt(i) != bag.charAt(i + 1)) {
                near(ranch, bag, bag.substring(0, i) + bag.charAt(i + 1) + bag.charAt(i) + bag.substring(i + 2));
            }
        }
        assertThat(BagCode.read(ranch, "24-7731")).isEmpty();
        assertThat(BagCode.read(ranch, "")).isEmpty();
        assertThat(BagCode.read(ranch.withoutSampling(sheet.id()), bag).orElseThrow())
                .isEqualTo(new BagCode(null, "", ""));
    }

    private static void near(Ranch ranch, String bag, String wrong) {
        var read = BagCode.read(ranch, wrong);
        assertThat(read).as(wrong).isPresent();
        assertThat(read.orElseThrow().isMiscopied()).as(wrong).isTrue();
        assertThat(read.orElseThrow().printed()).as(wrong).isEqualTo(bag);
    }

    /** As sheets once could be made. */
    private static Sampling inTwo(Sampling s) {
        return new Sampling(
                s.id(),
                s.lot(),
                s.what(),
                s.code(),
                s.made(),
                s.material(),
                s.rule(),
                s.purpose(),
                s.analyte(),
                s.halfWidth(),
                s.confidencePercent(),
                s.seed(),
                s.increments(),
                2,
                s.picks(),
                null,
                true,
                s.site());
    }

    @Test
    void twoCompositesAreTwoSamplesOfHalfTheBales() {
        var sheet = inTwo(sheet(Aim.USUAL, 0x0123456789abcdefL))
                .with(new Taken(DAY, "HB", Collections.nCopies(20, 1), "", List.of()));
        assertThat(sheet.bags()).hasSize(2);
        assertThat(sheet.composite(1) + sheet.composite(2) + sheet.composite(3)).isEqualTo("ABA");
        var a = report(HowSampled.PLAN, sheet.bags().get(0));
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch")
                .with(lot(FeedClass.LEGUME_HAY))
                .with(sheet);
        assertThat(design(ranch.with(a))).isEqualTo(Design.of(10, 1, 1));

        var b = new LabReport(
                new UUID(0, 3),
                new UUID(0, 1),
                "Tin Valley",
                sheet.bags().get(1),
                null,
                DAY,
                HowSampled.PLAN,
                List.of(new Reading(Analyte.CP, 18, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of(),
                null,
                List.of());
        var tested = LotTests.estimate(ranch.with(a).with(b), lot(FeedClass.LEGUME_HAY))
                .orElseThrow()
                .tested();
        assertThat(tested).extracting(t -> t.composite()).doesNotHaveDuplicates();

        // nothing went into B: it says nothing, and A still does
        var half = sheet.with(new Taken(DAY, "HB", List.of(1, 0, 1, 0), "", List.of()));
        assertThat(half.taken("B")).isEmpty();
        assertThat(half.taken("A").orElseThrow().units()).isEqualTo(2);
    }

    /** Two bags of one composite share the error of its sampling: a second analysis says nothing new of the stack. */
    @Test
    void twoBagsOfOneCompositeAreOneSample() {
        var sheet = sheet(Aim.USUAL, 0x0123456789abcdefL);
        var ranch = Ranch.empty(new UUID(0, 9), "a ranch")
                .with(lot(FeedClass.LEGUME_HAY))
                .with(sheet)
                .with(report(HowSampled.PLAN, sheet.bag(1)));
        var first = LotTests.estimate(ranch, lot(FeedClass.LEGUME_HAY))
                .orElseThrow()
                .tested();
        assertThat(first.get(0).composite()).isEqualTo(sheet.code());
    }

    @Test
    void aFeedWhoseLotsNobodyKnowsIsAsWideAsTheWidestOfItsClass() {
        var lot = lot(FeedClass.PROTEIN_MEAL);
        assertThat(LotTests.estimate(Ranch.empty(new UUID(0, 9), "a ranch").with(lot), lot))
                .hasValueSatisfying(estimate -> assertThat(estimate.estimates())
                        .isNotEmpty()
                        .allMatch(e -> e.now().sd() > 0));
    }
}
