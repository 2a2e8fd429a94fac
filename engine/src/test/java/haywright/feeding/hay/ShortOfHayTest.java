package haywright.feeding.hay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.cattle.herd.Group.CalvingWeek;
import haywright.feeding.Rations;
import haywright.feeding.hay.HayStep.What;
import haywright.feeding.hay.ShortOfHay.Asked;
import haywright.feeding.hay.ShortOfHay.Lacks;
import haywright.forage.FeedClass;
import haywright.outlook.DaysOfFeed;
import haywright.outlook.HayFacts;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Lot;
import haywright.ranch.Outfit;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import haywright.ration.PricedFeed;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A hundred cows, twenty thin ones and ten heifers from December 1 to May 1, and one stack of grass hay. */
class ShortOfHayTest {
    private static final LocalDate DAY = DryRanch.DAY;
    private static final LocalDate GRASS = LocalDate.of(2027, 5, 1);
    private static final LocalDate CALVING = LocalDate.of(2027, 4, 1);
    private static final UUID HAY = new UUID(0, 1);
    private static final UUID STRAW = new UUID(0, 2);
    private static final int DAYS = 151;

    private static Group group(int id, AnimalClass animals, int head, double pounds, double score, int due) {
        return DryRanch.group(
                id,
                animals,
                head,
                pounds,
                score,
                due == 0 ? List.of() : List.of(new CalvingWeek(CALVING, due)),
                animals == AnimalClass.BRED_HEIFER ? 0.5 : 0);
    }

    private static Lot hay(double tons) {
        return DryRanch.lot(HAY, "Grass hay", FeedClass.GRASS_HAY, tons);
    }

    private static Settings settings(@Nullable LocalDate grass) {
        var usual = Ranch.empty(new UUID(0, 9), "A ranch").settings();
        return new Settings(false, DAY, usual.system(), "", 20, grass, null, null, null, null);
    }

    private static Ranch ranch(double tons) {
        return Ranch.empty(new UUID(0, 9), "A ranch")
                .with(settings(GRASS))
                .with(group(1, AnimalClass.MATURE_COW, 100, 1300, 5, 92))
                .with(group(2, AnimalClass.MATURE_COW, 20, 1150, 4, 20))
                .with(group(3, AnimalClass.BRED_HEIFER, 10, 1000, 5.5, 10))
                .with(hay(tons))
                .with(DryRanch.sale(STRAW, "Straw", FeedClass.STRAW, 90, 60))
                .with(DryRanch.sale(new UUID(0, 3), "Cake", FeedClass.CAKE, 400, 40))
                .with(DryRanch.sale(new UUID(0, 4), "Barley", FeedClass.GRAIN, 250, 60));
    }

    private static ShortOfHay of(Ranch ranch) {
        return ShortOfHay.of(new Rations(ranch, DAY), Asked.NOTHING).orElseThrow();
    }

    /** Fed 30 lb each: 130 head take 3,900 lb, 1.95 tons a day; 195 tons last 100 days. */
    private static Ranch fedNow(double tons) {
        var ranch = ranch(tons);
        for (var group : ranch.groups().keySet()) {
            ranch = ranch.with(new FedNow(group, Map.of(HAY, Quantity.of(30, Unit.POUND_A_DAY))));
        }
        return ranch;
    }

    @Test
    void theDayItIsGoneAndTheTonsShortComeOutWithAPencil() {
        var hay = of(fedNow(195));
        assertThat(hay.isFedNowSaid()).isTrue();
        assertThat(hay.tonsADay()).isCloseTo(1.95, within(1e-9));
        assertThat(hay.tonsOnHand()).isCloseTo(195, within(1e-9));
        assertThat(hay.gone()).contains(DAY.plusDays(100));
        assertThat(DaysOfFeed.of(new Yard(fedNow(195), DAY)).orElseThrow().until(DAY))
                .isEqualTo(DAY.plusDays(100));
        assertThat(hay.daysToGrass()).isEqualTo(DAYS);
        assertThat(hay.tonsShort()).isGreaterThanOrEqualTo(1.95 * DAYS - 195 - 1e-9);
    }

