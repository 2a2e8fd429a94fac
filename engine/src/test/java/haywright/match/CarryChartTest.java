package haywright.match;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.match.CarryChart.Stage;
import haywright.outlook.Yard;
import haywright.season.play.Invented;
import org.junit.jupiter.api.Test;

/** A hundred cows and thirty calves beside two stacks of hay. */
class CarryChartTest {
    private static final CarryChart CHART = CarryChart.of(new Yard(Invented.ranch(100, 0), Invented.DAY));

    @Test
    void everyLotStandsBesideEveryGroupAtEveryStageAheadOfIt() {
        // two lots beside cows now, a month before calving and a month after, and beside calves now
        assertThat(CHART.cells()).hasSize(2 * 4);
        assertThat(CHART.cells()).extracting(CarryChart.Cell::stage).doesNotContain((Stage) null);
    }

    @Test
    void aCellSaysOneThing() {
        assertThat(CHART.cells()).allSatisfy(cell -> {
            int said = (cell.carries() ? 1 : 0)
                    + (cell.shortOf().isPresent() ? 1 : 0)
                    + (cell.danger().isPresent() ? 1 : 0);
            assertThat(said).isEqualTo(1);
            assertThat(cell.surePercent()).isBetween(0.0, cell.carries() ? 100.0 : 0.0);
        });
    }

    @Test
    void twiceTheTonsCarryThemTwiceAsLong() {
        var twice = CarryChart.of(new Yard(Invented.ranch(200, 0), Invented.DAY));
        for (int i = 0; i < CHART.cells().size(); i++) {
            var one = CHART.cells().get(i);
            if (one.lot().equals("Meadow hay") && one.carries()) {
                double days = twice.cells().get(i).days().orElseThrow();
                assertThat(days / one.days().orElseThrow()).isBetween(1.999, 2.001);
            }
        }
        assertThat(CHART.cells()).anyMatch(cell -> cell.lot().equals("Alfalfa") && cell.carries());
    }

    @Test
    void aFixIsOneOtherFeedAndNothingIsAddedWhereALotIsEnough() {
        var yard = new Yard(Invented.ranch(100, 0), Invented.DAY);
        int fixed = 0;
        for (var cell : CHART.cells()) {
            var group = yard.ranch().groups().values().stream()
                    .filter(one -> one.name().equals(cell.group()))
                    .findFirst()
                    .orElseThrow();
            var lot = yard.ranch().lots().values().stream()
                    .filter(one -> one.name().equals(cell.lot()))
                    .findFirst()
                    .orElseThrow();
            var fix = SmallestFix.of(yard, group, cell.stage(), lot.id().toString());
            if (cell.carries()) {
                assertThat(fix.map(one -> one.added().kg()).orElse(0.0)).isLessThan(1e-6);
            } else if (fix.isPresent()) {
                fixed++;
                assertThat(fix.get().added().feed().feed().name()).isNotEqualTo(cell.lot());
                assertThat(fix.get().added().cost()).isPositive();
                assertThat(fix.get().surePercent()).isPositive();
            }
        }
        assertThat(fixed).isPositive();
    }
}
