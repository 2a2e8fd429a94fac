package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import haywright.match.CarryChart;
import haywright.outlook.Yard;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Each lot of the invented ranches before each group. */
class LotsAloneTest {
    @Test
    void cattleThatGainNothingAreNotShortOfGain() {
        Stream.of(TinLantern.ranch(), BentBucket.ranch()).forEach(ranch -> {
            var yard = new Yard(ranch, ranch.settings().today(LocalDate.MAX));
            var gains = ranch.groups().values().stream()
                    .filter(group -> yard.need(group).neg() > 0)
                    .map(Group::name)
                    .toList();
            assertThat(CarryChart.of(yard).cells())
                    .filteredOn(cell -> !gains.contains(cell.group()))
                    .isNotEmpty()
                    .noneMatch(cell -> cell.shortOf().orElse("").contains("gain"));
        });
    }
}
