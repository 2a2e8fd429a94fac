package haywright.ration;

import static haywright.ration.Lots.LB;
import static haywright.ration.Lots.barley;
import static haywright.ration.Lots.cold;
import static haywright.ration.Lots.cow;
import static haywright.ration.Lots.hay;
import static haywright.ration.Lots.straw;
import static haywright.ration.Lots.withMineral;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.diet.DietOptions;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.ration.LeastCostRation.Amounts;
import java.util.HashMap;
import org.junit.jupiter.api.Test;

/** Whole bales: what is put out multiplies, and the limits hold. Feeds and prices are invented. */
class WholeBalesTest {
    private static final double BALE = 1200 * LB;

    private static LeastCostRation cows(WayOfFeeding way) {
        return new LeastCostRation(
                withMineral(hay("hay", 120, 56, 9), straw(60), barley(220)),
                cold(cow(1300, 220, 0), -10),
                DietOptions.USUAL.with(way),
                Sureness.USUAL,
                Amounts.AS_FED);
    }

    private static WholeBales of(LeastCostRation question, int head) {
        var ration = (Ration) question.solve();
        var bales = new HashMap<String, Double>();
        ration.portions().stream()
                .map(p -> p.feed().feed())
                .filter(f -> f.feedClass().isForage())
                .forEach(f -> bales.put(f.id(), BALE));
        return WholeBales.of(question, ration, head, bales).orElseThrow();
    }

    @Test
    void balesTimesTheirWeightByHeadAndDaysArePoundsAHead() {
        for (var way : new WayOfFeeding[] {WayOfFeeding.FREE_CHOICE, WayOfFeeding.PUT_OUT_DAILY}) {
            for (int head : new int[] {20, 55, 180, 240, 611}) {
                var whole = of(cows(way), head);
                assertThat(whole.days()).isBetween(1, 14);
                assertThat(whole.bales()).isNotEmpty();
                for (var bales : whole.bales()) {
                    assertThat(bales.count()).isPositive();
                    var put = whole.mix().portions().stream()
                            .filter(p -> p.feed().equals(bales.feed()))
                            .findFirst()
                            .orElseThrow();
                    assertThat(put.kgPutOut() * head * whole.days()).isCloseTo(bales.count() * BALE, within(1e-6));
                }
            }
        }
    }

    /** Of 200 head and more a bale is so small a part that four days always keep every limit at little more. */
    @Test
    void aLargeGroupKeepsEveryLimit() {
        for (int head : new int[] {200, 240, 301, 420}) {
            var question = cows(WayOfFeeding.PUT_OUT_DAILY);
            var exact = (Ration) question.solve();
            var whole = of(question, head);
            assertThat(whole.days()).isBetween(1, 4);
            assertThat(whole.mix().meetsEverything()).as(head + " head").isTrue();
            assertThat(whole.mix().cost()).isLessThanOrEqualTo(1.05 * exact.cost());
        }
    }

    /** Four bulls eat a bale of 1,200 lb in about a week. */
    @Test
    void aSmallGroupGetsOneBaleEveryFewDays() {
        var whole = of(cows(WayOfFeeding.FREE_CHOICE), 4);
        assertThat(whole.days()).isGreaterThan(4);
        assertThat(whole.bales()).allMatch(b -> b.count() == 1);
    }

    @Test
    void nothingBaledIsNoWholeBales() {
        var question = cows(WayOfFeeding.PUT_OUT_DAILY);
        assertThat(WholeBales.of(question, (Ration) question.solve(), 100, new HashMap<>()))
                .isEmpty();
    }
}