    /** By the program: a ton more on the stack is a ton less short, as long as any is. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 90, 160})
    void moreHayIsNeverMoreShort(double tons) {
        double before = of(fedNow(tons)).tonsShort();
        double after = of(fedNow(tons + 10)).tonsShort();
        assertThat(before).isGreaterThan(10);
        assertThat(before - after).isCloseTo(10, within(1e-3));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 60, 120, 200, 240})
    void noStepMakesItMoreShortAndTheLastLeavesNothingMissing(double tons) {
        var hay = of(fedNow(tons));
        double was = hay.tonsShort();
        for (var step : hay.steps()) {
            assertThat(step.before()).as(step.what().name()).isCloseTo(was, within(1e-6));
            assertThat(step.after()).as(step.what().name()).isLessThanOrEqualTo(step.before());
            assertThat(step.by()).isAfterOrEqualTo(DAY).isBefore(GRASS);
            was = step.after();
        }
        assertThat(hay.steps()).isNotEmpty();
        assertThat(was).isCloseTo(hay.tonsShortAtLast(), within(1e-9));
        assertThat(hay.leastHarm()).isNotEmpty();
    }

    @Test
    void aRanchWithPlentySaysSo() {
        var hay = of(fedNow(600));
        assertThat(hay.isShort()).isFalse();
        assertThat(hay.tonsShort()).isZero();
        assertThat(hay.gone()).isEmpty();
        assertThat(hay.steps()).isEmpty();
    }

    @Test
    void thinCowsAndHeifersKeepTheirHay() {
        var hay = of(fedNow(150));
        assertThat(hay.steps())
                .anyMatch(step -> step.what() == What.LIMIT_HAY)
                .anyMatch(step -> step.what() == What.STRAW && step.saves() > 0);
        for (var least : hay.leastHarm()) {
            assertThat(least.unmet()).as(least.group().name()).isEmpty();
            for (var row : least.rows()) {
                double straw = sum(row, PricedFeed::isStraw);
                double hayEach = sum(row, PricedFeed::isHayOrSilage);
                double weight = least.group().weight().base();
                if (HayFacts.isSturdy(least.group())) {
                    // the published least where hay is short and it is cold, 0.75 % of body weight, in hay
                    assertThat(hayEach).isGreaterThanOrEqualTo(0.0075 * weight * (1 - 1e-6));
                } else {
                    assertThat(straw).as(least.group().name()).isZero();
                    assertThat(hayEach).as(least.group().name()).isGreaterThan(0.015 * weight);
                }
            }
        }
    }

    /** 100 cows need 200 feet at 24 inches: at 60 that is more than three turns, at 100 it is two. */
    @ParameterizedTest
    @CsvSource({"60, false", "100, true"})
    void hayIsLimitedOnlyWhereTheBunkHasRoom(double feet, boolean isOffered) {
        var ranch = fedNow(110);
        var outfit = new Outfit(true, null, true, true, Quantity.of(feet, Unit.FOOT), 1);
        var hay = of(ranch.with(outfit));
        assertThat(hay.steps().stream().anyMatch(step -> step.what() == What.LIMIT_HAY))
                .isEqualTo(isOffered);
        assertThat(hay.isBunkTooShort()).isEqualTo(!isOffered);
    }

    /** Testing, rings, buying and selling change no ration: the rows hold from the first step that does. */
    @Test
    void theRowsHoldFromTheFirstStepThatChangesWhatIsFed() {
        var first = of(fedNow(110)).firstThatFeeds().orElseThrow();
        assertThat(first.what()).isIn(What.FEED_TO_NEED, What.STRAW, What.LIMIT_HAY);
        assertThat(of(fedNow(110)).steps())
                .filteredOn(step -> step.saves() > 0
                        && List.of(What.FEED_TO_NEED, What.STRAW, What.LIMIT_HAY)
                                .contains(step.what()))
                .allSatisfy(step -> assertThat(step.by()).isAfterOrEqualTo(first.by()));
    }

    /** 12 lb of straw that somebody put out to score-4 cows is no reason to go on: no row has any, and why is said. */
    @Test
    void strawThatThinCowsGetNowIsInNoRow() {
        var ranch = fedNow(150);
        var thin = new UUID(1, 2);
        var hay = of(ranch.with(new FedNow(
                thin, Map.of(HAY, Quantity.of(15, Unit.POUND_A_DAY), STRAW, Quantity.of(12, Unit.POUND_A_DAY)))));
        var least = hay.leastHarm().stream()
                .filter(one -> one.group().id().equals(thin))
                .findFirst()
                .orElseThrow();
        assertThat(least.rows())
                .isNotEmpty()
                .allSatisfy(row -> assertThat(sum(row, PricedFeed::isStraw)).isZero());
        assertThat(least.stops()).extracting(out -> out.feed().id()).containsExactly(STRAW.toString());
    }

    /** 10 lb of oat hay that nobody tested for nitrate: it is a danger, so no day of a change has it in. */
    @Test
    void whatIsADangerNowIsTradedForNothingByQuarters() {
        var oats = new UUID(0, 6);
        var cows = new UUID(1, 1);
        var ranch = fedNow(110).with(DryRanch.lot(oats, "Oat hay", FeedClass.CEREAL_HAY, 50));
        var now = Map.of(HAY, Quantity.of(20, Unit.POUND_A_DAY), oats, Quantity.of(10, Unit.POUND_A_DAY));
        var first =
                of(ranch.with(new FedNow(cows, now))).leastHarm().get(0).rows().get(0);
        assertThat(first.from()).isEqualTo(DAY);
        assertThat(first.feeds().keySet()).noneMatch(feed -> feed.feed().name().equals("Oat hay"));
        assertThat(first.changes())
                .singleElement()
                .satisfies(change -> assertThat(change.stops()).containsExactly("Oat hay"));
    }

