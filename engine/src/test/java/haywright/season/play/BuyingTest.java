package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.season.Orders;
import haywright.season.WinterPlan;
import haywright.season.given.Forecast;
import haywright.season.given.Prices;
import haywright.season.given.Season;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Hay bought by the truckload. Prices and miles invented; what is expected is worked out by pencil beside it. */
class BuyingTest {
    private static final UUID HAY = new UUID(2, 9);
    private static final double TON = 907.18474;

    private static Quantity tons(double tons) {
        return Quantity.of(tons, Unit.TON);
    }

    private static FeedForSale hay(
            @Nullable Double atMost,
            @Nullable Quantity load,
            @Nullable Quantity freight,
            FeedForSale.@Nullable Terms terms) {
        return new FeedForSale(
                HAY,
                "Bought hay",
                FeedClass.GRASS_HAY,
                "",
                List.of(),
                Quantity.of(120, Unit.DOLLAR_PER_TON),
                atMost == null ? null : tons(atMost),
                "",
                load,
                freight,
                terms);
    }

    /** 100 loaded miles at $4.50 are $450 a load, and 24 tons come in one: $18.75 a ton. */
    private static FeedForSale hauled(double atMost, @Nullable Double aWeek) {
        return hay(
                atMost,
                tons(24),
                null,
                new FeedForSale.Terms(
                        Quantity.of(100, Unit.MILE),
                        Quantity.of(4.5, Unit.DOLLAR),
                        aWeek == null ? null : tons(aWeek),
                        Quantity.of(150, Unit.DOLLAR_PER_TON),
                        10.0));
    }

    private static Season season(double tons, FeedForSale hay) {
        return Season.of(new Yard(Invented.ranch(tons, 0).with(hay), Invented.DAY));
    }

    private static int index(Season season) {
        for (int f = 0; f < season.feeds().size(); f++) {
            if (season.feeds().get(f).id().equals(HAY.toString())) {
                return f;
            }
        }
        throw new AssertionError("not offered");
    }

    @Test
    void milesTimesDollarsAMileAreTheFreightOfALoad() {
        var hay = hauled(96, null);
        assertThat(hay.freightALoad()).isCloseTo(450, within(1e-9));
        assertThat(hay.deliveredPerKg() * TON).isCloseTo(138.75, within(1e-9));
    }

