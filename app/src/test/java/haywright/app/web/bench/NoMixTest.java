package haywright.app.web.bench;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.BentBucket;
import haywright.app.words.ration.LimitWords;
import haywright.cattle.AnimalClass;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ration.NoRation;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Calves that are to gain 2.5 lb a day on the drought ranch's hay alone, which is too poor for it. */
class NoMixTest {
    @Test
    void nobodyIsToldToHaveCattleHoldMore() {
        var ranch = BentBucket.ranch();
        for (var feed : List.copyOf(ranch.feedsForSale().keySet())) {
            ranch = ranch.withoutFeedForSale(feed);
        }
        var calves = ranch.groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.GROWING)
                .findFirst()
                .orElseThrow()
                .gaining(Quantity.of(2.5, Unit.POUND_A_DAY));
        ranch = ranch.with(calves);
        var rations = new Rations(ranch, ranch.settings().today(LocalDate.MAX));
        var no = (NoRation) rations.ration(calves);
        var fill = no.lifts().stream()
                .filter(lift -> lift.row().id().equals("fill"))
                .findFirst()
                .orElseThrow();
        assertThat(LimitWords.lifts(no, no.diet().need())).noneMatch(words -> words.contains("hold"));
        long beyond = Math.round(100 * (fill.to() / fill.row().limit() - 1));
        assertThat(beyond).isPositive();
        var view = BenchView.of(new Offers(rations, calves)).way();
        assertThat(view.reasons()).anyMatch(words -> words.contains(beyond + " %"));
        assertThat(view.buy()).isNotEmpty();
    }
}
