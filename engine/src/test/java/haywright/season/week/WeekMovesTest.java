package haywright.season.week;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import haywright.outlook.LotTons;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedWeek;
import haywright.ranch.Lot;
import haywright.ranch.LotWeighing;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.BookListener;
import haywright.season.BookMaker;
import haywright.season.play.Invented;
import haywright.season.week.WeekMoves.Kind;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Figures by pencil: 300 bales of 1,200 lb are 180 tons. */
class WeekMovesTest {
    private static final LocalDate DAY = Invented.DAY;
    private static final UUID WEEK = new UUID(9, 9);

    private static Ranch ranch() {
        return with(
                Invented.ranch(100, 0),
                new Stock.Bales(Stock.BaleKind.LARGE_ROUND, 300, Quantity.of(1200, Unit.POUND), null, null, null));
    }

    private static Ranch with(Ranch ranch, Stock stock) {
        return ranch.with(ranch.lots().values().iterator().next().with(stock));
    }

    private static Lot lot(Ranch ranch) {
        return ranch.lots().values().iterator().next();
    }

    private static double tons(Ranch ranch) {
        return Unit.TON.fromBase(LotTons.of(lot(ranch)).kg().orElseThrow());
    }

    private static Quantity ton(double tons) {
        return Quantity.of(tons, Unit.TON);
    }

    private static FedWeek fed(Ranch ranch, double tons, int week) {
        var from = DAY.plusWeeks(week - 1);
        return new FedWeek(
                new UUID(9, week),
                from,
                from.plusDays(6),
                Map.of(lot(ranch).id(), ton(tons)),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of());
    }

    private static FedWeek counted(Ranch ranch, double fed, double left) {
        var id = lot(ranch).id();
        return new FedWeek(
                WEEK,
                DAY.minusDays(6),
                DAY,
                Map.of(id, ton(fed)),
                Map.of(id, ton(left)),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of());
    }

    private static WeekMoves moves(Ranch ranch, FedWeek week) {
        return new WeekMoves(new Yard(ranch, DAY), week);
    }

    @Test
    void whatWasFedIsGoneAndTheDoubtOfARoundBaleStays() {
        var start = ranch();
        var one = moves(start, fed(start, 18, 1)).moved();
        assertThat(tons(one)).isCloseTo(162, within(1e-9));
        assertThat(lot(one).stock().bales()).isEqualTo(270);
        var used = LotTons.of(lot(one)).used();
        assertThat(used.doubt()).isCloseTo(100.0 / 1200, within(1e-9));
        var two = moves(one, fed(one, 18, 2)).moved();
        assertThat(tons(two)).isCloseTo(144, within(1e-9));
        assertThat(two.weeks()).hasSize(2);
        // the stock that was put up is still there as it was entered
        assertThat(lot(two).stock().lines().get(0))
                .isEqualTo(lot(start).stock().lines().get(0));
    }

    /** Of 17.1 tons planned, half as much again is 25.65 and half is 8.55. */
    @Test
    void farFromWhatWasPlannedIsAsked() {
        var start = ranch();
        var planned = Map.of(lot(start).id(), Unit.TON.toBase(17.1));
        for (double much : new double[] {48, 25.7, 8.5}) {
            assertThat(new WeekMoves(new Yard(start, DAY), fed(start, much, 1), planned).asks())
                    .as(much + " tons")
                    .filteredOn(one -> one.kind() == Kind.FAR_FROM_PLAN)
                    .hasSize(1);
        }
        for (double near : new double[] {25.6, 17.1, 8.6}) {
            assertThat(new WeekMoves(new Yard(start, DAY), fed(start, near, 1), planned).asks())
                    .as(near + " tons")
                    .noneMatch(one -> one.kind() == Kind.FAR_FROM_PLAN);
        }
        // a lot that nothing was planned of may be the wrong one; half a ton of cake for a quarter is no slip
        assertThat(new WeekMoves(new Yard(start, DAY), fed(start, 18, 1), Map.of(new UUID(0, 7), 9.0)).asks())
                .anyMatch(one -> one.kind() == Kind.FAR_FROM_PLAN);
        assertThat(new WeekMoves(
                                new Yard(start, DAY),
                                fed(start, 0.5, 1),
                                Map.of(lot(start).id(), Unit.TON.toBase(0.25)))
                        .asks())
                .noneMatch(one -> one.kind() == Kind.FAR_FROM_PLAN);
    }

