package haywright.app.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.words.Version;
import haywright.ranch.Ranch;
import haywright.season.kept.KeptBook;
import haywright.workings.Refused;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A winter book as JSON, and the hash of all that moves one. */
public final class BookDocument {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /**
     * Parts of a ranch that no figure of a winter book comes from: a letter that is kept makes no book older. Last winter
     * counts by the factor in the settings that was taken from it.
     */
    private static final Set<String> BESIDE =
            Set.of("name", "letters", "signed", "contacts", "pens", "attachments", "samplings", "last_winter", "weeks");

    private BookDocument() {}

    /** Whether a change under this path of the document moves a book. */
    public static boolean moves(String path) {
        return !BESIDE.contains(path.split("/", -1)[0]);
    }

    /** Of a ranch as it is, by this build of the program; the day is not in it. */
    public static String hash(Ranch ranch) {
        var tree = new RanchDocument().tree(ranch);
        tree.remove(List.copyOf(BESIDE));
        if (tree.get("settings") instanceof ObjectNode settings) {
            settings.remove(List.of("adviser", "invented"));
        }
        for (var lot : tree.path("lots")) {
            ((ObjectNode) lot).remove(List.of("notes", "where"));
        }
        return Fingerprint.sha256(tree.put("build", Version.TEXT));
    }

    public static String write(KeptBook book) {
        try {
            return MAPPER.writeValueAsString(RecordForm.write(book));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Empty where it is damaged, or another build of the program wrote it in another form. */
    public static Optional<KeptBook> read(String document) {
        try {
            return Optional.of(RecordReader.read(MAPPER.readTree(document), KeptBook.class));
        } catch (JsonProcessingException | Refused e) {
            return Optional.empty();
        }
    }
}
