package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.diet.DietRow;
import haywright.diet.LeftOut;
import haywright.forage.FeedClass;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Wishes;
import haywright.ration.HandMix;
import haywright.ration.NoRation;
import haywright.sampling.stock.Stock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Published straw rations are for mature cows in good condition (Ontario, The Use of Straw and Grain), bred cows at score 5
 * to 6 (Missouri, Feeding Wheat Straw, 2012); published bulls winter on hay (BEEF magazine, Winter Bull Feeding).
 */
class StrawForTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 1);
    private static final UUID STRAW = new UUID(2, 1);
    private static final UUID HAY = new UUID(2, 2);
    private static final Quantity FOUR_POUNDS = Quantity.of(4, Unit.POUND_A_DAY);

    private static Group group(AnimalClass animals, double pounds, double score) {
        return new Group(
                new UUID(1, 1),
                "group",
                animals,
                10,
                Quantity.of(pounds, Unit.POUND),
                false,
                DAY,
                Quantity.of(1300, Unit.POUND),
                score,
                "Angus",
                List.of(),
                null,
                null,
                null,
                Quantity.of(0, Unit.POUND_A_DAY),
                null,
                null,
                null,
                null,
                List.of());
    }

    private static Lot lot(UUID id, FeedClass kind) {
        return new Lot(
                id,
                kind.words(),
                kind,
                "",
                "",
                "",
                null,
                null,
                new Stock.Weighed(Quantity.of(100, Unit.TON)),
                null,
                false,
                "",
                null,
                null,
                List.of());
    }

    private static Ranch ranch(Group group) {
        return Ranch.empty(new UUID(0, 9), "A ranch").with(group).with(lot(STRAW, FeedClass.STRAW));
    }

    private static List<String> leftOut(Ranch ranch) {
        var group = ranch.groups().values().iterator().next();
        var hay = ranch.with(lot(HAY, FeedClass.GRASS_HAY));
        return new Yard(hay, DAY)
                .alone(group).diet().leftOut().stream()
                        .filter(out -> !out.danger())
                        .map(LeftOut::feed)
                        .map(feed -> feed.id())
                        .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "BULL, 1800, 5, true",
        "BULL, 1800, 6, true",
        "MATURE_COW, 1150, 4, true",
        "MATURE_COW, 1250, 4.9, true",
        "MATURE_COW, 1300, 5, false",
        "MATURE_COW, 1300, 6, false",
        "BRED_HEIFER, 1000, 5.5, true",
        "FIRST_CALF_HEIFER, 1100, 5, true",
        "GROWING, 560, 5, true"
    })
    void strawIsForMatureCowsInGoodCondition(AnimalClass animals, double pounds, double score, boolean isOut) {
        assertThat(leftOut(ranch(group(animals, pounds, score))).contains(STRAW.toString()))
                .isEqualTo(isOut);
    }

    /** Who asks for it by a limit keeps it; that they get it now makes it no feed for them, and the bench says why. */
    @Test
    void whoAsksForItKeepsItAndWhoFeedsItNowHearsThatItIsNotForThem() {
        var bulls = group(AnimalClass.BULL, 1800, 5);
        var ranch = ranch(bulls).with(lot(HAY, FeedClass.GRASS_HAY));
        var fed = ranch.with(new FedNow(bulls.id(), Map.of(STRAW, FOUR_POUNDS)));
        assertThat(leftOut(fed)).containsExactly(STRAW.toString());
        assertThat(HandMix.judge(new Yard(fed, DAY).alone(bulls), Map.of(STRAW.toString(), 1.8, HAY.toString(), 12.0))
                        .notAllowed())
                .singleElement()
                .satisfies(out -> {
                    assertThat(out.feed().id()).isEqualTo(STRAW.toString());
                    assertThat(out.danger()).isFalse();
                });
        assertThat(leftOut(ranch.with(new Wishes(
                        bulls.id(),
                        List.of(new Wishes.Wish(STRAW, DietRow.Sense.AT_MOST, FOUR_POUNDS)),
                        List.of(),
                        null,
                        null))))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"straw_for", "straw"})
    void thePracticeCanBeSwitchedOff(String off) {
        var bulls = group(AnimalClass.BULL, 1800, 5);
        assertThat(leftOut(ranch(bulls).with(new Wishes(bulls.id(), List.of(), List.of(off), null, null))))
                .isEmpty();
    }

    /** Nothing but straw: there is no ration, and the straw is named as what is left out. */
    @Test
    void whereThereIsNothingElseThatIsSaid() {
        var thin = group(AnimalClass.MATURE_COW, 1150, 4);
        var answer = new Yard(ranch(thin), DAY).alone(thin).solve();
        assertThat(answer)
                .isInstanceOfSatisfying(
                        NoRation.class,
                        none -> assertThat(none.diet().leftOut())
                                .extracting(out -> out.feed().id())
                                .containsExactly(STRAW.toString()));
    }
}
