package haywright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class MatchNitrateTest {
    /** 1,150 ppm NO3-N is over the safe line of cattle that are not pregnant, 1,000; thirteen pounds of mineral is no meal. */
    @Test
    void noMineralThinsTheNitrateOfALotFedAlone() {
        var cells = CarryChart.of(new Yard(TinLantern.ranch(), LocalDate.of(2026, 12, 1)))
                .cells();
        assertThat(cells.stream().filter(cell -> cell.lot().equals("Oat-pea silage")))
                .isNotEmpty()
                .allSatisfy(cell -> assertThat(cell.danger()).as(cell.group()).isPresent());
    }
}
