package haywright.app.store;

import static haywright.app.store.StoreContract.MORNING;
import static haywright.app.store.StoreContract.demo;
import static haywright.app.store.StoreContract.lot;
import static haywright.app.store.StoreContract.repriced;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A process that is killed between two saves. */
class KilledIT {
    @TempDir
    Path folder;

    /** Saves for ever and says each revision once it stands; killed from outside. */
    static final class SavesForEver {
        public static void main(String[] args) {
            try (var store = Store.inFolder(Path.of(args[0]), Clock.systemUTC())) {
                var ranches = store.ranches();
                var opened = ranches.create(demo());
                for (int dollars = 1; ; dollars++) {
                    var changed = repriced(opened.ranch(), "Oat hay", dollars);
                    var saved = (SaveAnswer.Saved)
                            ranches.save(changed.id(), opened.rev(), "Ann", "price " + dollars, changed);
                    opened = new Ranches.Opened(saved.ranch(), saved.rev());
                    System.out.println(saved.rev());
                }
            }
        }
    }

    @Test
    void aProcessKilledRightAfterASaveLosesNothing() throws Exception {
        var data = folder.resolve("killed");
        var process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        SavesForEver.class.getName(),
                        data.toString())
                .redirectError(folder.resolve("log").toFile())
                .start();
        long said = 0;
        try (var lines = process.inputReader()) {
            while (said < 12) {
                var line = lines.readLine();
                assertThat(line).as(Files.readString(folder.resolve("log"))).isNotNull();
                said = Long.parseLong(line);
            }
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as("killed, not ended").isEqualTo(137);
        try (var store = Store.inFolder(data, MORNING)) {
            var opened = store.ranches().open(demo().id());
            assertThat(opened.rev()).isGreaterThanOrEqualTo(said);
            assertThat(lot(opened.ranch(), "Oat hay").replacementPrice().value())
                    .isEqualTo(opened.rev() - 1);
            assertThat(store.ranches().history(demo().id())).hasSize((int) opened.rev() - 1);
        }
    }
}
