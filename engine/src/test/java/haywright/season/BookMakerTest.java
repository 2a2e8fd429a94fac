package haywright.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FeedForSale;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Settings;
import haywright.sampling.stock.Stock;
import haywright.season.given.Season;
import haywright.season.play.Invented;
import haywright.season.play.Plan;
import haywright.season.play.Played;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;

/** A whole book of a small invented ranch, ten weeks before grass. */
class BookMakerTest {
    private static final LocalDate DAY = Invented.DAY;

    private static BookMaker plain(int draws, int threads, BooleanSupplier enough) {
        return new BookMaker(1, draws, threads, false, false, enough);
    }

    private static WinterBook book(Ranch ranch, BookMaker maker) {
        return maker.of(new Yard(ranch, DAY), BookListener.NONE);
    }

    @Test
    void oneThreadAndTwoGiveTheSame() {
        var one = book(Invented.ranch(100, 0), plain(10, 1, () -> false));
        var two = book(Invented.ranch(100, 0), plain(10, 2, () -> false));
        assertThat(two.hash()).isEqualTo(one.hash());
        assertThat(two.cost()).isEqualTo(one.cost());
        assertThat(two.shortWinters()).isEqualTo(one.shortWinters());
        assertThat(two.runsOut()).isEqualTo(one.runsOut());
        assertThat(two.kinds()).isEqualTo(one.kinds());
        assertThat(two.besides().toString()).isEqualTo(one.besides().toString());
        assertThat(two.doubts()).isEqualTo(one.doubts());
    }

    /** A draw of a mild winter with light bales came out shorter than one of a hard winter with heavy ones. */
    @Test
    void aHardWinterIsShorterThanAnOpenOne() {
        var kinds = book(Invented.ranch(60, 0), plain(60, 2, () -> false)).kinds();
        assertThat(kinds).extracting(WinterBook.Kind::what).containsExactly("open", "usual", "hard");
        double open = kinds.get(0).tonsShort() - kinds.get(0).tonsLeft();
        double usual = kinds.get(1).tonsShort() - kinds.get(1).tonsLeft();
        double hard = kinds.get(2).tonsShort() - kinds.get(2).tonsLeft();
        assertThat(usual).isBetween(open, hard);
    }

    @Test
    void canceledItKeepsWhatIsDoneAndThatIsTheSame() {
        var played = new ArrayList<Played>();
        var all = new ArrayList<Played>();
        var few = plain(8, 1, () -> played.size() >= 5).of(new Yard(Invented.ranch(100, 0), DAY), kept(played));
        var whole = plain(8, 1, () -> false).of(new Yard(Invented.ranch(100, 0), DAY), kept(all));
        assertThat(few.isWhole()).isFalse();
        assertThat(few.draws()).isEqualTo(5);
        assertThat(whole.isWhole()).isTrue();
        assertThat(whole.draws()).isEqualTo(8);
        for (int i = 0; i < played.size(); i++) {
            assertThat(played.get(i).cost()).isEqualTo(all.get(i).cost());
            assertThat(played.get(i).leftKg()).isEqualTo(all.get(i).leftKg());
        }
    }

    private static BookListener kept(List<Played> played) {
        return new BookListener() {
            @Override
            public void played(int done, int of, Played winter) {
                played.add(winter);
            }
        };
    }

    @Test
    void theFirstPlanComesBeforeAnyWinterAndOfNoTimeAtAllThereIsThePlan() {
        var plans = new ArrayList<Plan>();
        var book = plain(40, 1, () -> true).of(new Yard(Invented.ranch(100, 0), DAY), new BookListener() {
            @Override
            public void planned(Plan plan) {
                plans.add(plan);
            }
        });
        assertThat(plans).hasSize(1);
        assertThat(book.draws()).isZero();
        assertThat(book.lasts()).isEmpty();
        assertThat(book.plan().unmet()).isEmpty();
    }

    @Test
    void theHashIsOfAllThatMovesAFigureAndOfNothingElse() {
        var maker = plain(20, 1, () -> true);
        var ranch = Invented.ranch(100, 0);
        var hash = book(ranch, maker).hash();
        assertThat(book(ranch, plain(20, 2, () -> true)).hash()).isEqualTo(hash);
        assertThat(book(Invented.ranch(101, 0), maker).hash()).isNotEqualTo(hash);
        assertThat(book(Invented.ranch(100, 1), maker).hash()).isNotEqualTo(hash);
        assertThat(book(ranch.with(Invented.cows(101)), maker).hash()).isNotEqualTo(hash);
        assertThat(book(ranch, new BookMaker(2, 20, 1, false, false, () -> true))
                        .hash())
                .isNotEqualTo(hash);
    }

