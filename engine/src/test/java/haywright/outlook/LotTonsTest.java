package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.FeedClass;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.LabReport.HowSampled;
import haywright.forage.lab.Reading;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.ranch.Makeup;
import haywright.ranch.Ranch;
import haywright.sampling.LotCheck;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Stock;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class LotTonsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    private static Lot lot(FeedClass feed, Stock stock, @Nullable LocalDate made) {
        return new Lot(
                new UUID(0, 1),
                "a lot",
                feed,
                "",
                "",
                "",
                made,
                Lot.Storage.BARN,
                stock,
                Quantity.of(180, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }

    private static Lot rounds() {
        return lot(FeedClass.GRASS_HAY, bales(200), null);
    }

    private static Stock bales(int count) {
        return new Stock.Bales(Stock.BaleKind.LARGE_ROUND, count, Quantity.of(1200, Unit.POUND), null, null, null);
    }

    private static List<Quantity> pounds(double... weights) {
        return Arrays.stream(weights).mapToObj(w -> Quantity.of(w, Unit.POUND)).toList();
    }

    private static Lot weighed(double... weights) {
        return rounds().with(LotWeighing.ofBales(DAY, pounds(weights), 200));
    }

    private static double tons(double kg) {
        return Unit.TON.fromBase(kg);
    }

    // Mean 1,100 lb, s = sqrt(1000/4) = 15.81 lb, Student's t of 4 degrees at 90 % = 2.131847 (printed tables: 2.132);
    // H = 200·2.132·15.811·sqrt((1 − 5/200)/5) = 2,977 lb = 1.49 tons round 110 tons.
    @Test
    void whatWasTypedInAndWhatWasWeighedStandBesideEachOther() {
        var all = LotTons.of(weighed(1080, 1090, 1100, 1110, 1120));
        assertThat(all.ways()).hasSize(2);
        var typed = all.ways().get(0);
        assertThat(tons(typed.kg())).isCloseTo(120, within(1e-9));
        assertThat(tons(typed.range().lowKg())).isCloseTo(110, within(1e-9)); // 100 lb a bale
        var used = all.used();
        assertThat(used).isSameAs(all.ways().get(1));
        assertThat(tons(used.kg())).isCloseTo(110, within(1e-9));
        assertThat(tons(used.range().highKg()) - 110).isCloseTo(1.49, within(0.005));
        assertThat(LotTons.of(rounds().with(List.of())).kg().orElseThrow()).isCloseTo(typed.kg(), within(1e-9));
    }

    @Test
    void aWeighingThatIsWiderThanTheGuessIsKeptAndNotUsed() {
        var all = LotTons.of(weighed(800, 1500));
        assertThat(all.used()).isSameAs(all.ways().get(0));
    }

    @Test
    void waysThatDoNotMeetAreSaid() {
        assertThat(LotTons.of(weighed(700, 705, 710, 695, 690)).why()).contains("do not meet");
    }

    @Test
    void theNewestWeighingCountsAndTheOlderStays() {
        var twice = weighed(1080, 1090, 1100, 1110, 1120)
                .with(LotWeighing.ofWhole(DAY.plusDays(1), Quantity.of(112, Unit.TON)));
        var all = LotTons.of(twice);
        assertThat(all.ways()).hasSize(3);
        assertThat(tons(all.kg().orElseThrow())).isCloseTo(112, within(1e-9));
        assertThat(twice.with(twice.weighings().get(1))).isSameAs(twice);
    }

    // Fed down to 50 of 200: a quarter of the total and of its range.
    @Test
    void aWeighingSpeaksForTheBalesThatAreLeft() {
        var left = new Lot(
                new UUID(0, 1),
                "a lot",
                FeedClass.GRASS_HAY,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                bales(50),
                Quantity.of(180, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of(LotWeighing.ofBales(DAY, pounds(1080, 1090, 1100, 1110, 1120), 200)));
        var used = LotTons.of(left).used();
        assertThat(tons(used.kg())).isCloseTo(27.5, within(1e-9));
        assertThat(used.how()).contains("50");
        assertThat(Unit.POUND.fromBase(LotTons.baleKg(left).orElseThrow())).isCloseTo(1100, within(1e-9));
    }

    @Test
    void balesOfAPyramidAreWeighedLikeAnyOthers() {
        var pyramid = lot(FeedClass.GRASS_HAY, new RoundPyramid(60, Quantity.of(1200, Unit.POUND), 3, 3, 10), null)
                .with(LotWeighing.ofBales(DAY, pounds(1090, 1100, 1110), 60));
        assertThat(tons(LotTons.of(pyramid).kg().orElseThrow())).isCloseTo(33, within(1e-9));
    }

    @Test
    void aBinHasNoBalesToWeighAndAFieldNothingYet() {
        var field = lot(FeedClass.GRASS_HAY, new Stock.Standing(new UUID(0, 9), null), null);
        assertThat(LotTons.of(field).ways()).isEmpty();
        assertThat(LotTons.of(field).kg()).isEmpty();
        var gone = lot(FeedClass.GRASS_HAY, new Stock.Weighed(Quantity.of(40, Unit.TON)), null)
                .with(LotWeighing.ofBales(DAY, pounds(1090, 1100, 1110), 60));
        assertThat(tons(LotTons.of(gone).kg().orElseThrow())).isCloseTo(40, within(1e-9));
    }

    @Test
    void aWeighingOfNothingOrOfMoreThanThereIsIsRefused() {
        assertThatThrownBy(() -> LotWeighing.ofBales(DAY, pounds(1100), 200))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at least two");
        assertThatThrownBy(() -> LotWeighing.ofBales(DAY, pounds(1100, 1110, 1090), 2))
                .hasMessageContaining("more bales weighed than");
        assertThatThrownBy(() -> LotWeighing.ofBales(DAY, pounds(1100, -5), 200))
                .hasMessageContaining("weighs more than 0");
        assertThatThrownBy(() -> LotWeighing.ofWhole(DAY, Quantity.of(0, Unit.TON)))
                .hasMessageContaining("weighs more than 0");
        assertThatThrownBy(() -> LotWeighing.ofWhole(DAY, Quantity.of(3, Unit.FOOT)))
                .isInstanceOf(Refused.class);
    }

    // Whether it is one lot: what the lot's own form says reaches the plan; sizes of hay do not bind silage.
    @Test
    void theLotSaysWhatItIsMadeOf() {
        var makeup = new Makeup(2, null, null, 60.0, true, false, false);
        assertThat(makeup.facts(10).fields()).isEqualTo(1);
        assertThatThrownBy(() -> new Makeup(0, null, null, null, false, false, false))
                .hasMessageContaining("at least one");
        var silage = lot(
                FeedClass.CORN_SILAGE,
                new Stock.Bunker(
                        Quantity.of(150, Unit.FOOT),
                        Quantity.of(40, Unit.FOOT),
                        Quantity.of(12, Unit.FOOT),
                        Quantity.of(14, Unit.LB_PER_FT3),
                        35),
                null);
        var bunker = LotSubject.of(silage);
        assertThat(bunker.facts().tons()).isGreaterThan(200);
        assertThat(LotCheck.of(bunker.material(), bunker.facts()).warnings()).isEmpty();
        var hay = LotSubject.of(lot(FeedClass.GRASS_HAY, bales(400), null));
        assertThat(LotCheck.of(hay.material(), hay.facts()).warnings())
                .extracting(LotCheck.Warning::by)
                .containsExactly(LotCheck.By.SIZE);
    }

    private static WorthTesting worth(Lot lot, LabReport... reports) {
        var ranch = Ranch.empty(new UUID(1, 1), "A ranch").with(lot);
        for (var report : reports) {
            ranch = ranch.with(report);
        }
        return WorthTesting.of(new Yard(ranch, DAY), lot);
    }

    private static LabReport report(int id, LocalDate day, HowSampled how, Analyte analyte) {
        return new LabReport(
                new UUID(3, id),
                new UUID(0, 1),
                "a laboratory",
                "",
                day,
                null,
                how,
                Stream.of(analyte, Analyte.CP, Analyte.ADF)
                        .distinct()
                        .map(one -> new Reading(one, 0.1, Unit.PERCENT, Basis.DRY_MATTER))
                        .toList(),
                List.of());
    }

    @Test
    void aReportOfNitrateAloneIsNoTestForProtein() {
        var oats = lot(FeedClass.CEREAL_HAY, bales(200), null);
        var nitrate = new LabReport(
                new UUID(3, 1),
                new UUID(0, 1),
                "a laboratory",
                "",
                DAY,
                null,
                HowSampled.PLAN,
                List.of(new Reading(Analyte.NO3N, 0.1, Unit.PERCENT, Basis.DRY_MATTER)),
                List.of());
        var worth = worth(oats, nitrate);
        assertThat(worth.verdict()).isEqualTo(WorthTesting.Verdict.YES);
        assertThat(worth.words()).contains("protein");
    }

    @Test
    void whetherItIsWorthTestingIsAPlainSentence() {
        assertThat(worth(rounds()).verdict()).isEqualTo(WorthTesting.Verdict.YES);
        assertThat(worth(rounds()).words()).contains("$21,600");
        var little = worth(lot(FeedClass.GRASS_HAY, bales(4), null));
        assertThat(little.verdict()).isEqualTo(WorthTesting.Verdict.PERHAPS);
        assertThat(little.words()).contains("$432");
        var oats = lot(FeedClass.CEREAL_HAY, bales(200), null);
        assertThat(worth(oats).verdict()).isEqualTo(WorthTesting.Verdict.DANGER);
        assertThat(worth(oats, report(1, DAY, HowSampled.PLAN, Analyte.CP)).verdict())
                .isEqualTo(WorthTesting.Verdict.DANGER);
        assertThat(worth(oats, report(1, DAY, HowSampled.PLAN, Analyte.NO3N)).verdict())
                .isEqualTo(WorthTesting.Verdict.NO);
        // a laboratory may print nitrate in another form
        assertThat(worth(oats, report(1, DAY, HowSampled.PLAN, Analyte.NO3)).verdict())
                .isEqualTo(WorthTesting.Verdict.NO);
        var made = lot(FeedClass.GRASS_HAY, bales(200), DAY.minusDays(10));
        assertThat(worth(made, report(1, DAY.minusDays(11), HowSampled.PLAN, Analyte.CP))
                        .verdict())
                .isEqualTo(WorthTesting.Verdict.YES);
        assertThat(worth(rounds(), report(1, DAY.minusDays(400), HowSampled.PLAN, Analyte.CP))
                        .verdict())
                .isEqualTo(WorthTesting.Verdict.PERHAPS);
        assertThat(worth(rounds(), report(1, DAY, HowSampled.GRAB, Analyte.CP)).verdict())
                .isEqualTo(WorthTesting.Verdict.PERHAPS);
        assertThat(worth(rounds(), report(1, DAY, HowSampled.PLAN, Analyte.CP)).verdict())
                .isEqualTo(WorthTesting.Verdict.NO);
    }
}
