package haywright;

import static org.assertj.core.api.Assertions.assertThat;

import haywright.workings.PublishedTable;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * docs/sources.md lists every source that a table or an equation names, and none that nothing names any more. A list that
 * is not up to date fails and is written anew; the next run passes.
 */
class SourcesTest {
    private static final Path LIST = Path.of("..", "docs", "sources.md");
    private static final List<Path> TABLES =
            List.of(Path.of("src", "main", "resources"), Path.of("..", "app", "src", "main", "resources"));
    private static final List<Path> CODE =
            List.of(Path.of("src", "main", "java"), Path.of("..", "app", "src", "main", "java"));

    /** {@code Source.read("…" + "…")}: what is known how, and the text in its pieces. */
    private static final Pattern IN_CODE = Pattern.compile(
            "Source\\.(read|memory|reproduces|practice|judgment)\\(\\s*(\"(?:[^\"\\\\]|\\\\.)*\"(?:\\s*\\+\\s*\"(?:[^\"\\\\]|\\\\.)*\")*)\\s*\\)");

    private static final Map<String, String> KNOWN = Map.of(
            "read", "Read",
            "memory", "From memory, not re-read",
            "reproduces", "From memory; reproduces published numbers that were read",
            "practice", "Common practice, no source",
            "judgment", "Judgment");
    private static final List<String> ORDER = List.of("read", "reproduces", "memory", "practice", "judgment");

    @Test
    void theListIsWhole() throws IOException {
        var text = text();
        var before = Files.readString(LIST);
        if (!"true".equals(System.getenv("CI"))) {
            Files.writeString(LIST, text);
        }
        assertThat(before)
                .as("docs/sources.md has been written anew where this is not CI; look at it and commit it")
                .isEqualTo(text);
    }

    private static String text() throws IOException {
        // by how it is known, then by source: the rooms that use it
        var sources = new TreeMap<String, Map<String, Set<String>>>();
        for (var ending : List.of(".csv", ".csv.gz")) {
            for (var root : TABLES) {
                for (var file : files(root, ending)) {
                    table(file, sources);
                }
            }
        }
        for (var root : CODE) {
            for (var file : files(root, ".java")) {
                code(file, sources);
            }
        }
        var text = new StringBuilder("""
                # Sources

                Every published source that a table or an equation of Haywright names, how it is known, and which rooms use it.
                "Read" means that the page was read; what is from memory says so wherever it is shown. A source read in a reprint
                names the reprint. This list is made from the tables and the code by `SourcesTest`.
                """);
        for (var known : ORDER) {
            text.append("\n## ").append(KNOWN.get(known)).append("\n\n");
            sources.getOrDefault(known, Map.of())
                    .forEach((cite, rooms) -> text.append("- %s (%s)\n".formatted(cite, String.join(", ", rooms))));
        }
        return text.toString();
    }

    private static void table(Path file, Map<String, Map<String, Set<String>>> sources) throws IOException {
        var room = room(file);
        for (var row : rows(file)) {
            var cells = row.cells();
            var cite = cells.getOrDefault("source", "").strip();
            if (!cite.isEmpty()) {
                add(sources, known(cells.getOrDefault("tier", cells.getOrDefault("known", "read"))), cite, room);
            }
        }
    }

    private static List<PublishedTable.Row> rows(Path file) throws IOException {
        try (var in = Files.newInputStream(file)) {
            return PublishedTable.read(file.toString(), in).rows();
        }
    }

    private static String known(String tier) {
        if (tier.contains("judge")) {
            return "judgment";
        }
        if (tier.startsWith("common practice")) {
            return "practice";
        }
        return tier.startsWith("memory") ? "memory" : tier.startsWith("reproduces") ? "reproduces" : "read";
    }

    private static void code(Path file, Map<String, Map<String, Set<String>>> sources) {
        var room = room(file);
        var found = IN_CODE.matcher(read(file));
        while (found.find()) {
            var cite = found.group(2).replaceAll("\"\\s*\\+\\s*\"", "").replace("\\\"", "\"");
            add(sources, found.group(1), cite.substring(1, cite.length() - 1), room);
        }
    }

    private static void add(Map<String, Map<String, Set<String>>> sources, String known, String cite, String room) {
        sources.computeIfAbsent(known, k -> new TreeMap<>())
                .computeIfAbsent(cite, c -> new TreeSet<>())
                .add(room);
    }

    /** "cattle/cold" */
    private static String room(Path file) {
        var path = String.valueOf(file.getParent()).replace(File.separatorChar, '/');
        return path.substring(path.lastIndexOf("haywright/") + "haywright/".length())
                .replaceFirst("^app/", "");
    }

    private static List<Path> files(Path root, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(f -> f.toString().endsWith(ending)).sorted().toList();
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