    @Test
    void plentyLastsInEveryWinterAndNothingInNone() {
        var plenty = book(Invented.ranch(300, 0), plain(6, 2, () -> false));
        assertThat(plenty.lasts()).hasValue(20);
        assertThat(plenty.shortWinters()).isEmpty();
        var nothing = book(Invented.ranch(5, 0), plain(6, 2, () -> false));
        assertThat(nothing.lasts()).hasValue(0);
        assertThat(nothing.shortWinters()).hasSize(6).allSatisfy(winter -> {
            assertThat(winter.tonsHigh())
                    .isGreaterThanOrEqualTo(winter.tonsLow())
                    .isPositive();
            assertThat(winter.from()).isPresent();
        });
        assertThat(nothing.low()).isLessThanOrEqualTo(nothing.high());
    }

    @Test
    void alternativesComeWithADateAndWhatTheyDoNotCount() {
        var maker = new BookMaker(1, 6, 2, false, true, () -> false);
        var book = book(Invented.ranch(85, 0), maker);
        assertThat(book.alternatives()).extracting(WinterBook.Alternative::id).contains("buy-now", "rings", "sell");
        assertThat(book.alternatives()).allSatisfy(one -> {
            assertThat(one.decideBy()).isAfterOrEqualTo(DAY);
            assertThat(one.ask()).isNotBlank();
            assertThat(one.low()).isLessThanOrEqualTo(one.net());
            assertThat(one.high()).isGreaterThanOrEqualTo(one.net());
        });
        // hay that is short is worth buying before it is an emergency
        assertThat(book.alternatives())
                .filteredOn(one -> one.id().equals("buy-now"))
                .allSatisfy(one -> assertThat(one.net()).isPositive());
    }

    @Test
    void twoTogetherAreWhatTheBookSaysOfItsBestTwoInEitherOrder() {
        var maker = new BookMaker(1, 6, 2, false, true, () -> false);
        var yard = new Yard(Invented.ranch(85, 0), DAY);
        var season = Season.of(yard);
        var book = maker.of(yard, season, BookListener.NONE);
        var best = book.alternatives().get(book.alternatives().size() - 1);
        var ids = best.id().split("\\+");
        assertThat(ids).hasSize(2);
        double hardness = book.policy().middle();
        var again = maker.together(yard, season, hardness, ids[0], ids[1]).orElseThrow();
        var turned = maker.together(yard, season, hardness, ids[1], ids[0]).orElseThrow();
        assertThat(turned).isEqualTo(again);
        assertThat(again.net()).isEqualTo(best.net());
        assertThat(again.lasts()).isEqualTo(best.lasts());
        assertThat(maker.together(yard, season, hardness, ids[0], ids[0])).isEmpty();
        assertThat(maker.together(yard, season, hardness, ids[0], "nothing")).isEmpty();
        var stopped = new BookMaker(1, 6, 2, false, true, () -> true);
        assertThat(stopped.together(yard, season, hardness, ids[0], ids[1])).isEmpty();
    }

    /** Fifty tons of oat hay that nobody may have until it is tested: the storm reserve is not of them either. */
    @Test
    void aLotThatWaitsForATestHoldsNoReserveForStorms() {
        var ranch = Invented.ranch(60, 0);
        var alone = book(ranch, plain(3, 1, () -> false));
        var beside = book(ranch.with(untestedOats(50)), plain(3, 1, () -> false));
        assertThat(beside.besides()).hasSameSizeAs(alone.besides()).isNotEmpty();
        for (int i = 0; i < beside.besides().size(); i++) {
            assertThat(beside.besides().get(i).tonsShort())
                    .as(beside.besides().get(i).what())
                    .isCloseTo(alone.besides().get(i).tonsShort(), within(1.0));
        }
    }

    /** 36 tons that a safe test frees are 36 tons less to find, but for what is lost in store and what they are poorer. */
    @Test
    void whatASafeTestFreesIsNearlyAllOfItLessToFind() {
        var maker = new BookMaker(1, 6, 2, false, true, () -> false);
        var book = book(Invented.ranch(60, 0).with(untestedOats(36)), maker);
        var test = book.alternatives().stream()
                .filter(one -> one.id().equals("test"))
                .findFirst()
                .orElseThrow();
        assertThat(book.besides().get(0).tonsShort() - test.tonsShort()).isBetween(25.0, 40.0);
        // what no longer has to be found costs more than a bought ton
        var buy = book.alternatives().stream()
                .filter(one -> one.id().equals("buy-now"))
                .findFirst()
                .orElseThrow();
        assertThat(test.money().mean()).isGreaterThan(buy.money().mean() / 2);
    }

