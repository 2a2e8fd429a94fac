package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.quantity.Unit;
import haywright.season.kept.KeptPlan;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the winter book says to buy multiplies with a pencil, and comes in whole loads. */
class WinterMoneyTest {
    private static List<String> orders(double tons, double asked, int loads) {
        var buy = new KeptPlan.Buy(
                "cake",
                "Cake",
                LocalDate.of(2026, 12, 1),
                true,
                Unit.TON.toBase(tons),
                Unit.TON.toBase(asked),
                loads,
                Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, 420),
                true);
        return WinterWords.buy(
                new KeptPlan(
                        true,
                        List.of(buy),
                        List.of(),
                        List.of(),
                        0,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        null),
                null);
    }

    /** 17.6 tons print as 18: 18 × 420 = 7,560. */
    @Test
    void tonsTimesPriceIsTheMoney() {
        assertThat(orders(17.6, 17.6, 0)).singleElement().asString().contains("18 tons", "$420", "$7,560");
    }

    /** 17.6 tons are 15.97 tonnes, $420 a ton $463 a tonne: 16 × 463 = 7,408. */
    @Test
    void tonnesTimesPriceIsTheMoney() {
        assertThat(Measures.in(Unit.TONNE, () -> orders(17.6, 17.6, 0)))
                .singleElement()
                .asString()
                .contains("16 tonnes", "$463 a tonne", "$7,408");
    }

    /** 14 tons in loads of 24: one load, 24 × 420 = 10,080. */
    @Test
    void aLoadIsBoughtWhole() {
        assertThat(orders(24, 14, 1)).singleElement().asString().contains("1 load", "24 tons", "14 tons", "$10,080");
    }
}
