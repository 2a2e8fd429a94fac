package haywright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Killed, on a full disk, twice at once, without leave to write, on a damaged database: as real processes. */
class NothingStopsItIT {
    @TempDir
    Path folder;

    private static Map<String, String> named(String name) {
        return Map.of("name", name);
    }

    private static Map<String, String> settings(String adviser) {
        return Map.of(
                "name",
                "Cold Spring Ranch",
                "adviser",
                adviser,
                "turnout",
                "",
                "feedingLoss",
                "15",
                "system",
                "nrc_1996");
    }

    @Test
    void killedAgainAndAgainItLosesNoSaveThatItSaidItHad() throws Exception {
        var data = folder.resolve("data");
        int said = 0;
        for (int life = 0; life < 3; life++) {
            try (var running = Running.pages("", data)) {
                var round = running.get("/").body();
                for (int n = 0; n < said; n++) {
                    assertThat(round).contains("Ranch number " + n + ",");
                }
                for (int n = 0; n < 8; n++) {
                    var added = running.send(running.get("/"), "/ranches", named("Ranch number " + said + ","));
                    assertThat(added.status()).isEqualTo(200);
                    said++;
                }
                running.kill();
            }
        }
        try (var store = Store.inFolder(data, Clock.systemUTC())) {
            assertThat(store.ranches().list()).hasSize(said);
        }
    }

    @Test
    void onAFullDiskTheFormComesBackFilledAndWhatWasSavedStays() throws Exception {
        var disk = folder.resolve("disk");
        Files.createDirectory(disk);
        // a real full disk where one may be mounted, else a limit on the size of files
        boolean mounted = mount("-t", "tmpfs", "-o", "size=3m", "tmpfs", disk.toString());
        try {
            var data = disk.resolve("data");
            var typed = "word ".repeat(60_000);
            Running.Answer failed = null;
            String path;
            int saved = 0;
            try (var running = Running.pages(mounted ? "" : "ulimit -f 3000", data)) {
                path = running.send(running.get("/"), "/ranches", named("Cold Spring Ranch"))
                        .path();
                for (int n = 0; n < 40 && failed == null; n++) {
                    var form = running.get(path + "lots/new/weighed");
                    var answer = running.send(
                            form,
                            path + "lots/new/weighed",
                            Map.of(
                                    "name",
                                    "Stack " + n,
                                    "feedClass",
                                    "grass_hay",
                                    "mass",
                                    "120",
                                    "storage",
                                    "tarped",
                                    "replacementPrice",
                                    "150",
                                    "notes",
                                    typed));
                    if (answer.status() == 200) {
                        saved++;
                    } else {
                        failed = answer;
                    }
                }
                assertThat(failed).as("the disk was full at last").isNotNull();
                assertThat(failed.status()).isIn(503, 507);
                assertThat(failed.body())
                        .contains("value=\"Stack " + saved + "\"", "word word", "Not saved")
                        .containsPattern("disk is full|may be full");
                assertThat(running.get(path + "lots").status())
                        .as("it still reads")
                        .isEqualTo(200);
            }
            if (mounted) {
                assertThat(mount("-o", "remount,size=64m", disk.toString())).isTrue();
            }
            try (var running = Running.pages("", data)) {
                assertThat(running.send(
                                        failed,
                                        path + "lots/new/weighed",
                                        Map.of(
                                                "name",
                                                "After",
                                                "feedClass",
                                                "grass_hay",
                                                "mass",
                                                "1",
                                                "storage",
                                                "tarped",
                                                "replacementPrice",
                                                "150",
                                                "token",
                                                token(running)))
                                .status())
                        .isEqualTo(200);
                assertThat(running.get(path + "lots").body()).contains("Stack " + (saved - 1), "After");
            }
        } finally {
            if (mounted) {
                new ProcessBuilder("umount", "-l", disk.toString()).start().waitFor();
            }
        }
    }

    private static String token(Running running) {
        return running.get("/").body().replaceAll("(?s).*?name=\"token\" value=\"([^\"]*)\".*", "$1");
    }

