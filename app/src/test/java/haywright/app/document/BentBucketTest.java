package haywright.app.document;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.cattle.herd.Group;
import haywright.cattle.herd.HerdCheck;
import haywright.feeding.Rations;
import haywright.feeding.hay.HayStep;
import haywright.feeding.hay.ShortOfHay;
import haywright.workings.Note;
import java.time.LocalDate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The drought ranch: invented, short of hay, and with every step of the ladder to take. */
class BentBucketTest {
    private static final Rations RATIONS =
            new Rations(BentBucket.ranch(), BentBucket.ranch().settings().today(LocalDate.MAX));

    @Test
    void saysThatItIsInventedAndIsNotTheOtherOne() {
        var ranch = RATIONS.ranch();
        assertThat(ranch.settings().invented()).isTrue();
        assertThat(ranch.name()).contains("invented");
        assertThat(ranch.lots().values())
                .allSatisfy(lot -> assertThat(lot.notes()).contains("invented"));
        assertThat(ranch.id()).isNotEqualTo(TinLantern.ranch().id());
        assertThat(ranch.groups().keySet())
                .doesNotContainAnyElementsOf(TinLantern.ranch().groups().keySet());
    }

    @Test
    void itsHerdIsOneThatCanBe() {
        for (var group : RATIONS.ranch().groups().values()) {
            assertThat(HerdCheck.of(group, RATIONS.day())).noneMatch(note -> note.level() == Note.Level.REFUSE);
            int due = group.calving().stream().mapToInt(Group.CalvingWeek::head).sum();
            assertThat(due).isLessThanOrEqualTo(group.head());
        }
    }

    /** 12 of 180 cows are not due and 8 are late; each step but feeding elsewhere, which nobody said, saves hay. */
    @Test
    void everyStepOfTheLadderMattersHere() {
        var hay = ShortOfHay.of(RATIONS, ShortOfHay.Asked.NOTHING).orElseThrow();
        assertThat(hay.isShort()).isTrue();
        assertThat(hay.gone().orElseThrow()).isBefore(hay.grass());
        assertThat(hay.leftOut()).isEmpty();
        var saving = hay.steps().stream()
                .filter(step -> step.saves() > 0)
                .map(HayStep::what)
                .toList();
        assertThat(saving)
                .containsExactlyElementsOf(Arrays.stream(HayStep.What.values())
                        .filter(what -> what != HayStep.What.FEED_TO_NEED
                                && what != HayStep.What.ELSEWHERE
                                && what != HayStep.What.BUY_HAY
                                && what != HayStep.What.TEST)
                        .toList());
        assertThat(hay.steps())
                .filteredOn(step -> step.what() == HayStep.What.SELL_OPEN)
                .allMatch(step -> step.head() == 20);
        assertThat(hay.tonsShortAtLast()).isZero();
        assertThat(hay.leastHarm()).hasSameSizeAs(RATIONS.ranch().groups().values());
    }

    /** The plan keeps the failed barley for later; the margin of a ration takes some today, so it is not said to be kept. */
    @Test
    void onlyALotThatNoRationHasIsSaidToBeKept() {
        var hay = ShortOfHay.of(RATIONS, ShortOfHay.Asked.NOTHING).orElseThrow();
        var plan = RATIONS.plan().orElseThrow();
        assertThat(hay.lots())
                .filteredOn(lot -> plan.kept(lot.feed().id()).isPresent())
                .extracting(lot -> lot.feed().name())
                .containsExactly("Failed barley, baled");
        for (var lot : hay.lots()) {
            boolean isFed = RATIONS.ranch().groups().values().stream()
                    .flatMap(group -> RATIONS.toFeed(group).stream())
                    .anyMatch(p -> p.feed().feed().id().equals(lot.feed().id()));
            assertThat(hay.kept(lot).isPresent())
                    .isEqualTo(!isFed && plan.kept(lot.feed().id()).isPresent());
        }
    }
}
