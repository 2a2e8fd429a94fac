package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import haywright.app.document.RanchDocument;
import haywright.ranch.Attachment;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** And of files: exports, backups, what reports were brought in from, and the ways back for what cannot be read. */
abstract class StoreFilesContract extends StoreEditsContract {
    @Test
    void aRanchTravelsWithItsFiles() throws IOException {
        var pdf = "%PDF oats".getBytes(StandardCharsets.UTF_8);
        var demo = withFile(demo(), pdf);
        ranches.create(demo);
        var file = folder.resolve("demo.json");
        store.files().exportTo(demo.id(), file);
        assertThat(store.files().check(file)).isEmpty();

        var text = Files.readString(file);
        var newId = UUID.randomUUID();
        Files.writeString(file, text.replace(demo.id().toString(), newId.toString()));
        var imported = store.files().importFile(file, "Ann", false);
        assertThat(imported).isEqualTo(new RanchFiles.Imported(newId, demo.name(), RanchFiles.Became.NEW));
        assertThat(ranches.open(newId).ranch().attachments()).isEqualTo(demo.attachments());

        Files.writeString(file, text.replace("JVBERi", "KVBERi"));
        assertThat(store.files().check(file))
                .singleElement()
                .satisfies(p -> assertThat(p.sentence())
                        .isEqualTo(
                                "oats.pdf: its body is not what was saved. Export the ranch again, or take this entry"
                                        + " out."));
    }

    @Test
    void importingARanchThatIsHereIsAnEditThatCanBeTakenBack() throws IOException {
        var demo = ranches.create(demo()).ranch();
        var file = folder.resolve("demo.json");
        store.files().exportTo(demo.id(), file);
        var later = repriced(demo, "Oat hay", 5);
        ranches.save(demo.id(), 1, "Ann", "oats", later);
        assertThatThrownBy(() -> store.files().importFile(file, "Ben", false))
                .hasMessageContaining("this ranch is here already and differs from the file");
        assertThat(ranches.open(demo.id()).ranch()).isEqualTo(later);
        assertThat(store.files().importFile(file, "Ben", true).isNew()).isFalse();
        assertThat(ranches.open(demo.id()).ranch()).isEqualTo(demo);
        assertThat(ranches.history(demo.id()).get(0).words()).isEqualTo("Imported from demo.json");
        assertThat(ranches.undo(demo.id(), 3, "Ben").ranch()).isEqualTo(later);
    }

    @Test
    void aBadFileIsRefusedAndKeepsNothing() throws IOException {
        var file = folder.resolve("bad.json");
        Files.writeString(file, "{\"haywright\":\"ranch\",\"format\":7}");
        assertThat(store.files().check(file))
                .singleElement()
                .satisfies(p -> assertThat(p.sentence()).contains("made by a newer Haywright (format 7)"));
        assertThatThrownBy(() -> store.files().importFile(file, "Ann", false)).isInstanceOf(Refused.class);
        assertThat(store.files().check(folder.resolve("none.json")))
                .singleElement()
                .satisfies(p -> assertThat(p.sentence()).contains("there is no such file"));
        assertThat(ranches.list()).isEmpty();
    }

    @Test
    void aBackupBringsEverythingBackEvenWhatWasDeleted() {
        var demo = withFile(demo(), new byte[] {7});
        ranches.create(demo);
        var other = ranches.create(Ranch.empty(UUID.randomUUID(), "Other")).ranch();
        var zip = folder.resolve("all.zip");
        store.files().backup(zip);
        ranches.save(demo.id(), 1, "Ann", "oats", repriced(demo, "Oat hay", 5));
        ranches.delete(other.id());
        assertThat(store.files().restore(zip, "Ann")).hasSize(2).noneMatch(RanchFiles.Imported::isNew);
        assertThat(ranches.open(demo.id()).ranch()).isEqualTo(demo);
        assertThat(ranches.open(other.id()).ranch()).isEqualTo(other);
        assertThat(ranches.undo(demo.id(), 3, "Ann").ranch()).isEqualTo(repriced(demo, "Oat hay", 5));
    }

