package haywright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The glossary: words that pages, papers and messages do not use. What sources
 * say in their own words (materials.csv, rules.csv, safety.csv) is not touched.
 */
class VoiceTest {
    private static final Path APP = Path.of("src/main/java/haywright/app");
    private static final Path PAPERS = Path.of("src/main/resources/haywright/app");
    private static final Path ENGINE = Path.of("../engine/src/main/java/haywright");
    private static final Path TABLES = Path.of("../engine/src/main/resources/haywright");

    /** Folders with all under them, and single files. */
    private static final List<Path> ROOMS = List.of(
            APP, PAPERS.resolve("words"), PAPERS.resolve("report"), ENGINE, TABLES.resolve("cattle/herd_limits.csv"));

    /** Files that know other people's words and spellings, to read them. */
    private static final Pattern OTHERS = Pattern.compile("(AnalyteNames|AnalyteTable|Period|Told|Unit|Prior)\\.java");

    private static final Pattern COMMENTS = Pattern.compile("(?s)/\\*.*?\\*/|(?m)^\\s*//[^\n]*$");
    private static final Pattern JOINED = Pattern.compile("\"\\s*\\+\\s*\"");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"");

    /** @param words not to be used @param instead what is said */
    private record Rule(Pattern words, String instead) {}

    private static List<Rule> rules() throws IOException {
        try (var in = VoiceTest.class.getResourceAsStream("voice.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> line.split(" => ", 2))
                    .map(rule -> new Rule(Pattern.compile(rule[0], Pattern.CASE_INSENSITIVE), rule[1]))
                    .toList();
        }
    }

    static Stream<Path> files() throws IOException {
        var files = new ArrayList<Path>();
        for (var room : ROOMS) {
            try (var under = Files.walk(room)) {
                under.filter(VoiceTest::isRead).forEach(files::add);
            }
        }
        return files.stream().sorted();
    }

    private static boolean isRead(Path file) {
        var name = file.getFileName().toString();
        return name.matches(".*\\.(java|jte|csv|js)") && !OTHERS.matcher(name).matches();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void aNeighborWouldSayItSo(Path file) throws IOException {
        var found = new ArrayList<String>();
        for (var said : said(file)) {
            for (var rule : rules()) {
                var at = rule.words.matcher(said);
                if (at.find()) {
                    found.add("“%s” in: %s (say: %s)".formatted(at.group(), said.strip(), rule.instead));
                }
            }
        }
        assertThat(found).isEmpty();
    }

    /** What a person may read of it: literals of code, lines of the rest. */
    private static List<String> said(Path file) throws IOException {
        var text = Files.readString(file);
        if (!file.toString().endsWith(".java")) {
            return text.lines()
                    .filter(line -> !line.startsWith("@import") && !line.startsWith("@param"))
                    .toList();
        }
        var code = JOINED.matcher(COMMENTS.matcher(text).replaceAll("")).replaceAll("");
        return LITERAL.matcher(code).results().map(one -> one.group(1)).toList();
    }

    @Test
    void theGlossaryFindsWhatItIsFor() throws IOException {
        var bad =
                List.of("Take away the lot", "7 things to put right", "a head and day", "no centre", "ready for grass");
        var hits = bad.stream()
                .filter(words -> {
                    try {
                        return rules().stream()
                                .anyMatch(rule -> rule.words.matcher(words).find());
                    } catch (IOException e) {
                        throw new java.io.UncheckedIOException(e);
                    }
                })
                .toList();
        assertThat(hits).containsExactlyElementsOf(bad.subList(0, 4));
        assertThat(files().count()).isGreaterThan(600);
    }
}
