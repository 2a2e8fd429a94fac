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
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.ration.LeastCostRation.Amounts;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
        return maybe(question, head).orElseThrow();
    }

    private static Optional<WholeBales> maybe(LeastCostRation question, int head) {
        var ration = (Ration) question.solve();
        var bales = new HashMap<String, Double>();
        ration.portions().stream()
                .map(p -> p.feed().feed())
                .filter(f -> f.feedClass().isForage())
                .forEach(f -> bales.put(f.id(), BALE));
        return WholeBales.of(question, ration, head, bales);
    }

    @Test
    void balesTimesTheirWeightByHeadAndDaysArePoundsAHead() {
        int checked = 0;
        for (var way : new WayOfFeeding[] {WayOfFeeding.FREE_CHOICE, WayOfFeeding.PUT_OUT_DAILY}) {
            for (int head : new int[] {20, 55, 180, 240, 611}) {
                var found = maybe(cows(way), head);
                if (found.isEmpty()) {
                    continue;
                }
                checked++;
                var whole = found.get();
                assertThat(whole.days()).isBetween(1, whole.bales().size() == 1 ? 14 : 7);
                assertThat(whole.bales()).isNotEmpty();
                for (var bales : whole.bales()) {
                    assertThat(bales.count()).isPositive();
                    assertThat(putOut(whole.mix().portions(), bales.feed()) * head * whole.days())
                            .isCloseTo(bales.count() * BALE, within(1e-6));
                }
            }
        }
        assertThat(checked).isGreaterThan(5);
    }

    private static double putOut(List<Portion> portions, PricedFeed feed) {
        return portions.stream()
                .filter(p -> p.feed().equals(feed))
                .mapToDouble(Portion::kgPutOut)
                .sum();
    }

    /** Of every size of group: whoever puts bales out by it feeds the ration, or is told to weigh it. */
    @Test
    void everyFeedIsWithinATenthOfTheRation() {
        var question = cows(WayOfFeeding.PUT_OUT_DAILY);
        var exact = (Ration) question.solve();
        int none = 0;
        for (int head = 3; head <= 120; head += 3) {
            var whole = maybe(question, head);
            none += whole.isEmpty() ? 1 : 0;
            for (var portion : exact.portions()) {
                if (whole.isPresent() && !portion.feed().feed().isLooseMineral()) {
                    assertThat(putOut(whole.get().mix().portions(), portion.feed()) / portion.kgPutOut())
                            .as("%d head, %s", head, portion.feed().feed().name())
                            .isBetween(0.9 - 1e-9, 1.1 + 1e-9);
                }
            }
        }
        assertThat(none).as("small groups to which no whole bales come near").isPositive();
    }

    /** Hay above what is safe alone where nothing mixes: never more of it than the ration has. */
    @Test
    void aFeedWithADangerIsNeverMoreThanInTheRation() {
        var high = Lots.lot(
                "barley hay",
                FeedClass.CEREAL_HAY,
                "",
                70,
                Map.of(Analyte.TDN, 54.0, Analyte.CP, 9.0, Analyte.NO3N, 900.0));
        var question = new LeastCostRation(
                withMineral(hay("hay", 120, 56, 9), high),
                cold(cow(1300, 220, 0), -10),
                DietOptions.USUAL.with(WayOfFeeding.PUT_OUT_DAILY),
                Sureness.USUAL,
                Amounts.AS_FED);
        var exact = (Ration) question.solve();
        assertThat(putOut(exact.portions(), high)).isPositive();
        int checked = 0;
        for (int head = 5; head <= 150; head += 5) {
            var whole = maybe(question, head);
            if (whole.isPresent()) {
                checked++;
                assertThat(putOut(whole.get().mix().portions(), high))
                        .as(head + " head")
                        .isLessThanOrEqualTo(putOut(exact.portions(), high) + 1e-9);
            }
        }
        assertThat(checked).isGreaterThan(5);
    }

    /** Of 200 head and more a bale is so small a part that a few days always keep every limit at little more. */
    @Test
    void aLargeGroupKeepsEveryLimit() {
        for (int head : new int[] {200, 240, 301, 420}) {
            var question = cows(WayOfFeeding.PUT_OUT_DAILY);
            var exact = (Ration) question.solve();
            var whole = of(question, head);
            assertThat(whole.days()).isBetween(1, 7);
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
