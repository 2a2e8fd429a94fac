package haywright.app.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.ranch.Ranch;
import haywright.workings.Problem;
import haywright.workings.Refused;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A ranch as a JSON document: {@code {"haywright":"ranch","format":1,"id":…,"name":…, …}}.
 *
 * <p>A document of an older format is brought up to date step by step, each step a function from JSON to JSON, before
 * it is read; a newer one is refused in a sentence. Text is kept as text: {@code <b>} in a lot's name is those three
 * characters, and the page that shows it escapes it.
 */
public final class RanchDocument {
    /** Step n makes format n + 2 out of format n + 1. Never changed once released; only added to. */
    private static final List<UnaryOperator<ObjectNode>> UPGRADES =
            List.of(RanchDocument::withoutAHalfWidthsRule, RanchDocument::withoutAWindbreakNobodyDenied);

    /** A sheet that was made by "as many as the half-width asks for" is shown by the one rule that still asks for one. */
    private static ObjectNode withoutAHalfWidthsRule(ObjectNode document) {
        for (var sheet : document.path("samplings")) {
            if (sheet instanceof ObjectNode object
                    && sheet.path("rule").asText().equals("statistical")) {
                object.put("rule", "cheapest");
            }
        }
        return document;
    }

    /** Where nobody had said the wind, a windbreak of false was a box that nobody had ticked. */
    private static ObjectNode withoutAWindbreakNobodyDenied(ObjectNode document) {
        if (document.path("settings").path("weather") instanceof ObjectNode weather
                && !weather.hasNonNull("wind")
                && !weather.path("windbreak").asBoolean()) {
            weather.remove("windbreak");
        }
        return document;
    }

    /** The files of a ranch travel inside as base64, and none is kept that is larger than 5 MB. */
    private static final int LONGEST_TEXT = 8_000_000;

    /** Names, values and brackets: a thousand lots with three reports each have half of it. */
    private static final long MOST_PARTS = 1_000_000;

    private static final JsonMapper MAPPER = BoundedJson.mapper(LONGEST_TEXT, MOST_PARTS);
    /** What was kept is read again, however large it grew. */
    private static final JsonMapper KEPT = BoundedJson.mapper(Integer.MAX_VALUE, Long.MAX_VALUE);

    private final List<UnaryOperator<ObjectNode>> upgrades;

    public RanchDocument() {
        this(UPGRADES);
    }

    RanchDocument(List<UnaryOperator<ObjectNode>> upgrades) {
        this.upgrades = List.copyOf(upgrades);
    }

    /** The newest format, which is the one written. */
    public int format() {
        return upgrades.size() + 1;
    }

    /** @throws Refused naming everything that is wrong with it */
    public Ranch read(byte[] document) {
        return ranch(tree(document));
    }

    /** Laid out for people, in the order of the records. */
    public String write(Ranch ranch) {
        return print(tree(ranch));
    }

    /** A tree laid out for people. */
    public String print(ObjectNode tree) {
        try {
            return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(tree) + "\n";
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A document from outside as a tree of the newest format. */
    public ObjectNode tree(byte[] document) {
        whatElse(document).ifPresent(kind -> {
            throw new Refused(
                    "document",
                    "the file",
                    "this is %s, not a ranch's JSON".formatted(kind),
                    "Choose the .json file that an export wrote; take it out of its archive first.");
        });
        return tree(document, MAPPER);
    }

    /** A document in a file, of which no more is held than what is in it. */
    public ObjectNode tree(Path document) throws IOException {
        try (var in = new BufferedInputStream(Files.newInputStream(document))) {
            return tree(() -> MAPPER.readTree(withoutByteOrderMark(in)));
        }
    }

    /** A document that this program kept, as a tree of the newest format. */
    public ObjectNode kept(String document) {
        try {
            return tree(document.getBytes(StandardCharsets.UTF_8), KEPT);
        } catch (Refused refused) {
            throw new Refused(refused.problems().stream()
                    .map(p -> p.field().equals("document")
                            ? new Problem(
                                    p.field(),
                                    "as it is kept here",
                                    "it is damaged, at %s (%s)".formatted(p.value(), p.rule()),
                                    "Its own page says which ways back there are, and has the document as it is.")
                            : p)
                    .toList());
        }
    }

    /** What a file is by its first bytes, where that is a common kind of file but no JSON. */
    private static Optional<String> whatElse(byte[] file) {
        var head = new String(file, 0, Math.min(file.length, 5), StandardCharsets.ISO_8859_1);
        return head.startsWith("PK")
                ? Optional.of("a zip")
                : head.startsWith("\u001f\u008b")
                        ? Optional.of("a gzip")
                        : head.startsWith("%PDF-") ? Optional.of("a PDF") : Optional.empty();
    }

    private ObjectNode tree(byte[] document, JsonMapper mapper) {
        return tree(() -> mapper.readTree(withoutByteOrderMark(new ByteArrayInputStream(document))));
    }

    private interface Reading {
        JsonNode read() throws IOException;
    }

    private ObjectNode tree(Reading reading) {
        JsonNode tree;
        try {
            tree = reading.read();
        } catch (JsonProcessingException e) {
            throw new Refused(List.of(BoundedJson.problem("document", e)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return newest(tree);
    }

    /**
     * Brought up to date.
     *
     * @throws Refused where it is no ranch, or one of a newer format
     */
    public ObjectNode newest(JsonNode tree) {
        if (!(tree instanceof ObjectNode object)
                || !object.path("haywright").asText().equals("ranch")) {
            throw new Refused(
                    "haywright",
                    tree.isMissingNode() ? "an empty file" : "the file",
                    "a ranch document begins with \"haywright\": \"ranch\"",
                    "Is it another file?");
        }
        return upgraded(object);
    }

    private static InputStream withoutByteOrderMark(InputStream document) throws IOException {
        document.mark(3);
        if (!Arrays.equals(document.readNBytes(3), new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF})) {
            document.reset();
        }
        return document;
    }

    private ObjectNode upgraded(ObjectNode document) {
        var format = document.path("format");
        if (!format.isIntegralNumber() || format.intValue() < 1) {
            throw new Refused(
                    "format",
                    format.isMissingNode() ? "nothing" : format.toString(),
                    "the format is a whole number from 1 to " + format(),
                    "Export the ranch again.");
        }
        if (format.longValue() > format()) {
            throw new Refused(
                    "format",
                    "format " + format,
                    "made by a newer Haywright (format %s); this one reads up to %d".formatted(format, format()),
                    "Use the newer Haywright, or ask for an export from this one.");
        }
        var newest = document;
        for (int step = format.intValue(); step < format(); step++) {
            newest = upgrades.get(step - 1).apply(newest.deepCopy()).put("format", step + 1);
        }
        return newest;
    }

    /** The document of a ranch as a tree. */
    public ObjectNode tree(Ranch ranch) {
        var tree = MAPPER.createObjectNode().put("haywright", "ranch").put("format", format());
        tree.setAll((ObjectNode) RecordForm.write(ranch));
        return tree;
    }

    /** @param tree of the newest format */
    public Ranch ranch(ObjectNode tree) {
        var body = MAPPER.createObjectNode();
        body.setAll(tree);
        body.remove(List.of("haywright", "format"));
        return RecordReader.read(body, Ranch.class);
    }
}