    private static boolean mount(String... arguments) throws IOException, InterruptedException {
        var command = new java.util.ArrayList<>(List.of("mount"));
        command.addAll(List.of(arguments));
        try {
            return new ProcessBuilder(command).start().waitFor() == 0;
        } catch (IOException e) {
            return false; // this machine has no such command
        }
    }

    @Test
    void twoAtOnceOnOneFolderLoseNothing() throws Exception {
        var data = folder.resolve("data");
        try (var one = Running.pages("", data);
                var other = Running.pages("", data)) {
            for (int n = 0; n < 5; n++) {
                one.send(one.get("/"), "/ranches", named("One " + n));
                other.send(other.get("/"), "/ranches", named("Other " + n));
            }
            assertThat(one.get("/").body()).contains("Other 4").contains("One 4");
            assertThat(other.get("/").body()).contains("Other 0").contains("One 0");
        }
        try (var store = Store.inFolder(data, Clock.systemUTC())) {
            assertThat(store.ranches().list()).hasSize(10);
        }
    }

    @Test
    void aHomeThatCannotBeWrittenIsSaidInASentence() throws Exception {
        var home = folder.resolve("home");
        Files.createDirectory(home);
        boolean mounted = mount("-t", "tmpfs", "-o", "size=8m", "tmpfs", home.toString());
        try {
            try (var store = Store.inFolder(home, Clock.systemUTC())) {
                store.ranches().list();
            }
            if (mounted) {
                assertThat(mount("-o", "remount,ro", home.toString())).isTrue();
            } else {
                for (var file : Stream.concat(Files.list(home), Stream.of(home)).toList()) {
                    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r-xr-xr-x"));
                }
            }
            for (var place : List.of(home, home.resolve("deeper"))) {
                var said = Running.toItsEnd("ranch", "list", "--data", place.toString());
                assertThat(said).last().isEqualTo("exit 2");
                assertThat(said)
                        .hasSize(2)
                        .first()
                        .asString()
                        .contains(place.toString())
                        .doesNotContain("Exception");
            }
        } finally {
            if (mounted) {
                new ProcessBuilder("umount", "-l", home.toString()).start().waitFor();
            } else {
                Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
            }
        }
    }

    @Test
    void aDamagedDatabaseIsRestoredByTheButtonAndByTheCommand() throws Exception {
        var data = folder.resolve("data");
        try (var store = Store.inFolder(data, Clock.systemUTC())) {
            store.ranches().create(haywright.ranch.Ranch.empty(new java.util.UUID(3, 3), "Cold Spring Ranch"));
            store.dailyCopy();
        }
        var database = data.resolve("haywright.db");
        Files.writeString(database, "scrap ".repeat(2000));
        try (var running = Running.pages("", data)) {
            assertThat(String.join(" ", running.said)).contains("ranch restore --newest", database.toString());
            var page = running.get("/ranch/x/lots");
            assertThat(page.status()).isEqualTo(503);
            assertThat(running.send(page, "/restore-newest", Map.of()).status()).isEqualTo(200);
            assertThat(running.open().body()).contains("Cold Spring Ranch");
        }
        Files.writeString(database, "scrap ".repeat(2000));
        var listed = Running.toItsEnd("ranch", "list", "--data", data.toString());
        assertThat(listed).last().isEqualTo("exit 2");
        assertThat(String.join(" ", listed)).contains("ranch restore --newest").doesNotContain("Exception");
        assertThat(Running.toItsEnd("ranch", "restore", "--newest", "--data", data.toString()))
                .last()
                .isEqualTo("exit 0");
        assertThat(Running.toItsEnd("ranch", "list", "--data", data.toString()))
                .first()
                .asString()
                .contains("Cold Spring Ranch");
        try (var files = Files.list(data)) {
            assertThat(files.filter(f -> f.getFileName().toString().startsWith("haywright-set-aside-")))
                    .hasSize(2);
        }
    }
}
