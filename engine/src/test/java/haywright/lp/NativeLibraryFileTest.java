package haywright.lp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class NativeLibraryFileTest {
    // FIPS 180-2, example B.1: the SHA-256 of "abc".
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path folder;

    private Path unpacked() throws IOException {
        return NativeLibraryFile.unpacked("abc".getBytes(StandardCharsets.US_ASCII), "lib.so", folder);
    }

    @Test
    void isNamedByItsHashAndReused() throws IOException {
        Path file = unpacked();
        assertThat(file).hasFileName(ABC + "-lib.so").hasContent("abc");
        FileTime longAgo = FileTime.fromMillis(1_000_000);
        Files.setLastModifiedTime(file, longAgo);
        assertThat(unpacked()).isEqualTo(file);
        assertThat(Files.getLastModifiedTime(file)).isEqualTo(longAgo);
        assertThat(folder).isDirectoryContaining(f -> f.equals(file));
        assertThat(folder.toFile().list()).hasSize(1);
    }

    @Test
    void aDamagedCopyIsReplaced() throws IOException {
        Path file = unpacked();
        Files.writeString(file, "ab");
        assertThat(unpacked()).hasContent("abc");
        assertThat(folder.toFile().list()).hasSize(1);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aFolderThatOthersMayWriteInIsNotUsed() throws IOException {
        Path mine = NativeLibraryFile.own(folder.resolve("mine"));
        assertThat(mine).isEqualTo(folder.resolve("mine"));
        assertThat(NativeLibraryFile.own(mine)).isEqualTo(mine);
        Files.setPosixFilePermissions(mine, PosixFilePermissions.fromString("rwxrwxrwx"));
        Path other = NativeLibraryFile.own(mine);
        assertThat(other).isNotEqualTo(mine).isDirectory();
        Files.delete(other);
    }

    @Test
    void aFolderThatCannotBeMadeIsSaidInWordsEachTime() throws Exception {
        Path file = Files.createFile(folder.resolve("a file"));
        Process java = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-D" + NativeLibraryFile.FOLDER + "=" + file.resolve("below"),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        TwiceUnloadable.class.getName())
                .redirectErrorStream(true)
                .start();
        String said = new String(java.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(java.waitFor()).as(said).isZero();
        assertThat(said.lines()
                        .filter(l -> l.contains("The solver cannot be loaded: its library could not be unpacked")))
                .hasSize(2);
    }

    static final class TwiceUnloadable {
        private TwiceUnloadable() {}

        public static void main(String[] ignored) {
            for (int time = 0; time < 2; time++) {
                var b = LinearProgram.minimize();
                b.column("a", 1, 0, 1);
                try {
                    b.build().solve();
                } catch (IllegalStateException e) {
                    System.out.println(e.getMessage());
                }
            }
        }
    }

    @Test
    void onlyTheSolversLibraryIsUnpacked() throws IOException {
        Path library = NativeLibraryFile.unpacked();
        assertThat(library.getFileName().toString()).contains("highs").matches("[0-9a-f]{64}-.*");
        assertThat(Files.size(library)).isBetween(3_000_000L, 12_000_000L);
    }
}
