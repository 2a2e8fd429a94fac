package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedNow;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.given.Forecast;
import haywright.season.given.Season;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a ranch means to do with a lot beside feeding it: sell it, keep it for calving, take it off a face. Ranches invented. */
class MeantTest {
    private static final double TON = 907.18474;
    private static final UUID SILAGE = new UUID(0, 7);

    private static Quantity tons(double tons) {
        return Quantity.of(tons, Unit.TON);
    }

    private static Ranch meant(Ranch ranch, Lot.@Nullable Use use) {
        return ranch.with(ranch.lots().get(Invented.HAY).meant(use));
    }

    private static Lot.Use selling(double dollars) {
        return new Lot.Use(Quantity.of(dollars, Unit.DOLLAR_PER_TON), null, null, null);
    }

    private static Season season(Ranch ranch) {
        return Season.of(new Yard(ranch, Invented.DAY));
    }

    private static Season selling(double tons, double dollars) {
        return season(meant(Invented.ranch(tons, 0), selling(dollars)));
    }

    /** Hay that has to be found costs what it does in another season. */
    private static Season atTheSamePrice(Season other, Ranch ranch) {
        return Season.of(
                new Yard(ranch, Invented.DAY),
                new Season.Changes(Set.of(), 0, Map.of(), OptionalDouble.of(other.emergencyPrice())));
    }

    private static Plan plan(Season season, double h) {
        try (var policy = policy(season, new Forecast(season, -1), h)) {
            return policy.plan(Judge.start(season));
        }
    }

    private static Replanned policy(Season season, Forecast forecast, double h) {
        return new Replanned(season, forecast, List.of(h), new Planner(new Planner.Programs(season, Blocks.FEW, 1)));
    }

    /** A bunker 100 feet long: 4 inches are a 300th of it, so 300 tons are a ton a day. */
    private static Ranch withSilage(double feet, Lot.@Nullable Use use) {
        return Invented.ranch(110, 0)
                .with(new Lot(
                        SILAGE,
                        "Silage",
                        FeedClass.LEGUME_SILAGE,
                        "",
                        "",
                        "",
                        null,
                        Lot.Storage.BUNKER,
                        new Stock.Bunker(
                                Quantity.of(feet, Unit.FOOT),
                                Quantity.of(30, Unit.FOOT),
                                Quantity.of(8, Unit.FOOT),
                                Quantity.of(15, Unit.LB_PER_FT3),
                                40),
                        Quantity.of(60, Unit.DOLLAR_PER_TON),
                        false,
                        "",
                        null,
                        null,
                        List.of(),
                        use));
    }