    /** Everything that a house can hold: edited, put away, half typed, damaged, with a file and a laboratory's name. */
    private void furnish() {
        var demo = withFile(demo(), new byte[] {7, 8});
        ranches.create(demo);
        ranches.save(demo.id(), 1, "Ann", "oats", repriced(demo, "Oat hay", 5));
        var away = ranches.create(Ranch.empty(AWAY, "Away")).ranch();
        ranches.delete(away.id());
        ranches.create(Ranch.empty(BROKEN, "Broken"));
        damage(BROKEN, "{\"haywright\":\"ranch\",\"for");
        store.drafts().put(demo.id(), "lots/new/bales", Map.of("name", List.of("half a na")));
        store.laboratoryNames().keep(new LaboratoryNames.Said("tin valley", "x", "adf", "", ""));
    }

    private static final UUID AWAY = new UUID(1, 1);
    private static final UUID BROKEN = new UUID(2, 2);

    @Test
    void aBackupHoldsEverythingAndAnotherHouseGetsAllOfIt() throws Exception {
        furnish();
        var file = folder.resolve("all.backup");
        store.files().backup(file);
        try (var other = Store.inFolder(folder.resolve("other"), MORNING)) {
            assertThat(other.files().restore(file, "Ben"))
                    .extracting(RanchFiles.Imported::became)
                    .containsOnly(RanchFiles.Became.NEW);
            var id = demo().id();
            assertThat(other.ranches().list()).isEqualTo(ranches.list());
            assertThat(other.ranches().deleted()).isEqualTo(ranches.deleted());
            assertThat(other.ranches().open(id)).isEqualTo(ranches.open(id));
            assertThat(other.ranches().history(id)).isEqualTo(ranches.history(id));
            assertThat(other.ranches().undo(id, 2, "Ben").rev()).isEqualTo(3);
            assertThat(other.drafts().get(id, "lots/new/bales")).containsEntry("name", List.of("half a na"));
            assertThat(other.laboratoryNames().all())
                    .isEqualTo(store.laboratoryNames().all());
            var sha256 = ranches.open(id)
                    .ranch()
                    .attachments()
                    .values()
                    .iterator()
                    .next()
                    .sha256();
            assertThat(other.attachments().get(sha256).orElseThrow().bytes()).containsExactly(7, 8);
            assertThat(other.recovery().raw(BROKEN).doc()).endsWith("\"for");
        }
        try (var beside = Files.list(folder)) {
            assertThat(beside)
                    .as("nothing half written")
                    .noneMatch(f -> f.toString().endsWith(".part"));
        }
    }

    @Test
    void aBackupTakenInWhereItsRanchesAreLeavesNothingLost() throws IOException {
        furnish();
        var file = folder.resolve("all.backup");
        store.files().backup(file);
        ranches.restore(AWAY);
        store.drafts().put(demo().id(), "lots/new/bales", Map.of("name", List.of("typed since")));
        assertThat(store.files().restore(file, "Ben"))
                .extracting(RanchFiles.Imported::name, RanchFiles.Imported::became)
                .contains(
                        org.assertj.core.groups.Tuple.tuple("Away", RanchFiles.Became.LEFT_DELETED),
                        org.assertj.core.groups.Tuple.tuple("Broken", RanchFiles.Became.LEFT_UNREADABLE));
        assertThat(ranches.isHere(AWAY)).isTrue();
        assertThat(store.drafts().get(demo().id(), "lots/new/bales")).containsEntry("name", List.of("typed since"));
    }

    @Test
    void aBackupGoesIntoAFileAndNothingElse() throws IOException {
        ranches.create(demo());
        var directory = Files.createDirectory(folder.resolve("a-folder"));
        for (var place : List.of(directory, Path.of("/dev/null"))) {
            assertThatThrownBy(() -> store.files().backup(place))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("this is no file but a folder or a device");
            assertThatThrownBy(() -> store.files().restore(place, "Ann")).isInstanceOf(Refused.class);
        }
        assertThat(directory).isEmptyDirectory();
    }

