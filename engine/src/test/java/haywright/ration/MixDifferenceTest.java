package haywright.ration;

import static haywright.ration.Lots.LB;
import static haywright.ration.Lots.barley;
import static haywright.ration.Lots.hay;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.diet.DietOptions;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The parts are the whole. Feeds and prices are invented. */
class MixDifferenceTest {
    private static Portion of(PricedFeed feed, double pounds) {
        return Portions.of(feed, feed.eaten(pounds * LB), Portions.NO_RANGE);
    }

    /** Barley at $200 a ton is 10 cents a pound, hay at $100 is 5: 3 lb less and 2 lb more save 30 less 10 cents. */
    @Test
    void threePoundsLessBarleyAndTwoMoreHay() {
        var hay = hay("hay", 100, 55, 9);
        var barley = barley(200);
        var difference =
                MixDifference.between(List.of(of(hay, 20), of(barley, 5)), List.of(of(hay, 22), of(barley, 2)));
        assertThat(difference.cents()).isEqualTo(-20);
        assertThat(difference.parts()).extracting(MixDifference.Part::cents).containsExactly(-30L, 10L);
        assertThat(difference.parts().get(0).feed()).isEqualTo(barley);
        assertThat(difference.parts().get(0).kgPutOut() / LB).isCloseTo(-3, within(1e-9));
    }

    @Test
    void aFeedThatIsLeftOutAndOneThatComesInAreParts() {
        var difference =
                MixDifference.between(List.of(of(hay("a", 100, 55, 9), 20)), List.of(of(hay("b", 120, 55, 9), 20)));
        assertThat(difference.parts()).extracting(MixDifference.Part::cents).containsExactly(120L, -100L);
        assertThat(MixDifference.between(List.of(), List.of()).parts()).isEmpty();
        assertThat(MixDifference.between(List.of(of(barley(200), 3)), List.of(of(barley(200), 3)))
                        .parts())
                .isEmpty();
    }

    @Test
    void thePartsOfAnyTwoMixesAddUpInDollarsAndInCents() {
        var random = new RandomQuestions(6);
        for (int i = 0; i < 400; i++) {
            var asked = random.next();
            var question = new LeastCostRation(asked.feeds(), asked.need(), DietOptions.USUAL);
            var one = HandMix.judge(question, amounts(random, asked.feeds()));
            var other = HandMix.judge(question, amounts(random, asked.feeds()));
            var difference = MixDifference.between(one.portions(), other.portions());
            assertThat(difference.dollars()).isCloseTo(other.cost() - one.cost(), within(1e-12));
            assertThat(difference.parts().stream()
                            .mapToLong(MixDifference.Part::cents)
                            .sum())
                    .isEqualTo(difference.cents())
                    .isEqualTo(Math.round(100 * difference.dollars()));
            for (var part : difference.parts()) {
                assertThat(Math.abs(part.cents() - 100 * part.dollars())).isLessThan(1);
            }
            var back = MixDifference.between(other.portions(), one.portions());
            assertThat(back.dollars()).isCloseTo(-difference.dollars(), within(1e-12));
        }
    }

    private static Map<String, Double> amounts(RandomQuestions random, List<PricedFeed> feeds) {
        var kg = new HashMap<String, Double>();
        for (var feed : feeds) {
            if (random.below(2) == 0) {
                kg.put(feed.feed().id(), random.from(0, 12));
            }
        }
        return kg;
    }
}
