package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.BookDocument;
import haywright.app.document.RanchDocument;
import haywright.ranch.Ranch;
import haywright.season.kept.KeptBook;
import haywright.season.kept.KeptPlan;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** What another program or a failing disk leaves in single rows: it stays there, and is said. */
abstract class StoreDamageContract extends StoreFilesContract {
    private Ranch saved(int... dollars) {
        var ranch = ranches.create(demo()).ranch();
        for (int i = 0; i < dollars.length; i++) {
            ranches.save(ranch.id(), i + 1, "Ann", "oats", repriced(ranch, "Oat hay", dollars[i]));
        }
        return ranch;
    }

    @Test
    void aRowWhoseIdIsNoneIsARanchThatCannotBeRead() {
        ranches.create(demo());
        ranches.create(Ranch.empty(new UUID(7, 7), "Other"));
        for (var id : List.of("no id", "", "1-2-3-4-5", "7E000000-0000-4000-8000-00000000000A")) {
            var doc = store.recovery().raw(new UUID(7, 7)).doc();
            store.jdbi()
                    .useHandle(h ->
                            h.execute("INSERT INTO ranch VALUES (?, ?, 1, 1, ?, NULL)", id, "Odd “" + id + "”", doc));
        }
        assertThat(ranches.list()).hasSize(6);
        var backup = folder.resolve("b.db");
        store.files().backup(backup);
        try (var other = Store.at("jdbc:sqlite:" + folder.resolve("other.db"), Clock.systemUTC())) {
            other.files().restore(backup, "Ann");
            odd(store);
            odd(other);
            assertThat(other.ranches().open(demo().id()).ranch()).isEqualTo(demo());
            // a second time nothing is taken twice, and no other ranch is touched by what it holds
            other.ranches().save(new UUID(7, 7), 1, "Ann", "name", Ranch.empty(new UUID(7, 7), "Renamed"));
            other.files().restore(backup, "Ann");
            odd(other);
        }
    }

    private static void odd(Store there) {
        var odd = there.ranches().list().stream()
                .filter(listed -> listed.name().startsWith("Odd"))
                .toList();
        assertThat(odd).hasSize(4).extracting(Ranches.Listed::id).doesNotHaveDuplicates();
        for (var listed : odd) {
            assertThat(there.recovery().wrong(listed.id())).isPresent();
            assertThat(there.ranches().isHere(listed.id())).isTrue();
            assertThatThrownBy(() -> there.ranches().open(listed.id()))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("no id of a ranch");
            assertThat(there.files().export(listed.id())).contains("\"Other\"");
            assertThat(there.recovery().lastRevision(listed.id())).isEmpty();
            there.ranches().delete(listed.id());
            assertThat(there.ranches().isHere(listed.id())).isFalse();
            there.ranches().restore(listed.id());
        }
    }

    @Test
    void aDraftThatCannotBeReadIsKeptAndSaid() {
        store.drafts().put(new UUID(7, 7), "lots/new", Map.of("name", List.of("a")));
        for (var fields :
                List.of("{{", "[]", "null", "{\"name\":{}}", "\"x\"", "{\"name\":[null]}", "{\"name\":null}")) {
            store.jdbi().useHandle(h -> h.execute("UPDATE draft SET fields = ?", fields));
            assertThat(store.drafts().get(new UUID(7, 7), "lots/new")).isEmpty();
            assertThat(store.drafts().isUnreadable(new UUID(7, 7), "lots/new")).isTrue();
            assertThat(store.drafts().waiting(new UUID(7, 7))).containsExactly("lots/new");
        }
        assertThat(store.drafts().isUnreadable(new UUID(7, 7), "lots/x")).isFalse();
    }

    @Test
    void whatCannotBeReadIsNeverOverwrittenByADraft() {
        store.drafts().put(new UUID(7, 7), "lots/new", Map.of("name", List.of("a")));
        store.jdbi().useHandle(h -> h.execute("UPDATE draft SET fields = '{{'"));
        store.drafts().put(new UUID(7, 7), "lots/new", Map.of("name", List.of("b")));
        assertThat(store.drafts().get(new UUID(7, 7), "lots/new")).containsEntry("name", List.of("b"));
        List<String> all = store.jdbi()
                .withHandle(h -> h.createQuery("SELECT fields FROM draft")
                        .mapTo(String.class)
                        .list());
        assertThat(all).hasSize(2).contains("{{");
    }