    @Test
    void aCountStandsOverWhatWasFedAndTheRecordSaysWhatWasExpected() {
        var start = ranch();
        var moves = moves(start, counted(start, 18, 155));
        assertThat(moves.asks()).isEmpty();
        var after = moves.moved();
        assertThat(tons(after)).isCloseTo(155, within(1e-9));
        assertThat(after.weeks().get(WEEK).expected().get(lot(start).id()).in(Unit.TON))
                .isCloseTo(162, within(1e-9));
    }

    @Test
    void weighingsGoOnCounting() {
        var bales = List.of(1080.0, 1120.0, 1100.0, 1090.0, 1110.0).stream()
                .map(lb -> Quantity.of(lb, Unit.POUND))
                .toList();
        var weighed = ranch();
        weighed = weighed.with(lot(weighed).with(LotWeighing.ofBales(DAY.minusDays(20), bales, 300)));
        assertThat(tons(weighed)).isCloseTo(165, within(1e-9));
        assertThat(tons(moves(weighed, fed(weighed, 16.5, 1)).moved())).isCloseTo(148.5, within(1e-9));
        // all of it over a scale: before the week, and then once more after it
        var whole = ranch();
        whole = whole.with(lot(whole).with(LotWeighing.ofWhole(DAY.minusDays(20), ton(100))));
        var one = moves(whole, fed(whole, 10, 1)).moved();
        assertThat(tons(one)).isCloseTo(90, within(1e-9));
        var again = one.with(lot(one).with(LotWeighing.ofWhole(DAY.plusDays(7), ton(80))));
        assertThat(tons(again)).isCloseTo(80, within(1e-9));
        assertThat(tons(moves(again, fed(again, 8, 3)).moved())).isCloseTo(72, within(1e-9));
    }

    @Test
    void whatContradictsIsAsked() {
        var start = ranch();
        assertThat(moves(start, fed(start, 200, 1)).asks())
                .extracting(WeekMoves.Contradiction::kind)
                .contains(Kind.FED_MORE_THAN_THERE);
        assertThat(moves(start, counted(start, 18, 100)).asks())
                .extracting(WeekMoves.Contradiction::kind)
                .containsExactly(Kind.COUNT_APART);
        // 200 lb for all of them in a week
        assertThat(moves(start, fed(start, 0.1, 1)).asks())
                .extracting(WeekMoves.Contradiction::kind)
                .containsExactly(Kind.NO_MEAL);
        var group = start.groups().values().iterator().next();
        var scored = new FedWeek(
                WEEK,
                DAY,
                DAY,
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(group.id(), group.conditionScore() - 1.5),
                Map.of(),
                Map.of());
        assertThat(moves(start, scored).asks())
                .extracting(WeekMoves.Contradiction::kind)
                .containsExactly(Kind.SCORE_APART);
        var after = moves(start, scored).moved();
        assertThat(after.groups().get(group.id()).conditionScore()).isEqualTo(group.conditionScore() - 1.5);
        assertThat(after.weeks().get(WEEK).scoredBefore()).containsEntry(group.id(), group.conditionScore());
        assertThatThrownBy(
                        () -> new FedWeek(WEEK, DAY, DAY, Map.of(), Map.of(), Map.of(), Map.of(), Map.of(), Map.of()))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aLotThatIsUsedUpIsThereWithNothingAndAWinterCanBePlanned() {
        var start = ranch();
        var after = moves(start, counted(start, 18, 0)).moved();
        assertThat(tons(after)).isZero();
        assertThat(lot(after).stock().bales()).isZero();
        var maker = new BookMaker(1, 2, 1, false, false, () -> false);
        var book = maker.of(new Yard(after, DAY), BookListener.NONE);
        assertThat(book.draws()).isEqualTo(2);
        var full = maker.of(new Yard(start, DAY), BookListener.NONE);
        assertThat(book.cost().bought()).isGreaterThan(full.cost().bought());
    }
}
