package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class DaysOfFeedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

    private static Group cows(boolean shrunk) {
        return new Group(
                new UUID(1, 1),
                "Cows",
                AnimalClass.MATURE_COW,
                100,
                Quantity.of(1300, Unit.POUND),
                shrunk,
                DAY,
                Quantity.of(1300, Unit.POUND),
                5,
                "",
                List.of(),
                null,
                null,
                null,
                Quantity.of(0, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    private static Lot lot(int id, FeedClass kind, double tons) {
        return new Lot(
                new UUID(2, id),
                "Lot " + id,
                kind,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                new Stock.Weighed(Quantity.of(tons, Unit.TON)),
                null,
                false,
                "",
                null,
                null,
                List.of());
    }

    private static Ranch ranch() {
        return Ranch.empty(new UUID(0, 9), "A ranch").with(cows(false));
    }

    /** 100 tons · 2,000 lb · 0.88 · 0.85 = 149,600 lb; 100 head · 26 lb = 2,600 lb a day; 57.5 days. */
    @Test
    void comesOutWithAPencil() {
        var lasts =
                DaysOfFeed.of(ranch().with(lot(1, FeedClass.GRASS_HAY, 100))).orElseThrow();
        assertThat(Unit.POUND.fromBase(lasts.dryKg())).isCloseTo(149_600, within(0.01));
        assertThat(Unit.POUND.fromBase(lasts.eatenKg())).isCloseTo(2_600, within(0.01));
        assertThat(lasts.days()).isEqualTo(58);
        assertThat(lasts.until(DAY)).isEqualTo(LocalDate.of(2027, 1, 28));
    }

    @Test
    void strawIsNoHayAndAShrunkWeightIsFilledFirst() {
        var hay = lot(1, FeedClass.GRASS_HAY, 100);
        var straw = lot(2, FeedClass.STRAW, 100);
        assertThat(DaysOfFeed.of(ranch().with(hay).with(straw))).isEqualTo(DaysOfFeed.of(ranch().with(hay)));
        assertThat(DaysOfFeed.of(ranch().with(straw))).isEmpty();
        var shrunk = DaysOfFeed.of(ranch().with(hay).with(cows(true))).orElseThrow();
        assertThat(Unit.POUND.fromBase(shrunk.eatenKg())).isCloseTo(2_600 / 0.96, within(0.01));
    }

    @Test
    void nothingIsSaidWithoutCattle() {
        assertThat(DaysOfFeed.of(Ranch.empty(new UUID(0, 9), "A ranch").with(lot(1, FeedClass.GRASS_HAY, 100))))
                .isEmpty();
    }
}
