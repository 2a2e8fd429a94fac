package haywright.app.web.bench;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter;
import haywright.cattle.AnimalClass;
import haywright.diet.DietRow;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Wishes;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Oat-pea silage of 1,150 ppm is over 678, the line of pregnant cattle (Manitoba Agriculture, Utilizing High Nitrate Feeds
 * Safely): it goes to heifers only mixed.
 */
class OnlyMixedTest {
    /** Bench and letter say it as the rows of a short winter do; a group that gets none of it is told nothing. */
    @Test
    void benchAndLetterSayIt() {
        var ranch = TinLantern.ranch();
        var silage = ranch.lots().values().stream()
                .filter(lot -> lot.name().equals("Oat-pea silage"))
                .findFirst()
                .orElseThrow();
        var heifers = ranch.groups().values().stream()
                .filter(group -> group.animals() == AnimalClass.FIRST_CALF_HEIFER)
                .findFirst()
                .orElseThrow();
        for (boolean asked : new boolean[] {true, false}) {
            var some = new Wishes.Wish(
                    silage.id(),
                    asked ? DietRow.Sense.AT_LEAST : DietRow.Sense.AT_MOST,
                    Quantity.of(asked ? 8 : 0, Unit.POUND_A_DAY));
            var with = ranch.with(new Wishes(heifers.id(), List.of(some), List.of(), null, null));
            var offers = new Offers(new Rations(with, ranch.settings().today(LocalDate.MAX)), heifers);
            assertThat(offers.sure().orElseThrow().mix().portions().stream()
                            .anyMatch(
                                    p -> p.feed().feed().id().equals(silage.id().toString())))
                    .isEqualTo(asked);
            var letter = FeedLetter.of(offers);
            var said = Stream.of(FeedLetter.Part.values()).flatMap(part -> letter.lines(part).stream());
            assertThat(said.anyMatch(OnlyMixedTest::isMixed)).isEqualTo(asked);
            assertThat(BenchView.of(offers).cautions().stream().anyMatch(OnlyMixedTest::isMixed))
                    .isEqualTo(asked);
        }
    }

    private static boolean isMixed(String line) {
        return line.contains("Mix ") && line.contains("Oat-pea silage");
    }
}
