package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.sampling.stock.Stock;
import haywright.sampling.stock.UsualBale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class UsualPricesTest {
    /** So that no lot is ever given away or left out for want of a price. */
    @ParameterizedTest
    @EnumSource
    void everyKindOfFeedHasAUsualPrice(FeedClass kind) {
        assertThat(UsualPrices.of(kind).in(Unit.DOLLAR_PER_TON)).isBetween(20.0, 2000.0);
    }

    /** A usual bale lies inside its own range, and the range is wider than that of a guessed one. */
    @ParameterizedTest
    @EnumSource
    void aUsualBaleHasAWideRange(Stock.BaleKind bale) {
        var usual = new Stock.Bales(bale, 10, null, null, null, null);
        var guessed = new Stock.Bales(bale, 10, UsualBale.weight(bale), null, null, null);
        double kg = usual.asFedKg().orElseThrow();
        assertThat(kg).isEqualTo(guessed.asFedKg().orElseThrow());
        var range = usual.range().orElseThrow();
        assertThat(kg).isBetween(range.lowKg(), range.highKg());
        var narrow = guessed.range().orElseThrow();
        assertThat(range.lowKg()).isLessThan(narrow.lowKg());
        assertThat(range.highKg()).isGreaterThan(narrow.highKg());
    }
}