    @Test
    void freightOfBothKindsOrWithoutALoadAndAWeekBelowALoadAreRefused() {
        var byMile =
                new FeedForSale.Terms(Quantity.of(100, Unit.MILE), Quantity.of(4.5, Unit.DOLLAR), null, null, null);
        var fewAWeek = new FeedForSale.Terms(null, null, tons(10), null, null);
        assertThatThrownBy(() -> hay(96.0, null, null, byMile)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> hay(96.0, tons(24), Quantity.of(300, Unit.DOLLAR), byMile))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> hay(96.0, tons(24), null, fewAWeek)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new FeedForSale.Terms(Quantity.of(100, Unit.MILE), null, null, null, null))
                .isInstanceOf(Refused.class);
    }

    /** Today $120 and $18.75 of freight. In mid-March $150, freight as it was; a winter one in six harder, a tenth on $150. */
    @Test
    void waitingCostsWhatTheRanchSaysAndFreightStaysAsItIs() {
        var season = season(60, hauled(96, null));
        var prices = new Prices(season);
        int f = index(season);
        double weeks = LocalDate.of(2027, 3, 15).toEpochDay() - Invented.DAY.toEpochDay();
        assertThat(prices.buy(f, 0, 0) * TON).isCloseTo(138.75, within(1e-6));
        assertThat(prices.buy(f, weeks / 7, 0) * TON).isCloseTo(168.75, within(1e-6));
        assertThat(prices.buy(f, weeks / 7, 1) * TON).isCloseTo(183.75, within(1e-6));
    }

    /** 30 tons asked for are two loads of 24; one ton more than two loads is left for the next; the last of 60 tons is 12. */
    @Test
    void loadsAreWholeAndTheLastBringsWhatIsLeft() {
        var supply = season(60, hauled(60, null))
                .feeds()
                .get(index(season(60, hauled(60, null))))
                .supply();
        assertThat(supply.ordered(30 * TON)).isEqualTo(2);
        assertThat(supply.ordered(49 * TON)).isEqualTo(2);
        assertThat(supply.needed(49 * TON)).isEqualTo(3);
        assertThat(supply.ordered(0)).isZero();
        assertThat(supply.comes(3, Double.POSITIVE_INFINITY, 60 * TON) / TON).isCloseTo(60, within(1e-6));
        // 50 tons a week are two loads
        assertThat(supply.comes(3, 50 * TON, 60 * TON) / TON).isCloseTo(48, within(1e-6));
        // $450 are paid for 12 tons, of which $225 are in the price of a ton already
        assertThat(supply.notFull(12 * TON)).isCloseTo(225, within(1e-6));
        assertThat(supply.notFull(48 * TON)).isCloseTo(0, within(1e-6));
    }

    @Test
    void everyWeekBringsWholeLoadsAndNeverMoreThanCanCome() {
        var season = season(60, hauled(96, 24.0));
        int f = index(season);
        var judge = new Judge(season);
        double all = 0;
        for (int winter = 0; winter < season.record().size(); winter += 9) {
            var forecast = new Forecast(season, winter);
            try (var policy = new Replanned(
                    season, forecast, List.of(0.8), new Planner(new Planner.Programs(season, Blocks.FEW, 1)))) {
                var played = judge.play(Truth.drawn(season, winter, winter), forecast, policy);
                assertThat(played.open()).isZero();
                for (var week : played.weeks()) {
                    double loads = week.boughtKg()[f] / (24 * TON);
                    assertThat(loads).isCloseTo(Math.rint(loads), within(1e-9)).isLessThan(1.5);
                    all += loads;
                }
            }
        }
        assertThat(all).isGreaterThan(3);
    }

    /** What is paid: so many tons at the price of the week, and freight for each load. */
    @Test
    void whatIsPaidIsTonsTimesTheirPriceAndFreightALoad() {
        var season = season(60, hauled(60, null));
        int f = index(season);
        var forecast = new Forecast(season, 3);
        var orders = new double[season.feeds().size()];
        orders[f] = 50 * TON;
        var none = new double[season.feeds().size()];
        var eats = new double[season.eaters().size()][season.feeds().size()];
        var once = new Followed(IntStream.range(0, season.allWeeks())
                .mapToObj(week -> new Decision(eats, week == 0 ? orders : none))
                .toList());
        var truth = Truth.expected(season, 3);
        var played = new Judge(season).play(truth, forecast, once);
        // three loads, the last of 12 tons, at the first week's price
        double hard = forecast.hardSoFar(3, 0);
        double aTon = new Prices(season).buy(f, 0, hard) * TON - 18.75;
        assertThat(played.weeks().get(0).dollars()).isCloseTo(60 * aTon + 3 * 450, within(0.01));
    }

    @Test
    void moreLoadsThatCanBeHadNeverCostMore() {
        double last = Double.POSITIVE_INFINITY;
        for (double most : new double[] {24, 48, 72, 240}) {
            var season = season(60, hauled(most, null));
            double cost = new Judge(season)
                    .foreseen(Truth.expected(season, 5), new Forecast(season, 5))
                    .cost();
            assertThat(cost).isLessThan(last + 1);
            last = cost;
        }
        var slow = season(60, hauled(240, 24.0));
        assertThat(new Judge(slow)
                        .foreseen(Truth.expected(slow, 5), new Forecast(slow, 5))
                        .cost())
                .isGreaterThan(last - 1);
    }

    @Test
    void theOrderIsOfWholeLoadsWithWhatThePlanAsksFor() {
        var season = season(60, hauled(240, null));
        try (var policy = new Replanned(
                season,
                new Forecast(season, -1),
                List.of(0.8),
                new Planner(new Planner.Programs(season, Blocks.FEW, 1)))) {
            var plan = policy.plan(Judge.start(season));
            var buys = Orders.of(plan, season).buys().stream()
                    .filter(buy -> buy.feed().id().equals(HAY.toString()))
                    .toList();
            assertThat(buys).isNotEmpty().allSatisfy(buy -> {
                assertThat(buy.kg()).isCloseTo(buy.loads() * 24 * TON, within(1e-6));
                assertThat(buy.by()).isAfterOrEqualTo(Invented.DAY);
            });
            double ordered = buys.stream().mapToDouble(Orders.Buy::kg).sum();
            double asked = buys.stream().mapToDouble(Orders.Buy::askedKg).sum();
            assertThat(ordered).isBetween(asked - 0.05 * 24 * TON, asked + 24 * TON);
        }
    }

    /** Nobody said how much there is: what the plan feeds of it is what has to be bought, to the pound. */
    @Test
    void whatHasNoEndIsInTheListOfWhatToBuy() {
        var season = season(60, hay(null, null, null, null));
        int f = index(season);
        var plan = WinterPlan.of(season).plan();
        double fed = plan.stretches().stream()
                .mapToDouble(stretch -> Arrays.stream(stretch.decision().eaten())
                        .mapToDouble(group -> season.feeds().get(f).priced().putOut(group[f]))
                        .sum())
                .sum();
        var buys = Orders.of(plan, season).buys().stream()
                .filter(buy -> buy.feed().id().equals(HAY.toString()))
                .toList();
        assertThat(fed / TON).isGreaterThan(10);
        assertThat(buys.stream().mapToDouble(Orders.Buy::kg).sum()).isCloseTo(fed, within(1.0));
        assertThat(buys).allSatisfy(buy -> assertThat(buy.dollarsPerKg() * TON).isCloseTo(120, within(1e-6)));
        assertThat(Orders.of(plan, season).buys()).noneMatch(buy -> buy.feed().isEmergency());
    }
}
