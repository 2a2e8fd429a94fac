package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import haywright.app.document.TinLantern;
import haywright.quantity.Quantity;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the store promises of ranches and drafts that are kept, on whichever database. */
abstract class StoreContract {
    static final Clock MORNING = Clock.fixed(Instant.parse("2026-12-01T14:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path folder;

    Store store;
    Ranches ranches;

    /** Opens the same database each time within one test, and an empty one in the next. */
    Store open() {
        return openAt(MORNING);
    }

    abstract Store openAt(Clock clock);

    @BeforeEach
    void start() {
        store = open();
        ranches = store.ranches();
    }

    @AfterEach
    void stop() {
        store.close();
    }

    private void restart() {
        stop();
        start();
    }

    @Test
    void theNewestWinterBooksOfARanchAreKept() {
        var one = ranches.create(Ranch.empty(UUID.randomUUID(), "Cold Spring"))
                .ranch()
                .id();
        var other = ranches.create(Ranch.empty(UUID.randomUUID(), "Tin Valley"))
                .ranch()
                .id();
        var books = store.winterBooks();
        assertThat(books.state(one)).isEmpty();
        books.keep(other, "x", 1, "another ranch");
        for (int rev = 1; rev <= WinterBooks.KEPT + 2; rev++) {
            books.keep(one, "hash " + rev, rev, "book " + rev);
        }
        books.keep(one, "hash 5", 6, "book 5, made again");
        restart();
        books = store.winterBooks();
        assertThat(books.of(one))
                .hasSize(WinterBooks.KEPT)
                .extracting(WinterBooks.Kept::rev, WinterBooks.Kept::doc)
                .startsWith(tuple(6L, "book 5, made again"), tuple(4L, "book 4"));
        assertThat(books.state(one).lines().findFirst().orElseThrow()).endsWith(" hash 5");
        assertThat(books.states()).containsEntry(one, books.state(one)).hasSize(2);
        assertThat(books.of(other)).extracting(WinterBooks.Kept::doc).containsExactly("another ranch");
    }

    @Test
    void aRanchIsReadOnceARevisionAndAgainWhenAnotherProcessSaved() {
        var demo = demo();
        ranches.create(demo);
        var first = ranches.open(demo.id());
        assertThat(store.ranches().open(demo.id())).isSameAs(first);
        var version = ranches.list().get(0).version();
        try (var other = open()) {
            other.ranches().save(demo.id(), 1, "Ben", "price", repriced(demo, "Oat hay", 77));
        }
        assertThat(ranches.open(demo.id()).ranch()).isEqualTo(repriced(demo, "Oat hay", 77));
        assertThat(ranches.list().get(0).version()).isNotEqualTo(version);
    }

    @Test
    void anotherDocumentUnderTheSameRevisionIsReadAgain() {
        var demo = demo();
        ranches.create(demo);
        ranches.save(demo.id(), 1, "Ann", "price", repriced(demo, "Oat hay", 111));
        assertThat(ranches.open(demo.id()).rev()).isEqualTo(2);
        store.overwrite("UPDATE ranch SET doc = replace(doc, '\"name\":\"Oat hay\"', '\"name\":\"Oat straw\"')");
        assertThat(lot(ranches.open(demo.id()).ranch(), "Oat straw")).isNotNull();
    }

    @Test
    void aSecondStartFindsEverything() {
        var demo = demo();
        ranches.create(demo);
        var changed = repriced(demo, "Oat hay", 99);
        ranches.save(demo.id(), 1, "Ann", "Oat hay: price", changed);
        store.drafts().put(demo.id(), "lot/new", Map.of("name", List.of("half a na")));
        var pdf = store.attachments().keep(new Attachments.Body("application/pdf", new byte[] {1, 2, 3}));
        restart();
        assertThat(ranches.open(demo.id())).isEqualTo(new Ranches.Opened(changed, 2));
        assertThat(ranches.history(demo.id()))
                .containsExactly(new Edit(
                        2,
                        MORNING.instant(),
                        "Ann",
                        "Oat hay: price",
                        List.of("lots/" + lot(demo, "Oat hay").id())));
        assertThat(store.drafts().get(demo.id(), "lot/new")).containsEntry("name", List.of("half a na"));
        assertThat(store.attachments().get(pdf).orElseThrow().bytes()).containsExactly(1, 2, 3);
    }

    @Test
    void theListIsByNameAndTheNameFollowsTheDocument() {
        var b = ranches.create(Ranch.empty(UUID.randomUUID(), "beaver slide")).ranch();
        var a = ranches.create(Ranch.empty(UUID.randomUUID(), "Antler")).ranch();
        ranches.save(b.id(), 1, "Ann", "renamed", b.withName("Zigzag"));
        assertThat(ranches.list())
                .extracting(Ranches.Listed::id, Ranches.Listed::name, Ranches.Listed::rev)
                .containsExactly(tuple(a.id(), "Antler", 1L), tuple(b.id(), "Zigzag", 2L));
    }

    @Test
    void anIdIsTakenOnlyOnce() {
        ranches.create(demo());
        assertThatThrownBy(() -> ranches.create(demo()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("already");
    }

    @Test
    void aRanchThatIsNotThereIsRefusedByEveryDoor() {
        var id = UUID.randomUUID();
        var ranch = Ranch.empty(id, "Nowhere");
        List<Callable<?>> doors = List.of(
                () -> ranches.open(id),
                () -> ranches.save(id, 1, "Ann", "x", ranch),
                () -> ranches.undo(id, 2, "Ann"),
                () -> {
                    ranches.delete(id);
                    return id;
                },
                () -> store.files().export(id));
        for (var door : doors) {
            assertThatThrownBy(door::call).isInstanceOf(Refused.class).hasMessageContaining("there is no such");
        }
    }

    @Test
    void aDeletedRanchLeavesTheListAndComesBackWhole() {
        var demo = ranches.create(demo()).ranch();
        ranches.delete(demo.id());
        assertThat(ranches.list()).isEmpty();
        assertThat(ranches.deleted()).extracting(Ranches.Listed::id).containsExactly(demo.id());
        assertThatThrownBy(() -> ranches.open(demo.id())).isInstanceOf(Refused.class);
        ranches.restore(demo.id());
        assertThat(ranches.open(demo.id())).isEqualTo(new Ranches.Opened(demo, 1));
    }

    @Test
    void draftsKeepWhatWasTypedRightOrWrong() {
        var id = UUID.randomUUID();
        var drafts = store.drafts();
        var typed = new LinkedHashMap<String, List<String>>();
        typed.put("cp", List.of("4oo %", ""));
        typed.put("name", List.of("<b>Oat</b> ’ \" \\ 牧草"));
        drafts.put(id, "report/new", typed);
        drafts.put(Drafts.THE_ROUND, "ranch/new", Map.of("name", List.of("New")));
        assertThat(drafts.get(id, "report/new")).isEqualTo(typed);
        drafts.put(id, "report/new", Map.of("cp", List.of("12")));
        assertThat(drafts.get(id, "report/new")).isEqualTo(Map.of("cp", List.of("12")));
        assertThat(drafts.waiting(id)).containsExactly("report/new");
        drafts.clear(id, "report/new");
        assertThat(drafts.get(id, "report/new")).isEmpty();
        assertThat(drafts.waiting(Drafts.THE_ROUND)).containsExactly("ranch/new");
    }

    @Test
    void whatWasSaidOfALaboratorysNamesIsKeptOverwrittenAndForgotten() {
        var names = store.laboratoryNames();
        names.keep(new LaboratoryNames.Said("Éclat  Laboratory", "protéine", "cp", "percent", ""));
        names.keep(new LaboratoryNames.Said("éclat laboratory", "indice", "", "", ""));
        names.keep(new LaboratoryNames.Said("Tin Valley", "x", "adf", "", "dry_matter"));
        names.keep(new LaboratoryNames.Said("éclat laboratory", "protéine", "n", "", ""));
        restart();
        assertThat(store.laboratoryNames().all())
                .containsExactlyInAnyOrder(
                        new LaboratoryNames.Said("tin valley", "x", "adf", "", "dry_matter"),
                        new LaboratoryNames.Said("éclat laboratory", "indice", "", "", ""),
                        new LaboratoryNames.Said("éclat laboratory", "protéine", "n", "", ""));
        store.laboratoryNames().forget("Éclat Laboratory");
        assertThat(store.laboratoryNames().all()).hasSize(1);
    }

    /** As a failing disk or a newer program would leave it. */
    void damage(UUID id, String doc) {
        store.jdbi().useHandle(h -> h.execute("UPDATE ranch SET doc = ? WHERE id = ?", doc, id.toString()));
    }

    static Ranch demo() {
        return TinLantern.ranch();
    }

    static Lot lot(Ranch ranch, String name) {
        return ranch.lots().values().stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    static Ranch repriced(Ranch ranch, String name, int dollars) {
        var lot = lot(ranch, name);
        return ranch.with(new Lot(
                lot.id(),
                lot.name(),
                lot.feedClass(),
                lot.bookRow(),
                lot.where(),
                lot.cutting(),
                lot.madeOn(),
                lot.storage(),
                lot.stock(),
                Quantity.of(dollars, Unit.DOLLAR_PER_TON),
                lot.nitrateRisk(),
                lot.notes(),
                lot.makeup(),
                null,
                lot.weighings()));
    }
}