    @Test
    void aDraftSetAsideUnderANameThatIsNoneIsFoundAndThrownAwayAlone() {
        var ranch = new UUID(7, 7);
        var names = List.of("set-aside/zzz", "set-aside/" + ranch, "set-aside/", "set-aside/a/b/c");
        for (var name : names) {
            store.jdbi().useHandle(h -> h.execute("INSERT INTO draft VALUES (?, ?, '{')", ranch.toString(), name));
        }
        store.drafts().put(ranch, "lots/new", Map.of("name", List.of("a")));
        store.jdbi().useHandle(h -> h.execute("UPDATE draft SET fields = '{{' WHERE form = 'lots/new'"));
        store.drafts().clear(ranch, "lots/new");
        var aside = store.drafts().aside(ranch);
        assertThat(aside).hasSize(5).extracting(Drafts.Aside::id).doesNotHaveDuplicates();
        assertThat(aside).extracting(Drafts.Aside::fields).containsOnly("{", "{{");
        assertThat(aside).extracting(Drafts.Aside::form).contains("lots/new");
        assertThat(store.drafts().waiting(ranch)).isEmpty();
        for (int left = aside.size() - 1; left >= 0; left--) {
            store.drafts().throwAway(ranch, aside.get(left));
            assertThat(store.drafts().aside(ranch)).hasSize(left);
        }
    }

    private static String book(String hash) {
        var day = LocalDate.of(2026, 12, 1);
        return BookDocument.write(new KeptBook(
                hash,
                day,
                day.plusDays(150),
                new KeptPlan(
                        true, List.of(), List.of(), List.of(), 0, List.of(), List.of(), List.of(), List.of(), List.of(),
                        null, null),
                null,
                null,
                null,
                0,
                0,
                0,
                false,
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of()));
    }

    @Test
    void whatCannotBeReadPushesNoWinterBookOut() {
        var id = ranches.create(demo()).ranch().id();
        var books = store.winterBooks();
        for (int rev = 1; rev <= 2; rev++) {
            books.keep(id, "good " + rev, rev, book("good " + rev));
        }
        for (var rev : List.of(3L, 1L << 53, Long.MAX_VALUE - 1, Long.MAX_VALUE, 0L, -1L, Long.MIN_VALUE)) {
            store.jdbi()
                    .useHandle(h -> h.execute(
                            "INSERT INTO winter_book VALUES (?, ?, ?, '2027', ?)",
                            id.toString(),
                            "odd " + rev,
                            rev,
                            rev < 1 || rev == 3 ? "broken" : book("odd " + rev)));
        }
        var before = books.state(id);
        books.keep(id, "good 3", 3, book("good 3"));
        assertThat(books.of(id))
                .extracting(WinterBooks.Kept::hash)
                .contains("good 1", "good 2", "good 3")
                .hasSize(2 * WinterBooks.KEPT);
        assertThat(books.state(id)).isNotEqualTo(before);
        // readable, and said to be of a revision that never was: the newest is kept all the same
        store.jdbi().useHandle(h -> h.execute("UPDATE winter_book SET rev = 9007199254740991"));
        books.keep(id, "good 4", 4, book("good 4"));
        assertThat(books.of(id)).extracting(WinterBooks.Kept::hash).contains("good 4");
        store.jdbi().useHandle(h -> h.execute("DELETE FROM winter_book WHERE hash = 'good 4'"));
        assertThat(books.state(id)).doesNotContain("good 4");
    }

