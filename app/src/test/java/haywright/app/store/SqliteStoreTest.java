package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The contract in a data folder, and what only a file promises: it outlives the process. */
class SqliteStoreTest extends StoreDamageContract {
    @Override
    Store openAt(Clock clock) {
        return Store.inFolder(folder.resolve("data"), clock);
    }

    @Override
    void allowNull(String table, String column) throws SQLException {
        store.close();
        var database = "jdbc:sqlite:" + folder.resolve("data/haywright.db");
        try (var connection = DriverManager.getConnection(database);
                var statement = connection.createStatement()) {
            statement.execute("PRAGMA writable_schema = 1");
            var nullable = "UPDATE sqlite_schema SET sql = replace(sql, 'TEXT NOT NULL', 'TEXT') WHERE name = '%s'";
            assertThat(statement.executeUpdate(nullable.formatted(table)))
                    .as(column)
                    .isEqualTo(1);
        }
        start();
    }

    /** SQLite keeps in a column whatever another program puts there. */
    @Test
    void aRevisionThatIsNoWholeNumberIsCountedOnFromTheHistory() {
        var ranch = demo();
        ranches.create(ranch);
        ranches.save(ranch.id(), 1, "Ann", "oats", repriced(ranch, "Oat hay", 1));
        for (var rev : List.of("1.5", "'x'", "1e300", "x'00'")) {
            goesOn(ranch, ranches.open(ranch.id()).rev(), rev);
        }
    }