    /** A calf of 500 lb weighs, shrunk, less than any grown cow: it has no reserves of one, and its rows all the same. */
    @Test
    void weanedCalvesHaveTheirRows() {
        var ranch = fedNow(90).with(group(4, AnimalClass.GROWING, 40, 500, 5, 0));
        assertThat(of(ranch).leastHarm())
                .filteredOn(least -> least.group().animals() == AnimalClass.GROWING)
                .singleElement()
                .satisfies(least -> {
                    assertThat(least.rows()).isNotEmpty();
                    assertThat(least.scoreLost()).isZero();
                });
    }

    /** kg of dry matter that one head eats. */
    private static double sum(HayRow row, Predicate<PricedFeed> of) {
        return row.feeds().entrySet().stream()
                .filter(e -> of.test(e.getKey()))
                .mapToDouble(e -> e.getKey().eaten(e.getValue()))
                .sum();
    }

    /** No lot gives more than there is: head times pounds times days of every row over 2,000, with a pencil. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 90, 150, 240})
    void rowsComeToNoMoreThanThereIs(double tons) {
        var hay = of(fedNow(tons));
        var lots = new HashMap<String, Double>();
        for (var least : hay.leastHarm()) {
            for (var row : least.rows()) {
                row.feeds().forEach((feed, kg) -> {
                    double pounds = Math.floor(10 * kg / 0.45359237 + 1e-6) / 10;
                    double each =
                            feed.feed().isLooseMineral() ? row.tons(feed) : row.head() * pounds * row.days() / 2000;
                    assertThat(row.tons(feed)).isCloseTo(each, within(1e-9));
                    lots.merge(feed.feed().name(), each, Double::sum);
                });
            }
        }
        hay.used().forEach(used -> {
            assertThat(used.tons()).isCloseTo(lots.get(used.feed().feed().name()), within(1e-6));
            assertThat(used.tons()).as(used.feed().feed().name()).isLessThanOrEqualTo(used.tonsThereAre() + 1e-9);
        });
        if (hay.tonsShortAtLast() == 0) {
            assertThat(lots.get("Grass hay")).isLessThanOrEqualTo(tons);
        }
    }

    /** Everybody who is there has a row on every day: 100 cows, from December 11 without the 8 that are open. */
    @Test
    void rowsCountEveryHeadOnEveryDay() {
        var hay = of(fedNow(150));
        var cows = hay.leastHarm().get(0);
        assertThat(cows.group().head()).isEqualTo(100);
        var bred = hay.steps().stream()
                .filter(step -> step.what() == What.SELL_BRED)
                .mapToInt(step -> step.saves() > 0 ? step.head() : 0)
                .sum();
        for (int day = 0; day < DAYS; day++) {
            var on = DAY.plusDays(day);
            int head = cows.rows().stream()
                    .filter(row -> !on.isBefore(row.from()) && !on.isAfter(row.until()))
                    .mapToInt(HayRow::head)
                    .sum();
            assertThat(head).as(on.toString()).isEqualTo(day < 10 ? 100 : day < 35 ? 92 : 92 - bred);
            assertThat(cows.rows()).anyMatch(row -> row.inMilk() && row.from().isAfter(CALVING.minusDays(1)));
        }
    }

    /** 8 of 100 cows are not due; another number can be said, and no more than there are. */
    @Test
    void openCowsAreCountedFromTheCalvingWeeks() {
        assertThat(sold(null)).isEqualTo(8);
        assertThat(sold(30)).isEqualTo(30);
        assertThat(sold(5000)).isEqualTo(120);
    }

    private static int sold(@Nullable Integer said) {
        return ShortOfHay.of(new Rations(fedNow(100), DAY), new Asked(said, 1500.0, null, null, null))
                .orElseThrow()
                .steps()
                .stream()
                .filter(step -> step.what() == What.SELL_OPEN)
                .findFirst()
                .orElseThrow()
                .head();
    }

    /** Nobody can buy what nobody asked for: hay is asked before cows are sold. */
    @Test
    void aRanchThatListsNoHayIsAskedForItFirst() {
        assertThat(of(fedNow(60)).steps().get(0).what()).isEqualTo(What.BUY_HAY);
        var listed = fedNow(60).with(DryRanch.sale(new UUID(0, 5), "Hay", FeedClass.GRASS_HAY, 250, 20));
        assertThat(of(listed).steps()).noneMatch(step -> step.what() == What.BUY_HAY);
        assertThat(of(fedNow(60)).toBuy()).isEmpty();
        // what is beyond the 20 tons of the list costs what the list says
        assertThat(of(listed).toBuy().orElseThrow().feed().pricePerKgAsFed())
                .isCloseTo(Unit.DOLLAR_PER_TON.to(Unit.DOLLAR_PER_KG, 250), within(1e-12));
    }

