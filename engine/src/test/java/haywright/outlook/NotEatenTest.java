package haywright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.FedWeek;
import haywright.ranch.Ranch;
import haywright.season.WinterPlan;
import haywright.season.given.Appetite;
import haywright.season.play.Invented;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What cattle leave moves what is believed of waste and appetite, by pencil: seen and usual count by what each may be off. */
class NotEatenTest {
    private static Ranch week(Ranch ranch, int id, double tons, double percent) {
        var from = LocalDate.of(2027, 2, 1).plusWeeks(id);
        return ranch.with(new FedWeek(
                new UUID(5, id),
                from,
                from.plusDays(6),
                Map.of(Invented.HAY, Quantity.of(tons, Unit.TON)),
                Map.of(),
                Map.of(Invented.HAY, percent),
                Map.of(),
                Map.of(),
                Map.of()));
    }

    /** Both may be off by 6 points, so one week counts as much as what is usual: (15 + 25)/2, and 6/√2; two weeks (15 + 25 + 28)/3. */
    @Test
    void aWeekCountsAsMuchAsWhatIsUsual() {
        var one = NotEaten.of(15, 25);
        assertThat(one.percent()).isCloseTo(20, within(1e-9));
        assertThat(one.sd()).isCloseTo(4.2426, within(1e-4));
        assertThat(NotEaten.of(15, 25, 28).percent()).isCloseTo(68 / 3.0, within(1e-9));
        assertThat(NotEaten.of(15, 5).percent()).isCloseTo(10, within(1e-9));
    }

    @Test
    void whatIsLeftOfOneLotMovesThatLotAloneAndNobodyWhoLookedNothing() {
        var ranch = Invented.ranch(100, 0);
        var left = new Yard(week(ranch, 0, 20, 27), Invented.DAY);
        var usual = new Yard(ranch, Invented.DAY);
        for (int f = 0; f < usual.feeds().size(); f++) {
            boolean isHay = usual.feeds().get(f).feed().id().equals(Invented.HAY.toString());
            double before = usual.feeds().get(f).feedingLossPercent();
            assertThat(left.feeds().get(f).feedingLossPercent())
                    .isCloseTo(isHay ? (before + 27) / 2 : before, within(1e-9));
        }
        var hay = ranch.lots().get(Invented.HAY);
        assertThat(usual.notEaten(hay)).isEmpty();
    }

    @Test
    void hayOfWhichMoreIsLeftNeverLastsLonger() {
        double last = -1;
        for (double percent : new double[] {5, 15, 25, 40}) {
            var plan = WinterPlan.of(new Yard(week(Invented.ranch(85, 0), 0, 12, percent), Invented.DAY))
                    .orElseThrow();
            double missing = plan.plan().emergencyKg() + plan.plan().stormShort();
            assertThat(missing).isGreaterThan(last - 1);
            last = missing;
        }
    }

    /** With nothing left beyond what is wasted anyway nobody knows how much more they would have eaten. */
    @Test
    void appetiteShowsOnlyWhereTheyHadAllTheyWanted() {
        var ranch = Invented.ranch(100, 0);
        assertThat(Appetite.of(new Yard(week(ranch, 0, 12, 15), Invented.DAY)).weeks())
                .isZero();
        var none = Appetite.of(new Yard(ranch, Invented.DAY));
        assertThat(none.times()).isEqualTo(1);
        assertThat(none.sd()).isCloseTo(0.08, within(1e-12));
    }

    /**
     * The equation may be off by 8 %, what is seen by 10 %: a week counts 1/0.01 = 100 beside 1/0.0064 = 156.25. Twice the hay
     * at the same share left is twice the appetite seen, so belief moves by 100/256.25 of what was seen the first time.
     */
    @Test
    void whatTheyAteMovesAppetiteByWhatEachMayBeOff() {
        var ranch = Invented.ranch(100, 0);
        var some = Appetite.of(new Yard(week(ranch, 0, 10, 40), Invented.DAY));
        var twice = Appetite.of(new Yard(week(ranch, 0, 20, 40), Invented.DAY));
        double seen = (some.times() * 256.25 - 156.25) / 100;
        assertThat(seen).isBetween(0.2, 1.0);
        assertThat(twice.times() - some.times()).isCloseTo(seen * 100 / 256.25, within(1e-9));
        assertThat(some.sd()).isCloseTo(1 / Math.sqrt(256.25), within(1e-12));
    }
}
