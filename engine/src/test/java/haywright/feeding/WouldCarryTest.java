package haywright.feeding;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.UsualPrices;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.Ration;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalInt;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Sixty weaned calves and nothing but straw. */
class WouldCarryTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);
    private static final int DAYS = 150;

    private static final Group CALVES = new Group(
            new UUID(1, 1),
            "calves",
            AnimalClass.GROWING,
            60,
            Quantity.of(540, Unit.POUND),
            false,
            DAY,
            Quantity.of(1300, Unit.POUND),
            5,
            "Angus",
            List.of(),
            null,
            null,
            null,
            Quantity.of(1, Unit.POUND_A_DAY),
            null,
            null,
            null,
            null,
            List.of());

    private static final Lot STRAW = new Lot(
            new UUID(2, 1),
            "straw",
            FeedClass.STRAW,
            "",
            "",
            "",
            null,
            null,
            new Stock.Weighed(Quantity.of(400, Unit.TON)),
            null,
            false,
            "",
            null,
            null,
            List.of());

    private final Ranch ranch =
            Ranch.empty(new UUID(0, 9), "A ranch").with(CALVES).with(STRAW);

    /** Once the feeds that are named are for sale at those prices, there is a ration, and it costs what was said. */
    @Test
    void whatItNamesCarriesThem() {
        var rations = new Rations(ranch, DAY);
        assertThat(rations.ration(CALVES)).isNotInstanceOf(Ration.class);
        var carry = WouldCarry.of(rations, CALVES, OptionalInt.of(DAYS)).orElseThrow();
        assertThat(carry.bought()).isNotEmpty();
        var with = ranch;
        for (var one : carry.bought()) {
            assertThat(one.kgADay()).isPositive();
            assertThat(one.kgToGrass().orElseThrow()).isEqualTo(one.kgADay() * CALVES.head() * DAYS);
            with = with.with(new FeedForSale(
                    UUID.randomUUID(),
                    one.kind().words(),
                    one.kind(),
                    "",
                    List.of(),
                    UsualPrices.of(one.kind()),
                    null,
                    ""));
        }
        assertThat(new Rations(with, DAY).ration(CALVES)).isInstanceOf(Ration.class);
    }
}
