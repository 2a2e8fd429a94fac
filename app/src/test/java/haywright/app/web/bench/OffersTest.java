package haywright.app.web.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.app.document.BentBucket;
import haywright.app.document.TinLantern;
import haywright.app.words.Show;
import haywright.app.words.ration.RegainWords;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Regain;
import haywright.feeding.ColdSnap;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ration.JointChance;
import haywright.ration.MixDifference;
import haywright.ration.Portion;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** What is said of the demo's cows at a glance hangs together with a pencil. */
class OffersTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final Rations RATIONS = new Rations(DEMO, DEMO.settings().today(LocalDate.EPOCH));
    private static final Group COWS = DEMO.groups().values().iterator().next();
    private static final Offers OFFERS = new Offers(RATIONS, COWS);

    /** The straight-line figure of a strip against draws through the equations themselves: percent points. */
    private static final double NEAR = 4;

    @Test
    void aStripIsAsSureAsTheDrawsSay() {
        var ration = (Ration) OFFERS.answer();
        JointChance drawn = ration.chance();
        var exact = OFFERS.sure().orElseThrow();
        for (var supply : OFFERS.suppliesOf(exact.mix())) {
            assertThat(supply.surePercent())
                    .as(supply.id())
                    .isCloseTo(drawn.byRow().get(supply.id()), within(NEAR));
            assertThat(supply.low()).isLessThanOrEqualTo(supply.expected());
            assertThat(supply.high()).isGreaterThanOrEqualTo(supply.expected());
        }
    }

    @Test
    void evenOddsAreCheaperAndHoldLessOften() {
        var sure = OFFERS.sure().orElseThrow();
        var even = OFFERS.even().orElseThrow();
        assertThat(even.cents()).isLessThan(sure.cents());
        assertThat(even.holdsPercent()).isLessThan(sure.holdsPercent());
    }

    /** Dollars apart count the days that both mixes last, and come out with a pencil: cents × 240 head × days. */
    @Test
    void dollarsApartEndWhereAMixEnds() {
        var sure = OFFERS.sure().orElseThrow();
        for (var other : List.of(OFFERS.even().orElseThrow(), OFFERS.now().orElseThrow())) {
            var until = OFFERS.bothLast(sure, other);
            assertThat(until).isBeforeOrEqualTo(OFFERS.goodUntil().day());
            assertThat(sure.gone().values())
                    .allSatisfy(gone -> assertThat(until).isBeforeOrEqualTo(gone));
            assertThat(other.gone().values())
                    .allSatisfy(gone -> assertThat(until).isBeforeOrEqualTo(gone));
            long days = ChronoUnit.DAYS.between(RATIONS.day(), until);
            long cents = Math.abs(Math.round(100 * (sure.cents() - other.cents())));
            assertThat(MixWords.apart(sure, other, OFFERS))
                    .contains(
                            cents + " ¢ × 240 head × " + days + " days", "$" + Math.round(cents * 240 * days / 100.0));
        }
    }

    @Test
    void theDifferenceOfTwoMixesIsTheSumOfItsFeeds() {
        var from = OFFERS.now().orElseThrow().mix();
        var to = OFFERS.sure().orElseThrow().mix();
        var apart = MixDifference.between(from.portions(), to.portions());
        assertThat(apart.dollars()).isCloseTo(to.cost() - from.cost(), within(1e-9));
        assertThat(apart.parts().stream().mapToLong(MixDifference.Part::cents).sum())
                .isEqualTo(apart.cents());
        assertThat(apart.parts()).hasSizeGreaterThan(2);
    }

    /** The first by division; those after it take its place and so are gone sooner than by division, and never before it. */
    @Test
    void aFeedIsGoneWhenAllGroupsHavePutItOut() {
        for (var ranch : List.of(DEMO, BentBucket.ranch())) {
            var rations = new Rations(ranch, RATIONS.day());
            var alone = new TreeMap<Long, PricedFeed>();
            var days = new HashMap<PricedFeed, Long>();
            for (var group : ranch.groups().values()) {
                for (var portion : rations.toFeed(group)) {
                    var feed = portion.feed();
                    long byDivision = (long)
                            (feed.kgAtHand() / kgADay(rations, feed.feed().id()));
                    rations.lastsUntil(feed).ifPresent(day -> {
                        long lasts = ChronoUnit.DAYS.between(RATIONS.day(), day);
                        assertThat(lasts).isLessThanOrEqualTo(byDivision);
                        alone.put(byDivision, feed);
                        days.put(feed, lasts);
                    });
                }
            }
            var first = alone.firstEntry();
            assertThat(days.get(first.getValue())).isEqualTo(first.getKey());
        }
    }

    /** 66 tons of one and 201 of the other at 2,538 and 4,277 lb a day: both are gone when their sum is, not when each is. */
    @Test
    void hayDoesNotLastOnHayThatIsGone() {
        // held at their scores, so that every lot of hay is in somebody's ration and none steps in for another later
        var ranch = BentBucket.ranch().groups().values().stream()
                .map(Group::holding)
                .reduce(BentBucket.ranch(), Ranch::with, (one, other) -> other);
        var rations = new Rations(ranch, RATIONS.day());
        double tons = 0;
        double aDay = 0;
        var last = RATIONS.day();
        for (var feed : rations.yard().feeds()) {
            var kg = kgADay(rations, feed.feed().id());
            if (feed.own() && feed.isHayOrSilage() && kg > 0) {
                tons += feed.eaten(feed.kgAtHand());
                aDay += feed.eaten(kg);
                last = rations.lastsUntil(feed).filter(last::isBefore).orElse(last);
            }
        }
        assertThat(ChronoUnit.DAYS.between(RATIONS.day(), last)).isLessThanOrEqualTo((long) (tons / aDay) + 1);
    }

    private static double kgADay(Rations rations, String feed) {
        return rations.ranch().groups().values().stream()
                .mapToDouble(group -> group.head()
                        * rations.toFeed(group).stream()
                                .filter(p -> p.feed().feed().id().equals(feed))
                                .mapToDouble(Portion::kgPutOut)
                                .sum())
                .sum();
    }

    @Test
    void colderDaysTakeMoreHayAndWetOnesSooner() {
        var cold = OFFERS.cold().orElseThrow();
        assertThat(cold.hay().orElseThrow().isStraw()).isFalse();
        double before = 0;
        for (ColdSnap.Step step : cold.steps()) {
            assertThat(step.celsius()).isLessThan(cold.below());
            assertThat(step.kg()).isGreaterThanOrEqualTo(before);
            before = step.kg();
        }
        assertThat(cold.wetBelow()).isGreaterThan(cold.below());
    }

    @Test
    void aPageIsGoodUntilSomethingEndsIt() {
        var good = OFFERS.goodUntil();
        assertThat(good.day())
                .isAfter(RATIONS.day())
                .isBeforeOrEqualTo(RATIONS.day().plusWeeks(8));
        OFFERS.sure()
                .orElseThrow()
                .gone()
                .values()
                .forEach(day -> assertThat(good.day()).isBeforeOrEqualTo(day));
    }

    /** Of every group of both ranches; and what is fed is never dearer and less sure than another way that is shown. */
    @Test
    void beingSurerNeverCostsLess() {
        for (var ranch : List.of(TinLantern.ranch(), BentBucket.ranch())) {
            var rations = new Rations(ranch, RATIONS.day());
            for (var group : ranch.groups().values()) {
                var offers = new Offers(rations, group);
                var ways = offers.ways();
                for (int i = 1; i < ways.size(); i++) {
                    assertThat(ways.get(i).holdsPercent())
                            .as(group.name())
                            .isGreaterThan(ways.get(i - 1).holdsPercent());
                    assertThat(ways.get(i).counted())
                            .as(group.name())
                            .isGreaterThan(ways.get(i - 1).counted());
                }
                offers.sure()
                        .ifPresent(sure -> assertThat(ways).as(group.name()).contains(sure));
                offers.even()
                        .ifPresent(even -> assertThat(even.cents())
                                .as(group.name())
                                .isLessThan(offers.sure().orElseThrow().cents()));
            }
        }
        assertThat(OFFERS.curve().orElseThrow().ways()).hasSizeGreaterThan(2);
    }

    /** Fourteen pounds of barley in front of a calf: that comes first, in pounds as put out, and nothing is "enough". */
    @Test
    void whatCanKillIsSaidFirst() {
        var calves = List.copyOf(DEMO.groups().values()).get(4);
        var offers = new Offers(RATIONS, calves);
        var hay = lot("Pivot hay, first cutting");
        var barley = DEMO.feedsForSale().values().stream()
                .filter(feed -> feed.name().equals("Rolled barley"))
                .findFirst()
                .orElseThrow();
        var mix = offers.offer(RATIONS.judge(
                calves,
                Map.of(
                        hay.id(), Quantity.of(4, Unit.POUND_A_DAY),
                        barley.id(), Quantity.of(14, Unit.POUND_A_DAY))));
        assertThat(mix.mix().harms()).isNotEmpty();
        assertThat(mix.holdsPercent()).isZero();
        assertThat(BenchView.shortfalls(offers, mix).get(0)).contains("14.0 lb");
        assertThat(MixWords.enough(mix)).doesNotContain("enough");
    }

    private static Lot lot(String name) {
        return DEMO.lots().values().stream()
                .filter(lot -> lot.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Silage of today's mix that was not tested for nitrate is not put out in the cold either. */
    @Test
    void noFeedThatMayNotBeFedIsAddedInTheCold() {
        for (var group : DEMO.groups().values()) {
            var offers = new Offers(RATIONS, group);
            var out = offers.now().map(now -> now.mix().notAllowed()).orElse(List.of());
            offers.cold()
                    .ifPresent(cold -> assertThat(out)
                            .as(group.name())
                            .noneMatch(left ->
                                    left.feed().equals(cold.hay().orElseThrow().feed())));
        }
    }

    /** Of all groups of both demos that are to calve thinner than the usual 5 or 6 (University of Nebraska). */
    @Test
    void thinCattleAreFedToCalveInUsualConditionUnlessSomebodyHoldsThem() {
        int thin = 0;
        for (var ranch : List.of(DEMO, BentBucket.ranch())) {
            var rations = new Rations(ranch, RATIONS.day());
            for (var group : ranch.groups().values()) {
                var offers = new Offers(rations, group);
                if (!group.animals().calves() || group.conditionScore() >= Regain.usual(group)) {
                    assertThat(offers.held()).as(group.name()).isEmpty();
                    continue;
                }
                thin++;
                assertThat(Regain.planned(offers.planned())).as(group.name()).isEqualTo(Regain.usual(group));
                var held = offers.held().orElseThrow();
                assertThat(held.counted())
                        .as(group.name())
                        .isLessThan(offers.sure().orElseThrow().counted());
                assertThat(RegainWords.ofIt(offers).orElseThrow())
                        .contains(Show.cents(offers.sure().orElseThrow().cents() - held.cents()));
                var holding = new Offers(rations, group.holding());
                assertThat(holding.held()).isEmpty();
                assertThat(holding.sure().orElseThrow().cents()).isEqualTo(held.cents());
            }
        }
        assertThat(thin).isEqualTo(4);
    }

    /** Where no ration of these feeds does that, the one that comes nearest: never less than one that holds them. */
    @Test
    void cattleThatCannotBeBroughtThereAreBroughtAsFarAsTheseFeedsGo() {
        var ranch = BentBucket.ranch();
        var thin = ranch.groups().values().stream()
                .filter(group -> group.conditionScore() == 4)
                .findFirst()
                .orElseThrow();
        var far = thin.wanting(9.0);
        var offers = new Offers(new Rations(ranch.with(far), RATIONS.day()), far);
        double reached = Regain.planned(offers.planned());
        assertThat(reached).isBetween(5.0, 8.9);
        assertThat(offers.sure()).isPresent();
        assertThat(RegainWords.beside(offers).orElseThrow()).contains(RegainWords.score(reached));
        // and a tenth more is no further off than that
        var more = thin.wanting(reached + 0.1);
        assertThat(Regain.planned(new Rations(ranch.with(more), RATIONS.day()).planned(more)))
                .isBetween(reached - 0.05, reached + 0.05);
    }
}