    @Test
    void anEditWhosePatchCannotBeReadIsNotTakenBack() {
        var ranch = saved(1, 2);
        for (var patch : List.of("{{", "[]", "{\"format\":2}", "null")) {
            store.jdbi().useHandle(h -> h.execute("UPDATE edit SET inverse_patch = ? WHERE rev = 3", patch));
            assertThatThrownBy(() -> ranches.undo(ranch.id(), 3, "Ann")).isInstanceOf(Refused.class);
            assertThat(ranches.history(ranch.id())).hasSize(2);
            // what was opened before it cannot be put beside what stands now
            assertThatThrownBy(() -> ranches.save(ranch.id(), 2, "Ben", "straw", repriced(ranch, "Barley straw", 9)))
                    .isInstanceOf(Refused.class);
            assertThat(ranches.save(ranch.id(), 3, "Ben", "same", repriced(ranch, "Oat hay", 2)))
                    .isInstanceOf(SaveAnswer.Saved.class);
        }
    }

    @Test
    void aNameOrALineOfHistoryWithoutEndIsCutWhereItIsRead() {
        var ranch = saved(1, 2);
        store.jdbi().useHandle(h -> h.execute("UPDATE edit SET words = ? WHERE rev = 2", "w".repeat(60_000_000)));
        store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET name = ?", "n".repeat(60_000_000)));
        assertThat(ranches.list())
                .singleElement()
                .satisfies(one -> assertThat(one.name()).hasSize(OneRow.LINE));
        assertThat(ranches.history(ranch.id()))
                .hasSize(2)
                .allSatisfy(edit -> assertThat(edit.words()).hasSizeLessThanOrEqualTo(OneRow.LINE));
        assertThat(store.recovery().raw(ranch.id()).name()).hasSize(OneRow.LINE);
        assertThat(ranches.open(ranch.id()).ranch()).isEqualTo(repriced(ranch, "Oat hay", 2));
    }

    @Test
    void aRevisionSetBackIsCountedOnFromTheHistory() {
        var ranch = saved(1, 2);
        for (long rev : new long[] {1, Long.MAX_VALUE, Long.MAX_VALUE - 1}) {
            long before = ranches.open(ranch.id()).rev();
            goesOn(ranch, before, Long.toString(rev));
        }
    }

