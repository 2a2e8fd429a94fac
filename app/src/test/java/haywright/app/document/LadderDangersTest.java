package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.words.ShortWords;
import haywright.feeding.Rations;
import haywright.feeding.hay.HayStep;
import haywright.feeding.hay.ShortOfHay;
import haywright.feeding.hay.ShortOfHay.Fed;
import haywright.forage.Analyte;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The invented ranch mixes oat-pea silage with nitrate in it: each line of the ladder is safe for those that carry a calf. */
class LadderDangersTest {
    /** Manitoba Agriculture, Utilizing High Nitrate Feeds Safely: the safe class as NO3-N, ppm of dry matter. */
    private static final double SAFE = 678;

    @Test
    void everyLineIsSafeInItsNitrate() {
        var ranch = TinLantern.ranch();
        var hay = ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
        var lines = hay.leastHarm().stream()
                .flatMap(least -> Stream.of(least.dry(), least.milking()))
                .flatMap(fed -> fed.stream())
                .toList();
        assertThat(lines).isNotEmpty();
        assertThat(lines).anyMatch(fed -> nitrate(fed) > 0);
        assertThat(lines).allMatch(fed -> nitrate(fed) <= SAFE);
    }

    /** Two lots of 460 tons wait for a test: nothing that hurts is said before it. */
    @Test
    void theTestThatMayCloseTheGapComesFirst() {
        var ranch = TinLantern.ranch();
        var hay = ShortOfHay.of(new Rations(ranch, ranch.settings().today(LocalDate.MAX)), ShortOfHay.Asked.NOTHING)
                .orElseThrow();
        assertThat(hay.steps().get(0).what()).isEqualTo(HayStep.What.TEST);
        assertThat(hay.untested()).hasSize(2);
        var text = ShortWords.figures(hay.steps().get(0), hay);
        assertThat(text).contains("460 tons", "$40");
        assertThat(hay.steps())
                .filteredOn(step -> step.what() == HayStep.What.SELL_BRED)
                .allSatisfy(step -> assertThat(step.before()).isLessThan(hay.tonsUntested()));
    }

    private static double nitrate(Fed fed) {
        double all = 0;
        double nitrate = 0;
        for (var each : fed.feeds().entrySet()) {
            double eaten = each.getKey().eaten(each.getValue());
            all += eaten;
            nitrate += eaten
                    * each.getKey().feed().composition().value(Analyte.NO3N).orElse(0);
        }
        return nitrate / all;
    }
}
