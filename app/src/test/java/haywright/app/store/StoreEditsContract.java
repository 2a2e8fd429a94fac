package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.Patch;
import haywright.forage.lab.LabReport;
import haywright.ranch.Lot;
import haywright.workings.Refused;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;

/** What is saved by one or by several at once, its history, and taking it back. */
abstract class StoreEditsContract extends StoreContract {
    @Test
    void aLateSaveOfAnotherLotIsAppliedAgain() {
        var opened = ranches.create(demo()).ranch();
        ranches.save(opened.id(), 1, "Ann", "oats", repriced(opened, "Oat hay", 111));
        var answer = ranches.save(opened.id(), 1, "Ben", "straw", repriced(opened, "Barley straw", 88));
        var both = repriced(repriced(opened, "Oat hay", 111), "Barley straw", 88);
        assertThat(answer).isEqualTo(new SaveAnswer.Saved(both, 3));
        assertThat(ranches.open(opened.id()).ranch()).isEqualTo(both);
    }

    @Test
    void aLateSaveOfTheSameLotIsAnsweredWithBothAndChangesNothing() {
        var opened = ranches.create(demo()).ranch();
        var theirs = repriced(opened, "Oat hay", 111);
        var mine = repriced(repriced(opened, "Oat hay", 222), "Barley straw", 88);
        ranches.save(opened.id(), 1, "Ann", "oats", theirs);
        var answer = ranches.save(opened.id(), 1, "Ben", "oats too", mine);
        assertThat(answer)
                .isEqualTo(new SaveAnswer.Conflict(
                        mine,
                        theirs,
                        2,
                        List.of("lots/" + lot(opened, "Oat hay").id())));
        assertThat(ranches.open(opened.id())).isEqualTo(new Ranches.Opened(theirs, 2));
        assertThat(ranches.history(opened.id())).hasSize(1);
        // having seen both, Ben saves on what stands
        assertThat(ranches.save(opened.id(), 2, "Ben", "oats, agreed", mine)).isEqualTo(new SaveAnswer.Saved(mine, 3));
    }

    @Test
    void theSameChangeTwiceIsOneEdit() {
        var opened = ranches.create(demo()).ranch();
        var changed = repriced(opened, "Oat hay", 111);
        ranches.save(opened.id(), 1, "Ann", "oats", changed);
        assertThat(ranches.save(opened.id(), 1, "Ben", "oats", changed)).isEqualTo(new SaveAnswer.Saved(changed, 2));
        assertThat(ranches.save(opened.id(), 2, "Ben", "nothing", changed)).isEqualTo(new SaveAnswer.Saved(changed, 2));
        assertThat(ranches.history(opened.id())).hasSize(1);
    }

    @Test
    void twoSoundChangesThatContradictEachOtherAreAConflict() {
        var opened = ranches.create(demo()).ranch();
        var oats = lot(opened, "Oat hay");
        ranches.save(opened.id(), 1, "Ann", "oats sold", opened.withoutLot(oats.id()));
        var report = report(oats);
        var answer = ranches.save(opened.id(), 1, "Ben", "oats tested", opened.with(report));
        assertThat(answer).isInstanceOf(SaveAnswer.Conflict.class);
        assertThat(((SaveAnswer.Conflict) answer).paths()).containsExactly("reports/" + report.id());
        assertThat(ranches.open(opened.id()).ranch().reports()).doesNotContainKey(report.id());
    }

    @Test
    void aPatchIsSavedLikeARanch() {
        var opened = ranches.create(demo()).ranch();
        var patch = Patch.between(opened, repriced(opened, "Oat hay", 5));
        ranches.save(opened.id(), 1, "Ann", "straw", repriced(opened, "Barley straw", 6));
        ranches.save(opened.id(), 1, "Ben", "oats", patch);
        assertThat(ranches.open(opened.id()).ranch())
                .isEqualTo(repriced(repriced(opened, "Oat hay", 5), "Barley straw", 6));
    }

    @Test
    void aRevisionThatNeverWasIsRefused() {
        var opened = ranches.create(demo()).ranch();
        for (long rev : new long[] {0, 2}) {
            assertThatThrownBy(() -> ranches.save(opened.id(), rev, "Ann", "x", opened.withName("x")))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("this ranch is at revision 1");
        }
    }