    /** The table forbids it, and another program may not have asked. */
    @Test
    void aRevisionThatTheTableForbidsClosesNothing() throws SQLException {
        ranches.create(demo());
        ranches.create(Ranch.empty(new UUID(7, 7), "Other"));
        ranches.save(demo().id(), 1, "Ann", "oats", repriced(demo(), "Oat hay", 1));
        var data = folder.resolve("data");
        for (var rev : List.of("0", "-1", "-9223372036854775808")) {
            store.close();
            try (var connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("haywright.db"));
                    var statement = connection.createStatement()) {
                statement.execute("PRAGMA ignore_check_constraints = 1");
                statement.execute("UPDATE ranch SET rev = " + rev);
            }
            store = openAt(MORNING);
            ranches = store.ranches();
            assertThat(ranches.list()).hasSize(2);
            assertThat(ranches.open(new UUID(7, 7)).rev()).as(rev).isEqualTo(1);
            ranches.delete(demo().id());
            ranches.restore(demo().id());
            var backup = folder.resolve("b" + rev + ".db");
            store.files().backup(backup);
            assertThat(store.dailyCopy()).isPresent();
            try (var other = Store.inFolder(folder.resolve("o" + rev), MORNING)) {
                assertThat(other.files().restore(backup, "Ann")).hasSize(2);
                assertThat(other.ranches().list()).hasSize(2);
            }
            long before = ranches.open(demo().id()).rev();
            assertThat(ranches.save(demo().id(), before, "Ann", "oats", repriced(demo(), "Oat hay", (int) before + 1)))
                    .isInstanceOfSatisfying(
                            SaveAnswer.Saved.class, s -> assertThat(s.rev()).isEqualTo(before + 1));
        }
    }

    @Test
    void aRowWithoutAnyIdIsARanchThatCannotBeRead() {
        ranches.create(demo());
        var doc = store.recovery().raw(demo().id()).doc();
        for (int i = 0; i < 2; i++) {
            store.jdbi().useHandle(h -> h.execute("INSERT INTO ranch VALUES (NULL, 'Null id', 1, 1, ?, NULL)", doc));
        }
        var early = folder.resolve("early.db");
        store.files().backup(early);
        nameless(store);
        assertThat(store.dailyCopy()).isPresent();
        var late = folder.resolve("late.db");
        store.files().backup(late);
        for (var backup : List.of(early, late)) {
            try (var other = Store.at("jdbc:sqlite:" + folder.resolve("of-" + backup.getFileName()), MORNING)) {
                assertThat(other.files().restore(backup, "Ann")).hasSize(3);
                nameless(other);
                other.files().restore(backup, "Ann");
                nameless(other);
            }
        }
    }

    private static void nameless(Store there) {
        var listed = there.ranches().list();
        assertThat(listed).hasSize(3);
        assertThat(listed).extracting(Ranches.Listed::id).doesNotHaveDuplicates();
        for (var each : listed) {
            boolean isDemo = each.id().equals(demo().id());
            assertThat(there.recovery().wrong(each.id()).isEmpty()).isEqualTo(isDemo);
            assertThat(there.files().export(each.id())).contains("Tin Lantern");
        }
    }

    @Test
    void theFileIsKeptAsItWasPromised() throws SQLException {
        try (var store = Store.inFolder(folder.resolve("data"), MORNING)) {
            assertThat(store.pragma("journal_mode")).isEqualTo("wal");
            assertThat(store.pragma("synchronous")).as("FULL").isEqualTo("2");
            assertThat(store.pragma("foreign_keys")).isEqualTo("1");
        }
    }

    @Test
    void dataOfANewerHaywrightAreRefusedUntouched() throws SQLException {
        var data = folder.resolve("newer");
        Store.inFolder(data, MORNING).close();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("haywright.db"));
                var statement = connection.createStatement()) {
            statement.execute("INSERT INTO flyway_schema_history SELECT 99, '99', 'later', type, script, checksum,"
                    + " installed_by, installed_on, execution_time, success FROM flyway_schema_history"
                    + " WHERE version = '1'");
        }
        assertThatThrownBy(() -> Store.inFolder(data, MORNING))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("these data were written by a newer Haywright");
    }

    @Test
    void aFolderThatCannotBeMadeIsRefused() throws IOException {
        var file = Files.createFile(folder.resolve("taken"));
        assertThatThrownBy(() -> Store.inFolder(file.resolve("data"), MORNING))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("this folder cannot be made");
    }

    @Test
    void aFileThatIsNoDatabaseIsRefused() throws IOException {
        var data = Files.createDirectories(folder.resolve("odd"));
        Files.writeString(
                data.resolve("haywright.db"), "not a database, but long enough to be read as one. ".repeat(40));
        assertThatThrownBy(() -> Store.inFolder(data, MORNING))
                .isInstanceOf(BadDatabase.class)
                .hasMessageContaining("cannot be opened")
                .hasMessageContaining(data.resolve("haywright.db").toString());
    }

    @Test
    void aDailyCopyHasWhatWasSavedThatDayAndBringsTheRanchBack() throws IOException {
        var data = folder.resolve("work");
        var demo = demo();
        Path copy;
        try (var store = Store.inFolder(data, MORNING)) {
            copy = store.dailyCopy().orElseThrow();
            assertThat(copy.getFileName().toString()).isEqualTo("haywright-2026-12-01.db");
            store.ranches().create(demo);
            assertThat(store.dailyCopy()).contains(copy);
            var before = Files.getLastModifiedTime(copy);
            var bytes = Files.readAllBytes(copy);
            assertThat(store.dailyCopy()).contains(copy);
            assertThat(Files.getLastModifiedTime(copy)).as("nothing changed").isEqualTo(before);
            assertThat(Files.readAllBytes(copy)).isEqualTo(bytes);
            store.ranches().save(demo.id(), 1, "Ann", "oats", repriced(demo, "Oat hay", 5));
            store.files().restore(copy, "Ann");
            assertThat(store.ranches().open(demo.id()).ranch()).isEqualTo(demo);
        }
        var tomorrow = Clock.offset(MORNING, Duration.ofDays(1));
        try (var store = Store.inFolder(data, tomorrow)) {
            assertThat(store.dailyCopy()).isPresent().get().isNotEqualTo(copy);
        }
        try (var store = Store.at("jdbc:sqlite:" + copy, MORNING)) {
            assertThat(store.ranches().open(demo.id()).rev()).isEqualTo(1);
        }
    }

    @Test
    void aCopyWithoutRanchesIsNotOfferedBeforeOneThatHasSome() {
        var data = folder.resolve("emptied");
        try (var store = Store.inFolder(data, MORNING)) {
            store.ranches().create(demo());
            store.dailyCopy();
        }
        var tomorrow = Clock.offset(MORNING, Duration.ofDays(1));
        try (var store = Store.inFolder(data, tomorrow)) {
            store.overwrite("DELETE FROM edit");
            store.overwrite("DELETE FROM ranch");
            store.dailyCopy();
        }
        assertThat(new DataFolder(data, tomorrow).newestGood().orElseThrow().ranches())
                .isEqualTo(1);
    }

    @Test
    void twoWhoHaveItOpenShareOneFile() {
        var id = UUID.randomUUID();
        try (var one = open();
                var other = open()) {
            var ranch = one.ranches().create(Ranch.empty(id, "Shared")).ranch();
            other.ranches().save(id, 1, "Ben", "name", ranch.withName("Renamed"));
            assertThat(one.ranches().open(id).ranch().name()).isEqualTo("Renamed");
        }
    }

    @Test
    void nothingIsAcknowledgedOnceTheFolderIsGone() throws IOException {
        var data = folder.resolve("gone");
        var demo = demo();
        try (var store = Store.inFolder(data, MORNING)) {
            store.ranches().create(demo);
            for (var name : List.of("haywright.db", "haywright.db-wal", "haywright.db-shm", "haywright.lock")) {
                Files.delete(data.resolve(name));
            }
            Files.delete(data);
            refusesToWrite(store, demo);
            assertThat(store.ranches().open(demo.id()).ranch())
                    .as("what is still in hand")
                    .isEqualTo(demo);
        }
        assertThat(data).as("not made again behind anybody's back").doesNotExist();
    }

    @Test
    void aFilePutInThePlaceOfTheOpenOneStaysAsItIs() throws IOException {
        var other = folder.resolve("other");
        var theirs = Ranch.empty(UUID.randomUUID(), "Other");
        try (var store = Store.inFolder(other, MORNING)) {
            store.ranches().create(theirs);
        }
        var bytes = Files.readAllBytes(other.resolve("haywright.db"));
        var data = folder.resolve("replaced");
        var demo = demo();
        try (var store = Store.inFolder(data, MORNING)) {
            store.ranches().create(demo);
            Files.move(
                    other.resolve("haywright.db"), data.resolve("haywright.db"), StandardCopyOption.REPLACE_EXISTING);
            refusesToWrite(store, demo);
        }
        assertThat(Files.readAllBytes(data.resolve("haywright.db"))).isEqualTo(bytes);
        try (var store = Store.inFolder(data, MORNING)) {
            assertThat(store.ranches().open(theirs.id()).ranch()).isEqualTo(theirs);
            assertThat(store.ranches().list()).hasSize(1);
        }
    }

    /** Ended as by a power cut, and before the next start the file was replaced by an older one, in place or by renaming. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aJournalThatWasLeftDoesNotGetIntoAFilePutBeside(boolean renamed) throws IOException {
        var data = folder.resolve("running" + renamed);
        var cut = folder.resolve("cut" + renamed);
        var started = folder.resolve("started" + renamed);
        var older = folder.resolve("older" + renamed + ".db");
        var demo = demo();
        try (var store = Store.inFolder(data, MORNING)) {
            store.ranches().create(demo);
            store.files().backup(older);
            for (int rev = 1; rev < 20; rev++) {
                store.ranches().save(demo.id(), rev, "Ann", "name", demo.withName("Name " + rev));
            }
            store.settle();
            copyAsItIs(data, cut);
            copyAsItIs(data, started);
        }
        try (var store = Store.inFolder(started, MORNING)) {
            assertThat(store.ranches().open(demo.id()).rev())
                    .as("without the file")
                    .isEqualTo(20);
        }
        if (renamed) {
            Files.copy(older, cut.resolve("other.db"));
            Files.move(cut.resolve("other.db"), cut.resolve("haywright.db"), StandardCopyOption.REPLACE_EXISTING);
        } else {
            Files.write(cut.resolve("haywright.db"), Files.readAllBytes(older));
        }
        try (var store = Store.inFolder(cut, MORNING)) {
            assertThat(store.ranches().open(demo.id()).ranch()).isEqualTo(demo);
        }
    }

    private static void copyAsItIs(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (var files = Files.list(from)) {
            for (var file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    @Test
    void aBackupCutShortIsSaidToBeOneAndNothingIsTakenIn() throws IOException {
        var whole = folder.resolve("whole.db");
        try (var store = Store.inFolder(folder.resolve("from"), MORNING)) {
            store.ranches().create(demo());
            store.files().backup(whole);
        }
        var bytes = Files.readAllBytes(whole);
        try (var store = Store.inFolder(folder.resolve("to"), MORNING)) {
            for (int part = 1; part <= 10; part++) {
                int left = Math.min(bytes.length * part / 10, bytes.length - 1);
                var cut = Files.write(folder.resolve("cut.db"), Arrays.copyOf(bytes, left));
                assertThatThrownBy(() -> store.files().restore(cut, "Ann"))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining("cut short or damaged");
            }
            assertThat(store.ranches().list()).isEmpty();
            assertThat(store.files().restore(whole, "Ann"))
                    .extracting(RanchFiles.Imported::became)
                    .containsExactly(RanchFiles.Became.NEW);
            assertThat(store.files().restore(whole, "Ann"))
                    .as("the same again")
                    .extracting(RanchFiles.Imported::became)
                    .containsExactly(RanchFiles.Became.SAME);
        }
    }

    @Test
    void aTextLongerThanAnyFileThatIsKeptIsRefusedBeforeItIsHeld() throws IOException {
        var file = folder.resolve("long.json");
        Files.writeString(file, "{\"haywright\":\"ranch\",\"name\":\"" + "x".repeat(9_000_000) + "\"}");
        var named = folder.resolve("named.json");
        Files.writeString(named, "{\"haywright\":\"ranch\",\"" + "x".repeat(20_000) + "\":1}");
        try (var store = Store.inFolder(folder.resolve("data"), MORNING)) {
            for (var each : List.of(file, named)) {
                assertThatThrownBy(() -> store.files().importFile(each, "Ann", false))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining("longer");
            }
        }
    }

    @Test
    void twentyWrongKeysAreNamedAndTheOthersCounted() throws IOException {
        var text = new StringBuilder("{\"haywright\":\"ranch\",\"format\":1");
        for (int i = 0; i < 5_000; i++) {
            text.append(",\"wrong").append(i).append("\":1");
        }
        var file = Files.writeString(folder.resolve("wide.json"), text.append('}'));
        try (var store = Store.inFolder(folder.resolve("data"), MORNING)) {
            assertThat(store.files().check(file)).hasSize(21);
        }
    }

    @Test
    void aMissingTableIsNamed() {
        var data = folder.resolve("less");
        try (var store = Store.inFolder(data, MORNING)) {
            store.overwrite("DROP TABLE draft");
        }
        assertThatThrownBy(() -> Store.inFolder(data, MORNING))
                .isInstanceOf(BadDatabase.class)
                .hasMessageContaining("a table is missing in this database: draft");
    }

    @Test
    void aFolderInThePlaceOfTheDatabaseIsCalledOne() throws IOException {
        var data = folder.resolve("odd");
        Files.createDirectories(data.resolve("haywright.db"));
        assertThatThrownBy(() -> Store.inFolder(data, MORNING))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a folder or a device is in its place");
    }

    private static void refusesToWrite(Store store, Ranch ranch) {
        assertThatThrownBy(() -> store.ranches().save(ranch.id(), 1, "Ann", "name", ranch.withName("Lost")))
                .satisfies(e -> assertThat(Trouble.of(e)).contains(Trouble.REPLACED));
        assertThatThrownBy(() -> store.drafts().put(ranch.id(), "lot/new", Map.of("name", List.of("Oats"))))
                .satisfies(e -> assertThat(Trouble.of(e)).contains(Trouble.REPLACED));
        assertThatThrownBy(() -> store.ranches().delete(ranch.id()))
                .satisfies(e -> assertThat(Trouble.of(e)).contains(Trouble.REPLACED));
    }
}