    @Test
    void aRanchThatCannotBeReadGoesBackToItsLastGoodRevision() {
        var opened = ranches.create(demo()).ranch();
        var good = repriced(opened, "Oat hay", 1);
        ranches.save(opened.id(), 1, "Ann", "oats", good);
        ranches.save(opened.id(), 2, "Ann", "oats", repriced(opened, "Oat hay", 2));
        var broken = store.recovery().raw(opened.id()).doc().replace("\"name\":\"Oat hay\"", "\"name\":17");
        damage(opened.id(), broken);
        assertThatThrownBy(() -> ranches.open(opened.id())).isInstanceOf(Refused.class);
        assertThat(store.files().export(opened.id())).isEqualTo(broken);
        var last = store.recovery().lastRevision(opened.id()).orElseThrow();
        assertThat(last.ranch()).isEqualTo(good);
        assertThat(last.rev()).isEqualTo(2);
        assertThat(store.recovery().putInPlace(last.ranch(), "Ann", "back")).isEqualTo(4);
        assertThat(ranches.open(opened.id())).isEqualTo(new Ranches.Opened(good, 4));
        String aside = store.jdbi()
                .withHandle(h -> h.createQuery("SELECT doc FROM set_aside WHERE rev = 3")
                        .mapTo(String.class)
                        .one());
        assertThat(aside).isEqualTo(broken);
        // who had it open before goes on as if nothing had been
        ranches.save(opened.id(), 2, "Ben", "straw", repriced(good, "Barley straw", 9));
        assertThat(ranches.open(opened.id()).ranch()).isEqualTo(repriced(good, "Barley straw", 9));
    }

    @Test
    void aRanchOfANewerHaywrightIsLeftAloneAndOthersGoOn() {
        var opened = ranches.create(demo()).ranch();
        ranches.create(Ranch.empty(BROKEN, "Other"));
        ranches.save(opened.id(), 1, "Ann", "oats", repriced(opened, "Oat hay", 1));
        damage(opened.id(), store.recovery().raw(opened.id()).doc().replaceFirst("\"format\":[0-9]+", "\"format\":99"));
        assertThat(store.recovery().wrong(opened.id()).orElseThrow()).hasMessageContaining("made by a newer Haywright");
        assertThat(store.recovery().lastRevision(opened.id())).isEmpty();
        assertThat(ranches.list()).hasSize(2);
        assertThat(ranches.open(BROKEN).ranch().name()).isEqualTo("Other");
        assertThat(ranches.history(opened.id())).hasSize(1);
    }

    @Test
    void aFileThatIsNoBackupIsRefused() throws IOException {
        var file = folder.resolve("picture.png");
        Files.write(file, new byte[] {1, 2, 3});
        assertThatThrownBy(() -> store.files().restore(file, "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no ranch in this file");
    }

    private Path zip(String name, int entries, byte[] each) throws IOException {
        var file = folder.resolve(name);
        try (var out = new ZipOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < entries; i++) {
                out.putNextEntry(new ZipEntry(i + ".json"));
                out.write(each);
                out.closeEntry();
            }
        }
        return file;
    }

