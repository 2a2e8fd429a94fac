package haywright.app.store;

import static haywright.app.store.StoreContract.MORNING;
import static haywright.app.store.StoreContract.demo;
import static haywright.app.store.StoreContract.repriced;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged, emptied and lost databases, the way back, and which copies are kept. */
class DataFolderTest {
    @TempDir
    Path folder;

    private DataFolder data;

    private static Clock on(String day) {
        return Clock.fixed(LocalDate.parse(day).atTime(8, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
    }

    private Store open() {
        return Store.inFolder(folder, MORNING);
    }

    @BeforeEach
    void oneCopyAndOneSaveSince() {
        data = new DataFolder(folder, MORNING);
        try (var store = open()) {
            store.ranches().create(demo());
            store.dailyCopy();
            store.ranches().save(demo().id(), 1, "Ann", "oats", repriced(demo(), "Oat hay", 5));
        }
    }

    /** In the middle, where opening alone does not look. */
    private static void scratch(Path file) throws IOException {
        try (var channel = Files.newByteChannel(file, StandardOpenOption.WRITE)) {
            channel.position(channel.size() / 2);
            channel.write(java.nio.ByteBuffer.wrap(new byte[] {1, 2, 3, 4}));
            var noise = new byte[8192];
            java.util.Arrays.fill(noise, (byte) 0xA5);
            channel.write(java.nio.ByteBuffer.wrap(noise));
        }
    }

    private BadDatabase bad() {
        var thrown = org.assertj.core.api.Assertions.catchThrowableOfType(BadDatabase.class, () -> open().close());
        assertThat(thrown).isNotNull();
        return thrown;
    }

    @Test
    void aDamagedDatabaseIsNamedSetAsideAndReplacedByTheCopy() throws IOException {
        scratch(data.database());
        var before = Files.readAllBytes(data.database());
        var bad = bad();
        assertThat(bad.isEmpty()).isFalse();
        assertThat(bad.newest().orElseThrow().day()).isEqualTo("2026-12-01");
        assertThat(Files.readAllBytes(data.database())).as("looked at only").isEqualTo(before);
        var restored = data.restoreNewest();
        assertThat(Files.readAllBytes(restored.aside().orElseThrow())).isEqualTo(before);
        assertThat(restored.aside().orElseThrow().getFileName().toString()).contains("2026-12-01");
        try (var store = open()) {
            assertThat(store.ranches().open(demo().id())).isEqualTo(new Ranches.Opened(demo(), 1));
        }
    }

    @Test
    void aFileOfSomethingElseInItsPlaceIsSetAsideToo() throws IOException {
        Files.writeString(data.database(), "not a database, but long enough to be read as one. ".repeat(40));
        bad();
        assertThat(data.restoreNewest().aside()).isPresent();
        open().close();
    }

    @Test
    void anEmptyOrMissingDatabaseWhereCopiesAreIsAskedAbout() throws IOException {
        Files.write(data.database(), new byte[0]);
        assertThat(bad().isEmpty()).isTrue();
        Files.delete(data.database());
        assertThat(bad().isEmpty()).isTrue();
        assertThat(data.database()).doesNotExist();
        data.restoreNewest();
        try (var store = open()) {
            assertThat(store.ranches().list()).hasSize(1);
        }
    }

    @Test
    void aDatabaseWithTablesAndNothingInThemIsAskedAboutToo() throws IOException {
        Files.delete(data.database());
        try (var other = Store.inFolder(folder.resolve("fresh"), MORNING)) {
            other.files().backup(data.database());
        }
        assertThat(bad().isEmpty()).isTrue();
    }

    @Test
    void toBeginAnewKeepsTheCopiesAndAsksNoMore() throws IOException {
        Files.write(data.database(), new byte[0]);
        data.beginAnew();
        try (var store = open()) {
            assertThat(store.ranches().list()).isEmpty();
        }
        open().close();
        try (var moved = Files.walk(folder)) {
            assertThat(moved).anyMatch(f -> f.getFileName().toString().equals("haywright-2026-12-01.db"));
        }
    }

    @Test
    void aFolderWithoutCopiesBeginsAnew() {
        Store.inFolder(folder.resolve("new"), MORNING).close();
        assertThat(folder.resolve("new").resolve("haywright.db")).exists();
    }

    @Test
    void theNewestGoodCopyIsTheNewestThatCanBeRead() throws IOException {
        var copy = Files.readAllBytes(data.copyOf(LocalDate.parse("2026-12-01")));
        Files.write(data.copyOf(LocalDate.parse("2026-11-30")), copy);
        scratch(data.copyOf(LocalDate.parse("2026-12-01")));
        assertThat(data.newestGood().orElseThrow().day()).isEqualTo("2026-11-30");
        Files.write(data.copyOf(LocalDate.parse("2031-01-01")), copy);
        assertThat(data.newestGood().orElseThrow().day())
                .as("a day still to come is the last to be believed")
                .isEqualTo("2026-11-30");
    }

    @Test
    void nothingIsPutInThePlaceOfADatabaseThatSomebodyHasOpen() {
        try (var store = open()) {
            assertThatThrownBy(data::restoreNewest)
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("open in another Haywright");
            store.ranches().create(Ranch.empty(UUID.randomUUID(), "Still saved"));
        }
        try (var store = open()) {
            assertThat(store.ranches().list()).hasSize(2);
        }
    }

    @Test
    void fourteenDaysAndTheFirstOfTwelveMonthsAreKept() throws IOException {
        var day = LocalDate.parse("2025-06-10");
        var copy = Files.readAllBytes(data.copyOf(LocalDate.parse("2026-12-01")));
        for (; !day.isAfter(LocalDate.parse("2026-11-30")); day = day.plusDays(1)) {
            Files.write(data.copyOf(day), copy);
        }
        Files.writeString(data.copies().resolve("notes.txt"), "somebody's own");
        Files.delete(data.copyOf(LocalDate.parse("2026-12-01")));
        try (var store = open()) {
            store.dailyCopy();
        }
        var kept = data.all().stream().map(f -> f.getFileName().toString()).toList();
        assertThat(kept).hasSize(14 + 12);
        assertThat(kept.subList(0, 14)).startsWith("haywright-2026-12-01.db").endsWith("haywright-2026-11-18.db");
        assertThat(kept.subList(14, 26))
                .startsWith("haywright-2026-11-01.db", "haywright-2026-10-01.db")
                .endsWith("haywright-2025-12-01.db");
        assertThat(data.copies().resolve("notes.txt")).exists();
    }

    @Test
    void aClockSetWrongTakesNoCopyAway() {
        for (var day : List.of("2020-01-01", "2031-01-01", "2026-12-02")) {
            try (var store = Store.inFolder(folder, on(day))) {
                assertThat(store.dailyCopy()).isPresent();
                assertThat(store.ranches().open(demo().id()).rev()).isEqualTo(2);
            }
        }
        assertThat(data.all()).hasSize(4);
        assertThat(new DataFolder(folder, on("2026-12-02"))
                        .newestGood()
                        .orElseThrow()
                        .day())
                .isEqualTo("2026-12-02");
    }

    @Test
    void theCopyBringsBackARanchThatCannotBeRead() {
        try (var store = open()) {
            store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET doc = '{\"half'"));
            assertThat(store.recovery().lastRevision(demo().id())).isEmpty();
            var copy = store.recovery().newestCopy(demo().id()).orElseThrow();
            assertThat(copy.ranch()).isEqualTo(demo());
            store.recovery().putInPlace(copy.ranch(), "Ann", "back");
            assertThat(store.ranches().open(demo().id())).isEqualTo(new Ranches.Opened(demo(), 3));
            assertThat(store.ranches().history(demo().id())).hasSize(2);
        }
    }

    /** Otherwise a start after a ranch was damaged would take the only copy that can bring it back. */
    @Test
    void aCopyStaysThatHasWhatCannotBeReadAnyMore() {
        try (var store = open()) {
            store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET doc = '{\"half'"));
        }
        try (var store = open()) {
            store.dailyCopy();
            assertThat(store.recovery().newestCopy(demo().id()).orElseThrow().ranch())
                    .isEqualTo(demo());
        }
        try (var store = Store.inFolder(folder, on("2026-12-02"))) {
            store.dailyCopy();
            assertThat(data.all()).hasSize(2);
            assertThat(store.recovery().newestCopy(demo().id()).orElseThrow().day())
                    .isEqualTo("2026-12-01");
        }
    }

    @Test
    void theTablesAreOfTheVersionThatCopiesAreHeldAgainst() {
        try (var store = open()) {
            int newest = store.jdbi()
                    .withHandle(h -> h.createQuery("SELECT max(CAST(version AS INTEGER)) FROM flyway_schema_history")
                            .mapTo(Integer.class)
                            .one());
            assertThat(newest).isEqualTo(Database.TABLES_VERSION);
        }
    }
}
