package haywright.app.store;

import static java.nio.file.attribute.PosixFilePermissions.fromString;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@DisabledOnOs(OS.WINDOWS)
class OwnerOnlyTest {
    @TempDir
    private Path place;

    private static String rights(Path path) throws IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
    }

    private Path folder(String rights) throws IOException {
        var folder = Files.createDirectory(place.resolve("folder"));
        return Files.setPosixFilePermissions(folder, fromString(rights));
    }

    @Test
    void aNewHomeAndAllThatIsPutIntoItIsTheOwnersAlone() throws IOException {
        var home = place.resolve("deep/down/home");
        try (var store = Store.inFolder(home, StoreContract.MORNING)) {
            store.dailyCopy();
            assertThat(rights(home)).isEqualTo("rwx------");
            try (var held = Files.walk(home)) {
                for (var path : held.toList()) {
                    assertThat(rights(path))
                            .as(path.toString())
                            .isEqualTo(Files.isDirectory(path) ? "rwx------" : "rw-------");
                }
            }
            assertThat(home.toFile().list()).contains("haywright.db", "haywright.db-wal", "copies");
        }
    }

    @Test
    void aHomeThatWasWiderIsNarrowed() throws IOException {
        var home = folder("rwxr-xr-x");
        var database = Files.createFile(home.resolve("haywright.db"));
        Files.setPosixFilePermissions(database, fromString("rw-r--r--"));
        Files.setPosixFilePermissions(Files.createFile(home.resolve("key")), fromString("rw-rw-rw-"));
        OwnerOnly.folder(home);
        assertThat(rights(home)).isEqualTo("rwx------");
        assertThat(rights(database)).isEqualTo("rw-------");
        assertThat(rights(home.resolve("key"))).isEqualTo("rw-------");
    }

    @Test
    void aFolderWithOtherThingsInItKeepsItsRightsAndOurFilesDoNot() throws IOException {
        var shared = folder("rwxr-xr-x");
        var database = Files.createFile(shared.resolve("haywright.db"));
        var other = Files.createFile(shared.resolve("notes.txt"));
        Files.setPosixFilePermissions(database, fromString("rw-r--r--"));
        Files.setPosixFilePermissions(other, fromString("rw-r--r--"));
        OwnerOnly.folder(shared);
        assertThat(rights(shared)).isEqualTo("rwxr-xr-x");
        assertThat(rights(other)).isEqualTo("rw-r--r--");
        assertThat(rights(database)).isEqualTo("rw-------");
    }
}