    /** @param rev what another program leaves there */
    final void goesOn(Ranch ranch, long before, String rev) {
        store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET rev = " + rev));
        assertThat(ranches.open(ranch.id()).rev()).as(rev).isEqualTo(before);
        int price = (int) before + 10;
        assertThat(ranches.save(ranch.id(), before, "Ann", "oats", repriced(ranch, "Oat hay", price)))
                .as(rev)
                .isInstanceOfSatisfying(
                        SaveAnswer.Saved.class, s -> assertThat(s.rev()).isEqualTo(before + 1));
        store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET rev = " + rev));
        var file = folder.resolve("in.json");
        try {
            Files.writeString(file, new RanchDocument().write(repriced(ranch, "Oat hay", price + 100)));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        assertThat(store.files().importFile(file, "Ann", true).became()).isEqualTo(RanchFiles.Became.CHANGED);
        damage(ranch.id(), "{{");
        store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET rev = " + rev));
        store.recovery().putInPlace(ranch, "Ann", "back");
        assertThat(ranches.open(ranch.id())).as(rev).isEqualTo(new Ranches.Opened(ranch, before + 3));
    }

    @Test
    void aTimeThatIsNoneLeavesTheHistoryToBeRead() {
        var ranch = saved(1, 2);
        store.jdbi().useHandle(h -> h.execute("UPDATE edit SET at = 'yesterday' WHERE rev = 2"));
        assertThat(ranches.history(ranch.id()))
                .extracting(edit -> edit.at() == null)
                .containsExactly(false, true);
    }

    @Test
    void aRevisionSetAsideOrSavedAlreadyIsNoObstacle() {
        var ranch = saved(1, 2);
        for (int i = 0; i < 3; i++) {
            damage(ranch.id(), "{" + i);
            store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET rev = 1"));
            store.recovery().putInPlace(repriced(ranch, "Oat hay", i + 3), "Ann", "back");
            assertThat(ranches.open(ranch.id()).ranch()).isEqualTo(repriced(ranch, "Oat hay", i + 3));
        }
        List<String> aside = store.jdbi()
                .withHandle(h -> h.createQuery("SELECT doc FROM set_aside ORDER BY doc")
                        .mapTo(String.class)
                        .list());
        assertThat(aside).containsExactly("{0", "{1", "{2");
        assertThat(ranches.history(ranch.id())).hasSize(5);
    }

    @Test
    void whatTakesThePlaceOfAnUnreadableRanchSaysThatItCannotBeTakenBack() throws IOException {
        var ranch = saved(1);
        var file = folder.resolve("ranch.json");
        Files.writeString(file, store.files().export(ranch.id()));
        damage(ranch.id(), "{{");
        var taken = store.files().importFile(file, "Ann", true);
        assertThat(taken.became()).isEqualTo(RanchFiles.Became.MENDED);
        long rev = ranches.open(ranch.id()).rev();
        assertThatThrownBy(() -> ranches.undo(ranch.id(), rev, "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("could not be read");
    }

    @Test
    void aRanchLargerThanMemoryClosesNothing() {
        ranches.create(demo());
        ranches.create(Ranch.empty(new UUID(7, 7), "Other"));
        // letters of two bytes, the first of them at an odd place: parts end in the middle of one
        var huge = "{\"xy\":\"" + "é".repeat(OneRow.MOST / 2) + "\"}";
        damage(demo().id(), huge);
        assertThat(ranches.list()).hasSize(2);
        assertThat(ranches.open(new UUID(7, 7)).rev()).isEqualTo(1);
        for (ThrowingCallable each : List.<ThrowingCallable>of(
                () -> ranches.open(demo().id()),
                () -> store.recovery().raw(demo().id()).doc(),
                () -> store.files().export(demo().id()))) {
            assertThatThrownBy(each).isInstanceOf(Refused.class).hasMessageContaining("16 MB");
        }
        assertThat(store.recovery().wrong(demo().id())).isPresent();
        assertThat(store.recovery().lastRevision(demo().id())).isEmpty();
        store.jdbi()
                .useHandle(h -> h.execute(
                        "INSERT INTO draft VALUES (?, 'lots/new', ?)",
                        demo().id().toString(),
                        huge));
        assertThat(store.drafts().isUnreadable(demo().id(), "lots/new")).isTrue();
        store.winterBooks().keep(demo().id(), "huge", 1, huge);
        assertThat(store.winterBooks().of(demo().id()))
                .extracting(WinterBooks.Kept::doc)
                .containsExactly("");
        var backup = folder.resolve("b.db");
        store.files().backup(backup);
        try (var other = Store.at("jdbc:sqlite:" + folder.resolve("other.db"), Clock.systemUTC())) {
            assertThat(other.files().restore(backup, "Ann"))
                    .extracting(RanchFiles.Imported::became)
                    .containsExactly(RanchFiles.Became.NEW, RanchFiles.Became.NEW);
            assertThat(other.recovery().wrong(demo().id())).isPresent();
            assertThat(other.files().exported(demo().id())).hasContent(huge);
            // a second time what is here stays as it is
            assertThat(other.files().restore(backup, "Ann"))
                    .extracting(RanchFiles.Imported::became)
                    .containsExactlyInAnyOrder(RanchFiles.Became.SAME, RanchFiles.Became.LEFT_UNREADABLE);
        }
        goesOutAndComesIn(backup, huge);
        store.recovery().putInPlace(demo(), "Ann", "back");
        assertThat(ranches.open(demo().id()).ranch()).isEqualTo(demo());
        int aside = store.jdbi()
                .withHandle(h -> h.createQuery("SELECT octet_length(doc) FROM set_aside")
                        .mapTo(Integer.class)
                        .one());
        assertThat(aside).isEqualTo(huge.getBytes(StandardCharsets.UTF_8).length);
        var key = store.recovery().setAside(demo().id()).get(0).key();
        assertThat(store.recovery().setAside(demo().id(), key).orElseThrow()).hasContent(huge);
        assertThatThrownBy(() -> ranches.create(Ranch.empty(new UUID(7, 8), huge)))
                .isInstanceOf(Refused.class);
    }

    /** Out of this database as a file, and out of a backup into this database. */
    private void goesOutAndComesIn(Path backup, String huge) {
        var file = folder.resolve("huge.json");
        store.files().exportTo(demo().id(), file);
        assertThat(file).hasContent(huge);
        for (var table : List.of("edit", "set_aside", "winter_book", "ranch")) {
            store.jdbi().useHandle(h -> h.execute("DELETE FROM " + table));
        }
        assertThat(store.files().restore(backup, "Ann"))
                .extracting(RanchFiles.Imported::became)
                .containsExactly(RanchFiles.Became.NEW, RanchFiles.Became.NEW);
        assertThat(store.files().exported(demo().id())).hasContent(huge);
    }

    /** The table forbids it, and another program may not have asked. */
    abstract void allowNull(String table, String column) throws Exception;

    @Test
    void whatIsMissingInARowClosesNothing() throws Exception {
        var ranch = saved(1, 2);
        ranches.create(Ranch.empty(new UUID(7, 7), "Other"));
        allowNull("ranch", "doc");
        store.jdbi()
                .useHandle(h -> h.execute(
                        "UPDATE ranch SET doc = NULL WHERE id = ?", ranch.id().toString()));
        assertThat(ranches.list())
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.version()).isNotNull());
        assertThat(ranches.open(new UUID(7, 7)).rev()).isEqualTo(1);
        assertThat(store.recovery().wrong(ranch.id())).isPresent();
        assertThatThrownBy(() -> ranches.open(ranch.id())).isInstanceOf(Refused.class);
        assertThat(store.files().exported(ranch.id())).isEmpty();
        assertThat(store.recovery().lastRevision(ranch.id())).isEmpty();
        assertThat(ranches.history(ranch.id())).hasSize(2);
        store.recovery().putInPlace(ranch, "Ann", "back");
        assertThat(ranches.open(ranch.id()).ranch()).isEqualTo(ranch);
    }

    @Test
    void whatWasTypedIsInNoMessageOfTheDatabase() {
        var typed = "north stack, behind the old barn";
        assertThatThrownBy(() ->
                        store.jdbi().useHandle(h -> h.execute("INSERT INTO draft VALUES (?, NULL, ?)", typed, typed)))
                .hasMessageNotContaining("arguments")
                .hasMessageNotContaining("INSERT");
    }

    /** SQLite keeps what PostgreSQL does not: such a row stays in the backup, and keeps nothing else out. */
    @Test
    void aDamagedRowOfABackupKeepsNoOtherOut() {
        var backup = folder.resolve("b.db");
        try (var other = Store.at("jdbc:sqlite:" + folder.resolve("other.db"), Clock.systemUTC())) {
            var there = other.ranches();
            there.create(demo());
            there.create(Ranch.empty(new UUID(7, 7), "Other"));
            for (int i = 1; i <= 3; i++) {
                there.save(demo().id(), i, "Ann", "oats", repriced(demo(), "Oat hay", i));
            }
            other.drafts().put(demo().id(), "lots/new", Map.of("name", List.of("a")));
            other.drafts().put(demo().id(), "a\0b", Map.of("name", List.of("a")));
            other.overwrite("UPDATE edit SET rev = 'abc' WHERE rev = 2");
            other.files().backup(backup);
        }
        assertThat(store.files().restore(backup, "Ann"))
                .hasSize(2)
                .extracting(RanchFiles.Imported::became)
                .containsOnly(RanchFiles.Became.NEW);
        assertThat(ranches.open(demo().id()).rev()).isEqualTo(4);
        assertThat(ranches.history(demo().id())).extracting(Edit::rev).contains(4L, 3L);
        assertThat(store.drafts().get(demo().id(), "lots/new")).isNotEmpty();
    }

    @Test
    void anExportIsNoBackup() throws IOException {
        var ranch = saved();
        var file = folder.resolve("ranch.json");
        Files.writeString(file, "\ufeff \n" + store.files().export(ranch.id()));
        assertThatThrownBy(() -> store.files().restore(file, "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("ranch import");
    }
}
