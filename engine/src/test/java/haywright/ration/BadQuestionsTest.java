package haywright.ration;

import static haywright.ration.Lots.LB;
import static haywright.ration.Lots.barley;
import static haywright.ration.Lots.calf;
import static haywright.ration.Lots.cold;
import static haywright.ration.Lots.cow;
import static haywright.ration.Lots.distillers;
import static haywright.ration.Lots.hay;
import static haywright.ration.Lots.lot;
import static haywright.ration.Lots.mild;
import static haywright.ration.Lots.straw;
import static haywright.ration.Lots.withMineral;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Mixing;
import haywright.diet.Sureness;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.ration.LeastCostRation.Amounts;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What cannot be answered is refused in words or has its reason; what can be is answered. */
class BadQuestionsTest {
    private static final List<PricedFeed> FEEDS =
            withMineral(hay("hay", 120, 56, 9), straw(60), barley(200), distillers(220));

    private static RationAnswer asked(List<PricedFeed> feeds, Sureness sureness, Amounts amounts) {
        return new LeastCostRation(feeds, cold(cow(1300, 210, 0), -8), DietOptions.USUAL, sureness, amounts).solve();
    }

    @Test
    void noFeedIsRefused() {
        assertThatThrownBy(() -> asked(List.of(), Sureness.USUAL, Amounts.AS_FED))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at least one feed");
        // a mineral beside nothing is nothing
        assertThat(withMineral()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Amounts.class)
    void oneFeedIsARationOrSaysWhatIsMissing(Amounts amounts) {
        assertThat(asked(withMineral(hay("hay", 120, 58, 12)), Sureness.EXPECTED, amounts))
                .isInstanceOf(Ration.class);
        var none = (NoRation) asked(List.of(straw(60)), Sureness.USUAL, amounts);
        assertThat(none.conflicts()).isNotEmpty();
    }

    /** Two lots that are alike in all but the name: one of them, at the same cost. */
    @Test
    void twinsAreOneFeedAsFed() {
        var twins = new ArrayList<>(FEEDS);
        twins.add(hay("hay again", 120, 56, 9));
        var one = (Ration) asked(FEEDS, Sureness.EXPECTED, Amounts.AS_FED);
        var two = (Ration) asked(twins, Sureness.EXPECTED, Amounts.AS_FED);
        assertThat(two.cost()).isCloseTo(one.cost(), within(0.03));
        assertThat(two.portions()).hasSameSizeAs(one.portions());
        assertThatThrownBy(() -> asked(List.of(FEEDS.get(0), FEEDS.get(0)), Sureness.USUAL, Amounts.AS_FED))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("twice");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1e300})
    void aPriceThatIsNoneIsRefused(double price) {
        var feed = FEEDS.get(0).feed();
        assertThatThrownBy(() -> new PricedFeed(feed, price, 88, 15)).isInstanceOf(Refused.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, Double.NaN})
    void stockAndHandlingBelowNothingAreRefused(double amount) {
        var feed = FEEDS.get(0).feed();
        assertThatThrownBy(() -> new PricedFeed(feed, 0.1, 88, 15, 0, true, amount, 0, 9))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PricedFeed(feed, 0.1, 88, 15, amount, true, 1, 0, 9))
                .isInstanceOf(Refused.class);
    }

    /** A lot of which nothing is left is not fed, however cheap. */
    @ParameterizedTest
    @EnumSource(Amounts.class)
    void aLotOfWhichNothingIsLeftIsNotFed(Amounts amounts) {
        var feeds = new ArrayList<>(FEEDS);
        feeds.add(new PricedFeed(hay("gone", 20, 60, 14).feed(), 0.02, 88, 0, 0, true, 0, 0, Double.POSITIVE_INFINITY));
        var ration = (Ration) asked(feeds, Sureness.EXPECTED, amounts);
        assertThat(ration.portions()).noneMatch(p -> p.feed().feed().id().equals("gone"));
        assertThat(ration.cost()).isCloseTo(((Ration) asked(FEEDS, Sureness.EXPECTED, amounts)).cost(), within(1e-6));
    }

    /** Both wishes are named, and the one change that lifts them. */
    @Test
    void wishesThatContradictAreNamed() {
        var wishes = new DietOptions(
                Set.of(),
                List.of(
                        new DietOptions.FeedLimit(
                                "hay", DietRow.Sense.AT_LEAST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, 6),
                        new DietOptions.FeedLimit(
                                "hay", DietRow.Sense.AT_MOST, DietOptions.FeedLimit.Per.KG_DRY_MATTER, 3)),
                1,
                Mixing.MIXES);
        var none = (NoRation) new LeastCostRation(FEEDS, mild(cow(1300, 200, 0)), wishes).solve();
        assertThat(none.conflicts())
                .hasSize(2)
                .allMatch(c -> c.row().kind() == DietRow.Kind.CHOICE)
                .extracting(c -> c.row().name())
                .containsOnly("hay");
        assertThat(none.lifts()).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {49, 49.999, 100, 0, -5, Double.NaN})
    void aSurenessThatIsNoneIsRefused(double percent) {
        assertThatThrownBy(() -> Sureness.of(percent))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("50 %");
    }

    /** No spread: as sure as asked costs nothing more. Wider than the figure itself: as sure as can be, and said. */
    @ParameterizedTest
    @EnumSource(Amounts.class)
    void aSpreadOfNothingAndOneWiderThanTheMean(Amounts amounts) {
        var none = new ArrayList<>(FEEDS);
        none.set(0, spread(0));
        var certain = (Ration) asked(none, Sureness.USUAL, amounts);
        assertThat(certain.sureness()).isEqualTo(Sureness.USUAL);
        var wide = withMineral(spread(20));
        var answer = asked(wide, Sureness.USUAL, amounts);
        assertThat(answer).isInstanceOf(Ration.class);
        var ration = (Ration) answer;
        assertThat(ration.sureness().othersPercent()).isLessThan(Sureness.USUAL.othersPercent());
        assertThat(ration.chance().percent()).isLessThan(75);
    }

    private static PricedFeed spread(double sd) {
        return lot(
                "hay",
                FeedClass.GRASS_HAY,
                "",
                120,
                Map.of(Analyte.TDN, 56.0, Analyte.CP, 9.0),
                Map.of(Analyte.CP, sd));
    }

    @Test
    void fiveHundredFeedsAreAnswered() {
        var random = new RandomQuestions(41);
        var feeds = new ArrayList<PricedFeed>();
        for (int i = 0; i < 500; i++) {
            feeds.add(random.hay("hay " + i));
        }
        for (var amounts : Amounts.values()) {
            var ration = (Ration) asked(withMineral(feeds.toArray(PricedFeed[]::new)), Sureness.EXPECTED, amounts);
            assertThat(ration.limits()).allMatch(LimitAnswer::isMet);
            assertThat(ration.portions().size() + ration.notUsed().size()).isEqualTo(501);
        }
    }

    /** The smallest calf that the house takes, at no gain: next to nothing, and still a ration in portions. */
    @Test
    void aNeedNearNothingIsAnswered() {
        for (var amounts : Amounts.values()) {
            var ration = (Ration)
                    new LeastCostRation(FEEDS, mild(calf(150, 0)), DietOptions.USUAL, Sureness.EXPECTED, amounts)
                            .solve();
            assertThat(ration.limits()).allMatch(LimitAnswer::isMet);
            assertThat(ration.kg() / LB).isBetween(1.0, 8.0);
        }
    }

    /** Nothing here carries her in the cold: what is short is named, and what would lift it. */
    @ParameterizedTest
    @EnumSource(Amounts.class)
    void cattleThatCannotEatEnoughOfAnythingAreToldWhatIsShort(Amounts amounts) {
        var feeds = withMineral(hay("slough hay", 60, 44, 7), straw(40));
        var none = (NoRation)
                new LeastCostRation(feeds, cold(cow(1300, 0, 8), -25), DietOptions.USUAL, Sureness.USUAL, amounts)
                        .solve();
        assertThat(none.conflicts()).isNotEmpty();
        assertThat(none.conflicts()).extracting(c -> c.row().kind()).contains(DietRow.Kind.NEED);
    }
}
