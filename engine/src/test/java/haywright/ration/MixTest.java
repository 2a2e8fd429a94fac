package haywright.ration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MixTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private static OptionalDouble at(double value) {
        return OptionalDouble.of(value);
    }

    private static Mix.MixLimit atLeast(String value, double limit) {
        return new Mix.MixLimit(value, at(limit), NONE);
    }

    /** Van de Panne and Popp 1963, mean protein; the data as Hock and Schittkowski 1981, problem 73. */
    private static List<Mix.MixFeed> cattleFeed() {
        return List.of(
                new Mix.MixFeed("barley", 24.55, Map.of("protein", 12.0, "oil", 2.3)),
                new Mix.MixFeed("oats", 26.75, Map.of("protein", 11.9, "oil", 5.6)),
                new Mix.MixFeed("sesame flakes", 39, Map.of("protein", 41.8, "oil", 11.1)),
                new Mix.MixFeed("groundnut meal", 40.5, Map.of("protein", 52.1, "oil", 1.3)));
    }

    // The expected figures were solved with another program (SciPy's), to 1e-6.
    @Test
    void theMeanProteinCattleFeedAgreesWithAnotherSolver() {
        var mix = new Mix(cattleFeed(), List.of(atLeast("protein", 21), atLeast("oil", 5)), List.of(), false, NONE);
        var cheapest = (Mix.Cheapest) mix.solve();
        assertThat(cheapest.cost()).isCloseTo(28.94264765, within(1e-6));
        assertThat(cheapest.sharesPct()[0]).isCloseTo(68.524491, within(1e-4));
        assertThat(cheapest.sharesPct()[1]).isCloseTo(1.269905, within(1e-4));
        assertThat(cheapest.sharesPct()[2]).isCloseTo(30.205604, within(1e-4));
        assertThat(cheapest.limits().get(0).dual()).isCloseTo(0.28547672, within(1e-6));
        assertThat(cheapest.limits().get(1).dual()).isCloseTo(0.67531748, within(1e-6));
        assertThat(cheapest.worthBuyingBelow()[3]).isLessThan(40.5);
    }

    /**
     * Van de Panne and Popp 1963 as Hock and Schittkowski 1981, problem 73, print it: 29.894378 at 1.645 standard
     * deviations. The rows with correlation, and the sureness of 80 and 99 percent, were solved with another program
     * (SciPy's), to 1e-6.
     */
    @ParameterizedTest
    @CsvSource({
        "1.645, 0, 29.894378, 63.5522, 0, 31.2702, 5.1777",
        "1.645, 0.5, 30.01491943, 62.7891, 0, 31.3481, 5.8629",
        "1.645, 1, 30.12491972, 62.0928, 0, 31.4191, 6.4881",
        "0.8416212335729143, 0, 29.41778014, 66.5692, 0, 30.9623, 2.4685",
        "2.3263478740408408, 0, 30.23715083, 23.2097, 46.0600, 15.1768, 15.5535"
    })
    void aSureMixIsAtItsPublishedOptimum(
            double z, double correlation, double cost, double barley, double oats, double sesame, double nuts) {
        var mix = new Mix(
                doubtful(),
                List.of(atLeast("protein", 21), atLeast("oil", 5)),
                List.of(),
                false,
                NONE,
                new Mix.Sure(z, correlation));
        var cheapest = (Mix.Cheapest) mix.solve();
        assertThat(cheapest.cost()).isCloseTo(cost, within(1e-5));
        double[] shares = {barley, oats, sesame, nuts};
        for (int i = 0; i < shares.length; i++) {
            assertThat(cheapest.sharesPct()[i]).isCloseTo(shares[i], within(0.1));
        }
        // what one percent more protein costs, by doing it
        double step = 1e-3;
        var more = new Mix(
                doubtful(),
                List.of(atLeast("protein", 21 + step), atLeast("oil", 5)),
                List.of(),
                false,
                NONE,
                new Mix.Sure(z, correlation));
        double rise = (((Mix.Cheapest) more.solve()).cost() - cheapest.cost()) / step;
        assertThat(cheapest.limits().get(0).dual()).isCloseTo(rise, within(1e-3));
    }

    /** The variances of the protein as problem 73 has them. */
    private static List<Mix.MixFeed> doubtful() {
        double[] variance = {0.28, 0.19, 20.5, 0.62};
        var feeds = new ArrayList<Mix.MixFeed>();
        for (var feed : cattleFeed()) {
            feeds.add(new Mix.MixFeed(
                    feed.name(), feed.price(), feed.values(), Map.of("protein", Math.sqrt(variance[feeds.size()]))));
        }
        return feeds;
    }

    @Test
    void whatIsNoDoubtIsRefused() {
        assertThatThrownBy(() -> new Mix.Sure(-1, 0)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Mix.Sure(1, 1.5)).isInstanceOf(Refused.class);
        var feed = new Mix.MixFeed("oats", 1, Map.of("protein", 12.0), Map.of("protein", -1.0));
        assertThatThrownBy(() -> new Mix(List.of(feed), List.of(), List.of(), false, NONE))
                .isInstanceOf(Refused.class);
        var other = new Mix.MixFeed("oats", 1, Map.of("protein", 12.0), Map.of("oil", 1.0));
        assertThatThrownBy(() -> new Mix(List.of(other), List.of(), List.of(), false, NONE))
                .isInstanceOf(Refused.class);
    }

    // Hillier and Lieberman's pig ration: 241.7 cents a day as printed (the figures from memory).
    @Test
    void freeAmountsAndTotalsGiveTheTextbookPigRation() {
        var mix = new Mix(
                List.of(
                        new Mix.MixFeed("corn", 84, Map.of("carbohydrate", 90.0, "protein", 30.0, "vitamins", 10.0)),
                        new Mix.MixFeed("tankage", 72, Map.of("carbohydrate", 20.0, "protein", 80.0, "vitamins", 20.0)),
                        new Mix.MixFeed(
                                "alfalfa", 60, Map.of("carbohydrate", 40.0, "protein", 60.0, "vitamins", 60.0))),
                List.of(atLeast("carbohydrate", 200), atLeast("protein", 180), atLeast("vitamins", 150)),
                List.of(),
                true,
                NONE);
        var cheapest = (Mix.Cheapest) mix.solve();
        assertThat(cheapest.cost()).isCloseTo(241.7, within(0.05));
        assertThat(cheapest.amounts()[0]).isCloseTo(1.142857, within(1e-6));
        assertThat(cheapest.amounts()[2]).isCloseTo(2.428571, within(1e-6));
    }

    @Test
    void aShareLimitHolds() {
        var mix = new Mix(
                cattleFeed(),
                List.of(atLeast("protein", 21)),
                List.of(new Mix.FeedLimit("groundnut meal", NONE, NONE, NONE, at(10))),
                false,
                NONE);
        assertThat(((Mix.Cheapest) mix.solve()).sharesPct()[3]).isLessThanOrEqualTo(10 + 1e-6);
    }

    @Test
    void limitsThatCannotBeKeptTogetherAreNamed() {
        var mix = new Mix(cattleFeed(), List.of(atLeast("protein", 21), atLeast("oil", 12)), List.of(), false, NONE);
        assertThat(((Mix.None) mix.solve()).standsInTheWay()).contains("oil");
    }

    @Test
    void aLimitedValueMustBeKnownOfEveryFeedAndAFeedStandsOnce() {
        assertThatThrownBy(() -> new Mix(cattleFeed(), List.of(atLeast("starch", 1)), List.of(), false, NONE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("starch");
        var twice = List.of(cattleFeed().get(0), cattleFeed().get(0));
        assertThatThrownBy(() -> new Mix(twice, List.of(), List.of(), false, NONE))
                .hasMessageContaining("twice");
        assertThatThrownBy(() -> new Mix(List.of(), List.of(), List.of(), false, NONE))
                .hasMessageContaining("feed");
    }

    @Test
    void aPriceBelowZeroIsRefused() {
        assertThatThrownBy(() -> new Mix.MixFeed("waste", -1, Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("price");
    }
}