    /** What is for sale is bought by a step of its own, with its tons and price; before it nothing of it is counted. */
    @Test
    void whatIsListedForSaleIsAStepAndNotOnHand() {
        var without = of(fedNow(60));
        var listed = of(fedNow(60).with(DryRanch.sale(new UUID(0, 5), "Hay", FeedClass.GRASS_HAY, 250, 20)));
        assertThat(listed.tonsOnHand()).isCloseTo(60, within(1e-9));
        assertThat(listed.tonsShort()).isCloseTo(without.tonsShort(), within(0.05));
        assertThat(listed.gone()).isEqualTo(without.gone());
        var step = listed.steps().stream()
                .filter(one -> one.what() == What.BUY_LISTED)
                .findFirst()
                .orElseThrow();
        assertThat(step.saves()).isCloseTo(20, within(0.1));
        assertThat(listed.buys())
                .singleElement()
                .satisfies(buy -> assertThat(buy.tons()).isCloseTo(20, within(1e-3)));
        assertThat(listed.toBuy().orElseThrow().tons()).isCloseTo(listed.tonsShort() - 20, within(0.1));
    }

    /** A lot of 50 tons that only a test keeps out comes before all that hurts, and nothing of it is counted. */
    @Test
    void aLotThatATestMayClearIsTheFirstStep() {
        var oats = DryRanch.lot(new UUID(0, 6), "Oat hay", FeedClass.CEREAL_HAY, 50);
        var hay = of(fedNow(60).with(oats));
        var without = of(fedNow(60));
        assertThat(hay.steps().get(0).what()).isEqualTo(What.TEST);
        assertThat(hay.steps().get(0).saves()).isZero();
        assertThat(hay.untested()).extracting(feed -> feed.feed().name()).containsExactly("Oat hay");
        // both are baled hay at nearly the same dry matter
        assertThat(hay.tonsUntested()).isBetween(45.0, 55.0);
        assertThat(hay.tonsShort()).isCloseTo(without.tonsShort(), within(1e-6));
        assertThat(without.steps()).noneMatch(step -> step.what() == What.TEST);
    }

    /** Where all hay has yet to be bought, all of it is short. */
    @Test
    void aRanchWithHayForSaleAloneIsShortOfAllOfIt() {
        var hay = of(ranch(100).withoutLot(HAY).with(DryRanch.sale(HAY, "Hay", FeedClass.GRASS_HAY, 250, 500)));
        assertThat(hay.tonsOnHand()).isZero();
        assertThat(hay.tonsShort()).isGreaterThan(100);
        assertThat(hay.steps())
                .filteredOn(step -> step.what() == What.BUY_LISTED)
                .singleElement()
                .satisfies(step -> assertThat(step.after()).isZero());
    }

    @Test
    void hayThatAMixerLaysInABunkIsFedInNoRing() {
        var outfit = new Outfit(true, null, true, true, Quantity.of(300, Unit.FOOT), 1);
        assertThat(of(fedNow(60)).steps()).anyMatch(step -> step.what() == What.CUT_WASTE && step.saves() > 0);
        assertThat(of(fedNow(60).with(outfit)).steps()).noneMatch(step -> step.what() == What.CUT_WASTE);
    }

    /** What each of those sold saves, times how many, is what the step saves. */
    @Test
    void headsTimesTonsAreTheTonsOfAStep() {
        for (var step : of(fedNow(60)).steps()) {
            if (step.head() > 0 && step.saves() > 0) {
                assertThat(step.head() * step.tonsAHead()).isCloseTo(step.saves(), within(1e-6));
            }
        }
    }

    @Test
    void whatIsLackingIsSaid() {
        assertThat(lacks(ranch(100).with(settings(null)))).containsExactly(Lacks.GRASS);
        assertThat(lacks(ranch(100).withoutLot(HAY))).containsExactly(Lacks.HAY);
        assertThat(lacks(Ranch.empty(new UUID(0, 9), "A ranch"))).containsExactly(Lacks.CATTLE, Lacks.HAY, Lacks.GRASS);
        assertThat(ShortOfHay.of(new Rations(ranch(100).withoutLot(HAY), DAY), Asked.NOTHING))
                .isEmpty();
        assertThatThrownBy(() -> new Asked(-1, null, null, null, null)).isInstanceOf(Refused.class);
    }

    private static List<Lacks> lacks(Ranch ranch) {
        return ShortOfHay.lacks(new Yard(ranch, DAY));
    }
}
