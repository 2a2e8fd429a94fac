package haywright.season.play;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.outlook.Yard;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.season.WinterPlan;
import haywright.season.given.Season;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/**
 * A stack of poor hay that is far more than a hundred cows and thirty calves eat: 130 head at 40 lb are 2.6 tons a day, 68 days
 * of it 177 tons, and 400 are there.
 */
class PoorHayTest {
    private static Ranch poor() {
        var ranch = Invented.ranch(400, 0);
        var hay = ranch.lots().get(Invented.HAY);
        var prairie = new Lot(
                hay.id(),
                hay.name(),
                hay.feedClass(),
                "C162",
                "",
                "",
                null,
                hay.storage(),
                hay.stock(),
                hay.replacementPrice(),
                false,
                "",
                null,
                null,
                List.of());
        var calves = ranch.groups().get(new UUID(1, 2));
        return ranch.withoutLot(new UUID(0, 2))
                .withoutFeedForSale(new UUID(2, 1))
                .withoutFeedForSale(new UUID(2, 2))
                .with(prairie)
                .with(calves.gaining(Quantity.of(2, Unit.POUND_A_DAY)));
    }

    @Test
    void energyThatNoHayHereBringsIsMissedAndNoHayIsFoundForIt() {
        var plan = WinterPlan.of(new Yard(poor(), Invented.DAY)).orElseThrow().plan();
        assertThat(plan.emergencyKg()).isZero();
        assertThat(plan.lasts()).isTrue();
        assertThat(plan.unmet())
                .filteredOn(miss -> miss.row().equals("growth"))
                .isNotEmpty()
                .allMatch(miss -> miss.group().equals("group 2"));
    }

    /** Richer hay than the usual is none that could be found in a week. */
    @Test
    void hayThatIsFoundIsNoBetterThanTheHayThatIsThere() {
        for (var ranch : List.of(poor(), Invented.ranch(400, 0))) {
            var yard = new Yard(ranch, Invented.DAY);
            var season = Season.of(yard);
            var found = season.feeds().get(season.emergency()).priced().feed().composition();
            var own = yard.feeds().stream()
                    .filter(feed -> feed.feed().id().equals(Invented.HAY.toString()))
                    .findFirst()
                    .orElseThrow()
                    .feed()
                    .composition();
            for (var rich :
                    List.of(haywright.forage.Analyte.NEM, haywright.forage.Analyte.NEG, haywright.forage.Analyte.CP)) {
                assertThat(found.value(rich).orElseThrow())
                        .as(rich.name())
                        .isLessThanOrEqualTo(own.value(rich).orElseThrow() + 1e-9);
            }
        }
    }
}
