package haywright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.ranch.Ranch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An older copy of the database is put in place while pages are open: its revisions are counted anew, and meet theirs. */
class RestoredTest {
    @TempDir
    private Path folder;

    private Store store;
    private Server server;
    private RawClient client;
    private String path;

    @BeforeEach
    void aRanch() {
        start();
        path = client.submit(client.get("/"), "/ranches", Map.of("name", "Cold Spring Ranch"))
                .header("Location");
        assertThat(send("lots/new/bales", OneRanch.hay("300", "1200 lb")).status())
                .isEqualTo(303);
    }

    private void start() {
        store = Store.inFolder(folder, Clock.systemUTC());
        var home = Home.in(folder);
        server = Server.start(OneRanch.desk(store), home, "127.0.0.1", 0, routes -> {});
        client = new RawClient(server.port(), home);
    }

    @AfterEach
    void stop() {
        server.close();
        store.close();
    }

    private RawClient.Answer send(String at, Map<String, String> fields) {
        return client.submit(client.get(path + at), path + at, fields);
    }

    private Ranch kept() {
        return store.ranches().open(UUID.fromString(path.split("/")[2])).ranch();
    }

    private long rev() {
        return store.ranches().open(UUID.fromString(path.split("/")[2])).rev();
    }

    private String lot() {
        return "lots/" + kept().lots().keySet().iterator().next() + "/as/bales";
    }

    /** The backup's ranch takes two other saves, and is at the number that the open page has. */
    private void restoreAndSaveOthers(Path backup) throws Exception {
        stop();
        for (var end : new String[] {"-wal", "-shm"}) {
            Files.deleteIfExists(folder.resolve("haywright.db" + end));
        }
        Files.copy(backup, folder.resolve("haywright.db"), StandardCopyOption.REPLACE_EXISTING);
        start();
        for (var count : new String[] {"250", "240"}) {
            assertThat(send(lot(), OneRanch.hay(count, "1150 lb")).status()).isEqualTo(303);
        }
    }

    @Test
    void aFormFromBeforeIsNotTakenInSilence(@TempDir Path elsewhere) throws Exception {
        var backup = elsewhere.resolve("backup.db");
        store.files().backup(backup);
        for (var count : new String[] {"290", "280"}) {
            assertThat(send(lot(), OneRanch.hay(count, "1200 lb")).status()).isEqualTo(303);
        }
        var stale = client.get(path + lot());
        long then = rev();
        restoreAndSaveOthers(backup);
        assertThat(rev()).isEqualTo(then);

        var typed = OneRanch.hay("280", "1200 lb");
        typed.put("storage", "barn");
        var asked = client.submit(stale, path + lot(), typed);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(kept().lots().values().iterator().next().stock().bales()).isEqualTo(240);
        assertThat(asked.body())
                .as("what was typed is in the boxes, and what stands by now beside them")
                .contains("value=\"280\"", "On the ranch now: <b>240")
                .contains("older copy");
        assertThat(store.ranches().list().stream().flatMap(one -> store.drafts().waiting(one.id()).stream()))
                .containsExactly(lot());
        // seen, it is saved
        assertThat(client.submit(asked, path + lot(), typed).status()).isEqualTo(303);
        assertThat(kept().lots().values().iterator().next().stock().bales()).isEqualTo(280);
    }

    @Test
    void undoOfAPageFromBeforeTakesBackNothingElse(@TempDir Path elsewhere) throws Exception {
        var backup = elsewhere.resolve("backup.db");
        store.files().backup(backup);
        RawClient.Answer saved = null;
        for (var count : new String[] {"290", "280"}) {
            saved = send(lot(), OneRanch.hay(count, "1200 lb"));
        }
        var notice = client.get(saved.header("Location"));
        var history = client.get(path + "history");
        var undo = path + "undo/" + rev();
        restoreAndSaveOthers(backup);
        for (var page : new RawClient.Answer[] {notice, history}) {
            assertThat(page.body()).contains("action=\"" + undo + "\"");
            assertThat(client.submit(page, undo, Map.of()).status()).isEqualTo(409);
            assertThat(kept().lots().values().iterator().next().stock().bales()).isEqualTo(240);
        }
        assertThat(client.submit(client.get(path + "history"), undo, Map.of()).status())
                .isEqualTo(303);
    }

    /** The same content is the same revision, however the database came to it. */
    @Test
    void aFormOfWhatStandsAfterTheRestoreIsTaken(@TempDir Path elsewhere) throws Exception {
        var backup = elsewhere.resolve("backup.db");
        store.files().backup(backup);
        var stale = client.get(path + lot());
        restoreAndSaveOthers(backup);
        var typed = OneRanch.hay("300", "1200 lb");
        typed.put("storage", "barn");
        assertThat(client.submit(stale, path + lot(), typed).status()).isEqualTo(303);
        var kept = kept().lots().values().iterator().next();
        assertThat(kept.stock().bales()).as("theirs, changed since").isEqualTo(240);
        assertThat(kept.storage()).isEqualTo(haywright.ranch.Lot.Storage.BARN);
    }
}
