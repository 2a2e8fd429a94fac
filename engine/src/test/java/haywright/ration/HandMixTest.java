package haywright.ration;

import static haywright.ration.Lots.LB;
import static haywright.ration.Lots.barley;
import static haywright.ration.Lots.cow;
import static haywright.ration.Lots.hay;
import static haywright.ration.Lots.mild;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.diet.DietOptions;
import haywright.diet.Feed;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HandMixTest {
    private static final PricedFeed HAY = hay("hay", 120, 56, 9);

    /** The same hay as a crop that stores nitrate, not tested. */
    private static PricedFeed untested() {
        var feed = HAY.feed();
        var risky = new Feed(feed.id(), feed.name(), feed.feedClass(), feed.composition(), true, feed.lot());
        return new PricedFeed(risky, HAY.pricePerKgAsFed(), HAY.dryMatterPercent(), 0);
    }

    /** What is wrong with it is its nitrate: cattle that eat it are not short of what it brings. */
    @Test
    void aFeedThatMayNotBeFedStillFeeds() {
        var need = mild(cow(1300, 200, 0));
        var put = Map.of("hay", 26 * LB);
        var allowed = judged(HAY, put, need);
        var left = judged(untested(), put, need);
        assertThat(allowed.notAllowed()).isEmpty();
        assertThat(left.notAllowed()).extracting(l -> l.feed().id()).containsExactly("hay");
        assertThat(left.meetsEverything()).isFalse();
        for (var limit : left.limits()) {
            var same = allowed.limits().stream()
                    .filter(l -> l.row().id().equals(limit.row().id()))
                    .findFirst()
                    .orElseThrow();
            assertThat(limit.supplied()).as(limit.row().id()).isCloseTo(same.supplied(), within(1e-9));
        }
        // nobody knows its nitrate, so that no row of it is said to be kept or broken
        assertThat(allowed.limits()).extracting(l -> l.row().id()).contains("nitrate", "nem", "cp", "fill");
        assertThat(left.limits()).extracting(l -> l.row().id()).contains("nem", "cp", "fill");
        assertThat(left.limits()).noneMatch(l -> l.row().id().equals("nitrate"));
    }

    private static HandMix judged(PricedFeed hay, Map<String, Double> put, haywright.cattle.need.Need need) {
        var question = new LeastCostRation(Lots.withMineral(hay, barley(200)), need, DietOptions.USUAL);
        return HandMix.judge(question, put);
    }
}
