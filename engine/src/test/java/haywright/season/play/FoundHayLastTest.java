package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.AnimalClass;
import haywright.cattle.herd.Group;
import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * A hundred cows, thirty bred heifers and thirty calves at 30 lb are 2.4 tons a day and 163 tons in 68 days: of 110 tons of hay and
 * less, with 20 tons of alfalfa, some has to be found. None of it is for cattle that grow while grown cows eat what is there.
 */
class FoundHayLastTest {
    private static final UUID HEIFERS = new UUID(1, 3);

    private static Ranch ranch(double tons) {
        return Invented.ranch(tons, 0)
                .with(new Group(
                        HEIFERS,
                        "Bred heifers",
                        AnimalClass.BRED_HEIFER,
                        30,
                        Quantity.of(950, Unit.POUND),
                        false,
                        Invented.DAY,
                        Quantity.of(1300, Unit.POUND),
                        5,
                        "Angus",
                        List.of(new Group.CalvingWeek(LocalDate.of(2027, 3, 15), 30)),
                        null,
                        null,
                        null,
                        Quantity.of(0.8, Unit.POUND_A_DAY),
                        null,
                        null,
                        null,
                        null,
                        List.of()));
    }

    @Test
    void whatIsOnHandGoesToTheYoungBeforeTheCowsHaveTheLastOfIt() {
        for (double tons : new double[] {40, 80, 110}) {
            var yard = new Yard(ranch(tons), Invented.DAY);
            var season = Season.of(yard);
            var plan = WinterPlan.of(yard).orElseThrow().plan();
            int hay = IntStream.range(0, season.feeds().size())
                    .filter(f -> season.feeds().get(f).id().equals(Invented.HAY.toString()))
                    .findFirst()
                    .orElseThrow();
            assertThat(plan.emergencyKg()).as("%s tons", tons).isPositive();
            for (var stretch : plan.stretches()) {
                for (int e = 0; e < season.eaters().size(); e++) {
                    boolean isYoung = !season.eaters().get(e).group().animals().isGrown();
                    if (isYoung && stretch.decision().eaten()[e][season.emergency()] > 1) {
                        assertThat(ofCows(season, stretch.decision(), hay))
                                .as("%s tons, hay on hand for cows from %s", tons, stretch.from())
                                .isLessThan(1);
                    }
                }
            }
        }
    }

    private static double ofCows(Season season, Decision decision, int feed) {
        return IntStream.range(0, season.eaters().size())
                .filter(e -> season.eaters().get(e).group().id().equals(Invented.COWS))
                .mapToDouble(e -> decision.eaten()[e][feed])
                .sum();
    }
}
