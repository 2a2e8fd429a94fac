package haywright.app.web.ranch;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.document.TinLantern;
import haywright.app.report.FeedLetter;
import haywright.app.web.trail.Step;
import haywright.app.web.trail.ToDo;
import haywright.ranch.FedNow;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What a ranch's first screen says. */
class HomeTest {
    private static final Ranch DEMO = TinLantern.ranch();
    private static final LocalDate DAY = DEMO.settings().today(LocalDate.EPOCH);

    @Test
    void whatToFeedIsThatOfTheKeptLetterAndNothingWhereItIsOutOfDate() {
        assertThat(RanchPages.Fed.of(DEMO, group -> Optional.empty())).isEmpty();
        // without a letter the bench's line, once some page has it
        assertThat(RanchPages.Fed.of(DEMO, group -> Optional.of("$1: 9 lb of " + group.name())))
                .allSatisfy(fed -> assertThat(fed.says())
                        .containsExactly("$1: 9 lb of " + fed.group().name()))
                .hasSameSizeAs(DEMO.groups().values());
        var cows = DEMO.groups().values().iterator().next();
        var letter = FeedLetter.of(DEMO, cows, DAY).letter();
        var kept = DEMO.with(letter);
        assertThat(RanchPages.Fed.of(kept, group -> Optional.empty())).first().satisfies(fed -> {
            assertThat(fed.group()).isEqualTo(cows);
            assertThat(fed.says()).hasSameSizeAs(letter.table()).isNotEmpty();
            assertThat(fed.says().get(0))
                    .contains(
                            letter.table().get(0).aHead(), letter.table().get(0).feed());
        });
        var stale = kept.with(new FedNow(cows.id(), Map.of()));
        assertThat(RanchPages.Fed.of(stale, group -> Optional.empty())).first().satisfies(fed -> {
            assertThat(fed.says()).isEmpty();
            assertThat(fed.path()).isEqualTo("letter/" + cows.id());
        });
        assertThat(RanchPages.Fed.of(kept, group -> Optional.empty()))
                .filteredOn(fed -> !fed.group().equals(cows))
                .isNotEmpty()
                .allSatisfy(fed ->
                        assertThat(fed.path()).isEqualTo("bench/" + fed.group().id()));
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
