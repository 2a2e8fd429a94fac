package haywright.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.app.Main;
import haywright.app.document.RanchDocument;
import haywright.app.document.TinLantern;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** In processes of their own: a library is loaded once. */
class TemporaryTest {
    @TempDir
    Path folder;

    private List<String> run(Path temporary, Path data, String... words) throws IOException, InterruptedException {
        var command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "--data",
                data.toString()));
        command.addAll(List.of(words));
        var process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        var said = new ArrayList<>(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList());
        said.add("exit " + process.waitFor());
        return said;
    }

    @Test
    void theDemoNeedsNoTemporaryFolderOfTheMachine() throws Exception {
        var data = folder.resolve("data");
        var said = run(folder.resolve("nowhere"), data, "demo", "--no-serve");
        assertThat(said).last().isEqualTo("exit 0");
        assertThat(said).noneMatch(line -> line.contains("\tat "));
        assertThat(Files.getPosixFilePermissions(data.resolve("tmp")))
                .isEqualTo(PosixFilePermissions.fromString("rwx------"));
        try (var left = Files.list(data.resolve("tmp"))) {
            assertThat(left).extracting(Path::getFileName).containsExactly(Path.of("native"));
        }
    }

    @Test
    void whereNothingCanBeUnpackedTheSentenceNamesThePlaceAndTheReason() throws Exception {
        var data = Files.createDirectory(folder.resolve("data"));
        Files.writeString(data.resolve("tmp"), "no folder");
        var nowhere = folder.resolve("nowhere");
        var said = run(nowhere, data, "ranch", "import", tin().toString());
        assertThat(said).last().isEqualTo("exit 2");
        assertThat(said).noneMatch(line -> line.contains("\tat "));
        assertThat(said.get(said.size() - 2)).contains(nowhere.toString()).contains("no such folder");
    }

    private Path tin() throws IOException {
        return Files.writeString(folder.resolve("tin.json"), new RanchDocument().write(TinLantern.ranch()));
    }

    @Test
    void aMistypedPlaceIsNotMadeForIt() throws Exception {
        var data = folder.resolve("typo");
        assertThat(run(folder, data, "ranch", "list")).last().isEqualTo("exit 2");
        assertThat(data).doesNotExist();
    }

    @Test
    void aFolderOfSomebodyElseIsNotUsed() throws Exception {
        var data = Files.createDirectory(folder.resolve("data"));
        var elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
        Files.createSymbolicLink(data.resolve("tmp"), elsewhere);
        assertThat(run(folder, data, "ranch", "import", tin().toString()))
                .last()
                .isEqualTo("exit 0");
        assertThat(elsewhere).isEmptyDirectory();
    }
}
