package haywright.ration;

import static haywright.ration.Lots.alfalfa;
import static haywright.ration.Lots.barley;
import static haywright.ration.Lots.calf;
import static haywright.ration.Lots.cold;
import static haywright.ration.Lots.cow;
import static haywright.ration.Lots.distillers;
import static haywright.ration.Lots.fed;
import static haywright.ration.Lots.hay;
import static haywright.ration.Lots.mild;
import static haywright.ration.Lots.straw;
import static haywright.ration.Lots.withMineral;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.cattle.need.Need;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Mixing;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.ration.LeastCostRation.Amounts;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A ranch that enters every stack by itself. Stacks and prices are invented. */
class ManyStacksTest {
    private static final List<PricedFeed> FEW =
            withMineral(hay("stack 0", 130, 55, 9), alfalfa(190), straw(70), barley(210), distillers(240));

    /** Beside those few: stacks a little worse than stack 0, each dearer by a dollar a ton than the one before. */
    private static List<PricedFeed> many() {
        var all = new ArrayList<>(FEW);
        for (int i = 1; i <= 60; i++) {
            all.add(fed(hay("stack " + i, 130 + i, 55 - i / 60.0, 9 - i / 60.0), 0, 0, true));
        }
        return all;
    }

    private static Ration ration(List<PricedFeed> feeds, Need need, DietOptions options) {
        return (Ration) new LeastCostRation(feeds, need, options, Sureness.USUAL, Amounts.AS_FED).solve();
    }

    /** What few feeds may cost beside the cheapest is 2 % and no less than 3 cents; it is looked for to half a percent. */
    @ParameterizedTest
    @EnumSource(
            value = WayOfFeeding.class,
            names = {"PUT_OUT_DAILY", "BUNK", "FREE_CHOICE"})
    void moreStacksCostNoMoreThanFewFeedsMay(WayOfFeeding way) {
        for (var need : List.of(mild(cow(1300, 200, 0)), cold(cow(1300, 240, 0), -15), mild(calf(560, 1.5)))) {
            var options = DietOptions.USUAL.with(way);
            double few = ration(FEW, need, options).cost();
            var ration = ration(many(), need, options);
            assertThat(ration.cost()).isLessThanOrEqualTo(few + Math.max(0.025 * few, 0.035));
            assertThat(ration.portions()).hasSizeLessThan(7);
            if (way != WayOfFeeding.FREE_CHOICE) {
                assertThat(ration.notUsed().size() + ration.portions().size()).isEqualTo(many().size());
            }
        }
    }

    @Test
    void whatIsWishedOfTheDearestStackIsFed() {
        var wish = new DietOptions.FeedLimit(
                "stack 60", DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, 4);
        var ration = ration(many(), mild(cow(1300, 200, 0)), new DietOptions(Set.of(), List.of(wish), 1, Mixing.MIXES));
        assertThat(ration.portions().stream()
                        .filter(p -> p.feed().feed().id().equals("stack 60"))
                        .mapToDouble(Portion::kg)
                        .sum())
                .isGreaterThanOrEqualTo(4 - 1e-6);
    }

    /** One stack that was tested among sixty that were not: it is not crowded out by guesses that look cheaper. */
    @Test
    void aTestKeepsItsPlaceAmongGuesses() {
        var tested = Lots.lot(
                "tested",
                FeedClass.GRASS_HAY,
                "",
                196,
                Map.of(Analyte.TDN, 56.0, Analyte.CP, 10.0),
                Map.of(Analyte.TDN, 0.5, Analyte.CP, 0.3));
        var all = Stream.concat(many().stream(), Stream.of(tested)).toList();
        var diet = new LeastCostRation(all, mild(cow(1300, 200, 0)), DietOptions.USUAL).diet();
        var indices = IntStream.range(0, all.size()).boxed().collect(Collectors.toSet());
        assertThat(Shortlist.of(diet, all, indices, 12, 1))
                .contains(all.indexOf(tested))
                .hasSizeLessThan(20);
    }

    @Test
    void nobodyWaitsForAnInterruptedThread() {
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(() -> ration(FEW, mild(cow(1300, 200, 0)), DietOptions.USUAL))
                    .isInstanceOf(CancellationException.class);
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }
}
