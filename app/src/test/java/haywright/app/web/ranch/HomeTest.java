package haywright.app.web.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter;
import haywright.app.web.Step;
import haywright.app.web.ToDo;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What a ranch's first screen says. */
class HomeTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);

    @Test
    void whatToFeedIsThatOfTheKeptLetterAndNothingWhereItIsOutOfDate() {
        assertThat(RanchPages.Fed.of(DEMO)).isEmpty();
        var cows = DEMO.groups().values().iterator().next();
        var letter = FeedLetter.of(DEMO, cows, DAY).letter();
        var kept = DEMO.with(letter);
        assertThat(RanchPages.Fed.of(kept)).singleElement().satisfies(fed -> {
            assertThat(fed.group()).isEqualTo(cows);
            assertThat(fed.says()).hasSameSizeAs(letter.table()).isNotEmpty();
            assertThat(fed.says().get(0))
                    .contains(
                            letter.table().get(0).aHead(), letter.table().get(0).feed());
        });
        var stale = kept.with(new FedNow(cows.id(), Map.of()));
        assertThat(RanchPages.Fed.of(stale))
                .singleElement()
                .satisfies(fed -> assertThat(fed.says()).isEmpty());
    }

    /** Of the demo oat hay and the standing meadow have neither a report nor a sample; of an empty ranch hay comes first. */
    @Test
    void whatCouldBeBoughtIsAskedForWhereNothingIsListed() {
        assertThat(ToDo.of(DEMO, false)).extracting(ToDo::path).doesNotContain("feeds/new");
        var none = DEMO;
        for (var feed : DEMO.feedsForSale().keySet()) {
            none = none.withoutFeedForSale(feed);
        }
        assertThat(ToDo.of(none, false)).extracting(ToDo::path).contains("feeds/new");
    }

    @Test
    void whatIsToDoIsSaidAsAnOrder() {
        var todo = ToDo.of(DEMO, false);
        assertThat(todo)
                .extracting(ToDo::step)
                .contains(Step.TAKE_IT, Step.WINTER_BOOK)
                .doesNotContain(Step.LOTS, Step.HERD);
        assertThat(ToDo.of(DEMO, true)).extracting(ToDo::step).doesNotContain(Step.WINTER_BOOK);
        assertThat(todo).allSatisfy(one -> {
            assertThat(one.says()).endsWith(".");
            assertThat(one.act()).isNotBlank().doesNotContain(Step.TAKE_IT.title());
        });
        assertThat(ToDo.of(Ranch.empty(new UUID(1, 1), "A ranch"), false))
                .first()
                .extracting(ToDo::step)
                .isEqualTo(Step.LOTS);
    }
}
