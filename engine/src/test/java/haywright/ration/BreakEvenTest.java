package haywright.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Sureness;
import haywright.diet.WayOfFeeding;
import haywright.ration.LeastCostRation.Amounts;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** At its break-even price a portion of a feed costs as much as doing without it: solved anew at prices beside it. */
class BreakEvenTest {
    @Test
    void aPortionCostsLessBelowItAndMoreAbove() {
        var random = new RandomQuestions(9);
        int tried = 0;
        for (int i = 0; i < 80; i++) {
            var asked = random.next();
            var question = new LeastCostRation(
                    asked.feeds(),
                    asked.need(),
                    DietOptions.USUAL.with(WayOfFeeding.PUT_OUT_DAILY).withoutCare(),
                    Sureness.EXPECTED,
                    Amounts.AS_FED);
            if (!(question.solve() instanceof Ration ration)) {
                continue;
            }
            for (var out : ration.notUsed()) {
                var price = question.breakEven(ration, out.feed());
                if (price.isEmpty() || price.getAsDouble() < 0.002) {
                    continue;
                }
                tried++;
                var what = "question %d, %s".formatted(i, out.feed().feed().name());
                double at = price.getAsDouble();
                assertThat(with(question, ration, out.feed(), at)).as(what).isCloseTo(ration.cost(), within(1e-6));
                assertThat(with(question, ration, out.feed(), 0.95 * at))
                        .as(what)
                        .isLessThan(ration.cost());
                assertThat(with(question, ration, out.feed(), 1.05 * at))
                        .as(what)
                        .isGreaterThan(ration.cost());
            }
        }
        assertThat(tried).isGreaterThan(20);
    }

    /** The least cost of the ration's feeds with at least a portion of one more, as a wish. */
    private static double with(LeastCostRation question, Ration ration, PricedFeed feed, double price) {
        var priced = new PricedFeed(
                feed.feed(),
                price,
                feed.dryMatterPercent(),
                feed.feedingLossPercent(),
                feed.handlingPerKgAsFed(),
                feed.own(),
                feed.kgAtHand(),
                0,
                feed.mostEaten());
        var feeds = Stream.concat(ration.portions().stream().map(Portion::feed), Stream.of(priced))
                .toList();
        var least = new DietOptions.FeedLimit(
                feed.feed().id(),
                DietRow.Sense.AT_LEAST,
                DietOptions.FeedLimit.Per.KG_DRY_MATTER,
                FewFeeds.least(feed, question.options()));
        var wished = new LeastCostRation(
                feeds, question.need(), question.options().with(List.of(least)), Sureness.EXPECTED, Amounts.EXACT);
        return ((Ration) wished.solve()).cost();
    }
}
