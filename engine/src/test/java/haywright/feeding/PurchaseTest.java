package haywright.feeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.season.play.Invented;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a purchase is worth, on a ranch whose hay does not reach grass and that lists no hay for sale. */
class PurchaseTest {
    private static final UUID STRAW = new UUID(2, 3);
    private static final double PRICE = 60;

    private static FeedForSale sale(FeedClass kind, double dollars) {
        return new FeedForSale(
                STRAW,
                "Bought",
                kind,
                "",
                List.of(),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                Quantity.of(5, Unit.TON),
                "");
    }

    private static Purchase bought(FeedClass kind, double tons) {
        var sale = sale(kind, PRICE);
        var ranch = Invented.ranch(60, 0).with(sale);
        var group = Objects.requireNonNull(ranch.groups().get(Invented.COWS));
        return Purchase.of(
                new Offers(new Rations(ranch, Invented.DAY), group),
                sale,
                Quantity.of(tons, Unit.TON),
                Quantity.of(PRICE, Unit.DOLLAR_PER_TON));
    }

    /** A program's gain is concave in what there is: the average of more tons is no higher than that of fewer. */
    @Test
    void moreTonsAreWorthNoMoreATonOnAverage() {
        double before = Double.POSITIVE_INFINITY;
        for (double tons : new double[] {2, 10, 40}) {
            var bought = bought(FeedClass.STRAW, tons);
            double worth = bought.breakEven().orElse(PRICE / 1000);
            assertThat(worth).as(tons + " tons").isLessThanOrEqualTo(before * (1 + 1e-6));
            before = worth;
        }
    }

    /**
     * More that is offered never costs more. Hay dearer than any that is known had made the hay dearer that has to be found,
     * and looked as if it cost more than it saved.
     */
    @ParameterizedTest
    @ValueSource(doubles = {210, 250, 290})
    void hayForSaleNeverCostsMoreThanNone(double dollars) {
        var sale = sale(FeedClass.GRASS_HAY, dollars);
        var ranch = Invented.ranch(60, 0).with(sale);
        var bought = Purchase.of(
                new Offers(
                        new Rations(ranch, Invented.DAY),
                        Objects.requireNonNull(ranch.groups().get(Invented.COWS))),
                sale,
                Quantity.of(10, Unit.TON),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON));
        assertThat(bought.missingBefore()).isPositive();
        assertThat(bought.savesToGrass().orElseThrow()).isGreaterThanOrEqualTo(-1e-6);
        // nobody pays more for hay than for the hay that has to be found: 1.5 times the dearest known, the one asked
        // about
        assertThat(Unit.DOLLAR_PER_TON.fromBase(bought.worthBelow().orElseThrow()))
                .isLessThan(1.6 * dollars + 50);
    }

    /** The first tons are worth the most: what is said of so many tons is never more than of the first pounds. */
    @ParameterizedTest
    @ValueSource(doubles = {5, 25})
    void whatIsSaidOfSoManyTonsIsNoMoreThanOfTheFirst(double tons) {
        var bought = bought(FeedClass.STRAW, tons);
        assertThat(bought.breakEven().orElseThrow())
                .isLessThanOrEqualTo(bought.worthBelow().orElseThrow() * (1 + 1e-6));
    }

    /** Hay at $220 a ton (judgment) takes the place of hay that has to be found at $300 or more. */
    @Test
    void whereHayCanBeBoughtItIsWorthLessThanWhereItHasToBeFound() {
        var bought = bought(FeedClass.STRAW, 25);
        var beside = bought.besideHay().orElseThrow();
        assertThat(Unit.DOLLAR_PER_TON.fromBase(beside.hay().pricePerKgAsFed())).isCloseTo(220, within(1e-6));
        assertThat(beside.hay().kgAtHand()).isInfinite();
        assertThat(beside.worth()).isLessThan(bought.breakEven().orElseThrow());
        assertThat(bought(FeedClass.GRASS_HAY, 25).besideHay()).isEmpty();
    }
}