    @Test
    void manyWhoSaveAtOnceLoseNothing() throws Exception {
        var opened = ranches.create(demo()).ranch();
        var names = List.of("Oat hay", "Barley straw", "Meadow hay", "Corn silage");
        var pool = Executors.newFixedThreadPool(names.size());
        try {
            var jobs = new ArrayList<Callable<Void>>();
            for (var name : names) {
                jobs.add(() -> {
                    for (int dollars = 1; dollars <= 10; dollars++) {
                        var now = ranches.open(opened.id());
                        var answer =
                                ranches.save(opened.id(), now.rev(), name, name, repriced(now.ranch(), name, dollars));
                        assertThat(answer).isInstanceOf(SaveAnswer.Saved.class);
                    }
                    return null;
                });
            }
            for (var job : pool.invokeAll(jobs)) {
                job.get();
            }
        } finally {
            pool.shutdown();
        }
        var end = ranches.open(opened.id());
        assertThat(end.rev()).isEqualTo(41);
        for (var name : names) {
            assertThat(lot(end.ranch(), name).replacementPrice().value()).isEqualTo(10);
        }
    }

    @Test
    void anEditIsTakenBackAsANewOneThatCanBeTakenBackToo() {
        var opened = ranches.create(demo()).ranch();
        var changed = repriced(opened, "Oat hay", 111);
        ranches.save(opened.id(), 1, "Ann", "oats", changed);
        ranches.save(opened.id(), 2, "Ann", "straw", repriced(changed, "Barley straw", 8));
        var undone = ranches.undo(opened.id(), 2, "Ben");
        assertThat(undone).isEqualTo(new SaveAnswer.Saved(repriced(opened, "Barley straw", 8), 4));
        assertThat(ranches.history(opened.id()).get(0).words()).isEqualTo("Took back: oats");
        assertThat(ranches.undo(opened.id(), 4, "Ben").ranch()).isEqualTo(repriced(changed, "Barley straw", 8));
    }

    @Test
    void takingBackIsRefusedInWordsWhenTheSameHasChangedSince() {
        var opened = ranches.create(demo()).ranch();
        var changed = repriced(opened, "Oat hay", 111);
        ranches.save(opened.id(), 1, "Ann", "Oat hay: price 111", changed);
        ranches.save(opened.id(), 2, "Ben", "Oat hay: price 112", repriced(changed, "Oat hay", 112));
        assertThatThrownBy(() -> ranches.undo(opened.id(), 2, "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("“Oat hay: price 111”: this cannot be taken back, because “Oat hay” has been"
                        + " changed since: Oat hay: price 112 (Ben). Take that back first");
        ranches.undo(opened.id(), 3, "Ann");
        assertThat(ranches.undo(opened.id(), 2, "Ann").ranch()).isEqualTo(opened);
    }

    @Test
    void aLotTakenAwayComesBackWithItsReports() {
        var opened = ranches.create(demo()).ranch();
        var corn = lot(opened, "Corn silage");
        ranches.save(opened.id(), 1, "Ann", "corn is fed up", opened.withoutLot(corn.id()));
        var back = ranches.undo(opened.id(), 2, "Ann").ranch();
        assertThat(back).isEqualTo(opened);
        assertThat(back.reportsOn(corn.id())).hasSize(1);
    }

    @Test
    void theHistoryIsByRevisionWhateverTheClockSaid() {
        var opened = ranches.create(demo()).ranch();
        ranches.save(opened.id(), 1, "Ann", "oats", repriced(opened, "Oat hay", 1));
        try (var earlier = openAt(Clock.offset(MORNING, Duration.ofDays(-400)))) {
            earlier.ranches().save(opened.id(), 2, "Ann", "oats again", repriced(opened, "Oat hay", 2));
        }
        assertThat(ranches.history(opened.id())).extracting(Edit::rev).containsExactly(3L, 2L);
        assertThat(ranches.undo(opened.id(), 3, "Ann").ranch()).isEqualTo(repriced(opened, "Oat hay", 1));
    }

    static LabReport report(Lot lot) {
        return new LabReport(
                UUID.randomUUID(), lot.id(), "", "", null, null, LabReport.HowSampled.GRAB, List.of(), List.of());
    }
}