    /** Of 500 tons that are for sale less is needed with 36 tons of oats that are safe, by no more than these are; and some all the same. */
    @Test
    void whatIsBoughtThoughATestIsSafeIsSaidApart() {
        var maker = new BookMaker(1, 6, 2, false, true, () -> false);
        var sale = new FeedForSale(
                new UUID(0, 78),
                "Hay for sale",
                FeedClass.GRASS_HAY,
                "",
                List.of(),
                Quantity.of(140, Unit.DOLLAR_PER_TON),
                Quantity.of(500, Unit.TON),
                "");
        var yard = new Yard(Invented.ranch(20, 0).with(sale).with(untestedOats(36)), DAY);
        var season = Season.of(yard);
        var book = maker.of(yard, season, BookListener.NONE);
        var all = Orders.of(book.plan(), season).buys().stream()
                .filter(buy -> buy.feed().name().equals("Hay for sale"))
                .mapToDouble(Orders.Buy::askedKg)
                .sum();
        var test = book.alternatives().stream()
                .filter(one -> one.id().equals("test"))
                .findFirst()
                .orElseThrow();
        double anyway = Objects.requireNonNull(test.needed()).stream()
                .filter(one -> one.feed().equals(new UUID(0, 78).toString()))
                .mapToDouble(WinterBook.Needed::kg)
                .sum();
        assertThat(anyway).isPositive();
        assertThat(all - anyway).isBetween(Unit.TON.toBase(20), Unit.TON.toBase(40));
        assertThat(book.alternatives())
                .filteredOn(one -> one.id().equals("rings"))
                .allMatch(one -> one.needed() == null);
    }

    /** A feed without a limit is bought as it is fed: the short page said that the plan buys nothing. */
    @Test
    void whatHasNoLimitIsBoughtTooByThePlan() {
        var cake = new FeedForSale(
                new UUID(0, 79),
                "Cubes",
                FeedClass.GRASS_HAY,
                "",
                List.of(),
                Quantity.of(140, Unit.DOLLAR_PER_TON),
                null,
                "");
        var plan = WinterPlan.of(Season.of(new Yard(Invented.ranch(5, 0).with(cake), DAY)));
        assertThat(plan.buys(new UUID(0, 79).toString())).isGreaterThan(Unit.TON.toBase(5));
        assertThat(plan.plan().buys()).doesNotContainKey(new UUID(0, 79).toString());
    }

    @Test
    void whatCannotBePlannedIsRefusedInWords() {
        var ranch = Invented.ranch(100, 0);
        var empty = Ranch.empty(new UUID(0, 9), "A ranch").with(ranch.settings());
        assertThatThrownBy(() -> book(empty, plain(1, 1, () -> false)))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems())
                                .extracting(problem -> problem.field())
                                .containsExactly("groups", "lots"));
        var s = ranch.settings();
        var late = new Settings(true, null, s.system(), "", 15, DAY.minusDays(1), s.weather(), null, null, null);
        assertThatThrownBy(() -> book(ranch.with(late), plain(1, 1, () -> false)))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.problems())
                                .extracting(problem -> problem.field())
                                .containsExactly("turnout"));
    }

    /** Fifty tons of oat hay that nobody may be fed before it is tested are no hay that is left. */
    private static Lot untestedOats(double tons) {
        return new Lot(
                new UUID(0, 3),
                "Oat hay",
                FeedClass.CEREAL_HAY,
                "",
                "",
                "",
                null,
                Lot.Storage.BARN,
                new Stock.Weighed(Quantity.of(tons, Unit.TON)),
                Quantity.of(120, Unit.DOLLAR_PER_TON),
                false,
                "",
                null,
                null,
                List.of());
    }

    @Test
    void whatWaitsForATestIsNotLeft() {
        var book = book(Invented.ranch(30, 0).with(untestedOats(200)), plain(6, 1, () -> false));
        assertThat(book.lasts()).hasValue(0);
        assertThat(book.kinds())
                .isNotEmpty()
                .allSatisfy(kind -> assertThat(kind.tonsLeft()).isLessThan(50));
    }

    @Test
    void withoutAnyWinterThereIsAPlanAndNoCount() {
        var book = book(Invented.ranch(100, 0).withWeather(null, null), plain(20, 1, () -> false));
        assertThat(book.lasts()).isEmpty();
        assertThat(book.draws()).isZero();
        assertThat(book.plan().first().eaten()[0]).isNotEmpty();
    }

    @Test
    void tenThousandTonsAndALotOfNearlyNothingAreFiguresLikeAnyOther() {
        assertThat(book(Invented.ranch(10_000, 0), plain(3, 1, () -> false)).lasts())
                .hasValue(20);
        assertThat(book(Invented.ranch(0.5, 0), plain(3, 1, () -> false)).lasts())
                .hasValue(0);
    }

    @Test
    void aGroupThatNothingCarriesIsNamedBeforeAnyWinterIsPlayed() {
        var ranch = Invented.ranch(100, 0);
        var fast = Invented.cows(100).gaining(Quantity.of(0, Unit.POUND_A_DAY));
        var tiny = ranch.with(fast.scored(3, null).wanting(7.0));
        var plan = book(tiny, plain(1, 1, () -> true)).plan();
        // thin cows that are wanted fat are fed as far as they hold it: no need is dropped in silence
        assertThat(plan.unmet()).allSatisfy(unmet -> assertThat(unmet.percent()).isPositive());
    }
}