    /** A zip can unpack to a thousand times its size. */
    @Test
    void aZipThatBurstsIsRefusedBeforeItIsUnpacked() throws IOException {
        var spaces = new byte[65 * 1024 * 1024];
        Arrays.fill(spaces, (byte) ' ');
        assertThatThrownBy(() -> store.files().restore(zip("burst.zip", 1, spaces), "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("unpacks to far more");
        var document =
                new RanchDocument().write(Ranch.empty(UUID.randomUUID(), "One")).getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> store.files().restore(zip("many.zip", 10_001, document), "Ann"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at most 10,000 ranches");
        assertThat(ranches.list()).isEmpty();
    }

    @Test
    void aFileThatBroughtTwoReportsTravelsOnceAndArrivesForBoth() throws IOException {
        var demo = withFile(withFile(demo(), new byte[] {4, 5, 6}), new byte[] {4, 5, 6});
        ranches.create(demo);
        var document = store.files().export(demo.id());
        assertThat(document.split("BAUG", -1)).as("the body in base64").hasSize(2);
        ranches.delete(demo.id());
        assertThat(store.files()
                        .take(document.getBytes(StandardCharsets.UTF_8), "Ann", "", true)
                        .id())
                .isEqualTo(demo.id());
        assertThat(ranches.open(demo.id()).ranch().attachments()).isEqualTo(demo.attachments());
    }

    @Test
    void aFileStaysAsLongAsAnythingSpeaksOfIt() {
        var demo = withFile(demo(), new byte[] {7, 8, 9});
        ranches.create(demo);
        var spoken = demo.attachments().values().iterator().next().sha256();
        var drafted = store.attachments().keep(new Attachments.Body("text/plain", new byte[] {1}));
        store.drafts().put(demo.id(), "reports/bring", Map.of("original", List.of(drafted + " a.txt")));
        var forgotten = store.attachments().keep(new Attachments.Body("text/plain", new byte[] {2}));
        var without = Ranch.empty(demo.id(), demo.name());
        ranches.save(demo.id(), 1, "Ann", "emptied", without); // only the history speaks of it now
        sweep(MORNING);
        assertThat(store.attachments().get(forgotten))
                .as("may be about to be spoken of")
                .isPresent();
        var saved = store.attachments().keep(new Attachments.Body("text/plain", new byte[] {3}));
        sweep(Clock.offset(MORNING, Duration.ofDays(2)));
        assertThat(store.attachments().get(spoken)).isPresent();
        assertThat(store.attachments().get(drafted)).isPresent();
        assertThat(store.attachments().get(forgotten)).isEmpty();
        // kept between two sweeps far apart, and again by somebody else: a day from then on
        assertThat(store.attachments().get(saved)).isPresent();
        store.attachments().keep(new Attachments.Body("text/plain", new byte[] {3}));
        sweep(Clock.offset(MORNING, Duration.ofDays(4)));
        assertThat(store.attachments().get(saved)).isPresent();
        sweep(Clock.offset(MORNING, Duration.ofDays(6)));
        assertThat(store.attachments().get(saved)).isEmpty();
    }

    /** As the first copy of a day does it, by another program. */
    private void sweep(Clock clock) {
        try (var other = openAt(clock)) {
            other.dailyCopy();
        }
    }

    @Test
    void aRanchWhoseFileIsGoneGoesOutAndComesBackWithoutIt() {
        var demo = withFile(demo(), new byte[] {7, 8, 9});
        ranches.create(demo);
        assertThat(store.files().missing(demo.id())).isEmpty();
        store.overwrite("DELETE FROM attachment");
        var name = demo.attachments().values().iterator().next().name();
        assertThat(store.files().missing(demo.id())).containsExactly(name);
        var file = folder.resolve("out.json");
        store.files().exportTo(demo.id(), file);
        assertThat(store.files().check(file)).hasSize(1);
        try (var other = Store.inFolder(folder.resolve("elsewhere"), MORNING)) {
            assertThat(other.files().importFile(file, "Ann", false).isNew()).isTrue();
            assertThat(other.ranches().open(demo.id()).ranch()).isEqualTo(demo);
            assertThat(other.files().missing(demo.id())).containsExactly(name);
        }
    }

    @Test
    void theFilesOfARanchThatCannotBeReadStay() {
        var demo = withFile(demo(), new byte[] {7, 8, 9});
        ranches.create(demo);
        var spoken = demo.attachments().values().iterator().next().sha256();
        damage(demo.id(), "{\"half");
        store.dailyCopy();
        assertThat(store.attachments().get(spoken)).isPresent();
    }

    private Ranch withFile(Ranch ranch, byte[] bytes) {
        var sha256 = store.attachments().keep(new Attachments.Body("application/pdf", bytes));
        var oats = lot(ranch, "Oat hay");
        var id = UUID.randomUUID();
        return ranch.with(new Attachment(id, oats.id(), "oats.pdf", "application/pdf", sha256));
    }
}
