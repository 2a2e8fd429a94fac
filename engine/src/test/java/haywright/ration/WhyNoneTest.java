package haywright.ration;

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

import haywright.cattle.need.Need;
import haywright.diet.DietOptions;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.diet.RowId;
import haywright.diet.WayOfFeeding;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is named where no ration exists is what these feeds truly cannot do. Feeds and prices are invented. */
class WhyNoneTest {
    private static NoRation none(List<PricedFeed> feeds, Need need, DietOptions options) {
        return (NoRation) new LeastCostRation(feeds, need, options).solve();
    }

    private static List<String> ids(List<NoRation.Conflict> conflicts) {
        return conflicts.stream().map(c -> c.row().id()).toList();
    }

    /** Hay of good energy and 3 to 6 % protein, for a cow that needs 7 % for her rumen: it is short of protein alone. */
    @ParameterizedTest
    @ValueSource(doubles = {3, 4.5, 5.5, 6, 6.9})
    void hayThatIsShortOfProteinAloneIsShortOfProtein(double protein) {
        var no = none(withMineral(hay("hay", 120, 58, protein)), mild(cow(1300, 200, 0)), DietOptions.USUAL);
        isOfProtein(no);
        assertThat(ids(no.also())).allMatch(id -> id.startsWith("cp"));
    }

    @Test
    void noWayOfFeedingMakesAnotherCauseOfIt() {
        for (var way : List.of(WayOfFeeding.FREE_CHOICE, WayOfFeeding.PUT_OUT_DAILY, WayOfFeeding.BUNK)) {
            var no = none(
                    withMineral(hay("hay", 120, 58, 5), straw(60)),
                    mild(cow(1300, 200, 0)),
                    DietOptions.USUAL.with(way));
            isOfProtein(no);
        }
    }

    /** Beside protein nothing but how much they eat. */
    private static void isOfProtein(NoRation no) {
        assertThat(ids(no.conflicts()))
                .anyMatch(id -> id.startsWith("cp"))
                .isSubsetOf("cp", "cp_floor", "mp", "mp_rumen", "fill", "eaten_most", "straw", "straw_share");
    }

    /** 48 % hay with enough protein for a cow in milk: energy, within what she can hold. */
    @Test
    void hayThatIsShortOfEnergyAloneIsShortOfEnergy() {
        var no = none(withMineral(hay("hay", 120, 48, 13)), cold(cow(1300, 0, 6), -15), DietOptions.USUAL);
        assertThat(ids(no.conflicts())).contains("nem").isSubsetOf("nem", "fill");
        // the rumen makes protein of energy
        assertThat(ids(no.also())).isSubsetOf("mp");
    }

    @Test
    void hayThatIsShortOfBothSaysBoth() {
        var no = none(withMineral(hay("hay", 120, 46, 4)), cold(cow(1300, 0, 6), -15), DietOptions.USUAL);
        var all = new ArrayList<>(ids(no.conflicts()));
        all.addAll(ids(no.also()));
        assertThat(all).contains("nem").anyMatch(id -> id.startsWith("cp"));
        assertThat(all).noneMatch(id -> id.equals("mineral") || id.equals("p") || id.equals("ca"));
    }

    @Test
    void aGainThatHayCannotCarryIsTheCause() {
        var no = none(withMineral(hay("hay", 120, 54, 12)), mild(calf(550, 1.8)), DietOptions.USUAL);
        assertThat(ids(no.conflicts())).contains("growth").isSubsetOf("growth", "fill");
        assertThat(no.lifts().get(0).row().id()).isEqualTo("growth");
    }

