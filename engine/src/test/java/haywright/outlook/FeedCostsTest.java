package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a ton costs until it lies before them: price, freight by full loads, handling. Invented. */
class FeedCostsTest {
    private static final UUID ID = new UUID(1, 2);

    private static FeedForSale barley(@Nullable Quantity load, @Nullable Quantity freight) {
        return new FeedForSale(
                ID,
                "Barley",
                FeedClass.GRAIN,
                "",
                List.of(),
                Quantity.of(200, Unit.DOLLAR_PER_TON),
                Quantity.of(50, Unit.TON),
                "",
                load,
                freight);
    }

    private static double perTon(FeedForSale sale, Outfit outfit) {
        var ranch = Ranch.empty(ID, "Invented").with(sale).with(outfit);
        var fed = new Yard(ranch, LocalDate.of(2026, 12, 1)).feeds().get(0);
        return Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, fed.pricePerKgAsFed() + fed.handlingPerKgAsFed());
    }

    /** 24 tons for $360 are $15 a ton; with $9 of handling a ton of $200 costs $224. */
    @Test
    void aTonCostsItsPriceItsFreightAndItsHandling() {
        var outfit = new Outfit(true, null, false, false, null, 1, Quantity.of(9, Unit.DOLLAR_PER_TON));
        var sale = barley(Quantity.of(24, Unit.TON), Quantity.of(360, Unit.DOLLAR));
        assertThat(perTon(sale, outfit)).isCloseTo(224, within(1e-9));
        assertThat(perTon(barley(null, null), Outfit.NOT_SAID)).isCloseTo(200, within(1e-9));
        // 50 tons are three loads of 24
        assertThat(sale.loads(Unit.TON.toBase(50))).hasValue(3);
        assertThat(sale.loads(Unit.TON.toBase(48))).hasValue(2);
        assertThat(barley(null, null).loads(1)).isEmpty();
    }

    @Test
    void loadsThatHoldNothingAndFreightWithoutALoadAreRefused() {
        assertThatThrownBy(() -> barley(Quantity.of(0, Unit.TON), null)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> barley(null, Quantity.of(360, Unit.DOLLAR))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> barley(Quantity.of(24, Unit.TON), Quantity.of(-1, Unit.DOLLAR)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Outfit(true, null, false, false, null, 1, Quantity.of(-1, Unit.DOLLAR_PER_TON)))
                .isInstanceOf(Refused.class);
    }
}
