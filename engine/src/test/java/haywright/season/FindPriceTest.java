package haywright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.season.given.Season;
import haywright.season.play.Invented;
import haywright.workings.Refused;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The dearest hay of the invented ranch is alfalfa at $200 a ton. */
class FindPriceTest {
    private static double dollarsATon(@Nullable Double entered) {
        var ranch = Invented.ranch(100, 0);
        var price = entered == null ? null : Quantity.of(entered, Unit.DOLLAR_PER_TON);
        var season = Season.of(new Yard(ranch.with(ranch.settings().withFindPrice(price)), Invented.DAY));
        return Unit.DOLLAR_PER_KG.to(Unit.DOLLAR_PER_TON, season.emergencyPrice());
    }

    @Test
    void hayStillToFindIsAtThePriceThatTheRanchEntered() {
        assertThat(dollarsATon(240.0)).isCloseTo(240, within(1e-6));
        assertThat(dollarsATon(400.0)).isCloseTo(400, within(1e-6));
    }

    /** A plan would trade with it. */
    @Test
    void itIsNeverCheaperThanTheDearestHayThatIsKnown() {
        assertThat(dollarsATon(150.0)).isCloseTo(200, within(1e-6));
    }

    @Test
    void withoutOneItIsTheUsual() {
        assertThat(dollarsATon(null)).isCloseTo(300, within(1e-6));
    }

    @Test
    void slipsOfTheHandAreRefused() {
        for (double wrong : new double[] {0, -5, 2001}) {
            assertThatThrownBy(() -> dollarsATon(wrong)).isInstanceOf(Refused.class);
        }
    }
}
