package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Sampling;
import haywright.sampling.Aim;
import haywright.sampling.Material;
import haywright.sampling.SamplingPlan;
import haywright.sampling.Taken;
import haywright.sampling.stock.LooseStack;
import haywright.sampling.stock.RoundPyramid;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class LotSubjectTest {
    private static final Quantity FOOT = Quantity.of(30, Unit.FOOT);
    private static final Quantity BALE = Quantity.of(1250, Unit.POUND);

    private static Lot lot(FeedClass feed, Lot.Storage storage, Stock stock) {
        return new Lot(
                UUID.randomUUID(),
                "a lot",
                feed,
                "",
                "",
                "",
                null,
                storage,
                stock,
                Quantity.of(180, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }

    @Test
    void everyStockIsSomethingThatCanBeSampled() {
        var rounds = new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 100, BALE, null, null, null);
        var hay = FeedClass.GRASS_HAY;
        assertThat(LotSubject.material(lot(hay, Lot.Storage.OUTSIDE_ON_GROUND, rounds)))
                .isEqualTo(Material.LARGE_ROUND_BALE);
        assertThat(LotSubject.material(lot(hay, Lot.Storage.WRAPPED, rounds))).isEqualTo(Material.BALEAGE);
        assertThat(LotSubject.material(lot(hay, Lot.Storage.TARPED, new RoundPyramid(60, BALE, 3, 3, 10))))
                .isEqualTo(Material.LARGE_ROUND_BALE);
        assertThat(LotSubject.material(lot(
                        hay,
                        Lot.Storage.OUTSIDE_ON_GROUND,
                        new LooseStack(LooseStack.Shape.LOW_ROUND_TOPPED, FOOT, FOOT, Quantity.of(60, Unit.FOOT)))))
                .isEqualTo(Material.LOOSE_STACK);
        var weighed = new Stock.Weighed(Quantity.of(20, Unit.TON));
        assertThat(LotSubject.material(lot(FeedClass.CORN_SILAGE, Lot.Storage.BUNKER, weighed)))
                .isEqualTo(Material.BUNKER_OR_PILE);
        assertThat(LotSubject.material(lot(FeedClass.GRAIN, Lot.Storage.BARN, weighed)))
                .isEqualTo(Material.GRAIN_OR_BYPRODUCT);
        for (var feed : FeedClass.values()) {
            assertThat(SamplingPlan.of(LotSubject.of(lot(feed, Lot.Storage.BARN, weighed)), Aim.USUAL)
                            .grams())
                    .isPositive();
        }
    }

    @Test
    void aSheetKeepsThePlanAsItWasPrinted() {
        var stack = new Stock.Bales(Stock.BaleKind.LARGE_SQUARE, 120, BALE, 5, 12, 2);
        var plan = SamplingPlan.of(
                LotSubject.of(lot(FeedClass.LEGUME_HAY, Lot.Storage.BARN, stack)), Aim.USUAL.withSeed(9));
        var sheet = Sampling.of(plan, UUID.randomUUID(), UUID.randomUUID(), "a lot", LocalDate.of(2026, 11, 25));
        assertThat(sheet.picks()).hasSize(20).allMatch(n -> n >= 1 && n <= 120);
        assertThat(sheet.code()).matches("S[0-9A-Z]{5}");
        var subject = plan.subject();
        assertThat(new SampledLot(sheet, subject).reached()).isEmpty();
        var all = java.util.Collections.nCopies(20, 1);
        var back = sheet.with(new Taken(LocalDate.of(2026, 11, 26), "JB", all, "", java.util.List.of()));
        assertThat(new SampledLot(back, subject).reached().orElseThrow().halfWidth())
                .isEqualTo(plan.used().halfWidth());
        assertThat(sheet.bag(1)).startsWith(sheet.code() + "-1").isNotEqualTo(sheet.bag(2));
    }
}
