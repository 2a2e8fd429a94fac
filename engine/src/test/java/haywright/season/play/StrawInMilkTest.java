package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import haywright.forage.FeedClass;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.sampling.stock.Stock;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * No straw once she has calved, and of a dry cow's day at most 40 % (NDSU, Planning for drought). A quarter of a hundred cows
 * calve in each of four weeks. With half of them calved that is 0.40 × 0.5 = 20 % of what all eat together.
 */
class StrawInMilkTest {
    private static final UUID STRAW = new UUID(0, 3);
    private static final double MOST = 0.40;

    private static Ranch ranch() {
        var ranch = Invented.ranch(150, 0);
        var cows = ranch.groups().get(Invented.COWS);
        return ranch.with(new Lot(
                        STRAW,
                        "Straw",
                        FeedClass.STRAW,
                        "",
                        "",
                        "",
                        null,
                        Lot.Storage.OUTSIDE_ON_GROUND,
                        new Stock.Weighed(Quantity.of(200, Unit.TON)),
                        Quantity.of(20, Unit.DOLLAR_PER_TON),
                        false,
                        "",
                        null,
                        null,
                        List.of()))
                .with(cows.dated(
                        IntStream.range(0, 4)
                                .mapToObj(i -> new Group.CalvingWeek(
                                        LocalDate.of(2027, 3, 8).plusWeeks(2L * i), 25))
                                .toList(),
                        null,
                        null));
    }

    @Test
    void theWinterBookGivesCowsInMilkNone() {
        var yard = new Yard(ranch(), Invented.DAY);
        var season = Season.of(yard);
        var plan = WinterPlan.of(yard).orElseThrow().plan();
        var eater = season.eaters().stream()
                .filter(one -> one.group().id().equals(Invented.COWS))
                .findFirst()
                .orElseThrow();
        int group = season.eaters().indexOf(eater);
        int straw = IntStream.range(0, season.feeds().size())
                .filter(f -> season.feeds().get(f).priced().feed().id().equals(STRAW.toString()))
                .findFirst()
                .orElseThrow();
        double all = 0;
        boolean isOverCalving = false;
        for (var stretch : plan.stretches()) {
            var eaten = stretch.decision().eaten()[group];
            int from = (int) ChronoUnit.WEEKS.between(Invented.DAY, stretch.from());
            int to = (int) ChronoUnit.WEEKS.between(Invented.DAY, stretch.to());
            double dry = IntStream.range(from, to)
                    .mapToDouble(w -> 1 - eater.stages().get(w).diet().need().milkingShare())
                    .average()
                    .orElse(1);
            isOverCalving |= dry > 0 && dry < 1;
            all += eaten[straw];
            assertThat(eaten[straw])
                    .as("straw from %s to %s, %.2f of them dry", stretch.from(), stretch.to(), dry)
                    .isLessThanOrEqualTo(MOST
                                    * dry
                                    * IntStream.range(0, eaten.length)
                                            .mapToDouble(f -> eaten[f])
                                            .sum()
                            + 1e-6);
        }
        assertThat(all).isPositive();
        assertThat(isOverCalving).isTrue();
    }
}