    /** The distillers grains would do; there are three ounces of them a head. */
    @Test
    void aFeedOfWhichThereIsTooLittleIsNamed() {
        var little = distillers(220).shared(0, 0.08);
        var no = none(withMineral(hay("hay", 120, 56, 5), little), mild(cow(1300, 200, 0)), DietOptions.USUAL);
        assertThat(no.conflicts())
                .anyMatch(c -> c.row().of() instanceof RowId.OnHand at
                        && at.feed().equals(little.feed().id()));
        var more = no.lifts().stream()
                .filter(l -> l.row().of() instanceof RowId.OnHand)
                .findFirst()
                .orElseThrow();
        assertThat(more.to()).isGreaterThan(0.08);
        var enough = withMineral(hay("hay", 120, 56, 5), distillers(220).shared(0, more.to()));
        assertThat(new LeastCostRation(enough, mild(cow(1300, 200, 0)), DietOptions.USUAL).solve())
                .isInstanceOf(Ration.class);
        var short_ = withMineral(hay("hay", 120, 56, 5), distillers(220).shared(0, 0.99 * more.to()));
        assertThat(new LeastCostRation(short_, mild(cow(1300, 200, 0)), DietOptions.USUAL).solve())
                .isInstanceOf(NoRation.class);
    }

    @Test
    void aLotThatOnlyATestKeepsOutIsNamedWithWhatItWouldCost() {
        var oat = lot("oat hay", FeedClass.CEREAL_HAY, "", 110, Map.of(Analyte.TDN, 57.0, Analyte.CP, 10.0));
        var untested = oat.madeOf(new Feed(
                "oat hay",
                "oat hay",
                FeedClass.CEREAL_HAY,
                oat.feed().composition(),
                true,
                oat.feed().lot()));
        var need = mild(cow(1300, 200, 0));
        var no = none(withMineral(hay("hay", 120, 58, 5), untested), need, DietOptions.USUAL);
        assertThat(no.tests()).hasSize(1);
        var tested =
                (Ration) new LeastCostRation(withMineral(hay("hay", 120, 58, 5), oat), need, DietOptions.USUAL).solve();
        assertThat(no.tests().get(0).cost()).isEqualTo(tested.cost());
    }

    /** Every change that is offered lets a ration exist at the cost told, and half of it does not. */
    @ParameterizedTest
    @EnumSource(WayOfFeeding.class)
    void everyChangeThatIsOfferedWorks(WayOfFeeding way) {
        var random = new RandomQuestions(14);
        int tried = 0;
        for (int i = 0; i < 150; i++) {
            var asked = random.next();
            var options = DietOptions.USUAL.with(way);
            var question = new LeastCostRation(asked.feeds(), asked.need(), options);
            if (!(question.solve() instanceof NoRation no)) {
                continue;
            }
            assertThat(no.conflicts()).as("question " + i).isNotEmpty();
            for (var lift : no.lifts()) {
                int at = no.diet().rows().indexOf(lift.row());
                if (at >= 0) {
                    tried++;
                    assertThat(question.solve(no.diet().withLimit(at, lift.to())))
                            .as("question " + i + ": " + lift.row().id())
                            .isInstanceOf(Ration.class);
                    if (way == WayOfFeeding.FREE_CHOICE) {
                        continue; // told of the forage that there is most of; another one may need less
                    }
                    double half = (lift.row().limit() + lift.to()) / 2;
                    assertThat(question.solve(no.diet().withLimit(at, half))).isInstanceOf(NoRation.class);
                }
            }
        }
        assertThat(tried).isPositive();
    }

    /** What is named as the cause cannot be kept by itself by any of the feeds, whatever else is dropped. */
    @Test
    void theNeedThatIsNamedIsNotMetByAnyMixOfTheseFeeds() {
        var random = new RandomQuestions(41);
        int named = 0;
        for (int i = 0; i < 300; i++) {
            var asked = random.next();
            var question = new LeastCostRation(asked.feeds(), asked.need(), DietOptions.USUAL);
            if (question.solve() instanceof NoRation no && no.conflicts().size() == 1) {
                var row = no.conflicts().get(0).row();
                if (row.isRatio() && row.sense() == DietRow.Sense.AT_LEAST) {
                    named++;
                    for (int f = 0; f < row.top().size(); f++) {
                        assertThat(row.top().get(f))
                                .isLessThan(row.limit() * row.bottom().get(f) + 1e-9);
                    }
                }
            }
        }
        assertThat(named).isPositive();
    }
}