    private static int index(Season season, UUID lot) {
        return IntStream.range(0, season.feeds().size())
                .filter(f -> season.feeds().get(f).id().equals(lot.toString()))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(doubles = {85, 150, 300})
    void toBeAbleToSellNeverCostsMore(double tons) {
        var not = season(Invented.ranch(tons, 0));
        var can = selling(tons, 110);
        assertThat(plan(can, 0.8).cost()).isLessThan(plan(not, 0.8).cost() + 0.01);
        var forecast = new Forecast(not, 5);
        assertThat(new Judge(can).foreseen(Truth.expected(can, 5), forecast).cost())
                .isLessThan(new Judge(not)
                                .foreseen(Truth.expected(not, 5), forecast)
                                .cost()
                        + 0.01);
    }

    /** $400 a ton is more than twice what the hay costs, and still none of it is sold that a hard winter needs. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 85, 100, 110, 130})
    void nothingIsSoldThatAHardWinterOrTheStormReserveNeeds(double tons) {
        var can = selling(tons, 400);
        var sold = plan(can, 0.8).first().sell();
        double kg = sold[index(can, Invented.HAY)];
        var before = plan(atTheSamePrice(can, Invented.ranch(tons, 0)), 1.28);
        var after = plan(atTheSamePrice(can, Invented.ranch(tons - kg / TON, 0)), 1.28);
        assertThat(after.emergencyKg()).isLessThan(before.emergencyKg() + 0.05 * TON);
        assertThat(after.stormShort()).isLessThan(before.stormShort() + 0.05 * TON);
        if (tons < 90) {
            assertThat(kg).isZero();
        }
    }

    @Test
    void whatIsSoldIsPaidByTheTonAndTheBooksClose() {
        var season = selling(300, 100);
        int hay = index(season, Invented.HAY);
        var forecast = new Forecast(season, 2);
        try (var policy = policy(season, forecast, 0.8)) {
            var played = new Judge(season).play(Truth.expected(season, 2), forecast, policy);
            double sold = played.weeks().stream()
                    .mapToDouble(week -> week.decision().sell()[hay])
                    .sum();
            assertThat(sold).isGreaterThan(50 * TON);
            assertThat(played.sold()).isCloseTo(100 * sold / TON, within(1.0));
            assertThat(played.open()).isZero();
            assertThat(played.lasted()).isTrue();
        }
    }

    /** 30 x 8 x 300 feet at 15 lb are 540 tons of dry matter, 1,350 as fed; 4 inches of 3,600 are 1.5 tons a day. */
    @Test
    void inchesOffAFaceAreTheirShareOfTheLength() {
        var ours = season(withSilage(300, null)).feeds();
        int f = index(season(withSilage(300, null)), SILAGE);
        assertThat(ours.get(f).kg() / TON).isCloseTo(1350, within(1e-6));
        assertThat(ours.get(f).meant().faceADay() / TON).isCloseTo(1.5, within(1e-6));
        assertThat(ours.get(f).meant().isFaceSaid()).isFalse();
        var typed = season(withSilage(300, new Lot.Use(null, null, Quantity.of(6, Unit.INCH), null)));
        assertThat(typed.feeds().get(f).meant().faceADay() / TON).isCloseTo(2.25, within(1e-6));
        var inTons = season(withSilage(300, new Lot.Use(null, null, tons(2), null)));
        assertThat(inTons.feeds().get(f).meant().faceADay() / TON).isCloseTo(2, within(1e-6));
    }

    /** Seven tons a week have to come off; two are fed in the first week and none after. */
    @Test
    void whatComesOffAnOpenFaceAndIsNotFedSpoils() {
        var season = season(withSilage(100, new Lot.Use(null, null, tons(1), null)));
        int f = index(season, SILAGE);
        var feed = season.feeds().get(f);
        var eats = new double[season.eaters().size()][season.feeds().size()];
        eats[0][f] = feed.priced().eaten(2 * TON);
        var none = new double[season.eaters().size()][season.feeds().size()];
        var buys = new double[season.feeds().size()];
        var followed = new Followed(IntStream.range(0, season.allWeeks())
                .mapToObj(week -> new Decision(week == 0 ? eats : none, buys))
                .toList());
        var played = new Judge(season).play(Truth.expected(season, 3), new Forecast(season, 3), followed);
        double keeps = 1 - 7 * feed.lossADay();
        assertThat(played.weeks().get(1).known().stock()[f] / TON).isCloseTo(450 * keeps - 7, within(0.001));
        assertThat(played.weeks().get(1).known().face()[f]).isEqualTo(Known.Face.OPEN);
        assertThat(played.weeks().get(2).known().stock()[f] / TON)
                .isCloseTo((450 * keeps - 7) * keeps - 7, within(0.001));
        assertThat(played.open()).isZero();
    }

    /** A face that takes more than the herd eats is never cheaper than one that takes nothing. */
    @Test
    void aFaceNeverMakesAPlanCheaperAndSaysWhatSpoils() {
        var free = plan(season(withSilage(300, new Lot.Use(null, null, tons(0), null))), 0.8);
        var opened = withSilage(300, new Lot.Use(null, null, tons(12), null))
                .with(new FedNow(Invented.COWS, Map.of(SILAGE, Quantity.of(20, Unit.POUND_A_DAY))));
        var held = plan(season(opened), 0.8);
        assertThat(held.cost()).isGreaterThan(free.cost() - 0.01);
        assertThat(held.spoils().get(SILAGE.toString())).isGreaterThan(TON);
        assertThat(free.spoils()).isEmpty();
        var shut = plan(season(withSilage(300, new Lot.Use(null, null, tons(12), null))), 0.8);
        assertThat(shut.cost()).isLessThan(held.cost() + 0.01);
    }

    @Test
    void hayThatIsKeptForCalvingIsThereWhenTheFirstCalvesCome() {
        var season = season(meant(Invented.ranch(150, 0), new Lot.Use(null, null, null, tons(40))));
        int hay = index(season, Invented.HAY);
        var forecast = new Forecast(season, 2);
        try (var policy = policy(season, forecast, 0.8)) {
            var played = new Judge(season).play(Truth.expected(season, 2), forecast, policy);
            for (int week = 0; week <= season.calvingWeek(); week++) {
                assertThat(played.weeks().get(week).known().stock()[hay] / TON).isGreaterThan(39.9);
            }
        }
        assertThat(season.calvingWeek()).isEqualTo(5);
    }

    /** Hay left is worth what the ranch says: 10 tons more at $90 are $900 less, where none of them is needed. */
    @Test
    void whatIsLeftIsWorthWhatTheRanchSays() {
        var worth = new Lot.Use(null, Quantity.of(90, Unit.DOLLAR_PER_TON), null, null);
        double keeps = 1;
        var season = season(meant(Invented.ranch(300, 0), worth));
        for (int week = 0; week < season.allWeeks(); week++) {
            keeps *= 1 - 7 * season.feeds().get(index(season, Invented.HAY)).lossADay();
        }
        var more = season(meant(Invented.ranch(310, 0), worth));
        var forecast = new Forecast(season, 5);
        double saved = new Judge(season)
                        .foreseen(Truth.expected(season, 5), forecast)
                        .cost()
                - new Judge(more).foreseen(Truth.expected(more, 5), forecast).cost();
        assertThat(saved).isCloseTo(900 * keeps, within(1.0));
    }
}
